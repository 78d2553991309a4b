//! The words of a record's lines: written and read back in one place.
//!
//! They are part of the format. A view may call a cause something else tomorrow; a record may not.

use crate::costing::{Cause, Side};

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
pub const fn side(side: Side) -> &'static str {
    match side {
        Side::Direct => "direct",
        Side::Indirect => "indirect",
        Side::Price => "price",
        Side::Tax => "tax",
    }
}

/// The other way round, for a line that nothing is bought for; none where it is no such line.
pub fn added(word: &str, of: &str) -> Option<(Cause, Side)> {
    let sides = [Side::Direct, Side::Indirect, Side::Price, Side::Tax];
    let found = sides.into_iter().find(|one| side(*one) == of)?;
    let among = |causes: &[Cause]| causes.iter().find(|one| cause(one) == word).cloned();
    let cause = match found {
        Side::Direct => Cause::PurchaseTax(word.strip_suffix(ON_PURCHASES)?.to_owned()),
        Side::Indirect => among(&[Cause::Overhead, Cause::Contingency])?,
        Side::Price => among(&[Cause::Profit, Cause::Minimum, Cause::Rounding, Cause::Fixed])?,
        Side::Tax => Cause::Tax(word.to_owned()),
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
                Side::Direct,
                "sales tax on purchases, direct",
            ),
            (Cause::Overhead, Side::Indirect, "overhead, indirect"),
            (Cause::Contingency, Side::Indirect, "contingency, indirect"),
            (Cause::Profit, Side::Price, "profit, price"),
            (Cause::Minimum, Side::Price, "minimum job, price"),
            (Cause::Rounding, Side::Price, "rounding, price"),
            (Cause::Fixed, Side::Price, "fixed price, price"),
            (Cause::Tax(name()), Side::Tax, "sales tax, tax"),
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
