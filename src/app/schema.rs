//! The schema of files of scenarios (JSON Schema 2020-12), made from the fields table and its wording. `make schema` writes it; a
//! test fails when it is stale. That it accepts and refuses what the reader does is tried in `tests/file_schema.rs`.

use crate::text::fields::{full_label, wording};
use noonday_engine::scenario::file::{FILE_FORMAT, FILE_VERSION, MOST_SCENARIOS};
use noonday_engine::scenario::{
    Basis, DOCUMENT_VERSION, Dimension, Field, Kind, ScenarioDocument, example, fields,
};
use serde_json::{Map, Value, json};

/// What cannot be written in a schema.
const BESIDE: &str = "A value that is missing is that of the document’s version, as under “default”. Beside what this schema says, values must \
agree with one another: the day’s low at least 0.5 K below its high, the least charge at least 0.05 below the most, the cut-out \
not above the recovery, the inverter’s rating not above its surge and that not above ten ratings, glass at most nine tenths of its \
face, shares of the sun inside at most 1 together, a sensible share that a coil can have, and a day that exists.";

/// Symbol of the SI unit in which a document holds it.
fn unit(dimension: Dimension) -> &'static str {
    match dimension {
        Dimension::Length | Dimension::TapeLength | Dimension::Thickness | Dimension::Altitude => {
            "m"
        }
        Dimension::Area | Dimension::LeakArea => "m²",
        Dimension::Angle => "degrees",
        Dimension::Temperature => "°C",
        Dimension::TemperatureDifference => "K",
        Dimension::ElectricPower | Dimension::HeatFlow => "W",
        Dimension::AirFlow => "m³/s",
        Dimension::AirFlowPerKilowatt => "m³/s for each kW",
        Dimension::WindSpeed | Dimension::RoadSpeed => "m/s",
        Dimension::Conductivity => "W/(m K)",
        Dimension::ThermalResistance => "m² K/W",
        Dimension::Transmittance => "W/(m² K)",
        Dimension::HeatCapacity => "J/K",
        Dimension::Mass => "kg",
        Dimension::Force => "N",
        Dimension::MoistureFlow => "kg/s",
        Dimension::HourOfDay => "h on the clock",
        Dimension::ClockOffset | Dimension::WorkHours => "h",
        Dimension::TimeSpan | Dimension::RunningTime => "s",
        Dimension::WorkHoursPerArea => "h/m²",
        Dimension::Voltage => "V",
        Dimension::Current => "A",
        Dimension::Charge => "Ah",
        Dimension::Resistance => "Ω",
        Dimension::Share => "share of 1",
        Dimension::SharePerKelvin => "1/K",
        Dimension::Factor => "factor",
        Dimension::Count => "number",
        Dimension::Money => "money",
        Dimension::MoneyPerWattHour => "money/Wh",
        Dimension::MoneyPerWatt => "money/W",
        Dimension::MoneyPerArea => "money/m²",
        Dimension::MoneyPerAmpere => "money/A",
        Dimension::MoneyPerCable => "money/(m mm²)",
        Dimension::MoneyPerHour => "money/h",
    }
}

fn source(basis: Basis) -> String {
    match basis {
        Basis::Published(source) => format!("Default: {source}."),
        Basis::FromMemory(source) => format!("Default, from memory: {source}."),
        Basis::CommonPractice => "Default: common practice, no source.".to_owned(),
        Basis::Example => "Default: invented for the example.".to_owned(),
    }
}

fn value(field: &Field, defaults: &ScenarioDocument) -> Value {
    let mut schema = match &field.kind {
        Kind::Number(number) => json!({
            "type": if number.dimension.is_whole() { "integer" } else { "number" },
            "minimum": number.minimum,
            "maximum": number.maximum,
            "default": (number.read)(defaults),
            "description": format!("In {}. {}", unit(number.dimension), source(field.basis)),
        }),
        Kind::Choice(choice) => json!({
            "enum": choice.options,
            "default": choice.options[(choice.read)(defaults)],
            "description": source(field.basis),
        }),
        Kind::Switch(switch) => json!({
            "type": "boolean",
            "default": (switch.read)(defaults),
            "description": source(field.basis),
        }),
        Kind::Text(text) => json!({
            "type": "string",
            "maxLength": text.longest,
            "default": (text.read)(defaults),
            "description": wording(field).why,
        }),
        Kind::Date(date) => day((date.read)(defaults)),
    };
    schema["title"] = full_label(field).into();
    schema
}

fn day(default: noonday_engine::solar::Date) -> Value {
    let part =
        |least: i32, most: i32| json!({ "type": "integer", "minimum": least, "maximum": most });
    json!({
        "type": "object",
        "properties": { "year": part(1950, 2100), "month": part(1, 12), "day": part(1, 31) },
        "required": ["year", "month", "day"],
        "additionalProperties": false,
        "default": default,
        "description": "A day of the calendar.",
    })
}

/// What stands at paths that begin alike, nested: objects, or arrays where the names are numbers.
fn nested(leaves: &[(&str, Value)]) -> Value {
    let mut members = Map::new();
    let mut names: Vec<&str> = Vec::new();
    for (path, schema) in leaves {
        let (name, is_leaf) = match path.split_once('.') {
            Some((name, _)) => (name, false),
            None => (*path, true),
        };
        if names.contains(&name) {
            continue;
        }
        names.push(name);
        let inner: Vec<(&str, Value)> = leaves
            .iter()
            .filter_map(|(path, schema)| {
                let rest = path.strip_prefix(name)?.strip_prefix('.')?;
                Some((rest, schema.clone()))
            })
            .collect();
        let schema = if is_leaf {
            schema.clone()
        } else {
            nested(&inner)
        };
        members.insert(name.to_owned(), schema);
    }
    if names.first() != Some(&"0") {
        return json!({ "type": "object", "properties": members, "additionalProperties": false });
    }
    let items: Vec<&Value> = names.iter().map(|name| &members[*name]).collect();
    json!({ "type": "array", "prefixItems": items, "items": false })
}

fn written() -> String {
    let defaults = example();
    let mut leaves = vec![("version", json!({ "const": DOCUMENT_VERSION }))];
    leaves.extend(fields().map(|field| (field.key, value(field, &defaults))));
    let mut document = nested(&leaves);
    document["required"] = json!(["version"]);
    document["description"] = BESIDE.into();
    let entry = json!({
        "type": "object",
        "properties": {
            "saved": {
                "type": "string",
                "pattern": "^[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}(\\.[0-9]{1,9})?Z$",
                "description": "When it was saved, in universal time as RFC 3339 writes it.",
            },
            "document": { "$ref": "#/$defs/document" },
        },
        "required": ["document"],
        "additionalProperties": false,
    });
    let schema = json!({
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "Scenarios of Noonday",
        "description": "All quantities are SI, as each description says. Members stand once; a file is at most 8 MiB of UTF-8.",
        "type": "object",
        "properties": {
            "format": { "const": FILE_FORMAT },
            "version": { "const": FILE_VERSION },
            "scenarios": { "type": "array", "maxItems": MOST_SCENARIOS, "items": entry },
        },
        "required": ["format", "version", "scenarios"],
        "additionalProperties": false,
        "$defs": { "document": document },
    });
    serde_json::to_string_pretty(&schema).expect("a schema is JSON") + "\n"
}

#[test]
fn the_schema_is_that_of_the_fields() {
    let path = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../../public/scenarios.schema.json"
    );
    let now = written();
    if std::env::var_os("WRITE_SCHEMA").is_some() {
        std::fs::write(path, &now).expect("the schema can be written");
    }
    let kept = std::fs::read_to_string(path).expect("the schema is there");
    assert!(
        kept == now,
        "stale: run `make schema` and keep what it writes"
    );
}
