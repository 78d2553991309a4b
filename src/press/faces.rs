//! The bundled faces: the bytes that shaping reads and that the PDF carries a cut of.
//!
//! IBM Plex Sans under the SIL Open Font License, text in `templates/fonts/OFL.txt`.

use super::drawing::Face;

/// The whole TrueType file of a face; glyph ids everywhere in `press` count in it.
pub fn bytes(face: Face) -> &'static [u8] {
    match face {
        Face::Regular => include_bytes!("../../templates/fonts/IBMPlexSans-Regular.ttf"),
        Face::Bold => include_bytes!("../../templates/fonts/IBMPlexSans-Bold.ttf"),
    }
}
