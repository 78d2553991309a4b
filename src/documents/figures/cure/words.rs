//! Every word of the cure figure, in one place, so that another language is another value.
//!
//! A word in braces is filled in; nothing else is ever added to a sentence.

use crate::trade::curing::Use;

/// The words of the figure and of its alternative text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CureWords {
    pub strength: &'static str,
    pub days: &'static str,
    pub ordered: &'static str,
    pub warm: &'static str,
    pub cool: &'static str,
    /// When warm and cool are one temperature.
    pub steady: &'static str,
    pub walk: &'static str,
    pub car: &'static str,
    pub heavy: &'static str,
    pub seal: &'static str,
    pub deicer: &'static str,
    pub day: &'static str,
    pub day_when_dry: &'static str,
    pub warm_day: &'static str,
    /// Both days, where the bar leaves no room for two words.
    pub both_days: &'static str,
    pub first_winter: &'static str,
    pub second_winter: &'static str,
    pub sparingly: &'static str,
    pub key_warm: &'static str,
    pub key_cool: &'static str,
    /// When weather makes no difference.
    pub key_day: &'static str,
    pub key_between: &'static str,
    /// Alternative text.
    pub about_band: &'static str,
    pub about_steady: &'static str,
    pub about_moment: &'static str,
    pub about_steady_moment: &'static str,
    pub about_days: &'static str,
    pub about_use: &'static str,
    pub about_deicer: &'static str,
}

impl CureWords {
    pub const ENGLISH: Self = Self {
        strength: "Strength",
        days: "Day after the pour",
        ordered: "the strength we ordered, {strength}",
        warm: "warm, {degrees} °F",
        cool: "cool, {degrees} °F",
        steady: "at {degrees} °F",
        walk: "Walk on it",
        car: "Light car",
        heavy: "Heavier vehicle",
        seal: "Seal it",
        deicer: "First de-icer",
        day: "day {day}",
        day_when_dry: "day {day}, when dry",
        warm_day: "warm: day {day}",
        both_days: "day {day}, warm: day {warm}",
        first_winter: "not in the first winter: spread sand",
        second_winter: "second winter",
        sparingly: "sparingly",
        key_warm: "if it stays warm",
        key_cool: "if it stays cool",
        key_day: "from this day",
        key_between: "in between: ask us",
        about_band: "Strength by day after the pour, in percent of the strength we ordered, \
                     {strength}, if the concrete stays warm ({warm} °F) and if it stays cool \
                     ({cool} °F).",
        about_steady: "Strength by day after the pour, in percent of the strength we ordered, \
                       {strength}, if the concrete keeps {warm} °F.",
        about_moment: "Day {day}: {warm}% warm, {cool}% cool.",
        about_steady_moment: "Day {day}: {warm}%.",
        about_days: "{use}: day {warm} if it stays warm, day {day} if it stays cool; in between, \
                     ask us.",
        about_use: "{use}: {day}.",
        about_deicer: "{use}: {first}; {second}: {sparingly}.",
    };
}

impl CureWords {
    pub fn name_of(&self, use_: Use) -> &'static str {
        match use_ {
            Use::Walk => self.walk,
            Use::Car => self.car,
            Use::Heavy => self.heavy,
            Use::Seal => self.seal,
        }
    }

    /// How the day is said from which a use is allowed.
    pub fn day_of(&self, use_: Use) -> &'static str {
        match use_ {
            Use::Seal => self.day_when_dry,
            Use::Walk | Use::Car | Use::Heavy => self.day,
        }
    }
}

/// Fills the braces of a sentence.
pub(super) fn fill(sentence: &str, with: &[(&str, &str)]) -> String {
    with.iter()
        .fold(sentence.to_owned(), |text, (name, value)| {
            text.replace(&format!("{{{name}}}"), value)
        })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn fills_every_brace() {
        let filled = fill(
            CureWords::ENGLISH.both_days,
            &[("day", "13"), ("warm", "7")],
        );
        assert_eq!(filled, "day 13, warm: day 7");
    }
}
