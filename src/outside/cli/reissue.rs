//! Revisions of quotes on record at other prices: the same work, a new day, a new good-until.

use std::collections::BTreeSet;
use std::path::Path;

use super::issue::{Plan, issue};
use super::say;
use crate::documents::views::office::reprice::{Answer, Standing};
use crate::office::record::{Happened, Quote};
use crate::outside::desk::Desk;
use crate::outside::repricing::Found;
use crate::outside::{from_record, records};
use crate::reading::{Problem, Problems, Sources, suggest};
use crate::values::{Day, Money};

/// Every quote that would fall below the floor, instead of numbers.
const BELOW_FLOOR: &str = "below-floor";

/// Which quotes go out again, and how.
pub(super) struct Reissue<'a> {
    /// Whether the customer reads what it takes the place of.
    pub tell: bool,
    pub dry_run: bool,
    pub today: Day,
    /// The name and text of the book with the other prices.
    pub book: (&'a str, &'a str),
}

/// The numbers that are meant; each that is not open on record is reported.
pub(super) fn chosen(
    wanted: &[String],
    found: &[Found],
    answer: &Answer,
    today: Day,
    problems: &mut Problems,
) -> Vec<String> {
    let recorded: BTreeSet<String> = found.iter().filter_map(number).collect();
    let rows = answer.rows(today);
    let open = || {
        let open = rows
            .iter()
            .filter(|row| row.quote.standing == Standing::Open);
        open.filter(|row| recorded.contains(&row.quote.number))
    };
    let mut chosen: Vec<String> = Vec::new();
    for number in wanted {
        if number == BELOW_FLOOR {
            let below = open().filter(|row| row.is_below_floor());
            chosen.extend(below.map(|row| row.quote.number.clone()));
        } else if open().any(|row| row.quote.number == *number) {
            chosen.push(number.clone());
        } else {
            let near = suggest::closest(number, open().map(|row| row.quote.number.as_str()));
            let help = near.map_or_else(
                || format!("name an open one, or `{BELOW_FLOOR}`; a takeoff goes out with `flatwork quote FILE --issue`"),
                |near| format!("did you mean {near}?"),
            );
            problems.push(
                Problem::new(
                    "not-open",
                    format!("{number} is no open quote on record here"),
                )
                .help(help),
            );
        }
    }
    chosen.sort_unstable();
    chosen.dedup();
    chosen
}

/// The number of a job on record.
fn number(found: &Found) -> Option<String> {
    match found {
        Found::Job { quote, .. } => Some(quote.number.to_string()),
        Found::Takeoff(_) => None,
    }
}

/// Sends them: first all are laid out, and only if nothing stands in the way is the first filed.
pub(super) fn reissue(
    numbers: &[String],
    found: &[Found],
    of: &Reissue<'_>,
    problems: &mut Problems,
) -> Option<()> {
    let before = problems.len();
    let mut ready = Vec::new();
    for one in found {
        if let Found::Job { folder, quote, .. } = one
            && let number = quote.number.to_string()
            && numbers.contains(&number)
        {
            let mut sources = Sources::default();
            let laid = laid(folder, &number, of, &mut sources, problems);
            if let Some((desk, was)) = laid {
                in_time(&number, &desk, problems);
                send(&number, &desk, of, true, &sources, problems);
                ready.push((number, desk, was, sources));
            }
        }
    }
    if problems.len() != before {
        return None;
    }
    for (number, desk, was, sources) in &ready {
        let (now, said) = send(number, desk, of, of.dry_run, sources, problems)?;
        let good = desk.quoted.plus(i64::from(desk.business.quote.good_for.0));
        say(&format!(
            "\n{said}total       {was}, now {now}, good until {good}\n"
        ));
    }
    if of.dry_run && !ready.is_empty() {
        say("nothing was written (--dry-run)\n");
    }
    Some(())
}

/// The job of this number by the other book, and its total as it went out.
fn laid(
    folder: &Path,
    number: &str,
    of: &Reissue<'_>,
    sources: &mut Sources,
    problems: &mut Problems,
) -> Option<(Desk, Money)> {
    let row = records::of_number(folder, number, problems)?;
    let quote: &Quote = row
        .records
        .iter()
        .rev()
        .find_map(|record| match &record.what {
            Happened::Quote(quote) => Some(&**quote),
            _ => None,
        })?;
    let mut desk = from_record::desk_by(of.book, quote, of.today, sources, problems)?;
    desk.folder = folder.parent().unwrap_or(Path::new(".")).to_path_buf();
    Some((desk, quote.quoted()?.figures.total.0))
}

/// A revision cannot promise a pour that would be in the past.
fn in_time(number: &str, desk: &Desk, problems: &mut Problems) {
    let first = desk.days.iter().map(|prices| prices.day).min();
    if let Some(pour) = first.filter(|pour| *pour < desk.quoted) {
        problems.push(
            Problem::new(
                "pour-gone-by",
                format!("{number} says that it is poured on {pour}, before this revision"),
            )
            .help(format!(
                "write another `pour` into its takeoff, then `flatwork quote FILE --revise {number}`"
            )),
        );
    }
}

fn send(
    number: &str,
    desk: &Desk,
    of: &Reissue<'_>,
    dry_run: bool,
    sources: &Sources,
    problems: &mut Problems,
) -> Option<(Money, String)> {
    let offer = desk.offer(problems)?;
    let plan = Plan {
        revise: Some(number),
        tell: of.tell,
        another: false,
        dry_run,
    };
    let issued = issue(desk, &offer, &plan, sources, problems)?;
    Some((offer.quoted().totals().total, issued.said))
}
