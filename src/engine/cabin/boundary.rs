//! What surrounds the cabin in an interval.

use super::description::LANES;
use super::strip::strip_of;

/// Sun on the elements, W for the whole of each.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SunOnElements {
    /// Absorbed at each outer face, W.
    pub absorbed_outside_w: [f64; LANES],
    /// Absorbed at each inner face on the way in, W (panes only).
    pub absorbed_inside_w: [f64; LANES],
    /// Passed into the cabin by all panes, W.
    pub transmitted_w: f64,
}

impl SunOnElements {
    /// No sun.
    pub const NONE: Self = Self {
        absorbed_outside_w: [0.0; LANES],
        absorbed_inside_w: [0.0; LANES],
        transmitted_w: 0.0,
    };

    /// What is a share of the way from this to another.
    #[must_use]
    pub fn towards(&self, other: &Self, share: f64) -> Self {
        let mut between = Self {
            transmitted_w: self.transmitted_w + share * (other.transmitted_w - self.transmitted_w),
            ..Self::NONE
        };
        mix(
            &mut between.absorbed_outside_w,
            [&self.absorbed_outside_w, &other.absorbed_outside_w],
            share,
        );
        mix(
            &mut between.absorbed_inside_w,
            [&self.absorbed_inside_w, &other.absorbed_inside_w],
            share,
        );
        between
    }
}

/// What is a share of the way from one number of each lane to another.
#[inline(always)]
fn mix(between: &mut [f64; LANES], [one, other]: [&[f64; LANES]; 2], share: f64) {
    for (strip, numbers) in between.as_chunks_mut().0.iter_mut().enumerate() {
        let (from, to) = (strip_of(one, strip), strip_of(other, strip));
        *numbers = (from + (to - from) * share).to_array();
    }
}

/// Outdoor air brought in, m³/s at outdoor density, by way.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct AirExchange {
    /// Leaks, m³/s.
    pub leakage_m3_s: f64,
    /// Fan, m³/s.
    pub fan_m3_s: f64,
    /// Opened windows, m³/s.
    pub openings_m3_s: f64,
}

/// The surroundings in an interval.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Boundary<'sun> {
    /// Outdoor dry bulb, °C.
    pub outdoor_c: f64,
    /// Outdoor humidity ratio, kg/kg.
    pub outdoor_humidity_ratio: f64,
    /// Temperature of a black sky with the same longwave, °C.
    pub sky_c: f64,
    /// Surface of the open ground, °C.
    pub ground_c: f64,
    /// Surface of the ground below the vehicle, °C.
    pub shaded_ground_c: f64,
    /// Wind at the station's 10 m, m/s.
    pub wind_speed_m_s: f64,
    /// Where the wind comes from, degrees; none if not known.
    pub wind_from_deg: Option<f64>,
    /// Speed of the vehicle, m/s.
    pub road_speed_m_s: f64,
    /// Outdoor air brought in.
    pub air_exchange: AirExchange,
    /// Air stirred by blower and fan, m³/s.
    pub stirred_m3_s: f64,
    /// Sun on the elements.
    pub sun: &'sun SunOnElements,
}
