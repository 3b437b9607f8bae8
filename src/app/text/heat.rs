//! Words about the heat: its groups on the chart, its paths on the drawing, and what comes in and goes out.

use super::charts::Reading;
use super::ledger::path_name;
use super::{Voice, listed};
use crate::format::Measure;
use noonday_engine::advice::Advice;
use noonday_engine::scenario::Dimension;
use noonday_engine::simulation::{HeatPath, Series};

/// Paths that are shown as one on the chart.
pub struct Group {
    /// Its label.
    pub name: &'static str,
    /// What it is called in a sentence.
    pub described: &'static str,
    /// What belongs to it.
    pub paths: &'static [HeatPath],
}

/// The groups from top to bottom; every path belongs to one.
pub const GROUPS: [Group; 6] = [
    Group {
        name: "sun by glass",
        described: "sun through the glass",
        paths: &[HeatPath::GlassSun],
    },
    Group {
        name: "roof, walls",
        described: "roof, walls, floor and the glass by its warmth",
        paths: &[
            HeatPath::Roof,
            HeatPath::Left,
            HeatPath::Right,
            HeatPath::Nose,
            HeatPath::Rear,
            HeatPath::Floor,
            HeatPath::GlassWarmth,
        ],
    },
    Group {
        name: "outdoor air",
        described: "outdoor air by leaks, fan and windows",
        paths: &[HeatPath::Leakage, HeatPath::Fan, HeatPath::Openings],
    },
    Group {
        name: "from inside",
        described: "people, animals, cooking and appliances",
        paths: &[
            HeatPath::People,
            HeatPath::Animals,
            HeatPath::Cooking,
            HeatPath::Appliances,
        ],
    },
    Group {
        name: "given back",
        described: "furniture and linings",
        paths: &[HeatPath::Stored],
    },
    Group {
        name: "cooler",
        described: "the cooler",
        paths: &[HeatPath::Cooler],
    },
];

/// Label of the sun on level ground.
pub const SUN: &str = "sun outdoors";
/// Heading of the chart.
pub const HEADING: &str = "The sun and the heat";

/// Under that heading: units, and which side of a row's line is which.
pub fn key(voice: &Voice) -> String {
    let heat = crate::format::unit(Dimension::HeatFlow, voice.units).symbol;
    format!(
        "Solid comes in, hatched goes out; heat in {heat} at one scale, sun in {}.",
        voice.units.irradiance_symbol()
    )
}

/// Heat of a group at a sample, W.
pub fn group_w(group: &Group, heat_w: &[f64; HeatPath::COUNT]) -> f64 {
    HeatPath::ALL
        .iter()
        .zip(heat_w)
        .filter(|(path, _)| group.paths.contains(path))
        .map(|(_, watts)| watts)
        .sum()
}

/// Heat from outside and from what is in the cabin, without what furniture gives back and the cooler takes, W.
pub fn coming_in_w(heat_w: &[f64; HeatPath::COUNT]) -> f64 {
    HeatPath::ALL
        .iter()
        .zip(heat_w)
        .filter(|(path, _)| !matches!(path, HeatPath::Stored | HeatPath::Cooler))
        .map(|(_, watts)| watts)
        .sum()
}

/// What comes in and what goes out by all paths together, W; both positive.
pub fn in_and_out_w(heat_w: &[f64; HeatPath::COUNT]) -> (f64, f64) {
    let signed = |sign: f64| heat_w.iter().map(|watts| (sign * watts).max(0.0)).sum();
    (signed(1.0), signed(-1.0))
}

/// Sun and heat at one sample, in the order of the rows.
pub fn heat_readings(advice: &Advice, index: usize) -> Vec<Reading> {
    let series = &advice.with_cooler.series;
    let heat_w = series.heat_w_at(index);
    let sun = series.sun_w_m2.get(index).copied().unwrap_or_default();
    let mut readings = vec![(SUN, Measure::Sun.of(sun))];
    readings.extend(GROUPS.iter().map(|group| {
        let heat = Measure::Of(Dimension::HeatFlow);
        (group.name, heat.of(group_w(group, &heat_w)))
    }));
    readings
}

/// What the chart shows, for those who do not see it.
pub fn heat_described(advice: &Advice, voice: &Voice) -> String {
    let series = &advice.with_cooler.series;
    let mut parts: Vec<String> = Vec::new();
    let sun = series.sun_w_m2.iter().copied();
    if let Some((index, most)) = farthest(sun) {
        parts.push(format!(
            "the sun on level ground {} at {}",
            voice.units.irradiance(most),
            at(series, index, voice)
        ));
    }
    for group in &GROUPS {
        let flows = (0..series.time_h.len()).map(|index| group_w(group, &series.heat_w_at(index)));
        if let Some((index, watts)) = farthest(flows).filter(|(_, watts)| watts.abs() >= 0.5) {
            parts.push(format!(
                "{} {} {} at {}",
                group.described,
                voice.units.quantity(Dimension::HeatFlow, watts.abs()),
                if watts < 0.0 { "out" } else { "in" },
                at(series, index, voice)
            ));
        }
    }
    format!("Greatest over the run: {}.", listed(&parts))
}

/// What comes in and what goes out at a sample, and by what most.
pub fn heat_summary(advice: &Advice, index: usize, voice: &Voice) -> String {
    let heat_w = advice.with_cooler.series.heat_w_at(index);
    let (into_w, out_w) = in_and_out_w(&heat_w);
    let flow = |watts| voice.units.quantity(Dimension::HeatFlow, watts);
    format!(
        "{} comes in, most of it: {}. {} goes out, most of it: {}.",
        flow(into_w),
        greatest(&heat_w, 1.0),
        flow(out_w),
        greatest(&heat_w, -1.0)
    )
}

/// Name of the path that brings or takes most, in mid-sentence.
fn greatest(heat_w: &[f64; HeatPath::COUNT], sign: f64) -> String {
    let most = HeatPath::ALL
        .into_iter()
        .zip(heat_w)
        .max_by(|one, other| (sign * one.1).total_cmp(&(sign * other.1)));
    match most {
        Some((HeatPath::Stored, _)) if sign < 0.0 => "into furniture and linings".to_owned(),
        Some((path, _)) => path_name(path).to_ascii_lowercase(),
        None => String::new(),
    }
}

fn farthest(values: impl Iterator<Item = f64>) -> Option<(usize, f64)> {
    values
        .enumerate()
        .max_by(|one, other| one.1.abs().total_cmp(&other.1.abs()))
}

fn at(series: &Series, index: usize, voice: &Voice) -> String {
    voice.instant(series.time_h.get(index).copied().unwrap_or_default())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::format::UnitSystem;
    use noonday_engine::advice::advise;
    use noonday_engine::scenario::{Scenario, example};

    #[test]
    fn every_path_belongs_to_one_group() {
        for path in HeatPath::ALL {
            let holding = GROUPS.iter().filter(|group| group.paths.contains(&path));
            assert_eq!(holding.count(), 1, "{path:?}");
        }
    }

    #[test]
    fn what_comes_in_goes_out() {
        let advice = advise(&Scenario::new(example()).unwrap()).unwrap();
        let series = &advice.with_cooler.series;
        for index in 0..series.time_h.len() {
            let heat_w = series.heat_w_at(index);
            let (into_w, out_w) = in_and_out_w(&heat_w);
            assert!((into_w - out_w).abs() < 1e-3, "{into_w} {out_w}");
            let by_group: f64 = GROUPS.iter().map(|group| group_w(group, &heat_w)).sum();
            assert!((by_group - (into_w - out_w)).abs() < 1e-6);
        }
    }

    #[test]
    fn the_summary_names_what_moves_most() {
        let mut advice = advise(&Scenario::new(example()).unwrap()).unwrap();
        let heat_w = &mut advice.with_cooler.series.heat_w[5];
        *heat_w = [0.0; HeatPath::COUNT];
        (heat_w[0], heat_w[7], heat_w[16]) = (300.0, 200.0, -500.0);
        let voice = Voice::new(&example(), UnitSystem::Metric);
        assert_eq!(
            heat_summary(&advice, 5, &voice),
            "500\u{a0}W comes in, most of it: roof. 500\u{a0}W goes out, most of it: into furniture and linings."
        );
    }
}
