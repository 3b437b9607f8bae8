//! Where the sun stands over a scenario's day, and what of it each side of the vehicle gets.

use super::body::faces;
use super::build::BuildError;
use super::environment::{ground_surface, hot_day, shade_of, site};
use crate::quantity::SECONDS_PER_HOUR;
use crate::scenario::ScenarioDocument;
use crate::solar::{Plane, SkyDome, SunPath};

/// Places of the path in an hour.
const PLACES_IN_HOUR: u32 = 6;

/// Where the sun stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SunPlace {
    /// Clock hours since midnight of the first day.
    pub clock_h: f64,
    /// Compass direction, 0…360°, clockwise from north.
    pub azimuth_deg: f64,
    /// Height above the horizon as the eye sees it, degrees; negative while it is down.
    pub altitude_deg: f64,
}

/// The sun on the outside of the vehicle: beam, sky and light from the ground, after shade, W/m².
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SunOnFaces {
    /// On the roof.
    pub roof_w_m2: f64,
    /// On the left side.
    pub left_w_m2: f64,
    /// On the right side.
    pub right_w_m2: f64,
    /// On the nose.
    pub nose_w_m2: f64,
    /// On the rear.
    pub rear_w_m2: f64,
}

fn path(document: &ScenarioDocument) -> Result<SunPath, BuildError> {
    let days = document.day.days as u32 + 1;
    Ok(SunPath::new(&site(document), document.day.date, days)?)
}

fn standard_s(document: &ScenarioDocument, clock_h: f64) -> f64 {
    let summer_h = f64::from(u8::from(document.place.summer_time));
    (clock_h - summer_h) * SECONDS_PER_HOUR
}

fn place(document: &ScenarioDocument, path: &SunPath, clock_h: f64) -> SunPlace {
    let sun = path.at(standard_s(document, clock_h));
    SunPlace {
        clock_h,
        azimuth_deg: sun.azimuth_deg,
        altitude_deg: 90.0 - sun.apparent_zenith_deg,
    }
}

/// The path of the sun over the first day of a scenario, every ten minutes of the clock, as far as it is up.
///
/// # Errors
/// [`BuildError::Solar`] if there is no path of the sun, which a validated scenario always has.
pub fn sun_over_day(document: &ScenarioDocument) -> Result<Vec<SunPlace>, BuildError> {
    let path = path(document)?;
    let places = (0..=24 * PLACES_IN_HOUR).map(|index| {
        place(
            document,
            &path,
            f64::from(index) / f64::from(PLACES_IN_HOUR),
        )
    });
    Ok(places.filter(|place| place.altitude_deg > 0.0).collect())
}

/// Where the sun stands at an instant, and what each side of the vehicle gets of it.
///
/// `clock_h`: clock hours since midnight of the first day, within the run.
///
/// # Errors
/// When a component refuses its input, which no validated scenario makes it do.
pub fn sun_on_faces(
    document: &ScenarioDocument,
    clock_h: f64,
) -> Result<(SunPlace, SunOnFaces), BuildError> {
    let path = path(document)?;
    let time_s = standard_s(document, clock_h);
    let light = hot_day(document)?.sunlight(time_s, &path);
    let irradiance = shade_of(document)?.apply(&light.irradiance, clock_h * SECONDS_PER_HOUR);
    let dome = SkyDome::new(&light.sun, &irradiance);
    let ground = ground_surface(document.place.ground).properties();
    let [roof, left, right, nose, rear, _] = faces(document).map(|face| {
        if irradiance.global_horizontal_w_m2 <= 0.0 {
            return 0.0;
        }
        let tilt_deg = libm::acos(face.facing_up_cosine).to_degrees();
        let plane = Plane::new(tilt_deg, face.azimuth_deg);
        dome.on_plane(&plane, ground.solar_reflectance).total_w_m2()
    });
    let on_faces = SunOnFaces {
        roof_w_m2: roof,
        left_w_m2: left,
        right_w_m2: right,
        nose_w_m2: nose,
        rear_w_m2: rear,
    };
    Ok((place(document, &path, clock_h), on_faces))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scenario::Scenario;
    use crate::scenario::example;
    use crate::simulation::simulate;

    #[test]
    fn the_path_rises_in_the_east_and_is_highest_where_a_run_has_it() {
        let document = example();
        let places = sun_over_day(&document).unwrap();
        assert!(places[0].azimuth_deg < 90.0 && places.last().unwrap().azimuth_deg > 270.0);
        let highest = places
            .iter()
            .max_by(|a, b| a.altitude_deg.total_cmp(&b.altitude_deg));
        let series = simulate(&Scenario::new(document).unwrap()).unwrap().series;
        let up = series
            .sun_direction
            .iter()
            .map(|direction| direction[2])
            .fold(0.0, f64::max);
        // By hand for 38° north on 21 July: 90 − 38 + 20.4 = 72.4°.
        let altitude_deg = highest.unwrap().altitude_deg;
        assert!((altitude_deg - 72.4).abs() < 0.3, "{altitude_deg}");
        assert!((libm::asin(up).to_degrees() - altitude_deg).abs() < 0.2);
    }

    #[test]
    fn each_side_gets_the_sun_that_shines_on_it() {
        let mut document = example();
        document.day.cloud_fraction = 0.0;
        let at =
            |document: &ScenarioDocument, clock_h: f64| sun_on_faces(document, clock_h).unwrap();
        // The nose points south, so the morning sun is on the left.
        let (place, morning) = at(&document, 8.5);
        assert!(place.azimuth_deg < 100.0 && morning.left_w_m2 > 3.0 * morning.right_w_m2);
        document.vehicle.heading_deg = 0.0;
        let (_, turned) = at(&document, 8.5);
        assert!((turned.right_w_m2 - morning.left_w_m2).abs() < 1e-9);
        assert_eq!(turned.roof_w_m2, morning.roof_w_m2);
        let (place, night) = at(&document, 2.0);
        assert!(place.altitude_deg < 0.0 && night.roof_w_m2 == 0.0 && night.nose_w_m2 == 0.0);
    }
}
