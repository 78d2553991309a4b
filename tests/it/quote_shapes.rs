//! What the customer reads of other shapes and of openings.

use crate::support::{BOOK, BUSINESS, desk};

/// The line `Pour` of the scope, unbroken spaces as plain ones, and what the plan says aloud.
#[track_caller]
fn poured(slabs: &str) -> (String, String) {
    let job = format!("customer: Ira Sample, Quillhaven\nslabs:\n{slabs}\n");
    let desk = desk(&job, BUSINESS, BOOK);
    let scope = desk.view().scope;
    let line = scope.iter().find(|term| term.word == "Pour").unwrap();
    let plan = desk.figures()["plan"].alternative.clone();
    let plain = |text: &str| text.replace('\u{a0}', " ");
    (plain(&line.text), plain(&plan))
}

#[test]
fn shapes_are_said_as_a_homeowner_would_say_them() {
    #[track_caller]
    fn case(shape: &str, said: &str) {
        let (pour, _) = poured(&format!("  patio: {shape}"));
        assert_eq!(pour, format!("patio {said}, 4 in thick"));
    }
    case(
        "triangle 12 ft x 9 ft, square at southwest",
        "12 × 9 ft (triangle)",
    );
    case("triangle 13 ft x 14 ft x 15 ft", "of 84 sq ft");
    case("trapezoid 12 ft and 8 ft, 10 ft apart", "of 100 sq ft");
    case(
        "ring 20 ft outside, 8 ft inside",
        "20 ft across (8 ft of it open in the middle)",
    );
    case(
        "half circle 12 ft, flat at north",
        "12 ft across (half circle)",
    );
    case(
        "quarter circle 6 ft radius, square at southwest",
        "6 × 6 ft (quarter circle)",
    );
    case(
        "sector 12 ft radius, 75 degrees, toward south",
        "of 94 sq ft",
    );
    case(
        "{corners: [[0 ft, 0 ft], [24 ft, 0 ft], [24 ft, 12 ft], [10 ft, 16 ft]]}",
        "of 276 sq ft",
    );
}

#[test]
fn openings_are_named_to_the_customer() {
    let cut = |openings: &[&str]| {
        let lines: Vec<String> = openings.iter().map(|o| format!("      - {o}\n")).collect();
        poured(&format!(
            "  patio:\n    size: 24 ft x 16 ft\n    cut out:\n{}",
            lines.concat()
        ))
    };
    let well = "tree well: {size: 3 ft x 3 ft, at: 6 ft from west and 4 ft from north}";
    let post = "post: {size: circle 8 in, at: 2 ft from east and 2 ft from south, edge: existing concrete}";
    let (pour, plan) = cut(&[well]);
    assert_eq!(
        pour,
        "patio 24 × 16 ft around the tree well (3 × 3 ft), 4 in thick"
    );
    assert!(plan.contains("left open: Tree well, 3 × 3 ft"), "{plan}");
    let (pour, plan) = cut(&[well, post]);
    let both =
        "patio 24 × 16 ft around the tree well (3 × 3 ft) and the post (8 in across), 4 in thick";
    assert_eq!(pour, both);
    assert!(plan.contains("left open: Post, 8 in across"), "{plan}");
    let posts: Vec<String> = (1..=4)
        .map(|i| {
            format!(
                "post {i}: {{size: circle 8 in, at: {} ft from west and 2 ft from south}}",
                4 * i
            )
        })
        .collect();
    let posts: Vec<&str> = posts.iter().map(String::as_str).collect();
    let (pour, _) = cut(&posts);
    assert_eq!(
        pour,
        "patio 24 × 16 ft around 4 openings (as drawn), 4 in thick"
    );
}
