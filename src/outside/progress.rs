//! A schedule of values from its file to what a progress invoice asks.

use std::path::Path;

use super::files;
use crate::input::progress;
use crate::office::account::Account;
use crate::office::chain::hash;
use crate::office::progress as office;
use crate::office::record::{Figures, Input, InvoiceLine, Progress};
use crate::office::text::Cents;
use crate::reading::{Problem, Problems, Sources, yaml};
use crate::values::{Day, Money};

/// Reads the schedule; answers its text as a record keeps it, where the job stands, what is asked.
pub fn read(
    file: &Path,
    account: &Account<'_>,
    day: Day,
    sources: &mut Sources,
    problems: &mut Problems,
) -> Option<(Input, Progress, Figures)> {
    let id = files::read(file, sources, problems)?;
    let node = yaml::read(id, sources, problems)?;
    let written = progress::read(&node, problems)?;
    let done = office::progress(&written, account, day, problems)?;
    let figures = office::asked(&done, account)?;
    if figures.total.0 < Money::ZERO {
        problems.push(
            Problem::new(
                "below-billed",
                format!(
                    "{} less is earned to date than was billed",
                    -figures.total.0
                ),
            )
            .at(written.place)
            .help("where too much was billed, `flatwork credit` takes it off an invoice"),
        );
        return None;
    }
    let text = sources.text(id).to_owned();
    let input = Input {
        what: "schedule of values".to_owned(),
        name: sources.name(id).to_owned(),
        sha256: hash(text.as_bytes()),
        text,
    };
    Some((input, done, figures))
}

/// What the record says an invoice is made of.
pub fn lines(done: &Progress, account: &Account<'_>) -> Vec<InvoiceLine> {
    let line = |says: &str, price: Money| InvoiceLine {
        says: says.to_owned(),
        price: Cents(price),
    };
    let mut lines = vec![line("Earned to date", done.earned.0)];
    let billed = account.billed().price.0;
    if !billed.is_zero() {
        lines.push(line("Billed before", -billed));
    }
    lines
}
