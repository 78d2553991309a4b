//! Numbers that remember how they came about.
//!
//! A [`Quantity`] is an amount with a name and a working. Its working is either
//! where the owner wrote it, or a formula over other quantities, built by plain
//! arithmetic on [`Term`]s: what is computed and what is shown is one thing.

use std::sync::Arc;

use rust_decimal::Decimal;

use super::term::Term;
use crate::reading::{At, Place};
use crate::values::{Amount, Length, Money, Percent, Unit, rounding};

/// An amount that knows its name and its working; cheap to share.
#[derive(Clone, Debug)]
pub struct Quantity(Arc<Known>);

#[derive(Debug)]
struct Known {
    name: String,
    amount: Amount,
    working: Working,
}

/// How a quantity came about.
#[derive(Clone, Debug)]
pub enum Working {
    /// Written by the owner at this place.
    Given(Place),
    /// Read off the shape at this place; `how` says it in words.
    Shape { how: String, place: Place },
    /// Found step by step from other quantities; `how` says it in words.
    Plan {
        how: String,
        of: Vec<Quantity>,
        rule: &'static str,
    },
    /// Computed: the formula, and the rule it follows with its source.
    Rule { term: Term, rule: &'static str },
    /// Overruled by the owner, who said why.
    Set {
        computed: Quantity,
        because: String,
        place: Place,
    },
}

impl Quantity {
    pub fn new(name: impl Into<String>, amount: Amount, working: Working) -> Self {
        Self(Arc::new(Known {
            name: name.into(),
            amount,
            working,
        }))
    }

    /// What the owner wrote.
    pub fn given(name: impl Into<String>, amount: Amount, place: Place) -> Self {
        Self::new(name, amount, Working::Given(place))
    }

    pub fn feet(name: impl Into<String>, length: &At<Length>) -> Self {
        Self::given(name, length.value.in_feet(), length.place)
    }

    pub fn inches(name: impl Into<String>, length: &At<Length>) -> Self {
        Self::given(name, length.value.in_inches(), length.place)
    }

    pub fn percent(name: impl Into<String>, percent: &At<Percent>) -> Self {
        Self::given(name, percent.value.into(), percent.place)
    }

    /// The value of `term`, in `unit`, by a named rule.
    pub fn by(
        rule: &'static str,
        name: impl Into<String>,
        unit: Unit,
        term: impl Into<Term>,
    ) -> Self {
        let term = term.into();
        Self::new(
            name,
            Amount::new(term.value(), unit),
            Working::Rule { term, rule },
        )
    }

    /// The value of `term` in whole cents.
    pub fn money(rule: &'static str, name: impl Into<String>, term: impl Into<Term>) -> Self {
        let term = term.into();
        let money = rounding::to_cents(term.value());
        Self::new(name, money.into(), Working::Rule { term, rule })
    }

    pub fn set(self, to: Amount, because: String, place: Place) -> Self {
        let name = self.name().to_owned();
        let unit = self.amount().unit;
        Self::new(
            name,
            Amount::new(to.value, unit),
            Working::Set {
                computed: self,
                because,
                place,
            },
        )
    }

    pub fn name(&self) -> &str {
        &self.0.name
    }

    pub fn amount(&self) -> Amount {
        self.0.amount
    }

    pub fn value(&self) -> Decimal {
        self.0.amount.value
    }

    pub fn working(&self) -> &Working {
        &self.0.working
    }

    pub fn as_term(&self) -> Term {
        self.into()
    }

    /// Dollars and cents; only for quantities made by [`Quantity::money`].
    pub fn as_money(&self) -> Money {
        rounding::to_cents(self.value())
    }

    /// The working in one line that a pocket calculator can follow; empty for what was given.
    pub fn shown(&self) -> String {
        match &self.0.working {
            Working::Given(_) => String::new(),
            Working::Shape { how, .. } | Working::Plan { how, .. } => how.clone(),
            Working::Rule { term, .. } => term.shown(),
            Working::Set {
                computed, because, ..
            } => format!(
                "set by you, because {because}; computed {}",
                computed.amount()
            ),
        }
    }

    /// The quantities this one was made of, in the order they are shown.
    pub fn parts(&self) -> Vec<Self> {
        match &self.0.working {
            Working::Given(_) | Working::Shape { .. } => Vec::new(),
            Working::Rule { term, .. } => {
                let mut parts = Vec::new();
                term.collect(&mut parts);
                parts
            }
            Working::Plan { of, .. } => of.clone(),
            Working::Set { computed, .. } => vec![computed.clone()],
        }
    }

    /// Whether both are the very same number, not only equal ones.
    pub fn is(&self, other: &Self) -> bool {
        Arc::ptr_eq(&self.0, &other.0)
    }

    /// Where the owner wrote or overruled it.
    pub fn place(&self) -> Option<Place> {
        match &self.0.working {
            Working::Given(place) | Working::Shape { place, .. } | Working::Set { place, .. } => {
                Some(*place)
            }
            Working::Rule { .. } | Working::Plan { .. } => None,
        }
    }

    /// The rule it follows, with its source; empty where there is none.
    pub fn rule(&self) -> &'static str {
        match &self.0.working {
            Working::Rule { rule, .. } | Working::Plan { rule, .. } => rule,
            Working::Given(_) | Working::Shape { .. } | Working::Set { .. } => "",
        }
    }
}

<<<<<<< HEAD
=======
/// One step of a formula, with its value.
#[derive(Clone, Debug)]
pub struct Term {
    value: Decimal,
    form: Form,
}

#[derive(Clone, Debug)]
enum Form {
    Of(Quantity),
    Number,
    Both(Box<Term>, Sign, Box<Term>),
    Sum(Vec<Term>),
    Up { what: Box<Term>, step: Box<Term> },
    Largest(Vec<Term>),
    Cents(Box<Term>),
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Sign {
    Plus,
    Minus,
    Times,
    Over,
}

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

    /// In whole cents.
    pub fn cents(self) -> Self {
        Self {
            value: rounding::to_cents(self.value).dollars(),
            form: Form::Cents(Box::new(self)),
        }
    }

    fn shown(&self) -> String {
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
            Form::Cents(what) => {
                what.show(out, tight);
            }
        }
    }

    fn collect(&self, parts: &mut Vec<Quantity>) {
        match &self.form {
            Form::Of(quantity) => {
                if !parts.iter().any(|part| part.is(quantity)) {
                    parts.push(quantity.clone());
                }
            }
            Form::Number => {}
            Form::Both(left, _, right) => {
                left.collect(parts);
                right.collect(parts);
            }
            Form::Sum(terms) | Form::Largest(terms) => {
                terms.iter().for_each(|term| term.collect(parts))
            }
            Form::Up { what, step } => {
                what.collect(parts);
                step.collect(parts);
            }
            Form::Cents(what) => what.collect(parts),
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

fn joined(out: &mut String, terms: &[Term], between: &str, bracket: bool) {
    if bracket {
        out.push('(');
    }
    for (i, term) in terms.iter().enumerate() {
        if i != 0 {
            out.push_str(between);
        }
        term.show(out, 1);
    }
    if terms.is_empty() {
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

>>>>>>> f383081727bf92eb553ef99876459cc80296044d
#[cfg(test)]
mod tests {
    use rust_decimal_macros::dec;

    use super::*;
    use crate::reading::FileId;
    use crate::trade::term::{number, of};

    fn q(name: &str, value: Decimal, unit: Unit) -> Quantity {
        let place = Place {
            file: FileId(0),
            start: 0,
            end: 0,
        };
        Quantity::given(name, Amount::new(value, unit), place)
    }

    #[test]
    fn shows_the_formula_it_computed() {
        let area = q("area", dec!(432), Unit::SquareFoot);
        let thick = q("thickness", dec!(4), Unit::Inch);
        let volume = Quantity::by(
            "",
            "concrete",
            Unit::CubicYard,
            of(&area) * &thick / number(324),
        );
        assert_eq!(volume.shown(), "432 sq ft × 4 in ÷ 324");
        assert_eq!(volume.amount().to_string(), "5.3333 cu yd");
        let share = q("allowance", dec!(7), Unit::Percent);
        let order = Quantity::by(
            "",
            "order",
            Unit::CubicYard,
            (of(&volume) + of(&volume) * &share).up_to(number(dec!(0.25))),
        );
        assert_eq!(
            order.shown(),
            "5.3333 cu yd + 5.3333 cu yd × 7%, up to the next 0.25"
        );
        assert_eq!(order.value(), dec!(5.75));
        assert_eq!(order.parts().len(), 2);
    }

    #[test]
    fn brackets_only_where_a_calculator_needs_them() {
        let a = q("a", dec!(2), Unit::Foot);
        assert_eq!(
            Quantity::by("", "x", Unit::Foot, (of(&a) - number(1)) * number(3)).shown(),
            "(2 ft − 1) × 3"
        );
        assert_eq!(
            Quantity::by("", "x", Unit::Foot, of(&a) / (number(4) / number(2))).shown(),
            "2 ft ÷ (4 ÷ 2)"
        );
        assert_eq!(
            Quantity::by("", "x", Unit::Foot, number(9) - (of(&a) + number(1))).shown(),
            "9 − (2 ft + 1)"
        );
    }

    #[test]
    fn a_third_is_shown_as_a_third() {
        let third = Decimal::ONE / dec!(3);
        let order = Quantity::by(
            "",
            "x",
            Unit::CubicYard,
            number(dec!(20.1)).up_to(number(third)),
        );
        assert_eq!(order.shown(), "20.1, up to the next 1/3");
        let order = Quantity::by(
            "",
            "x",
            Unit::CubicYard,
            number(dec!(20.1)).up_to(number(dec!(0.25))),
        );
        assert_eq!(order.shown(), "20.1, up to the next 0.25");
    }

    #[test]
    fn a_set_quantity_keeps_what_was_computed() {
        let hours = q("hours", dec!(12), Unit::Hour);
        let place = Place {
            file: FileId(0),
            start: 1,
            end: 2,
        };
        let set = hours.set(Amount::new(dec!(14), Unit::Plain), "two men".into(), place);
        assert_eq!(set.value(), dec!(14));
        assert_eq!(
            set.shown(),
            "set by you, because two men; computed 12 hours"
        );
    }
}
