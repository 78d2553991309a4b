//! `flatwork escalate`: what the escalation clause of a contract comes to.

use rust_decimal::Decimal;

use super::ran::Ran;
use super::target::Target;
use crate::documents::views::office::escalation;
use crate::office::escalation::followed;
use crate::outside::files::Files;
use crate::outside::from_record;
use crate::reading::Problem;
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

pub(super) fn run(arguments: &Arguments, files: &mut Files) -> Ran {
    arguments.target.look(files, |job, files| {
        let (number, index) = (job.number, arguments.index);
        let (_, accepted) = job.accepted(&mut files.problems)?;
        let (quoted, quote) = job.quote(&mut files.problems)?;
        let business = from_record::business(job.account);
        let clause = business.and_then(|business| business.escalation);
        let clause = clause.ok_or_else(|| files.refuse(no_clause(number)))?;
        let yards = match arguments.yards {
            Some(yards) => yards,
            None => from_record::ordered(quote, quoted, &accepted.choice, files)?,
        };
        let found = followed(&clause, index, yards);
        Ok(escalation::text(number, &clause, index, found.as_ref()))
    })
}

fn no_clause(number: &str) -> Problem {
    let message = format!("the contract of {number} has no escalation clause");
    Problem::new("no-clause", message)
        .help("what was signed counts; a clause in business.yaml stands in the quotes after it")
}
