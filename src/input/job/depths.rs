//! How deep a slab is, all over and along its edges.

use super::sides::Sides;
use super::takeoff::Slab;
use super::{EdgePart, Meets};
use crate::geometry::Outline;
use crate::geometry::rim::Strip;
use crate::input::phrases::{EdgesPhrase, JointMethod};
use crate::tables::joints::{EARLY_DEPTH, groove_depth};
use crate::values::Length;

impl Slab {
    /// Whether it is a step: its kind is `step`, and it leads up by no flight of its own. It is formed
    /// and finished as one piece of work; a slab of any other kind by its size, wherever it stands.
    pub fn is_step(&self) -> bool {
        self.kind == "step" && self.sections.steps.is_none()
    }

    /// Whether it stands upon another slab, or before a door as a step does, and is told by its height.
    pub fn is_upon(&self) -> bool {
        self.is_step() || (self.on.is_some() && self.sections.steps.is_none())
    }

    /// Whether ground that was dug too deep would take more of its concrete.
    pub fn is_on_ground(&self) -> bool {
        self.on.is_none() && !self.is_step()
    }

    /// The thickest place of the slab, its thickened edges aside.
    pub fn thickest(&self) -> Length {
        self.thickness.value.thickest()
    }

    /// Whether joints are asked for. A solid block has none because its kind does.
    pub fn wants_joints(&self) -> bool {
        let of_kind = self.usual.contains(&"joints");
        let said = self.joints.is_some() && !(of_kind && self.sections.is_solid());
        said || !self.drawn.is_empty()
    }

    /// How deep its joints are made: as its owner says, or as it asks for by how they are made. A tool is
    /// set once for a slab, so one that is uneven is cut all over as deep as its thick end asks for.
    pub fn groove(&self) -> Length {
        let said = self.sawn.as_ref().and_then(|sawn| sawn.value.depth);
        said.unwrap_or_else(|| match self.joint_method() {
            JointMethod::Tooled | JointMethod::SawnLate => groove_depth(self.thickest()),
            JointMethod::SawnEarly => EARLY_DEPTH,
        })
    }

    /// How its joints are made; tooled where nobody says.
    pub fn joint_method(&self) -> JointMethod {
        let said = self.sawn.as_ref();
        said.map_or(JointMethod::Tooled, |sawn| sawn.value.method)
    }

    pub fn is_sawn(&self) -> bool {
        self.joint_method().is_sawn()
    }

    /// From the top to the bottom of this edge, or of the one beyond it that its form holds too.
    pub fn edge_depth(&self, part: &EdgePart) -> Length {
        let own = self.own_edge_depth(part);
        match part.meets {
            Meets::Depth(beyond) => own.max(beyond),
            Meets::Face(face) => face,
            Meets::Nothing | Meets::ControlJoint => own,
        }
    }

    /// Whether the slab is thickened along it.
    pub fn is_thickened(&self, part: &EdgePart) -> bool {
        self.thickened_strips().iter().any(|strip| {
            strip.side == part.side && (strip.stretch.is_none() || strip.stretch == part.stretch)
        })
    }

    pub(super) fn own_edge_depth(&self, part: &EdgePart) -> Length {
        match &self.sections.thickened {
            Some(edge) if self.is_thickened(part) => edge.depth.value,
            _ => self.deepest_along(&self.outline, part.side),
        }
    }

    /// The greatest thickness along a side of the slab or of an opening in it. Thickness rises evenly,
    /// so that is where the side reaches farthest toward the thick end. A side is not parted where it
    /// passes a depth: its form is one board, as high as it is needed somewhere.
    pub fn deepest_along(&self, of: &Outline, side: usize) -> Length {
        let Some((thick, Some(toward))) = self.thickness.value.thick else {
            return self.thickest();
        };
        let thin = self.thickness.value.thin;
        let far = self.outline.farthest(toward, of, of.sides()[side].leg);
        let more = (thick - thin).feet() * far.feet() / self.outline.run(toward).feet();
        thin + Length::of_feet(more)
    }

    /// Stretches of edge that are thickened.
    pub fn thickened_strips(&self) -> Vec<Strip> {
        let Some(thickened) = &self.sections.thickened else {
            return Vec::new();
        };
        let whole = self.edges.iter().map(|part| part.side);
        match &thickened.edges.value {
            EdgesPhrase::All => sides_once(whole),
            EdgesPhrase::AllOpen => self
                .edges
                .iter()
                .filter(|part| part.kind == super::EdgeKind::Open)
                .map(|part| Strip {
                    side: part.side,
                    stretch: part.stretch,
                })
                .collect(),
            EdgesPhrase::Named(names) => {
                let size = self.size.as_ref().map(|size| size.value);
                let sides = Sides::of(size, &self.outline);
                let meant: Vec<usize> = names.iter().flat_map(|name| sides.thick(*name)).collect();
                sides_once(whole.filter(|side| meant.contains(side)))
            }
        }
    }
}

fn sides_once(sides: impl Iterator<Item = usize>) -> Vec<Strip> {
    let mut found: Vec<usize> = sides.collect();
    found.sort_unstable();
    found.dedup();
    let whole = |side| Strip {
        side,
        stretch: None,
    };
    found.into_iter().map(whole).collect()
}
