//! 12, 24 and 48 V, direct and through an inverter.

use super::{Built, built, shown};
use crate::state::AppState;
use crate::text::building as text;
use crate::widgets::{Row, paragraph, plain, sheet, together};
use leptos::prelude::*;
use noonday_engine::advice::voltages::feeds;

pub(super) fn view(state: AppState) -> AnyView {
    shown(built(state), table)
}

fn table(built: &Built) -> Option<AnyView> {
    let feeds = feeds(&built.document).ok()?;
    let voice = &built.voice;
    let Some(overload) = text::overload_said(&feeds, voice) else {
        return Some(paragraph("said", text::VOLTAGES_NONE.to_owned()));
    };
    let rows: Vec<Row> = feeds
        .iter()
        .map(|feed| (plain(text::feed_name(feed)), text::feed_cells(feed, voice)))
        .collect();
    together(vec![
        sheet(text::VOLTAGES_CAPTION, &text::VOLTAGES_HEADS, rows),
        paragraph("said", overload),
        paragraph("note", text::VOLTAGES_NOTE.to_owned()),
        paragraph("caution", text::VOLTAGES_CAUTION.to_owned()),
    ])
}
