//! Why: the largest causes over all quotes, and the rest in one row.

use crate::costing::outcome::{CauseGroup, CommonCause};
use crate::documents::offering::phrases::capital;
use crate::documents::views::office::counted;
use crate::documents::views::office::reprice::{class, group};
use crate::documents::views::reprice_page::CauseRow;
use crate::values::Money;

/// Causes that get a row of their own, the others share one: as many as fit on the page, and
/// the most where even the fewest do not.
const ALONE: [usize; 4] = [12, 8, 5, 12];

/// The table with more causes and with fewer; none where nothing changed.
pub(super) fn versions(causes: &[CommonCause]) -> Vec<Vec<CauseRow>> {
    if causes.is_empty() {
        return Vec::new();
    }
    ALONE.map(|alone| told(causes, alone)).into()
}

/// The largest causes in the order they are told, one row for all others, and the sum.
fn told(causes: &[CommonCause], alone: usize) -> Vec<CauseRow> {
    let sum: Money = causes.iter().map(|cause| cause.by).sum();
    let (shown, others) = parted(causes, alone);
    let mut rows: Vec<CauseRow> = Vec::new();
    let mut before: Option<CauseGroup> = None;
    let row = |kind: &'static str, group: String, sum: Money| CauseRow {
        kind,
        group,
        cause: String::new(),
        class: "",
        quotes: String::new(),
        sum: sum.plain(),
    };
    for cause in shown {
        let first = before != Some(cause.group);
        let (kind, heading) = match (first, before) {
            (true, Some(_)) => ("group", capital(group(cause.group))),
            (true, None) => ("plain", capital(group(cause.group))),
            (false, _) => ("plain", String::new()),
        };
        rows.push(CauseRow {
            cause: cause.title.clone(),
            class: class(cause),
            quotes: counted(cause.quotes, "quote", "quotes"),
            ..row(kind, heading, cause.by)
        });
        before = Some(cause.group);
    }
    if !others.is_empty() {
        let rest = others.iter().map(|cause| cause.by).sum();
        rows.push(row("group", format!("{} other causes", others.len()), rest));
    }
    if !rows.is_empty() {
        rows.push(row("total", "Together".to_owned(), sum));
    }
    rows
}

/// The largest, in the order they are told, and the others. One cause alone is no rest: it
/// stands by itself.
fn parted(causes: &[CommonCause], most: usize) -> (Vec<&CommonCause>, Vec<&CommonCause>) {
    let mut largest: Vec<usize> = (0..causes.len()).collect();
    largest.sort_by_key(|at| std::cmp::Reverse(causes[*at].by.as_cents().abs()));
    if most + 1 < causes.len() {
        largest.truncate(most);
    }
    let of = |shown: bool| {
        let all = causes.iter().enumerate();
        let of = all.filter(|(at, _)| largest.contains(at) == shown);
        of.map(|(_, cause)| cause).collect()
    };
    (of(true), of(false))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_version_names_the_largest_and_adds_up() {
        let causes: Vec<CommonCause> = (1..=20)
            .map(|cents| {
                CommonCause::of(
                    CauseGroup::Prices,
                    &format!("cause {cents}"),
                    Money::cents(-cents),
                )
            })
            .collect();
        let sizes = [12, 8, 5, 12];
        for (rows, alone) in versions(&causes).iter().zip(sizes) {
            assert_eq!(rows.len(), alone + 2);
            let named: Vec<&str> = rows[..alone].iter().map(|row| &*row.cause).collect();
            assert!(
                named.contains(&"cause 20") && !named.contains(&"cause 1"),
                "{named:?}"
            );
            // 1 to 20 are 210; the largest are 20, 19 and so on (by hand).
            let rest: usize = (1..=20 - alone).sum();
            assert_eq!(
                rows[alone].sum,
                format!("-{}.{:02}", rest / 100, rest % 100)
            );
            assert_eq!(rows[alone].group, format!("{} other causes", 20 - alone));
            assert_eq!(rows[alone + 1].sum, "-2.10");
        }
        // One cause alone is no rest.
        let few = versions(&causes[..6]);
        assert_eq!(few.iter().map(Vec::len).collect::<Vec<_>>(), [7, 7, 7, 7]);
        let all = few.iter().flatten();
        assert!(all.clone().all(|row| !row.group.ends_with("other causes")));
        assert!(versions(&[]).is_empty());
    }
}
