//! Totals: sums over lines, never stored beside them.

use rust_decimal::Decimal;

use super::lines::{LineItem, Tier};
use crate::values::Money;

/// Sums over lines; nothing is stored beside them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Totals {
    pub direct: Money,
    pub cost: Money,
    pub price: Money,
    pub tax: Money,
    pub total: Money,
}

impl Totals {
    pub fn of(lines: &[LineItem]) -> Self {
        let side = |wanted: Tier| {
            lines
                .iter()
                .filter(|line| line.side == wanted)
                .map(LineItem::money)
                .sum::<Money>()
        };
        let direct = side(Tier::Direct);
        let cost = direct + side(Tier::Indirect);
        let price = cost + side(Tier::Price);
        let tax = side(Tier::Tax);
        Self {
            direct,
            cost,
            price,
            tax,
            total: price + tax,
        }
    }

    /// The sum of all lines down to this tier.
    pub const fn down_to(&self, side: Tier) -> Money {
        match side {
            Tier::Direct => self.direct,
            Tier::Indirect => self.cost,
            Tier::Price => self.price,
            Tier::Tax => self.total,
        }
    }

    /// Margin on the price before tax, exact; none where there is no price.
    pub fn margin(&self) -> Option<Decimal> {
        let price = self.price.dollars();
        (!price.is_zero()).then(|| (price - self.cost.dollars()) / price * Decimal::ONE_HUNDRED)
    }
}
