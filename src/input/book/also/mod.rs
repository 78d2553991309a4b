//! `also`: the owner's own rules. Of a quantity that the job has, each makes something bought or done.

mod checks;
mod order;
mod quantities;

pub(super) use checks::check;
pub use order::{in_order, is_late};
pub use quantities::{Known, all_known, known};

use super::item::ItemKey;
use super::stage::Stage;
use crate::input::phrases::{Begun, Effort, Method, Much};
use crate::reading::keys::keys;
use crate::reading::{At, Fields, Place, Problem, Problems, Read, words};
use crate::values::{Amount, Length};

keys! {
    /// What follows from what.
    pub struct Also in "a rule of `also`" {
        by: Option<At<String>> = "for" as "quantity", none,
            "what it goes by: a quantity of the job, an item that is bought, or another rule that buys",
            "curved form", by Fields::if_said;
        once: Option<At<OnceA>> = "once a" as "word", none,
            "job, pour, slab, load, trip or box, in place of `for`", "pour",
            by Fields::if_said;
        buy: Option<At<ItemKey>> = "buy" as "name", none, "an item of this book", "stone truck";
        each: Option<At<Begun>> = "each", else "one for one",
            "one for so much begun; of two amounts, the one that is reached first", "12 ton",
            by Fields::if_said;
        much: Option<At<Much>> = "much", else "as much as it goes by",
            "how much is bought for so much, or how many each time",
            "60 lb per 100 sq ft", by Fields::if_said;
        /// Of all that it goes by together.
        over: Option<At<Amount>> = "over" as "amount", none,
            "nothing follows unless there is more than this", "20 ft", by Fields::if_said;
        hours: Option<At<Effort>> = "hours", none,
            "work for so much, or for each time", "1.2 hours per 100 ft", by Fields::if_said;
        stage: Stage = "stage" as "word", usual "form",
            "when it is done: remove, form, place, strip or return", "place";
        /// A purpose or a task that is built in.
        instead: Option<At<String>> = "instead of" as "purpose or task", none,
            "what is built in for the same; it goes down by what this rule goes by", "forms";
        only: Option<Only> = "where", else "everywhere", "only for some slabs", "{kind: driveway}";
        says: Option<String> = "says", else "nothing",
            "what the customer reads of it", "joints sawn the next morning";
        .. place: Place;
    } then one_of_each
}

keys! {
    /// Which slabs a rule is for: those of which all of it is true.
    pub struct Only in "`where`" {
        slab: Option<At<String>> = "slab", none, "the slab of this name", "driveway";
        kind: Option<At<String>> = "kind", none, "slabs of this kind", "driveway";
        finish: Option<At<String>> = "finish", none, "slabs of this finish", "broom";
        placed: Option<At<Method>> = "placed by", none, "how their concrete is placed", "pump";
        thicker: Option<At<Length>> = "thicker than", none, "of the slab by itself", "5 in";
        has: Option<At<String>> = "has" as "quantity", none, "slabs that have some of it", "joints";
        .. place: Place;
    }
}

words! {
    /// What is counted where a rule goes by no quantity.
    pub enum OnceA("unknown-word", "nothing is once a `{}`", choose) {
        Job "job";
        Pour "pour";
        Slab "slab";
        Load "load";
        Trip "trip";
        Box "box";
    }
}

/// A rule goes by one thing, and something follows from it.
fn one_of_each(also: Also, _: &Fields<'_>, problems: &mut Problems) -> Read<Also> {
    let fault = match (&also.by, &also.once) {
        (None, None) => "does not say what it goes by: write `for` or `once a`",
        (Some(_), Some(_)) => "goes by two things: write `for` or `once a`, not both",
        _ if also.buy.is_none() && also.hours.is_none() => {
            "makes nothing: write `buy`, `hours` or both"
        }
        _ if also.buy.is_none() && also.much.is_some() => {
            "says `much` of nothing that is bought: write `buy`, or hours `per` so much"
        }
        _ if also.each.is_some() && also.much.is_some() => {
            "says how much in two ways: write `each` or `much`, not both"
        }
        (None, Some(_)) if also.over.is_some() => {
            "counts times, which are never `over` an amount: leave `over` out, or go `for` a quantity"
        }
        _ if also.buy.is_none() && also.each.is_some() => {
            "says `each` of nothing that is bought: write `buy`, or hours `per` so much"
        }
        _ => return Ok(also),
    };
    let (what, help) = fault.split_once(": ").unwrap_or((fault, ""));
    let problem = Problem::new("half-a-rule", format!("this rule {what}"));
    Err(problems.push(problem.at(also.place).help(help)))
}
