//! The vehicle on the ground, seen from above, under the sky of its day: the sun's path around it, the sun at an instant, and the
//! shadow that the vehicle throws then. North is at the top and east on the right; the rim is the horizon and the middle the zenith.

use crate::text::Voice;
use crate::text::weather::sky as text;
use noonday_engine::scenario::Vehicle;
use noonday_engine::simulation::SunPlace;
use std::fmt::Write;

/// Half the sheet, and the radius of the horizon, units.
const HALF: f64 = 170.0;
const HORIZON: f64 = 136.0;

/// Length of the longest vehicle that is drawn to a larger scale, m, and that of its drawing, units.
const LENGTH: f64 = 74.0;

/// Longest shadow, units.
const LONGEST_SHADOW: f64 = 120.0;

type Place = (f64, f64);

/// What is drawn.
pub struct Sky<'a> {
    /// The vehicle, to scale.
    pub vehicle: &'a Vehicle,
    /// The sun's path over the day.
    pub path: &'a [SunPlace],
    /// The sun at the instant that is read.
    pub now: SunPlace,
}

/// The picture as text of an SVG; what it shows is said in words elsewhere.
pub fn dome(sky: &Sky<'_>, voice: &Voice) -> String {
    let mut out = format!(
        "<svg viewBox=\"{0} {0} {1} {1}\" aria-hidden=\"true\" focusable=\"false\">\
         <circle class=\"s-ground\" r=\"{HORIZON}\"/>",
        -HALF,
        2.0 * HALF
    );
    rim(&mut out);
    body(&mut out, sky);
    path(&mut out, sky.path, voice);
    if sky.now.altitude_deg > 0.0 {
        let (x, y) = place(&sky.now);
        put(
            &mut out,
            &format!("<path class=\"s-ray\" d=\"M{x:.1} {y:.1}L0 0\"/>"),
        );
        put(
            &mut out,
            &format!("<circle class=\"s-sun\" cx=\"{x:.1}\" cy=\"{y:.1}\" r=\"11\"/>"),
        );
    }
    out.push_str("</svg>");
    out
}

// Writing into a text cannot fail, which is why what it gives is put aside.
fn put(out: &mut String, svg: &str) {
    let _ = write!(out, "{svg}");
}

/// Where a direction of the sky lies: as far from the middle as it is from the zenith.
fn place(sun: &SunPlace) -> Place {
    let radius = HORIZON * (90.0 - sun.altitude_deg) / 90.0;
    let (sine, cosine) = sun.azimuth_deg.to_radians().sin_cos();
    (radius * sine, -radius * cosine)
}

/// Names of the quarters outside the horizon, and ticks between.
fn rim(out: &mut String) {
    for (index, name) in text::QUARTERS.into_iter().enumerate() {
        let (sine, cosine) = (90.0 * index as f64).to_radians().sin_cos();
        let (x, y) = ((HORIZON + 18.0) * sine, 5.0 - (HORIZON + 18.0) * cosine);
        put(
            out,
            &format!(
                "<text class=\"s-quarter\" x=\"{x:.1}\" y=\"{y:.1}\" text-anchor=\"middle\">{name}</text>"
            ),
        );
    }
    for tick in 0..24 {
        let (sine, cosine) = (15.0 * f64::from(tick)).to_radians().sin_cos();
        let inner = HORIZON - if tick % 6 == 0 { 9.0 } else { 4.0 };
        put(
            out,
            &format!(
                "<path class=\"s-tick\" d=\"M{:.1} {:.1}L{:.1} {:.1}\"/>",
                inner * sine,
                -inner * cosine,
                HORIZON * sine,
                -HORIZON * cosine
            ),
        );
    }
}

/// The vehicle with its shadow; its nose has a pane across.
fn body(out: &mut String, sky: &Sky<'_>) {
    let vehicle = sky.vehicle;
    let scale = LENGTH / vehicle.length_m;
    let (half_length, half_width) = (0.5 * LENGTH, 0.5 * vehicle.width_m * scale);
    let corners = [
        (-half_width, -half_length),
        (half_width, -half_length),
        (half_width, half_length),
        (-half_width, half_length),
    ];
    let (sine, cosine) = vehicle.heading_deg.to_radians().sin_cos();
    let turned = |(x, y): Place| (x * cosine - y * sine, x * sine + y * cosine);
    if sky.now.altitude_deg > 0.0 {
        let height = (vehicle.floor_above_ground_m + vehicle.height_m) * scale;
        let (up, level) = sky.now.altitude_deg.to_radians().sin_cos();
        let length = (height * level / up).min(LONGEST_SHADOW);
        let (east, north) = sky.now.azimuth_deg.to_radians().sin_cos();
        let cast = (-length * east, length * north);
        // Every side sweeps its own strip of ground; together they are the shadow.
        for (index, from) in corners.iter().enumerate() {
            let (one, other) = (turned(*from), turned(corners[(index + 1) % 4]));
            let swept = [one, other, shifted(other, cast), shifted(one, cast)];
            outline(out, "s-shadow", &swept);
        }
        outline(
            out,
            "s-shadow",
            &corners.map(|corner| shifted(turned(corner), cast)),
        );
    }
    outline(out, "s-vehicle", &corners.map(turned));
    let pane = [
        (-0.8 * half_width, -0.94 * half_length),
        (0.8 * half_width, -0.94 * half_length),
        (0.9 * half_width, -0.72 * half_length),
        (-0.9 * half_width, -0.72 * half_length),
    ];
    outline(out, "s-pane", &pane.map(turned));
}

fn shifted((x, y): Place, (by_x, by_y): Place) -> Place {
    (x + by_x, y + by_y)
}

fn outline(out: &mut String, class: &str, places: &[Place]) {
    let mut course = String::new();
    for (index, (x, y)) in places.iter().enumerate() {
        let step = if index == 0 { 'M' } else { 'L' };
        let _ = write!(course, "{step}{x:.1} {y:.1}");
    }
    put(out, &format!("<path class=\"{class}\" d=\"{course}Z\"/>"));
}

/// The sun's way with its hours; every third has its number.
fn path(out: &mut String, path: &[SunPlace], voice: &Voice) {
    let mut course = String::new();
    for (index, sun) in path.iter().enumerate() {
        let (x, y) = place(sun);
        let step = if index == 0 { 'M' } else { 'L' };
        let _ = write!(course, "{step}{x:.1} {y:.1}");
    }
    put(out, &format!("<path class=\"s-path\" d=\"{course}\"/>"));
    let is_whole = |sun: &&SunPlace| (sun.clock_h - sun.clock_h.round()).abs() < 1e-6;
    for sun in path.iter().filter(is_whole) {
        let (x, y) = place(sun);
        put(
            out,
            &format!("<circle class=\"s-hour\" cx=\"{x:.1}\" cy=\"{y:.1}\" r=\"2.6\"/>"),
        );
        let hour = sun.clock_h.round();
        if hour % 3.0 != 0.0 {
            continue;
        }
        // Beside the path, on the side away from the vehicle.
        let reach = (x * x + y * y).sqrt().max(1.0);
        let (x, y) = (x + 15.0 * x / reach, y + 15.0 * y / reach + 4.0);
        let name = voice.units.axis_hour(hour);
        put(
            out,
            &format!(
                "<text class=\"s-name\" x=\"{x:.1}\" y=\"{y:.1}\" text-anchor=\"middle\">{name}</text>"
            ),
        );
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::format::UnitSystem;
    use noonday_engine::scenario::{ScenarioDocument, example};
    use noonday_engine::simulation::{sun_on_faces, sun_over_day};

    fn drawn(document: &ScenarioDocument, clock_h: f64) -> String {
        let path = sun_over_day(document).unwrap();
        let (now, _) = sun_on_faces(document, clock_h).unwrap();
        let sky = Sky {
            vehicle: &document.vehicle,
            path: &path,
            now,
        };
        dome(&sky, &Voice::new(document, UnitSystem::Metric))
    }

    #[test]
    fn the_rim_is_the_horizon_and_the_middle_the_zenith() {
        let at = |azimuth_deg, altitude_deg| {
            let (x, y) = place(&SunPlace {
                clock_h: 0.0,
                azimuth_deg,
                altitude_deg,
            });
            (x.round(), y.round())
        };
        assert_eq!(at(90.0, 0.0), (HORIZON, 0.0));
        assert_eq!(at(180.0, 45.0), (0.0, 0.5 * HORIZON));
        assert_eq!(at(0.0, 90.0), (0.0, 0.0));
    }

    #[test]
    fn sun_and_shadow_are_there_by_day_and_the_vehicle_turns() {
        let mut document = example();
        let (noon, night) = (drawn(&document, 13.5), drawn(&document, 2.0));
        assert_eq!(noon.matches("s-sun").count(), 1);
        assert_eq!(noon.matches("s-shadow").count(), 5);
        assert!(!night.contains("s-sun") && !night.contains("s-shadow"));
        assert!(night.contains("s-path") && night.contains("s-vehicle"));
        assert!(noon.contains(">12<") && noon.contains(">18<"));
        document.vehicle.heading_deg = 90.0;
        assert_ne!(drawn(&document, 13.5), noon);
        assert!(!noon.contains("NaN") && noon.ends_with("</svg>"));
    }
}
