//! The guide beside the price books lists every rule that is built in, every task and every
//! quantity, as the code knows them. `BLESS=1 cargo test rules` rewrites it.

use std::fmt::Write as _;
use std::fs;
use std::path::Path;

use flatwork::inside::input::book::{Among, Role, TASKS, all_known, task_units};
use flatwork::inside::values::Unit;

fn units(units: &[Unit]) -> String {
    let names: Vec<&str> = units.iter().map(|unit| unit.symbol()).collect();
    names.join(" or ")
}

fn purposes() -> String {
    let mut out = String::from(
        "| purpose | by | goes by | where `use` does not name it |\n|---|---|---|---|\n",
    );
    for one in Role::ALL.map(Role::purpose) {
        let (name, by) = (one.role.name(), units(one.units));
        let left_out = one.left_out.unwrap_or("a job that needs it asks for it");
        writeln!(out, "| `{name}` | {by} | {} | {left_out} |", one.by).unwrap();
    }
    out
}

fn work() -> String {
    let mut out = String::from("| task | measured by |\n|---|---|\n");
    for (task, _) in TASKS {
        writeln!(out, "| `{task}` | {} |", units(&task_units(task))).unwrap();
    }
    out
}

fn quantities() -> String {
    let mut out = String::from("| `for` | by | what has it |\n|---|---|---|\n");
    for known in all_known() {
        let of = match known.among {
            Among::Purposes | Among::Slabs => "each slab",
            Among::Removals => "removal",
            Among::Orders => "each ready-mix order",
            Among::Crew => "the crew; nothing but buying can follow from it",
        };
        let (name, by) = (known.name, known.unit.symbol());
        writeln!(out, "| `{name}` | {by} | {of} |").unwrap();
    }
    out
}

fn due(text: &str) -> String {
    let tables = [
        ("purposes", purposes()),
        ("work", work()),
        ("quantities", quantities()),
    ];
    let mut due = text.to_owned();
    for (name, table) in tables {
        let (before, rest) = due
            .split_once(&format!("<!-- rules: {name} -->\n"))
            .unwrap();
        let (_, after) = rest.split_once("<!-- end -->").unwrap();
        due = format!("{before}<!-- rules: {name} -->\n{table}<!-- end -->{after}");
    }
    due
}

#[test]
fn the_guide_beside_the_books_lists_all_rules() {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("price-books/README.md");
    let text = fs::read_to_string(&file).unwrap();
    let due = due(&text);
    if std::env::var_os("BLESS").is_some() {
        fs::write(&file, due).unwrap();
    } else {
        assert!(
            text == due,
            "price-books/README.md is not what the code says; BLESS=1 rewrites it"
        );
    }
}
