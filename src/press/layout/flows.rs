//! One text in two flows of equal width.

use super::piece::{Piece, end_of};
use super::style::grid;

/// A text in two flows: all pieces at the left column's x.
#[derive(Clone, Debug)]
pub(super) struct Flows {
    pub pieces: Vec<Piece>,
    /// How many stand in the left flow when both fit.
    pub cut: usize,
    /// From the left column to the right one.
    pub across: f32,
}

impl Flows {
    /// Two flows as even as their pieces allow.
    pub fn new(pieces: Vec<Piece>, across: f32) -> Self {
        let mut flows = Self {
            cut: pieces.len(),
            pieces,
            across,
        };
        let even = (1..=flows.pieces.len())
            .filter(|&cut| !flows.pieces[cut - 1].keep_next)
            .min_by(|&a, &b| {
                let heights = (flows.height(a, grid::TOP), flows.height(b, grid::TOP));
                heights.0.total_cmp(&heights.1)
            });
        flows.cut = even.unwrap_or(flows.cut);
        flows
    }

    /// Height when `cut` pieces stand on the left.
    pub fn height(&self, cut: usize, y: f32) -> f32 {
        let (left, right) = self.pieces.split_at(cut);
        end_of(left, y, true).max(end_of(right, y, true)) - y
    }

    /// The two columns.
    pub fn columns(self) -> Vec<Vec<Piece>> {
        let mut left = self.pieces;
        let mut right = left.split_off(self.cut);
        for piece in &mut right {
            piece.shift(self.across);
        }
        vec![left, right]
    }
}
