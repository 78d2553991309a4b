//! Boxes and covers in a slab, as written and as they stand.

use crate::geometry::Point;
use crate::input::phrases::{Adjust, SpotPhrase};
use crate::reading::keys::keys;
use crate::reading::{At, Below, FromLine, Group as _, Node, Problem, Problems, Read, words};

keys! {
    pub struct BoxWritten in "a box in a slab" {
        ^ name: At<String>;
        at: Option<At<SpotPhrase>> = "at" as "spot", none,
            "the middle of the box, from two sides of the slab", "4 ft from west and 3 ft from south";
        stock: Option<At<String>> = "box" as "name", else "its own name", "a box of the price book", "cleanout 8 in";
        lid: At<Lid> = "lid", usual "now",
            "now, on order (a temporary one stands until it comes) or theirs (its owner brings it)", "on order";
        isolated: bool = "isolated", usual "no", "a soft strip around it", "yes";
        adjust: Option<At<Adjust>> = "adjust" as "raise or lower", none,
            "an existing cover brought to the new surface; no box is bought", "raise 2 in";
    }
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

impl FromLine for BoxWritten {
    const BELOW: Below = Below::Each(&[Self::TABLE]);

    fn from_line(name: At<String>, node: &Node, problems: &mut Problems) -> Read<Self> {
        if node.is_map() {
            return node.group_called(name, problems);
        }
        let at: At<SpotPhrase> = node.read_at(problems)?;
        Ok(BoxWritten {
            name,
            lid: At::new(Lid::Now, at.place),
            at: Some(at),
            stock: None,
            isolated: false,
            adjust: None,
        })
    }
}

/// Each box of a slab has a name of its own there.
pub(super) fn names_of_their_own(
    boxes: Vec<BoxWritten>,
    _: &str,
    problems: &mut Problems,
) -> Vec<BoxWritten> {
    let mut found: Vec<BoxWritten> = Vec::new();
    for one in boxes {
        let Some(first) = found
            .iter()
            .find(|first| first.name.value == one.name.value)
        else {
            found.push(one);
            continue;
        };
        let message = format!("two boxes of this slab are called `{}`", one.name.value);
        problems.push(
            Problem::new("same-name-twice", message)
                .at(one.name.place)
                .also(first.name.place, "the first of them")
                .help("give each a name of its own, for example `north drain`, and say `box`"),
        );
    }
    found
}
