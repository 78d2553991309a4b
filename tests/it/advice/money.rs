//! Questions about prices, dates and money.

use super::steel::pinned;
use super::{EXPOSURE, Files, SIZE};

#[test]
fn a_set_changes_something() {
    let set = Files::new().job(
        EXPOSURE,
        "exposure: frost\nset:\n  patio area: {to: 384, because: measured}",
    );
    assert_eq!(set.says("idle-set", "`patio area`", "take it out"), "384");
    set.job("384", "385").silent("idle-set");
}

#[test]
fn prices_grow_old() {
    // The sixtieth day is still fresh.
    Files::new()
        .job("2026-04-01", "2026-04-30")
        .silent("stale-price");
    let old = Files::new().job("2026-04-01", "2026-05-01");
    old.says("stale-price", "`61 days` old", "call the supplier");
    // A held price is no list price, and labor is the owner's own figure.
    let all = old.all();
    let stale = all
        .iter()
        .find(|(one, _)| one.code == "stale-price")
        .unwrap();
    assert!(!stale.0.message.contains("Labor"), "{}", stale.0.message);
}

#[test]
fn prices_are_promised_to_a_day() {
    let late = Files::new().job("2026-05-01", "2027-01-01");
    assert_eq!(
        late.says("past-promised-prices", "`2026-12-31`", "last price known"),
        "2027-01-01"
    );
    late.job("2027-01-01", "2026-12-31")
        .silent("past-promised-prices");
}

#[test]
fn a_hold_ends_before_the_pour() {
    let held = Files::new().job("customer", "job: Garden patio\ncustomer");
    held.silent("hold-ends-early");
    let late = held.job("pour: 2026-05-01", "pour: 2026-07-01");
    late.says("hold-ends-early", "`2026-06-30`", "longer hold");
    late.clone()
        .job("2026-07-01", "2026-06-30")
        .silent("hold-ends-early");
    late.job("Garden patio", "Another")
        .silent("hold-ends-early");
}

#[test]
fn a_hold_may_be_dearer_than_the_list() {
    let held = Files::new().job("customer", "job: Garden patio\ncustomer");
    held.silent("dear-hold");
    held.clone().book("price: 174.00", "price: 178.01").says(
        "dear-hold",
        "178.01",
        "take the hold out",
    );
    held.book("price: 174.00", "price: 178.00")
        .silent("dear-hold");
}

/// 272 sq ft of 4 in: 3.36 cu yd and the smallest allowance make 3.75; below 4 is short.
fn a_quarter_short() -> Files {
    Files::new().job(SIZE, "size: 17 ft x 16 ft")
}

fn flat(files: Files) -> Files {
    files
        .book("charge: each yard", "charge: flat")
        .book("each yard missing\n    unit: cu yd", "flat\n    unit: load")
        .book("2026-03-01: 60.00", "2026-03-01: 120.00")
        .book("2026-03-01: 178.00", "2026-03-01: 171.52")
}

#[test]
fn a_short_load_that_costs_more_than_the_yards_is_told() {
    // $120.00 less a quarter yard at $171.52.
    flat(a_quarter_short()).says(
        "cheaper-order",
        "costs $77.12 less with 0.25 cu yd more than is needed",
        "4 cu yd in place of 3.75 cu yd; 0.25 cu yd will be left over",
    );
    // A quarter yard missing costs $15.00, and to fill it $44.50.
    a_quarter_short().silent("cheaper-order");
    Files::new().silent("cheaper-order");
}

#[test]
fn what_is_left_over_may_come_back_at_a_price() {
    let back = "    charge: flat}\n  returned: {item: returned concrete, over: 1/4 cu yd}";
    let item =
        "items:\n  returned concrete: {unit: cu yd, class: fee, prices: {2026-03-01: 400.00}}";
    let files = flat(a_quarter_short()).book("items:", item);
    let short = "charge: flat}";
    // 0.39 beyond the drawing come back now, and 0.64 then; a quarter is free.
    files.book(short, back.trim_start()).silent("cheaper-order");
}

#[test]
fn the_cheaper_of_bags_and_truck_is_told() {
    let with = |price: &str| {
        let item = format!(
            "items:\n  sack: {{unit: bag, class: material, prices: {{2026-03-01: {price}}}}}\n"
        );
        let mix = "mixes:\n  bags: {item: sack, strength: 4000 psi, air: 6%, yield: 0.6 cu ft}\n";
        let rates = "rates:\n  mix bags: 0.06 hours per bag";
        let files = Files::new().job(SIZE, "size: 4 ft x 4 ft");
        files
            .book("items:\n", &item)
            .book("mixes:\n", mix)
            .book("rates:", rates)
    };
    let by_bag = |files: Files| files.job("edges:", "mix: bags, edges:");
    with("6.20").says("bags-or-truck", "less by the bag", "`mix: bags`");
    by_bag(with("6.20")).silent("bags-or-truck");
    // At $60 a bag the truck is cheaper, whatever is short.
    with("60.00").silent("bags-or-truck");
    by_bag(with("60.00")).says("bags-or-truck", "less by the truck", "`mix: exterior`");
    // Weaker bags do not serve.
    with("6.20")
        .book("sack, strength: 4000 psi", "sack, strength: 3000 psi")
        .silent("bags-or-truck");
}

#[test]
fn evened_trucks_are_told_before_more_yards() {
    // 9.26 cu yd and 7% make 10, as 9 + 1.
    let two = Files::new().job(SIZE, "size: 36 ft x 20 ft 10 in");
    let evened = "trucks of 5 + 5 in place of 9 + 1; not a yard more";
    let told = "costs $180.00 less with trucks evened";
    two.clone().says("cheaper-order", told, evened);
    two.clone()
        .business("order:", "order:\n  buy: cheapest")
        .silent("cheaper-order");
    // What the owner set is ordered so.
    two.job(
        EXPOSURE,
        "exposure: frost\nset: {exterior order: {to: 3.75, because: measured again}}",
    )
    .silent("cheaper-order");
}

#[test]
fn a_fixed_price_below_the_minimum() {
    let cheap = Files::new().job(EXPOSURE, "exposure: frost\nprice: 1499.99");
    assert_eq!(
        cheap.says("below-minimum", "$1,500.00", "raise `price`"),
        "1499.99"
    );
    cheap.job("1499.99", "1500.00").silent("below-minimum");
}

#[test]
fn a_margin_just_under_the_floor_is_not_rounded_up_to_it() {
    Files::new().silent("below-floor");
    Files::new()
        .business("profit: markup 25%", "profit: margin 14.99%")
        .business("round up to: 10.00", "round up to: 0.01")
        .says("below-floor", "is `14.99%`; your floor is 15%", "÷ price");
}

#[test]
fn the_worst_choice_is_held_against_the_floor() {
    // The price is fixed, so whatever is chosen comes out of the margin.
    let fixed = Files::new().job(
        EXPOSURE,
        "exposure: frost\nprice: 20000.00\noptions:\n  - Sealer: {add: [clear sealer: 256 sq ft]}\n  - Granite: {add: [granite: {cost: 18000.00}]}",
    );
    let message = "with `Sealer` and `Granite`";
    assert_eq!(fixed.says("below-floor", message, "raise"), "20000.00");
    fixed.job("18000.00", "1.00").silent("below-floor");
}

#[test]
fn the_deposit_keeps_to_the_cap() {
    Files::new().silent("large-deposit");
    let first = Files::new().business("- When you sign: 10%", "- When you sign: 1/3");
    assert_eq!(first.says("large-deposit", "33%", "state's law"), "1/3");
    first
        .business("deposit cap: 33%", "deposit cap: 34%")
        .silent("large-deposit");
    Files::new()
        .business("deposit cap: 33%", "deposit limit: 100.00")
        .says("large-deposit", "your cap is $100.00", "lawyer");
}

/// Where the law asks for the lesser of 10 % and $1,000 (California, B&P 7159, as secondary pages
/// restate it): $50,000 allows $1,000 and not $5,000, $10,000 allows $1,000, $9,999.90 $999.99.
#[test]
fn the_lesser_of_two_caps_counts() {
    let sold = |price: &str, first: &str| {
        Files::new()
            .job(EXPOSURE, &format!("exposure: frost\nprice: {price}"))
            .business("{on: sale, rate: 6%, name: sales tax}", "{on: none}")
            .business(
                "deposit cap: 33%",
                "deposit cap: 10%\n  deposit limit: 1000.00",
            )
            .business("- When you sign: 10%", &format!("- When you sign: {first}"))
    };
    sold("50000.00", "2%").silent("large-deposit");
    sold("50000.00", "10%").says(
        "large-deposit",
        "asks for $5,000.00; your cap is $1,000.00",
        "law",
    );
    sold("10000.00", "10%").silent("large-deposit");
    sold("10000.10", "10%").says(
        "large-deposit",
        "asks for $1,000.01; your cap is $1,000.00",
        "law",
    );
    sold("9999.90", "10%").silent("large-deposit");
    sold("9999.90", "10.01%").says("large-deposit", "your cap is 10% of $9,999.90", "law");
}

#[test]
fn a_tax_on_materials_tells_what_they_are_of_the_price() {
    let sale = "{on: sale, rate: 6%, name: sales tax}";
    let materials = Files::new().business(sale, "{on: materials, rate: 6%, name: sales tax}");
    assert_eq!(
        materials.says(
            "tax-tells-materials",
            "divided by `6%`",
            "ask who does your books"
        ),
        "6%"
    );
    Files::new().silent("tax-tells-materials");
    Files::new()
        .business(sale, "{on: purchases, rate: 6%, name: sales tax}")
        .silent("tax-tells-materials");
}

#[test]
fn a_clause_that_prints_what_the_owner_pays_is_told() {
    let clause = |price: &str| {
        Files::new().business(
            "payments:",
            &format!("escalation: {{index: the posted price, reference: {price}}}\n\npayments:"),
        )
    };
    // The book's own price of ready-mix on the day of the pour.
    assert_eq!(
        clause("178.00").says("index-tells-cost", "`$178.00`", "look up"),
        "178.00"
    );
    clause("178.01").silent("index-tells-cost");
}

#[test]
fn set_trips_that_hold_the_visits_after_the_pour_are_told() {
    let sealers =
        "sealers:\n  clear: {item: curing compound, coverage: 250 sq ft per gal}\nmixes:\n";
    let sealed = Files::new()
        .book("mixes:\n", sealers)
        .job("24 ft x 16 ft", "24 ft x 16 ft, seal: clear");
    let set = "exposure: frost\nset:\n  trips: {to: 3, because: measured}";
    let set = sealed.clone().job(EXPOSURE, set);
    assert_eq!(
        set.says(
            "visits-in-set",
            "the `3 trips` you set hold the `1 trip`",
            "`trips: 2`"
        ),
        "3"
    );
    let planned = |trips: &str| {
        let trips = format!("exposure: frost\ntrips: {trips}");
        sealed.clone().job(EXPOSURE, &trips)
    };
    planned("3").silent("visits-in-set");
    planned("9").silent("trips-too-few");
    assert_eq!(
        planned("1").says("trips-too-few", "room for `21.75 hours`", "more trips"),
        "1"
    );
}

#[test]
fn work_that_no_rate_pays_is_told() {
    let slab = |more: &str| {
        let size = format!("24 ft x 16 ft, {more}");
        Files::new().job("24 ft x 16 ft", &size)
    };
    let sawn = slab("sawn: yes");
    assert_eq!(
        sawn.says("work-without-rate", "joints are sawn", "joints by saw"),
        "yes"
    );
    let wet = slab("curing: wet");
    assert_eq!(wet.says("work-without-rate", "kept wet", "keep wet"), "wet");
    let rated = |rate: &str| format!("rates:\n  {rate}");
    sawn.book("rates:", &rated("joints by saw: 1 hour per 100 ft"))
        .silent("work-without-rate");
    wet.book("rates:", &rated("keep wet: 1 hour per trip"))
        .silent("work-without-rate");
    let cover = slab("curing: cover").book("\n  trip:", "\n  curing cover: none\n  trip:");
    cover.says("work-without-rate", "to take it off", "lift covers");
    cover
        .book("rates:", &rated("lift covers: 1 hour per trip"))
        .silent("work-without-rate");
    for (edge, what, by) in [
        ("keyed bulkhead", "a bulkhead has a key", "keyed joints"),
        (
            "doweled bulkhead",
            "steel goes through a bulkhead",
            "construction joints",
        ),
    ] {
        let edge = pinned(&format!(
            "dowels: smooth, edges: {{north: house, east: {edge}}}"
        ));
        edge.says("work-without-rate", what, by);
        let own =
            format!("also:\n  at the bulkhead: {{for: {by}, hours: 2 hours per 100 ft}}\nrates:");
        edge.book("rates:", &own).silent("work-without-rate");
    }
}
