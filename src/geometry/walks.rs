//! Outlines for tests, walked as they are said.

use super::outline::Outline;
use super::walk::Leg;
use crate::values::Length;

/// `east 24 ft, south 20 ft, west 16 ft bulge 18 in`.
pub fn legs(text: &str) -> Vec<Leg> {
    let leg = |part: &str| {
        let (way, bulge) = part.split_once(" bulge ").unwrap_or((part, "0 in"));
        let length = |text: &str| text.parse::<Length>().unwrap();
        let (direction, long) = way.trim().split_once(' ').unwrap();
        let bulge = match bulge.strip_prefix('-') {
            Some(inward) => -length(inward),
            None => length(bulge),
        };
        Leg {
            direction: direction.parse().unwrap(),
            length: length(long),
            bulge,
        }
    };
    text.split(',').map(leg).collect()
}

pub fn walked(text: &str) -> Outline {
    Outline::walked(&legs(text)).unwrap()
}
