//! Revisions at other prices, sent straight from the answer.

use serde_json::Value;

use crate::records::{Firm, firm};

/// Two quotes on record, and a book in which concrete and labor went up.
fn dearer(name: &str) -> Firm {
    let firm = firm(name);
    for job in ["one", "two"] {
        firm.done(&format!("quote {job}.yaml --issue --on 2026-05-04"));
    }
    firm.done("book set ready-mix 220 --from 2026-05-10 --book book.yaml");
    firm.done("book set labor 60 --from 2026-05-10 --book book.yaml");
    firm
}

fn record(firm: &Firm, name: &str) -> Value {
    let path = firm.path(&format!("records/{name}.json"));
    serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap()
}

#[test]
fn a_revision_has_the_price_of_the_table_and_a_new_day() {
    let firm = dearer("reissue");
    let table = firm.done("reprice --on 2026-05-15 --format json");
    let table: Value = serde_json::from_str(&table).unwrap();
    let said = firm.done("reprice --on 2026-05-15 --issue 2026-0041,2026-0042 --tell");
    for number in ["2026-0041", "2026-0042"] {
        let (first, second) = (
            record(&firm, &format!("{number}.01.quote")),
            record(&firm, &format!("{number}.02.quote")),
        );
        let (was, is) = (&first["what"], &second["what"]);
        let total = |quote: &Value| quote["combinations"][0]["figures"]["total"].clone();
        let rows = table["quotes"].as_array().unwrap();
        let row = rows.iter().find(|row| row["number"] == number).unwrap();
        assert_eq!(
            (&total(was), &total(is)),
            (&row["old_total"], &row["new_total"])
        );
        assert_ne!(total(was), total(is));
        assert_eq!(is["replaces"]["total"], total(was));
        assert_eq!(is["replaces"]["day"], "2026-05-04");
        assert_eq!(
            (&second["day"], &is["revision"]),
            (&"2026-05-15".into(), &2.into())
        );
        assert!(was["good_until"].as_str() < is["good_until"].as_str());
        let note = is["view"]["replaces"].as_str().unwrap();
        assert!(note.contains("our quote of May 4, 2026"), "{note}");
        for office in ["cost", "margin", "ready-mix", "supplier", "plant"] {
            assert!(!note.contains(office), "{note}");
        }
        assert!(
            said.contains(&format!("issued      {number}, revision 2")),
            "{said}"
        );
    }
    // The page can be made again from what the record keeps, with the paragraph.
    assert!(!firm.done("verify").contains("otherwise"));
    // What was just revised has nothing more to tell.
    let after = firm.done("reprice --on 2026-05-15");
    assert!(after.contains("open quotes cost you $0.00 more"), "{after}");
}

#[test]
fn below_floor_stands_for_all_that_need_it_and_a_dry_run_sends_none() {
    let firm = dearer("reissue-floor");
    let before = firm.records();
    let line = "reprice --on 2026-05-15 --issue below-floor";
    let said = firm.done(&format!("{line} --dry-run"));
    assert!(said.contains("would issue 2026-0041, revision 2"), "{said}");
    assert!(
        said.ends_with("nothing was written (--dry-run)\n"),
        "{said}"
    );
    assert_eq!(firm.records(), before);
    firm.done(line);
    let quiet = record(&firm, "2026-0041.02.quote");
    assert!(quiet["what"].get("replaces").is_none());
    assert!(quiet["what"]["view"]["replaces"].is_null());
}

#[test]
fn only_open_quotes_are_sent_and_all_or_none() {
    let firm = dearer("reissue-open");
    firm.done("accept 2026-0042 --by 'Dana Example' --on 2026-05-06");
    let before = firm.records();
    let line = "reprice --on 2026-05-15 --issue";
    let said = firm.refused(&format!("{line} 2026-0041,2026-0042"), "not-open");
    assert!(said.contains("did you mean 2026-0041?"), "{said}");
    firm.refused(&format!("{line} whatever"), "not-open");
    // A takeoff is open as well, and no quote went out for it.
    let takeoff = "reprice three.yaml --on 2026-05-15 --issue three";
    assert!(
        firm.refused(takeoff, "not-open")
            .contains("flatwork quote FILE --issue")
    );
    firm.refused(
        "reprice . . --on 2026-05-15 --issue 2026-0041",
        "one-folder",
    );
    // What is only supposed is not sent.
    let supposed = firm.run(&format!("{line} 2026-0041 --what-if labor=+8%"));
    assert_eq!(supposed.status.code(), Some(2));
    assert_eq!(firm.records(), before);
}

#[test]
fn no_revision_promises_a_pour_in_the_past() {
    let firm = firm("reissue-past");
    let job = "customer: Ira Sample, Quillhaven\nslabs: {slab: 20 ft x 18 ft}\npour: 2026-05-20\n";
    std::fs::write(firm.path("four.yaml"), job).unwrap();
    for job in ["one", "four"] {
        firm.done(&format!("quote {job}.yaml --issue --on 2026-05-04"));
    }
    let before = firm.records();
    let line = "reprice --on 2026-05-21";
    assert!(firm.done(line).contains("was to be poured on 2026-05-20"));
    let said = firm.refused(
        &format!("{line} --issue 2026-0041,2026-0042"),
        "pour-gone-by",
    );
    assert!(said.contains("quote FILE --revise 2026-0042"), "{said}");
    assert_eq!(firm.records(), before);
    firm.done("reprice --on 2026-05-20 --issue 2026-0042");
}

#[test]
fn where_none_is_below_the_floor_none_is_sent_and_it_is_said() {
    let firm = firm("reissue-none");
    firm.done("quote one.yaml --issue --on 2026-05-04");
    let before = firm.records();
    for paths in [".", "one.yaml"] {
        let said = firm.done(&format!(
            "reprice {paths} --on 2026-05-15 --issue below-floor"
        ));
        assert!(
            said.ends_with("below your floor: nothing is sent\n"),
            "{said}"
        );
    }
    assert_eq!(firm.records(), before);
}
