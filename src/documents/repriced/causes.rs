//! Why: the largest causes over all quotes, and the rest in one row.

use crate::documents::views::office::reprice::Together;
use crate::documents::views::reprice_page::CauseRow;
use crate::values::Money;

/// Causes that get a row of their own; the others share one.
const ALONE: usize = 12;

/// The largest causes in the order they are told, one row for all others, and the sum.
pub(super) fn told(causes: Vec<Together>) -> Vec<CauseRow> {
    let sum: Money = causes.iter().map(|cause| cause.by).sum();
    let (shown, others) = parted(causes);
    let mut rows: Vec<CauseRow> = Vec::new();
    let mut before = "";
    for cause in &shown {
        let first = before != cause.group;
        rows.push(CauseRow {
            kind: if first && !before.is_empty() {
                "group"
            } else {
                "plain"
            }
            .to_owned(),
            group: if first {
                heading(cause.group)
            } else {
                String::new()
            },
            cause: cause.title.clone(),
            class: cause.class.to_owned(),
            quotes: match cause.quotes {
                1 => "1 quote".to_owned(),
                many => format!("{many} quotes"),
            },
            sum: cause.by.plain(),
        });
        before = cause.group;
    }
    let last = |kind: &str, group: String, sum: Money| CauseRow {
        kind: kind.to_owned(),
        group,
        cause: String::new(),
        class: String::new(),
        quotes: String::new(),
        sum: sum.plain(),
    };
    if !others.is_empty() {
        let rest = others.iter().map(|cause| cause.by).sum();
        let name = format!("{} other causes", others.len());
        rows.push(last("group", name, rest));
    }
    if !rows.is_empty() {
        rows.push(last("total", "Together".to_owned(), sum));
    }
    rows
}

/// One cause alone is no rest: it stands by itself.
fn parted(causes: Vec<Together>) -> (Vec<Together>, Vec<Together>) {
    if causes.len() <= ALONE + 1 {
        return (causes, Vec::new());
    }
    let mut sizes: Vec<(i64, usize)> = causes
        .iter()
        .enumerate()
        .map(|(at, cause)| (-cause.by.as_cents().abs(), at))
        .collect();
    sizes.sort_unstable();
    let alone: Vec<usize> = sizes[..ALONE].iter().map(|(_, at)| *at).collect();
    let (shown, others): (Vec<_>, Vec<_>) = causes
        .into_iter()
        .enumerate()
        .partition(|(at, _)| alone.contains(at));
    let causes = |parted: Vec<(usize, Together)>| parted.into_iter().map(|(_, cause)| cause);
    (causes(shown).collect(), causes(others).collect())
}

fn heading(group: &str) -> String {
    let mut letters = group.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().collect::<String>() + letters.as_str()
    })
}
