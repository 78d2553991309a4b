//! Reads the rules of buying; what cannot be read is reported and left out.

use std::collections::{BTreeMap, BTreeSet};

use super::{
    BarStock, BaseStock, Dumping, FiberBy, FiberStock, MeshStock, Mix, Role, Rules, ShortCount,
    ShortLoad, Supply,
};
use crate::input::book::{ItemKey, rates, tables};
use crate::input::phrases::Ratio;
use crate::reading::{At, Fields, Node, Problem, Problems};
use crate::values::{Amount, Length, Unit};

pub(in crate::input::book) fn read(book: &Fields<'_>, problems: &mut Problems) -> Rules {
    let mut rules = Rules {
        place: Some(book.heading()),
        ..Rules::default()
    };
    each(
        book,
        "mixes",
        problems,
        mix,
        &mut rules.mixes,
        &mut rules.broken,
    );
    each(
        book,
        "bases",
        problems,
        base,
        &mut rules.bases,
        &mut rules.broken,
    );
    each(
        book,
        "bars",
        problems,
        bars,
        &mut rules.bars,
        &mut rules.broken,
    );
    each(
        book,
        "mesh",
        problems,
        mesh,
        &mut rules.mesh,
        &mut rules.broken,
    );
    each(
        book,
        "fiber",
        problems,
        fiber,
        &mut rules.fiber,
        &mut rules.broken,
    );
    each(
        book,
        "disposal",
        problems,
        disposal,
        &mut rules.disposal,
        &mut rules.broken,
    );
    rules.supply = book
        .required("supply", problems)
        .and_then(|node| supply(node, problems));
    if let Some(node) = book.required("use", problems) {
        rules.roles = roles(node, problems);
    }
    if let Some(node) = book.required("rates", problems) {
        rules.rates = rates::read(node, problems);
    }
    rules
}

fn each<T>(
    book: &Fields<'_>,
    key: &str,
    problems: &mut Problems,
    read: impl Fn(&Node, &mut Problems) -> Option<T>,
    into: &mut BTreeMap<String, T>,
    broken: &mut BTreeSet<String>,
) {
    let Some(node) = book.node(key) else { return };
    for entry in node.entries(&format!("`{key}`"), problems) {
        match read(&entry.node, problems) {
            Some(one) => drop(into.insert(entry.key.clone(), one)),
            None => drop(broken.insert(entry.key.clone())),
        }
    }
}

fn mix(node: &Node, problems: &mut Problems) -> Option<Mix> {
    let fields = node.fields(&tables::MIX, problems)?;
    let item = item(&fields, problems);
    let strength = fields
        .need("strength", problems)
        .and_then(|at| crate::input::expect_unit(at, Unit::Psi, "strength", problems));
    let air = fields.usual("air", problems);
    let aggregate = fields.usual("aggregate", problems);
    let cement = word(
        &fields,
        "cement",
        &["blended", "ordinary", "early"],
        problems,
    );
    Some(Mix {
        item: item?,
        strength: strength?,
        air: air?,
        aggregate: aggregate?,
        cement: cement?,
    })
}

fn base(node: &Node, problems: &mut Problems) -> Option<BaseStock> {
    let fields = node.fields(&tables::BASE, problems)?;
    let item = item(&fields, problems);
    let delivered = per_yard(fields.need("delivered", problems), problems);
    Some(BaseStock {
        item: item?,
        delivered: delivered?,
    })
}

fn bars(node: &Node, problems: &mut Problems) -> Option<BarStock> {
    let fields = node.fields(&tables::BARS, problems)?;
    let item = item(&fields, problems);
    let stock: Option<At<Length>> = fields.usual("stock", problems);
    let lap = fields
        .usual("lap", problems)
        .and_then(|at| crate::input::expect_unit(at, Unit::Plain, "lap", problems));
    let stock = stock.and_then(|at| {
        at_least(
            at,
            Length::feet_whole(6),
            "a stock bar is at least 6 ft long",
            problems,
        )
    });
    Some(BarStock {
        item: item?,
        stock: stock?,
        lap: lap?,
    })
}

fn mesh(node: &Node, problems: &mut Problems) -> Option<MeshStock> {
    let fields = node.fields(&tables::MESH, problems)?;
    let item = item(&fields, problems);
    let lap: Option<At<Length>> = fields.usual("lap", problems);
    let least = lap.as_ref().map_or(Length::ZERO, |lap| lap.value * 2);
    let width = fields
        .usual("width", problems)
        .and_then(|at| at_least(at, least, "a sheet is wider than two laps", problems));
    let length = fields
        .usual("length", problems)
        .and_then(|at| at_least(at, least, "a sheet is longer than two laps", problems));
    Some(MeshStock {
        item: item?,
        width: width?,
        length: length?,
        lap: lap?,
    })
}

fn fiber(node: &Node, problems: &mut Problems) -> Option<FiberStock> {
    let fields = node.fields(&tables::FIBER, problems)?;
    let item = item(&fields, problems);
    let by = word(&fields, "by", &["plant", "us"], problems);
    let dose = per_yard(fields.usual("dose", problems), problems);
    let bag = fields
        .usual("bag", problems)
        .and_then(|at| crate::input::expect_unit(at, Unit::Pound, "bag", problems));
    let by = if by?.value == "us" {
        FiberBy::Us
    } else {
        FiberBy::Plant
    };
    Some(FiberStock {
        item: item?,
        by,
        dose: dose?,
        bag: bag.filter(|bag| !bag.value.value.is_zero())?,
    })
}

fn disposal(node: &Node, problems: &mut Problems) -> Option<Dumping> {
    let fields = node.fields(&tables::DISPOSAL, problems)?;
    let item = item(&fields, problems);
    let loose = fields
        .usual("loose", problems)
        .and_then(|at| crate::input::expect_unit(at, Unit::Plain, "loose", problems));
    let weight = per_yard(fields.usual("weight", problems), problems);
    let load = yards(&fields, "load", problems);
    Some(Dumping {
        item: item?,
        loose: loose?,
        weight: weight?,
        load: load.filter(|load| !load.value.value.is_zero())?,
    })
}

fn supply(node: &Node, problems: &mut Problems) -> Option<Supply> {
    let fields = node.fields(&tables::SUPPLY, problems)?;
    let sold_in = yards(&fields, "sold in", problems);
    let smallest = yards(&fields, "smallest order", problems);
    let truck = yards(&fields, "truck", problems);
    let pump_prime = yards(&fields, "pump prime", problems);
    let free_time = per_yard(fields.usual("free time", problems), problems);
    let short_load = fields
        .node("short load")
        .and_then(|node| short_load(node, problems));
    let truck = truck?;
    if truck.value.value.is_zero() {
        problems.push(
            Problem::new("not-above-zero", "a truck carries more than nothing")
                .at(truck.place)
                .help("write what a full load is, for example `9 cu yd`"),
        );
        return None;
    }
    Some(Supply {
        sold_in: sold_in?,
        smallest: smallest?,
        truck,
        short_load,
        free_time: free_time?,
        pump_prime: pump_prime?,
    })
}

fn short_load(node: &Node, problems: &mut Problems) -> Option<ShortLoad> {
    let fields = node.fields(&tables::SHORT_LOAD, problems)?;
    let under = fields
        .required("under", problems)
        .and_then(|_| yards(&fields, "under", problems));
    let counted = word(
        &fields,
        "counted",
        &["by truck", "by order", "on the last truck"],
        problems,
    );
    let charge = word(&fields, "charge", &["each yard", "flat"], problems);
    let counted = match counted?.value.as_str() {
        "by order" => ShortCount::ByOrder,
        "on the last truck" => ShortCount::LastTruck,
        _ => ShortCount::ByTruck,
    };
    Some(ShortLoad {
        under: under?,
        counted,
        flat: charge?.value == "flat",
    })
}

fn roles(node: &Node, problems: &mut Problems) -> BTreeMap<Role, At<Option<ItemKey>>> {
    let mut roles = BTreeMap::new();
    for entry in node.entries("`use`", problems) {
        let Some((role, ..)) = Role::ALL.iter().find(|(_, key, _)| *key == entry.key) else {
            let keys: Vec<&str> = Role::ALL.iter().map(|(_, key, _)| *key).collect();
            let problem = Problem::new("unknown-key", format!("`use` has no key `{}`", entry.key))
                .at(entry.key_place);
            problems.push(problem.help(
                match crate::reading::suggest::closest(&entry.key, keys.iter().copied()) {
                    Some(near) => format!("did you mean `{near}`?"),
                    None => format!("its keys are {}", keys.join(", ")),
                },
            ));
            continue;
        };
        if let Some(item) = entry.node.text("an item's name", problems) {
            let value = (item != "none").then(|| item.to_owned());
            roles.insert(
                *role,
                At {
                    value,
                    place: entry.node.place,
                },
            );
        }
    }
    roles
}

fn item(fields: &Fields<'_>, problems: &mut Problems) -> Option<At<ItemKey>> {
    fields
        .required("item", problems)
        .and_then(|_| fields.text("item", problems))
}

fn yards(fields: &Fields<'_>, key: &str, problems: &mut Problems) -> Option<At<Amount>> {
    let amount = fields.usual(key, problems)?;
    crate::input::expect_unit(amount, Unit::CubicYard, key, problems)
}

fn per_yard(ratio: Option<At<Ratio>>, problems: &mut Problems) -> Option<At<Ratio>> {
    let ratio = ratio?;
    if ratio.value.per.unit == Unit::CubicYard {
        return Some(ratio);
    }
    problems.push(
        Problem::new("wrong-unit", "this is given for each cubic yard")
            .at(ratio.place)
            .help("end it with `per cu yd`"),
    );
    None
}

fn at_least(
    at: At<Length>,
    least: Length,
    why: &str,
    problems: &mut Problems,
) -> Option<At<Length>> {
    if least < at.value || (least == at.value && least != Length::ZERO) {
        return Some(at);
    }
    problems.push(
        Problem::new("not-above-zero", why)
            .at(at.place)
            .help("check the figure and its unit"),
    );
    None
}

/// One of a few words, or the default.
fn word(
    fields: &Fields<'_>,
    key: &str,
    words: &[&str],
    problems: &mut Problems,
) -> Option<At<String>> {
    let found = fields.text(key, problems).unwrap_or_else(|| At {
        value: words[0].to_owned(),
        place: fields.heading(),
    });
    if words.contains(&found.value.as_str()) {
        return Some(found);
    }
    let quoted: Vec<String> = words.iter().map(|word| format!("`{word}`")).collect();
    problems.push(
        Problem::new("unknown-word", format!("`{key}` is not `{}`", found.value))
            .at(found.place)
            .help(format!("write {}", quoted.join(" or "))),
    );
    None
}
