//! How long a quote takes: estimates and PDFs a second in the library, and one whole process.

use std::path::{Path, PathBuf};
use std::process::Command;

use criterion::{Criterion, Throughput, criterion_group, criterion_main};
use flatwork::costing::{self, Offer};
use flatwork::documents::{
    offering::{self, Offering},
    quote_document,
};
use flatwork::outside::desk::{self, Desk};
use flatwork::press::{layout::style::Look, pdf};
use flatwork::reading::{Problems, Sources};

fn takeoff() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("demo-quotes/garden-patio.yaml")
}

fn laid_out() -> Desk {
    let (mut sources, mut problems) = (Sources::default(), Problems::default());
    desk::lay_out(&takeoff(), None, None, &mut sources, &mut problems).expect("the demo is right")
}

/// Measured, ordered and priced in every combination; the files are read already.
fn priced(desk: &Desk) -> Offer {
    costing::offer(
        &desk.takeoff,
        &desk.book,
        &desk.business,
        &desk.days,
        &mut Problems::default(),
    )
    .expect("the demo has every price")
}

fn printed(desk: &Desk, offer: &Offer) -> Vec<u8> {
    let of = Offering {
        number: None,
        photos: &[],
        takeoff: &desk.takeoff,
        business: &desk.business,
        rules: &desk.book.rules,
        offer,
        quoted: desk.quoted,
        pour: desk.days[0].day,
    };
    let figures = offering::figures(of, Look::default().accent);
    let document = quote_document(&offering::view(of), &figures).expect("the demo can be set");
    pdf::write(&document)
}

fn quote(criterion: &mut Criterion) {
    let desk = laid_out();
    let offer = priced(&desk);
    let each = u64::try_from(offer.by_choice.len()).expect("at most 64");
    let mut group = criterion.benchmark_group("garden-patio");
    group.sample_size(20);
    group.throughput(Throughput::Elements(each));
    group.bench_function("estimates", |bencher| bencher.iter(|| priced(&desk)));
    group.throughput(Throughput::Elements(1));
    group.bench_function("pdf", |bencher| bencher.iter(|| printed(&desk, &offer)));
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

criterion_group!(benches, quote);
criterion_main!(benches);
