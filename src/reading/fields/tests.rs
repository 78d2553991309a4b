//! Field tables at work on small maps.

use super::*;
use crate::reading::place::Sources;
use crate::reading::yaml;
use crate::values::Unreadable;

const SLAB: FieldTable = FieldTable {
    name: "a slab",
    before: &[],
    includes: &[],
    fields: &[
        field("thickness", "4 in"),
        field("finish", "broom"),
        field("curb", "yes"),
    ],
};

const fn field(key: &'static str, example: &'static str) -> Field {
    Field {
        key,
        kind: "text",
        if_left_out: IfLeftOut::Required,
        meaning: "",
        example,
        below: Below::Nothing,
    }
}

/// Even numbers only, to see a value type refuse.
#[derive(Debug, PartialEq)]
struct Even(u32);

impl Written for Even {
    const KIND: &'static str = "even number";

    fn written(text: &str) -> Result<Self, Unreadable> {
        let number: u32 = text.parse().unwrap_or(1);
        if number.is_multiple_of(2) {
            return Ok(Even(number));
        }
        Err(Unreadable {
            code: "not-even",
            message: format!("`{text}` is not even"),
            help: "add one".to_owned(),
            part: None,
        })
    }
}

/// The problems of reading `patio` with `walk`, as `code marked-text message; help`.
#[track_caller]
fn case(text: &str, walk: fn(&Fields, &mut Problems), expected: &[&str]) {
    let (mut sources, mut problems) = (Sources::default(), Problems::new());
    let file = sources.add("job.yaml", text.to_owned());
    let root = yaml::read(file, &sources, &mut problems).expect("a tree");
    let Value::Map(entries) = &root.value else {
        panic!("the top is a map");
    };
    if let Ok(fields) = entries[0].node.fields(&SLAB, &mut problems) {
        walk(&fields, &mut problems);
    }
    let found: Vec<String> = problems
        .iter()
        .map(|problem| {
            let marked = problem.place.map_or("", |place| sources.slice(place));
            let help = problem.help.as_deref().unwrap_or("");
            format!("{} {marked} | {} | {help}", problem.code, problem.message)
        })
        .collect();
    assert_eq!(found, expected, "{text}");
}

fn nothing(_: &Fields, _: &mut Problems) {}

#[test]
fn unknown_keys_are_reported_with_the_key_that_was_meant() {
    case(
        "patio: {thicknes: 4 in, colour: red}",
        nothing,
        &[
            "unknown-key thicknes | a slab has no key `thicknes` | did you mean `thickness`?",
            "unknown-key colour | a slab has no key `colour` | its keys are thickness, finish, curb",
        ],
    );
}

#[test]
fn what_is_no_map_is_reported_with_an_example() {
    case(
        "patio: 4 in",
        nothing,
        &[
            "not-keys 4 in | a slab is a group of keys, but this is a single value | write keys below it, such as `thickness: 4 in`",
        ],
    );
    case(
        "patio:",
        nothing,
        &[
            "not-keys patio | a slab is a group of keys, but this is empty | write keys below it, such as `thickness: 4 in`",
        ],
    );
    case(
        "patio:\n  - 4 in",
        nothing,
        &[
            "not-keys patio | a slab is a group of keys, but this is a list | write keys below it, such as `thickness: 4 in`",
        ],
    );
    case(
        "patio:\n  thickness:4 in",
        nothing,
        &[
            "not-keys thickness:4 in | a slab is a group of keys, but this is a single value | a colon after a key needs a space: `thickness: ` and then its value",
        ],
    );
}

#[test]
fn a_missing_key_is_reported_at_the_key_of_its_map() {
    let walk = |fields: &Fields, problems: &mut Problems| {
        assert!(fields.required("thickness", problems).is_err());
        assert!(fields.need::<Even>("finish", problems).is_err());
    };
    case(
        "patio: {curb: yes}",
        walk,
        &[
            "missing-key patio | a slab needs a key `thickness` | write, for example, `thickness: 4 in`",
            "missing-key patio | a slab needs a key `finish` | write, for example, `finish: broom`",
        ],
    );
    case(
        "patio: {thicknes: 4 in, finish: 2, curb: yes}",
        |fields, problems| {
            assert!(fields.required("thickness", problems).is_err());
        },
        &["unknown-key thicknes | a slab has no key `thicknes` | did you mean `thickness`?"],
    );
}

#[test]
fn values_are_read_or_reported_at_their_place() {
    case(
        "patio: {thickness: 7, finish: 8}",
        |fields, problems| {
            assert_eq!(fields.read::<Even>("thickness", problems), None);
            let finish = fields.read::<Even>("finish", problems);
            assert_eq!(finish.map(|finish| finish.value), Some(Even(8)));
            assert_eq!(fields.read::<Even>("curb", problems), None);
        },
        &["not-even 7 | `7` is not even | add one"],
    );
    case(
        "patio:\n  thickness:\n  finish: [broom]",
        |fields, problems| {
            assert_eq!(fields.read::<String>("thickness", problems), None);
            assert_eq!(fields.read::<String>("finish", problems), None);
        },
        &[
            "empty-value thickness | `thickness` is empty | write a value after the colon, or take the line out",
            "not-a-value finish | `finish` is a single value, but this is a list | write it on one line, after the colon",
        ],
    );
}

#[test]
fn yes_and_no_are_read_and_nothing_else() {
    #[track_caller]
    fn yes(text: &str, expected: Option<bool>) {
        let (mut sources, mut problems) = (Sources::default(), Problems::new());
        let file = sources.add("job.yaml", format!("curb: {text}"));
        let root = yaml::read(file, &sources, &mut problems).expect("a tree");
        let fields = root.fields(&SLAB, &mut problems).expect("a map");
        let found = fields.yes("curb", &mut problems).map(|found| found.value);
        assert_eq!(
            (found, problems.len()),
            (expected, usize::from(expected.is_none()))
        );
    }

    yes("yes", Some(true));
    yes("no", Some(false));
    yes("true", Some(true));
    yes("False", Some(false));
    yes("on", None);
    yes("y", None);
    yes("", None);
}

#[test]
fn what_is_reported_already_is_not_reported_twice() {
    case(
        "patio:\n  thickness: 4: in\n  finish: #4\n  colour: #red\n",
        |fields, problems| {
            assert!(fields.need::<Even>("thickness", problems).is_err());
            assert_eq!(fields.read::<String>("finish", problems), None);
        },
        &[
            "colon-in-value 4: in | a value with `: ` in it needs quotes | write `thickness: \"4: in\"`",
            "comment-swallowed #4 | `#4` is a comment to YAML, so the value ends before it | write `no. 4`, or put quotes round the whole value; if it is a comment, put a space after the `#`",
            "comment-swallowed #red | `#red` is a comment to YAML, so the value ends before it | put quotes round the whole value; if it is a comment, put a space after the `#`",
        ],
    );
}
