//! Blocks to pieces: every line shaped, every mark with its owner in the structure.

mod fields;
mod figure;
mod heading;
mod table;
mod terms;
mod ticks;
mod words;

pub(super) use words::SetLines;

use super::block::{Block, Column, Rule, Section};
use super::error::LayoutError;
use super::fill::Settled;
use super::piece::{Body, Bond, Flows, Piece, Version};
use super::style::{Look, grid};
use crate::press::drawing::{Drawing, Path, Stroke, point};
use crate::press::page::{Mark, Node, NodeId, StructureRole};
use std::collections::BTreeMap;

pub(super) struct Composer<'a> {
    pub look: &'a Look,
    pub figures: &'a BTreeMap<String, Drawing>,
    pub settled: &'a Settled,
    pub nodes: Vec<Node>,
    pub known: &'a SetLines,
}

/// Where blocks stand: under which node, from where, how wide.
#[derive(Clone, Copy)]
pub(super) struct Place {
    pub parent: NodeId,
    pub x: f32,
    pub width: f32,
}

impl Place {
    fn under(self, parent: NodeId) -> Self {
        Self { parent, ..self }
    }
}

/// Half a line.
const HALF: f32 = grid::LINE / 2.0;

impl Composer<'_> {
    pub fn node(&mut self, role: StructureRole, parent: Option<NodeId>) -> NodeId {
        self.nodes.push(Node {
            role,
            parent,
            alternative: None,
            bounds: None,
        });
        NodeId(self.nodes.len() - 1)
    }

    pub fn blocks(&mut self, place: Place, blocks: &[Block]) -> Result<Vec<Piece>, LayoutError> {
        let mut pieces = Vec::new();
        let mut names = Vec::new();
        for block in blocks {
            if let Block::Anchor(name) = block {
                names.push(name.clone());
                continue;
            }
            let mut built = self.block(place, block)?;
            if let Some(first) = built.first_mut() {
                names = first.named(names);
            }
            pieces.extend(built);
        }
        if !names.is_empty() {
            let mut end = Piece::solid(0.0, Vec::new());
            end.named(names);
            pieces.push(end);
        }
        Ok(pieces)
    }

    fn block(&mut self, place: Place, block: &Block) -> Result<Vec<Piece>, LayoutError> {
        match block {
            Block::Heading {
                level,
                style,
                gap,
                text,
            } => self.heading(place, *level, *style, *gap, text),
            Block::Paragraph {
                style,
                ink,
                gap,
                keep_next,
                text,
            } => {
                let mut pieces = self.paragraph(place, *style, *ink, *gap, text)?;
                if let Some(last) = pieces.last_mut() {
                    last.keep_next |= *keep_next;
                }
                Ok(pieces)
            }
            Block::List(rows) => self.list(place, rows),
            Block::Terms(terms) => self.terms(place, terms),
            Block::Table(table) => self.table(place, table),
            Block::Columns(columns) => self.columns(place, columns),
            Block::Flows(blocks) => self.flows(place, blocks),
            Block::Section(section) => self.section(place, section),
            Block::Figure { name } => self.figure(place, name),
            Block::Ticks(groups) => self.ticks(place, groups),
            Block::Fields(fields) => self.fields(place, fields),
            Block::Space(half_lines) => Ok(vec![
                Piece::solid(0.0, Vec::new()).after(f32::from(*half_lines) * HALF),
            ]),
            Block::Rule(kind) => Ok(self.rule(place, *kind).into_iter().collect()),
            Block::Keep(blocks) => {
                let inside = self.blocks(place, blocks)?;
                Ok(whole(inside, Bond::Firm))
            }
            Block::NewPage => Ok(vec![Piece::new(Body::NewPage)]),
            Block::Fit { name, versions } => {
                let mut built = Vec::new();
                for version in versions {
                    let from = self.nodes.len();
                    let pieces = self.blocks(place, version)?;
                    built.push(Version {
                        nodes: from..self.nodes.len(),
                        pieces,
                    });
                }
                Ok(vec![Piece::new(Body::Fit {
                    name: name.clone(),
                    versions: built,
                })])
            }
            Block::When {
                fit,
                version,
                blocks,
            } => {
                if self.settled.fits.get(fit) == Some(version) {
                    self.blocks(place, blocks)
                } else {
                    Ok(Vec::new())
                }
            }
            // Names go to the piece that follows, see `blocks`.
            Block::Anchor(_) => Ok(Vec::new()),
        }
    }

    fn columns(&mut self, place: Place, columns: &[Column]) -> Result<Vec<Piece>, LayoutError> {
        let mut built = Vec::new();
        let mut x = place.x;
        for column in columns {
            let width = grid::span(column.span);
            let inside = Place { x, width, ..place };
            built.push(self.blocks(inside, &column.blocks)?);
            x += width + grid::GUTTER;
        }
        // The white above the columns is what their first pieces ask for at most.
        let firsts = || built.iter().filter_map(|column| column.first());
        let before = firsts().map(|piece| piece.before).fold(0.0, f32::max);
        let snapped = firsts().any(|piece| piece.snapped);
        let mut piece = Piece::new(Body::Columns(built)).after(before);
        piece.snapped = snapped;
        Ok(vec![piece])
    }

    fn flows(&mut self, place: Place, blocks: &[Block]) -> Result<Vec<Piece>, LayoutError> {
        let width = (place.width - grid::GUTTER) / 2.0;
        let pieces = self.blocks(Place { width, ..place }, blocks)?;
        let Some(before) = pieces.first().map(|piece| piece.before) else {
            return Ok(Vec::new());
        };
        let flows = Flows::new(pieces, width + grid::GUTTER);
        Ok(vec![Piece::new(Body::Flows(flows)).after(before)])
    }

    fn section(&mut self, place: Place, section: &Section) -> Result<Vec<Piece>, LayoutError> {
        let node = self.node(StructureRole::Section, Some(place.parent));
        let mut pieces: Vec<Piece> = self.rule(place, section.rule).into_iter().collect();
        let inside = self.blocks(place.under(node), &section.blocks)?;
        pieces.extend(heading::beside_title(inside));
        Ok(whole(pieces, Bond::Loose)
            .into_iter()
            .map(|mut piece| {
                piece.snapped = true;
                piece
            })
            .collect())
    }

    fn rule(&self, place: Place, kind: Rule) -> Option<Piece> {
        let (width, dash): (f32, &[f32]) = match kind {
            Rule::None => return None,
            Rule::Thin => (0.75, &[]),
            Rule::Heavy => (2.0, &[]),
            Rule::Dashed => (0.75, &[4.0, 3.0]),
        };
        let from = point(place.x, HALF);
        let to = point(place.x + place.width, HALF);
        let stroke = Stroke::dashed(self.look.ink, width, dash);
        let line = Mark::layout(Path::open(&[from, to], stroke));
        Some(Piece::solid(grid::LINE, vec![line]).after(HALF).kept())
    }
}

/// Pieces that move as one; their white above is the first one's.
fn whole(pieces: Vec<Piece>, bond: Bond) -> Vec<Piece> {
    let Some(first) = pieces.first() else {
        return Vec::new();
    };
    let (before, snapped) = (first.before, first.snapped);
    let mut piece = Piece::new(Body::Whole(pieces, bond)).after(before);
    piece.snapped = snapped;
    vec![piece]
}
