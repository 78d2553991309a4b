//! What holds for every job, tried on a few hundred random ones.

mod book_edits;
mod books;
mod boxes;
mod calculator;
mod causes;
mod growth;
pub mod jobs;
mod odd_shapes;
mod options;
mod shapes;
mod steel;
mod symmetry;
mod totals;
mod workings;

use crate::support::{BOOK, BUSINESS, Shop};
use flatwork::inside::costing::Offer;

thread_local! {
    /// The demo's business and book, read once for each test.
    static SHOP: Shop = Shop::new(BUSINESS, BOOK);
}

/// Prices the jobs of these seeds with the demo's business and book.
fn each(seeds: std::ops::Range<u64>, mut check: impl FnMut(u64, &jobs::Job, &Offer)) {
    for seed in seeds {
        let job = jobs::job(seed);
        let offer = SHOP.with(|shop| shop.offer(&job.text()));
        check(seed, &job, &offer);
    }
}
