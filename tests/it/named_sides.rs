//! What stands at a side that is named, and the side that steps lead down from.

use crate::support::{BOOK, BUSINESS, Shop};
use flatwork::inside::input::job::Slab;

fn patio(keys: &str) -> Slab {
    let job = format!("customer: Ira Sample, Quillhaven\nslabs:\n  patio: {{{keys}}}\n");
    let (takeoff, _) = Shop::new(BUSINESS, BOOK).takeoff(&job);
    Slab::clone(&takeoff.slabs[0])
}

/// An L, 20 × 10 ft less 12 × 4 ft at the south-west, walked from its north-west corner: sides 3 and 5 look south.
const ELL: &str =
    "outline: [east 20 ft, south 10 ft, west 8 ft, north 4 ft, west 12 ft, north 6 ft]";

#[test]
fn each_side_says_what_stands_at_it() {
    #[track_caller]
    fn case(keys: &str, kinds: &[&str]) {
        let slab = patio(keys);
        let found: Vec<&str> = slab.edges.iter().map(|part| part.kind.name()).collect();
        assert_eq!(found, kinds, "{keys}");
    }
    let tapes = "size: triangle 9 ft x 12 ft x 15 ft, edges";
    case(
        &format!("{tapes}: {{15 ft: house}}"),
        &["open", "open", "house"],
    );
    case(
        &format!("{tapes}: {{east: curb, northwest: house}}"),
        &["open", "curb", "house"],
    );
    case(
        &format!("{tapes}: {{all: house, side 1: open}}"),
        &["open", "house", "house"],
    );
    let trapezoid = "size: \"trapezoid 20 ft and 14 ft, 8 ft apart\", edges";
    case(
        &format!("{trapezoid}: {{north side: house, west end: curb}}"),
        &["open", "open", "house", "curb"],
    );
    // The curve of more than half a circle is two sides of the outline and one of the shape.
    case(
        "size: \"sector 9 ft radius, 300 degrees, toward south\", edges: {arc: house}",
        &["open", "house", "house", "open"],
    );
    case(
        "size: circle 9 ft, edges: {all: house}",
        &["house", "house"],
    );
    // Walked with the hands of a clock, so all but the first side follow the other way round.
    case(
        &format!("{ELL}, edges: {{6: house, side 2: curb}}"),
        &["open", "house", "open", "open", "open", "curb"],
    );
    // Of two sides that look south the one with nothing of its own is meant.
    let against = ELL.replace("west 8 ft", "\"west 8 ft, against house\"");
    case(
        &format!("{against}, edges: {{south: curb, all: isolated}}"),
        &[
            "isolated", "isolated", "curb", "isolated", "house", "isolated",
        ],
    );
    // Along the right edge, across the end, along the left edge on the way back, across the start.
    let path = "path: [east 9 ft, north 9 ft], width: 4 ft, edges";
    let both = format!("{path}: {{left: house, end edge: curb, side 1: isolated}}");
    case(
        &both,
        &["isolated", "open", "curb", "house", "house", "open"],
    );
    let ring = patio("size: \"ring 9 ft outside, 2 ft inside\", edges: {inner arc: house}");
    assert!(ring.edges.iter().all(|part| part.kind.has_form()));
    assert!(
        ring.openings[0]
            .edges
            .iter()
            .all(|part| part.kind.has_strip())
    );
}

#[test]
fn steps_lead_down_from_the_side_that_is_meant() {
    #[track_caller]
    fn case(outline: &str, wide: &str, edge: &str, leg: usize) {
        let steps = format!("2 risers of 7 in, 12 in treads, {wide} wide, from {edge}");
        let slab = patio(&format!("{outline}, steps: \"{steps}\""));
        let joined = slab.edges.iter().find(|part| part.kind.name() == "joined");
        let side = slab.outline.sides()[joined.expect("the steps are there").side];
        assert_eq!(side.leg + 1, leg, "{steps}");
    }
    case(ELL, "5 ft", "side 3", 3);
    case(ELL, "5 ft", "side 5 edge", 5);
    case(ELL, "5 ft", "north edge", 1);
    // Only side 5 is as long, or only it is open.
    case(ELL, "10 ft", "south edge", 5);
    let against = ELL.replace("west 12 ft", "\"west 12 ft, against house\"");
    case(&against, "5 ft", "south edge", 3);
    case(
        "size: \"triangle 12 ft x 9 ft, square at southwest\"",
        "5 ft",
        "base edge",
        1,
    );
    case(
        "size: \"half circle 12 ft, flat at east\"",
        "5 ft",
        "east edge",
        1,
    );
}
