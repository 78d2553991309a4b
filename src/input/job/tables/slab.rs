//! The keys of a slab: its shape, its place, its edges.

use crate::input::job::SlabValues;
use crate::reading::Group as _;
use crate::reading::fields::field;
use crate::reading::{Field, FieldTable};

const OWN: &[Field] = &[
    field(
        "size",
        "size",
        "",
        "east-west x north-south, or `circle` and a diameter, or another shape by name",
        "12 ft x 15 ft",
    ),
    field(
        "outline",
        "list of sides",
        "",
        "the sides as walked with the tape",
        "[east 24 ft, south 12 ft, west 24 ft, north 12 ft]",
    ),
    field(
        "corners",
        "list of positions",
        "",
        "each corner so far east and so far north of one fixed point",
        "[[0 ft, 0 ft], [24 ft, 0 ft], [18 ft, 12 ft]]",
    ),
    field(
        "cut out",
        "list",
        "",
        "what is left open in it, each with a name",
        "[tree well: {size: 3 ft x 3 ft, at: 6 ft from west and 4 ft from north}]",
    ),
    field(
        "kind",
        "name",
        "the slab's name",
        "a kind of business.yaml",
        "patio",
    ),
    field(
        "edges",
        "keys by side",
        "open",
        "what stands at the north, east, south, west",
        "{north: house}",
    ),
    field(
        "beside",
        "position",
        "",
        "which slab it touches, where",
        "patio, west edge, 2 ft from north end",
    ),
    field(
        "on",
        "position",
        "",
        "which slab it stands on, for a step",
        "patio, north edge, 10 ft from west end",
    ),
    field(
        "steps",
        "flight of steps",
        "none",
        "that leads down from an edge, of one piece with the slab",
        "3 risers of 7 in, 12 in treads, 5 ft wide, from south edge",
    ),
    field(
        "stoop",
        "words",
        "on the ground",
        "`solid`, or walls around fill; as high as its steps",
        "filled, 8 in walls",
    ),
    field(
        "called",
        "text",
        "its key",
        "what the customer reads",
        "front walk",
    ),
    field(
        "boxes",
        "list",
        "",
        "boxes and covers set in it",
        "[cleanout 8 in: 4 ft from west and 3 ft from south]",
    ),
    field(
        "siding clearance",
        "length",
        "",
        "from the finished surface up to siding",
        "6 in",
    ),
    field("public", "yes or no", "no", "the public walks on it", "yes"),
    field(
        "cross fall",
        "slope",
        "its `fall`",
        "across the way people walk",
        "1:48",
    ),
];

/// A slab's own keys, and those a kind has too.
pub const SLAB: FieldTable = FieldTable {
    name: "a slab",
    before: &[],
    includes: &[SlabValues::TABLE],
    fields: OWN,
};

pub const EDGES: FieldTable = FieldTable {
    name: "`edges`",
    before: &[],
    includes: &[],
    fields: &[
        field(
            "north",
            "kind of edge",
            "open",
            "open, house, existing concrete, curb, isolated, joined or bulkhead; before the third and the last, doweled or tied",
            "house",
        ),
        field("east", "kind of edge", "open", "the same", "open"),
        field("south", "kind of edge", "open", "the same", "open"),
        field("west", "kind of edge", "open", "the same", "open"),
    ],
};

pub const OPENING: FieldTable = FieldTable {
    name: "an opening",
    before: &[],
    includes: &[],
    fields: &[
        OWN[0],
        OWN[1],
        OWN[2],
        field(
            "at",
            "place",
            "",
            "from two sides of the slab to the nearest sides of the opening",
            "6 ft from west and 4 ft from north",
        ),
        field(
            "edge",
            "kind of edge",
            "open",
            "what stands in it: open is a form; existing concrete, house, curb or isolated is a strip",
            "existing concrete",
        ),
    ],
};
