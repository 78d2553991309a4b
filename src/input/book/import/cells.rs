//! What stands in a cell of a supplier's list: dollars and days, as lists in the US have them.

use rust_decimal::Decimal;

use crate::values::{Day, Unreadable, number};

/// Reads `1,234.50`, `$0.62` or `.62`; commas only where they part thousands.
pub fn dollars(text: &str) -> Result<Decimal, Unreadable> {
    let refuse = |message: String, help: &str| Unreadable::new("bad-list-price", message, help);
    if text.is_empty() {
        return Err(refuse(
            "there is no price".to_owned(),
            "ask the supplier for it, or take the article out of the mapping",
        ));
    }
    let below_zero = text.starts_with(['-', '\u{2212}'])
        || text.starts_with("$-")
        || text.ends_with('-')
        || text.starts_with('(') && text.ends_with(')');
    if below_zero {
        return Err(refuse(
            format!("`{text}` is below zero"),
            "a price is what you pay; ask the supplier what is meant",
        ));
    }
    let bare = text.strip_prefix('$').unwrap_or(text).trim_start();
    let (whole, part) = match bare.split_once('.') {
        Some(("", part)) => ("0", part),
        Some(parts) => parts,
        None => (bare, "0"),
    };
    let mut groups = whole.split(',');
    let first = groups.next().unwrap_or_default();
    let parted = groups.clone().next().is_some();
    let grouped = !parted || (1..=3).contains(&first.len()) && groups.all(|group| group.len() == 3);
    let plain = format!("{}.{part}", whole.replace(',', ""));
    let read = if grouped {
        number::digits(&plain)
    } else {
        None
    };
    match read {
        Some(price) if !price.is_zero() => Ok(price),
        Some(_) => Err(refuse(
            "the price is nothing".to_owned(),
            "ask the supplier for it, or take the article out of the mapping",
        )),
        None => Err(refuse(
            format!("cannot read `{text}` as dollars"),
            "a price is written as `1234.50`, `1,234.50` or `$1,234.50`",
        )),
    }
}

/// Reads `2026-05-15`, or `5/15/2026` with the month first.
pub fn day(text: &str) -> Result<Day, Unreadable> {
    let parts: Vec<&str> = text.split('/').collect();
    let iso = match parts[..] {
        [month, day, year] => format!("{year}-{month:0>2}-{day:0>2}"),
        _ => text.to_owned(),
    };
    iso.parse().map_err(|_| {
        Unreadable::new(
            "bad-list-date",
            format!("cannot read `{text}` as a day"),
            "a day is written as `2026-05-15`, or as `5/15/2026` with the month first",
        )
    })
}

#[cfg(test)]
mod tests {
    use rust_decimal_macros::dec;

    use super::*;

    #[test]
    fn prices_are_read_as_lists_print_them() {
        for (text, price) in [
            ("12", dec!(12)),
            ("12.50", dec!(12.50)),
            ("$0.62", dec!(0.62)),
            (".62", dec!(0.62)),
            ("$ 1,234.50", dec!(1234.50)),
            ("1,234,567", dec!(1234567)),
            ("1234.5", dec!(1234.5)),
        ] {
            assert_eq!(dollars(text), Ok(price), "{text}");
        }
    }

    #[test]
    fn what_is_no_price_is_refused() {
        for (text, says) in [
            ("", "no price"),
            ("0.00", "nothing"),
            ("$0", "nothing"),
            ("-12.50", "below zero"),
            ("$-12.50", "below zero"),
            ("-$12.50", "below zero"),
            ("(12.50)", "below zero"),
            ("12.50-", "below zero"),
            ("1.234,50", "cannot read"),
            ("12,50", "cannot read"),
            ("1,2345", "cannot read"),
            ("1234,567", "cannot read"),
            (",500", "cannot read"),
            ("$", "cannot read"),
            (".", "cannot read"),
            ("12.", "cannot read"),
            ("1 234", "cannot read"),
            ("1e3", "cannot read"),
            ("call", "cannot read"),
            ("1.2.3", "cannot read"),
        ] {
            let refused = dollars(text).unwrap_err();
            assert!(refused.message.contains(says), "{text}: {refused:?}");
        }
    }

    #[test]
    fn days_are_read_with_the_year_first_or_the_month() {
        let may: Day = "2026-05-04".parse().unwrap();
        for text in ["2026-05-04", "5/4/2026", "05/04/2026"] {
            assert_eq!(day(text), Ok(may), "{text}");
        }
        for text in [
            "",
            "5/4/26",
            "15/4/2026",
            "2/29/2026",
            "May 4, 2026",
            "5-4-2026",
            "/5/2026",
            "5/4/2026/1",
        ] {
            assert_eq!(
                day(text).map_err(|e| e.code),
                Err("bad-list-date"),
                "{text}"
            );
        }
    }
}
