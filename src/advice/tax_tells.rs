//! Does a tax shown to the customer tell what materials cost?

use super::Case;
use crate::costing::{Cause, Tier};
use crate::input::business::TaxBase;
use crate::reading::Problem;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let shown = |name: &str| {
        let lines = &case.offer.quoted().lines;
        lines
            .iter()
            .any(|line| line.side == Tier::Tax && line.cause == Cause::Tax(name.to_owned()))
    };
    let taxes = case.business.price.taxes.iter();
    taxes
        .filter(|tax| tax.base == TaxBase::Materials && shown(&tax.name))
        .map(|tax| {
            let message = format!(
                "the quote shows {} on materials: divided by `{}`, it tells the materials' share of your price",
                tax.name, tax.rate.value
            );
            Problem::new("tax-tells-materials", message)
                .at(tax.rate.place)
                .help("where your state lets you choose, put the tax on the sale or pay it on purchases; which tax falls on what is your state's law, so ask who does your books")
        })
        .collect()
}
