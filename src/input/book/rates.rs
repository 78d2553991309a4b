//! Production rates: hours of work for so much.

use std::collections::BTreeMap;

use crate::input::phrases::Ratio;
use crate::reading::{At, Node, Problem, Problems};
use crate::values::Unit;

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

pub(super) fn read(node: &Node, problems: &mut Problems) -> Rates {
    let mut rates = BTreeMap::new();
    for entry in node.entries("`rates`", problems) {
        let fixed = FIXED.iter().find(|(name, _)| *name == entry.key);
        if fixed.is_none() && !entry.key.starts_with("finish ") {
            let problem = Problem::new(
                "unknown-task",
                format!("`{}` is not a task this program knows", entry.key),
            )
            .at(entry.key_place);
            let near =
                crate::reading::suggest::closest(&entry.key, FIXED.iter().map(|(name, _)| *name));
            problems.push(match near {
                Some(near) => problem.help(format!("did you mean `{near}`?")),
                None => problem
                    .help("tasks are those of the guide, and `finish` with a name of your own"),
            });
            continue;
        }
        let Some(value) = entry.node.read::<Ratio>(problems).ok() else {
            continue;
        };
        let rate = At {
            value,
            place: entry.node.place,
        };
        let per = fixed.map_or(Unit::SquareFoot, |(_, unit)| *unit);
        let time = if entry.key.starts_with("unload") {
            &[Unit::Minute][..]
        } else {
            &[Unit::Hour, Unit::CrewHour][..]
        };
        if !time.contains(&value.much.unit) || value.per.unit != per {
            let message = format!(
                "`{}` is measured in {} per {}",
                entry.key,
                time[0].plural(),
                per.symbol()
            );
            problems.push(
                Problem::new("wrong-unit", message)
                    .at(rate.place)
                    .help(format!(
                        "write, for example, `2 {} per {}`",
                        time[0].plural(),
                        per.symbol()
                    )),
            );
            continue;
        }
        rates.insert(entry.key.clone(), rate);
    }
    Rates(rates)
}
