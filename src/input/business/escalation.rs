//! The clause that lets the price of concrete follow a published price, where the owner prints one.

use super::tables;
use crate::reading::{At, Node, Problems};
use crate::values::{Money, Percent};

/// What a contract names: never what the owner pays.
#[derive(Clone, Debug)]
pub struct Escalation {
    /// As the customer reads it.
    pub of: String,
    /// Whose published price counts.
    pub index: String,
    /// That price when the quote went out, for a cubic yard.
    pub reference: At<Money>,
    /// So much either way is not followed.
    pub over: Percent,
}

pub(super) fn read(node: &Node, problems: &mut Problems) -> Option<Escalation> {
    let fields = node.fields(&tables::ESCALATION, problems).ok()?;
    let of = fields.read::<String>("of", problems);
    let of = of.map_or_else(|| "Ready-mix".to_owned(), |of| of.value);
    let index = fields
        .required("index", problems)
        .ok()
        .and_then(|_| fields.read::<String>("index", problems));
    let reference = fields.need("reference", problems).ok();
    let over = fields.need("over", problems).ok();
    Some(Escalation {
        of,
        index: index?.value,
        reference: reference?,
        over: over?.value,
    })
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
