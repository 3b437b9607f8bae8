//! Words for the working behind the results: the equation, the numbers put in, the source.

use super::Voice;
use crate::format::{Amount, Measure};
use noonday_engine::advice::{Advice, Working};
use noonday_engine::scenario::Dimension;
use noonday_engine::simulation::ShellPart;

/// Opens the working.
pub const SHOW: &str = "Show the working";
/// Over the working.
pub const NOTE: &str = "At the hour that the small sun points to; flows are means over the five minutes before it. The whole model, with its equations and limits, is in the project’s documentation.";

/// One result with how it came about.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Worked {
    /// What was worked out.
    pub title: String,
    /// The equation in words.
    pub equation: &'static str,
    /// The same with its numbers.
    pub numbers: String,
    /// Where the equation comes from.
    pub source: &'static str,
}

/// Every result worked.
pub fn worked(working: &Working, advice: &Advice, voice: &Voice) -> Vec<Worked> {
    let mut all = vec![felt(working, voice), heat(working, voice)];
    all.extend(shell(working, voice));
    all.extend(cooler(working, voice));
    all.push(power(working, voice));
    all.push(charge(working, voice));
    all.extend(missed(advice, voice));
    all
}

fn felt(working: &Working, voice: &Voice) -> Worked {
    let felt = &working.felt;
    let degrees = |value_c| voice.units.temperature(value_c, 1);
    let share = |share| voice.units.number(share, 2);
    Worked {
        title: "Felt temperature".to_owned(),
        equation: "share of the air × air + the rest × mean of the surroundings",
        numbers: format!(
            "{} × {} + {} × {} = {}",
            share(felt.air_share),
            degrees(felt.air_c),
            share(1.0 - felt.air_share),
            degrees(felt.radiant_c),
            degrees(felt.felt_c)
        ),
        source: "Operative temperature in still air, ASHRAE 55-2017, appendix A (from memory).",
    }
}

fn heat(working: &Working, voice: &Voice) -> Worked {
    let heat = &working.heat;
    let flow = |watts| voice.amount(Measure::Of(Dimension::HeatFlow).of(watts));
    let given = signed(
        Measure::Of(Dimension::HeatFlow).of(heat.given_back_w),
        voice,
    );
    Worked {
        title: "Heat of the cabin".to_owned(),
        equation: "what enters − what leaves + what furniture, linings and air give back = nothing",
        numbers: format!(
            "{} \u{2212} {} {given} = {}; over the run it closes to {} of what flows",
            flow(heat.enters_w),
            flow(heat.leaves_w),
            flow(0.0),
            if heat.residual < 1e-6 {
                "less than a millionth"
            } else {
                "more than a millionth"
            }
        ),
        source: "Conservation of energy; every way is booked by itself, what is stored is read off the walls.",
    }
}

fn shell(working: &Working, voice: &Voice) -> Vec<Worked> {
    let amount = |dimension, value| voice.amount(Measure::Of(dimension).of(value));
    let parts = working.shell.iter();
    parts
        .map(|part| Worked {
            title: match part.part {
                ShellPart::Roof => "Insulation of the roof".to_owned(),
                ShellPart::Walls => "Insulation of the walls".to_owned(),
            },
            equation: "1 / (inner surface + lining + thickness / conductivity + outer surface); around ribs the widened zone of the metal",
            numbers: format!(
                "{} at {}: {} between the ribs, {} with them",
                amount(Dimension::Thickness, part.insulation_m),
                amount(Dimension::Conductivity, part.conductivity_w_m_k),
                voice.units.insulation(part.clear_w_m2_k),
                voice.units.insulation(part.with_ribs_w_m2_k)
            ),
            source: "ISO 6946; metal ribs by the zone method of ASHRAE Fundamentals, chapter 27 (from memory).",
        })
        .collect()
}

fn cooler(working: &Working, voice: &Voice) -> Option<Worked> {
    let cooler = working.cooler.filter(|cooler| cooler.electric_w > 0.5)?;
    let flow = |watts| voice.amount(Measure::Of(Dimension::HeatFlow).of(watts));
    Some(Worked {
        title: "The cooler".to_owned(),
        equation: "warmth taken out of the air, for each watt of electricity with blower and losses",
        numbers: format!(
            "{} for {} = {} of heat for 1 of electricity; compressor at {} of a full {}",
            flow(cooler.sensible_w),
            voice.units.watts(cooler.electric_w),
            voice.units.number(cooler.sensible_w / cooler.electric_w, 2),
            voice.units.percent(cooler.share),
            flow(cooler.rated_w)
        ),
        source: "Published performance curves of small direct-expansion units over outdoor air and entering wet bulb.",
    })
}

fn power(working: &Working, voice: &Voice) -> Worked {
    let power = &working.power;
    let watts = |watts| voice.units.watts(watts);
    Worked {
        title: "Power into the bank".to_owned(),
        equation: "panels, driving and shore − cooler − other loads",
        numbers: format!(
            "{} \u{2212} {} \u{2212} {} = {}",
            watts(power.sources_w),
            watts(power.cooler_w),
            watts(power.loads_w),
            watts(power.into_bank_w)
        ),
        source: "Conservation of energy, at the bank.",
    }
}

fn charge(working: &Working, voice: &Voice) -> Worked {
    let charge = &working.charge;
    let ampere_hours = |charge_ah| voice.amount(Measure::Of(Dimension::Charge).of(charge_ah));
    Worked {
        title: "Charge at the end".to_owned(),
        equation: "charge at the start + (share stored × put in − drawn) / capacity",
        numbers: format!(
            "{} + ({} × {} \u{2212} {}) / {} {} {}",
            voice.units.percent(charge.start),
            voice.units.number(charge.efficiency, 3),
            ampere_hours(charge.charged_ah),
            ampere_hours(charge.discharged_ah),
            ampere_hours(charge.capacity_ah),
            if charge.is_upper_bound {
                "\u{2265}"
            } else {
                "="
            },
            voice.units.percent(charge.end)
        ),
        source: if charge.is_upper_bound {
            "Counting of charge; large currents use up more of a lead bank than they draw (Peukert)."
        } else {
            "Counting of charge."
        },
    }
}

fn missed(advice: &Advice, voice: &Voice) -> Vec<Worked> {
    let windows = advice.verdict.windows.iter();
    windows
        .filter(|window| window.degree_hours_k_h > 0.0)
        .map(|window| {
            let limit = voice.units.temperature(window.highest_felt_c, 1);
            let hours = Measure::Duration.of(window.missed_h);
            Worked {
                title: format!(
                    "What is missed from {}",
                    voice.span(window.from_h, window.until_h)
                ),
                equation: "felt temperature above the limit, summed over the hours",
                numbers: format!(
                    "above {limit} for {}: {}",
                    voice.amount(hours),
                    voice.units.degree_hours(window.degree_hours_k_h)
                ),
                source: "Degree-hours, by definition.",
            }
        })
        .collect()
}

fn signed(amount: Amount, voice: &Voice) -> String {
    let size = voice.amount(amount.measure.of(amount.value.abs()));
    let sign = if amount.value < 0.0 { '\u{2212}' } else { '+' };
    format!("{sign} {size}")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::format::UnitSystem;
    use noonday_engine::advice::{advise, working};
    use noonday_engine::scenario::{Scenario, example};

    fn texts(units: UnitSystem, index: usize) -> Vec<Worked> {
        let scenario = Scenario::new(example()).unwrap();
        let advice = advise(&scenario).unwrap();
        let working = working(&advice, scenario.document(), index).unwrap();
        worked(&working, &advice, &Voice::new(scenario.document(), units))
    }

    #[test]
    fn every_result_has_equation_numbers_and_source() {
        for units in [UnitSystem::Us, UnitSystem::Metric] {
            let all = texts(units, 110);
            assert!(all.len() >= 7);
            for one in all {
                assert!(
                    one.numbers.contains(|mark: char| mark.is_ascii_digit()),
                    "{one:?}"
                );
                assert!(
                    !one.equation.is_empty() && one.source.ends_with('.'),
                    "{one:?}"
                );
            }
        }
    }

    #[test]
    fn insulation_is_told_as_each_world_does() {
        let told = |units| texts(units, 110)[2].numbers.clone();
        assert!(
            told(UnitSystem::Us).contains("between the ribs")
                && told(UnitSystem::Us).contains("R-")
        );
        assert!(told(UnitSystem::Metric).contains("W/(m²·K)"));
    }

    #[test]
    fn a_cooler_at_rest_has_no_working() {
        let titles: Vec<String> = texts(UnitSystem::Us, 2)
            .into_iter()
            .map(|one| one.title)
            .collect();
        assert!(!titles.contains(&"The cooler".to_owned()));
    }
}
