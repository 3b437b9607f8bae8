//! The page of Noonday: shows a consult and asks for it; the engine decides.

mod answer;
mod building;
mod charts;
mod comparing;
mod decide;
mod desk;
mod drawing;
mod dropped;
mod files;
mod format;
mod inputs;
mod live;
mod offline;
#[cfg(test)]
mod opening;
mod proving;
mod report;
mod save;
#[cfg(test)]
mod schema;
mod share_link;
mod sight;
mod speed;
mod state;
mod stopped;
mod storage;
mod text;
mod weather;
mod widgets;
mod worker;

use answer::{Cautions, Figures, Lead, Rest, Then};
use building::Building;
use charts::{
    BankChart, Easel, HeatChart, ReadingLine, SampleTable, Strip, TakeAlong, TemperatureChart,
};
use comparing::SideBySide;
use decide::{Decide, Decided};
use desk::{Desk, Start};
use drawing::CabinDrawing;
use dropped::Dropped;
use files::{Arrivals, Arriving};
use inputs::{Inputs, Opened};
use leptos::prelude::*;
use offline::NewVersion;
use proving::Proving;
use report::ClientReport;
use sight::{Arrived, comes_later, waits_unseen};
use std::time::Duration;
use text::charts::{bank_readings, temperature_readings};
use text::heat::heat_readings;
use text::page;
use weather::Weather;
use widgets::{Masthead, Notices};

fn main() {
    if worker::serve_if_worker() {
        return;
    }
    stopped::stand_by();
    // Each in a turn of its own, so that the browser can draw and take touches in between.
    in_turn(|| {
        let start = Start::read();
        in_turn(move || show(start));
    });
}

fn in_turn(act: impl FnOnce() + 'static) {
    set_timeout(act, Duration::ZERO);
}

fn show(start: Option<Start>) {
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

fn cabin() -> AnyView {
    waits_unseen(".drawing", || view! { <CabinDrawing /> }.into_any())
}

fn heat_band() -> AnyView {
    waits_unseen(".heat-day", || {
        view! {
            <HeatChart />
            <ReadingLine read=heat_readings />
        }
        .into_any()
    })
}

fn bank_band() -> AnyView {
    waits_unseen(".bank", || {
        view! {
            <BankChart />
            <ReadingLine read=bank_readings />
            <SampleTable />
            <TakeAlong />
        }
        .into_any()
    })
}

#[component]
fn Page(start: Start) -> impl IntoView {
    let (state, desk) = Desk::new(start);
    provide_context(state);
    provide_context(desk);
    let dropped = Dropped::listen();
    provide_context(dropped);
    provide_context(Arrivals::new(desk, dropped));
    provide_context(Decided::not_yet());
    provide_context(Opened::new());
    provide_context(Easel::new(state));
    provide_context(NewVersion::awaited());
    provide_context(Arrived::begin());
    Effect::new(move |_| {
        let title = state.document.with(|document| match desk.report.get() {
            true => text::report::title(&document.name),
            false => page::document_title(&document.name),
        });
        document().set_title(&title);
    });
    view! {
        <a class="skip" href="#inputs" on:click=skip>
            {page::SKIP}
        </a>
        <Masthead />
        <main>
            <Notices />
            <Arriving />
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
                    {comes_later(1, cabin)}
                    {comes_later(2, heat_band)}
                    {comes_later(3, bank_band)}
                </section>
                {comes_later(4, || view! { <Inputs /> }.into_any())}
            </div>
            {comes_later(6, || waits_unseen("#figures", || view! { <Figures /> }.into_any()))}
            {comes_later(7, || view! { <Decide /> }.into_any())}
            {comes_later(8, || waits_unseen("#weather", || view! { <Weather /> }.into_any()))}
            {comes_later(9, || waits_unseen("#building", || view! { <Building /> }.into_any()))}
            {comes_later(10, || waits_unseen("#compare", || view! { <SideBySide /> }.into_any()))}
            {comes_later(11, || waits_unseen("#proving", || view! { <Proving /> }.into_any()))}
        </main>
        <ClientReport />
    }
}
