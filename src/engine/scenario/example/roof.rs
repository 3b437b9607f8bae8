//! The roof of the ready example.

use crate::scenario::document::{Roof, RoofFan, RoofHatch, RoofPanel, RoofPlace, RoofUnit};

/// A roof with a unit, a fan, a hatch and three panels: invented, for demonstration.
pub(super) fn roof() -> Roof {
    let at = |from_front_m, from_left_m| RoofPlace {
        from_front_m,
        from_left_m,
    };
    Roof {
        panels_from_plan: false,
        length_m: 3.7,
        width_m: 1.55,
        height_above_ground_m: 2.55,
        clearance_height_m: 3.0,
        limit_at_rest_kg: 300.0,
        limit_under_way_kg: 150.0,
        highest_speed_m_s: 36.0,
        other_mass_kg: 15.0,
        fan_and_hatch_height_m: 0.1,
        unit: RoofUnit {
            length_m: 0.8,
            width_m: 0.65,
            height_m: 0.25,
            mass_kg: 30.0,
            cut_out_m: 0.36,
            clearance_m: 0.1,
            place: at(0.5, 0.45),
        },
        fan: RoofFan {
            side_m: 0.4,
            place: at(1.9, 0.57),
        },
        hatches: [
            RoofHatch {
                length_m: 0.4,
                width_m: 0.4,
                place: at(3.1, 0.57),
            },
            RoofHatch {
                length_m: 0.0,
                width_m: 0.0,
                place: at(2.5, 0.57),
            },
        ],
        panel: RoofPanel {
            count: 3.0,
            length_m: 1.05,
            width_m: 0.54,
            mass_kg: 7.0,
            rated_power_w: 100.0,
        },
        panels: [
            at(1.45, 0.0),
            at(1.45, 1.0),
            at(2.55, 0.0),
            at(2.55, 1.0),
            at(0.0, 0.0),
            at(0.0, 1.0),
            at(0.4, 0.0),
            at(0.4, 1.0),
        ],
    }
}
