use super::*;
use crate::scenario::{Scenario, fields};

fn options_of(library: &Library) -> &'static [&'static str] {
    match field(library.key).map(|field| &field.kind) {
        Some(Kind::Choice(choice)) => choice.options,
        _ => panic!("{} is no choice", library.key),
    }
}

#[test]
fn every_pick_has_its_library_and_every_option_its_starting_point_in_the_same_order() {
    let picks = fields().filter(|field| field.key.starts_with("starting."));
    let picks: Vec<&str> = picks.map(|field| field.key).collect();
    let keys: Vec<&str> = LIBRARIES.iter().map(|library| library.key).collect();
    assert_eq!(picks, keys);
    for library in &LIBRARIES {
        let options = options_of(library);
        assert_eq!(options[0], "none");
        assert_eq!(options.len(), library.points.len() + 1, "{}", library.key);
        for (index, start) in library.points.iter().enumerate() {
            let mut document = example();
            library.pick(index + 1, &mut document);
            let picked = library.picked(&document.starting).map(|start| start.point);
            assert_eq!(picked, Some(start.point), "{}", options[index + 1]);
            assert_eq!(library.picked_name(&document), Some(options[index + 1]));
        }
    }
}

#[test]
fn every_value_names_an_input_and_is_in_its_range() {
    for library in &LIBRARIES {
        for (start, option) in library.points.iter().zip(&options_of(library)[1..]) {
            let values: Vec<&str> = start.values.split_whitespace().collect();
            assert_eq!(values.len(), library.sets.len(), "{option}");
            let mut document = example();
            for (key, value) in library.sets.iter().zip(values) {
                let field = field(key).unwrap_or_else(|| panic!("{key} is no input"));
                assert!(
                    set(field, value, &mut document).is_some(),
                    "{option}: {key}"
                );
            }
            if let Err(errors) = Scenario::new(document) {
                panic!("{option}: {errors:?}");
            }
        }
    }
}

#[test]
fn no_two_libraries_set_the_same_input_or_the_same_group() {
    let mut keys: Vec<&str> = LIBRARIES
        .iter()
        .flat_map(|library| library.sets)
        .copied()
        .collect();
    let count = keys.len();
    keys.sort_unstable();
    keys.dedup();
    assert_eq!(keys.len(), count);
    for group in Group::ALL {
        let here = LIBRARIES.iter().filter(|library| {
            let mut fields = library.sets.iter().filter_map(|key| field(key));
            fields.any(|field| field.group == group)
        });
        assert!(here.count() <= 1, "{group:?}");
    }
}

#[test]
fn a_pick_is_what_is_compared_with_and_put_back_to() {
    let library = Library::behind("starting.vehicle").unwrap();
    let mut document = example();
    assert_eq!(baseline(&document.starting), example());
    assert_eq!(library.changes_in(Group::Vehicle, &document), None);
    library.pick(6, &mut document);
    assert_eq!(document.starting.vehicle, StartingPoint::TruckCamper);
    assert_eq!(document.vehicle.floor_above_ground_m, 0.9);
    assert_eq!(baseline(&document.starting), document);
    document.vehicle.height_m = 2.0;
    document.shell.wall_insulation_m = 0.01;
    assert_eq!(library.changes_in(Group::Vehicle, &document), Some(1));
    assert_eq!(library.changes_in(Group::Glass, &document), Some(0));
    assert_eq!(library.changes_in(Group::Shell, &document), None);
    assert_eq!(baseline(&document.starting).vehicle.height_m, 1.95);
    library.pick(0, &mut document);
    assert_eq!(document.vehicle.height_m, 2.0);
    assert_eq!(baseline(&document.starting), example());
}
