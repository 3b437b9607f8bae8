//! What views follow, in a few types: each closure type of its own would be compiled into a view of its own, and the page
//! would be a third larger.

use leptos::ev::{Event, MouseEvent};
use leptos::prelude::*;

/// Text that follows signals.
pub type Words = Box<dyn FnMut() -> String + Send>;
/// A yes or no that follows signals.
pub type Flag = Box<dyn FnMut() -> bool + Send>;
/// A part of a view that follows signals, and may be absent.
pub type Part = Box<dyn FnMut() -> Option<AnyView> + Send>;

/// Text that follows signals.
pub fn words(text: impl FnMut() -> String + Send + 'static) -> Words {
    Box::new(text)
}

/// A yes or no that follows signals.
pub fn flag(holds: impl FnMut() -> bool + Send + 'static) -> Flag {
    Box::new(holds)
}

/// A part of a view that follows signals, and may be absent.
pub fn part(view: impl FnMut() -> Option<AnyView> + Send + 'static) -> Part {
    Box::new(view)
}

/// What is done at a click.
pub fn click(mut act: impl FnMut() + 'static) -> Box<dyn FnMut(MouseEvent)> {
    Box::new(move |_| act())
}

/// What is done with the value of a control.
pub fn with_value(mut take: impl FnMut(String) + 'static) -> Box<dyn FnMut(Event)> {
    Box::new(move |event| take(event_target_value(&event)))
}

/// What is done at any other event.
pub fn at_event(mut act: impl FnMut() + 'static) -> Box<dyn FnMut(Event)> {
    Box::new(move |_| act())
}

/// A value derived from signals, and passed on only when it differs.
pub fn derived<T: PartialEq + Send + Sync + 'static>(
    value: impl Fn() -> T + Send + Sync + 'static,
) -> Memo<T> {
    let value: Box<dyn Fn() -> T + Send + Sync> = Box::new(value);
    Memo::new(move |_| value())
}
