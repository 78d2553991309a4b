//! What is still to come when a job is billed to the end, from the texts the quote kept.

use super::files::Files;
use super::from_record;
use crate::input::job::{Choice, Takeoff};
use crate::office::record::{Accepted, Closing, Quote};
use crate::office::text;
use crate::trade::curing::seal_after;
use crate::values::Day;

/// The facts of the closing page; none where the quote's texts no longer read.
pub fn closing(
    quote: &Quote,
    quoted: Day,
    accepted: &Accepted,
    poured: Option<Day>,
) -> Option<Closing> {
    let desk = from_record::desk(quote, quoted, &mut Files::default()).ok()?;
    let job = chosen(&desk.takeoff, accepted);
    let planned = quote.pours.iter().map(|day| day.0).max()?;
    let poured = poured.unwrap_or(planned);
    let ours = seal_after(job, &desk.book.rules);
    let usual = desk.business.cure.seal.0;
    Some(Closing {
        poured: text::Day(poured),
        seal: text::Day(poured.plus(i64::from(ours.unwrap_or(usual)))),
        is_sealed_by_us: ours.is_some(),
        lids: job
            .slabs
            .iter()
            .flat_map(|slab| &slab.boxes)
            .filter(|one| one.waits_for_lid())
            .map(|one| one.called.clone())
            .collect(),
        promises: desk
            .business
            .promises
            .iter()
            .map(|promise| promise.value.clone())
            .collect(),
    })
}

/// The takeoff with what was signed.
fn chosen<'a>(quoted: &'a Takeoff, accepted: &Accepted) -> &'a Takeoff {
    let choice = Choice(accepted.choice.clone());
    quoted.otherwise.get(&choice).unwrap_or(quoted)
}
