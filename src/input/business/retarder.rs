//! How a sheet of vapor retarder is laid.

use crate::reading::{At, Fields, Problem, Problems};
use crate::values::Length;

/// Width and lap of the sheet; a lap as wide as the sheet would cover nothing.
pub(super) fn read(
    fields: &Fields<'_>,
    problems: &mut Problems,
) -> Option<(At<Length>, At<Length>)> {
    let width: Option<At<Length>> = fields.need("retarder width", problems).ok();
    let lap: Option<At<Length>> = fields.need("retarder lap", problems).ok();
    let (width, lap) = (width?, lap?);
    if lap.value < width.value {
        return Some((width, lap));
    }
    problems.push(
        Problem::new(
            "lap-too-wide",
            format!(
                "sheets `{}` wide that lap `{}` cover nothing",
                width.value, lap.value
            ),
        )
        .at(lap.place)
        .help("a lap of 6 in is usual, on a sheet of 10 ft or more"),
    );
    None
}
