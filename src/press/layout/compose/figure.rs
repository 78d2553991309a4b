//! Figures: shapes as drawn, their words shaped, one structure node with bounds.

use super::super::error::LayoutError;
use super::super::piece::{Body, Piece, Solid};
use super::super::style::grid;
use super::{Composer, HALF, Place};
use crate::press::drawing::{Anchor, PagePoint, Path, Rgb, Shape, Turn, Words, point};
use crate::press::frame::Frame;
use crate::press::page::{Ink, Mark, Owner, Run, StructureRole};
use crate::press::text::{shape, width};

impl Composer<'_> {
    pub(super) fn figure(&mut self, place: Place, name: &str) -> Result<Vec<Piece>, LayoutError> {
        let mut solid = Solid {
            what: name.to_owned(),
            ..Solid::default()
        };
        self.draw(&mut solid, place, 0.0, name)?;
        let mut piece = Piece::new(Body::Solid(solid)).after(HALF);
        piece.snapped = true;
        Ok(vec![piece])
    }

    /// Draws a figure into something solid, which grows to hold it; answers the figure's foot.
    pub(super) fn draw(
        &mut self,
        solid: &mut Solid,
        place: Place,
        top: f32,
        name: &str,
    ) -> Result<f32, LayoutError> {
        let drawing = self
            .figures
            .get(name)
            .ok_or_else(|| LayoutError::UnknownFigure {
                name: name.to_owned(),
            })?;
        if place.width + 0.5 < drawing.size.width {
            return Err(LayoutError::TooLarge {
                what: name.to_owned(),
            });
        }
        let node = self.node(StructureRole::Figure, Some(place.parent));
        self.nodes[node.0].alternative = Some(drawing.alternative.clone());
        let mut inks = Vec::new();
        for shape in &drawing.shapes {
            inks.extend(shape_inks(shape)?);
        }
        let by = point(place.x, top);
        solid.marks.extend(inks.into_iter().map(|mut ink| {
            ink.shift(by);
            Mark {
                owner: Owner::Node(node),
                ink,
            }
        }));
        let (right, foot) = (place.x + drawing.size.width, top + drawing.size.height);
        solid.figures.push((node, [place.x, top, right, foot]));
        solid.height = solid.height.max(foot);
        debug_assert!(
            drawing.size.height <= grid::PAGE.height,
            "a figure is not taller than a page"
        );
        Ok(foot)
    }
}

fn shape_inks(shape: &Shape) -> Result<Vec<Ink>, LayoutError> {
    Ok(match shape {
        Shape::Path(path) => vec![Ink::Path(path.clone())],
        Shape::Words(words) => words_inks(words)?,
        Shape::Picture(picture) => vec![Ink::Picture(picture.clone())],
    })
}

/// The words, over a white background if they ask for one.
fn words_inks(words: &Words) -> Result<Vec<Ink>, LayoutError> {
    let glyphs = shape(words.face, &words.text, 0)?;
    let length = width(&glyphs, words.size);
    let back = match words.anchor {
        Anchor::Start => 0.0,
        Anchor::Middle => length / 2.0,
        Anchor::End => length,
    };
    let upward = words.turn == Turn::Up;
    let at = if upward {
        point(words.at.x, words.at.y + back)
    } else {
        point(words.at.x - back, words.at.y)
    };
    let mut inks = Vec::new();
    if words.halo {
        inks.push(halo(at, length, words.size, upward));
    }
    inks.push(Ink::Glyphs(Run {
        face: words.face,
        size: words.size,
        color: words.color,
        at,
        upward,
        glyphs,
    }));
    Ok(inks)
}

/// A white box from descender to ascender, 2 points longer at either end.
fn halo(at: PagePoint, length: f32, size: f32, upward: bool) -> Ink {
    let (above, below, beyond) = (size * 0.78, size * 0.22, 2.0);
    let long = length + 2.0 * beyond;
    let place = if upward {
        Frame::at(-above, -length - beyond, above + below, long)
    } else {
        Frame::at(-beyond, -above, long, above + below)
    };
    let mut path = Path::closed(&place.corners(), None, Some(Rgb::WHITE));
    path.shift(at.x, at.y);
    Ink::Path(path)
}
