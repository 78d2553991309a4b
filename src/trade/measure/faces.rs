//! The faces of slabs: what is finished in one way, a border apart from what it encloses.

use rust_decimal::Decimal;

use super::SlabQuantities;
use crate::geometry::Side;
use crate::input::job::{EdgeKind, Slab, Takeoff};
use crate::trade::tally::Tally;
use crate::trade::term::{number, of};
use crate::trade::working::Quantity;
use crate::values::{Length, Unit};

/// A part of a slab's surface with one finish.
#[derive(Clone, Debug)]
pub struct Face<'a> {
    /// Number of its slab.
    pub slab: usize,
    /// The slab's key, or that of its border.
    pub name: String,
    pub finish: &'a str,
    pub area: Quantity,
    /// Formed edge that is finished with it.
    pub edge: Quantity,
}

/// A band along the open edges of a slab, and what is left inside it.
#[derive(Clone, Debug)]
pub struct BorderQuantities {
    pub area: Quantity,
    pub inside: Quantity,
    /// Along the edge.
    pub length: Quantity,
}

/// Every face of the job, in the order of its slabs.
pub fn faces<'a>(takeoff: &'a Takeoff, slabs: &[SlabQuantities]) -> Vec<Face<'a>> {
    let mut faces = Vec::new();
    for (i, (slab, measured)) in takeoff.slabs.iter().zip(slabs).enumerate() {
        let face = |name: String, finish: &'a str, area: &Quantity, edge: Quantity| Face {
            slab: i,
            name,
            finish,
            area: area.clone(),
            edge,
        };
        let (Some(wish), Some(border)) = (&slab.border, &measured.border) else {
            let mut formed = of(&measured.edges.straight) + &measured.edges.curved;
            if !measured.edges.deep.value().is_zero() {
                formed = formed + &measured.edges.deep;
            }
            let edge = Quantity::by(
                "straight, curved and deep",
                format!("{} formed edge", slab.key),
                Unit::Foot,
                formed,
            );
            faces.push(face(
                slab.key.clone(),
                &slab.finish.value,
                &measured.area,
                edge,
            ));
            continue;
        };
        // The border has the edge; what it encloses has none.
        let none = Quantity::by(
            "the border has it",
            format!("{} inner edge", slab.key),
            Unit::Foot,
            number(0),
        );
        faces.push(face(
            slab.key.clone(),
            &slab.finish.value,
            &border.inside,
            none,
        ));
        faces.push(face(
            format!("{} border", slab.key),
            &wish.finish.value,
            &border.area,
            border.length.clone(),
        ));
    }
    faces
}

/// Edge times width; square corners that would be counted twice are taken off once, and those
/// that look inward filled. Curves count by their outer length, a little more than they are.
pub(super) fn border(
    slab: &Slab,
    open: Option<&Quantity>,
    area: &Quantity,
    tally: &mut Tally<'_>,
) -> Option<BorderQuantities> {
    let wish = slab.border.as_ref()?;
    let length = open.filter(|open| !open.value().is_zero())?;
    let width = Quantity::feet("border width", &wish.width);
    let along = of(length) * &width;
    let corners = corners(slab);
    let corner = || number(Decimal::from(corners.abs())) * &width * &width;
    let term = match corners {
        0 => along,
        1.. => along - corner(),
        _ => along + corner(),
    };
    let border = tally.by(
        "open edge × width, a square for each corner taken off, or added where it looks inward",
        "border",
        Unit::SquareFoot,
        term,
    );
    let inside = tally.by(
        "area without the border",
        "inside its border",
        Unit::SquareFoot,
        of(area) - &border,
    );
    Some(BorderQuantities {
        area: border,
        inside,
        length: length.clone(),
    })
}

/// Square corners between two open edges: those that look outward less those that look inward.
fn corners(slab: &Slab) -> i64 {
    let sides = slab.outline.sides();
    let next = |i: usize| (i + 1) % sides.len();
    let meet =
        (0..sides.len()).filter(|&i| open_to_its_end(slab, i) && open_from_start(slab, next(i)));
    meet.map(|i| square_turn(&sides[i], &sides[next(i)])).sum()
}

fn open_to_its_end(slab: &Slab, side: usize) -> bool {
    let length = slab.outline.sides()[side].length();
    slab.edges.iter().any(|part| {
        let reaches = part.stretch.is_none_or(|(_, to)| length <= to.feet());
        part.side == side && part.kind == EdgeKind::Open && reaches
    })
}

fn open_from_start(slab: &Slab, side: usize) -> bool {
    slab.edges.iter().any(|part| {
        let reaches = part.stretch.is_none_or(|(from, _)| from == Length::ZERO);
        part.side == side && part.kind == EdgeKind::Open && reaches
    })
}

/// One for a square corner that looks outward, minus one inward, nothing for any other.
fn square_turn(one: &Side, next: &Side) -> i64 {
    let (a, b) = (one.to - one.from, next.to - next.from);
    let wide = |x: i64, y: i64| i128::from(x) * i128::from(y);
    let straight = one.is_straight() && next.is_straight();
    if !straight || wide(a.x, b.x) + wide(a.y, b.y) != 0 {
        return 0;
    }
    if one.from.turn(one.to, next.to) < 0 {
        -1
    } else {
        1
    }
}
