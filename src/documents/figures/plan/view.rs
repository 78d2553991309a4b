//! What a plan shows: finished words and outlines in site coordinates.

use crate::geometry::{Direction, Outline, Point};
use crate::press::drawing::Rgb;
use crate::values::Length;

use super::kinds::{Crossed, EdgeMark};
use super::words::PlanWords;

/// Everything the plan draws.
#[derive(Clone, Debug)]
pub struct PlanView {
    pub slabs: Vec<SlabView>,
    /// Said after "new concrete" in the key, for example `4 in thick`; may be empty.
    pub thickness: String,
    /// Said after "water runs this way" in the key, for example `¼ in per ft`; may be empty.
    pub slope: String,
    /// The slabs stand side by side because nobody said where they lie.
    pub unplaced: bool,
    /// Strip and arrows; the business's own colour.
    pub accent: Rgb,
    pub words: &'static PlanWords,
}

/// One slab, or a step on one.
#[derive(Clone, Debug)]
pub struct SlabView {
    pub name: String,
    /// Under the name, for example `432 sq ft`.
    pub note: String,
    /// In site coordinates.
    pub outline: Outline,
    /// Drawn on top of the slabs, in a darker fill, without dimensions.
    pub is_step: bool,
    pub boxes: Vec<BoxView>,
    /// Lines between the treads of a flight.
    pub treads: Vec<(Point, Point)>,
    /// Contraction joints, each by the places along it.
    pub joints: Vec<Vec<Point>>,
    /// They are cut with a saw, not with a groover.
    pub is_sawn: bool,
    /// Sides, or parts of them, that are not open.
    pub edges: Vec<EdgeView>,
    /// Which way water runs.
    pub fall: Option<Direction>,
    /// How high its corners lie, for example `-3 in`.
    pub levels: Vec<(Point, String)>,
    pub panels: Vec<PanelView>,
    /// What is left open in it; its outline has a hole for each.
    pub openings: Vec<OpeningView>,
}

/// Something left open in a slab.
#[derive(Clone, Debug)]
pub struct OpeningView {
    pub name: String,
    /// For example `3 × 3 ft`.
    pub size: String,
    /// In site coordinates.
    pub outline: Outline,
    /// What stands in it: open is a form, anything else a strip around it.
    pub kind: EdgeMark,
}

impl OpeningView {
    /// `tree well, 3 × 3 ft`.
    pub fn said(&self) -> String {
        format!("{}, {}", self.name, self.size)
    }
}

/// A box or a cover set in a slab.
#[derive(Clone, Debug)]
pub struct BoxView {
    /// On the plan; boxes of one name share a number.
    pub number: usize,
    pub name: String,
    /// In site coordinates.
    pub outline: Outline,
}

/// A part of a side, measured along it from where it begins, counter-clockwise.
///
/// Where two slabs are joined or meet at a bulkhead, both say so, or the other's outline is drawn solid.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct EdgeView {
    /// Index in `outline.sides()`.
    pub side: usize,
    pub from: Length,
    pub to: Length,
    pub kind: EdgeMark,
    pub crossed: Crossed,
}

/// One panel between joints.
#[derive(Clone, Debug)]
pub struct PanelView {
    /// Around it; curves by places along them.
    pub corners: Vec<Point>,
    /// For example `8 × 6 ft`; may be empty.
    pub size: String,
}
