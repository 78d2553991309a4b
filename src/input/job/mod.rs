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
pub mod tables;
mod takeoff;
mod values;
mod written;

pub use around::Around;
pub use arranged::{Arranged, Permit};
pub use ask::choose;
pub use bars::{Bars, Layer};
pub use boxes::{BoxWritten, Lid, SetBox};
pub use dowels::Dowels;
pub use edge::EdgePart;
pub use options::{Change, Choice, OptionGroup, OptionItem, choices};
pub use removal::{Breaking, Removal, RemovalMaterial};
pub use resolve::{LookedUp, looked_up, resolve};
pub use sections::{Sections, Steps, ThickEnd};
pub use takeoff::{
    Access, Base, Border, Customer, Exposure, Extra, ExtraWhat, Fall, Method, Opening, Placement,
    SetTo, Slab, Takeoff,
};
pub use values::SlabValues;
pub use written::{JobWritten, OpeningWritten, SlabWritten, read, read_for};

pub use super::phrases::{EdgeKind, Pin, Thickened};
