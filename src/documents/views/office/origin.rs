//! Where a quantity comes from, in words: the owner's own figure and the line it stands on.

use rust_decimal::Decimal;

use super::Sheet;
use crate::reading::Place;
use crate::trade::working::as_said;
use crate::trade::{Quantity, Working};
use crate::values::Unit;

impl Sheet<'_> {
    /// `demo-quotes/garden-patio.yaml:12`.
    pub fn line_of(&self, place: Place) -> String {
        let (line, _) = self.sources.line_and_column(place);
        format!("{}:{line}", self.sources.name(place.file))
    }

    /// What the owner wrote, as written; only the first line of it.
    fn written(&self, place: Place) -> &str {
        let text = self.sources.slice(place);
        text.lines().next().unwrap_or_default().trim()
    }

    /// The owner's own words; or where they stand, if there are any.
    fn given(&self, quantity: &Quantity, place: Place) -> String {
        let (written, at) = (self.written(place), self.line_of(place));
        if written.is_empty() {
            let file = self.sources.name(place.file);
            return format!("the usual value, which no line of {file} changes");
        }
        let (line, start) = self.sources.line(place);
        // A default has no place of its own: like some values that do, it points at the key above it.
        let after = line.get(place.end as usize - start..).unwrap_or_default();
        if after.trim_start().starts_with(':') {
            return format!("from `{written}` at {at}, or the usual value where it is not written");
        }
        let is_price = quantity.amount().unit == Unit::Dollar;
        if is_price && written.parse::<Decimal>().ok() != Some(quantity.value()) {
            return format!("you wrote `{}` at {at}", line.trim());
        }
        format!("you wrote `{written}` at {at}")
    }

    /// The working of a quantity in one line, with its rule or with the place it was written.
    pub fn working(&self, quantity: &Quantity) -> String {
        let shown = quantity.shown();
        let rule = match quantity.rule() {
            "" => String::new(),
            rule => format!("  [{rule}]"),
        };
        match quantity.working() {
            Working::Given(place) => self.given(quantity, *place),
            Working::Shape { place, .. } => format!(
                "{shown}, off the shape of `{}` at {}",
                self.written(*place),
                self.line_of(*place)
            ),
            Working::Set {
                computed,
                said,
                because,
                place,
            } => format!(
                "set by you{} at {}, because {because}; computed {}",
                as_said(said.as_ref()),
                self.line_of(*place),
                computed.amount()
            ),
            Working::Plan { .. } | Working::Rule { .. } => format!("{shown}{rule}"),
        }
    }
}
