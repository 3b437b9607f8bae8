//! The summer as a calendar: a month after the other, a cell for each day, and in it a sign for each window of the need. Signs differ
//! by shape as well as by colour, and those of the night stand on a band.

use crate::format::{CalendarNames, weekday_index};
use crate::text::weather::summer::{Went, day_label};
use noonday_engine::advice::summer::{Summer, SummerDay};
use std::fmt::Write;

/// Width of a cell's picture and height of a sign in it, units.
const WIDTH: f64 = 32.0;
const HEIGHT: f64 = 17.0;

/// A sign with its middle at a place.
pub fn sign(out: &mut String, went: Went, x: f64, y: f64) {
    let _ = match went {
        Went::Fan => write!(
            out,
            "<circle class=\"c-fan\" cx=\"{x}\" cy=\"{y}\" r=\"4.4\"/>"
        ),
        Went::Bank => write!(
            out,
            "<circle class=\"c-bank\" cx=\"{x}\" cy=\"{y}\" r=\"6\"/>"
        ),
        Went::Mains => write!(
            out,
            "<path class=\"c-mains\" d=\"M{} {}h11v11h-11zm0 11l11 -11\"/>",
            x - 5.5,
            y - 5.5
        ),
        Went::Missed => write!(
            out,
            "<path class=\"c-missed\" d=\"M{} {}l10 10m0 -10l-10 10\"/>",
            x - 5.0,
            y - 5.0
        ),
    };
}

/// A sign alone, for the key.
pub fn key_sign(went: Went) -> String {
    let mut out =
        format!("<svg viewBox=\"0 0 {HEIGHT} {HEIGHT}\" aria-hidden=\"true\" focusable=\"false\">");
    sign(&mut out, went, 0.5 * HEIGHT, 0.5 * HEIGHT);
    out.push_str("</svg>");
    out
}

/// The months with their days as buttons, each of which bears the number of its day in the summer.
pub fn calendar(summer: &Summer, names: &CalendarNames) -> String {
    let mut out = String::new();
    let days: Vec<(usize, &SummerDay)> = summer.days.iter().enumerate().collect();
    for month in days.chunk_by(|one, other| one.1.facts.date.month() == other.1.facts.date.month())
    {
        let Some((_, first)) = month.first() else {
            continue;
        };
        let date = first.facts.date;
        let name = names.months.get(usize::from(date.month()) - 1);
        let tag = &names.tag;
        let _ = write!(
            out,
            "<div class=\"month\"><h4 lang=\"{tag}\">{}</h4><div class=\"weekdays\" lang=\"{tag}\" aria-hidden=\"true\">",
            name.map_or("", String::as_str)
        );
        for index in 0..7 {
            let name = names.weekdays.get((names.first + index) % 7);
            let _ = write!(out, "<span>{}</span>", name.map_or("", String::as_str));
        }
        let column = (weekday_index(date) + 7 - names.first) % 7 + 1;
        let _ = write!(out, "</div><div class=\"days\" style=\"--first:{column}\">");
        for (index, day) in month {
            cell(&mut out, summer, *index, day);
        }
        out.push_str("</div></div>");
    }
    out
}

fn cell(out: &mut String, summer: &Summer, index: usize, day: &SummerDay) {
    let height = HEIGHT * day.held.len() as f64;
    let _ = write!(
        out,
        "<button type=\"button\" data-day=\"{index}\" tabindex=\"-1\" aria-pressed=\"false\" aria-label=\"{}\">\
         <span>{}</span><svg viewBox=\"0 0 {WIDTH} {height}\" aria-hidden=\"true\" focusable=\"false\">",
        day_label(summer, day),
        day.facts.date.day()
    );
    for (row, (window, held)) in summer.windows.iter().zip(&day.held).enumerate() {
        let top = HEIGHT * row as f64;
        if window.is_night() {
            let _ = write!(
                out,
                "<rect class=\"c-night\" y=\"{top}\" width=\"{WIDTH}\" height=\"{HEIGHT}\"/>"
            );
        }
        sign(out, Went::of(held), 0.5 * WIDTH, top + 0.5 * HEIGHT);
    }
    out.push_str("</svg></button>");
}

/// The day to which a key leads from another; none where it leads nowhere.
pub fn led_to(key: &str, from: usize, days: usize) -> Option<usize> {
    let last = days.checked_sub(1)?;
    let to = match key {
        "ArrowLeft" => from.checked_sub(1)?,
        "ArrowRight" => from + 1,
        "ArrowUp" => from.checked_sub(7)?,
        "ArrowDown" => from + 7,
        "Home" => 0,
        "End" => last,
        _ => return None,
    };
    (to <= last).then_some(to)
}

#[cfg(test)]
mod tests {
    use super::*;
    use noonday_engine::advice::summer::SummerSearch;
    use noonday_engine::scenario::{Scenario, example};
    use noonday_engine::weather::invented_summer;

    fn names() -> CalendarNames {
        let english = |names: &str| names.split(' ').map(str::to_owned).collect();
        CalendarNames {
            tag: "en".to_owned(),
            months: english(
                "January February March April May June July August September October November December",
            ),
            weekdays: english("Mon Tue Wed Thu Fri Sat Sun"),
            first: 6,
        }
    }

    #[test]
    fn each_day_has_a_cell_with_a_sign_for_each_window() {
        let weather = invented_summer().unwrap().starting_on(6, 28).unwrap();
        let scenario = Scenario::new(example()).unwrap();
        let mut search = SummerSearch::new(&scenario, &weather, 6).unwrap();
        while !search.step().unwrap() {}
        let html = calendar(search.found(), &names());
        assert_eq!(html.matches("<button").count(), 6);
        assert_eq!(html.matches("<h4").count(), 2);
        let signs = ["c-fan", "c-bank", "c-mains", "c-missed"];
        let count: usize = signs.iter().map(|sign| html.matches(sign).count()).sum();
        assert_eq!(count, 12);
        assert_eq!(html.matches("c-night").count(), 6);
        // 28 June 2026 is a Sunday, the first day of that week; 1 July is a Wednesday.
        assert!(
            html.contains("--first:1\"") && html.contains("--first:4\""),
            "{html}"
        );
    }

    #[test]
    fn arrow_keys_lead_through_the_days_and_not_beyond() {
        assert_eq!(led_to("ArrowRight", 3, 92), Some(4));
        assert_eq!(led_to("ArrowUp", 3, 92), None);
        assert_eq!(led_to("ArrowDown", 85, 92), None);
        assert_eq!(led_to("End", 3, 92), Some(91));
        assert_eq!(led_to("x", 3, 92), None);
        assert_eq!(led_to("End", 0, 0), None);
    }
}
