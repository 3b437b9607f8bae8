//! The page of Noonday: shows a consult and asks for it; the engine decides.

mod answer;
mod charts;
mod decide;
mod desk;
mod drawing;
mod format;
mod inputs;
mod live;
mod offline;
mod share_link;
mod sight;
mod state;
mod storage;
mod text;
mod widgets;
mod worker;

use answer::{Cautions, Figures, Lead, Rest, Then};
use charts::{BankChart, Easel, HeatChart, ReadingLine, SampleTable, Strip, TemperatureChart};
use decide::Decide;
use desk::{Desk, Start};
use drawing::CabinDrawing;
use inputs::{Inputs, Opened};
use leptos::prelude::*;
use offline::NewVersion;
use sight::waits_unseen;
use text::charts::{bank_readings, temperature_readings};
use text::heat::heat_readings;
use text::page;
use widgets::{Masthead, Notices};

fn main() {
    if worker::serve_if_worker() {
        return;
    }
    let start = Start::read();
    // What stood there meanwhile, in `index.html`.
    if let Some(opening) = document().get_element_by_id("opening") {
        opening.remove();
    }
    match start {
        Some(start) => leptos::mount::mount_to_body(move || view! { <Page start /> }),
        None => leptos::mount::mount_to_body(|| view! { <p>{page::CANNOT_START}</p> }),
    }
}

/// Goes to the inputs without an entry in the browser's history: there, back leads to another scenario.
fn skip(event: leptos::ev::MouseEvent) {
    event.prevent_default();
    if let Some(inputs) = document().get_element_by_id(inputs::ID) {
        inputs.scroll_into_view();
        inputs::focus_on(&inputs);
    }
}

fn heat_band() -> AnyView {
    view! {
        <HeatChart />
        <ReadingLine read=heat_readings />
    }
    .into_any()
}

fn bank_band() -> AnyView {
    view! {
        <BankChart />
        <ReadingLine read=bank_readings />
    }
    .into_any()
}

#[component]
fn Page(start: Start) -> impl IntoView {
    let (state, desk) = Desk::new(start);
    provide_context(state);
    provide_context(desk);
    provide_context(Opened::new());
    provide_context(Easel::new(state));
    provide_context(NewVersion::awaited());
    Effect::new(move |_| {
        let title = state
            .document
            .with(|document| page::document_title(&document.name));
        document().set_title(&title);
    });
    view! {
        <a class="skip" href="#inputs" on:click=skip>
            {page::SKIP}
        </a>
        <Masthead />
        <main>
            <Notices />
            <div class="work">
                <section class="day" aria-label=page::THE_DAY>
                    <div class="glance">
                        <Lead />
                        <TemperatureChart />
                        <Strip />
                        <ReadingLine read=temperature_readings />
                    </div>
                    {waits_unseen(".rest", || view! { <Rest /> }.into_any())}
                    {waits_unseen(".then", || view! { <Then /> }.into_any())}
                    <Cautions />
                    {waits_unseen(".drawing", || view! { <CabinDrawing /> }.into_any())}
                    {waits_unseen(".heat-day", heat_band)}
                    {waits_unseen(".bank", bank_band)}
                    {waits_unseen(".samples", || view! { <SampleTable /> }.into_any())}
                </section>
                <Inputs />
            </div>
            {waits_unseen("#figures", || view! { <Figures /> }.into_any())}
            <Decide />
        </main>
    }
}
