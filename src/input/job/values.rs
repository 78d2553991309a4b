//! The values a slab and its kind can both give; what a slab leaves out, its kind supplies.

use super::Thickened;
use crate::input::book::Curing;
use crate::input::phrases::{
    BarsPhrase, BasePhrase, BorderPhrase, DowelsPhrase, FallPhrase, ThicknessPhrase,
};
use crate::reading::{At, Fields, Problems};
use crate::values::Length;

#[derive(Clone, Debug, Default)]
pub struct SlabValues {
    pub thickness: Option<At<ThicknessPhrase>>,
    pub mix: Option<At<String>>,
    pub base: Option<At<BasePhrase>>,
    pub bars: Option<At<BarsPhrase>>,
    pub mesh: Option<At<String>>,
    pub dowels: Option<At<DowelsPhrase>>,
    pub ties: Option<At<DowelsPhrase>>,
    pub fiber: Option<At<String>>,
    pub finish: Option<At<String>>,
    pub border: Option<At<BorderPhrase>>,
    pub color: Option<At<String>>,
    pub seal: Option<At<String>>,
    pub curing: Option<At<Curing>>,
    /// `Some(None)` is an explicit `none`.
    pub joints: Option<At<Option<Length>>>,
    pub fall: Option<At<FallPhrase>>,
    /// `Some(None)` is an explicit `none`.
    pub thickened: Option<At<Option<Thickened>>>,
    pub retarder: Option<At<bool>>,
}

impl SlabValues {
    pub fn read(fields: &Fields<'_>, problems: &mut Problems) -> Self {
        Self {
            thickness: fields.read("thickness", problems),
            mix: fields.read::<String>("mix", problems),
            base: fields.read("base", problems),
            bars: fields.read("bars", problems),
            mesh: fields.read::<String>("mesh", problems),
            dowels: fields.read("dowels", problems),
            ties: fields.read("ties", problems),
            fiber: fields.read::<String>("fiber", problems),
            finish: fields.read::<String>("finish", problems),
            border: fields.read("border", problems),
            color: fields.read::<String>("color", problems),
            seal: fields.read::<String>("seal", problems),
            curing: fields.read("curing", problems),
            joints: fields.read::<String>("joints", problems).and_then(|text| {
                if text.value == "none" {
                    return Some(At {
                        value: None,
                        place: text.place,
                    });
                }
                positive(&text, problems).map(|at| At {
                    value: Some(at.value),
                    place: at.place,
                })
            }),
            fall: fields.read("fall", problems),
            thickened: fields
                .node("thickened")
                .and_then(|node| super::written::thickened(node, problems)),
            retarder: fields.yes("vapor retarder", problems),
        }
    }

    /// These values, with `usual` where there are none; and the keys that were taken from it.
    pub fn or(self, usual: &Self) -> (Self, Vec<&'static str>) {
        let mut taken = Vec::new();
        let merged = Self {
            thickness: pick(
                self.thickness,
                usual.thickness.as_ref(),
                "thickness",
                &mut taken,
            ),
            mix: pick(self.mix, usual.mix.as_ref(), "mix", &mut taken),
            base: pick(self.base, usual.base.as_ref(), "base", &mut taken),
            bars: pick(self.bars, usual.bars.as_ref(), "bars", &mut taken),
            mesh: pick(self.mesh, usual.mesh.as_ref(), "mesh", &mut taken),
            dowels: pick(self.dowels, usual.dowels.as_ref(), "dowels", &mut taken),
            ties: pick(self.ties, usual.ties.as_ref(), "ties", &mut taken),
            fiber: pick(self.fiber, usual.fiber.as_ref(), "fiber", &mut taken),
            finish: pick(self.finish, usual.finish.as_ref(), "finish", &mut taken),
            border: pick(self.border, usual.border.as_ref(), "border", &mut taken),
            color: pick(self.color, usual.color.as_ref(), "color", &mut taken),
            seal: pick(self.seal, usual.seal.as_ref(), "seal", &mut taken),
            curing: pick(self.curing, usual.curing.as_ref(), "curing", &mut taken),
            joints: pick(self.joints, usual.joints.as_ref(), "joints", &mut taken),
            fall: pick(self.fall, usual.fall.as_ref(), "fall", &mut taken),
            thickened: pick(
                self.thickened,
                usual.thickened.as_ref(),
                "thickened",
                &mut taken,
            ),
            retarder: pick(
                self.retarder,
                usual.retarder.as_ref(),
                "vapor retarder",
                &mut taken,
            ),
        };
        (merged, taken)
    }
}

fn pick<T: Clone>(
    own: Option<At<T>>,
    usual: Option<&At<T>>,
    key: &'static str,
    taken: &mut Vec<&'static str>,
) -> Option<At<T>> {
    if own.is_none() && usual.is_some() {
        taken.push(key);
    }
    own.or_else(|| usual.cloned())
}

fn positive(text: &At<String>, problems: &mut Problems) -> Option<At<Length>> {
    match crate::input::phrases::positive(&text.value) {
        Ok(value) => Some(At {
            value,
            place: text.place,
        }),
        Err(unreadable) => {
            problems.push(crate::reading::Problem::from(unreadable).at(text.place));
            None
        }
    }
}
