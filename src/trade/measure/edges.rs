//! Edges by what stands beyond them: forms here, isolation strip there.

use crate::geometry::{Outline, Side};
use crate::input::job::{EdgeKind, EdgePart, Meets, Slab};
use crate::reading::{At, Place};
use crate::trade::tally::Tally;
use crate::trade::term::{number, of, sum};
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, Length, Unit};

#[derive(Clone, Debug)]
pub struct EdgeQuantities {
    /// Straight edge that needs a form; a deep one is counted apart.
    pub straight: Quantity,
    /// Straight edge that needs a form deeper than the owner's limit.
    pub deep: Quantity,
    /// Curved edge that needs a form.
    pub curved: Quantity,
    /// Square feet that these forms hold, each as high as the edge is deep.
    pub straight_face: Quantity,
    pub deep_face: Quantity,
    pub curved_face: Quantity,
    /// Edge that needs an isolation strip.
    pub strip: Quantity,
    /// Separate straight pieces of form with two ends, for the stakes; then curved ones.
    pub formed: Vec<Quantity>,
    pub bent: Vec<Quantity>,
    /// Forms that close on themselves, for the stakes.
    pub rings: Vec<Quantity>,
    /// Edges along which slabs of one pour meet and a control joint runs.
    pub jointed: Vec<Quantity>,
    /// Edges that bars cross, piece by piece.
    pub pinned: Vec<(EdgeKind, Quantity)>,
    /// The open edge of the slab itself, where there is any; openings have their own.
    pub open: Option<Quantity>,
}

/// How a stretch of edge runs.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Course {
    Straight,
    Curved,
    /// It closes on itself.
    Ring,
}

/// A stretch of edge of one kind.
struct Stretch {
    kind: EdgeKind,
    has_form: bool,
    course: Course,
    is_own: bool,
    meets: Meets,
    depth: Length,
    length: Quantity,
}

/// The edge of the slab itself, or of an opening in it.
struct Ring<'a> {
    name: String,
    outline: &'a Outline,
    edges: &'a [EdgePart],
    place: Place,
    slab: &'a Slab,
    is_own: bool,
}

pub(super) fn measure(
    slab: &Slab,
    deep_over: Option<Length>,
    tally: &mut Tally<'_>,
) -> EdgeQuantities {
    let openings = slab.openings.iter().zip(slab.outline.holes());
    let openings = openings.map(|(opening, outline)| Ring {
        name: format!("{} {}", slab.key, opening.name.value),
        outline,
        edges: &opening.edges,
        place: opening.name.place,
        slab,
        is_own: false,
    });
    let rings = std::iter::once(Ring::of(slab)).chain(openings);
    let parts: Vec<Stretch> = rings.flat_map(|ring| ring.stretches()).collect();
    let is_deep = |part: &Stretch| deep_over.is_some_and(|limit| limit < part.depth);
    let edge_of = |tally: &Tally<'_>, title: &str, fits: &dyn Fn(&Stretch) -> bool| {
        let fitting = parts.iter().filter(|part| fits(part));
        let whole = sum(fitting.map(|part| &part.length));
        tally.between("sides added up", title, Unit::Foot, whole)
    };
    let formed = |course: Course| -> Vec<Quantity> {
        parts
            .iter()
            .filter(|part| part.has_form && part.course == course)
            .map(|part| part.length.clone())
            .collect()
    };
    let is_open = |part: &Stretch| part.kind == EdgeKind::Open;
    let (mut open, mut outer) = (None, None);
    for kind in EdgeKind::ALL {
        if parts.iter().any(|part| part.kind == kind) {
            let title = format!("{} edge", kind.name());
            let edge = edge_of(tally, &title, &|part| part.kind == kind);
            tally.show([&edge]);
            if kind == EdgeKind::Open {
                open = Some(edge);
            }
        }
    }
    let mut joint = |title: &str, fits: fn(EdgeKind) -> bool| {
        if parts.iter().any(|part| fits(part.kind)) {
            let joint = edge_of(tally, title, &|part| fits(part.kind));
            tally.show([&joint]);
        }
    };
    joint("construction joints", EdgeKind::is_bulkhead);
    joint("keyed joints", |kind| kind == EdgeKind::KeyedBulkhead);
    if parts.iter().any(|part| is_open(part) && !part.is_own) {
        let is_outer = |part: &Stretch| is_open(part) && part.is_own;
        let some = parts.iter().any(is_outer);
        outer = some.then(|| edge_of(tally, "outer open edge", &is_outer));
        open = None;
    }
    let straight = |part: &Stretch| part.has_form && part.course == Course::Straight;
    let faces_tally = &Tally::of(&slab.key, tally.sets);
    let mut listed = |title: &str, fits: &dyn Fn(&Stretch) -> bool| {
        let edge = edge_of(tally, title, fits);
        tally.list([&edge]);
        edge
    };
    if parts
        .iter()
        .any(|part| matches!(part.meets, Meets::Face(_)))
    {
        listed("step-down", &|part| matches!(part.meets, Meets::Face(_)));
    }
    let curved = |part: &Stretch| part.has_form && part.course != Course::Straight;
    let face_of = |title: &str, fits: &dyn Fn(&Stretch) -> bool| {
        let fitting = parts.iter().filter(|part| fits(part));
        let faces = fitting.map(|part| {
            let value = part.depth;
            let place = slab.thickness.place;
            of(&part.length) * &Quantity::inches("depth of the form", &At { value, place })
        });
        let faces = faces.reduce(|a, b| a + b).unwrap_or_else(|| number(0));
        let rule = "length × depth ÷ 12, side by side";
        faces_tally.between(rule, title, Unit::SquareFoot, faces / number(12))
    };
    EdgeQuantities {
        straight_face: face_of("face of straight form", &|part| {
            straight(part) && !is_deep(part)
        }),
        deep_face: face_of("face of deep form", &|part| straight(part) && is_deep(part)),
        curved_face: face_of("face of curved form", &curved),
        straight: listed("straight form", &|part| straight(part) && !is_deep(part)),
        curved: listed("curved form", &curved),
        deep: listed("deep form", &|part| straight(part) && is_deep(part)),
        strip: listed("isolation strip", &|part| part.kind.has_strip()),
        formed: formed(Course::Straight),
        bent: formed(Course::Curved),
        rings: formed(Course::Ring),
        jointed: parts
            .iter()
            .filter(|part| part.meets == Meets::ControlJoint)
            .map(|part| part.length.clone())
            .collect(),
        pinned: parts
            .iter()
            .filter(|part| part.kind.pin().is_some())
            .map(|part| (part.kind, part.length.clone()))
            .collect(),
        open: outer.or(open),
    }
}

/// Feet of a side of the slab itself, or of a stretch of it.
pub(super) fn along(slab: &Slab, side: usize, stretch: Option<(Length, Length)>) -> Quantity {
    Ring::of(slab).along(side, stretch)
}

impl<'a> Ring<'a> {
    fn of(slab: &'a Slab) -> Self {
        Ring {
            name: slab.key.clone(),
            outline: &slab.outline,
            edges: &slab.edges,
            place: slab.place,
            slab,
            is_own: true,
        }
    }

    /// How deep a form here is; the edges of an opening are not thickened.
    fn depth(&self, part: &EdgePart) -> Length {
        if self.is_own {
            self.slab.edge_depth(part)
        } else {
            self.slab.deepest_along(self.outline, part.side)
        }
    }

    /// A circle is one stretch without ends, any other outline one for each part of its sides.
    fn stretches(&self) -> Vec<Stretch> {
        if self.outline.is_circle().is_some()
            && let Some(first) = self.edges.first()
            && self.edges.iter().all(|part| part.kind == first.kind)
        {
            let length = Quantity::new(
                format!("{} circle", self.name),
                Amount::new(self.outline.perimeter(), Unit::Foot),
                Working::Shape {
                    how: "all round the circle".to_owned(),
                    place: self.place,
                },
            );
            return vec![Stretch {
                kind: first.kind,
                has_form: first.has_form(),
                course: Course::Ring,
                is_own: self.is_own,
                meets: first.meets,
                depth: self.depth(first),
                length,
            }];
        }
        let parts = self.edges.iter();
        parts
            .map(|part| Stretch {
                kind: part.kind,
                has_form: part.has_form(),
                course: if self.outline.sides()[part.side].is_straight() {
                    Course::Straight
                } else {
                    Course::Curved
                },
                is_own: self.is_own,
                meets: part.meets,
                depth: self.depth(part),
                length: self.along(part.side, part.stretch),
            })
            .collect()
    }

    fn along(&self, side: usize, stretch: Option<(Length, Length)>) -> Quantity {
        let side = self.outline.sides()[side];
        let name = side_name(self.outline, &side);
        let (value, how) = match stretch {
            Some((from, to)) => {
                let length: Length = to - from;
                (length.feet(), format!("part of the {name}"))
            }
            None if side.is_straight() => (side.length(), format!("the {name}")),
            None => (side.length(), format!("the {name}, along its curve")),
        };
        Quantity::new(
            format!("{} {name}", self.name),
            Amount::new(value, Unit::Foot),
            Working::Shape {
                how,
                place: self.place,
            },
        )
    }
}

/// As the owner would point at it: a rectangle's by where it looks, a walked one by its number.
fn side_name(outline: &Outline, side: &Side) -> String {
    let looks = match side.facing() {
        Some(way) => format!("{} side", way.name()),
        None => "slanted side".to_owned(),
    };
    match outline.is_rectangle() {
        Some(_) => looks,
        None if outline.is_circle().is_some() => "half of the circle".to_owned(),
        None => format!("side {}", side.leg + 1),
    }
}
