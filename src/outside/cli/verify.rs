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
    let mut said = report.faults.clone();
    let mut left = report.faults.len();
    if arguments.mend && !report.lost.is_empty() {
        let held = records::hold(&records::folder(&home), &mut files.problems)?;
        for (name, bytes) in &report.lost {
            match held.publish(&format!("{name}.pdf"), bytes) {
                Ok(()) => {
                    left -= 1;
                    said.push(format!("written again: {name}.pdf"));
                }
                Err(error) => eprintln!("cannot write {name}.pdf: {error}"),
            }
        }
    }
    said.push(format!(
        "{} records, {} PDFs; figures of {} quotes and changes worked out again, {} PDFs made again",
        report.records, report.pdfs, report.figures, report.pages
    ));
    if left == 0 {
        said.push("all sound\n".to_owned());
        return Ok(said.join("\n"));
    }
    said.push(format!("{left} to look at\n"));
    Err(Stop::Found(said.join("\n")))
}
