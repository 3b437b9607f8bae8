//! Wording of the job: parts, price, work in order.

use super::{amps, circuit_name, length, size};
use crate::format::csv_text;
use crate::text::{Voice, listed};
use noonday_engine::advice::job::{Job, JobLine, Part, WorkStep};
use noonday_engine::scenario::Dimension;

/// Line that opens to it.
pub const JOB: &str = "Parts, price and order of work";
/// Caption of the table.
pub const PARTS_CAPTION: &str = "Parts, with their prices";
/// Its columns.
pub const PARTS_HEADS: [&str; 3] = ["Part", "How much", "Price"];
/// Button: save the list.
pub const SAVE_CSV: &str = "Save the parts as CSV";
/// Button: copy the list.
pub const COPY_PARTS: &str = "Copy the parts";
/// Said once it is copied.
pub const PARTS_COPIED: &str = "The parts are in the clipboard.";
/// Where the browser does not allow it.
pub const PARTS_NOT_COPIED: &str =
    "This browser does not let the page copy; the file holds the same.";
/// Button: to the prices.
pub const TO_PRICES: &str = "Change prices, hours, tax and markup";
/// Name of the file.
pub const CSV_NAME: &str = "noonday-parts.csv";
/// Under the table.
pub const PARTS_NOTE: &str = "Prices are the scenario’s own and invented to begin with; nothing is looked up. Cable is counted out and back.";
/// Heading of the work.
pub const ORDER: &str = "Order of work";
/// Marks a step at which work stops.
pub const HOLD: &str = "Hold:";
/// Under it.
pub const ORDER_NOTE: &str = "At each “hold” nothing goes on until that is certain. Where a licence is asked for, its holder does it or signs for it.";

/// Name of a part.
pub fn part_name(part: &Part, voice: &Voice) -> String {
    match part {
        Part::Cooler => "Cooler".to_owned(),
        Part::Bank => "Bank".to_owned(),
        Part::Panels => "Panels with mounting".to_owned(),
        Part::DcDc => "DC-DC charger".to_owned(),
        Part::Inverter => "Inverter".to_owned(),
        Part::Fan => "Roof fan".to_owned(),
        Part::Insulation => "Insulation".to_owned(),
        Part::Covers => "Window covers".to_owned(),
        Part::Cable(kind, conductor) => {
            format!("Cable {}, {}", size(conductor, voice), circuit_name(*kind))
        }
        Part::Fuse(kind, rating_a) => {
            format!("Fuse {}, {}", amps(*rating_a, voice), circuit_name(*kind))
        }
        Part::PackFuses => "Fuse at each pack".to_owned(),
        Part::SmallParts => "Lugs, sealant, small parts".to_owned(),
    }
}

/// How much of a part.
pub fn part_amount(line: &JobLine, voice: &Voice) -> String {
    let quantity = |dimension| voice.units.quantity(dimension, line.quantity);
    match line.part {
        Part::Bank => quantity(Dimension::Charge),
        Part::Panels | Part::Inverter => quantity(Dimension::ElectricPower),
        Part::DcDc => quantity(Dimension::Current),
        Part::Covers => quantity(Dimension::Area),
        Part::Cable(..) => length(line.quantity, voice),
        Part::Insulation | Part::SmallParts => "as needed".to_owned(),
        Part::Cooler | Part::Fan | Part::Fuse(..) | Part::PackFuses => {
            voice.units.number(line.quantity, 0)
        }
    }
}

fn money(price: f64, voice: &Voice) -> String {
    voice.units.money(price, &voice.currency)
}

/// Rows of the table: parts, then sums.
pub fn part_rows(job: &Job, voice: &Voice) -> Vec<(String, Vec<String>)> {
    let row =
        |name: &str, amount: String, price| (name.to_owned(), vec![amount, money(price, voice)]);
    let mut rows: Vec<(String, Vec<String>)> = job
        .parts
        .iter()
        .map(|line| {
            row(
                &part_name(&line.part, voice),
                part_amount(line, voice),
                line.price,
            )
        })
        .collect();
    let hours = voice.units.quantity(Dimension::WorkHours, job.labour_h);
    rows.push(row("Markup on parts", String::new(), job.markup));
    rows.push(row("Work", hours, job.labour));
    rows.push(row("Tax", String::new(), job.tax));
    rows.push(row("Together", String::new(), job.total));
    rows
}

/// The list as comma-separated values, numbers with a point and without groups, so that every program reads them.
pub fn parts_csv(job: &Job, voice: &Voice) -> String {
    let head = ["Part", "How much", "Price", "Currency"]
        .map(str::to_owned)
        .to_vec();
    let line = |name: String, amount: String, price: f64| {
        vec![name, amount, format!("{price:.2}"), voice.currency.clone()]
    };
    let mut rows = vec![head];
    for part in &job.parts {
        let amount = part_amount(part, voice);
        rows.push(line(part_name(&part.part, voice), amount, part.price));
    }
    let hours = voice.units.quantity(Dimension::WorkHours, job.labour_h);
    rows.push(line(
        "Markup on parts".to_owned(),
        String::new(),
        job.markup,
    ));
    rows.push(line("Work".to_owned(), hours, job.labour));
    rows.push(line("Tax".to_owned(), String::new(), job.tax));
    rows.push(line("Together".to_owned(), String::new(), job.total));
    csv_text(&rows).replace('\u{a0}', " ")
}

/// Circuits that are not priced.
pub fn unpriced(job: &Job) -> Option<String> {
    let names: Vec<String> = job
        .without_cable
        .iter()
        .map(|kind| circuit_name(*kind).to_owned())
        .collect();
    (!names.is_empty()).then(|| {
        format!(
            "Not in the price, since no single cable will do: {}.",
            listed(&names)
        )
    })
}

/// What is done in a step, with the caution that belongs there.
pub fn work_step(step: WorkStep) -> &'static str {
    match step {
        WorkStep::Rules => {
            "read the local codes and the makers’ instructions: what may go on the roof, who may wire, what has to be inspected."
        }
        WorkStep::BothSides => {
            "look at both sides of the skin before cutting: ribs, wiring, hoses, tanks, airbags. Disconnect the vehicle’s battery. Stand on a firm platform, never on the roof’s edge."
        }
        WorkStep::Cut => {
            "Mark, drill the corners, cut between ribs, never through one. Eye and ear protection, gloves; chips are caught, for they rust. Sparks and foam or wool do not go together: take insulation out of the way, keep an extinguisher at hand."
        }
        WorkStep::TreatEdge => {
            "Deburr the edge, prime it and let it dry: a bare edge rusts under any sealant."
        }
        WorkStep::Seal => {
            "Seal with what stays elastic and fits the paint, on clean dry surfaces; slope it so that water runs off. Pour water over it before the lining is closed."
        }
        WorkStep::Support => {
            "Frame the opening and carry the load on ribs or rails, not on the skin. Lift with two people. Keep within the maker’s roof load for driving, with everything on the roof counted."
        }
        WorkStep::HoldBank => {
            "Hold the bank down: not more than 1 in (25 mm) of movement under twice its weight or 90 lbf, whichever is less (33 CFR 183.420, for boats; a road vehicle that crashes asks for more). Vent lead-acid cells outdoors."
        }
        WorkStep::LayCable => {
            "Lay cable with grommets through every edge, clear of heat and moving parts, in conduit where it may chafe. Connect nothing to the bank yet."
        }
        WorkStep::FuseFirst => {
            "set the fuse at the bank first, within 7 in (18 cm), then every other; leave them open or out. Rings and watches off, tools insulated."
        }
        WorkStep::Mains => {
            "mains voltage, shore inlet, inverter output, earth and residual-current device: a licensed electrician."
        }
        WorkStep::ConnectLast => {
            "Measure polarity at every end, then connect the bank last, plus before minus, fuse in last."
        }
        WorkStep::Test => {
            "test under load before the lining is closed: voltage at the bank and at the cooler while it starts, every lug by hand and by thermometer after half an hour, every fuse holder too."
        }
    }
}
