//! The day of each pour: how near it comes to what trucks, setting and the crew allow.

use crate::documents::table::Align::{Left, Right};
use crate::documents::table::table;
use crate::documents::views::office::{Sheet, two_places};
use crate::trade::Quantity;
use crate::trade::crew::{Over, PourDay};

/// A row a pour; nothing where nothing is placed.
pub(super) fn days(sheet: &Sheet<'_>) -> Vec<String> {
    let crew = &sheet.offer.quoted().needs.crew;
    let placed = || crew.pours.iter().filter(|day| !day.yards.value().is_zero());
    if placed().next().is_none() {
        return Vec::new();
    }
    let head = [
        "pour",
        "cu yd",
        "trucks",
        "truck, min",
        "may",
        "place, h",
        "finish, h",
        "sets in, h",
        "day, h",
        "may",
        "over",
    ];
    let is_over = placed().any(|day| day.over().next().is_some());
    // Nobody reads a column that is empty.
    let columns = if is_over { head.len() } else { head.len() - 1 };
    let mut rows = vec![head.map(str::to_owned).to_vec()];
    rows.extend(placed().map(|day| row(sheet, day)));
    for row in &mut rows {
        row.truncate(columns);
    }
    let mut out = vec![format!(
        "POUR DAYS, with {} people",
        crew.people.amount().number()
    )];
    let all = [&[Left][..], &[Right; 9], &[Left]].concat();
    out.extend(table(&all[..columns], &rows));
    out
}

fn row(sheet: &Sheet<'_>, day: &PourDay) -> Vec<String> {
    let short = |quantity: &Quantity| two_places(quantity.amount()).number();
    let truck = day.truck.as_ref().map(|(_, minutes)| short(minutes));
    let may = truck.as_ref().map(|_| short(&day.truck_may));
    let over: Vec<&str> = day.over().map(Over::name).collect();
    vec![
        sheet.days[day.pour].day.to_string(),
        short(&day.yards),
        day.trucks.to_string(),
        truck.unwrap_or_default(),
        may.unwrap_or_default(),
        short(&day.placing),
        short(&day.finishing),
        short(&day.setting),
        short(&day.day),
        short(&day.day_may),
        over.join(", "),
    ]
}
