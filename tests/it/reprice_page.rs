//! The page of re-priced quotes: it says what the answers for programs say, and adds up.

use std::path::Path;
use std::process::Command;

use flatwork::inside::values::Money;
use serde_json::Value;

use crate::pdf::{alternatives, printed, spoken};
use crate::records::{Firm, firm};

/// A fall begins with a minus, which no amount that is typed in has.
fn money(text: &str) -> Money {
    let plain = text.replace(',', "");
    let amount: Money = plain
        .trim_start_matches('-')
        .parse()
        .unwrap_or_else(|error| panic!("{text}: {error:?}"));
    if plain.starts_with('-') {
        Money::ZERO - amount
    } else {
        amount
    }
}

fn answer(text: &str) -> Value {
    serde_json::from_str(text).unwrap()
}

fn all<'a>(answer: &'a Value, name: &str) -> &'a Vec<Value> {
    answer[name].as_array().unwrap()
}

/// Headings and the rows of every table, cell by cell, as they are heard.
fn rows(page: &[u8]) -> Vec<Vec<String>> {
    let mut rows: Vec<Vec<String>> = Vec::new();
    // The depth of the open cell; what is deeper belongs to it.
    let mut open = None;
    for line in spoken(page) {
        let words = line.trim_start();
        let depth = line.len() - words.len();
        match words {
            "TR" => rows.push(Vec::new()),
            "TH" | "TD" => {
                rows.last_mut().unwrap().push(String::new());
                open = Some(depth);
            }
            "H2" => {
                rows.push(vec![String::new()]);
                open = Some(depth);
            }
            _ if open.is_none_or(|cell| depth <= cell) => open = None,
            _ => {
                let cell = rows.last_mut().and_then(|row| row.last_mut()).unwrap();
                let words = words.trim_matches('"').trim();
                if words != "P" && words != "Figure" && !words.is_empty() {
                    cell.push_str(if cell.is_empty() { "" } else { " " });
                    cell.push_str(words);
                }
            }
        }
    }
    rows
}

/// The rows of the causes: those behind the heading, up to the sum.
fn causes(page: &[u8]) -> Vec<Vec<String>> {
    let rows = rows(page).into_iter();
    let mut behind = rows.skip_while(|row| row[0] != "Why, over all quotes");
    behind.next();
    let mut found: Vec<Vec<String>> = Vec::new();
    for row in behind {
        let last = row[0] == "Together";
        found.push(row);
        if last {
            break;
        }
    }
    found
}

/// All causes of all quotes.
fn sum_of_causes(answer: &Value) -> Money {
    let causes = all(answer, "quotes")
        .iter()
        .flat_map(|quote| all(quote, "causes"));
    causes
        .map(|cause| money(cause["by"].as_str().unwrap()))
        .sum()
}

#[track_caller]
fn adds_up(rows: &[Vec<String>], sum: Money) {
    let (total, parts) = rows.split_last().expect("causes");
    let of = |row: &Vec<String>| money(row.last().unwrap());
    assert_eq!(parts.iter().map(of).sum::<Money>(), sum, "{rows:?}");
    assert_eq!(of(total), sum, "{rows:?}");
}

fn read(firm: &Firm, name: &str) -> Vec<u8> {
    std::fs::read(firm.path(name)).unwrap()
}

/// Three quotes on record, the second signed, one of them cut short on disk.
fn dearer(name: &str) -> Firm {
    let firm = firm(name);
    for job in ["one", "two", "three", "one"] {
        firm.done(&format!(
            "quote {job}.yaml --issue --another --on 2026-05-04"
        ));
    }
    firm.done("accept 2026-0042 --by 'Dana Example' --on 2026-05-06");
    firm.done("book set ready-mix 260 --from 2026-05-01 --book book.yaml");
    let record = firm.path("records/2026-0044.01.quote.json");
    let text = std::fs::read_to_string(&record).unwrap();
    std::fs::write(&record, &text[..text.len() / 2]).unwrap();
    firm
}

#[test]
fn the_page_says_what_the_answer_says() {
    let firm = dearer("reprice-page");
    let line = "reprice --on 2026-05-07 --what-if labor=+5%";
    let said = firm.done(&format!("{line} -o page.pdf"));
    let alone = firm.done(line);
    assert_eq!(said, format!("{alone}\npage  page.pdf\n"));
    let (page, answer) = (
        read(&firm, "page.pdf"),
        answer(&firm.done(&format!("{line} --format json"))),
    );
    let rows = rows(&page);
    let quotes = all(&answer, "quotes");
    assert_eq!(quotes.len(), 3);
    let first = rows.iter().position(|row| row.len() == 9).unwrap() + 1;
    for (quote, row) in quotes.iter().zip(&rows[first..]) {
        let text = |name: &str| quote[name].as_str().unwrap().to_owned();
        let margin = format!("  {}  ", row[6]);
        let line = alone.lines().find(|line| line.contains(&text("number")));
        assert!(line.unwrap().contains(&margin), "{row:?}");
        let days = match quote["state"].as_str() {
            Some("open") => quote["days_left"].to_string(),
            _ => "–".to_owned(),
        };
        let expected = [
            format!("{} {}", text("number"), text("customer")),
            days,
            text("old_cost"),
            text("new_cost"),
            text("old_price"),
            text("new_price"),
            row[6].clone(),
            String::new(),
            text("verdict"),
        ];
        let shown: Vec<String> = row
            .iter()
            .map(|cell| cell.replace(',', "").replace('\u{a0}', " "))
            .collect();
        assert_eq!(shown, expected.map(|cell| cell.replace(',', "")));
    }
    adds_up(&causes(&page), sum_of_causes(&answer));
    let heard = spoken(&page).join("\n").replace(',', "");
    for name in ["open_quotes_cost_more_by", "signed_work_costs_more_by"] {
        let amount = format!("\"${}\"", answer[name].as_str().unwrap());
        assert!(heard.contains(&amount), "{amount}");
    }
    for words in [
        "Supposed: ",
        "labor: up 5%",
        "Could not be priced",
        "2026-0044:",
        "cut short",
    ] {
        assert!(
            heard.to_lowercase().contains(&words.to_lowercase()),
            "{words}"
        );
    }
}

/// The rows go on over pages, each under the heads of their columns and the words whose it is.
#[test]
fn every_page_says_whose_it_is_and_heads_its_columns() {
    let firm = firm("reprice-page-many");
    for number in 0..40 {
        let job =
            format!("customer: Sample {number}, Quillhaven\nslabs: {{slab: 20 ft x 18 ft}}\n");
        std::fs::write(firm.path(&format!("job-{number:02}.yaml")), job).unwrap();
    }
    firm.done("reprice . --on 2026-05-07 -o page.pdf");
    let pages = printed(&read(&firm, "page.pdf"));
    assert!(2 < pages.len(), "{}", pages.len());
    for page in &pages {
        assert_eq!(page.matches("For the office").count(), 2, "{page}");
        let rows = page.matches("Sample").count();
        let heads = page.matches("margin held").count();
        assert_eq!(heads, usize::from(0 < rows), "{page}");
    }
}

#[test]
fn every_bar_is_heard_with_its_margins_and_its_floor() {
    let firm = dearer("reprice-page-bars");
    // Between the floors of the three.
    let line = "reprice --on 2026-05-07 --what-if ready-mix=172";
    firm.done(&format!("{line} -o page.pdf"));
    let answer = answer(&firm.done(&format!("{line} --format json")));
    let heard = alternatives(&read(&firm, "page.pdf"));
    let quotes = all(&answer, "quotes");
    // The key has one, too.
    assert_eq!(heard.len(), quotes.len() + 1, "{heard:?}");
    let floor = rust_decimal::Decimal::from(15);
    let (mut below, mut above) = (0, 0);
    for quote in quotes {
        let number = quote["number"].as_str().unwrap();
        let bar = heard.iter().find(|bar| bar.contains(number)).unwrap();
        let margin: rust_decimal::Decimal = quote["margin_held"].as_str().unwrap().parse().unwrap();
        let stands = floor <= margin;
        assert_eq!(bar.contains("not below your floor of 15%"), stands, "{bar}");
        (below, above) = (below + i32::from(!stands), above + i32::from(stands));
    }
    assert!(0 < below && 0 < above, "{below} below, {above} above");
}

#[test]
fn the_same_answer_is_the_same_page_to_the_byte() {
    let firm = dearer("reprice-page-same");
    firm.done("reprice --on 2026-05-07 -o once.pdf");
    firm.done("reprice --on 2026-05-07 -o twice.pdf");
    assert!(read(&firm, "once.pdf") == read(&firm, "twice.pdf"));
    let other = "reprice --on 2026-05-07 --what-if labor=+1% -o other.pdf";
    firm.done(other);
    assert!(read(&firm, "once.pdf") != read(&firm, "other.pdf"));
}

#[test]
fn many_causes_are_twelve_and_the_rest() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let path = Path::new(env!("CARGO_TARGET_TMPDIR")).join("reprice-causes.pdf");
    let ask = |more: [&str; 2]| {
        let mut command = Command::new(env!("CARGO_BIN_EXE_flatwork"));
        command.current_dir(root);
        command.args(
            "reprice demo-quotes --on 2026-05-04 --book price-books/far-bank.yaml".split(' '),
        );
        let done = command.args(more).output().unwrap();
        assert!(done.status.success(), "{done:?}");
        String::from_utf8(done.stdout).unwrap()
    };
    ask(["-o", path.to_str().unwrap()]);
    let answer = answer(&ask(["--format", "json"]));
    let page = std::fs::read(&path).unwrap();
    let rows = causes(&page);
    assert_eq!(rows.len(), 14);
    assert!(rows[12][0].ends_with(" other causes"), "{:?}", rows[12]);
    adds_up(&rows, sum_of_causes(&answer));
}

#[test]
fn it_never_lands_on_a_file_it_is_made_from() {
    let firm = dearer("reprice-page-input");
    let before = read(&firm, "one.yaml");
    for path in ["one.yaml", "book.yaml", "new.YML"] {
        let line = format!("reprice one.yaml --on 2026-05-07 -o {path}");
        firm.refused(&line, "output-is-input");
        assert!(firm.run(&line).stdout.is_empty());
    }
    std::fs::copy(firm.path("book.yaml"), firm.path("book.txt")).unwrap();
    let line = "reprice one.yaml --book book.txt -o ./book.txt --on 2026-05-07";
    firm.refused(line, "output-is-input");
    assert_eq!(read(&firm, "one.yaml"), before);
    assert_eq!(read(&firm, "book.txt"), read(&firm, "book.yaml"));
    let both = firm.run("reprice --format json -o page.pdf");
    assert_eq!(both.status.code(), Some(2));
    assert!(!firm.path("page.pdf").exists() && !firm.path("new.YML").exists());
}

#[test]
fn without_a_quote_the_page_says_so() {
    let firm = firm("reprice-page-none");
    std::fs::create_dir(firm.path("none")).unwrap();
    std::fs::copy(firm.path("business.yaml"), firm.path("none/business.yaml")).unwrap();
    std::fs::copy(firm.path("book.yaml"), firm.path("none/book.yaml")).unwrap();
    firm.done("reprice none --on 2026-05-07 -o page.pdf");
    let heard = spoken(&read(&firm, "page.pdf")).join("\n");
    assert!(heard.contains("There is no quote to price"), "{heard}");
    assert!(!heard.contains("Why, over all quotes"), "{heard}");
}
