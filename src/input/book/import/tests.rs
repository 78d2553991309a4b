//! Lists taken into a small book: what comes of them, and what is told of those that cannot be read.

use super::*;
use crate::input::book;
use crate::reading::{Sources, yaml};

const BOOK: &str = "format: 1
book: Small
supply: {}
use: {}
rates: {}
items:
  stone: {unit: ton, class: material, prices: {2026-03-01: 34.50, 2026-09-01: 36.00}}
  bar: {unit: piece, class: material, prices: {2026-03-01: 14.60}}
  mix: {unit: cu yd, class: material, prices: {2024-03-01: 178.00}}
  labor: {unit: hour, class: labor, prices: {2026-03-01: {wage: 30.00, burden: 20%}}}
  later: {unit: bag, class: material, prices: {2026-09-01: 12.00}}
";

const MAP: &str = "columns: {article: No., price: Net, unit: UOM}
units: {C: 100 pieces, TN: ton, CY: cu yd}
items: {S: stone, B: bar}
";

const LIST: &str = "No.,Net,UOM\nS,\"$1,035.25\",TN\nB,\"1,490.00\",C\n";

/// What a list brings, or the code of each problem and the text it points at.
fn take(map: &str, list: &str, from: &str) -> Result<Taken, Vec<(&'static str, String)>> {
    let (mut sources, mut problems) = (Sources::default(), Problems::default());
    let taken = all(BOOK, map, list, from, &mut sources, &mut problems);
    match taken {
        Ok(taken) if problems.is_empty() => Ok(taken),
        _ => {
            let told = problems.sorted().into_iter().map(|problem| {
                let place = problem.place.expect("every problem has its place");
                assert!(problem.help.is_some(), "{problem:?}");
                (problem.code, sources.slice(place).to_owned())
            });
            Err(told.collect())
        }
    }
}

fn all(
    book: &str,
    map: &str,
    rows: &str,
    from: &str,
    sources: &mut Sources,
    problems: &mut Problems,
) -> Read<Taken> {
    let id = sources.add("book.yaml", book.to_owned());
    let node = yaml::read(id, sources, problems)?;
    let book = book::read(&node, problems)?;
    let id = sources.add("map.yaml", map.to_owned());
    let node = yaml::read(id, sources, problems)?;
    let mapping = mapping(&node, problems);
    let file = sources.add("list.csv", rows.to_owned());
    let mapping = mapping?;
    let rows = list(file, sources.text(file), &mapping, problems)?;
    taken(&mapping, &rows, &book, from.parse().ok(), problems)
}

#[track_caller]
fn prices(map: &str, list: &str, from: &str) -> Vec<String> {
    let taken = take(map, list, from).unwrap_or_else(|told| panic!("{told:?}\n{list}"));
    let written = |change: &PriceChange| {
        let Wanted { item, day, price } = &change.wanted;
        format!("{item} {day} {price}")
    };
    taken.changes.iter().map(written).collect()
}

#[track_caller]
fn refused(map: &str, list: &str, told: &[(&'static str, &str)]) {
    let found = take(map, list, "2026-05-15").expect_err("it is refused");
    let found: Vec<(&str, &str)> = found
        .iter()
        .map(|(code, at)| (*code, at.as_str()))
        .collect();
    assert_eq!(found, told, "{map}\n{list}");
}

#[test]
fn prices_are_taken_by_the_units_of_the_book() {
    let both = ["bar 2026-05-15 14.90", "stone 2026-05-15 1035.25"];
    assert_eq!(prices(MAP, LIST, "2026-05-15"), both);
    // The same list as other programs write it.
    let titled = format!("\"Our, list\",,\n\n,,\n{LIST}");
    assert_eq!(prices(MAP, &titled, "2026-05-15"), both);
    assert_eq!(prices(MAP, &LIST.replace('\n', "\r\n"), "2026-05-15"), both);
    assert_eq!(prices(MAP, &format!("\u{feff}{LIST}"), "2026-05-15"), both);
    assert_eq!(prices(MAP, LIST.trim_end(), "2026-05-15"), both);
    let semicolon = "separator: semicolon\n".to_owned() + MAP;
    let list = "UOM; Net ;What;No.\nTN;1,035.25;Stone, 3/4;S\nC; 1490 ;\"Bar; long\";B;;\n";
    assert_eq!(prices(&semicolon, list, "2026-05-15"), both);
}

#[test]
fn an_item_that_could_not_be_read_is_told_once() {
    let (mut sources, mut problems) = (Sources::default(), Problems::default());
    let book = BOOK.replace("unit: ton", "unit: heap");
    let taken = all(&book, MAP, LIST, "2026-05-15", &mut sources, &mut problems);
    assert!(taken.is_err());
    let codes: Vec<&str> = problems.iter().map(|problem| problem.code).collect();
    assert_eq!(codes, ["unknown-unit"]);
}

#[test]
fn packs_are_counted_exactly() {
    #[track_caller]
    fn case(map: &str, list: &str, price: &str) {
        assert_eq!(
            prices(map, list, "2026-05-15"),
            [format!("bar 2026-05-15 {price}")]
        );
    }
    let map = |item: &str| {
        format!("columns: {{article: No., price: Net, unit: UOM}}\nitems: {{B: {item}}}\n")
    };
    let each = "No.,Net,UOM\nB,1490,ea\n";
    case(&map("{item: bar, per: 100}"), each, "14.90");
    case(&map("{item: bar, per: 1/2}"), each, "2980.00");
    case(&map("{item: bar, per: 1/3}"), each, "4470.00");
    case(&map("{item: bar, per: 149.5}"), each, "9.966555");
    let pack = "No.,Net,UOM\nB,29.80,PK\n";
    case(&map("{item: bar, units: {PK: 2 pieces}}"), pack, "14.90");
    case(
        &map("{item: bar, units: {PK: 2 pieces}, per: 10}"),
        pack,
        "1.49",
    );
}

#[test]
fn days_come_from_the_list_or_the_command() {
    let map = MAP.replace("unit: UOM", "unit: UOM, from: Since");
    let list = "No.,Net,UOM,Since\nS,40,TN,2026-05-20\nS,41,TN,6/1/2026\nB,1490,C,\n";
    assert_eq!(
        prices(&map, list, "2026-05-15"),
        [
            "bar 2026-05-15 14.90",
            "stone 2026-05-20 40.00",
            "stone 2026-06-01 41.00"
        ]
    );
    assert_eq!(
        take(&map, list, ""),
        Err(vec![("bad-list-date", String::new())])
    );
    let wrong = list.replace("6/1/2026", "June");
    refused(&map, &wrong, &[("bad-list-date", "June")]);
    let told = take(MAP, LIST, "").expect_err("no day");
    assert_eq!(told, [("no-list-date", "columns".to_owned())]);
}

#[test]
fn a_price_that_holds_already_is_counted() {
    let list = "No.,Net,UOM\nS,34.50,TN\nB,1460,C\n";
    let taken = take(MAP, list, "2026-05-15").unwrap();
    assert_eq!((taken.changes.len(), taken.already), (0, 2));
    // In autumn the stone costs more by the book, so the old price is news again.
    assert_eq!(prices(MAP, list, "2026-09-15"), ["stone 2026-09-15 34.50"]);
    // A price of two years ago is confirmed with its new day.
    let map = MAP.replace("S: stone", "M: mix");
    let list = "No.,Net,UOM\nM,178,CY\nB,1460,C\n";
    assert_eq!(prices(&map, list, "2026-05-15"), ["mix 2026-05-15 178.00"]);
    // What goes up and comes back is two changes.
    let map = MAP.replace("unit: UOM", "unit: UOM, from: Since");
    let list = "No.,Net,UOM,Since\nS,40,TN,5/1/2026\nS,34.50,TN,6/1/2026\nB,1460,C,5/1/2026\n";
    assert_eq!(
        prices(&map, list, ""),
        ["stone 2026-05-01 40.00", "stone 2026-06-01 34.50"]
    );
}

#[test]
fn a_jump_is_one_by_the_rule_of_the_books() {
    let jumps = |price: &str| {
        let list = format!("No.,Net,UOM\nS,{price},TN\nB,1460,C\n");
        let taken = take(MAP, &list, "2026-05-15").unwrap();
        taken.changes[0].what.is_jump()
    };
    assert!(!jumps("51.75") && jumps("51.76") && jumps("17.24") && !jumps("17.25"));
    // An item without a price by that day has none to jump from.
    let map = MAP.replace("S: stone", "L: later");
    let list = "No.,Net,UOM\nL,5,bag\nB,1460,C\n";
    let taken = take(&map, list, "2026-05-15").unwrap();
    assert!(matches!(taken.changes[0].what, Difference::Added(..)));
}

#[test]
fn what_is_not_mapped_is_named_once() {
    let list = format!("{LIST}X,1,TN\nY,call,??\nX,2,TN\n,,\n,subtotal,\n");
    assert_eq!(take(MAP, &list, "2026-05-15").unwrap().unmapped, ["X", "Y"]);
}

#[test]
fn every_problem_of_every_row_is_told_at_once() {
    let map = MAP.replace(
        "{S: stone, B: bar}",
        "{S: stone, B: bar, Q: quarry, L: labor, N: mix, X: later}",
    );
    let list = "No.,Net,UOM\nS,-34,LB\nB,call,C\nQ,1,TN\nL,40,hour\nX,12.00,BG\nS,,TN\nS,30,TN\nS,31,TN\nM,5,CY\n";
    refused(
        &map,
        list,
        &[
            ("unknown-price-item", "quarry"),
            ("wage-not-price", "labor"),
            ("not-listed", "N"),
            ("bad-list-price", "-34"),
            ("list-unit-differs", "LB"),
            ("bad-list-price", "call"),
            ("unknown-list-unit", "BG"),
            ("bad-list-price", ""),
            ("listed-twice", "31"),
        ],
    );
}

#[test]
fn a_unit_is_never_taken_for_another() {
    let list = |unit: &str| format!("No.,Net,UOM\nS,34,{unit}\nB,1490,C\n");
    refused(MAP, &list("CY"), &[("list-unit-differs", "CY")]);
    refused(MAP, &list("lb"), &[("list-unit-differs", "lb")]);
    refused(MAP, &list("tn"), &[("unknown-list-unit", "tn")]);
    refused(MAP, &list(""), &[("unknown-list-unit", "")]);
    // The word of one article serves no other.
    let own = MAP.replace("S: stone", "S: {item: stone, units: {C: 2 ton}}");
    assert_eq!(
        prices(&own, &list("C"), "2026-05-15"),
        ["bar 2026-05-15 14.90", "stone 2026-05-15 17.00"]
    );
}

#[test]
fn columns_are_found_by_their_names_alone() {
    refused(MAP, "No.,Nett,UOM\nS,1,TN\n", &[("missing-column", "Net")]);
    refused(
        MAP,
        "No.,Net,UOM,Net\nS,1,TN,1\n",
        &[("column-twice", "Net")],
    );
    refused(MAP, "", &[("empty-list", "")]);
    refused(MAP, "\n,,\n", &[("empty-list", "")]);
    let three = [
        ("missing-column", "No."),
        ("missing-column", "Net"),
        ("missing-column", "UOM"),
    ];
    refused(MAP, "No.;Net;UOM\nS;1;TN\n", &three);
}

#[test]
fn a_comma_or_a_quote_too_many_moves_no_price() {
    let bare = "No.,Net,UOM\nS,1,035.25,TN\nB,1490,C\n";
    refused(MAP, bare, &[("too-many-cells", "S,1,035.25,TN")]);
    // In a line that is nobody's of ours it does no harm.
    let other = format!("{LIST}X,1,035.25,TN\n");
    assert_eq!(prices(MAP, &other, "2026-05-15").len(), 2);
    let open = "No.,Net,UOM\nS,34,TN\nX,1,\"4 in\nB,1490,C\n";
    refused(MAP, open, &[("open-quote", "\"")]);
    // What it took in is not told as missing. The next quote closes it, lines below.
    let next = "No.,Net,UOM\nX,1,\"4 in\nB,1490,C\n\"Y, or Z\",1,C\nS,34,TN\n";
    refused(MAP, next, &[("open-quote", "\"")]);
    let whole = format!("{LIST}\"X\nin two lines\",1,\"TN\" \n\"4\" pipe\",1,TN\n");
    assert_eq!(prices(MAP, &whole, "2026-05-15").len(), 2);
}

#[test]
fn a_mapping_is_read_with_all_its_slips() {
    refused(
        "colums: {article: No., price: Net, unit: UOM}\nseparator: dot\nunits: {C: 100, TN: barrel}\nitems: {S: stone, S2: stone, B: {item: bar, per: 0}, D: {item: bar, per: 2 ft, unit: x}}\n",
        LIST,
        &[
            ("unknown-key", "colums"),
            ("unknown-word", "dot"),
            ("bad-quantity", "100"),
            ("unknown-unit", "barrel"),
            ("item-mapped-twice", "stone"),
            ("not-above-zero", "0"),
            ("wrong-unit", "2 ft"),
            ("unknown-key", "unit"),
        ],
    );
}

#[test]
fn new_days_at_one_spot_stay_in_order() {
    let (mut sources, mut problems) = (Sources::default(), Problems::default());
    let id = sources.add("book.yaml", BOOK.to_owned());
    let node = yaml::read(id, &sources, &mut problems).unwrap();
    let book = book::read(&node, &mut problems).unwrap();
    let map = MAP.replace("unit: UOM", "unit: UOM, from: Since");
    let list = "No.,Net,UOM,Since\nS,42,TN,7/1/2026\nS,41,TN,6/1/2026\nS,40,TN,5/1/2026\nB,1460,C,5/1/2026\n";
    let taken = take(&map, list, "").unwrap();
    let edits = edits(BOOK, &node, &book, &taken.changes, &mut problems).unwrap();
    let due = "{2026-03-01: 34.50, 2026-05-01: 40.00, 2026-06-01: 41.00, 2026-07-01: 42.00, 2026-09-01: 36.00}";
    assert!(edit::made(BOOK, &edits).contains(due));
}

#[test]
fn an_anchor_that_serves_two_items_is_not_edited() {
    let text = "book: Small\nsupply: {}\nuse: {}\nrates: {}\nitems:\n  stone: {unit: ton, class: material, prices: &same {2026-03-01: 34.50}}\n  sand: {unit: ton, class: material, prices: *same}\n  salt: {unit: ton, class: material, prices: {2026-03-01: 5.00}}\n";
    let (mut sources, mut problems) = (Sources::default(), Problems::default());
    let id = sources.add("book.yaml", text.to_owned());
    let node = yaml::read(id, &sources, &mut problems).unwrap();
    let book = book::read(&node, &mut problems).unwrap();
    let change = |item: &str| PriceChange {
        wanted: Wanted {
            item: item.to_owned(),
            day: "2026-05-15".parse().unwrap(),
            price: "40".parse().unwrap(),
        },
        what: Difference::NoPrice { in_new: false },
    };
    for (items, told) in [
        (vec!["salt", "sand"], 1),
        (vec!["salt", "sand", "stone"], 2),
    ] {
        let changes: Vec<PriceChange> = items.into_iter().map(change).collect();
        let mut problems = Problems::default();
        assert!(edits(text, &node, &book, &changes, &mut problems).is_err());
        let codes: Vec<&str> = problems.iter().map(|problem| problem.code).collect();
        assert_eq!(codes, vec!["cannot-edit-price"; told]);
    }
    assert!(edits(text, &node, &book, &[change("salt")], &mut problems).is_ok());
}
