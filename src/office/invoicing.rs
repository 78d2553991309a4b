//! What the next bill of a job asks: a payment of the schedule, the work to date, or what is left.

use super::billing::{share_of, stages};
use super::job::Job;
use super::progress;
use super::record::{Bills, Credit, Figures, InvoiceLine};
use crate::input::progress::ProgressWritten;
use crate::reading::{Problem, Problems, Read};
use crate::values::Money;

/// What a bill is for, line by line and together.
#[derive(Clone, Debug)]
pub struct ToBill {
    pub bills: Bills,
    pub lines: Vec<InvoiceLine>,
    pub figures: Figures,
}

impl Job<'_> {
    /// A payment of the schedule, from 1; else the first that is not billed.
    pub fn asks_stage(self, wanted: Option<usize>, problems: &mut Problems) -> Read<ToBill> {
        let (_, accepted) = self.accepted(problems)?;
        let (_, quote) = self.quote(problems)?;
        let stage = self.stage(wanted, quote.payments.len(), problems)?;
        let figures = stages(&accepted.contract, &quote.payments)[stage].clone();
        let line = InvoiceLine::new(&quote.payments[stage].when, figures.price.0);
        self.something(Bills::Stage(stage), vec![line], figures, problems)
    }

    fn stage(self, wanted: Option<usize>, count: usize, problems: &mut Problems) -> Read<usize> {
        let number = self.number;
        if let Some(wanted) = wanted {
            if (1..=count).contains(&wanted) {
                return Ok(wanted - 1);
            }
            return Err(problems.push(
                Problem::new(
                    "no-such-stage",
                    format!("the schedule of {number} has no payment {wanted}"),
                )
                .help(format!(
                    "it has {count}; `flatwork statement {number}` lists them"
                )),
            ));
        }
        let next = (0..count).find(|stage| !self.account.is_billed(&Bills::Stage(*stage)));
        next.ok_or_else(|| {
            let message = format!("every payment of {number} is billed");
            problems.push(
                Problem::new("all-billed", message)
                    .help("changes and what is left are billed with `--final`"),
            )
        })
    }

    /// The work to date by a schedule of values, less what was billed.
    pub fn asks_progress(self, written: &ProgressWritten, problems: &mut Problems) -> Read<ToBill> {
        let done = progress::progress(written, self, problems)?;
        let figures = progress::asked(&done, self.account);
        if figures.total.0 < Money::ZERO {
            let less = -figures.total.0;
            return Err(problems.push(
                Problem::new(
                    "below-billed",
                    format!("{less} less is earned to date than was billed"),
                )
                .at(written.place)
                .help("where too much was billed, `flatwork credit` takes it off an invoice"),
            ));
        }
        let lines = progress::lines(&done, self.account);
        self.something(Bills::Progress(Box::new(done)), lines, figures, problems)
    }

    /// Contract and signed changes, less what was billed.
    pub fn asks_rest(self, problems: &mut Problems) -> Read<ToBill> {
        let (number, account) = (self.number, self.account);
        let (_, accepted) = self.accepted(problems)?;
        let billed = account.billed();
        let figures = self.contract(problems)?.less(&billed);
        let mut lines = vec![InvoiceLine::new(
            "Work as agreed",
            accepted.contract.price.0,
        )];
        let signed = account.changes.iter().filter(|one| one.is_accepted());
        lines.extend(signed.map(|one| {
            let says = format!("Change {}: {}", one.change.change, one.change.title);
            InvoiceLine::new(says, one.change.figures.price.0)
        }));
        if !billed.is_nothing() {
            lines.push(InvoiceLine::new("Billed before", -billed.price.0));
        }
        if figures.total.0 < Money::ZERO {
            let more = -figures.total.0;
            return Err(problems.push(
                Problem::new(
                    "billed-too-much",
                    format!("{number} was billed {more} more than was agreed"),
                )
                .help(format!(
                    "take it off the last invoice: `flatwork credit {number} INVOICE {}`",
                    more.plain()
                )),
            ));
        }
        self.something(Bills::Final, lines, figures, problems)
    }

    /// Invoices count within their job, void ones too.
    pub fn next_invoice(self) -> u32 {
        let counts = self.account.invoices.iter().map(|one| one.invoice.invoice);
        counts.max().unwrap_or(0) + 1
    }

    pub fn next_change(self) -> u32 {
        let counts = self.account.changes.iter().map(|one| one.change.change);
        counts.max().unwrap_or(0) + 1
    }

    fn something(
        self,
        bills: Bills,
        lines: Vec<InvoiceLine>,
        figures: Figures,
        problems: &mut Problems,
    ) -> Read<ToBill> {
        let number = self.number;
        if figures.is_nothing() {
            return Err(problems.push(
                Problem::new(
                    "nothing-to-bill",
                    format!("nothing is left to bill of {number}"),
                )
                .help(format!(
                    "`flatwork statement {number}` shows what was billed"
                )),
            ));
        }
        Ok(ToBill {
            bills,
            lines,
            figures,
        })
    }

    /// A credit of this amount, tax included, in the proportions of its invoice.
    pub fn credit(self, invoice: u32, amount: Money, because: &str) -> Credit {
        let invoices = self.account.invoices.iter();
        let count = invoices.map(|one| one.credits.len()).sum::<usize>();
        // An invoice that is not there is refused by the rules, with the command that helps.
        let of = self.account.invoice(invoice);
        let of = of.map(|one| one.invoice.figures.clone());
        Credit {
            credit: after(count),
            invoice,
            because: because.to_owned(),
            figures: share_of(&of.unwrap_or_default(), amount),
            inputs: Vec::new(),
            pdf: None,
        }
    }
}

/// The number of the next, after so many.
pub fn after(count: usize) -> u32 {
    u32::try_from(count).expect("no job has that many records") + 1
}
