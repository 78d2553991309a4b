//! A large job that uses every feature, for measurements: far more than one crew pours.

use std::fmt::Write as _;

/// Kinds of the demo business, in turn.
const KINDS: [&str; 4] = ["patio", "walk", "driveway", "apron"];

/// A takeoff of `slabs` slabs on two days, with six options: 64 combinations.
pub fn job(slabs: usize) -> String {
    let mut out = String::from(
        "customer: Ira Sample, 7 Ferry Steps, Quillhaven\nquoted: 2026-05-04\nexposure: frost\naccess: {by: wheelbarrow, distance: 85 ft, gate: 42 in}\nslabs:\n",
    );
    for i in 0..slabs {
        let _ = writeln!(out, "  {}", slab(i));
    }
    let names = |odd: usize| {
        let names = (0..slabs).filter(|i| i % 2 == odd);
        names.map(name).collect::<Vec<_>>().join(", ")
    };
    let _ = writeln!(
        out,
        "pour:\n  - {{day: 2026-06-15, slabs: [{}]}}\n  - {{day: 2026-06-18, slabs: [{}]}}",
        names(0),
        names(1)
    );
    out += "remove:\n  - old patio: 20 ft x 10 ft x 4 in\n  - lawn soil: {size: 540 sq ft x 8 in, of: soil}\nextra:\n  - topsoil: 1.35 cu yd\n  - small loader: 2 days\n  - street guard: {cost: 85.00, class: fee}\npermit: town permit\nzone: hill road\nhold back: 1 cu yd\nsite: {washout: hauled, backfill: ours, walls to cover: 120 ft, lawn crossed: 60 ft, sprinklers: yes}\nset:\n  finish broom hours: {to: 140, because: two people}\noptions:\n";
    let last = slabs - 1;
    let _ = writeln!(
        out,
        "  - Sealer: {{add: [clear sealer: 540 sq ft]}}\n  - Pebbles: {{add: [washed pebble border: 60 ft]}}\n  - Thicker: {{change: {{{}: {{thickness: 5 in}}, {}: {{thickness: 6 in}}}}}}\n  - Closer joints: {{change: {{{}: {{joints: 5 ft}}}}}}\n  - Keep the soil: {{drop: [lawn soil]}}\n  - Less: {{drop: [{}]}}",
        name(0),
        name(1),
        name(2),
        name(last)
    );
    out
}

fn name(i: usize) -> String {
    format!("{} {i}", KINDS[i % KINDS.len()])
}

/// What is set in, cut out of, or made deeper along a rectangle, in turn.
fn dress(i: usize) -> &'static str {
    match i % 5 {
        0 => {
            "boxes: [cleanout 8 in: 3 ft from west and 3 ft from south, gas valve: {box: valve box 12 x 18, at: 5 ft from east and 3 ft from south, lid: on order, isolated: yes}]"
        }
        1 => "cut out: [tree well: {size: 3 ft x 3 ft, at: 4 ft from west and 3 ft from south}]",
        2 => "thickened: \"all open, 12 in wide, 12 in deep, 2 no. 4\", vapor retarder: yes",
        3 => "border: 12 in of washed pebbles, seal: satin",
        _ => {
            "steps: \"2 risers of 7 in, 12 in treads, 4 ft wide, from south edge\", thickness: 4 in to 6 in"
        }
    }
}

/// Plain, walked with a curve, round, or beside the slab before it; steel in two of three.
fn slab(i: usize) -> String {
    let (long, wide) = (14 + i % 7, 10 + i % 5);
    let steel = match i % 3 {
        0 => "bars: no. 4 at 18 in",
        1 => "mesh: 6x6 W1.4/W1.4",
        _ => "fiber: micro",
    };
    let shape = match i % 4 {
        0 => format!(
            "size: {long} ft x {wide} ft 6 in, edges: {{north: house}}, {}",
            dress(i / 4)
        ),
        1 => format!(
            "size: {wide} ft x 4 ft, beside: \"{}, west edge, from north end\"",
            name(i - 1)
        ),
        2 => format!(
            "outline: [\"east {long} ft, against house\", south 12 ft, \"west {} ft, bulge 18 in\", north 4 ft, west 4 ft, north 8 ft]",
            long - 4
        ),
        _ => format!("size: circle {wide} ft, finish: stamped slate, color: buff"),
    };
    format!(
        "{}: {{{shape}, {steel}, fall: 1/4 in per ft south}}",
        name(i)
    )
}
