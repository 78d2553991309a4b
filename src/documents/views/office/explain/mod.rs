//! One figure, followed from dollars down to the tape measure.

mod find;
mod tree;

use super::Sheet;
use crate::reading::Problems;

/// The trees of everything that `line` names; a name nobody answers to is a problem.
pub fn text(sheet: &Sheet<'_>, line: &str, problems: &mut Problems) -> Option<String> {
    match find::find(sheet, line) {
        Ok(found) => Some(tree::trees(sheet, &found)),
        Err(problem) => {
            problems.push(problem);
            None
        }
    }
}
