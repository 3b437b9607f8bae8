//! The job: parts with their prices, work in order, and where it has to stop until something is checked.

use super::circuits::{Circuit, CircuitKind, Circuits};
use super::cost::{cost, glass_m2};
use crate::electrical::conductor::{Conductor, SizeSeries};
use crate::electrical::overcurrent::DEVICE_PER_BATTERY_ABOVE_AH;
use crate::scenario::{CellChemistry, CoolerSupply, FanUse, ScenarioDocument};

/// A line of the list of parts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Part {
    /// The cooler.
    Cooler,
    /// The bank, Ah.
    Bank,
    /// Panels with their mounting, W.
    Panels,
    /// DC-DC charger, A.
    DcDc,
    /// Inverter, W.
    Inverter,
    /// Roof fan.
    Fan,
    /// Insulation; its amount is the scenario's.
    Insulation,
    /// Window covers, m².
    Covers,
    /// Single conductor of a circuit, both ways, m.
    Cable(CircuitKind, Conductor),
    /// Fuse or breaker of a circuit, with its rating in A.
    Fuse(CircuitKind, f64),
    /// A fuse at each pack of a large bank.
    PackFuses,
    /// Lugs, sealant, screws, conduit.
    SmallParts,
}

/// A part, how much of it, and its price.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct JobLine {
    /// What.
    pub part: Part,
    /// How much, in the unit named at the part; pieces where none is.
    pub quantity: f64,
    /// Its price without markup and tax, in the scenario's currency.
    pub price: f64,
}

/// A step of the work.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WorkStep {
    /// Codes, the makers' instructions and who may do what.
    Rules,
    /// Both sides of the skin are looked at.
    BothSides,
    /// The hole is cut.
    Cut,
    /// The bare edge is treated.
    TreatEdge,
    /// The joint is sealed.
    Seal,
    /// What hangs on the roof is carried by the structure.
    Support,
    /// The bank is held down.
    HoldBank,
    /// Cable is laid, nothing connected.
    LayCable,
    /// Fuses are set, the bank's first.
    FuseFirst,
    /// Mains voltage, by whoever is licensed.
    Mains,
    /// The bank is connected last.
    ConnectLast,
    /// It is tested under load.
    Test,
}

impl WorkStep {
    /// Whether work stops here until what it asks is certain.
    #[must_use]
    pub fn is_hold(self) -> bool {
        matches!(
            self,
            Self::Rules | Self::BothSides | Self::FuseFirst | Self::Mains | Self::Test
        )
    }
}

/// The job.
#[derive(Clone, Debug, PartialEq)]
pub struct Job {
    /// Parts.
    pub parts: Vec<JobLine>,
    /// Circuits for which no cable is to be had, and which are not priced.
    pub without_cable: Vec<CircuitKind>,
    /// Sum of the parts.
    pub parts_price: f64,
    /// Markup on them.
    pub markup: f64,
    /// Hours of work.
    pub labour_h: f64,
    /// Work.
    pub labour: f64,
    /// Tax on all of it.
    pub tax: f64,
    /// Sum.
    pub total: f64,
    /// Steps in order.
    pub steps: Vec<WorkStep>,
}

/// Works out the job.
///
/// Large parts cost as in [`cost`]; cable costs by the metre and by its copper, out and back; a DC-DC charger stands between two
/// batteries and has a fuse at each; small parts are a share of all others. Markup is on parts, tax on everything.
///
/// * `document` — of a validated scenario
/// * `circuits` — of the same
/// * `series` — the family of sizes that is used
#[must_use]
pub fn job(document: &ScenarioDocument, circuits: &Circuits, series: SizeSeries) -> Job {
    let prices = &document.prices;
    let mut parts = large_parts(document);
    let mut without_cable = Vec::new();
    for circuit in &circuits.circuits {
        match wired(document, circuit, series) {
            Some(lines) => parts.extend(lines),
            None => without_cable.push(circuit.kind),
        }
    }
    parts.extend(pack_fuses(document));
    let before: f64 = parts.iter().map(|line| line.price).sum();
    parts.push(JobLine {
        part: Part::SmallParts,
        quantity: 1.0,
        price: prices.build.small_parts_share * before,
    });
    let parts_price: f64 = parts.iter().map(|line| line.price).sum();
    let markup = prices.build.markup_share * parts_price;
    let labour = prices.labour_h * prices.labour_per_h;
    let tax = prices.tax_share * (parts_price + markup + labour);
    Job {
        parts,
        without_cable,
        parts_price,
        markup,
        labour_h: prices.labour_h,
        labour,
        tax,
        total: parts_price + markup + labour + tax,
        steps: steps(document),
    }
}

fn large_parts(document: &ScenarioDocument) -> Vec<JobLine> {
    let cost = cost(document);
    let inverted =
        document.cooler.installed && document.cooler.supply == CoolerSupply::MainsThroughInverter;
    let inverter_w = if inverted {
        document.cooler.inverter_rated_w
    } else {
        0.0
    };
    let lines = [
        (Part::Cooler, 1.0, cost.cooler),
        (Part::Bank, document.battery.capacity_ah, cost.bank),
        (Part::Panels, document.panel_power_w(), cost.panels),
        (Part::DcDc, document.charging.dc_dc_current_a, cost.dc_dc),
        (
            Part::Inverter,
            inverter_w,
            inverter_w * document.prices.build.inverter_per_w,
        ),
        (Part::Fan, 1.0, cost.fan),
        (Part::Insulation, 1.0, cost.insulation),
        (Part::Covers, glass_m2(document), cost.covers),
    ];
    lines
        .into_iter()
        .filter(|(_, _, price)| *price > 0.0)
        .map(|(part, quantity, price)| JobLine {
            part,
            quantity,
            price,
        })
        .collect()
}

/// Cable and fuses of a circuit; none where no cable will do.
fn wired(
    document: &ScenarioDocument,
    circuit: &Circuit,
    series: SizeSeries,
) -> Option<[JobLine; 2]> {
    let build = &document.prices.build;
    let fitted = circuit.choice(series).fitted()?;
    let length_m = 2.0 * circuit.need.length_one_way_m;
    let fuses = if circuit.kind == CircuitKind::DcDc {
        2.0
    } else {
        1.0
    };
    let cable = JobLine {
        part: Part::Cable(circuit.kind, fitted.conductor),
        quantity: length_m,
        price: length_m * fitted.conductor.area_mm2 * build.cable_per_m_mm2,
    };
    let fuse = JobLine {
        part: Part::Fuse(circuit.kind, fitted.fuse_a),
        quantity: fuses,
        price: fuses * build.fuse,
    };
    Some([cable, fuse])
}

/// Whether each pack wants a fuse of its own: several in parallel in a lithium bank above 500 Ah (ABYC E-11, July 2025, quoted
/// second-hand).
#[must_use]
pub fn wants_pack_fuses(document: &ScenarioDocument) -> bool {
    let battery = &document.battery;
    document.installation.parallel_packs > 1.0
        && battery.chemistry == CellChemistry::LithiumIronPhosphate
        && battery.capacity_ah > DEVICE_PER_BATTERY_ABOVE_AH
}

fn pack_fuses(document: &ScenarioDocument) -> Option<JobLine> {
    let packs = document.installation.parallel_packs;
    wants_pack_fuses(document).then_some(JobLine {
        part: Part::PackFuses,
        quantity: packs,
        price: packs * document.prices.build.fuse,
    })
}

fn steps(document: &ScenarioDocument) -> Vec<WorkStep> {
    let cuts = document.cooler.installed || document.ventilation.fan_use != FanUse::Off;
    let mains = document.cooler.supply == CoolerSupply::MainsThroughInverter
        || document.charging.shore_power_w > 0.0;
    let all = [
        (WorkStep::Rules, true),
        (WorkStep::BothSides, cuts),
        (WorkStep::Cut, cuts),
        (WorkStep::TreatEdge, cuts),
        (WorkStep::Support, cuts || document.panel_power_w() > 0.0),
        (WorkStep::Seal, cuts),
        (WorkStep::HoldBank, true),
        (WorkStep::LayCable, true),
        (WorkStep::FuseFirst, true),
        (WorkStep::Mains, mains),
        (WorkStep::ConnectLast, true),
        (WorkStep::Test, true),
    ];
    all.into_iter()
        .filter_map(|(step, needed)| needed.then_some(step))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::advice::circuits::circuits;
    use crate::scenario::example;

    fn of(document: &ScenarioDocument) -> Job {
        job(document, &circuits(document).unwrap(), SizeSeries::Metric)
    }

    fn line(job: &Job, wanted: impl Fn(&Part) -> bool) -> JobLine {
        *job.parts.iter().find(|line| wanted(&line.part)).unwrap()
    }

    #[test]
    fn the_total_adds_up_by_hand() {
        let job = of(&example());
        let cable = line(&job, |part| {
            matches!(part, Part::Cable(CircuitKind::Cooler, _))
        });
        // 4 m out and back of 50 mm² at 0.25 a metre and mm².
        assert!((cable.quantity - 8.0).abs() < 1e-12 && (cable.price - 100.0).abs() < 1e-9);
        let small = line(&job, |part| *part == Part::SmallParts);
        let others = job.parts_price - small.price;
        assert!((small.price - 0.05 * others).abs() < 1e-9);
        assert!((job.markup - 0.15 * job.parts_price).abs() < 1e-9);
        // 14 h at 110.
        assert!((job.labour - 1_540.0).abs() < 1e-9);
        let net = job.parts_price + job.markup + job.labour;
        assert!((job.total - 1.08 * net).abs() < 1e-6);
    }

    #[test]
    fn large_parts_cost_what_they_cost_elsewhere() {
        let document = example();
        let cost = cost(&document);
        let large = large_parts(&document);
        let sum: f64 = large.iter().map(|line| line.price).sum();
        let parts = cost.total - cost.tax - cost.labour;
        assert!((sum - parts).abs() < 1e-6, "{sum} and {parts}");
    }

    #[test]
    fn six_hundred_ampere_hours_in_two_packs_get_a_fuse_each() {
        let mut document = example();
        assert!(wants_pack_fuses(&document));
        assert_eq!(
            line(&of(&document), |part| *part == Part::PackFuses).quantity,
            2.0
        );
        document.battery.capacity_ah = 400.0;
        assert!(!wants_pack_fuses(&document));
    }

    #[test]
    fn a_circuit_without_cable_is_named_and_not_priced() {
        let mut document = example();
        document.installation.cooler.length_m = 30.0;
        assert_eq!(of(&document).without_cable, [CircuitKind::Cooler]);
    }

    #[test]
    fn the_fuse_comes_before_the_bank_and_the_look_before_the_cut() {
        let mut document = example();
        document.charging.shore_power_w = 1_000.0;
        let steps = of(&document).steps;
        let place = |wanted| steps.iter().position(|step| *step == wanted).unwrap();
        assert!(place(WorkStep::BothSides) < place(WorkStep::Cut));
        assert!(place(WorkStep::Cut) < place(WorkStep::TreatEdge));
        assert!(place(WorkStep::TreatEdge) < place(WorkStep::Seal));
        assert!(place(WorkStep::FuseFirst) < place(WorkStep::ConnectLast));
        assert!(place(WorkStep::Mains) < place(WorkStep::Test));
        document.cooler.installed = false;
        document.ventilation.fan_use = FanUse::Off;
        document.charging.shore_power_w = 0.0;
        let steps = of(&document).steps;
        assert!(!steps.contains(&WorkStep::Cut) && !steps.contains(&WorkStep::Mains));
    }
}
