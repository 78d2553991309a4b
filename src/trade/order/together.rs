//! What is added by hand of an item that a rule buys too: both go up to how it is sold together, once.

use super::{Need, NeedItem, Section, Shares, sold};
use crate::input::book::Selling;
use crate::trade::term::{Term, largest, number};
use crate::trade::working::{Name, Quantity, Working};

/// What is bought of an item beside what is bought of it before.
pub const TOGETHER: &str = "with what is bought of it before, up to how it is sold, less that";

/// What was bought of the item before for the whole job, where this or that is added by hand.
pub(super) fn before<'a>(needs: &'a [Need], item: &str, shares: &Shares) -> Vec<&'a Need> {
    let is_added = by_hand(shares);
    let same = needs.iter().filter(|need| match &need.item {
        NeedItem::Item(known) => known.value == item && need.placement.is_none(),
        NeedItem::Lump { .. } => false,
    });
    same.filter(|need| is_added || by_hand(&need.shares))
        .collect()
}

/// So much more: all that is wanted of it, up to how it is sold, less what was bought.
pub(super) fn more(name: Name, selling: &Selling, here: Term, before: &[&Need]) -> Quantity {
    let all = before.iter().fold(here, |all, need| all + wanted(need));
    let mut more = sold(selling, all);
    for need in before {
        more = more - &need.quantity;
    }
    // What was bought may be enough for both.
    if more.value().is_sign_negative() {
        more = largest(vec![more, number(0)]);
    }
    Quantity::by(TOGETHER, name, selling.unit, more)
}

pub(super) fn by_hand(shares: &Shares) -> bool {
    shares.iter().any(|(part, _)| *part == Section::Extras)
}

/// Before it went up; of what was added by hand after something else, what was written.
fn wanted(need: &Need) -> Term {
    let is_set = matches!(need.quantity.working(), Working::Set { .. });
    if by_hand(&need.shares) && !is_set {
        number(
            need.shares
                .iter()
                .map(|(_, much)| *much)
                .sum::<rust_decimal::Decimal>(),
        )
    } else {
        need.quantity.wanted()
    }
}
