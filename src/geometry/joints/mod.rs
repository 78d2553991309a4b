//! Contraction joints: where a finisher would cut a slab.

mod carve;
mod curve;
mod cut;
mod cuts;
mod drawn;
mod grid;
mod ground;
mod layout;
mod measure;
mod plan;
mod relief;
mod ribbon;
mod score;
mod seam;
mod shape;
mod sheet;
mod strip;
mod way;

pub use layout::{Asked, Break, Fault, Layout, Line, Meet, Panel};

use ground::Ground;
use plan::Plan;
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
    laid_out(&ground, best(&ground))
}

/// A slab of even width is cut across; where that breaks a limit, and of any other, lines run through.
fn best(ground: &Ground<'_>) -> Plan {
    let ribbon = ribbon::best(ground);
    match ribbon {
        Some(plan) if plan.score.is_sound() => plan,
        Some(plan) => {
            let other = relief::best(ground);
            if other.score < plan.score {
                other
            } else {
                plan
            }
        }
        None => relief::best(ground),
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
            ratio: score::ratio_of(&measured),
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
