//! The long work, done beside the page by a second copy of the program in a worker.
//!
//! `message` is what the two say to each other, `work` the order of the work and its slices, `inside` serves requests in the
//! worker, `outside` is the page's hold on it, `asker` on those that follow one another. A request replaces the one before: between
//! two slices the worker looks for another, so it is never started anew. Every answer bears the number of its request, and the page
//! drops what answers another.

mod asker;
mod inside;
mod message;
mod outside;
mod work;

pub use asker::Asker;
pub use inside::serve_if_worker;
pub use message::{Answer, Extent, Found, Lesson, Request, SummerAsked, SummerWeather};
