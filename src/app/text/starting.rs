//! Starting points: what each sets, where it comes from, and what was changed since.

use super::options::option_name;
use noonday_engine::scenario::starting_points::{Library, library_of};
use noonday_engine::scenario::{Basis, Field, Group, ScenarioDocument};

/// Source of a pick.
pub const PICK_SOURCE: &str = "Its values can be changed one by one afterwards.";

/// Button: put all values back that were changed.
pub const TAKE_AGAIN: &str = "Take all its values again";

/// What a pick sets, before one is made.
pub fn offered(library: &Library) -> &'static str {
    match library.key {
        "starting.vehicle" => {
            "Sets inner size, furnishing and, under “Its glass”, the windows. The roof’s own measures stay."
        }
        "starting.shell" => "Sets insulation, ribs, lining and floor.",
        "starting.occupants" => {
            "Sets who is in it and when and, under “When it must be cool”, the hours and limits."
        }
        "starting.place" => "Sets place and clock and, under “The day”, its weather.",
        "starting.cooler" => "Sets plate, control, supply and inverter.",
        _ => "Sets chemistry, voltage, capacity and limits.",
    }
}

/// Where the values of a starting point come from.
pub fn basis(basis: Basis) -> String {
    match basis {
        Basis::Published(source) => format!("The starting point’s values: {source}."),
        Basis::FromMemory(source) => {
            format!("The starting point’s values are quoted from memory: {source}.")
        }
        Basis::CommonPractice => {
            "The starting point’s values are common practice; no source.".to_owned()
        }
        Basis::Example => "The starting point’s values are assumed.".to_owned(),
    }
}

/// How many of its values were changed since, over all groups.
pub fn changed(count: usize) -> String {
    match count {
        0 => "None of them was changed since.".to_owned(),
        1 => "One of them was changed since.".to_owned(),
        count => format!("{count} of them were changed since."),
    }
}

/// Of which starting point a group's values are, as the beginning of its line.
pub fn as_picked(group: Group, document: &ScenarioDocument) -> String {
    picked_line(group, document).unwrap_or_default()
}

fn picked_line(group: Group, document: &ScenarioDocument) -> Option<String> {
    let library = library_of(group)?;
    let changes = library.changes_in(group, document)?;
    let name = option_name(library.picked_name(document)?);
    Some(match changes {
        0 => format!("As “{name}”. "),
        1 => format!("As “{name}”, with 1 change. "),
        changes => format!("As “{name}”, with {changes} changes. "),
    })
}

/// A value to go back to, and the starting point it is of.
pub fn value_as(field: &Field, document: &ScenarioDocument, value: String) -> String {
    let library = Library::setting(field.key);
    match library.and_then(|library| library.picked_name(document)) {
        Some(stable) => format!("{value}, as “{}”", option_name(stable)),
        None => value,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use noonday_engine::scenario::example;

    #[test]
    fn a_line_tells_the_starting_point_and_how_much_was_changed() {
        let mut document = example();
        assert_eq!(as_picked(Group::Vehicle, &document), "");
        let library = Library::behind("starting.vehicle").unwrap();
        library.pick(1, &mut document);
        assert_eq!(
            as_picked(Group::Vehicle, &document),
            "As “Compact panel van”. "
        );
        assert_eq!(
            as_picked(Group::Glass, &document),
            "As “Compact panel van”. "
        );
        assert_eq!(as_picked(Group::Shell, &document), "");
        document.vehicle.height_m = 1.3;
        document.glass.roof_area_m2 = 0.2;
        document.glass.rear_area_m2 = 0.2;
        assert!(as_picked(Group::Vehicle, &document).ends_with("with 1 change. "));
        assert!(as_picked(Group::Glass, &document).ends_with("with 2 changes. "));
    }
}
