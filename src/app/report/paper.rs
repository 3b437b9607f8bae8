//! The report as the text of two sheets. It is text and not views so that it is there at once when the browser prints, and so that
//! it can be tested without one. Everything that somebody wrote is escaped.

use super::day;
use crate::charts::vector::escaped;
use crate::decide::Findings;
use crate::text::answer::{Answer, answer};
use crate::text::ledger::path_name;
use crate::text::{Voice, decide, report as text};
use noonday_engine::advice::{Advice, Package};
use noonday_engine::quantity::sort_few;
use noonday_engine::scenario::ScenarioDocument;
use noonday_engine::simulation::HeatPath;
use std::fmt::Write;

/// Paths that have a bar.
const BARS: usize = 9;
/// Packages that are told.
const PACKAGES: usize = 5;

/// What the report is made of.
pub(super) struct Facts<'a> {
    pub document: &'a ScenarioDocument,
    pub advice: &'a Advice,
    pub voice: &'a Voice,
    pub findings: &'a Findings,
    /// What would help most, once it is known.
    pub help: Option<String>,
    /// Whether animals are concerned.
    pub animals: bool,
    /// The day on which it is made.
    pub made: String,
    /// The address that opens the scenario again.
    pub address: Option<String>,
    /// The same as a code to look at.
    pub code: Option<String>,
}

/// A text that grows; elements are written by hand, texts of people go through [`escaped`].
struct Page(String);

// Writing into a text cannot fail, which is why what it gives is put aside throughout.
impl Page {
    fn raw(&mut self, html: &str) {
        self.0.push_str(html);
    }

    fn element(&mut self, tag: &str, class: &str, said: &str) {
        let _ = write!(self.0, "<{tag} class=\"{class}\">{}</{tag}>", escaped(said));
    }

    fn list(&mut self, class: &str, said: &[String]) {
        let _ = write!(self.0, "<ul class=\"{class}\">");
        for said in said {
            let _ = write!(self.0, "<li>{}</li>", escaped(said));
        }
        self.raw("</ul>");
    }

    /// Sentences that begin with a word that is set apart.
    fn words(&mut self, class: &str, said: &[(String, String)]) {
        let _ = write!(self.0, "<ul class=\"{class}\">");
        for (word, said) in said {
            let _ = write!(
                self.0,
                "<li><b>{}</b> {}</li>",
                escaped(word),
                escaped(said)
            );
        }
        self.raw("</ul>");
    }

    /// A table: heads, and rows whose first cell names them.
    fn table(&mut self, class: &str, caption: &str, heads: &[&str], rows: &[Vec<String>]) {
        let _ = write!(
            self.0,
            "<table class=\"{class}\"><caption>{}</caption>",
            escaped(caption)
        );
        if !heads.is_empty() {
            self.raw("<thead><tr>");
            for head in heads {
                let _ = write!(self.0, "<th scope=\"col\">{}</th>", escaped(head));
            }
            self.raw("</tr></thead>");
        }
        self.raw("<tbody>");
        for row in rows {
            self.raw("<tr>");
            for (place, cell) in row.iter().enumerate() {
                let (open, close) = if place == 0 {
                    ("th scope=\"row\"", "th")
                } else {
                    ("td", "td")
                };
                let _ = write!(self.0, "<{open}>{}</{close}>", escaped(cell));
            }
            self.raw("</tr>");
        }
        self.raw("</tbody></table>");
    }
}

/// Both sheets.
pub(super) fn paper(facts: &Facts) -> String {
    let mut page = Page(String::new());
    page.raw("<article class=\"paper\"><section class=\"sheet\">");
    first(&mut page, facts);
    foot(&mut page, 1);
    page.raw("</section><section class=\"sheet\">");
    second(&mut page, facts);
    foot(&mut page, 2);
    page.raw("</section></article>");
    page.0
}

fn foot(page: &mut Page, number: usize) {
    page.raw("<footer class=\"foot\">");
    page.element("p", "", text::FOOT);
    page.element("p", "number", &text::page(number));
    page.raw("</footer>");
}

fn first(page: &mut Page, facts: &Facts) {
    let Facts {
        document,
        advice,
        voice,
        ..
    } = facts;
    page.raw("<header class=\"head\"><div>");
    page.element("p", "kind", text::KIND);
    page.element("h1", "", &crate::text::page::shown_name(&document.name));
    let from = text::between(document);
    if !from.is_empty() {
        page.element("p", "between", &from);
    }
    let note = document.note.trim();
    if !note.is_empty() {
        page.element("p", "for", note);
    }
    page.raw("</div>");
    page.element("p", "made", &facts.made);
    page.raw("</header>");
    verdict(page, facts, &answer(advice, voice));
    page.raw("<dl class=\"figures-row\">");
    for [number, what] in text::figures(advice, document, voice) {
        let _ = write!(
            page.0,
            "<div><dt>{}</dt><dd>{}</dd></div>",
            escaped(&what),
            escaped(&number)
        );
    }
    page.raw("</dl>");
    let sampled = facts.findings.sampled.as_deref();
    let _ = write!(
        page.0,
        "<figure class=\"day-on-paper\"><h2>{}</h2><div role=\"img\" aria-label=\"{}\"><div class=\"as-page\">{}</div><div class=\"as-phone\">{}</div></div><figcaption>{}</figcaption></figure>",
        text::DAY,
        escaped(&text::day_described(advice, voice)),
        day::picture((advice, document), sampled, voice, &day::PAGE),
        day::picture((advice, document), sampled, voice, &day::PHONE),
        escaped(text::DAY_KEY)
    );
    page.raw("<div class=\"flow\"><section>");
    page.element("h2", "", text::SITUATION);
    page.words("situation", &text::situation(document, voice));
    page.raw("</section><section class=\"whole\">");
    page.element("h2", "", text::HEAT);
    heat(page, advice, voice);
    page.raw("</section></div>");
}

fn verdict(page: &mut Page, facts: &Facts, said: &Answer) {
    page.raw("<section class=\"verdict\">");
    page.element("p", "says", &said.lead);
    let mut rest = said.rest();
    if let Some(help) = &facts.help {
        rest = format!("{rest} {help}");
    }
    page.element("p", "further", &rest);
    page.raw("</section>");
}

/// Bars of the paths that bring or take most.
fn heat(page: &mut Page, advice: &Advice, voice: &Voice) {
    let mut paths: Vec<(HeatPath, f64)> = HeatPath::ALL
        .into_iter()
        .zip(advice.with_cooler.totals.heat_wh)
        .filter(|(path, heat_wh)| *path != HeatPath::Cooler && heat_wh.abs() >= 1.0)
        .collect();
    sort_few(&mut paths, |one, other| one.1.abs() < other.1.abs());
    paths.truncate(BARS);
    sort_few(&mut paths, |one, other| one.1 < other.1);
    let most = paths
        .iter()
        .map(|(_, heat_wh)| heat_wh.abs())
        .fold(1.0, f64::max);
    page.raw("<table class=\"bars\"><tbody>");
    for (path, heat_wh) in &paths {
        let share = 100.0 * heat_wh.abs() / most;
        let _ = write!(
            page.0,
            "<tr><th scope=\"row\">{}</th><td>{}</td><td class=\"bar-cell\" aria-hidden=\"true\"><svg viewBox=\"0 0 100 8\" preserveAspectRatio=\"none\">{}</svg></td></tr>",
            escaped(path_name(*path)),
            escaped(&voice.units.heat(*heat_wh)),
            bar(share, *heat_wh > 0.0)
        );
    }
    page.raw("</tbody></table>");
    page.element("p", "key", &text::heat_key(advice, voice));
}

/// Solid comes in; what goes out is hatched.
fn bar(share: f64, comes_in: bool) -> String {
    if comes_in {
        return format!("<rect class=\"in\" width=\"{share:.1}\" height=\"8\"/>");
    }
    let mut course = String::new();
    let mut x = 0.5;
    while x < share {
        let _ = write!(course, "M{x:.1} 0V8");
        x += 2.5;
    }
    format!("<path class=\"out\" d=\"{course}\"/>")
}

fn second(page: &mut Page, facts: &Facts) {
    let (document, voice) = (facts.document, facts.voice);
    let sampled = facts.findings.sampled.as_deref();
    considered(page, facts);
    page.raw("<div class=\"two\"><section>");
    page.element("h2", "", text::EXPECT);
    page.list(
        "points",
        &text::expected(facts.advice, document, sampled, voice),
    );
    page.raw("</section><section>");
    page.element("h2", "", text::EXPECT_NOT);
    page.list("points", &text::not_expected(document, voice));
    page.raw("</section></div><section class=\"cautions-on-paper\">");
    page.element("h2", "", text::CAUTIONS);
    let mut cautions = text::cautions(document, facts.animals);
    let failures = facts.findings.failures.as_deref().unwrap_or_default();
    if let Some(failing) = text::failing(failures, document, voice) {
        cautions.insert(1, (text::WHEN_IT_FAILS.to_owned(), failing));
    }
    page.words("points columns-two", &cautions);
    page.raw("</section><div class=\"two wide-left\"><section>");
    page.element("h2", "", text::RESTS);
    let rows: Vec<Vec<String>> = text::assumptions(document, sampled, voice)
        .into_iter()
        .map(Vec::from)
        .collect();
    page.table("rests", text::RESTS_CAPTION, &[], &rows);
    page.element("p", "key", &text::counted(document, sampled, voice));
    page.raw("</section><section class=\"reopen\">");
    reopen(page, facts);
    page.raw("</section></div>");
}

fn considered(page: &mut Page, facts: &Facts) {
    let (findings, voice) = (facts.findings, facts.voice);
    page.element("h2", "", text::CONSIDERED);
    page.raw("<div class=\"two\"><section>");
    match &findings.alternatives {
        Some(found) => {
            let outcomes = found
                .with_cooler
                .iter()
                .map(|outcome| (decide::WITH_COOLER, outcome))
                .chain(found.without_cooler.iter().map(|(alternative, outcome)| {
                    (decide::alternative_name(*alternative), outcome)
                }));
            let rows: Vec<Vec<String>> = outcomes
                .map(|(name, outcome)| {
                    let kept = decide::kept(outcome);
                    vec![name.to_owned(), kept, decide::margin(outcome, voice)]
                })
                .collect();
            page.table("", text::INSTEAD, &decide::NEEDED_HEADS, &rows);
            page.element("p", "after", &decide::needed(found));
        }
        None => page.element("p", "after", text::NOT_YET),
    }
    if let Some(Some(sizing)) = &findings.sizing {
        page.element("p", "after spare", &text::sizes(sizing, voice));
    }
    page.raw("</section><section>");
    match &findings.packages {
        Some(found) if !found.front.is_empty() => {
            let rows: Vec<Vec<String>> = spread(&found.front)
                .into_iter()
                .map(|package| {
                    let [cost, left, name] = decide::package_line(package, voice);
                    vec![name, left, cost]
                })
                .collect();
            page.table(
                "packages-on-paper",
                text::PACKAGES,
                &text::PACKAGE_HEADS,
                &rows,
            );
        }
        Some(_) => page.element("p", "after", text::NO_PACKAGES),
        None => page.element("p", "after", text::NOT_YET),
    }
    page.raw("</section></div>");
}

/// A few of many, from the cheapest to the best.
fn spread(front: &[Package]) -> Vec<&Package> {
    let last = front.len().saturating_sub(1);
    let mut places: Vec<usize> = (0..PACKAGES)
        .map(|step| (step * last + (PACKAGES - 1) / 2) / (PACKAGES - 1))
        .collect();
    places.dedup();
    places
        .into_iter()
        .filter_map(|place| front.get(place))
        .collect()
}

fn reopen(page: &mut Page, facts: &Facts) {
    let Some(address) = &facts.address else {
        return;
    };
    page.element("h2", "", text::REOPEN);
    let note = match &facts.code {
        Some(code) => {
            let _ = write!(
                page.0,
                "<div class=\"paper-code\" aria-hidden=\"true\">{code}</div>"
            );
            text::REOPEN_NOTE
        }
        None => text::NO_CODE,
    };
    let _ = write!(
        page.0,
        "<p class=\"key\"><a href=\"{}\">{}</a>. {}</p>",
        escaped(address),
        text::LINK,
        escaped(note)
    );
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::format::UnitSystem;
    use noonday_engine::advice::advise;
    use noonday_engine::scenario::{Scenario, example};

    #[test]
    fn what_somebody_wrote_is_text_and_nothing_is_called_safe() {
        let mut document = example();
        document.name = "<script>x</script>".to_owned();
        document.note = "for \"A & B\"".to_owned();
        let advice = advise(&Scenario::new(document.clone()).unwrap()).unwrap();
        let voice = Voice::new(&document, UnitSystem::Metric);
        let html = paper(&Facts {
            document: &document,
            advice: &advice,
            voice: &voice,
            findings: &Findings::default(),
            help: None,
            animals: true,
            made: "25 November 2026".to_owned(),
            address: Some("https://a.example/\"><b>#v=1".to_owned()),
            code: None,
        });
        assert!(!html.contains("<script") && !html.contains("\"><b>"));
        assert!(html.contains("for &quot;A &amp; B&quot;"));
        assert!(html.contains("Heat kills children and animals"));
        assert!(html.contains(text::NOT_YET));
        assert_eq!(html.matches("class=\"sheet\"").count(), 2);
        assert!(!html.to_lowercase().contains("safe"));
    }
}
