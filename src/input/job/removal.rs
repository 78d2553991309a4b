//! What is taken out: of what, how it is broken, where it goes.

use crate::input::phrases::SizePhrase;
use crate::reading::At;
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

#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum RemovalMaterial {
    Concrete,
    Asphalt,
    Pavers,
    Soil,
}

impl RemovalMaterial {
    /// In a fixed order.
    pub const ALL: [Self; 4] = [Self::Concrete, Self::Asphalt, Self::Pavers, Self::Soil];

    pub const fn name(self) -> &'static str {
        match self {
            Self::Concrete => "concrete",
            Self::Asphalt => "asphalt",
            Self::Pavers => "pavers",
            Self::Soil => "soil",
        }
    }
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Breaking {
    ByHand,
    Machine,
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
