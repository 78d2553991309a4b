//! Breaking, sawing, digging, hauling; and the permit.

use flatwork::inside::costing::Offer;
use rust_decimal_macros::dec;

use super::{bought, offer};
use crate::support::{BOOK, BUSINESS, FAR_BANK, Shop, value, with};

fn hours(offer: &Offer, task: &str) -> Option<rust_decimal::Decimal> {
    let tasks = &offer.quoted().needs.crew.tasks;
    let task = tasks.iter().find(|one| one.name == task);
    task.map(|task| task.hours.value())
}

#[test]
fn how_it_is_broken_decides_the_rate() {
    #[track_caller]
    fn case(how: &str, task: &str, expected: rust_decimal::Decimal) {
        let job = format!("remove:\n  - old: {{size: 20 ft x 10 ft x 4 in{how}}}");
        let offer = offer(&job, FAR_BANK);
        assert_eq!(hours(&offer, task), Some(expected), "{how}");
    }
    case("", "break out concrete", dec!(9));
    case(
        ", reinforced: yes",
        "break out reinforced concrete",
        dec!(14),
    );
    case(", break: machine", "break out with machine", dec!(3.6));
    case(
        ", break: machine, reinforced: yes",
        "break out reinforced with machine",
        dec!(5.2),
    );
    case(", of: asphalt", "break out asphalt", dec!(6));
    case(
        ", of: asphalt, break: machine",
        "break out asphalt with machine",
        dec!(2.4),
    );
    case(", of: pavers", "take up pavers", dec!(7));
}

#[test]
fn the_machine_is_there_for_the_hours_of_its_work() {
    let job = "remove:\n  - old: {size: 20 ft x 10 ft x 4 in, break: machine}\n  - soil: {size: 900 sq ft x 12 in, of: soil, break: machine}\n  - small: 3 ft x 3 ft x 4 in";
    let offer = offer(job, FAR_BANK);
    // 3.6 and 33.3333 yards × 0.3: 13.6 person hours, 4.5333 of three people.
    assert_eq!(hours(&offer, "dig with machine"), Some(dec!(10.0)));
    assert_eq!(bought(&offer, "breaking machine"), Some(dec!(1)));
    // Without a machine named, the near book asks for it.
    let refused = Shop::new(BUSINESS, BOOK).tried(&format!(
        "customer: Ira Sample\nslabs: {{patio: 12 ft x 12 ft}}\n{job}"
    ));
    let codes = refused.unwrap_err();
    assert!(codes.contains(&"no-item-for-purpose"), "{codes:?}");
    assert!(codes.contains(&"no-rate"), "{codes:?}");
}

#[test]
fn a_saw_cut_is_paid_or_worked() {
    let job = "remove:\n  - old: {size: 20 ft x 10 ft x 6 in, saw cut: 50 ft}";
    let paid = offer(job, FAR_BANK);
    assert_eq!(bought(&paid, "saw cutting"), Some(dec!(50)));
    assert_eq!(hours(&paid, "saw cut"), None);
    // The saw's least is 40 ft.
    let short = offer(&job.replace("50 ft", "24 ft"), FAR_BANK);
    assert_eq!(bought(&short, "saw cutting"), Some(dec!(40)));
    // Our own saw goes by its face: 50 ft × 6 in are 25 sq ft.
    let own = with(
        BOOK,
        &[(
            "  dig: 1 hour",
            "  saw cut: 0.2 hours per sq ft\n  dig: 1 hour",
        )],
    );
    let worked = offer(job, &own);
    assert_eq!(value(&worked, "old sawn face"), dec!(25));
    assert_eq!(hours(&worked, "saw cut"), Some(dec!(5)));
    assert_eq!(bought(&worked, "saw cutting"), None);
    let neither = Shop::new(BUSINESS, BOOK).tried(&format!(
        "customer: Ira Sample\nslabs: {{patio: 12 ft x 12 ft}}\n{job}"
    ));
    assert_eq!(neither.unwrap_err(), ["no-rate"]);
}

#[test]
fn what_stays_is_dug_and_not_hauled() {
    let job =
        |stays: &str| format!("remove:\n  - soil: {{size: 810 sq ft x 4 in, of: soil{stays}}}");
    let goes = offer(&job(""), FAR_BANK);
    assert_eq!(bought(&goes, "soil hauled"), Some(dec!(12.5)));
    let stays = offer(&job(", stays: yes"), FAR_BANK);
    assert_eq!(bought(&stays, "soil hauled"), None);
    assert_eq!(hours(&stays, "dig"), hours(&goes, "dig"));
    // The dump's least is 4 cu yd.
    let little = offer(
        "remove:\n  - soil: {size: 81 sq ft x 4 in, of: soil}",
        FAR_BANK,
    );
    assert_eq!(bought(&little, "soil hauled"), Some(dec!(4)));
}

#[test]
fn a_round_pad_has_its_depth_beside_it() {
    let offer = offer(
        "remove:\n  - pad: {size: circle 18 ft, depth: 12 in}",
        FAR_BANK,
    );
    // 9 ft × 9 ft × pi, a foot deep (ehow.co.uk, a secondary page: 9.4 cu yd).
    let solid = value(&offer, "pad in place");
    assert_eq!(
        flatwork::inside::values::rounding::to_places(solid, 4),
        dec!(9.4248)
    );
}

#[test]
fn the_permit_is_bought_once() {
    let ours = offer("permit: town permit", FAR_BANK);
    assert_eq!(bought(&ours, "permit"), Some(dec!(1)));
    assert_eq!(bought(&offer("permit: customer", FAR_BANK), "permit"), None);
}
