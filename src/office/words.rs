//! The words of a record's lines: written and read back in one place.
//!
//! They are part of the format. A view may call a cause something else tomorrow; a record may not.

use crate::costing::{Cause, PricePart};

const ON_PURCHASES: &str = " on purchases";

/// What a line is there for.
pub fn cause(cause: &Cause) -> String {
    match cause {
        Cause::Need(name) | Cause::Tax(name) => name.clone(),
        Cause::PurchaseTax(name) => format!("{name}{ON_PURCHASES}"),
        Cause::Overhead => "overhead".into(),
        Cause::Contingency => "contingency".into(),
        Cause::Profit => "profit".into(),
        Cause::Minimum => "minimum job".into(),
        Cause::Rounding => "rounding".into(),
        Cause::Fixed => "fixed price".into(),
    }
}

/// The total a line belongs to.
pub const fn side(side: PricePart) -> &'static str {
    match side {
        PricePart::Direct => "direct",
        PricePart::Indirect => "indirect",
        PricePart::Price => "price",
        PricePart::Tax => "tax",
    }
}

/// The other way round, for a line that nothing is bought for; none where it is no such line.
pub fn added(word: &str, of: &str) -> Option<(Cause, PricePart)> {
    let sides = [
        PricePart::Direct,
        PricePart::Indirect,
        PricePart::Price,
        PricePart::Tax,
    ];
    let found = sides.into_iter().find(|one| side(*one) == of)?;
    let among = |causes: &[Cause]| causes.iter().find(|one| cause(one) == word).cloned();
    let cause = match found {
        PricePart::Direct => Cause::PurchaseTax(word.strip_suffix(ON_PURCHASES)?.to_owned()),
        PricePart::Indirect => among(&[Cause::Overhead, Cause::Contingency])?,
        PricePart::Price => among(&[Cause::Profit, Cause::Minimum, Cause::Rounding, Cause::Fixed])?,
        PricePart::Tax => Cause::Tax(word.to_owned()),
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
                PricePart::Direct,
                "sales tax on purchases, direct",
            ),
            (Cause::Overhead, PricePart::Indirect, "overhead, indirect"),
            (
                Cause::Contingency,
                PricePart::Indirect,
                "contingency, indirect",
            ),
            (Cause::Profit, PricePart::Price, "profit, price"),
            (Cause::Minimum, PricePart::Price, "minimum job, price"),
            (Cause::Rounding, PricePart::Price, "rounding, price"),
            (Cause::Fixed, PricePart::Price, "fixed price, price"),
            (Cause::Tax(name()), PricePart::Tax, "sales tax, tax"),
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
