//! Where a straight line across the site lies inside a polygon and outside its holes.

use super::point::Point;

/// Spans of x where the line at `y` has slab on both sides, west to east.
///
/// A line along the polygon's own edge therefore has no span there.
/// The first ring is the slab's own, the others are its holes; each lies inside it and apart.
pub(super) fn spans(rings: &[&[Point]], y: i64) -> Vec<(i64, i64)> {
    across(rings, y, |p| p)
}

/// The same for a line running north at `x`.
pub(super) fn spans_at_x(rings: &[&[Point]], x: i64) -> Vec<(i64, i64)> {
    across(rings, x, |p| Point::new(p.y, p.x))
}

/// The spans of both neighbors of the line, just above and just below it, where they agree.
fn across(rings: &[&[Point]], y: i64, turned: impl Fn(Point) -> Point) -> Vec<(i64, i64)> {
    let (mut above, mut below) = (Vec::new(), Vec::new());
    for ring in rings {
        let Some(&last) = ring.last() else { continue };
        let mut a = turned(last);
        for &corner in *ring {
            let b = turned(corner);
            let (low, high) = if a.y < b.y { (a, b) } else { (b, a) };
            if low.y <= y && y <= high.y && low.y < high.y {
                let x = crossing(low, high, y);
                above.extend((y < high.y).then_some(x));
                below.extend((low.y < y).then_some(x));
            }
            a = b;
        }
    }
    // Only a line through a corner or along an edge has other neighbors on one side.
    if above == below {
        return inside(above);
    }
    common(&inside(above), &inside(below))
}

fn inside(mut crossings: Vec<i64>) -> Vec<(i64, i64)> {
    crossings.sort_unstable();
    let mut spans: Vec<(i64, i64)> = Vec::new();
    for pair in crossings.chunks_exact(2) {
        match spans.last_mut() {
            Some(last) if last.1 == pair[0] => last.1 = pair[1],
            _ if pair[0] < pair[1] => spans.push((pair[0], pair[1])),
            _ => {}
        }
    }
    spans
}

/// Where the edge crosses, rounded to a nanometre once, from its lower end so that neighbours agree.
fn crossing(low: Point, high: Point, y: i64) -> i64 {
    if low.x == high.x {
        return low.x;
    }
    let rise = i128::from(high.y - low.y);
    let run = i128::from(high.x - low.x) * i128::from(y - low.y);
    let rounded = (2 * run + rise).div_euclid(2 * rise);
    low.x + i64::try_from(rounded).expect("a crossing lies within its edge")
}

fn common(a: &[(i64, i64)], b: &[(i64, i64)]) -> Vec<(i64, i64)> {
    let both = a.iter().flat_map(|p| {
        b.iter()
            .map(move |q| (p.0.max(q.0), p.1.min(q.1)))
            .filter(|(from, to)| from < to)
    });
    let mut spans: Vec<(i64, i64)> = both.collect();
    spans.sort_unstable();
    spans
}
