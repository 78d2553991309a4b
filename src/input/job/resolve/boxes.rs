//! Boxes with their stock and place known: within the slab, clear of each other, with a lid.

use crate::geometry::Point;
use crate::input::book::{BoxStock, PriceBook};
use crate::input::job::takeoff::Slab;
use crate::input::job::written::SlabWritten;
use crate::input::job::{BoxWritten, Lid, SetBox};
use crate::reading::{At, Problem, Problems, Read, suggest};
use crate::values::Length;

/// Looks every box up in the book and puts it into its slab, once the slabs lie where they lie.
pub(super) fn resolve(
    slabs: &mut [(Slab, SlabWritten)],
    book: &PriceBook,
    problems: &mut Problems,
) {
    for (slab, written) in slabs {
        for one in &written.boxes {
            let boxed = resolve_one(slab, one, book, problems);
            slab.boxes.extend(boxed);
        }
        check_room(slab, book, problems);
    }
}

fn resolve_one(
    slab: &Slab,
    written: &BoxWritten,
    book: &PriceBook,
    problems: &mut Problems,
) -> Read<SetBox> {
    let stock = written.stock.as_ref().unwrap_or(&written.name);
    let boxes = &book.rules.boxes;
    let known = boxes.known(&stock.value, problems, || unknown(stock, book))?;
    let (low, high) = slab.outline.bounds();
    let middle = written.at.as_ref().map(|at| At {
        value: at.value.within(low, high),
        place: at.place,
    });
    if let Some(middle) = &middle
        && !slab
            .outline
            .holds(&known.opening.value.around(middle.value, Length::ZERO))
    {
        let message = format!(
            "`{}` does not lie within `{}`",
            written.name.value, slab.key
        );
        problems.push(Problem::new("box-outside", message).at(middle.place).help(
            "measure to the middle of the box, from the outermost edges of the slab; its whole opening lies in the slab",
        ));
    }
    check_lid(written, known, problems);
    Ok(SetBox {
        called: if written.stock.is_some() {
            written.name.value.clone()
        } else {
            known
                .called
                .clone()
                .unwrap_or_else(|| written.name.value.clone())
        },
        name: written.name.clone(),
        stock: stock.clone(),
        middle,
        lid: written.lid.clone(),
        isolated: written.isolated,
        adjust: written.adjust.clone(),
    })
}

/// No two boxes stand in the same place, and together they leave some of the slab.
fn check_room(slab: &Slab, book: &PriceBook, problems: &mut Problems) {
    let opening = |one: &SetBox| {
        book.rules
            .boxes
            .get(&one.stock.value)
            .map(|b| b.opening.value)
    };
    for (i, one) in slab.boxes.iter().enumerate() {
        let (Some(here), Some(middle)) = (opening(one), &one.middle) else {
            continue;
        };
        let met = slab.boxes[..i].iter().find(|other| {
            let there = other.middle.as_ref().zip(opening(other));
            there.is_some_and(|(at, opening)| here.meets(middle.value, opening, at.value))
        });
        if let Some(other) = met {
            let message = format!(
                "`{}` stands where `{}` does",
                one.name.value, other.name.value
            );
            problems.push(
                Problem::new("boxes-overlap", message)
                    .at(middle.place)
                    .also(other.name.place, "the other box")
                    .help("check where each was measured from"),
            );
        }
    }
    let outlines = slab.boxes.iter().filter_map(opening);
    let openings = outlines.map(|one| one.around(Point::default(), Length::ZERO).area());
    if slab.outline.area() <= openings.sum() {
        let message = format!("the boxes of `{}` leave nothing of it", slab.key);
        problems.push(
            Problem::new("boxes-overlap", message)
                .at(slab.place)
                .help("check the size of the slab, and `opening` of its boxes in the price book"),
        );
    }
}

fn unknown(stock: &At<String>, book: &PriceBook) -> Problem {
    let names: Vec<&str> = book.rules.boxes.keys().map(String::as_str).collect();
    let message = format!("price book has no box `{}`", stock.value);
    let problem = Problem::new("unknown-name", message).at(stock.place);
    match suggest::closest(&stock.value, names.iter().copied()) {
        Some(near) => problem.help(format!("did you mean `{near}`?")),
        None if names.is_empty() => {
            problem.help("the price book names no box at all; add it under `boxes` there")
        }
        None => problem.help(format!("it has {}", names.join(", "))),
    }
}

/// Only a lid that the book knows can be on order.
fn check_lid(written: &BoxWritten, stock: &BoxStock, problems: &mut Problems) {
    if written.lid.value == Lid::OnOrder && stock.lid.is_none() {
        let message = format!(
            "the lid of `{}` is on order, and the book names no lid for it",
            written.name.value
        );
        problems.push(
            Problem::new("no-lid", message)
                .at(written.lid.place)
                .also(stock.item.place, "its box")
                .help("add `lid` there, and `temporary lid` for what stands until it comes"),
        );
    }
}
