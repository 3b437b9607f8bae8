//! The surroundings of a run, worked out once on an even grid and read in between by straight lines.
//!
//! Sun, sky and ground change over minutes, not seconds: ten minutes between points, as whole-building programs step, and the
//! run reads every minute between them.

use super::body::Body;
use super::build::BuildError;
use super::observed::Observed;
use super::painter::Painter;
use crate::cabin::SunOnElements;
use crate::quantity::{Bounded, SECONDS_PER_DAY, SECONDS_PER_HOUR, black_body_w_m2};
use crate::scenario::{self, ScenarioDocument};
use crate::solar::{Place, SunPath};
use crate::weather::{
    GroundSurface, GroundTemperatures, HotDay, HotDayInput, Outdoors, Shade, Sunlight,
};
use std::rc::Rc;

/// Time between points, s.
pub(super) const SPACING_S: f64 = 600.0;

/// The surroundings at an instant.
#[derive(Clone, Copy, Debug)]
pub(super) struct Surroundings {
    pub(super) outdoor_c: f64,
    pub(super) humidity_ratio: f64,
    pub(super) sky_c: f64,
    pub(super) ground_c: f64,
    pub(super) shaded_ground_c: f64,
    pub(super) wind_speed_m_s: f64,
    pub(super) horizontal_sun_w_m2: f64,
    /// What of it comes straight from the sun.
    pub(super) beam_sun_w_m2: f64,
    /// Towards the sun from the vehicle: right, ahead, up.
    pub(super) sun_direction: [f64; 3],
    pub(super) sun: SunOnElements,
}

/// What a sample tells of the surroundings.
#[derive(Clone, Copy, Debug)]
pub(super) struct SeenOutdoors {
    pub(super) outdoor_c: f64,
    pub(super) horizontal_sun_w_m2: f64,
    /// Towards the sun from the vehicle: right, ahead, up.
    pub(super) sun_direction: [f64; 3],
}

/// The surroundings over the run and the day before it.
#[derive(Clone, Debug)]
pub(super) struct Environment {
    first_clock_s: f64,
    points: Vec<Surroundings>,
    sunlight: Rc<[Sunlight]>,
    pub(super) wind_from_deg: Option<f64>,
}

impl Environment {
    /// Works out the grid from a day before the run's start to its end.
    ///
    /// `sunlight`: that of another run under the same sun, if there is one. `observed`: what was seen of the outdoors.
    pub(super) fn new(
        document: &ScenarioDocument,
        body: &Body,
        sunlight: Option<Rc<[Sunlight]>>,
        observed: &Observed,
    ) -> Result<Self, BuildError> {
        let day = &document.day;
        let start_s = day.start_hour * SECONDS_PER_HOUR;
        let first_clock_s = start_s - SECONDS_PER_DAY;
        let span_s = (day.days + 1.0) * SECONDS_PER_DAY;
        let count = (span_s / SPACING_S).ceil() as usize + 2;
        let summer_s = if document.place.summer_time {
            SECONDS_PER_HOUR
        } else {
            0.0
        };
        let first_standard_s = first_clock_s - summer_s;
        let weather = hot_day(document)?;
        let sunlight = match sunlight {
            Some(sunlight) => sunlight,
            None => sunlight_of(document, &weather, first_standard_s, count)?,
        };
        let outdoors: Vec<Outdoors> = sunlight
            .iter()
            .enumerate()
            .map(|(index, light)| {
                let standard_s = first_standard_s + SPACING_S * index as f64;
                let seen_c = observed.dry_bulb_c(&weather, standard_s, summer_s);
                let dry_bulb_c = seen_c.unwrap_or_else(|| weather.dry_bulb_c(standard_s));
                weather.with_dry_bulb(standard_s, light, dry_bulb_c)
            })
            .collect();
        Self::around(document, body, first_clock_s, outdoors, sunlight)
    }

    /// Makes a grid of the outdoors at its points, the first of which is at a clock time, s since midnight of the first day.
    pub(super) fn around(
        document: &ScenarioDocument,
        body: &Body,
        first_clock_s: f64,
        mut outdoors: Vec<Outdoors>,
        sunlight: Rc<[Sunlight]>,
    ) -> Result<Self, BuildError> {
        shade(document, first_clock_s, &mut outdoors)?;
        let surface = ground_surface(document.place.ground);
        let ground = GroundTemperatures::new(&outdoors, SPACING_S, surface);
        let painter = Painter::new(document, body)?;
        let points = outdoors
            .iter()
            .enumerate()
            .map(|(index, outdoors)| {
                let clock_s = first_clock_s + SPACING_S * index as f64;
                painter.surroundings(clock_s, outdoors, &ground, index)
            })
            .collect();
        Ok(Self {
            first_clock_s,
            points,
            sunlight,
            wind_from_deg: Some(document.day.wind_from_deg),
        })
    }

    /// A stretch of the grid as if it began where the whole does, under a wind of its own.
    pub(super) fn stretch(
        &self,
        points: std::ops::Range<usize>,
        wind_from_deg: Option<f64>,
    ) -> Self {
        Self {
            first_clock_s: self.first_clock_s,
            points: self.points[points].to_vec(),
            sunlight: Rc::new([]),
            wind_from_deg,
        }
    }

    /// The sunlight of every point, before shade, for another run under the same sun.
    pub(super) fn sunlight(&self) -> Rc<[Sunlight]> {
        self.sunlight.clone()
    }

    /// Clock time of the first point, s since midnight of the first day.
    pub(super) fn first_clock_s(&self) -> f64 {
        self.first_clock_s
    }

    /// Every point, evenly spaced.
    pub(super) fn points(&self) -> &[Surroundings] {
        &self.points
    }

    /// The surroundings at a clock time, s since midnight of the first day, by straight lines between points.
    pub(super) fn at(&self, clock_s: f64) -> Surroundings {
        let (one, other, share) = self.around_clock(clock_s);
        mix(one, other, share)
    }

    /// What is told of the surroundings at a clock time, likewise.
    pub(super) fn seen_at(&self, clock_s: f64) -> SeenOutdoors {
        let (one, other, share) = self.around_clock(clock_s);
        SeenOutdoors {
            outdoor_c: line(one.outdoor_c, other.outdoor_c, share),
            horizontal_sun_w_m2: line(one.horizontal_sun_w_m2, other.horizontal_sun_w_m2, share),
            sun_direction: std::array::from_fn(|axis| {
                line(one.sun_direction[axis], other.sun_direction[axis], share)
            }),
        }
    }

    /// The points around a clock time, and the share of the second.
    fn around_clock(&self, clock_s: f64) -> (&Surroundings, &Surroundings, f64) {
        let position = ((clock_s - self.first_clock_s) / SPACING_S).at_least(0.0);
        let index = (position as usize).min(self.points.len() - 2);
        let share = (position - index as f64).at_most(1.0);
        (&self.points[index], &self.points[index + 1], share)
    }
}

/// Whether two scenarios pass under the same sun: same place, days and sky.
pub(super) fn same_sun(one: &ScenarioDocument, other: &ScenarioDocument) -> bool {
    let sky = |document: &ScenarioDocument| {
        let day = &document.day;
        (
            day.date,
            day.days,
            day.start_hour,
            day.cloud_fraction,
            day.linke_turbidity,
        )
    };
    one.place == other.place && sky(one) == sky(other)
}

/// The day of a scenario's forecast.
pub(super) fn hot_day(document: &ScenarioDocument) -> Result<HotDay, BuildError> {
    let day = &document.day;
    Ok(HotDay::new(HotDayInput {
        high_c: day.high_c,
        low_c: day.low_c,
        dew_point_c: document.day_dew_point_c(),
        cloud_fraction: day.cloud_fraction,
        wind_speed_10m_m_s: day.wind_speed_m_s,
        wind_from_deg: Some(day.wind_from_deg),
        linke_turbidity: day.linke_turbidity,
        altitude_m: document.place.altitude_m,
        warming_per_day_k: day.warming_per_day_k,
    })?)
}

fn sunlight_of(
    document: &ScenarioDocument,
    weather: &HotDay,
    first_standard_s: f64,
    count: usize,
) -> Result<Rc<[Sunlight]>, BuildError> {
    let day = &document.day;
    let path = SunPath::new(&site(document), day.date, day.days as u32 + 1)?;
    Ok((0..count)
        .map(|index| weather.sunlight(first_standard_s + SPACING_S * index as f64, &path))
        .collect())
}

/// Where a scenario is on the globe and by which clock.
pub(super) fn site(document: &ScenarioDocument) -> Place {
    let place = &document.place;
    Place {
        latitude_deg: place.latitude_deg,
        longitude_deg: place.longitude_deg,
        altitude_m: place.altitude_m,
        utc_offset_h: place.utc_offset_h,
    }
}

/// The shade of a scenario.
pub(super) fn shade_of(document: &ScenarioDocument) -> Result<Shade, BuildError> {
    let day = &document.day;
    Ok(Shade::new(
        day.shade_from_hour,
        day.shade_until_hour,
        day.shade_beam_share,
        day.shade_sky_share,
    )?)
}

/// Shade falls on the vehicle and on the ground around it alike; what hides a share of the sky radiates in its place, at the
/// temperature of the air.
fn shade(
    document: &ScenarioDocument,
    first_clock_s: f64,
    outdoors: &mut [Outdoors],
) -> Result<(), BuildError> {
    let day = &document.day;
    let shade = shade_of(document)?;
    for (index, outdoors) in outdoors.iter_mut().enumerate() {
        let clock_s = first_clock_s + SPACING_S * index as f64;
        outdoors.irradiance = shade.apply(&outdoors.irradiance, clock_s);
        if shade.is_on(clock_s) {
            let canopy_w_m2 = black_body_w_m2(outdoors.dry_bulb_c);
            outdoors.sky_longwave_w_m2 +=
                day.shade_sky_share * (canopy_w_m2 - outdoors.sky_longwave_w_m2);
        }
    }
    Ok(())
}

pub(super) fn ground_surface(ground: scenario::Ground) -> GroundSurface {
    match ground {
        scenario::Ground::Asphalt => GroundSurface::Asphalt,
        scenario::Ground::Concrete => GroundSurface::Concrete,
        scenario::Ground::Gravel => GroundSurface::Gravel,
        scenario::Ground::Grass => GroundSurface::Grass,
    }
}

/// The value a share of the way from one to another.
#[inline(always)]
fn line(from: f64, to: f64, share: f64) -> f64 {
    from + share * (to - from)
}

fn mix(one: &Surroundings, other: &Surroundings, share: f64) -> Surroundings {
    let line = |from: f64, to: f64| line(from, to, share);
    Surroundings {
        outdoor_c: line(one.outdoor_c, other.outdoor_c),
        humidity_ratio: line(one.humidity_ratio, other.humidity_ratio),
        sky_c: line(one.sky_c, other.sky_c),
        ground_c: line(one.ground_c, other.ground_c),
        shaded_ground_c: line(one.shaded_ground_c, other.shaded_ground_c),
        wind_speed_m_s: line(one.wind_speed_m_s, other.wind_speed_m_s),
        horizontal_sun_w_m2: line(one.horizontal_sun_w_m2, other.horizontal_sun_w_m2),
        beam_sun_w_m2: line(one.beam_sun_w_m2, other.beam_sun_w_m2),
        sun_direction: std::array::from_fn(|axis| {
            line(one.sun_direction[axis], other.sun_direction[axis])
        }),
        sun: one.sun.towards(&other.sun, share),
    }
}
