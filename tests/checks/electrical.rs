//! The electrical side against published values and textbook formulas.

use crate::checks::Check;
use crate::{Table, Worst};
use noonday_engine::electrical::BankInput;
use noonday_engine::electrical::Chemistry;
use noonday_engine::electrical::{Bank, BankLimit};
use noonday_engine::electrical::{Inverter, InverterInput, grid_inverter_efficiency};
use noonday_engine::electrical::{
    PanelInput, PanelLosses, PanelMounting, Panels, cell_temperature_c,
};

const STEP_S: f64 = 10.0;

fn bank_input(chemistry: Chemistry, capacity_ah: f64) -> BankInput {
    BankInput {
        chemistry,
        nominal_voltage_v: 12.0,
        capacity_ah,
        usable_min_soc: 0.0,
        usable_max_soc: 1.0,
        resistance_ohm: 0.001,
        coulombic_efficiency: 1.0,
        max_discharge_a: 10_000.0,
        max_charge_a: 10_000.0,
        peukert_exponent: 1.0,
        health_fraction: 1.0,
    }
}

/// Hours that a bank at 25 °C lasts from full at a constant current.
///
/// The bank takes a power, so the current of each step is set by asking for it at the voltage that
/// the bank showed in the step before.
fn hours_at_current(bank: &Bank, current_a: f64) -> f64 {
    let mut state = bank.state_at(1.0);
    let mut voltage_v = bank.open_circuit_voltage_v(&state);
    let mut drawn_ah = 0.0;
    loop {
        let step = bank.step(&mut state, STEP_S, -current_a * voltage_v, 25.0);
        drawn_ah -= step.current_a * STEP_S / 3600.0;
        voltage_v = step.terminal_voltage_v;
        if step.limited_by == Some(BankLimit::Empty) {
            return drawn_ah / current_a;
        }
        assert_eq!(step.limited_by, None);
    }
}

/// Open-circuit voltage: Safari & Delacourt, J. Electrochem. Soc. 158 (2011) A562, in `ocv.csv`,
/// column A for a cell and for four in series. Tolerance: half of the last digit printed, four times
/// that for the pack made from cells.
#[must_use]
pub fn open_circuit_voltage_follows_the_published_fit() -> Vec<Check> {
    const SOURCE: &str = "Safari & Delacourt 2011, JES 158 A562 (ocv.csv)";
    let bank = Bank::new(bank_input(Chemistry::LithiumIronPhosphate, 100.0)).unwrap();
    let (mut cell, mut pack) = (Worst::default(), Worst::default());
    for row in Table::read("ocv.csv").rows() {
        let soc = row.number("soc");
        let voltage_v = bank.open_circuit_voltage_v(&bank.state_at(soc));
        cell.note(voltage_v / 4.0 - row.number("ocv_A_V"), soc);
        pack.note(voltage_v - row.number("pack4s_A_V"), soc);
    }
    vec![
        cell.check("open-circuit voltage of a cell, V", 0.5e-4, SOURCE),
        pack.check("open-circuit voltage of four cells, V", 2.5e-4, SOURCE),
    ]
}

/// Two published fits differ by up to 0.05 V per cell between 40 and 90 % (`ocv.csv`): the model
/// has to stay within that of the mean of both.
#[must_use]
pub fn open_circuit_voltage_lies_within_the_spread_of_two_fits() -> Vec<Check> {
    const SOURCE: &str = "mean of Safari & Delacourt 2011 and Prada et al. 2013 (ocv.csv)";
    let bank = Bank::new(bank_input(Chemistry::LithiumIronPhosphate, 100.0)).unwrap();
    let mut worst = Worst::default();
    for row in Table::read("ocv.csv").rows() {
        let soc = row.number("soc");
        if (0.4..=0.9).contains(&soc) {
            let voltage_v = bank.open_circuit_voltage_v(&bank.state_at(soc)) / 4.0;
            worst.note(voltage_v - row.number("mean_V"), soc);
        }
    }
    vec![worst.check(
        "open-circuit voltage against the mean of two fits, V",
        0.025,
        SOURCE,
    )]
}

/// Ampere-hours over amperes, as everybody reckons it when nothing else is in play (common practice,
/// no source). Tolerance: the current follows the voltage of the step before.
#[must_use]
pub fn bank_lasts_ampere_hours_over_amperes() -> Vec<Check> {
    const SOURCE: &str = "ampere-hours over amperes, common practice, no source";
    let bank = Bank::new(bank_input(Chemistry::LithiumIronPhosphate, 600.0)).unwrap();
    let mut worst = Worst::default();
    for (current_a, hours) in [(60.0, 10.0), (46.0, 13.043_478), (30.0, 20.0)] {
        let lasted_h = hours_at_current(&bank, current_a);
        worst.note(lasted_h / hours - 1.0, format!("{current_a} A"));
    }
    vec![worst.check(
        "600 Ah at 60, 46 and 30 A last 10, 13 and 20 h, relative",
        2e-3,
        SOURCE,
    )]
}

/// Peukert's law with the rated time: t = H (C/(I H))ᵏ, a textbook formula.
#[must_use]
pub fn lead_acid_lasts_as_peukert_says() -> Vec<Check> {
    const SOURCE: &str = "Peukert's law, textbook formula";
    let mut worst = Worst::default();
    for (chemistry, exponent) in [
        (Chemistry::AbsorbentGlassMat, 1.1),
        (Chemistry::Flooded, 1.3),
    ] {
        let bank = Bank::new(BankInput {
            peukert_exponent: exponent,
            ..bank_input(chemistry, 200.0)
        })
        .unwrap();
        for current_a in [10.0, 20.0, 40.0] {
            let by_law_h = 20.0 * libm::pow(200.0 / (current_a * 20.0), exponent);
            let lasted_h = hours_at_current(&bank, current_a);
            worst.note(
                lasted_h / by_law_h - 1.0,
                format!("{chemistry:?} {current_a} A"),
            );
        }
    }
    vec![worst.check(
        "time to empty against Peukert's law, relative",
        2e-3,
        SOURCE,
    )]
}

/// Cell temperatures and module power: `pv.csv`, from an independent implementation of Faiman
/// (2008), King et al. (SAND2004-3535) and PVWatts (NREL/TP-6A20-62641). Tolerance: half of the last
/// digit printed, and for the power what that digit of the cell temperature is worth besides.
#[must_use]
pub fn panels_follow_published_models() -> Vec<Check> {
    const SOURCE: &str =
        "Faiman 2008, SAND2004-3535 and NREL/TP-6A20-62641 in pvlib 0.16.1 (pv.csv)";
    let panels = Panels::new(PanelInput {
        rated_power_w: 400.0,
        temperature_coefficient_per_k: -0.0035,
        mounting: PanelMounting::GluedToRoof,
        losses: PanelLosses::FIXED_INSTALLATION,
        controller_efficiency: 1.0,
    })
    .unwrap();
    let mut temperature = Worst::default();
    let (mut module, mut delivered) = (Worst::default(), Worst::default());
    for (index, row) in Table::read("pv.csv").rows().enumerate() {
        let irradiance_w_m2 = row.number("G_W_m2");
        let (ambient_c, wind_m_s) = (row.number("Ta_C"), row.number("ws_m_s"));
        for (mounting, column) in [
            (PanelMounting::Ventilated, "Tc_faiman"),
            (PanelMounting::CloseToRoof, "Tc_sapm_close_glassglass"),
            (PanelMounting::GluedToRoof, "Tc_sapm_insulated"),
        ] {
            let cell_c = cell_temperature_c(mounting, irradiance_w_m2, ambient_c, wind_m_s);
            temperature.note(cell_c - row.number(column), format!("{column} {index}"));
        }
        let glued = PanelMounting::GluedToRoof;
        let cell_c = cell_temperature_c(glued, irradiance_w_m2, ambient_c, wind_m_s);
        let module_w = panels.module_power_w(irradiance_w_m2, cell_c);
        module.note(module_w - row.number("Pdc_400W_insulated"), index);
        let power_w = panels.power_w(irradiance_w_m2, 0.0, ambient_c, wind_m_s);
        delivered.note(power_w - row.number("Pdc_after_losses"), index);
    }
    vec![
        temperature.check("cell temperature, °C", 0.6e-3, SOURCE),
        module.check("module power, W", 1e-3, SOURCE),
        delivered.check("power after losses, W", 1e-3, SOURCE),
    ]
}

/// PVWatts default losses together: 14.08 % (NREL/TP-6A20-62641; `pv.csv` header 14.0757 %).
#[must_use]
pub fn default_losses_add_up_to_the_published_figure() -> Vec<Check> {
    const SOURCE: &str = "NREL/TP-6A20-62641 (pv.csv)";
    let mut worst = Worst::default();
    let percent = 100.0 * PanelLosses::FIXED_INSTALLATION.combined();
    worst.note(percent - 14.0757, "default losses");
    vec![worst.check("default losses of panels, %", 1e-4, SOURCE)]
}

/// Inverter efficiencies: `inverter.csv`, the quadratic loss with 1, 2 and 4 % and the PVWatts
/// curve. Tolerance: half of the last digit printed.
#[must_use]
pub fn inverter_efficiencies_follow_their_tables() -> Vec<Check> {
    const SOURCE: &str = "quadratic loss form and NREL/TP-6A20-62641 (inverter.csv)";
    let rated_w = 2000.0;
    let inverter = Inverter::new(InverterInput {
        continuous_power_w: rated_w,
        surge_power_w: 2.0 * rated_w,
        idle_power_w: 0.01 * rated_w,
        linear_loss_fraction: 0.02,
        square_loss_fraction: 0.04,
    })
    .unwrap();
    let (mut quadratic, mut grid) = (Worst::default(), Worst::default());
    for row in Table::read("inverter.csv").rows() {
        let load = row.number("load_fraction");
        quadratic.note(
            inverter.efficiency(load * rated_w) - row.number("quad_eta"),
            load,
        );
        grid.note(
            grid_inverter_efficiency(load) - row.number("pvwatts_eta"),
            load,
        );
    }
    vec![
        quadratic.check("efficiency by quadratic loss", 0.51e-5, SOURCE),
        grid.check("efficiency of a grid inverter", 0.51e-5, SOURCE),
    ]
}
