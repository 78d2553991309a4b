//! Parts of a contract as they are billed: each with its own tax, together never more than the whole.

use rust_decimal::Decimal;

use super::record::{Figures, Quote, Stage, TaxAmount};
use super::text::Cents;
use crate::costing;
use crate::input::phrases::Share;
use crate::values::{Money, rounding};

impl Figures {
    pub fn of(price: Money, taxes: Vec<(String, Money)>) -> Self {
        let total = price + taxes.iter().map(|(_, amount)| *amount).sum();
        let taxes = taxes.into_iter().map(|(name, amount)| TaxAmount {
            name,
            amount: Cents(amount),
        });
        Self {
            price: Cents(price),
            taxes: taxes.collect(),
            total: Cents(total),
        }
    }

    /// Both together, tax by tax.
    pub fn plus(&self, other: &Self) -> Self {
        self.joined(other, |a, b| a + b)
    }

    /// What is left of it, tax by tax.
    pub fn less(&self, other: &Self) -> Self {
        self.joined(other, |a, b| a - b)
    }

    fn joined(&self, other: &Self, of: impl Fn(Money, Money) -> Money) -> Self {
        let mut taxes: Vec<(String, Money)> = Vec::new();
        for tax in self.taxes.iter().chain(&other.taxes) {
            if !taxes.iter().any(|(name, _)| *name == tax.name) {
                let amount = of(self.tax(&tax.name), other.tax(&tax.name));
                taxes.push((tax.name.clone(), amount));
            }
        }
        Self::of(of(self.price.0, other.price.0), taxes)
    }

    fn tax(&self, name: &str) -> Money {
        let of_name = self.taxes.iter().filter(|tax| tax.name == name);
        of_name.map(|tax| tax.amount.0).sum()
    }

    pub fn is_nothing(&self) -> bool {
        self.price.0.is_zero() && self.taxes.iter().all(|tax| tax.amount.0.is_zero())
    }
}

/// The contract in the stages of its schedule.
///
/// A stage's total is what the quote says of it. Each tax is split over the stages in
/// proportion, largest remainder first, and the price is what is left; so price, every tax
/// and total of all stages add up to the contract's.
pub fn stages(contract: &Figures, schedule: &[Stage]) -> Vec<Figures> {
    let shares: Vec<Share> = schedule
        .iter()
        .map(|stage| stage.share.parse().unwrap_or(Share::Rest))
        .collect();
    let totals = costing::parts(contract.total.0, &shares);
    let weights: Vec<Decimal> = totals.iter().map(|total| total.dollars()).collect();
    let taxes: Vec<(&str, Vec<Money>)> = contract
        .taxes
        .iter()
        .map(|tax| (tax.name.as_str(), rounding::split(tax.amount.0, &weights)))
        .collect();
    let stage = |(i, total): (usize, &Money)| {
        let own: Vec<(String, Money)> = taxes
            .iter()
            .map(|(name, parts)| ((*name).to_owned(), parts[i]))
            .collect();
        let tax: Money = own.iter().map(|(_, amount)| *amount).sum();
        Figures::of(*total - tax, own)
    };
    totals.iter().enumerate().map(stage).collect()
}

/// The owner's cap on a deposit, where `first` is above it: a share of the total, and a limit.
pub fn broken_cap(first: Money, total: Money, quote: &Quote) -> Option<Money> {
    let limit = quote.deposit_limit.map(|limit| limit.0);
    capped(first, total, quote.deposit_cap.0, limit)
}

fn capped(first: Money, total: Money, share: Decimal, limit: Option<Money>) -> Option<Money> {
    let by_share = rounding::to_cents(total.dollars() * share / Decimal::ONE_HUNDRED);
    // Zero is no limit.
    let limit = limit.filter(|limit| !limit.is_zero());
    // Parts of a whole may differ by a cent from what the share rounds to.
    if by_share.as_cents() + 1 < first.as_cents() {
        return Some(limit.map_or(by_share, |limit| by_share.min(limit)));
    }
    limit.filter(|limit| *limit < first)
}

/// An amount with the taxes it holds, in the proportions of `of`.
pub fn share_of(of: &Figures, total: Money) -> Figures {
    let mut weights = vec![of.price.0.dollars()];
    weights.extend(of.taxes.iter().map(|tax| tax.amount.0.dollars()));
    let parts = rounding::split(total, &weights);
    let taxes = of.taxes.iter().zip(&parts[1..]);
    Figures::of(
        parts[0],
        taxes.map(|(tax, part)| (tax.name.clone(), *part)).collect(),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    fn figures(price: i64, tax: i64) -> Figures {
        Figures::of(
            Money::cents(price),
            vec![("sales tax".into(), Money::cents(tax))],
        )
    }

    fn schedule(shares: &[&str]) -> Vec<Stage> {
        shares
            .iter()
            .map(|share| Stage {
                when: "then".into(),
                share: (*share).to_owned(),
            })
            .collect()
    }

    #[test]
    fn stages_add_up_to_the_contract_price_by_price_and_tax_by_tax() {
        for cents in (1..400_000_i64).step_by(997) {
            let tax = rounding::to_cents(Money::cents(cents).dollars() * Decimal::new(6, 2));
            let contract = figures(cents, tax.as_cents());
            for shares in [
                &["10%", "40%", "40%", "10%"][..],
                &["33%", "33%", "34%"],
                &["1/3", "rest"],
            ] {
                let parts = stages(&contract, &schedule(shares));
                let whole = parts
                    .iter()
                    .fold(Figures::default(), |sum, part| sum.plus(part));
                assert_eq!(whole, contract, "{cents} in {shares:?}");
            }
        }
    }

    /// A tenth, and never more than $1,000, as one state has it (as restated).
    #[test]
    fn a_deposit_above_the_lesser_of_two_caps_is_seen() {
        #[track_caller]
        fn case(first: i64, total: i64, cap: Option<i64>) {
            let limit = Some(Money::cents(100_000));
            let found = capped(
                Money::cents(first),
                Money::cents(total),
                Decimal::TEN,
                limit,
            );
            assert_eq!(found, cap.map(Money::cents), "{first} of {total}");
        }
        case(99_999, 999_990, None);
        case(100_010, 999_990, Some(99_999));
        case(100_000, 1_000_000, None);
        case(100_001, 1_000_000, Some(100_000));
        case(100_000, 5_000_000, None);
        case(100_001, 5_000_000, Some(100_000));
        case(500_000, 5_000_000, Some(100_000));
        let whole = capped(
            Money::cents(300),
            Money::cents(300),
            Decimal::ONE_HUNDRED,
            Some(Money::ZERO),
        );
        assert_eq!(whole, None, "zero is no limit");
    }

    #[test]
    fn what_is_left_is_the_contract_less_what_was_billed() {
        let contract = figures(1_151_000, 69_060);
        let parts = stages(&contract, &schedule(&["10%", "40%", "40%", "10%"]));
        let billed = parts[0].plus(&parts[1]);
        assert_eq!(contract.less(&billed), parts[2].plus(&parts[3]));
        assert!(contract.less(&contract).is_nothing());
    }
}
