//! Every computed quantity can be followed with a pocket calculator.

use super::calculator::{printed, typed};
use super::each;
use crate::support::reachable;
use flatwork::trade::Working;

#[test]
fn a_pocket_calculator_comes_to_the_printed_amount() {
    each(0..60, |seed, job, offer| {
        for quantity in reachable(offer) {
            if !matches!(quantity.working(), Working::Rule { .. }) {
                continue;
            }
            let place = || {
                format!(
                    "seed {seed}: `{}` is {} by {}\n{}",
                    quantity.name(),
                    quantity.amount(),
                    quantity.shown(),
                    job.text()
                )
            };
            let range = typed(&quantity).unwrap_or_else(|problem| panic!("{problem}: {}", place()));
            let slack = printed(quantity.amount());
            let fits =
                range.low - slack <= quantity.value() && quantity.value() <= range.high + slack;
            assert!(fits, "typed in it gives {range:?}: {}", place());
        }
    });
}
