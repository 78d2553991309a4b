//! `way`: how much longer placing takes where the way is long.

use crate::input::phrases::{Further, Method};
use crate::reading::At;
use crate::reading::keys::keys;

keys! {
    /// The owner's own in place of what is built in.
    #[derive(Default)]
    pub struct Ways in "`way`" {
        chute: Option<At<Further>> = "chute", else "20% per 10 ft past 20 ft",
            "hours of `place by chute` by `distance` of the access", "15% per 10 ft past 25 ft";
        wheelbarrow: Option<At<Further>> = "wheelbarrow", else "10% per 50 ft past 50 ft",
            "of `place by wheelbarrow`", "12% per 50 ft past 40 ft";
        buggy: Option<At<Further>> = "buggy", else "5% per 100 ft past 100 ft",
            "of `place by buggy`", "4% per 100 ft past 150 ft";
        pump: Option<At<Further>> = "pump", else "5% per 100 ft past 100 ft",
            "of `place by pump`", "0% per 100 ft past 100 ft";
    }
}

impl Ways {
    pub fn by(&self, method: Method) -> Option<&At<Further>> {
        match method {
            Method::Chute => self.chute.as_ref(),
            Method::Wheelbarrow => self.wheelbarrow.as_ref(),
            Method::Buggy => self.buggy.as_ref(),
            Method::Pump => self.pump.as_ref(),
        }
    }
}
