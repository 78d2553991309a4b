//! What a slab stands by: siding above it, the public that walks on it.

use crate::input::phrases::{Height, Slope};
use crate::reading::keys::keys;
use crate::reading::{At, Fields, Problems, Read};
use crate::values::Length;

keys! {
    #[derive(Default)]
    pub struct Around in "" {
        /// From the finished surface up to the siding of a wall.
        siding_clearance: Option<At<Length>> = "siding clearance", none,
            "from the finished surface up to siding", "6 in";
        /// The public walks on it.
        public: Option<At<bool>> = "public", usual "no", "the public walks on it", "yes";
        /// Doors, walks and floors, each with its height.
        meets: Vec<(At<String>, At<Height>)> = "meets" as "keys by name", none,
            "what lies higher or lower where it meets the slab, and whether that is flush, a trim, a step or a ramp",
            "{door sill: 4 in above, old walk: flush, garage floor: 2 in below}", by met;
        cross_fall: Option<At<Slope>> = "cross fall", else "its `fall`", "across the way people walk", "1:48";
    }
}

impl Around {
    pub fn is_public(&self) -> bool {
        self.public.as_ref().is_some_and(|at| at.value)
    }
}

fn met(
    fields: &Fields<'_>,
    key: &'static str,
    problems: &mut Problems,
) -> Read<Vec<(At<String>, At<Height>)>> {
    let Some(node) = fields.node(key) else {
        return Ok(Vec::new());
    };
    let mut found = Vec::new();
    for entry in node.entries(&format!("`{key}`"), problems) {
        found.push((entry.name(), entry.node.read_at(problems)?));
    }
    Ok(found)
}
