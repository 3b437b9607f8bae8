//! The sun against the worked example of the solar position algorithm and against a published
//! open-source library for solar modelling.

use std::collections::HashMap;

use crate::checks::Check;
use crate::{Row, Table, Worst};
use noonday_engine::air::standard_atmosphere_pressure_pa;
use noonday_engine::solar::{
    ClearSky, Date, Irradiance, Place, Plane, SkyDome, SunPath, SunPosition,
    extraterrestrial_normal_w_m2, relative_airmass,
};

/// The date, seconds since midnight and UTC offset in hours of a stamp like
/// `2026-06-21T06:00:00-07:00`.
fn parse_stamp(stamp: &str) -> (Date, f64, f64) {
    let number = |range: std::ops::Range<usize>| stamp[range].parse::<u32>().unwrap();
    let date = parse_date(stamp);
    let time_s = f64::from(number(11..13) * 3600 + number(14..16) * 60 + number(17..19));
    let sign = if stamp[stamp.len() - 6..].starts_with('-') {
        -1.0
    } else {
        1.0
    };
    let length = stamp.len();
    let offset_h =
        f64::from(number(length - 5..length - 3)) + f64::from(number(length - 2..length)) / 60.0;
    (date, time_s, sign * offset_h)
}

/// The date of a stamp in universal time, by which the library counts the days of the year.
fn universal_date(stamp: &str) -> Date {
    let (date, time_s, offset_h) = parse_stamp(stamp);
    let days = ((time_s - offset_h * 3600.0) / 86_400.0).floor();
    date.plus_days(days as i32)
}

/// The date at the beginning of a stamp.
fn parse_date(stamp: &str) -> Date {
    let number = |range: std::ops::Range<usize>| stamp[range].parse::<u8>().unwrap();
    Date::new(stamp[..4].parse().unwrap(), number(5..7), number(8..10)).unwrap()
}

/// Difference of two angles over the shorter way round, degrees.
fn angle_difference_deg(one: f64, other: f64) -> f64 {
    let turned = (one - other).rem_euclid(360.0);
    turned.min(360.0 - turned)
}

/// The places of the table, by name.
fn places() -> HashMap<String, Place> {
    let table = Table::read("solar_position.csv");
    let place = |row: Row<'_>| Place {
        latitude_deg: row.number("lat"),
        longitude_deg: row.number("lon"),
        altitude_m: row.number("alt_m"),
        utc_offset_h: parse_stamp(row.text("time")).2,
    };
    table
        .rows()
        .map(|row| (row.text("place").to_owned(), place(row)))
        .collect()
}

/// Source: pvlib 0.16.1, NREL SPA, six places on both hemispheres. Tolerance 1e-3°: the table has
/// five decimals and its difference of time scales is fixed at 67 s, which shifts the sun by 2e-5°.
#[must_use]
pub fn position_agrees_with_the_published_library() -> Vec<Check> {
    const SOURCE: &str = "NREL SPA in pvlib 0.16.1 (solar_position.csv)";
    let table = Table::read("solar_position.csv");
    let (mut zeniths, mut apparent, mut azimuths) =
        (Worst::default(), Worst::default(), Worst::default());
    let places = places();
    for row in table.rows() {
        let (date, time_s, _) = parse_stamp(row.text("time"));
        let place = places[row.text("place")];
        // The same instant in runs that begin earlier and later must not differ.
        for days_earlier in [-1, 0, 3] {
            let path = SunPath::new(&place, date.plus_days(-days_earlier), 4).unwrap();
            let sun = path.at(time_s + f64::from(days_earlier) * 86_400.0);
            let label = format!("{} {}", row.text("place"), row.text("time"));
            zeniths.note(sun.zenith_deg - row.number("zenith"), &label);
            apparent.note(
                sun.apparent_zenith_deg - row.number("apparent_zenith"),
                &label,
            );
            azimuths.note(
                angle_difference_deg(sun.azimuth_deg, row.number("azimuth")),
                &label,
            );
        }
    }
    vec![
        zeniths.check("zenith, degrees", 1e-3, SOURCE),
        apparent.check("apparent zenith, degrees", 1e-3, SOURCE),
        azimuths.check("azimuth, degrees", 1e-3, SOURCE),
    ]
}

/// Source: Reda & Andreas, NREL/TP-560-34302 (2008), worked example: 2003-10-17 12:30:30 UTC−7,
/// 39.742476° N, 105.1786° W, 1830.14 m, 820 hPa, 11 °C, ΔT 67 s (this project's ΔT is 64.5 s);
/// slope 30°, facing 10° east of south. Tolerance 1e-3°.
#[must_use]
pub fn position_agrees_with_the_worked_example() -> Vec<Check> {
    const SOURCE: &str = "Reda & Andreas, NREL/TP-560-34302 (spa_example.csv)";
    let place = Place {
        latitude_deg: 39.742_476,
        longitude_deg: -105.178_6,
        altitude_m: 1_830.14,
        utc_offset_h: -7.0,
    };
    let path = SunPath::new(&place, Date::new(2003, 10, 17).unwrap(), 1)
        .unwrap()
        .with_refraction(82_000.0, 11.0)
        .unwrap();
    let sun = path.at(12.0 * 3600.0 + 30.0 * 60.0 + 30.0);
    let slope = Plane::new(30.0, 170.0);
    let incidence_deg = incidence_deg(slope.incidence_cosine(&sun));
    let table = Table::read("spa_example.csv");
    let mut worst = Worst::default();
    for row in table.rows().filter(|row| row.text("unit") == "deg") {
        let quantity = row.text("quantity");
        let value = match quantity.split(' ').next() {
            Some("topocentric") => sun.apparent_zenith_deg,
            Some("azimuth") => sun.azimuth_deg,
            _ => incidence_deg,
        };
        worst.note(value - row.number("report"), quantity);
    }

    let mut events = Worst::default();
    for row in table.rows().filter(|row| row.text("unit") == "local std") {
        let text = row.text("report");
        let field = |range: std::ops::Range<usize>| text[range].parse::<f64>().unwrap();
        let time_s = field(0..2) * 3600.0 + field(3..5) * 60.0 + field(6..text.len());
        let sun = path.at(time_in_universal_day_s(time_s, place.utc_offset_h));
        let error_deg = match row.text("quantity") {
            "transit" => sun.azimuth_deg - 180.0,
            _ => sun.zenith_deg - ZENITH_AT_SUNRISE_DEG,
        };
        events.note(error_deg, row.text("quantity"));
    }
    vec![
        worst.check("worked example, degrees", 1e-3, SOURCE),
        events.check("events of the worked example, degrees", 0.01, SOURCE),
    ]
}

/// Zenith of the sun's centre at sunrise and sunset: half its width and the refraction below the
/// horizon (SPA sec. A.2).
const ZENITH_AT_SUNRISE_DEG: f64 = 90.833_37;

/// The local time of an event that the algorithm reports, s.
///
/// SPA finds the events of the universal day: in the west of the Americas, where the sun sets after
/// midnight universal time, the sunset that it lists for a date is that of the evening before.
fn time_in_universal_day_s(time_s: f64, utc_offset_h: f64) -> f64 {
    let offset_s = utc_offset_h * 3600.0;
    (time_s - offset_s).rem_euclid(86_400.0) + offset_s
}

/// Angle between the sun and a plane's normal, degrees.
fn incidence_deg(incidence_cosine: f64) -> f64 {
    libm::acos(incidence_cosine).to_degrees()
}

/// The sun of a row of `clear_sky.csv`, with the azimuth from `solar_position.csv`.
fn suns() -> HashMap<(String, String), SunPosition> {
    let azimuths = Table::read("solar_position.csv");
    let azimuth_of: HashMap<_, _> = azimuths
        .rows()
        .map(|row| ((row.text("place"), row.text("time")), row.number("azimuth")))
        .collect();
    Table::read("clear_sky.csv")
        .rows()
        .map(|row| {
            let (place, time) = (row.text("place"), row.text("time"));
            let sun = SunPosition::from_angles(
                row.number("app_zenith"),
                azimuth_of[&(place, time)],
                extraterrestrial_normal_w_m2(universal_date(time).day_of_year()),
            );
            ((place.to_owned(), time.to_owned()), sun)
        })
        .collect()
}

/// Notes the error beyond which both 1 % and 3 W/m² are exceeded, as a multiple of that bound.
fn note_irradiance(worst: &mut Worst, value: f64, expected: f64, label: &str) {
    worst.note((value - expected) / (0.01 * expected).max(3.0), label);
}

/// Source: pvlib 0.16.1, Ineichen & Perez 2002 with the Linke turbidity of the row and with 3,
/// Spencer 1971, Kasten & Young 1989. Tolerance 1 % or 3 W/m², whichever is more, for the
/// irradiances; half of the last digit for the rest.
#[must_use]
pub fn clear_sky_agrees_with_the_published_library() -> Vec<Check> {
    const SOURCE: &str = "Ineichen & Perez 2002 in pvlib 0.16.1 (clear_sky.csv)";
    let table = Table::read("clear_sky.csv");
    let places = places();
    let suns = suns();
    let (mut irradiances, mut outside, mut airmasses) =
        (Worst::default(), Worst::default(), Worst::default());
    for row in table.rows() {
        let (place, time) = (row.text("place"), row.text("time"));
        let altitude_m = places[place].altitude_m;
        let pressure_pa = standard_atmosphere_pressure_pa(altitude_m);
        let sun = suns[&(place.to_owned(), time.to_owned())];
        outside.note(
            sun.extraterrestrial_normal_w_m2 - row.number("dni_extra"),
            time,
        );
        let airmass = relative_airmass(sun.apparent_zenith_deg);
        airmasses.note(airmass / row.number("am_rel") - 1.0, time);
        airmasses.note(
            airmass * pressure_pa / 101_325.0 / row.number("am_abs") - 1.0,
            time,
        );
        for (turbidity, columns) in [
            (row.number("TL"), ["ine_ghi", "ine_dni", "ine_dhi"]),
            (3.0, ["ineTL3_ghi", "ineTL3_dni", "ineTL3_dhi"]),
        ] {
            let clear = ClearSky::new(turbidity, altitude_m)
                .unwrap()
                .at(&sun, pressure_pa);
            let parts = [
                clear.global_horizontal_w_m2,
                clear.direct_normal_w_m2,
                clear.diffuse_horizontal_w_m2,
            ];
            for (value, column) in parts.into_iter().zip(columns) {
                note_irradiance(
                    &mut irradiances,
                    value,
                    row.number(column),
                    &format!("{column} {place} {time}"),
                );
            }
        }
    }
    vec![
        outside.check("extraterrestrial irradiance, W/m²", 6e-4, SOURCE),
        airmasses.check("airmass, relative", 2e-4, SOURCE),
        irradiances.check("clear sky, in units of 1 % or 3 W/m²", 1.0, SOURCE),
    ]
}

/// Source: pvlib 0.16.1, clear-sky sums of minutes over a day, and sunrise and sunset by SPA.
/// Tolerance 1 % of each sum; 0.01° of the zenith at sunrise and sunset (parallax, which the
/// algorithm leaves out there, is 0.0024°). Only the level roof is compared of the planes: the
/// table's walls are by another sky model.
#[must_use]
pub fn daily_sums_agree_with_the_published_library() -> Vec<Check> {
    const SOURCE: &str = "Ineichen & Perez 2002 and SPA in pvlib 0.16.1 (daily_irradiation.csv)";
    let table = Table::read("daily_irradiation.csv");
    let places = places();
    let (mut sums, mut horizon) = (Worst::default(), Worst::default());
    for row in table.rows() {
        let place = places[row.text("place")];
        let date = parse_date(row.text("date"));
        let path = SunPath::new(&place, date, 1).unwrap();
        let sky = ClearSky::new(row.number("TL"), place.altitude_m).unwrap();
        let pressure_pa = standard_atmosphere_pressure_pa(place.altitude_m);
        let roof = Plane::new(0.0, 0.0);
        let mut total = Irradiance::default();
        let mut roof_wh = 0.0;
        let mut peak_w = 0.0_f64;
        for minute in 0..1_440 {
            let sun = path.at(f64::from(minute) * 60.0);
            let clear = sky.at(&sun, pressure_pa);
            total.global_horizontal_w_m2 += clear.global_horizontal_w_m2 / 60.0;
            total.direct_normal_w_m2 += clear.direct_normal_w_m2 / 60.0;
            total.diffuse_horizontal_w_m2 += clear.diffuse_horizontal_w_m2 / 60.0;
            roof_wh += SkyDome::new(&sun, &clear).on_plane(&roof, 0.2).total_w_m2() / 60.0;
            peak_w = peak_w.max(clear.global_horizontal_w_m2);
        }
        for (value, column) in [
            (total.global_horizontal_w_m2, "GHI_Wh"),
            (total.direct_normal_w_m2, "DNI_Wh"),
            (total.diffuse_horizontal_w_m2, "DHI_Wh"),
            (roof_wh, "roof_flat_Wh"),
            (peak_w, "GHI_peak_W"),
        ] {
            sums.note(
                value / row.number(column) - 1.0,
                format!("{column} {}", row.text("place")),
            );
        }
        for column in ["sunrise", "sunset"] {
            let text = row.text(column);
            let seconds: f64 = text[17..29].parse().unwrap();
            let whole = format!("{}00{}", &text[..17], &text[29..]);
            let time_s = parse_stamp(&whole).1 + seconds;
            let time_s = time_in_universal_day_s(time_s, place.utc_offset_h);
            horizon.note(
                path.at(time_s).zenith_deg - ZENITH_AT_SUNRISE_DEG,
                format!("{column} {}", row.text("place")),
            );
        }
    }
    vec![
        sums.check("daily sums, relative", 0.01, SOURCE),
        horizon.check("zenith at sunrise and sunset, degrees", 0.01, SOURCE),
    ]
}

/// Source: pvlib 0.16.1, Perez 1990 all-sites composite, reflectance 0.2, on the irradiances of
/// `clear_sky.csv`. Tolerance 2 % or 5 W/m², whichever is more; the angle of incidence to 0.01°.
#[must_use]
pub fn planes_agree_with_the_published_library() -> Vec<Check> {
    const SOURCE: &str = "Perez 1990 in pvlib 0.16.1 (transposition.csv)";
    let suns = suns();
    let sky_table = Table::read("clear_sky.csv");
    let skies: HashMap<_, _> = sky_table
        .rows()
        .map(|row| {
            let irradiance = Irradiance {
                global_horizontal_w_m2: row.number("ine_ghi"),
                direct_normal_w_m2: row.number("ine_dni"),
                diffuse_horizontal_w_m2: row.number("ine_dhi"),
            };
            ((row.text("place"), row.text("time")), irradiance)
        })
        .collect();
    let table = Table::read("transposition.csv");
    let (mut parts, mut incidence) = (Worst::default(), Worst::default());
    for row in table.rows() {
        let (place, time) = (row.text("place"), row.text("time"));
        let sun = suns[&(place.to_owned(), time.to_owned())];
        let plane = Plane::new(row.number("tilt"), row.number("surf_azimuth"));
        let on_plane = SkyDome::new(&sun, &skies[&(place, time)]).on_plane(&plane, 0.2);
        let label = |what: &str| format!("{what} {place} {time} {}", row.text("surface"));
        for (value, column) in [
            (on_plane.beam_w_m2, "poa_direct"),
            (on_plane.sky_diffuse_w_m2, "perez_sky"),
            (on_plane.ground_w_m2, "poa_ground"),
            (on_plane.total_w_m2(), "perez_global"),
        ] {
            let expected = row.number(column);
            parts.note(
                (value - expected) / (0.02 * expected).max(5.0),
                label(column),
            );
        }
        incidence.note(
            incidence_deg(on_plane.incidence_cosine) - row.number("aoi"),
            label("aoi"),
        );
    }
    vec![
        parts.check("planes, in units of 2 % or 5 W/m²", 1.0, SOURCE),
        incidence.check("angle of incidence, degrees", 0.01, SOURCE),
    ]
}
