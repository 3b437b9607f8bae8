//! The section: how far the work is, and every part under its heading.

use super::told::Decided;
use super::{Decision, FAILS, MONEY, NEEDED, PLAIN, Parts, Phase, SIZES, SURE};
use super::{likely, money, needed, sizes};
use crate::live::{click, derived, flag, part, words};
use crate::state::AppState;
use crate::text::{decide as text, page};
use crate::widgets::progress;
use leptos::prelude::*;

/// The section.
#[component]
pub fn Decide() -> impl IntoView {
    let decision = Decision::new(expect_context::<AppState>());
    provide_context(decision);
    expect_context::<Decided>().is(decision);
    view! {
        <section id="decide" class="decide" aria-labelledby="decide-title">
            <h2 id="decide-title">{text::DECIDE}</h2>
            {status(decision)}
            <div class="decisions">
                {section(decision, NEEDED, text::NEEDED, needed::view)}
                {section(decision, SIZES, text::SIZES, sizes::view)}
                {section(decision, MONEY, text::MONEY, money::view)}
                {section(decision, FAILS, text::FAILS, likely::failures)}
                {section(decision, SURE, text::SURE, likely::sure)}
                {section(decision, PLAIN, text::PLAIN, likely::plain_division)}
            </div>
        </section>
    }
}

/// A part under its heading, shown anew whenever it comes or the way to speak of it changes.
fn section(
    decision: Decision,
    place: usize,
    heading: &'static str,
    body: fn(Decision, &Parts) -> Option<AnyView>,
) -> AnyView {
    let shown = part(move || {
        decision.came[place].track();
        decision.state.voice.track();
        decision.parts.with_value(|parts| body(decision, parts))
    });
    let took = words(move || format!("{:.0}", decision.took_ms[place].get()));
    view! {
        <section class="decision" data-part=place.to_string() data-took-ms=took>
            <h3>{heading}</h3>
            {shown}
        </section>
    }
    .into_any()
}

/// How far the work is, in words.
pub(super) fn told(decision: Decision) -> String {
    match decision.phase.get() {
        Phase::Waiting => text::WAITING.to_owned(),
        Phase::Working(share) => {
            let stale = decision.came[SURE].get().1 > 0;
            text::working(share, stale, &decision.state.voice.get())
        }
        Phase::Complete => text::COMPLETE.to_owned(),
        Phase::Stopped => text::STOPPED.to_owned(),
        Phase::Failed => text::FAILED.to_owned(),
        Phase::Lost => text::LOST.to_owned(),
        Phase::Unavailable => text::UNAVAILABLE.to_owned(),
        Phase::Refused => text::REFUSED.to_owned(),
    }
}

/// How far the work is, in words and with a button.
fn status(decision: Decision) -> AnyView {
    let phase = decision.phase;
    let done = derived(move || match phase.get() {
        Phase::Working(share) => Some(share),
        _ => None,
    });
    let is_working = derived(move || done.get().is_some());
    let told = derived(move || told(decision));
    // Said aloud only when it begins, ends or fails; each step would talk over everything else.
    let spoken = derived(move || match phase.get() {
        Phase::Working(_) | Phase::Waiting => String::new(),
        _ => told.get(),
    });
    let act = click(move || {
        if is_working.get_untracked() {
            decision.stop();
        } else {
            decision.go_on();
        }
    });
    let can_act = derived(move || {
        matches!(
            phase.get(),
            Phase::Working(_) | Phase::Stopped | Phase::Refused | Phase::Failed
        )
    });
    view! {
        <div class="work-status">
            <p class="note" data-decide="status">
                {words(move || told.get())}
            </p>
            <p class="visually-hidden" role="status">
                {words(move || spoken.get())}
            </p>
            {progress(text::PROGRESS, done)}
            <button type="button" hidden=flag(move || !can_act.get()) on:click=act>
                {words(move || {
                    if is_working.get() { text::STOP } else { text::GO_ON }.to_owned()
                })}
            </button>
        </div>
        {part(move || {
            decision
                .taken()
                .map(|told| {
                    view! {
                        <p class="taken">
                            {told} " "
                            <button
                                type="button"
                                on:click=click(move || {
                                    decision.taken.set(None);
                                    decision.state.back();
                                })
                            >
                                {page::UNDO}
                            </button>
                        </p>
                    }
                        .into_any()
                })
        })}
    }
    .into_any()
}
