//! From direct cost to the total: overhead, contingency, profit, minimum, rounding, tax, each a line.

use rust_decimal::Decimal;

use super::{Cause, LineItem, Side};
use crate::input::book::Class;
use crate::input::business::{Payment, PricePolicy, TaxBase, TaxRule};
use crate::input::phrases::{Profit, Share};
use crate::reading::At;
use crate::trade::working::{Quantity, Term, number, of, sum};
use crate::values::{Money, Percent, Unit, rounding};

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
        let side = |wanted: Side| {
            lines
                .iter()
                .filter(|line| line.side == wanted)
                .map(LineItem::money)
                .sum::<Money>()
        };
        let direct = side(Side::Direct);
        let cost = direct + side(Side::Indirect);
        let price = cost + side(Side::Price);
        let tax = side(Side::Tax);
        Self {
            direct,
            cost,
            price,
            tax,
            total: price + tax,
        }
    }

    /// Margin on the price before tax, exact; none where there is no price.
    pub fn margin(&self) -> Option<Decimal> {
        let price = self.price.dollars();
        (!price.is_zero()).then(|| (price - self.cost.dollars()) / price * Decimal::ONE_HUNDRED)
    }
}

/// Adds overhead, contingency, profit, rounding and tax to priced lines, as lines.
pub fn estimate(
    mut lines: Vec<LineItem>,
    policy: &PricePolicy,
    fixed: Option<&At<Money>>,
) -> Vec<LineItem> {
    for tax in policy
        .taxes
        .iter()
        .filter(|tax| tax.base == TaxBase::Purchases)
    {
        purchase_tax(&mut lines, tax);
    }
    let direct = subtotal(&lines, "direct cost", &[Side::Direct]);
    let overhead = Quantity::percent("overhead", &policy.overhead);
    add(
        &mut lines,
        Cause::Overhead,
        Side::Indirect,
        "Overhead",
        Quantity::money(
            "percent of direct cost",
            "overhead",
            of(&direct) * &overhead,
        ),
    );
    let contingency = Quantity::percent("contingency", &policy.contingency);
    add(
        &mut lines,
        Cause::Contingency,
        Side::Indirect,
        "Contingency",
        Quantity::money(
            "percent of direct cost",
            "contingency",
            of(&direct) * &contingency,
        ),
    );
    let cost = subtotal(&lines, "cost", &[Side::Direct, Side::Indirect]);
    match fixed {
        Some(fixed) => {
            let price = Quantity::given("price fixed by you", fixed.value.into(), fixed.place);
            let rest = Quantity::money(
                "what the fixed price leaves",
                "price fixed by you",
                of(&price) - &cost,
            );
            add(
                &mut lines,
                Cause::Fixed,
                Side::Price,
                "Left by the fixed price",
                rest,
            );
        }
        None => sell(&mut lines, policy, &cost),
    }
    for tax in policy
        .taxes
        .iter()
        .filter(|tax| tax.base != TaxBase::Purchases)
    {
        sales_tax(&mut lines, tax);
    }
    lines
}

fn subtotal(lines: &[LineItem], name: &str, sides: &[Side]) -> Quantity {
    let parts = lines
        .iter()
        .filter(|line| sides.contains(&line.side))
        .map(|line| &line.amount);
    Quantity::money("lines added up", name, sum(parts))
}

fn add(lines: &mut Vec<LineItem>, cause: Cause, side: Side, title: &str, amount: Quantity) {
    if amount.value().is_zero() {
        return;
    }
    lines.push(LineItem {
        cause,
        side,
        title: title.to_owned(),
        class: None,
        amount,
        quantity: None,
        price: None,
        taxed: false,
        shares: Vec::new(),
    });
}

/// A direct cost that bears overhead; it falls on what is taxed when bought.
fn purchase_tax(lines: &mut Vec<LineItem>, tax: &TaxRule) {
    let base = Quantity::money(
        "taxed purchases added up",
        "taxed purchases",
        sum(lines
            .iter()
            .filter(|line| line.taxed)
            .map(|line| &line.amount)),
    );
    let rate = Quantity::percent(tax.name.as_str(), &tax.rate);
    let amount = Quantity::money(
        "paid by you on what you buy",
        format!("{} on purchases", tax.name),
        of(&base) * &rate,
    );
    if amount.value().is_zero() {
        return;
    }
    let title = format!("{} paid on purchases", capital(&tax.name));
    lines.push(LineItem {
        cause: Cause::PurchaseTax(tax.name.clone()),
        side: Side::Direct,
        title,
        class: Some(Class::Fee),
        amount,
        quantity: None,
        price: None,
        taxed: false,
        shares: Vec::new(),
    });
}

/// Profit, then the minimum job, then rounding up, before tax.
fn sell(lines: &mut Vec<LineItem>, policy: &PricePolicy, cost: &Quantity) {
    let percent = |percent: Percent| {
        Quantity::percent(
            "profit",
            &At {
                value: percent,
                place: policy.profit.place,
            },
        )
    };
    let profit: (Term, &'static str) = match policy.profit.value {
        Profit::Markup(markup) => (of(cost) * &percent(markup), "markup: percent of cost"),
        Profit::Margin(margin) => (
            of(cost) / (number(1) - &percent(margin)) - cost,
            "margin: cost ÷ (1 − margin) − cost",
        ),
    };
    add(
        lines,
        Cause::Profit,
        Side::Price,
        "Profit",
        Quantity::money(profit.1, "profit", profit.0),
    );
    let before = subtotal(
        lines,
        "price before minimum",
        &[Side::Direct, Side::Indirect, Side::Price],
    );
    if before.as_money() < policy.minimum.value {
        let minimum = Quantity::given(
            "minimum job",
            policy.minimum.value.into(),
            policy.minimum.place,
        );
        add(
            lines,
            Cause::Minimum,
            Side::Price,
            "Up to the minimum job",
            Quantity::money("minimum − price", "minimum job", of(&minimum) - &before),
        );
    }
    let before = subtotal(
        lines,
        "price before rounding",
        &[Side::Direct, Side::Indirect, Side::Price],
    );
    let step = Quantity::given(
        "round up to",
        policy.round_up_to.value.into(),
        policy.round_up_to.place,
    );
    let rounded = Quantity::by(
        "up to a multiple",
        "rounded price",
        Unit::Dollar,
        of(&before).up_to(&step),
    );
    add(
        lines,
        Cause::Rounding,
        Side::Price,
        "Price rounded up",
        Quantity::money("rounded price − price", "rounding", of(&rounded) - &before),
    );
}

fn sales_tax(lines: &mut Vec<LineItem>, tax: &TaxRule) {
    let price = subtotal(
        lines,
        "price before tax",
        &[Side::Direct, Side::Indirect, Side::Price],
    );
    let rate = Quantity::percent(tax.name.as_str(), &tax.rate);
    let amount = match tax.base {
        TaxBase::Sale => Quantity::money(
            "rate × price before tax, once",
            tax.name.as_str(),
            of(&price) * &rate,
        ),
        TaxBase::Materials => {
            let direct = subtotal(lines, "direct cost", &[Side::Direct]);
            let materials = Quantity::money(
                "materials added up",
                "materials",
                sum(lines
                    .iter()
                    .filter(|line| line.class == Some(Class::Material))
                    .map(|line| &line.amount)),
            );
            let base = Quantity::money(
                "price before tax × materials ÷ direct cost, to the cent",
                "materials at the selling price",
                of(&price) * &materials / &direct,
            );
            Quantity::money(
                "rate × materials at the selling price, once",
                tax.name.as_str(),
                of(&base) * &rate,
            )
        }
        TaxBase::Purchases => return,
    };
    add(
        lines,
        Cause::Tax(tax.name.clone()),
        Side::Tax,
        &capital(&tax.name),
        amount,
    );
}

fn capital(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or_else(String::new, |first| {
        first.to_uppercase().collect::<String>() + chars.as_str()
    })
}

/// The payments of a total; they always add up to it.
pub fn schedule(total: Money, payments: &[Payment]) -> Vec<Money> {
    let all_percent = payments
        .iter()
        .all(|payment| matches!(payment.share, Share::Percent(_)));
    if all_percent {
        let weights: Vec<Decimal> = payments
            .iter()
            .map(|payment| {
                if let Share::Percent(percent) = payment.share {
                    percent.number()
                } else {
                    Decimal::ZERO
                }
            })
            .collect();
        return rounding::split(total, &weights);
    }
    let part = |share: Share| match share {
        Share::Percent(percent) => rounding::to_cents(total.dollars() * percent.fraction()),
        Share::Fraction { top, bottom } => rounding::to_cents(total.dollars() * top / bottom),
        Share::Amount(money) => money,
        Share::Rest => Money::ZERO,
    };
    let parts: Vec<Money> = payments.iter().map(|payment| part(payment.share)).collect();
    let rest = total - parts.iter().copied().sum();
    payments
        .iter()
        .zip(parts)
        .map(|(payment, part)| {
            if payment.share == Share::Rest {
                rest
            } else {
                part
            }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use rust_decimal_macros::dec;

    use super::*;
    use crate::reading::{FileId, Place};
    use crate::values::Amount;

    const HERE: Place = Place {
        file: FileId(0),
        start: 0,
        end: 0,
    };

    fn at<T>(value: T) -> At<T> {
        At { value, place: HERE }
    }

    fn policy(profit: Profit) -> PricePolicy {
        PricePolicy {
            overhead: at(Percent::new(dec!(0))),
            contingency: at(Percent::new(dec!(0))),
            profit: at(profit),
            minimum: at(Money::ZERO),
            round_up_to: at(Money::cents(1)),
            margin_floor: at(Percent::new(dec!(0))),
            taxes: Vec::new(),
        }
    }

    fn cost(cents: i64) -> Vec<LineItem> {
        let amount = Quantity::given("work", Amount::from(Money::cents(cents)), HERE);
        vec![LineItem {
            cause: Cause::Need("work".into()),
            side: Side::Direct,
            title: "Work".into(),
            class: Some(Class::Material),
            amount,
            quantity: None,
            price: None,
            taxed: true,
            shares: Vec::new(),
        }]
    }

    /// Cost $75 at a margin of 25 %, cost $70 at 30 %: the prices of mathondemand.com
    /// (seen in search excerpts); $70 with 30 % added is $91 by arithmetic.
    #[test]
    fn margin_and_markup_are_not_the_same() {
        #[track_caller]
        fn case(cost_cents: i64, profit: Profit, price_cents: i64) {
            let lines = estimate(cost(cost_cents), &policy(profit), None);
            assert_eq!(Totals::of(&lines).price, Money::cents(price_cents));
        }
        case(7500, Profit::Margin(Percent::new(dec!(25))), 10000);
        case(7000, Profit::Margin(Percent::new(dec!(30))), 10000);
        case(7000, Profit::Markup(Percent::new(dec!(30))), 9100);
    }

    #[test]
    fn the_order_is_profit_minimum_rounding_tax() {
        let mut policy = policy(Profit::Markup(Percent::new(dec!(10))));
        policy.minimum = at(Money::cents(150_000));
        policy.round_up_to = at(Money::cents(70_000));
        policy.taxes = vec![TaxRule {
            base: TaxBase::Sale,
            rate: at(Percent::new(dec!(6))),
            name: "sales tax".into(),
        }];
        let lines = estimate(cost(100_000), &policy, None);
        let causes: Vec<&Cause> = lines.iter().map(|line| &line.cause).skip(1).collect();
        assert_eq!(
            causes,
            [
                &Cause::Profit,
                &Cause::Minimum,
                &Cause::Rounding,
                &Cause::Tax("sales tax".into())
            ]
        );
        let totals = Totals::of(&lines);
        assert_eq!(
            (totals.price, totals.total),
            (Money::cents(210_000), Money::cents(222_600))
        );
    }

    #[test]
    fn tax_in_four_ways() {
        #[track_caller]
        fn case(base: Option<TaxBase>, cost_after: i64, price: i64, tax: i64) {
            let mut policy = policy(Profit::Markup(Percent::new(dec!(100))));
            policy.taxes = base
                .map(|base| TaxRule {
                    base,
                    rate: at(Percent::new(dec!(10))),
                    name: "tax".into(),
                })
                .into_iter()
                .collect();
            let mut lines = cost(6000);
            let mut labor = cost(4000).remove(0);
            (labor.class, labor.taxed, labor.cause) =
                (Some(Class::Labor), false, Cause::Need("hours".into()));
            lines.push(labor);
            let totals = Totals::of(&estimate(lines, &policy, None));
            assert_eq!(
                (totals.cost, totals.price, totals.tax),
                (
                    Money::cents(cost_after),
                    Money::cents(price),
                    Money::cents(tax)
                ),
                "{base:?}"
            );
        }
        case(None, 10000, 20000, 0);
        case(Some(TaxBase::Sale), 10000, 20000, 2000);
        // 60 % of the cost is material, so 60 % of the price is taxed.
        case(Some(TaxBase::Materials), 10000, 20000, 1200);
        // 10 % of 60.00 is a cost, and bears the markup.
        case(Some(TaxBase::Purchases), 10600, 21200, 0);
    }

    #[test]
    fn a_fixed_price_has_one_line_instead_of_profit() {
        let lines = estimate(
            cost(10000),
            &policy(Profit::Markup(Percent::new(dec!(10)))),
            Some(&at(Money::cents(9000))),
        );
        let totals = Totals::of(&lines);
        assert_eq!(
            (
                totals.price,
                totals.margin().map(|m| rounding::to_places(m, 2))
            ),
            (Money::cents(9000), Some(dec!(-11.11)))
        );
    }
}
