//! Every word a plan says of itself; names and notes of slabs come with the view.

/// The words of one language.
#[derive(Debug)]
pub struct PlanWords {
    pub house: &'static str,
    pub north: &'static str,
    pub feet: &'static str,
    pub across: &'static str,
    // The key.
    pub new_concrete: &'static str,
    pub joint: &'static str,
    pub strip: &'static str,
    pub between_pours: &'static str,
    pub fall: &'static str,
    pub wall: &'static str,
    pub existing: &'static str,
    pub curb: &'static str,
    pub unplaced: &'static str,
    // The alternative text.
    pub plan_at: &'static str,
    pub by: &'static str,
    pub circle: &'static str,
    pub bow: &'static str,
    pub joints_one: &'static str,
    pub joints_many: &'static str,
    pub panels_of: &'static str,
    pub runs: &'static str,
    pub beside: [(super::EdgeKind, &'static str); 6],
    pub sides: [&'static str; 5],
    pub directions: [&'static str; 8],
}

use super::EdgeKind as Kind;

pub const ENGLISH: PlanWords = PlanWords {
    house: "House",
    north: "N",
    feet: "feet",
    across: "across",
    new_concrete: "new concrete",
    joint: "joint, a groove that gives cracks a place to go",
    strip: "soft joint strip, lets the slab move",
    between_pours: "joint between two pours",
    fall: "water runs this way",
    wall: "wall of the house",
    existing: "concrete that stays",
    curb: "curb",
    unplaced: "drawn side by side, not where they will lie",
    plan_at: "Plan, north at the top,",
    by: "by",
    circle: "circle",
    bow: "bowed by",
    joints_one: "joint",
    joints_many: "joints",
    panels_of: "panels of",
    runs: "water runs",
    beside: [
        (Kind::House, "against the house"),
        (Kind::Existing, "against concrete that stays"),
        (Kind::Curb, "against a curb"),
        (Kind::Joined, "poured together with its neighbor"),
        (Kind::Bulkhead, "joint between two pours"),
        (Kind::Isolated, "soft joint strip"),
    ],
    sides: [
        "on the north side",
        "on the east side",
        "on the south side",
        "on the west side",
        "on a slanted side",
    ],
    directions: [
        "north",
        "northeast",
        "east",
        "southeast",
        "south",
        "southwest",
        "west",
        "northwest",
    ],
};
