//! What the office reads of all jobs, as a table, as JSON and as CSV.

use super::{Firm, firm};

/// A second kind of slab.
fn with_walks(firm: &Firm) {
    let business = std::fs::read_to_string(firm.path("business.yaml")).unwrap();
    let walk = "  walk: {thickness: 4 in, mix: exterior, finish: broom, joints: 4 ft}\n";
    std::fs::write(
        firm.path("business.yaml"),
        business.replace("kinds:\n", &format!("kinds:\n{walk}")),
    )
    .unwrap();
}

#[test]
fn quotes_won_are_counted_by_kind_of_work() {
    let firm = firm("win-rate");
    with_walks(&firm);
    for (job, kind) in [
        ("ada", "walk"),
        ("ben", "slab"),
        ("cal", "walk"),
        ("dot", "slab"),
        ("eve", "walk"),
        ("flo", "slab"),
        ("gus", "walk"),
    ] {
        std::fs::write(
            firm.path(&format!("{job}.yaml")),
            format!("customer: {job} Invented, Quillhaven\nslabs: {{it: {{size: 12 ft x 9 ft, kind: {kind}}}}}\n"),
        )
        .unwrap();
        firm.done(&format!("quote {job}.yaml --issue --on 2026-05-04"));
    }
    // Walks: signed, declined, signed and cancelled, no answer. Slabs: signed, withdrawn, postponed.
    firm.done("accept 2026-0041 --on 2026-05-06");
    firm.done("accept 2026-0042 --on 2026-05-06");
    firm.done("decline 2026-0043 --because dear --on 2026-05-06");
    firm.done("withdraw 2026-0044 --because 'no crew' --on 2026-05-06");
    firm.done("accept 2026-0045 --on 2026-05-06");
    firm.done("cancel 2026-0045 --because 'changed mind' --on 2026-05-07");
    firm.done("postpone 2026-0046 --because rain --on 2026-05-06");
    assert_eq!(
        firm.done("jobs --win-rate --on 2026-05-20 --format csv"),
        "kind,quoted,won,lost,open,withdrawn,percent\r\n\
         slab,3,1,0,1,1,100.0\r\n\
         walk,4,1,2,1,0,33.3\r\n\
         all jobs,7,2,2,2,1,50.0\r\n"
    );
    // A month later the last walk has run out without an answer.
    let json = firm.done("jobs --win-rate --on 2026-07-20 --format json");
    let rates: serde_json::Value = serde_json::from_str(&json).unwrap();
    assert_eq!(rates[1]["kind"], "walk");
    assert_eq!(rates[1]["lost"], 3);
    assert_eq!(rates[1]["percent"], "25.0");
    assert_eq!(rates[2]["open"], 1);
    let text = firm.done("jobs --win-rate --on 2026-05-20");
    assert!(text.contains("33.3%"), "{text}");
}

#[test]
fn jobs_and_what_is_owed_go_to_the_bookkeeper() {
    let firm = firm("bookkeeper");
    std::fs::write(
        firm.path("one.yaml"),
        "customer: {name: '=Ira, \"Sample\"'}\nslabs: {slab: 20 ft x 18 ft}\n",
    )
    .unwrap();
    firm.done("quote one.yaml --issue --on 2026-05-04");
    firm.done("quote two.yaml --issue --on 2026-05-04");
    firm.done("accept 2026-0041 --on 2026-05-12");
    firm.done("invoice 2026-0041 --on 2026-05-12");
    firm.done("pay 2026-0041 100.00 --on 2026-05-20");
    let jobs = both(&firm, "jobs --on 2026-06-30");
    assert_eq!(
        jobs[1][1], "'=Ira, \"Sample\"",
        "no formula for a spreadsheet"
    );
    let owed = both(&firm, "owed --on 2026-06-30");
    assert_eq!(
        owed[0],
        ["invoice", "customer", "billed", "due", "days_over", "open"]
    );
    assert_eq!(
        owed[1][..5],
        [
            "2026-0041-1",
            "'=Ira, \"Sample\"",
            "2026-05-12",
            "2026-05-22",
            "39"
        ]
    );
    both(&firm, "jobs --win-rate --on 2026-06-30");
}

/// The rows of a command as CSV, after its JSON was seen to say the same by the same names.
fn both(firm: &Firm, line: &str) -> Vec<Vec<String>> {
    let text = firm.done(&format!("{line} --format csv"));
    let mut reader = csv::ReaderBuilder::new()
        .has_headers(false)
        .from_reader(text.as_bytes());
    let rows: Vec<Vec<String>> = reader
        .records()
        .map(|row| row.unwrap().iter().map(str::to_owned).collect())
        .collect();
    let json = firm.done(&format!("{line} --format json"));
    let json: Vec<serde_json::Value> = serde_json::from_str(&json).unwrap();
    assert_eq!(rows.len(), 1 + json.len(), "{line}");
    for (row, object) in rows[1..].iter().zip(&json) {
        assert_eq!(object.as_object().unwrap().len(), row.len(), "{line}");
        for (name, cell) in rows[0].iter().zip(row) {
            let told = match &object[name.as_str()] {
                serde_json::Value::String(text) => text.clone(),
                serde_json::Value::Null => String::new(),
                other => other.to_string(),
            };
            assert_eq!(cell.trim_start_matches('\''), told, "{line}: {name}");
        }
    }
    rows
}
