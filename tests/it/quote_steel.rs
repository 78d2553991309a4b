//! Steel as the customer reads it: what it does, never what it is called in the price book.

use crate::support::{BOOK, BUSINESS, desk, with};

/// The scope lines of a job as `word: text`, and everything else the customer is shown.
fn shown(job: &str) -> (Vec<String>, String) {
    let book = with(
        BOOK,
        &[
            (
                "items:\n",
                "items:\n  secret pin: {is: Pin from the yard, unit: piece, class: material, prices: {2026-03-01: 2.00}}\n",
            ),
            (
                "\nfiber:\n",
                "\ndowels:\n  sliders: {item: secret pin, bar: 1/2 in smooth, cap: secret pin}\n  grippers: {item: secret pin, bar: no. 4, adhesive: secret pin}\n\nfiber:\n",
            ),
            ("  dig: ", "  drill holes: 0.2 hours per piece\n  dig: "),
        ],
    );
    let desk = desk(job, BUSINESS, &book);
    let (view, figures) = (desk.view(), desk.figures());
    let all = format!("{}{figures:?}", serde_json::to_string(&view).unwrap());
    for secret in ["secret pin", "Pin from", "sliders", "grippers"] {
        assert!(!all.contains(secret), "the customer reads `{secret}`");
    }
    let lines = view.scope.iter();
    let lines = lines.map(|term| format!("{}: {}", term.word, term.text.replace('\u{a0}', " ")));
    (lines.collect(), all)
}

#[test]
fn dowels_slide_and_ties_hold() {
    let (lines, all) = shown(
        "customer: Ira Sample\nslabs:\n  apron: {size: 20 ft x 10 ft, edges: {north: doweled existing concrete}}",
    );
    let wanted =
        "Dowels: ½ in smooth steel dowels every 2 ft into the concrete that stays, free to slide";
    assert!(lines.iter().any(|line| line == wanted), "{lines:#?}");
    assert!(all.contains("with steel dowels across it, free to slide, on the north side"));
    let (lines, _) = shown(
        "customer: Ira Sample\nslabs:\n  apron: {size: 20 ft x 10 ft, ties: grippers at 30 in, edges: {north: tied existing concrete}}\n  walk: 20 ft x 4 ft",
    );
    let wanted = "Dowels: ½ in steel bars every 2 ft 6 in into the concrete that stays, holding both sides together (apron)";
    assert!(lines.iter().any(|line| line == wanted), "{lines:#?}");
    let (lines, _) = shown("customer: Ira Sample\nslabs: {walk: 20 ft x 4 ft}");
    assert!(
        lines.iter().all(|line| !line.starts_with("Dowels")),
        "{lines:#?}"
    );
}

#[test]
fn bars_are_said_as_they_lie() {
    let steel = |bars: &str| {
        let (lines, _) = shown(&format!(
            "customer: Ira Sample\nslabs:\n  apron: {{size: 20 ft x 10 ft, bars: {bars}}}"
        ));
        let found = lines.into_iter().find(|line| line.starts_with("Steel"));
        found.unwrap()
    };
    assert_eq!(
        steel("no. 4 at 18 in"),
        "Steel: ½ in bars every 18 in, both ways"
    );
    assert_eq!(
        steel("no. 4 at 10 in east-west and no. 3 at 18 in north-south"),
        "Steel: ½ in bars every 10 in one way, ⅜ in bars every 18 in the other"
    );
    assert_eq!(
        steel("no. 4 at 10 in north-south"),
        "Steel: ½ in bars every 10 in, one way"
    );
}
