//! The quote command as its user meets it: one PDF, the same every time, nothing of cost in it.

use std::path::{Path, PathBuf};
use std::process::{Command, Output};

use flatwork::inside::costing;
use flatwork::inside::documents::offering;
use flatwork::inside::outside::desk::{self, Desk};
use flatwork::inside::outside::files::Files;
use flatwork::inside::reading::Problems;

const DEMOS: [&str; 2] = [
    "demo-quotes/front-walk.yaml",
    "demo-quotes/garden-patio.yaml",
];

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn flatwork(arguments: &[&str]) -> Output {
    let program = Path::new(env!("CARGO_BIN_EXE_flatwork"));
    Command::new(program)
        .current_dir(root())
        .args(arguments)
        .output()
        .expect("the program starts")
}

/// A folder of this test's own, with the demo files in it.
fn folder(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    let _ = std::fs::remove_dir_all(&folder);
    for part in ["demo-quotes", "price-books"] {
        std::fs::create_dir_all(folder.join(part)).unwrap();
        for entry in std::fs::read_dir(root().join(part)).unwrap() {
            let path = entry.unwrap().path();
            if path.extension().is_some_and(|ending| ending == "yaml") {
                std::fs::copy(&path, folder.join(part).join(path.file_name().unwrap())).unwrap();
            }
        }
    }
    folder
}

fn laid_out(demo: &str) -> Desk {
    let mut files = Files::default();
    let on = "2026-05-04".parse().ok();
    let desks = desk::lay_out(&root().join(demo), on, &[], &mut files);
    assert!(files.problems.is_empty(), "{:?}", files.problems);
    desks.unwrap().remove(0)
}

#[test]
fn the_same_input_gives_the_same_bytes() {
    let folder = folder("same-bytes");
    for demo in DEMOS {
        let mut made = Vec::new();
        for name in ["one.pdf", "two.pdf"] {
            let path = folder.join(name);
            let output = flatwork(&[
                "quote",
                demo,
                "--on",
                "2026-05-04",
                "-o",
                path.to_str().unwrap(),
            ]);
            assert!(
                output.status.success(),
                "{}",
                String::from_utf8_lossy(&output.stderr)
            );
            made.push(std::fs::read(path).unwrap());
        }
        assert!(made[0].starts_with(b"%PDF-"));
        assert!(made[0] == made[1], "{demo} differs between two runs");
    }
}

#[test]
fn a_problem_leaves_the_older_quote_as_it_was() {
    let folder = folder("older-quote");
    let job = folder.join("demo-quotes/front-walk.yaml");
    let pdf = folder.join("demo-quotes/front-walk.pdf");
    std::fs::write(&pdf, "an older quote").unwrap();
    let files = || {
        let all = std::fs::read_dir(folder.join("demo-quotes"));
        all.unwrap().count()
    };
    let before = files();
    std::fs::write(&job, "customer: Ira Sample\nslabs:\n  walk: 28 x 4\n").unwrap();
    let output = flatwork(&["quote", job.to_str().unwrap(), "--on", "2026-05-04"]);
    assert_eq!(output.status.code(), Some(1));
    assert_eq!(std::fs::read(&pdf).unwrap(), b"an older quote");
    assert_eq!(files(), before, "nothing half-written lies about");
}

#[test]
fn a_pour_that_cannot_be_finished_is_named_in_the_summary() {
    let folder = folder("no-pour");
    let job = folder.join("demo-quotes/too-much.yaml");
    let text = "customer: Ira Sample\npour: 2026-06-16\nexposure: frost\nslabs:\n  walk: {size: 25 ft x 31 ft, kind: slab, finish: broom}\n";
    std::fs::write(&job, text).unwrap();
    let job = job.to_str().unwrap();
    let output = flatwork(&["quote", job, "--on", "2026-05-04", "--dry-run"]);
    let said = String::from_utf8(output.stdout).unwrap();
    let line = "pour        cannot be finished as written: see pour-too-long";
    assert!(said.lines().any(|one| one == line), "{said}");
    let output = flatwork(&["cost", job, "--on", "2026-05-04"]);
    let said = String::from_utf8(output.stdout).unwrap();
    assert!(said.lines().any(|one| one.ends_with("  finish")), "{said}");
}

#[test]
fn a_quote_never_lands_on_a_file_it_is_made_from() {
    let folder = folder("own-input");
    let job = folder.join("demo-quotes/front-walk.yaml");
    let before = std::fs::read(&job).unwrap();
    let job = job.to_str().unwrap();
    assert_eq!(
        flatwork(&["quote", job, "--on", "2026-05-04", "-o", job])
            .status
            .code(),
        Some(1)
    );
    assert_eq!(std::fs::read(job).unwrap(), before);
}

/// Whatever the customer's view holds, no figure of the office is among its words.
#[test]
fn the_customer_never_sees_cost_margin_or_supplier() {
    for demo in DEMOS {
        let desk = laid_out(demo);
        let offer = desk.offer(&mut Problems::default()).unwrap();
        let of = desk.offering(&offer);
        let shown = serde_json::to_string(&offering::view(of)).unwrap();
        let figures = offering::figures(of, flatwork::inside::press::drawing::Rgb(0, 0, 0));
        let shown = format!("{shown}{figures:?}");
        let mut secrets: Vec<String> = vec![
            desk.book.name.clone(),
            "arkup".into(),
            "argin".into(),
            "verhead".into(),
        ];
        for priced in offer.by_choice.values() {
            let totals = priced.totals();
            // What is charged with tax is the customer's to know; the price before tax is not a secret either.
            secrets
                .extend([totals.cost, totals.direct].map(flatwork::inside::values::Money::plain));
            secrets.extend(
                priced
                    .lines
                    .iter()
                    .filter(|line| line.side != costing::Tier::Tax)
                    .map(|line| line.money().plain())
                    .filter(|text| 6 < text.len()),
            );
        }
        // An option's title is the owner's own word to the customer, even where the book says the same.
        let offered = |key: &String| {
            let added = desk
                .takeoff
                .options
                .iter()
                .flat_map(|group| &group.options)
                .flat_map(|option| &option.add);
            added.into_iter().any(|extra| extra.name.value == *key)
        };
        secrets.extend(
            desk.book
                .items
                .iter()
                .filter(|(key, _)| !offered(key))
                .map(|(key, item)| item.called(key).to_owned()),
        );
        for secret in secrets {
            assert!(!shown.contains(&secret), "{demo} shows `{secret}`");
        }
    }
}

/// The parts a homeowner adds up by hand: payments make the total, a choice makes its new total.
#[test]
fn what_is_printed_adds_up_to_what_is_printed() {
    fn cents(text: &str) -> i64 {
        let digits: String = text.chars().filter(char::is_ascii_digit).collect();
        let sign = if text.contains("takes off") { -1 } else { 1 };
        sign * digits.parse::<i64>().unwrap()
    }
    for demo in DEMOS {
        let desk = laid_out(demo);
        let offer = desk.offer(&mut Problems::default()).unwrap();
        let of = desk.offering(&offer);
        let view = offering::view(of);
        let total = cents(&view.total.amount);
        assert_eq!(
            view.payments
                .rows
                .iter()
                .map(|row| cents(&row.amount))
                .sum::<i64>(),
            total
        );
        assert_eq!(cents(&view.acceptance.total), total);
        for item in view
            .choices
            .iter()
            .flat_map(|choices| &choices.groups)
            .flat_map(|group| &group.items)
        {
            assert_eq!(
                total + cents(&item.adds),
                cents(&item.new_total),
                "{}",
                item.title
            );
        }
    }
}

#[test]
fn a_quote_never_takes_the_place_of_what_is_no_file() {
    let folder = folder("not-a-file");
    let place = folder.join("shelf");
    std::fs::create_dir_all(&place).unwrap();
    let output = flatwork(&[
        "quote",
        DEMOS[0],
        "--on",
        "2026-05-04",
        "-o",
        place.to_str().unwrap(),
    ]);
    assert_eq!(output.status.code(), Some(2), "{output:?}");
    assert!(place.is_dir());
    let half = std::fs::read_dir(&folder).unwrap().any(|entry| {
        let name = entry.unwrap().file_name();
        name.to_string_lossy().ends_with(".writing")
    });
    assert!(!half, "nothing half written is left");
}
