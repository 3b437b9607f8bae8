//! The check of a finished unit.

use crate::text::Voice;
use noonday_engine::advice::acceptance::{
    Acceptance, AcceptanceVerdict, Cause, Compared, Made, Sign,
};
use noonday_engine::scenario::Dimension;

/// Said while there are no readings.
pub const NO_READINGS: &str =
    "Switch “There are readings” on and enter what the meters showed; the check appears here.";
/// Said without a cooler.
pub const NO_COOLER: &str = "The scenario has no cooler to be checked.";
/// Heads of the table of signs.
pub const SIGN_HEADS: [&str; 4] = ["Read off the unit", "Read", "Expected", "Verdict"];
/// Heading of what may be wrong.
pub const CAUSES: &str = "What it most likely is, and what tells";
/// Under the causes.
pub const CAUSES_NOTE: &str = "Each cause was put into the calculated cooler at several severities; the percentage is how well it fits these readings beside the other causes, all being equally frequent and only one at work. It is a guide to what to look at first, not a finding.";
/// Where none fits.
pub const UNEXPLAINED: &str = "No single one of these causes brings the readings as near as they should be. Read everything once more, in one go; if it stays so, two things are wrong at once, or the scenario describes another unit.";

/// The verdict in a sentence.
pub fn verdict(found: &Acceptance, voice: &Voice) -> String {
    let capacity = &found.capacity;
    let share = format!(
        "{} ± {}",
        voice.units.percent(capacity.ratio),
        voice.units.number(100.0 * capacity.ratio_band, 0)
    );
    let part = if found.is_total {
        ""
    } else {
        " that a thermometer shows"
    };
    match found.verdict {
        AcceptanceVerdict::TooEarly => format!(
            "Too early to judge: only {} of the cooling has come up by then. Read again after five to ten minutes of running.",
            voice.units.percent(found.come_up)
        ),
        AcceptanceVerdict::AsExpected => format!(
            "As expected: the readings are those of a sound unit under these conditions. The cooling{part} is {share} of what was calculated."
        ),
        AcceptanceVerdict::Doubtful => format!(
            "Doubtful: one reading lies outside its band, though all together they could still be those of a sound unit. The cooling{part} is {share} of what was calculated."
        ),
        AcceptanceVerdict::Deviates => format!(
            "Not as expected: readings like these come from fewer than one in twenty sound units. The cooling{part} is {share} of what was calculated."
        ),
    }
}

/// What was assumed, sentence by sentence.
pub fn assumptions(found: &Acceptance) -> String {
    let mut told = vec![
        "Expected is what the scenario’s cooler would show at full output in this air, at this voltage, so long after its start. Bands hold 19 of 20 sound units: meters, the rating’s tolerance and the curves, added in quadrature (JCGM 100:2008).",
    ];
    if found.flow_assumed {
        told.push("The air flow was not measured; the rated one is taken, ±20\u{a0}%, so capacity and efficiency are only as good as that.");
    }
    if !found.is_total {
        told.push("Without both humidities only the sensible part of the cooling is measured; what dries the air is not in it.");
    }
    if found.humidity_assumed {
        told.push("The cabin’s humidity was not read; 50\u{a0}% is taken, ±25.");
    }
    if found.extrapolated {
        told.push("The conditions lie outside the range in which the cooler’s curves were measured: trust the expectation less.");
    }
    told.join(" ")
}

fn sign_name(sign: Sign) -> &'static str {
    match sign {
        Sign::SupplyTemperature => "Air out of the cooler",
        Sign::Current => "Current",
        Sign::VoltageLoss => "Voltage lost on the way",
        Sign::Airflow => "Air flow",
        Sign::SupplyHumidity => "Water in the cold air",
    }
}

/// A row of the table: name, then what was read, expected, and whether they agree.
pub fn sign_row(compared: &Compared, voice: &Voice) -> (String, Vec<String>) {
    let units = voice.units;
    let shown = |value: f64| match compared.sign {
        Sign::SupplyTemperature => units.temperature(value, 1),
        Sign::Current => units.quantity(Dimension::Current, value),
        Sign::VoltageLoss => units.quantity(Dimension::Voltage, value),
        Sign::Airflow => units.quantity(Dimension::AirFlow, value),
        Sign::SupplyHumidity => format!("{}\u{a0}g/kg", units.number(1_000.0 * value, 1)),
    };
    let band = match compared.sign {
        Sign::SupplyTemperature => units.quantity(Dimension::TemperatureDifference, compared.band),
        _ => shown(compared.band),
    };
    let agrees = if compared.agrees() {
        "within"
    } else if compared.read > compared.expected {
        "too high"
    } else {
        "too low"
    };
    let cells = vec![
        shown(compared.read),
        format!("{} ± {band}", shown(compared.expected)),
        agrees.to_owned(),
    ];
    (sign_name(compared.sign).to_owned(), cells)
}

/// Rows of capacity and efficiency.
pub fn made_rows(found: &Acceptance, voice: &Voice) -> [(String, Vec<String>); 2] {
    let part = if found.is_total {
        "all of it"
    } else {
        "sensible part"
    };
    let row = |name: String, made: &Made, shown: &dyn Fn(f64) -> String| {
        let within = (made.ratio - 1.0).abs() <= made.ratio_band;
        let told = if within {
            "within"
        } else if made.ratio > 1.0 {
            "too high"
        } else {
            "too low"
        };
        let cells = vec![
            format!("{} ± {}", shown(made.measured), shown(made.measured_band)),
            shown(made.expected),
            told.to_owned(),
        ];
        (name, cells)
    };
    let heat = |value: f64| voice.units.quantity(Dimension::HeatFlow, value);
    let factor = |value: f64| voice.units.number(value, 2);
    [
        row(format!("Cooling, {part}"), &found.capacity, &heat),
        row(
            format!("Cooling over electric input, {part}"),
            &found.efficiency,
            &factor,
        ),
    ]
}

/// Name of a cause.
pub fn cause_name(cause: Cause) -> &'static str {
    match cause {
        Cause::LowAirflow => "Too little air over the coil",
        Cause::LowCharge => "Too little refrigerant",
        Cause::VoltageDrop => "Voltage lost in cable and joints",
        Cause::WarmSensor => "Sun or warm metal at a sensor",
        Cause::WarmCondenserAir => "Warm air at the condenser",
        Cause::NotSteady => "Not steady yet",
        Cause::PlateOverstated => "The plate promises too much",
        Cause::PartSpeed => "It ran below full output",
    }
}

/// The check that tells a cause from the others.
pub fn cause_check(cause: Cause) -> &'static str {
    match cause {
        Cause::LowAirflow => {
            "Clean filter and grilles, open every outlet, see that the blower runs at full speed, then measure the flow. If the air out gets warmer as more of it flows, this was it."
        }
        Cause::LowCharge => {
            "Current falls along with the cooling; with a plate that promises too much it does not. Oil at joints and frost on only a part of the coil point to it. A licensed technician measures pressures and superheat; do not open the circuit."
        }
        Cause::VoltageDrop => {
            "With the cooler running, measure along each cable, fuse and joint in turn: the one with the most volts across it is the one. Switch off before touching a joint that may be hot."
        }
        Cause::WarmSensor => {
            "Shade both sensors and keep them off metal. Hold both into the same air, and into iced water: they must agree, and show 0\u{a0}°C (32\u{a0}°F)."
        }
        Cause::WarmCondenserAir => {
            "Hold the thermometer where the condenser draws its air and compare with the air some steps away. Clear leaves and dust from its fins; see whether its warm air finds its way back in."
        }
        Cause::NotSteady => {
            "Read again after ten more minutes without touching anything. If the air out has become colder, this was it."
        }
        Cause::PlateOverstated => {
            "Exclude the others first. Then measure flow and both humidities near 27 °C (80 °F) inside and 35 °C (95 °F) outdoors: that is what a plate is about."
        }
        Cause::PartSpeed => {
            "Set the thermostat to its lowest, wait ten minutes and read again. If the current has risen, this was it."
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::format::UnitSystem;
    use noonday_engine::advice::acceptance::acceptance;
    use noonday_engine::scenario::{Scenario, example};

    #[test]
    fn the_examples_readings_are_told() {
        let mut document = example();
        document.readings.taken = true;
        let voice = Voice::new(&document, UnitSystem::Metric);
        let scenario = Scenario::new(document).unwrap();
        let found = acceptance(&scenario).unwrap().unwrap();
        assert!(verdict(&found, &voice).starts_with("As expected"));
        assert!(assumptions(&found).contains("sensible part"));
        let (name, cells) = sign_row(&found.signs[0], &voice);
        assert_eq!(name, "Air out of the cooler");
        assert_eq!(
            (cells[0].as_str(), cells[2].as_str()),
            ("15\u{a0}°C", "within")
        );
    }

    #[test]
    fn no_cause_is_without_its_check() {
        for cause in Cause::ALL {
            assert!(cause_check(cause).ends_with('.') && !cause_name(cause).is_empty());
        }
    }
}
