//! Boxes on paper: where something stands, and whether it meets something else.

use super::drawing::{PagePoint, point};

/// A box in points, y downward.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Frame {
    pub left: f32,
    pub top: f32,
    pub right: f32,
    pub bottom: f32,
}

impl Frame {
    pub const fn new(left: f32, top: f32, right: f32, bottom: f32) -> Self {
        Self {
            left,
            top,
            right,
            bottom,
        }
    }

    pub fn at(left: f32, top: f32, width: f32, height: f32) -> Self {
        Self::new(left, top, left + width, top + height)
    }

    /// Around two points, in any order.
    pub fn around(a: PagePoint, b: PagePoint) -> Self {
        Self::new(a.x.min(b.x), a.y.min(b.y), a.x.max(b.x), a.y.max(b.y))
    }

    /// Around all points; of none it is nothing at all.
    pub fn around_all(points: impl IntoIterator<Item = PagePoint>) -> Self {
        let frames = points.into_iter().map(|p| Self::around(p, p));
        frames
            .reduce(|a, b| a.union(&b))
            .unwrap_or(Self::new(0.0, 0.0, 0.0, 0.0))
    }

    pub fn width(&self) -> f32 {
        self.right - self.left
    }

    pub fn height(&self) -> f32 {
        self.bottom - self.top
    }

    pub fn middle(&self) -> PagePoint {
        point(
            f32::midpoint(self.left, self.right),
            f32::midpoint(self.top, self.bottom),
        )
    }

    /// From the top left round to the bottom left.
    pub fn corners(&self) -> [PagePoint; 4] {
        [
            point(self.left, self.top),
            point(self.right, self.top),
            point(self.right, self.bottom),
            point(self.left, self.bottom),
        ]
    }

    pub fn grown(&self, by: f32) -> Self {
        Self::new(
            self.left - by,
            self.top - by,
            self.right + by,
            self.bottom + by,
        )
    }

    pub fn moved(&self, x: f32, y: f32) -> Self {
        Self::at(self.left + x, self.top + y, self.width(), self.height())
    }

    pub fn union(&self, other: &Self) -> Self {
        Self::new(
            self.left.min(other.left),
            self.top.min(other.top),
            self.right.max(other.right),
            self.bottom.max(other.bottom),
        )
    }

    /// Touching is not overlapping.
    pub fn overlaps(&self, other: &Self) -> bool {
        self.left < other.right
            && other.left < self.right
            && self.top < other.bottom
            && other.top < self.bottom
    }

    pub fn overlaps_any(&self, others: &[Self]) -> bool {
        others.iter().any(|other| self.overlaps(other))
    }

    /// How far apart two boxes are along x or y, whichever is more; zero when they overlap.
    pub fn gap(&self, other: &Self) -> f32 {
        let x = (other.left - self.right).max(self.left - other.right);
        let y = (other.top - self.bottom).max(self.top - other.bottom);
        x.max(y).max(0.0)
    }

    pub fn contains(&self, other: &Self) -> bool {
        self.left <= other.left
            && other.right <= self.right
            && self.top <= other.top
            && other.bottom <= self.bottom
    }
}
