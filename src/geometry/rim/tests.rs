//! Rims by hand: an outline less the outline a width inside.

use rust_decimal_macros::dec;

use super::*;
use crate::geometry::walks::walked;

fn all(outline: &Outline) -> Vec<Strip> {
    (0..outline.sides().len()).map(whole).collect()
}

fn whole(side: usize) -> Strip {
    Strip {
        side,
        stretch: None,
    }
}

/// Square feet of strips a foot wide along whole sides.
fn area(outline: &Outline, strips: &[Strip], width: Decimal) -> Decimal {
    let length: Decimal = strips
        .iter()
        .map(|strip| outline.sides()[strip.side].length())
        .sum();
    length * width - corners(outline, strips).squares * width * width
}

fn feet(n: i64) -> Length {
    Length::feet_whole(n)
}

/// An L of 10 by 8 ft with a 4 by 3 ft corner out.
fn ell() -> Outline {
    walked("east 10 ft, north 5 ft, west 4 ft, north 3 ft, west 6 ft, south 8 ft")
}

#[test]
fn a_rectangle_less_the_one_inside() {
    let slab = Outline::rectangle(feet(12), feet(10));
    assert_eq!(area(&slab, &all(&slab), dec!(1)), dec!(120) - dec!(80));
    assert_eq!(area(&slab, &all(&slab), dec!(1.5)), dec!(120) - dec!(63));
    // South and east: 12 + 10 and one corner.
    let two = [whole(0), whole(1)];
    assert_eq!(area(&slab, &two, dec!(1)), dec!(21));
    // South and north do not meet.
    let two = [whole(0), whole(2)];
    assert_eq!(area(&slab, &two, dec!(1)), dec!(24));
}

#[test]
fn an_inside_corner_adds_its_square() {
    let slab = ell();
    // 10 × 8 − 4 × 3 less 8 × 6 − 4 × 3: the inside of the L moved in by a foot.
    assert_eq!(area(&slab, &all(&slab), dec!(1)), dec!(68) - dec!(36));
    let found = corners(&slab, &all(&slab));
    assert_eq!((found.outside, found.inside, found.uneven), (5, 1, false));
}

#[test]
fn a_part_of_a_side_has_no_corner_of_its_own() {
    let slab = Outline::rectangle(feet(12), feet(10));
    let part = |from, to| Strip {
        side: 0,
        stretch: Some((feet(from), feet(to))),
    };
    assert_eq!(corners(&slab, &[part(2, 7), whole(1)]).squares, dec!(0));
    assert_eq!(corners(&slab, &[part(2, 12), whole(1)]).squares, dec!(1));
    assert_eq!(corners(&slab, &[part(0, 7), whole(3)]).squares, dec!(1));
}

#[test]
fn a_circle_less_the_one_inside() {
    let slab = Outline::circle(feet(10));
    let inside = Outline::circle(feet(8)).area();
    let error = (area(&slab, &all(&slab), dec!(1)) - (slab.area() - inside)).abs();
    assert!(error < dec!(0.000001), "{error}");
}

#[test]
fn slanted_corners_follow_the_mitre() {
    // A right triangle 6, 8, 10: the one inside, a foot in, is half as large (inradius 2).
    let sides = Outline::rectangle(feet(8), feet(6)).sides().to_vec();
    let corner = [sides[0].from, sides[0].to, sides[1].to];
    let triangle: Vec<Side> = (0..3)
        .map(|i| Side {
            from: corner[i],
            to: corner[(i + 1) % 3],
            bulge: Length::ZERO,
            leg: i,
        })
        .collect();
    let turns: Decimal = (0..3)
        .map(|i| Turn::at(&triangle[i], &triangle[(i + 1) % 3]).mitre())
        .sum();
    // Area 24 less a quarter of it, over 24 ft of sides.
    let error = (dec!(24) - turns - (dec!(24) - dec!(6))).abs();
    assert!(error < dec!(0.000001), "{turns}");
}

#[test]
fn strips_that_meet_in_the_middle_are_too_wide() {
    let slab = Outline::rectangle(feet(12), feet(4));
    let inches = Length::inches_whole;
    assert_eq!(too_wide(&slab, &all(&slab), inches(23)), None);
    assert!(too_wide(&slab, &all(&slab), inches(24)).is_some());
    assert!(too_wide(&slab, &all(&slab), inches(36)).is_some());
    // One strip alone may be nearly as wide as the slab.
    assert_eq!(too_wide(&slab, &[whole(0)], inches(47)), None);
    assert!(too_wide(&slab, &[whole(0)], inches(49)).is_some());
    assert_eq!(too_wide(&ell(), &all(&ell()), inches(17)), None);
    assert!(too_wide(&ell(), &all(&ell()), inches(30)).is_some());
    let round = Outline::circle(feet(4));
    assert_eq!(too_wide(&round, &all(&round), inches(23)), None);
    assert!(too_wide(&round, &all(&round), inches(24)).is_some());
}

/// Square feet outside of whole sides, so far out.
fn outside(outline: &Outline, strips: &[Strip], width: Decimal) -> Decimal {
    let length: Decimal = strips
        .iter()
        .map(|strip| outline.sides()[strip.side].length())
        .sum();
    length * width - corners_outside(outline, strips).squares * width * width
}

/// Each the difference of two whole outlines, the larger one drawn by itself.
#[test]
fn what_lies_outside_is_a_larger_outline_less_this_one() {
    #[track_caller]
    fn case(slab: &Outline, width: Decimal, larger: Decimal) {
        let error = (outside(slab, &all(slab), width) - (larger - slab.area())).abs();
        assert!(error < dec!(0.000001), "{error}");
    }
    let slab = Outline::rectangle(feet(12), feet(10));
    case(&slab, dec!(0.5), dec!(13) * dec!(11));
    let larger = "east 12 ft, north 7 ft, west 4 ft, north 3 ft, west 8 ft, south 10 ft";
    case(&ell(), dec!(1), walked(larger).area());
    case(
        &Outline::circle(feet(10)),
        dec!(1),
        Outline::circle(feet(12)).area(),
    );
    // Straight sides and arcs that run on into each other.
    let long = "east 10 ft, north 6 ft bulge 3 ft, west 10 ft, south 6 ft bulge 3 ft";
    let larger = "east 10 ft, north 8 ft bulge 4 ft, west 10 ft, south 8 ft bulge 4 ft";
    case(&walked(long), dec!(1), walked(larger).area());
    // A right triangle 6, 8, 10: the one a foot outside is half as large again (inradius 2).
    let legs = crate::geometry::walks::legs("east 8 ft, north 6 ft");
    let triangle = Outline::walked_back(&legs, Length::ZERO).unwrap();
    case(&triangle, dec!(1), dec!(24) * dec!(2.25));
}

#[test]
fn outside_strips_end_square_or_at_the_side_of_an_inside_corner() {
    let slab = Outline::rectangle(feet(12), feet(10));
    let two = [whole(0), whole(2)];
    assert_eq!(outside(&slab, &two, dec!(1)), dec!(24));
    let part = |from, to| Strip {
        side: 0,
        stretch: Some((feet(from), feet(to))),
    };
    assert_eq!(
        corners_outside(&slab, &[part(2, 7), whole(1)]).squares,
        dec!(0)
    );
    assert_eq!(
        corners_outside(&slab, &[part(2, 12), whole(1)]).squares,
        dec!(-1)
    );
    let found = corners_outside(&ell(), &all(&ell()));
    assert_eq!(
        (found.outside, found.inside, found.squares),
        (5, 1, dec!(-4))
    );
}
