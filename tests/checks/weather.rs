//! Weather against published correlations and against the weather that an independent building
//! program made of the same file.

use crate::checks::Check;
use crate::{Table, Worst, reference_path};
use noonday_engine::solar::{Date, SunPath};
use noonday_engine::weather::{
    Epw, FileWeather, clear_sky_emissivity, cloud_factor, sky_longwave_w_m2, sky_temperature_c,
};

/// Source: the table's own evaluation of Berdahl & Martin 1984 without diurnal and pressure terms,
/// and of the cloud factor of Walton 1983. Tolerance: half of the last digit printed, of the dew
/// point too (0.0005 K is 4e-6).
#[must_use]
pub fn sky_agrees_with_the_published_correlations() -> Vec<Check> {
    const SOURCE: &str =
        "Berdahl & Martin 1984, Clark & Allen 1978, Walton 1983 (sky_temperature.csv)";
    let table = Table::read("sky_temperature.csv");
    let (mut emissivities, mut factors, mut temperatures) =
        (Worst::default(), Worst::default(), Worst::default());
    for row in table.rows() {
        let dry_bulb_c = row.number("T_C");
        let label = format!("{dry_bulb_c} °C, dew point {} °C", row.number("Td_C"));
        let emissivity = clear_sky_emissivity(row.number("Td_C"));
        emissivities.note(emissivity - row.number("eps_BM84"), &label);
        let factor = cloud_factor(row.number("cloud_frac"));
        factors.note(
            factor - row.number("eps_CA_cloud") / row.number("eps_ClarkAllen"),
            &label,
        );
        let clear = sky_temperature_c(sky_longwave_w_m2(emissivity, 1.0, dry_bulb_c));
        temperatures.note(clear - row.number("Tsky_BM84"), &label);
        let cloudy_w_m2 = sky_longwave_w_m2(row.number("eps_ClarkAllen"), factor, dry_bulb_c);
        temperatures.note(
            (cloudy_w_m2 - row.number("IR_CA_cloud_W_m2")) / 10.0,
            &label,
        );
    }
    vec![
        emissivities.check("sky emissivity", 1e-5, SOURCE),
        factors.check("cloud factor", 2e-5, SOURCE),
        temperatures.check("sky temperature, K, and longwave, 10 W/m²", 1e-3, SOURCE),
    ]
}

/// The weather of a file in `reference/thermal`.
fn file_weather(name: &str) -> FileWeather {
    let path = reference_path(&format!("thermal/{name}"));
    FileWeather::from_epw_text(&std::fs::read_to_string(path).unwrap()).unwrap()
}

/// Notes the errors of the dry bulb and of the sun on the level roof, in ten-minute means of a
/// case.
fn compare_case(
    case: &str,
    file: &str,
    (month, day): (u8, u8),
    source: &'static str,
) -> Vec<Check> {
    let weather = file_weather(file).starting_on(month, day).unwrap();
    // The case's own calendar; the file's year, 2004, is a leap year, in which the sun is a day further.
    let first_day = Date::new(2023, month, day).unwrap();
    let path = SunPath::new(&weather.place(), first_day, 3).unwrap();
    let table = Table::read(&format!("thermal/{case}.csv"));
    let (mut dry_bulbs, mut high_sun, mut low_sun) =
        (Worst::default(), Worst::default(), Worst::default());
    let (mut roof_sum, mut roof_expected_sum) = (0.0, 0.0);
    for (interval, row) in (0..).zip(table.rows()) {
        let (mut dry_bulb_c, mut roof_w_m2, mut is_low) = (0.0, 0.0, false);
        for minute in interval * 10 + 1..=interval * 10 + 10 {
            let outdoors = weather.at(f64::from(minute) * 60.0, &path);
            dry_bulb_c += outdoors.dry_bulb_c / 10.0;
            roof_w_m2 += outdoors.irradiance.global_horizontal_w_m2 / 10.0;
            is_low |= (84.0..96.0).contains(&outdoors.sun.zenith_deg);
        }
        let stamp = row.text("end_of_interval");
        let expected_w_m2 = row.number("roof_incident_sun_w_m2");
        dry_bulbs.note(dry_bulb_c - row.number("outdoor_c"), stamp);
        let sun = if is_low { &mut low_sun } else { &mut high_sun };
        sun.note(roof_w_m2 - expected_w_m2, stamp);
        roof_sum += roof_w_m2;
        roof_expected_sum += expected_w_m2;
    }
    let mut sums = Worst::default();
    sums.note(roof_sum / roof_expected_sum - 1.0, case);
    vec![
        dry_bulbs.check(format!("{case}, dry bulb, K"), 1e-4, source),
        high_sun.check(format!("{case}, sun on the roof, W/m²"), 2.0, source),
        low_sun.check(
            format!("{case}, sun on the roof within 6° of the horizon, W/m²"),
            5.0,
            source,
        ),
        sums.check(
            format!("{case}, sum of the sun on the roof, relative"),
            2e-3,
            source,
        ),
    ]
}

/// Source: EnergyPlus 25.2.0 with one-minute steps on the same file, columns outdoor_c and
/// roof_incident_sun_w_m2. It decides where the values of a record belong: dry bulb at the stamp,
/// irradiance at the middle of the hour before. Tolerance: dry bulb to the digits printed; sun 2
/// W/m², because the program has its own simpler position of the sun, and 5 W/m² near the horizon,
/// where its brightness of the sky on a level plane differs too.
#[must_use]
pub fn file_weather_agrees_with_the_building_program() -> Vec<Check> {
    const SOURCE: &str = "EnergyPlus 25.2.0 on the same file (thermal/)";
    let mut checks = compare_case("A_GOL_25_B", "weather_GOL.epw", (7, 11), SOURCE);
    checks.extend(compare_case(
        "A_TAM_25_W",
        "weather_TAM.epw",
        (7, 16),
        SOURCE,
    ));
    checks
}

/// The sums of a day's direct and diffuse irradiance are those of the file: source TMY3, National
/// Renewable Energy Laboratory. Tolerance 1 %: straight lines between the middles of hours cut
/// peaks and fill hollows.
#[must_use]
pub fn file_weather_keeps_the_sums_of_the_file() -> Vec<Check> {
    const SOURCE: &str = "the TMY3 file itself, National Renewable Energy Laboratory (thermal/)";
    let mut checks = Vec::new();
    for name in ["weather_GOL.epw", "weather_TAM.epw"] {
        let text = std::fs::read_to_string(reference_path(&format!("thermal/{name}"))).unwrap();
        let epw = Epw::parse(&text).unwrap();
        let weather = FileWeather::new(&epw).unwrap();
        let path = SunPath::new(&weather.place(), weather.first_day(), 8).unwrap();
        let hours = epw.records.iter();
        let expected = hours.fold((0.0, 0.0), |(direct, diffuse), record| {
            (
                direct + record.direct_normal_w_m2.unwrap(),
                diffuse + record.diffuse_horizontal_w_m2.unwrap(),
            )
        });
        let minutes = (0..8 * 1_440).map(|minute| weather.at(f64::from(minute) * 60.0, &path));
        let sums = minutes.fold((0.0, 0.0), |(direct, diffuse), outdoors| {
            (
                direct + outdoors.irradiance.direct_normal_w_m2 / 60.0,
                diffuse + outdoors.irradiance.diffuse_horizontal_w_m2 / 60.0,
            )
        });
        let mut worst = Worst::default();
        worst.note(sums.0 / expected.0 - 1.0, "direct");
        worst.note(sums.1 / expected.1 - 1.0, "diffuse");
        checks.push(worst.check(
            format!("{name}, sums over eight days, relative"),
            0.01,
            SOURCE,
        ));
        assert!(weather.filled().is_empty(), "{:?}", weather.filled());
    }
    checks
}
