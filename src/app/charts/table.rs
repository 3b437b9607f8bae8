//! The samples as a table, one row an hour.

use crate::live::part;
use crate::state::AppState;
use crate::text::charts::{table_columns, table_row};
use crate::text::page;
use crate::widgets::disclosure;
use leptos::prelude::*;
use noonday_engine::simulation::Series;

/// A table that is filled once it is opened.
#[component]
pub fn SampleTable() -> impl IntoView {
    disclosure("samples", page::TABLE, filled)
}

fn filled(state: AppState) -> AnyView {
    let rows = part(move || {
        let advice = state.advice.get();
        let voice = state.voice.get();
        let rows = hourly(&advice.with_cooler.series)
            .into_iter()
            .map(|index| {
                let cells = table_row(&advice, index, &voice);
                view! {
                    <tr>
                        {cells
                            .into_iter()
                            .enumerate()
                            .map(|(column, text)| match column {
                                0 => view! { <th scope="row">{text}</th> }.into_any(),
                                _ => view! { <td>{text}</td> }.into_any(),
                            })
                            .collect_view()}
                    </tr>
                }
            })
            .collect_view();
        Some(rows.into_any())
    });
    let columns = part(move || {
        let columns = table_columns(&state.voice.get())
            .into_iter()
            .map(|text| view! { <th scope="col">{text}</th> })
            .collect_view();
        Some(columns.into_any())
    });
    view! {
        <div class="scrolls" tabindex="0" role="region" aria-label=page::TABLE>
            <table>
                <thead>
                    <tr>{columns}</tr>
                </thead>
                <tbody>{rows}</tbody>
            </table>
        </div>
    }
    .into_any()
}

/// Indices of the samples on whole hours.
fn hourly(series: &Series) -> Vec<usize> {
    let whole = |time_h: &f64| (time_h - time_h.round()).abs() < 1e-6;
    series
        .time_h
        .iter()
        .enumerate()
        .filter(|(_, time_h)| whole(time_h))
        .map(|(index, _)| index)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_row_an_hour() {
        let series = Series {
            time_h: (0..=24).map(|step| 6.0 + f64::from(step) / 12.0).collect(),
            ..Series::default()
        };
        assert_eq!(hourly(&series), [0, 12, 24]);
    }
}
