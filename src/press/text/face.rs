//! The bundled faces, opened once for the life of the process.

use crate::press::drawing::Face;
use crate::press::faces;
use harfrust::{Direction, Feature, FontRef, ShapePlan, ShaperData, Tag, script};
use std::sync::OnceLock;

/// A parsed face; making the shaper's tables costs milliseconds, so it happens once.
pub(super) struct Opened {
    pub font: FontRef<'static>,
    pub tables: ShaperData,
    /// Plans are costly too; this one joins letters where the face wants it.
    pub joined: ShapePlan,
    /// For letters that are spaced out, which must not be joined.
    pub apart: ShapePlan,
}

/// Both faces set Latin, Greek and Cyrillic alike, so one script serves all.
pub(super) const DIRECTION: Direction = Direction::LeftToRight;
pub(super) const SCRIPT: harfrust::Script = script::LATIN;

/// What spaced-out letters ask of the face.
pub(super) fn unjoined() -> [Feature; 1] {
    [Feature::new(Tag::new(b"liga"), 0, ..)]
}

pub(super) fn opened(face: Face) -> &'static Opened {
    static REGULAR: OnceLock<Opened> = OnceLock::new();
    static BOLD: OnceLock<Opened> = OnceLock::new();
    let place = match face {
        Face::Regular => &REGULAR,
        Face::Bold => &BOLD,
    };
    place.get_or_init(|| {
        let font = FontRef::new(faces::bytes(face)).expect("the bundled faces are sound fonts");
        let tables = ShaperData::new(&font);
        let shaper = tables.shaper(&font).build();
        let plan =
            |features: &[Feature]| ShapePlan::new(&shaper, DIRECTION, Some(SCRIPT), None, features);
        let (joined, apart) = (plan(&[]), plan(&unjoined()));
        Opened {
            font,
            tables,
            joined,
            apart,
        }
    })
}
