//! The fixed words of a quote, in English.

use crate::documents::views::quote::Term;

pub const KIND_HEADING: &str = "A word on cracks and color";
pub const KIND_WORD: &str = "Concrete shrinks as it dries and no two loads match, so a hairline crack or a cloud of lighter gray is the nature of the material and not a fault; should one ever worry you, call, and we will come and look at it with you.";
pub const ACCEPT_HEADING: &str = "Yes, please go ahead";
pub const ACCEPT: &str = "I accept this quote.";
pub const ACCEPT_WITH_CHOICES: &str = "I accept this quote with the choices ticked above.";
pub const ACCEPT_WITH_ONE_OF_EACH: &str = "I accept this quote with the choices ticked above. Where one must be ticked and none is, the first one counts.";
pub const CURE_HEADING: &str = "While your concrete cures";
pub const CURE_LEAD: &str = "It hardens for weeks, faster when it is warm. Count from the day of the pour; if in doubt, wait the longer time.";
pub const CURE_LEAD_OF_EACH: &str = "It hardens for weeks, faster when it is warm. Count from the day of each pour; if in doubt, wait the longer time.";
pub const DEFERRAL: &str = "Local codes, the concrete supplier and licensed professionals decide wherever they say otherwise; nothing here is engineering or legal advice.";
pub const RAIN: &str = "Rain may move a day, not the price.";
pub const FROST_IN: &str =
    "Rain or frost may move a day, not the price: blankets against frost are in it.";
pub const FROST_OUT: &str =
    "Rain or frost may move a day. What keeps frost off the concrete is not in the price.";
pub const CHOICES_LEAD: &str = "The work is complete and sound without any of these.";
pub const CHOICES_LEAD_SOME: &str = "Please tick one where it says so; the first of them is in the total. The work is complete and sound without any of the others.";
pub const CHOICES_LEAD_ALL: &str = "Please tick one of each; the first is in the total.";
pub const AS_QUOTED: &str = "as quoted";

pub const KIND_WORD_COLOR: &str = "Color mixed into concrete lightens as it dries and differs a little from load to load; a sample shows the kind of color, not the exact shade.";

pub const CURING_COAT: (&str, &str) = (
    "Curing coat.",
    "We spray one on. Leave it alone: no washing and no scrubbing for 28 days.",
);
pub const COVER: (&str, &str) = ("Cover.", "Leave it in place until we take it off.");
pub const WET: (&str, &str) = (
    "Keep it wet.",
    "For seven days, all over: a sprinkler or wet cloth will do.",
);
pub const WET_BY_US: (&str, &str) = (
    "Kept wet.",
    "We come each day for a week. Please leave what lies on it, and the tap on.",
);
pub const BLANKETS: (&str, &str) = (
    "Blankets.",
    "They keep frost off for the first {days} days. Leave them on, weighted down, until we take them off.",
);
pub const COLOR: (&str, &str) = (
    "Color.",
    "Dark and cloudy while it dries; it settles over some weeks. Ask us before you scrub a white film.",
);
pub const SEALED: (&str, &str) = (
    "Sealed surface.",
    "Wash it with water and mild soap. When water soaks in again, it is time for a new coat.",
);

pub const FIRST_WINTER: (&str, &str) = (
    "First winter.",
    "Sand, no salt. Never use lawn fertilizer against ice: it eats concrete.",
);
pub const WATER: (&str, &str) = (
    "Water.",
    "Steer roof and garden water away from the slab, and keep soil up along its edges.",
);

pub const SAFETY: &[(&str, &str)] = &[
    (
        "Wet concrete burns",
        "skin and eyes. Rinse at once with much water; for eyes and burns see a doctor.",
    ),
    (
        "Dust from cutting",
        "harms lungs. We cut wet; please keep windows shut and stay back.",
    ),
    (
        "Barricades stay up",
        "until we take them down. Please keep children and pets out, evenings too.",
    ),
];

pub fn terms(pairs: &[(&str, &str)]) -> Vec<Term> {
    pairs
        .iter()
        .map(|(word, text)| Term::new(*word, *text))
        .collect()
}
