//! One text in two flows of equal width.

use super::piece::{Flows, Piece};
use super::style::grid;

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
