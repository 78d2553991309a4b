//! Arcs by the circle they lie on, so that a part of an arc is as exact as the whole.

use super::way::{self, Way, distance, narrow, rounded};
use crate::geometry::point::Point;
use crate::values::Length;

/// Flatter ones are straight: under a thousandth of a millimetre.
const FLAT: i64 = 1_000;

/// The circle of an arc of at most half of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Curve {
    pub center: Point,
    pub radius: i64,
    /// Whether it bulges to the right of its way, which is counter-clockwise about the centre.
    pub right: bool,
}

impl Curve {
    pub fn of(from: Point, to: Point, bulge: Length) -> Option<Self> {
        let rise = i128::from(bulge.as_nanometres().abs());
        let squared = from.distance_squared(to);
        if rise < i128::from(FLAT) || squared == 0 {
            return None;
        }
        let right = Length::ZERO < bulge;
        let radius = rounded(squared + 4 * rise * rise, 8 * rise);
        let far = if right { radius - rise } else { rise - radius };
        let chord = (squared << 40).isqrt();
        let (x, y) = (i128::from(to.x - from.x), i128::from(to.y - from.y));
        let off = |v: i128| rounded((v * far) << 20, chord);
        let middle =
            |a: i64, b: i64, off: i128| narrow(rounded(i128::from(a) + i128::from(b) + 2 * off, 2));
        Some(Self {
            center: Point::new(middle(from.x, to.x, off(-y)), middle(from.y, to.y, off(x))),
            radius: narrow(radius),
            right,
        })
    }

    pub fn reversed(self) -> Self {
        Self {
            right: !self.right,
            ..self
        }
    }

    /// The rise over the chord between two of its places, positive to the right.
    pub fn bulge(&self, from: Point, to: Point) -> i64 {
        let radius = i128::from(self.radius);
        let chord = i128::from(distance(from, to)).max(1);
        let side = if self.right { 1 } else { -1 };
        let off = side * rounded(from.turn(to, self.center), chord);
        // Near half a circle the chord tells little of the rise, near none the centre does.
        let rise = if 2 * off < radius {
            narrow(radius - off)
        } else {
            let left = (4 * radius * radius - from.distance_squared(to)).max(0);
            narrow((2 * radius - left.isqrt() + 1) / 2)
        };
        if self.right { rise } else { -rise }
    }

    /// Its direction at a place on it.
    pub fn heading(&self, at: Point) -> Option<Way> {
        let out = Way::between(self.center, at)?.left();
        Some(if self.right { out } else { out.back() })
    }

    /// Whether a place on the circle lies on the arc between these two.
    pub fn holds(&self, from: Point, to: Point, place: Point) -> bool {
        let turn = from.turn(to, place);
        if self.right { turn <= 0 } else { 0 <= turn }
    }

    pub fn length(&self, from: Point, to: Point) -> i64 {
        let chord = distance(from, to);
        let rise = self.bulge(from, to).abs();
        let y = share(chord, rise);
        let longer = (y * tail(y)) >> PLACES;
        chord + narrow((i128::from(chord) * longer) >> PLACES)
    }

    /// Twice the area between the arc and its chord, positive when it lies to the right.
    pub fn doubled_segment(&self, from: Point, to: Point) -> i128 {
        let chord = distance(from, to);
        let rise = self.bulge(from, to);
        let tail = tail(share(chord, rise.abs())) >> (PLACES - 46);
        let product = i128::from(chord) * i128::from(rise);
        // Doubled: chord · rise / 2 · (2 + tail).
        product + ((product * tail) >> 47)
    }

    /// Where a line of this way through `from` meets the circle, before and after the middle.
    pub fn met_by(&self, from: Point, along: Way) -> Option<[Point; 2]> {
        let to_center = self.center - from;
        let (far, off) = (along.along(to_center), along.aside(to_center));
        // A line that only grazes it does not cross.
        if self.radius - off.abs() <= way::NEAR {
            return None;
        }
        let (radius, off) = (i128::from(self.radius), i128::from(off));
        let half = narrow((radius * radius - off * off).isqrt());
        Some([far - half, far + half].map(|far| along.from(from, far)))
    }

    /// Where two circles cross.
    pub fn met_by_circle(&self, other: &Self) -> Option<[Point; 2]> {
        let between = Way::between(self.center, other.center)?;
        let apart = i128::from(distance(self.center, other.center));
        let (one, two) = (i128::from(self.radius), i128::from(other.radius));
        let far = rounded(one * one - two * two + apart * apart, 2 * apart);
        // About one centre, or nearly, one circle lies within the other.
        if one < far.abs() {
            return None;
        }
        let squared = one * one - far * far;
        let near = i128::from(way::NEAR);
        if squared <= near * near {
            return None;
        }
        let foot = between.from(self.center, narrow(far));
        let half = narrow(squared.isqrt());
        Some([
            between.left().from(foot, half),
            between.left().from(foot, -half),
        ])
    }

    /// The place so far along the arc from a place on it, up to half a circle.
    pub fn place(&self, from: Point, far: i64) -> Option<Point> {
        let start = Way::between(self.center, from)?;
        let (cosine, sine) = turned((i128::from(far) << PLACES) / i128::from(self.radius));
        let sine = if self.right { sine } else { -sine };
        let radius = i128::from(self.radius);
        let part = |v: i128| narrow(rounded(v * radius, i128::from(way::ONE) << 20));
        let (x, y) = (i128::from(start.x), i128::from(start.y));
        // Both factors have forty places or sixty; twenty of the product are dropped first.
        let turn = |a: i128, b: i128| (a - b) >> (PLACES - 20);
        Some(
            self.center
                + Point::new(
                    part(turn(x * cosine, y * sine)),
                    part(turn(x * sine, -y * cosine)),
                ),
        )
    }
}

/// Binary places of the series below.
const PLACES: u32 = 60;

/// t² ÷ (1 + t²) with t = 2 rise ÷ chord; the series are those of `geometry::arc`.
fn share(chord: i64, rise: i64) -> i128 {
    let (chord, rise) = (i128::from(chord), 2 * i128::from(rise));
    let whole = chord * chord + rise * rise;
    // 80 and 60 places do not fit at once.
    let shift = (128 - whole.leading_zeros()).saturating_sub(62);
    (((rise * rise) >> shift) << PLACES) / (whole >> shift).max(1)
}

fn tail(y: i128) -> i128 {
    let mut n = 1;
    let mut term = (2_i64 << PLACES) / 3;
    let mut sum = 0;
    while 0 < term {
        sum += i128::from(term);
        n += 1;
        let part = narrow((i128::from(term) * y) >> PLACES);
        // 2n ÷ (2n + 1) of it, in a word.
        term = part - (part + 2 * n) / (2 * n + 1);
    }
    sum
}

/// Cosine and sine of an angle with `PLACES` places, up to a turn.
fn turned(angle: i128) -> (i128, i128) {
    let (mut cosine, mut sine) = (0, 0);
    let (mut term, mut n) = (1_i128 << PLACES, 0_i128);
    while term != 0 {
        let signed = if 2 <= n % 4 { -term } else { term };
        if n % 2 == 0 {
            cosine += signed;
        } else {
            sine += signed;
        }
        n += 1;
        term = ((term * angle) >> PLACES) / n;
    }
    (cosine, sine)
}

/// The cosine of so many half degrees, in parts of `way::ONE`.
pub(super) fn cosine_of_halves(halves: i64) -> i64 {
    // π with `PLACES` places.
    const PI: i128 = 3_622_009_729_038_561_421;
    narrow(turned(PI * i128::from(halves) / 360).0 >> (PLACES - 40))
}
