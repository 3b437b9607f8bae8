//! Days of a weather file run as a scenario, against an independent building program and against plain counting in the file.

use crate::checks::Check;
use crate::scenarios::switch_loads_off;
use crate::{Table, Worst, reference_path};
use noonday_engine::advice::summer::{Means, Summer, SummerSearch};
use noonday_engine::scenario::{
    FanUse, Ground, InsulationMaterial, NeededFor, Scenario, ScenarioDocument, Terrain, example,
    field,
};
use noonday_engine::simulation::{FULL_STEPS_PER_MINUTE, Season};
use noonday_engine::weather::FileWeather;

/// Days that settle the box before those that are compared.
const SETTLING_DAYS: u32 = 5;
const COMPARED_DAYS: u32 = 3;

fn epw(site: &str) -> String {
    let path = reference_path(&format!("thermal/weather_{site}.epw"));
    std::fs::read_to_string(path).unwrap()
}

/// A scenario as near to the box of `thermal/README.md` as its fields allow: ribs as far apart and as well broken as can be, grass
/// in the place of ground at the temperature of the air, a leak in the place of half an air change an hour.
fn box_document(paint: f64) -> ScenarioDocument {
    let mut document = example();
    let vehicle = &mut document.vehicle;
    (vehicle.length_m, vehicle.width_m, vehicle.height_m) = (4.30, 1.78, 1.90);
    (vehicle.floor_above_ground_m, vehicle.heading_deg) = (0.4, 180.0);
    (
        vehicle.furnishing_heat_capacity_j_k,
        vehicle.furnishing_area_m2,
    ) = (240_000.0, 15.0);
    let shell = &mut document.shell;
    (shell.roof_sun_absorptance, shell.wall_sun_absorptance) = (paint, paint);
    shell.insulation_material = InsulationMaterial::Other;
    shell.other_conductivity_w_m_k = 0.035;
    (shell.roof_insulation_m, shell.wall_insulation_m) = (0.025, 0.025);
    (shell.floor_insulation_m, shell.floor_board_m) = (0.020, 0.012);
    (shell.filled_share, shell.lining_sun_absorptance) = (1.0, 0.7);
    shell.leakage_area_m2 = 0.001;
    for key in ["shell.rib_spacing_m", "shell.thermal_break_m"] {
        let number = field(key).unwrap().number().unwrap();
        (number.write)(&mut document, number.maximum);
    }
    let glass = &mut document.glass;
    (glass.nose_area_m2, glass.rear_area_m2, glass.roof_area_m2) = (1.2, 0.0, 0.0);
    (glass.left_area_m2, glass.right_area_m2) = (0.5, 0.5);
    (
        glass.transmittance_w_m2_k,
        glass.solar_heat_gain_coefficient,
    ) = (5.8, 0.82);
    glass.covers_fitted = false;
    (document.occupants.people, document.occupants.dogs) = (0.0, 0.0);
    (
        document.occupants.cooking_heat_w,
        document.occupants.cooking_moisture_kg_s,
    ) = (0.0, 0.0);
    switch_loads_off(&mut document);
    document.ventilation.fan_use = FanUse::Off;
    document.cooler.installed = false;
    document.place.summer_time = false;
    (document.place.terrain, document.place.ground) = (Terrain::OpenCountry, Ground::Grass);
    document
}

/// Cabin air of a case's compared days, ten-minute means.
fn cabin_air_c(site: &str, paint: f64) -> Vec<f64> {
    let weather = FileWeather::from_epw_text(&epw(site)).unwrap();
    let scenario = Scenario::new(box_document(paint)).unwrap();
    let days = SETTLING_DAYS + COMPARED_DAYS;
    let season = Season::new(&scenario, &weather, days, 0.0).unwrap();
    let mut passage = season.passage(season.document().clone());
    let mut means = Vec::new();
    for day in 0..days {
        let run = passage.next_day(&season, FULL_STEPS_PER_MINUTE).unwrap();
        let samples = run.series.cabin_c;
        assert_eq!(samples.len(), 289);
        if day >= SETTLING_DAYS {
            // Samples are five minutes apart: Simpson's rule over each ten.
            let tens = (0..144).map(|ten| &samples[2 * ten..=2 * ten + 2]);
            means.extend(tens.map(|three| (three[0] + 4.0 * three[1] + three[2]) / 6.0));
        }
    }
    means
}

/// Source: EnergyPlus 25.2.0 on boxes of the same measures. Tolerance: that of the cabin by itself on the same cases, 1.5 K root
/// mean square and 2 K of the peak, although ground and leak are only alike.
#[must_use]
pub fn a_season_follows_the_building_program() -> Vec<Check> {
    const SOURCE: &str = "EnergyPlus 25.2.0, boxes under the same files (thermal/)";
    let (mut rms, mut peaks) = (Worst::default(), Worst::default());
    for (case, site, paint) in [
        ("A_GOL_25_W", "GOL", 0.25),
        ("A_GOL_25_B", "GOL", 0.92),
        ("A_TAM_25_W", "TAM", 0.25),
    ] {
        let ours = cabin_air_c(site, paint);
        let table = Table::read(&format!("thermal/{case}.csv"));
        let theirs: Vec<f64> = table.rows().map(|row| row.number("cabin_air_c")).collect();
        let squares = ours.iter().zip(&theirs).map(|(a, b)| (a - b) * (a - b));
        rms.note((squares.sum::<f64>() / theirs.len() as f64).sqrt(), case);
        let peak = |values: &[f64]| values.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        peaks.note(peak(&ours) - peak(&theirs), case);
    }
    vec![
        rms.check(
            "season, cabin air, root mean square of a case, K",
            1.5,
            SOURCE,
        ),
        peaks.check("season, cabin air, peak of a case, K", 2.0, SOURCE),
    ]
}

/// The need of the example's night alone, with a limit, on a file without a cooler.
fn nights(site: &str, highest_felt_c: f64) -> Summer {
    let mut document = example();
    document.cooler.installed = false;
    document.place.summer_time = false;
    document.need.windows[0].needed_for = NeededFor::Nobody;
    document.need.windows[1].highest_felt_c = highest_felt_c;
    let weather = FileWeather::from_epw_text(&epw(site)).unwrap();
    let scenario = Scenario::new(document).unwrap();
    let mut search = SummerSearch::new(&scenario, &weather, 7).unwrap();
    while !search.step().unwrap() {}
    search.found().clone()
}

/// Dry bulb of the hours 22 to 6 of each of the first seven nights, by splitting the lines of the file at their commas.
fn night_hours_c(site: &str) -> Vec<Vec<f64>> {
    let text = epw(site);
    let hours: Vec<f64> = text
        .lines()
        .skip(8)
        .map(|line| line.split(',').nth(6).unwrap().parse().unwrap())
        .collect();
    // The record of an hour stands at its end: that of 22:00 is the 22nd of the day.
    (0..7)
        .map(|day| hours[24 * day + 21..=24 * day + 29].to_vec())
        .collect()
}

/// Source: the hours of the TMY3 files themselves, National Renewable Energy Laboratory, by plain counting. A parked cabin with
/// people in it that only has a fan is no cooler than the air outdoors: a night that never falls to the limit is missed.
#[must_use]
pub fn a_fan_alone_misses_every_night_that_never_falls_to_the_limit() -> Vec<Check> {
    const SOURCE: &str = "plain counting in the TMY3 files (thermal/)";
    let mut wrong = Worst::default();
    let mut counted = 0;
    for (site, limit_c) in [("TAM", 20.0), ("TAM", 23.0), ("TAM", 24.0), ("GOL", 15.0)] {
        let summer = nights(site, limit_c);
        for (hours, day) in night_hours_c(site).iter().zip(&summer.days) {
            let coolest_c = hours.iter().copied().fold(f64::INFINITY, f64::min);
            if coolest_c > limit_c {
                counted += 1;
                let met = day.held[0][Means::FanAlone as usize].met;
                wrong.note(f64::from(u8::from(met)), format!("{site} {limit_c}"));
            }
        }
    }
    assert!(counted >= 8, "only {counted} nights say anything");
    vec![wrong.check("nights met by a fan though never cool enough", 0.0, SOURCE)]
}
