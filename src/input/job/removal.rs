//! What is taken out: of what, how it is broken, where it goes.

use crate::input::phrases::SizePhrase;
use crate::reading::{At, words};
use crate::values::Length;

#[derive(Clone, Debug)]
pub struct Removal {
    pub name: At<String>,
    pub size: At<SizePhrase>,
    /// Where the size has none in it.
    pub depth: Option<At<Length>>,
    pub material: RemovalMaterial,
    pub breaking: Breaking,
    /// With bars or mesh in it.
    pub reinforced: bool,
    /// Cut with the saw, to its full depth.
    pub saw_cut: Option<At<Length>>,
    /// It is used on the site and nothing is hauled.
    pub stays: bool,
}

words! {
    pub enum RemovalMaterial("unknown-word", "`of` is not `{}`", either) {
        Concrete "concrete";
        Asphalt "asphalt";
        Pavers "pavers";
        Soil "soil";
    }
}

words! {
    pub enum Breaking("unknown-word", "`break` is not `{}`", choose) {
        ByHand "by hand";
        Machine "machine";
    }
}

impl Removal {
    /// The rate it goes by.
    pub const fn task(&self) -> &'static str {
        match (self.material, self.breaking, self.reinforced) {
            (RemovalMaterial::Concrete, Breaking::ByHand, false) => "break out concrete",
            (RemovalMaterial::Concrete, Breaking::ByHand, true) => "break out reinforced concrete",
            (RemovalMaterial::Concrete, Breaking::Machine, false) => "break out with machine",
            (RemovalMaterial::Concrete, Breaking::Machine, true) => {
                "break out reinforced with machine"
            }
            (RemovalMaterial::Asphalt, Breaking::ByHand, _) => "break out asphalt",
            (RemovalMaterial::Asphalt, Breaking::Machine, _) => "break out asphalt with machine",
            (RemovalMaterial::Pavers, ..) => "take up pavers",
            (RemovalMaterial::Soil, Breaking::ByHand, _) => "dig",
            (RemovalMaterial::Soil, Breaking::Machine, _) => "dig with machine",
        }
    }
}
