//! `flatwork verify`: whether every record still says what it said.

use super::ran::{Ran, Stop};
use super::target::In;
use crate::outside::files::Files;
use crate::outside::{business_folder, records, verify};

#[derive(Debug, clap::Args)]
pub(super) struct Arguments {
    #[command(flatten)]
    place: In,
    /// Writes PDFs that are lost and come out as they were
    #[arg(long)]
    mend: bool,
}

pub(super) fn run(arguments: &Arguments, files: &mut Files) -> Ran {
    let home = arguments.place.home(&mut files.problems)?;
    let (business, _) = business_folder::business(&home, files)?;
    let report = verify::verify(&home, &business, &mut files.problems);
    let mut said: String = report
        .faults
        .iter()
        .map(|fault| format!("{fault}\n"))
        .collect();
    let mut left = report.faults.len();
    if arguments.mend && !report.lost.is_empty() {
        let held = records::hold(&records::folder(&home), &mut files.problems)?;
        for (name, bytes) in &report.lost {
            match held.publish(&format!("{name}.pdf"), bytes) {
                Ok(()) => {
                    left -= 1;
                    said += &format!("written again: {name}.pdf\n");
                }
                Err(error) => eprintln!("cannot write {name}.pdf: {error}"),
            }
        }
    }
    said += &format!(
        "{} records, {} PDFs; figures of {} quotes and changes worked out again, {} PDFs made again\n",
        report.records, report.pdfs, report.figures, report.pages
    );
    if left == 0 {
        return Ok(said + "all sound\n");
    }
    Err(Stop::Found(said + &format!("{left} to look at\n")))
}
