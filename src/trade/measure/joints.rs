//! Contraction joints: even panels, no side longer than the owner's limit.

use std::sync::Arc;

use crate::geometry::{Panels, panels};
use crate::input::job::Slab;
use crate::trade::tally::Tally;
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, Unit};

#[derive(Clone, Debug)]
pub struct JointQuantities {
    /// Shared by every choice that leaves the slab alone.
    pub panels: Arc<Panels>,
}

pub(super) fn measure(slab: &Slab, tally: &mut Tally<'_>) -> Option<JointQuantities> {
    let longest = slab.joints.as_ref()?;
    let panels = panels(&slab.outline, longest.value);
    let (columns, rows) = (panels.columns.len(), panels.rows.len());
    let limit = Quantity::feet("longest panel", longest);
    let working = Working::plan(
        format!(
            "{columns} by {rows} panels, none longer than {}",
            longest.value
        ),
        vec![limit],
        "even panels through the inside corners; spacing 24 to 36 times the thickness (NRMCA CIP 6 as restated)",
    );
    tally.settle(Quantity::new(
        tally.name("joints"),
        Amount::new(panels.length, Unit::Foot),
        working,
    ));
    Some(JointQuantities {
        panels: Arc::new(panels),
    })
}
