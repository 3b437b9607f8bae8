//! Each group as a line of text, so that the scenario can be read as a page while its groups are closed.

mod equipment;

use super::Voice;
use super::compass;
use super::listed;
use super::options::option_name;
use crate::format::date;
use noonday_engine::scenario::{
    Dimension, Group, HumidityGiven, Kind, NeededFor, ScenarioDocument, field,
};

/// The contents of a group in a line.
pub fn summary(group: Group, document: &ScenarioDocument, voice: &Voice) -> String {
    match group {
        Group::Title => title(document),
        Group::Vehicle => vehicle(document, voice),
        Group::Shell => shell(document, voice),
        Group::Glass => glass(document, voice),
        Group::Occupants => occupants(document, voice),
        Group::Need => need(document, voice),
        Group::Place => place(document, voice),
        Group::Day => day(document, voice),
        Group::Cooler => equipment::cooler(document, voice),
        Group::Ventilation => equipment::ventilation(document, voice),
        Group::Battery => equipment::battery(document, voice),
        Group::Charging => equipment::charging(document, voice),
        Group::Loads => equipment::loads(document, voice),
        Group::Cabling => equipment::cabling(document, voice),
        Group::Roof => equipment::roof(document, voice),
        Group::Prices => equipment::prices(document, voice),
        Group::Readings => equipment::readings(document, voice),
    }
}

fn title(document: &ScenarioDocument) -> String {
    let name = super::page::shown_name(&document.name);
    let whose = super::sending::for_and_from(document);
    if document.note.trim().is_empty() {
        return format!("“{name}”, no note.{whose}");
    }
    format!("“{name}”.{whose} {}", document.note.trim())
}

fn vehicle(document: &ScenarioDocument, voice: &Voice) -> String {
    let vehicle = &document.vehicle;
    let length = |value_m| voice.units.quantity(Dimension::Length, value_m);
    format!(
        "{} long, {} wide and {} high inside; nose to the {}.",
        length(vehicle.length_m),
        length(vehicle.width_m),
        length(vehicle.height_m),
        compass(vehicle.heading_deg)
    )
}

fn shell(document: &ScenarioDocument, voice: &Voice) -> String {
    let shell = &document.shell;
    let thick = |value_m| voice.units.quantity(Dimension::Thickness, value_m);
    format!(
        "{}: roof {}, walls {}, floor {}, {} filled. Roof takes up {} of the sun, walls {}.",
        chosen("shell.insulation_material", document),
        thick(shell.roof_insulation_m),
        thick(shell.wall_insulation_m),
        thick(shell.floor_insulation_m),
        voice.units.percent(shell.filled_share),
        voice.units.percent(shell.roof_sun_absorptance),
        voice.units.percent(shell.wall_sun_absorptance),
    )
}

fn glass(document: &ScenarioDocument, voice: &Voice) -> String {
    let glass = &document.glass;
    let sides_m2 = glass.left_area_m2 + glass.right_area_m2;
    let area = |value_m2| voice.units.quantity(Dimension::Area, value_m2);
    let covers = if glass.covers_fitted {
        format!(
            "covers on {}",
            hours(glass.covers_from_hour, glass.covers_until_hour, voice)
        )
    } else {
        "no covers".to_owned()
    };
    format!(
        "Windscreen {}, sides {}, rear {}, roof {}; {covers}.",
        area(glass.nose_area_m2),
        area(sides_m2),
        area(glass.rear_area_m2),
        area(glass.roof_area_m2),
    )
}

fn occupants(document: &ScenarioDocument, voice: &Voice) -> String {
    let who = &document.occupants;
    let mut phrases = Vec::new();
    if who.people > 0.0 {
        phrases.push(format!(
            "{} {}",
            counted(who.people, "person", "people", voice),
            hours(who.people_from_hour, who.people_until_hour, voice)
        ));
    }
    if who.dogs > 0.0 {
        phrases.push(format!(
            "{} of {} {}",
            counted(who.dogs, "dog", "dogs", voice),
            voice.units.quantity(Dimension::Mass, who.dog_mass_kg),
            hours(who.dogs_from_hour, who.dogs_until_hour, voice)
        ));
    }
    if who.cooking_heat_w > 0.0 {
        phrases.push(format!(
            "cooking {}",
            hours(who.cooking_from_hour, who.cooking_until_hour, voice)
        ));
    }
    sentence(&phrases, "Nobody.")
}

fn need(document: &ScenarioDocument, voice: &Voice) -> String {
    let windows: Vec<String> = document
        .need
        .windows
        .iter()
        .filter(|window| window.needed_for != NeededFor::Nobody)
        .map(|window| {
            let whom = match window.needed_for {
                NeededFor::Animals => "animals",
                NeededFor::People | NeededFor::Nobody => "people",
            };
            format!(
                "{} for {whom} {}",
                voice
                    .units
                    .quantity(Dimension::Temperature, window.highest_felt_c),
                hours(window.from_hour, window.until_hour, voice)
            )
        })
        .collect();
    let reserve = voice.units.percent(document.need.reserve_state_of_charge);
    if windows.is_empty() {
        return format!("No hours are set; {reserve} of the bank kept back.");
    }
    format!(
        "At most {}; {reserve} of the bank kept back.",
        listed(&windows)
    )
}

fn place(document: &ScenarioDocument, voice: &Voice) -> String {
    let place = &document.place;
    let degrees = |value: f64| format!("{}°", voice.units.number(value.abs(), 1));
    format!(
        "{} {}, {} {}, {} up, on {}; clock at UTC{}{}.",
        degrees(place.latitude_deg),
        if place.latitude_deg < 0.0 {
            "south"
        } else {
            "north"
        },
        degrees(place.longitude_deg),
        if place.longitude_deg < 0.0 {
            "west"
        } else {
            "east"
        },
        voice.units.quantity(Dimension::Altitude, place.altitude_m),
        chosen("place.ground", document).to_ascii_lowercase(),
        signed(place.utc_offset_h, voice),
        if place.summer_time {
            " and an hour of summer time"
        } else {
            ""
        },
    )
}

fn day(document: &ScenarioDocument, voice: &Voice) -> String {
    let day = &document.day;
    let degrees = |value_c| voice.units.quantity(Dimension::Temperature, value_c);
    let shade = if day.shade_beam_share > 0.0 {
        format!(
            "{} shade {}",
            voice.units.percent(day.shade_beam_share),
            hours(day.shade_from_hour, day.shade_until_hour, voice)
        )
    } else {
        "no shade".to_owned()
    };
    format!(
        "{} from {}: {} to {}, {}, {} cloud, wind {}, {shade}.",
        counted(day.days, "day", "days", voice),
        date(day.date),
        degrees(day.low_c),
        degrees(day.high_c),
        match day.humidity_given {
            HumidityGiven::DewPoint => format!("dew point {}", degrees(day.dew_point_c)),
            HumidityGiven::RelativeHumidity => {
                let share = voice.units.percent(day.relative_humidity_at_high);
                format!("{share} humid in the warmest hour")
            }
        },
        voice.units.percent(day.cloud_fraction),
        voice
            .units
            .quantity(Dimension::WindSpeed, day.wind_speed_m_s),
    )
}

/// Hours of a schedule; equal hours mean the whole day.
fn hours(from_hour: f64, until_hour: f64, voice: &Voice) -> String {
    if from_hour == until_hour {
        return "all day".to_owned();
    }
    format!(
        "from {} to {}",
        voice.units.clock(from_hour),
        voice.units.clock(until_hour)
    )
}

fn chosen(key: &str, document: &ScenarioDocument) -> &'static str {
    let kind = field(key).map(|field| &field.kind);
    match kind {
        Some(Kind::Choice(choice)) => choice
            .options
            .get((choice.read)(document))
            .map_or("", |stable| option_name(stable)),
        _ => "",
    }
}

fn counted(count: f64, one: &str, many: &str, voice: &Voice) -> String {
    let name = if count == 1.0 { one } else { many };
    format!("{} {name}", voice.units.number(count, 0))
}

fn signed(value: f64, voice: &Voice) -> String {
    let sign = if value < 0.0 { "" } else { "+" };
    format!("{sign}{}", voice.units.number(value, 2))
}

fn sentence(phrases: &[String], if_none: &str) -> String {
    if phrases.is_empty() {
        return if_none.to_owned();
    }
    let mut text = phrases.join("; ");
    if let Some(first) = text.get(..1) {
        let first = first.to_ascii_uppercase();
        text.replace_range(..1, &first);
    }
    text.push('.');
    text
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::format::UnitSystem;
    use noonday_engine::scenario::example;

    #[test]
    fn the_example_reads_as_a_page() {
        let document = example();
        for units in [UnitSystem::Metric, UnitSystem::Us] {
            let voice = Voice::new(&document, units);
            for group in Group::ALL {
                let line = summary(group, &document, &voice);
                assert!(line.ends_with('.') || line.ends_with('”'), "{line}");
                assert!(line.chars().count() < 190, "{line}");
            }
        }
    }

    #[test]
    fn lines_say_what_the_document_holds() {
        let mut document = example();
        let voice = Voice::new(&document, UnitSystem::Metric);
        let shell = summary(Group::Shell, &document, &voice);
        assert!(
            shell.starts_with("Sheep wool: roof 40\u{a0}mm, walls 40\u{a0}mm"),
            "{shell}"
        );
        let need = summary(Group::Need, &document, &voice);
        assert!(
            need.contains("28\u{a0}°C for animals from 13:00 to 15:00"),
            "{need}"
        );
        document.cooler.installed = false;
        assert_eq!(summary(Group::Cooler, &document, &voice), "None.");
        document.loads.fridge.power_w = 0.0;
        let loads = summary(Group::Loads, &document, &voice);
        assert!(loads.starts_with("Lights 15\u{a0}W"), "{loads}");
    }

    #[test]
    fn compass_points_wrap() {
        assert_eq!(compass(0.0), "north");
        assert_eq!(compass(350.0), "north");
        assert_eq!(compass(180.0), "south");
        assert_eq!(compass(230.0), "south-west");
    }
}
