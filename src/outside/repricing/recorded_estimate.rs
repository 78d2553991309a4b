//! A quote as its record keeps it, made into needs and lines that can be priced again.
//!
//! The other way round from `src/outside/quote_record.rs`. What it cost and what was promised is
//! read and not computed: older rules of this program may have made it.

use rust_decimal::Decimal;

use crate::costing::{Bought, Cause, LeastCharge, LineItem, Tier};
use crate::input::book::{Basis, Class, Dated, PriceBook};
use crate::input::job::Discount;
use crate::input::phrases::Off;
use crate::office::quote_excerpt::LineExcerpt;
use crate::office::words;
use crate::reading::At;
use crate::trade::order::{Need, NeedItem};
use crate::trade::working::Quantity;
use crate::values::{Amount, Money, Percent, Unit, UnitPrice};

/// What was quoted: the needs, and every line of the price.
#[derive(Debug, Default)]
pub(super) struct RecordedEstimate {
    needs: Vec<Need>,
    lines: Vec<LineItem>,
}

impl RecordedEstimate {
    /// Reads the lines of one combination of a job with so many pours; `book` is the one they
    /// were priced by.
    ///
    /// None where a line is none of those this program writes.
    pub fn of(lines: &[LineExcerpt<'_>], pours: usize, book: &PriceBook) -> Option<Self> {
        let mut recorded = Self {
            needs: Vec::with_capacity(lines.len()),
            lines: Vec::with_capacity(lines.len()),
        };
        for line in lines {
            let (line, need) = read(line, pours, book)?;
            recorded.needs.extend(need);
            recorded.lines.push(line);
        }
        Some(recorded)
    }

    pub fn bought(&self) -> Bought<'_> {
        Bought {
            needs: &self.needs,
            first_pour: 0,
            lines: &self.lines,
        }
    }

    /// The price, where it was fixed by the owner.
    pub fn fixed(&self) -> Option<Money> {
        let mut lines = self.lines.iter();
        let fixed = lines.any(|line| line.cause == Cause::Fixed);
        let lines = self.lines.iter();
        let off = lines.filter(|line| matches!(line.cause, Cause::Discount(_)));
        let off: Money = off.map(LineItem::money).sum();
        fixed.then(|| crate::costing::Totals::of(&self.lines).price - off)
    }

    /// What was taken off the price.
    pub fn discounts(&self) -> Vec<Discount> {
        let lines = self.lines.iter();
        let found = lines.filter_map(|line| {
            let Cause::Discount(says) = &line.cause else {
                return None;
            };
            let off = match &line.quantity {
                Some(percent) => Off::Percent(Percent::new(percent.value())),
                None => Off::Amount(-line.money()),
            };
            Some(Discount {
                says: says.clone(),
                off: At::new(off, line.amount.place()?),
            })
        });
        found.collect()
    }
}

fn read(
    line: &LineExcerpt<'_>,
    pours: usize,
    book: &PriceBook,
) -> Option<(LineItem, Option<Need>)> {
    let name = &*line.cause;
    let class = match &line.class {
        Some(class) => Some(class.parse().ok()?),
        None => None,
    };
    let of = |cause: Cause, side| LineItem {
        title: cause.title(),
        cause,
        side,
        class,
        amount: Quantity::given(name.to_owned(), line.amount.0.into(), book.place),
        quantity: None,
        price: None,
        taxed: false,
        shares: Vec::new(),
        least: None,
        group: None,
    };
    let bought = line
        .quantity
        .filter(|_| line.side == words::side(Tier::Direct));
    let Some(number) = bought else {
        let (cause, side) = words::added(name, &line.side)?;
        let mut one = of(cause, side);
        one.quantity = line.quantity.map(|percent| {
            let percent = Amount::new(percent.0, Unit::Percent);
            Quantity::given("discount", percent, book.place)
        });
        return Some((one, None));
    };
    let known = line.pour.map_or(pours == 1, |pour| pour < pours);
    known.then_some(())?;
    let unit = line.unit.as_deref().unwrap_or_default();
    let unit = *Unit::ALL.iter().find(|one| one.symbol() == unit)?;
    let quantity = Quantity::given(name.to_owned(), Amount::new(number.0, unit), book.place);
    let mut one = of(Cause::Need(name.to_owned()), Tier::Direct);
    one.quantity = Some(quantity.clone());
    let item = if let Some(key) = &line.item {
        let item = book.items.get(&**key)?;
        item.called(key).clone_into(&mut one.title);
        one.taxed = item.is_taxed();
        one.least = item.least_charge().map(|amount| LeastCharge {
            item: (**key).to_owned(),
            pour: line.pour.unwrap_or(0),
            amount,
        });
        one.price = Some(Dated {
            from: line.priced?.0,
            price: UnitPrice::new(line.price?.0),
            basis: line.held_until.map_or(Basis::Listed, |until| Basis::Held {
                until: until.0,
                note: None,
            }),
            wage: None,
            place: item.place,
        });
        NeedItem::Item(At {
            value: (**key).to_owned(),
            place: item.place,
        })
    } else {
        // A lump is one of its kind, so that its cost is its line.
        (number.0 == Decimal::ONE).then_some(())?;
        one.taxed = class? == Class::Material;
        NeedItem::Lump {
            cost: At {
                value: line.amount.0,
                place: book.place,
            },
            class: class?,
            group: None,
        }
    };
    let need = Need {
        item,
        quantity,
        placement: line.pour,
        shares: Vec::new(),
    };
    Some((one, Some(need)))
}
