//! What sort of cost an item is.

use crate::reading::keys::placeless;
use crate::reading::words;

words! {
    /// What sort of cost it is.
    pub enum Class("unknown-class", "`{}` is not a class of item", one_of) {
        Material "material";
        Labor "labor";
        Equipment "equipment";
        Disposal "disposal";
        Subcontract "subcontract";
        Fee "fee";
    }
}

placeless! { Class }
