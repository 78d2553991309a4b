//! The questions about the site, as keys of a takeoff and of business.yaml.

use crate::reading::fields::field;
use crate::reading::{Field, FieldTable};

const QUESTIONS: &[Field] = &[
    field(
        "truck over",
        "words",
        "",
        "what our truck must drive over: driveway, walk, lawn, septic tank; each is a release to initial",
        "driveway and walk",
    ),
    field(
        "overhead wires",
        "length",
        "",
        "how high wires hang where the truck or a boom works; moving them is not included",
        "16 ft",
    ),
    field(
        "sprinklers",
        "yes or no",
        "",
        "sprinkler lines in the way; a release to initial",
        "yes",
    ),
    field(
        "lawn crossed",
        "length",
        "",
        "way over grass; priced by the book, else not included",
        "40 ft",
    ),
    field(
        "other heights",
        "length",
        "",
        "how far existing surfaces beside it lie higher or lower; not included",
        "1 in",
    ),
    field(
        "cars near",
        "yes or no",
        "",
        "cars within reach of dust and splashes",
        "yes",
    ),
    field(
        "washout",
        "words",
        "",
        "where the chute is washed: on site, or hauled away by us",
        "hauled",
    ),
    field(
        "walls to cover",
        "length",
        "",
        "walls, doors and windows near the pour; priced by the book, else not included",
        "24 ft",
    ),
    field(
        "backfill",
        "words",
        "",
        "who puts soil back along the edges: ours or theirs",
        "ours",
    ),
    field(
        "lines marked",
        "yes or no",
        "",
        "whether the public lines underground are marked",
        "yes",
    ),
];

const ASK: Field = field(
    "ask",
    "list of questions",
    "overhead wires, sprinklers",
    "which questions a quote tells of when nobody answered them",
    "[overhead wires, washout]",
);

const fn with_ask() -> [Field; QUESTIONS.len() + 1] {
    let mut all = [ASK; QUESTIONS.len() + 1];
    let mut i = 0;
    while i < QUESTIONS.len() {
        all[i] = QUESTIONS[i];
        i += 1;
    }
    all
}

/// `site` of a takeoff.
pub const SITE: FieldTable = FieldTable {
    name: "`site`",
    before: &[],
    includes: &[],
    fields: QUESTIONS,
};

/// `site` of business.yaml: the usual answers, and which questions are asked.
pub const USUAL_SITE: FieldTable = FieldTable {
    name: "the usual `site`",
    before: &[],
    includes: &[],
    fields: &with_ask(),
};
