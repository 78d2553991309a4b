//! The bundled faces, opened once for the life of the process.

use crate::press::drawing::Face;
use crate::press::faces;
use harfrust::{FontRef, ShaperData};
use std::sync::OnceLock;

/// A parsed face; making the shaper's tables costs milliseconds, so it happens once.
pub(super) struct Opened {
    pub font: FontRef<'static>,
    pub tables: ShaperData,
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
        Opened { font, tables }
    })
}
