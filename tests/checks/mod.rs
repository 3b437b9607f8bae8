//! The reference checks: what the engine gives beside what a source outside the project says.
//!
//! A check compares and reports; the tests assert what it reports, and the scoreboard prints it. [`GROUPS`] lists every one.

#![expect(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a check that cannot read its reference has to fail"
)]

pub mod air;
pub mod cabling;
pub mod comfort;
pub mod cooler;
pub mod electrical;
pub mod envelope;
pub mod parked;
pub mod season;
pub mod solar;
pub mod thermal;
pub mod weather;

use std::fmt::Write;

/// What one comparison came to.
#[derive(Clone, Debug)]
pub struct Check {
    /// What was compared, with its unit.
    pub quantity: String,
    /// What with.
    pub source: &'static str,
    /// How many values.
    pub points: usize,
    /// The largest error met.
    pub worst: f64,
    /// Where.
    pub worst_at: String,
    /// The largest error allowed.
    pub allowed: f64,
}

impl Check {
    /// Whether something was compared and nothing was further off than allowed.
    #[must_use]
    pub fn passes(&self) -> bool {
        self.points > 0 && self.worst <= self.allowed
    }
}

/// Fails unless every check passes.
///
/// # Panics
/// At the first check that does not pass.
pub fn assert_all(checks: &[Check]) {
    assert!(!checks.is_empty(), "nothing was checked");
    for check in checks {
        println!(
            "{}: worst {:.3e} of {} ({})",
            check.quantity, check.worst, check.points, check.worst_at
        );
        assert!(
            check.passes(),
            "{}: {} of {} values exceeds {} at {}",
            check.quantity,
            check.worst,
            check.points,
            check.allowed,
            check.worst_at
        );
    }
}

/// A function that makes some checks.
type Maker = fn() -> Vec<Check>;

/// Every check, by subject.
pub const GROUPS: [(&str, &[Maker]); 10] = [
    (
        "Air",
        &[
            air::agrees_with_the_published_library,
            air::agrees_with_real_gas_properties_within_the_enhancement_factor,
            air::gives_the_standard_atmosphere,
            air::inverses_return_what_went_in,
        ],
    ),
    (
        "Sun",
        &[
            solar::position_agrees_with_the_worked_example,
            solar::position_agrees_with_the_published_library,
            solar::clear_sky_agrees_with_the_published_library,
            solar::daily_sums_agree_with_the_published_library,
            solar::planes_agree_with_the_published_library,
        ],
    ),
    (
        "Weather",
        &[
            weather::sky_agrees_with_the_published_correlations,
            weather::file_weather_agrees_with_the_building_program,
            weather::file_weather_keeps_the_sums_of_the_file,
            season::a_season_follows_the_building_program,
            season::a_fan_alone_misses_every_night_that_never_falls_to_the_limit,
        ],
    ),
    (
        "Envelope",
        &[
            envelope::convection_follows_its_published_forms,
            envelope::ribs_follow_the_zone_method,
            envelope::glass_has_the_transmittance_it_is_described_by,
            envelope::covers_add_their_resistance_to_the_pane,
            envelope::leaks_lie_where_vehicles_were_measured,
        ],
    ),
    (
        "Cabin",
        &[
            thermal::cabin_air_follows_the_reference,
            thermal::cooling_loads_follow_the_reference,
            thermal::pull_down_takes_as_long_as_the_reference,
        ],
    ),
    (
        "Parked cars",
        &[
            parked::a_closed_sedan_heats_as_fast_as_measured,
            parked::closed_all_day_it_peaks_where_georgia_cars_did,
            parked::black_stands_above_silver_as_measured,
        ],
    ),
    (
        "Cooler",
        &[
            cooler::coefficients_are_those_published,
            cooler::curves_reproduce_the_published_ones,
            cooler::division_by_the_rating_point_changes_little,
            cooler::bypass_factors_match_worked_examples,
            cooler::coil_reproduces_the_examples_it_is_built_from,
            cooler::coefficient_of_performance_follows_the_outdoors,
            cooler::supply_air_in_mild_weather_is_as_cold_as_people_find_it,
            cooler::low_speed_shifts_towards_sensible_heat,
        ],
    ),
    (
        "Power",
        &[
            electrical::open_circuit_voltage_follows_the_published_fit,
            electrical::open_circuit_voltage_lies_within_the_spread_of_two_fits,
            electrical::bank_lasts_ampere_hours_over_amperes,
            electrical::lead_acid_lasts_as_peukert_says,
            electrical::panels_follow_published_models,
            electrical::default_losses_add_up_to_the_published_figure,
            electrical::inverter_efficiencies_follow_their_tables,
        ],
    ),
    (
        "Cable",
        &[
            cabling::conductors_are_those_of_the_published_tables,
            cabling::metric_conductors_are_those_of_the_standard,
            cabling::metric_conductors_are_allowed_no_more_than_thicker_gauges,
            cabling::drop_and_loss_follow_the_tables,
            cabling::the_choice_lies_where_the_table_draws_the_line,
            cabling::fuses_are_standard_ratings,
            cabling::heat_and_neighbours_take_what_the_codes_say,
        ],
    ),
    (
        "Comfort",
        &[
            comfort::heat_index_follows_the_published_algorithm,
            comfort::heat_index_agrees_with_the_published_chart,
            comfort::mean_vote_follows_the_standard,
            comfort::standard_effective_temperature_follows_the_standard,
            comfort::people_give_off_the_heat_of_the_handbook,
            comfort::dogs_give_off_heat_by_their_mass,
        ],
    ),
];

/// Runs every check; gives the scoreboard as Markdown, and whether all pass.
#[must_use]
pub fn scoreboard() -> (String, bool) {
    let mut text = String::from(
        "# Scoreboard\n\nWhat the engine gives beside what sources outside the project say. Written by `make validate`; \
         a test fails if it is stale.\n",
    );
    let mut all_pass = true;
    for (subject, makers) in GROUPS {
        let _ = write!(
            text,
            "\n## {subject}\n\n| quantity | reference | points | worst error | allowed | pass |\n| --- | --- | ---: | ---: | ---: | --- |\n"
        );
        for check in makers.iter().flat_map(|make| make()) {
            all_pass &= check.passes();
            let _ = writeln!(
                text,
                "| {} | {} | {} | {} | {} | {} |",
                check.quantity,
                check.source,
                check.points,
                printed(check.worst),
                printed(check.allowed),
                if check.passes() { "yes" } else { "**no**" }
            );
        }
    }
    (text, all_pass)
}

/// Two digits; what is rounding and no more is not worth telling apart.
fn printed(error: f64) -> String {
    const ROUNDING: f64 = 1e-9;
    if error == 0.0 {
        return "0".to_owned();
    }
    if error < ROUNDING {
        return "< 1e-9".to_owned();
    }
    let digits = (1.0 - libm::floor(libm::log10(error))).max(0.0) as usize;
    if digits > 5 {
        format!("{error:.1e}")
    } else {
        format!("{error:.digits$}")
    }
}
