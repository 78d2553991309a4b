//! What the rules say, held against themselves and the units of items: laps, wire, doses, names.

use rust_decimal::Decimal;

use super::dowels::DowelStock;
use super::item::{ItemKey, Selling};
use super::roles::Role;
use super::rules::Rules;
use crate::input::phrases::{Dose, LapPhrase};
use crate::reading::{At, Named, Problem, Problems, suggest};
use crate::tables::bars::Bar;
use crate::values::Unit;

/// Reports every contradiction.
pub(super) fn check(rules: &Rules, problems: &mut Problems) {
    laps(rules, problems);
    by_weight(rules, problems);
    for item in rules.dowels.values().flat_map(DowelStock::items) {
        if let Some(selling) = rules.selling.get(&item.value)
            && selling.unit != Unit::Piece
        {
            let counted = "dowels, caps and cartridges are counted";
            let help = "price it by the piece: `unit: piece`";
            problems.push(priced_otherwise(counted, item, selling, help));
        }
    }
    if let Some(wire) = rules.roles.get(&Role::TieWire)
        && let Some(item) = &wire.value
        && let Some(selling) = rules.selling.get(item)
        && selling.unit != Unit::Pound
    {
        let item = At::new(item.clone(), wire.place);
        let help = "price it by the lb; a roll of 3.5 lb is `unit: lb`, `sold in: 3.5`";
        problems.push(priced_otherwise(
            "tie wire is worked out in lb",
            &item,
            selling,
            help,
        ));
    }
    not_wasted(rules, problems);
    for (item, dose) in rules.on_surfaces() {
        if let Some(selling) = rules.selling.get(&item.value) {
            dosed(item, dose, selling, problems);
        }
    }
    for finish in rules.finishes.values() {
        known(finish.color.as_ref(), "color", &rules.colors, problems);
        known(finish.seal.as_ref(), "sealer", &rules.sealers, problems);
    }
}

/// What has another rule for how much more is bought of it.
fn not_wasted(rules: &Rules, problems: &mut Problems) {
    let mixes = rules.mixes.values().map(|mix| {
        let why = "ready-mix is ordered over the drawing by its allowance";
        let help = "take `waste` out; `allowance` in business.yaml, of a kind or a slab says it";
        (&mix.item.value, mix.item.place, why, help)
    });
    let bars = rules.bars.values().map(|bar| {
        let why = "bars are bought by a cut plan, which counts laps and offcuts already";
        let help = "take `waste` out; spare sticks go under `extra` of the takeoff";
        (&bar.item.value, bar.item.place, why, help)
    });
    let charged = [Role::Delivery, Role::ShortLoad, Role::Standing];
    let charged = charged.iter().filter_map(|role| {
        let (why, help) = ("what the plant charges is not wasted", "take `waste` out");
        let item = rules.roles.get(role)?;
        Some((item.value.as_ref()?, item.place, why, help))
    });
    for (item, place, why, help) in mixes.chain(bars).chain(charged) {
        let selling = rules.selling.get(item);
        if let Some(waste) = selling.and_then(|selling| selling.waste.as_ref()) {
            let problem = Problem::new("no-waste-here", why).at(waste.place);
            problems.push(problem.also(place, "bought here").help(help));
        }
    }
}

/// A rate by the ton asks what the work weighs: by what is delivered, or by what a dumped yard weighs.
fn by_weight(rules: &Rules, problems: &mut Problems) {
    for (task, rate) in &rules.rates.0 {
        if rate.value.per.unit != Unit::Ton {
            continue;
        }
        let (message, help) = if task == "base" {
            let mut bases = rules.bases.iter();
            let other = bases.find(|(_, base)| base.delivered.value.much.unit != Unit::Ton);
            let Some((name, _)) = other else { continue };
            (
                format!("`base` is rated by the ton, and `{name}` is not delivered by the ton"),
                "rate it by the cu yd or sq ft, or say `delivered: 2 ton per cu yd`".to_owned(),
            )
        } else {
            let mut named = ["asphalt", "pavers"].into_iter();
            let named = named.find(|one| task.contains(one));
            let other = named.unwrap_or("concrete");
            let material = if task.starts_with("dig") {
                "soil"
            } else {
                other
            };
            if rules.disposal.contains_key(material) {
                continue;
            }
            (
                format!(
                    "`{task}` is rated by the ton, and nothing says what a yard of {material} weighs"
                ),
                format!(
                    "give its weight under `disposal`, `{material}: {{item: dump, weight: 4050 lb per cu yd}}`, or rate it by the cu yd"
                ),
            )
        };
        let problem = Problem::new("wrong-unit", message).at(rate.place);
        problems.push(problem.help(help));
    }
}

/// A lap as long as the bar leaves nothing of it.
fn laps(rules: &Rules, problems: &mut Problems) {
    for (name, stock) in rules.bars.iter() {
        let (Ok(bar), LapPhrase::Diameters(many)) = (name.parse::<Bar>(), stock.lap.value) else {
            continue;
        };
        let lap = Decimal::from(bar.diameter().as_nanometres()) * many.value;
        if Decimal::from(stock.stock.value.as_nanometres()) <= lap {
            let message = format!(
                "a lap of {} diameters of {name} is as long as the bar, {}",
                many.number(),
                stock.stock.value
            );
            let problem = Problem::new("lap-too-long", message).at(stock.lap.place);
            let help = "give the lap in bar diameters, 40 as a rule, not in inches";
            problems.push(problem.help(help));
        }
    }
}

fn priced_otherwise(why: &str, item: &At<ItemKey>, selling: &Selling, help: &str) -> Problem {
    let (key, unit) = (&item.value, selling.unit.symbol());
    let message = format!("{why}, and `{key}` is priced in {unit}");
    let problem = Problem::new("wrong-unit", message).at(item.place);
    problem.also(selling.place, "the item").help(help)
}

/// A dose is in the unit of its item, or a count of what is counted.
fn dosed(item: &At<ItemKey>, dose: Option<&At<Dose>>, selling: &Selling, problems: &mut Problems) {
    let unit = dose.map_or(Unit::SquareFoot, |dose| dose.value.unit());
    let counted = unit == Unit::Plain && matches!(selling.unit, Unit::Piece | Unit::Lump);
    if unit == selling.unit || counted {
        return;
    }
    let sold = selling.unit.symbol();
    let said = match unit {
        Unit::Plain => "a number without a unit".to_owned(),
        _ => format!("in {}", unit.symbol()),
    };
    let message = format!("`{}` is sold by the {sold}, and this is {said}", item.value);
    let problem = Problem::new("wrong-unit", message)
        .at(dose.map_or(item.place, |dose| dose.place))
        .also(selling.place, "the item says so here");
    problems.push(problem.help(match dose {
        Some(_) => format!("say how much in {sold}, or give the item the other unit; it can still be `sold in` whole bags or pails"),
        None => format!("add `coverage`, for example `coverage: 250 sq ft per {sold}`"),
    }));
}

/// Reports a color or sealer that no entry explains.
fn known<T>(name: Option<&At<String>>, what: &str, among: &Named<T>, problems: &mut Problems) {
    let Some(name) = name else { return };
    let _ = among.known(&name.value, problems, || {
        let message = format!("price book has no {what} `{}`", name.value);
        let problem = Problem::new("unknown-name", message).at(name.place);
        let near = suggest::closest(&name.value, among.keys().map(String::as_str));
        problem.help(match near {
            Some(near) => format!("did you mean `{near}`?"),
            None => format!("name it under `{what}s` of the price book, or take the line out"),
        })
    });
}

#[cfg(test)]
mod tests {
    use rust_decimal_macros::dec;

    use super::*;
    use crate::input::book::Stage;
    use crate::reading::{FileId, Place};

    fn codes(unit: Unit) -> Vec<&'static str> {
        let place = Place {
            file: FileId(0),
            start: 0,
            end: 0,
        };
        let mut rules = Rules::default();
        let value = Some("wire".to_owned());
        rules.roles.insert(Role::TieWire, At { value, place });
        rules.selling.0.insert(
            "wire".to_owned(),
            Selling {
                unit,
                step: dec!(0),
                smallest: dec!(0),
                waste: None,
                work: None,
                height: None,
                stage: Stage::Form,
                after: None,
                place,
            },
        );
        let mut problems = Problems::default();
        check(&rules, &mut problems);
        problems.iter().map(|problem| problem.code).collect()
    }

    #[test]
    fn tie_wire_is_priced_by_the_pound() {
        assert_eq!(codes(Unit::Roll), ["wrong-unit"]);
        assert!(codes(Unit::Pound).is_empty());
    }
}
