//! Production rates: hours of work for so much.

use std::collections::BTreeMap;

use rust_decimal::Decimal;

use crate::input::phrases::Ratio;
use crate::reading::{At, Entry, Fields, Problem, Problems, Read, suggest};
use crate::values::{Amount, Unit, rounding};

/// Every rate of the book.
#[derive(Clone, Debug, Default)]
pub struct Rates(pub BTreeMap<String, At<Ratio>>);

/// Tasks with a fixed name, and the unit their work is measured in.
///
/// Finishes are open: `finish broom`, `finish trowel` and whatever else the
/// owner offers.
pub const FIXED: &[(&str, Unit)] = &[
    ("break out concrete", Unit::SquareFoot),
    ("break out reinforced concrete", Unit::SquareFoot),
    ("break out with machine", Unit::SquareFoot),
    ("break out reinforced with machine", Unit::SquareFoot),
    ("break out asphalt", Unit::SquareFoot),
    ("break out asphalt with machine", Unit::SquareFoot),
    ("take up pavers", Unit::SquareFoot),
    ("saw cut", Unit::SquareFoot),
    ("dig", Unit::CubicYard),
    ("dig with machine", Unit::CubicYard),
    ("base", Unit::CubicYard),
    ("form straight", Unit::Foot),
    ("form curved", Unit::Foot),
    ("form deep", Unit::Foot),
    ("vapor retarder", Unit::SquareFoot),
    ("bars", Unit::Foot),
    ("mesh", Unit::SquareFoot),
    ("drill holes", Unit::Piece),
    ("place by chute", Unit::CubicYard),
    ("place by wheelbarrow", Unit::CubicYard),
    ("place by buggy", Unit::CubicYard),
    ("place by pump", Unit::CubicYard),
    ("joints by hand", Unit::Foot),
    ("joints by saw", Unit::Foot),
    ("joints by early saw", Unit::Foot),
    ("cover slabs", Unit::SquareFoot),
    ("lift covers", Unit::SquareFoot),
    ("keep wet", Unit::SquareFoot),
    ("mix bags", Unit::Bag),
    ("step", Unit::Piece),
    ("set box", Unit::Piece),
    ("set lid", Unit::Piece),
    ("adjust box", Unit::Piece),
    ("come back", Unit::Trip),
    ("cure, strip and clean", Unit::SquareFoot),
    ("unload by chute", Unit::CubicYard),
    ("unload by wheelbarrow", Unit::CubicYard),
    ("unload by buggy", Unit::CubicYard),
    ("unload by pump", Unit::CubicYard),
];

/// Other units in which the work of a task may be rated.
const OTHERWISE: &[(&str, &[Unit])] = &[
    ("break out", &[Unit::CubicYard, Unit::Ton]),
    ("take up pavers", &[Unit::CubicYard, Unit::Ton]),
    ("dig", &[Unit::SquareFoot, Unit::Ton]),
    ("base", &[Unit::SquareFoot, Unit::Ton]),
    ("form", &[Unit::SquareFoot]),
    ("bars", &[Unit::Pound, Unit::SquareFoot]),
    ("place by", &[Unit::SquareFoot]),
    ("joints by saw", &[Unit::SquareFoot]),
    ("joints by early saw", &[Unit::SquareFoot]),
    ("keep wet", &[Unit::Trip]),
    ("lift covers", &[Unit::Trip]),
];

/// Every unit that fits the work of a task, the usual one first.
pub fn units(task: &str) -> Vec<Unit> {
    let fixed = FIXED.iter().find(|(name, _)| *name == task);
    let usual = fixed.map_or(Unit::SquareFoot, |(_, unit)| *unit);
    let others = OTHERWISE.iter().filter(|(name, _)| {
        let rest = task.strip_prefix(name);
        fixed.is_some() && rest.is_some_and(|rest| rest.is_empty() || rest.starts_with(' '))
    });
    let others = others.flat_map(|(_, units)| units.iter().copied());
    std::iter::once(usual).chain(others).collect()
}

/// An example of a rate for a task, in the units it is measured in.
pub fn rates_help(task: &str) -> String {
    let per = FIXED
        .iter()
        .find(|(name, _)| *name == task)
        .map_or(Unit::SquareFoot, |(_, unit)| *unit);
    if task.starts_with("unload") {
        format!("6 min per {per}")
    } else if task == "drill holes" {
        format!("0.2 hours per {per}")
    } else {
        match per {
            Unit::SquareFoot | Unit::Foot => format!("4 hours per 100 {per}"),
            _ => format!("1 hour per {per}"),
        }
    }
}

impl Rates {
    pub fn get(&self, task: &str) -> Option<&At<Ratio>> {
        self.0.get(task)
    }
}

pub(super) fn read(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Rates {
    let mut rates = Rates::default();
    if let Ok(node) = fields.required(key, problems) {
        for entry in node.entries("`rates`", problems) {
            if let Ok(rate) = rate(entry, problems) {
                rates.0.insert(entry.key.clone(), rate);
            }
        }
    }
    rates
}

/// The owner's own number for what fits, where a depth of 4 in makes the one of the other.
fn by_depth(rate: Ratio, fit: &[Unit]) -> Option<String> {
    let solid = rate.per.unit.flat_or_solid()?;
    let wanted = if solid {
        Unit::SquareFoot
    } else {
        Unit::CubicYard
    };
    if !fit.contains(&wanted) || !matches!(rate.much.unit, Unit::Hour | Unit::CrewHour) {
        return None;
    }
    // 4 in over 81 sq ft are a cubic yard.
    let yards = if solid {
        rate.per.to(Unit::CubicYard)?.value
    } else {
        rate.per.value / Decimal::from(81)
    };
    let many = if solid {
        yards * Decimal::from(81) / Decimal::ONE_HUNDRED
    } else {
        yards
    };
    let much = Amount::new(
        rounding::to_places(rate.much.value / many, 2),
        rate.much.unit,
    );
    let per = if solid { "100 sq ft" } else { "cu yd" };
    Some(format!(
        "where it is 4 in deep, `{rate}` is `{much} per {per}`"
    ))
}

fn rate(entry: &Entry, problems: &mut Problems) -> Read<At<Ratio>> {
    let task = &entry.key;
    let fixed = FIXED.iter().find(|(name, _)| name == task);
    if fixed.is_none() && !task.starts_with("finish ") {
        let message = format!("`{task}` is not a task this program knows");
        let problem = Problem::new("unknown-task", message).at(entry.key_place);
        let near = suggest::closest(task, FIXED.iter().map(|(name, _)| *name));
        return Err(problems.push(problem.help(match near {
            Some(near) => format!("did you mean `{near}`?"),
            None => "tasks are those of the guide, and `finish` with a name of your own".to_owned(),
        })));
    }
    let mut rate: At<Ratio> = entry.node.read_at(problems)?;
    let fit = units(task);
    // 9 cu ft is a third of a yard, whatever is done with it.
    let same = || fit.iter().find_map(|unit| rate.value.per(*unit));
    if !fit.contains(&rate.value.per.unit)
        && let Some(same) = same()
    {
        rate.value = same;
    }
    // Both are read either way: a crew's hour is no truck's.
    let is_unloading = task.starts_with("unload");
    let much = rate.value.much.unit;
    let is_its = much.is_time() && !(is_unloading && much == Unit::CrewHour);
    if is_its && fit.contains(&rate.value.per.unit) {
        return Ok(rate);
    }
    let time = if is_unloading { "min" } else { "hours" };
    let each: Vec<&str> = fit.iter().map(|unit| unit.symbol()).collect();
    let message = format!("`{task}` is measured in {time} per {}", each.join(" or "));
    let problem = Problem::new("wrong-unit", message).at(rate.place);
    let help = by_depth(rate.value, &fit)
        .unwrap_or_else(|| format!("write, for example, `2 {time} per {}`", each[0]));
    Err(problems.push(problem.help(help)))
}
