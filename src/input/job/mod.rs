//! A job as the owner measured it: first exactly as written, then with every name looked up.

mod access;
mod arranged;
mod ask;
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
pub use ask::choose;
pub use edge::{EdgeKind, EdgePart};
pub use options::{Change, Choice, OptionGroup, OptionItem, choices};
pub use removal::{Breaking, Removal, RemovalMaterial};
pub use resolve::{LookedUp, looked_up, resolve};
pub use sections::{Sections, Steps, ThickEnd, Thickened};
pub use takeoff::{
    Access, Bars, Base, Border, Customer, Exposure, Extra, ExtraWhat, Fall, Method, Opening,
    Placement, SetTo, Slab, Takeoff,
};
pub use values::SlabValues;
pub use written::{JobWritten, OpeningWritten, SlabWritten, read, read_for};
