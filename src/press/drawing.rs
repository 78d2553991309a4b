//! Figures before they stand on a page: lines and words in points from the figure's top left.
//!
//! Lines are printpdf's own, but with y downward; they are turned round once, where they
//! become bytes (`pdf::content`).

pub use printpdf::Line;
use printpdf::{LinePoint, Point as Spot, Pt};

/// A colour in red, green and blue, 0 to 255 each; the page is RGB only.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Rgb(pub u8, pub u8, pub u8);

impl Rgb {
    pub const WHITE: Self = Self(255, 255, 255);
    /// What documents are written in.
    pub const INK: Self = Self(0x1f, 0x1d, 0x1a);
    /// Notes, and whatever stands behind the first voice.
    pub const SOFT: Self = Self(0x5b, 0x57, 0x51);
    /// For lines only, never for text.
    pub const RULE: Self = Self(0xa9, 0xa3, 0x9a);
    /// The accent of an owner who chose none.
    pub const BLUE: Self = Self(0x2b, 0x4a, 0x8b);
}

#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PagePoint {
    pub x: f32,
    pub y: f32,
}

pub const fn point(x: f32, y: f32) -> PagePoint {
    PagePoint { x, y }
}

impl PagePoint {
    pub fn moved(self, x: f32, y: f32) -> Self {
        point(self.x + x, self.y + y)
    }
}

#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Size {
    pub width: f32,
    pub height: f32,
}

impl Size {
    pub const fn new(width: f32, height: f32) -> Self {
        Self { width, height }
    }
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Face {
    Regular,
    Bold,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    Start,
    Middle,
    End,
}

#[derive(Clone, Debug, PartialEq)]
pub struct Stroke {
    pub color: Rgb,
    pub width: f32,
    /// Lengths on, off, on, off; empty is a solid line.
    pub dash: Vec<f32>,
}

impl Stroke {
    pub fn solid(color: Rgb, width: f32) -> Self {
        Self::dashed(color, width, &[])
    }

    pub fn dashed(color: Rgb, width: f32, dash: &[f32]) -> Self {
        Self {
            color,
            width,
            dash: dash.to_vec(),
        }
    }
}

/// Lines drawn with one stroke, filled with one colour, or both.
///
/// A line inside a closed line is a hole in what is filled, whichever way round either runs.
/// Nothing is compared by its lines: printpdf's zero is not equal to itself.
#[derive(Clone, Debug)]
pub struct Path {
    pub lines: Vec<Line>,
    pub stroke: Option<Stroke>,
    pub fill: Option<Rgb>,
    /// Seen only inside these (hatching); none is everywhere.
    pub within: Vec<Line>,
}

impl Path {
    pub fn new(lines: Vec<Line>, stroke: Option<Stroke>, fill: Option<Rgb>) -> Self {
        Self {
            lines,
            stroke,
            fill,
            within: Vec::new(),
        }
    }

    /// A line through points, left open.
    pub fn open(points: &[PagePoint], stroke: Stroke) -> Self {
        Self::new(vec![line(points, false)], Some(stroke), None)
    }

    /// A closed line through points.
    pub fn closed(points: &[PagePoint], stroke: Option<Stroke>, fill: Option<Rgb>) -> Self {
        Self::new(vec![line(points, true)], stroke, fill)
    }

    /// All points of its lines, control points too.
    #[cfg(test)]
    pub fn points(&self) -> impl Iterator<Item = PagePoint> {
        let all = self.lines.iter().flat_map(|line| &line.points);
        all.map(|corner| point(corner.p.x.0, corner.p.y.0))
    }

    pub fn shift(&mut self, x: f32, y: f32) {
        let lines = self.lines.iter_mut().chain(&mut self.within);
        for corner in lines.flat_map(|line| &mut line.points) {
            corner.p.x.0 += x;
            corner.p.y.0 += y;
        }
    }
}

/// A line through points.
pub fn line(points: &[PagePoint], is_closed: bool) -> Line {
    Line {
        points: points.iter().map(|at| corner(*at, false)).collect(),
        is_closed,
    }
}

/// A line of cubic curves: two control points and an end for each.
pub fn curve(start: PagePoint, curves: &[[PagePoint; 3]], is_closed: bool) -> Line {
    let bent = |[first, second, end]: &[PagePoint; 3]| {
        [(*first, true), (*second, true), (*end, false)].map(|(at, bezier)| corner(at, bezier))
    };
    let points = [corner(start, false)].into_iter();
    Line {
        points: points.chain(curves.iter().flat_map(bent)).collect(),
        is_closed,
    }
}

fn corner(at: PagePoint, bezier: bool) -> LinePoint {
    LinePoint {
        p: Spot {
            x: Pt(at.x),
            y: Pt(at.y),
        },
        bezier,
    }
}

/// One line of words in a figure; `at` is on the baseline.
#[derive(Clone, Debug, PartialEq)]
pub struct Words {
    pub text: String,
    pub at: PagePoint,
    pub anchor: Anchor,
    pub face: Face,
    pub size: f32,
    pub color: Rgb,
    /// A white background behind the words, so that lines do not run through them.
    pub halo: bool,
    pub turn: Turn,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Turn {
    None,
    /// Reads upward.
    Up,
}

/// A JPEG picture's bytes as they came, scaled to a size.
#[derive(Clone, Debug)]
pub struct Picture {
    pub at: PagePoint,
    pub size: Size,
    pub bytes: std::sync::Arc<[u8]>,
}

#[derive(Clone, Debug)]
pub enum Shape {
    Path(Path),
    Words(Words),
    Picture(Picture),
}

impl Shape {
    pub fn shift(&mut self, x: f32, y: f32) {
        match self {
            Self::Path(path) => path.shift(x, y),
            Self::Words(words) => words.at = words.at.moved(x, y),
            Self::Picture(picture) => picture.at = picture.at.moved(x, y),
        }
    }
}

/// A finished figure, drawn in order.
#[derive(Clone, Debug)]
pub struct Drawing {
    pub size: Size,
    pub shapes: Vec<Shape>,
    /// What someone who cannot see the figure needs to know, numbers included.
    pub alternative: String,
}
