//! What the set-up costs, from the scenario's own prices.

use crate::scenario::{FanUse, ScenarioDocument};

/// What the set-up costs.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Cost {
    /// The cooler.
    pub cooler: f64,
    /// The bank.
    pub bank: f64,
    /// Panels.
    pub panels: f64,
    /// DC-DC charger.
    pub dc_dc: f64,
    /// Insulation.
    pub insulation: f64,
    /// Window covers.
    pub covers: f64,
    /// Fan.
    pub fan: f64,
    /// Work.
    pub labour: f64,
    /// Tax.
    pub tax: f64,
    /// Sum.
    pub total: f64,
}

/// Nominal voltage by which banks are priced, V for each 12 V block: lithium iron phosphate, 4 cells of 3.2 V.
const PRICED_VOLTAGE_V: f64 = 12.8;

/// Thickness to which the price of insulation refers, m.
const PRICED_THICKNESS_M: f64 = 0.025;

/// Adds up what a scenario's set-up costs, in the scenario's currency.
///
/// Each part is its price times its size: the bank by its energy at 12.8 V for each 12 V block, insulation by the square metres
/// and 25 mm of roof, walls and floor less glass, covers by the area of the glass, work by hours. Parts that are not fitted cost
/// nothing. Tax is a share of the sum.
///
/// `document`: of a validated scenario, whose prices are the user's own.
#[must_use]
pub fn cost(document: &ScenarioDocument) -> Cost {
    let (prices, charging) = (&document.prices, &document.charging);
    let blocks = document.battery.system_voltage.blocks();
    let mut cost = Cost {
        cooler: if document.cooler.installed {
            prices.cooler
        } else {
            0.0
        },
        bank: prices.bank_per_wh * document.battery.capacity_ah * PRICED_VOLTAGE_V * blocks,
        panels: prices.panels_per_w * document.panel_power_w(),
        dc_dc: if charging.drives {
            prices.dc_dc_per_a * charging.dc_dc_current_a
        } else {
            0.0
        },
        insulation: prices.insulation_per_m2_25_mm * insulation_m2_25_mm(document),
        covers: if document.glass.covers_fitted {
            prices.covers_per_m2 * glass_m2(document)
        } else {
            0.0
        },
        fan: if document.ventilation.fan_use == FanUse::Off {
            0.0
        } else {
            prices.fan
        },
        labour: prices.labour_h * prices.labour_per_h,
        ..Cost::default()
    };
    let net = cost.cooler
        + cost.bank
        + cost.panels
        + cost.dc_dc
        + cost.insulation
        + cost.covers
        + cost.fan
        + cost.labour;
    cost.tax = prices.tax_share * net;
    cost.total = net + cost.tax;
    cost
}

/// Glass of every face, m².
pub(super) fn glass_m2(document: &ScenarioDocument) -> f64 {
    let glass = &document.glass;
    glass.nose_area_m2
        + glass.left_area_m2
        + glass.right_area_m2
        + glass.rear_area_m2
        + glass.roof_area_m2
}

/// Roof less its glass, m².
pub(super) fn roof_m2(document: &ScenarioDocument) -> f64 {
    document.vehicle.length_m * document.vehicle.width_m - document.glass.roof_area_m2
}

/// Four walls less their glass, m².
pub(super) fn walls_m2(document: &ScenarioDocument) -> f64 {
    let vehicle = &document.vehicle;
    2.0 * vehicle.height_m * (vehicle.length_m + vehicle.width_m)
        - (glass_m2(document) - document.glass.roof_area_m2)
}

/// Area times thickness of insulation in units of one square metre of 25 mm.
fn insulation_m2_25_mm(document: &ScenarioDocument) -> f64 {
    let (vehicle, shell) = (&document.vehicle, &document.shell);
    let volume_m3 = roof_m2(document) * shell.roof_insulation_m
        + walls_m2(document) * shell.wall_insulation_m
        + vehicle.length_m * vehicle.width_m * shell.floor_insulation_m;
    volume_m3 / PRICED_THICKNESS_M
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scenario::example;

    #[test]
    fn the_total_is_its_parts_with_tax() {
        let mut document = example();
        document.prices.tax_share = 0.1;
        document.battery.capacity_ah = 400.0;
        let cost = cost(&document);
        assert!((cost.total / 1.1 + cost.tax - cost.total).abs() < 1e-9);
        // By hand: 400 Ah · 12.8 V · 0.40 a Wh.
        assert!((cost.bank - 2_048.0).abs() < 1e-9);
    }
}
