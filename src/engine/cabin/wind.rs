//! The wind on the outer faces.

use super::boundary::Boundary;
use super::description::{Element, LANES, Outside};
use crate::envelope::convection::{WindProfile, WindSide, WindTerm};
use crate::quantity::Bounded;

/// Half-angle within which a vertical face counts as windward, degrees: Walton 1983.
const WINDWARD_HALF_ANGLE_DEG: f64 = 90.0;

/// What makes the wind on the faces.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Stream {
    wind_m_s: f64,
    from_deg: Option<f64>,
    road_m_s: f64,
}

/// The wind term of each outer face, kept for as long as the wind stays.
#[derive(Clone, Debug)]
pub(super) struct WindOnFaces {
    /// Wind at the face's height over that at the station; zero where none reaches it.
    factor: [f64; LANES],
    /// The first face at the same height.
    first_alike: [usize; LANES],
    side: [WindSide; LANES],
    stream: Option<Stream>,
    forced_w_m2_k: [f64; LANES],
}

impl WindOnFaces {
    /// Faces on land with this profile.
    pub(super) fn new(elements: &[Element], profile: &WindProfile) -> Self {
        let mut factor = [0.0; LANES];
        for (factor, element) in factor.iter_mut().zip(elements) {
            if element.outside == Outside::Open {
                *factor = profile.factor_at(element.height_m);
            }
        }
        let first_alike = std::array::from_fn(|lane| {
            let alike = factor.iter().position(|other| *other == factor[lane]);
            alike.unwrap_or(lane)
        });
        Self {
            factor,
            first_alike,
            side: [WindSide::Unknown; LANES],
            stream: None,
            forced_w_m2_k: [0.0; LANES],
        }
    }

    /// The wind term of each face, W/(m² K), under a boundary.
    pub(super) fn under(&mut self, boundary: &Boundary<'_>, elements: &[Element]) -> &[f64; LANES] {
        let stream = Stream {
            wind_m_s: boundary.wind_speed_m_s,
            from_deg: boundary.wind_from_deg,
            road_m_s: boundary.road_speed_m_s,
        };
        if self.stream != Some(stream) {
            self.follow(&stream, elements);
        }
        &self.forced_w_m2_k
    }

    /// Works the wind out anew.
    fn follow(&mut self, stream: &Stream, elements: &[Element]) {
        if self.stream.map(|before| before.from_deg) != Some(stream.from_deg) {
            for (side, element) in self.side.iter_mut().zip(elements) {
                *side = wind_side(
                    element.facing_up_cosine,
                    element.azimuth_deg,
                    stream.from_deg,
                );
            }
        }
        self.stream = Some(*stream);
        let mut terms = [WindTerm::default(); LANES];
        for lane in 0..elements.len() {
            terms[lane] = match self.first_alike[lane] {
                first if first < lane => terms[first],
                _ => WindTerm::at(self.speed_m_s(lane, stream)),
            };
            self.forced_w_m2_k[lane] = terms[lane].on(self.side[lane]);
        }
    }

    /// Speed of the air past a face, m/s: the road's wind is taken as across the weather's.
    fn speed_m_s(&self, lane: usize, stream: &Stream) -> f64 {
        let weather_m_s = stream.wind_m_s * self.factor[lane];
        let road_m_s = if self.factor[lane] > 0.0 {
            stream.road_m_s
        } else {
            0.0
        };
        (weather_m_s * weather_m_s + road_m_s * road_m_s).sqrt()
    }
}

/// How the wind meets a face; roofs count as windward (Walton 1983).
fn wind_side(facing_up_cosine: f64, azimuth_deg: f64, wind_from_deg: Option<f64>) -> WindSide {
    if facing_up_cosine > 0.15 {
        return WindSide::Windward;
    }
    let Some(from_deg) = wind_from_deg else {
        return WindSide::Unknown;
    };
    let turn = (from_deg - azimuth_deg).rem_euclid(360.0);
    if turn.at_most(360.0 - turn) <= WINDWARD_HALF_ANGLE_DEG {
        WindSide::Windward
    } else {
        WindSide::Leeward
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cabin::{AirExchange, SunOnElements};
    use crate::envelope::convection::OPEN_COUNTRY;

    #[test]
    fn the_wind_from_the_south_is_on_the_south_face() {
        assert_eq!(wind_side(0.0, 180.0, Some(200.0)), WindSide::Windward);
        assert_eq!(wind_side(0.0, 0.0, Some(200.0)), WindSide::Leeward);
        assert_eq!(wind_side(0.0, 350.0, Some(10.0)), WindSide::Windward);
        assert_eq!(wind_side(0.0, 0.0, None), WindSide::Unknown);
    }

    /// What is kept of the wind before never shows in the wind after it.
    #[test]
    fn a_wind_that_turns_rises_and_is_driven_through_is_followed() {
        let elements: Vec<Element> = [(2.0, 0.0), (1.5, 180.0), (2.0, 90.0)]
            .map(|(height_m, azimuth_deg)| Element {
                height_m,
                azimuth_deg,
                outside: Outside::Open,
                ..Element::furnishing(1.0e4, 1.0, 1.0)
            })
            .into();
        let mut followed = WindOnFaces::new(&elements, &OPEN_COUNTRY);
        let mut seen = Vec::new();
        for (wind_speed_m_s, wind_from_deg, road_speed_m_s) in [
            (3.0, Some(0.0), 0.0),
            (3.0, Some(180.0), 0.0),
            (5.0, Some(180.0), 0.0),
            (5.0, Some(180.0), 20.0),
            (5.0, None, 20.0),
        ] {
            let boundary = Boundary {
                outdoor_c: 30.0,
                outdoor_humidity_ratio: 0.01,
                sky_c: 10.0,
                ground_c: 40.0,
                shaded_ground_c: 30.0,
                wind_speed_m_s,
                wind_from_deg,
                road_speed_m_s,
                air_exchange: AirExchange::default(),
                stirred_m3_s: 0.0,
                sun: &SunOnElements::NONE,
            };
            let anew = *WindOnFaces::new(&elements, &OPEN_COUNTRY).under(&boundary, &elements);
            assert_eq!(*followed.under(&boundary, &elements), anew);
            assert!(!seen.contains(&anew), "nothing changed: {anew:?}");
            seen.push(anew);
        }
    }
}
