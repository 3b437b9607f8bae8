//! Sun on every part of the vehicle, from the outdoors at an instant.

use super::body::{Body, Face, faces};
use super::build::BuildError;
use super::environment::{Surroundings, ground_surface};
use crate::cabin::{LANES, Part, SunOnElements};
use crate::quantity::Bounded;
use crate::scenario::ScenarioDocument;
use crate::schedule::HourWindow;
use crate::solar::{Plane, SkyDome};
use crate::weather::{GroundTemperatures, Outdoors, sky_temperature_c};

/// Everything that turns the outdoors at an instant into sun on each lane.
pub(super) struct Painter<'a> {
    document: &'a ScenarioDocument,
    body: &'a Body,
    faces: [Face; 6],
    planes: [Plane; 6],
    lane_face: [Option<usize>; LANES],
    covers: Option<HourWindow>,
    ground_reflectance: f64,
}

impl<'a> Painter<'a> {
    pub(super) fn new(document: &'a ScenarioDocument, body: &'a Body) -> Result<Self, BuildError> {
        let glass = &document.glass;
        let faces = faces(document);
        let planes = faces.map(|face| {
            let tilt_deg = libm::acos(face.facing_up_cosine).to_degrees();
            Plane::new(tilt_deg, face.azimuth_deg)
        });
        let mut lane_face = [None; LANES];
        for (lane, element) in body.description.elements.iter().enumerate() {
            lane_face[lane] = faces.iter().position(|face| {
                element.part != Part::Furnishing
                    && face.facing_up_cosine == element.facing_up_cosine
                    && face.azimuth_deg == element.azimuth_deg
            });
        }
        let covers = if glass.covers_fitted {
            Some(HourWindow::new(
                glass.covers_from_hour,
                glass.covers_until_hour,
            )?)
        } else {
            None
        };
        Ok(Self {
            document,
            body,
            faces,
            planes,
            lane_face,
            covers,
            ground_reflectance: ground_surface(document.place.ground)
                .properties()
                .solar_reflectance,
        })
    }

    pub(super) fn surroundings(
        &self,
        clock_s: f64,
        outdoors: &Outdoors,
        ground: &GroundTemperatures,
        index: usize,
    ) -> Surroundings {
        let irradiance = outdoors.irradiance;
        let mut surroundings = Surroundings {
            outdoor_c: outdoors.dry_bulb_c,
            humidity_ratio: outdoors.humidity_ratio,
            sky_c: sky_temperature_c(outdoors.sky_longwave_w_m2),
            ground_c: ground.open_c[index],
            shaded_ground_c: ground.shaded_c[index],
            wind_speed_m_s: outdoors.wind_speed_10m_m_s,
            horizontal_sun_w_m2: irradiance.global_horizontal_w_m2,
            beam_sun_w_m2: irradiance.direct_normal_w_m2 * outdoors.sun.direction[2].at_least(0.0),
            sun_direction: seen_from_vehicle(
                outdoors.sun.direction,
                self.document.vehicle.heading_deg,
            ),
            sun: SunOnElements::NONE,
        };
        if irradiance.global_horizontal_w_m2 > 0.0 {
            let dome = SkyDome::new(&outdoors.sun, &irradiance);
            self.paint(clock_s, &dome, &mut surroundings.sun);
        }
        surroundings
    }

    fn paint(&self, clock_s: f64, dome: &SkyDome, sun: &mut SunOnElements) {
        let on_faces = self
            .planes
            .map(|plane| dome.on_plane(&plane, self.ground_reflectance));
        let covered = self.covers.is_some_and(|window| window.contains(clock_s));
        let pane = if covered {
            &self.body.covered_glass
        } else {
            &self.body.bare_glass
        };
        for (lane, element) in self.body.description.elements.iter().enumerate() {
            let Some(face) = self.lane_face[lane] else {
                continue;
            };
            if self.faces[face].part == Part::Floor {
                continue;
            }
            let falling = &on_faces[face];
            let diffuse_w_m2 = falling.sky_diffuse_w_m2 + falling.ground_w_m2;
            if element.part == Part::Glass {
                let beam = pane.beam(falling.incidence_cosine);
                let absorbed_w = element.area_m2
                    * (beam.absorbed * falling.beam_w_m2 + pane.absorptance_diffuse * diffuse_w_m2);
                let transmitted_w = element.area_m2
                    * (beam.transmitted * falling.beam_w_m2
                        + pane.transmittance_diffuse * diffuse_w_m2);
                sun.absorbed_outside_w[lane] = 0.5 * absorbed_w;
                sun.absorbed_inside_w[lane] = 0.5 * absorbed_w;
                sun.transmitted_w += transmitted_w * self.body.kept_sun_share;
            } else {
                let absorptance = if element.part == Part::Roof {
                    self.document.shell.roof_sun_absorptance
                } else {
                    self.document.shell.wall_sun_absorptance
                };
                sun.absorbed_outside_w[lane] = element.area_m2 * absorptance * falling.total_w_m2();
            }
        }
    }
}

/// Turns a direction given as east, north and up into right, ahead and up of a vehicle whose nose points to a heading.
fn seen_from_vehicle([east, north, up]: [f64; 3], heading_deg: f64) -> [f64; 3] {
    let (sine, cosine) = libm::sincos(heading_deg.to_radians());
    [
        east * cosine - north * sine,
        east * sine + north * cosine,
        up,
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn directions_turn_with_the_vehicle() {
        const EAST: [f64; 3] = [1.0, 0.0, 0.0];
        for (heading_deg, right, ahead) in [
            (0.0, 1.0, 0.0),
            (90.0, 0.0, 1.0),
            (180.0, -1.0, 0.0),
            (270.0, 0.0, -1.0),
        ] {
            let seen = seen_from_vehicle(EAST, heading_deg);
            assert!((seen[0] - right).abs() < 1e-12, "{heading_deg}: {seen:?}");
            assert!((seen[1] - ahead).abs() < 1e-12, "{heading_deg}: {seen:?}");
        }
        assert_eq!(seen_from_vehicle([0.0, 0.0, 1.0], 33.0)[2], 1.0);
    }
}
