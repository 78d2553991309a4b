//! Sizes, faces and colors of type: the whole type scale of the pages.

use crate::press::drawing::{Face, Rgb};

/// What a piece of text is for; size and line follow from it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Style {
    /// The one large amount; steps down when it is too wide.
    Amount,
    /// Firm and page titles.
    Title,
    /// What the document is about.
    About,
    /// Restated total, key figures.
    Key,
    Section,
    /// What a law wants read: ten points and bold.
    Notice,
    Body,
    /// Notes and column heads.
    Note,
    /// Terms, words under writing lines: the smallest of all.
    Small,
}

/// How a style is set, in points.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Setting {
    pub size: f32,
    pub line: f32,
    /// Last baseline above the foot of the text's box.
    pub descent: f32,
    pub face: Face,
    /// Thousandths of the size.
    pub tracking: i32,
}

impl Style {
    pub fn setting(self) -> Setting {
        let (size, line, face, tracking) = match self {
            // −0.6 pt at 38 pt.
            Self::Amount => (38.0, 36.0, Face::Bold, -16),
            Self::Title => (21.0, 24.0, Face::Bold, 0),
            Self::About => (15.0, 18.0, Face::Bold, 0),
            Self::Key => (17.0, 18.0, Face::Bold, 0),
            Self::Section => (11.0, 12.0, Face::Bold, 0),
            Self::Notice => (10.0, 12.0, Face::Bold, 0),
            Self::Body => (9.5, 12.0, Face::Regular, 0),
            Self::Note => (8.5, 12.0, Face::Regular, 0),
            Self::Small => (8.0, 12.0, Face::Regular, 0),
        };
        Setting {
            size,
            line,
            descent: 3.0,
            face,
            tracking,
        }
    }

    /// Smaller sizes to try when a line of this style is too wide.
    pub fn smaller(self) -> &'static [f32] {
        match self {
            Self::Amount => &[32.0, 26.0, 21.0],
            Self::Key => &[15.0, 12.0],
            Self::Title
            | Self::About
            | Self::Section
            | Self::Notice
            | Self::Body
            | Self::Note
            | Self::Small => &[],
        }
    }
}

/// The inks of a document; only the accent is the owner's to choose.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Look {
    pub ink: Rgb,
    pub soft: Rgb,
    pub accent: Rgb,
    /// For lines only, never for text.
    pub rule: Rgb,
}

impl Default for Look {
    fn default() -> Self {
        Self {
            ink: Rgb::INK,
            soft: Rgb::SOFT,
            accent: Rgb::BLUE,
            rule: Rgb::RULE,
        }
    }
}

/// The grid: US Letter, 12 columns of 32 with gutters of 12, baselines every 12.
pub mod grid {
    use crate::press::drawing::Size;

    pub const PAGE: Size = Size::new(612.0, 792.0);
    pub const LEFT: f32 = 48.0;
    pub const RIGHT: f32 = 564.0;
    pub const TOP: f32 = 48.0;
    /// Where the body of a page ends; the foot stands a line below.
    pub const BOTTOM: f32 = 732.0;
    /// Top of the body under a band.
    pub const UNDER_BAND: f32 = 60.0;
    /// Top of the body under a running head.
    pub const UNDER_HEAD: f32 = 72.0;
    pub const FOOT: f32 = 744.0;
    pub const LINE: f32 = 12.0;
    pub const MODULE: f32 = 44.0;
    pub const GUTTER: f32 = 12.0;

    /// Width of a span of grid columns.
    pub fn span(columns: u8) -> f32 {
        f32::from(columns) * MODULE - GUTTER
    }

    /// The next grid line at or below `y`.
    pub fn snapped(y: f32) -> f32 {
        let above = (y - TOP).rem_euclid(LINE);
        // A hair's breadth is arithmetic, not a step.
        if above < 0.01 { y } else { y + LINE - above }
    }
}
