//! Dowels and ties on the plan: short strokes across the edge they cross.

use super::kinds::Crossed;
use super::sheet::{Layer, Sheet};
use crate::documents::figures::pen::{INK, SOLID};
use crate::press::drawing::{PagePoint, point};

/// From one stroke to the next.
const APART: f32 = 9.0;
/// How long a stroke is; one that crosses a strip reaches out of it on both sides.
const LONG: f32 = 4.0;
const OVER_STRIP: f32 = 8.0;

/// Strokes at even distances along a line of points; ties are drawn thicker than dowels.
pub(super) fn draw(
    sheet: &mut Sheet,
    layer: Layer,
    line: &[PagePoint],
    crossed: Crossed,
    over_strip: bool,
) {
    let width = match crossed {
        Crossed::Nothing => return,
        Crossed::Dowels => 1.0,
        Crossed::Ties => 2.2,
    };
    let half = if over_strip { OVER_STRIP } else { LONG } / 2.0;
    // So far to the first stroke; half a space, so that none stands on a corner.
    let mut ahead = APART / 2.0;
    for pair in line.windows(2) {
        let (dx, dy) = (pair[1].x - pair[0].x, pair[1].y - pair[0].y);
        let long = libm::sqrtf(dx * dx + dy * dy);
        if long <= 0.0 {
            continue;
        }
        let (ux, uy) = (dx / long, dy / long);
        while ahead < long {
            let middle = point(pair[0].x + ux * ahead, pair[0].y + uy * ahead);
            let ends = [
                point(middle.x - uy * half, middle.y + ux * half),
                point(middle.x + uy * half, middle.y - ux * half),
            ];
            sheet.line(layer, &ends, INK, width, SOLID);
            ahead += APART;
        }
        ahead -= long;
    }
}
