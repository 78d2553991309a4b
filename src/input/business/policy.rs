//! How the owner prices, orders, works and promises.

mod crew;

pub(super) use crew::crew;
pub use crew::{Charge, CrewPolicy, DayCount, DayRule, LaborLines};

use rust_decimal::Decimal;

use super::tables;
use crate::input::phrases::{Contingency, ContingencyBase, Days, Profit, Ratio};
use crate::reading::{At, FieldTable, Fields, Node, Place, Problem, Problems};
use crate::values::{Amount, Length, Money, Percent, Unit};

/// From cost to price.
#[derive(Clone, Debug)]
pub struct PricePolicy {
    pub overhead: At<Percent>,
    pub contingency: At<Percent>,
    pub contingency_on: ContingencyBase,
    pub profit: At<Profit>,
    pub minimum: At<Money>,
    pub round_up_to: At<Money>,
    pub margin_floor: At<Percent>,
    pub taxes: Vec<TaxRule>,
}

/// One tax; each is rounded once, on its own.
#[derive(Clone, Debug)]
pub struct TaxRule {
    pub base: TaxBase,
    pub rate: At<Percent>,
    pub name: String,
}

/// What a tax falls on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum TaxBase {
    /// The whole price before tax.
    Sale,
    /// The price before tax and the tax itself: added so that the rate of the whole is the tax.
    Receipts,
    /// The share of materials in direct cost, of the price before tax.
    Materials,
    /// What the owner buys: a direct cost, never shown.
    Purchases,
}

#[derive(Clone, Debug)]
pub struct OrderPolicy {
    pub allowance: At<Percent>,
    pub thickness_allowance: At<Length>,
    pub smallest_allowance: At<Amount>,
    pub cover: At<Length>,
    pub stake_spacing: At<Length>,
    pub chair_area: At<Amount>,
    pub compound_coverage: At<Amount>,
    pub crossings_tied: At<Percent>,
    pub wire_for_a_tie: At<Length>,
    /// Pounds a foot.
    pub tie_wire: At<Ratio>,
    /// A form deeper than this has a rate and an item of its own.
    pub deep_form_over: At<Length>,
    pub retarder_width: At<Length>,
    pub retarder_lap: At<Length>,
    /// How deep the owner's tool cuts, where it is known.
    pub groove: Option<At<Length>>,
    /// Smaller openings are formed, but taken off nothing.
    pub smallest_opening: At<Amount>,
}

#[derive(Clone, Debug)]
pub struct QuotePolicy {
    pub good_for: Days,
    pub lead_time: Days,
    pub start_window: Days,
    pub stale_after: At<Days>,
    pub deposit_cap: At<Percent>,
    pub deposit_limit: At<Money>,
    /// Where the owner says that customers have a right to cancel in the days after signing.
    pub cancellation: Option<Place>,
}

#[derive(Clone, Debug)]
pub struct CurePolicy {
    pub cool: At<Amount>,
    pub warm: At<Amount>,
    pub walk: Days,
    pub car: Days,
    pub heavy: Days,
    pub seal: Days,
    pub walk_strength: Percent,
    pub car_strength: Percent,
    pub heavy_strength: Percent,
}

pub(super) fn price(node: &Node, problems: &mut Problems) -> Option<PricePolicy> {
    let fields = node.fields(&tables::PRICE, problems).ok()?;
    let overhead = fields.need("overhead", problems).ok();
    let contingency: Option<At<Contingency>> = fields.need("contingency", problems).ok();
    let profit = fields.need("profit", problems).ok();
    let minimum = fields.need("minimum job", problems).ok();
    let round_up_to: Option<At<Money>> = fields.need("round up to", problems).ok();
    let margin_floor = fields.need("margin floor", problems).ok();
    let taxes = match fields.node("tax") {
        None => Vec::new(),
        Some(node) if node.text("`tax`", &mut Problems::default()).ok() == Some("none") => {
            Vec::new()
        }
        Some(node) if node.is_list() => node
            .items("`tax`", problems)
            .into_iter()
            .filter_map(|one| tax(one, problems))
            .collect(),
        Some(node) => tax(node, problems).into_iter().collect(),
    };
    let contingency = contingency?;
    Some(PricePolicy {
        overhead: overhead?,
        contingency: At {
            value: contingency.value.percent,
            place: contingency.place,
        },
        contingency_on: contingency.value.on,
        profit: profit?,
        minimum: minimum?,
        round_up_to: round_up_to?,
        margin_floor: margin_floor?,
        taxes,
    })
}

/// `None` for `on: none`, and for what could not be read.
fn tax(node: &Node, problems: &mut Problems) -> Option<TaxRule> {
    let fields = node.fields(&tables::TAX, problems).ok()?;
    let on = fields.read::<String>("on", problems)?;
    let base = match on.value.as_str() {
        "none" => return None,
        "sale" => TaxBase::Sale,
        "receipts" => TaxBase::Receipts,
        "materials" => TaxBase::Materials,
        "purchases" => TaxBase::Purchases,
        other => {
            problems.push(
                Problem::new("bad-tax", format!("no tax falls on `{other}`"))
                    .at(on.place)
                    .help("write `none`, `sale`, `receipts`, `materials` or `purchases`"),
            );
            return None;
        }
    };
    let rate: At<Percent> = fields.need("rate", problems).ok()?;
    if base == TaxBase::Receipts && Percent::new(Decimal::ONE_HUNDRED) <= rate.value {
        problems.push(
            Problem::new(
                "tax-takes-all",
                format!("a tax of {} on receipts leaves nothing of them", rate.value),
            )
            .at(rate.place)
            .help("write the rate of the whole, such as `2%`"),
        );
        return None;
    }
    let name = fields
        .read::<String>("name", problems)
        .map_or_else(|| "sales tax".to_owned(), |name| name.value);
    Some(TaxRule { base, rate, name })
}

/// A missing group is read as an empty one: every key has its default.
fn group<'a>(
    node: Option<&'a Node>,
    table: &'static FieldTable,
    heading: Place,
    problems: &mut Problems,
) -> Option<Fields<'a>> {
    match node {
        Some(node) => node.fields(table, problems).ok(),
        None => Some(Fields::empty(table, heading)),
    }
}

pub(super) fn order(
    node: Option<&Node>,
    heading: Place,
    problems: &mut Problems,
) -> Option<OrderPolicy> {
    let fields = group(node, &tables::ORDER, heading, problems)?;
    let allowance = fields.need("allowance", problems).ok();
    let thickness_allowance = fields.need("thickness allowance", problems).ok();
    let smallest_allowance = in_unit(&fields, "smallest allowance", Unit::CubicYard, problems);
    let cover = fields.need("cover", problems).ok();
    let stake_spacing = fields
        .need("stake spacing", problems)
        .ok()
        .and_then(|at| above_zero(at, &Length::ZERO, problems));
    let chair_area = in_unit(&fields, "chair area", Unit::SquareFoot, problems)
        .and_then(|at| divisor(at, problems));
    let compound_coverage = in_unit(&fields, "compound coverage", Unit::SquareFoot, problems)
        .and_then(|at| divisor(at, problems));
    let crossings_tied = fields.need("crossings tied", problems).ok();
    let wire_for_a_tie = fields.need("wire for a tie", problems).ok();
    let tie_wire = fields
        .need("tie wire", problems)
        .ok()
        .and_then(|at| pounds_a_foot(at, problems));
    let deep_form_over = fields.need("deep form over", problems).ok();
    let (retarder_width, retarder_lap) = super::retarder::read(&fields, problems)?;
    let groove = fields
        .read("groove depth", problems)
        .and_then(|at| above_zero(at, &Length::ZERO, problems));
    let smallest_opening = in_unit(&fields, "smallest opening", Unit::SquareFoot, problems);
    Some(OrderPolicy {
        groove,
        allowance: allowance?,
        thickness_allowance: thickness_allowance?,
        smallest_allowance: smallest_allowance?,
        cover: cover?,
        stake_spacing: stake_spacing?,
        chair_area: chair_area?,
        compound_coverage: compound_coverage?,
        crossings_tied: crossings_tied?,
        wire_for_a_tie: wire_for_a_tie?,
        tie_wire: tie_wire?,
        deep_form_over: deep_form_over?,
        retarder_width,
        retarder_lap,
        smallest_opening: smallest_opening?,
    })
}

fn pounds_a_foot(at: At<Ratio>, problems: &mut Problems) -> Option<At<Ratio>> {
    if (at.value.much.unit, at.value.per.unit) == (Unit::Pound, Unit::Foot) {
        return Some(at);
    }
    problems.push(
        Problem::new("wrong-unit", "tie wire is given in pounds for so many feet")
            .at(at.place)
            .help(
                "write what your roll weighs and how long it is, for example `3.5 lb per 336 ft`",
            ),
    );
    None
}

pub(super) fn quote(
    node: Option<&Node>,
    heading: Place,
    problems: &mut Problems,
) -> Option<QuotePolicy> {
    let fields = group(node, &tables::QUOTE, heading, problems)?;
    let mut days = |key: &str| fields.need::<Days>(key, problems).ok();
    let (good_for, lead_time, start_window, stale_after) = (
        days("good for"),
        days("lead time"),
        days("start window"),
        days("price stale after"),
    );
    let deposit_cap = fields.need("deposit cap", problems).ok();
    let deposit_limit = fields.need("deposit limit", problems).ok();
    let cancellation = fields.yes("right to cancel", problems);
    Some(QuotePolicy {
        good_for: good_for?.value,
        lead_time: lead_time?.value,
        start_window: start_window?.value,
        stale_after: stale_after?,
        deposit_cap: deposit_cap?,
        deposit_limit: deposit_limit?,
        cancellation: cancellation.filter(|yes| yes.value).map(|yes| yes.place),
    })
}

pub(super) fn cure(
    node: Option<&Node>,
    heading: Place,
    problems: &mut Problems,
) -> Option<CurePolicy> {
    let fields = group(node, &tables::CURE, heading, problems)?;
    let cool = in_unit(&fields, "cool", Unit::Plain, problems);
    let warm = in_unit(&fields, "warm", Unit::Plain, problems);
    let mut days = |key: &str| fields.need::<Days>(key, problems).ok().map(|at| at.value);
    let (walk, car, heavy, seal) = (
        days("walk"),
        days("car"),
        days("heavier vehicle"),
        days("seal"),
    );
    let mut percent = |key: &str| {
        fields
            .need::<Percent>(key, problems)
            .ok()
            .map(|at| at.value)
    };
    let (walk_strength, car_strength, heavy_strength) = (
        percent("strength to walk"),
        percent("strength for a car"),
        percent("strength for a heavier vehicle"),
    );
    let (cool, warm) = (cool?, warm?);
    for temperature in [&cool, &warm] {
        let degrees = temperature.value.value;
        if degrees < Decimal::from(35) || Decimal::from(90) < degrees || !degrees.fract().is_zero()
        {
            let problem = Problem::new(
                "bad-temperature",
                format!("{degrees} is not a temperature concrete is cured at"),
            )
            .at(temperature.place);
            problems.push(problem.help("write whole degrees Fahrenheit from 35 to 90; colder than that, concrete needs protection"));
        }
    }
    if warm.value.value < cool.value.value {
        problems.push(
            Problem::new("bad-temperature", "`cool` is warmer than `warm`")
                .at(cool.place)
                .help("swap the two"),
        );
    }
    Some(CurePolicy {
        cool,
        warm,
        walk: walk?,
        car: car?,
        heavy: heavy?,
        seal: seal?,
        walk_strength: walk_strength?,
        car_strength: car_strength?,
        heavy_strength: heavy_strength?,
    })
}

fn in_unit(
    fields: &Fields<'_>,
    key: &str,
    unit: Unit,
    problems: &mut Problems,
) -> Option<At<Amount>> {
    let amount = fields.need::<Amount>(key, problems).ok()?;
    crate::input::expect_unit(amount, unit, key, problems)
}

fn divisor(at: At<Amount>, problems: &mut Problems) -> Option<At<Amount>> {
    let zero = Amount::new(Decimal::ZERO, at.value.unit);
    above_zero_by(at, |amount| amount.value != zero.value, problems)
}

fn above_zero<T: PartialEq>(at: At<T>, zero: &T, problems: &mut Problems) -> Option<At<T>> {
    above_zero_by(at, |value| value != zero, problems)
}

fn above_zero_by<T>(
    at: At<T>,
    fits: impl Fn(&T) -> bool,
    problems: &mut Problems,
) -> Option<At<T>> {
    if fits(&at.value) {
        return Some(at);
    }
    problems.push(
        Problem::new("not-above-zero", "this has to be more than zero")
            .at(at.place)
            .help("write the real figure, or leave the line out for the usual one"),
    );
    None
}
