//! Tables and paragraphs, all of one make.

use leptos::prelude::*;

/// A row: its name, which may hold a control, and its cells.
pub type Row = (AnyView, Vec<String>);

/// A table with a caption that is only heard, heads of columns, and rows that begin with their name.
pub fn sheet(caption: &str, heads: &[&str], rows: Vec<Row>) -> AnyView {
    let heads = heads
        .iter()
        .map(|head| view! { <th scope="col">{(*head).to_owned()}</th> }.into_any())
        .collect_view();
    let rows = rows
        .into_iter()
        .map(|(name, cells)| {
            let cells = cells
                .into_iter()
                .map(|cell| view! { <td>{cell}</td> }.into_any())
                .collect_view();
            view! {
                <tr>
                    <th scope="row">{name}</th>
                    {cells}
                </tr>
            }
            .into_any()
        })
        .collect_view();
    view! {
        <table>
            <caption class="visually-hidden">{caption.to_owned()}</caption>
            <thead>
                <tr>{heads}</tr>
            </thead>
            <tbody>{rows}</tbody>
        </table>
    }
    .into_any()
}

/// A name that is only text.
pub fn plain(name: impl Into<String>) -> AnyView {
    name.into().into_any()
}

/// A paragraph.
pub fn paragraph(class: &'static str, text: String) -> AnyView {
    view! { <p class=class>{text}</p> }.into_any()
}

/// Views one after the other.
pub fn together(views: Vec<AnyView>) -> Option<AnyView> {
    Some(views.into_any())
}
