//! One article of the mapping: what its rows in the list say, by the unit of its item.

use std::collections::BTreeMap;

use rust_decimal::Decimal;

use super::cells;
use super::list::{List, Row};
use super::mapping::{Mapped, Mapping};
use super::{PriceChange, Wanted};
use crate::input::book::diff::Difference;
use crate::input::book::{Item, PriceBook, faults};
use crate::reading::{At, Place, Problem, Problems, Read};
use crate::values::{Amount, Day, Unit, UnitPrice, Unreadable, rounding};

#[derive(Debug)]
pub(super) struct Article<'a> {
    mapped: &'a Mapped,
    item: Read<&'a Item>,
    seen: bool,
    prices: BTreeMap<Day, ListedPrice>,
}

/// A price by our unit, and where it stands in the list.
#[derive(Debug)]
struct ListedPrice {
    price: UnitPrice,
    place: Place,
}

impl<'a> Article<'a> {
    pub(super) fn new(mapped: &'a Mapped, book: &'a PriceBook, problems: &mut Problems) -> Self {
        Self {
            mapped,
            item: item(mapped, book, problems),
            seen: false,
            prices: BTreeMap::new(),
        }
    }

    pub(super) fn saw(&mut self) {
        self.seen = true;
    }

    pub(super) fn is_unseen(&self) -> bool {
        !self.seen
    }

    /// Reads a row of this article; every cell that cannot be read is reported.
    pub(super) fn read(
        &mut self,
        row: &Row,
        mapping: &Mapping,
        list: &List<'_>,
        from: Option<Day>,
        problems: &mut Problems,
    ) {
        self.seen = true;
        let mut told = |column, read: Unreadable| {
            let message = format!("{}, in column `{}`", read.message, list.name(column));
            let problem = Problem::new(read.code, message).at(list.place(row, column));
            problems.push(problem.help(read.help));
        };
        let day = match list.from {
            None => from,
            Some(column) if row.cell(column).is_empty() && from.is_some() => from,
            Some(column) => cells::day(row.cell(column))
                .map_err(|read| told(column, read))
                .ok(),
        };
        let listed = cells::dollars(row.cell(list.price)).map_err(|read| told(list.price, read));
        let Ok(item) = self.item else {
            return;
        };
        let counted = self.counted(item, row, mapping, list, problems);
        let (Some(day), Ok(listed), Ok(counted)) = (day, listed, counted) else {
            return;
        };
        let place = list.place(row, list.price);
        let Some(price) = by_ours(listed, counted) else {
            let message = format!("`{listed}` for {counted} of ours is no price");
            problems.push(
                Problem::new("bad-list-price", message)
                    .at(place)
                    .help("check `per` and `units` of this article in the mapping"),
            );
            return;
        };
        match self.prices.get(&day) {
            Some(first) if first.price != price => {
                let message = format!(
                    "`{}` has two prices from {day} on",
                    self.mapped.article.value
                );
                problems.push(
                    Problem::new("listed-twice", message)
                        .at(place)
                        .also(first.place, "the other price")
                        .help("ask the supplier which one holds, and take the other line out"),
                );
            }
            Some(_) => {}
            None => drop(self.prices.insert(day, ListedPrice { price, place })),
        }
    }

    /// How much of the item's own unit the price of this row is for.
    fn counted(
        &self,
        item: &Item,
        row: &Row,
        mapping: &Mapping,
        list: &List<'_>,
        problems: &mut Problems,
    ) -> Read<Decimal> {
        let word = row.cell(list.unit);
        let said = self.mapped.is.units.get(word);
        let said = said.or_else(|| mapping.units.get(word)).copied();
        let known = said.or_else(|| Some(Amount::new(Decimal::ONE, word.parse::<Unit>().ok()?)));
        let (name, unit) = (&self.mapped.is.item.value, item.unit);
        let column = list.name(list.unit);
        let problem = match known {
            Some(one) if one.unit == unit => return Ok(one.value * self.mapped.is.per.value.value),
            Some(one) => Problem::new(
                "list-unit-differs",
                format!(
                    "`{word}` in column `{column}` is by the {}, and `{name}` is sold by the {} in the book",
                    one.unit, unit
                ),
            )
            .help(format!(
                "say how much one `{word}` of it is: `{}: {{item: {name}, units: {{{word}: N {}}}}}`, with the number for N",
                self.mapped.article.value,
                unit.plural()
            )),
            None if word.is_empty() => Problem::new(
                "unknown-list-unit",
                format!("nothing says what this price is for, in column `{column}`"),
            )
            .help("ask the supplier, and write the unit in the list"),
            None => Problem::new(
                "unknown-list-unit",
                format!("the mapping does not say what unit `{word}` is, in column `{column}`"),
            )
            .help(format!(
                "add it to `units` of the mapping with what one of it is; `{name}` is sold by the {unit}"
            )),
        };
        Err(problems.push(problem.at(list.place(row, list.unit))))
    }

    /// Adds what these prices change in the book; how many hold there already.
    ///
    /// A price that holds already is not written once more, unless it is so old that the book is
    /// due for the supplier's word on it.
    pub(super) fn changes(&self, changes: &mut Vec<PriceChange>) -> Read<usize> {
        let item = self.item?;
        let dated = item.dated.iter().map(|dated| (dated.from, dated.price));
        let mut dated: BTreeMap<Day, UnitPrice> = dated.collect();
        let unit = item.unit;
        let mut already = 0;
        for (day, found) in &self.prices {
            let (day, price) = (*day, found.price);
            let what = match dated.range(..=day).next_back() {
                Some((since, old)) if *old == price && day.days_since(*since) <= faults::OLD => {
                    already += 1;
                    continue;
                }
                Some((_, old)) => Difference::moved(*old, price, unit),
                None => Difference::Added(price, unit),
            };
            dated.insert(day, price);
            changes.push(PriceChange {
                wanted: Wanted {
                    item: self.mapped.is.item.value.clone(),
                    day,
                    price,
                },
                what,
            });
        }
        Ok(already)
    }
}

/// The item an article is, if it has prices that a list can change.
fn item<'a>(mapped: &Mapped, book: &'a PriceBook, problems: &mut Problems) -> Read<&'a Item> {
    let At { value: name, place } = &mapped.is.item;
    let item = book.item(name, *place, problems)?;
    if let Some(waged) = item.dated.iter().find(|dated| dated.wage.is_some()) {
        let message = format!("the hour of `{name}` is made of wage and burden, not one price");
        return Err(problems.push(
            Problem::new("wage-not-price", message)
                .at(*place)
                .also(waged.place, "the wage")
                .help("change the wage in the book itself, and take this line out of the mapping"),
        ));
    }
    Ok(item)
}

/// The price of one of ours. A pack that does not come out even is rounded to a millionth of a
/// dollar, far below what a line of a job can show.
fn by_ours(listed: Decimal, counted: Decimal) -> Option<UnitPrice> {
    if counted == Decimal::ONE {
        return Some(UnitPrice::new(listed));
    }
    let price = rounding::to_places(listed.checked_div(counted)?, 6);
    // As many digits as a book may have before the point.
    let fits = !price.is_zero() && price < Decimal::from(1_000_000_000_000_u64);
    fits.then(|| UnitPrice::new(price))
}
