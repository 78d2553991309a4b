//! The state of a job, replayed from its records: what is promised, billed, paid, owed.

use super::record::{
    Accepted, Bills, Change, Credit, Figures, Happened, Invoice, Payment, Quote, Record,
};
use crate::values::{Day, Money};

/// Everything that follows from the records of one job.
#[derive(Clone, Debug, Default)]
pub struct Account<'a> {
    /// Every revision, oldest first, with its day.
    pub quotes: Vec<(Day, &'a Quote)>,
    pub answer: Reply<'a>,
    pub changes: Vec<ChangeState<'a>>,
    pub invoices: Vec<Billed<'a>>,
    pub payments: Vec<Received<'a>>,
    pub refunds: Vec<(Day, &'a Payment)>,
    /// Refunded of a payment that came back afterwards: owed, and on no invoice.
    pub refund_owed: Money,
    /// How many records there are.
    pub places: u32,
}

/// What the customer said, or the owner for them.
#[derive(Clone, Copy, Debug, Default)]
pub enum Reply<'a> {
    #[default]
    None,
    Postponed {
        until: Option<Day>,
    },
    Accepted {
        day: Day,
        accepted: &'a Accepted,
    },
    Cancelled {
        refund_by: Option<Day>,
    },
    Declined {
        because: &'a str,
    },
    Withdrawn {
        because: &'a str,
    },
}

/// A change order and whether it was signed.
#[derive(Clone, Debug)]
pub struct ChangeState<'a> {
    pub change: &'a Change,
    pub answer: ChangeAnswer,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ChangeAnswer {
    None,
    Declined,
    /// By the record of this place.
    Accepted(u32),
}

impl ChangeState<'_> {
    pub fn is_accepted(&self) -> bool {
        matches!(self.answer, ChangeAnswer::Accepted(_))
    }

    /// Whether it still waits for the customer.
    pub fn waits(&self) -> bool {
        self.answer == ChangeAnswer::None
    }
}

/// An invoice and what became of it.
#[derive(Clone, Debug)]
pub struct Billed<'a> {
    /// Of its record.
    pub place: u32,
    pub day: Day,
    pub invoice: &'a Invoice,
    pub voided: bool,
    pub credits: Vec<&'a Credit>,
    /// What payments have covered.
    pub paid: Money,
}

/// A payment and whether it came back.
#[derive(Clone, Debug)]
pub struct Received<'a> {
    pub day: Day,
    pub payment: &'a Payment,
    pub returned: bool,
}

impl Billed<'_> {
    /// What is asked: nothing when void, less its credits.
    pub fn asked(&self) -> Money {
        if self.voided {
            return Money::ZERO;
        }
        self.invoice.figures.total.0 - self.credited()
    }

    pub fn credited(&self) -> Money {
        let credits = self.credits.iter();
        credits.map(|credit| credit.figures.total.0).sum()
    }

    pub fn open(&self) -> Money {
        self.asked() - self.paid
    }
}

impl<'a> Account<'a> {
    /// Reads the records in their order. What only this program writes is taken at its word;
    /// `verify` looks for what cannot be.
    pub fn replay(records: &'a [Record]) -> Self {
        let mut account = Self::default();
        for record in records {
            account.add(record);
        }
        account.share_out();
        account
    }

    fn add(&mut self, record: &'a Record) {
        let day = record.day.0;
        self.places = record.place;
        match &record.what {
            Happened::Quote(quote) => {
                self.quotes.push((day, quote));
                self.answer = Reply::None;
                // A revision after a cancelled contract does not take up its changes.
                for one in &mut self.changes {
                    one.answer = ChangeAnswer::Declined;
                }
            }
            Happened::Accepted(accepted) => self.answer = Reply::Accepted { day, accepted },
            Happened::Cancelled { refund_by, .. } => {
                if self.accepted().is_some() {
                    let refund_by = refund_by.map(|day| day.0);
                    self.answer = Reply::Cancelled { refund_by };
                }
            }
            Happened::Declined {
                change: Some(change),
                ..
            } => self.answer_change(*change, ChangeAnswer::Declined),
            Happened::Declined { because, .. } => self.answer = Reply::Declined { because },
            Happened::Withdrawn { because } => self.answer = Reply::Withdrawn { because },
            Happened::Postponed { until, .. } => {
                let until = until.map(|day| day.0);
                self.answer = Reply::Postponed { until };
            }
            Happened::Change(change) => self.changes.push(ChangeState {
                change,
                answer: ChangeAnswer::None,
            }),
            Happened::ChangeAccepted { change, .. } => {
                self.answer_change(*change, ChangeAnswer::Accepted(record.place));
            }
            Happened::Invoice(invoice) => self.invoices.push(Billed {
                place: record.place,
                day,
                invoice,
                voided: false,
                credits: Vec::new(),
                paid: Money::ZERO,
            }),
            Happened::Voided { invoice, .. } => {
                if let Some(billed) = self.invoice_mut(*invoice) {
                    billed.voided = true;
                }
            }
            Happened::Credit(credit) => {
                if let Some(billed) = self.invoice_mut(credit.invoice) {
                    billed.credits.push(credit);
                }
            }
            Happened::Paid(payment) => self.payments.push(Received {
                day,
                payment,
                returned: false,
            }),
            Happened::Returned { payment, .. } => {
                let mut payments = self.payments.iter_mut();
                if let Some(found) = payments.find(|one| one.payment.payment == *payment) {
                    found.returned = true;
                }
            }
            Happened::Refunded(payment) => self.refunds.push((day, payment)),
        }
    }

    fn answer_change(&mut self, number: u32, answer: ChangeAnswer) {
        let mut changes = self.changes.iter_mut();
        if let Some(found) = changes.find(|one| one.change.change == number) {
            found.answer = answer;
        }
    }

    fn invoice_mut(&mut self, number: u32) -> Option<&mut Billed<'a>> {
        let mut invoices = self.invoices.iter_mut();
        invoices.find(|one| one.invoice.invoice == number)
    }

    pub fn invoice(&self, number: u32) -> Option<&Billed<'a>> {
        let mut invoices = self.invoices.iter();
        invoices.find(|one| one.invoice.invoice == number)
    }

    pub fn change(&self, number: u32) -> Option<&ChangeState<'a>> {
        let mut changes = self.changes.iter();
        changes.find(|one| one.change.change == number)
    }

    /// The invoices that are not void.
    pub fn standing(&self) -> impl DoubleEndedIterator<Item = &Billed<'a>> {
        self.invoices.iter().filter(|one| !one.voided)
    }

    pub fn is_billed(&self, bills: &Bills) -> bool {
        self.standing().any(|one| one.invoice.bills == *bills)
    }

    /// Money goes to the invoice it was meant for, then to the oldest that is open.
    fn share_out(&mut self) {
        let kept = self.payments.iter().filter(|one| !one.returned);
        let kept: Vec<(Money, Option<u32>)> = kept
            .map(|one| (one.payment.amount.0, one.payment.invoice))
            .collect();
        let mut loose = Money::ZERO;
        for (amount, meant) in kept {
            let covered = meant
                .and_then(|number| self.invoice_mut(number))
                .map_or(Money::ZERO, |billed| cover(billed, amount));
            loose = loose + amount - covered;
        }
        loose = loose - self.refunds.iter().map(|(_, one)| one.amount.0).sum();
        for billed in &mut self.invoices {
            loose = loose - cover(billed, loose);
        }
        // Refunded, and then the payment came back: what was paid back is owed again.
        for billed in self.invoices.iter_mut().rev() {
            let missing = (-loose).max(Money::ZERO).min(billed.paid);
            billed.paid = billed.paid - missing;
            loose = loose + missing;
        }
        self.refund_owed = (-loose).max(Money::ZERO);
    }

    /// The job with one payment more.
    pub fn with_payment<'b>(&self, day: Day, payment: &'b Payment) -> Account<'b>
    where
        'a: 'b,
    {
        let mut after: Account<'b> = self.clone();
        after.payments.push(Received {
            day,
            payment,
            returned: false,
        });
        for billed in &mut after.invoices {
            billed.paid = Money::ZERO;
        }
        after.share_out();
        after
    }

    /// The quote that counts.
    pub fn quote(&self) -> Option<(Day, &'a Quote)> {
        self.quotes.last().copied()
    }

    pub fn accepted(&self) -> Option<(Day, &'a Accepted)> {
        match self.answer {
            Reply::Accepted { day, accepted } => Some((day, accepted)),
            Reply::None
            | Reply::Postponed { .. }
            | Reply::Cancelled { .. }
            | Reply::Declined { .. }
            | Reply::Withdrawn { .. } => None,
        }
    }

    /// What was signed, changes included.
    pub fn contract(&self) -> Option<Figures> {
        let (_, accepted) = self.accepted()?;
        let signed = self.changes.iter().filter(|one| one.is_accepted());
        Some(signed.fold(accepted.contract.clone(), |sum, one| {
            sum.plus(&one.change.figures)
        }))
    }

    /// The last final invoice that is not void.
    pub fn last_final(&self) -> Option<&Billed<'a>> {
        self.standing()
            .rfind(|one| one.invoice.bills == Bills::Final)
    }

    /// Every invoice that is not void, credits not taken off: a credit forgives, and what it
    /// forgives is not billed a second time.
    pub fn billed(&self) -> Figures {
        self.standing().fold(Figures::default(), |sum, one| {
            sum.plus(&one.invoice.figures)
        })
    }

    pub fn credited(&self) -> Money {
        self.standing().map(Billed::credited).sum()
    }

    pub fn paid(&self) -> Money {
        let kept = self.payments.iter().filter(|one| !one.returned);
        let received: Money = kept.map(|one| one.payment.amount.0).sum();
        received - self.refunds.iter().map(|(_, one)| one.amount.0).sum()
    }

    /// Billed, neither credited nor paid; below zero when too much came in.
    pub fn owed(&self) -> Money {
        self.billed().total.0 - self.credited() - self.paid()
    }
}

/// Covers what the invoice still asks, at most `amount`; answers how much that was.
fn cover(billed: &mut Billed<'_>, amount: Money) -> Money {
    let covered = billed.open().min(amount).max(Money::ZERO);
    billed.paid = billed.paid + covered;
    covered
}
