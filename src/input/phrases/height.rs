//! `4 in above, step`: how high what meets a slab lies, and what is done about it.

use super::reader::phrase;
use crate::reading::words;
use crate::values::Length;

/// How much higher than the slab, or with a minus lower, and what is done where somebody says it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Height {
    pub above: Length,
    done: Option<Done>,
}

words! {
    /// What is done about a difference in height.
    pub enum Done("unknown-word", "what is done is not `{}`", choose) {
        Flush "flush";
        /// The edge of one is ground or rounded down to the other.
        Trim "trim";
        Step "step";
        Ramp "ramp";
    }
}

/// Up to this edges are trimmed, above it people step. Common practice, no source.
const TRIMMED: Length = Length::sixty_fourths(32);

impl Height {
    /// As it is said, else by how much it is.
    pub fn done(self) -> Done {
        let high = self.above.abs();
        self.done.unwrap_or(if high == Length::ZERO {
            Done::Flush
        } else if high <= TRIMMED {
            Done::Trim
        } else {
            Done::Step
        })
    }
}

phrase!(
    Height,
    "how much above or below",
    "bad-height",
    "a height",
    "write `flush`, `4 in above` or `1 in below`, and what is done where it is not a step: `2 in below, ramp`, `1/2 in above, trim`",
    |said| {
        let (high, done) = match said.split(",") {
            Some((high, done)) => (high, Some(said.need(done.text().parse().ok())?)),
            None => (said, None),
        };
        let above = if high.is("flush") {
            Length::ZERO
        } else if let Some(above) = high.before(" above") {
            above.read()?
        } else {
            -said.need(high.before(" below"))?.read::<Length>()?
        };
        Ok(Height { above, done })
    }
);

#[cfg(test)]
mod tests {
    use super::super::reader::tests::refused;
    use super::*;

    #[test]
    fn reads_what_lies_higher_or_lower_and_what_is_done() {
        #[track_caller]
        fn case(text: &str, sixty_fourths: i64, done: Done) {
            let height: Height = text.parse().unwrap();
            assert_eq!(height.above, Length::sixty_fourths(sixty_fourths), "{text}");
            assert_eq!(height.done(), done, "{text}");
        }
        case("flush", 0, Done::Flush);
        case("1/2 in above", 32, Done::Trim);
        case("5/8 in below", -40, Done::Step);
        case("4 in above", 256, Done::Step);
        case("2 in below, ramp", -128, Done::Ramp);
        refused::<Height>("bad-height", &["4 in", "level", "4 in above, jump"]);
    }
}
