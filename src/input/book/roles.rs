//! What is bought in every job without a rule of the owner's: the purposes under `use`, each a rule that is built in.

use std::collections::BTreeMap;

use super::item::{ItemKey, item_named};
use crate::reading::{At, Fields, Problem, Problems, suggest, words};
use crate::values::Unit;

/// Where a quantity of the list is found.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Among {
    /// What a purpose that is built in goes by.
    Purposes,
    /// Of each slab by itself, by its title there.
    Slabs,
    Removals,
    Orders,
    /// Known only when all other work is.
    Crew,
}

/// A rule that every book has: what is bought by itself for what the job has of something.
#[derive(Clone, Copy, Debug)]
pub struct Purpose {
    pub role: Role,
    /// What is bought is called so.
    pub called: &'static str,
    /// What it goes by, as it is shown.
    pub by: &'static str,
    /// The units by which its item may be sold, that in which it is worked out first.
    pub units: &'static [Unit],
    /// What has it.
    pub of: Among,
    /// What serves where `use` does not name it; else a job that has some of it asks for it.
    pub left_out: Option<&'static str>,
}

/// One line a purpose: its name under `use`, what is bought, by which units; of what; what it goes by.
macro_rules! purposes {
    ($(
        $variant:ident $word:literal: $called:literal by [$($unit:ident)*] of $of:ident, $by:literal
            $(, else $left:literal)?;
    )+) => {
        words! {
            /// What an item may stand for in every job, in the order in which it is bought.
            pub enum Role { $($variant $word;)+ }
        }

        /// Every rule that is built in.
        const PURPOSES: [Purpose; [$($word,)+].len()] = [$(Purpose {
            role: Role::$variant,
            called: $called,
            by: $by,
            units: &[$(Unit::$unit),*],
            of: Among::$of,
            left_out: [$(Some($left),)? None][0],
        },)+];
    };
}

purposes! {
    Chairs "chairs": "chairs" by [Piece] of Slabs,
        "area ÷ area held by a chair; one in 9 to 25 sq ft is common practice, no source";
    TieWire "tie wire": "tie wire" by [Pound] of Slabs,
        "wire of each slab; common practice, no source", else "not charged";
    Forms "forms": "form boards" by [Foot SquareFoot] of Slabs, "edges that need a form";
    DeepForms "deep forms": "deep form boards" by [Foot SquareFoot] of Slabs,
        "edges deeper than an ordinary board, and the sides of steps", else "counted with `forms`";
    Stakes "stakes": "stakes" by [Piece] of Slabs,
        "each form: length ÷ spacing + 1; common practice, no source";
    IsolationStrip "isolation strip": "isolation strip" by [Foot] of Slabs,
        "edges at walls, old concrete and curbs";
    CuringCompound "curing compound": "curing compound" by [Gallon] of Slabs,
        "area ÷ coverage; 200 sq ft to the gallon is common practice, no source";
    VaporRetarder "vapor retarder": "vapor retarder" by [SquareFoot] of Slabs,
        "slabs added up, laps included";
    CuringCover "curing cover": "curing cover" by [SquareFoot] of Slabs,
        "area of the slabs that cure under a cover";
    Blankets "blankets": "insulated blankets" by [SquareFoot] of Slabs,
        "area of the slabs outdoors that are poured when nights are cold", else "told as not included";
    SawCutting "saw cutting": "saw cutting" by [Foot SquareFoot] of Removals,
        "as it is charged: by the foot, or by the square foot of cut face",
        else "the crew saws, by its rate";
    BreakingMachine "breaking machine": "breaking machine" by [Day Hour] of Removals,
        "the time the crew works with it, as it is hired";
    Delivery "delivery": "delivery" by [Load] of Orders, "trucks it takes";
    ShortLoad "short load": "short load" by [Load CubicYard] of Orders,
        "what makes its trucks short, as `supply` says";
    Standing "standing time": "standing time" by [Minute] of Orders,
        "minutes of its trucks past the free ones";
    Pump "pump": "pump" by [Trip Bag Piece] of Orders, "once a pour";
    Labor "labor": "labor" by [Hour] of Crew, "hours charged";
    Trip "trip": "trips" by [Trip] of Crew, "every day on site";
}

impl Role {
    /// The rule of each purpose: what it goes by, and how that may be sold.
    pub const fn purpose(self) -> Purpose {
        PURPOSES[self as usize]
    }
}

/// Nothing for what the owner does not charge.
pub(super) type Roles = BTreeMap<Role, At<Option<ItemKey>>>;

pub(super) fn read(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Roles {
    let mut roles = Roles::new();
    let Ok(node) = fields.required(key, problems) else {
        return roles;
    };
    for entry in node.entries("`use`", problems) {
        let Some(role) = Role::ALL.into_iter().find(|role| role.name() == entry.key) else {
            let keys = Role::ALL.map(Role::name);
            let message = format!("`use` has no key `{}`", entry.key);
            let problem = Problem::new("unknown-key", message).at(entry.key_place);
            problems.push(problem.help(match suggest::closest(&entry.key, keys) {
                Some(near) => format!("did you mean `{near}`?"),
                None => format!("its keys are {}", keys.join(", ")),
            }));
            continue;
        };
        if let Ok(item) = item_named(&entry.node, problems) {
            roles.insert(role, item.map(|item| (item != "none").then_some(item)));
        }
    }
    roles
}
