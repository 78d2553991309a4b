//! `flatwork escalate`: what the escalation clause of a contract comes to.

use std::process::ExitCode;

use rust_decimal::Decimal;

use super::say;
use super::target::{Case, Target};
use crate::office::escalation::followed;
use crate::outside::from_record;
use crate::reading::{Problem, Problems};
use crate::values::Money;

#[derive(Debug, clap::Args)]
pub(super) struct Arguments {
    #[command(flatten)]
    target: Target,
    /// The published price on the day of the pour, for a cubic yard
    #[arg(long, value_name = "AMOUNT", value_parser = super::money)]
    index: Money,
    /// Cubic yards, where they were not those of the contract
    #[arg(long, value_name = "N")]
    yards: Option<Decimal>,
}

pub(super) fn run(arguments: &Arguments) -> ExitCode {
    arguments
        .target
        .look_for(|case, problems| told(arguments, case, problems))
}

fn told(arguments: &Arguments, case: &Case<'_>, problems: &mut Problems) -> Option<()> {
    let (number, index) = (case.number, arguments.index);
    let Some((_, accepted)) = case.account.accepted() else {
        problems.push(super::not_accepted(number));
        return None;
    };
    let (quoted, quote) = case.account.quote()?;
    let clause = from_record::business(case.account).and_then(|business| business.escalation);
    let Some(clause) = clause else {
        problems.push(
            Problem::new(
                "no-clause",
                format!("the contract of {number} has no escalation clause"),
            )
            .help(
                "what was signed counts; a clause in business.yaml stands in the quotes after it",
            ),
        );
        return None;
    };
    let yards = match arguments.yards {
        Some(yards) => yards,
        None => from_record::ordered(quote, quoted, &accepted.choice, problems)?,
    };
    let Some(found) = followed((clause.reference.value, clause.over), index, yards) else {
        say(&format!(
            "nothing to follow: {index} is within {} of {}\n",
            clause.over, clause.reference.value
        ));
        return Some(());
    };
    say(&format!(
        "working     {}\ncomes to    {} before tax\n\nA change order that says so; put it into a file, then `flatwork change {number} FILE`:\n\nchange: {} by the clause of our contract\nbecause: \"{}: {index} a cubic yard. {}\"\nlines:\n  - {} by the clause: {}\n",
        found.working,
        found.amount,
        clause.of,
        clause.index,
        found.working,
        clause.of,
        found.amount.plain().replace(',', ""),
    ));
    Some(())
}
