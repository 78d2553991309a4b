//! The lists of a takeoff: extras, overrides, photos.

use crate::input::book::Class;
use crate::input::phrases::Off;
use crate::reading::keys::keys;
use crate::reading::{At, Below, Fields, FromLine, Group as _, Node, Problem, Problems, Read};
use crate::values::{Amount, Money};

/// Any item of the book, or a lump.
#[derive(Clone, Debug)]
pub struct Extra {
    pub name: At<String>,
    pub what: ExtraWhat,
    pub says: Says,
}

/// What the customer reads of an extra.
#[derive(Clone, Debug)]
pub enum Says {
    /// Its name, if it is a thing a customer would ask about.
    Name,
    Words(String),
    Nothing,
}

#[derive(Clone, Debug)]
pub enum ExtraWhat {
    Item(At<Amount>),
    Lump {
        cost: At<Money>,
        class: Class,
        group: Option<String>,
    },
}

/// What is taken off the price, by the words the customer reads.
#[derive(Clone, Debug)]
pub struct Discount {
    pub says: String,
    pub off: At<Off>,
}

impl FromLine for Discount {
    fn from_line(says: At<String>, node: &Node, problems: &mut Problems) -> Read<Self> {
        Ok(Self {
            says: says.value,
            off: node.read_at(problems)?,
        })
    }
}

/// A picture of the site.
#[derive(Clone, Debug)]
pub struct PhotoWritten {
    /// Its path from the business folder.
    pub file: At<String>,
    /// What the customer reads below it; without one it stays in the office.
    pub caption: Option<String>,
}

keys! {
    /// The owner's last word on a computed quantity.
    pub struct SetTo in "a set quantity" {
        ^ name: At<String>;
        to: At<Amount> = "to", required, "the quantity you want, in the unit the program shows", "14";
        because: String = "because", required,
            "why; the office sees both figures and this", "two people and the curve";
    }
}

keys! {
    /// A lump, or an item where more is to be said than how much.
    pub struct ExtraWritten in "an extra" {
        much: Option<At<Amount>> = "much" as "amount", none, "so much of an item of the book", "2", by Fields::if_said;
        cost: Option<At<Money>> = "cost" as "amount", none, "in place of `much`: what a lump costs you", "85.00",
            by Fields::if_said;
        class: At<Class> = "class", usual "subcontract",
            "of a lump: material, labor, equipment, disposal, subcontract or fee", "subcontract";
        group: Option<String> = "group", else "its class",
            "of a lump: where it stands on your cost sheet, with a sum of its own", "Ground work";
        says: Option<String> = "says", else "its name, of material and the work of others",
            "what the customer reads of it, or `nothing`", "curb cut by the town";
    }
}

impl FromLine for Extra {
    const BELOW: Below = Below::Each(&[ExtraWritten::TABLE]);

    fn from_line(name: At<String>, node: &Node, problems: &mut Problems) -> Read<Self> {
        if !node.is_map() {
            let what = ExtraWhat::Item(node.read_at(problems)?);
            let says = Says::Name;
            return Ok(Self { name, what, says });
        }
        let written: ExtraWritten = node.group(problems)?;
        let (class, group) = (written.class.value, written.group);
        let what = match (written.much, written.cost) {
            (Some(_), None) if group.is_some() => {
                let message = format!(
                    "`{}` is an item, and stands where the price book says",
                    name.value
                );
                let problem = Problem::new("much-or-cost", message).at(name.place);
                let help = "take `group` out here, and write it at the item in the price book";
                return Err(problems.push(problem.help(help)));
            }
            (Some(much), None) => ExtraWhat::Item(much),
            (None, Some(cost)) => ExtraWhat::Lump { cost, class, group },
            (None, None) | (Some(_), Some(_)) => {
                let message = format!("`{}` has to have either `much` or `cost`", name.value);
                let problem = Problem::new("much-or-cost", message).at(name.place);
                let help = "write `much` of an item of the book, or the `cost` of a lump";
                return Err(problems.push(problem.help(help)));
            }
        };
        let says = match written.says {
            None => Says::Name,
            Some(words) if words == "nothing" || words == "none" => Says::Nothing,
            Some(words) => Says::Words(words),
        };
        Ok(Self { name, what, says })
    }
}

pub(super) fn sets(job: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Vec<SetTo> {
    let mut sets = Vec::new();
    if let Some(node) = job.node(key) {
        for entry in node.entries("`set`", problems) {
            sets.extend(entry.node.group_called::<SetTo>(entry.name(), problems));
        }
    }
    sets
}

/// A path alone, or a path and what the customer reads below the picture.
pub(super) fn photos(
    job: &Fields<'_>,
    key: &'static str,
    problems: &mut Problems,
) -> Vec<PhotoWritten> {
    let mut found = Vec::new();
    let items = job.node(key).map(|node| node.items("`photos`", problems));
    for item in items.into_iter().flatten() {
        if !item.is_map() {
            let file = item.text_at("a photo", problems);
            found.extend(file.map(|file| PhotoWritten {
                file,
                caption: None,
            }));
            continue;
        }
        for entry in item.entries("a photo", problems) {
            let caption = entry.node.text("what stands below a photo", problems);
            found.extend(caption.map(|caption| PhotoWritten {
                file: entry.name(),
                caption: Some(caption.to_owned()),
            }));
        }
    }
    found
}
