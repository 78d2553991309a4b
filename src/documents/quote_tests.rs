//! The quote's pages: complete, inside the margins, nothing on top of anything else.

use super::quote_document;
use super::views::quote::QuoteView;
use crate::press::drawing::{Drawing, Path, Point, Rgb, Shape, Size, Step, Stroke};
use crate::press::page::Document;
use std::collections::BTreeMap;

/// Frames in place of real figures.
fn figures() -> BTreeMap<String, Drawing> {
    let frame = |height: f32, alternative: &str| {
        let corner = |x, y| Point { x, y };
        Drawing {
            size: Size {
                width: 516.0,
                height,
            },
            shapes: vec![Shape::Path(Path {
                steps: vec![
                    Step::Move(corner(0.5, 0.5)),
                    Step::Line(corner(515.5, 0.5)),
                    Step::Line(corner(515.5, height - 0.5)),
                    Step::Line(corner(0.5, height - 0.5)),
                    Step::Close,
                ],
                stroke: Some(Stroke {
                    color: Rgb(0xa9, 0xa3, 0x9a),
                    width: 0.4,
                    dash: Vec::new(),
                }),
                fill: None,
            })],
            alternative: alternative.to_owned(),
        }
    };
    BTreeMap::from([
        ("plan".to_owned(), frame(252.0, "Plan of the patio")),
        ("cure".to_owned(), frame(288.0, "Strength by day")),
    ])
}

fn pages(view: &QuoteView) -> Document {
    quote_document(view, &figures()).unwrap_or_else(|error| panic!("{error}"))
}

#[test]
fn the_sample_is_three_pages() {
    assert_eq!(pages(&QuoteView::sample()).pages.len(), 3);
}

#[test]
fn the_sample_becomes_a_pdf() {
    let bytes = crate::press::pdf::write(&pages(&QuoteView::sample()));
    assert!(bytes.starts_with(b"%PDF"));
}
