//! Figures before they stand on a page: shapes and words in points from the figure's top left.

/// A colour in red, green and blue, 0 to 255 each; the page is RGB only.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Rgb(pub u8, pub u8, pub u8);

#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point {
    pub x: f32,
    pub y: f32,
}

#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Size {
    pub width: f32,
    pub height: f32,
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

/// One stroke of a path.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Step {
    Move(Point),
    Line(Point),
    /// Cubic curve: two control points, then the end.
    Curve(Point, Point, Point),
    Close,
}

#[derive(Clone, Debug, PartialEq)]
pub struct Stroke {
    pub color: Rgb,
    pub width: f32,
    /// Lengths on, off, on, off; empty is a solid line.
    pub dash: Vec<f32>,
}

#[derive(Clone, Debug, PartialEq)]
pub struct Path {
    pub steps: Vec<Step>,
    pub stroke: Option<Stroke>,
    pub fill: Option<Rgb>,
}

/// One line of words in a figure; `at` is on the baseline.
#[derive(Clone, Debug, PartialEq)]
pub struct Words {
    pub text: String,
    pub at: Point,
    pub anchor: Anchor,
    pub face: Face,
    pub size: f32,
    pub color: Rgb,
    /// A white background behind the words, so that lines do not run through them.
    pub halo: bool,
    /// Quarter turns: 0 reads left to right, 90 reads upward.
    pub turn: Turn,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Turn {
    None,
    Up,
}

#[derive(Clone, Debug, PartialEq)]
pub enum Shape {
    Path(Path),
    Words(Words),
    /// Shapes seen only inside this outline (hatching, tints).
    Clipped {
        outline: Vec<Step>,
        shapes: Vec<Shape>,
    },
    /// A picture's bytes as they came, scaled to the size.
    Picture {
        at: Point,
        size: Size,
        bytes: std::sync::Arc<[u8]>,
        kind: super::page::PictureKind,
    },
}

/// A finished figure, drawn in order.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawing {
    pub size: Size,
    pub shapes: Vec<Shape>,
    /// What someone who cannot see the figure needs to know, numbers included.
    pub alternative: String,
}
