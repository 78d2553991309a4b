//! How long a quote takes: estimates and PDFs in the library, one whole process, and a job of 40
//! slabs with 64 combinations.

mod crowd;

use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::{Duration, Instant};

use flatwork::inside::costing::Offer;
use flatwork::inside::documents::views::office::Sheet;
use flatwork::inside::documents::{cost_document, document, offering};
use flatwork::inside::outside::desk::{self, Desk};
use flatwork::inside::outside::files::Files;
use flatwork::inside::press::{layout::style::Look, pdf};
use flatwork::inside::reading::{Problems, Sources};

fn takeoff() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("demo-quotes/garden-patio.yaml")
}

fn laid_out() -> (Desk, Sources) {
    let mut files = Files::default();
    let desks = desk::lay_out(&takeoff(), None, &[], &mut files);
    (desks.expect("the demo is right").remove(0), files.sources)
}

/// Measured, ordered and priced in every combination; the files are read already.
fn priced(desk: &Desk) -> Offer {
    desk.offer(&mut Problems::default())
        .expect("every price is there")
}

fn printed(desk: &Desk, offer: &Offer) -> Vec<u8> {
    let of = desk.offering(offer);
    let figures = offering::figures(of, Look::default().accent);
    let document = document(&offering::view(of), &figures).expect("the demo can be set");
    pdf::write(&document)
}

/// The office's sheet, with every rise priced anew; advice is left out.
fn cost_printed(desk: &Desk, offer: &Offer, sources: &Sources) -> Vec<u8> {
    let sheet = Sheet {
        takeoff: &desk.takeoff,
        business: &desk.business,
        book: &desk.book,
        quoted: desk.quoted,
        days: &desk.days,
        offer,
        sources,
    };
    let document = cost_document(&sheet, &[], Look::default().accent);
    pdf::write(&document.expect("the demo can be set"))
}

/// Runs it once to warm up and 21 times by the clock; what disturbs a machine only ever adds.
fn measured<T>(what: &str, mut run: impl FnMut() -> T) {
    run();
    let mut times: Vec<Duration> = (0..21)
        .map(|_| {
            let start = Instant::now();
            std::hint::black_box(run());
            start.elapsed()
        })
        .collect();
    times.sort();
    println!(
        "{what:<36} {:>11.3?}, median {:>11.3?}",
        times[0], times[10]
    );
}

fn quote() {
    let (desk, sources) = laid_out();
    let offer = priced(&desk);
    let many = offer.by_choice.len();
    measured(&format!("garden patio, {many} estimates"), || priced(&desk));
    measured("garden patio, PDF", || printed(&desk, &offer));
    measured("garden patio, cost sheet", || {
        cost_printed(&desk, &offer, &sources)
    });
    let out = Path::new(env!("CARGO_TARGET_TMPDIR")).join("bench.pdf");
    measured("garden patio, whole process", || {
        let done = Command::new(env!("CARGO_BIN_EXE_flatwork"))
            .arg("quote")
            .arg(takeoff())
            .arg("-o")
            .arg(&out)
            .output()
            .expect("the program starts");
        assert!(done.status.success());
    });
}

/// Reads and resolves a job of 40 slabs, and prices it once and in all its combinations.
fn many_slabs() {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("crowd");
    let shop = Path::new(env!("CARGO_MANIFEST_DIR")).join("demo-quotes/business.yaml");
    let book = Path::new(env!("CARGO_MANIFEST_DIR")).join("price-books/river-road.yaml");
    std::fs::create_dir_all(folder.join("quotes")).expect("a folder");
    std::fs::create_dir_all(folder.join("price-books")).expect("a folder");
    std::fs::copy(shop, folder.join("quotes/business.yaml")).expect("a copy");
    std::fs::copy(book, folder.join("price-books/river-road.yaml")).expect("a copy");
    let file = folder.join("quotes/crowd.yaml");
    std::fs::write(&file, crowd::job(40)).expect("a takeoff");
    let read = || {
        let mut files = Files::default();
        let desks = desk::lay_out(&file, None, &[], &mut files);
        desks
            .unwrap_or_else(|_| panic!("{:#?}", files.problems))
            .remove(0)
    };
    let desk = read();
    let mut alone = read();
    alone.takeoff.options = [].into();
    alone.takeoff.otherwise.clear();
    assert_eq!(priced(&desk).by_choice.len(), 64);
    measured("40 slabs, read and resolved", read);
    measured("40 slabs, one estimate", || priced(&alone));
    measured("40 slabs, 64 combinations", || priced(&desk));
}

fn main() {
    quote();
    many_slabs();
}
