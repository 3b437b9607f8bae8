//! The sun over the vehicle.

use crate::text::{Voice, compass, listed};
use noonday_engine::simulation::{SunOnFaces, SunPlace};

pub const NOTE: &str = "From above, north at the top: the rim is the horizon, the middle is straight up. The line is the sun's path on the first day, with the hours of the clock; the shadow is that of the vehicle, to scale.";
pub const QUARTERS: [&str; 4] = ["North", "East", "South", "West"];
pub const HEADING: &str = "The nose points to";
pub const HOUR: &str = "Time of day";
pub const REFUSED: &str = "The path of the sun cannot be calculated.";

/// A heading: degrees and the point of the compass.
pub fn heading(heading_deg: f64, voice: &Voice) -> String {
    format!(
        "{}°, {}",
        voice.units.number(heading_deg, 0),
        compass(heading_deg)
    )
}

/// The sun at an instant and which sides get it.
pub fn now(place: &SunPlace, faces: &SunOnFaces, voice: &Voice) -> String {
    if place.altitude_deg <= 0.0 {
        return "The sun is down.".to_owned();
    }
    let mut sides = [
        ("the roof", faces.roof_w_m2),
        ("the left side", faces.left_w_m2),
        ("the right side", faces.right_w_m2),
        ("the nose", faces.nose_w_m2),
        ("the rear", faces.rear_w_m2),
    ];
    sides.sort_by(|one, other| other.1.total_cmp(&one.1));
    let told: Vec<String> = sides
        .iter()
        .map(|(name, sun_w_m2)| format!("{name} {}", voice.units.irradiance(*sun_w_m2)))
        .collect();
    format!(
        "The sun stands in the {}, {}° high. Of sun and bright sky get {}.",
        compass(place.azimuth_deg),
        voice.units.number(place.altitude_deg, 0),
        listed(&told)
    )
}

/// The whole picture for those who do not see it.
pub fn described(path: &[SunPlace], heading_deg: f64, voice: &Voice) -> String {
    let (Some(first), Some(last)) = (path.first(), path.last()) else {
        return "The sun does not rise on this day.".to_owned();
    };
    let highest = path
        .iter()
        .max_by(|one, other| one.altitude_deg.total_cmp(&other.altitude_deg))
        .unwrap_or(first);
    format!(
        "The vehicle from above, its nose to the {}. The sun rises at {} in the {}, is highest at {} in the {}, {}° high, and sets at {} in the {}.",
        compass(heading_deg),
        voice.units.clock(first.clock_h),
        compass(first.azimuth_deg),
        voice.units.clock(highest.clock_h),
        compass(highest.azimuth_deg),
        voice.units.number(highest.altitude_deg, 0),
        voice.units.clock(last.clock_h),
        compass(last.azimuth_deg),
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::format::UnitSystem;
    use noonday_engine::scenario::example;
    use noonday_engine::simulation::{sun_on_faces, sun_over_day};

    #[test]
    fn the_sky_of_the_example_is_told() {
        let document = example();
        let voice = Voice::new(&document, UnitSystem::Metric);
        let told = described(&sun_over_day(&document).unwrap(), 180.0, &voice);
        assert!(
            told.contains("nose to the south") && told.contains("72° high"),
            "{told}"
        );
        let (place, faces) = sun_on_faces(&document, 17.0).unwrap();
        let told = now(&place, &faces, &voice);
        // The nose points south, so the evening sun is on the right.
        let side = |name| told.find(name).unwrap();
        assert!(side("the right side") < side("the left side"), "{told}");
        let (place, faces) = sun_on_faces(&document, 3.0).unwrap();
        assert_eq!(now(&place, &faces, &voice), "The sun is down.");
    }
}
