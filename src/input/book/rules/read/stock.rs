//! Reads what is bought: mixes, bases, steel, fiber, disposal.

use super::words::{at_least, item, per_yard, yards};
use crate::input::book::rules::{BarStock, BaseStock, Dumping, FiberStock, MeshStock, Mix};
use crate::input::book::tables;
use crate::input::phrases::LapPhrase;
use crate::reading::{At, Node, Problems};
use crate::values::{Length, Unit};

pub(super) fn mix(node: &Node, problems: &mut Problems) -> Option<Mix> {
    let fields = node.fields(&tables::MIX, problems).ok()?;
    let item = item(&fields, problems);
    let strength = fields
        .need("strength", problems)
        .ok()
        .and_then(|at| crate::input::checks::in_unit(at, Unit::Psi, "strength", problems).ok());
    let air = fields.need("air", problems).ok();
    let aggregate = fields.need("aggregate", problems).ok();
    let cement = fields.need("cement", problems).ok();
    let cement_content = super::words::per_yard(fields.read("cement content", problems), problems)
        .and_then(|at| super::words::pounds(at, "cement content", problems));
    Some(Mix {
        cement_content,
        item: item?,
        strength: strength?,
        air: air?,
        aggregate: aggregate?,
        cement: cement?,
    })
}

pub(super) fn base(node: &Node, problems: &mut Problems) -> Option<BaseStock> {
    let fields = node.fields(&tables::BASE, problems).ok()?;
    let item = item(&fields, problems);
    let delivered = per_yard(fields.need("delivered", problems).ok(), problems);
    Some(BaseStock {
        item: item?,
        delivered: delivered?,
    })
}

pub(super) fn bars(node: &Node, problems: &mut Problems) -> Option<BarStock> {
    let fields = node.fields(&tables::BARS, problems).ok()?;
    let item = item(&fields, problems);
    let stock: Option<At<Length>> = fields.need("stock", problems).ok();
    let lap: Option<At<LapPhrase>> = fields.need("lap", problems).ok();
    let grade = fields.need("grade", problems).ok();
    let (least, why) = match lap.as_ref().map(|lap| lap.value) {
        Some(LapPhrase::ClassB) => (
            10,
            "a stock bar is at least 10 ft long where it laps by class B",
        ),
        Some(LapPhrase::Diameters(_)) | None => (6, "a stock bar is at least 6 ft long"),
    };
    let stock = stock.and_then(|at| at_least(at, Length::feet_whole(least), why, problems));
    Some(BarStock {
        item: item?,
        stock: stock?,
        lap: lap?,
        grade: grade?,
    })
}

pub(super) fn mesh(node: &Node, problems: &mut Problems) -> Option<MeshStock> {
    let fields = node.fields(&tables::MESH, problems).ok()?;
    let item = item(&fields, problems);
    let lap: Option<At<Length>> = fields.need("lap", problems).ok();
    let least = lap.as_ref().map_or(Length::ZERO, |lap| lap.value * 2);
    let width = fields
        .need("width", problems)
        .ok()
        .and_then(|at| at_least(at, least, "a sheet is wider than two laps", problems));
    let length = fields
        .need("length", problems)
        .ok()
        .and_then(|at| at_least(at, least, "a sheet is longer than two laps", problems));
    Some(MeshStock {
        item: item?,
        width: width?,
        length: length?,
        lap: lap?,
    })
}

pub(super) fn fiber(node: &Node, problems: &mut Problems) -> Option<FiberStock> {
    let fields = node.fields(&tables::FIBER, problems).ok()?;
    let item = item(&fields, problems);
    let by: Option<At<_>> = fields.need("by", problems).ok();
    let dose = per_yard(fields.need("dose", problems).ok(), problems);
    let bag = fields
        .need("bag", problems)
        .ok()
        .and_then(|at| crate::input::checks::in_unit(at, Unit::Pound, "bag", problems).ok());
    Some(FiberStock {
        item: item?,
        by: by?.value,
        dose: dose?,
        bag: bag.filter(|bag| !bag.value.value.is_zero())?,
    })
}

pub(super) fn disposal(node: &Node, problems: &mut Problems) -> Option<Dumping> {
    let fields = node.fields(&tables::DISPOSAL, problems).ok()?;
    let item = item(&fields, problems);
    let loose = fields
        .need("loose", problems)
        .ok()
        .and_then(|at| crate::input::checks::in_unit(at, Unit::Plain, "loose", problems).ok());
    let weight = per_yard(fields.need("weight", problems).ok(), problems);
    let load = yards(&fields, "load", problems);
    Some(Dumping {
        item: item?,
        loose: loose?,
        weight: weight?,
        load: load.filter(|load| !load.value.value.is_zero())?,
    })
}
