//! Whether sides of a polygon touch where they should not.

use super::point::Point;

/// The first two of these numbered segments that touch, except neighbours at their shared end.
///
/// The segments are a closed chain in order.
pub(super) fn first_crossing(chain: &[(Point, Point, usize)]) -> Option<(usize, usize)> {
    for (i, a) in chain.iter().enumerate() {
        for (j, b) in chain.iter().enumerate().skip(i + 1) {
            let follows = i + 1 == j;
            let closes = i == 0 && j + 1 == chain.len();
            let wrong = if follows && closes {
                false // two segments only: a lens seen as chords
            } else if follows {
                folds_back(a.0, a.1, b.1)
            } else if closes {
                folds_back(b.0, b.1, a.1)
            } else {
                touch((a.0, a.1), (b.0, b.1))
            };
            if wrong {
                return Some((a.2.min(b.2), a.2.max(b.2)));
            }
        }
    }
    None
}

/// Whether the way from `corner` to `to` lies back along the way it came.
fn folds_back(from: Point, corner: Point, to: Point) -> bool {
    let (back, on) = (from - corner, to - corner);
    let same_way =
        0 < i128::from(back.x) * i128::from(on.x) + i128::from(back.y) * i128::from(on.y);
    from.turn(corner, to) == 0 && same_way
}

/// Whether two segments have a point in common.
pub(super) fn touch(a: (Point, Point), b: (Point, Point)) -> bool {
    let side = |line: (Point, Point), p: Point| line.0.turn(line.1, p).signum();
    let (a0, a1) = (side(b, a.0), side(b, a.1));
    let (b0, b1) = (side(a, b.0), side(a, b.1));
    if a0 != a1 && b0 != b1 {
        return true;
    }
    (a0 == 0 && within(b, a.0))
        || (a1 == 0 && within(b, a.1))
        || (b0 == 0 && within(a, b.0))
        || (b1 == 0 && within(a, b.1))
}

/// Whether a point on the line through `segment` lies between its ends.
fn within(segment: (Point, Point), p: Point) -> bool {
    let between = |a: i64, b: i64, v: i64| a.min(b) <= v && v <= a.max(b);
    between(segment.0.x, segment.1.x, p.x) && between(segment.0.y, segment.1.y, p.y)
}
