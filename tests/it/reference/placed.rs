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

/// Chairs of 2 and 3 in: under 4 in with no. 3 (1 5/8 to 1 3/4 in wanted) and 5 in with no. 4 (2 to
/// 2 1/2 in) stand those of 2 in, under 6 in (2 1/2 to 3 1/2 in) those of 3 in.
#[test]
fn chairs_are_as_high_as_the_slab_asks() {
    #[track_caller]
    fn case(found: &[String], wanted: &str) {
        assert_eq!(found, [wanted]);
    }
    let chair = "  chair:\n    is: Chairs 2 in\n";
    let tall = "  tall: {unit: piece, class: material, height: 3 in, prices: {2026-03-01: 0.60}}\n";
    let book = with(
        BOOK,
        &[(chair, &format!("{tall}{chair}    height: 2 in\n"))],
    );
    let bought = |thickness: &str, bars: &str, book: &str| -> Vec<String> {
        let job = format!(
            "customer: Ira Sample\nslabs:\n  patio: {{size: 9 ft x 10 ft, thickness: {thickness}, bars: {bars}}}"
        );
        let offer = desk(&job, BUSINESS, book).offer();
        let needs = &offer.by_choice[&Choice(Vec::new())].needs.needs;
        let names = needs.iter().map(|need| need.quantity.name().to_string());
        names.filter(|name| name.starts_with("chairs")).collect()
    };
    case(&bought("4 in", "no. 3 at 18 in", &book), "chairs");
    case(&bought("5 in", "no. 4 at 18 in", &book), "chairs");
    case(&bought("6 in", "no. 4 at 18 in", &book), "chairs of 3 in");
    case(
        &bought("5 in", "none, mesh: 6x6 W1.4/W1.4", &book),
        "chairs of 3 in",
    );
    // Who does not say how high they are has the one kind under everything.
    case(&bought("6 in", "no. 4 at 18 in", BOOK), "chairs");
    let other = with(&book, &[("    height: 2 in\n", "")]);
    case(&bought("6 in", "no. 4 at 18 in", &other), "chairs");
}

/// 20 ft × 30 ft with joints each 10 ft, no. 4 at 2 ft, 2 in of cover: 16 bars of 19 ft 8 in and 11
/// of 29 ft 8 in; cut they are 32 and 33 of 9 ft 8 in, and of every other one half.
#[test]
fn bars_end_beside_the_joints_where_the_owner_cuts_them() {
    let runs = |said: &str, order: &str| -> Vec<(Decimal, u32)> {
        let business = with(BUSINESS, &[("order:\n", &format!("order:\n{order}"))]);
        let job = format!(
            "customer: Ira Sample\nslabs:\n  driveway: {{size: 20 ft x 30 ft, bars: no. 4 at 2 ft{said}}}"
        );
        let offer = desk(&job, &business, BOOK).offer();
        let slab = &offer.by_choice[&Choice(Vec::new())].needs.slabs[0];
        let runs = slab.bars[0].runs.iter();
        runs.map(|run| (run.length.inches(), run.count)).collect()
    };
    let through = [(dec!(356), 11), (dec!(236), 16)];
    assert_eq!(runs("", ""), through);
    assert_eq!(runs(", steel at joints: cut", ""), [(dec!(116), 65)]);
    let half = [(dec!(356), 6), (dec!(236), 8), (dec!(116), 31)];
    assert_eq!(runs(", steel at joints: every other", ""), half);
    assert_eq!(runs("", "  steel at joints: every other\n"), half);
    assert_eq!(
        runs(", steel at joints: through", "  steel at joints: cut\n"),
        through
    );
    // Without joints there is nothing to end at.
    assert_eq!(runs(", joints: none, steel at joints: cut", ""), through);
}

/// 20 ft × 20 ft with joints each 8 ft: two across, two along.
#[test]
fn mesh_is_laid_whole_and_cut_in_the_joints() {
    let job = "customer: Ira Sample\nslabs:\n  slab: {size: 20 ft x 20 ft, steel at joints: WORD}";
    let cut = desk(&job.replace("WORD", "cut"), BUSINESS, BOOK).offer();
    let through = desk(&job.replace("WORD", "through"), BUSINESS, BOOK).offer();
    assert_eq!(value(&cut, "slab mesh cut at joints"), dec!(80));
    assert_eq!(value(&cut, "slab mesh"), value(&through, "slab mesh"));
}

/// 3 risers of 7 in, treads of 12 in, 5 ft wide: 7 + 14 in below two treads, 8.75 cu ft, or 12 in
/// below each, 10 cu ft, and 4 sq ft at both sides.
#[test]
fn a_stepped_bottom_is_as_thick_below_every_tread() {
    let steps = |more: &str| {
        let job = format!(
            "customer: Ira Sample\nslabs:\n  patio: {{size: 12 ft x 10 ft, steps: \"3 risers of 7 in, 12 in treads, 5 ft wide, from south edge{more}\"}}"
        );
        let offer = desk(&job, BUSINESS, BOOK).offer();
        let slab = &offer.by_choice[&Choice(Vec::new())].needs.slabs[0];
        let steps = slab.steps.as_ref().unwrap();
        let concrete = steps.concrete.as_ref().unwrap().value() * dec!(27);
        (
            concrete.round_dp(6),
            steps.side_face.as_ref().unwrap().value(),
        )
    };
    assert_eq!(steps(""), (dec!(8.75), dec!(3.5)));
    assert_eq!(steps(", level bottom"), steps(""));
    assert_eq!(steps(", 12 in thick"), (dec!(10), dec!(4)));
}

/// A patio 4 in thick over a walk 5 in thick and 3 in lower, on two days: whichever is first, its form
/// is as deep as it is itself; poured second, the patio has a face of 3 in.
#[test]
fn a_step_down_between_two_pours_is_formed_by_each_slab_alone() {
    let faces = |first: &str, second: &str| {
        let pour = format!(
            "[{{day: 2026-06-15, slabs: [{first}]}}, {{day: 2026-06-17, slabs: [{second}]}}]"
        );
        let job = format!(
            "customer: Ira Sample\npour: {pour}\nslabs:\n  patio: {{size: 10 ft x 10 ft, thickness: 4 in}}\n  walk: {{size: 10 ft x 4 ft, thickness: 5 in, lower: 3 in, beside: \"patio, south edge, 0 ft from west end\"}}"
        );
        let offer = desk(&job, BUSINESS, BOOK).offer();
        let slabs = &offer.by_choice[&Choice(Vec::new())].needs.slabs;
        [0, 1].map(|i: usize| (slabs[i].edges.straight_face.value() * dec!(12)).round_dp(3))
    };
    // Three sides of 30 ft by 4 in, and 10 ft of 4 in or of 3 in; the walk 18 ft by 5 in, and 10 ft.
    assert_eq!(faces("patio", "walk"), [dec!(160), dec!(90)]);
    assert_eq!(faces("walk", "patio"), [dec!(150), dec!(140)]);
}
