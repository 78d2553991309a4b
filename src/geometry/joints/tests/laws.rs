//! What holds for any slab.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::super::ground::Ground;
use super::super::{Asked, Fault, Layout, Line, lay_out};
use super::gallery::{Slab, at, gallery, long, path, rectangle, slab};
use crate::geometry::{Outline, Point};
use crate::values::Length;

const FOOT: i64 = 304_800_000;

/// Numbers that are the same on every machine.
struct Dice(u64);

impl Dice {
    fn below(&mut self, sides: i64) -> i64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        i64::try_from(self.0 >> 33).unwrap() % sides
    }

    fn feet(&mut self, from: i64, to: i64) -> i64 {
        (from * 12 + self.below((to - from) * 12)) * FOOT / 12
    }
}

fn cornered(corners: &[(i64, i64)], bulges: &[i64]) -> Option<Outline> {
    let corners = corners.iter().enumerate().map(|(number, &(x, y))| {
        let bulge = bulges.get(number).copied().unwrap_or(0);
        (Point::new(x, y), Length::nanometres(bulge))
    });
    Outline::cornered(&corners.collect::<Vec<_>>()).ok()
}

#[expect(
    clippy::too_many_lines,
    clippy::many_single_char_names,
    reason = "one shape after another, by letters as in a drawing"
)]
fn random(dice: &mut Dice) -> Option<Slab> {
    let mut side = || dice.feet(4, 24);
    let (a, b, c, d, e, g) = (side(), side(), side(), side(), side(), side());
    let outline = match dice.below(9) {
        0 => cornered(&[(0, 0), (a, 0), (a, b), (0, b)], &[]),
        1 => cornered(
            &[
                (0, 0),
                (a + b, 0),
                (a + b, c),
                (a, c),
                (a, c + d),
                (0, c + d),
            ],
            &[],
        ),
        2 => {
            let corners = [
                (0, 0),
                (b, 0),
                (b, c),
                (b + e, c),
                (b + e, c + d),
                (-g, c + d),
                (-g, c),
                (0, c),
            ];
            cornered(&corners, &[])
        }
        3 => {
            let (x, y) = (a + b + e, c + d);
            let corners = [
                (0, 0),
                (x, 0),
                (x, y),
                (a + b, y),
                (a + b, c),
                (a, c),
                (a, y),
                (0, y.min(c + g)),
            ];
            cornered(&corners, &[])
        }
        4 => {
            // Round about a middle, so that it does not cross itself.
            let ways = [
                (10, 0),
                (7, 7),
                (0, 10),
                (-7, 7),
                (-10, 0),
                (-7, -7),
                (0, -10),
                (7, -7),
            ];
            let corners: Vec<(i64, i64)> = ways
                .iter()
                .map(|&(x, y)| {
                    let far = dice.feet(5, 16);
                    (far * x / 10, far * y / 10)
                })
                .collect();
            cornered(&corners, &[])
        }
        5 => {
            let bulge = |dice: &mut Dice| dice.feet(0, 3) - FOOT;
            let bulges = [bulge(dice), bulge(dice), bulge(dice), bulge(dice)];
            cornered(&[(0, 0), (a, 0), (a, b), (0, b)], &bulges)
        }
        6 => {
            let texts = [
                "north 20 ft bend 6 ft, east 15 ft bend 5 ft, north 12 ft",
                "north 16 ft bulge 2 ft, north 16 ft bulge -2 ft",
                "east 20 ft, north 18 ft",
                "east 12 ft, northeast 14 ft, north 9 ft",
            ];
            let wide = ["18 in", "3 ft", "4 ft", "5 ft 6 in"];
            Some(path(
                texts[usize::try_from(dice.below(4)).unwrap()],
                wide[usize::try_from(dice.below(4)).unwrap()],
            ))
        }
        7 => Outline::ring(Length::nanometres(2 * FOOT + a + b), Length::nanometres(a)).ok(),
        _ => Some(Outline::circle(Length::nanometres(a))),
    }?;
    let longest = dice.feet(5, 14);
    let mut slab = slab("random", "10 ft", outline);
    slab.longest = Length::nanometres(longest);
    let (low, high) = slab.outline.bounds();
    let place = |dice: &mut Dice| {
        let inner =
            |dice: &mut Dice, low: i64, high: i64| low + (high - low) / 100 * (15 + dice.below(60));
        Point::new(inner(dice, low.x, high.x), inner(dice, low.y, high.y))
    };
    match dice.below(4) {
        0 => {
            let hole = Outline::rectangle(
                Length::nanometres(dice.feet(1, 5)),
                Length::nanometres(dice.feet(1, 5)),
            );
            if let Ok(with) = slab.outline.clone().with_hole(hole.moved(place(dice))) {
                slab.outline = with;
            }
        }
        1 => {
            let low = place(dice);
            slab.boxes.push((low, low + Point::new(FOOT * 2 / 3, FOOT)));
        }
        2 => {
            let round = Outline::circle(long("3 ft")).moved(place(dice));
            if let Ok(with) = slab.outline.clone().with_hole(round) {
                slab.outline = with;
            }
        }
        _ => {}
    }
    Some(slab)
}

fn areas(layout: &Layout) -> Decimal {
    layout.panels.iter().map(|panel| panel.area).sum()
}

/// The slab less what is left out of it, by the loops it was made of before any joint.
fn whole(slab: &Slab) -> Decimal {
    let asked = asked(slab);
    let doubled = Ground::of(&asked).whole.doubled_area();
    crate::values::Area::square_nanometres(doubled).square_feet() / Decimal::TWO
}

pub fn asked(slab: &Slab) -> Asked<'_> {
    Asked {
        outline: &slab.outline,
        longest: slab.longest,
        boxes: &slab.boxes,
        isolated: &slab.isolated,
        solid: &slab.solid,
        meet: &slab.meet,
        drawn: None,
    }
}

/// What this layout does not keep.
fn fault(slab: &Slab, layout: &Layout) -> Option<String> {
    let off = areas(layout) - whole(slab);
    if dec!(0.000001) <= off.abs() {
        return Some(format!("areas off by {off}"));
    }
    let is_told = |found: fn(&Fault) -> bool| layout.breaks.iter().any(|one| found(&one.what));
    let hair = Length::nanometres(30_000);
    let too_long = layout
        .panels
        .iter()
        .any(|panel| slab.longest + hair < panel.size.0);
    let told = is_told(|fault| matches!(fault, Fault::TooLong { .. } | Fault::TooMany { .. }));
    if too_long && !told {
        return Some("too long and not told".to_owned());
    }
    // A strip under two feet is jointed by the limit alone.
    let stretched = layout
        .panels
        .iter()
        .any(|panel| dec!(1.502) < panel.ratio && dec!(2.2) < panel.area / panel.size.0.feet());
    let told = is_told(|fault| matches!(fault, Fault::Stretched { .. } | Fault::TooMany { .. }));
    if stretched && !told {
        return Some("stretched and not told".to_owned());
    }
    let asked = asked(slab);
    let ground = Ground::of(&asked);
    for line in &layout.lines {
        let seam = super::super::Seam::from(line);
        let middle = match &seam.curve {
            None => Point::new(
                i64::midpoint(line.from.x, line.to.x),
                i64::midpoint(line.from.y, line.to.y),
            ),
            Some(curve) => curve.place(line.from, seam.length() / 2).unwrap(),
        };
        if !ground.whole.holds(middle) {
            return Some(format!("{line:?} runs outside"));
        }
        for end in [line.from, line.to] {
            let on = |piece: &super::super::sheet::Piece| super::super::marks::is_on(piece, end);
            if !on(&ground.whole) && !ground.whole.holds(end) {
                return Some(format!("{line:?} ends outside"));
            }
        }
    }
    None
}

pub fn slabs(many: usize) -> Vec<Slab> {
    let mut dice = Dice(12);
    std::iter::repeat_with(|| random(&mut dice))
        .flatten()
        .take(many)
        .collect()
}

#[test]
fn any_slab_is_tiled_within_the_limits_or_told() {
    let many = std::env::var("SLABS").map_or(150, |many| many.parse().unwrap());
    let all = slabs(many).into_iter().chain(gallery());
    let faults = all.enumerate().filter_map(|(number, slab)| {
        let found = fault(&slab, &slab.laid_out())?;
        Some((number, slab.outline.is_path(), found))
    });
    let faults: Vec<_> = faults.collect();
    assert!(faults.is_empty(), "{}: {faults:#?}", faults.len());
}

#[test]
fn what_is_solid_at_the_rim_is_no_part_of_any_panel() {
    let slab = gallery()
        .into_iter()
        .find(|slab| slab.name == "patio with a stoop")
        .unwrap();
    let off = areas(&slab.laid_out()) - dec!(312);
    assert!(off.abs() < dec!(0.000001), "{off}");
}

#[test]
fn lines_drawn_by_hand_are_kept_and_run_on_to_the_rim() {
    let outline = rectangle("20 ft", "10 ft");
    let solid = [rectangle("2 ft", "2 ft").moved(at("14 ft", "4 ft"))];
    let line = |from: (&str, &str), to: (&str, &str)| Line {
        from: at(from.0, from.1),
        to: at(to.0, to.1),
        bulge: Length::ZERO,
    };
    // The first stops a foot short of the rim, the second at the first, the third runs over what is solid.
    let drawn = [
        line(("10 ft", "0 ft"), ("10 ft", "9 ft")),
        line(("0 ft", "5 ft"), ("10 ft", "5 ft")),
        line(("15 ft", "-1 ft"), ("15 ft", "12 ft")),
    ];
    let layout = lay_out(&Asked {
        outline: &outline,
        longest: long("10 ft"),
        boxes: &[],
        isolated: &[],
        solid: &solid,
        meet: &[],
        drawn: Some(&drawn),
    });
    let ends = layout.lines.iter().map(|line| (line.from, line.to));
    let expected = [
        (at("0 ft", "5 ft"), at("10 ft", "5 ft")),
        (at("10 ft", "0 ft"), at("10 ft", "10 ft")),
        (at("15 ft", "0 ft"), at("15 ft", "4 ft")),
        (at("15 ft", "6 ft"), at("15 ft", "10 ft")),
    ];
    assert_eq!(ends.collect::<Vec<_>>(), expected);
    assert_eq!(layout.panels.len(), 4);
    assert_eq!(areas(&layout), dec!(196));
    assert!(layout.breaks.iter().any(|one| one.what == Fault::InSolid));
    assert!(layout.breaks.iter().any(|one| one.what == Fault::Ends));
}

#[test]
fn absurd_spacings_are_told_and_not_tried() {
    let mut slab = gallery().remove(0);
    slab.longest = long("2 in");
    let layout = slab.laid_out();
    assert_eq!(layout.panels.len(), 1);
    assert!(
        matches!(
            layout.breaks[..],
            [super::super::Break {
                what: Fault::TooMany { panels: 25_920 },
                ..
            }]
        ),
        "{:?}",
        layout.breaks
    );
}
