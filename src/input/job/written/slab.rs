//! A slab exactly as written: its shape, its place, its edges, its values.

use super::openings::OpeningWritten;
use super::shape::{Shaped, flat};
use crate::input::checks::{length_of_some, list_of};
use crate::input::job::boxes::{self, BoxWritten};
use crate::input::job::{Around, EdgeKind};
use crate::input::phrases::{BesidePhrase, JointPhrase, Level, MatchPhrase, StoopPhrase};
use crate::input::sections;
use crate::input::sections::StepsWritten;
use crate::input::slab_values::SlabValues;
use crate::reading::keys::keys;
use crate::reading::{At, Entry, Fields, FromKey, Problems, Read};
use crate::values::Length;

keys! {
    pub struct SlabWritten in "a slab" {
        ^ key: At<String>;
        ^ shaped: Shaped;
        openings: Vec<OpeningWritten> = "cut out", none, "what is left open in it, each with a name",
            "[tree well: {size: 3 ft x 3 ft, at: 6 ft from west and 4 ft from north}]";
        kind: Option<At<String>> = "kind" as "name", else "the slab's name", "a kind of business.yaml", "patio";
        edges: Option<EdgesWritten> = "edges" as "keys by side", else "open",
            "what stands at a side, named by where it looks, its length, its number or its name; `all` at every other",
            "{north: house}";
        beside: Option<At<BesidePhrase>> = "beside", none,
            "which slab it touches, where", "patio, west edge, 2 ft from north end";
        lower: Option<At<Length>> = "lower", none,
            "its top than that of the slab it lies beside; the face between them is formed", "6 in",
            by length_of_some;
        on: Option<At<BesidePhrase>> = "on", none,
            "which slab it stands on, for a step", "patio, north edge, 10 ft from west end";
        steps: Option<StepsWritten> = "steps" as "flight of steps", else "none",
            "that leads down from an edge, of one piece with the slab",
            "3 risers of 7 in, 12 in treads, 5 ft wide, from south edge", by sections::steps, of StepsWritten;
        stoop: Option<At<StoopPhrase>> = "stoop", else "on the ground",
            "`solid`, or walls around fill; as high as its steps", "filled, 8 in walls";
        levels: Vec<(At<String>, At<Level>)> = "levels" as "keys by corner", none,
            "what you shot at its corners in place of a fall, each `northwest` and so on or `corner 2` as walked; the falls each way follow",
            "{northwest: 0, northeast: 0, southwest: 3 in down}", by levels;
        called: Option<String> = "called", else "its key", "what the customer reads", "front walk";
        boxes: Vec<BoxWritten> = "boxes", none, "boxes and covers set in it",
            "[cleanout 8 in: 4 ft from west and 3 ft from south]", then boxes::names_of_their_own;
        joints_at: Vec<At<JointPhrase>> = "joints at" as "list of places", else "by `joints`",
            "joints where you draw them, in place of a layout", "[8 ft from west, 16 ft from west]", by list_of;
        matched: Vec<At<MatchPhrase>> = "match" as "list of places along edges", none,
            "where joints of what stays end at an edge, so that those of the slab begin there",
            "[3 ft from the west end of the south side]", by list_of;
        .. around: Around;
        .. values: SlabValues;
    }
}

fn levels(
    fields: &Fields<'_>,
    key: &'static str,
    problems: &mut Problems,
) -> Read<Vec<(At<String>, At<Level>)>> {
    let Some(node) = fields.node(key) else {
        return Ok(Vec::new());
    };
    let mut found = Vec::new();
    for entry in node.entries(&format!("`{key}`"), problems) {
        found.push((entry.name(), entry.node.read_at(problems)?));
    }
    Ok(found)
}

/// What stands at its sides, each by the name that the owner has for it.
#[derive(Clone, Debug)]
pub struct EdgesWritten {
    pub said: Vec<(At<String>, At<EdgeKind>)>,
}

impl FromKey for Option<EdgesWritten> {
    const KIND: &'static str = "keys by side";

    fn from_key(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Read<Self> {
        let Some(node) = fields.node(key) else {
            return Ok(None);
        };
        let entries = node.entries(&format!("`{key}`"), problems).into_iter();
        let said = entries.filter_map(|entry| {
            let kind = entry.node.read_at(problems).ok()?;
            Some((entry.name(), kind))
        });
        let said = said.collect();
        Ok(Some(EdgesWritten { said }))
    }
}

/// A size alone, or a group of keys.
pub(super) fn slab(entry: &Entry, problems: &mut Problems) -> Read<SlabWritten> {
    if entry.node.is_map() {
        return entry.node.group_called(entry.name(), problems);
    }
    let shape = flat(entry.node.read_at(problems)?, problems)?;
    Ok(SlabWritten {
        key: entry.name(),
        shaped: Shaped::only(shape),
        openings: Vec::new(),
        kind: None,
        edges: None,
        beside: None,
        levels: Vec::new(),
        lower: None,
        on: None,
        steps: None,
        stoop: None,
        called: None,
        boxes: Vec::new(),
        joints_at: Vec::new(),
        matched: Vec::new(),
        around: Around::default(),
        values: SlabValues::default(),
    })
}
