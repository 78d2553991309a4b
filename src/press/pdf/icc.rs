//! The sRGB colour profile, so that the page's RGB has a meaning; written here, so that
//! nobody's licence comes with it.
//!
//! Layout: ICC.1:2010 (profile version 4.2), matrix/TRC display profile. Primaries and
//! curve: IEC 61966-2-1. The adapted numbers are checked below against the primaries.

/// A number with 16 bits after the point, as the format writes all of them.
type Fixed = i32;

/// The profile's own white, D50 (ICC.1:2010, 7.2.16).
const WHITE: [Fixed; 3] = [0xF6D6, 0x1_0000, 0xD32D];
/// Red, green and blue under that white.
const PRIMARIES: [[Fixed; 3]; 3] = [
    [0x6FA0, 0x38F5, 0x0390],
    [0x6297, 0xB787, 0x18D9],
    [0x249F, 0x0F84, 0xB6C3],
];
/// From the screen's white, D65, to the profile's: the Bradford transform.
const ADAPTATION: [[Fixed; 3]; 3] = [
    [0x1_0C42, 0x05DE, -0x0CDB],
    [0x0793, 0xFD90, -0x045F],
    [-0x025E, 0x03DC, 0xC06E],
];
/// Exponent 2.4; slope and offset 1/1.055 and 0.055/1.055; 1/12.92 below 0.04045.
const CURVE: [Fixed; 5] = [0x2_6666, 0xF2A7, 0x0D59, 0x13D0, 0x0A5B];

pub fn profile() -> Vec<u8> {
    let curve = curve();
    let mut tags: Vec<(&[u8; 4], Vec<u8>)> = vec![
        (b"desc", words("sRGB")),
        (b"cprt", words("CC0")),
        (b"wtpt", xyz(WHITE)),
        (b"chad", array(ADAPTATION.as_flattened())),
        (b"rXYZ", xyz(PRIMARIES[0])),
        (b"gXYZ", xyz(PRIMARIES[1])),
        (b"bXYZ", xyz(PRIMARIES[2])),
    ];
    // One curve serves all three colours.
    tags.push((b"rTRC", curve));
    let mut table = Vec::new();
    let mut data = Vec::new();
    let start = HEADER_LENGTH + 4 + 12 * (tags.len() + 2);
    for (name, content) in &tags {
        let entry = [size(start + data.len()), size(content.len())].concat();
        let names: &[&[u8; 4]] = if *name == b"rTRC" {
            &[b"rTRC", b"gTRC", b"bTRC"]
        } else {
            &[name]
        };
        for name in names {
            table.extend(name.iter().chain(&entry));
        }
        data.extend(content);
        data.resize(data.len().next_multiple_of(4), 0);
    }
    let count = size(tags.len() + 2);
    [header(start + data.len()), count.to_vec(), table, data].concat()
}

const HEADER_LENGTH: usize = 128;

/// ICC.1:2010, 7.2: a display profile from RGB to XYZ, no date, no maker.
fn header(length: usize) -> Vec<u8> {
    let mut header = vec![0; HEADER_LENGTH];
    let mut put = |at: usize, bytes: &[u8]| header[at..at + bytes.len()].copy_from_slice(bytes);
    put(0, &size(length));
    put(8, &[4, 0x20]);
    put(12, b"mntrRGB XYZ ");
    // A date is required; the year of the sRGB standard will do.
    put(24, &[0x07, 0xCF, 0, 1, 0, 1]);
    put(36, b"acsp");
    put(68, &fixed(&WHITE));
    header
}

/// `multiLocalizedUnicodeType` with one text, in American English.
fn words(text: &str) -> Vec<u8> {
    let utf16: Vec<u8> = text.encode_utf16().flat_map(u16::to_be_bytes).collect();
    let head = [0, 0, 0, 0, 0, 0, 0, 1, 0, 0, 0, 12];
    [
        b"mluc",
        &head[..],
        b"enUS",
        &size(utf16.len()),
        &size(28),
        &utf16,
    ]
    .concat()
}

fn xyz(values: [Fixed; 3]) -> Vec<u8> {
    [&b"XYZ \0\0\0\0"[..], &fixed(&values)].concat()
}

fn array(values: &[Fixed]) -> Vec<u8> {
    [&b"sf32\0\0\0\0"[..], &fixed(values)].concat()
}

/// `parametricCurveType`, function 3: straight near black, a power above.
fn curve() -> Vec<u8> {
    [&b"para\0\0\0\0\0\x03\0\0"[..], &fixed(&CURVE)].concat()
}

fn fixed(values: &[Fixed]) -> Vec<u8> {
    values
        .iter()
        .flat_map(|value| value.to_be_bytes())
        .collect()
}

fn size(length: usize) -> [u8; 4] {
    u32::try_from(length)
        .expect("the profile is a few hundred bytes")
        .to_be_bytes()
}

#[cfg(test)]
mod tests {
    use super::{ADAPTATION, CURVE, PRIMARIES, WHITE, profile};

    type Matrix = [[f64; 3]; 3];

    fn times(left: Matrix, right: Matrix) -> Matrix {
        std::array::from_fn(|row| {
            std::array::from_fn(|column| (0..3).map(|k| left[row][k] * right[k][column]).sum())
        })
    }

    fn apply(matrix: Matrix, vector: [f64; 3]) -> [f64; 3] {
        matrix.map(|row| (0..3).map(|k| row[k] * vector[k]).sum())
    }

    fn inverse(m: Matrix) -> Matrix {
        let minor = |r: usize, c: usize| {
            let (r1, r2, c1, c2) = ((r + 1) % 3, (r + 2) % 3, (c + 1) % 3, (c + 2) % 3);
            m[r1][c1] * m[r2][c2] - m[r1][c2] * m[r2][c1]
        };
        let determinant: f64 = (0..3).map(|c| m[0][c] * minor(0, c)).sum();
        std::array::from_fn(|row| std::array::from_fn(|column| minor(column, row) / determinant))
    }

    fn diagonal(values: [f64; 3]) -> Matrix {
        std::array::from_fn(|row| {
            std::array::from_fn(|column| if row == column { values[row] } else { 0.0 })
        })
    }

    fn value(fixed: i32) -> f64 {
        f64::from(fixed) / 65_536.0
    }

    #[track_caller]
    fn near(fixed: i32, computed: f64) {
        let error = (value(fixed) - computed).abs();
        assert!(
            error <= 0.5 / 65_536.0,
            "{} is not {computed}",
            value(fixed)
        );
    }

    /// Chromaticities of IEC 61966-2-1 and the cone responses of the Bradford transform
    /// (both from memory): the other road to the numbers above.
    #[test]
    fn adapted_colours_agree_with_the_primaries() {
        let screen_white = [0.3127 / 0.3290, 1.0, (1.0 - 0.3127 - 0.3290) / 0.3290];
        let cones: Matrix = [
            [0.8951, 0.2664, -0.1614],
            [-0.7502, 1.7135, 0.0367],
            [0.0389, -0.0685, 1.0296],
        ];
        let (from, to) = (apply(cones, screen_white), apply(cones, WHITE.map(value)));
        let scale = diagonal(std::array::from_fn(|k| to[k] / from[k]));
        let adaptation = times(inverse(cones), times(scale, cones));
        let column = |x: f64, y: f64| [x / y, 1.0, (1.0 - x - y) / y];
        let columns = [column(0.64, 0.33), column(0.30, 0.60), column(0.15, 0.06)];
        let primaries: Matrix =
            std::array::from_fn(|row| std::array::from_fn(|color| columns[color][row]));
        let amounts = apply(inverse(primaries), screen_white);
        let adapted = times(adaptation, times(primaries, diagonal(amounts)));
        for row in 0..3 {
            for column in 0..3 {
                near(ADAPTATION[row][column], adaptation[row][column]);
                near(PRIMARIES[column][row], adapted[row][column]);
            }
            let sum: i32 = PRIMARIES.iter().map(|primary| primary[row]).sum();
            assert!(
                (sum - WHITE[row]).abs() <= 1,
                "white is all three colours together"
            );
        }
        for (fixed, computed) in
            CURVE
                .into_iter()
                .zip([2.4, 1.0 / 1.055, 0.055 / 1.055, 1.0 / 12.92, 0.04045])
        {
            near(fixed, computed);
        }
    }

    #[test]
    fn every_tag_lies_inside_the_profile() {
        let profile = profile();
        let at = |offset: usize| {
            let bytes: [u8; 4] = profile[offset..offset + 4].try_into().unwrap();
            usize::try_from(u32::from_be_bytes(bytes)).unwrap()
        };
        assert_eq!(at(0), profile.len());
        assert_eq!(at(128), 10);
        for tag in 0..10 {
            let (start, length) = (at(136 + 12 * tag), at(140 + 12 * tag));
            assert!(
                252 <= start && start % 4 == 0 && start + length <= profile.len(),
                "tag {tag}"
            );
        }
    }
}
