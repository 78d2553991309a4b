//! Is there room for the bars in the slab?

use super::{Case, DECIDES};
use crate::reading::Problem;
use crate::tables::cover::top_cover;
use crate::tables::{Read, Source};
use crate::values::Length;

const SOURCE: Source = Source::new("US Army TI 809-28", "", Read::Primary);
/// Concrete left below the bars; common practice, no source.
const BELOW: Length = Length::sixty_fourths(96);

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let answers = case.takeoff.slabs.iter().filter_map(|slab| {
        let bars = slab.bars.as_ref()?;
        let (thickness, above) = (slab.thickness.value.thin, top_cover(slab.thickness.value.thin));
        let crossing = bars.layers().fold(Length::ZERO, |sum, layer| sum + layer.bar.diameter());
        let below = thickness - above - crossing;
        let sizes: Vec<String> = bars.sizes().iter().map(ToString::to_string).collect();
        (below < BELOW).then(|| {
            let left = below.max(Length::ZERO);
            let left = if left == Length::ZERO { "nothing".to_owned() } else { format!("`{left}`") };
            let message = format!(
                "{}{} bars with {above} above them leave {left} below in `{}`, `{thickness}` thick",
                if bars.layers().count() == 1 { "" } else { "crossing " },
                sizes.join(" and "), slab.key
            );
            Problem::new("no-room-for-bars", message)
                .at(slab.thickness.place)
                .help(format!(
                    "use a thicker slab, thinner bars or mesh ({SOURCE}; {BELOW} below is {}); the 3 in rule is for footings; {DECIDES}",
                    Source::PRACTICE
                ))
        })
    });
    answers.collect()
}
