//! What is known where the parser stopped.

use crate::reading::place::{Place, Sources};

/// What is known where the parser stopped.
pub(super) struct Scene<'a> {
    pub(super) sources: &'a Sources,
    /// Where it stopped.
    pub(super) place: Place,
    /// The last value it read before that.
    pub(super) last: Place,
    /// Tabs at the front of lines are reported and dealt with.
    pub(super) tabs_mended: bool,
    /// The innermost bracket not closed by then.
    pub(super) bracket: Option<Place>,
}
