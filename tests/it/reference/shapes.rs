//! Published areas and volumes, measured by other shapes than those they were published with.

use rust_decimal_macros::dec;

use super::concrete::{places, with_allowance};
use crate::support::value;

/// Three strips of 10.5 × 17, 14.5 × 12.5 and 15 × 14.5 ft have 577.25 sq ft together (computed
/// here; a secondary page, writinguniverse.com, prints the same): laid end to end they are one
/// slab of eight corners.
#[test]
fn three_strips_as_one_slab_by_its_corners() {
    let slab = "  slab:
    corners:
      - 0 ft, 0 ft
      - 15 ft, 0 ft
      - 15 ft, 14.5 ft
      - 14.5 ft, 14.5 ft
      - 14.5 ft, 27 ft
      - 10.5 ft, 27 ft
      - 10.5 ft, 44 ft
      - 0 ft, 44 ft";
    let offer = with_allowance("0%", slab);
    assert_eq!(value(&offer, "slab area"), dec!(577.25));
}

/// A circle of 9 ft radius has 254.469 sq ft (computed here; ehow.co.uk, a secondary page, prints
/// 254.5). Left open in a slab it is taken off, and as half circles and as a sector it is shared.
#[test]
fn the_published_circle_left_open_and_in_parts() {
    let open = "  slab:
    size: 40 ft x 40 ft
    cut out:
      - pool: {size: circle 18 ft, at: 8 ft from west and 9 ft from south}";
    let offer = with_allowance("0%", open);
    let area = value(&offer, "slab area");
    assert_eq!(places(dec!(1600) - area, 3), dec!(254.469));
    let area = |shape: &str| {
        let offer = with_allowance("0%", &format!("  slab: {shape}"));
        value(&offer, "slab area")
    };
    let half = area("half circle 18 ft, flat at west");
    assert_eq!(places(half * dec!(2), 3), dec!(254.469));
    let parts = area("sector 9 ft radius, 130.5 degrees, toward north")
        + area("sector 9 ft radius, 229.5 degrees, toward southwest");
    assert_eq!(places(parts, 3), dec!(254.469));
    let ring = area("ring 30 ft outside, 18 ft inside");
    assert_eq!(places(area("circle 30 ft") - ring, 3), dec!(254.469));
}

/// 12 ft 6 in × 15 ft 3 in × 6 in is 95.3125 cu ft (computed here; ehow.co.uk, a secondary page,
/// prints 95.31): two right triangles, or two trapezoids, are the same slab.
#[test]
fn the_published_slab_cut_slantwise() {
    let yards = |shape: &str| {
        let slab = format!("  slab: {{size: \"{shape}\", thickness: 6 in}}");
        value(&with_allowance("0%", &slab), "slab concrete")
    };
    let triangle = yards("triangle 12 ft 6 in x 15 ft 3 in, square at northeast");
    assert_eq!(places(triangle * dec!(54), 4), dec!(95.3125));
    let trapezoids = yards("trapezoid 9 ft and 3 ft 6 in, 15 ft 3 in apart")
        + yards("trapezoid 3 ft 6 in and 9 ft, 15 ft 3 in apart, square at west");
    assert_eq!(places(trapezoids * dec!(27), 4), dec!(95.3125));
}

/// Stakes stand at both ends of a form and between; a form that closes on itself has no ends.
/// Curved forms want them closer. Common practice, no source; the counts were done by hand.
#[test]
fn stakes_of_rings_and_of_stretches() {
    let stakes = |slab: &str| value(&with_allowance("0%", slab), "stakes");
    // 3.1416 × 12 ft at the 2 ft of curves is 18.85.
    assert_eq!(stakes("  slab: circle 12 ft"), dec!(19));
    // Four sides of 12 ft, each 4 gaps and 5 stakes.
    assert_eq!(stakes("  slab: 12 ft x 12 ft"), dec!(20));
    let open = "  slab: {size: 12 ft x 12 ft, cut out: [pit: {size: circle 4 ft, at: 4 ft from west and 4 ft from south}]}";
    // 12.57 ft round the pit at 2 ft are 6.28, so 7 more.
    assert_eq!(stakes(open), dec!(27));
    // Half a circle: 3.1416 × 6 ft = 18.85 ft of arc, 10 gaps and 11 stakes, and 12 ft straight, 4 gaps and 5.
    assert_eq!(stakes("  slab: half circle 12 ft, flat at north"), dec!(16));
    // The 15 ft side of a triangle of 9, 12 and 15 ft: 6 stakes, none for a trace of its length.
    let triangle = "  slab: triangle 12 ft x 9 ft, square at southwest";
    assert_eq!(stakes(triangle), dec!(15));
    let three = "  slab: triangle 9 ft x 15 ft x 12 ft";
    assert_eq!(stakes(three), dec!(15));
}

/// The published circle again, broken out in halves and as what is left beside a ring.
#[test]
fn the_published_circle_broken_out() {
    let job = "\
customer: Ira Sample
slabs:
  slab: 12 ft x 12 ft
remove:
  - old half: {size: \"half circle 18 ft, flat at north\", depth: 4 in}
  - old ring: {size: \"ring 30 ft outside, 18 ft inside\", depth: 4 in}
  - old circle: {size: circle 30 ft, depth: 4 in}
";
    let offer = crate::support::desk(job, crate::support::BUSINESS, crate::support::BOOK).offer();
    let half = value(&offer, "old half area");
    assert_eq!(places(half * dec!(2), 3), dec!(254.469));
    let inside = value(&offer, "old circle area") - value(&offer, "old ring area");
    assert_eq!(places(inside, 3), dec!(254.469));
}

/// A border runs along the slab's own open edges, not round what is left open in it: 24 × 16 ft
/// all open, 1 ft wide, is 80 − 4 sq ft (by hand).
#[test]
fn a_border_leaves_openings_alone() {
    let slab = "  patio:
    size: 24 ft x 16 ft
    border: 12 in of broom
    cut out:
      - pit: {size: circle 4 ft, at: 8 ft from west and 5 ft from south}";
    let offer = with_allowance("0%", slab);
    assert_eq!(value(&offer, "patio border"), dec!(76));
}
