//! Dowels and ties on the plan: short strokes across the edge they cross.

use super::sheet::{INK, Layer, SOLID, Sheet, point};
use crate::press::drawing::Point;

/// From one stroke to the next, and how long a stroke is.
const APART: f32 = 9.0;
const LONG: f32 = 4.0;

/// Strokes at even distances along a line of points.
pub(super) fn draw(sheet: &mut Sheet, layer: Layer, line: &[Point]) {
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
            let half = LONG / 2.0;
            let ends = [
                point(middle.x - uy * half, middle.y + ux * half),
                point(middle.x + uy * half, middle.y - ux * half),
            ];
            sheet.line(layer, &ends, INK, 1.0, SOLID);
            ahead += APART;
        }
        ahead -= long;
    }
}
