//! Where a straight line across the site lies inside a polygon and outside its holes.

use super::Point;

/// Which neighbour of the scan line is looked at.
#[derive(Clone, Copy)]
enum Just {
    Above,
    Below,
}

/// Spans of x where the line at `y` has slab on both sides, west to east.
///
/// A line along the polygon's own edge therefore has no span there.
/// The first ring is the slab's own, the others are its holes; each lies inside it and apart.
pub(super) fn spans(rings: &[&[Point]], y: i64) -> Vec<(i64, i64)> {
    common(
        &inside(rings, y, Just::Above),
        &inside(rings, y, Just::Below),
    )
}

/// The same for a line running north at `x`.
pub(super) fn spans_at_x(rings: &[&[Point]], x: i64) -> Vec<(i64, i64)> {
    let turn = |ring: &&[Point]| -> Vec<Point> {
        let points = ring.iter();
        points.map(|p| Point::new(p.y, p.x)).collect()
    };
    let turned: Vec<Vec<Point>> = rings.iter().map(turn).collect();
    let turned: Vec<&[Point]> = turned.iter().map(Vec::as_slice).collect();
    spans(&turned, x)
}

fn inside(rings: &[&[Point]], y: i64, just: Just) -> Vec<(i64, i64)> {
    let edges = rings.iter().flat_map(|ring| {
        let next = ring.iter().cycle().skip(1);
        ring.iter().zip(next)
    });
    let mut crossings: Vec<i64> = edges
        .filter_map(|(&a, &b)| crossing(a, b, y, just))
        .collect();
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
fn crossing(a: Point, b: Point, y: i64, just: Just) -> Option<i64> {
    let (low, high) = if a.y < b.y { (a, b) } else { (b, a) };
    let crosses = match just {
        Just::Above => low.y <= y && y < high.y,
        Just::Below => low.y < y && y <= high.y,
    };
    crosses.then(|| {
        if low.x == high.x {
            return low.x;
        }
        let rise = i128::from(high.y - low.y);
        let run = i128::from(high.x - low.x) * i128::from(y - low.y);
        let rounded = (2 * run + rise).div_euclid(2 * rise);
        low.x + i64::try_from(rounded).expect("a crossing lies within its edge")
    })
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
