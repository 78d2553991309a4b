//! Plans of common jobs: nothing overlaps, everything is inside, the numbers are said.

mod boxes;
mod scenes;

use super::widths::frame_of;
use super::*;
use crate::documents::figures::pen::{TINT, WHITE};
use crate::press::drawing::{PagePoint, Path, Rgb, Shape, Words};
use crate::press::frame::Frame;

fn words_of(drawing: &Drawing) -> Vec<&Words> {
    drawing
        .shapes
        .iter()
        .filter_map(|shape| match shape {
            Shape::Words(words) => Some(words),
            Shape::Path(_) | Shape::Picture(_) => None,
        })
        .collect()
}

fn is_rectangular_slab(shape: &Shape) -> bool {
    let points = points_of(shape);
    let upright = points
        .windows(2)
        .all(|p| (p[0].x - p[1].x).abs().min((p[0].y - p[1].y).abs()) < 0.01);
    fill_of(shape) == Some(TINT) && points.len() == 4 && upright
}

fn fill_of(shape: &Shape) -> Option<Rgb> {
    match shape {
        Shape::Path(path) => path.fill,
        Shape::Words(_) | Shape::Picture(_) => None,
    }
}

fn frame_of_shape(shape: &Shape) -> Frame {
    Frame::around_all(points_of(shape))
}

fn points_of(shape: &Shape) -> Vec<PagePoint> {
    match shape {
        Shape::Path(path) if path.within.is_empty() => path.points().collect(),
        // Hatching is cut off by its outline.
        Shape::Path(path) => Path::new(path.within.clone(), None, None)
            .points()
            .collect(),
        Shape::Words(_) | Shape::Picture(_) => Vec::new(),
    }
}

#[test]
fn common_sites_overlap_nothing_and_lie_inside() {
    for (name, view) in scenes::all() {
        check(name, &plan(&view));
        check(name, &plan(&boxes::with_boxes(view)));
    }
}

#[test]
fn slabs_of_any_size_overlap_nothing_and_lie_inside() {
    for (name, view) in scenes::sizes() {
        check(&name, &plan(&view));
    }
}

fn check(name: &str, drawing: &Drawing) {
    let words = words_of(drawing);
    for (i, a) in words.iter().enumerate() {
        for b in &words[i + 1..] {
            let apart = !frame_of(a).overlaps(&frame_of(b));
            assert!(apart, "{name}: `{}` over `{}`", a.text, b.text);
        }
    }
    // Dimensions stand outside the slabs.
    for dimension in words
        .iter()
        .filter(|w| w.halo && w.text.contains(['′', '″']))
    {
        let over = drawing.shapes.iter().any(|shape| {
            is_rectangular_slab(shape) && frame_of_shape(shape).overlaps(&frame_of(dimension))
        });
        assert!(!over, "{name}: `{}` stands on a slab", dimension.text);
    }
    let size = drawing.size;
    assert!(size.width <= 516.0 && size.height <= 252.0, "{name}");
    // Half a thick line may reach over the edge.
    let page = Frame::at(0.0, 0.0, size.width, size.height).grown(0.7);
    for words in words {
        assert!(page.contains(&frame_of(words)), "{name}: `{}`", words.text);
    }
    for p in drawing.shapes.iter().flat_map(points_of) {
        assert!(
            page.contains(&Frame::around(p, p)),
            "{name}: {p:?} outside {size:?}"
        );
    }
}

#[test]
fn every_slab_is_named_and_measured() {
    for (name, view) in scenes::all() {
        let drawing = plan(&view);
        let words = words_of(&drawing);
        let says = |text: &str| words.iter().any(|w| w.text == text);
        for slab in &view.slabs {
            assert!(says(&slab.name), "{name}: `{}` is not named", slab.name);
            if slab.is_step {
                continue;
            }
            let (low, high) = slab.outline.bounds();
            if slab
                .outline
                .sides()
                .iter()
                .all(crate::geometry::Side::is_straight)
            {
                for side in [high.x - low.x, high.y - low.y] {
                    let text = lengths::dimension(crate::values::Length::nanometres(side));
                    assert!(says(&text), "{name}: {text} of `{}` is missing", slab.name);
                }
            }
        }
    }
}

#[test]
fn a_known_site_is_drawn_and_told() {
    let (_, view) = &scenes::all()[0];
    let drawing = plan(view);
    let words = words_of(&drawing);
    for text in [
        "12′-0″",
        "8′-0″",
        "16′-0″",
        "20′-0″",
        "24′-0″",
        "22′-0″",
        "4′-0″",
        "1′-6″",
        "House",
    ] {
        assert!(words.iter().any(|w| w.text == text), "{text}");
    }
    assert!(
        words
            .iter()
            .any(|w| w.text == "feet\u{a0}(1\u{a0}in\u{a0}=\u{a0}8\u{a0}ft)")
    );
    // Cuts by hand: 8 and 16 ft from the west, the first down to the inside corner; 6 ft from the house all
    // across, and half way from there to the bow, whose lowest point lies 21 ft 6 in off: 7 ft 9 in each.
    assert_eq!(
        drawing.alternative,
        "Plan, north at the top, 1 in = 8 ft. \
         Patio: 24 ft by 20 ft; 432 sq ft; on the south side bowed by 18 in; \
         against the house on the north side; soft joint strip on the west side; \
         4 joints, panels of 8 × 7.8 ft, 8.2 × 7.8 ft, 8 × 6 ft; water runs south, ¼ in per ft. \
         Walk: 22 ft by 4 ft; 88 sq ft; 4 joints, panels of 4.4 × 4 ft; water runs south, ¼ in per ft. \
         Step: 6 ft by 3 ft; 6 × 3 ft."
    );
}

#[test]
fn other_shapes_and_openings_are_drawn_and_told() {
    let drawn = |name: &str| {
        let (_, view) = scenes::odd().into_iter().find(|(n, _)| *n == name).unwrap();
        plan(&view)
    };
    let says = |drawing: &Drawing, text: &str| {
        assert!(words_of(drawing).iter().any(|w| w.text == text), "{text}");
    };
    let told = |drawing: &Drawing, text: &str| {
        let alternative = &drawing.alternative;
        assert!(alternative.contains(text), "{text} is not in {alternative}");
    };
    let openings = drawn("openings");
    says(&openings, "Fire pit");
    says(
        &openings,
        "left open: Tree well, 2 × 2 ft; Post, 1 ft across",
    );
    told(
        &openings,
        "left open: Tree well, 2 × 2 ft; left open: Fire pit, 6 ft across",
    );
    let triangles = drawn("triangles");
    says(&triangles, "15′-0″");
    told(
        &triangles,
        "triangle 12 ft by 9 ft; 54 sq ft; a slanted side of 15 ft",
    );
    let ring = drawn("ring");
    says(&ring, "Open");
    told(&ring, "circle 20 ft across");
    let sectors = drawn("sectors");
    says(&sectors, "12′-0″");
    told(&sectors, "part of a circle of radius 12 ft");
    for (name, view) in scenes::odd() {
        check(name, &plan(&view));
    }
}

/// Nothing that is written stands on an opening, but for what the opening says itself.
#[test]
fn openings_are_kept_clear() {
    for (name, view) in scenes::odd() {
        let drawing = plan(&view);
        let holes: Vec<Frame> = drawing
            .shapes
            .iter()
            .filter(|shape| fill_of(shape) == Some(WHITE) && 8 < points_of(shape).len())
            .map(frame_of_shape)
            .collect();
        for words in words_of(&drawing) {
            let own = view.slabs.iter().flat_map(|slab| &slab.openings);
            let mut own = own.flat_map(|opening| [&opening.name, &opening.size]);
            let over = holes
                .iter()
                .any(|hole| hole.grown(-4.0).overlaps(&frame_of(words)));
            assert!(
                !over || own.any(|text| *text == words.text),
                "{name}: `{}`",
                words.text
            );
        }
    }
}

#[test]
fn the_same_view_gives_the_same_drawing() {
    for (_, view) in scenes::all() {
        assert_eq!(format!("{:?}", plan(&view)), format!("{:?}", plan(&view)));
    }
}

#[test]
fn a_site_of_a_thousand_feet_is_still_drawn() {
    let mut view = scenes::all().swap_remove(1).1;
    view.slabs[0].outline = crate::geometry::Outline::rectangle(
        crate::values::Length::LONGEST,
        crate::values::Length::LONGEST,
    );
    view.slabs[0].edges.clear();
    view.slabs[0].joints.clear();
    view.slabs[0].panels.clear();
    let drawing = plan(&view);
    assert!(
        drawing.alternative.contains("1000 ft by 1000 ft"),
        "{}",
        drawing.alternative
    );
    check("a thousand feet", &drawing);
}

/// A stroke of 4 points for every 9 of the edge, and words for who cannot see them.
#[test]
fn doweled_edges_are_drawn_and_told() {
    let view = scenes::doweled();
    let strokes = |view: &PlanView| {
        let drawing = plan(view);
        let paths = drawing
            .shapes
            .iter()
            .filter(|shape| matches!(shape, Shape::Path(_)));
        let short = paths.filter(|shape| {
            let frame = frame_of_shape(shape);
            let sides = [frame.width(), frame.height()];
            let long = |side: f32| (side - 4.0).abs() < 0.01 || (side - 8.0).abs() < 0.01;
            let crosses = sides.into_iter().any(long) && sides.into_iter().any(|side| side < 0.01);
            crosses && matches!(shape, Shape::Path(path) if path.stroke.is_some())
        });
        short.count()
    };
    let mut bare = view.clone();
    for edge in &mut bare.slabs[0].edges {
        edge.crossed = Crossed::Nothing;
    }
    let drawing = plan(&view);
    let foot = SCALES
        .iter()
        .find(|scale| drawing.alternative.contains(scale.says))
        .unwrap()
        .foot;
    let many = |feet: f32| (feet * foot / 9.0 + 0.5).floor();
    let due = many(16.0) + many(10.0) + many(16.0);
    // Three in each of the two samples of the key.
    let found = f32::from(u16::try_from(strokes(&view) - strokes(&bare)).unwrap());
    assert!(
        (found - due - 6.0).abs() <= 3.0,
        "{found} strokes, {due} due"
    );
    let told = &drawing.alternative;
    for words in [
        "against concrete that stays with steel dowels across it, free to slide, on the east side",
        "against concrete that stays with steel bars that hold both sides together, on the south side",
        "joint between two pours with steel dowels across it, free to slide, on the north side",
    ] {
        assert!(told.contains(words), "{told}");
    }
    let says = |text: &str| words_of(&drawing).iter().any(|w| w.text == text);
    assert!(says("steel dowels across the edge, free to slide"));
    assert!(says("steel bars that hold both sides together"));
}
