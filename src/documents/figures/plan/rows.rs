//! The four sides of a slab along which dimensions run.

use super::ground;
use super::scale::Scale;
use super::view::SlabView;
use crate::geometry::{Compass, Side};
use crate::press::drawing::{PagePoint, point};
use crate::press::frame::Frame;

/// One end of a dimension: where along the row, and where the slab ends there.
#[derive(Clone, Copy)]
pub(super) struct RowEnd {
    /// Along the row, in nanometres on site.
    pub site: i64,
    pub along: f32,
    /// How far out the corner lies.
    pub out: f32,
}

/// Rows on one side of a slab. Along the row is right (south, north) or down (east, west); out is away from the slab.
#[derive(Clone, Copy, PartialEq)]
pub(super) struct DimensionRow {
    pub facing: Compass,
}

impl DimensionRow {
    pub fn is_level(self) -> bool {
        matches!(self.facing, Compass::South | Compass::North)
    }

    pub fn place(self, along: f32, out: f32) -> PagePoint {
        match self.facing {
            Compass::South => point(along, out),
            Compass::North => point(along, -out),
            Compass::East => point(out, along),
            Compass::West => point(-out, along),
        }
    }

    fn stop(self, site: crate::geometry::Point, scale: Scale) -> RowEnd {
        let p = scale.place(site);
        let (site, along, out) = match self.facing {
            Compass::South => (site.x, p.x, p.y),
            Compass::North => (site.x, p.x, -p.y),
            Compass::East => (-site.y, p.y, p.x),
            Compass::West => (-site.y, p.y, -p.x),
        };
        RowEnd { site, along, out }
    }

    /// Whether the slab's side can be seen from this row.
    fn sees(self, side: &Side) -> bool {
        let way = side.to - side.from;
        match self.facing {
            Compass::South => 0 < way.x,
            Compass::North => way.x < 0,
            Compass::East => 0 < way.y,
            Compass::West => way.y < 0,
        }
    }

    /// Corners seen from this row, in order along it, each once, the outermost of those in line.
    pub fn stops(self, slab: &SlabView, scale: Scale) -> Vec<RowEnd> {
        // A sector is measured whole: its radii say the rest.
        if slab.outline.is_sector().is_some() {
            return self.ends(slab, scale);
        }
        let seen = slab.outline.sides().iter().filter(|side| self.sees(side));
        let mut stops: Vec<RowEnd> = seen
            .flat_map(|side| [side.from, side.to])
            .map(|p| self.stop(p, scale))
            .collect();
        stops.sort_by(|a, b| a.site.cmp(&b.site).then(b.out.total_cmp(&a.out)));
        stops.dedup_by_key(|stop| stop.site);
        stops
    }

    /// The two ends of the whole slab along this row.
    pub fn ends(self, slab: &SlabView, scale: Scale) -> Vec<RowEnd> {
        let corners = slab.outline.sides().iter().map(|side| side.from);
        let (low, high) = slab.outline.bounds();
        let mut stops: Vec<RowEnd> = corners.map(|p| self.stop(p, scale)).collect();
        if slab.outline.is_circle().is_some() {
            // The extension lines of a circle begin where it is widest.
            stops = [low, high].map(|p| self.stop(p, scale)).to_vec();
            let middle = f32::midpoint(stops[0].out, stops[1].out);
            for stop in &mut stops {
                stop.out = middle;
            }
        }
        if slab.outline.is_sector().is_some() {
            stops = [low, high].map(|p| self.stop(p, scale)).to_vec();
            for stop in &mut stops {
                stop.out = self.base(slab, scale);
            }
        }
        stops.sort_by(|a, b| a.site.cmp(&b.site).then(b.out.total_cmp(&a.out)));
        let first = stops.first().copied();
        let furthest = stops.last().map(|s| s.site);
        let last = stops.iter().find(|s| Some(s.site) == furthest).copied();
        first.into_iter().chain(last).collect()
    }

    /// The outermost reach of the slab toward this row.
    pub fn base(self, slab: &SlabView, scale: Scale) -> f32 {
        let frame = ground::extent(&slab.outline, scale);
        match self.facing {
            Compass::South => frame.bottom,
            Compass::North => -frame.top,
            Compass::East => frame.right,
            Compass::West => -frame.left,
        }
    }

    /// The same ends seen from this row, across the slab from where their corners are.
    pub fn across(stops: &[RowEnd], base: f32) -> Vec<RowEnd> {
        stops
            .iter()
            .map(|stop| RowEnd { out: base, ..*stop })
            .collect()
    }

    /// The box of a line between two stops, `thick` to either side of it; it may touch what stands at its ends.
    pub fn bar(self, pair: &[RowEnd], out: f32, thick: f32) -> Frame {
        let [from, to] = [pair[0].along + 0.7, pair[1].along - 0.7];
        Frame::around(self.place(from, out - thick), self.place(to, out + thick))
    }
}
