//! Does what its maker says of a box fit the place where it stands?

use super::{Case, DECIDES};
use crate::input::book::{BoxStock, StandsFor};
use crate::input::job::{Carries, SetBox, Slab};
use crate::reading::Problem;
use crate::tables::{Source, box_loads};

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let slabs = case.takeoff.slabs.iter();
    slabs
        .flat_map(|slab| slab.boxes.iter().map(move |set| (slab, set)))
        .filter(|(_, set)| set.adjust.is_none())
        .filter_map(|(slab, set)| {
            let stock = case.book.rules.boxes.get(&set.stock.value)?;
            if Carries::Cars <= slab.carries() {
                driven_on(slab, set, stock)
            } else if slab.around.is_public() {
                public(slab, set, stock)
            } else {
                None
            }
        })
        .collect()
}

fn driven_on(slab: &Slab, set: &SetBox, stock: &BoxStock) -> Option<Problem> {
    let name = &set.name.value;
    if let Some(stands_for) = &stock.stands_for
        && stands_for.value == StandsFor::Walk
    {
        let message = format!(
            "`{name}` stands in `{}`, where vehicles go, and its maker says it stands for people",
            slab.key
        );
        return Some(
            Problem::new("box-not-for-vehicles", message)
                .at(set.name.place)
                .also(stands_for.place, "as its maker states")
                .help(format!("take a box made for wheels; {DECIDES}")),
        );
    }
    if stock.rated.is_none() && stock.design_load.is_none() {
        let message = format!(
            "`{name}` stands in `{}`, where vehicles go, and nobody says what it carries",
            slab.key
        );
        return Some(
            Problem::new("box-load-unknown", message)
                .at(set.name.place)
                .help(format!(
                    "ask its maker, and write `design load` or `rated` in the price book ({}); {DECIDES}",
                    Source::PRACTICE
                )),
        );
    }
    let says = stock.says.as_ref()?;
    says.value.to_lowercase().starts_with("tier").then(|| {
        let message = format!(
            "`{name}` stands in `{}`, where wheels cross on purpose; `{}` is for traffic that strays",
            slab.key, says.value
        );
        Problem::new("box-tier", message)
            .at(set.name.place)
            .help(format!(
                "ask for a frame and cover made for wheels, and go by its load: makers use such words differently; source: {}; {DECIDES}",
                box_loads::SCOPE
            ))
    })
}

fn public(slab: &Slab, set: &SetBox, stock: &BoxStock) -> Option<Problem> {
    let load = stock.design_load.as_ref()?;
    (load.value.0 < box_loads::PUBLIC_WALK.into()).then(|| {
        let message = format!(
            "`{}` stands in `{}`, a public walk, and is designed for `{}`",
            set.name.value,
            slab.key,
            load.value.amount()
        );
        Problem::new("box-public-walk", message)
            .at(set.name.place)
            .help(format!(
                "8,000 lb is what its standard has there; source: {}; {DECIDES}",
                box_loads::TABLE
            ))
    })
}
