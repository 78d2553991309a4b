//! What is taken out: of what, how it is broken, where it goes.

use crate::input::checks::length_of_some;
use crate::input::phrases::SizePhrase;
use crate::reading::keys::{keys, placeless};
use crate::reading::{
    At, Below, Fields, FromLine, Group as _, Node, Place, Problem, Problems, Read, words,
};
use crate::values::Length;

keys! {
    pub struct Removal in "a removal" {
        ^ name: At<String>;
        size: Option<At<SizePhrase>> = "size", else "`under`",
            "length x width x depth, or area x depth; with `depth` also 20 ft x 10 ft, or circle 12 ft",
            "22 ft x 3 ft x 4 in", by size;
        /// Soil under these slabs, instead of a size.
        under: Vec<At<String>> = "under" as "list of names", none,
            "slabs that soil is dug out for, past their forms as business.yaml says, deeper under thickened edges; with `depth`",
            "[patio, walk]";
        /// Where the size has none in it.
        depth: Option<At<Length>> = "depth", none, "where the size has none", "4 in", by length_of_some;
        material: RemovalMaterial = "of", usual "concrete", "concrete, asphalt, pavers or soil", "soil";
        breaking: Breaking = "break" as "words", usual "by hand", "by hand or machine", "machine";
        /// With bars or mesh in it.
        reinforced: Option<At<bool>> = "reinforced", usual "no",
            "bars or mesh in the concrete; it has a rate of its own", "yes";
        /// Cut with the saw, to its full depth.
        saw_cut: Option<At<Length>> = "saw cut", else "none",
            "cut with the saw through its whole depth, where something stays beside it", "24 ft", by length_of_some;
        /// It is used on the site and nothing is hauled.
        stays: bool = "stays", usual "no", "used on the site, so nothing of it is hauled", "yes";
    } then one_size
}

placeless! { RemovalMaterial Breaking }

words! {
    pub enum RemovalMaterial("unknown-word", "`of` is not `{}`", either) {
        Concrete "concrete";
        Asphalt "asphalt";
        Pavers "pavers";
        Soil "soil";
    }
}

words! {
    pub enum Breaking("unknown-word", "`break` is not `{}`", choose) {
        ByHand "by hand";
        Machine "machine";
    }
}

impl Removal {
    /// Whether bars or mesh are in it.
    pub fn is_reinforced(&self) -> bool {
        self.reinforced.as_ref().is_some_and(|yes| yes.value)
    }

    /// The rate it goes by.
    pub fn task(&self) -> &'static str {
        match (self.material, self.breaking, self.is_reinforced()) {
            (RemovalMaterial::Concrete, Breaking::ByHand, false) => "break out concrete",
            (RemovalMaterial::Concrete, Breaking::ByHand, true) => "break out reinforced concrete",
            (RemovalMaterial::Concrete, Breaking::Machine, false) => "break out with machine",
            (RemovalMaterial::Concrete, Breaking::Machine, true) => {
                "break out reinforced with machine"
            }
            (RemovalMaterial::Asphalt, Breaking::ByHand, _) => "break out asphalt",
            (RemovalMaterial::Asphalt, Breaking::Machine, _) => "break out asphalt with machine",
            (RemovalMaterial::Pavers, ..) => "take up pavers",
            (RemovalMaterial::Soil, Breaking::ByHand, _) => "dig",
            (RemovalMaterial::Soil, Breaking::Machine, _) => "dig with machine",
        }
    }
}

impl FromLine for Removal {
    const BELOW: Below = Below::Each(&[Self::TABLE]);

    fn from_line(name: At<String>, node: &Node, problems: &mut Problems) -> Read<Self> {
        let removal = if node.is_map() {
            node.group_called(name, problems)?
        } else {
            of_concrete(name, has_depth(node.read_at(problems)?, None, problems)?)
        };
        if let Some(steel) = removal.reinforced.as_ref().filter(|at| at.value)
            && removal.material != RemovalMaterial::Concrete
        {
            let material = removal.material.name();
            let message = format!("only concrete has bars in it, and this is {material}");
            let problem = Problem::new("only-concrete", message).at(steel.place);
            problems.push(problem.help("take `reinforced` out, or write `of: concrete`"));
        }
        Ok(removal)
    }
}

/// What a size alone says.
const fn of_concrete(name: At<String>, size: At<SizePhrase>) -> Removal {
    Removal {
        name,
        size: Some(size),
        under: Vec::new(),
        depth: None,
        material: RemovalMaterial::Concrete,
        breaking: Breaking::ByHand,
        reinforced: None,
        saw_cut: None,
        stays: false,
    }
}

/// Its size, after a look at whether a depth stands in it or beside it.
fn size(
    removal: &Fields<'_>,
    key: &'static str,
    problems: &mut Problems,
) -> Read<Option<At<SizePhrase>>> {
    if removal.node(key).is_none() && removal.node("under").is_some() {
        return Ok(None);
    }
    let depth = removal.node("depth").map(|node| node.place);
    has_depth(removal.need(key, problems)?, depth, problems).map(Some)
}

/// Its size, or the slabs it lies under and how deep it is dug there.
fn one_size(removal: Removal, _: &Fields<'_>, problems: &mut Problems) -> Read<Removal> {
    let Some(first) = removal.under.first() else {
        return Ok(removal);
    };
    let (message, help) = if removal.size.is_some() {
        (
            "this removal has both a size and slabs it lies under",
            "write one of the two",
        )
    } else if removal.depth.is_none() {
        (
            "a removal needs its depth too",
            "add, for example, `depth: 8 in`: to the bottom of the base",
        )
    } else if removal.material != RemovalMaterial::Soil {
        (
            "only soil is dug out under slabs",
            "write `of: soil`, or a `size`",
        )
    } else {
        return Ok(removal);
    };
    Err(problems.push(Problem::new("bad-size", message).at(first.place).help(help)))
}

/// A removal has one depth.
fn has_depth(
    size: At<SizePhrase>,
    depth: Option<Place>,
    problems: &mut Problems,
) -> Read<At<SizePhrase>> {
    let in_size = match size.value {
        SizePhrase::Block { .. } | SizePhrase::AreaDeep { .. } => true,
        SizePhrase::Rectangle { .. } | SizePhrase::Circle { .. } | SizePhrase::Shape(_) => false,
    };
    let (message, place, help) = match (in_size, depth) {
        (true, None) | (false, Some(_)) => return Ok(size),
        (false, None) => (
            "a removal needs its depth too",
            size.place,
            "write, for example, `22 ft x 3 ft x 4 in`",
        ),
        (true, Some(place)) => (
            "this removal has its depth in `size` already",
            place,
            "write the depth once",
        ),
    };
    Err(problems.push(Problem::new("bad-size", message).at(place).help(help)))
}
