//! One bar of a sum: what is paid, what is asked now, what is left.

use super::pen::{INK, PALE, SOFT, WHITE, anchored, boxed};
use crate::press::drawing::{Anchor, Drawing, Face, Rgb, Shape, Size, point};
use crate::press::frame::Frame;
use crate::values::Money;

const WIDTH: f32 = 516.0;
const HEIGHT: f32 = 45.0;
const TOP: f32 = 15.0;
const BOTTOM: f32 = 27.0;
/// Room that a part's words need to stand under their own start.
const ROOM: f32 = 84.0;

/// One part of the bar.
#[derive(Clone, Debug)]
pub struct SumPart {
    /// "paid before"
    pub name: String,
    /// "$7,017.20"
    pub amount: String,
    /// Of all parts together, 0 to 1.
    pub share: f32,
}

/// How much of the whole a part is: a length on paper, never an amount.
#[expect(clippy::cast_precision_loss, reason = "only a bar's length on paper")]
pub fn share(part: Money, whole: Money) -> f32 {
    if whole.is_zero() {
        return 0.0;
    }
    (part.as_cents() as f32 / whole.as_cents() as f32).clamp(0.0, 1.0)
}

/// Three parts in a row: pale, accent, open.
pub fn bar(parts: &[SumPart; 3], accent: Rgb) -> Drawing {
    let fills = [PALE, accent, WHITE];
    let mut shapes = Vec::new();
    let mut left = 0.0;
    let mut said_until = -ROOM;
    for (i, (part, fill)) in parts.iter().zip(fills).enumerate() {
        let right = if i == 2 {
            WIDTH
        } else {
            left + part.share * WIDTH
        };
        if left < right {
            shapes.push(boxed(&Frame::new(left, TOP, right, BOTTOM), fill, INK));
        }
        if 0.0 < part.share {
            // The last part's words end with the bar, where there is no room at its start.
            let at_end = i == 2;
            // Words that do not fit beside those before them stand further along their part.
            let along = left.max(said_until);
            let x = if at_end {
                WIDTH
            } else if along + ROOM <= right {
                along
            } else {
                left
            };
            let anchor = if at_end { Anchor::End } else { Anchor::Start };
            let free = if at_end {
                said_until <= WIDTH - ROOM
            } else {
                said_until <= x
            };
            if free {
                let mut name = anchored(anchor, part.name.clone(), point(x, 9.0), 8.5);
                name.color = SOFT;
                let mut amount = anchored(anchor, part.amount.clone(), point(x, 39.0), 9.5);
                if i == 1 {
                    amount.face = Face::Bold;
                }
                shapes.extend([Shape::Words(name), Shape::Words(amount)]);
                said_until = x + ROOM;
            }
        }
        left = right;
    }
    let told: Vec<String> = parts
        .iter()
        .map(|part| format!("{} {}", part.name, part.amount))
        .collect();
    Drawing {
        size: Size::new(WIDTH, HEIGHT),
        shapes,
        alternative: format!("A bar of the agreed total: {}.", told.join(", ")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn parts(shares: [f32; 3]) -> [SumPart; 3] {
        let names = ["paid before", "this invoice", "left"];
        std::array::from_fn(|i| SumPart {
            name: names[i].into(),
            amount: format!("${i}.00"),
            share: shares[i],
        })
    }

    #[test]
    fn words_of_thin_parts_never_lie_on_each_other() {
        for shares in [
            [0.0, 0.1, 0.9],
            [0.02, 0.96, 0.02],
            [0.5, 0.02, 0.48],
            [0.97, 0.03, 0.0],
        ] {
            let drawing = bar(&parts(shares), Rgb(0, 0, 0));
            let mut spans: Vec<(f32, f32)> = drawing
                .shapes
                .iter()
                .filter_map(|shape| match shape {
                    Shape::Words(words) if words.at.y < TOP => Some(match words.anchor {
                        Anchor::End => (words.at.x - 60.0, words.at.x),
                        Anchor::Start | Anchor::Middle => (words.at.x, words.at.x + 60.0),
                    }),
                    Shape::Words(_) | Shape::Path(_) | Shape::Picture(_) => None,
                })
                .collect();
            spans.sort_by(|a, b| a.0.total_cmp(&b.0));
            assert!(
                spans.windows(2).all(|pair| pair[0].1 <= pair[1].0),
                "{shares:?}: {spans:?}"
            );
            assert!(drawing.alternative.contains("this invoice $1.00"));
        }
    }
}
