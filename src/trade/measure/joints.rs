//! Contraction joints: even panels, no side longer than the owner's limit.

use std::sync::Arc;

use crate::geometry::{Panels, panels};
use crate::input::job::Slab;
use crate::input::phrases::Sawn;
use crate::trade::tally::Tally;
use crate::trade::term::{number, of, sum};
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, Unit};

#[derive(Clone, Debug)]
pub struct JointQuantities {
    /// Shared by every choice that leaves the slab alone.
    pub panels: Arc<Panels>,
    pub length: Quantity,
    /// Feet and square feet of cut, where they are sawn.
    pub sawn: Option<(Quantity, Quantity)>,
}

/// The panels of a slab that is cut into some.
pub(super) fn laid_out(slab: &Slab) -> Option<Arc<Panels>> {
    let longest = slab.joints.as_ref()?;
    Some(Arc::new(panels(&slab.outline, longest.value)))
}

/// Panels end where the slab does, so along a slab of the same pour a joint runs too.
pub(super) fn measure(
    slab: &Slab,
    panels: Option<Arc<Panels>>,
    jointed: &[Quantity],
    tally: &mut Tally<'_>,
) -> Option<JointQuantities> {
    let longest = slab.joints.as_ref()?;
    let panels = panels?;
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
    let length = if jointed.is_empty() {
        let joints = within("joints");
        tally.settle(joints)
    } else {
        let between = tally.sets.settle(within("joints between panels"));
        let rule = "between panels, and where a slab of the same pour meets this one";
        tally.show([&between]);
        let all = sum(std::iter::once(&between).chain(jointed));
        tally.by(rule, "joints", Unit::Foot, all)
    };
    let is_sawn = slab.is_sawn() && !length.value().is_zero();
    Some(JointQuantities {
        sawn: is_sawn.then(|| sawn(slab, &length, tally)),
        length,
        panels,
    })
}

/// All of them by the foot, and by what the saw goes through.
fn sawn(slab: &Slab, joints: &Quantity, tally: &mut Tally<'_>) -> (Quantity, Quantity) {
    let rule = "all joints of the slab, as the takeoff says";
    let length = tally.by(rule, "sawn joints", Unit::Foot, of(joints));
    let depth = slab.groove().in_inches();
    let depth = match slab.sawn.as_ref() {
        Some(said) if matches!(said.value, Sawn::Yes(Some(_))) => {
            Quantity::given("depth", depth, said.place)
        }
        Some(_) | None => {
            let how = "a quarter of the slab, 1 in at least";
            let rule = "UFGS 03300N, sections 3.8.3 to 3.8.5";
            Quantity::new("depth", depth, Working::plan(how, Vec::new(), rule))
        }
    };
    let face = of(&length) * &depth / number(12);
    let face = tally.by("feet × depth", "sawn joint face", Unit::SquareFoot, face);
    (length, face)
}
