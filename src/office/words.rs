//! The words of a record's lines: written and read back in one place.
//!
//! They are part of the format. A view may call a cause something else tomorrow; a record may not.

use crate::costing::{Cause, Tier};

const ON_PURCHASES: &str = " on purchases";
const TAKEN_OFF: &str = "taken off, ";
const LEAST_CHARGE: &str = "minimum charge, ";

/// What a line is there for.
pub fn cause(cause: &Cause) -> String {
    match cause {
        Cause::Need(name) | Cause::Tax(name) => name.clone(),
        Cause::LeastCharge(item) => format!("{LEAST_CHARGE}{item}"),
        Cause::PurchaseTax(name) => format!("{name}{ON_PURCHASES}"),
        Cause::Overhead => "overhead".into(),
        Cause::Contingency => "contingency".into(),
        Cause::Profit => "profit".into(),
        Cause::Minimum => "minimum job".into(),
        Cause::Rounding => "rounding".into(),
        Cause::Fixed => "fixed price".into(),
        Cause::Discount(says) => format!("{TAKEN_OFF}{says}"),
    }
}

/// The total a line belongs to.
pub const fn side(side: Tier) -> &'static str {
    match side {
        Tier::Direct => "direct",
        Tier::Indirect => "indirect",
        Tier::Price => "price",
        Tier::Tax => "tax",
    }
}

/// The other way round, for a line that nothing is bought for; none where it is no such line.
pub fn added(word: &str, of: &str) -> Option<(Cause, Tier)> {
    let sides = [Tier::Direct, Tier::Indirect, Tier::Price, Tier::Tax];
    let found = sides.into_iter().find(|one| side(*one) == of)?;
    let among = |causes: &[Cause]| causes.iter().find(|one| cause(one) == word).cloned();
    let cause = match found {
        Tier::Direct => match word.strip_prefix(LEAST_CHARGE) {
            Some(item) => Cause::LeastCharge(item.to_owned()),
            None => Cause::PurchaseTax(word.strip_suffix(ON_PURCHASES)?.to_owned()),
        },
        Tier::Indirect => among(&[Cause::Overhead, Cause::Contingency])?,
        Tier::Price => match word.strip_prefix(TAKEN_OFF) {
            Some(says) => Cause::Discount(says.to_owned()),
            None => among(&[Cause::Profit, Cause::Minimum, Cause::Rounding, Cause::Fixed])?,
        },
        Tier::Tax => Cause::Tax(word.to_owned()),
    };
    Some((cause, found))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_written_reads_back() {
        let name = || "sales tax".to_owned();
        for (cause, side, words) in [
            (
                Cause::PurchaseTax(name()),
                Tier::Direct,
                "sales tax on purchases, direct",
            ),
            (
                Cause::LeastCharge(name()),
                Tier::Direct,
                "minimum charge, sales tax, direct",
            ),
            (Cause::Overhead, Tier::Indirect, "overhead, indirect"),
            (Cause::Contingency, Tier::Indirect, "contingency, indirect"),
            (Cause::Profit, Tier::Price, "profit, price"),
            (Cause::Minimum, Tier::Price, "minimum job, price"),
            (Cause::Rounding, Tier::Price, "rounding, price"),
            (Cause::Fixed, Tier::Price, "fixed price, price"),
            (
                Cause::Discount(name()),
                Tier::Price,
                "taken off, sales tax, price",
            ),
            (Cause::Tax(name()), Tier::Tax, "sales tax, tax"),
        ] {
            let (word, of) = (super::cause(&cause), super::side(side));
            // These words stand in records on disk.
            assert_eq!(format!("{word}, {of}"), words);
            assert_eq!(added(&word, of), Some((cause, side)));
        }
        assert_eq!(added("profit", "indirect"), None);
        assert_eq!(added("gravel", "direct"), None);
    }
}
