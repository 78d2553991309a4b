//! Bars of what a rise of each item costs: sorted, from one zero line, the rest of the job last.
//!
//! 340 points wide. A number stands at the end of its bar, so grey print loses nothing;
//! the rest is pale with an outline of ink, since it is not one item.

use std::fmt::Write as _;

use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive as _;

use super::pen::{
    HAIRLINE, INK, OUTLINE, PALE, RULE, SMALL, SOFT, SOLID, anchored, stroked, width, words,
};
use crate::press::drawing::{Anchor, Drawing, Face, Path, Rgb, Shape, Size, Stroke, Words, point};
use crate::press::frame::Frame;

/// What the figure is drawn from: finished words, and lengths in dollars.
#[derive(Clone, Debug)]
pub struct RiseView<'a> {
    pub bars: &'a [RiseBar],
    /// `10%`.
    pub rise: &'a str,
    pub floor: &'a str,
    pub accent: Rgb,
}

#[derive(Clone, Debug)]
pub struct RiseBar {
    pub name: String,
    pub dollars: Decimal,
    /// `533.52`.
    pub amount: String,
    /// `15.64%`.
    pub margin: String,
    /// `11.4%`, or empty.
    pub room: String,
    /// Everything else together.
    pub rest: bool,
}

const WIDTH: f32 = 340.0;
const ZERO: f32 = 126.0;
const BARS: f32 = 92.0;
const MARGIN: f32 = 288.0;
const HEAD: f32 = 12.0;
const ROW: f32 = 14.0;
const BAR: f32 = 9.0;

/// Draws the figure.
pub fn rise(view: &RiseView<'_>) -> Drawing {
    let most = view.bars.iter().map(|bar| bar.dollars).max();
    let most = most.filter(|most| !most.is_zero()).unwrap_or(Decimal::ONE);
    let tick = tick(most);
    let scale = BARS / points(most);
    let bottom = HEAD + ROW * points(Decimal::from(view.bars.len()));
    let mut shapes = vec![head("more cost, in dollars", 0.0, Anchor::Start)];
    for (text, x) in [("margin", MARGIN), ("room", WIDTH)] {
        shapes.push(head(text, x, Anchor::End));
    }
    let mut value = Decimal::ZERO;
    while value <= most {
        let x = ZERO + points(value) * scale;
        if !value.is_zero() {
            shapes.push(stroked(
                &[point(x, HEAD), point(x, bottom)],
                RULE,
                HAIRLINE,
                SOLID,
            ));
        }
        shapes.push(head(&value.to_string(), x, Anchor::Middle));
        value += tick;
    }
    for (row, bar) in (0_u16..).zip(view.bars) {
        shapes.extend(bar_row(view, bar, HEAD + ROW * f32::from(row), scale));
    }
    shapes.push(stroked(
        &[point(ZERO, HEAD), point(ZERO, bottom)],
        INK,
        0.8,
        SOLID,
    ));
    Drawing {
        size: Size::new(WIDTH, bottom + 3.0),
        shapes,
        alternative: alternative(view),
    }
}

fn bar_row(view: &RiseView<'_>, bar: &RiseBar, top: f32, scale: f32) -> Vec<Shape> {
    let base = top + ROW / 2.0 + 3.0;
    let length = points(bar.dollars) * scale;
    let (fill, outline) = if bar.rest {
        (PALE, Some(Stroke::solid(INK, OUTLINE)))
    } else {
        (view.accent, None)
    };
    let place = Frame::at(ZERO, top + (ROW - BAR) / 2.0, length, BAR);
    let amount = Words {
        halo: true,
        ..words(bar.amount.as_str(), point(ZERO + length + 4.0, base), SMALL)
    };
    let end = |text: &str, x| Shape::Words(anchored(Anchor::End, text, point(x, base), SMALL));
    vec![
        Shape::Words(words(fitted(&bar.name), point(0.0, base), SMALL)),
        Shape::Path(Path::closed(&place.corners(), outline, Some(fill))),
        Shape::Words(amount),
        end(&bar.margin, MARGIN),
        end(&bar.room, WIDTH),
    ]
}

/// Soft words above the bars.
fn head(text: &str, x: f32, anchor: Anchor) -> Shape {
    Shape::Words(Words {
        color: SOFT,
        ..anchored(anchor, text, point(x, HEAD - 3.0), SMALL)
    })
}

/// A name in the room before the zero line; what is left off is marked.
fn fitted(name: &str) -> String {
    let fits = |text: &str| width(text, Face::Regular, SMALL) <= ZERO - 6.0;
    if fits(name) {
        return name.to_owned();
    }
    let mut kept = name.to_owned();
    while kept.pop().is_some() {
        let short = format!("{}…", kept.trim_end_matches([' ', ',']));
        if fits(&short) {
            return short;
        }
    }
    String::new()
}

/// Steps of 1, 2 or 5 and noughts, three to six of them.
fn tick(most: Decimal) -> Decimal {
    let mut step = Decimal::ONE;
    while step * Decimal::from(4) < most {
        step *= match step.mantissa().to_string().trim_end_matches('0') {
            "2" => Decimal::new(25, 1),
            _ => Decimal::TWO,
        };
    }
    step.normalize()
}

/// What somebody hears who cannot see the bars.
fn alternative(view: &RiseView<'_>) -> String {
    let mut text = format!(
        "What a rise of {} costs, item by item, and the margin and the room that are left above {}, today's price held.",
        view.rise, view.floor
    );
    for bar in view.bars {
        let room = if bar.room.is_empty() {
            String::new()
        } else {
            format!(", room {}", bar.room)
        };
        let _ = write!(
            text,
            " {}: {} dollars, margin {}{room}.",
            bar.name, bar.amount, bar.margin
        );
    }
    text
}

fn points(number: Decimal) -> f32 {
    number.to_f32().expect("money is near some float")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ticks_are_round_and_few() {
        #[track_caller]
        fn case(most: i64, step: &str) {
            assert_eq!(tick(Decimal::from(most)).to_string(), step, "{most}");
        }
        case(3, "1");
        case(8, "2");
        case(20, "5");
        case(533, "200");
        case(410, "200");
        case(152, "50");
        case(4000, "1000");
    }

    #[test]
    fn bars_are_as_long_as_their_dollars_and_every_number_is_heard() {
        let bar = |name: &str, cents: i64, rest: bool| RiseBar {
            name: name.to_owned(),
            dollars: Decimal::new(cents, 2),
            amount: Decimal::new(cents, 2).to_string(),
            margin: "15.6%".to_owned(),
            room: if rest {
                String::new()
            } else {
                "11%".to_owned()
            },
            rest,
        };
        let long = "Truck standing past the free minutes of the plant";
        let bars = [
            bar("Labor", 40_000, false),
            bar(long, 10_000, false),
            bar("Else", 0, true),
        ];
        let drawing = rise(&RiseView {
            bars: &bars,
            rise: "10%",
            floor: "15%",
            accent: INK,
        });
        let lengths: Vec<f32> = drawing
            .shapes
            .iter()
            .filter_map(|shape| match shape {
                Shape::Path(path) if path.fill.is_some() => Some(path),
                Shape::Path(_) | Shape::Words(_) | Shape::Picture(_) => None,
            })
            .map(|path| Frame::around_all(path.points()).width())
            .collect();
        assert_eq!(lengths, [BARS, BARS / 4.0, 0.0]);
        for word in ["400.00", long, "15.6%", "room 11%"] {
            assert!(drawing.alternative.contains(word), "{word}");
        }
        let cut = fitted(long);
        assert!(cut.ends_with('…') && width(&cut, Face::Regular, SMALL) <= ZERO);
    }
}
