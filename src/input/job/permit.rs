//! Who takes out the permit.

use crate::reading::{At, Fields, Problems};

/// Who takes out the permit.
#[derive(Clone, Debug)]
pub enum Permit {
    /// Nothing is said: what the business usually says about permits holds.
    Unsaid,
    /// None is asked for.
    None,
    Customer,
    /// We do, for an item of the book.
    Item(At<String>),
}

pub(super) fn permit(job: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Permit {
    let permit = job.read::<String>(key, problems);
    match permit {
        None => Permit::Unsaid,
        Some(word) => match word.value.as_str() {
            "none" | "no" => Permit::None,
            "customer" => Permit::Customer,
            _ => Permit::Item(word),
        },
    }
}
