//! Surface temperature of the ground around and under the vehicle.
//!
//! A slab of two layers, 0.9 m deep and insulated below, with a massless surface on which absorbed
//! sun, longwave exchange, convection and evaporation balance the heat conducted down. Heat flows
//! straight down only. The steps are implicit: they are stable for any spacing, and the surface
//! follows within 0.3 W/m² for 300 s.
//!
//! At the start the ground is as it would be after many days like the first: the slab begins at the
//! temperature at which the mean balance of the first day closes, and that day is run twice before
//! the first value is given.
//!
//! Sources: convection of Vehrencamp 1953 with the factors that Gui et al. 2007 (Journal of
//! Materials in Civil Engineering 19:683) fitted to pavements; properties as stated with each
//! surface.

use super::ground_slab::Slab;
use super::{GroundProperties, GroundSurface, Outdoors};
use crate::quantity::{SECONDS_PER_DAY, black_body_w_m2, kelvin_from_celsius};

/// Times that the first day is run to settle.
const SETTLING_DAYS: usize = 2;

/// Iterations to the mean balance; each lessens the error at least threefold.
const BALANCE_ITERATIONS: usize = 40;

/// How much of the outdoors a piece of ground is exposed to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GroundExposure {
    /// Share of the global irradiance that reaches it.
    pub sun_share: f64,
    /// Share of its view that is sky; the rest is a surface at air temperature.
    pub sky_share: f64,
    /// Wind over it relative to that of the weather.
    pub wind_share: f64,
}

impl GroundExposure {
    /// Ground in the open.
    pub const OPEN: Self = Self {
        sun_share: 1.0,
        sky_share: 1.0,
        wind_share: 1.0,
    };

    /// Ground in the shade under a vehicle, whose belly is near air temperature: light and sky come
    /// in at the edges only (common practice, no source).
    pub const UNDER_VEHICLE: Self = Self {
        sun_share: 0.05,
        sky_share: 0.10,
        wind_share: 0.5,
    };
}

/// Surface temperatures of a parking spot on a grid of instants.
#[derive(Clone, Debug, PartialEq)]
pub struct GroundTemperatures {
    /// Of the ground in the open around the vehicle, °C.
    pub open_c: Vec<f64>,
    /// Of the ground under the vehicle, °C.
    pub shaded_c: Vec<f64>,
}

impl GroundTemperatures {
    /// Computes both on the grid of the weather; see [`ground_surface_temperatures_c`].
    #[must_use]
    pub fn new(grid: &[Outdoors], spacing_s: f64, surface: GroundSurface) -> Self {
        let under = |exposure| ground_surface_temperatures_c(grid, spacing_s, surface, exposure);
        Self {
            open_c: under(GroundExposure::OPEN),
            shaded_c: under(GroundExposure::UNDER_VEHICLE),
        }
    }
}

/// Gives the surface temperature of the ground at every instant of a grid.
///
/// (1 − s)((1 − ρ)aG + ε(L − σT⁴)) + h(t_a − t) = q, with q conducted into the slab, s the
/// evaporative share while the net radiation is positive, a the exposure to sun, L the longwave
/// from sky and surroundings, and h = 1.4·698.24(0.00144T_m^0.3 U^0.5 + 0.00097|t − t_a|^0.3), T_m
/// in K.
///
/// `grid`: the outdoors at instants `spacing_s` (60…3600 s) apart from the first midnight on; the
/// first day of it, or all of it if shorter, is what the ground is settled to. Result in °C, one
/// value for each instant.
///
/// Source: surface balance and convection of Gui et al. 2007, J. Mater. Civ. Eng. 19:683; the
/// constant share of evaporation is a fixed Bowen ratio (Oke 1987).
#[must_use]
pub fn ground_surface_temperatures_c(
    grid: &[Outdoors],
    spacing_s: f64,
    surface: GroundSurface,
    exposure: GroundExposure,
) -> Vec<f64> {
    let properties = surface.properties();
    let loads: Vec<_> = grid
        .iter()
        .map(|outdoors| SurfaceLoad::new(outdoors, &properties, &exposure))
        .collect();
    let steps_in_day = (SECONDS_PER_DAY / spacing_s).round() as usize;
    let first_day = &loads[..loads.len().min(steps_in_day)];
    let Some(mean) = SurfaceLoad::mean(first_day) else {
        return Vec::new();
    };
    let mut slab = Slab::new(&properties, spacing_s, mean.balanced_temperature_c());
    for _ in 0..SETTLING_DAYS {
        for load in first_day {
            slab.step(|surface_c| load.linearised(surface_c));
        }
    }
    loads
        .iter()
        .map(|load| slab.step(|surface_c| load.linearised(surface_c)))
        .collect()
}

/// What acts on the surface at an instant.
#[derive(Clone, Copy, Debug)]
struct SurfaceLoad {
    absorbed_sun_w_m2: f64,
    absorbed_longwave_w_m2: f64,
    air_c: f64,
    wind_m_s: f64,
    emissivity: f64,
    evaporative_share: f64,
}

/// The balance of the surface, linear in its temperature: heat gained is `at_zero − slope·t`.
#[derive(Clone, Copy, Debug)]
pub(super) struct LinearBalance {
    pub at_zero_w_m2: f64,
    pub slope_w_m2_k: f64,
}

impl SurfaceLoad {
    fn new(outdoors: &Outdoors, ground: &GroundProperties, exposure: &GroundExposure) -> Self {
        let longwave_w_m2 = exposure.sky_share * outdoors.sky_longwave_w_m2
            + (1.0 - exposure.sky_share) * black_body_w_m2(outdoors.dry_bulb_c);
        Self {
            absorbed_sun_w_m2: (1.0 - ground.solar_reflectance)
                * exposure.sun_share
                * outdoors.irradiance.global_horizontal_w_m2,
            absorbed_longwave_w_m2: ground.emissivity * longwave_w_m2,
            air_c: outdoors.dry_bulb_c,
            wind_m_s: exposure.wind_share * outdoors.wind_speed_10m_m_s,
            emissivity: ground.emissivity,
            evaporative_share: ground.evaporative_share,
        }
    }

    /// Mean of several instants, if there are any.
    fn mean(loads: &[Self]) -> Option<Self> {
        let first = *loads.first()?;
        let mean =
            |value: fn(&Self) -> f64| loads.iter().map(value).sum::<f64>() / loads.len() as f64;
        Some(Self {
            absorbed_sun_w_m2: mean(|load| load.absorbed_sun_w_m2),
            absorbed_longwave_w_m2: mean(|load| load.absorbed_longwave_w_m2),
            air_c: mean(|load| load.air_c),
            wind_m_s: mean(|load| load.wind_m_s),
            ..first
        })
    }

    /// Linearises the balance about a surface temperature.
    fn linearised(&self, surface_c: f64) -> LinearBalance {
        let surface_k = kelvin_from_celsius(surface_c);
        let emitted_w_m2 = self.emissivity * black_body_w_m2(surface_c);
        let emission_slope = 4.0 * emitted_w_m2 / surface_k;
        let absorbed_w_m2 = self.absorbed_sun_w_m2 + self.absorbed_longwave_w_m2;
        let left = if absorbed_w_m2 > emitted_w_m2 {
            1.0 - self.evaporative_share
        } else {
            1.0
        };
        let convection = convection_w_m2_k(surface_c, self.air_c, self.wind_m_s);
        LinearBalance {
            at_zero_w_m2: left * (absorbed_w_m2 - emitted_w_m2 + emission_slope * surface_c)
                + convection * self.air_c,
            slope_w_m2_k: left * emission_slope + convection,
        }
    }

    /// Temperature at which nothing is conducted down.
    fn balanced_temperature_c(&self) -> f64 {
        let mut surface_c = self.air_c;
        for _ in 0..BALANCE_ITERATIONS {
            let balance = self.linearised(surface_c);
            surface_c = balance.at_zero_w_m2 / balance.slope_w_m2_k;
        }
        surface_c
    }
}

/// Convection coefficient of level ground in wind (Gui et al. 2007, eq. for pavements).
fn convection_w_m2_k(surface_c: f64, air_c: f64, wind_m_s: f64) -> f64 {
    let mean_k = kelvin_from_celsius(0.5 * (surface_c + air_c));
    let forced = 0.001_44 * libm::pow(mean_k, 0.3) * wind_m_s.sqrt();
    let buoyant = 0.000_97 * libm::pow((surface_c - air_c).abs(), 0.3);
    1.4 * 698.24 * (forced + buoyant)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::solar::{Date, Irradiance, Place, SunPath, SunPosition};
    use crate::weather::{HotDay, HotDayInput, Weather};

    const SPACING_S: f64 = 300.0;

    fn hot_days(latitude_deg: f64, high_c: f64, spacing_s: f64) -> Vec<Outdoors> {
        let place = Place {
            latitude_deg,
            longitude_deg: 0.0,
            altitude_m: 0.0,
            utc_offset_h: 0.0,
        };
        let sun = SunPath::new(&place, Date::new(2026, 7, 5).unwrap(), 2).unwrap();
        let weather = Weather::HotDay(Box::new(
            HotDay::new(HotDayInput {
                high_c,
                low_c: high_c - 14.0,
                dew_point_c: 12.0,
                cloud_fraction: 0.0,
                wind_speed_10m_m_s: 4.5,
                wind_from_deg: None,
                linke_turbidity: 3.0,
                altitude_m: 0.0,
                warming_per_day_k: 0.0,
            })
            .unwrap(),
        ));
        let steps = (2.0 * SECONDS_PER_DAY / spacing_s) as usize;
        (0..steps)
            .map(|step| weather.at(step as f64 * spacing_s, &sun))
            .collect()
    }

    fn greatest(values: &[f64]) -> f64 {
        values.iter().copied().fold(f64::MIN, f64::max)
    }

    /// Constant weather leaves the surface where its balance closes: at night, calm, by hand
    /// 0.95(300 − σT⁴) + h(t_a − t) = 0.
    #[test]
    fn constant_weather_meets_the_balance() {
        let outdoors = Outdoors {
            dry_bulb_c: 20.0,
            humidity_ratio: 0.0,
            pressure_pa: 101_325.0,
            wind_speed_10m_m_s: 4.0,
            wind_from_deg: None,
            sky_longwave_w_m2: 300.0,
            irradiance: Irradiance::default(),
            sun: SunPosition::from_angles(120.0, 0.0, 1_360.0),
        };
        let grid = vec![outdoors; 576];
        let surface = ground_surface_temperatures_c(
            &grid,
            SPACING_S,
            GroundSurface::Asphalt,
            GroundExposure::OPEN,
        );
        let surface_c = surface[575];
        let radiated = 0.95
            * (300.0
                - 5.670_374e-8
                    * (surface_c + 273.15)
                    * (surface_c + 273.15)
                    * (surface_c + 273.15)
                    * (surface_c + 273.15));
        let convected = convection_w_m2_k(surface_c, 20.0, 4.0) * (20.0 - surface_c);
        assert!((radiated + convected).abs() < 0.01, "{surface_c}");
        assert!(surface_c < 20.0 && surface_c > 10.0);
    }

    /// By hand: 1.4·698.24(0.00144·300^0.3·2 + 0.00097·20^0.3) = 977.5(0.015939 + 0.002383) =
    /// 17.91.
    #[test]
    fn convection_by_hand() {
        let coefficient = convection_w_m2_k(36.85, 16.85, 4.0);
        assert!((coefficient - 17.91).abs() < 0.02, "{coefficient}");
    }

    /// Highest surface temperature of asphalt by latitude: t = t_air − 0.00618φ² + 0.2289φ + 24.4
    /// (Solaimanian & Kennedy 1993, Transportation Research Record 1417, as adopted for binder
    /// selection; formula from memory). It was fitted within 3 K; reflectance here is that of its
    /// 0.9 absorptance.
    #[test]
    fn asphalt_meets_the_pavement_formula() {
        for (latitude_deg, high_c) in [(25.0, 33.0), (33.4, 41.0), (40.0, 35.0), (48.0, 30.0)] {
            let grid = hot_days(latitude_deg, high_c, SPACING_S);
            let surface = GroundTemperatures::new(&grid, SPACING_S, GroundSurface::Asphalt);
            let formula_c = high_c + (0.228_9 - 0.006_18 * latitude_deg) * latitude_deg + 24.4;
            let error_k = greatest(&surface.open_c) - formula_c;
            assert!(error_k.abs() < 4.0, "{error_k} K at {latitude_deg}°");
        }
    }

    /// The settled start makes the second of two like days like the first.
    #[test]
    fn starts_settled() {
        let grid = hot_days(35.0, 38.0, SPACING_S);
        for surface in [
            GroundSurface::Asphalt,
            GroundSurface::Grass,
            GroundSurface::Soil,
        ] {
            let both = GroundTemperatures::new(&grid, SPACING_S, surface);
            for values in [&both.open_c, &both.shaded_c] {
                for step in 0..288 {
                    let drift_k = values[step + 288] - values[step];
                    assert!(
                        drift_k.abs() < 0.1,
                        "{surface:?} drifts {drift_k} K at step {step}"
                    );
                }
            }
        }
    }

    /// Asphalt is hottest, grass mildest, and the shade under the vehicle near the air.
    #[test]
    fn surfaces_stand_in_their_known_order() {
        let grid = hot_days(35.0, 38.0, SPACING_S);
        let peak = |surface| greatest(&GroundTemperatures::new(&grid, SPACING_S, surface).open_c);
        assert!(peak(GroundSurface::Asphalt) > peak(GroundSurface::Concrete) + 5.0);
        assert!(peak(GroundSurface::Concrete) > peak(GroundSurface::Grass) + 3.0);
        let shaded = GroundTemperatures::new(&grid, SPACING_S, GroundSurface::Asphalt).shaded_c;
        assert!(
            (greatest(&shaded) - 38.0).abs() < 6.0,
            "{}",
            greatest(&shaded)
        );
    }

    /// Coarser steps give the same ground, even an hour at a time, and nothing breaks on an empty
    /// grid.
    #[test]
    fn steps_of_any_length_are_stable() {
        let fine = ground_surface_temperatures_c(
            &hot_days(35.0, 38.0, 60.0),
            60.0,
            GroundSurface::Asphalt,
            GroundExposure::OPEN,
        );
        for (spacing_s, tolerance_k) in [(300.0, 0.1), (3_600.0, 1.0)] {
            let grid = hot_days(35.0, 38.0, spacing_s);
            let coarse = ground_surface_temperatures_c(
                &grid,
                spacing_s,
                GroundSurface::Asphalt,
                GroundExposure::OPEN,
            );
            let ratio = (spacing_s / 60.0) as usize;
            for (step, value) in coarse.iter().enumerate() {
                let error_k = value - fine[step * ratio];
                assert!(
                    error_k.abs() < tolerance_k,
                    "{error_k} K at {step} of {spacing_s} s"
                );
            }
        }
        assert!(
            GroundTemperatures::new(&[], 300.0, GroundSurface::Grass)
                .open_c
                .is_empty()
        );
    }
}
