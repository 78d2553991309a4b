//! Contraction joints: where a finisher would cut a slab.
//!
//! The objective, each only where those before it are equal (`score.rs`):
//!
//! 1. No panel is longer than the limit: by how much all are.
//! 2. Places that the takeoff names are met: how many are not.
//! 3. Nothing invites a crack: a panel over 1.5 times as long as wide by what is over; 0.6 for each
//!    inside corner and each corner of an opening or a box that no joint runs to (a short side of it
//!    will do, of a round one two joints, of a small box that is isolated none), 0.4 for each joint that
//!    passes within a foot of one; 0.27 for a panel narrower than a third of the spacing.
//! 4. The least of: feet of joint; twice what each panel is longer than wide, and twice again what it is
//!    beyond 1.25; one and a half spacings for each joint that ends at another where nothing goes on, and
//!    for each joint of a neighbour that nothing meets, one for each that ends within a foot of a corner
//!    but not at it, or at the side of an opening with corners, two for a joint askew to all sides and
//!    for a corner under 60 degrees. The spacing is the limit, or the width of a narrower slab.
//! 5. The most even panels.
//!
//! A strip under 2 ft and under a third of the limit is jointed by the limit alone. Sources: 1.25
//! preferred, never over 1.5 (Basham at forconstructionpros.com, seen in search excerpts only); not over
//! 1.25 (TM 5-809-12 / UFC 3-320-06A, paragraph 5-2). The weights and the foot are common practice, no
//! source.
//!
//! Slabs of even width are cut across (`ribbon.rs`). Of others, joints run from the places that need one
//! (`relief.rs`: every choice of few, of many the best that can be climbed to), and the parts between are
//! divided (`grid.rs`, `shape.rs`; between sides that draw nearer to each other by `fan.rs`). Beside these,
//! straight lines through the whole slab are tried (`lattice.rs`). Whatever is cut, panels tile the slab
//! (`cut.rs`). What is found is not proved to be the best but on small slabs (`tests/every.rs`); what it
//! does not keep is told.

mod askew;
mod carve;
mod curve;
mod cut;
mod cuts;
mod drawn;
mod fan;
mod faults;
mod grid;
mod ground;
mod lattice;
mod layout;
mod marks;
mod measure;
mod plan;
mod pose;
mod rays;
mod relief;
mod ribbon;
mod score;
mod seam;
mod shape;
mod sheet;
mod strip;
mod way;

pub use super::line::Line;
pub use layout::{Asked, Break, Fault, Layout, Meet, Panel};

use ground::Ground;
use plan::Plan;
use pose::Posed;
use rust_decimal::Decimal;
use seam::{Edge, Seam};

use crate::values::{Area, Length};

/// More panels than this are told and not tried.
const MOST_PANELS: i64 = 300;

/// The best joint layout found, and what it does not keep.
pub fn lay_out(asked: &Asked<'_>) -> Layout {
    let ground = Ground::of(asked);
    let panels = ground.panels();
    if let Some(lines) = asked.drawn {
        let plan = drawn::plan(&ground, lines);
        let mut layout = laid_out(&ground, plan);
        layout.breaks.extend(drawn::in_solid(&ground, lines));
        layout.breaks.sort_by_key(|one| (one.what.weight(), one.at));
        return layout;
    }
    if MOST_PANELS < panels {
        let mut layout = laid_out(&ground, Plan::cut(&ground, &[]));
        let (at, what) = (ground.whole.loops[0][0].at, Fault::TooMany { panels });
        layout.breaks = vec![Break { at, what }];
        return layout;
    }
    // Laid out in one position, so that slabs turned or mirrored are laid out alike.
    let posed = Posed::of(asked);
    let asked = posed.asked();
    let ground = Ground::of(&asked);
    posed.back(laid_out(&ground, best(&ground)))
}

/// A slab of even width is cut across; where that breaks a limit, and of any other, lines run through.
fn best(ground: &Ground<'_>) -> Plan {
    let ribbon = ribbon::best(ground);
    match ribbon {
        Some(plan) if plan.score.is_sound() => plan,
        Some(plan) => {
            let other = through(ground);
            if other.score < plan.score {
                other
            } else {
                plan
            }
        }
        None => through(ground),
    }
}

/// Joints from place to place or straight lines through all: what is better.
fn through(ground: &Ground<'_>) -> Plan {
    let plan = relief::best(ground);
    let is_plain = ground.needs.is_empty() && ground.things.is_empty();
    if is_plain && ground.measured(&ground.whole).rectangle.is_some() {
        return plan;
    }
    match lattice::best(ground) {
        Some(other) if other.score < plan.score => other,
        Some(_) | None => plan,
    }
}

fn laid_out(ground: &Ground<'_>, mut plan: Plan) -> Layout {
    plan.pieces
        .sort_by_cached_key(|piece| std::cmp::Reverse(piece.doubled_area()));
    let mut lines: Vec<Line> = plan
        .lines
        .iter()
        .map(|line| Line::from(&line.seam))
        .collect();
    lines.sort_unstable();
    let long: i64 = plan.lines.iter().map(|line| line.seam.length()).sum();
    let panel = |piece: &sheet::Piece| {
        let measured = ground.measured(piece);
        let [long, short] = measured.size.map(Length::nanometres);
        let sides = |ring: &Vec<Edge>| -> Vec<Line> {
            let seams = seam::edges(ring).map(|(edge, to)| edge.seam(to));
            seams.map(|seam| Line::from(&seam)).collect()
        };
        let mut loops = piece.loops.iter().map(sides);
        Panel {
            sides: loops.next().unwrap_or_default(),
            holes: loops.collect(),
            size: (long, short),
            area: Area::square_nanometres(measured.doubled).square_feet() / Decimal::TWO,
            ratio: faults::ratio_of(&measured),
        }
    };
    Layout {
        length: Length::nanometres(long).feet(),
        panels: plan.pieces.iter().map(panel).collect(),
        breaks: ground.faults(&plan.pieces, &plan.lines),
        lines,
    }
}

impl From<&Seam> for Line {
    fn from(seam: &Seam) -> Self {
        Self {
            from: seam.from,
            to: seam.to,
            bulge: seam.bulge(),
        }
    }
}

#[cfg(test)]
mod tests;
