//! The thermal network against closed forms: steady state, exponential decay, air change.
//!
//! Sources: the textbook steady-state balance Q = UA ΔT, lumped-capacitance decay exp(−t/τ) (Incropera & DeWitt,
//! *Fundamentals of Heat and Mass Transfer*, ch. 5) and tracer decay exp(−n t); film coefficients worked out here anew from
//! Walton 1983 and Booten et al. 2012 as printed.

use noonday_engine::cabin::{
    AirExchange, Boundary, Cabin, CabinDescription, Chain, Element, Extraction, Gains, Layer,
    Ledger, Outside, Part, SunOnElements,
};
use noonday_engine::envelope::convection::OPEN_COUNTRY;
use noonday_engine::envelope::materials::{Material, PLYWOOD, STEEL};

const PRESSURE_PA: f64 = 101_325.0;
const HUMIDITY_RATIO: f64 = 0.008;

/// Walton 1983: roughness factor of a smooth surface.
const SMOOTH_SHEET: f64 = 1.11;

fn layer(material: Material, thickness_m: f64) -> Layer {
    Layer {
        material,
        thickness_m,
    }
}

fn wall(area_m2: f64, chain: Chain, emittance: f64) -> Element {
    Element {
        part: Part::Left,
        area_m2,
        chain,
        facing_up_cosine: 0.0,
        azimuth_deg: 90.0,
        height_m: 10.0,
        outside: Outside::Open,
        outside_emittance: emittance,
        inside_emittance: 0.9,
        inside_sun_share: 0.25,
    }
}

/// Four upright walls around one cubic metre, nothing else: no surface lies, so one film formula serves.
fn box_of(chain: Chain, outside_emittance: f64) -> CabinDescription {
    CabinDescription {
        elements: vec![wall(1.0, chain, outside_emittance); 4],
        air_volume_m3: 1.0,
        pressure_pa: PRESSURE_PA,
        furnishing_moisture_factor: 0.0,
    }
}

fn surroundings(outdoor_c: f64, wind_speed_m_s: f64) -> Boundary<'static> {
    Boundary {
        outdoor_c,
        outdoor_humidity_ratio: HUMIDITY_RATIO,
        sky_c: outdoor_c,
        ground_c: outdoor_c,
        shaded_ground_c: outdoor_c,
        wind_speed_m_s,
        wind_from_deg: Some(90.0),
        road_speed_m_s: 0.0,
        air_exchange: AirExchange::default(),
        stirred_m3_s: 0.0,
        sun: &SunOnElements::NONE,
    }
}

fn run(cabin: &mut Cabin, boundary: &Boundary<'_>, gains: &Gains, seconds: u32) -> Ledger {
    let mut ledger = Ledger::default();
    for _ in 0..seconds / 60 {
        cabin.set_conditions(boundary, 10.0);
        for _ in 0..6 {
            cabin.step(gains, &Extraction::NONE);
        }
        ledger.add(&cabin.close_interval());
    }
    ledger
}

/// Steady state of the box by fixed-point iteration on films written from the printed formulas.
fn steady_air_c(outdoor_c: f64, gain_w: f64, resistance_m2_k_w: f64, wind_m_s: f64) -> f64 {
    const AREA_M2: f64 = 4.0;
    const EMITTANCE: f64 = 0.9;
    let sigma = 5.670_374_419e-8;
    let flux = gain_w / AREA_M2;
    // Outside: walls radiate to sky, air and ground, all at the outdoor temperature.
    let mut outer_c = outdoor_c + 1.0;
    for _ in 0..200 {
        let natural = 1.31 * libm::cbrt((outer_c - outdoor_c).abs());
        let forced = 3.26 * libm::pow(wind_m_s, 0.89);
        let smooth = (natural * natural + forced * forced).sqrt();
        let convection = natural + SMOOTH_SHEET * (smooth - natural);
        let (surface_k, air_k) = (outer_c + 273.15, outdoor_c + 273.15);
        let radiation =
            EMITTANCE * sigma * (surface_k * surface_k + air_k * air_k) * (surface_k + air_k);
        outer_c = outdoor_c + flux / (convection + radiation);
    }
    let inner_c = outer_c + flux * resistance_m2_k_w;
    // Inside: the air gives all its heat to the walls by buoyancy; star and walls are at one temperature.
    let difference_k = libm::pow(flux / 1.31, 0.75);
    inner_c + difference_k
}

#[test]
fn a_bare_box_settles_where_the_hand_balance_says() {
    let chain = Chain::lined(
        layer(STEEL, 0.001),
        layer(PLYWOOD, 0.012),
        layer(PLYWOOD, 0.004),
    );
    let mut cabin = Cabin::new(&box_of(chain, 0.9), &OPEN_COUNTRY, 20.0, HUMIDITY_RATIO).unwrap();
    let gains = Gains {
        convective_w: 200.0,
        ..Gains::default()
    };
    let wind_m_s = 3.0;
    run(
        &mut cabin,
        &surroundings(20.0, wind_m_s),
        &gains,
        12 * 3_600,
    );
    let expected_c = steady_air_c(20.0, 200.0, 0.016 / 0.12, wind_m_s);
    let error_k = cabin.air_c() - expected_c;
    assert!(
        error_k.abs() < 0.02,
        "{} against {expected_c}",
        cabin.air_c()
    );
}

#[test]
fn a_steel_box_in_a_gale_decays_exponentially() {
    // Thick steel and a gale: Biot number 0.01, wind term 63 W/(m² K) against which buoyancy (about 3) adds as squares.
    let chain = Chain::sheet(layer(STEEL, 0.01));
    let mut cabin = Cabin::new(&box_of(chain, 0.05), &OPEN_COUNTRY, 30.0, HUMIDITY_RATIO).unwrap();
    let wind_m_s: f64 = 25.0;
    let film = SMOOTH_SHEET * 3.26 * libm::pow(wind_m_s, 0.89)
        + 4.0 * 0.05 * 5.67e-8 * libm::pow(298.0, 3.0);
    let tau_s = 7_850.0 * 480.0 * 0.01 / film;
    let boundary = surroundings(20.0, wind_m_s);
    for minutes in 1..=15_u32 {
        run(&mut cabin, &boundary, &Gains::default(), 60);
        let expected_k = 10.0 * libm::exp(-f64::from(minutes) * 60.0 / tau_s);
        let shell_k = cabin.outer_face_c(0).unwrap() - 20.0;
        assert!(
            (shell_k - expected_k).abs() < 0.1,
            "after {minutes} min {shell_k} K against {expected_k} K"
        );
    }
}

#[test]
fn moisture_is_flushed_at_the_air_change_rate() {
    let chain = Chain::lined(
        layer(STEEL, 0.001),
        layer(PLYWOOD, 0.012),
        layer(PLYWOOD, 0.004),
    );
    let mut cabin = Cabin::new(&box_of(chain, 0.9), &OPEN_COUNTRY, 25.0, 0.012).unwrap();
    let mut boundary = surroundings(25.0, 1.0);
    boundary.air_exchange.leakage_m3_s = 2.0 / 3_600.0;
    run(&mut cabin, &boundary, &Gains::default(), 3_600);
    let expected = HUMIDITY_RATIO + (0.012 - HUMIDITY_RATIO) * libm::exp(-2.0);
    // 1 %: densities of inner and outer air differ slightly with their humidity.
    assert!((cabin.humidity_ratio() / expected - 1.0).abs() < 0.01);
}

#[test]
fn heat_and_water_close_to_rounding() {
    let chain = Chain::lined(
        layer(STEEL, 0.001),
        layer(PLYWOOD, 0.012),
        layer(PLYWOOD, 0.004),
    );
    let mut cabin = Cabin::new(&box_of(chain, 0.9), &OPEN_COUNTRY, 20.0, HUMIDITY_RATIO).unwrap();
    let mut sun = SunOnElements {
        transmitted_w: 100.0,
        ..SunOnElements::NONE
    };
    sun.absorbed_outside_w[0] = 500.0;
    let mut boundary = Boundary {
        sun: &sun,
        ..surroundings(35.0, 4.0)
    };
    boundary.air_exchange.fan_m3_s = 0.02;
    let gains = Gains {
        convective_w: 150.0,
        radiant_w: 60.0,
        moisture_kg_s: 3e-5,
    };
    let ledger = run(&mut cabin, &boundary, &gains, 6 * 3_600);
    assert!(
        ledger.heat_residual().abs() < 1e-9,
        "{}",
        ledger.heat_residual()
    );
    assert!(
        ledger.inside_residual().abs() < 1e-9,
        "{}",
        ledger.inside_residual()
    );
    assert!(
        ledger.moisture_residual().abs() < 1e-9,
        "{}",
        ledger.moisture_residual()
    );
    assert!(ledger.throughput_j > 1e6);
}
