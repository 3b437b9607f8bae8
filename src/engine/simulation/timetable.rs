//! The clock times at which something switches by the hour.
//!
//! No interval of a run reaches over one: within an interval everything that goes by the clock is as it was at its beginning,
//! so that neither the energy of a load nor the air's response to a stove depends on how the run is cut into intervals.

use crate::quantity::{SECONDS_PER_DAY, SECONDS_PER_HOUR, sort_few};
use crate::scenario::ScenarioDocument;

/// Shortest part into which a step is cut, s; what happens by the clock happens to this accuracy.
pub(super) const LEAST_STEP_S: f64 = 0.05;

/// Every switching time of a run, s since midnight of the first day, in order.
#[derive(Clone, Debug)]
pub(super) struct Timetable {
    edges_s: Vec<f64>,
}

impl Timetable {
    /// Collects the hours of everything that is in use.
    pub(super) fn new(document: &ScenarioDocument) -> Self {
        let mut hours: Vec<f64> = windows(document)
            .into_iter()
            .filter(|(used, from_hour, until_hour)| *used && from_hour != until_hour)
            .flat_map(|(_, from_hour, until_hour)| [from_hour, until_hour])
            .collect();
        sort_few(&mut hours, |one, other| one > other);
        let days = document.day.days as u32 + 1;
        let mut edges_s: Vec<f64> = (0..=days)
            .flat_map(|day| {
                let midnight_s = f64::from(day) * SECONDS_PER_DAY;
                hours
                    .iter()
                    .map(move |hour| midnight_s + hour * SECONDS_PER_HOUR)
            })
            .collect();
        edges_s.dedup();
        Self { edges_s }
    }

    /// The first switching time more than [`LEAST_STEP_S`] after an instant, s; infinite if none follows.
    pub(super) fn next_after_s(&self, clock_s: f64) -> f64 {
        let index = self
            .edges_s
            .partition_point(|edge_s| *edge_s <= clock_s + LEAST_STEP_S);
        self.edges_s.get(index).copied().unwrap_or(f64::INFINITY)
    }
}

/// Whether it is in use, from which hour and until which, for everything that goes by the clock.
fn windows(document: &ScenarioDocument) -> [(bool, f64, f64); 14] {
    let ScenarioDocument {
        glass,
        occupants,
        cooler,
        ventilation,
        charging,
        loads,
        ..
    } = document;
    let load = |load: &crate::scenario::Load| (load.power_w > 0.0, load.from_hour, load.until_hour);
    let people = occupants.people > 0.0;
    let cooks = occupants.cooking_heat_w > 0.0 || occupants.cooking_moisture_kg_s > 0.0;
    [
        (
            glass.covers_fitted,
            glass.covers_from_hour,
            glass.covers_until_hour,
        ),
        (
            people,
            occupants.people_from_hour,
            occupants.people_until_hour,
        ),
        (
            people,
            occupants.asleep_from_hour,
            occupants.asleep_until_hour,
        ),
        (
            occupants.dogs > 0.0,
            occupants.dogs_from_hour,
            occupants.dogs_until_hour,
        ),
        (
            cooks,
            occupants.cooking_from_hour,
            occupants.cooking_until_hour,
        ),
        (
            cooler.installed,
            cooler.run_from_hour,
            cooler.run_until_hour,
        ),
        (
            ventilation.fan_flow_m3_s > 0.0,
            ventilation.fan_from_hour,
            ventilation.fan_until_hour,
        ),
        (
            ventilation.opening_area_m2 > 0.0,
            ventilation.opening_from_hour,
            ventilation.opening_until_hour,
        ),
        (
            charging.drives,
            charging.drive_from_hour,
            charging.drive_until_hour,
        ),
        (
            charging.shore_power_w > 0.0,
            charging.shore_from_hour,
            charging.shore_until_hour,
        ),
        load(&loads.fridge),
        load(&loads.lights),
        load(&loads.electronics),
        load(&loads.other),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scenario::example;

    #[test]
    fn the_example_next_switches_when_the_people_leave() {
        let timetable = Timetable::new(&example());
        let hour = |hours: f64| hours * SECONDS_PER_HOUR;
        assert_eq!(timetable.next_after_s(hour(7.5)), hour(9.0));
        assert_eq!(timetable.next_after_s(hour(18.2)), hour(18.5));
        // On the edge itself, or a rounding before it, the next one counts.
        assert_eq!(timetable.next_after_s(hour(9.0) - 1e-9), hour(11.0));
        assert_eq!(timetable.next_after_s(hour(200.0)), f64::INFINITY);
    }
}
