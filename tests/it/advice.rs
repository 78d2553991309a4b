//! Each question of advice, once where it has something to say and once where it has not.

use flatwork::advice::{Case, advice};
use flatwork::costing::{offer, prices};
use flatwork::input::{book, business, job};
use flatwork::reading::{Problem, Problems, Sources, yaml};

const BUSINESS: &str = include_str!("../../demo-quotes/business.yaml");
const BOOK: &str = include_str!("../../price-books/river-road.yaml");

/// A patio that no question has anything to say about, but for the depth of its joints.
const PATIO: &str = "\
customer: Ira Sample
quoted: 2026-04-01
pour: 2026-05-01
exposure: frost
slabs:
  patio: {size: 24 ft x 16 ft, edges: {north: house}}
";

/// The three files of a job.
#[derive(Clone)]
struct Files {
    job: String,
    business: String,
    book: String,
}

impl Files {
    fn new() -> Self {
        Self {
            job: PATIO.to_owned(),
            business: BUSINESS.to_owned(),
            book: BOOK.to_owned(),
        }
    }

    #[track_caller]
    fn job(self, old: &str, new: &str) -> Self {
        Self {
            job: swapped(&self.job, old, new),
            ..self
        }
    }

    #[track_caller]
    fn business(self, old: &str, new: &str) -> Self {
        Self {
            business: swapped(&self.business, old, new),
            ..self
        }
    }

    #[track_caller]
    fn book(self, old: &str, new: &str) -> Self {
        Self {
            book: swapped(&self.book, old, new),
            ..self
        }
    }

    /// Everything that is advised, with the text each place points at.
    #[track_caller]
    fn all(&self) -> Vec<(Problem, String)> {
        let (mut sources, mut problems) = (Sources::default(), Problems::default());
        let mut read = |name: &str, text: &str, problems: &mut Problems| {
            let id = sources.add(name, text.to_owned());
            yaml::read(id, &sources, problems)
        };
        let nodes = (
            read("business.yaml", &self.business, &mut problems),
            read("book.yaml", &self.book, &mut problems),
            read("job.yaml", &self.job, &mut problems),
        );
        let (Some(business), Some(book), Some(takeoff)) = nodes else {
            panic!("{problems:?}");
        };
        let business = business::read(&business, &mut problems).expect("a business");
        let book = book::read(&book, &mut problems).expect("a book");
        let takeoff = job::read(&takeoff, &mut problems)
            .and_then(|written| job::resolve(written, "patio", &book, &business, &mut problems));
        assert!(problems.is_empty(), "{problems:?}");
        let takeoff = takeoff.expect("a job");
        let quoted = takeoff.quoted.expect("a day of the quote");
        let days: Vec<_> = takeoff
            .placements
            .iter()
            .map(|pour| {
                prices(
                    &book,
                    pour.day.as_ref().expect("a day").value,
                    &takeoff.name,
                )
            })
            .collect();
        let offer = offer(&takeoff, &book, &business, &days, &mut problems);
        assert!(problems.is_empty(), "{problems:?}");
        let found = advice(Case {
            takeoff: &takeoff,
            business: &business,
            book: &book,
            offer: &offer.expect("an offer"),
            days: &days,
            quoted,
        });
        let slice = |one: &Problem| {
            one.place
                .map(|place| sources.slice(place).to_owned())
                .unwrap_or_default()
        };
        found.iter().map(|one| (one.clone(), slice(one))).collect()
    }

    /// One answer to one question, whose message and help hold these words.
    #[track_caller]
    fn says(&self, code: &str, message: &str, help: &str) -> String {
        let all = self.all();
        let found: Vec<_> = all.iter().filter(|(one, _)| one.code == code).collect();
        let [(one, at)] = found[..] else {
            panic!("{} answers of {code} in {all:#?}", found.len());
        };
        assert!(one.message.contains(message), "{}", one.message);
        let said = one.help.as_deref().unwrap_or_default();
        assert!(said.contains(help), "{said}");
        at.clone()
    }

    #[track_caller]
    fn silent(&self, code: &str) {
        let all = self.all();
        assert!(all.iter().all(|(one, _)| one.code != code), "{all:#?}");
    }
}

/// The text with one of its parts exchanged; the part must be there.
#[track_caller]
fn swapped(text: &str, old: &str, new: &str) -> String {
    assert!(text.contains(old), "no {old}");
    text.replacen(old, new, 1)
}

const SIZE: &str = "size: 24 ft x 16 ft";
const EXPOSURE: &str = "exposure: frost";

#[test]
fn a_sound_job_hears_only_how_deep_to_cut() {
    let codes: Vec<&str> = Files::new().all().iter().map(|(one, _)| one.code).collect();
    assert_eq!(codes, ["groove-depth"]);
}

#[test]
fn answers_are_always_the_same_and_in_one_line() {
    let files = Files::new().job(SIZE, "size: 40 ft x 3 ft, joints: none, thickness: 2 in");
    let (one, other) = (files.all(), files.all());
    assert_eq!(one, other);
    assert!(2 < one.len());
    for (problem, _) in &one {
        let start = problem.message.chars().next().unwrap();
        assert!(!start.is_uppercase() && !problem.message.contains('\n'));
        assert!(!problem.message.ends_with('.'), "{}", problem.message);
        assert!(problem.help.is_some() && problem.place.is_some());
    }
}

#[test]
fn joints_stand_by_the_thickness_and_the_stone() {
    // 30 thicknesses of 4 in with stone of 3/4 in are 10 ft.
    let far = Files::new().job(SIZE, "size: 22 ft x 22 ft, joints: 11 ft");
    assert_eq!(
        far.says("joints-far-apart", "`10 ft`", "NRMCA CIP 6"),
        "11 ft"
    );
    let near = Files::new().job(SIZE, "size: 20 ft x 20 ft, joints: 10 ft");
    near.silent("joints-far-apart");
    // 24 thicknesses with smaller stone are 8 ft.
    near.book("aggregate: 3/4 in", "aggregate: 1/2 in").says(
        "joints-far-apart",
        "`8 ft`",
        "restated",
    );
    // The cap bites at 6 in and over.
    Files::new()
        .job(SIZE, "size: 32 ft x 32 ft, joints: 16 ft, thickness: 8 in")
        .says("joints-far-apart", "`15 ft`", "");
}

#[test]
fn walks_have_a_spacing_of_their_own() {
    let walk = Files::new().job(
        "patio: {size: 24 ft x 16 ft",
        "walk: {size: 18 ft x 6 ft, joints: 6 ft",
    );
    walk.says("joints-far-apart", "`5 ft`", "UFGS");
}

#[test]
fn a_large_slab_wants_joints() {
    Files::new()
        .job(SIZE, "size: 16 ft x 16 ft, joints: none")
        .says("no-joints", "`16 ft` long", "joints: 10 ft");
    Files::new()
        .job(SIZE, "size: 10 ft x 10 ft, joints: none")
        .silent("no-joints");
}

#[test]
fn panels_are_nearly_square() {
    // Six by seven is well shaped.
    Files::new()
        .job(SIZE, "size: 6 ft x 7 ft, joints: 8 ft")
        .silent("long-panel");
    Files::new()
        .job(SIZE, "size: 8 ft x 6 ft, joints: 8 ft")
        .says(
            "long-panel",
            "`1.33` times as long as wide; 1.25 is better",
            "",
        );
}

#[test]
fn the_groove_is_a_quarter_deep() {
    Files::new().says("groove-depth", "`1 in` deep; a 3/4 in groove", "quarter");
    Files::new()
        .job(SIZE, "size: 16 ft x 16 ft, thickness: 6 in")
        .says("groove-depth", "`1 1/2 in`", "UFGS");
    Files::new()
        .job(SIZE, "size: 8 ft x 8 ft")
        .silent("groove-depth");
}

#[test]
fn the_mix_stands_the_weather() {
    Files::new()
        .job(EXPOSURE, "exposure: salt")
        .says("weak-mix", "4,500 psi", "ACI 332-14");
    let weak = Files::new().book("strength: 4000 psi", "strength: 3000 psi");
    weak.says("weak-mix", "3,500 psi", "IBC");
    weak.job(EXPOSURE, "exposure: mild").silent("weak-mix");
    Files::new().silent("weak-mix");
}

#[test]
fn air_stands_against_frost() {
    let dry = Files::new().book("air: 6%", "air: 5%");
    dry.says("little-air", "`6%`", "from memory");
    dry.job(EXPOSURE, "exposure: mild").silent("little-air");
    Files::new().silent("little-air");
}

#[test]
fn three_stones_fit_in_the_slab() {
    let stone = Files::new().book("aggregate: 3/4 in", "aggregate: 1 1/2 in");
    stone.says("large-stone", "`1 1/2 in`", "1 in or less");
    stone
        .job(SIZE, "size: 16 ft x 16 ft, thickness: 4.5 in")
        .silent("large-stone");
}

#[test]
fn bars_need_room() {
    let thin = Files::new().job(SIZE, "size: 16 ft x 16 ft, thickness: 3 in");
    thin.says("no-room-for-bars", "leave `3/4 in` below", "footings");
    thin.job("thickness: 3 in", "thickness: 3 in, bars: none")
        .silent("no-room-for-bars");
    Files::new().silent("no-room-for-bars");
}

#[test]
fn vehicles_park_on_steel() {
    let drive = Files::new().job("patio: {size", "driveway: {size");
    drive.silent("steel-under-vehicle");
    drive
        .clone()
        .job(SIZE, "size: 16 ft x 16 ft, bars: none")
        .says("steel-under-vehicle", "no bars", "no source");
    drive
        .job(SIZE, "size: 16 ft x 16 ft, bars: no. 4 at 30 in")
        .says("steel-under-vehicle", "2 ft 6 in", "2 ft or less");
}

#[test]
fn a_patio_usually_meets_a_house() {
    let free = Files::new().job(", edges: {north: house}", "");
    assert_eq!(
        free.says("no-isolation", "no edge of `patio`", "CIP 6"),
        "patio"
    );
    free.job("patio: {size", "walk: {size")
        .silent("no-isolation");
    Files::new().silent("no-isolation");
}

#[test]
fn a_barrow_goes_a_hundred_feet() {
    let far = Files::new().job(EXPOSURE, "access: {by: wheelbarrow, distance: 101 ft}");
    far.says("long-barrow-run", "`101 ft`", "common practice, no source");
    far.clone()
        .job("101 ft", "100 ft")
        .silent("long-barrow-run");
    far.job("wheelbarrow", "buggy").silent("long-barrow-run");
}

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

#[test]
fn a_short_load_says_what_more_would_do() {
    // 64 sq ft of 4 in: 0.79 cu yd and the smallest allowance make 1.25; 2.75 of 4 cu yd are missing.
    Files::new().job(SIZE, "size: 8 ft x 8 ft").says(
        "short-load",
        "costs $165.00",
        "2.75 cu yd more would save that and cost $489.50",
    );
    Files::new().silent("short-load");
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
