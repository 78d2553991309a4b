//! What a slab stands by: siding above it, the public that walks on it.

use crate::input::phrases::Slope;
use crate::reading::At;
use crate::reading::keys::keys;
use crate::values::Length;

keys! {
    #[derive(Default)]
    pub struct Around in "" {
        /// From the finished surface up to the siding of a wall.
        siding_clearance: Option<At<Length>> = "siding clearance", none,
            "from the finished surface up to siding", "6 in";
        /// The public walks on it.
        public: Option<At<bool>> = "public", usual "no", "the public walks on it", "yes";
        cross_fall: Option<At<Slope>> = "cross fall", else "its `fall`", "across the way people walk", "1:48";
    }
}

impl Around {
    pub fn is_public(&self) -> bool {
        self.public.as_ref().is_some_and(|at| at.value)
    }
}
