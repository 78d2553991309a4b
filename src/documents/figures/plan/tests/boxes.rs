//! Boxes on a plan: drawn, numbered, named in the key, said aloud.

use super::{scenes, words_of};
use crate::documents::figures::plan::{BoxView, PlanView, plan};
use crate::geometry::{Outline, Point};
use crate::press::drawing::{Drawing, Face};
use crate::values::Length;

pub fn with_boxes(mut view: PlanView) -> PlanView {
    let (low, _) = view.slabs[0].outline.bounds();
    let at = |outline: Outline, east: i64, north: i64| {
        let foot = Length::feet_whole(1).as_nanometres();
        outline.moved(low + Point::new(east * foot, north * foot))
    };
    let inches = Length::inches_whole;
    let boxes = [
        (1, "cleanout", at(Outline::circle(inches(8)), 2, 3)),
        (
            2,
            "valve box",
            at(Outline::rectangle(inches(24), inches(36)), 6, 3),
        ),
        (1, "cleanout", at(Outline::circle(inches(8)), 3, 8)),
    ];
    view.slabs[0].boxes = boxes
        .into_iter()
        .map(|(number, name, outline)| BoxView {
            number,
            name: name.into(),
            outline,
        })
        .collect();
    view
}

fn said(drawing: &Drawing) -> Vec<&str> {
    let words = words_of(drawing).into_iter();
    words.map(|words| words.text.as_str()).collect()
}

fn patio() -> PlanView {
    let (_, view) = scenes::all().swap_remove(1);
    view
}

#[test]
fn every_box_has_its_number_and_the_key_its_name() {
    let drawing = plan(&with_boxes(patio()));
    let words = said(&drawing);
    let count = |text: &str| words.iter().filter(|word| **word == text).count();
    let bold = words_of(&drawing).into_iter();
    let bold: Vec<&str> = bold
        .filter(|words| words.face == Face::Bold)
        .map(|words| words.text.as_str())
        .collect();
    let numbered = |number: &str| bold.iter().filter(|word| **word == number).count();
    // Each as often as it stands on the plan, and once in the key.
    assert_eq!((numbered("1"), numbered("2")), (3, 2));
    assert_eq!((count("cleanout"), count("valve box")), (1, 1));
    assert!(
        drawing
            .alternative
            .contains("set in it: 1 cleanout, 2 valve box, 1 cleanout"),
        "{}",
        drawing.alternative
    );
}

#[test]
fn a_plan_without_boxes_says_nothing_of_them() {
    let drawing = plan(&patio());
    assert!(!drawing.alternative.contains("set in it"));
    assert!(!said(&drawing).contains(&"1"));
}
