//! What the customer reads of thick edges, sheets and steps, in the trade's words and without the book's.

use crate::support::{BOOK, BUSINESS, desk, with};

/// The quote of a job as one text: scope, assumptions, what is not included; and the plan's own words.
#[track_caller]
fn quote(slabs: &str) -> String {
    let book = with(
        BOOK,
        &[
            (
                "  stake:\n",
                "  sheet of the yard:\n    is: Sheet 23-B\n    unit: sq ft\n    class: material\n    prices: {2026-03-01: 0.16}\n  stake:\n",
            ),
            (
                "  stakes: stake\n",
                "  stakes: stake\n  vapor retarder: sheet of the yard\n",
            ),
            (
                "  form curved:",
                "  vapor retarder: 0.4 hours per 100 sq ft\n  form curved:",
            ),
        ],
    );
    let desk = desk(
        &format!("customer: Ira Sample\nquoted: 2026-05-04\nslabs:\n{slabs}\n"),
        BUSINESS,
        &book,
    );
    let view = serde_json::to_string(&desk.view()).unwrap();
    let plan = &desk.figures()["plan"].alternative;
    format!("{view}\n{plan}").replace('\u{a0}', " ")
}

#[track_caller]
fn says(quote: &str, words: &str) {
    assert!(quote.contains(words), "`{words}` is not in {quote}");
}

#[test]
fn a_shed_slab() {
    let quote = quote(
        "  slab: {size: 12 ft x 10 ft, vapor retarder: yes, thickened: {edges: all open, width: 12 in, depth: 14 in, bars: 2 no. 4}}",
    );
    says(
        &quote,
        "thickened to a depth of 14 in, 12 in wide, along all open edges, with 2 bars of ½ in",
    );
    says(
        &quote,
        "4 in of crushed stone, packed, then a vapor retarder sheet",
    );
    for secret in ["sheet of the yard", "23-B", "no. 4"] {
        assert!(!quote.contains(secret), "`{secret}` is in {quote}");
    }
}

#[test]
fn bars_along_the_edges_alone_are_steel_in_the_concrete() {
    let edge = |bars: &str| {
        let size = "size: 12 ft x 10 ft, mesh: none";
        let edge = format!("thickened: {{edges: all, width: 12 in, depth: 14 in{bars}}}");
        quote(&format!("  slab: {{{size}, {edge}}}"))
    };
    says(&edge(""), "Steel in the concrete");
    assert!(!edge(", bars: 2 no. 4").contains("Steel in the concrete"));
}

#[test]
fn an_extra_reads_as_the_owner_says() {
    let extra = |what: &str| quote(&format!("  slab: 12 ft x 10 ft\nextra:\n  - fence: {what}"));
    says(&extra("{cost: 80.00}"), "fence");
    says(
        &extra("{cost: 80.00, says: gate hung again}"),
        "gate hung again",
    );
    assert!(!extra("{cost: 80.00, says: nothing}").contains("fence"));
    assert!(!extra("{cost: 80.00, says: gate}").contains("fence"));
}

#[test]
fn edges_turned_down_and_ends_thickened() {
    let quote = quote(
        "  patio: {size: 12 ft x 10 ft, thickness: 4 in to 5 1/2 in north, thickened: {edges: [north, 2], width: 8 in, depth: 16 in, kind: turndown}}",
    );
    says(&quote, "12 × 10 ft, 4 to 5½ in thick");
    says(
        &quote,
        "turned down to a depth of 16 in, 8 in wide, on the north side and 1 more",
    );
    // A quarter of the thick end.
    says(&quote, "joints 1⅜ in deep");
}

#[test]
fn a_stoop_with_steps() {
    let stoop = "  stoop:\n    kind: step\n    size: 5 ft x 5 ft\n    stoop: filled, 8 in walls\n    thickness: 5 in\n    steps: 3 risers of 7 in, 12 in treads, 4 ft wide, from south edge";
    let filled = quote(stoop);
    says(
        &filled,
        "stoop 5 × 5 ft, 21 in high, on 8 in walls around fill",
    );
    says(
        &filled,
        "3 risers of 7 in, 12 in treads, 4 ft wide, down to the south of the stoop",
    );
    says(
        &filled,
        "Clean soil from your site fills the inside of the stoop",
    );
    says(&filled, "Handrails at the steps");
    says(&filled, "Steps: 4 ft by 2 ft; 3 risers");
    assert!(!filled.contains("thickened"), "{filled}");
    let solid = quote(&stoop.replace("filled, 8 in walls", "solid"));
    says(&solid, "stoop 5 × 5 ft, 21 in high, solid");
    assert!(!solid.contains("Clean soil"), "{solid}");
    let bought = quote(&stoop.replace("filled, 8", "filled with crushed stone, 8"));
    assert!(!bought.contains("Clean soil"), "{bought}");
}

/// Who takes the old slab out and digs nothing leaves the ground to somebody else, and says so.
#[test]
fn what_is_not_dug_is_not_included() {
    let job = |removed: &str| quote(&format!("  slab: 12 ft x 10 ft\n{removed}"));
    let concrete = job("remove: [old slab: 10 ft x 10 ft x 4 in]");
    says(&concrete, "\"Digging out soil\"");
    let soil = job("remove: [lawn: {size: 120 sq ft x 8 in, of: soil}]");
    assert!(!soil.contains("Digging out soil"), "{soil}");
    let none = job("");
    assert!(!none.contains("Digging out soil"), "{none}");
    says(&none, "\"Taking out old concrete or soil\"");
}
