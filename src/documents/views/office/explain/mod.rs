//! One figure, followed from dollars down to the tape measure.

mod find;
mod tree;

use super::Sheet;
use crate::reading::{Problems, Read};

/// The trees of everything that `line` names; a name nobody answers to is a problem.
///
/// The job as quoted is asked first, then every other choice of the customer, unless the sheet
/// is about one of them.
pub fn text(sheet: &Sheet<'_>, line: &str, problems: &mut Problems) -> Read<String> {
    let chosen = sheet.chosen().is_some();
    for (choice, priced) in &sheet.offer.by_choice {
        if chosen && *choice != sheet.offer.as_quoted {
            continue;
        }
        let Some(found) = find::find(priced, line) else {
            continue;
        };
        let trees = tree::trees(sheet, priced, &found);
        let taken = sheet.taken(choice);
        return Ok(if *choice == sheet.offer.as_quoted {
            trees
        } else {
            format!(
                "Not in the job as quoted; with {}:\n{trees}",
                taken.join(" + ")
            )
        });
    }
    Err(problems.push(find::unknown(sheet, line)))
}
