//! The page of Noonday: shows a consult and asks for it; the engine decides.

mod answer;
mod charts;
mod decide;
mod desk;
mod format;
mod inputs;
mod live;
mod share_link;
mod state;
mod storage;
mod text;
mod widgets;
mod worker;

use answer::{Cautions, Figures, Lead, Rest, Then};
use charts::{BankChart, Easel, ReadingLine, SampleTable, Strip, TemperatureChart};
use decide::Decide;
use desk::{Desk, Start};
use inputs::{Inputs, Opened};
use leptos::prelude::*;
use text::charts::{bank_readings, temperature_readings};
use text::page;
use widgets::{Masthead, Notices};

fn main() {
    if worker::serve_if_worker() {
        return;
    }
    match Start::read() {
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

#[component]
fn Page(start: Start) -> impl IntoView {
    let (state, desk) = Desk::new(start);
    provide_context(state);
    provide_context(desk);
    provide_context(Opened::new());
    provide_context(Easel::new(state));
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
                    <Rest />
                    <Then />
                    <Cautions />
                    <BankChart />
                    <ReadingLine read=bank_readings />
                    <SampleTable />
                </section>
                <Inputs />
            </div>
            <Figures />
            <Decide />
        </main>
    }
}
