//! What becomes part of a slab or is hauled away, and how it is sold: concrete, base, steel, fiber.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::item::ItemKey;
use crate::input::checks::{
    at_least, feet_above_zero, per_yard, plain, pounds_above_zero, psi, written, yards_above_zero,
};
use crate::input::phrases::{LapPhrase, Ratio};
use crate::reading::keys::{keys, placeless};
use crate::reading::{At, Fields, Problem, Problems, Read, words};
use crate::values::{Amount, Length, Percent, Unit};

keys! {
    pub struct Mix in "a mix" {
        item: At<ItemKey> = "item" as "name", required, "the item that is bought", "ready-mix 4000 air";
        strength: At<Amount> = "strength" as "psi", required, "ordered at 28 days", "4000 psi", then psi;
        air: At<Percent> = "air", usual "0%", "entrained air", "6%";
        aggregate: At<Length> = "aggregate", usual "3/4 in", "largest stone", "3/4 in";
        cement: At<Cement> = "cement", usual "blended",
            "blended (Type IL), ordinary (Type I or II) or early (Type III)", "blended";
        setting: At<Percent> = "setting", usual "100%",
            "how long it takes to set, of the usual; more with a retarder, less with an accelerator", "150%",
            then some_setting;
        /// Pounds in a yard, where the owner knows them.
        cement_content: Option<At<Ratio>> = "cement content", none,
            "in each yard; colors go by it", "564 lb per cu yd", then written(pounds_of_cement);
        /// Of one bag.
        makes: Option<At<Amount>> = "yield" as "cubic feet", none,
            "what a bag makes, where it is bought by the bag and mixed by hand: no truck comes then",
            "0.6 cu ft", then written(feet_above_zero);
    }
}

words! {
    /// How fast it hardens, the slowest first.
    pub enum Cement("unknown-word", "`cement` is not `{}`", either) {
        /// Type IL and other blends: the curve of ordinary cement, stretched in time
        /// by the owner's lag (common practice, no source).
        Blended "blended";
        /// Types I and II.
        Ordinary "ordinary";
        /// Type III.
        HighEarly "early";
    }
}

fn some_setting(at: At<Percent>, _: &str, problems: &mut Problems) -> Read<At<Percent>> {
    if !at.value.number().is_zero() {
        return Ok(at);
    }
    let problem = Problem::new(
        "not-above-zero",
        "concrete that sets at once cannot be placed",
    );
    Err(problems.push(
        problem
            .at(at.place)
            .help("write `150%` for a mix that sets in half as long again"),
    ))
}

fn pounds_of_cement(at: At<Ratio>, key: &str, problems: &mut Problems) -> Read<At<Ratio>> {
    let at = per_yard(at, key, problems)?;
    let much = &at.value.much;
    if much.unit == Unit::Pound && !much.value.is_zero() {
        return Ok(at);
    }
    let message = format!("`{key}` is measured in lb per cu yd");
    let problem = Problem::new("wrong-unit", message).at(at.place);
    let help = "write the pounds of cement in a yard, for example `564 lb per cu yd`";
    Err(problems.push(problem.help(help)))
}

keys! {
    pub struct BaseStock in "a base" {
        item: At<ItemKey> = "item" as "name", required, "the item that is bought", "crushed stone";
        delivered: At<Ratio> = "delivered", required, "delivered for each compacted cubic yard",
            "2 ton per cu yd", then per_yard;
    }
}

keys! {
    pub struct BarStock in "a bar" {
        item: At<ItemKey> = "item" as "name", required, "the item that is bought, by the piece, foot or pound", "bar no. 4";
        stock: At<Length> = "stock", usual "20 ft", "length it is sold in", "20 ft", by longer_than_a_lap;
        lap: At<LapPhrase> = "lap" as "bar diameters or rule", usual "40",
            "length of a splice: bar diameters, or `class B` of ACI 318, a rule by itself", "class B";
        grade: At<Grade> = "grade" as "number", usual "60",
            "60 or 40, thousands of psi at which it yields; `class B` asks", "60";
    }
}

words! {
    /// Thousands of psi at which a bar yields.
    pub enum Grade("unknown-word", "`grade` is not `{}`", choose) {
        Sixty "60";
        Forty "40";
    }
}

impl Grade {
    pub const fn psi(self) -> Decimal {
        match self {
            Self::Sixty => dec!(60000),
            Self::Forty => dec!(40000),
        }
    }
}

fn longer_than_a_lap(
    fields: &Fields<'_>,
    key: &'static str,
    problems: &mut Problems,
) -> Read<At<Length>> {
    let (least, why) = match fields.said("lap").map(|lap| lap.value) {
        Some(LapPhrase::ClassB) => (
            10,
            "a stock bar is at least 10 ft long where it laps by class B",
        ),
        Some(LapPhrase::Diameters(_)) | None => (6, "a stock bar is at least 6 ft long"),
    };
    let stock = fields.need(key, problems)?;
    at_least(stock, Length::feet_whole(least), why, problems)
}

keys! {
    pub struct MeshStock in "a mesh" {
        item: At<ItemKey> = "item" as "name", required,
            "the item that is bought, by the sheet or roll", "mesh sheet";
        width: At<Length> = "width", usual "5 ft", "of a sheet or roll", "5 ft", by wider_than_laps;
        length: At<Length> = "length", usual "10 ft", "of a sheet or roll", "10 ft", by longer_than_laps;
        lap: At<Length> = "lap", usual "6 in", "at sides and ends", "6 in";
    }
}

fn wider_than_laps(
    fields: &Fields<'_>,
    key: &'static str,
    problems: &mut Problems,
) -> Read<At<Length>> {
    let why = "a sheet is wider than two laps";
    at_least(fields.need(key, problems)?, laps(fields), why, problems)
}

fn longer_than_laps(
    fields: &Fields<'_>,
    key: &'static str,
    problems: &mut Problems,
) -> Read<At<Length>> {
    let why = "a sheet is longer than two laps";
    at_least(fields.need(key, problems)?, laps(fields), why, problems)
}

fn laps(mesh: &Fields<'_>) -> Length {
    mesh.said("lap")
        .map_or(Length::ZERO, |lap: At<Length>| lap.value * 2)
}

keys! {
    pub struct FiberStock in "a fiber" {
        item: At<ItemKey> = "item" as "name", required, "the item that is bought", "fiber at the plant";
        by: FiberBy = "by", usual "plant", "plant (by the ordered yard) or us (by the bag)", "plant";
        dose: At<Ratio> = "dose", usual "1 lb per cu yd", "in each yard", "1 lb per cu yd", then per_yard;
        bag: At<Amount> = "bag" as "pounds", usual "1 lb", "in a bag", "1 lb", then pounds_above_zero;
    }
}

words! {
    /// Who adds the fiber: the plant by the yard, or the crew by the bag.
    pub enum FiberBy("unknown-word", "`by` is not `{}`", choose) {
        Plant "plant";
        Us "us";
    }
}

placeless! { FiberBy }

keys! {
    pub struct Dumping in "a disposal" {
        item: At<ItemKey> = "item" as "name", required,
            "the item that is paid, by the ton, cubic yard or load", "dump broken concrete";
        loose: At<Amount> = "loose", usual "1", "loose yards from one solid yard", "1.5", then plain;
        weight: At<Ratio> = "weight", usual "4050 lb per cu yd", "of a solid yard", "4050 lb per cu yd",
            then per_yard;
        load: At<Amount> = "load" as "cubic yards", usual "10 cu yd", "loose yards in a load", "10 cu yd",
            then yards_above_zero;
    }
}
