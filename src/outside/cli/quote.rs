//! `flatwork quote`.

use std::process::ExitCode;

use super::{Job, with_desk};
use crate::costing;

#[derive(Debug, clap::Args)]
pub(super) struct Arguments {
    #[command(flatten)]
    job: Job,
}

pub(super) fn run(arguments: &Arguments) -> ExitCode {
    with_desk(&arguments.job, |desk, _sources, problems| {
        let offer = costing::offer(
            &desk.takeoff,
            &desk.book,
            &desk.business,
            &desk.days,
            problems,
        )?;
        for line in &offer.quoted().lines {
            println!(
                "{:<40} {:>12}  {}",
                line.title,
                line.money().plain(),
                line.amount.shown()
            );
        }
        println!("{:?}", offer.quoted().totals());
        Some(ExitCode::SUCCESS)
    })
}
