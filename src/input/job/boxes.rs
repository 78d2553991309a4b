//! Boxes and covers in a slab, as written and as they stand.

use super::tables::BOX;
use crate::geometry::Point;
use crate::input::phrases::{Adjust, SpotPhrase};
use crate::reading::{At, Fields, Node, Problem, Problems, words};

#[derive(Clone, Debug)]
pub struct BoxWritten {
    pub name: At<String>,
    pub stock: Option<At<String>>,
    pub at: Option<At<SpotPhrase>>,
    pub lid: At<Lid>,
    pub isolated: bool,
    pub adjust: Option<At<Adjust>>,
}

/// A box of the price book at a place in a slab.
#[derive(Clone, Debug)]
pub struct SetBox {
    pub name: At<String>,
    /// What the customer reads.
    pub called: String,
    pub stock: At<String>,
    /// Its middle on the site; none where nobody said where it lies.
    pub middle: Option<At<Point>>,
    pub lid: At<Lid>,
    /// A soft strip goes around it.
    pub isolated: bool,
    /// An existing cover, brought to the new surface.
    pub adjust: Option<At<Adjust>>,
}

impl SetBox {
    /// Whether its lid comes later; a cover that is there already keeps its own.
    pub fn waits_for_lid(&self) -> bool {
        self.adjust.is_none() && self.lid.value == Lid::OnOrder
    }
}

words! {
    /// Which lid is on it when the slab is handed over.
    pub enum Lid("unknown-word", "`lid` is not `{}`", choose) {
        Now "now";
        /// A temporary one stands until it comes.
        OnOrder "on order";
        /// Whoever owns the box brings it.
        Theirs "theirs";
    }
}

/// The boxes of one slab; each has a name of its own there.
pub(super) fn read(slab: &Fields<'_>, problems: &mut Problems) -> Vec<BoxWritten> {
    let Some(node) = slab.node("boxes") else {
        return Vec::new();
    };
    let mut found: Vec<BoxWritten> = Vec::new();
    for (name, node) in node.named("`boxes`", problems) {
        if let Some(first) = found.iter().find(|one| one.name.value == name.value) {
            let message = format!("two boxes of this slab are called `{}`", name.value);
            problems.push(
                Problem::new("same-name-twice", message)
                    .at(name.place)
                    .also(first.name.place, "the first of them")
                    .help("give each a name of its own, for example `north drain`, and say `box`"),
            );
            continue;
        }
        found.extend(one(name, node, problems));
    }
    found
}

fn one(name: At<String>, node: &Node, problems: &mut Problems) -> Option<BoxWritten> {
    if !node.is_map() {
        let value = node.read::<SpotPhrase>(problems).ok()?;
        let place = node.place;
        let lid = At {
            value: Lid::Now,
            place,
        };
        return Some(BoxWritten {
            name,
            stock: None,
            at: Some(At { value, place }),
            lid,
            isolated: false,
            adjust: None,
        });
    }
    let fields = node.fields(&BOX, problems).ok()?;
    let stock = fields.read::<String>("box", problems);
    let at = fields.read("at", problems);
    let lid = fields.need("lid", problems).ok();
    let isolated = fields.yes("isolated", problems);
    let adjust = fields.read("adjust", problems);
    Some(BoxWritten {
        name,
        stock,
        at,
        lid: lid?,
        isolated: isolated.is_some_and(|at| at.value),
        adjust,
    })
}
