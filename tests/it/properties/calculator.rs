//! A pocket calculator that types in a shown working, and how far its answer may be off.
//!
//! It knows only what is printed: numbers with units, `×`, `÷`, `+`, `−`, brackets, `%`, `$`, and
//! the three phrases `up to the next`, `up to a whole one`, `largest of`. Every figure that was
//! rounded for showing carries half of its last place, so the answer is a range.

use flatwork::inside::trade::Quantity;
use flatwork::inside::values::Amount;
use rust_decimal::Decimal;
use rust_decimal_macros::dec;

/// From the lowest to the highest answer that the shown figures allow.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Range {
    pub low: Decimal,
    pub high: Decimal,
}

/// Types in the working of `quantity`.
///
/// # Errors
/// What could not be typed in.
pub fn typed(quantity: &Quantity) -> Result<Range, String> {
    let shown = quantity.shown();
    let parts = quantity.parts();
    let mut calculator = Calculator {
        rest: &shown,
        parts: &parts,
    };
    let range = calculator.stepped()?;
    match calculator.rest.trim() {
        "" => Ok(range),
        rest => Err(format!("left over: `{rest}`")),
    }
}

struct Calculator<'a> {
    rest: &'a str,
    parts: &'a [Quantity],
}

impl Calculator<'_> {
    fn take(&mut self, text: &str) -> bool {
        let found = self.rest.strip_prefix(text);
        self.rest = found.unwrap_or(self.rest);
        found.is_some()
    }

    /// A sum, perhaps rounded up.
    fn stepped(&mut self) -> Result<Range, String> {
        let range = self.sum()?;
        if self.take(", up to a whole one") {
            return Ok(up(range, Decimal::ONE));
        }
        if self.take(", up to the next ") {
            let step = self.number()?.high;
            let step = if self.take("/") {
                step / self.number()?.high
            } else {
                step
            };
            return Ok(up(range, step));
        }
        Ok(range)
    }

    fn sum(&mut self) -> Result<Range, String> {
        let mut left = self.product()?;
        loop {
            if self.take(" + ") {
                let right = self.product()?;
                left = Range {
                    low: left.low + right.low,
                    high: left.high + right.high,
                };
            } else if self.take(" − ") {
                let right = self.product()?;
                left = Range {
                    low: left.low - right.high,
                    high: left.high - right.low,
                };
            } else {
                return Ok(left);
            }
        }
    }

    fn product(&mut self) -> Result<Range, String> {
        let mut left = self.single()?;
        loop {
            if self.take(" × ") {
                left = corners(left, self.single()?, |a, b| a * b);
            } else if self.take(" ÷ ") {
                let right = self.single()?;
                if right.low <= Decimal::ZERO && Decimal::ZERO <= right.high {
                    return Err("division by zero".to_owned());
                }
                left = corners(left, right, |a, b| a / b);
            } else {
                return Ok(left);
            }
        }
    }

    fn single(&mut self) -> Result<Range, String> {
        if self.take("largest of (") {
            let mut largest = self.sum()?;
            while self.take(", ") {
                let next = self.sum()?;
                largest = Range {
                    low: largest.low.max(next.low),
                    high: largest.high.max(next.high),
                };
            }
            return if self.take(")") {
                Ok(largest)
            } else {
                Err(format!("no `)` before `{}`", self.rest))
            };
        }
        if self.take("(") {
            let inner = self.stepped()?;
            return if self.take(")") {
                Ok(inner)
            } else {
                Err(format!("no `)` before `{}`", self.rest))
            };
        }
        self.number()
    }

    /// A number, with its sign and unit.
    fn number(&mut self) -> Result<Range, String> {
        let start = self.rest;
        let minus = self.take("-");
        let dollars = self.take("$");
        let end = self
            .rest
            .find(|c: char| !(c.is_ascii_digit() || c == ',' || c == '.'))
            .unwrap_or(self.rest.len());
        // The comma of `, up to` ends a number; that of `1,234` does not.
        let digits = self.rest[..end].trim_end_matches(',');
        self.rest = &self.rest[digits.len()..];
        let number: Decimal = digits
            .replace(',', "")
            .parse()
            .map_err(|_| format!("no number at `{start}`"))?;
        let number = if minus { -number } else { number };
        let percent = self.take("%");
        if !percent && !dollars && self.rest.starts_with(' ') {
            let word = |c: char| c.is_ascii_alphabetic();
            if self.rest[1..].starts_with(word) {
                let unit = self.rest[1..]
                    .find(|c: char| !word(c) && c != ' ')
                    .map_or(self.rest.len(), |i| i + 1);
                self.rest = &self.rest[self.rest[..unit].trim_end().len()..];
            }
        }
        let shown = &start[..start.len() - self.rest.len()];
        let slack = self.slack(
            shown,
            number,
            if dollars {
                dec!(0.0000005)
            } else {
                dec!(0.00005)
            },
        );
        let (low, high) = (number - slack, number + slack);
        let scale = if percent { dec!(0.01) } else { Decimal::ONE };
        Ok(Range {
            low: low * scale,
            high: high * scale,
        })
    }

    /// Nothing for a figure shown whole, else half of its last place.
    fn slack(&self, shown: &str, number: Decimal, half: Decimal) -> Decimal {
        let same = |part: &&Quantity| part.amount().to_string() == shown;
        let rounded = match self.parts.iter().find(same) {
            Some(part) => part.value() != number,
            None => number.scale() == 4,
        };
        if rounded { half } else { Decimal::ZERO }
    }
}

fn corners(a: Range, b: Range, by: impl Fn(Decimal, Decimal) -> Decimal) -> Range {
    let all = [
        by(a.low, b.low),
        by(a.low, b.high),
        by(a.high, b.low),
        by(a.high, b.high),
    ];
    Range {
        low: all.into_iter().min().expect("four of them"),
        high: all.into_iter().max().expect("four of them"),
    }
}

/// A calculator has no key for this: divide, raise to a whole number by eye, multiply.
fn up(range: Range, step: Decimal) -> Range {
    // By eye, 5.0000000001 is five.
    let raise = |number: Decimal| (number / step - dec!(0.000000001)).ceil() * step;
    Range {
        low: raise(range.low),
        high: raise(range.high),
    }
}

/// How far the printed amount itself may be off.
pub fn printed(amount: Amount) -> Decimal {
    if amount.unit == flatwork::inside::values::Unit::Dollar {
        dec!(0.005)
    } else {
        dec!(0.00005)
    }
}
