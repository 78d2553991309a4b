//! Contraction joints: how long they are, how they are made, how many panels they leave.

mod asked;

pub use asked::spacing_by_thickness;
pub(super) use asked::{Laid, Layouts};

use std::sync::Arc;

use crate::geometry::Outline;
use crate::geometry::joints::{Fault, Layout, Panel};
use crate::input::job::Slab;
use crate::input::phrases::JointMethod;
use crate::trade::tally::Tally;
use crate::trade::term::{number, of, sum};
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, Length, Unit};

#[derive(Clone, Debug)]
pub struct JointQuantities {
    /// Shared by every choice that leaves the slab and what lies around it alone.
    pub layout: Arc<Layout>,
    /// What is set in it and what stands on it: no part of any panel.
    pub left_out: Arc<[Outline]>,
    /// No panel was to be longer.
    pub longest: Length,
    /// Feet made by hand, where they are not sawn.
    pub tooled: Option<Quantity>,
    /// Feet and square feet of cut, where they are sawn.
    pub sawn: Option<(Quantity, Quantity)>,
}

impl JointQuantities {
    /// The longer and the shorter way of its largest panel.
    pub fn largest(&self) -> Option<(Length, Length)> {
        self.layout.panels.first().map(size)
    }
}

/// How a panel is told everywhere: its longer way, then the shorter, as the tape shows it.
pub fn size(panel: &Panel) -> (Length, Length) {
    let (long, short) = panel.size;
    (long.to_the_eighth(), short.to_the_eighth())
}

/// Panels end where the slab does, so along a slab of the same pour a joint runs too.
pub(super) fn measure(
    slab: &Slab,
    laid: &Laid,
    jointed: &[Quantity],
    tally: &mut Tally<'_>,
) -> JointQuantities {
    let layout = &laid.layout;
    let rule = if slab.drawn.is_empty() {
        "through inside corners, panels near to square; spacing 24 to 36 times the thickness (NRMCA CIP 6 as restated)"
    } else {
        "as you draw them"
    };
    let working = Working::plan(told(laid), vec![laid.limit.clone()], rule);
    let within = |title: &str| {
        let length = Amount::new(layout.length, Unit::Foot);
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
    let panels = number(i64::try_from(layout.panels.len()).unwrap_or(i64::MAX));
    let rule = "the slab in the parts that its joints leave";
    tally.show([&Quantity::by(
        rule,
        tally.name("panels"),
        Unit::Piece,
        panels,
    )]);
    let is_cut = !length.value().is_zero();
    let tooled = is_cut && !slab.is_sawn();
    let all = "all joints of the slab, as the takeoff says";
    JointQuantities {
        tooled: tooled.then(|| tally.by(all, "tooled joints", Unit::Foot, of(&length))),
        sawn: (is_cut && slab.is_sawn()).then(|| sawn(slab, &length, tally)),
        left_out: Arc::clone(&laid.left_out),
        longest: laid.longest,
        layout: Arc::clone(layout),
    }
}

/// `6 panels, the largest 8 ft x 7 ft, none longer than 8 ft`.
fn told(laid: &Laid) -> String {
    let panels = &laid.layout.panels;
    let many = match panels.len() {
        1 => "1 panel".to_owned(),
        many => format!("{many} panels"),
    };
    let largest = panels
        .first()
        .map(size)
        .map_or_else(String::new, |(long, short)| {
            let the = if panels.len() == 1 {
                ""
            } else {
                " the largest"
            };
            format!(",{the} {long} x {short}")
        });
    let mut breaks = laid.layout.breaks.iter();
    let is_over =
        breaks.any(|one| matches!(one.what, Fault::TooMany { .. } | Fault::TooLong { .. }));
    let limit = if is_over {
        String::new()
    } else {
        format!(", none longer than {}", laid.longest)
    };
    format!("{many}{largest}{limit}")
}

/// All of them by the foot, and by what the saw goes through.
fn sawn(slab: &Slab, joints: &Quantity, tally: &mut Tally<'_>) -> (Quantity, Quantity) {
    let rule = "all joints of the slab, as the takeoff says";
    let length = tally.by(rule, "sawn joints", Unit::Foot, of(joints));
    let is_early = slab.joint_method() == JointMethod::SawnEarly;
    if is_early {
        let rule = "all joints of the slab, by an early-entry saw the same day";
        tally.show([&Quantity::by(
            rule,
            tally.name("joints sawn early"),
            Unit::Foot,
            of(&length),
        )]);
    }
    let depth = slab.groove().in_inches();
    let depth = match slab.sawn.as_ref() {
        Some(said) if said.value.depth.is_some() => Quantity::given("depth", depth, said.place),
        Some(_) | None => {
            let (how, rule) = if is_early {
                (
                    "by an early-entry saw",
                    "1 in at least; common practice, no source",
                )
            } else {
                let how = "a quarter of the slab, 1 in at least";
                (how, "UFGS 03300N, sections 3.8.3 to 3.8.5")
            };
            Quantity::new("depth", depth, Working::plan(how, Vec::new(), rule))
        }
    };
    let face = of(&length) * &depth / number(12);
    let face = tally.by("feet × depth", "sawn joint face", Unit::SquareFoot, face);
    (length, face)
}
