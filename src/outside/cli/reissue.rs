//! Revisions of quotes on record at other prices: the same work, a new day, a new good-until.

use std::collections::BTreeSet;
use std::path::Path;

use super::issue::{Issued, Plan, issue};
use super::ran::say;
use crate::costing::Offer;
use crate::costing::outcome::{Outcomes, Standing};
use crate::office::account::Account;
use crate::office::job::Job;
use crate::office::record::Input;
use crate::outside::desk::Desk;
use crate::outside::files::Files;
use crate::outside::repricing::FoundQuote;
use crate::outside::{from_record, records};
use crate::reading::{Problem, Problems, Read, suggest};
use crate::values::{Day, Money};

/// Every quote that would fall below the floor, instead of numbers.
const BELOW_FLOOR: &str = "below-floor";

/// Which quotes go out again, and how.
pub(super) struct Reissue<'a> {
    /// Whether the customer reads what it takes the place of.
    pub tell: bool,
    pub dry_run: bool,
    pub today: Day,
    /// The book with the other prices.
    pub book: &'a Input,
}

/// The numbers that are meant; each that is not open on record is reported.
pub(super) fn chosen(
    wanted: &[String],
    found: &[FoundQuote],
    answer: &Outcomes,
    today: Day,
    problems: &mut Problems,
) -> Vec<String> {
    let recorded: BTreeSet<String> = found.iter().filter_map(number).collect();
    let rows = answer.findings(today);
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
            let message = format!("{number} is no open quote on record here");
            problems.push(Problem::new("not-open", message).help(help));
        }
    }
    chosen.sort_unstable();
    chosen.dedup();
    chosen
}

/// The number of a job on record.
fn number(found: &FoundQuote) -> Option<String> {
    match found {
        FoundQuote::Job { quote, .. } => Some(quote.number.to_string()),
        FoundQuote::Takeoff(_) => None,
    }
}

/// Sends them: first all are laid out, and only if nothing stands in the way is the first filed.
pub(super) fn reissue(
    numbers: &[String],
    found: &[FoundQuote],
    of: &Reissue<'_>,
    problems: &mut Problems,
) -> Read<()> {
    let before = problems.len();
    let mut ready = Vec::new();
    for one in found {
        if let FoundQuote::Job { folder, quote, .. } = one
            && numbers.iter().any(|number| number == quote.number.text())
        {
            let mut files = Files::default();
            let revision = Revision::laid(folder, quote.number.text(), of, &mut files);
            problems.extend(std::mem::take(&mut files.problems));
            ready.extend(revision.ok().zip(Some(files)));
        }
    }
    problems.none_since(before)?;
    let is_dry = of.dry_run && !ready.is_empty();
    for (revision, mut files) in ready {
        let issued = revision.send(of, of.dry_run, &mut files);
        problems.extend(std::mem::take(&mut files.problems));
        let (said, desk) = (issued?.said, &revision.desk);
        let now = revision.offer.quoted().totals().total;
        let good = desk.quoted.plus(i64::from(desk.business.quote.good_for.0));
        let was = revision.was;
        say(&format!(
            "\n{said}total       {was}, now {now}, good until {good}\n"
        ));
    }
    if is_dry {
        say("nothing was written (--dry-run)\n");
    }
    Ok(())
}

/// A job on record by the other book.
struct Revision<'a> {
    number: &'a str,
    desk: Desk,
    offer: Offer,
    /// The total as it went out.
    was: Money,
}

impl<'a> Revision<'a> {
    /// Lays it out and tries whether it could go out.
    fn laid(folder: &Path, number: &'a str, of: &Reissue<'_>, files: &mut Files) -> Read<Self> {
        let row = records::of_number(folder, number, &mut files.problems)?;
        let account = Account::replay(&row.records);
        let job = Job {
            number,
            day: of.today,
            account: &account,
        };
        let (_, quote) = job.quote(&mut files.problems)?;
        let was = quote.quoted_total(&mut files.problems)?;
        let mut desk = from_record::desk_by(of.book, quote, of.today, files)?;
        desk.folder = folder.parent().unwrap_or(Path::new(".")).to_path_buf();
        in_time(number, &desk, &mut files.problems);
        let offer = desk.offer(&mut files.problems)?;
        let revision = Self {
            number,
            desk,
            offer,
            was,
        };
        revision.send(of, true, files)?;
        Ok(revision)
    }

    fn send(&self, of: &Reissue<'_>, dry_run: bool, files: &mut Files) -> Read<Issued> {
        let plan = Plan {
            revise: Some(self.number),
            tell: of.tell,
            another: false,
            dry_run,
        };
        issue(&self.desk, &self.offer, &plan, files)
    }
}

/// A revision cannot promise a pour that would be in the past.
fn in_time(number: &str, desk: &Desk, problems: &mut Problems) {
    let first = desk.days.iter().map(|prices| prices.day).min();
    if let Some(pour) = first.filter(|pour| *pour < desk.quoted) {
        let message = format!("{number} says that it is poured on {pour}, before this revision");
        problems.push(Problem::new("pour-gone-by", message).help(format!(
            "write another `pour` into its takeoff, then `flatwork quote FILE --revise {number}`"
        )));
    }
}
