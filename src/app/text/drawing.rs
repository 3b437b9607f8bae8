//! Words on and about the drawing of the vehicle.

use super::Voice;
use super::heat::heat_summary;
use noonday_engine::advice::Advice;
use noonday_engine::scenario::Dimension;
use noonday_engine::simulation::{HeatPath, Series};

/// Heading of the drawing.
pub const HEADING: &str = "The heat in the vehicle";
/// Under the cut lengthwise.
pub const LENGTHWISE: &str = "Cut lengthwise, nose to the left";
/// Under the cut across.
pub const ACROSS: &str = "Cut across, seen from the rear";
/// At the outdoor temperature.
pub const OUTDOORS: &str = "outdoors";
/// At the temperature of the cabin's air.
pub const CABIN: &str = "cabin";
/// At the felt temperature.
pub const FELT: &str = "felt";

/// Where one side has less than this of the other, a sixth of a right angle, it is not worth naming.
const LESSER: f64 = 0.27;

/// Name of a path beside its arrow, as short as may be.
pub fn short_name(path: HeatPath) -> &'static str {
    match path {
        HeatPath::Roof => "Roof",
        HeatPath::Left => "Left side",
        HeatPath::Right => "Right side",
        HeatPath::Nose => "Nose",
        HeatPath::Rear => "Rear",
        HeatPath::Floor => "Floor",
        HeatPath::GlassWarmth => "Warm glass",
        HeatPath::GlassSun => "Sun by glass",
        HeatPath::Leakage => "Leaks",
        HeatPath::Fan => "Fan",
        HeatPath::Openings => "Windows",
        HeatPath::People => "People",
        HeatPath::Animals => "Animals",
        HeatPath::Cooking => "Cooking",
        HeatPath::Appliances => "Appliances",
        HeatPath::Cooler => "Cooler",
        HeatPath::Stored => "Furniture",
    }
}

/// How the drawing is read.
pub fn key(voice: &Voice) -> String {
    let heat = crate::format::unit(Dimension::HeatFlow, voice.units).symbol;
    format!(
        "Numbers in {heat}. Solid arrows come in, hatched ones with a minus go out, as wide as their heat. Body, insulation and glass are to scale; a pane is drawn square, for only its area is known. Furniture stands for linings as well: it takes heat up and gives it back."
    )
}

/// The instant, what comes in and goes out, and where the sun stands.
pub fn caption(advice: &Advice, index: usize, voice: &Voice) -> String {
    let series = &advice.with_cooler.series;
    format!(
        "{} {}",
        heat_summary(advice, index, voice),
        sun(series, index, voice)
    )
}

/// Name of the picture for those who do not see it; the table has the numbers.
pub fn described(advice: &Advice, index: usize, voice: &Voice) -> String {
    let series = &advice.with_cooler.series;
    let time_h = series.time_h.get(index).copied().unwrap_or_default();
    format!(
        "The vehicle cut lengthwise and across, with the heat through each part at {}. The numbers are in the table of where the heat comes from.",
        voice.instant(time_h)
    )
}

/// Where the sun stands, in a sentence.
fn sun(series: &Series, index: usize, voice: &Voice) -> String {
    let [right, ahead, up] = series.sun_direction.get(index).copied().unwrap_or_default();
    let Some(height_deg) = series.sun_height_deg(index).filter(|_| up > 0.0) else {
        return "The sun is down.".to_owned();
    };
    let height = voice.units.number(height_deg, 0);
    let (sideways, lengthwise) = (
        if right > 0.0 { "the right" } else { "the left" },
        if ahead > 0.0 { "the nose" } else { "the rear" },
    );
    let from = if right.abs() < LESSER * ahead.abs() {
        lengthwise.to_owned()
    } else if ahead.abs() < LESSER * right.abs() {
        sideways.to_owned()
    } else {
        format!("{lengthwise} and {sideways}")
    };
    format!("The sun stands {height}° high, on the side of {from}.")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::format::UnitSystem;
    use noonday_engine::scenario::example;

    fn said(direction: [f64; 3]) -> String {
        let series = Series {
            sun_direction: vec![direction],
            ..Series::default()
        };
        sun(&series, 0, &Voice::new(&example(), UnitSystem::Metric))
    }

    #[test]
    fn the_sun_is_placed_by_side_and_height() {
        assert_eq!(said([0.3, 0.4, -0.2]), "The sun is down.");
        assert_eq!(
            said([0.0, 0.5, 0.75_f64.sqrt()]),
            "The sun stands 60° high, on the side of the nose."
        );
        assert_eq!(
            said([-0.5, -0.5, 0.5_f64.sqrt()]),
            "The sun stands 45° high, on the side of the rear and the left."
        );
    }

    #[test]
    fn every_path_has_a_short_name_of_its_own() {
        let mut names = HeatPath::ALL.map(short_name).to_vec();
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), HeatPath::COUNT);
        assert!(names.iter().all(|name| name.len() <= 12));
    }
}
