//! `flatwork verify`: whether every record still says what it said.

use std::process::ExitCode;

use super::target::{In, shown};
use super::{PROBLEMS, held, say};
use crate::outside::{business_folder, records, verify};
use crate::reading::{Problems, Sources};

#[derive(Debug, clap::Args)]
pub(super) struct Arguments {
    #[command(flatten)]
    place: In,
    /// Writes PDFs that are lost and come out as they were
    #[arg(long)]
    mend: bool,
}

pub(super) fn run(arguments: &Arguments) -> ExitCode {
    let (mut sources, mut problems) = (Sources::default(), Problems::default());
    let report = arguments.place.home(&mut problems).and_then(|home| {
        let (business, _) = business_folder::business(&home, &mut sources, &mut problems)?;
        let report = verify::verify(&home, &business, &mut problems);
        Some((home, report))
    });
    let Some((home, report)) = report else {
        return shown(None, &problems, &sources);
    };
    for fault in &report.faults {
        say(&format!("{fault}\n"));
    }
    let mut left = report.faults.len();
    if arguments.mend && !report.lost.is_empty() {
        let Some(held) = held(&records::folder(&home), &mut problems) else {
            return shown(None, &problems, &sources);
        };
        for (name, bytes) in &report.lost {
            match held.publish(&format!("{name}.pdf"), bytes) {
                Ok(()) => {
                    left -= 1;
                    say(&format!("written again: {name}.pdf\n"));
                }
                Err(error) => eprintln!("cannot write {name}.pdf: {error}"),
            }
        }
    }
    say(&format!(
        "{} records, {} PDFs; figures of {} quotes and changes worked out again, {} PDFs made again\n",
        report.records, report.pdfs, report.figures, report.pages
    ));
    if left == 0 {
        say("all sound\n");
        ExitCode::SUCCESS
    } else {
        say(&format!("{left} to look at\n"));
        ExitCode::from(PROBLEMS)
    }
}
