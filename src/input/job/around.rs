//! What a slab stands by: siding above it, the public that walks on it.

use crate::input::phrases::Slope;
use crate::reading::{At, Fields, Problems};
use crate::values::Length;

#[derive(Clone, Debug, Default)]
pub struct Around {
    /// From the finished surface up to the siding of a wall.
    pub siding_clearance: Option<At<Length>>,
    /// The public walks on it.
    pub public: Option<At<bool>>,
    pub cross_fall: Option<At<Slope>>,
}

impl Around {
    pub(super) fn read(slab: &Fields<'_>, problems: &mut Problems) -> Self {
        Self {
            siding_clearance: slab.read("siding clearance", problems),
            public: slab.yes("public", problems),
            cross_fall: slab.read("cross fall", problems),
        }
    }

    pub fn is_public(&self) -> bool {
        self.public.as_ref().is_some_and(|at| at.value)
    }
}
