//! Readings of the finished unit.

use super::{Wording, say};

const LIMIT: &str =
    "The ± on the data sheet of the meter, or a fair guess. The band widens with it.";
const METERS: &str = "from a laboratory’s meter to a poor one";
const AIR: &str = "air that such a cooler meets";

pub(super) fn wording(key: &str) -> Option<Wording> {
    Some(match key {
        "readings.taken" => say(
            "There are readings",
            "Read all of them within a minute or two, with the thermostat turned down so far that the cooler gives all it can.",
            "",
        ),
        "readings.outdoor_c" => say(
            "Outdoors, in the shade",
            "Where the condenser draws its air, with neither sun on the sensor nor the warm air that the cooler blows out.",
            "weather in which a cooler is tried",
        ),
        "readings.return_c" => say(
            "Air into the cooler",
            "At the grille where it draws cabin air, out of the sun and of the cold air that it blows out.",
            AIR,
        ),
        "readings.return_humidity_known" => say(
            "Its humidity was read",
            "Without it only the cooling that a thermometer shows can be told, and the expectation is wider.",
            "",
        ),
        "readings.return_relative_humidity" => say(
            "Humidity of the air into the cooler",
            "Moist air costs a part of the cooling to dry it.",
            "from desert air to fog",
        ),
        "readings.supply_c" => say(
            "Air out of the cooler",
            "In the middle of the outlet, close to it, without touching metal. Wait until it stands still.",
            AIR,
        ),
        "readings.supply_humidity_known" => say(
            "Humidity of the cold air was read",
            "With both humidities the whole of the cooling can be measured.",
            "",
        ),
        "readings.supply_relative_humidity" => say(
            "Humidity of the air out of the cooler",
            "Behind a wet coil it is usually above 85 %.",
            "from desert air to fog",
        ),
        "readings.airflow_known" => say(
            "The air flow was measured",
            "With a vane or a hood, over the whole outlet. Where it was not, the rated flow is taken, with a wider band.",
            "",
        ),
        "readings.airflow_m3_s" => say(
            "Air flow as measured",
            "At the temperature at which it enters. Mean speed over the grille times its free area.",
            "a whisper to a gale",
        ),
        "readings.current_a" => say(
            "Current drawn for the cooler",
            "By a clamp around one conductor of its own cable. Leave connections closed: cables carry enough to burn.",
            "what cables of such size carry",
        ),
        "readings.bank_voltage_v" => say(
            "Voltage at the bank",
            "At its terminals, while the cooler runs. Insulated probes, one hand, no rings or bracelets.",
            "banks of 12 to 48 V",
        ),
        "readings.unit_voltage_v" => say(
            "Voltage at the cooler",
            "At the terminals of the cooler, or of the inverter that feeds it, while it runs.",
            "banks of 12 to 48 V less what is lost on the way",
        ),
        "readings.running_s" => say(
            "It has been running for",
            "Cooling comes up over some minutes after a start, while the current is there at once.",
            "six hours are as good as any longer time",
        ),
        "readings.temperature_limit_k" => say("A temperature is read within", LIMIT, METERS),
        "readings.humidity_limit" => say("A humidity is read within", LIMIT, METERS),
        "readings.airflow_limit_share" => say("The air flow is read within", LIMIT, METERS),
        "readings.current_limit_share" => say("The current is read within", LIMIT, METERS),
        "readings.voltage_limit_share" => say("A voltage is read within", LIMIT, METERS),
        _ => return None,
    })
}
