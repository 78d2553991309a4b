//! Sites to draw.

use crate::documents::figures::plan::{
    Crossed, ENGLISH, EdgeMark, EdgeView, OpeningView, PanelView, PlanView, SlabView,
};
use crate::geometry::Direction::{East, North, South, West};
use crate::geometry::joints::{Asked, Layout, lay_out};
use crate::geometry::{Direction, Leg, Outline, Point, Side};
use crate::press::drawing::Rgb;
use crate::values::Length;

pub fn all() -> Vec<(&'static str, PlanView)> {
    vec![
        ("patio-walk-step", patio_walk_step()),
        (
            "rectangle",
            view(vec![house(
                slab("Patio", "180 sq ft", rectangle(12, 15), 10),
                2,
                12,
            )]),
        ),
        (
            "circle",
            view(vec![slab(
                "Patio",
                "254.5 sq ft",
                Outline::circle(feet(18)),
                10,
            )]),
        ),
        (
            "long-walk",
            view(vec![slab("Walk", "240 sq ft", rectangle(60, 4), 5)]),
        ),
        (
            "tall-walk",
            view(vec![slab("Walk", "240 sq ft", rectangle(4, 60), 5)]),
        ),
        ("three-unplaced", three()),
        ("driveway-existing", driveway()),
        ("corner-house", corner()),
        ("pads", pads()),
        ("doweled", doweled()),
        ("z-shape", z_shape()),
    ]
}

/// Triangles, trapezoids, sectors, rings, and slabs with openings.
pub fn odd() -> Vec<(&'static str, PlanView)> {
    let angle = |text: &str| text.parse().unwrap();
    let triangle = Outline::right_triangle(feet(12), feet(9), Direction::SouthWest).unwrap();
    let three = Outline::triangle([feet(9), feet(13), feet(15)]).unwrap();
    let trapezoid = Outline::trapezoid(feet(20), feet(14), feet(8), None).unwrap();
    let sector = Outline::sector(feet(12), angle("75 degrees"), South)
        .unwrap()
        .moved(at(30, 12));
    let large = Outline::sector(feet(9), angle("240 degrees"), Direction::NorthEast).unwrap();
    let mut open = slab("Patio", "400 sq ft", rectangle(24, 18), 10);
    cut(
        &mut open,
        "Tree well",
        "2 × 2 ft",
        &rectangle(2, 2).moved(at(3, 3)),
    );
    cut(
        &mut open,
        "Fire pit",
        "6 ft across",
        &Outline::circle(feet(6)).moved(at(12, 8)),
    );
    cut(
        &mut open,
        "Post",
        "1 ft across",
        &Outline::circle(feet(1)).moved(at(21, 2)),
    );
    open.openings[2].kind = EdgeMark::Existing;
    let mut ring = slab("Ring", "264 sq ft", Outline::circle(feet(20)), 10);
    cut(
        &mut ring,
        "Open",
        "8 ft across",
        &Outline::circle(feet(8)).moved(at(6, 6)),
    );
    vec![
        (
            "triangles",
            view(vec![
                slab("Corner", "54 sq ft", triangle, 8),
                slab("Three", "58 sq ft", three.moved(at(20, 0)), 8),
            ]),
        ),
        (
            "sectors",
            view(vec![
                slab("Long", "136 sq ft", trapezoid, 8),
                slab("Fan", "94 sq ft", sector, 8),
                slab("Big", "170 sq ft", large.moved(at(55, 8)), 8),
            ]),
        ),
        ("openings", view(vec![house(open, 2, 24)])),
        ("ring", view(vec![ring])),
    ]
}

fn cut(slab: &mut SlabView, name: &str, size: &str, hole: &Outline) {
    slab.outline = slab.outline.clone().with_hole(hole.clone()).unwrap();
    let longest = feet(10);
    slab.joints = lines(&laid_out(&slab.outline, longest));
    slab.openings.push(OpeningView {
        name: name.into(),
        size: size.into(),
        outline: hole.clone(),
        kind: EdgeMark::Open,
    });
}

/// Slabs of many sizes against a house, each with a walk at its east side.
pub fn sizes() -> Vec<(String, PlanView)> {
    let wide = [3, 4, 6, 9, 14, 22, 35, 56, 90, 300];
    let deep = [3, 5, 8, 13, 21, 34, 60, 200];
    let pairs = wide.iter().flat_map(|w| deep.map(|d| (*w, d)));
    pairs
        .map(|(w, d)| {
            let patio = house(slab("Back patio", "99 sq ft", rectangle(w, d), 10), 2, w);
            let walk = rectangle(30, 3).moved(at(w, -1));
            let walk = slab("Walk to the gate", "90 sq ft", walk, 10);
            (format!("{w} by {d}"), view(vec![patio, walk]))
        })
        .collect()
}

fn view(slabs: Vec<SlabView>) -> PlanView {
    PlanView {
        slabs,
        thickness: "4 in thick".into(),
        slope: "¼ in per ft".into(),
        unplaced: false,
        accent: Rgb(0x2b, 0x4a, 0x8b),
        words: &ENGLISH,
    }
}

fn patio_walk_step() -> PlanView {
    let patio = walked(&[
        (East, 24, 0),
        (South, 20, 0),
        (West, 16, 18),
        (North, 8, 0),
        (West, 8, 0),
        (North, 12, 0),
    ]);
    let mut patio = house(slab("Patio", "432 sq ft", patio, 10), 0, 24);
    // The walk meets the west side (side 1 runs south along it) between 2 and 6 ft.
    patio.edges.push(edge(1, 2, 6, EdgeMark::Isolated));
    let walk = slab("Walk", "88 sq ft", rectangle(22, 4).moved(at(-22, -6)), 10);
    let mut step = slab("Step", "6 × 3 ft", rectangle(6, 3).moved(at(10, -3)), 10);
    step.is_step = true;
    step.fall = None;
    step.joints.clear();
    step.panels.clear();
    view(vec![patio, walk, step])
}

fn three() -> PlanView {
    let outlines = [
        rectangle(20, 16),
        rectangle(30, 4),
        walked(&[
            (East, 12, 0),
            (North, 20, 0),
            (West, 6, 0),
            (South, 10, 0),
            (West, 6, 0),
            (South, 10, 0),
        ]),
    ];
    let moves = [at(0, -16), at(28, -4), at(66, -20)];
    let names = [
        ("Carport slab", "320 sq ft"),
        ("Front walk", "120 sq ft"),
        ("Side yard", "180 sq ft"),
    ];
    let slabs = outlines.iter().zip(moves).zip(names);
    let mut view = view(
        slabs
            .map(|((outline, by), (name, note))| slab(name, note, outline.moved(by), 10))
            .collect(),
    );
    view.unplaced = true;
    view
}

fn driveway() -> PlanView {
    let mut drive = slab("Driveway", "720 sq ft", rectangle(20, 36), 10);
    drive.edges = vec![
        edge(0, 0, 20, EdgeMark::Curb),
        edge(2, 0, 20, EdgeMark::Existing),
    ];
    let mut apron = slab("Apron", "120 sq ft", rectangle(20, 6).moved(at(20, 0)), 10);
    apron.edges = vec![edge(3, 0, 6, EdgeMark::Bulkhead)];
    drive.edges.push(edge(1, 0, 6, EdgeMark::Bulkhead));
    view(vec![drive, apron])
}

fn corner() -> PlanView {
    let mut patio = slab("Patio", "320 sq ft", rectangle(20, 16), 10);
    patio.edges = vec![
        edge(2, 0, 20, EdgeMark::House),
        edge(3, 0, 16, EdgeMark::House),
    ];
    patio.fall = Some(Direction::SouthEast);
    view(vec![patio])
}

fn pads() -> PlanView {
    let pad = |name: &str, east: i64, north: i64| {
        let mut pad = slab(name, "9 sq ft", rectangle(3, 3).moved(at(east, north)), 10);
        pad.fall = None;
        pad
    };
    view(vec![
        pad("Air conditioner pad", 0, 0),
        pad("Gas bottle pad", 9, 0),
        pad("Hose pad", 14, 0),
        pad("Trash can pad", 30, 20),
        slab("Shed", "120 sq ft", rectangle(12, 10).moved(at(12, 8)), 10),
    ])
}

fn z_shape() -> PlanView {
    let z = walked(&[
        (East, 20, 0),
        (North, 6, 0),
        (East, 14, 0),
        (North, 12, -12),
        (West, 20, 0),
        (South, 4, 0),
        (West, 14, 0),
        (South, 14, 0),
    ]);
    view(vec![slab("Patio", "400 sq ft", z, 10)])
}

fn feet(n: i64) -> Length {
    Length::feet_whole(n)
}

fn at(east: i64, north: i64) -> Point {
    Point::new(feet(east).as_nanometres(), feet(north).as_nanometres())
}

fn rectangle(east_west: i64, north_south: i64) -> Outline {
    Outline::rectangle(feet(east_west), feet(north_south))
}

fn walked(legs: &[(Direction, i64, i64)]) -> Outline {
    let legs: Vec<Leg> = legs
        .iter()
        .map(|&(direction, length, inches)| Leg {
            direction,
            length: feet(length),
            bulge: Length::inches_whole(inches),
        })
        .collect();
    Outline::walked(&legs).expect("a closed outline")
}

fn slab(name: &str, note: &str, outline: Outline, longest: i64) -> SlabView {
    let layout = laid_out(&outline, feet(longest));
    let feet = |length: Length| crate::values::rounding::to_places(length.feet(), 1).normalize();
    SlabView {
        name: name.into(),
        note: note.into(),
        is_step: false,
        boxes: Vec::new(),
        treads: Vec::new(),
        joints: lines(&layout),
        is_sawn: false,
        edges: Vec::new(),
        fall: Some(South),
        levels: Vec::new(),
        panels: layout
            .panels
            .iter()
            .map(|p| PanelView {
                corners: p.sides.iter().map(|line| line.from).collect(),
                size: format!("{} × {} ft", feet(p.size.0), feet(p.size.1)),
            })
            .collect(),
        outline,
        openings: Vec::new(),
    }
}

fn laid_out(outline: &Outline, longest: Length) -> Layout {
    lay_out(&Asked {
        outline,
        longest,
        boxes: &[],
        isolated: &[],
        solid: &[],
        meet: &[],
        drawn: None,
    })
}

fn lines(layout: &Layout) -> Vec<Vec<Point>> {
    let lines = layout.lines.iter();
    lines.map(|line| Side::from(*line).places()).collect()
}

fn edge(side: usize, from: i64, to: i64, kind: EdgeMark) -> EdgeView {
    EdgeView {
        side,
        from: feet(from),
        to: feet(to),
        kind,
        crossed: Crossed::Nothing,
    }
}

/// Doweled to old concrete on the east side, tied on the south, dowels through a bulkhead on the north.
pub fn doweled() -> PlanView {
    let mut apron = slab("Apron", "160 sq ft", rectangle(16, 10), 10);
    let sides = [
        (0, 16, EdgeMark::Existing, Crossed::Ties),
        (1, 10, EdgeMark::Existing, Crossed::Dowels),
        (2, 16, EdgeMark::Bulkhead, Crossed::Dowels),
    ];
    apron
        .edges
        .extend(sides.map(|(side, long, kind, crossed)| EdgeView {
            crossed,
            ..edge(side, 0, long, kind)
        }));
    view(vec![apron])
}

fn house(mut slab: SlabView, side: usize, long: i64) -> SlabView {
    slab.edges.push(edge(side, 0, long, EdgeMark::House));
    slab
}
