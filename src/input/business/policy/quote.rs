//! Days and limits of a quote.

use crate::input::phrases::Days;
use crate::reading::keys::keys;
use crate::reading::{At, Fields, Place, Problems};
use crate::values::{Money, Percent};

keys! {
    pub struct QuotePolicy in "`quote`" {
        good_for: Days = "good for", usual "30 days", "how long a quote stands", "30 days";
        lead_time: Days = "lead time", usual "30 days",
            "from the quote to the pour, when the takeoff names no day", "35 days";
        start_window: Days = "start window", usual "11 days", "how wide the promised start is", "11 days";
        stale_after: At<Days> = "price stale after", usual "60 days",
            "a price older than this is worth a call", "60 days";
        deposit_cap: At<Percent> = "deposit cap", usual "100%",
            "the most you may ask when the contract is signed; check your state", "33%";
        deposit_limit: At<Money> = "deposit limit", usual "0.00",
            "and never more than this; 0 means no such limit", "1000.00";
        /// Where the owner says that customers have a right to cancel in the days after signing.
        cancellation: Option<Place> = "right to cancel" as "yes or no", usual "no",
            "whether your customers may cancel within three business days; check your state's law", "yes",
            by place_of_yes;
    }
}

/// Where it says yes; what is neither is reported, and counts as left out.
fn place_of_yes(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Option<Place> {
    let yes = fields.yes(key, problems).filter(|yes| yes.value);
    yes.map(|yes| yes.place)
}
