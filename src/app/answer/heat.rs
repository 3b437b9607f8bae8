//! Where the heat comes from: by path, at the instant that is read and over the run, as numbers and as bars.

use crate::charts::{hour_read, reading_index};
use crate::format::Measure;
use crate::live::{part, words as text};
use crate::state::AppState;
use crate::text::Voice;
use crate::text::ledger as words;
use crate::widgets::since_pinned;
use leptos::prelude::*;
use noonday_engine::advice::Advice;
use noonday_engine::quantity::sort_few;
use noonday_engine::scenario::Dimension;
use noonday_engine::simulation::HeatPath;

/// Heat below this share of the largest is left out.
const LEAST_SHARE: f64 = 0.002;

/// A path with what it brings.
#[derive(Clone, Copy, Debug, PartialEq)]
struct PathHeat {
    path: HeatPath,
    /// At the instant, W.
    now_w: f64,
    /// Over the run, Wh.
    run_wh: f64,
}

/// The table; its instant is that of the charts.
#[component]
pub fn Heat() -> impl IntoView {
    let state = expect_context::<AppState>();
    let index = reading_index(state);
    let hour = text(move || words::at_instant(&hour_read(state, index.get())));
    let body = part(move || {
        let rows = by_path(&state.advice.get(), index.get());
        let pinned = state.pinned.get();
        let before = pinned.map(|pinned| pinned.advice.with_cooler.totals.heat_wh);
        Some(rows_shown(&rows, before, &state.voice.get()))
    });
    view! {
        <div class="account heat">
            <table>
                <caption>{words::HEAT}</caption>
                <thead>
                    <tr>
                        <th scope="col">{words::HEAT_BY}</th>
                        <th scope="col">{hour}</th>
                        <th scope="col">{words::OVER_THE_RUN}</th>
                    </tr>
                </thead>
                <tbody>{body}</tbody>
            </table>
            <p class="note">{words::HEAT_NOTE}</p>
        </div>
    }
}

/// Rows, the sums with their difference from those of the pinned state, if there is one.
fn rows_shown(
    rows: &[PathHeat],
    before_wh: Option<[f64; HeatPath::COUNT]>,
    voice: &Voice,
) -> AnyView {
    let since = |row: &PathHeat| {
        let paths = HeatPath::ALL.into_iter().zip(before_wh?);
        let (_, before) = paths.into_iter().find(|(path, _)| *path == row.path)?;
        voice.difference(Measure::Heat.of(row.run_wh), Measure::Heat.of(before))
    };
    let most = |heat: fn(&PathHeat) -> f64| {
        rows.iter()
            .map(heat)
            .fold(1e-9_f64, |most, heat| most.max(heat.abs()))
    };
    let (most_w, most_wh) = (most(|row| row.now_w), most(|row| row.run_wh));
    rows.iter()
        .map(|row| {
            let now = voice.units.quantity(Dimension::HeatFlow, row.now_w);
            let run = voice.units.heat(row.run_wh);
            view! {
                <tr>
                    <th scope="row">{words::path_name(row.path)}</th>
                    {cell(now, None, row.now_w / most_w)}
                    {cell(run, since(row), row.run_wh / most_wh)}
                </tr>
            }
        })
        .collect_view()
        .into_any()
}

/// A number, and under it a bar as long as its share of the largest.
fn cell(number: String, since: Option<String>, share: f64) -> AnyView {
    let width = format!("width:{:.1}%", 100.0 * share.abs());
    view! {
        <td>
            {number} {since_pinned(since)}
            <span class="bar" class:out={share < 0.0} style=width aria-hidden="true"></span>
        </td>
    }
    .into_any()
}

/// Paths by heat over the run, what brings most first; those that matter neither then nor over the run are left out.
fn by_path(advice: &Advice, index: usize) -> Vec<PathHeat> {
    let run = &advice.with_cooler;
    let now_w = run.series.heat_w_at(index);
    let largest = |heat: &[f64]| heat.iter().fold(0.0_f64, |most, heat| most.max(heat.abs()));
    let least_w = LEAST_SHARE * largest(&now_w);
    let least_wh = LEAST_SHARE * largest(&run.totals.heat_wh);
    let mut rows: Vec<PathHeat> = HeatPath::ALL
        .into_iter()
        .zip(now_w)
        .zip(run.totals.heat_wh)
        .map(|((path, now_w), run_wh)| PathHeat {
            path,
            now_w,
            run_wh,
        })
        .filter(|row| row.now_w.abs() > least_w || row.run_wh.abs() > least_wh)
        .collect();
    sort_few(&mut rows, |one, other| one.run_wh < other.run_wh);
    rows
}

#[cfg(test)]
mod tests {
    use super::*;
    use noonday_engine::advice::advise;
    use noonday_engine::scenario::{Scenario, example};

    #[test]
    fn heat_is_ordered_and_trifles_are_left_out() {
        let mut advice = advise(&Scenario::new(example()).unwrap()).unwrap();
        let run = &mut advice.with_cooler;
        let heat_wh = &mut run.totals.heat_wh;
        *heat_wh = [0.0; HeatPath::COUNT];
        (heat_wh[0], heat_wh[7], heat_wh[8], heat_wh[15]) = (100.0, 900.0, 0.1, -1_000.0);
        let heat_w = &mut run.series.heat_w[5];
        *heat_w = [0.0; HeatPath::COUNT];
        (heat_w[1], heat_w[2]) = (-50.0, 0.01);
        let rows = by_path(&advice, 5);
        let paths: Vec<HeatPath> = rows.iter().map(|row| row.path).collect();
        assert_eq!(
            paths,
            [
                HeatPath::GlassSun,
                HeatPath::Roof,
                HeatPath::Left,
                HeatPath::Cooler
            ]
        );
        assert_eq!((rows[2].now_w, rows[2].run_wh), (-50.0, 0.0));
    }
}
