//! Totals: sums over lines, never stored beside them.

use rust_decimal::Decimal;

use super::lines::{LineItem, PricePart};
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
        let side = |wanted: PricePart| {
            lines
                .iter()
                .filter(|line| line.side == wanted)
                .map(LineItem::money)
                .sum::<Money>()
        };
        let direct = side(PricePart::Direct);
        let cost = direct + side(PricePart::Indirect);
        let price = cost + side(PricePart::Price);
        let tax = side(PricePart::Tax);
        Self {
            direct,
            cost,
            price,
            tax,
            total: price + tax,
        }
    }

    /// The sum of all lines down to this side.
    pub const fn down_to(&self, side: PricePart) -> Money {
        match side {
            PricePart::Direct => self.direct,
            PricePart::Indirect => self.cost,
            PricePart::Price => self.price,
            PricePart::Tax => self.total,
        }
    }

    /// Margin on the price before tax, exact; none where there is no price.
    pub fn margin(&self) -> Option<Decimal> {
        let price = self.price.dollars();
        (!price.is_zero()).then(|| (price - self.cost.dollars()) / price * Decimal::ONE_HUNDRED)
    }
}
