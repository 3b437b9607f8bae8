//! How big: the smallest sizes that will do, with the common size below and above.

use super::{Decision, Parts, SIZES};
use crate::live::{at_event, click, flag};
use crate::text::{Voice, decide as text};
use crate::widgets::{Row, paragraph, plain, sheet, together};
use leptos::prelude::*;
use noonday_engine::advice::{ChargingSized, Sized, Sizing};
use noonday_engine::scenario::Dimension;

pub(super) fn view(decision: Decision, parts: &Parts) -> Option<AnyView> {
    let Some(sizing) = parts.sizing.as_ref()? else {
        return Some(paragraph("said", text::NOTHING_ASKED.to_owned()));
    };
    let voice = decision.state.voice.get_untracked();
    let charging = match sizing.charging_by {
        ChargingSized::PanelsW => Some(Dimension::ElectricPower),
        ChargingSized::DrivingHours => None,
    };
    let by = Some(sizing.charging_by);
    let mut views = Vec::new();
    for (name, sized, dimension) in [
        (
            text::size_name(None, true),
            &sizing.cooler,
            Some(Dimension::HeatFlow),
        ),
        (
            text::size_name(None, false),
            &sizing.bank,
            Some(Dimension::Charge),
        ),
        (text::size_name(by, false), &sizing.charging, charging),
    ] {
        views.push(match sized {
            Some(sized) => ladder(name, sized, dimension, &voice),
            None => paragraph("said", text::no_size(name)),
        });
    }
    views.push(recovery(decision, sizing));
    views.push(paragraph("note", text::SIZES_NOTE.to_owned()));
    if sizing.cooler.is_some() {
        views.push(take_button(decision));
    }
    together(views)
}

fn ladder(name: &str, sized: &Sized, dimension: Option<Dimension>, voice: &Voice) -> AnyView {
    // A cooler is sized with a supply that never fails, whose charge says nothing.
    let fed_amply = dimension == Some(Dimension::HeatFlow);
    let rungs = [(-1, sized.down), (0, Some(sized.smallest)), (1, sized.up)];
    let rows: Vec<Row> = rungs
        .into_iter()
        .filter_map(|(step, rung)| {
            let rung = rung?;
            let shown = text::size(dimension, rung.size, voice);
            let mut cells = vec![text::margin(&rung.outcome, voice)];
            if !fed_amply {
                cells.push(text::least_charge(&rung.outcome, voice));
            }
            Some((plain(text::rung(&rung, &shown, step)), cells))
        })
        .collect();
    let [size, margin, charge] = text::SIZES_HEADS;
    let first = format!("{name}, {size}");
    let heads: &[&str] = &[&first, margin, charge];
    sheet(name, &heads[..heads.len() - usize::from(fed_amply)], rows)
}

/// Over several days, whether the bank recovers, and whether it has to.
fn recovery(decision: Decision, sizing: &Sizing) -> AnyView {
    let several = decision
        .of
        .with_untracked(|of| of.as_ref().is_some_and(|of| of.document().day.days > 1.0));
    if !several {
        return ().into_any();
    }
    let must = decision.must_recover;
    let said = sizing
        .recovers
        .map(|recovers| paragraph("said", text::recovers(recovers).to_owned()));
    view! {
        {said}
        <label class="tick">
            <input
                type="checkbox"
                prop:checked=flag(move || must.get())
                on:change=at_event(move || {
                    must.update(|must| *must = !*must);
                    decision.choose();
                })
            />
            <span>{text::MUST_RECOVER}</span>
        </label>
    }
    .into_any()
}

fn take_button(decision: Decision) -> AnyView {
    let current = decision.is_current(SIZES);
    let take = click(move || {
        let document = decision
            .of
            .with_untracked(|of| Some(of.as_ref()?.document().clone()));
        let Some(mut document) = document else { return };
        decision.parts.with_value(|parts| {
            if let Some(Some(sizing)) = &parts.sizing {
                sizing.apply(&mut document);
            }
        });
        decision.adopt(document, text::SIZES_TAKEN);
    });
    view! {
        <button type="button" disabled=flag(move || !current.get()) on:click=take>
            {text::TAKE_SIZES}
        </button>
    }
    .into_any()
}
