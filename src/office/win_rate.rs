//! How many quotes became jobs, by kind of work.

use std::collections::BTreeMap;

use rust_decimal::Decimal;

use super::account::{Account, Reply};
use crate::values::{Day, rounding};

/// Quotes of one kind of work, each counted once.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct WinRate {
    /// Signed, and not cancelled since.
    pub won: u32,
    /// Declined, run out without an answer, or cancelled after signing.
    pub lost: u32,
    /// Waiting for an answer, or postponed.
    pub open: u32,
    /// Taken back by the owner; neither won nor lost.
    pub withdrawn: u32,
}

impl WinRate {
    pub fn quoted(self) -> u32 {
        self.won + self.lost + self.open + self.withdrawn
    }

    /// Won of a hundred that were won or lost, to a tenth; none while nothing is decided.
    pub fn percent(self) -> Option<Decimal> {
        let decided = Decimal::from(self.won + self.lost);
        (!decided.is_zero()).then(|| {
            rounding::to_places(Decimal::from(self.won) * Decimal::ONE_HUNDRED / decided, 1)
        })
    }

    fn count(&mut self, account: &Account<'_>, today: Day) {
        let expired = account
            .quote()
            .is_some_and(|(_, quote)| quote.good_until.0 < today);
        match account.answer {
            Reply::Accepted { .. } => self.won += 1,
            Reply::Declined { .. } | Reply::Cancelled { .. } => self.lost += 1,
            Reply::None if expired => self.lost += 1,
            Reply::None | Reply::Postponed { .. } => self.open += 1,
            Reply::Withdrawn { .. } => self.withdrawn += 1,
        }
    }
}

/// Kind by kind, and last all together; a job of two kinds counts in both, and once in all.
pub fn rates(jobs: &[Account<'_>], today: Day) -> Vec<(String, WinRate)> {
    let mut kinds: BTreeMap<String, WinRate> = BTreeMap::new();
    let mut all = WinRate::default();
    for account in jobs {
        let Some((_, quote)) = account.quote() else {
            continue;
        };
        all.count(account, today);
        for kind in &quote.kinds {
            kinds.entry(kind.clone()).or_default().count(account, today);
        }
    }
    let mut rates: Vec<(String, WinRate)> = kinds.into_iter().collect();
    rates.push(("all jobs".to_owned(), all));
    rates
}
