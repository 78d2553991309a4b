//! Bars of a promised price's profit: what of it is left, and what is gone.
//!
//! All bars of a page share one scale and one zero line. Fills tell where a quote stands,
//! so grey print loses nothing: full is profit that stands, hatched is profit below the
//! floor, ink to the left of zero is a loss; what is gone is open. The floor is a tick
//! with a head.

use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive as _;

use super::pen::{
    INK, OUTLINE, SMALL, SOLID, WHITE, boxed, filled, hatched, pale, stroked, width, words,
};
use crate::press::drawing::{Drawing, Face, Rgb, Shape, Size, point};
use crate::press::frame::Frame;

pub const WIDTH: f32 = 114.0;
const HEIGHT: f32 = 16.0;
/// Of the head of the floor's tick, under the words above the bar.
const HEAD: f32 = 1.0;
const TOP: f32 = 4.5;
const BOTTOM: f32 = 12.5;
/// How far the zero line and the tick stand out below the bar.
const FOOT: f32 = BOTTOM + 1.5;
/// Nine columns of the grid, beside the title.
const KEY_WIDTH: f32 = 384.0;
/// Of a sample in the key, and the white after its words.
const SAMPLE: f32 = 18.0;
const AFTER: f32 = 12.0;

/// Margins in percent of the promised price.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct MarginBar {
    /// When it was quoted.
    pub then: Decimal,
    /// If the price is held.
    pub now: Decimal,
    pub floor: Decimal,
}

/// A part of a bar, by its fill.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Stretch {
    Stands,
    BelowFloor,
    Loss,
    Gone,
    Gained,
}

impl Stretch {
    const ALL: [Self; 5] = [
        Self::Stands,
        Self::BelowFloor,
        Self::Loss,
        Self::Gone,
        Self::Gained,
    ];

    const fn name(self) -> &'static str {
        match self {
            Self::Stands => "profit left",
            Self::BelowFloor => "left, but below your floor",
            Self::Loss => "loss",
            Self::Gone => "gone",
            Self::Gained => "gained",
        }
    }

    const fn fill(self) -> &'static str {
        match self {
            Self::Stands => "full",
            Self::BelowFloor => "hatched",
            Self::Loss => "ink to the left of zero",
            Self::Gone => "open",
            Self::Gained => "pale",
        }
    }
}

/// From the lowest margin drawn to the highest.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Scale {
    from: Decimal,
    to: Decimal,
}

impl Scale {
    /// Holds every bar; one deep loss takes no more than half, so that the others stay readable.
    pub fn of(bars: &[MarginBar]) -> Self {
        let most = bars.iter().map(|bar| bar.then.max(bar.now).max(bar.floor));
        let to = most.max().unwrap_or_default();
        let to = to.clamp(Decimal::ONE, Decimal::ONE_HUNDRED);
        let least = bars.iter().map(|bar| bar.then.min(bar.now)).min();
        let from = least.unwrap_or_default().min(Decimal::ZERO);
        Self {
            from: from.max(-to),
            to,
        }
    }

    /// How far along the figure a margin stands, 0 to 1; beyond an end it stands at the end.
    fn along(self, margin: Decimal) -> f32 {
        let share = (margin.clamp(self.from, self.to) - self.from) / (self.to - self.from);
        share.to_f32().expect("a share is near some float")
    }

    fn x(self, margin: Decimal) -> f32 {
        // Half a line's width stays inside at either end.
        1.0 + self.along(margin) * (WIDTH - 2.0)
    }
}

impl MarginBar {
    /// What is left, by where it ends.
    fn left(self) -> Stretch {
        if self.now < Decimal::ZERO {
            Stretch::Loss
        } else if self.now < self.floor {
            Stretch::BelowFloor
        } else {
            Stretch::Stands
        }
    }

    /// Its parts, each from one margin to a higher one.
    fn parts(self) -> Vec<(Stretch, Decimal, Decimal)> {
        let zero = Decimal::ZERO;
        let kept = self.now.min(self.then);
        let parts = [
            (self.left(), kept.min(zero), kept.max(zero)),
            (Stretch::Gone, self.now.max(zero), self.then),
            (Stretch::Gained, self.then, self.now),
        ];
        parts
            .into_iter()
            .filter(|(_, from, to)| from < to)
            .collect()
    }

    fn has(self, part: Stretch) -> bool {
        self.parts().iter().any(|(own, ..)| *own == part)
    }
}

/// One quote's bar; `alternative` is what somebody hears who cannot see it.
pub fn bar(bar: MarginBar, scale: Scale, accent: Rgb, alternative: String) -> Drawing {
    let mut shapes = Vec::new();
    for (part, from, to) in bar.parts() {
        let frame = Frame::new(scale.x(from), TOP, scale.x(to), BOTTOM);
        shapes.extend(part_of(&frame, part, accent));
    }
    if bar.now < scale.from {
        shapes.push(broken(scale.x(bar.now)));
    }
    let x = scale.x(Decimal::ZERO);
    shapes.push(stroked(
        &[point(x, HEAD + 1.0), point(x, FOOT)],
        INK,
        0.8,
        SOLID,
    ));
    shapes.extend(tick(scale.x(bar.floor), 0.0));
    Drawing {
        size: Size::new(WIDTH, HEIGHT),
        shapes,
        alternative,
    }
}

fn part_of(frame: &Frame, part: Stretch, accent: Rgb) -> Vec<Shape> {
    let fill = match part {
        Stretch::Stands => accent,
        Stretch::BelowFloor => return hatched(frame, INK),
        Stretch::Loss => INK,
        Stretch::Gone => WHITE,
        Stretch::Gained => pale(accent),
    };
    vec![boxed(frame, fill, INK)]
}

/// The floor: a line with a head on it, with white around where it crosses a bar.
fn tick(x: f32, y: f32) -> Vec<Shape> {
    let (head, top, foot) = (y + HEAD, y + TOP, y + FOOT);
    let head = [point(x - 3.0, head), point(x + 3.0, head), point(x, top)];
    let line = [point(x, top), point(x, foot)];
    vec![
        stroked(&line, WHITE, 3.4, SOLID),
        stroked(&line, INK, 1.4, SOLID),
        filled(&head, INK),
    ]
}

/// A loss deeper than the scale: its bar is broken.
fn broken(x: f32) -> Shape {
    let zigzag = [
        point(x + 5.0, TOP),
        point(x + 2.5, f32::midpoint(TOP, BOTTOM)),
        point(x + 5.0, BOTTOM),
    ];
    stroked(&zigzag, WHITE, 1.4, SOLID)
}

/// How the bars are read: only what is on the page, and the floor.
pub fn key(bars: &[MarginBar], accent: Rgb) -> Drawing {
    let shown = Stretch::ALL
        .into_iter()
        .filter(|part| bars.iter().any(|bar| bar.has(*part)));
    let (mut shapes, mut heard) = (Vec::new(), Vec::new());
    let (mut x, mut y) = (OUTLINE / 2.0, -HEAD);
    for part in shown.map(Some).chain([None]) {
        let text = part.map_or("your floor", Stretch::name);
        let wide = SAMPLE + 5.0 + width(text, Face::Regular, SMALL);
        if KEY_WIDTH < x + wide {
            (x, y) = (OUTLINE / 2.0, y + HEIGHT);
        }
        let frame = Frame::new(x, y + TOP, x + SAMPLE, y + BOTTOM);
        match part {
            Some(part) => {
                shapes.extend(part_of(&frame, part, accent));
                heard.push(format!("{} is {text}", part.fill()));
            }
            None => shapes.extend(tick(x + SAMPLE - 3.0, y)),
        }
        let place = point(frame.right + 5.0, frame.bottom - 1.0);
        shapes.push(Shape::Words(words(text, place, SMALL)));
        x += wide + AFTER;
    }
    heard.push("a tick with a head is your floor".to_owned());
    Drawing {
        size: Size::new(KEY_WIDTH, y + HEIGHT),
        shapes,
        alternative: format!("Key to the bars: {}.", heard.join(", ")),
    }
}

#[cfg(test)]
mod tests {
    use rust_decimal_macros::dec;

    use super::*;

    const FLOOR: Decimal = dec!(15);

    fn one(then: Decimal, now: Decimal) -> MarginBar {
        let floor = FLOOR;
        MarginBar { then, now, floor }
    }

    #[test]
    fn a_margin_stands_at_its_share_of_the_scale() {
        #[track_caller]
        fn case(bars: &[MarginBar], margin: Decimal, share: f32) {
            let along = Scale::of(bars).along(margin);
            assert!((along - share).abs() < 1e-6, "{margin}: {along}");
        }
        let stands = [one(dec!(20), dec!(16))];
        case(&stands, dec!(0), 0.0);
        case(&stands, FLOOR, 0.75);
        case(&stands, dec!(16), 0.8);
        case(&stands, dec!(20), 1.0);
        // A loss moves the zero line in; the floor moves with it.
        let under = [one(dec!(20), dec!(-5)), one(dec!(20), dec!(16))];
        case(&under, dec!(-5), 0.0);
        case(&under, dec!(0), 0.2);
        case(&under, FLOOR, 0.8);
        // A loss without end takes half, and its bar is broken.
        let deep = [one(dec!(20), dec!(-900))];
        case(&deep, dec!(-900), 0.0);
        case(&deep, dec!(0), 0.5);
        // Nobody earns more than the whole price; such a bar ends with the figure.
        let over = [one(dec!(20), dec!(120))];
        case(&over, dec!(100), 1.0);
        case(&over, dec!(120), 1.0);
        case(&over, dec!(20), 0.2);
        // A floor above every margin is still on the page, and nothing at all divides by nothing.
        case(&[one(dec!(3), dec!(2))], FLOOR, 1.0);
        case(&[], dec!(0), 0.0);
    }

    #[test]
    fn a_bar_is_told_by_its_parts() {
        #[track_caller]
        fn case(now: Decimal, parts: &[(Stretch, Decimal, Decimal)]) {
            assert_eq!(one(dec!(20), now).parts(), parts, "{now}");
        }
        let (zero, then) = (dec!(0), dec!(20));
        let gone = |now| (Stretch::Gone, now, then);
        case(then, &[(Stretch::Stands, zero, then)]);
        case(FLOOR, &[(Stretch::Stands, zero, FLOOR), gone(FLOOR)]);
        let below = dec!(14.999);
        case(below, &[(Stretch::BelowFloor, zero, below), gone(below)]);
        case(zero, &[gone(zero)]);
        case(dec!(-3), &[(Stretch::Loss, dec!(-3), zero), gone(zero)]);
        let fallen = (Stretch::Gained, then, dec!(25));
        case(dec!(25), &[(Stretch::Stands, zero, then), fallen]);
    }

    #[test]
    fn no_bar_leaves_its_figure() {
        for now in [dec!(-900), dec!(-3), dec!(0), FLOOR, dec!(30), dec!(120)] {
            let shown = one(dec!(20), now);
            let drawing = bar(shown, Scale::of(&[shown]), INK, String::new());
            for shape in drawing.shapes {
                let Shape::Path(path) = shape else { continue };
                for point in path.points() {
                    assert!(-2.5 < point.x && point.x < WIDTH + 2.5, "{now}: {point:?}");
                }
            }
        }
    }
}
