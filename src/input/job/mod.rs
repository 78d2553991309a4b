//! A job as the owner measured it: first exactly as written, then with every name looked up.

mod access;
mod arranged;
mod edge;
mod options;
mod positions;
mod removal;
mod resolve;
mod sanity;
mod sections;
pub mod tables;
mod takeoff;
mod values;
mod written;

pub use arranged::{Arranged, Permit};
pub use edge::{EdgeKind, EdgePart};
pub use options::{Choice, OptionGroup, OptionItem, choices};
pub use removal::{Breaking, Removal, RemovalMaterial};
pub use resolve::resolve;
pub use sections::{Sections, Steps, ThickEnd, Thickened};
pub use takeoff::{
    Access, Bars, Base, Border, Customer, Exposure, Extra, ExtraWhat, Fall, Method, Placement,
    SetTo, Slab, Takeoff,
};
pub use values::SlabValues;
pub use written::{JobWritten, SlabWritten, read};
