//! How long a quote takes: estimates and PDFs a second in the library, one whole process, and a
//! job of 40 slabs with 64 combinations.

mod crowd;

use std::path::{Path, PathBuf};
use std::process::Command;

use criterion::{Criterion, Throughput, criterion_group, criterion_main};
use flatwork::inside::costing::{self, Offer};
use flatwork::inside::documents::views::office::Sheet;
use flatwork::inside::documents::{
    cost_sheet::cost_sheet,
    document,
    offering::{self, Offering},
};
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
    costing::offer(&desk.takeoff, desk.pricing(), &mut Problems::default())
        .expect("every price is there")
}

fn printed(desk: &Desk, offer: &Offer) -> Vec<u8> {
    let of = Offering {
        number: None,
        replaces: None,
        photos: &[],
        takeoff: &desk.takeoff,
        business: &desk.business,
        rules: &desk.book.rules,
        offer,
        quoted: desk.quoted,
        pour: desk.days[0].day,
    };
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
    let (view, figures) = cost_sheet(&sheet, &[], Look::default().accent);
    pdf::write(&document(&view, &figures).expect("the demo can be set"))
}

fn quote(criterion: &mut Criterion) {
    let (desk, sources) = laid_out();
    let offer = priced(&desk);
    let each = u64::try_from(offer.by_choice.len()).expect("at most 64");
    let mut group = criterion.benchmark_group("garden-patio");
    group.sample_size(20);
    group.throughput(Throughput::Elements(each));
    group.bench_function("estimates", |bencher| bencher.iter(|| priced(&desk)));
    group.throughput(Throughput::Elements(1));
    group.bench_function("pdf", |bencher| bencher.iter(|| printed(&desk, &offer)));
    group.bench_function("cost sheet", |bencher| {
        bencher.iter(|| cost_printed(&desk, &offer, &sources));
    });
    let out = Path::new(env!("CARGO_TARGET_TMPDIR")).join("bench.pdf");
    group.bench_function("whole process", |bencher| {
        bencher.iter(|| {
            let done = Command::new(env!("CARGO_BIN_EXE_flatwork"))
                .arg("quote")
                .arg(takeoff())
                .arg("-o")
                .arg(&out)
                .output()
                .expect("the program starts");
            assert!(done.status.success());
        });
    });
    group.finish();
}

/// Reads and resolves a job of 40 slabs, and prices it once and in all its combinations.
fn many_slabs(criterion: &mut Criterion) {
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
    let mut group = criterion.benchmark_group("40 slabs");
    group.sample_size(20);
    group.bench_function("read and resolved", |bencher| bencher.iter(read));
    group.bench_function("one estimate", |bencher| bencher.iter(|| priced(&alone)));
    group.bench_function("64 combinations", |bencher| bencher.iter(|| priced(&desk)));
    group.finish();
}

criterion_group!(benches, quote, many_slabs);
criterion_main!(benches);
