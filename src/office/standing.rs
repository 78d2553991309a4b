//! Where a job stands: its state, what is to be done next, and its money.

use super::account::{Account, Reply};
use super::billing::stages;
use super::record::Bills;
use crate::values::{Day, Money};

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum State {
    Quoted,
    /// Nobody answered in time.
    Expired,
    Postponed,
    Signed,
    Paid,
    Declined,
    Withdrawn,
    Cancelled,
}

impl State {
    pub const fn name(self) -> &'static str {
        match self {
            Self::Quoted => "quoted",
            Self::Expired => "expired",
            Self::Postponed => "postponed",
            Self::Signed => "signed",
            Self::Paid => "paid",
            Self::Declined => "declined",
            Self::Withdrawn => "withdrawn",
            Self::Cancelled => "cancelled",
        }
    }
}

/// What is to be done next; of a job that came to nothing, why.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Next<'a> {
    Nothing,
    Ask,
    AskOn(Day),
    /// The quote has expired.
    Revise,
    Because(&'a str),
    PayBack {
        left: Money,
        by: Day,
    },
    Remind {
        invoice: u32,
        due: Day,
        open: Money,
    },
    /// Of a change order.
    AwaitSignature(u32),
    AwaitPayment(Money),
    /// To the customer's credit.
    Credit(Money),
    BillStage {
        total: Money,
        when: &'a str,
    },
    BillProgress,
    BillRest,
}

/// A job on one day.
#[derive(Clone, Debug)]
pub struct Standing<'a> {
    pub number: &'a str,
    pub customer: &'a str,
    pub state: State,
    pub next: Next<'a>,
    /// Days until the quote's last day; none once it is answered.
    pub days_left: Option<i64>,
    pub total: Money,
    pub billed: Money,
    pub paid: Money,
    pub owed: Money,
}

/// Where a job stands; none where no quote went out.
pub fn standing<'a>(number: &'a str, account: &Account<'a>, today: Day) -> Option<Standing<'a>> {
    let (_, quote) = account.quote()?;
    let waits = matches!(account.answer, Reply::None | Reply::Postponed { .. });
    let total = account.contract().map(|contract| contract.total.0);
    let (state, next) = state(account, today)?;
    Some(Standing {
        number,
        customer: &quote.customer,
        state,
        next,
        days_left: waits.then(|| quote.good_until.0.days_since(today)),
        total: total.unwrap_or(quote.quoted()?.figures.total.0),
        billed: account.billed().total.0 - account.credited(),
        paid: account.paid(),
        owed: account.owed(),
    })
}

/// Its state, and what is to be done next; none where no quote went out.
pub fn state<'a>(account: &Account<'a>, today: Day) -> Option<(State, Next<'a>)> {
    let (_, quote) = account.quote()?;
    Some(match account.answer {
        Reply::None if quote.good_until.0 < today => (State::Expired, Next::Revise),
        Reply::None => (State::Quoted, Next::Ask),
        Reply::Postponed { until, .. } => (State::Postponed, until.map_or(Next::Ask, Next::AskOn)),
        Reply::Declined { because } => (State::Declined, Next::Because(because)),
        Reply::Withdrawn { because } => (State::Withdrawn, Next::Because(because)),
        Reply::Cancelled { refund_by, .. } => {
            // Whatever came in goes back, billed or not.
            let left = account.paid();
            let by = refund_by.filter(|_| Money::ZERO < left);
            let next = by.map_or(Next::Nothing, |by| Next::PayBack { left, by });
            (State::Cancelled, next)
        }
        Reply::Accepted { .. } => under_contract(account, today),
    })
}

fn under_contract<'a>(account: &Account<'a>, today: Day) -> (State, Next<'a>) {
    let left = account.contract().unwrap_or_default();
    let left = left.less(&account.billed());
    let owed = account.owed();
    let mut invoices = account.invoices.iter();
    let late = invoices.find(|one| Money::ZERO < one.open() && one.invoice.due.0 < today);
    let waiting = account.changes.iter().find(|one| one.waits());
    let next = if let Some(late) = late {
        Next::Remind {
            invoice: late.invoice.invoice,
            due: late.invoice.due.0,
            open: late.open(),
        }
    } else if let Some(waiting) = waiting {
        Next::AwaitSignature(waiting.change.change)
    } else if Money::ZERO < owed {
        Next::AwaitPayment(owed)
    } else if !left.is_nothing() {
        next_bill(account).unwrap_or(Next::Nothing)
    } else if owed < Money::ZERO {
        return (State::Paid, Next::Credit(-owed));
    } else {
        return (State::Paid, Next::Nothing);
    };
    (State::Signed, next)
}

/// The first payment of the schedule that is not billed.
fn next_bill<'a>(account: &Account<'a>) -> Option<Next<'a>> {
    let (_, quote) = account.quote()?;
    let (_, accepted) = account.accepted()?;
    let kept = account.invoices.iter().filter(|one| !one.voided);
    let billed: Vec<&Bills> = kept.map(|one| &one.invoice.bills).collect();
    if billed
        .iter()
        .any(|bills| matches!(bills, Bills::Progress(_)))
    {
        return Some(Next::BillProgress);
    }
    let parts = stages(&accepted.contract, &quote.payments);
    let mut payments = quote.payments.iter().zip(&parts).enumerate();
    let next = payments.find(|(stage, _)| !billed.contains(&&Bills::Stage(*stage)));
    Some(
        next.map_or(Next::BillRest, |(_, (payment, part))| Next::BillStage {
            total: part.total.0,
            when: &payment.when,
        }),
    )
}
