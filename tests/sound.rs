//! What must hold of the run of every valid scenario.

use noonday_engine::simulation::{HeatPath, Results};

/// Residual of a balance over its throughput: what is asked of it is 1e-6, and it closes to rounding.
pub const RESIDUAL_ALLOWED: f64 = 1e-9;

/// Every number of a run's series, with its name.
fn numbers(results: &Results) -> impl Iterator<Item = (&'static str, f64)> + '_ {
    let series = &results.series;
    [
        ("time_h", &series.time_h),
        ("outdoor_c", &series.outdoor_c),
        ("cabin_c", &series.cabin_c),
        ("felt_c", &series.felt_c),
        ("radiant_c", &series.radiant_c),
        ("relative_humidity", &series.relative_humidity),
        ("sun_w_m2", &series.sun_w_m2),
        ("state_of_charge", &series.state_of_charge),
        ("bank_voltage_v", &series.bank_voltage_v),
        ("bank_current_a", &series.bank_current_a),
        ("cooler_share", &series.cooler_share),
        ("cooler_w", &series.cooler_w),
        ("loads_w", &series.loads_w),
        ("panels_w", &series.panels_w),
        ("driving_w", &series.driving_w),
        ("shore_w", &series.shore_w),
    ]
    .into_iter()
    .flat_map(|(name, values)| values.iter().map(move |value| (name, *value)))
    .chain(
        series
            .heat_w
            .iter()
            .flatten()
            .map(|value| ("heat_w", *value)),
    )
}

/// Holds a run against all of it: nothing that is not a number; heat, water and electricity close; charge stays within the bank.
///
/// # Errors
/// What does not hold, in words.
pub fn check_run(results: &Results) -> Result<(), String> {
    let holds = |it: bool, what: String| if it { Ok(()) } else { Err(what) };
    for (name, value) in numbers(results) {
        holds(value.is_finite(), format!("{name} is {value}"))?;
    }
    let balance = &results.balance;
    let worst = balance
        .heat_residual
        .max(balance.moisture_residual)
        .max(balance.electric_residual);
    holds(worst <= RESIDUAL_ALLOWED, format!("{balance:?}"))?;
    let heat_wh = &results.totals.heat_wh;
    let net_wh: f64 = heat_wh.iter().sum();
    let throughput_wh: f64 = heat_wh.iter().map(|path_wh| path_wh.abs()).sum();
    holds(
        net_wh.abs() <= RESIDUAL_ALLOWED * throughput_wh.max(1.0),
        format!(
            "{} paths sum to {net_wh} of {throughput_wh} Wh",
            HeatPath::COUNT
        ),
    )?;
    let charges = &results.series.state_of_charge;
    let within = charges.iter().all(|charge| (0.0..=1.0).contains(charge));
    holds(within, format!("charges {charges:?}"))?;
    let humidities = &results.series.relative_humidity;
    let wet_or_dry = humidities.iter().all(|humidity| *humidity >= 0.0);
    holds(wet_or_dry, format!("humidities {humidities:?}"))
}
