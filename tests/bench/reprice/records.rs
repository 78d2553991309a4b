//! A folder of quotes on record, as the program itself would have written them but for the PDFs.

use std::fs;
use std::path::Path;

use flatwork::inside::documents::offering;
use flatwork::inside::input::phrases::Number;
use flatwork::inside::office::record::{Event, Happened, Input, InputKind, Pdf, Quote};
use flatwork::inside::outside::desk;
use flatwork::inside::outside::files::Files;
use flatwork::inside::outside::quote_record::quote_record;
use flatwork::inside::outside::records::JobRecords;
use flatwork::inside::values::Day;

/// Where a business with its book lies.
pub struct Shop<'a> {
    pub business: &'a str,
    pub book: &'a str,
}

/// A takeoff of its own for each number: other sizes, other people, some with options.
pub fn takeoff(i: usize) -> String {
    let (long, wide, walk) = (14 + i % 11, 10 + i % 7, 12 + i % 19);
    let options = match i % 3 {
        0 => "",
        1 => "options: [Clear sealer on the patio: {add: [clear sealer: 440 sq ft]}]\n",
        _ => {
            "options:\n  - No walk: {drop: [walk]}\n  - Clear sealer: {add: [clear sealer: 440 sq ft]}\n"
        }
    };
    let pour = 1 + i % 28;
    format!(
        "job: Job {i}
title: A patio and a walk behind your house
customer: {{name: Customer {i}, address: \"{i} Sample Lane, Quillhaven\", phone: 555-0117}}
measured: 2026-04-28
quoted: 2026-05-04
pour: 2026-06-{pour:02}
exposure: frost
slabs:
  patio:
    kind: driveway
    size: {wide} ft x {long} ft
    fiber: micro
    fall: 1/4 in per ft west
    boxes: [cleanout 8 in: 4 ft from west and 3 ft from south]
  walk:
    size: 4 ft x {walk} ft
    beside: patio, north edge, 2 ft from west end
    edges: {{south: isolated, north: house}}
    fall: 1/4 in per ft west
remove:
  - old patio: {long} ft x 10 ft x 4 in
  - gravel and soil: {{size: {wide} ft x 30 ft x 9 in, of: soil}}
extra: [topsoil: 1.35 cu yd, small loader: 1 day, plate compactor: 1 day]
site: {{truck over: driveway, washout: hauled, backfill: ours}}
{options}"
    )
}

/// Writes `many` quotes of May 4, all open, one number each; answers how many lines each has
/// in the middle.
pub fn make(folder: &Path, shop: &Shop<'_>, many: usize) -> usize {
    fs::create_dir_all(folder).expect("a folder");
    let cores = std::thread::available_parallelism().map_or(1, std::num::NonZero::get);
    let share = many.div_ceil(cores);
    let quotes: Vec<Quote> = std::thread::scope(|scope| {
        let threads: Vec<_> = (0..cores)
            .map(|core| {
                let numbers = core * share..((core + 1) * share).min(many);
                scope.spawn(move || numbers.map(|i| quote(i, shop)).collect::<Vec<_>>())
            })
            .collect();
        let done = threads.into_iter();
        done.flat_map(|thread| thread.join().expect("a quote"))
            .collect()
    });
    let mut counts: Vec<usize> = quotes
        .iter()
        .map(|quote| quote.combinations[0].lines.len())
        .collect();
    let day: Day = "2026-05-04".parse().expect("a day");
    let mut previous = None;
    for (i, mut quote) in quotes.into_iter().enumerate() {
        let number = format!("2026-{:05}", i + 1);
        let number = Number::written(&number).expect("a number");
        let row = JobRecords::new(number, previous);
        let name = row.next(Event::Quote);
        quote.pdf = Some(Pdf {
            name: format!("{name}.pdf"),
            sha256: "0".repeat(64),
        });
        let text = row.record(day, Happened::Quote(Box::new(quote))).to_text();
        previous = flatwork::inside::office::chain::seal(&text).map(str::to_owned);
        fs::write(folder.join(format!("{name}.json")), text).expect("a record");
    }
    counts.sort_unstable();
    counts.get(many / 2).copied().unwrap_or(0)
}

fn quote(i: usize, shop: &Shop<'_>) -> Quote {
    let mut files = Files::default();
    let texts = [
        Input::new(InputKind::Takeoff, "job.yaml", &takeoff(i)),
        Input::new(InputKind::Business, "business.yaml", shop.business),
        Input::new(InputKind::PriceBook, "book.yaml", shop.book),
    ];
    let day = "2026-05-04".parse().expect("a day");
    let desk = desk::lay_out_again(texts.each_ref(), day, &mut files).expect("a sound job");
    let offer = desk.offer(&mut files.problems).expect("a price for all");
    let view = offering::view(desk.offering(&offer));
    quote_record(&desk, &offer, &view, 1, &files)
}
