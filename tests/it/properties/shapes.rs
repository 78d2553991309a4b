//! Odd shapes and slabs with openings: turned, mirrored and shifted they are the same; an opening never costs concrete.

use std::fmt::Write as _;

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::SHOP;
use super::jobs::{Dice, length};
use super::odd_shapes::{Leg, Shape, Side, Way, edges};
use super::symmetry::{bought, close, measured};
use crate::support::{listed, value};
use flatwork::inside::trade::Quantity;

#[derive(Clone, Debug)]
struct Opening {
    shape: Shape,
    /// From the east or west side, and from the north or south.
    spot: [(u64, Way); 2],
    edge: &'static str,
}

#[derive(Clone, Debug)]
struct Slab {
    shape: Shape,
    openings: Vec<Opening>,
    /// What stands at some of its sides.
    edges: Vec<(Side, &'static str)>,
}

impl Slab {
    fn changed(&self, shape: fn(&Shape) -> Shape, way: fn(Way) -> Way) -> Self {
        let openings = self.openings.iter();
        Self {
            shape: shape(&self.shape),
            edges: self
                .edges
                .iter()
                .map(|(side, kind)| (side.changed(way), *kind))
                .collect(),
            openings: openings
                .map(|opening| Opening {
                    shape: shape(&opening.shape),
                    spot: opening.spot.map(|(far, side)| (far, way(side))),
                    edge: opening.edge,
                })
                .collect(),
        }
    }

    fn text(&self) -> String {
        let mut out = format!("  patio:\n    thickness: 5 in\n    {}\n", self.shape.text());
        if !self.edges.is_empty() {
            let edges = self.edges.iter();
            let edges: Vec<String> = edges
                .map(|(side, kind)| format!("{}: {kind}", side.name()))
                .collect();
            let _ = writeln!(out, "    edges: {{{}}}", edges.join(", "));
        }
        if !self.openings.is_empty() {
            out.push_str("    cut out:\n");
        }
        for (i, opening) in self.openings.iter().enumerate() {
            let [a, b] = opening
                .spot
                .map(|(far, side)| format!("{} from {}", length(far), side.name()));
            let _ = writeln!(
                out,
                "      - place {i}: {{{}, at: {a} and {b}, edge: {}}}",
                opening.shape.text(),
                opening.edge
            );
        }
        out
    }

    fn job(&self) -> String {
        format!("customer: Ira Sample, Quillhaven\nslabs:\n{}", self.text())
    }
}

/// 12 to 40 ft, with up to three openings, each in a field of its own.
fn slab(seed: u64) -> Slab {
    let mut dice = Dice::new(seed + 7_000);
    let (a, b) = (dice.between(1200, 3840), dice.between(1200, 3840));
    let signed = |n: u64| i64::try_from(n).expect("a small job");
    let way =
        |level: bool, dice: &mut Dice| Way(usize::from(level) + 2 * usize::from(dice.one_in(2)));
    let shape = match dice.between(0, 10) {
        0 => Shape::Ring(a, a / dice.between(2, 5)),
        1 => Shape::Triangle(a, b, way(false, &mut dice), way(true, &mut dice)),
        2 => {
            let first = way(dice.one_in(2), &mut dice);
            let second = dice.one_in(2).then(|| way(!first.is_level(), &mut dice));
            let angle = dice.between(20, 700);
            if dice.one_in(2) {
                Shape::RingSector(a, a - dice.between(150, 500), angle, first, second)
            } else {
                Shape::Sector(a / 2, angle, first, second)
            }
        }
        3 | 4 => {
            // A rectangle with its corners pushed outward: no angle turns inward.
            let mut out = || signed(dice.between(0, 300));
            let (a, b) = (signed(a), signed(b));
            Shape::Corners(vec![
                (-out(), -out()),
                (a + out(), -out()),
                (a + out(), b + out()),
                (-out(), b + out()),
            ])
        }
        5 | 6 => Shape::Path(Leg::some(&mut dice), dice.between(96, 600)),
        _ => Shape::Rectangle(a, b),
    };
    let mut openings = Vec::new();
    if matches!(shape, Shape::Rectangle(..) | Shape::Corners(_)) {
        let corners = [(0, 1), (2, 1), (2, 3), (0, 3)];
        for (upright, level) in corners
            .into_iter()
            .take(usize::try_from(dice.between(0, 3)).expect("few"))
        {
            // Slab and push leave 5 ft from each corner's box to the middle.
            let (wide, deep) = (dice.between(60, 230), dice.between(60, 230));
            let far = |dice: &mut Dice| dice.between(310, 350);
            let shape = match dice.between(0, 3) {
                0 => Shape::Circle(wide),
                1 => Shape::Triangle(wide, deep, way(false, &mut dice), way(true, &mut dice)),
                _ => Shape::Rectangle(wide, deep),
            };
            openings.push(Opening {
                shape,
                spot: [(far(&mut dice), Way(level)), (far(&mut dice), Way(upright))],
                edge: dice.pick(&["open", "open", "existing concrete"]),
            });
        }
    }
    let edges = edges(&shape, &mut dice);
    Slab {
        shape,
        openings,
        edges,
    }
}

fn each(check: impl Fn(u64, &Slab)) {
    let mut with = 0;
    for seed in 0..150 {
        let slab = slab(seed);
        with += usize::from(!slab.openings.is_empty());
        check(seed, &slab);
    }
    assert!(40 < with, "only {with} slabs had openings");
}

fn same(one: &Slab, other: &Slab) {
    let (first, second) = SHOP.with(|shop| (shop.offer(&one.job()), shop.offer(&other.job())));
    let texts = format!("{}\n{}", one.job(), other.job());
    close(&measured(&first), &measured(&second), &texts);
    assert_eq!(bought(&first), bought(&second), "{texts}");
}

#[test]
fn after_a_quarter_turn() {
    each(|_, slab| same(slab, &slab.changed(Shape::turned, Way::turned)));
}

#[test]
fn in_a_mirror() {
    each(|_, slab| same(slab, &slab.changed(Shape::mirrored, Way::mirrored)));
}

/// Behind another slab it lies elsewhere on the sheet.
#[test]
fn somewhere_else() {
    each(|_, slab| {
        let alone = SHOP.with(|shop| shop.offer(&slab.job()));
        let text = slab
            .job()
            .replace("slabs:\n", "slabs:\n  walk: 17 ft 3 3/8 in x 4 ft\n");
        let behind = SHOP.with(|shop| shop.offer(&text));
        let of_it = |all: Vec<(String, Decimal)>| -> Vec<(String, Decimal)> {
            let mine = |(name, _): &(String, Decimal)| name.starts_with("patio");
            all.into_iter().filter(mine).collect()
        };
        close(&of_it(measured(&alone)), &of_it(measured(&behind)), &text);
    });
}

#[test]
fn an_opening_never_raises_the_concrete() {
    each(|_, slab| {
        let mut before: Option<[Decimal; 4]> = None;
        for many in 0..=slab.openings.len() {
            let with = Slab {
                openings: slab.openings[..many].to_vec(),
                ..slab.clone()
            };
            let offer = SHOP.with(|shop| shop.offer(&with.job()));
            let found = ["patio area", "patio concrete", "patio base", "patio bars"]
                .map(|name| value(&offer, name));
            if let Some(before) = before {
                let pairs = found.iter().zip(before);
                assert!(
                    pairs.into_iter().all(|(now, then)| *now <= then),
                    "{}",
                    with.job()
                );
                // Those of 2 sq ft are taken off, smaller ones are not.
                let area = value(&offer, &format!("patio place {} area", many - 1));
                let off = before[0] - found[0];
                let taken_off = if area < dec!(2) { dec!(0) } else { area };
                let near = (off - taken_off).abs() < dec!(0.000000001);
                assert!(near, "{off} is not {taken_off}\n{}", with.job());
            }
            before = Some(found);
        }
    });
}

/// Curves are chords in panels, within 1/32 in of the way along them.
#[test]
fn panels_tile_the_slab_less_its_openings() {
    each(|seed, slab| {
        let offer = SHOP.with(|shop| shop.offer(&slab.job()));
        let found = &offer.quoted().needs.slabs[0];
        let joints = found.joints.as_ref().expect("a patio has joints");
        let tiled: Decimal = joints.layout.panels.iter().map(|panel| panel.area).sum();
        let openings = found.openings.iter();
        let kept = openings.filter(|opening| !opening.is_taken_off);
        let open: Decimal = kept.map(|opening| opening.area.value()).sum();
        let curved = listed(found, " edge").map(Quantity::value);
        let slack = match slab.shape {
            Shape::Rectangle(..) | Shape::Corners(_) if slab.openings.is_empty() => dec!(0.00001),
            _ => curved.sum::<Decimal>() / dec!(384),
        };
        let off = (found.area.value() - open - tiled).abs();
        assert!(off <= slack, "seed {seed}: off by {off}\n{}", slab.job());
    });
}
