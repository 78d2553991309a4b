//! Unit prices for work nobody could see, made like the price of a job: lines, then the policy.

use super::estimate::{PriceSaid, estimate};
use super::lines::{LineItem, line};
use super::pricing::Pricing;
use super::totals::Totals;
use crate::input::book::{ItemKey, PriceBook};
use crate::input::business::{PricePolicy, Unforeseen, UnforeseenPrice};
use crate::reading::{At, Problem, Problems};
use crate::trade::order::{Need, NeedItem};
use crate::trade::working::Quantity;
use crate::values::{Amount, Money, Unit};

/// The price of one unit before tax, and its lines where it is made of any.
#[derive(Clone, Debug)]
pub struct UnitCost {
    pub price: Money,
    /// Empty where the owner wrote the price itself.
    pub lines: Vec<LineItem>,
}

/// In the order of the business file; reports what the book does not have.
pub(super) fn unit_prices(at: Pricing<'_>, problems: &mut Problems) -> Vec<UnitCost> {
    let all = at.business.unforeseen.iter();
    all.map(|one| unit_cost(one, at, problems)).collect()
}

fn unit_cost(one: &Unforeseen, at: Pricing<'_>, problems: &mut Problems) -> UnitCost {
    let book = at.book;
    let parts = match &one.price {
        UnforeseenPrice::Written(price) => {
            return UnitCost {
                price: *price,
                lines: Vec::new(),
            };
        }
        UnforeseenPrice::Of(parts) => parts,
    };
    let lines = parts.iter().flat_map(|(named, amount)| {
        let item = &item(named, book);
        if let Some(sold) = book.items.get(&item.value).map(|item| item.unit)
            && sold != amount.value.unit
        {
            return Err(problems.push(wrong_unit(one, item, amount, sold)));
        }
        let need = Need {
            item: NeedItem::Item(item.clone()),
            quantity: Quantity::given(
                format!("{}, a {} of {}", item.value, one.per, one.what),
                amount.value,
                amount.place,
            ),
            placement: None,
            shares: Vec::new(),
        };
        line(&need, book, &at.days[0], problems)
    });
    let lines = estimate(
        lines.collect(),
        &of_a_unit(&at.business.price),
        PriceSaid::default(),
    );
    UnitCost {
        price: Totals::of(&lines).price,
        lines,
    }
}

/// An item of the book by its name, or by the purpose it serves under `use`.
fn item(named: &At<ItemKey>, book: &PriceBook) -> At<ItemKey> {
    if book.items.contains_key(&named.value) {
        return named.clone();
    }
    let mut roles = book.rules.roles.iter();
    let role = roles.find(|(role, _)| role.name() == named.value);
    let key = role.and_then(|(_, item)| item.value.clone());
    At {
        value: key.unwrap_or_else(|| named.value.clone()),
        place: named.place,
    }
}

/// The slip is in the business file, whatever the book says.
fn wrong_unit(one: &Unforeseen, item: &At<String>, amount: &At<Amount>, sold: Unit) -> Problem {
    let message = format!(
        "`{}` takes `{}` of `{}`, and the book prices it by the {sold}",
        one.what, amount.value, item.value,
    );
    Problem::new("wrong-unit", message)
        .at(amount.place)
        .help(format!("write how many {} it takes", sold.plural()))
}

/// The owner's policy without what is meant for whole jobs: the minimum and the round price.
fn of_a_unit(policy: &PricePolicy) -> PricePolicy {
    let mut own = policy.clone();
    own.minimum.value = Money::ZERO;
    own.round_up_to.value = Money::cents(1);
    own
}
