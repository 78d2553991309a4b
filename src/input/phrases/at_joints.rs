//! What becomes of steel where a joint is cut.

use crate::reading::words;

words! {
    /// What becomes of the bars and mesh of a slab at its joints.
    pub enum SteelAtJoints("unknown-word", "`steel at joints` is not `{}`", choose) {
        Through "through";
        /// Every other bar ends beside the joint, every other wire is cut in it.
        EveryOther "every other";
        Cut "cut";
    }
}
