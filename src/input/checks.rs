//! What several keys ask of a value they have read: its unit, more than nothing.
//!
//! Each takes the value, its key and the problems, as `then` of `keys!` hands them on.

use rust_decimal::Decimal;

use super::phrases::{Ratio, positive};
use crate::reading::{At, Fields, Problem, Problems, Read, Value, Written};
use crate::values::{Amount, Length, Unit};

macro_rules! units_asked {
    ($($name:ident $unit:ident;)*) => { $(
        pub(super) fn $name(at: At<Amount>, key: &str, problems: &mut Problems) -> Read<At<Amount>> {
            in_unit(at, Unit::$unit, key, problems)
        }
    )* };
}

units_asked! {
    cubic_feet CubicFoot;
    cubic_yards CubicYard;
    plain Plain;
    pounds Pound;
    psi Psi;
    square_feet SquareFoot;
}

/// What can be read of a list; one that says a single thing may say it alone.
pub(super) fn list_of<T: Written>(
    fields: &Fields<'_>,
    key: &'static str,
    problems: &mut Problems,
) -> Vec<At<T>> {
    let Some(node) = fields.node(key) else {
        return Vec::new();
    };
    let items = match &node.value {
        Value::Text(_) => vec![node],
        _ => node.items(&format!("`{key}`"), problems),
    };
    let read = items.into_iter().map(|item| item.read_at(problems));
    read.filter_map(Read::ok).collect()
}

/// Hours of people, also where they are written in minutes.
pub(super) fn hours(at: At<Amount>, key: &str, problems: &mut Problems) -> Read<At<Amount>> {
    let at = at.map(|amount| match amount.unit {
        Unit::Minute => Amount::new(amount.value / Decimal::from(60), Unit::Hour),
        _ => amount,
    });
    in_unit(at, Unit::Hour, key, problems)
}

/// Minutes of a clock, also where they are written in hours.
pub(super) fn minutes(at: At<Amount>, key: &str, problems: &mut Problems) -> Read<At<Amount>> {
    let at = at.map(|amount| match amount.unit {
        Unit::Hour => Amount::new(amount.value * Decimal::from(60), Unit::Minute),
        _ => amount,
    });
    in_unit(at, Unit::Minute, key, problems)
}

/// Degrees Fahrenheit at which concrete is placed at all.
pub(super) fn temperature(at: At<Amount>, key: &str, problems: &mut Problems) -> Read<At<Amount>> {
    let at = plain(at, key, problems)?;
    let degrees = at.value.value;
    if Decimal::from(20) <= degrees && degrees <= Decimal::from(120) {
        return Ok(at);
    }
    let message = format!("{degrees} is not a temperature concrete is placed at");
    let problem = Problem::new("bad-temperature", message).at(at.place);
    Err(problems.push(problem.help("write degrees Fahrenheit from 20 to 120, for example `75`")))
}

/// Hours of people or of the crew, or minutes.
pub(super) fn work_time(at: At<Amount>, key: &str, problems: &mut Problems) -> Read<At<Amount>> {
    if at.value.unit.is_time() {
        return Ok(at);
    }
    hours(at, key, problems)
}

/// A whole number of them, one at least; `2 trips` and `2` are the same.
pub(super) fn trips_planned(
    at: At<Amount>,
    key: &str,
    problems: &mut Problems,
) -> Read<At<Amount>> {
    let unit = match at.value.unit {
        Unit::Trip => Unit::Trip,
        _ => Unit::Plain,
    };
    let at = in_unit(at, unit, key, problems)?;
    let many = at.value.value;
    if many.fract().is_zero() && Decimal::ONE <= many {
        return Ok(at.map(|_| Amount::new(many, Unit::Trip)));
    }
    let problem = Problem::new("not-whole", "the crew comes a whole number of times").at(at.place);
    Err(problems.push(problem.help("write `1` or more, or leave the line out")))
}

macro_rules! above_zero_asked {
    ($($name:ident $unit:ident;)*) => { $(
        pub(super) fn $name(at: At<Amount>, key: &str, problems: &mut Problems) -> Read<At<Amount>> {
            let at = $unit(at, key, problems)?;
            above_zero(at.value.value != Decimal::ZERO, at, problems)
        }
    )* };
}

above_zero_asked! {
    feet_above_zero cubic_feet;
    hours_above_zero hours;
    area_above_zero square_feet;
    number_above_zero plain;
    pounds_above_zero pounds;
    yards_above_zero cubic_yards;
}

/// An amount in this unit and in no other.
pub(super) fn in_unit(
    at: At<Amount>,
    unit: Unit,
    key: &str,
    problems: &mut Problems,
) -> Read<At<Amount>> {
    if let Some(value) = at.value.to(unit) {
        return Ok(at.map(|_| value));
    }
    let (found, wanted) = (at.value.unit.symbol(), unit.symbol());
    let (message, help) = match (at.value.unit, unit) {
        (Unit::Plain, _) => (
            format!("`{key}` has no unit"),
            format!(
                "write it in {wanted}, for example `{} {wanted}`",
                at.value.number()
            ),
        ),
        (_, Unit::Plain) => (
            format!("`{key}` is a plain number, not in {found}"),
            format!("write `{}`", at.value.number()),
        ),
        _ => (
            format!("`{key}` is in {wanted}, not in {found}"),
            format!("convert it, and write it in {wanted}"),
        ),
    };
    let problem = Problem::new("wrong-unit", message).at(at.place);
    Err(problems.push(problem.help(help)))
}

/// The same check where the key was written; what fails counts as left out, once it is reported.
pub(super) fn written<T>(
    check: impl Fn(At<T>, &str, &mut Problems) -> Read<At<T>>,
) -> impl Fn(Option<At<T>>, &str, &mut Problems) -> Option<At<T>> {
    move |at, key, problems| at.and_then(|at| check(at, key, problems).ok())
}

pub(super) fn length_above_zero(
    at: At<Length>,
    _: &str,
    problems: &mut Problems,
) -> Read<At<Length>> {
    above_zero(at.value != Length::ZERO, at, problems)
}

fn above_zero<T>(is: bool, at: At<T>, problems: &mut Problems) -> Read<At<T>> {
    if is {
        return Ok(at);
    }
    let problem = Problem::new("not-above-zero", "this has to be more than zero").at(at.place);
    let help = "write the real figure, or leave the line out for the usual one";
    Err(problems.push(problem.help(help)))
}

/// No shorter than this, and more than nothing.
pub(super) fn at_least(
    at: At<Length>,
    least: Length,
    why: &str,
    problems: &mut Problems,
) -> Read<At<Length>> {
    if least <= at.value && at.value != Length::ZERO {
        return Ok(at);
    }
    let problem = Problem::new("not-above-zero", why).at(at.place);
    Err(problems.push(problem.help("check the figure and its unit")))
}

pub(super) fn per_yard(at: At<Ratio>, _: &str, problems: &mut Problems) -> Read<At<Ratio>> {
    if at.value.per.unit == Unit::CubicYard {
        return Ok(at);
    }
    let problem = Problem::new("wrong-unit", "this is given for each cubic yard").at(at.place);
    Err(problems.push(problem.help("end it with `per cu yd`")))
}

pub(super) fn per_yard_or_load(at: At<Ratio>, _: &str, problems: &mut Problems) -> Read<At<Ratio>> {
    if matches!(at.value.per.unit, Unit::CubicYard | Unit::Load) {
        return Ok(at);
    }
    let message = "this is given for each cubic yard or for each load";
    let problem = Problem::new("wrong-unit", message).at(at.place);
    Err(problems.push(problem.help("end it with `per cu yd` or `per load`")))
}

/// A length of more than nothing that has to be there, by the words of `positive`.
pub(super) fn some_length(
    fields: &Fields<'_>,
    key: &'static str,
    problems: &mut Problems,
) -> Read<At<Length>> {
    let node = fields.required(key, problems)?;
    let text = node.text(&format!("`{key}`"), problems)?;
    let length = positive(text).map_err(|unreadable| problems.unreadable(unreadable, node.place));
    Ok(At::new(length?, node.place))
}

/// The same, if it is said; left out once it is reported.
pub(super) fn length_of_some(
    fields: &Fields<'_>,
    key: &'static str,
    problems: &mut Problems,
) -> Option<At<Length>> {
    let text = fields.read::<String>(key, problems);
    text.and_then(|At { value, place }| match positive(&value) {
        Ok(length) => Some(At::new(length, place)),
        Err(unreadable) => {
            problems.unreadable(unreadable, place);
            None
        }
    })
}
