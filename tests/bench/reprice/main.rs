//! How long it takes to re-price very many quotes, beside the least it could take and beside a
//! script that does the sums. One run measures all of them, so that they can be compared.
//!
//! `cargo bench --bench reprice`; `QUOTES=2000` takes another number than 10,000.

mod records;

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::{Duration, Instant};

use flatwork::inside::office::quote_excerpt::RecordExcerpt;

/// Runs it three times and takes the fastest: what disturbs a machine only ever adds.
fn fastest(mut run: impl FnMut()) -> Duration {
    let once = |()| {
        let start = Instant::now();
        run();
        start.elapsed()
    };
    [(); 3].map(once).into_iter().min().unwrap_or_default()
}

fn flatwork(folder: &Path, line: &[&str]) -> Duration {
    fastest(|| {
        let done = Command::new(env!("CARGO_BIN_EXE_flatwork"))
            .arg("reprice")
            .args(line)
            .current_dir(folder)
            .output()
            .expect("the program starts");
        assert!(
            done.status.success(),
            "{}",
            String::from_utf8_lossy(&done.stderr)
        );
    })
}

/// Every record on all cores.
fn each(files: &[PathBuf], look: impl Fn(String) + Sync) -> Duration {
    let cores = std::thread::available_parallelism().map_or(1, std::num::NonZero::get);
    let look = &look;
    fastest(|| {
        std::thread::scope(|scope| {
            for share in files.chunks(files.len().div_ceil(cores)) {
                scope.spawn(move || {
                    for file in share {
                        look(fs::read_to_string(file).expect("a record"));
                    }
                });
            }
        });
    })
}

fn main() {
    let many = std::env::var("QUOTES")
        .ok()
        .and_then(|text| text.parse().ok());
    let many: usize = many.unwrap_or(10_000);
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    let text = |path: &str| fs::read_to_string(here.join(path)).expect("a demo");
    let (business, book) = (
        text("demo-quotes/business.yaml").replace("../price-books/", ""),
        text("price-books/river-road.yaml"),
    );
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("very-many");
    let _ = fs::remove_dir_all(&folder);
    let records = folder.join("records");
    let shop = records::Shop {
        business: &business,
        book: &book,
    };
    let lines = records::make(&records, &shop, many);
    let write = |name: &str, text: &str| fs::write(folder.join(name), text).expect("a file");
    write("business.yaml", &business);
    write("river-road.yaml", &book);
    write("dearer.yaml", &dearer(&book));
    let smaller = dearer(&book).replace("truck: 9 cu yd", "truck: 8 cu yd");
    write("smaller-trucks.yaml", &smaller);
    let takeoffs = folder.join("takeoffs");
    fs::create_dir_all(&takeoffs).expect("a folder");
    let few = many / 10;
    for i in 0..few {
        let name = format!("{i}.yaml");
        fs::write(takeoffs.join(name), records::takeoff(i)).expect("a takeoff");
    }
    write("takeoffs/business.yaml", &business);
    write("takeoffs/river-road.yaml", &book);

    let mut files: Vec<PathBuf> = fs::read_dir(&records)
        .expect("records")
        .map(|entry| entry.expect("a record").path())
        .collect();
    files.sort();
    let bytes: u64 = files
        .iter()
        .filter_map(|file| fs::metadata(file).ok())
        .map(|meta| meta.len())
        .sum();
    println!(
        "{many} quotes, {lines} lines, {} KB each",
        bytes / 1024 / many as u64
    );
    let read = each(&files, |text| drop(std::hint::black_box(text)));
    let parsed = each(&files, |text| {
        let quote_excerpt = RecordExcerpt::at(&text).expect("a sound record");
        let choice = quote_excerpt.what.as_quoted.clone();
        drop(std::hint::black_box(quote_excerpt.what.lines(&choice)));
    });
    let on = ["--on", "2026-05-20"];
    let same = flatwork(&folder, &on);
    let dear = flatwork(&folder, &[&on[..], &["--book", "dearer.yaml"]].concat());
    let script = fastest(|| {
        let done = Command::new("python3")
            .arg(here.join("tests/bench/reprice/script.py"))
            .args([&records, &folder.join("dearer.yaml")])
            .output()
            .expect("python3");
        assert!(
            done.status.success(),
            "{}",
            String::from_utf8_lossy(&done.stderr)
        );
    });
    let rules = flatwork(
        &folder,
        &[&on[..], &["--book", "smaller-trucks.yaml"]].concat(),
    );
    let written = flatwork(&folder, &["takeoffs", on[0], on[1]]);
    let say = |what: &str, time: Duration, of: usize| {
        let micros = time.as_micros() / of as u128;
        println!(
            "{what:<44} {:>8.3} s  {micros:>6} µs each",
            time.as_secs_f64()
        );
    };
    say("read, all cores", read, many);
    say("read and looked at, all cores", parsed, many);
    say("reprice, the same book", same, many);
    say("reprice, a dearer book", dear, many);
    say("a script that does the sums", script, many);
    say("reprice, other trucks: laid out again", rules, many);
    say("reprice, takeoffs", written, few);
    println!(
        "a dearer book: {:.1} times as fast as the script, {:.1} times reading and looking",
        script.as_secs_f64() / dear.as_secs_f64(),
        dear.as_secs_f64() / parsed.as_secs_f64(),
    );
}

/// The same book with every price a twelfth higher, begun in the middle of May.
fn dearer(book: &str) -> String {
    let price = |line: &str| -> Option<String> {
        let (before, rest) = line.split_once("prices: {2026-03-01: ")?;
        let end = rest.find([',', '}'])?;
        let (price, after) = rest.split_at(end);
        let cents: i64 = price.replace('.', "").parse().ok()?;
        let dear = cents + cents / 12;
        let (dollars, cents) = (dear / 100, dear % 100);
        let both = format!("prices: {{2026-03-01: {price}, 2026-05-15: {dollars}.{cents:02}");
        Some(format!("{before}{both}{after}"))
    };
    let lines = book.lines();
    lines
        .map(|line| price(line).unwrap_or_else(|| line.to_owned()) + "\n")
        .collect()
}
