//! Readers that several tables of the book share.

use crate::input::book::ItemKey;
use crate::input::phrases::Ratio;
use crate::reading::{At, Fields, Problem, Problems};
use crate::values::{Amount, Length, Unit};

pub(super) fn item(fields: &Fields<'_>, problems: &mut Problems) -> Option<At<ItemKey>> {
    fields
        .required("item", problems)
        .ok()
        .and_then(|_| fields.read::<String>("item", problems))
}

pub(super) fn yards(fields: &Fields<'_>, key: &str, problems: &mut Problems) -> Option<At<Amount>> {
    let amount = fields.need(key, problems).ok()?;
    crate::input::checks::in_unit(amount, Unit::CubicYard, key, problems).ok()
}

pub(super) fn per_yard(ratio: Option<At<Ratio>>, problems: &mut Problems) -> Option<At<Ratio>> {
    let ratio = ratio?;
    if ratio.value.per.unit == Unit::CubicYard {
        return Some(ratio);
    }
    problems.push(
        Problem::new("wrong-unit", "this is given for each cubic yard")
            .at(ratio.place)
            .help("end it with `per cu yd`"),
    );
    None
}

/// So many pounds, and more than none.
pub(super) fn pounds(at: At<Ratio>, key: &str, problems: &mut Problems) -> Option<At<Ratio>> {
    let much = &at.value.much;
    if much.unit == Unit::Pound && !much.value.is_zero() {
        return Some(at);
    }
    problems.push(
        Problem::new("wrong-unit", format!("`{key}` is measured in lb per cu yd"))
            .at(at.place)
            .help("write the pounds of cement in a yard, for example `564 lb per cu yd`"),
    );
    None
}

/// Minutes, for each cubic yard or for each load.
pub(super) fn per_yard_or_load(
    ratio: Option<At<Ratio>>,
    problems: &mut Problems,
) -> Option<At<Ratio>> {
    let ratio = ratio?;
    if matches!(ratio.value.per.unit, Unit::CubicYard | Unit::Load) {
        return Some(ratio);
    }
    problems.push(
        Problem::new(
            "wrong-unit",
            "this is given for each cubic yard or for each load",
        )
        .at(ratio.place)
        .help("end it with `per cu yd` or `per load`"),
    );
    None
}

pub(super) fn at_least(
    at: At<Length>,
    least: Length,
    why: &str,
    problems: &mut Problems,
) -> Option<At<Length>> {
    if least < at.value || (least == at.value && least != Length::ZERO) {
        return Some(at);
    }
    problems.push(
        Problem::new("not-above-zero", why)
            .at(at.place)
            .help("check the figure and its unit"),
    );
    None
}
