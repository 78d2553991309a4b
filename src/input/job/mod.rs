//! A job as the owner measured it: first exactly as written, then with every name looked up.

mod access;
mod around;
mod arranged;
mod ask;
mod bars;
mod boxes;
mod dowels;
mod edge;
mod options;
mod overlaps;
mod positions;
mod removal;
mod resolve;
mod sanity;
mod sections;
mod takeoff;
mod values;
mod written;

pub use access::{Access, Method};
pub use around::Around;
pub use arranged::Permit;
pub use ask::choose;
pub use bars::{Bars, Layer};
pub use boxes::{BoxWritten, Lid, SetBox};
pub use dowels::Dowels;
pub use edge::EdgePart;
pub use options::{Change, Choice, OptionGroup, OptionItem, choices};
pub use removal::{Breaking, Removal, RemovalMaterial};
pub use resolve::{LookedUp, looked_up, resolve};
pub use sections::{Sections, Steps};
pub use takeoff::{
    Base, Border, Exposure, Extra, ExtraWhat, Fall, Opening, Photo, Placement, SetTo, Slab, Takeoff,
};
pub use values::SlabValues;
pub use written::{
    ChooseOne, Customer, EdgesWritten, JobHead, JobWritten, Lump, OpeningWritten, PourWritten,
    SlabWritten, read, read_for, section_keys,
};

pub use super::phrases::{EdgeKind, Pin, Thickened};
