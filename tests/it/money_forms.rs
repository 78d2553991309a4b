//! Smallest charges in money and waste, held against figures worked out by hand.

use rust_decimal_macros::dec;

use crate::support::{desk, with};
use flatwork::inside::costing::{
    BuyingRule, Cause, Estimated, LineItem, Priced, book_without_trucks, books, effects, offer,
    sensitivity,
};
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
        fixed: None,
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
        let why = books(old, new, there.pricing(), None);
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
