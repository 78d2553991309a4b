//! A takeoff exactly as written, before any name is looked up.

mod access;
mod lists;
mod openings;
mod options;
mod read;
mod removal;
mod sections;
mod shape;

pub use read::{read, read_for};
pub use sections::{SectionsWritten, StepsWritten, thickened};

use std::collections::BTreeSet;

use super::options::OptionGroup;
use super::takeoff::{Access, Customer, Exposure, Extra, Photo, SetTo};
use super::{Arranged, Removal};
use super::{EdgeKind, SlabValues};
use crate::geometry::Compass;
use crate::input::phrases::{Along, BesidePhrase, CornerPhrase, LegPhrase, SizePhrase, SpotPhrase};
use crate::reading::{At, Place};
use crate::values::{Day, Money, Percent};

#[derive(Clone, Debug)]
pub struct JobWritten {
    pub place: Place,
    pub name: Option<String>,
    pub title: Option<String>,
    pub customer: Customer,
    pub measured: Option<Day>,
    pub quoted: Option<Day>,
    pub exposure: At<Exposure>,
    pub access: Access,
    pub arranged: Arranged,
    pub difficulty: Option<At<Percent>>,
    pub slabs: Vec<SlabWritten>,
    /// Names of slabs that could not be read.
    pub unread: BTreeSet<String>,
    pub pours: Vec<PourWritten>,
    pub removals: Vec<Removal>,
    pub extras: Vec<Extra>,
    pub sets: Vec<SetTo>,
    pub fixed_price: Option<At<Money>>,
    pub options: Vec<OptionGroup>,
    pub assumptions: Vec<String>,
    pub not_included: Vec<String>,
    pub left_alone: Vec<String>,
    pub site: crate::input::site::SiteAnswers,
    pub photos: Vec<Photo>,
}

#[derive(Clone, Debug)]
pub struct SlabWritten {
    pub key: At<String>,
    pub called: Option<String>,
    pub kind: Option<At<String>>,
    pub shape: ShapeWritten,
    pub openings: Vec<OpeningWritten>,
    pub edges: Vec<(Compass, EdgeKind)>,
    pub beside: Option<At<BesidePhrase>>,
    pub on: Option<At<BesidePhrase>>,
    pub values: SlabValues,
    pub boxes: Vec<super::BoxWritten>,
    pub around: super::Around,
    pub sections: SectionsWritten,
}

#[derive(Clone, Debug)]
pub enum ShapeWritten {
    Size(At<SizePhrase>),
    Walked(Vec<At<LegPhrase>>, Place),
    Cornered(Vec<At<CornerPhrase>>, Place),
}

impl ShapeWritten {
    /// What its sides say they stand against, and where.
    fn against(&self) -> Vec<(EdgeKind, Place)> {
        fn said<T>(sides: &[At<T>], along: fn(&T) -> &Along) -> Vec<(EdgeKind, Place)> {
            let sides = sides.iter();
            sides
                .filter_map(|side| Some((along(&side.value).against?, side.place)))
                .collect()
        }
        match self {
            Self::Size(_) => Vec::new(),
            Self::Walked(legs, _) => said(legs, |leg| &leg.along),
            Self::Cornered(corners, _) => said(corners, |corner| &corner.along),
        }
    }
}

/// Something in a slab that is left open.
#[derive(Clone, Debug)]
pub struct OpeningWritten {
    pub name: At<String>,
    pub shape: ShapeWritten,
    pub at: At<SpotPhrase>,
    pub edge: EdgeKind,
}

/// One day, and the slabs poured on it; none named means all that no other pour names.
#[derive(Clone, Debug)]
pub struct PourWritten {
    pub day: At<Day>,
    pub slabs: Vec<At<String>>,
    pub access: Option<Access>,
}
