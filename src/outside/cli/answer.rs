//! `flatwork accept`, `decline`, `withdraw`, `postpone`, `cancel`: what came of a quote.

use std::process::ExitCode;

use super::target::{Case, Entry, Target};
use crate::office::record::{Accepted, Figures, Happened, Quote};
use crate::office::text;
use crate::office::{billing, cancellation};
use crate::outside::business_folder;
use crate::reading::{Problem, Problems, Sources, suggest};
use crate::values::Day;

#[derive(Debug, clap::Args)]
pub(super) struct Accept {
    #[command(flatten)]
    target: Target,
    /// Who said yes; else the customer
    #[arg(long, value_name = "NAME")]
    by: Option<String>,
    /// How: signed on paper, by mail
    #[arg(long, value_name = "WORDS", default_value = "signed on paper")]
    how: String,
    /// An option that was ticked, by its title or the first words of it; once for each
    #[arg(long = "with", value_name = "OPTION")]
    with: Vec<String>,
    /// Takes a quote that is past its day
    #[arg(long)]
    late: bool,
    /// A change order of this number instead of the quote
    #[arg(long, value_name = "CHANGE")]
    change: Option<u32>,
}

#[derive(Debug, clap::Args)]
pub(super) struct Close {
    #[command(flatten)]
    target: Target,
    /// Why, in a few words
    #[arg(long, value_name = "WORDS")]
    because: String,
}

#[derive(Debug, clap::Args)]
pub(super) struct Decline {
    #[command(flatten)]
    close: Close,
    /// Only the change order of this number; the job goes on
    #[arg(long, value_name = "CHANGE")]
    change: Option<u32>,
}

#[derive(Debug, clap::Args)]
pub(super) struct Postpone {
    #[command(flatten)]
    close: Close,
    /// Until when, if that is known
    #[arg(long, value_name = "DATE", value_parser = super::day)]
    until: Option<Day>,
}

pub(super) fn accept(arguments: &Accept) -> ExitCode {
    arguments
        .target
        .record(arguments.late, |case, sources, problems| {
            match arguments.change {
                Some(change) => Some(change_accepted(arguments, case, change)),
                None => accepted(arguments, case, sources, problems),
            }
        })
}

fn change_accepted(arguments: &Accept, case: &Case<'_>, change: u32) -> Entry {
    let customer = case
        .account
        .quote()
        .map(|(_, quote)| quote.customer.clone());
    let by = arguments.by.clone().or(customer).unwrap_or_default();
    let mut said = vec![format!(
        "change {change} of {} accepted by {by}",
        case.number
    )];
    let mut changes = case.account.changes.iter();
    let found = changes.find(|one| one.change.change == change);
    if let (Some(found), Some(contract)) = (found, case.account.contract()) {
        let sum = contract.plus(&found.change.figures);
        said.push(format!("agreed now  {}", told(&sum)));
    }
    Entry {
        said: said.join("\n") + "\n",
        what: Happened::ChangeAccepted {
            change,
            by,
            how: arguments.how.clone(),
        },
        pdf: None,
    }
}

fn accepted(
    arguments: &Accept,
    case: &Case<'_>,
    sources: &mut Sources,
    problems: &mut Problems,
) -> Option<Entry> {
    let (_, quote) = case.account.quote()?;
    let choice = choice(quote, &arguments.with, problems)?;
    let combination = quote.combinations.iter().find(|one| one.choice == choice)?;
    let (business, _) = business_folder::business(&case.home, sources, problems)?;
    let cancel_until = business
        .quote
        .cancellation
        .map(|_| cancellation::last_day(case.day));
    let by = arguments
        .by
        .clone()
        .unwrap_or_else(|| quote.customer.clone());
    let mut said = vec![format!(
        "{} accepted by {by}: {}",
        case.number,
        told(&combination.figures)
    )];
    let taken = combination.taken.iter();
    said.extend(taken.map(|taken| format!("with        {taken}")));
    let first = billing::stages(&combination.figures, &quote.payments);
    if let (Some(stage), Some(part)) = (quote.payments.first(), first.first()) {
        said.push(format!(
            "next        bill `{}`, {}: `flatwork invoice {}`",
            stage.when, part.total.0, case.number
        ));
        let limit = quote.deposit_limit.map(|limit| limit.0);
        let total = combination.figures.total.0;
        let share = quote.deposit_cap.0;
        if let Some(cap) = billing::broken_cap(part.total.0, total, share, limit) {
            said.push(format!(
                "look at     your cap on a deposit is {cap} of this contract; check your state's law"
            ));
        }
    }
    if let Some(day) = cancel_until {
        said.push(format!(
            "may cancel  until midnight of {}; check your state's law",
            day.long()
        ));
        said.push(format!(
            "write       {} and {} on both forms before you hand them over",
            case.day.long(),
            day.long()
        ));
        if quote.pours.iter().any(|pour| pour.0 <= day) {
            said.push("look at     a pour falls into that time".to_owned());
        }
    }
    Some(Entry {
        what: Happened::Accepted(Accepted {
            revision: quote.revision,
            by,
            how: arguments.how.clone(),
            choice,
            taken: combination.taken.clone(),
            contract: combination.figures.clone(),
            cancel_until: cancel_until.map(text::Day),
        }),
        pdf: None,
        said: said.join("\n") + "\n",
    })
}

/// `$12,900.20, of it $730.20 sales tax`.
pub(super) fn told(figures: &Figures) -> String {
    let taxes: Vec<String> = figures
        .taxes
        .iter()
        .map(|tax| format!("{} {}", tax.amount.0, tax.name))
        .collect();
    if taxes.is_empty() {
        figures.total.0.to_string()
    } else {
        format!("{}, of it {}", figures.total.0, taxes.join(" and "))
    }
}

/// The combination that holds just these options.
fn choice(quote: &Quote, with: &[String], problems: &mut Problems) -> Option<Vec<usize>> {
    let before = problems.len();
    let mut choice = quote.as_quoted.clone();
    let mut chosen = vec![false; choice.len()];
    let titles = || quote.choices.iter().flat_map(|group| &group.options);
    for wanted in with {
        let fits = |title: &String| title.to_lowercase().starts_with(&wanted.to_lowercase());
        let found: Vec<(usize, usize)> = quote
            .choices
            .iter()
            .enumerate()
            .flat_map(|(g, group)| {
                let options = group.options.iter().enumerate();
                options
                    .filter(|(_, title)| fits(title))
                    .map(move |(i, _)| (g, i))
            })
            .collect();
        let listed = || {
            let titles: Vec<String> = titles().map(|title| format!("`{title}`")).collect();
            if titles.is_empty() {
                "this quote has no options".to_owned()
            } else {
                format!("it has {}", titles.join(", "))
            }
        };
        match found[..] {
            [(group, _)] if chosen[group] => problems.push(
                Problem::new(
                    "chosen-twice",
                    format!("`{wanted}` stands in a group of which one is chosen already"),
                )
                .help("take one of them"),
            ),
            [(group, option)] => {
                choice[group] = option + 1;
                chosen[group] = true;
            }
            [] => {
                let problem = Problem::new(
                    "no-such-option",
                    format!("this quote has no option `{wanted}`"),
                );
                let near = suggest::closest(wanted, titles().map(String::as_str));
                problems.push(
                    problem
                        .help(near.map_or_else(listed, |near| format!("did you mean `{near}`?"))),
                );
            }
            _ => problems.push(
                Problem::new(
                    "which-option",
                    format!("more than one option begins with `{wanted}`"),
                )
                .help(listed()),
            ),
        }
    }
    for (group, chosen) in quote.choices.iter().zip(&chosen) {
        if group.must_choose && !chosen {
            let question = group.question.as_deref().unwrap_or("one of these");
            let options: Vec<String> = group.options.iter().map(|one| format!("`{one}`")).collect();
            problems.push(
                Problem::new(
                    "choice-missing",
                    format!("`{question}` has to be answered before the job can be signed"),
                )
                .help(format!("`--with` one of {}", options.join(", "))),
            );
        }
    }
    (problems.len() == before).then_some(choice)
}

pub(super) fn decline(arguments: &Decline) -> ExitCode {
    let change = arguments.change;
    let word = match change {
        Some(change) => format!("change {change} declined"),
        None => "declined".to_owned(),
    };
    closed(&arguments.close, &word, |because| Happened::Declined {
        because,
        change,
    })
}

pub(super) fn withdraw(arguments: &Close) -> ExitCode {
    closed(arguments, "withdrawn", |because| Happened::Withdrawn {
        because,
    })
}

pub(super) fn postpone(arguments: &Postpone) -> ExitCode {
    let until = arguments.until.map(text::Day);
    closed(&arguments.close, "postponed", |because| {
        Happened::Postponed { because, until }
    })
}

fn closed(arguments: &Close, word: &str, what: impl FnOnce(String) -> Happened) -> ExitCode {
    arguments.target.record(false, |case, _, _| {
        Some(Entry {
            what: what(arguments.because.clone()),
            pdf: None,
            said: format!("{} {word}: {}\n", case.number, arguments.because),
        })
    })
}

pub(super) fn cancel(arguments: &Close) -> ExitCode {
    arguments.target.record(false, |case, _, _| {
        let until = case
            .account
            .accepted()
            .and_then(|(_, accepted)| accepted.cancel_until);
        let in_time = until.is_some_and(|until| case.day <= until.0);
        let refund_by = in_time.then(|| cancellation::refund_by(case.day));
        let paid = case.account.paid();
        let refund = refund_by.map(|day| {
            format!(
                "in time     pay back {paid} by {}; check your state's law\n",
                day.long()
            )
        });
        let said = format!(
            "{} cancelled: {}\n{}",
            case.number,
            arguments.because,
            refund.unwrap_or_default()
        );
        Some(Entry {
            what: Happened::Cancelled {
                because: arguments.because.clone(),
                refund_by: refund_by.map(text::Day),
            },
            pdf: None,
            said,
        })
    })
}
