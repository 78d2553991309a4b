//! The page that hands a finished job over: what is looked at together, what is still to come, dates.

use crate::documents::offering;
use crate::documents::views::bill::{ClosingView, DatedRow};
use crate::office::record::Closing;
use crate::values::Day;

/// What both look at; the owner's promises follow.
const LOOKED_AT: [&str; 4] = [
    "Every slab, edge, step and joint, dry and swept.",
    "Where the water goes, with a bucket or a hose.",
    "Covers and lids: flush, firm, and the right one.",
    "What was dug, moved or driven over: put back.",
];

pub(super) fn page(closing: &Closing) -> ClosingView {
    let poured = closing.poured.0;
    ClosingView {
        looked_at: LOOKED_AT.map(str::to_owned).to_vec(),
        promises: closing
            .promises
            .iter()
            .map(|one| offering::phrases::printed(one))
            .collect(),
        to_come: to_come(closing),
        dates: vec![
            dated("Poured", poured.long()),
            dated(
                if closing.is_sealed_by_us {
                    "We seal it"
                } else {
                    "A sealer may go on"
                },
                format!("from {}, when dry", closing.seal.0.long()),
            ),
            dated(
                "The first de-icer",
                format!("not before the winter of {}", second_winter(poured)),
            ),
        ],
    }
}

fn to_come(closing: &Closing) -> Vec<String> {
    let mut lines: Vec<String> = closing
        .lids
        .iter()
        .map(|lid| format!("The lid of the {lid} is on order. A temporary one stands; please leave it. We come back to set it."))
        .collect();
    if closing.is_sealed_by_us {
        lines.push(format!(
            "We come back to seal it, from {} and when it is dry.",
            closing.seal.0.long()
        ));
    }
    if lines.is_empty() {
        lines.push("Nothing: the work is complete.".to_owned());
    }
    lines
}

fn dated(what: &str, when: String) -> DatedRow {
    DatedRow {
        what: what.to_owned(),
        when,
    }
}

/// The second winter after a pour, with a dash; a pour until March still has that winter as its first.
fn second_winter(poured: Day) -> String {
    use chrono::Datelike as _;
    let date = poured.date();
    let first = if date.month() <= 3 {
        date.year() - 1
    } else {
        date.year()
    };
    format!("{}\u{2013}{:02}", first + 1, (first + 2) % 100)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_second_winter_counts_from_the_pour() {
        for (poured, winter) in [
            ("2026-06-15", "2027\u{2013}28"),
            ("2026-12-20", "2027\u{2013}28"),
            ("2027-03-31", "2027\u{2013}28"),
            ("2027-04-01", "2028\u{2013}29"),
            ("2098-06-01", "2099\u{2013}00"),
        ] {
            assert_eq!(second_winter(poured.parse().unwrap()), winter, "{poured}");
        }
    }
}
