//! What the set-up weighs: every part that a comparison of scenarios would add or leave out, from what the scenario says already.
//!
//! It is meant to tell scenarios apart and to be held against what a vehicle may carry; the masses on the data plates of the
//! parts that are bought replace it. Not in it: lining, furniture, boxes, brackets, and the vehicle's own battery.

use super::circuits::circuits;
use super::cost::{glass_m2, roof_m2, walls_m2};
use crate::electrical::conductor::SizeSeries;
use crate::scenario::{CellChemistry, CoolerSupply, FanUse, ScenarioDocument};
use crate::simulation::insulation_of;

/// Density of annealed copper at 20 °C, kg/m³: IEC 60028 (1925), and NBS Handbook 100 (1966).
pub const COPPER_DENSITY_KG_M3: f64 = 8_890.0;

/// Mass of a flexible cable over that of its copper, for its insulation: common practice, no source.
pub const CABLE_OVER_COPPER: f64 = 1.2;

/// Mass of inverters and DC-DC chargers, kg for each kW of output: common practice, no source.
pub const CONVERTER_KG_PER_KW: f64 = 3.0;

/// Mass of a roof fan with its frame, kg: common practice, no source.
pub const FAN_KG: f64 = 5.0;

/// Mass of an insulated window cover, kg/m²: common practice, no source.
pub const COVER_KG_M2: f64 = 1.0;

/// Nominal voltage for each 12 V of a bank of lithium iron phosphate, V: 4 cells of 3.2 V.
const LITHIUM_BLOCK_V: f64 = 12.8;

/// Nominal voltage for each 12 V of a lead-acid bank, V: 6 cells of 2 V.
const LEAD_BLOCK_V: f64 = 12.0;

/// A part of the weight.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Weighed {
    /// The cooler, as entered.
    Cooler,
    /// The bank, by its energy.
    Bank,
    /// Panels with their fastening, as entered for one of them.
    Panels,
    /// DC-DC charger and inverter, by their output.
    Converters,
    /// Cable, by its copper.
    Cable,
    /// Roof fan.
    Fan,
    /// Insulation, by its volume.
    Insulation,
    /// Window covers, by their area.
    Covers,
}

/// What the set-up weighs.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Weight {
    /// Parts that there are, with their mass, kg.
    pub parts: Vec<(Weighed, f64)>,
    /// Sum, kg.
    pub total_kg: f64,
    /// Rated energy of the bank, Wh.
    pub bank_wh: f64,
    /// Volume of the insulation, m³.
    pub insulation_m3: f64,
    /// Volume of the copper in the cable, m³.
    pub copper_m3: f64,
    /// Output of DC-DC charger and inverter together, W.
    pub converters_w: f64,
}

/// Specific energy of a bank with its case and protection, Wh/kg: common practice, no source. A block of 12 V and 100 Ah weighs some
/// 12 kg with lithium iron phosphate, 30 kg as sealed lead, 28 kg as flooded lead.
#[must_use]
pub fn bank_wh_per_kg(chemistry: CellChemistry) -> f64 {
    match chemistry {
        CellChemistry::LithiumIronPhosphate => 105.0,
        CellChemistry::AbsorbentGlassMat => 40.0,
        CellChemistry::FloodedLead => 43.0,
    }
}

/// Density of a document's insulation, kg/m³ ([`crate::envelope::materials`]).
#[must_use]
pub fn insulation_kg_m3(document: &ScenarioDocument) -> f64 {
    insulation_of(document).density_kg_m3
}

/// Weighs what a scenario's set-up consists of, kg.
///
/// * Bank: m = E/e, with E = Ah × nominal voltage and e of [`bank_wh_per_kg`].
/// * Panels: m = P/p × m₁, with p and m₁ power and mass of one panel as entered.
/// * Insulation: m = ρ Σ A d, less what is not filled of roof and walls.
/// * Cable: m = 1.2 ρ Σ 2 l a, out and back, of each circuit's conductor among gauge sizes; a circuit for which none will do is left
///   out.
/// * Converters: m = 3 kg/kW × output; the DC-DC charger's output is its current at the bank's nominal voltage.
/// * Cooler: as entered. Fan and covers: a fixed mass, and one for each m² of glass.
///
/// Parts that are not fitted weigh nothing, as they cost nothing ([`super::cost`]).
///
/// `document`: of a validated scenario.
///
/// Sources: definitions of density and specific energy; values at the constants of this module.
#[must_use]
pub fn weight(document: &ScenarioDocument) -> Weight {
    let bank_wh = bank_wh(document);
    let insulation_m3 = insulation_m3(document);
    let copper_m3 = copper_m3(document);
    let converters_w = converters_w(document);
    let when = |fitted: bool, mass_kg: f64| if fitted { mass_kg } else { 0.0 };
    let panel = &document.roof.panel;
    let fan = document.ventilation.fan_use != FanUse::Off;
    let parts: Vec<(Weighed, f64)> = [
        (
            Weighed::Cooler,
            when(document.cooler.installed, document.roof.unit.mass_kg),
        ),
        (
            Weighed::Bank,
            bank_wh / bank_wh_per_kg(document.battery.chemistry),
        ),
        (
            Weighed::Panels,
            document.panel_power_w() / panel.rated_power_w * panel.mass_kg,
        ),
        (
            Weighed::Converters,
            CONVERTER_KG_PER_KW * converters_w / 1_000.0,
        ),
        (
            Weighed::Cable,
            CABLE_OVER_COPPER * COPPER_DENSITY_KG_M3 * copper_m3,
        ),
        (Weighed::Fan, when(fan, FAN_KG)),
        (
            Weighed::Insulation,
            insulation_kg_m3(document) * insulation_m3,
        ),
        (
            Weighed::Covers,
            when(
                document.glass.covers_fitted,
                COVER_KG_M2 * glass_m2(document),
            ),
        ),
    ]
    .into_iter()
    .filter(|(_, mass_kg)| *mass_kg > 0.0)
    .collect();
    Weight {
        total_kg: parts.iter().map(|(_, mass_kg)| mass_kg).sum(),
        parts,
        bank_wh,
        insulation_m3,
        copper_m3,
        converters_w,
    }
}

fn bank_wh(document: &ScenarioDocument) -> f64 {
    let battery = &document.battery;
    let block_v = match battery.chemistry {
        CellChemistry::LithiumIronPhosphate => LITHIUM_BLOCK_V,
        CellChemistry::AbsorbentGlassMat | CellChemistry::FloodedLead => LEAD_BLOCK_V,
    };
    battery.capacity_ah * block_v * battery.system_voltage.blocks()
}

fn insulation_m3(document: &ScenarioDocument) -> f64 {
    let (vehicle, shell) = (&document.vehicle, &document.shell);
    let cavities_m3 =
        roof_m2(document) * shell.roof_insulation_m + walls_m2(document) * shell.wall_insulation_m;
    shell.filled_share * cavities_m3 + vehicle.length_m * vehicle.width_m * shell.floor_insulation_m
}

fn copper_m3(document: &ScenarioDocument) -> f64 {
    let Ok(circuits) = circuits(document) else {
        return 0.0;
    };
    circuits
        .circuits
        .iter()
        .filter_map(|circuit| {
            let fitted = circuit.choice(SizeSeries::WireGauge).fitted()?;
            let area_m2 = fitted.conductor.area_mm2 * 1e-6;
            Some(2.0 * circuit.need.length_one_way_m * area_m2)
        })
        .sum()
}

fn converters_w(document: &ScenarioDocument) -> f64 {
    let (cooler, charging) = (&document.cooler, &document.charging);
    let inverted = cooler.installed && cooler.supply == CoolerSupply::MainsThroughInverter;
    let inverter_w = if inverted {
        cooler.inverter_rated_w
    } else {
        0.0
    };
    let dc_dc_w = if charging.drives {
        charging.dc_dc_current_a * document.battery.system_voltage.nominal_v()
    } else {
        0.0
    };
    inverter_w + dc_dc_w
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scenario::{InsulationMaterial, SystemVoltage, example};

    fn mass(document: &ScenarioDocument, wanted: Weighed) -> Option<f64> {
        let parts = weight(document).parts;
        let found = parts.into_iter().find(|(part, _)| *part == wanted);
        found.map(|(_, mass_kg)| mass_kg)
    }

    /// NBS Handbook 100 (1966), table 5, bare solid copper (from memory): a thousand feet of 4/0 AWG, 107.2 mm², weigh 640.5 lb.
    #[test]
    fn copper_weighs_what_the_wire_tables_say() {
        let per_m = COPPER_DENSITY_KG_M3 * 107.2e-6;
        let printed = 640.5 * 0.453_592_37 / 304.8;
        assert!((per_m / printed - 1.0).abs() < 5e-4, "{per_m} {printed}");
    }

    /// By hand: 600 Ah of 12.8 V at 105 Wh/kg; the same in lead holds 600 Ah of 12 V.
    #[test]
    fn a_bank_weighs_its_energy_over_its_specific_energy() {
        let mut document = example();
        let lithium = mass(&document, Weighed::Bank);
        assert!(lithium.is_some_and(|kg| (kg - 7_680.0 / 105.0).abs() < 1e-9));
        document.battery.chemistry = CellChemistry::AbsorbentGlassMat;
        let lead = mass(&document, Weighed::Bank);
        assert!(lead.is_some_and(|kg| (kg - 180.0).abs() < 1e-9));
        document.battery.system_voltage = SystemVoltage::V24;
        let twice = mass(&document, Weighed::Bank);
        assert!(twice.is_some_and(|kg| (kg - 360.0).abs() < 1e-9));
    }

    /// By hand: roof 4.2 × 1.75 − 0.16 = 7.19 m² and walls 3.8 × 5.95 − 2.6 = 20.01 m², both 40 mm and 90 % filled; floor 7.35 m² of
    /// 20 mm. Wool of 20 kg/m³, cork of 120.
    #[test]
    fn insulation_weighs_its_volume_by_its_density() {
        let mut document = example();
        let volume_m3 = 0.9 * (7.19 + 20.01) * 0.04 + 7.35 * 0.02;
        assert!((weight(&document).insulation_m3 - volume_m3).abs() < 1e-9);
        let wool = mass(&document, Weighed::Insulation);
        assert!(wool.is_some_and(|kg| (kg - 20.0 * volume_m3).abs() < 1e-9));
        document.shell.insulation_material = InsulationMaterial::Cork;
        let cork = mass(&document, Weighed::Insulation);
        assert!(cork.is_some_and(|kg| (kg - 120.0 * volume_m3).abs() < 1e-9));
    }

    /// By hand: 300 W of panels of 100 W and 7 kg are 21 kg, as the roof counts them.
    #[test]
    fn panels_and_cooler_weigh_what_was_entered() {
        let mut document = example();
        assert_eq!(mass(&document, Weighed::Cooler), Some(30.0));
        let panels = mass(&document, Weighed::Panels);
        assert!(panels.is_some_and(|kg| (kg - 21.0).abs() < 1e-9));
        document.set_panel_power_w(0.0);
        document.cooler.installed = false;
        assert_eq!(mass(&document, Weighed::Panels), None);
        assert_eq!(mass(&document, Weighed::Cooler), None);
    }

    /// By hand: 2000 W of inverter and 40 A at 12 V are 2.48 kW, 7.44 kg.
    #[test]
    fn converters_weigh_by_their_output() {
        let mut document = example();
        assert_eq!(mass(&document, Weighed::Converters), None);
        document.cooler.supply = CoolerSupply::MainsThroughInverter;
        document.charging.drives = true;
        let both = mass(&document, Weighed::Converters);
        assert!(both.is_some_and(|kg| (kg - 7.44).abs() < 1e-9));
    }

    #[test]
    fn the_sum_is_its_parts_and_more_of_anything_weighs_more() {
        let mut document = example();
        let before = weight(&document);
        let sum: f64 = before.parts.iter().map(|(_, mass_kg)| mass_kg).sum();
        assert!((sum - before.total_kg).abs() < 1e-9);
        document.installation.cooler.length_m *= 2.0;
        let longer = weight(&document);
        assert!(longer.copper_m3 > before.copper_m3);
        document.shell.roof_insulation_m *= 2.0;
        assert!(weight(&document).total_kg > longer.total_kg);
    }
}
