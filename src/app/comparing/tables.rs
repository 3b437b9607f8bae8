//! Tables of what is compared. On a narrow screen rows are stacked, each cell with its column's letter; roles are given outright,
//! because a browser forgets those of a table that is laid out otherwise.

use super::{Column, Ran};
use crate::format::UnitSystem;
use crate::inputs::{is_relevant, shown_value};
use crate::text::comparing::{self as text, Cell};
use crate::text::fields::full_label;
use crate::text::{Voice, groups};
use crate::widgets::{disclosed, paragraph, since_pinned, worked_list};
use leptos::prelude::*;
use noonday_engine::advice::weight::Weighed;
use noonday_engine::scenario::{Field, Group, ScenarioDocument, fields_of};
use std::sync::Arc;

/// A cell: what stands in it, and how far that is from the first.
type Shown = (String, Option<String>);
/// A row: its name and cells; without cells it heads those below.
type Row = (String, Vec<Shown>);

/// A table under a caption, with a column for each letter.
fn table(caption: &'static str, letters: &[(char, String)], rows: Vec<Row>) -> AnyView {
    let heads = letters
        .iter()
        .map(|(letter, name)| {
            view! {
                <th scope="col" role="columnheader">
                    {text::column_name(*letter, name)}
                </th>
            }
            .into_any()
        })
        .collect_view();
    let rows = rows
        .into_iter()
        .map(|(name, cells)| {
            if cells.is_empty() {
                return view! {
                    <tr role="row" class="part-row">
                        <th role="rowheader" colspan="5">
                            {name}
                        </th>
                    </tr>
                }
                .into_any();
            }
            let cells = cells
                .into_iter()
                .zip(letters)
                .map(|((said, since), (letter, _))| {
                    view! {
                        <td role="cell" data-letter=letter.to_string()>
                            {said}
                            {since_pinned(since)}
                        </td>
                    }
                    .into_any()
                })
                .collect_view();
            view! {
                <tr role="row">
                    <th scope="row" role="rowheader">
                        {name}
                    </th>
                    {cells}
                </tr>
            }
            .into_any()
        })
        .collect_view();
    view! {
        <table class="columns" role="table">
            <caption>{caption}</caption>
            <thead role="rowgroup">
                <tr role="row">
                    <th role="columnheader">
                        <span class="visually-hidden">{text::QUANTITY}</span>
                    </th>
                    {heads}
                </tr>
            </thead>
            <tbody role="rowgroup">{rows}</tbody>
        </table>
    }
    .into_any()
}

fn letters(columns: &[Column]) -> Vec<(char, String)> {
    columns
        .iter()
        .map(|column| (column.letter, column.candidate.name.clone()))
        .collect()
}

fn voice_of(ran: &Ran, units: UnitSystem) -> Voice {
    Voice::new(ran.scenario.document(), units)
}

/// What each gives.
pub(super) fn answers(columns: &[Column], units: UnitSystem) -> AnyView {
    let cells: Vec<Option<(Voice, [Cell; 10])>> = columns
        .iter()
        .map(|column| {
            let ran = column.ran.as_ref().ok()?;
            let voice = voice_of(ran, units);
            let cells = text::answers(&ran.advice, &ran.weight, &voice);
            Some((voice, cells))
        })
        .collect();
    let first = cells.iter().flatten().next();
    let rows = text::ANSWER_NAMES
        .iter()
        .enumerate()
        .map(|(row, name)| {
            let cells = cells.iter().map(|column| shown(column, first, row));
            ((*name).to_owned(), cells.collect())
        })
        .collect();
    view! {
        {table(text::ANSWERS, &letters(columns), rows)}
        {paragraph("note", text::ANSWERS_NOTE.to_owned())}
    }
    .into_any()
}

fn shown(
    column: &Option<(Voice, [Cell; 10])>,
    first: Option<&(Voice, [Cell; 10])>,
    row: usize,
) -> Shown {
    let Some((voice, cells)) = column else {
        return (text::NOT_THERE.to_owned(), None);
    };
    let said = text::cell(&cells[row], voice);
    let since = first
        .and_then(|(first_voice, first)| text::since(&cells[row], &first[row], voice, first_voice));
    (said, since)
}

/// The weight by part, opened when asked for.
pub(super) fn weights(runs: Vec<(char, Arc<Ran>)>, units: UnitSystem) -> AnyView {
    let body = move || {
        let mass = |ran: &Ran, part: Weighed| {
            let parts = &ran.weight.parts;
            let found = parts.iter().find(|(other, _)| *other == part);
            found.map_or_else(
                || text::NOT_THERE.to_owned(),
                |(_, mass_kg)| text::mass_text(*mass_kg, &voice_of(ran, units)),
            )
        };
        let weighed = |part: &Weighed| {
            let has = |ran: &Ran| ran.weight.parts.iter().any(|(other, _)| other == part);
            runs.iter().any(|(_, ran)| has(ran))
        };
        let parts: Vec<Weighed> = text::PARTS.into_iter().filter(weighed).collect();
        let rows = parts
            .iter()
            .map(|part| {
                let cells = runs.iter().map(|(_, ran)| (mass(ran, *part), None));
                (text::part_name(*part).to_owned(), cells.collect())
            })
            .collect();
        let names: Vec<(char, String)> = runs
            .iter()
            .map(|(letter, ran)| (*letter, ran.scenario.document().name.clone()))
            .collect();
        let worked = parts.iter().filter_map(|part| worked(*part, &runs, units));
        view! {
            {table(text::WEIGHT_PARTS, &names, rows)}
            <dl>{worked_list(worked.collect())}</dl>
            {paragraph("note", text::WEIGHT_NOTE.to_owned())}
        }
        .into_any()
    };
    disclosed("working finer", text::WEIGHT.into_any(), Box::new(body))
}

fn worked(
    part: Weighed,
    runs: &[(char, Arc<Ran>)],
    units: UnitSystem,
) -> Option<crate::text::working::Worked> {
    let has = |ran: &Ran| ran.weight.parts.iter().any(|(other, _)| *other == part);
    let with: Vec<&(char, Arc<Ran>)> = runs.iter().filter(|(_, ran)| has(ran)).collect();
    let of = |ran: &Ran| {
        let document = ran.scenario.document();
        text::part_worked(part, &ran.weight, document, &voice_of(ran, units))
    };
    let (equation, _, source) = of(&with.first()?.1);
    let numbers: Vec<String> = with
        .iter()
        .map(|(letter, ran)| format!("{letter}: {}", of(ran).1))
        .collect();
    Some(crate::text::working::Worked {
        title: text::part_name(part).to_owned(),
        equation,
        numbers: numbers.join("; "),
        source,
    })
}

/// What is entered differently, by group.
pub(super) fn inputs(columns: &[Column], units: UnitSystem) -> AnyView {
    let documents: Vec<Option<&ScenarioDocument>> = columns
        .iter()
        .map(|column| Some(column.ran.as_ref().ok()?.scenario.document()))
        .collect();
    let rows: Vec<Row> = Group::ALL
        .into_iter()
        .flat_map(|group| group_rows(group, &documents, units))
        .collect();
    if rows.is_empty() {
        return view! {
            <h3>{text::INPUTS}</h3>
            {paragraph("said", text::ALL_SAME.to_owned())}
        }
        .into_any();
    }
    table(text::INPUTS, &letters(columns), rows)
}

/// The title of a group and under it every input of it that differs and matters in any of them; the names stand at the columns.
fn group_rows(
    group: Group,
    documents: &[Option<&ScenarioDocument>],
    units: UnitSystem,
) -> Vec<Row> {
    let mut rows: Vec<Row> = fields_of(group)
        .filter(|field| field.key != "name" && differs(field, documents))
        .map(|field| {
            let cells = documents.iter().map(|document| {
                let said = match document {
                    None => text::NOT_THERE.to_owned(),
                    Some(document) if !is_relevant(field.key, document) => {
                        text::NO_EFFECT.to_owned()
                    }
                    Some(document) => shown_value(field, document, units),
                };
                (said, None)
            });
            (full_label(field), cells.collect())
        })
        .collect();
    if !rows.is_empty() {
        rows.insert(0, (groups::title(group).to_owned(), Vec::new()));
    }
    rows
}

fn differs(field: &Field, documents: &[Option<&ScenarioDocument>]) -> bool {
    let mut there = documents.iter().flatten();
    let Some(first) = there.next() else {
        return false;
    };
    let matters = documents
        .iter()
        .flatten()
        .any(|document| is_relevant(field.key, document));
    matters && there.any(|other| !field.same_in(first, other))
}

#[cfg(test)]
mod tests {
    use super::*;
    use noonday_engine::scenario::example;

    #[test]
    fn only_what_differs_and_matters_is_listed_under_its_group() {
        let (one, mut other) = (example(), example());
        other.name = "Another".to_owned();
        other.battery.capacity_ah = 300.0;
        // Lead alone has an exponent, and neither of them is of lead.
        other.battery.peukert_exponent = 1.2;
        let documents = [Some(&one), None, Some(&other)];
        let all: Vec<Row> = Group::ALL
            .into_iter()
            .flat_map(|group| group_rows(group, &documents, UnitSystem::Metric))
            .collect();
        let said = |row: usize, cell: usize| all[row].1[cell].0.as_str();
        assert_eq!(all.len(), 2);
        assert_eq!((all[0].0.as_str(), all[0].1.len()), ("The bank", 0));
        assert_eq!(
            (said(1, 0), said(1, 1), said(1, 2)),
            ("600\u{a0}Ah", text::NOT_THERE, "300\u{a0}Ah")
        );
    }
}
