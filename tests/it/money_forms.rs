//! Smallest charges in money, waste and discounts, held against figures worked out by hand.

use rust_decimal_macros::dec;

use crate::records::firm;
use crate::support::{BOOK as RIVER_BOOK, BUSINESS, desk, with};
use flatwork::inside::costing::{
    BuyingRule, Cause, Estimated, LineItem, PriceSaid, Priced, book_without_trucks, books, effects,
    offer, sensitivity,
};
use flatwork::inside::documents::views::office::{cost_groups, line_told_apart};
use flatwork::inside::input::book::CostGroup;
use flatwork::inside::reading::Problems;
use flatwork::inside::values::{Money, Percent};

const FIRM: &str = include_str!("../golden/common/business.yaml");
const JOB: &str = include_str!("../golden/cost/smallest-charge/input/job.yaml");
const BOOK: &str = include_str!("../golden/cost/smallest-charge/input/book.yaml");

fn least(lines: &[LineItem]) -> Vec<(&Cause, Money)> {
    let lines = lines.iter();
    let least = lines.filter(|line| matches!(line.cause, Cause::LeastCharge(_)));
    least.map(|line| (&line.cause, line.money())).collect()
}

/// 88 ft of board are $66.00 of $100.00; a tenth more of them is $72.60, and the order costs the same.
#[test]
fn a_rise_below_the_smallest_charge_costs_nothing() {
    let here = desk(JOB, FIRM, BOOK);
    let offer = here.offer();
    let asked = Estimated {
        bought: offer.quoted().bought(),
        at: here.pricing(),
        said: PriceSaid::default(),
    };
    let found = sensitivity(asked, &[Percent::new(dec!(10))]);
    let boards = found.iter().find(|one| one.items == ["form board"]);
    assert_eq!(boards.unwrap().rises[0].more, Money::ZERO);
    let concrete = found.iter().find(|one| one.items == ["ready-mix"]);
    // The second order alone is dearer: 3.5 cu yd at $16.00, and overhead of 10%.
    assert_eq!(concrete.unwrap().rises[0].more, Money::cents(6160));
}

#[test]
fn another_smallest_charge_is_a_rule_of_buying_and_another_price_is_a_price() {
    let here = desk(JOB, FIRM, BOOK);
    let told = |changes: &[(&str, &str)]| {
        let there = desk(JOB, FIRM, &with(BOOK, changes));
        let (old, new) = (here.offer(), there.offer());
        let (old, new) = (old.quoted().bought(), new.quoted().bought());
        let why = books(old, new, there.pricing(), PriceSaid::default());
        let by = |changes: &[flatwork::inside::costing::CauseChange]| {
            let of_money = changes.iter().map(|one| (one.title.clone(), one.by()));
            of_money.collect::<Vec<_>>()
        };
        (by(&why.prices), by(&why.rules))
    };
    let charge = "Minimum charge, form board".to_owned();
    let dearer = told(&[("$100.00", "$120.00")]);
    assert_eq!(dearer, (vec![], vec![(charge.clone(), Money::cents(2000))]));
    let board = ("form board".to_owned(), Money::cents(880));
    let up = told(&[("0.75", "0.85")]);
    assert_eq!(up, (vec![board, (charge, Money::cents(-880))], vec![]));
}

#[test]
fn work_that_no_truck_comes_for_has_no_smallest_charge() {
    let here = desk(JOB, FIRM, BOOK);
    let quoted = |priced: &Priced| least(&priced.lines).len();
    assert_eq!(quoted(here.offer().quoted()), 2);
    let book = book_without_trucks(&here.book);
    let mut at = here.pricing();
    at.book = &book;
    let less = offer(&here.takeoff, at, &mut Problems::default()).unwrap();
    assert_eq!(quoted(less.quoted()), 0);
}

/// 36 ft and 12% of them, up to 50 ft at $0.75: 4.32 ft are waste, 9.68 ft are the rounding's.
#[test]
fn waste_is_an_effect_beside_the_rounding_and_never_of_what_is_added_by_hand() {
    let job = include_str!("../golden/cost/waste/input/job.yaml");
    let book = include_str!("../golden/cost/waste/input/book.yaml");
    let offer = desk(job, FIRM, book).offer();
    let found = effects(offer.quoted());
    let found = found.iter().filter(|one| one.title == "form board");
    let told: Vec<_> = found
        .map(|one| (one.rule, one.amount.value, one.cost))
        .collect();
    let waste = (BuyingRule::Waste, dec!(4.32), Money::cents(324));
    let round = (BuyingRule::RoundUp, dec!(9.68), Money::cents(726));
    assert_eq!(told, [waste, round]);
}

/// On record are a discount by percent, one in dollars off a fixed price, and an order below its smallest charge.
#[test]
fn a_record_keeps_what_is_taken_off_and_the_smallest_charge() {
    let firm = firm("money-forms");
    let edit = |name: &str, how: &dyn Fn(String) -> String| {
        let path = firm.path(name);
        std::fs::write(&path, how(std::fs::read_to_string(&path).unwrap())).unwrap();
    };
    edit("book.yaml", &|text| {
        with(
            &text,
            &[(
                "form board: {unit: ft,",
                "form board: {unit: ft, at least: $100.00,",
            )],
        )
    });
    edit("one.yaml", &|text| text + "discounts: [Two at once: 5%]\n");
    edit("three.yaml", &|text| {
        text + "price: 2000.00\ndiscounts: [Two at once: 10%, Your gravel: 150.00]\n"
    });
    for job in ["one", "two", "three"] {
        firm.done(&format!("quote {job}.yaml --issue --on 2026-05-04"));
    }
    let asked = || -> serde_json::Value {
        serde_json::from_str(&firm.done("reprice --on 2026-05-07 --format json")).unwrap()
    };
    let told = |answer: &serde_json::Value, key: &str| {
        let quotes = answer["quotes"].as_array().unwrap().iter();
        let mut told: Vec<_> = quotes
            .map(|one| format!("{} {}", one["number"], one[key]).replace('"', ""))
            .collect();
        told.sort();
        told
    };
    let before = asked();
    assert_eq!(told(&before, "old_total"), told(&before, "new_total"));
    // 2,000.00 less 200.00 and 150.00, and 6% tax.
    assert_eq!(told(&before, "old_total")[2], "2026-0043 1749.00");
    assert!(
        told(&before, "causes")
            .iter()
            .all(|one| one.ends_with("[]"))
    );
    // Boards a third dearer are still below the smallest charge.
    firm.done("book set 'form board' 1.00 --from 2026-05-01 --book book.yaml");
    assert_eq!(told(&asked(), "old_total"), told(&asked(), "new_total"));
    firm.done("book set ready-mix 200 --from 2026-05-01 --book book.yaml");
    let dearer = asked();
    assert_eq!(told(&dearer, "new_total")[2], "2026-0043 1749.00");
    let causes = &told(&dearer, "causes")[0];
    assert!(causes.contains("Taken off: Two at once"), "{causes}");
    firm.done("verify");
    firm.done("accept 2026-0043 --by 'Lee Invented' --on 2026-05-06");
}

#[test]
fn the_customer_reads_what_is_taken_off_and_every_choice_has_it() {
    let patio = include_str!("../../demo-quotes/garden-patio.yaml");
    let off = "discounts:\n  - Two patios at once: 10%\n  - Your own gravel: 150.00\n";
    let view = |job: &str| {
        let here = desk(job, BUSINESS, RIVER_BOOK);
        let offer = here.offer();
        let choices = offer.by_choice.values().map(|one| one.totals().price);
        (choices.collect::<Vec<_>>(), here.view())
    };
    let (plain, _) = view(patio);
    let (less, page) = view(&format!("{patio}\n{off}"));
    for (plain, less) in plain.iter().zip(&less) {
        let cents = plain.as_cents();
        // Prices go up to whole dollars, so a tenth is a whole number of cents.
        assert_eq!(less.as_cents(), cents - cents / 10 - 15_000);
    }
    let told = &page.total.discounts;
    assert!(told.starts_with("Price $"), "{told}");
    assert!(
        told.ends_with(", 10%: Two patios at once; less $150.00: Your own gravel"),
        "{told}"
    );
}

/// Groups stand as the book first has them, whatever their capitals; a class's own word is that class,
/// and a lump may stand with them or after them.
#[test]
fn groups_stand_in_the_order_of_the_book() {
    let book = include_str!("../golden/cost/own-groups/input/book.yaml");
    let book = with(
        book,
        &[
            ("mesh sheet: {", "mesh sheet: {group: MATERIALS, "),
            ("fiber bag: {", "fiber bag: {group: Late, "),
            ("labor: {", "labor: {group: the plant, "),
        ],
    );
    let job = "customer: Ira Sample, Quillhaven\nslabs: {slab: 6 ft x 6 ft}\nextra:\n  \
               - Curb: {cost: 10.00, group: yard}\n  - Gate: {cost: 10.00, group: LATE}\n  \
               - Post: {cost: 10.00, group: Yard, says: none}\n  - Tree: {cost: 10.00}\n  \
               - mesh sheet: 1 sheet\n";
    let here = desk(job, FIRM, &book);
    let offer = here.offer();
    let groups = cost_groups(&offer.quoted().lines);
    let names: Vec<&str> = groups.iter().map(CostGroup::name).collect();
    assert_eq!(
        names,
        [
            "material",
            "subcontract",
            "The plant",
            "Late",
            "Ground work",
            "yard"
        ]
    );
    let said = format!("{:?}", here.view());
    assert!(said.contains("Gate") && !said.contains("none"), "{said}");
}

#[test]
fn what_is_added_by_hand_is_told_apart_from_what_a_rule_buys_of_it() {
    let job = format!(
        "{}\nextra: [curing compound: 1 gal]\n",
        "customer: Ira Sample, Quillhaven\nslabs: {walk: 6 ft x 6 ft}"
    );
    let here = desk(&job, BUSINESS, RIVER_BOOK);
    let offer = here.offer();
    let lines = &offer.quoted().lines;
    let titles = || lines.iter().map(|line| line.title.as_str());
    let told: Vec<_> = lines
        .iter()
        .filter_map(|line| line_told_apart(line, titles()))
        .collect();
    assert_eq!(
        told,
        [
            "Curing compound (curing compound)",
            "Curing compound (as added)"
        ]
    );
}

#[test]
fn the_smallest_charge_may_be_written_in_dollars() {
    for written in ["$60.00", "60 dollars", "60.00 dollars", "60 dollar"] {
        let book = with(BOOK, &[("$100.00", written)]);
        let here = desk(JOB, FIRM, &book);
        let least = here.book.items.get("form board").unwrap().least_charge();
        assert_eq!(least.unwrap().value, Money::cents(6000), "{written}");
    }
}
