//! Measures: small changes to a scenario, each with the work it takes.
//!
//! A measure changes the inputs and nothing else, so that what it does is found by running the changed scenario and what it
//! costs by adding up the changed scenario's own prices. A cooler of another size costs by the six-tenths rule (Williams 1947,
//! Chemical Engineering 54:124: equipment costs as its capacity to the power of 0.6). Work is counted in hours
//! ([`MeasurePrices`](crate::scenario::MeasurePrices)) and paid at the scenario's own rate.

use super::cost::{cost, glass_m2, roof_m2, walls_m2};
use super::ladder::{
    BANK_CAPACITIES_AH, COOLER_CAPACITIES_W, DC_DC_CURRENTS_A, next_above, next_below,
    set_bank_capacity, set_cooler_capacity,
};
use crate::quantity::{Bounded, sort_few};
use crate::scenario::{FanUse, Scenario, ScenarioDocument};
use serde::{Deserialize, Serialize};

/// Share of roof and walls that careful stuffing fills: common practice, no source.
const WELL_FILLED_SHARE: f64 = 0.98;

/// Sun absorptance of a fresh white roof: from memory, 0.20 to 0.35.
const WHITE_ABSORPTANCE: f64 = 0.25;

/// Share of sun and sky that a leafy tree takes, common practice, no source.
const TREE_BEAM_SHARE: f64 = 0.8;
const TREE_SKY_SHARE: f64 = 0.5;

/// Flow and power of a usual roof fan: common practice, no source.
const FAN_FLOW_M3_S: f64 = 0.2;
const FAN_POWER_W: f64 = 30.0;

/// Steps of insulation that are tried, m: one and two layers of the thickness to which prices refer.
const INSULATION_STEPS_M: [f64; 2] = [0.025, 0.05];

/// Steps of panels that are tried, W.
const PANEL_STEPS_W: [f64; 2] = [200.0, 400.0];

/// To what costs are rounded, so that sums in another order compare equal.
const SMALLEST_COIN: f64 = 0.01;

/// What a measure changes.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub enum MeasureKind {
    /// More insulation in the roof, m.
    RoofInsulation {
        /// How much more, m.
        added_m: f64,
    },
    /// More insulation in the walls, m.
    WallInsulation {
        /// How much more, m.
        added_m: f64,
    },
    /// Cavities stuffed so that next to none stay empty.
    BetterStuffing,
    /// Covers on every window all day.
    WindowCovers,
    /// Roof painted white.
    LighterRoof,
    /// Parked in the shade of a tree all day. It costs nothing, where there is any.
    Shade,
    /// A roof fan that runs while it is cooler outdoors.
    RoofFan,
    /// A bank of another capacity out of the same blocks.
    Bank {
        /// Its capacity, Ah.
        capacity_ah: f64,
    },
    /// More panels, W.
    Panels {
        /// How much more, W.
        added_w: f64,
    },
    /// A DC-DC charger of another output.
    DcDc {
        /// Its output, A.
        current_a: f64,
    },
    /// A cooler of another capacity and the same efficiency.
    Cooler {
        /// Its capacity, W.
        capacity_w: f64,
    },
    /// No cooler at all.
    NoCooler,
}

/// What a measure is about; two measures about the same thing exclude each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Subject {
    /// Insulation of the roof.
    Roof,
    /// Insulation of the walls.
    Walls,
    /// How well cavities are stuffed.
    Stuffing,
    /// Window covers.
    Covers,
    /// Paint of the roof.
    Paint,
    /// Shade.
    Shade,
    /// Fan.
    Fan,
    /// Bank.
    Bank,
    /// Panels.
    Panels,
    /// DC-DC charger.
    DcDc,
    /// Cooler.
    Cooler,
}

impl MeasureKind {
    /// What it is about.
    #[must_use]
    pub fn subject(self) -> Subject {
        match self {
            Self::RoofInsulation { .. } => Subject::Roof,
            Self::WallInsulation { .. } => Subject::Walls,
            Self::BetterStuffing => Subject::Stuffing,
            Self::WindowCovers => Subject::Covers,
            Self::LighterRoof => Subject::Paint,
            Self::Shade => Subject::Shade,
            Self::RoofFan => Subject::Fan,
            Self::Bank { .. } => Subject::Bank,
            Self::Panels { .. } => Subject::Panels,
            Self::DcDc { .. } => Subject::DcDc,
            Self::Cooler { .. } | Self::NoCooler => Subject::Cooler,
        }
    }

    /// Makes the change in a document; what comes out may lie outside the ranges of the fields and is still to be validated.
    pub fn apply(self, document: &mut ScenarioDocument) {
        let shell = &mut document.shell;
        match self {
            Self::RoofInsulation { added_m } => shell.roof_insulation_m += added_m,
            Self::WallInsulation { added_m } => shell.wall_insulation_m += added_m,
            Self::BetterStuffing => {
                shell.filled_share = shell.filled_share.at_least(WELL_FILLED_SHARE)
            }
            Self::WindowCovers => cover_all_day(document),
            Self::LighterRoof => {
                shell.roof_sun_absorptance = shell.roof_sun_absorptance.at_most(WHITE_ABSORPTANCE);
            }
            Self::Shade => shade_all_day(document),
            Self::RoofFan => add_fan(document),
            Self::Bank { capacity_ah } => set_bank_capacity(document, capacity_ah),
            Self::Panels { added_w } => {
                document.set_panel_power_w(document.panel_power_w() + added_w);
            }
            Self::DcDc { current_a } => document.charging.dc_dc_current_a = current_a,
            Self::Cooler { capacity_w } => set_cooler_capacity(document, capacity_w),
            Self::NoCooler => document.cooler.installed = false,
        }
    }

    /// Whether it would change anything that matters in a scenario.
    pub(super) fn applies(self, document: &ScenarioDocument) -> bool {
        match self {
            Self::BetterStuffing => document.shell.filled_share < WELL_FILLED_SHARE,
            Self::WindowCovers => !document.glass.covers_fitted && glass_m2(document) > 0.0,
            Self::LighterRoof => document.shell.roof_sun_absorptance > WHITE_ABSORPTANCE,
            Self::RoofFan => document.ventilation.fan_use == FanUse::Off,
            Self::DcDc { .. } => document.charging.drives,
            Self::Cooler { .. } | Self::NoCooler => document.cooler.installed,
            _ => true,
        }
    }

    /// Hours of work it takes, below zero where it saves some.
    fn labour_h(self, document: &ScenarioDocument) -> f64 {
        let prices = &document.prices.measures;
        match self {
            Self::RoofInsulation { .. } => prices.insulation_h_per_m2 * roof_m2(document),
            Self::WallInsulation { .. } => prices.insulation_h_per_m2 * walls_m2(document),
            Self::BetterStuffing => {
                prices.stuffing_h_per_m2 * (roof_m2(document) + walls_m2(document))
            }
            Self::WindowCovers => prices.covers_h_per_m2 * glass_m2(document),
            Self::LighterRoof => prices.paint_h_per_m2 * roof_m2(document),
            Self::Shade | Self::Cooler { .. } => 0.0,
            Self::RoofFan => prices.fan_h,
            Self::Bank { .. } => prices.bank_h,
            Self::Panels { added_w } => prices.panels_h_per_100_w * added_w / 100.0,
            Self::DcDc { .. } => prices.dc_dc_h,
            Self::NoCooler => -prices.cooler_h,
        }
    }
}

/// A change with what it does to prices and work.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Measure {
    /// What it changes.
    pub kind: MeasureKind,
    /// Hours of work, below zero where it saves some.
    pub labour_h: f64,
    /// Factor on the price of the cooler.
    pub cooler_price_factor: f64,
}

impl Measure {
    /// The measure with its work and prices in a scenario.
    ///
    /// `document`: before the measure.
    #[must_use]
    pub fn new(kind: MeasureKind, document: &ScenarioDocument) -> Self {
        let cooler_price_factor = match kind {
            MeasureKind::Cooler { capacity_w } => libm::pow(
                capacity_w / document.cooler.capacity_rated_w,
                document.prices.measures.cooler_price_exponent,
            ),
            _ => 1.0,
        };
        Self {
            kind,
            labour_h: kind.labour_h(document),
            cooler_price_factor,
        }
    }

    /// Makes the change in a document, with its prices and hours of work; work never falls below none. What comes out is still
    /// to be validated.
    pub fn apply(&self, document: &mut ScenarioDocument) {
        self.kind.apply(document);
        let prices = &mut document.prices;
        prices.labour_h = (prices.labour_h + self.labour_h).at_least(0.0);
        prices.cooler *= self.cooler_price_factor;
    }
}

/// What a set of measures costs over the scenario as it is, in its currency and with its tax, to the hundredth; below zero where it
/// saves money.
#[must_use]
pub fn cost_of(measures: &[Measure], document: &ScenarioDocument) -> f64 {
    let difference = cost(&applied(measures, document)).total - cost(document).total;
    (difference / SMALLEST_COIN).round() * SMALLEST_COIN
}

/// The document with a set of measures.
#[must_use]
pub fn applied(measures: &[Measure], document: &ScenarioDocument) -> ScenarioDocument {
    let mut changed = document.clone();
    for measure in measures {
        measure.apply(&mut changed);
    }
    changed
}

/// Every measure that changes something in a scenario and stays within the ranges of its fields, by subject: insulation by one
/// and two layers, stuffing, covers, paint, shade, fan, the bank one common size down and two up, panels, DC-DC charger one
/// common size up, the cooler one common size down and up and none.
#[must_use]
pub fn measures(scenario: &Scenario) -> Vec<Measure> {
    let document = scenario.document();
    kinds(document)
        .into_iter()
        .filter(|kind| kind.applies(document))
        .map(|kind| Measure::new(kind, document))
        .filter(|measure| Scenario::new(applied(&[*measure], document)).is_ok())
        .collect()
}

fn kinds(document: &ScenarioDocument) -> Vec<MeasureKind> {
    let mut kinds = vec![
        MeasureKind::BetterStuffing,
        MeasureKind::WindowCovers,
        MeasureKind::LighterRoof,
        MeasureKind::Shade,
        MeasureKind::RoofFan,
        MeasureKind::NoCooler,
    ];
    for added_m in INSULATION_STEPS_M {
        kinds.push(MeasureKind::RoofInsulation { added_m });
        kinds.push(MeasureKind::WallInsulation { added_m });
    }
    kinds.extend(PANEL_STEPS_W.map(|added_w| MeasureKind::Panels { added_w }));
    let bank_ah = document.battery.capacity_ah;
    let larger_ah = next_above(&BANK_CAPACITIES_AH, bank_ah);
    let largest_ah = larger_ah.and_then(|size_ah| next_above(&BANK_CAPACITIES_AH, size_ah));
    let banks = [
        next_below(&BANK_CAPACITIES_AH, bank_ah),
        larger_ah,
        largest_ah,
    ];
    kinds.extend(
        banks
            .into_iter()
            .flatten()
            .map(|capacity_ah| MeasureKind::Bank { capacity_ah }),
    );
    let cooler_w = document.cooler.capacity_rated_w;
    let coolers = [
        next_below(&COOLER_CAPACITIES_W, cooler_w),
        next_above(&COOLER_CAPACITIES_W, cooler_w),
    ];
    kinds.extend(
        coolers
            .into_iter()
            .flatten()
            .map(|capacity_w| MeasureKind::Cooler { capacity_w }),
    );
    let charger_a = next_above(&DC_DC_CURRENTS_A, document.charging.dc_dc_current_a);
    kinds.extend(charger_a.map(|current_a| MeasureKind::DcDc { current_a }));
    sort_few(&mut kinds, |one, other| one.subject() > other.subject());
    kinds
}

fn cover_all_day(document: &mut ScenarioDocument) {
    document.glass.covers_fitted = true;
    document.glass.covers_from_hour = 0.0;
    document.glass.covers_until_hour = 0.0;
}

fn shade_all_day(document: &mut ScenarioDocument) {
    let day = &mut document.day;
    day.shade_beam_share = day.shade_beam_share.at_least(TREE_BEAM_SHARE);
    day.shade_sky_share = day.shade_sky_share.at_least(TREE_SKY_SHARE);
    day.shade_from_hour = 0.0;
    day.shade_until_hour = 0.0;
}

fn add_fan(document: &mut ScenarioDocument) {
    let ventilation = &mut document.ventilation;
    ventilation.fan_use = FanUse::WhenOutdoorsCooler;
    ventilation.fan_flow_m3_s = ventilation.fan_flow_m3_s.at_least(FAN_FLOW_M3_S);
    ventilation.fan_power_w = ventilation.fan_power_w.at_least(FAN_POWER_W);
    ventilation.fan_from_hour = 0.0;
    ventilation.fan_until_hour = 0.0;
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scenario::example;

    fn priced(kind: MeasureKind) -> (Measure, f64) {
        let document = example();
        let measure = Measure::new(kind, &document);
        (measure, cost_of(&[measure], &document))
    }

    #[test]
    fn every_measure_changes_the_example_and_keeps_it_valid() {
        let scenario = Scenario::new(example()).unwrap();
        let found = measures(&scenario);
        assert!(found.len() >= 14, "{}", found.len());
        for measure in found {
            let changed = applied(&[measure], scenario.document());
            assert_ne!(&changed, scenario.document(), "{measure:?}");
            assert!(Scenario::new(changed).is_ok(), "{measure:?}");
        }
    }

    #[test]
    fn what_is_there_already_is_not_offered() {
        let scenario = Scenario::new(example()).unwrap();
        let found = measures(&scenario);
        // The example has covers and a fan and is not driven.
        for subject in [Subject::Covers, Subject::Fan, Subject::DcDc] {
            assert!(
                found
                    .iter()
                    .all(|measure| measure.kind.subject() != subject)
            );
        }
    }

    #[test]
    fn costs_are_those_of_a_hand_calculation() {
        // 100 Ah · 12.8 V · 0.40 a Wh and one hour at 110, with 8 % tax.
        let (_, bank) = priced(MeasureKind::Bank { capacity_ah: 700.0 });
        assert!((bank - 1.08 * (512.0 + 110.0)).abs() < 0.006);
        // 200 W at 1.50 and two hours.
        let (_, panels) = priced(MeasureKind::Panels { added_w: 200.0 });
        assert!((panels - 1.08 * (300.0 + 220.0)).abs() < 0.006);
        // 4.2 m · 1.75 m less 0.16 m² of glass, at 18 for 25 mm and 0.3 h.
        let (_, roof) = priced(MeasureKind::RoofInsulation { added_m: 0.025 });
        assert!((roof - 1.08 * 7.19 * (18.0 + 33.0)).abs() < 0.006);
        let (_, shade) = priced(MeasureKind::Shade);
        assert_eq!(shade, 0.0);
    }

    #[test]
    fn a_cooler_costs_by_the_six_tenths_rule_and_none_costs_nothing() {
        let (_, larger) = priced(MeasureKind::Cooler {
            capacity_w: 4_000.0,
        });
        // 2^0.6 = 1.5157.
        assert!((larger / (1.08 * 1_600.0) - 0.515_7).abs() < 1e-4);
        let (_, none) = priced(MeasureKind::NoCooler);
        assert!((none + 1.08 * (1_600.0 + 660.0)).abs() < 0.006);
    }
}
