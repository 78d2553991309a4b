//! The bars: open while the slab must wait, hatched where it depends, solid once it may be used.

use rust_decimal::Decimal;

use super::axes::{Axes, LEFT, RIGHT, WIDTH};
use super::view::CureView;
use super::words::{CureWords, fill};
use crate::documents::figures::pen::{
    INK, OUTLINE, SMALL, SOLID, WHITE, anchored, bold, boxed, hatched, stroked, width, words,
};
use crate::press::drawing::{Anchor, Face, PagePoint, Shape, Words, point};
use crate::press::frame::Frame;
use crate::trade::curing::Milestone;

/// The shortest axis, in days.
const SHORTEST: u64 = 42;
/// Size of the names of the uses.
const NAME: f32 = 9.5;
/// Space between a word and the end of its part of the bar.
const PAD: f32 = 5.0;
/// From the top of a bar to the baseline of its words, and of the name beside it.
const BASELINE: f32 = 9.1;
const SECOND_WINTER: f32 = 466.0;

/// One use's bar, with the words that fit into it.
#[derive(Clone, Debug)]
pub struct UseBar {
    pub milestone: Milestone,
    /// Whether every word found room.
    fits: bool,
    open: Frame,
    hatched: Frame,
    solid: Frame,
    words: Vec<Words>,
}

impl UseBar {
    fn new(view: &CureView, axes: &Axes, row: usize, milestone: &Milestone) -> Self {
        let whole = Axes::row(row);
        let warm = axes.x(Decimal::from(milestone.warm)).min(RIGHT);
        let cool = axes.x(Decimal::from(milestone.cool)).min(RIGHT);
        let part = |left, right| Frame::new(left, whole.top, right, whole.bottom);
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
    fn write(&mut self, say: &CureWords) {
        let Milestone { use_, warm, cool } = self.milestone;
        let (warm, cool) = (warm.to_string(), cool.to_string());
        let baseline = self.open.top + BASELINE;
        let days = [("day", cool.as_str()), ("warm", warm.as_str())];
        let mut solid = fill(say.day_of(use_), &days);
        if warm != cool {
            let text = fill(say.warm_day, &[("day", &warm)]);
            let needed = width(&text, Face::Regular, SMALL) + 1.6 * PAD;
            if needed <= self.open.width() {
                let at = point(self.open.right - PAD, baseline);
                self.words.push(anchored(Anchor::End, text, at, SMALL));
            } else if needed + 2.0 * PAD <= self.hatched.width() {
                let at = point(self.hatched.middle().x, baseline);
                self.words.push(Words {
                    halo: true,
                    ..anchored(Anchor::Middle, text, at, SMALL)
                });
            } else {
                solid = fill(say.both_days, &days);
            }
        }
        self.fits = width(&solid, Face::Bold, SMALL) + 2.0 * PAD <= self.solid.width();
        let at = point(self.solid.left + PAD, baseline);
        self.words.push(white(solid, at));
    }

    pub fn depends(&self) -> bool {
        self.milestone.warm != self.milestone.cool
    }

    fn shapes(&self, view: &CureView) -> Vec<Shape> {
        let name = view.words.name_of(self.milestone.use_);
        let mut shapes = vec![name_of(name, self.open), boxed(&self.open, WHITE, INK)];
        if self.depends() {
            shapes.extend(hatched(&self.hatched, view.accent));
        }
        shapes.push(boxed(&self.solid, view.accent, view.accent));
        shapes.extend(self.words.iter().cloned().map(Shape::Words));
        shapes
    }
}

/// The bars on the shortest axis on which every one has room for its words.
///
/// Weeks up to nine of them, then twice as far from line to line, and so on:
/// the longer the axis, the smaller the part of a bar before its solid end, so
/// some axis always fits.
pub fn fitted(view: &CureView) -> (Axes, Vec<UseBar>) {
    let (mut until, mut step) = (SHORTEST, 7);
    loop {
        let axes = Axes::new(view, until, step);
        let milestones = view.milestones();
        let rows = milestones.iter().enumerate();
        let bars: Vec<UseBar> = rows
            .map(|(row, milestone)| UseBar::new(view, &axes, row, milestone))
            .collect();
        if bars.iter().all(|bar| bar.fits) || u64::from(u32::MAX) <= until + step {
            return (axes, bars);
        }
        until += step;
        if step * 9 < until {
            step *= 2;
            until = until.next_multiple_of(step);
        }
    }
}

/// All bars, and the deicer's row where there is one.
pub fn draw(view: &CureView, axes: &Axes, bars: &[UseBar]) -> Vec<Shape> {
    let mut shapes: Vec<Shape> = bars.iter().flat_map(|bar| bar.shapes(view)).collect();
    if view.deicer {
        shapes.extend(deicer(view, axes));
    }
    shapes
}

/// Its row, with a break before the second winter.
fn deicer(view: &CureView, axes: &Axes) -> Vec<Shape> {
    let mut shapes = Vec::new();
    let row = axes.last_row();
    let baseline = row.top + BASELINE;
    shapes.push(name_of(view.words.deicer, row));
    shapes.push(boxed(&row, WHITE, INK));
    let first = words(view.words.first_winter, point(LEFT + PAD, baseline), SMALL);
    shapes.push(Shape::Words(first));
    for x in [RIGHT + 6.0, RIGHT + 10.5] {
        let ends = [point(x, row.bottom + 2.0), point(x + 5.0, row.top - 2.0)];
        shapes.push(stroked(&ends, INK, OUTLINE, SOLID));
    }
    let second = Frame::new(SECOND_WINTER, row.top, WIDTH - 0.5, row.bottom);
    shapes.push(boxed(&second, view.accent, view.accent));
    let at = point(SECOND_WINTER + PAD, baseline);
    shapes.push(Shape::Words(white(view.words.sparingly.to_owned(), at)));
    shapes
}

/// Words on a solid bar.
fn white(text: String, at: PagePoint) -> Words {
    Words {
        color: WHITE,
        ..bold(words(text, at, SMALL))
    }
}

fn name_of(name: &str, row: Frame) -> Shape {
    let at = point(0.0, row.top + BASELINE + 0.3);
    Shape::Words(words(name, at, NAME))
}
