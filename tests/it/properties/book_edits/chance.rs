//! Books written by chance, in every way that a book may be written.

use std::fmt::Write as _;

use crate::properties::jobs::Dice;

/// A book with up to six items, each written in another way.
pub(super) fn by_chance(dice: &mut Dice) -> String {
    let mut text = String::new();
    text.push_str(dice.pick(&["", "# a book\n", "---\n", "# tab\there\n\n"]));
    text.push_str("format: 1\nbook: 'By chance'   # é\nsupply: {}\nuse: {}\nrates: {}\n");
    let holds = dice.one_in(3);
    let before = holds && dice.one_in(2);
    if before {
        text.push_str("holds: [{item: no. 0, price: 30.00, until: 2026-06-30}]   # till June\n");
    }
    let items = dice.pick(&[
        "items:\n",
        "items:   # what is sold: {all}\n",
        "\"items\":\n",
        "items: # \t tab\n\n",
    ]);
    text.push_str(items);
    let deep = dice.pick(&["  ", "    ", " "]);
    for i in 0..=dice.between(0, 5) {
        item(dice, &mut text, i, deep);
    }
    if holds && !before {
        text.push_str(
            "holds:\n  - item: no. 0\n    # promised\n    price: 30.00\n    until: 2026-06-30\n",
        );
    }
    text.push_str(dice.pick(&["", "# the end\n", "\n\n", "...\n"]));
    if dice.one_in(2) {
        text.truncate(text.trim_end().len());
    }
    let text = text.replace('\n', dice.pick(&["\n", "\r\n"]));
    if dice.one_in(4) {
        format!("\u{feff}{text}")
    } else {
        text
    }
}

/// An item; the later ones may take their price, or all of their prices, from the first.
fn item(dice: &mut Dice, text: &mut String, i: u64, deep: &str) {
    text.push_str(dice.pick(&[
        "",
        "",
        "\n",
        "  # between: {x}\n",
        "\n\n# at the left\n",
        "\t\n",
    ]));
    let key = dice
        .pick(&["no. N", "'no. N'", "\"no. N\""])
        .replace('N', &i.to_string());
    let comment = dice.pick(&[
        "",
        "  # é, said the yard",
        " # a: {b}, \"c\"",
        "   ",
        "\t# tab",
        " #",
    ]);
    // No anchor is known before it is written, and only some books have one.
    let shared = i != 0 && text.contains("&all ") && dice.one_in(3);
    if shared {
        let _ = writeln!(
            text,
            "{deep}{key}: {{unit: ton, class: material, prices: *all}}{comment}"
        );
        return;
    }
    if dice.one_in(8) {
        let _ = writeln!(
            text,
            "{deep}{key}: {{unit: hour, class: labor, prices: {{2026-03-01: {{wage: 30.00, burden: 20%}}}}}}{comment}"
        );
        return;
    }
    let anchor = if i == 0 && dice.one_in(4) {
        "&all "
    } else {
        ""
    };
    let dated = dated(dice, text, i);
    let flow = format!(
        "{anchor}{{{}{}}}",
        dated.join(dice.pick(&[", ", ",", " , "])),
        dice.pick(&["", "", " ", ", "])
    );
    match dice.between(0, 4) {
        0 => {
            let _ = writeln!(
                text,
                "{deep}{key}: {{unit: ton, class: material, prices: {flow}}}{comment}"
            );
        }
        1 => {
            let _ = writeln!(
                text,
                "{deep}{key}: {{prices: {flow}, unit: ton, 'class': material}}{comment}"
            );
        }
        2 => {
            let _ = writeln!(
                text,
                "{deep}{key}:{comment}\n{deep}  prices: {flow}{comment}\n{deep}  unit: ton\n{deep}  class: \"material\"{comment}"
            );
        }
        3 => {
            let inner = dated.join(&format!(",{comment}\n{deep}      "));
            let _ = writeln!(
                text,
                "{deep}{key}:\n{deep}  unit: ton{comment}\n{deep}  class: material\n{deep}  prices: {anchor}{{\n{deep}      {inner}{comment}\n{deep}    }}{comment}"
            );
        }
        _ => {
            let between = dice.pick(&["", "", "\n", "        # and then\n", "# left\n"]);
            let _ = writeln!(
                text,
                "{deep}{key}:\n{deep}  unit: ton\n{deep}  'prices': {anchor}{comment}"
            );
            for one in dated {
                let _ = writeln!(text, "{deep}      {one}{comment}");
                text.push_str(between);
            }
            let _ = writeln!(text, "{deep}  class: material");
        }
    }
}

/// Days and prices, in or out of order, some in quotes, some by an anchor of their own.
fn dated(dice: &mut Dice, text: &str, i: u64) -> Vec<String> {
    let mut months: Vec<u64> = (1..=12).filter(|_| dice.one_in(4)).collect();
    if months.is_empty() {
        months.push(3);
    }
    if dice.one_in(4) {
        dice.shuffle(&mut months);
    }
    let named = i == 0 && dice.one_in(4);
    let anchored = text.contains("&one ");
    months
        .iter()
        .enumerate()
        .map(|(n, month)| {
            let day = dice.pick(&["D", "D", "'D'", "\"D\""]);
            let day = day.replace('D', &format!("2026-{month:02}-01"));
            let price = dice.pick(&["34.50", "'7'", "0.72", "\"12.00\"", "1234.565", "8"]);
            match (named && n == 0, anchored && dice.one_in(3)) {
                (true, _) => format!("{day}: &one {price}"),
                (_, true) => format!("{day}: *one"),
                _ => format!("{day}: {price}"),
            }
        })
        .collect()
}
