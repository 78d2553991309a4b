//! What a late charge comes to: worked out when asked, never billed by itself.

use rust_decimal::Decimal;

use crate::input::phrases::{LateCharge, LatePer};
use crate::values::{Day, Money, rounding};

/// A charge to a day, and how it came about.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Late {
    pub amount: Money,
    /// `$500.00 × 1% × 2 months`.
    pub working: String,
}

/// On what is open today of an invoice that was due; nothing before a charge falls due.
/// Rounded once, to the cent.
pub fn charge(open: Money, due: Day, today: Day, rule: LateCharge) -> Option<Late> {
    if open <= Money::ZERO || today <= due {
        return None;
    }
    let (dollars, rate, said) = (open.dollars(), rule.rate.fraction(), rule.rate);
    let months = whole_months(due, today);
    let times = if months == 1 { "month" } else { "months" };
    let (amount, working) = match rule.per {
        LatePer::Year => {
            let days = today.days_since(due);
            let part = Decimal::from(days) / Decimal::from(365);
            (
                dollars * rate * part,
                format!("{open} × {said} × {days} days ÷ 365"),
            )
        }
        LatePer::Month if rule.is_compound => {
            let grown = (0..months).fold(Decimal::ONE, |grown, _| grown * (Decimal::ONE + rate));
            let working = format!("{open} × (1 + {said}), {months} {times} over, less {open}");
            (dollars * (grown - Decimal::ONE), working)
        }
        LatePer::Month => (
            dollars * rate * Decimal::from(months),
            format!("{open} × {said} × {months} {times}"),
        ),
    };
    let amount = rounding::to_cents(amount);
    (Money::ZERO < amount).then_some(Late { amount, working })
}

/// Months that are over: one from May 22 is over on June 22, one from January 31 on the last of February.
fn whole_months(from: Day, to: Day) -> u32 {
    let over = |months: u32| {
        let after = from.date().checked_add_months(chrono::Months::new(months));
        after.is_some_and(|day| day <= to.date())
    };
    let mut months = 0;
    while over(months + 1) {
        months += 1;
    }
    months
}

#[cfg(test)]
mod tests {
    use super::*;

    fn told(open: i64, due: &str, today: &str, rule: &str) -> Option<(i64, String)> {
        let late = charge(
            Money::cents(open),
            due.parse().unwrap(),
            today.parse().unwrap(),
            rule.parse().unwrap(),
        )?;
        Some((late.amount.as_cents(), late.working))
    }

    #[test]
    fn simple_and_compound_part_after_the_first_month() {
        let amount =
            |today: &str, rule: &str| told(100_000, "2026-05-22", today, rule).map(|(a, _)| a);
        for rule in ["1.5% a month, simple", "1.5% a month, compound"] {
            assert_eq!(amount("2026-05-22", rule), None);
            assert_eq!(amount("2026-06-21", rule), None, "not a whole month");
            assert_eq!(amount("2026-06-22", rule), Some(1500));
        }
        // 1.5 % a month is 18.00 % a year simple and 19.56 % compounded (computed here).
        assert_eq!(amount("2027-05-22", "1.5% a month, simple"), Some(18_000));
        assert_eq!(amount("2027-05-22", "1.5% a month, compound"), Some(19_562));
        assert_eq!(amount("2027-05-22", "18% a year, simple"), Some(18_000));
        assert_eq!(amount("2026-06-01", "18% a year, simple"), Some(493));
    }

    #[test]
    fn a_month_from_the_last_day_is_over_on_the_last_day() {
        let told = |today: &str| told(100_000, "2026-01-31", today, "1% a month, simple");
        assert_eq!(told("2026-02-27"), None);
        assert_eq!(
            told("2026-02-28"),
            Some((1000, "$1,000.00 × 1% × 1 month".to_owned()))
        );
        assert_eq!(
            told("2026-03-31"),
            Some((2000, "$1,000.00 × 1% × 2 months".to_owned()))
        );
    }
}
