//! `3%` of direct cost, or `3% of cost and overhead`.

use super::reader::phrase;
use crate::values::Percent;

/// What the contingency is a percentage of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ContingencyBase {
    Direct,
    DirectAndOverhead,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Contingency {
    pub percent: Percent,
    pub on: ContingencyBase,
}

phrase!(
    Contingency,
    "percent",
    "bad-contingency",
    "a contingency",
    "write `3%`, which is of direct cost, or `3% of cost and overhead`",
    |said| {
        let (percent, on) = said
            .split(" of ")
            .map_or((said, None), |(percent, on)| (percent, Some(on)));
        let on = match on.map(super::reader::Said::text) {
            None | Some("direct cost") => ContingencyBase::Direct,
            Some("cost and overhead") => ContingencyBase::DirectAndOverhead,
            Some(other) => {
                let mut refused =
                    said.because(format!("a contingency is not figured on `{other}`"));
                refused.help = refused.help.replace("3%", percent.text());
                return Err(refused);
            }
        };
        let percent = percent.read()?;
        Ok(Contingency { percent, on })
    }
);

#[cfg(test)]
mod tests {
    use rust_decimal_macros::dec;

    use super::super::reader::tests::refused;
    use super::*;

    #[test]
    fn a_contingency_is_of_direct_cost_unless_it_says_otherwise() {
        #[track_caller]
        fn case(text: &str, on: ContingencyBase) {
            let percent = Percent::new(dec!(3));
            assert_eq!(text.parse(), Ok(Contingency { percent, on }), "{text}");
        }
        case("3%", ContingencyBase::Direct);
        case("3% of direct cost", ContingencyBase::Direct);
        let both = ContingencyBase::DirectAndOverhead;
        case("3% of cost and overhead", both);
        refused::<Contingency>("bad-contingency", &["3% of profit"]);
    }
}
