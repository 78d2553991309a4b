//! Brings stretched panels closer to square.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::clip;
use super::grid::Gap;
use super::outline::Outline;
use super::point::Point;

/// Long side over short side that a panel should not pass.
pub const PREFERRED_RATIO: Decimal = dec!(1.25);
/// Long side over short side that a panel must never pass.
pub const LONGEST_RATIO: Decimal = dec!(1.5);

/// Divides the longer way of stretched panels while that brings them closer to square.
pub(super) fn make_square(outline: &Outline, columns: &mut [Gap], rows: &mut [Gap]) {
    let filled = |column: &Gap, row: &Gap| is_mostly_inside(outline, column, row);
    let pairs: Vec<(usize, usize)> = (0..columns.len())
        .flat_map(|c| (0..rows.len()).map(move |r| (c, r)))
        .filter(|&(c, r)| filled(&columns[c], &rows[r]))
        .collect();
    for &(c, r) in &pairs {
        if ratio(columns[c].part(), rows[r].part()) <= LONGEST_RATIO {
            continue;
        }
        let across = rows[r].part() < columns[c].part();
        loop {
            let (column, row) = (columns[c], rows[r]);
            let (finer_column, finer_row) = if across {
                (column.finer(), row)
            } else {
                (column, row.finer())
            };
            // The division goes through every panel of its strip, so the worst of them decides.
            let worst = |column: &Gap, row: &Gap| {
                let in_strip = pairs
                    .iter()
                    .filter(|p| if across { p.0 == c } else { p.1 == r });
                in_strip
                    .map(|&(pc, pr)| {
                        let a = if pc == c { column } else { &columns[pc] };
                        let b = if pr == r { row } else { &rows[pr] };
                        ratio(a.part(), b.part())
                    })
                    .max()
                    .unwrap_or(Decimal::ONE)
            };
            let before = worst(&column, &row);
            if before <= PREFERRED_RATIO || before <= worst(&finer_column, &finer_row) {
                break;
            }
            columns[c] = finer_column;
            rows[r] = finer_row;
        }
    }
}

/// Longer over shorter.
pub(super) fn ratio(a: i64, b: i64) -> Decimal {
    Decimal::from(a.max(b)) / Decimal::from(a.min(b).max(1))
}

fn is_mostly_inside(outline: &Outline, column: &Gap, row: &Gap) -> bool {
    let low = Point::new(column.from, row.from);
    let high = Point::new(column.to, row.to);
    let whole = 2 * i128::from(high.x - low.x) * i128::from(high.y - low.y);
    whole < 2 * clip::doubled_area(outline.polygon(), low, high)
}
