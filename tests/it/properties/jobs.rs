//! Random jobs from a seed: the same on every machine and every day.

use std::fmt::Write as _;

/// A tiny generator of numbers (the mixing steps of the public-domain `splitmix64`).
pub struct Dice(u64);

impl Dice {
    pub fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15))
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// From `low` to `high`, both included.
    pub fn between(&mut self, low: u64, high: u64) -> u64 {
        low + self.next() % (high - low + 1)
    }

    pub fn one_in(&mut self, n: u64) -> bool {
        self.next().is_multiple_of(n)
    }

    pub fn pick<'a, T: ?Sized>(&mut self, from: &[&'a T]) -> &'a T {
        from[usize::try_from(self.between(0, from.len() as u64 - 1)).expect("a short list")]
    }

    pub fn shuffle<T>(&mut self, list: &mut [T]) {
        for i in (1..list.len()).rev() {
            list.swap(
                i,
                usize::try_from(self.between(0, i as u64)).expect("a short list"),
            );
        }
    }
}

/// One side as walked: 0 east, 1 south, 2 west, 3 north; eighths of an inch.
#[derive(Clone, Debug)]
pub struct Leg {
    pub toward: usize,
    pub length: u64,
    pub bulge: u64,
    pub against: Option<&'static str>,
}

#[derive(Clone, Debug)]
pub enum Shape {
    /// Width, height; what stands at the north, east, south, west.
    Rectangle(u64, u64, [Option<&'static str>; 4]),
    Walked(Vec<Leg>),
    Circle(u64),
}

#[derive(Clone, Debug)]
pub struct Slab {
    pub key: String,
    pub kind: &'static str,
    pub shape: Shape,
    /// Eighths of an inch.
    pub thickness: u64,
    /// Which edges go deeper, and how far inside they slope up, in inches.
    pub thickened: Option<(&'static str, u64)>,
}

#[derive(Clone, Debug)]
pub struct Job {
    pub slabs: Vec<Slab>,
    /// Top keys beside the slabs, each with its text.
    pub rest: Vec<(&'static str, String)>,
}

const WALLS: [&str; 3] = ["house", "isolated", "existing concrete"];

pub fn job(seed: u64) -> Job {
    let mut dice = Dice::new(seed);
    let slabs = (0..dice.between(1, 3))
        .map(|number| slab(number, &mut dice))
        .collect();
    let mut rest = vec![("customer", "Ira Sample, 7 Ferry Steps".to_owned())];
    let access = dice.pick(&["chute", "wheelbarrow", "buggy", "pump"]);
    rest.push(("access", access.to_owned()));
    if dice.one_in(2) {
        let (a, b) = (
            length(dice.between(200, 2000)),
            length(dice.between(200, 2000)),
        );
        let broken = format!("\n  - old slab: {a} x {b} x {} in", dice.between(2, 8));
        let dug = format!(
            "\n  - lawn: {{size: {} sq ft x {} in, of: soil}}",
            dice.between(20, 900),
            dice.between(2, 12)
        );
        rest.push((
            "remove",
            if dice.one_in(2) {
                broken + &dug
            } else {
                broken
            },
        ));
    }
    if dice.one_in(2) {
        let mut extra = format!(
            "\n  - topsoil: {}.{} cu yd",
            dice.between(0, 9),
            dice.between(1, 99)
        );
        if dice.one_in(2) {
            extra += "\n  - small loader: 1 day";
        }
        if dice.one_in(2) {
            let _ = write!(
                extra,
                "\n  - town permit: {{cost: {}.{}5, class: fee}}",
                dice.between(20, 400),
                dice.between(0, 9)
            );
        }
        rest.push(("extra", extra));
    }
    if dice.one_in(2) {
        let feet = dice.between(5, 90);
        rest.push(("options", format!(
            "\n  - choose one: Border\n    from:\n      - Washed: {{add: [washed pebble border: {feet} ft]}}\n      - Smooth: {{add: [smooth border: {feet} ft]}}\n  - Sealer: {{add: [clear sealer: {} sq ft]}}",
            dice.between(40, 900)
        )));
    }
    Job { slabs, rest }
}

fn slab(number: u64, dice: &mut Dice) -> Slab {
    let kind = dice.pick(&["patio", "walk", "driveway", "apron", "slab"]);
    // 3 to 40 ft.
    let mut side = || dice.between(36 * 8, 40 * 96);
    let (a, b) = (side(), side());
    let wall = |dice: &mut Dice| dice.one_in(4).then(|| dice.pick(&WALLS));
    let shape = match dice.between(0, 5) {
        0 => Shape::Circle(a),
        1..=3 => Shape::Rectangle(a, b, std::array::from_fn(|_| wall(dice))),
        _ => {
            // An L: the notch takes a third to a half of each side.
            let (c, d) = (a - a / dice.between(2, 3), b / dice.between(2, 3));
            let walk = [(0, a), (1, b), (2, c), (3, d), (2, a - c), (3, b - d)];
            let legs = walk.map(|(toward, length)| {
                let bulge = if dice.one_in(8) {
                    length / dice.between(10, 40)
                } else {
                    0
                };
                Leg {
                    toward,
                    length,
                    bulge,
                    against: wall(dice),
                }
            });
            Shape::Walked(legs.to_vec())
        }
    };
    Slab {
        key: format!("{kind} {}", number + 1),
        kind,
        shape,
        thickness: dice.between(28, 64),
        thickened: dice
            .one_in(3)
            .then(|| (dice.pick(&["all", "all open"]), dice.between(0, 2))),
    }
}

/// `12 ft 7 3/8 in` of eighths of an inch.
pub fn length(eighths: u64) -> String {
    let (feet, inches, part) = (eighths / 96, eighths % 96 / 8, eighths % 8);
    let mut out = Vec::new();
    if feet != 0 {
        out.push(format!("{feet} ft"));
    }
    match (inches, part) {
        (0, 0) => {}
        (_, 0) => out.push(format!("{inches} in")),
        (0, _) => out.push(format!("{part}/8 in")),
        _ => out.push(format!("{inches} {part}/8 in")),
    }
    out.join(" ")
}

impl Slab {
    fn text(&self) -> String {
        let thickness = length(self.thickness);
        let shape = match &self.shape {
            Shape::Circle(across) => format!("size: circle {}", length(*across)),
            Shape::Rectangle(east_west, north_south, walls) => {
                let edges: Vec<String> = ["north", "east", "south", "west"]
                    .iter()
                    .zip(walls)
                    .filter_map(|(side, wall)| wall.map(|wall| format!("{side}: {wall}")))
                    .collect();
                let size = format!("size: {} x {}", length(*east_west), length(*north_south));
                if edges.is_empty() {
                    size
                } else {
                    format!("{size}, edges: {{{}}}", edges.join(", "))
                }
            }
            Shape::Walked(legs) => {
                let legs: Vec<String> = legs.iter().map(Leg::text).collect();
                format!("outline: [{}]", legs.join(", "))
            }
        };
        let thickened = self.thickened.map(|(edges, taper)| {
            let taper = match taper {
                0 => String::new(),
                inches => format!(", taper: {inches} in"),
            };
            format!(", thickened: {{edges: {edges}, width: 3 in, depth: 20 in{taper}}}")
        });
        format!(
            "{}: {{kind: {}, thickness: {thickness}, {shape}{}}}",
            self.key,
            self.kind,
            thickened.unwrap_or_default()
        )
    }
}

impl Leg {
    fn text(&self) -> String {
        let mut out = format!(
            "{} {}",
            ["east", "south", "west", "north"][self.toward],
            length(self.length)
        );
        if self.bulge != 0 {
            let _ = write!(out, ", bulge {}", length(self.bulge));
        }
        if let Some(wall) = self.against {
            let _ = write!(out, ", against {wall}");
        }
        format!("\"{out}\"")
    }
}

impl Job {
    /// The takeoff, its top keys in the order they stand, the slabs first.
    pub fn text(&self) -> String {
        let mut out = String::from("slabs:\n");
        for slab in &self.slabs {
            let _ = writeln!(out, "  {}", slab.text());
        }
        for (key, text) in &self.rest {
            let _ = writeln!(out, "{key}: {text}");
        }
        out
    }
}
