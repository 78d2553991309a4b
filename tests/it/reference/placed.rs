//! Steel where it belongs, counted by hand: across corners, around them, on chairs, beside joints; stakes on curves.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use crate::support::{BOOK, BUSINESS, desk, value, with};
use flatwork::inside::input::job::Choice;

/// How many bars of which length lie across the inside corners of this slab.
fn across(slab: &str, order: &str) -> Vec<(Decimal, u32)> {
    let business = with(BUSINESS, &[("order:\n", &format!("order:\n{order}"))]);
    let job = format!("customer: Ira Sample\nslabs:\n  patio: {{{slab}}}");
    let offer = desk(&job, &business, BOOK).offer();
    let slab = &offer.by_choice[&Choice(Vec::new())].needs.slabs[0];
    let bars = slab.corner_bars.iter().flat_map(|bars| &bars.runs);
    bars.map(|run| (run.length.feet(), run.count)).collect()
}

const ELL: &str =
    "outline: [east 24 ft, south 12 ft, west 10 ft, south 8 ft, west 14 ft, north 20 ft]";

#[test]
fn two_bars_lie_across_every_corner_that_turns_in() {
    #[track_caller]
    fn case(slab: &str, order: &str, wanted: &[(Decimal, u32)]) {
        assert_eq!(across(slab, order), wanted, "{slab}; {order}");
    }
    case(ELL, "", &[(dec!(4), 2)]);
    case("size: 20 ft x 20 ft", "", &[]);
    // Four corners of the well; a round one and one under 2 sq ft have none.
    let well = |size: &str| {
        format!("{ELL}, cut out: [well: {{size: {size}, at: 3 ft from west and 3 ft from north}}]")
    };
    case(&well("4 ft x 4 ft"), "", &[(dec!(4), 10)]);
    case(&well("circle 4 ft"), "", &[(dec!(4), 2)]);
    case(&well("1 ft x 18 in"), "", &[(dec!(4), 2)]);
    // Its outline as it is walked, either way round, turned by 30 degrees or by a little less.
    case(
        "outline: [east 20 ft, south 10 ft, west 8 ft, south 6 ft, west 12 ft, back to start]",
        "",
        &[(dec!(4), 2)],
    );
    case(ELL, "  corner bars: none\n", &[]);
    case(ELL, "  corner bars: 3 no. 4, 5 ft long\n", &[(dec!(5), 3)]);
    case(&format!("{ELL}, corner bars: none"), "", &[]);
    // Without bars nothing is bought that nobody asked for.
    case(&format!("{ELL}, bars: none"), "", &[]);
    case(
        &format!("{ELL}, bars: none, corner bars: \"1 no. 4, 3 ft long\""),
        "",
        &[(dec!(3), 1)],
    );
}

/// Where a slab of the same pour fills the corner nothing cracks from it.
#[test]
fn a_filled_corner_has_no_bars() {
    let job = |edge: &str| {
        let walks = "outline: [east 24 ft, south 12 ft, 'west 10 ft, joined', 'south 8 ft, EDGE', west 14 ft, north 20 ft]";
        across(&walks.replace("EDGE", edge), "")
    };
    assert_eq!(job("joined"), []);
    assert_eq!(job("open"), [(dec!(4), 2)]);
}

/// Two bars along six edges, laps of 40 diameters: 12 pieces of 40 in, both legs 20 in.
#[test]
fn bars_of_two_thick_edges_are_lapped_by_an_l() {
    let job = format!(
        "customer: Ira Sample\nslabs:\n  patio: {{{ELL}, thickened: \"all, 12 in wide, 12 in deep, 2 no. 4\"}}"
    );
    let offer = desk(&job, BUSINESS, BOOK).offer();
    assert_eq!(value(&offer, "patio bent corner bars"), dec!(40));
    let slab = &offer.by_choice[&Choice(Vec::new())].needs.slabs[0];
    let bent = slab.bent_bars.as_ref().expect("edges meet");
    let runs: Vec<_> = bent
        .runs
        .iter()
        .map(|run| (run.length.inches(), run.count))
        .collect();
    assert_eq!(runs, [(dec!(40), 12)]);
    // Two edges that do not meet have none, nor has an owner who bends none.
    let apart = with(&job, &[("all, 12 in wide", "1 and 3, 12 in wide")]);
    let none = with(
        BUSINESS,
        &[("order:\n", "order:\n  bent corner bars: no\n")],
    );
    for offer in [
        desk(&apart, BUSINESS, BOOK).offer(),
        desk(&job, &none, BOOK).offer(),
    ] {
        assert!(
            offer.by_choice[&Choice(Vec::new())].needs.slabs[0]
                .bent_bars
                .is_none()
        );
    }
}

/// A circle of 10 ft is 31.4 ft around: 16 stakes 2 ft apart, and 11 where the owner has 3 ft.
#[test]
fn stakes_stand_closer_on_curves() {
    let stakes = |order: &str, size: &str| {
        let business = with(BUSINESS, &[("order:\n", &format!("order:\n{order}"))]);
        let job = format!("customer: Ira Sample\nslabs: {{walk: {size}}}");
        value(&desk(&job, &business, BOOK).offer(), "stakes")
    };
    assert_eq!(stakes("", "circle 10 ft"), dec!(16));
    assert_eq!(
        stakes("  stake spacing on curves: 3 ft\n", "circle 10 ft"),
        dec!(11)
    );
    // Never farther apart than along a straight form.
    assert_eq!(stakes("  stake spacing: 18 in\n", "circle 10 ft"), dec!(21));
    // Straight ones stay where they were: four sides of 9 ft with 4 each.
    assert_eq!(stakes("", "9 ft x 9 ft"), dec!(16));
}
