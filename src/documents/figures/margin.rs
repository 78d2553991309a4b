//! Bars of a promised price's profit: what of it is left, and what is gone.
//!
//! All bars of a page share one scale and one zero line. Three fills tell where a quote
//! stands, so grey print loses nothing: full is profit that stands, hatched is profit
//! below the floor, ink to the left of zero is a loss. What is gone is open. The floor
//! is a tick with a head.

use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive as _;

use super::cure::pen::{Box4, INK, SMALL, WHITE, at, line, stroke, through, width, words};
use crate::press::drawing::{Drawing, Face, Path, Rgb, Shape, Size};

pub const WIDTH: f32 = 122.0;
const HEIGHT: f32 = 12.0;
const TOP: f32 = 3.5;
const BOTTOM: f32 = 11.0;
const KEY_WIDTH: f32 = 516.0;
/// Of a sample in the key, and the white after its words.
const SAMPLE: f32 = 18.0;
const AFTER: f32 = 16.0;

/// Margins in percent of the promised price.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct MarginBar {
    /// When it was quoted.
    pub then: Decimal,
    /// If the price is held.
    pub now: Decimal,
    pub floor: Decimal,
}

/// Where the profit stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Left {
    Stands,
    BelowFloor,
    Loss,
}

/// From the lowest margin drawn to the highest.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Scale {
    from: Decimal,
    to: Decimal,
}

impl Scale {
    /// Holds every bar; one deep loss takes no more than a third, so that the others stay readable.
    pub fn of(bars: &[MarginBar]) -> Self {
        let most = bars.iter().map(|bar| bar.then.max(bar.now).max(bar.floor));
        let to = most.max().unwrap_or_default();
        let to = to.clamp(Decimal::ONE, Decimal::ONE_HUNDRED);
        let least = bars.iter().map(|bar| bar.then.min(bar.now)).min();
        let from = least.unwrap_or_default().min(Decimal::ZERO);
        Self {
            from: from.max(-to / Decimal::TWO),
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
    fn left(self) -> Left {
        if self.now < Decimal::ZERO {
            Left::Loss
        } else if self.now < self.floor {
            Left::BelowFloor
        } else {
            Left::Stands
        }
    }
}

/// One quote's bar; `alternative` is what somebody hears who cannot see it.
pub fn bar(bar: MarginBar, scale: Scale, accent: Rgb, alternative: String) -> Drawing {
    let between = |from: Decimal, to: Decimal| Box4 {
        left: scale.x(from.min(to)),
        top: TOP,
        right: scale.x(from.max(to)),
        bottom: BOTTOM,
    };
    let zero = Decimal::ZERO;
    let mut shapes = Vec::new();
    if bar.now < bar.then {
        shapes.push(between(bar.now.max(zero), bar.then).shape(WHITE, INK));
    }
    let left = between(zero, bar.now);
    if 0.0 < left.width() {
        shapes.extend(filled(left, bar.left(), accent));
    }
    if bar.then < bar.now {
        let x = scale.x(bar.then);
        shapes.push(line(at(x, TOP), at(x, BOTTOM), stroke(WHITE, 1.2, &[])));
    }
    if bar.now < scale.from {
        shapes.push(broken(scale.x(bar.now)));
    }
    let x = scale.x(zero);
    shapes.push(line(at(x, 0.0), at(x, HEIGHT), stroke(INK, 0.8, &[])));
    shapes.extend(tick(scale.x(bar.floor)));
    Drawing {
        size: Size {
            width: WIDTH,
            height: HEIGHT,
        },
        shapes,
        alternative,
    }
}

fn filled(frame: Box4, left: Left, accent: Rgb) -> Vec<Shape> {
    match left {
        Left::Stands => vec![frame.shape(accent, INK)],
        Left::BelowFloor => frame.hatched(INK),
        Left::Loss => vec![frame.shape(INK, INK)],
    }
}

/// The floor: a line with a head on it, with white around where it crosses a bar.
fn tick(x: f32) -> Vec<Shape> {
    let head = [at(x - 3.0, 0.0), at(x + 3.0, 0.0), at(x, TOP)];
    vec![
        line(at(x, TOP), at(x, HEIGHT), stroke(WHITE, 3.4, &[])),
        line(at(x, TOP), at(x, HEIGHT), stroke(INK, 1.4, &[])),
        Shape::Path(Path {
            steps: through(&head, true),
            stroke: None,
            fill: Some(INK),
        }),
    ]
}

/// A loss deeper than the scale: its bar is broken.
fn broken(x: f32) -> Shape {
    let zigzag = [
        at(x + 5.0, TOP),
        at(x + 2.5, f32::midpoint(TOP, BOTTOM)),
        at(x + 5.0, BOTTOM),
    ];
    Shape::Path(Path {
        steps: through(&zigzag, false),
        stroke: Some(stroke(WHITE, 1.4, &[])),
        fill: None,
    })
}

/// How the bars are read, in one line.
pub fn key(accent: Rgb) -> Drawing {
    let mut shapes = Vec::new();
    let mut x = 0.5;
    let samples = [
        (Some(Left::Stands), "profit left"),
        (Some(Left::BelowFloor), "left, but below your floor"),
        (Some(Left::Loss), "loss"),
        (None, "profit gone"),
    ];
    let said = |text: &str, x: f32| {
        let place = at(x, BOTTOM - 1.0);
        (
            Shape::Words(words(text, place, SMALL)),
            x + width(text, Face::Regular, SMALL) + AFTER,
        )
    };
    for (left, text) in samples {
        let frame = Box4 {
            left: x,
            top: TOP,
            right: x + SAMPLE,
            bottom: BOTTOM,
        };
        match left {
            Some(left) => shapes.extend(filled(frame, left, accent)),
            None => shapes.push(frame.shape(WHITE, INK)),
        }
        let (shape, after) = said(text, x + SAMPLE + 5.0);
        shapes.push(shape);
        x = after;
    }
    shapes.extend(tick(x + 3.0));
    shapes.push(said("your floor", x + 10.0).0);
    Drawing {
        size: Size {
            width: KEY_WIDTH,
            height: HEIGHT,
        },
        shapes,
        alternative: "Key to the bars: full is profit left, hatched is profit left but below your floor, ink to the left of zero is a loss, open is profit gone, a tick with a head is your floor.".to_owned(),
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
        // A loss without end takes a third, and its bar is broken.
        let deep = [one(dec!(20), dec!(-900))];
        case(&deep, dec!(-900), 0.0);
        case(&deep, dec!(0), 1.0 / 3.0);
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
    fn what_is_left_is_told_by_its_fill() {
        #[track_caller]
        fn case(now: Decimal, left: Left) {
            assert_eq!(one(dec!(20), now).left(), left, "{now}");
        }
        case(dec!(16), Left::Stands);
        case(FLOOR, Left::Stands);
        case(dec!(14.999), Left::BelowFloor);
        case(dec!(0), Left::BelowFloor);
        case(dec!(-0.01), Left::Loss);
    }

    #[test]
    fn no_bar_leaves_its_figure() {
        for now in [dec!(-900), dec!(-3), dec!(0), FLOOR, dec!(30), dec!(120)] {
            let shown = one(dec!(20), now);
            let drawing = bar(shown, Scale::of(&[shown]), INK, String::new());
            for shape in drawing.shapes {
                let Shape::Path(path) = shape else { continue };
                for step in path.steps {
                    if let crate::press::drawing::Step::Line(point) = step {
                        assert!(-2.5 < point.x && point.x < WIDTH + 2.5, "{now}: {point:?}");
                    }
                }
            }
        }
    }
}
