//! What the plan says to someone who cannot see it, numbers included.

use super::kinds::{Crossed, EdgeMark};
use super::scale::Scale;
use super::view::{PlanView, SlabView};
use super::words::PlanWords;
use super::{lengths, slants};
use crate::geometry::{Compass, Direction, Point};
use crate::values::Length;

pub(super) fn text(view: &PlanView, scale: Scale) -> String {
    let words = view.words;
    let mut sentences = vec![format!("{} {}", words.plan_at, scale.says)];
    if view.unplaced {
        sentences.push(upper_first(words.unplaced));
    }
    sentences.extend(view.slabs.iter().map(|slab| of_slab(slab, view)));
    sentences.join(". ") + "."
}

fn of_slab(slab: &SlabView, view: &PlanView) -> String {
    let words = view.words;
    let mut parts = vec![size(slab, words)];
    if !slab.note.is_empty() {
        parts.push(slab.note.clone());
    }
    for side in slants::slanted(slab) {
        let long = lengths::spoken(lengths::of_side(side));
        parts.push(format!("{} {long}", words.slanted));
    }
    for opening in &slab.openings {
        parts.push(format!("{}: {}", words.left_open, opening.said()));
    }
    for side in slab.outline.sides().iter().filter(|s| !s.is_straight()) {
        if slab.outline.is_circle().is_none() && slab.outline.is_sector().is_none() {
            let rise = lengths::spoken(side.bulge.abs());
            parts.push(format!(
                "{} {} {rise}",
                on_side(side.facing(), words),
                words.bow
            ));
        }
    }
    for edge in &slab.edges {
        let word = words.beside.iter().find(|(kind, _)| *kind == edge.kind);
        if let (Some((_, word)), Some(side)) = (word, slab.outline.sides().get(edge.side)) {
            debug_assert!(edge.kind != EdgeMark::Open);
            let crossed = match edge.crossed {
                Crossed::Nothing => String::new(),
                Crossed::Dowels => format!(" {}", words.with_dowels),
                Crossed::Ties => format!(" {}", words.with_ties),
            };
            parts.push(format!("{word}{crossed} {}", on_side(side.facing(), words)));
        }
    }
    if !slab.joints.is_empty() {
        let many = slab.joints.len();
        let word = if many == 1 {
            words.joints_one
        } else {
            words.joints_many
        };
        parts.push(format!("{many} {word}{}", panel_sizes(slab, words)));
    }
    if !slab.boxes.is_empty() {
        let boxes = slab.boxes.iter();
        let all: Vec<String> = boxes
            .map(|one| format!("{} {}", one.number, one.name))
            .collect();
        parts.push(format!("{}: {}", words.set_in_it, all.join(", ")));
    }
    if let Some(fall) = slab.fall {
        let way = words.directions[order(fall)];
        let slope = if view.slope.is_empty() {
            String::new()
        } else {
            format!(", {}", view.slope)
        };
        parts.push(format!("{} {way}{slope}", words.runs));
    }
    format!("{}: {}", slab.name, parts.join("; "))
}

fn size(slab: &SlabView, words: &PlanWords) -> String {
    if let Some(diameter) = slab.outline.is_circle() {
        let wide = lengths::spoken(diameter);
        return format!("{} {wide} {}", words.circle, words.across);
    }
    let corners = slab.outline.sides().iter().map(|side| side.from);
    let (low, high) = slab.outline.bounds();
    let ends: Vec<Point> = match slab.outline.is_sector() {
        Some(_) => vec![low, high],
        None => corners.collect(),
    };
    let (xs, ys): (Vec<i64>, Vec<i64>) = ends.iter().map(|p| (p.x, p.y)).unzip();
    let across = |all: &[i64]| {
        let most = all.iter().max().copied().unwrap_or(0);
        let least = all.iter().min().copied().unwrap_or(0);
        lengths::spoken(Length::nanometres(most - least))
    };
    let both = format!("{} {} {}", across(&xs), words.by, across(&ys));
    if let Some(radius) = slab.outline.is_sector() {
        let radius = lengths::spoken(radius);
        return format!("{} {radius}, {both}", words.part_of_circle);
    }
    match slab.outline.sides() {
        [a, b, c] if [a, b, c].iter().all(|side| side.is_straight()) => {
            format!("{} {both}", words.triangle)
        }
        _ => both,
    }
}

fn panel_sizes(slab: &SlabView, words: &PlanWords) -> String {
    let panels = slab.panels.iter();
    let mut sizes: Vec<&str> = Vec::new();
    for size in panels.map(|panel| panel.size.as_str()) {
        if !size.is_empty() && !sizes.contains(&size) {
            sizes.push(size);
        }
    }
    match sizes[..] {
        [] => String::new(),
        [_] | [_, _] | [_, _, _] => format!(", {} {}", words.panels_of, sizes.join(", ")),
        // The largest comes first; who wants the others looks at the drawing.
        [largest, ..] => format!(", {} {largest}", words.panels_up_to),
    }
}

fn on_side(facing: Option<Compass>, words: &PlanWords) -> &'static str {
    words.sides[match facing {
        Some(Compass::North) => 0,
        Some(Compass::East) => 1,
        Some(Compass::South) => 2,
        Some(Compass::West) => 3,
        None => 4,
    }]
}

fn order(direction: Direction) -> usize {
    match direction {
        Direction::North => 0,
        Direction::NorthEast => 1,
        Direction::East => 2,
        Direction::SouthEast => 3,
        Direction::South => 4,
        Direction::SouthWest => 5,
        Direction::West => 6,
        Direction::NorthWest => 7,
    }
}

fn upper_first(text: &str) -> String {
    let mut chars = text.chars();
    chars
        .next()
        .map(|first| first.to_uppercase().chain(chars).collect())
        .unwrap_or_default()
}
