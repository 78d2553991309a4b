//! `85.00`, or `-85.00` where it takes off.

use crate::reading::keys::placeless;
use crate::reading::written::written;
use crate::values::{Money, Unreadable};
use std::str::FromStr;

/// An amount that may be below zero.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Signed(pub Money);

written! { Signed = "amount"; }
placeless! { Signed }

impl FromStr for Signed {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        match text.strip_prefix('-') {
            Some(less) => less.trim_start().parse().map(|less: Money| Self(-less)),
            None => text.parse().map(Self),
        }
    }
}
