//! What holds for every job, tried on a few hundred random ones.

mod calculator;
mod jobs;
mod workings;

use crate::support::{BOOK, BUSINESS, Shop};
use flatwork::costing::Offer;

/// Prices the jobs of these seeds with the demo's business and book.
fn each(seeds: std::ops::Range<u64>, check: impl Fn(u64, &jobs::Job, &Offer)) {
    let shop = Shop::new(BUSINESS, BOOK);
    for seed in seeds {
        let job = jobs::job(seed);
        check(seed, &job, &shop.offer(&job.text()));
    }
}
