//! Options: a choice costs what the same work costs when it is written into the job itself.

use std::fmt::Write as _;

use flatwork::inside::costing::{Offer, Priced, sections};
use flatwork::inside::documents::views::quote::QuoteView;
use flatwork::inside::input::job::Choice;
use rust_decimal::Decimal;

use super::SHOP;
use super::jobs::Dice;
use crate::support::{BOOK, BUSINESS, desk};

/// A slab's key, its shape and place, the values written below it.
#[derive(Clone)]
struct Slab {
    key: String,
    shape: String,
    values: Vec<(&'static str, String)>,
    pour: usize,
}

/// A job without options.
#[derive(Clone)]
struct Plain {
    slabs: Vec<Slab>,
    top: String,
    pours: usize,
    removals: Vec<(&'static str, String)>,
    extras: Vec<(&'static str, String)>,
}

/// What an option does, and how it is written.
struct Offered {
    change: Vec<(String, &'static str, String)>,
    drop: Vec<String>,
    add: Vec<(&'static str, String)>,
}

const DAYS: [&str; 2] = ["2026-06-15", "2026-09-03"];

fn job(seed: u64) -> (Plain, Vec<Vec<Offered>>) {
    let mut dice = Dice::new(seed);
    let (pours, turn) = (usize::from(dice.one_in(2)) + 1, usize::from(dice.one_in(2)));
    let mut slabs: Vec<Slab> = Vec::new();
    for i in 0..usize::try_from(dice.between(2, 4)).expect("a few") {
        let kind = dice.pick(&["patio", "walk", "driveway", "slab"]);
        let mut shape = format!(
            "size: {} ft x {} ft 3 in",
            dice.between(4, 30),
            dice.between(4, 20)
        );
        if let Some(before) = slabs.last()
            && dice.one_in(2)
        {
            let place = dice.pick(&["east edge, from north end", "south edge, from west end"]);
            let _ = write!(shape, ", beside: \"{}, {place}\"", before.key);
            if dice.one_in(3) {
                shape += ", edges: {west: isolated}";
            }
        }
        slabs.push(Slab {
            key: format!("{kind} {i}"),
            shape,
            values: vec![("thickness", format!("{} in", dice.between(4, 6)))],
            pour: (i + turn) % pours,
        });
    }
    let access = dice.pick(&["chute", "wheelbarrow", "pump"]);
    let first = slabs[0].key.clone();
    // Not one that another was placed by; rather one in the middle.
    let free = |slab: &&Slab| {
        let by = format!("beside: \"{},", slab.key);
        !slabs.iter().any(|other| other.shape.contains(&by))
    };
    let dropped = slabs.iter().skip(1).find(free).expect("the last at least");
    let dropped = dropped.key.clone();
    let plain = Plain {
        slabs,
        top: format!("customer: Ira Sample\nquoted: 2026-05-04\naccess: {access}\n"),
        pours,
        removals: vec![(
            "old walk",
            format!("{} ft x 3 ft x 4 in", dice.between(5, 40)),
        )],
        extras: vec![
            ("topsoil", format!("{} cu yd", dice.between(1, 9))),
            ("town permit", "{cost: 85.00, class: fee}".to_owned()),
        ],
    };
    let sealer = ("clear sealer", format!("{} sq ft", dice.between(40, 900)));
    let option = |change, drop, add| Offered { change, drop, add };
    let other = |slab: &str, key, value: String| vec![(slab.to_owned(), key, value)];
    let steel = dice
        .pick(&["none", "no. 4 at 12 in", "no. 3 at 18 in"])
        .to_owned();
    let mut thicker = other(&first, "thickness", format!("{} in", dice.between(4, 9)));
    thicker.push((first.clone(), "bars", steel));
    let groups = vec![
        vec![option(thicker, vec![], vec![])],
        vec![
            option(other(&first, "finish", "trowel".into()), vec![], vec![]),
            option(vec![], vec![], vec![sealer]),
        ],
        vec![option(
            other(&first, "joints", "5 ft".into()),
            vec![dropped, "old walk".into(), "town permit".into()],
            vec![("topsoil", "1 cu yd".into())],
        )],
    ];
    (plain, groups)
}

impl Plain {
    /// The same job with this option's work in it.
    fn take(&mut self, option: &Offered) {
        for (slab, key, value) in &option.change {
            for slab in self.slabs.iter_mut().filter(|one| one.key == *slab) {
                slab.values.retain(|(known, _)| known != key);
                slab.values.push((key, value.clone()));
            }
        }
        let kept = |name: &str| !option.drop.iter().any(|drop| drop == name);
        self.slabs.retain(|one| kept(&one.key));
        self.removals.retain(|one| kept(one.0));
        self.extras.retain(|one| kept(one.0));
        self.extras.extend(option.add.iter().cloned());
    }

    fn text(&self) -> String {
        let mut out = format!("{}slabs:\n", self.top);
        for slab in &self.slabs {
            let values = slab
                .values
                .iter()
                .map(|(key, value)| format!("{key}: {value}"));
            let values: Vec<String> = values.collect();
            let _ = writeln!(
                out,
                "  {}: {{{}, {}}}",
                slab.key,
                slab.shape,
                values.join(", ")
            );
        }
        let poured = |pour: usize| {
            let slabs = self.slabs.iter().filter(|slab| slab.pour == pour);
            slabs.map(|slab| slab.key.clone()).collect::<Vec<_>>()
        };
        out += "pour:\n";
        for pour in (0..self.pours).filter(|pour| !poured(*pour).is_empty()) {
            let _ = writeln!(
                out,
                "  - {{day: {}, slabs: [{}]}}",
                DAYS[pour],
                poured(pour).join(", ")
            );
        }
        out + &list("remove", &self.removals) + &list("extra", &self.extras)
    }
}

fn list(key: &str, lines: &[(&str, String)]) -> String {
    if lines.is_empty() {
        return String::new();
    }
    let lines = lines
        .iter()
        .map(|(name, what)| format!("  - {name}: {what}\n"));
    format!("{key}:\n{}", lines.collect::<String>())
}

/// As it stands below `options`; the middle group has to be answered.
fn options(groups: &[Vec<Offered>]) -> String {
    let mut out = "options:\n".to_owned();
    for (i, group) in groups.iter().enumerate() {
        let indent = if 1 < group.len() { "      " } else { "  " };
        if 1 < group.len() {
            let _ = write!(
                out,
                "  - choose one: Question {i}\n    must choose: yes\n    from:\n"
            );
        }
        for (j, option) in group.iter().enumerate() {
            let change = option.change.iter();
            let change: Vec<String> = change
                .map(|(_, key, value)| format!("{key}: {value}"))
                .collect();
            let mut parts = Vec::new();
            if let Some((slab, ..)) = option.change.first() {
                parts.push(format!("change: {{{slab}: {{{}}}}}", change.join(", ")));
            }
            if !option.drop.is_empty() {
                parts.push(format!("drop: [{}]", option.drop.join(", ")));
            }
            let add = option
                .add
                .iter()
                .map(|(name, what)| format!("{name}: {what}"));
            let add: Vec<String> = add.collect();
            if !add.is_empty() {
                parts.push(format!("add: [{}]", add.join(", ")));
            }
            let _ = writeln!(out, "{indent}- Option {i}{j}: {{{}}}", parts.join(", "));
        }
    }
    out
}

/// What is bought, and for how much; an extra is one line however often it is added.
fn bought(priced: &Priced) -> Vec<(String, Decimal, i64)> {
    let mut lines: Vec<_> = priced
        .lines
        .iter()
        .map(|line| {
            let quantity = line
                .quantity
                .as_ref()
                .map(flatwork::inside::trade::Quantity::value);
            let quantity = quantity.unwrap_or_default().normalize();
            (line.title.clone(), quantity, line.money().as_cents())
        })
        .collect();
    lines.sort();
    lines
}

fn offered(text: &str) -> Offer {
    SHOP.with(|shop| shop.offer(text))
}

#[test]
fn a_choice_costs_what_the_same_work_costs_without_options() {
    let mut without_a_pour = 0;
    for seed in 0..60 {
        let (plain, groups) = job(seed);
        let text = plain.text() + &options(&groups);
        let offer = offered(&text);
        assert_eq!(offer.by_choice.len(), 8, "{text}");
        for (Choice(picks), priced) in &offer.by_choice {
            let mut same = plain.clone();
            for (&pick, group) in picks.iter().zip(&groups).filter(|(pick, _)| 0 < **pick) {
                same.take(&group[pick - 1]);
            }
            let alone = offered(&same.text());
            let texts = || format!("seed {seed}, {picks:?}\n{text}\n{}", same.text());
            assert_eq!(bought(priced), bought(alone.quoted()), "{}", texts());
            assert_eq!(priced.totals(), alone.quoted().totals(), "{}", texts());
            let parts = [&priced.lines, &alone.quoted().lines].map(|lines| sections(lines));
            assert_eq!(parts[0], parts[1], "{}", texts());
            let days = same.text().matches("day:").count();
            without_a_pour += usize::from(days < plain.pours);
        }
    }
    assert!(
        10 < without_a_pour,
        "only {without_a_pour} choices left a pour without slabs"
    );
}

/// Dropped and added again, or changed to what it is, is the job as quoted, line by line.
#[test]
fn undoing_a_change_is_no_change() {
    for seed in 0..40 {
        let (plain, _) = job(seed);
        let (slab, extra) = (&plain.slabs[0], &plain.extras[0]);
        let undone = format!(
            "options:\n  - Undone:\n      change: {{{}: {{thickness: {}}}}}\n      drop: [{}]\n      add: [{}: {}]\n",
            slab.key, slab.values[0].1, extra.0, extra.0, extra.1
        );
        let text = plain.text() + &undone;
        let offer = offered(&text);
        let all: Vec<&Priced> = offer.by_choice.values().collect();
        assert_eq!(bought(all[0]), bought(all[1]), "seed {seed}\n{text}");
        let view = view(&text);
        let choices = view.choices.expect("an option");
        assert_eq!(choices.groups[0].items[0].adds, "no change");
    }
}

fn view(text: &str) -> QuoteView {
    desk(text, BUSINESS, BOOK).view()
}

fn cents(text: &str) -> i64 {
    let digits: String = text.chars().filter(char::is_ascii_digit).collect();
    digits.parse().expect("an amount")
}

/// What is printed beside a box is what it does to the printed totals, in the table too.
#[test]
fn a_shown_difference_is_that_of_the_shown_totals() {
    let (mut up, mut down) = (0, 0);
    for seed in 0..40 {
        let (plain, groups) = job(seed);
        let text = plain.text() + &options(&groups);
        let view = view(&text);
        let total = cents(&view.total.amount);
        let table = view.combinations.expect("several questions");
        let amounts = table.rows.iter().flat_map(|row| &row.amounts);
        let shown: Vec<i64> = amounts.clone().map(|amount| cents(&amount.text)).collect();
        let quoted: Vec<i64> = amounts
            .filter(|amount| amount.as_quoted)
            .map(|amount| cents(&amount.text))
            .collect();
        assert_eq!(quoted, [total], "{text}");
        assert_eq!(cents(&view.acceptance.total), total);
        for item in view
            .choices
            .iter()
            .flat_map(|c| &c.groups)
            .flat_map(|g| &g.items)
        {
            let new = cents(&item.new_total);
            assert!(
                shown.contains(&new),
                "{} is in the table: {text}",
                item.title
            );
            match item.adds.split_once('\u{a0}') {
                Some(("+", more)) => {
                    assert_eq!(total + cents(more), new, "{text}");
                    up += 1;
                }
                Some(("takes off", less)) => {
                    assert_eq!(total - cents(less), new, "{text}");
                    down += 1;
                }
                _ => {
                    assert!(
                        ["as quoted", "no change"].contains(&item.adds.as_str()),
                        "{}",
                        item.adds
                    );
                    assert_eq!(total, new, "{text}");
                }
            }
        }
    }
    assert!(
        20 < up && 20 < down,
        "{up} raise the total, {down} lower it"
    );
}

#[test]
fn the_order_of_options_changes_no_total() {
    for seed in 0..30 {
        let (plain, mut groups) = job(seed);
        let one = offered(&(plain.text() + &options(&groups)));
        groups.rotate_left(1);
        let text = plain.text() + &options(&groups);
        let other = offered(&text);
        for (Choice(picks), priced) in &one.by_choice {
            let mut turned = picks.clone();
            turned.rotate_left(1);
            let same = &other.by_choice[&Choice(turned)];
            assert_eq!(priced.totals(), same.totals(), "seed {seed}\n{text}");
        }
    }
}
