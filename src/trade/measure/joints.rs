//! Contraction joints: even panels, no side longer than the owner's limit.

use std::sync::Arc;

use crate::geometry::{Panels, panels};
use crate::input::job::Slab;
use crate::trade::tally::Tally;
use crate::trade::term::sum;
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, Unit};

#[derive(Clone, Debug)]
pub struct JointQuantities {
    /// Shared by every choice that leaves the slab alone.
    pub panels: Arc<Panels>,
}

/// Panels end where the slab does, so along a slab of the same pour a joint runs too.
pub(super) fn measure(
    slab: &Slab,
    jointed: &[Quantity],
    tally: &mut Tally<'_>,
) -> Option<JointQuantities> {
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
    let within = |title: &str| {
        let length = Amount::new(panels.length, Unit::Foot);
        Quantity::new(tally.name(title), length, working)
    };
    if jointed.is_empty() {
        let joints = within("joints");
        tally.settle(joints);
    } else {
        let between = tally.sets.settle(within("joints between panels"));
        let rule = "between panels, and where a slab of the same pour meets this one";
        tally.show([&between]);
        let all = sum(std::iter::once(&between).chain(jointed));
        tally.by(rule, "joints", Unit::Foot, all);
    }
    Some(JointQuantities {
        panels: Arc::new(panels),
    })
}
