//! Where the water of a slab runs, and what a level base below makes of its thickness.

use crate::geometry::Outline;
use crate::input::job::levels::{CornerLevel, Levels, corner};
use crate::input::job::takeoff::Fall;
use crate::input::job::written::SlabWritten;
use crate::input::phrases::{FallPhrase, FallTo, Falls, Thickness};
use crate::reading::{At, Problem, Problems, Read};
use crate::values::Length;

/// Every fall that is one; a drain is a box of the slab.
pub(super) fn falls(
    written: &SlabWritten,
    said: Option<At<Falls>>,
    problems: &mut Problems,
) -> Vec<Fall> {
    let said = said.into_iter().flat_map(|falls| falls.value.0);
    let mut found = Vec::new();
    for (part, fall) in said {
        let FallPhrase::PerFoot { rise, to } = fall.value else {
            continue;
        };
        if let FallTo::Drain(drain) = &to
            && !written.boxes.iter().any(|one| one.name.value == *drain)
        {
            let key = &written.key.value;
            let message = format!("`{key}` falls to `{drain}`, and has no box of that name");
            let problem = Problem::new("bad-fall", message).at(fall.place);
            let help = format!(
                "set it, `boxes: [{drain}: 4 ft from west and 3 ft from south]`, or name a side"
            );
            problems.push(problem.help(help));
        }
        let rise = At::new(rise, fall.place);
        found.push(Fall { rise, to, part });
    }
    found
}

/// The levels shot at corners of the slab; a fall beside them would say it a second time.
pub(super) fn levels(
    written: &SlabWritten,
    outline: &Outline,
    problems: &mut Problems,
) -> Read<Option<Levels>> {
    let Some((first, _)) = written.levels.first() else {
        return Ok(None);
    };
    let key = &written.key.value;
    if let Some(fall) = &written.values.fall {
        let message = format!("`{key}` has levels and a fall");
        let problem = Problem::new("bad-level", message).at(fall.place);
        let problem = problem.also(first.place, "its levels");
        return Err(problems.push(problem.help("leave the fall out: it follows from the levels")));
    }
    let mut corners: Vec<CornerLevel> = Vec::new();
    for (name, level) in &written.levels {
        let Some(at) = corner(&name.value, outline) else {
            let message = format!("`{}` is no single corner of `{key}`", name.value);
            let problem = Problem::new("bad-level", message).at(name.place);
            let many = outline.sides().iter().map(|side| side.leg + 1).max();
            return Err(problems.push(problem.help(format!(
                "write `northwest`, `northeast`, `southwest` or `southeast` where one corner lies farthest that way, or `corner 1` to `corner {}` as walked",
                many.unwrap_or_default()
            ))));
        };
        if let Some(twice) = corners.iter().find(|known| known.at == at) {
            let message = format!("`{}` and `{}` are one corner", twice.name, name.value);
            let problem = Problem::new("bad-level", message).at(name.place);
            return Err(problems.push(problem.help("keep one of the two")));
        }
        let (name, level) = (name.value.clone(), level.value.0);
        corners.push(CornerLevel { name, at, level });
    }
    let found = if corners.len() < 3 {
        None
    } else {
        Levels::of(corners)
    };
    found.map(Some).ok_or_else(|| {
        let message = format!("the levels of `{key}` do not say how it falls");
        let problem = Problem::new("bad-level", message).at(first.place);
        problems
            .push(problem.help("give those of three corners or more that are not all in one line"))
    })
}

/// The falls that follow from levels.
pub(super) fn shot(written: &SlabWritten, levels: &Levels) -> Vec<Fall> {
    let place = written
        .levels
        .first()
        .map_or(written.key.place, |(name, _)| name.place);
    let falls = levels.falls().into_iter();
    let fall = |(rise, to)| Fall {
        rise: At::new(rise, place),
        to: FallTo::Side(to),
        part: None,
    };
    falls.map(fall).collect()
}

/// On a level base the high end is thicker by the fall times the run, in the usual words of a
/// thickness: `4 in to 6 in north`. Concrete goes by the middle of its area, as for any such slab.
pub(super) fn on_level(
    thickness: At<Thickness>,
    level: Option<&At<bool>>,
    falls: &[Fall],
    outline: &Outline,
    problems: &mut Problems,
) -> At<Thickness> {
    let Some(level) = level.filter(|level| level.value) else {
        return thickness;
    };
    let one = match falls {
        [Fall { rise, to, .. }] => to.side().map(|side| (rise, side)),
        _ => None,
    };
    let Some((rise, side)) = one.filter(|_| thickness.value.thick.is_none()) else {
        let message =
            "a level base needs one fall with its side, and one thickness, that of the low end";
        let problem = Problem::new("bad-fall", message).at(level.place);
        problems.push(problem.help(
            "write, for example, `fall: 1/4 in per ft south`; for other falls give the thickness of both ends, or `set` the concrete",
        ));
        return thickness;
    };
    let risen = rise.value.inches() * outline.run(side).feet();
    let thick = thickness.value.thin + Length::of_feet(risen / rust_decimal::Decimal::from(12));
    thickness.map(|even| Thickness {
        thin: even.thin,
        thick: Some((thick, Some(side.opposite()))),
    })
}

/// A step-down is from the slab that this one lies beside.
pub(super) fn lower(
    written: &SlabWritten,
    problems: &mut Problems,
) -> Option<(At<Length>, String)> {
    let lower = written.lower.clone()?;
    if let Some(beside) = &written.beside {
        return Some((lower, beside.value.slab.clone()));
    }
    let message = format!("`{}` is lower than no other slab", written.key.value);
    let problem = Problem::new("bad-position", message).at(lower.place);
    problems
        .push(problem.help(
            "say which slab it lies beside, `beside: patio, west edge, 2 ft from north end`",
        ));
    None
}
