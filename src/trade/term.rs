//! Formulas: plain arithmetic that remembers itself, computed and shown as one thing.

use std::fmt::Write as _;
use std::ops::{Add, Div, Mul, Sub};

use rust_decimal::Decimal;

pub use super::working::Term;
use super::working::{Form, Name, Quantity, Sign};
use crate::input::phrases::Ratio;
use crate::reading::At;
use crate::values::{Amount, Unit, rounding};

impl From<&Quantity> for Term {
    fn from(quantity: &Quantity) -> Self {
        // A percentage takes part as its fraction and is shown with its sign.
        let value = if quantity.amount().unit == Unit::Percent {
            quantity.value() / Decimal::ONE_HUNDRED
        } else {
            quantity.value()
        };
        Self {
            value,
            form: Form::Of(quantity.clone()),
        }
    }
}

impl From<Decimal> for Term {
    fn from(value: Decimal) -> Self {
        Self {
            value,
            form: Form::Number,
        }
    }
}

/// The quantity as a term of a formula.
pub fn of(quantity: &Quantity) -> Term {
    quantity.into()
}

/// A plain number of the formula.
pub fn number(value: impl Into<Decimal>) -> Term {
    value.into().into()
}

/// All of them together; nothing is zero.
pub fn sum<'a>(quantities: impl IntoIterator<Item = &'a Quantity>) -> Term {
    let terms: Vec<Term> = quantities.into_iter().map(Term::from).collect();
    Term {
        value: terms.iter().map(|term| term.value).sum(),
        form: Form::Sum(terms),
    }
}

/// The largest of them.
pub fn largest(terms: Vec<Term>) -> Term {
    let value = terms
        .iter()
        .map(|term| term.value)
        .max()
        .unwrap_or_default();
    Term {
        value,
        form: Form::Largest(terms),
    }
}

impl Term {
    pub fn value(&self) -> Decimal {
        self.value
    }

    /// Up to the next whole multiple of `step`.
    pub fn up_to(self, step: impl Into<Term>) -> Self {
        let step = step.into();
        Self {
            value: rounding::round_up_to(self.value, step.value),
            form: Form::Up {
                what: Box::new(self),
                step: Box::new(step),
            },
        }
    }

    /// Up to the next whole number.
    pub fn whole(self) -> Self {
        self.up_to(number(1))
    }

    /// What was there before the last step up, or before the smallest sale, where there was one.
    pub(super) fn before_step(&self) -> Option<Decimal> {
        let wanted = self.unstepped();
        (!std::ptr::eq(wanted, self)).then_some(wanted.value)
    }

    /// The same term without them.
    pub(super) fn unstepped(&self) -> &Self {
        match &self.form {
            Form::Up { what, .. } => what,
            Form::AtLeast { what, .. } => what.unstepped(),
            Form::Of(_) | Form::Number | Form::Both(..) | Form::Sum(_) | Form::Largest(_) => self,
        }
    }

    /// No less than the smallest sale.
    pub fn at_least(self, least: &Quantity) -> Self {
        let least = of(least);
        Self {
            value: self.value.max(least.value),
            form: Form::AtLeast {
                what: Box::new(self),
                least: Box::new(least),
            },
        }
    }

    /// Times so much for so much, by what both are called here.
    pub fn at_rate(self, (much, per): (impl Into<Name>, &'static str), ratio: &At<Ratio>) -> Self {
        let much = Quantity::given(much, ratio.value.much, ratio.place);
        let per = Quantity::given(per, ratio.value.per, ratio.place);
        self * &much / &per
    }

    pub(super) fn shown(&self) -> String {
        let mut out = String::new();
        self.show(&mut out, 0);
        out
    }

    /// Writes the formula; `tight` is how strongly its surroundings bind.
    fn show(&self, out: &mut String, tight: u8) {
        match &self.form {
            Form::Of(quantity) => out.push_str(&quantity.amount().to_string()),
            Form::Number => out.push_str(&Amount::new(self.value, Unit::Plain).number()),
            Form::Both(left, sign, right) => {
                let (symbol, strength) = match sign {
                    Sign::Plus => ("+", 1),
                    Sign::Minus => ("−", 1),
                    Sign::Times => ("×", 2),
                    Sign::Over => ("÷", 2),
                };
                let bracket = strength < tight;
                if bracket {
                    out.push('(');
                }
                left.show(out, strength);
                let _ = write!(out, " {symbol} ");
                right.show(out, strength + 1);
                if bracket {
                    out.push(')');
                }
            }
            Form::Sum(terms) => joined(out, terms, " + ", 1 < tight && 1 < terms.len()),
            Form::Largest(terms) => {
                out.push_str("largest of ");
                joined(out, terms, ", ", true);
            }
            Form::AtLeast { what, least } => {
                out.push_str("largest of ");
                joined(out, [&**what, &**least], ", ", true);
            }
            Form::Up { what, step } => {
                if 0 < tight {
                    out.push('(');
                }
                what.show(out, 1);
                if step.value == Decimal::ONE {
                    out.push_str(", up to a whole one");
                } else {
                    let _ = write!(out, ", up to the next {}", step_shown(step.value));
                }
                if 0 < tight {
                    out.push(')');
                }
            }
        }
    }

    pub(super) fn collect<'a>(&'a self, parts: &mut Vec<&'a Quantity>) {
        match &self.form {
            Form::Of(quantity) => {
                if !parts.iter().any(|part| part.is(quantity)) {
                    parts.push(quantity);
                }
            }
            Form::Number => {}
            Form::Both(left, _, right) => {
                left.collect(parts);
                right.collect(parts);
            }
            Form::Sum(terms) | Form::Largest(terms) => {
                for term in terms {
                    term.collect(parts);
                }
            }
            Form::Up { what, step: other } | Form::AtLeast { what, least: other } => {
                what.collect(parts);
                other.collect(parts);
            }
        }
    }

    fn with(self, sign: Sign, other: Self, value: Decimal) -> Self {
        Self {
            value,
            form: Form::Both(Box::new(self), sign, Box::new(other)),
        }
    }
}

/// `0.25`, but `1/3`: many steps of 0.3333 would not come to the whole yards they make.
fn step_shown(step: Decimal) -> String {
    let shown = Amount::new(step, Unit::Plain).number();
    let parts = Decimal::ONE
        .checked_div(step)
        .map(|parts| rounding::to_places(parts, 9).normalize())
        .filter(|parts| parts.is_integer() && rounding::to_places(step, 4) != step);
    parts.map_or(shown, |parts| format!("1/{parts}"))
}

fn joined<'a>(
    out: &mut String,
    terms: impl IntoIterator<Item = &'a Term>,
    between: &str,
    bracket: bool,
) {
    if bracket {
        out.push('(');
    }
    let start = out.len();
    for term in terms {
        if out.len() != start {
            out.push_str(between);
        }
        term.show(out, 1);
    }
    if out.len() == start {
        out.push('0');
    }
    if bracket {
        out.push(')');
    }
}

impl<T: Into<Term>> Add<T> for Term {
    type Output = Self;
    fn add(self, other: T) -> Self {
        let other = other.into();
        let value = self.value + other.value;
        self.with(Sign::Plus, other, value)
    }
}

impl<T: Into<Term>> Sub<T> for Term {
    type Output = Self;
    fn sub(self, other: T) -> Self {
        let other = other.into();
        let value = self.value - other.value;
        self.with(Sign::Minus, other, value)
    }
}

impl<T: Into<Term>> Mul<T> for Term {
    type Output = Self;
    fn mul(self, other: T) -> Self {
        let other = other.into();
        let value = self.value * other.value;
        self.with(Sign::Times, other, value)
    }
}

impl<T: Into<Term>> Div<T> for Term {
    type Output = Self;

    /// Division by zero gives zero: divisors are checked to be above zero on reading.
    fn div(self, other: T) -> Self {
        let other = other.into();
        let value = self.value.checked_div(other.value).unwrap_or_default();
        self.with(Sign::Over, other, value)
    }
}
