//! What the roof and its fastenings carry, standing and under way.

use super::plan::Item;
use crate::quantity::GRAVITY_M_S2;

/// Density of air at sea level and 15 °C, kg/m³: the standard atmosphere, ISO 2533 (from memory).
pub const AIR_DENSITY_KG_M3: f64 = 1.225;

/// Drag coefficient of a blunt box on a roof, over its frontal area: common practice, no source.
pub const DRAG_COEFFICIENT: f64 = 1.0;

/// Deceleration of hard braking, multiples of gravity: common practice, no source.
pub const BRAKING_G: f64 = 0.8;

/// Sideways acceleration of a sharp bend, multiples of gravity: common practice, no source.
pub const CORNERING_G: f64 = 0.5;

/// Upward acceleration over a bump that adds to gravity, multiples of gravity: common practice, no source.
pub const BOUNCE_G: f64 = 1.0;

/// Drag of the wind, N: F = ½ ρ V² c A.
///
/// * `speed_m_s` — V, speed through still air, m/s, at least 0
/// * `frontal_area_m2` — A, seen from the front, m², at least 0
/// * `drag_coefficient` — c, at least 0
///
/// Source: definition of the drag coefficient, with ρ = [`AIR_DENSITY_KG_M3`].
#[must_use]
pub fn wind_drag_n(speed_m_s: f64, frontal_area_m2: f64, drag_coefficient: f64) -> f64 {
    0.5 * AIR_DENSITY_KG_M3 * speed_m_s * speed_m_s * drag_coefficient * frontal_area_m2
}

/// Force that a mass withstands an acceleration with, N: F = m a, a in multiples of gravity.
///
/// * `mass_kg` — m, kg, at least 0
/// * `multiple_of_gravity` — a/g
///
/// Source: Newton's second law.
#[must_use]
pub fn inertia_n(mass_kg: f64, multiple_of_gravity: f64) -> f64 {
    mass_kg * multiple_of_gravity * GRAVITY_M_S2
}

/// Area that things on the roof show to the front, m²: their common outline, so that what stands behind something adds only what
/// is seen beside or above it.
#[must_use]
pub fn frontal_area_m2(items: &[Item]) -> f64 {
    let mut cuts: Vec<f64> = items
        .iter()
        .flat_map(|item| [item.place.from_left_m, item.place.right_m()])
        .collect();
    cuts.sort_by(f64::total_cmp);
    cuts.windows(2)
        .map(|cut| {
            let middle_m = 0.5 * (cut[0] + cut[1]);
            let seen = items
                .iter()
                .filter(|item| (item.place.from_left_m..item.place.right_m()).contains(&middle_m));
            (cut[1] - cut[0]) * seen.map(|item| item.height_m).fold(0.0, f64::max)
        })
        .sum()
}

/// Loads of the whole roof.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct RoofLoad {
    /// Mass of everything on it, kg.
    pub mass_kg: f64,
    /// Weight, N.
    pub weight_n: f64,
    /// Area seen from the front, m².
    pub frontal_area_m2: f64,
    /// Speed for which the drag is, m/s.
    pub speed_m_s: f64,
    /// Drag of the wind at that speed, N, towards the rear.
    pub wind_n: f64,
    /// While braking hard, N, towards the front.
    pub braking_n: f64,
    /// In a sharp bend, N, to the side.
    pub cornering_n: f64,
    /// Over a bump, N, down: the weight and as much again.
    pub bounce_n: f64,
}

/// Loads of the roof from its mass and what stands on it.
///
/// * `mass_kg` — everything on the roof, kg, at least 0
/// * `items` — what stands in the wind
/// * `speed_m_s` — highest speed on the road, m/s, at least 0
///
/// Sources: [`wind_drag_n`], [`inertia_n`]; accelerations are common practice, no source.
#[must_use]
pub fn roof_load(mass_kg: f64, items: &[Item], speed_m_s: f64) -> RoofLoad {
    let frontal_area_m2 = frontal_area_m2(items);
    RoofLoad {
        mass_kg,
        weight_n: inertia_n(mass_kg, 1.0),
        frontal_area_m2,
        speed_m_s,
        wind_n: wind_drag_n(speed_m_s, frontal_area_m2, DRAG_COEFFICIENT),
        braking_n: inertia_n(mass_kg, BRAKING_G),
        cornering_n: inertia_n(mass_kg, CORNERING_G),
        bounce_n: inertia_n(mass_kg, 1.0 + BOUNCE_G),
    }
}

#[cfg(test)]
mod tests {
    use super::super::plan::ItemKind;
    use super::super::rectangle::Rectangle;
    use super::*;

    /// Worked by hand: half of 1.225 kg/m³ times (30 m/s)² is 551.25 Pa, on 0.5 m² 275.6 N.
    #[test]
    fn drag_is_as_worked_by_hand() {
        let drag_n = wind_drag_n(30.0, 0.5, 1.0);
        assert!((drag_n - 275.625).abs() < 1e-9, "{drag_n}");
        assert_eq!(drag_n.round(), 276.0);
        assert_eq!(wind_drag_n(0.0, 0.5, 1.0), 0.0);
    }

    /// By hand: 50 kg at 0.8 g are 50 × 0.8 × 9.80665 N = 392.27 N.
    #[test]
    fn braking_is_mass_times_deceleration() {
        assert!((inertia_n(50.0, 0.8) - 392.266).abs() < 1e-3);
        let load = roof_load(50.0, &[], 30.0);
        assert!((load.bounce_n - 2.0 * load.weight_n).abs() < 1e-9);
        assert_eq!(load.wind_n, 0.0);
    }

    fn item(from_front_m: f64, from_left_m: f64, width_m: f64, height_m: f64) -> Item {
        Item {
            kind: ItemKind::Fan,
            place: Rectangle {
                from_front_m,
                from_left_m,
                length_m: 0.5,
                width_m,
            },
            height_m,
            clearance_m: 0.0,
            opening: None,
        }
    }

    #[test]
    fn what_stands_behind_something_is_hidden_by_it() {
        let unit = item(0.4, 0.5, 0.6, 0.25);
        assert!((frontal_area_m2(&[unit]) - 0.15).abs() < 1e-12);
        // Behind it, lower, and 0.1 m wider on one side.
        let hatch = item(2.0, 0.9, 0.3, 0.1);
        assert!((frontal_area_m2(&[unit, hatch]) - 0.16).abs() < 1e-12);
        assert_eq!(frontal_area_m2(&[]), 0.0);
    }
}
