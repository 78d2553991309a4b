//! Numbers that remember how they came about.
//!
//! A [`Quantity`] is an amount with a name and a working. Its working is either
//! where the owner wrote it, or a formula over other quantities, built by plain
//! arithmetic on [`Term`]s: what is computed and what is shown is one thing.

use std::borrow::Cow;
use std::sync::Arc;

use rust_decimal::Decimal;

use crate::input::phrases::Ratio;
use crate::reading::{At, Place};
use crate::values::{Amount, Length, Money, Unit, rounding};

/// What a quantity is called; most names stand in the code.
pub type Name = Cow<'static, str>;

/// An amount that knows its name and its working; cheap to share.
#[derive(Clone, Debug)]
pub struct Quantity(Arc<NamedAmount>);

#[derive(Debug)]
struct NamedAmount {
    name: Name,
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
        /// What was written, where that is in another unit: `8 crew hours of 3 people`.
        said: Option<String>,
        because: String,
        place: Place,
    },
}

/// One step of a formula, with its value; its arithmetic is in `term.rs`.
#[derive(Clone, Debug)]
pub struct Term {
    pub(super) value: Decimal,
    pub(super) form: Form,
}

#[derive(Clone, Debug)]
pub(super) enum Form {
    Of(Quantity),
    Number,
    Both(Box<Term>, Sign, Box<Term>),
    Sum(Vec<Term>),
    Up { what: Box<Term>, step: Box<Term> },
    Largest(Vec<Term>),
    AtLeast { what: Box<Term>, least: Box<Term> },
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Sign {
    Plus,
    Minus,
    Times,
    Over,
}

impl Working {
    /// Found step by step from `of`, as `how` says.
    pub fn plan(how: impl Into<String>, of: Vec<Quantity>, rule: &'static str) -> Self {
        Self::Plan {
            how: how.into(),
            of,
            rule,
        }
    }
}

impl Quantity {
    pub fn new(name: impl Into<Name>, amount: Amount, working: Working) -> Self {
        Self(Arc::new(NamedAmount {
            name: name.into(),
            amount,
            working,
        }))
    }

    /// What the owner wrote.
    pub fn given(name: impl Into<Name>, amount: Amount, place: Place) -> Self {
        Self::new(name, amount, Working::Given(place))
    }

    /// The same, for what was read with its place.
    pub fn said<T: Copy + Into<Amount>>(name: impl Into<Name>, said: &At<T>) -> Self {
        Self::given(name, said.value.into(), said.place)
    }

    /// So much of `unit` for one of what it is for.
    pub fn each(name: impl Into<Name>, unit: Unit, ratio: &At<Ratio>) -> Self {
        let (much, per) = (ratio.value.much.value, ratio.value.per.value);
        Self::given(name, Amount::new(much / per, unit), ratio.place)
    }

    pub fn feet(name: impl Into<Name>, length: &At<Length>) -> Self {
        Self::given(name, length.value.in_feet(), length.place)
    }

    pub fn inches(name: impl Into<Name>, length: &At<Length>) -> Self {
        Self::given(name, length.value.in_inches(), length.place)
    }

    /// The value of `term`, in `unit`, by a named rule.
    pub fn by(
        rule: &'static str,
        name: impl Into<Name>,
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
    pub fn money(rule: &'static str, name: impl Into<Name>, term: impl Into<Term>) -> Self {
        let term = term.into();
        let money = rounding::to_cents(term.value());
        Self::new(name, money.into(), Working::Rule { term, rule })
    }

    pub fn set(self, to: Decimal, said: Option<String>, because: String, place: Place) -> Self {
        let (name, amount) = (self.0.name.clone(), Amount::new(to, self.amount().unit));
        let computed = self;
        let working = Working::Set {
            computed,
            said,
            because,
            place,
        };
        Self::new(name, amount, working)
    }

    pub fn name(&self) -> &str {
        &self.0.name
    }

    /// Its name, for another quantity that is called the same.
    pub fn named(&self) -> Name {
        self.0.name.clone()
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
                computed,
                said,
                because,
                ..
            } => format!(
                "set by you{}, because {because}; computed {}",
                as_said(said.as_ref()),
                computed.amount()
            ),
        }
    }

    /// What was needed before it went up to a whole step; none where it did not, or was set.
    pub fn before_step(&self) -> Option<Decimal> {
        match &self.0.working {
            Working::Rule { term, .. } => term.before_step(),
            Working::Given(_)
            | Working::Shape { .. }
            | Working::Plan { .. }
            | Working::Set { .. } => None,
        }
    }

    /// What was needed before it went up to how the item is sold; itself where it did not, or was set.
    pub(super) fn wanted(&self) -> Term {
        match &self.0.working {
            Working::Rule { term, .. } => term.unstepped().clone(),
            Working::Given(_)
            | Working::Shape { .. }
            | Working::Plan { .. }
            | Working::Set { .. } => Term::from(self),
        }
    }

    /// The quantities this one was made of, in the order they are shown.
    pub fn parts(&self) -> Vec<Self> {
        self.made_of().into_iter().cloned().collect()
    }

    /// The same, where they only have to be looked at.
    pub fn made_of(&self) -> Vec<&Self> {
        match &self.0.working {
            Working::Given(_) | Working::Shape { .. } => Vec::new(),
            Working::Rule { term, .. } => {
                let mut parts = Vec::new();
                term.collect(&mut parts);
                parts
            }
            Working::Plan { of, .. } => of.iter().collect(),
            Working::Set { computed, .. } => vec![computed],
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

    /// What was computed where the owner set another.
    pub fn overruled(&self) -> Option<&Self> {
        match &self.0.working {
            Working::Set { computed, .. } => Some(computed),
            Working::Given(_)
            | Working::Shape { .. }
            | Working::Plan { .. }
            | Working::Rule { .. } => None,
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

/// ` as 8 crew hours of 3 people`, where the owner wrote another unit.
pub fn as_said(said: Option<&String>) -> String {
    said.map_or_else(String::new, |said| format!(" as {said}"))
}

#[cfg(test)]
mod tests {
    use rust_decimal_macros::dec;

    use super::*;
    use crate::reading::FileId;
    use crate::trade::term::{number, of};

    const HERE: Place = Place {
        file: FileId(0),
        start: 0,
        end: 0,
    };

    fn q(name: &'static str, value: Decimal, unit: Unit) -> Quantity {
        Quantity::given(name, Amount::new(value, unit), HERE)
    }

    fn x(unit: Unit, term: Term) -> Quantity {
        Quantity::by("", "x", unit, term)
    }

    #[test]
    fn shows_the_formula_it_computed() {
        let area = q("area", dec!(432), Unit::SquareFoot);
        let thick = q("thickness", dec!(4), Unit::Inch);
        let volume = x(Unit::CubicYard, of(&area) * &thick / number(324));
        assert_eq!(volume.shown(), "432 sq ft × 4 in ÷ 324");
        assert_eq!(volume.amount().to_string(), "5.3333 cu yd");
        let share = q("allowance", dec!(7), Unit::Percent);
        let gross = of(&volume) + of(&volume) * &share;
        let order = x(Unit::CubicYard, gross.up_to(number(dec!(0.25))));
        assert_eq!(
            order.shown(),
            "5.3333 cu yd + 5.3333 cu yd × 7%, up to the next 0.25"
        );
        assert_eq!(order.value(), dec!(5.75));
        assert_eq!(order.parts().len(), 2);
    }

    #[test]
    fn brackets_stand_only_where_a_calculator_needs_them_and_a_third_is_a_third() {
        #[track_caller]
        fn case(term: Term, shown: &str) {
            assert_eq!(x(Unit::Foot, term).shown(), shown);
        }
        let a = q("a", dec!(2), Unit::Foot);
        case((of(&a) - number(1)) * number(3), "(2 ft − 1) × 3");
        case(of(&a) / (number(4) / number(2)), "2 ft ÷ (4 ÷ 2)");
        case(number(9) - (of(&a) + number(1)), "9 − (2 ft + 1)");
        let yards = || number(dec!(20.1));
        let third = number(Decimal::ONE / dec!(3));
        case(yards().up_to(third), "20.1, up to the next 1/3");
        let quarter = number(dec!(0.25));
        case(yards().up_to(quarter), "20.1, up to the next 0.25");
    }

    #[test]
    fn what_was_needed_before_a_step_or_a_smallest_sale() {
        #[track_caller]
        fn case(term: Term, before: Option<Decimal>) {
            assert_eq!(x(Unit::Foot, term).before_step(), before);
        }
        let least = q("whatever it is called", dec!(5), Unit::Foot);
        case(number(dec!(1.5)).whole(), Some(dec!(1.5)));
        let sold = number(dec!(1.5)).whole().at_least(&least);
        assert_eq!(
            x(Unit::Foot, sold.clone()).shown(),
            "largest of ((1.5, up to a whole one), 5 ft)"
        );
        case(sold, Some(dec!(1.5)));
        case(number(dec!(1.5)).at_least(&least), Some(dec!(1.5)));
        case(number(dec!(1.5)), None);
    }

    #[test]
    fn a_set_quantity_keeps_what_was_computed() {
        let hours = q("hours", dec!(12), Unit::Hour);
        let set = hours.set(dec!(14), None, "two men".into(), HERE);
        assert_eq!(set.value(), dec!(14));
        assert_eq!(
            set.shown(),
            "set by you, because two men; computed 12 hours"
        );
    }
}
