//! The working behind the results: the numbers that went into each equation, so that anyone can follow it with a pocket
//! calculator.

use super::Advice;
use crate::comfort::operative_temperature_c;
use crate::quantity::Bounded;
use crate::scenario::{ScenarioDocument, cooler_rating};
use crate::simulation::{FELT_AIR_SPEED_M_S, HeatPath, ShellPart, ribbed_wall};

/// What a body feels: t_o = A t_a + (1 − A) t_r.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FeltWorking {
    /// Air, °C.
    pub air_c: f64,
    /// Mean radiant temperature of the surroundings, °C.
    pub radiant_c: f64,
    /// Share of the air, A.
    pub air_share: f64,
    /// The result, °C.
    pub felt_c: f64,
}

/// Heat of the cabin in the span before the instant: what enters, what leaves, what its furniture, linings and air give back.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeatWorking {
    /// Sum of what enters, W, at least zero.
    pub enters_w: f64,
    /// Sum of what leaves, W, at least zero.
    pub leaves_w: f64,
    /// Given back by furniture, linings and air, W; negative while they take up.
    pub given_back_w: f64,
    /// Worst error of the whole run's balance, over its throughput.
    pub residual: f64,
}

/// Power in the span before the instant, W.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PowerWorking {
    /// From panels, driving and shore.
    pub sources_w: f64,
    /// To the cooler.
    pub cooler_w: f64,
    /// To everything else.
    pub loads_w: f64,
    /// Into the bank; negative out of it.
    pub into_bank_w: f64,
}

/// Charge over the run: end = start + (η charged − discharged) / capacity.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ChargeWorking {
    /// Share at the start.
    pub start: f64,
    /// Charge put in, Ah.
    pub charged_ah: f64,
    /// Share of it that is stored, η.
    pub efficiency: f64,
    /// Charge drawn, Ah.
    pub discharged_ah: f64,
    /// Capacity with ageing, Ah.
    pub capacity_ah: f64,
    /// Share at the end.
    pub end: f64,
    /// Whether large currents use up more than they draw, as in lead (Peukert), so that the sum is only an upper bound.
    pub is_upper_bound: bool,
}

/// The cooler in the span before the instant.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CoolerWorking {
    /// Heat taken out of the air that is felt as warmth, W.
    pub sensible_w: f64,
    /// Electric power, W.
    pub electric_w: f64,
    /// Capacity with which the run reckons at its rating point, W.
    pub rated_w: f64,
    /// Output of the compressor over its full output.
    pub share: f64,
}

/// A wall or roof with its ribs: U without them, and with them by zones.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShellWorking {
    /// Which part.
    pub part: ShellPart,
    /// Insulation, m.
    pub insulation_m: f64,
    /// Its conductivity, W/(m K).
    pub conductivity_w_m_k: f64,
    /// Between the ribs, W/(m² K).
    pub clear_w_m2_k: f64,
    /// With the ribs, W/(m² K).
    pub with_ribs_w_m2_k: f64,
}

/// The working at an instant of the run, and over the whole of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Working {
    /// What is felt.
    pub felt: FeltWorking,
    /// Heat.
    pub heat: HeatWorking,
    /// Power.
    pub power: PowerWorking,
    /// Charge over the run.
    pub charge: ChargeWorking,
    /// The cooler; none where none is installed.
    pub cooler: Option<CoolerWorking>,
    /// Roof and walls, those that are insulated.
    pub shell: Vec<ShellWorking>,
}

/// Gives the working at a sample of the run with its cooler; none if there is no such sample.
///
/// * `document` — that of which `advice` is
/// * `index` — of a sample of `advice.with_cooler.series`
///
/// Sources: operative temperature by ASHRAE 55-2017, appendix A (from memory); transmittance by ISO 6946 and, with metal
/// ribs, the zone method of ASHRAE Fundamentals ch. 27 (from memory); the rest is conservation of heat, energy and charge.
#[must_use]
pub fn working(advice: &Advice, document: &ScenarioDocument, index: usize) -> Option<Working> {
    let series = &advice.with_cooler.series;
    let at = |values: &[f64]| values.get(index).copied();
    let (air_c, radiant_c) = (at(&series.cabin_c)?, at(&series.radiant_c)?);
    let sources = [&series.panels_w, &series.driving_w, &series.shore_w];
    let sources_w: f64 = sources.into_iter().filter_map(|source| at(source)).sum();
    let (cooler_w, loads_w) = (at(&series.cooler_w)?, at(&series.loads_w)?);
    let heat_w = &series.heat_w_at(index);
    Some(Working {
        felt: FeltWorking {
            air_c,
            radiant_c,
            air_share: operative_temperature_c(1.0, 0.0, FELT_AIR_SPEED_M_S),
            felt_c: at(&series.felt_c)?,
        },
        heat: heat(heat_w, advice.with_cooler.balance.heat_residual),
        power: PowerWorking {
            sources_w,
            cooler_w,
            loads_w,
            into_bank_w: sources_w - cooler_w - loads_w,
        },
        charge: charge(advice, document),
        cooler: document.cooler.installed.then(|| CoolerWorking {
            sensible_w: -path_w(heat_w, HeatPath::Cooler),
            electric_w: cooler_w,
            rated_w: cooler_rating(document).cooling_capacity_rated_w,
            share: at(&series.cooler_share).unwrap_or_default(),
        }),
        shell: [ShellPart::Roof, ShellPart::Walls]
            .into_iter()
            .filter_map(|part| shell(part, document))
            .collect(),
    })
}

fn path_w(heat_w: &[f64; HeatPath::COUNT], wanted: HeatPath) -> f64 {
    let mut paths = HeatPath::ALL.into_iter().zip(heat_w);
    let found = paths.find(|(path, _)| *path == wanted);
    found.map_or(0.0, |(_, watts)| *watts)
}

fn heat(heat_w: &[f64; HeatPath::COUNT], residual: f64) -> HeatWorking {
    let given_back_w = path_w(heat_w, HeatPath::Stored);
    let moved = HeatPath::ALL
        .into_iter()
        .zip(heat_w)
        .filter(|(path, _)| *path != HeatPath::Stored);
    let (enters_w, leaves_w) = moved.fold((0.0, 0.0), |(enters, leaves), (_, watts)| {
        (enters + watts.at_least(0.0), leaves - watts.at_most(0.0))
    });
    HeatWorking {
        enters_w,
        leaves_w,
        given_back_w,
        residual,
    }
}

fn charge(advice: &Advice, document: &ScenarioDocument) -> ChargeWorking {
    let run = &advice.with_cooler;
    let battery = &document.battery;
    let shares = &run.series.state_of_charge;
    ChargeWorking {
        start: shares.first().copied().unwrap_or_default(),
        charged_ah: run.totals.charged_ah,
        efficiency: battery.coulombic_efficiency,
        discharged_ah: run.totals.discharged_ah,
        capacity_ah: battery.capacity_ah * battery.health_share,
        end: shares.last().copied().unwrap_or_default(),
        is_upper_bound: battery.chemistry.has_peukert(),
    }
}

fn shell(part: ShellPart, document: &ScenarioDocument) -> Option<ShellWorking> {
    let wall = ribbed_wall(document, part);
    (wall.insulation_m > 0.0).then(|| ShellWorking {
        part,
        insulation_m: wall.insulation_m,
        conductivity_w_m_k: wall.insulation_conductivity_w_m_k,
        clear_w_m2_k: wall.transmittance_clear_w_m2_k(),
        with_ribs_w_m2_k: wall.transmittance_w_m2_k(),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::advice::advise;
    use crate::scenario::{Scenario, example};

    fn worked(document: ScenarioDocument, index: usize) -> Working {
        let scenario = Scenario::new(document).unwrap();
        let advice = advise(&scenario).unwrap();
        working(&advice, scenario.document(), index).unwrap()
    }

    #[test]
    fn every_sum_gives_the_result_beside_it() {
        for index in [1, 60, 130, 200, 288] {
            let worked = worked(example(), index);
            let felt = worked.felt;
            let by_hand = felt.air_share * felt.air_c + (1.0 - felt.air_share) * felt.radiant_c;
            assert!((by_hand - felt.felt_c).abs() < 1e-9);
            let heat = worked.heat;
            let left_w = heat.enters_w - heat.leaves_w + heat.given_back_w;
            assert!(left_w.abs() < 1e-6 * heat.enters_w.max(1.0), "{left_w} W");
            let charge = worked.charge;
            let moved_ah = charge.efficiency * charge.charged_ah - charge.discharged_ah;
            let end = charge.start + moved_ah / charge.capacity_ah;
            assert!((end - charge.end).abs() < 1e-9, "{end} and {}", charge.end);
        }
    }

    #[test]
    fn with_lead_the_sum_of_charge_is_an_upper_bound_and_says_so() {
        let mut document = example();
        document.battery.chemistry = crate::scenario::CellChemistry::AbsorbentGlassMat;
        let charge = worked(document, 1).charge;
        let moved_ah = charge.efficiency * charge.charged_ah - charge.discharged_ah;
        assert!(charge.is_upper_bound);
        assert!(charge.end <= charge.start + moved_ah / charge.capacity_ah + 1e-9);
    }

    #[test]
    fn ribs_are_shown_where_there_is_insulation_for_them_to_cross() {
        let mut document = example();
        let roof_and_walls = worked(document.clone(), 1).shell;
        assert_eq!(roof_and_walls.len(), 2);
        for part in roof_and_walls {
            assert!(part.with_ribs_w_m2_k > part.clear_w_m2_k);
        }
        document.shell.wall_insulation_m = 0.0;
        document.cooler.installed = false;
        let worked = worked(document, 1);
        assert_eq!(worked.shell.len(), 1);
        assert_eq!(worked.cooler, None);
    }

    #[test]
    fn there_is_no_working_where_there_is_no_sample() {
        let scenario = Scenario::new(example()).unwrap();
        let advice = advise(&scenario).unwrap();
        assert_eq!(working(&advice, scenario.document(), 100_000), None);
    }
}
