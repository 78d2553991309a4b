//! What is done on one visit, as rules and items of the book say when their work is done.

use crate::reading::keys::placeless;
use crate::reading::words;

words! {
    /// What is done on one visit, in the order of the work.
    pub enum Stage("unknown-word", "`{}` is no stage of the work", choose) {
        /// Saw, break out, dig.
        Remove "remove";
        /// Base, forms, steel and what is set into the forms.
        Form "form";
        /// Place and finish.
        Place "place";
        /// Cure, strip, clean.
        Strip "strip";
        /// Back later, to saw, wash or seal.
        Return "return";
    }
}

placeless! { Stage }
