//! What may happen next to a job, and what to do instead where it may not.

use super::account::{Billed, ChangeAnswer, Reply};
use super::job::Job;
use super::record::{Bills, Credit, Happened, Invoice, Payment};
use crate::reading::Problem;
use crate::values::Money;

fn refuse(code: &'static str, message: String, help: impl Into<String>) -> Result<(), Problem> {
    Err(Problem::new(code, message).help(help))
}

impl<'a> Job<'a> {
    /// Whether `what` may be recorded of it; `late` takes a quote past its day.
    ///
    /// # Errors
    /// When it may not, with the reason and the command that helps.
    pub fn may(self, what: &Happened, late: bool) -> Result<(), Problem> {
        match what {
            Happened::Quote(_) => self.unsigned("a revision"),
            Happened::Accepted(_) => {
                self.unanswered("a yes")?;
                self.in_time(late)
            }
            Happened::Declined {
                change: Some(change),
                ..
            }
            | Happened::ChangeAccepted { change, .. } => {
                self.in_force()?;
                self.waiting(*change)
            }
            Happened::Declined { .. } | Happened::Withdrawn { .. } | Happened::Postponed { .. } => {
                self.unanswered("this")
            }
            Happened::Cancelled { .. } | Happened::Change(_) => self.in_force(),
            Happened::Invoice(invoice) => {
                self.in_force()?;
                self.unbilled(invoice)
            }
            Happened::Voided { invoice, .. } => self.unused(*invoice),
            Happened::Credit(credit) => self.credited(credit),
            Happened::Paid(payment) => self.paid(payment),
            Happened::Returned { payment, .. } => self.returned(*payment),
            Happened::Refunded(payment) => self.refunded(payment.amount.0),
        }
    }

    /// A quote that was not signed.
    fn unsigned(self, what: &str) -> Result<(), Problem> {
        let number = self.number;
        let Some((day, _)) = self.account.accepted() else {
            return Ok(());
        };
        refuse(
            "already-accepted",
            format!("{number} was accepted on {day}, so {what} comes too late"),
            format!(
                "`flatwork change {number} FILE` adds or takes off work; `flatwork cancel {number}` ends it"
            ),
        )
    }

    /// A quote that waits for its answer.
    fn unanswered(self, what: &str) -> Result<(), Problem> {
        let number = self.number;
        let closed = match self.account.answer {
            Reply::Accepted { .. } => return self.unsigned(what),
            Reply::None | Reply::Postponed { .. } => return Ok(()),
            Reply::Declined { .. } => "declined",
            Reply::Withdrawn { .. } => "withdrawn",
            Reply::Cancelled { .. } => "cancelled",
        };
        refuse(
            "already-closed",
            format!("{number} is {closed}"),
            format!("a revision opens it again: `flatwork quote FILE --revise {number}`"),
        )
    }

    fn in_time(self, late: bool) -> Result<(), Problem> {
        let until = self.account.quote().map(|(_, quote)| quote.good_until.0);
        match until {
            Some(until) if until < self.day && !late => refuse(
                "quote-expired",
                format!("{} was good until {until}", self.number),
                "send a revision at today's prices, or add `--late` to take it all the same",
            ),
            _ => Ok(()),
        }
    }

    /// A job under contract.
    fn in_force(self) -> Result<(), Problem> {
        let accepted = self.account.accepted();
        accepted.map(|_| ()).ok_or_else(|| self.not_accepted())
    }

    /// A change order that nobody has answered yet.
    fn waiting(self, change: u32) -> Result<(), Problem> {
        let number = self.number;
        match self.account.change(change).map(|one| one.answer) {
            Some(ChangeAnswer::None) => Ok(()),
            Some(ChangeAnswer::Accepted(_)) => refuse(
                "change-accepted-already",
                format!("change {change} of {number} was accepted already"),
                "a further change is a change order of its own",
            ),
            Some(ChangeAnswer::Declined) => refuse(
                "change-declined-already",
                format!("change {change} of {number} was declined"),
                format!("write it once more: `flatwork change {number} FILE`"),
            ),
            None => refuse(
                "no-such-change",
                format!("{number} has no change {change}"),
                format!("write it first: `flatwork change {number} FILE`"),
            ),
        }
    }

    /// A bill for what no other bill asks.
    fn unbilled(self, invoice: &Invoice) -> Result<(), Problem> {
        // What is left after a final invoice, such as a late change, is a final invoice too.
        let asks = |billed: &Bills| match invoice.bills {
            Bills::Final => false,
            Bills::Progress(_) => *billed == Bills::Final,
            Bills::Stage(_) => match billed {
                Bills::Progress(_) | Bills::Final => true,
                Bills::Stage(_) => *billed == invoice.bills,
            },
        };
        let mut standing = self.account.standing();
        let Some(again) = standing.find(|one| asks(&one.invoice.bills)) else {
            return Ok(());
        };
        let (number, count) = (self.number, again.invoice.invoice);
        refuse(
            "billed-already",
            format!(
                "invoice {number}-{count} of {} bills this already",
                again.day
            ),
            format!("`flatwork void {number} {count}` takes it back first"),
        )
    }

    /// An invoice that is there and not void.
    fn billed(self, invoice: u32) -> Result<&'a Billed<'a>, Problem> {
        let number = self.number;
        let told = match self.account.invoice(invoice) {
            Some(found) if !found.voided => return Ok(found),
            Some(_) => Problem::new(
                "invoice-void",
                format!("invoice {number}-{invoice} is void"),
            ),
            None => Problem::new(
                "no-such-invoice",
                format!("there is no invoice {number}-{invoice}"),
            ),
        };
        Err(told.help(format!("`flatwork statement {number}` lists its invoices")))
    }

    /// An invoice that nothing was done with.
    fn unused(self, invoice: u32) -> Result<(), Problem> {
        let number = self.number;
        let billed = self.billed(invoice)?;
        if billed.credits.is_empty() && billed.paid <= Money::ZERO {
            return Ok(());
        }
        refuse(
            "invoice-in-use",
            format!("invoice {number}-{invoice} has money or a credit against it"),
            format!(
                "write a credit against it: `flatwork credit {number} {invoice} AMOUNT --because ...`"
            ),
        )
    }

    fn credited(self, credit: &Credit) -> Result<(), Problem> {
        let (number, invoice) = (self.number, credit.invoice);
        let asked = self.billed(invoice)?.asked();
        let total = credit.figures.total.0;
        if total <= asked {
            return Ok(());
        }
        refuse(
            "credit-too-high",
            format!("invoice {number}-{invoice} asks {asked}, less than a credit of {total}"),
            "a credit takes off at most what the invoice asks",
        )
    }

    fn paid(self, payment: &Payment) -> Result<(), Problem> {
        if self.account.quotes.is_empty() {
            return Err(self.no_quote());
        }
        match payment.invoice {
            Some(invoice) => self.billed(invoice).map(|_| ()),
            None => Ok(()),
        }
    }

    fn returned(self, payment: u32) -> Result<(), Problem> {
        let number = self.number;
        let mut payments = self.account.payments.iter();
        match payments.find(|one| one.payment.payment == payment) {
            Some(found) if !found.returned => Ok(()),
            Some(_) => refuse(
                "returned-twice",
                format!("payment {payment} of {number} came back already"),
                "nothing is left to take back",
            ),
            None => refuse(
                "no-such-payment",
                format!("{number} has no payment {payment}"),
                format!("`flatwork statement {number}` lists them"),
            ),
        }
    }

    fn refunded(self, amount: Money) -> Result<(), Problem> {
        let credit = -self.account.owed();
        if amount <= credit {
            return Ok(());
        }
        let credit = credit.max(Money::ZERO);
        refuse(
            "nothing-to-refund",
            format!("{} has {credit} to its credit, not {amount}", self.number),
            "write a credit first where an invoice was too high",
        )
    }
}
