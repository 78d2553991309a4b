//! Where the water of a slab runs, and what a level base below makes of its thickness.

use crate::geometry::Outline;
use crate::input::job::takeoff::Fall;
use crate::input::job::written::SlabWritten;
use crate::input::phrases::{FallPhrase, FallTo, Falls, Thickness};
use crate::reading::{At, Problem, Problems};
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
