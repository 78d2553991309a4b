//! `3%` of direct cost, or `3% of cost and overhead`.

use std::str::FromStr;

use crate::values::{Percent, Unreadable};

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

impl FromStr for Contingency {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let (percent, on) = match text.split_once(" of ") {
            None => (text, ContingencyBase::Direct),
            Some((percent, "direct cost")) => (percent, ContingencyBase::Direct),
            Some((percent, "cost and overhead")) => (percent, ContingencyBase::DirectAndOverhead),
            Some((percent, other)) => {
                return Err(Unreadable::new(
                    "bad-contingency",
                    format!("a contingency is not figured on `{other}`"),
                    format!(
                        "write `{percent}`, which is of direct cost, or `{percent} of cost and overhead`"
                    ),
                ));
            }
        };
        Ok(Self {
            percent: percent.parse()?,
            on,
        })
    }
}

#[cfg(test)]
mod tests {
    use rust_decimal_macros::dec;

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
        case(
            "3% of cost and overhead",
            ContingencyBase::DirectAndOverhead,
        );
        let code = |text: &str| text.parse::<Contingency>().map_err(|error| error.code);
        assert_eq!(code("3% of profit"), Err("bad-contingency"));
    }
}
