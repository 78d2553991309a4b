//! What can be written as one text after a key, and what the guide calls it.

use crate::values::{Amount, Day, Length, Money, Percent, Unit, UnitPrice, Unreadable};

/// A value that is written as one text.
pub trait Written: Sized {
    /// A word or two for the guide: `length`, `percent`, `date`.
    const KIND: &'static str;

    fn written(text: &str) -> Result<Self, Unreadable>;
}

/// Lets types that parse be the types of keys, each with its word for the guide.
macro_rules! written {
    ($($type:ty = $kind:literal;)*) => { $(
        impl $crate::reading::Written for $type {
            const KIND: &'static str = $kind;

            fn written(text: &str) -> Result<Self, $crate::values::Unreadable> {
                text.parse()
            }
        }
    )* };
}

pub(crate) use written;

written! {
    Amount = "number";
    Day = "date";
    Length = "length";
    Money = "amount";
    Percent = "percent";
    Unit = "unit";
    UnitPrice = "price";
}

impl Written for String {
    const KIND: &'static str = "text";

    fn written(text: &str) -> Result<Self, Unreadable> {
        Ok(text.to_owned())
    }
}
