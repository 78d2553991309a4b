//! Parts of a slab that are said in one line or by keys: thickened edges, steps.

mod steps;
mod thickened;

pub use steps::{StepsBottom, StepsWritten, steps};
pub use thickened::{EdgeBars, EdgeSort, Thickened, thickened};

use crate::reading::{Group, Keyed, Node, Place, Problems, Read};
use crate::values::Unreadable;

/// A group of keys that can be said in one line instead.
trait Spoken: Group + Keyed {
    /// Reads it from one line, which is the place of all its parts.
    fn said(text: &str, place: Place) -> Result<Self, Unreadable>;
}

fn spoken<T: Spoken>(node: &Node, key: &str, problems: &mut Problems) -> Read<T> {
    if node.is_map() {
        return node.group(problems);
    }
    let text = node.text(&format!("`{key}`"), problems)?;
    T::said(text, node.place).map_err(|unreadable| problems.unreadable(unreadable, node.place))
}
