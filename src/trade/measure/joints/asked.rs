//! What is asked of the joint layout of each slab: its limit, what stands in it and on it, what it meets.

use std::sync::Arc;

use crate::geometry::joints::{Asked, Layout, Line, Meet, lay_out};
use crate::geometry::{Outline, Point};
use crate::input::book::{Mix, Rules};
use crate::input::job::{Slab, Takeoff};
use crate::reading::At;
use crate::tables::joints::longest_spacing;
use crate::trade::working::{Quantity, Working};
use crate::values::Length;

/// The joints of a slab, and the limit they were laid out by.
#[derive(Clone, Debug)]
pub(in crate::trade::measure) struct Laid {
    pub layout: Arc<Layout>,
    /// What is set in it and what stands on it: no part of any panel.
    pub left_out: Arc<[Outline]>,
    pub longest: Length,
    /// The same, with where it comes from.
    pub limit: Quantity,
}

/// Layouts that are known: what is asked again, of a slab that several choices share or change in other
/// ways, is laid out once.
#[derive(Debug, Default)]
pub(in crate::trade::measure) struct Layouts(Vec<(Question, Arc<Layout>)>);

/// All that a layout depends on.
#[derive(Debug, PartialEq)]
struct Question {
    outline: Outline,
    longest: Length,
    boxes: Vec<(Point, Point)>,
    isolated: Vec<(Point, Point)>,
    /// What stands on the slab.
    solid: Vec<Outline>,
    /// Where joints of those laid out before it end at its edge, and those of what stays.
    meet: Vec<Meet>,
    drawn: Vec<Line>,
}

impl Layouts {
    /// Lays out every slab that is jointed, in the order of the takeoff: each meets those before it.
    pub fn of_all(&mut self, takeoff: &Takeoff, rules: &Rules) -> Vec<Option<Laid>> {
        let mut all: Vec<Option<Laid>> = Vec::new();
        for slab in &takeoff.slabs {
            let laid = slab.wants_joints().then(|| {
                let (longest, limit) = limit(slab, rules);
                let asked = Question {
                    outline: slab.outline.clone(),
                    longest,
                    boxes: boxes(slab, rules, false),
                    isolated: boxes(slab, rules, true),
                    solid: standing_on(takeoff, slab),
                    meet: met(slab, &all),
                    drawn: drawn(slab),
                };
                Laid {
                    left_out: asked.left_out(),
                    layout: self.layout(asked),
                    longest,
                    limit,
                }
            });
            all.push(laid);
        }
        all
    }

    fn layout(&mut self, asked: Question) -> Arc<Layout> {
        if let Some((_, layout)) = self.0.iter().find(|known| known.0 == asked) {
            return Arc::clone(layout);
        }
        let layout = Arc::new(lay_out(&Asked {
            outline: &asked.outline,
            longest: asked.longest,
            boxes: &asked.boxes,
            isolated: &asked.isolated,
            solid: &asked.solid,
            meet: &asked.meet,
            drawn: (!asked.drawn.is_empty()).then_some(&asked.drawn),
        }));
        self.0.push((asked, Arc::clone(&layout)));
        layout
    }
}

impl Question {
    /// What is set in the slab and what stands on it: no part of any panel.
    fn left_out(&self) -> Arc<[Outline]> {
        let set = self.boxes.iter().chain(&self.isolated).map(|&(low, high)| {
            let (wide, deep) = (high.x - low.x, high.y - low.y);
            Outline::rectangle(Length::nanometres(wide), Length::nanometres(deep)).moved(low)
        });
        set.chain(self.solid.iter().cloned()).collect()
    }
}

fn boxes(slab: &Slab, rules: &Rules, isolated: bool) -> Vec<(Point, Point)> {
    let boxes = slab.boxes.iter().filter(|one| one.isolated == isolated);
    let boxes = boxes.filter_map(|one| {
        let middle = one.middle.as_ref()?.value;
        let stock = rules.boxes.get(&one.stock.value)?;
        Some(stock.opening.value.around(middle, Length::ZERO).bounds())
    });
    boxes.collect()
}

fn drawn(slab: &Slab) -> Vec<Line> {
    let line = |line: &At<(Point, Point)>| Line {
        from: line.value.0,
        to: line.value.1,
        bulge: Length::ZERO,
    };
    slab.drawn.iter().map(line).collect()
}

/// Stoops and steps upon the slab: no joint runs below them.
fn standing_on(takeoff: &Takeoff, slab: &Slab) -> Vec<Outline> {
    let others = takeoff.slabs.iter();
    let on = others.filter(|other| other.on.as_ref() == Some(&slab.key));
    on.map(|other| other.outline.without_holes()).collect()
}

/// Joints of what stays must be met, those of its neighbours where that costs little.
fn met(slab: &Slab, before: &[Option<Laid>]) -> Vec<Meet> {
    let named = slab.matched.iter().map(|at| Meet {
        at: at.value,
        must: true,
    });
    let is_corner = |at| slab.outline.sides().iter().any(|side| side.from == at);
    let lines = before.iter().flatten().flat_map(|laid| &laid.layout.lines);
    let ends = lines.flat_map(|line| [line.from, line.to]);
    let ends = ends.filter(|at| slab.outline.has_at_edge(*at) && !is_corner(*at));
    let mut all: Vec<Meet> = named.collect();
    for at in ends {
        if !all.iter().any(|meet| meet.at == at) {
            all.push(Meet { at, must: false });
        }
    }
    all
}

/// No panel may be longer. What is said of the slab itself is its owner's word; what is usual for its
/// kind, of whatever thickness, holds as far as this thickness allows.
fn limit(slab: &Slab, rules: &Rules) -> (Length, Quantity) {
    let mix = rules.mixes.get(&slab.mix.value);
    let by_thickness = spacing_by_thickness(slab, mix);
    let of_kind = slab.usual.contains(&"joints");
    let said = slab.joints.as_ref();
    if let Some(said) = said.filter(|said| !of_kind || said.value <= by_thickness) {
        return (said.value, Quantity::feet("longest panel", said));
    }
    let parts = said.map(|said| Quantity::feet("usual longest panel", said));
    let thin = Quantity::inches("thickness", &slab.thickness.clone().map(|all| all.thin));
    let working = Working::plan(
        "by the thickness and the stone, 15 ft at most",
        [thin].into_iter().chain(parts).collect(),
        "24 times the thickness, 30 with stone of 3/4 in and over: Portland Cement Association table and NRMCA CIP 6, as restated",
    );
    let limit = Quantity::new("longest panel", by_thickness.in_feet(), working);
    (by_thickness, limit)
}

/// The longest panel that the thickness of a slab and the stone in its mix allow.
pub fn spacing_by_thickness(slab: &Slab, mix: Option<&Mix>) -> Length {
    let stone = mix.map(|mix| mix.aggregate.value);
    longest_spacing(slab.thickness.value.thin, stone)
}
