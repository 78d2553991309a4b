//! What the customer reads of a surface, and what the owner hears of a finish nobody knows.

use flatwork::inside::costing::offer;
use flatwork::inside::reading::Problems;

use super::{BOOK, job, lot, lot_with};
use crate::support::{BUSINESS, Desk, desk, with};

/// Everything the customer's view says, as one text.
pub(super) fn words(desk: &Desk) -> String {
    serde_json::to_string(&desk.view())
        .unwrap()
        .replace('\u{a0}', " ")
}

#[test]
fn the_customer_reads_the_owners_words_and_no_item() {
    let desk = lot(", finish: stamped slate");
    let said = words(&desk);
    for expected in [
        "stamped like split slate, rounded edges",
        "sandstone, all through the concrete",
        "a clear sealer with some shine, 2 coats, 28 days after the pour or later",
        "covered while it cures, forms out",
        "Sealed surface.",
        "a sample shows the kind of color",
    ] {
        assert!(said.contains(expected), "no `{expected}` in {said}");
    }
    for hidden in [
        "release powder",
        "Release powder",
        "5447",
        "pail",
        "Stamp set",
        "564",
        "3%",
        "of cement",
        "stamped slate",
        "wet look",
        "Curing coat",
    ] {
        assert!(!said.contains(hidden), "`{hidden}` in {said}");
    }
}

/// The figure says in words from which day the slab may be sealed, where it may be at all.
fn seal_day(desk: &Desk) -> Option<String> {
    let words = &desk.figures()["cure"].alternative;
    let at = words.find("Seal it")?;
    words[at..].split('.').next().map(str::to_owned)
}

#[test]
fn the_timeline_waits_as_long_as_the_sealer() {
    #[track_caller]
    fn case(job: &Desk, wanted: &str) {
        let found = seal_day(job).expect("a bar for sealing");
        assert!(found.contains(wanted), "{found}");
    }
    let seal = ", seal: wet look, curing: none";
    let slow = with(BOOK, &[("wet look: {", "wet look: {after: 42 days, ")]);
    case(&lot(seal), "day 28");
    case(&lot_with(seal, &slow), "day 42");
    // On the day of the pour nothing can be sealed.
    let fast = with(BOOK, &[("wet look: {", "wet look: {after: 0 days, ")]);
    case(&lot_with(seal, &fast), "day 1");
    // Nobody is told when to seal what is not sealed; what a choice may seal waits as the firm says.
    for book in [BOOK, &slow] {
        assert_eq!(seal_day(&lot_with("", book)), None);
        let offered = format!(
            "{}options:\n  - Clear Sealer: {{add: [sealer: 5 gal]}}\n",
            job("")
        );
        case(&desk(&offered, BUSINESS, book), "day 28");
    }
}

#[test]
fn sealing_is_excluded_only_where_the_firm_seals_and_this_job_does_not() {
    let line = "Sealing the concrete";
    assert!(words(&lot("")).contains(line));
    assert!(!words(&lot(", seal: wet look, curing: none")).contains(line));
    let none = with(BOOK, &[("sealers:", "disposal: {}\nsealers:")]);
    let start = none.find("sealers:").unwrap();
    let end = none.find("supply:").unwrap();
    let none = format!("{}{}", &none[..start], &none[end..]);
    let none = with(&none, &[("    seal: wet look\n", "")]);
    assert!(!words(&lot_with("", &none)).contains(line));
    // An option that speaks of it says enough.
    let offered = format!(
        "{}options:\n  - Clear Sealer: {{add: [sealer: 5 gal]}}\n",
        job("")
    );
    assert!(!words(&desk(&offered, BUSINESS, BOOK)).contains(line));
}

#[test]
fn an_unknown_finish_hears_of_its_neighbours() {
    let desk = lot(", finish: stamped slat");
    let mut problems = Problems::default();
    let found = offer(&desk.takeoff, desk.pricing(), &mut problems);
    assert!(found.is_err());
    let helps: Vec<_> = problems.iter().filter_map(|one| one.help.clone()).collect();
    assert!(
        helps
            .iter()
            .any(|help| help.starts_with("did you mean the finish `stamped slate`?")),
        "{helps:?}"
    );
}
