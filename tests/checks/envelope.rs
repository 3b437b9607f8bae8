//! Convection, ribs, glass and leaks against published forms, tables and measurements.

use crate::checks::Check;
use crate::{Table, Worst};
use noonday_engine::envelope::air_exchange::leakage_flow_m3_s;
use noonday_engine::envelope::bridging::RibbedWall;
use noonday_engine::envelope::convection::{
    ROUGHNESS_VERY_SMOOTH, WindSide, WindTerm, natural_w_m2_k, outside_w_m2_k,
};
use noonday_engine::envelope::glazing::Glazing;

/// Convection coefficients over wind and temperature difference: `convection.csv`, worked out independently from Walton 1983
/// and Booten et al. 2012. Tolerance: half of the last digit printed, for the wind term four times that, which its square
/// root is worth.
///
/// The table's buoyancy inside the wind term is 0.84 ΔT^⅓ of the MoWiTT form; the engine takes Walton's in the DOE-2 form, so
/// that only the DOE-2 column compares with wind. In it the wind alone is a V^b.
#[must_use]
pub fn convection_follows_its_published_forms() -> Vec<Check> {
    const SOURCE: &str = "Walton 1983 and Booten et al. 2012, NREL/TP-5500-55787 (convection.csv)";
    let (mut buoyancy, mut wind) = (Worst::default(), Worst::default());
    for row in Table::read("convection.csv").rows() {
        let (speed_m_s, difference_k) = (row.number("V_m_s"), row.number("dT_K"));
        let label = format!("{speed_m_s} m/s, {difference_k} K");
        for (cosine, column) in [
            (0.0, "nat_vert"),
            (1.0, "nat_up_hot"),
            (-1.0, "nat_down_hot"),
        ] {
            let value = natural_w_m2_k(difference_k, cosine);
            buoyancy.note(value - row.number(column), format!("{column}, {label}"));
        }
        let upright = natural_w_m2_k(difference_k, 0.0);
        let value = outside_w_m2_k(
            upright,
            WindTerm::at(speed_m_s).on(WindSide::Windward),
            ROUGHNESS_VERY_SMOOTH,
        );
        wind.note(value - row.number("doe2_windward"), label);
    }
    vec![
        buoyancy.check("buoyant convection, W/(m² K)", 0.51e-4, SOURCE),
        wind.check("convection in wind, W/(m² K)", 2e-4, SOURCE),
    ]
}

/// Walls with steel ribs: `thermal_bridge.csv`, the zone method worked out independently (ASHRAE Fundamentals ch. 27, from
/// memory). Its wall is lined with 4 mm of plywood of 0.12 W/(m K). Tolerance: 0.2 %, for the table's steel skin, web and strip
/// are its own.
#[must_use]
pub fn ribs_follow_the_zone_method() -> Vec<Check> {
    const SOURCE: &str =
        "zone method, ASHRAE Fundamentals ch. 27, from memory (thermal_bridge.csv)";
    let (mut clear, mut ribbed) = (Worst::default(), Worst::default());
    for row in Table::read("thermal_bridge.csv").rows() {
        let wall = RibbedWall {
            insulation_m: row.number("d_ins_m"),
            insulation_conductivity_w_m_k: row.number("lambda"),
            lining_m: 0.004,
            lining_conductivity_w_m_k: 0.12,
            rib_spacing_m: row.number("pitch_m"),
            thermal_break_m: row.number("break_m"),
        };
        let label = format!("{wall:?}");
        clear.note(
            wall.transmittance_clear_w_m2_k() / row.number("U_clear") - 1.0,
            &label,
        );
        ribbed.note(
            wall.transmittance_w_m2_k() / row.number("U_zone") - 1.0,
            &label,
        );
        assert_eq!(wall.zone_width_m(), row.number("zone_W_m"));
    }
    vec![
        clear.check("transmittance between ribs, relative", 2e-3, SOURCE),
        ribbed.check("transmittance with ribs, relative", 2e-3, SOURCE),
    ]
}

/// Surface films of a pane at a transmittance, m² K/W: LBNL-2804E eqs. 5 to 7, written anew from the report.
fn films_m2_k_w(u: f64) -> f64 {
    let inside = if u < 5.85 {
        1.0 / (0.359_073 * libm::log(u) + 6.949_915)
    } else {
        1.0 / (1.788_041 * u - 2.886_625)
    };
    inside + 1.0 / (0.025_342 * u + 29.163_853)
}

/// A pane's resistance and its films give back the transmittance by which it is described: `glazing.csv`, LBNL-2804E.
#[must_use]
pub fn glass_has_the_transmittance_it_is_described_by() -> Vec<Check> {
    const SOURCE: &str = "LBNL-2804E eqs. 5 to 7, written anew (glazing.csv)";
    let mut worst = Worst::default();
    for row in Table::read("glazing.csv").rows() {
        let u = row.number("U");
        let pane = Glazing::new(u, row.number("SHGC")).unwrap();
        let back = 1.0 / (pane.resistance_m2_k_w + films_m2_k_w(u));
        worst.note(back / u - 1.0, row.text("glazing"));
    }
    vec![worst.check("transmittance of a pane, relative", 1e-9, SOURCE)]
}

/// Single glass behind a fitted cover by hand: `glazing.csv`, U = 1/(1/5.8 + R) with R 0.2 and 0.4 m² K/W. Tolerance: half of
/// the last digit printed.
#[must_use]
pub fn covers_add_their_resistance_to_the_pane() -> Vec<Check> {
    const SOURCE: &str = "U = 1/(1/5.8 + R) by hand (glazing.csv)";
    let table = Table::read("glazing.csv");
    let bare = Glazing::new(5.8, 0.85).unwrap();
    let mut worst = Worst::default();
    for (name, cover_m2_k_w) in [
        ("single glass + fitted insulated cover inside (R 0.2)", 0.2),
        ("single glass + fitted quilted cover 20 mm (R 0.4)", 0.4),
    ] {
        let row = table
            .rows()
            .find(|row| row.text("glazing") == name)
            .unwrap();
        let u = 1.0 / (bare.resistance_m2_k_w + cover_m2_k_w + films_m2_k_w(5.8));
        worst.note(u - row.number("U"), name);
    }
    vec![worst.check("transmittance with covers, W/(m² K)", 0.051, SOURCE)]
}

/// Closed parked cars were measured at 0 to 3 air changes an hour, most between 0.3 and 2 (Park et al. 1998, Ott et al. 2008,
/// Knibbs et al. 2009, `infiltration.csv`): the default leakage has to lie among them from still air to a breeze.
#[must_use]
pub fn leaks_lie_where_vehicles_were_measured() -> Vec<Check> {
    const SOURCE: &str = "Park et al. 1998, Ott et al. 2008, Knibbs et al. 2009 (infiltration.csv)";
    const LEAST_PER_H: f64 = 0.0;
    const GREATEST_PER_H: f64 = 3.0;
    let example = noonday_engine::scenario::example();
    let vehicle = &example.vehicle;
    let volume_m3 = vehicle.length_m * vehicle.width_m * vehicle.height_m;
    let mut beyond = Worst::default();
    for (difference_k, wind_m_s) in [
        (1.0, 0.0),
        (10.0, 0.5),
        (10.0, 2.0),
        (20.0, 3.0),
        (5.0, 5.0),
    ] {
        let flow_m3_s = leakage_flow_m3_s(
            example.shell.leakage_area_m2,
            vehicle.height_m,
            difference_k,
            wind_m_s,
        );
        let changes_per_h = 3_600.0 * flow_m3_s / volume_m3;
        let outside = changes_per_h - changes_per_h.clamp(LEAST_PER_H, GREATEST_PER_H);
        beyond.note(
            outside,
            format!("{difference_k} K, {wind_m_s} m/s: {changes_per_h:.2} 1/h"),
        );
    }
    vec![beyond.check("leakage outside the measured range, 1/h", 0.0, SOURCE)]
}
