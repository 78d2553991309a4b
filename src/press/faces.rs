//! The bundled faces: IBM Plex Sans, Regular and Bold (licence beside the files).

use super::drawing::Face;

/// The whole font file of a face.
pub fn bytes(face: Face) -> &'static [u8] {
    match face {
        Face::Regular => include_bytes!("../../templates/fonts/IBMPlexSans-Regular.ttf"),
        Face::Bold => include_bytes!("../../templates/fonts/IBMPlexSans-Bold.ttf"),
    }
}
