//! What if prices rise, or another supplier is asked: held against a job priced again from changed files.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use crate::support::{BOOK, BUSINESS, Desk, FAR_BANK, desk, with};
use flatwork::inside::costing::{
    BuyingRule, CauseChange, Estimated, Offer, PriceSaid, Priced, Room, Tier, Totals, books,
    effects, sensitivity,
};
use flatwork::inside::values::{Money, Percent, UnitPrice};

const JOB: &str = include_str!("../../demo-quotes/garden-patio.yaml");
const HOLD: &str = "price: 174.00";

fn asked<'a>(desk: &'a Desk, priced: &'a Priced) -> Estimated<'a> {
    Estimated {
        bought: priced.bought(),
        at: desk.pricing(),
        said: PriceSaid::of(&desk.takeoff),
    }
}

fn totals(job: &str, book: &str) -> Totals {
    desk(job, BUSINESS, book).offer().quoted().totals()
}

/// The book is written anew with the price 10 % higher; 174.00 becomes 191.40.
#[test]
fn a_rise_is_what_the_job_costs_by_a_book_with_that_price() {
    let here = desk(JOB, BUSINESS, BOOK);
    let offer = here.offer();
    let found = sensitivity(
        asked(&here, offer.quoted()),
        &[dec!(1), dec!(10)].map(Percent::new),
    );
    let of = |item: &str| found.iter().find(|one| one.items == [item]).unwrap();
    let mix = of("ready-mix 4000 air").rises[1];
    let dearer = with(BOOK, &[(HOLD, "price: 191.40")]);
    assert_eq!(mix.repriced, totals(JOB, &dearer));
    let old = offer.quoted().totals();
    let held = totals(&format!("{JOB}\nprice: {}\n", old.price.dollars()), &dearer);
    assert_eq!(mix.held, held);
    assert_eq!((held.price, mix.more), (old.price, held.cost - old.cost));
    let one = with(BOOK, &[(HOLD, "price: 175.74")]);
    assert_eq!(
        of("ready-mix 4000 air").rises[0].repriced,
        totals(JOB, &one)
    );
    let costs: Vec<Money> = found.iter().map(|one| one.rises[1].more).collect();
    assert!(costs.is_sorted_by(|dear, cheap| cheap <= dear), "{costs:?}");
}

/// At the last price the job stands at its floor or above, and one cent more brings it below.
#[test]
fn room_ends_one_step_before_the_floor() {
    let here = desk(JOB, BUSINESS, BOOK);
    let offer = here.offer();
    let found = sensitivity(asked(&here, offer.quoted()), &[Percent::new(dec!(10))]);
    let mix = found
        .iter()
        .find(|one| one.items == ["ready-mix 4000 air"])
        .unwrap();
    let Some(Room::UpTo { price, .. }) = mix.room else {
        panic!("{:?}", mix.room);
    };
    let job = format!(
        "{JOB}\nprice: {}\n",
        offer.quoted().totals().price.dollars()
    );
    let margin = |price: Decimal| {
        let book = with(BOOK, &[(HOLD, &format!("price: {price}"))]);
        totals(&job, &book).margin().unwrap()
    };
    assert!(dec!(15) <= margin(price.dollars()));
    assert!(margin(price.dollars() + dec!(0.01)) < dec!(15));
    assert!(UnitPrice::new(dec!(174)) < price);
}

#[track_caller]
fn sum(changes: &[CauseChange]) -> Money {
    changes.iter().map(CauseChange::by).sum()
}

fn direct(offer: &Offer) -> Money {
    offer.quoted().totals().direct
}

#[test]
fn the_causes_between_two_books_add_up_to_the_difference() {
    #[track_caller]
    fn case(changes: &[(&str, &str)], prices: bool, rules: bool) {
        for job in [JOB.to_owned(), format!("{JOB}\nprice: 11000.00\n")] {
            let first = desk(&job, BUSINESS, BOOK);
            let other = desk(&job, BUSINESS, &with(BOOK, changes));
            let (old, new) = (first.offer(), other.offer());
            let found = books(
                old.quoted().bought(),
                new.quoted().bought(),
                other.pricing(),
                PriceSaid::of(&other.takeoff),
            );
            let of_direct = sum(&found.prices) + sum(&found.rules);
            assert_eq!(of_direct, direct(&new) - direct(&old));
            let total = |offer: &Offer| offer.quoted().totals().total;
            assert_eq!(of_direct + sum(&found.added), total(&new) - total(&old));
            assert_eq!(
                (!found.prices.is_empty(), !found.rules.is_empty()),
                (prices, rules)
            );
            assert!(found.added.iter().all(|change| change.side != Tier::Direct));
        }
    }
    case(&[(HOLD, "price: 180.00")], true, false);
    case(&[("truck: 9 cu yd", "truck: 3 cu yd")], false, true);
    case(
        &[(HOLD, "price: 168.25"), ("sold in: 1/4", "sold in: 1")],
        true,
        true,
    );
    // The same thing under another name, and a purpose that is not charged.
    case(
        &[
            ("  ready-mix 4000 air:", "  other mix:"),
            (
                "item: ready-mix 4000 air, strength",
                "item: other mix, strength",
            ),
            ("item: ready-mix 4000 air,", "item: other mix,"),
            (HOLD, "price: 181.00"),
            ("delivery: delivery", "delivery: none"),
        ],
        true,
        true,
    );
}

/// From the near book to the far one, which sells nearly everything in another way.
#[test]
fn the_far_book_is_explained_to_the_cent() {
    let (first, other) = (desk(JOB, BUSINESS, BOOK), desk(JOB, BUSINESS, FAR_BANK));
    let (old, new) = (first.offer(), other.offer());
    for (choice, old) in &old.by_choice {
        let new = &new.by_choice[choice];
        let found = books(
            old.bought(),
            new.bought(),
            other.pricing(),
            PriceSaid::default(),
        );
        let all: Money = found.all().map(CauseChange::by).sum();
        assert_eq!(all, new.totals().total - old.totals().total, "{choice:?}");
        assert!(5 < found.prices.len() && 5 < found.rules.len());
        // Crushed stone goes by the yard there and by the ton here: no second price, all of it rules.
        let stone =
            |changes: &[CauseChange]| changes.iter().any(|one| one.title.starts_with("Crushed"));
        assert_eq!((stone(&found.prices), stone(&found.rules)), (false, true));
    }
}

/// 7.5 cu yd of 1,305.00: net 6.77, and all parts of the line make the line.
#[test]
fn the_effects_of_buying_are_parts_of_their_lines() {
    let here = desk(JOB, BUSINESS, BOOK);
    let offer = here.offer();
    let order = &offer.quoted().needs.orders[0];
    let found = effects(offer.quoted());
    let of = |rule: BuyingRule, title: &str| {
        let mut hits = found
            .iter()
            .filter(|one| one.rule == rule && one.title.starts_with(title));
        let hit = hits
            .next()
            .unwrap_or_else(|| panic!("{rule:?} {title}: {found:#?}"));
        (hit.amount.value, hit.cost)
    };
    let (allowance, for_allowance) = of(BuyingRule::Allowance, "Ready-mix");
    let (rest, for_rest) = of(BuyingRule::RoundUp, "Ready-mix");
    assert_eq!(order.net.value() + allowance + rest, dec!(7.5));
    let exact = (allowance + rest) * dec!(174);
    let told = for_allowance.dollars() + for_rest.dollars();
    assert!((exact - told).abs() <= dec!(0.01), "{exact} {told}");
    assert_eq!(
        of(BuyingRule::Standing, "Truck"),
        // 1.3 hours over 85 ft by four people are 20.865 minutes a yard, 10 of them free: 44 minutes
        // of the truck with 4 yd and 39 of that with 3.5.
        (dec!(83), Money::cents(20_750))
    );
    let hours = &offer.quoted().needs.crew;
    let (more, cost) = of(BuyingRule::CrewDays, "Labor");
    assert_eq!(more, hours.charged.value() - hours.hours.value());
    assert!((more * dec!(47.50) - cost.dollars()).abs() <= dec!(0.01));
}

/// 174.00 + 1.2 × 47.50 = 231.00; 14 % and 3 % of it make 270.27, and 25 % of that 337.84: no
/// minimum, not rounded up. A dearer mix moves it.
#[test]
fn a_unit_price_made_of_items_follows_their_prices() {
    let price = |mix: &str| {
        let business = with(
            BUSINESS,
            &[(
                "Concrete, placed: 320.00 per cu yd",
                "Concrete, placed: {per: cu yd, of: {ready-mix 4000 air: 1 cu yd, labor: 1.2 hours}}",
            )],
        );
        let offer = desk(JOB, &business, &with(BOOK, &[(HOLD, mix)])).offer();
        let prices: Vec<Money> = offer.unit_prices.iter().map(|one| one.price).collect();
        (prices[0], prices[2])
    };
    let soil = Money::cents(15_000);
    assert_eq!(price(HOLD), (soil, Money::cents(33_784)));
    assert_eq!(price("price: 184.00"), (soil, Money::cents(35_246)));
}

/// 1.35 cu yd of topsoil, and nobody brings less than 4: 2.65 are the rule's.
#[test]
fn the_smallest_sale_is_an_effect_too() {
    let topsoil = "    sold in: 1/2\n    work: 1 hour per cu yd";
    let book = with(
        BOOK,
        &[(topsoil, &format!("    at least: 4 cu yd\n{topsoil}"))],
    );
    let offer = desk(JOB, BUSINESS, &book).offer();
    let found = effects(offer.quoted());
    let soil = found
        .iter()
        .find(|one| one.title.starts_with("Topsoil"))
        .unwrap();
    assert_eq!(soil.rule, BuyingRule::RoundUp);
    assert_eq!(soil.amount.value, dec!(2.65));
    assert_eq!(soil.cost, Money::cents(11_130));
}
