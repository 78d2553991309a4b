//! What the job costs, line by line, and how the price is made of it.

mod beside;
mod lines;
mod pours;

use super::{Sheet, headed};
use beside::{choices, hours, of_one, overruled, parts, unforeseen};
use lines::lines;

/// The whole sheet.
pub fn text(sheet: &Sheet<'_>) -> String {
    let mut out = heading(sheet);
    for block in [
        lines(sheet),
        hours(sheet),
        pours::days(sheet),
        parts(sheet),
        of_one(sheet),
        choices(sheet),
        overruled(sheet),
        unforeseen(sheet),
    ] {
        if !block.is_empty() {
            out.push(String::new());
            out.extend(block);
        }
    }
    out.join("\n") + "\n"
}

/// Whose job, the price, and which prices it is made of.
fn heading(sheet: &Sheet<'_>) -> Vec<String> {
    let totals = sheet.offer.quoted().totals();
    let margin = sheet.margin(&totals);
    let against = if margin.is_below() {
        "BELOW your floor of"
    } else {
        "floor"
    };
    let held = margin.shown().map_or_else(
        || "no price, so no margin".to_owned(),
        |shown| format!("margin {shown}, {against} {}", margin.floor),
    );
    let tax = if totals.tax.is_zero() {
        String::new()
    } else {
        format!(" + tax {} = total {}", totals.tax, totals.total)
    };
    let mut out = headed(sheet.job());
    out.extend([
        format!("Price {}{tax}", totals.price),
        format!("Cost {}, {held}", totals.cost),
        format!("Quoted {}; price book {}", sheet.quoted, sheet.book.name),
    ]);
    out.extend(sheet.chosen().map(|taken| format!("With {taken}")));
    out.extend(pours(sheet));
    if let Some(fixed) = &sheet.takeoff.head.fixed_price {
        out.push(format!(
            "Price fixed by you at {}",
            sheet.line_of(fixed.place)
        ));
    }
    out
}

/// The day whose prices each pour has, and where that day comes from.
fn pours(sheet: &Sheet<'_>) -> impl Iterator<Item = String> {
    let several = 1 < sheet.days.len();
    let placed = sheet.days.iter().zip(&sheet.takeoff.placements);
    placed.enumerate().map(move |(i, (prices, placement))| {
        let pour = if several {
            format!("pour {}", i + 1)
        } else {
            "the pour".to_owned()
        };
        let lead = sheet.business.quote.lead_time.0;
        match placement.day {
            Some(_) => format!("Prices of {}, the day of {pour}", prices.day),
            None => format!(
                "Prices of {}: the takeoff names no day for {pour}, so {lead} days after the quote",
                prices.day
            ),
        }
    })
}
