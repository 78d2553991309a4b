//! Published constants, tables and curves, each with its source and how far that was read.
//!
//! The figures here were collected apart from the code. Marks: P a passage of
//! the document was seen, S a page restating it, C computed from a formula, M
//! from memory. Where a source prints a slip, the test says so and expects the
//! exact answer.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use flatwork::inside::tables::bars::Bar;
use flatwork::inside::tables::density::Material;
use flatwork::inside::tables::joints::{self, Spacing};
use flatwork::inside::tables::mesh::{self, Mesh};
use flatwork::inside::tables::{bulking, coverage, laps, yard};
use flatwork::inside::values::{Area, Length};

#[track_caller]
fn length(text: &str) -> Length {
    text.parse().expect("written in this file")
}

#[track_caller]
fn near(found: Decimal, expected: Decimal, within: Decimal) {
    let error = (found - expected).abs();
    assert!(error <= within, "found {found}, expected {expected}");
}

/// sq ft/cu yd, cu yd/100 sq ft, lb/sq ft at 150 and 145 lb/cu ft. C; the rows of
/// 2, 4 and 6 in are also printed by a ready-mix supplier (S).
#[test]
fn coverage_of_a_yard() {
    #[track_caller]
    fn case(thick: &str, covers: Decimal, takes: Decimal, reinforced: Decimal, plain: Decimal) {
        let thick = length(thick);
        near(yard::volume(covers, thick.inches()), dec!(1), dec!(0.00002));
        let hundred = yard::volume(dec!(100), thick.inches());
        near(hundred, takes, dec!(0.00005));
        let weight = |material: Material| material.pounds_per_square_foot(thick);
        near(
            weight(Material::ReinforcedConcrete),
            reinforced,
            dec!(0.005),
        );
        near(weight(Material::PlainConcrete), plain, dec!(0.005));
    }
    case("2 in", dec!(162.00), dec!(0.6173), dec!(25.00), dec!(24.17));
    case("3 in", dec!(108.00), dec!(0.9259), dec!(37.50), dec!(36.25));
    case(
        "3.5 in",
        dec!(92.571),
        dec!(1.0802),
        dec!(43.75),
        dec!(42.29),
    );
    case("4 in", dec!(81.00), dec!(1.2346), dec!(50.00), dec!(48.33));
    case("5 in", dec!(64.80), dec!(1.5432), dec!(62.50), dec!(60.42));
    case(
        "5.5 in",
        dec!(58.909),
        dec!(1.6975),
        dec!(68.75),
        dec!(66.46),
    );
    case("6 in", dec!(54.00), dec!(1.8519), dec!(75.00), dec!(72.50));
    case("7 in", dec!(46.286), dec!(2.1605), dec!(87.50), dec!(84.58));
    case("8 in", dec!(40.50), dec!(2.4691), dec!(100.00), dec!(96.67));
    case(
        "12 in",
        dec!(27.00),
        dec!(3.7037),
        dec!(150.00),
        dec!(145.00),
    );
}

/// A ready-mix producers' guide forms "3 in" paving with 2x4 lumber (S): filled to
/// the top of the form it takes 16.7% more. C.
#[test]
fn a_two_by_four_form_is_three_and_a_half_inches() {
    let of = |thick: &str| yard::volume(dec!(100), length(thick).inches());
    let more = of("3.5 in") / of("3 in");
    near(more, dec!(1.167), dec!(0.0005));
}

/// ASTM A615/A615M on three secondary pages that agree (S). Areas and weights as
/// the metric columns of the same pages give them: kg/m to three places.
#[test]
fn bars_by_their_metric_column() {
    let kilograms = [
        (Bar::No3, dec!(0.560)),
        (Bar::No4, dec!(0.994)),
        (Bar::No5, dec!(1.552)),
        (Bar::No6, dec!(2.235)),
        (Bar::No7, dec!(3.042)),
        (Bar::No8, dec!(3.973)),
    ];
    for (bar, kilograms_a_metre) in kilograms {
        // Exact by definition: 0.45359237 kg to the pound, 0.3048 m to the foot.
        let metric = bar.weight_per_foot() * dec!(0.45359237) / dec!(0.3048);
        near(metric, kilograms_a_metre, dec!(0.0008));
    }
}

/// Published weights of mesh against bare wires of the same table: 19.0, 27.2, 39.4,
/// 54.4, 74.8, then 28.6, 40.8, 59.2, 81.6 lb per 100 sq ft. C.
#[test]
fn mesh_against_its_bare_wires() {
    let bare = [190, 272, 394, 544, 748, 286, 408, 592, 816];
    for (style, tenths) in Mesh::ALL.into_iter().zip(bare) {
        let wires = style.area_per_foot() * dec!(2) * dec!(3.4) * dec!(100);
        near(wires, Decimal::new(tenths, 1), dec!(0.06));
        assert!(wires < style.pounds_per_100_square_feet(), "{style}");
    }
}

/// A textbook prints 10% and 6.7% more for laps of 6 and 4 in on a 5 ft roll (S); that
/// is the share of the roll lost. What must be bought is 11.1% and 7.1% more. C.
#[test]
fn mesh_is_bought_by_net_cover() {
    #[track_caller]
    fn case(side: &str, more: Decimal) {
        let (wide, long) = (Mesh::ROLL_WIDTH, Mesh::ROLL_LENGTH);
        let cover =
            mesh::net_cover(wide, long, length(side), Length::ZERO).expect("laps are small");
        let bought = (wide * long).square_feet() / cover.square_feet();
        near(bought, dec!(1) + more, dec!(0.0005));
    }
    case("6 in", dec!(0.111));
    case("4 in", dec!(0.071));
}

/// Pieces in a run, C. 39.5 ft of no. 4 in 20 ft stock takes 3 pieces, not 2.
#[test]
fn pieces_of_a_run() {
    let lap = laps::forty_diameters(Bar::No4);
    assert_eq!(lap, length("20 in"));
    let stock = length("20 ft");
    let pieces = |run: &str| laps::pieces_in_run(length(run), stock, lap);
    assert_eq!(pieces("39.5 ft"), Some(3));
    assert_eq!(pieces("35.5 ft"), Some(2));
    assert_eq!(pieces("19.5 ft"), Some(1));
}

/// A 20 x 36 ft driveway, no. 4 at 18 in each way, 3 in from the edges: 14 bars of
/// 35.5 ft in two pieces, 25 of 19.5 ft. 1,007.8 ft, 673.2 lb. C, for regression.
#[test]
fn steel_of_a_driveway() {
    let lap = laps::forty_diameters(Bar::No4).feet();
    let net = dec!(14) * dec!(35.5) + dec!(25) * dec!(19.5);
    assert_eq!(net, dec!(984.5));
    let feet = net + dec!(14) * lap;
    near(feet, dec!(1007.8), dec!(0.05));
    near(feet * Bar::No4.weight_per_foot(), dec!(673.2), dec!(0.05));
}

/// W15: a 4 in slab has joints at 8 to 12 ft (ACI 302.1R-96 through a trade magazine,
/// S). W16: a 10 ft drive with 1 in stone, at most 10 ft (a textbook, S).
#[test]
fn joints_of_a_four_inch_slab() {
    let four = length("4 in");
    let longest = |rule| joints::longest_spacing(four, rule, joints::CAP);
    assert_eq!(longest(Spacing::SmallAggregate), length("8 ft"));
    assert_eq!(longest(Spacing::LargeAggregate), length("10 ft"));
    assert_eq!(longest(Spacing::LowSlump), length("12 ft"));
}

/// Broken concrete by two published densities (`CalRecycle`, P): 4,050 / 2,400 is 1.69.
/// C. W30: ten yards become thirteen, a swell of 30% (an engineering page, S).
#[test]
fn broken_concrete_takes_more_room() {
    near(bulking::broken_concrete(), dec!(1.69), dec!(0.005));
    assert_eq!(bulking::swell_percent(dec!(10), dec!(13)), Some(dec!(30)));
}

/// 720 sq ft: 3.6 gal at 200 sq ft to the gallon (UFGS 03372 3.5.3.3, P). C.
#[test]
fn curing_compound_for_a_driveway() {
    let area: Area = length("36 ft") * length("20 ft");
    assert_eq!(coverage::curing_compound(area).value, dec!(3.6));
}
