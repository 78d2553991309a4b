//! What is asked of a joint layout, and what it is.

use rust_decimal::Decimal;

use crate::geometry::line::Line;
use crate::geometry::outline::Outline;
use crate::geometry::point::Point;
use crate::values::Length;

/// A slab to be jointed, in the coordinates of its outline.
#[derive(Clone, Copy, Debug)]
pub struct Asked<'a> {
    /// Its holes are openings.
    pub outline: &'a Outline,
    /// No panel may be longer: the smaller of what the thickness allows and what the owner says.
    pub longest: Length,
    /// South-west and north-east corner of what is set in the slab: lines run to it and stop.
    pub boxes: &'a [(Point, Point)],
    /// The same of boxes with an isolation around them: lines may run to the small ones, and need not.
    pub isolated: &'a [(Point, Point)],
    /// Stoops, steps, columns: no joint inside, lines stop at them.
    pub solid: &'a [Outline],
    /// Where joints of a neighbour, or of what stays, end at the rim.
    pub meet: &'a [Meet],
    /// The owner's own lines, taken as they are within the slab, and judged like any others.
    pub drawn: Option<&'a [Line]>,
}

/// A place on the rim that a joint should run to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Meet {
    pub at: Point,
    /// Whether the takeoff names it; else it is met where that costs little.
    pub must: bool,
}

/// The joint layout of one slab.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Layout {
    /// Joints within the slab, whole from end to end: not broken where they cross each other.
    pub lines: Vec<Line>,
    /// Feet of joint, arcs by their formula.
    pub length: Decimal,
    /// Together they are the slab less its openings, its boxes and what is solid. The largest comes first.
    pub panels: Vec<Panel>,
    /// What this layout does not keep, the gravest first.
    pub breaks: Vec<Break>,
}

#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Panel {
    /// Around it, counter-clockwise.
    pub sides: Vec<Line>,
    /// Around openings, boxes and solid parts wholly within it, clockwise.
    pub holes: Vec<Vec<Line>>,
    /// The longer and the shorter way, each where it is longest, along curves where it is curved.
    pub size: (Length, Length),
    /// Square feet, curves by their formula.
    pub area: Decimal,
    /// Longer over shorter way, each by its middle.
    pub ratio: Decimal,
}

/// Something the layout does not keep, and where.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Break {
    pub at: Point,
    pub what: Fault,
}

/// In order of weight.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    /// So many panels that no layout was tried; the slab is left whole.
    TooMany { panels: i64 },
    /// A panel is longer than the limit.
    TooLong { long: Length },
    /// A panel is over 1.5 times as long as wide.
    Stretched { ratio: Decimal },
    /// No joint runs to a place that the takeoff names.
    Unmet,
    /// A joint crosses what is solid. Only lines drawn by hand do.
    InSolid,
    /// No joint runs to this inside corner, or this corner of an opening or a box.
    Corner,
    /// A joint passes so near an inside corner, an opening or a box, without running to it.
    Near { off: Length },
    /// A panel is narrower than a third of the spacing.
    Sliver { wide: Length },
    /// Two joints, or a joint and the rim, meet under 60 degrees.
    Sharp { degrees: i64 },
    /// A joint ends at another one instead of running through.
    Ends,
}

impl Fault {
    /// The gravest has the least.
    pub(super) fn weight(self) -> u8 {
        match self {
            Self::TooMany { .. } => 0,
            Self::TooLong { .. } => 1,
            Self::Unmet => 2,
            Self::InSolid => 3,
            Self::Stretched { .. } => 4,
            Self::Corner => 5,
            Self::Near { .. } => 6,
            Self::Sliver { .. } => 7,
            Self::Sharp { .. } => 8,
            Self::Ends => 9,
        }
    }
}
