//! The bars: open while the slab must wait, hatched where it depends, solid once it may be used.

use rust_decimal::Decimal;

use super::CureView;
use super::frame::{Frame, LEFT, RIGHT, WIDTH};
use super::pen::{self, Box4, INK, NAME, OUTLINE, SMALL, WHITE};
use super::words::{CureWords, fill};
use crate::press::drawing::{Anchor, Face, Shape, Words};
use crate::trade::curing::{Milestone, Use};

/// Space between a word and the end of its part of the bar.
const PAD: f32 = 5.0;
/// From the top of a bar to the baseline of its words, and of the name beside it.
const BASELINE: f32 = 9.1;
const SECOND_WINTER: f32 = 466.0;

/// One use's bar, with the words that fit into it.
#[derive(Clone, Debug)]
pub struct Bar {
    pub milestone: Milestone,
    /// Whether every word found room.
    pub fits: bool,
    open: Box4,
    hatched: Box4,
    solid: Box4,
    words: Vec<Words>,
}

impl Bar {
    pub fn new(view: &CureView, frame: &Frame, row: usize, milestone: &Milestone) -> Self {
        let whole = Frame::row(row);
        let warm = frame.x(Decimal::from(milestone.warm)).min(RIGHT);
        let cool = frame.x(Decimal::from(milestone.cool)).min(RIGHT);
        let part = |left, right| Box4 {
            left,
            right,
            ..whole
        };
        let mut bar = Self {
            milestone: *milestone,
            fits: false,
            open: part(LEFT, warm),
            hatched: part(warm, cool),
            solid: part(cool, RIGHT),
            words: Vec::new(),
        };
        bar.write(view.words);
        bar
    }

    /// The warm day goes into the open part, else into the hatched part, else in one
    /// word with the cool day.
    fn write(&mut self, words: &CureWords) {
        let Milestone { use_, warm, cool } = self.milestone;
        let (warm, cool) = (warm.to_string(), cool.to_string());
        let baseline = self.open.top + BASELINE;
        let days = [("day", cool.as_str()), ("warm", warm.as_str())];
        let mut solid = fill(
            match use_ {
                Use::Seal => words.day_when_dry,
                Use::Walk | Use::Car | Use::Heavy => words.day,
            },
            &days,
        );
        if warm != cool {
            let text = fill(words.warm_day, &[("day", &warm)]);
            let needed = pen::width(&text, Face::Regular, SMALL) + 1.6 * PAD;
            if needed <= self.open.width() {
                let at = pen::at(self.open.right - PAD, baseline);
                self.words.push(Words {
                    anchor: Anchor::End,
                    ..pen::words(text, at, SMALL)
                });
            } else if needed + 2.0 * PAD <= self.hatched.width() {
                let middle = f32::midpoint(self.hatched.left, self.hatched.right);
                self.words.push(Words {
                    anchor: Anchor::Middle,
                    halo: true,
                    ..pen::words(text, pen::at(middle, baseline), SMALL)
                });
            } else {
                solid = fill(words.both_days, &days);
            }
        }
        self.fits = pen::width(&solid, Face::Bold, SMALL) + 2.0 * PAD <= self.solid.width();
        let at = pen::at(self.solid.left + PAD, baseline);
        self.words.push(Words {
            face: Face::Bold,
            color: WHITE,
            ..pen::words(solid, at, SMALL)
        });
    }

    pub fn depends(&self) -> bool {
        self.milestone.warm != self.milestone.cool
    }

    fn shapes(&self, view: &CureView) -> Vec<Shape> {
        let name = match self.milestone.use_ {
            Use::Walk => view.words.walk,
            Use::Car => view.words.car,
            Use::Heavy => view.words.heavy,
            Use::Seal => view.words.seal,
        };
        let mut shapes = vec![name_of(name, self.open), self.open.shape(WHITE, INK)];
        if self.depends() {
            shapes.extend(self.hatched.hatched(view.accent));
        }
        shapes.push(self.solid.shape(view.accent, view.accent));
        shapes.extend(self.words.iter().cloned().map(Shape::Words));
        shapes
    }
}

/// All bars, and the deicer's row with its break before the second winter.
pub fn bars(view: &CureView, frame: &Frame) -> Vec<Shape> {
    let mut shapes: Vec<Shape> = frame.bars.iter().flat_map(|bar| bar.shapes(view)).collect();
    let row = frame.last_row();
    let baseline = row.top + BASELINE;
    shapes.push(name_of(view.words.deicer, row));
    shapes.push(row.shape(WHITE, INK));
    let first = pen::words(
        view.words.first_winter,
        pen::at(LEFT + PAD, baseline),
        SMALL,
    );
    shapes.push(Shape::Words(first));
    for x in [RIGHT + 6.0, RIGHT + 10.5] {
        let (foot, head) = (
            pen::at(x, row.bottom + 2.0),
            pen::at(x + 5.0, row.top - 2.0),
        );
        shapes.push(pen::line(foot, head, pen::stroke(INK, OUTLINE, &[])));
    }
    let second = Box4 {
        left: SECOND_WINTER,
        right: WIDTH - 0.5,
        ..row
    };
    shapes.push(second.shape(view.accent, view.accent));
    shapes.push(Shape::Words(Words {
        face: Face::Bold,
        color: WHITE,
        ..pen::words(
            view.words.sparingly,
            pen::at(SECOND_WINTER + PAD, baseline),
            SMALL,
        )
    }));
    shapes
}

fn name_of(name: &str, row: Box4) -> Shape {
    Shape::Words(pen::words(
        name,
        pen::at(0.0, row.top + BASELINE + 0.3),
        NAME,
    ))
}
