//! Thick ends, thickened edges and steps: no published example was found, so all are computed here
//! by hand, most of them a second way: as the large box less the room inside it.

use rust_decimal_macros::dec;

use super::concrete::{places, with_allowance};
use crate::support::value;

/// 12 × 10 ft, 4 in, edges 12 in wide and 12 in deep all round: a box of 120 cu ft less the room
/// of 10 × 8 ft × 8 in below the middle: 66.667 cu ft, 2.4691 cu yd.
#[test]
fn a_box_less_the_room_below_its_middle() {
    let offer = with_allowance(
        "0%",
        "  patio: {size: 12 ft x 10 ft, thickened: {edges: all, width: 12 in, depth: 12 in}}",
    );
    let yards = value(&offer, "patio concrete");
    assert_eq!(places(yards * dec!(27), 3), dec!(66.667));
    assert_eq!(places(yards, 4), dec!(2.4691));
}

/// The same with a 6 in taper: the room is a frustum of 10 × 8 ft at the bottom and 9 × 7 ft at the top.
/// By the prismoid formula 8/12 ÷ 6 × (80 + 4 × 9.5 × 7.5 + 63) = 47.5556 cu ft; 120 less that is 72.4444.
#[test]
fn a_taper_leaves_a_frustum() {
    let offer = with_allowance(
        "0%",
        "  patio: {size: 12 ft x 10 ft, thickened: {edges: all, width: 12 in, depth: 12 in, taper: 6 in}}",
    );
    let yards = value(&offer, "patio concrete");
    assert_eq!(places(yards * dec!(27), 4), dec!(72.4444));
}

/// An L of 10 × 8 ft less 4 × 3 ft: all round, a foot wide, the inside corner has its square once.
#[test]
fn an_inside_corner_is_filled_once() {
    let walk = "[east 10 ft, north 5 ft, west 4 ft, north 3 ft, west 6 ft, south 8 ft]";
    let slab = format!(
        "  patio: {{outline: {walk}, thickened: {{edges: all, width: 12 in, depth: 12 in}}}}"
    );
    let offer = with_allowance("0%", &slab);
    // 68 sq ft less the L a foot inside, 8 × 6 less 4 × 3.
    assert_eq!(value(&offer, "patio thickened strip"), dec!(32));
    // Only the two sides of the notch: 4 + 3 ft and the square between them.
    let slab = slab.replace("edges: all", "edges: [3, 4]");
    let offer = with_allowance("0%", &slab);
    assert_eq!(value(&offer, "patio thickened strip"), dec!(8));
}

/// Along the long side of 12 × 9 ft, which stands 7.2 ft from the right angle: between 15 ft and,
/// a foot inside, 15 × 6.2 ÷ 7.2 ft; by its name, its length or where it looks.
#[test]
fn along_the_long_side_of_a_triangle() {
    for name in ["long side", "15 ft", "northeast", "side 2"] {
        let slab = format!(
            "  patio: {{size: \"triangle 12 ft x 9 ft, square at southwest\", thickened: \"{name}, 12 in wide, 12 in deep\"}}"
        );
        let strip = value(&with_allowance("0%", &slab), "patio thickened strip");
        assert_eq!(places(strip, 4), dec!(13.9583), "{name}");
    }
}

/// A circle of 10 ft: π × (5² − 4²) = 28.2743 sq ft.
#[test]
fn a_ring() {
    let offer = with_allowance(
        "0%",
        "  patio: {size: circle 10 ft, thickened: {edges: all, width: 12 in, depth: 12 in}}",
    );
    assert_eq!(
        places(value(&offer, "patio thickened strip"), 4),
        dec!(28.2743)
    );
}

/// 20 × 10 ft from 4 to 6 in: a wedge of 83.333 cu ft, 3.0864 cu yd, whichever end is thick.
#[test]
fn a_wedge() {
    for thickness in ["4 in to 6 in", "4 in to 6 in north", "6 in to 4 in west"] {
        let slab = format!("  patio: {{size: 20 ft x 10 ft, thickness: {thickness}}}");
        let yards = value(&with_allowance("0%", &slab), "patio concrete");
        assert_eq!(places(yards * dec!(27), 3), dec!(83.333), "{thickness}");
        assert_eq!(places(yards, 4), dec!(3.0864), "{thickness}");
    }
}

/// Three risers of 7 in, 12 in treads, 5 ft wide, up to a solid stoop of 5 × 5 ft:
/// 5 × 1 × 7/12 + 5 × 1 × 14/12 below, 25 × 21/12 above: 52.5 cu ft, 1.9444 cu yd.
#[test]
fn steps_up_to_a_block() {
    let stoop = "  stoop:\n    kind: step\n    size: 5 ft x 5 ft\n    stoop: solid\n    steps: 3 risers of 7 in, 12 in treads, 5 ft wide, from south edge";
    let offer = with_allowance("0%", stoop);
    let yards = value(&offer, "stoop step concrete");
    assert_eq!(places(yards * dec!(27), 4), dec!(8.75));
    let yards = value(&offer, "stoop concrete");
    assert_eq!(places(yards * dec!(27), 4), dec!(52.5));
    assert_eq!(places(yards, 4), dec!(1.9444));
    // Three risers of 5 × 7/12 ft and two treads of 5 × 1 ft.
    assert_eq!(value(&offer, "stoop step face"), dec!(18.75));
    // With 8 in walls and a 5 in slab the room inside stays fill: (5 − 16/12)² × 16/12 = 17.9259 cu ft.
    let filled = stoop.replace("solid", "filled, 8 in walls\n    thickness: 5 in");
    let offer = with_allowance("0%", &filled);
    let fill = value(&offer, "stoop fill") * dec!(27);
    let concrete = value(&offer, "stoop concrete") * dec!(27);
    assert_eq!(places(fill, 4), dec!(17.9259));
    assert_eq!(places(concrete + fill, 4), dec!(52.5));
}
