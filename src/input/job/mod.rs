//! A job as the owner measured it: first exactly as written, then with every name looked up.

mod access;
mod around;
mod arranged;
mod ask;
mod bars;
mod boxes;
mod depths;
mod dowels;
mod edge;
mod levels;
mod overlaps;
mod permit;
mod positions;
mod purpose;
mod removal;
mod resolve;
mod sanity;
mod sections;
mod shared;
mod sides;
mod takeoff;
mod written;

pub use access::{Access, Method};
pub use around::Around;
pub use ask::choose;
pub use bars::{Bars, CornerBars, Layer};
pub use boxes::{BoxWritten, Lid, SetBox};
pub use dowels::Dowels;
pub use edge::{EdgePart, Meets};
pub use levels::Levels;
pub use permit::Permit;
pub use purpose::has_word;
pub use removal::{Breaking, Removal, RemovalMaterial};
pub use resolve::{looked_up, resolve};
pub use sections::{Base, Sections, Steps};
pub use takeoff::{Border, Fall, Opening, Placement, Slab, Takeoff};
pub use written::options::{Choice, OptionGroup, OptionItem, choices};
pub use written::{
    Customer, Discount, Exposure, Extra, ExtraWhat, JobWritten, Says, SetTo, WorkWritten, read,
    read_work,
};

pub use super::phrases::{Carries, EdgeKind, Pin};
