//! The best for every budget, drawn: cost across, what stays too warm upwards; dots and lines are buttons.

use super::{Decision, MONEY};
use crate::charts::spread;
use crate::live::{click, flag};
use crate::text::{Voice, decide as text};
use crate::widgets::paragraph;
use leptos::prelude::*;
use noonday_engine::advice::{Package, Packages, applied};
use noonday_engine::quantity::sort_few;

/// Room left free at the edges of the drawing, percent of it.
const EDGE: f64 = 6.0;

/// Least distance of dots, percent of the width: on the narrowest screen what a finger can tell apart.
const LEAST_GAP: f64 = 8.6;

pub(super) fn front(decision: Decision, found: &Packages, voice: &Voice) -> AnyView {
    if found.front.is_empty() {
        return ().into_any();
    }
    let shown = shown(found);
    let places = places(&shown);
    let current = decision.is_current(MONEY);
    let dots = shown
        .iter()
        .zip(&places)
        .map(|(package, place)| dot((decision, current), package, *place, voice))
        .collect_view();
    let lines = found
        .front
        .iter()
        .map(|package| line((decision, current), package, voice))
        .collect_view();
    let (cheapest, dearest) = cost_range(&shown);
    let least = text::cost_change(cheapest, voice);
    let most = text::cost_change(dearest, voice);
    let warmest = |most: f64, one: &&Package| most.max(one.outcome.degree_hours_k_h);
    let top = text::too_warm(shown.iter().fold(0.0, warmest), voice);
    view! {
        <h4>{text::FRONT}</h4>
        {(!found.complete).then(|| paragraph("note", text::STILL_SEARCHING.to_owned()))}
        <p class="front-top" aria-hidden="true">
            {top} " " {text::FRONT_UP}
        </p>
        <div class="front" role="group" aria-label=text::FRONT>
            <svg viewBox="0 0 100 100" preserveAspectRatio="none" aria-hidden="true">
                <polyline points=stairs(&shown, &places, &found.front)></polyline>
            </svg>
            {dots}
        </div>
        <div class="front-across" aria-hidden="true">
            <span>{least}</span>
            <span>{text::FRONT_ACROSS}</span>
            <span>{most}</span>
        </div>
        <ul class="packages">{lines}</ul>
        <p class="note">{text::FRONT_NOTE}</p>
    }
    .into_any()
}

/// The front, with nothing and no cooler wherever they stand.
fn shown(found: &Packages) -> Vec<&Package> {
    let always = found.nothing.iter().chain(&found.without_cooler);
    let beside = always.filter(|package| {
        let same = |other: &&Package| other.measures == package.measures;
        found.front.iter().find(same).is_none()
    });
    let mut shown: Vec<&Package> = found.front.iter().chain(beside).collect();
    sort_few(&mut shown, |one, other| one.cost_change > other.cost_change);
    shown
}

/// Places of packages, percent from the left and from the bottom: by cost, but no nearer to each other than fingers can tell, and by
/// what stays too warm.
fn places(shown: &[&Package]) -> Vec<(f64, f64)> {
    let most = |value: fn(&Package) -> f64| shown.iter().map(|one| value(one)).fold(0.0, f64::max);
    let (cheapest, dearest) = cost_range(shown);
    let unmet = most(|package| package.outcome.degree_hours_k_h);
    let inside = |value: f64, span: f64| {
        let share = if span > 0.0 { value / span } else { 0.0 };
        EDGE + share * (100.0 - 2.0 * EDGE)
    };
    let wanted: Vec<f64> = shown
        .iter()
        .map(|package| inside(package.cost_change - cheapest, dearest - cheapest))
        .collect();
    let gap = LEAST_GAP.min((100.0 - 2.0 * EDGE) / shown.len() as f64);
    let across = spread(&wanted, gap, EDGE, 100.0 - EDGE);
    let up = shown
        .iter()
        .map(|package| inside(package.outcome.degree_hours_k_h, unmet));
    across.into_iter().zip(up).collect()
}

fn cost_range(shown: &[&Package]) -> (f64, f64) {
    shown
        .iter()
        .fold((0.0, 0.0), |(least, most): (f64, f64), package| {
            (
                least.min(package.cost_change),
                most.max(package.cost_change),
            )
        })
}

/// The stairs below which nothing was found: level until the next package is paid for.
fn stairs(shown: &[&Package], places: &[(f64, f64)], front: &[Package]) -> String {
    let mut points = String::new();
    let mut level = None;
    for (package, (x, up)) in shown.iter().zip(places) {
        if !front.iter().any(|one| one.measures == package.measures) {
            continue;
        }
        let y = 100.0 - up;
        if let Some(before) = level {
            points.push_str(&format!("{x:.1},{before:.1} "));
        }
        points.push_str(&format!("{x:.1},{y:.1} "));
        level = Some(y);
    }
    if let Some(last) = level {
        points.push_str(&format!("100,{last:.1}"));
    }
    points
}

fn dot(
    (decision, current): (Decision, Memo<bool>),
    package: &Package,
    (x, y): (f64, f64),
    voice: &Voice,
) -> AnyView {
    let name = text::package_line(package, voice).join(", ");
    let title = name.clone();
    let as_it_is = package.measures.is_empty();
    view! {
        <button
            type="button"
            class="dot"
            class:as-it-is=as_it_is
            style=format!("left:{x:.1}%;bottom:{y:.1}%")
            aria-label=name
            title=title
            disabled=flag(move || as_it_is || !current.get())
            on:click=take(decision, package, voice)
        ></button>
    }
    .into_any()
}

fn line((decision, current): (Decision, Memo<bool>), package: &Package, voice: &Voice) -> AnyView {
    let [cost, left, name] = text::package_line(package, voice);
    view! {
        <li>
            <button
                type="button"
                disabled=flag(move || !current.get())
                on:click=take(decision, package, voice)
            >
                <b>{cost}</b>
                " "
                <span>{left}</span>
                " "
                <span class="package-name">{name}</span>
            </button>
        </li>
    }
    .into_any()
}

/// Makes a package the scenario.
fn take(
    decision: Decision,
    package: &Package,
    voice: &Voice,
) -> Box<dyn FnMut(leptos::ev::MouseEvent)> {
    let measures = package.measures.clone();
    let name = text::package_name(package, voice);
    click(move || {
        let document = decision
            .of
            .with_untracked(|of| Some(applied(&measures, of.as_ref()?.document())));
        if let (Some(document), false) = (document, measures.is_empty()) {
            decision.adopt(document, &name);
        }
    })
}
