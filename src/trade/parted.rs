//! A pour in several: its slabs shared out among more days, and the large ones cut at bulkheads.
//!
//! Cuts go straight across the longer way, into pieces as large as each other. A slab that is round, or has openings
//! or boxes, is reckoned as a rectangle of its area, open all round: then so is the job as it was, for a fair comparison.

use std::sync::Arc;

use rust_decimal::Decimal;

use super::crew::Crew;
use super::cut::cut;
use super::measure::SlabQuantities;
use super::working::Quantity;
use crate::geometry::{Outline, Point};
use crate::input::business::DayCount;
use crate::input::job::{EdgeKind, EdgePart, Meets, Placement, Slab, Takeoff};
use crate::input::phrases::SizePhrase;
use crate::reading::At;
use crate::values::{Amount, Day, Length, Unit};

/// A job with one pour in several.
#[derive(Clone, Debug)]
pub struct Parted {
    /// The job as it was, with what was reckoned as a rectangle reckoned so too.
    pub before: Takeoff,
    pub takeoff: Takeoff,
    pub has_cuts: bool,
    /// Whether a slab was reckoned as a rectangle of its area.
    pub is_about: bool,
}

/// A slab or a piece of one, and its yards.
struct Piece {
    of: usize,
    slab: Slab,
    yards: Decimal,
}

/// The slabs of a pour on `into` days; where `cutting`, each of them in as many pieces as they need to be even.
///
/// `days` are those of the pours after the first. Where days are counted in one sum the crew comes once
/// more for each; by stage each pour is a day by itself.
pub fn parted(
    takeoff: &Takeoff,
    found: &[SlabQuantities],
    crew: &Crew,
    (pour, days): (usize, &[Day]),
    (cutting, count): (bool, DayCount),
) -> Option<Parted> {
    let into = days.len() + 1;
    let members = || {
        let slabs = takeoff.slabs.iter().zip(found).enumerate();
        slabs.filter(|(_, (slab, _))| slab.placement == pour)
    };
    let yards: Decimal = members()
        .map(|(_, (_, found))| found.concrete.value())
        .sum();
    let even = yards / Decimal::from(into);
    let (mut pieces, mut before, mut is_about) = (Vec::new(), takeoff.clone(), false);
    for (i, (slab, found)) in members() {
        let own = found.concrete.value();
        // A tenth over an even share is let be.
        let many = (1..into).find(|many| own <= even * Decimal::from(*many) * Decimal::new(11, 1));
        let many = match many.unwrap_or(into) {
            many if cutting && 1 < many && slab.sections.steps.is_none() => many,
            _ => {
                let slab = Slab::clone(slab);
                pieces.push(Piece {
                    of: i,
                    slab,
                    yards: own,
                });
                continue;
            }
        };
        let parts = if let Some(parts) = cut(slab, many) {
            parts
        } else {
            is_about = true;
            before.slabs[i] = Arc::new(as_rectangle(slab, found.area.value()));
            cut(&before.slabs[i], many)?
        };
        let yards = own / Decimal::from(many);
        let of = i;
        pieces.extend(parts.into_iter().map(|slab| Piece { of, slab, yards }));
    }
    if pieces.len() < into {
        return None;
    }
    let has_cuts = members().count() < pieces.len();
    let mut other = before.clone();
    other.otherwise.clear();
    dug_alike(&mut other, takeoff, &pieces);
    share_out(&mut pieces, takeoff.placements.len(), pour, into);
    bulkheads(&mut pieces);
    let own = &takeoff.placements[pour];
    other.placements.extend(days.iter().map(|day| Placement {
        day: own.day.as_ref().map(|own| At::new(*day, own.place)),
        ..own.clone()
    }));
    for Piece { of, slab, .. } in pieces {
        // The first of its pieces keeps its place, so that names of parts stay those they were.
        if slab.key == takeoff.slabs[of].key {
            other.slabs[of] = Arc::new(slab);
        } else {
            other.slabs.push(Arc::new(slab));
        }
    }
    if count == DayCount::ByTheJob || other.head.trips.is_some() {
        let back = crew.returns.as_ref().map_or(Decimal::ZERO, Quantity::value);
        let trips = crew.trips.value() - back + Decimal::from(days.len());
        let trips = Amount::new(trips, Unit::Trip);
        other.head.trips = Some(At::new(trips, takeoff.place));
    }
    Some(Parted {
        before,
        takeoff: other,
        has_cuts,
        is_about,
    })
}

/// What is dug under a slab is dug under each of its pieces.
fn dug_alike(other: &mut Takeoff, takeoff: &Takeoff, pieces: &[Piece]) {
    for removal in &mut other.head.removals {
        let named = removal.under.clone();
        let pieces = pieces.iter().flat_map(|piece| {
            let whole = &takeoff.slabs[piece.of].key;
            let is_more = piece.slab.key != *whole;
            let names = named.iter().filter(move |name| name.value == *whole);
            let names = names.filter(move |_| is_more);
            names.map(|name| At::new(piece.slab.key.clone(), name.place))
        });
        removal.under.extend(pieces);
    }
}

/// A rectangle of its area, as long as it is the longer way.
fn as_rectangle(slab: &Slab, area: Decimal) -> Slab {
    let (low, high) = slab.outline.bounds();
    let (x, y) = (
        Length::nanometres(high.x - low.x),
        Length::nanometres(high.y - low.y),
    );
    let across = |long: Length| Length::of_feet(area / long.feet());
    let (x, y) = if y <= x {
        (x, across(x))
    } else {
        (across(y), y)
    };
    let open = |side| EdgePart {
        side,
        kind: EdgeKind::Open,
        stretch: None,
        meets: Meets::Nothing,
    };
    Slab {
        edges: (0..4).map(open).collect(),
        openings: Vec::new(),
        boxes: Vec::new(),
        drawn: Vec::new(),
        matched: Vec::new(),
        levels: None,
        width: None,
        ..rectangle(slab, low, (x, y))
    }
}

/// The slab as a rectangle with its south-west corner here.
fn rectangle(slab: &Slab, corner: Point, (east_west, north_south): (Length, Length)) -> Slab {
    Slab {
        outline: Outline::rectangle(east_west, north_south).moved(corner),
        size: Some(At::new(
            SizePhrase::Rectangle {
                east_west,
                north_south,
            },
            slab.outline_place,
        )),
        ..slab.clone()
    }
}

/// The largest first, each on the day that has least; the first day stays that of the pour.
fn share_out(pieces: &mut [Piece], placements: usize, pour: usize, into: usize) {
    let mut order: Vec<usize> = (0..pieces.len()).collect();
    order.sort_by(|a, b| pieces[*b].yards.cmp(&pieces[*a].yards));
    let mut days = vec![Decimal::ZERO; into];
    for i in order {
        let least = (0..into).min_by_key(|day| days[*day]).unwrap_or(0);
        days[least] += pieces[i].yards;
        pieces[i].slab.placement = if least == 0 {
            pour
        } else {
            placements + least - 1
        };
    }
}

/// Where two pieces of a slab meet: a form for the first of two pours, a control joint within one.
fn bulkheads(pieces: &mut [Piece]) {
    for i in 1..pieces.len() {
        let (one, other) = pieces.split_at_mut(i);
        let (Some(one), Some(other)) = (one.last_mut(), other.first_mut()) else {
            continue;
        };
        if one.of != other.of {
            continue;
        }
        let (a, b) = (&mut one.slab, &mut other.slab);
        let Some((end, start)) = shared(a, b) else {
            continue;
        };
        let depth = a
            .thickness
            .value
            .thick
            .map_or(a.thickness.value.thin, |(thick, _)| thick);
        let form = (EdgeKind::Bulkhead, Meets::Depth(depth));
        let none = (EdgeKind::Joined, Meets::Nothing);
        let (mine, theirs) = match a.placement.cmp(&b.placement) {
            std::cmp::Ordering::Less => (form, none),
            std::cmp::Ordering::Greater => (none, form),
            std::cmp::Ordering::Equal if a.joints.is_some() => {
                ((EdgeKind::Joined, Meets::ControlJoint), none)
            }
            std::cmp::Ordering::Equal => (none, none),
        };
        for (slab, side, (kind, meets)) in [(a, end, mine), (b, start, theirs)] {
            let parts = slab.edges.iter_mut();
            for part in parts.filter(|part| part.side == side) {
                (part.kind, part.meets) = (kind, meets);
            }
        }
    }
}

/// The side that two pieces have in common, by its number in each.
fn shared(one: &Slab, other: &Slab) -> Option<(usize, usize)> {
    one.outline
        .sides()
        .iter()
        .enumerate()
        .find_map(|(i, mine)| {
            let mut sides = other.outline.sides().iter();
            let its = sides.position(|its| its.from == mine.to && its.to == mine.from)?;
            Some((i, its))
        })
}
