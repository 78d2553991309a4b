//! What texts become, and what is said about those that become nothing.

use super::*;
use crate::reading::caret;
use std::fmt::Write as _;

fn read_text(text: &str) -> (Read<Node>, Sources, Problems) {
    let (mut sources, mut problems) = (Sources::default(), Problems::new());
    let file = sources.add("job.yaml", text.to_owned());
    let root = read(file, &sources, &mut problems);
    (root, sources, problems)
}

/// The tree in one line: text in quotes, `~` for nothing, `!` where a problem was reported.
fn drawn(node: &Node) -> String {
    let list = |parts: Vec<String>| parts.join(", ");
    let reported = if node.reported { "!" } else { "" };
    let value = match &node.value {
        Value::Nothing => "~".to_owned(),
        Value::Text(text) => format!("{text:?}"),
        Value::List(items) => format!("[{}]", list(items.iter().map(drawn).collect())),
        Value::Map(entries) => {
            let entry = |entry: &crate::reading::tree::Entry| {
                format!("{}: {}", entry.key, drawn(&entry.node))
            };
            format!("{{{}}}", list(entries.iter().map(entry).collect()))
        }
    };
    format!("{reported}{value}")
}

#[test]
fn scalars_are_the_text_as_written() {
    #[track_caller]
    fn case(text: &str, tree: &str) {
        let (root, sources, problems) = read_text(text);
        assert!(
            problems.is_empty(),
            "{}",
            caret::show_all(&problems, "error", &sources)
        );
        assert_eq!(root.map(|root| drawn(&root)).as_deref(), Ok(tree), "{text}");
    }

    case("price: 12.50", r#"{price: "12.50"}"#);
    case(
        "a: 1e3\nb: 0x10\nc: 007",
        r#"{a: "1e3", b: "0x10", c: "007"}"#,
    );
    case("a: yes\nb: true", r#"{a: "yes", b: "true"}"#);
    case("size: 14'-6\" x 3 ft", r#"{size: "14'-6\" x 3 ft"}"#);
    case("a: \"#4 bars\"", r##"{a: "#4 bars"}"##);
    case("a:\nb: ~\nc: null\nd: ''", r#"{a: ~, b: ~, c: ~, d: ""}"#);
    case(
        "a:\n- b\n- c: d\n  e: f\n",
        r#"{a: ["b", {c: "d", e: "f"}]}"#,
    );
    case("a: {b: c, d: [e, f]}", r#"{a: {b: "c", d: ["e", "f"]}}"#);
    case(
        "a: b # a comment\nc: # another\n  d: e",
        r#"{a: "b", c: {d: "e"}}"#,
    );
    case("a: one\n#4 is no part of it\nb: 1", r#"{a: "one", b: "1"}"#);
    case("a: one\n  two", r#"{a: "one two"}"#);
    case("a: |\n  one\n  two\n", r#"{a: "one\ntwo\n"}"#);
    case(
        "\u{feff}a: b\r\nc:\r\n  d: e\r\n",
        r#"{a: "b", c: {d: "e"}}"#,
    );
    case("---\na: b", r#"{a: "b"}"#);
    case("a: &x [1, 2]\nb: *x", r#"{a: ["1", "2"], b: ["1", "2"]}"#);
}

#[test]
fn every_key_and_value_knows_its_place() {
    let (root, sources, _) =
        read_text("slabs:\n  patio: 12 ft\n  walk:\n    - 3 ft\n\npour:\nold: &x one\nnew: *x\n");
    let mut found = String::new();
    let root = root.expect("a tree");
    let mut nodes = vec![&root];
    while let Some(node) = nodes.pop() {
        writeln!(
            found,
            "{:?} under {:?}",
            sources.slice(node.place),
            sources.slice(node.heading)
        )
        .expect("a String takes any text");
        match &node.value {
            Value::List(items) => nodes.extend(items),
            Value::Map(entries) => nodes.extend(entries.iter().rev().map(|entry| &entry.node)),
            Value::Text(_) | Value::Nothing => {}
        }
    }
    let expected = r#""slabs:\n  patio: 12 ft\n  walk:\n    - 3 ft\n\npour:\nold: &x one\nnew" under ""
"patio: 12 ft\n  walk:\n    - 3 ft" under "slabs"
"12 ft" under "patio"
"- 3 ft" under "walk"
"3 ft" under "3 ft"
"pour" under "pour"
"one" under "old"
"one" under "new"
"#;
    assert_eq!(found, expected);
}

/// Each problem as `code line:column-marked text`, then the tree.
#[track_caller]
fn case(text: &str, expected: &[&str]) {
    let (root, sources, problems) = read_text(text);
    let mut found: Vec<String> = Vec::new();
    for problem in problems.sorted() {
        let place = problem.place.expect("a problem of a file has a place");
        let line = sources.line_and_column(place).0;
        let marked = sources.slice(place).to_owned();
        found.push(format!("{} {line} {marked}", problem.code));
        // The sentences are read in the gallery of errors; here only that they are there.
        let help = problem.help.as_ref().map_or(0, String::len);
        assert!(0 < help && !problem.message.ends_with('.'), "{problem:?}");
    }
    found.push(root.map_or("none".to_owned(), |root| drawn(&root)));
    assert_eq!(found, expected, "{text}");
}

#[test]
fn a_file_that_is_no_group_of_keys_is_refused() {
    case("", &["empty-file 1 ", "none"]);
    case("# only a comment\n", &["empty-file 1 ", "none"]);
    case("patio", &["not-keys 1 patio", "none"]);
    case("- patio\n", &["not-keys 1 - patio", "none"]);
    case(
        "a: 1\n---\nb: 2\n",
        &["several-documents 2 ---", r#"{a: "1"}"#],
    );
}

#[test]
fn what_yaml_would_swallow_is_reported() {
    case(
        "bars: #4 at 18 in",
        &["comment-swallowed 1 #4 at 18 in", "{bars: !~}"],
    );
    case(
        "a:\n  bars: #4\nb: 1",
        &["comment-swallowed 2 #4", r#"{a: {bars: !~}, b: "1"}"#],
    );
    case(
        "a:\n  - #4 bars",
        &["comment-swallowed 2 #4 bars", "{a: [!~]}"],
    );
    case(
        "a: pier #4 and more",
        &["comment-swallowed 1 #4 and more", r#"{a: !"pier"}"#],
    );
    case(
        "a: {b: 12 Rd, Town}",
        &["comma-in-value 1 Town", r#"{a: {b: "12 Rd", Town: !~}}"#],
    );
}

#[test]
fn what_yaml_allows_and_nobody_means_is_refused() {
    case(
        "a: 1\nb: 2\na: 3",
        &["duplicate-key 3 a", r#"{a: "1", b: "2"}"#],
    );
    case("a: !b c", &["yaml-tag 1 !b", r#"{a: !"c"}"#]);
    case("a: !b [c]", &["yaml-tag 1 !b", r#"{a: !["c"]}"#]);
    case("<<: {a: b}", &["yaml-merge 1 <<", "{}"]);
    case("[a]: b", &["not-a-key 1 [a]", "{}"]);
    case(": b", &["not-a-key 1 ", "{}"]);
    case("a: *b", &["unknown-alias 1 *b", "{a: !~}"]);
    case("a: &b [*b]", &["alias-in-itself 1 *b", "{a: [!~]}"]);
}

#[test]
fn slips_with_quotes_and_colons_are_named_where_they_stand() {
    case(
        "a: \"Dana\nb: 1",
        &["unclosed-quote 1 \"", r#"{a: !~, b: "1"}"#],
    );
    case(
        "a: \"Dana\nb: \"c\"",
        &["unclosed-quote 1 \"", r#"{a: !~, b: "c"}"#],
    );
    case("a: '14'-6\"'", &["after-quote 1 -6\"'", "{a: !~}"]);
    case("a: \"b\\q\"", &["backslash 1 ", "{a: !~}"]);
    case("a: b: c", &["colon-in-value 1 b: c", "{a: !~}"]);
    case("a: {b: c: d}", &["colon-in-value 1 c: d", "{a: !~}"]);
    case(
        "a: 1\nb:2\nc: 3",
        &["colon-without-space 2 b:2", r#"{a: "1", b: !~, c: "3"}"#],
    );
    case(
        "b:2\nc: 3",
        &["colon-without-space 1 b:2", r#"{b: !~, c: "3"}"#],
    );
    case("a: 1\nb\nc: 2", &["no-key 2 b", r#"{a: "1", c: "2"}"#]);
    case("a: @b", &["needs-quotes 1 @b", "{a: !~}"]);
    case("a: \0", &["stray-character 1 ", "{a: !~}"]);
    case("a: - b", &["list-on-key-line 1 ", "{a: !~}"]);
    case("a: [b\nc: d", &["bracket 1 [", r#"{a: !~, c: "d"}"#]);
    case("a: [b] c\nd: e", &["after-value 1 c", r#"{a: !~, d: "e"}"#]);
}

#[test]
fn crooked_lines_are_named_once() {
    case(
        "a:\n\tb: 1\n\tc: 2",
        &["tab-indent 2 \t", r#"{a: {b: "1", c: "2"}}"#],
    );
    case("a:\n  b: 1\n\tc: 2", &["tab-indent 3 \t", "{a: !~}"]);
    case(
        "a: 1\n  b: 2\n  c: 3\nd: 4",
        &["indentation 2 b: 2", r#"{a: !~, d: "4"}"#],
    );
    case(
        "a:\n  b: 1\n c: 2\nd: 3",
        &["indentation 3 c: 2", r#"{a: !~, d: "3"}"#],
    );
}

#[test]
fn problems_after_the_first_are_found_too() {
    case(
        "items:\n  - item: \"a\n    unit: each\n  - item: b\n    unit: x: y\npour: 1\npour: 2\nbars: #4\n",
        &[
            "unclosed-quote 2 \"",
            "colon-in-value 5 x: y",
            "duplicate-key 7 pour",
            "comment-swallowed 8 #4",
            r#"{items: [{item: !~, unit: "each"}, {item: "b", unit: !~}], pour: "1", bars: !~}"#,
        ],
    );
}

#[test]
fn bombs_are_refused_and_large_honest_files_are_not() {
    let mut bomb = "a0: &a0 [x, x, x, x, x, x, x, x, x, x]\n".to_owned();
    for level in 1..10 {
        let alias = format!("*a{}", level - 1);
        let aliases = vec![alias; 10].join(", ");
        writeln!(bomb, "a{level}: &a{level} [{aliases}]").expect("a String takes any text");
    }
    let fourth = format!("[{}]", ["*a2"; 10].join(", "));
    case(&bomb, &[&format!("too-many-copies 4 {fourth}"), "none"]);

    let deep = format!("a: {}", "[".repeat(5000));
    case(&deep, &["nested-too-deep 1 ", "{a: !~}"]);
    let mut chain = "a0: &a0 [x]\n".to_owned();
    for level in 1..40 {
        writeln!(chain, "a{level}: &a{level} [*a{}]", level - 1).expect("a String takes any text");
    }
    let (_, _, problems) = read_text(&chain);
    assert_eq!(
        problems.iter().next().map(|problem| problem.code),
        Some("nested-too-deep")
    );

    let (root, _, problems) = read_text(&" ".repeat(LARGEST_FILE + 1));
    let codes: Vec<&str> = problems.iter().map(|problem| problem.code).collect();
    assert!(root.is_err());
    assert_eq!(codes, ["file-too-large"]);

    let mut book = "items:\n".to_owned();
    for item in 0..2_000 {
        write!(
            book,
            "  item {item}:\n    unit: each\n    class: material\n    prices:\n      - {{from: 2026-01-01, price: {item}.50}}\n"
        )
        .expect("a String takes any text");
    }
    let (root, sources, problems) = read_text(&book);
    assert!(
        problems.is_empty(),
        "{}",
        caret::show_all(&problems, "error", &sources)
    );
    let Ok(Value::Map(entries)) = root.map(|root| root.value) else {
        panic!("no tree");
    };
    assert!(matches!(&entries[0].node.value, Value::Map(items) if items.len() == 2_000));
}
