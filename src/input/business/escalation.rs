//! The clause that lets the price of concrete follow a published price, where the owner prints one.

use crate::reading::At;
use crate::reading::keys::keys;
use crate::values::{Money, Percent};

keys! {
    /// What a contract names: never what the owner pays.
    pub struct Escalation in "`escalation`" {
        of: String = "of", usual "Ready-mix", "what it is, as the customer reads it", "Ready-mix";
        index: String = "index", required,
            "whose published price counts; never what you pay", "the ready-mix price the county posts";
        /// That price when the quote went out, for a cubic yard.
        reference: At<Money> = "reference", required,
            "that price when the quote goes out, for a cubic yard", "190.00";
        over: Percent = "over", usual "0%", "so much either way is not followed", "5%";
    }
}

impl Escalation {
    /// The clause as it stands among the terms.
    pub fn clause(&self) -> String {
        let Self {
            of,
            index,
            reference: At {
                value: reference, ..
            },
            over,
        } = self;
        if over.number().is_zero() {
            return format!(
                "{of}: the difference between {index} on the day of the pour and {reference} a cubic yard is added or taken off for each yard ordered."
            );
        }
        format!(
            "{of}: if {index} on the day of the pour is over {over} above or below {reference} a cubic yard, what lies beyond is added or taken off for each yard ordered."
        )
    }
}
