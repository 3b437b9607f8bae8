//! Wording of the roof plan.

mod worked;

pub use worked::worked;

use super::Voice;
use noonday_engine::advice::{Against, RoofReport};
use noonday_engine::roof::{Finding, Item, ItemKind, Rectangle};
use noonday_engine::scenario::{Dimension, ScenarioDocument};
use noonday_engine::simulation::PanelYield;

/// Opens the part.
pub const ROOF: &str = "The roof, to scale";
/// Where the decision to cut is made.
pub const CUT_CAUTION: &str = "Before anything is cut, look at both sides of the skin: wires, airbags, braces and pipes run there. Never cut a rib without a frame that takes its load; a roof that is cut carries less than its papers say.";
/// Where load and height are read.
pub const LOAD_CAUTION: &str = "The maker’s papers for this vehicle decide what its roof carries, at rest and under way; local codes and licensed practice come before this plan. Measure the height of the finished vehicle. Work on a roof from a secured platform, never alone.";
/// What the marks of the plan mean.
pub const KEY: &str =
    "P panel, H hatch; dashed squares are openings, dotted lines ribs; hatched is what is wrong.";
/// How to move things.
pub const HOW: &str = "Drag a thing to move it. With the keyboard: Tab to it, then the arrow keys; with Shift they go ten times as far. For an exact place choose a thing and type.";
/// Button: arrange the panels.
pub const ARRANGE: &str = "Arrange the panels";
/// Button: go to the inputs.
pub const TO_INPUTS: &str = "Sizes, masses and limits";
/// Button: the run takes over the plan.
pub const USE_PLAN: &str = "Let the plan’s panels count";
/// Button: the run goes back to the numbers entered.
pub const USE_NUMBER: &str = "Go back to the power entered";
/// Front of the vehicle on the plan.
pub const FRONT: &str = "front";
/// Sides of the vehicle on the plan.
pub const SIDES: [&str; 2] = ["right side", "left side"];
/// What kind of thing can be moved on the plan, for those who hear it.
pub const MOVABLE: &str = "movable thing";
/// Heads of the measures.
pub const MEASURES_HEADS: [&str; 5] = ["", "Size", "From front", "From left", "Shaded"];
/// Caption of the measures.
pub const MEASURES: &str = "Measures on the roof";
/// Under the measures.
pub const MEASURES_NOTE: &str = "Size is along × across × height. Shaded is the share of its sun that a panel loses to unit, fan and hatches in this run. Ribs are drawn evenly spaced from the front edge; find the real ones before anything is cut.";
/// Heads of the limits.
pub const LIMITS_HEADS: [&str; 4] = ["", "Is", "Limit", "Left"];
/// Caption of the limits.
pub const LIMITS: &str = "Load and height";
/// Heads of the sun.
pub const SUN_HEADS: [&str; 2] = ["", "On this plan"];
/// Caption of the sun.
pub const SUN: &str = "Panels";
/// Under the sun.
pub const SUN_NOTE: &str = "Energy is what the panels offer over the run, whatever the bank takes of it. A shadow counts by its area; cells in series lose more than that, so keep even small shadows off.";
/// Said where nothing is wrong.
pub const NOTHING_WRONG: &str =
    "Nothing overlaps, every clearance is kept, and no opening meets a rib.";

/// Name of a thing.
pub fn name(kind: ItemKind) -> String {
    match kind {
        ItemKind::Unit => "Unit".to_owned(),
        ItemKind::Fan => "Fan".to_owned(),
        ItemKind::Hatch(index) => format!("Hatch {}", index + 1),
        ItemKind::Panel(index) => format!("Panel {}", index + 1),
    }
}

/// Its name where there is little room.
pub fn short_name(kind: ItemKind) -> String {
    match kind {
        ItemKind::Hatch(index) => format!("H{}", index + 1),
        ItemKind::Panel(index) => format!("P{}", index + 1),
        _ => name(kind),
    }
}

fn named(kind: ItemKind) -> String {
    match kind {
        ItemKind::Unit | ItemKind::Fan => format!("the {}", name(kind).to_lowercase()),
        _ => name(kind).to_lowercase(),
    }
}

/// A length on the roof.
pub fn tape(value_m: f64, voice: &Voice) -> String {
    voice.units.quantity(Dimension::TapeLength, value_m)
}

/// Where a thing stands, in a sentence.
pub fn whereabouts(kind: ItemKind, place: &Rectangle, voice: &Voice) -> String {
    format!(
        "{}: {} from the front, {} from the left.",
        name(kind),
        tape(place.from_front_m, voice),
        tape(place.from_left_m, voice)
    )
}

/// What a thing on the plan is called: its name, what stands on it, where it is and what is wrong with it.
pub fn labelled(kind: ItemKind, report: &RoofReport, voice: &Voice) -> String {
    let (name, short) = (name(kind), short_name(kind));
    let said = described(kind, report, voice);
    if name == short {
        return said;
    }
    said.replacen(&name, &format!("{name}, {short}"), 1)
}

/// Where a thing stands, with what is wrong with it.
pub fn described(kind: ItemKind, report: &RoofReport, voice: &Voice) -> String {
    let Some(item) = report.plan.item(kind) else {
        return name(kind);
    };
    let wrong = report.findings.iter().filter(|one| concerns(one, kind));
    let mut said = whereabouts(kind, &item.place, voice);
    for one in wrong {
        said.push(' ');
        said.push_str(&finding(one, voice));
    }
    said
}

/// Whether a finding is about a thing.
pub fn concerns(finding: &Finding, kind: ItemKind) -> bool {
    match finding {
        Finding::BeyondRoof { item, .. } | Finding::CutsRib { item, .. } => *item == kind,
        Finding::Overlap { one, other, .. } | Finding::TooClose { one, other, .. } => {
            *one == kind || *other == kind
        }
    }
}

/// What is wrong, in a sentence.
pub fn finding(finding: &Finding, voice: &Voice) -> String {
    let text = match finding {
        Finding::BeyondRoof { item, by_m } => format!(
            "{} reaches {} beyond the usable roof.",
            named(*item),
            tape(*by_m, voice)
        ),
        Finding::Overlap {
            one,
            other,
            area_m2,
        } => format!(
            "{} and {} overlap by {}.",
            named(*one),
            named(*other),
            area(*area_m2, voice)
        ),
        Finding::TooClose {
            one,
            other,
            gap_m,
            asked_m,
        } => format!(
            "{} and {} are {} apart; {} is asked.",
            named(*one),
            named(*other),
            tape(*gap_m, voice),
            tape(*asked_m, voice)
        ),
        Finding::CutsRib { item, rib_m } => format!(
            "the opening of {} meets the rib at {}. Move it between ribs, or have a frame made before the rib is cut.",
            named(*item),
            tape(*rib_m, voice)
        ),
    };
    capital(&text)
}

fn capital(text: &str) -> String {
    let mut marks = text.chars();
    let first = marks.next().map(|mark| mark.to_ascii_uppercase());
    first.into_iter().chain(marks).collect()
}

fn area(area_m2: f64, voice: &Voice) -> String {
    voice.units.quantity(Dimension::Area, area_m2)
}

/// What is said after the panels were arranged.
pub fn arranged(placed: usize, wanted: usize, turned: bool) -> String {
    let turn = if turned {
        " They were turned by a quarter so that more of them fit."
    } else {
        ""
    };
    if placed == wanted {
        return format!("All {wanted} panels are arranged.{turn}");
    }
    format!(
        "{placed} of {wanted} panels fit around what stands on the roof; the others stay where they were.{turn}"
    )
}

/// What the plan shows, for those who do not see it.
pub fn plan_described(report: &RoofReport, voice: &Voice) -> String {
    format!(
        "Plan of the roof from above, {} long and {} wide, front on the left",
        tape(report.plan.length_m, voice),
        tape(report.plan.width_m, voice)
    )
}

/// With what panels the run reckons.
pub fn reckoned(document: &ScenarioDocument, voice: &Voice) -> String {
    let watts = voice.units.watts(document.panel_power_w());
    if document.roof.panels_from_plan {
        return format!(
            "The calculation reckons with these panels: {watts}, shaded hour by hour by what stands beside them. The power entered under “Charging” rests meanwhile."
        );
    }
    format!(
        "The calculation does not know of this plan yet: it reckons with the {watts} of panels entered under “Charging”, {} of them shaded.",
        voice.units.percent(document.charging.panel_shading_share)
    )
}

/// The measures of each thing.
pub fn measures(
    report: &RoofReport,
    offered: Option<&PanelYield>,
    voice: &Voice,
) -> Vec<(ItemKind, Vec<String>)> {
    let lost = |kind| match kind {
        ItemKind::Panel(index) => offered?.lost_shares.get(index).copied(),
        _ => None,
    };
    let items = report.plan.items.iter();
    items
        .map(|item| {
            let cells = vec![
                size(item, voice),
                tape(item.place.from_front_m, voice),
                tape(item.place.from_left_m, voice),
                lost(item.kind).map_or_else(
                    || "\u{2013}".to_owned(),
                    |share| format!("{}\u{a0}%", voice.units.number(100.0 * share, 1)),
                ),
            ];
            (item.kind, cells)
        })
        .collect()
}

fn size(item: &Item, voice: &Voice) -> String {
    let unit = crate::format::unit(Dimension::TapeLength, voice.units);
    let number = |value_m| voice.units.number(unit.shown(value_m), unit.decimals);
    let place = &item.place;
    let mut text = format!("{} × {}", number(place.length_m), number(place.width_m));
    if item.height_m > 0.0 {
        text.push_str(&format!(" × {}", number(item.height_m)));
    }
    format!("{text}\u{a0}{}", unit.symbol)
}

/// Load and height against their limits.
pub fn limits(report: &RoofReport, voice: &Voice) -> Vec<(&'static str, [String; 3])> {
    let against = |against: &Against, dimension| {
        let shown = |value| voice.units.quantity(dimension, value);
        let left = if against.is_kept() {
            shown(against.left())
        } else {
            format!("too much by {}", shown(-against.left()))
        };
        [shown(against.value), shown(against.limit), left]
    };
    vec![
        (
            "Load under way",
            against(&report.under_way_kg, Dimension::Mass),
        ),
        ("Load at rest", against(&report.at_rest_kg, Dimension::Mass)),
        (
            "Overall height",
            against(&report.height_m, Dimension::Length),
        ),
    ]
}

/// What the fastenings have to hold.
pub fn forces(report: &RoofReport, voice: &Voice) -> String {
    let force = |value_n| voice.units.quantity(Dimension::Force, value_n);
    let load = &report.load;
    format!(
        "The fastenings hold, all together, {} towards the front while braking hard, {} sideways in a sharp bend, {} downwards over a bump, and {} of wind at {}.",
        force(load.braking_n),
        force(load.cornering_n),
        force(load.bounce_n),
        force(load.wind_n),
        voice.units.quantity(Dimension::RoadSpeed, load.speed_m_s)
    )
}

/// Area and energy of the panels.
pub fn sun(
    report: &RoofReport,
    offered: Option<&PanelYield>,
    voice: &Voice,
) -> Vec<(&'static str, String)> {
    let mut rows = vec![
        ("Area of the panels", area(report.panel_area_m2, voice)),
        ("Roof left free", area(report.free_area_m2, voice)),
    ];
    if let Some(offered) = offered {
        rows.extend([
            (
                "Rated power on the plan",
                voice.units.watts(offered.rated_w),
            ),
            (
                "Energy with all shadows",
                voice.units.energy(offered.shaded_wh),
            ),
            (
                "Energy without the unit’s shadow",
                voice.units.energy(offered.without_unit_wh),
            ),
            (
                "Energy without any shadow",
                voice.units.energy(offered.unshaded_wh),
            ),
        ]);
    }
    rows
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::format::UnitSystem;
    use noonday_engine::advice::roof_report;
    use noonday_engine::scenario::example;

    fn voice(units: UnitSystem) -> Voice {
        Voice::new(&example(), units)
    }

    #[test]
    fn what_is_wrong_is_told_in_the_shown_unit() {
        let overlap = Finding::Overlap {
            one: ItemKind::Unit,
            other: ItemKind::Panel(1),
            area_m2: 0.12,
        };
        let metric = voice(UnitSystem::Metric);
        assert_eq!(
            finding(&overlap, &metric),
            "The unit and panel 2 overlap by 0.12\u{a0}m²."
        );
        let close = Finding::TooClose {
            one: ItemKind::Fan,
            other: ItemKind::Hatch(0),
            gap_m: 0.012_7,
            asked_m: 0.050_8,
        };
        assert_eq!(
            finding(&close, &voice(UnitSystem::Us)),
            "The fan and hatch 1 are 0.5\u{a0}in apart; 2\u{a0}in is asked."
        );
    }

    #[test]
    fn a_limit_that_is_passed_says_by_how_much() {
        let mut document = example();
        document.roof.limit_under_way_kg = 50.0;
        let report = roof_report(&document);
        let rows = limits(&report, &voice(UnitSystem::Metric));
        assert_eq!(rows[0].1[2], "too much by 16\u{a0}kg");
        assert_eq!(rows[1].1, ["66\u{a0}kg", "300\u{a0}kg", "234\u{a0}kg"]);
        assert_eq!(rows[2].1[0], "2.8\u{a0}m");
    }

    #[test]
    fn what_does_not_fit_is_said() {
        assert!(arranged(3, 3, false).starts_with("All 3"));
        let some = arranged(5, 8, true);
        assert!(some.starts_with("5 of 8") && some.contains("turned"));
    }
}
