//! The gallery as pictures, for whoever wants to look: `JOINTS=folder cargo test drawn -- --ignored`.

use std::fmt::Write as _;

use super::super::{Layout, Line};
use super::gallery::{Slab, gallery};
use crate::geometry::Point;

/// Points of a picture for each foot.
const SCALE: i64 = 304_800_000 / 20;

fn place(at: Point, low: Point, high: Point) -> (i64, i64) {
    let _ = low;
    ((at.x - low.x) / SCALE + 30, (high.y - at.y) / SCALE + 30)
}

fn trace(lines: &[Line], low: Point, high: Point) -> String {
    let mut text = String::new();
    for line in lines {
        let (x, y) = place(line.from, low, high);
        let start = if text.is_empty() { 'M' } else { 'L' };
        write!(text, "{start}{x} {y}").unwrap();
        let (x, y) = place(line.to, low, high);
        let seam = super::super::Seam::from(line);
        match seam.curve {
            None => write!(text, "L{x} {y}").unwrap(),
            Some(curve) => {
                let radius = curve.radius / SCALE;
                let sweep = i32::from(!curve.right);
                write!(text, "A{radius} {radius} 0 0 {sweep} {x} {y}").unwrap();
            }
        }
    }
    text
}

fn picture(slab: &Slab, layout: &Layout) -> String {
    let (low, high) = slab.outline.bounds();
    let (wide, tall) = place(Point::new(high.x, low.y), low, high);
    let (wide, tall) = (
        wide + 30,
        tall + 30 + 14 * i64::try_from(layout.breaks.len()).unwrap(),
    );
    let mut svg = format!(
        "<svg xmlns='http://www.w3.org/2000/svg' width='{}' height='{tall}'><rect width='100%' height='100%' fill='white'/>",
        wide.max(360)
    );
    let shades = ["#f3ead8", "#e2ead8", "#d8e4ea", "#eadfe6"];
    for (number, panel) in layout.panels.iter().enumerate() {
        let mut path = trace(&panel.sides, low, high) + "Z";
        for hole in &panel.holes {
            path += &(trace(hole, low, high) + "Z");
        }
        let shade = shades[number % 4];
        write!(
            svg,
            "<path d='{path}' fill='{shade}' fill-rule='evenodd' stroke='#999' stroke-width='0.6'/>"
        )
        .unwrap();
        let many = i64::try_from(panel.sides.len()).unwrap();
        let x = panel.sides.iter().map(|side| side.from.x).sum::<i64>() / many;
        let y = panel.sides.iter().map(|side| side.from.y).sum::<i64>() / many;
        let (x, y) = place(Point::new(x, y), low, high);
        let size = format!("{:.1}x{:.1}", panel.size.0.feet(), panel.size.1.feet());
        write!(
            svg,
            "<text x='{x}' y='{y}' font-size='9' text-anchor='middle'>{size}</text>"
        )
        .unwrap();
    }
    let rim = slab.outline.sides().iter().map(|side| Line {
        from: side.from,
        to: side.to,
        bulge: side.bulge,
    });
    let rim: Vec<Line> = rim.collect();
    write!(
        svg,
        "<path d='{}Z' fill='none' stroke='black' stroke-width='2'/>",
        trace(&rim, low, high)
    )
    .unwrap();
    for line in &layout.lines {
        write!(
            svg,
            "<path d='{}' fill='none' stroke='#c00' stroke-width='1.5'/>",
            trace(&[*line], low, high)
        )
        .unwrap();
    }
    for meet in &slab.meet {
        let (x, y) = place(meet.at, low, high);
        write!(
            svg,
            "<circle cx='{x}' cy='{y}' r='4' fill='none' stroke='blue'/>"
        )
        .unwrap();
    }
    for (number, one) in layout.breaks.iter().enumerate() {
        let (x, y) = place(one.at, low, high);
        write!(svg, "<circle cx='{x}' cy='{y}' r='3' fill='#c0f'/>").unwrap();
        let y = tall - 4 - 14 * i64::try_from(number).unwrap();
        write!(
            svg,
            "<text x='4' y='{y}' font-size='10'>{:?}</text>",
            one.what
        )
        .unwrap();
    }
    let words = format!(
        "{}, at most {}: {:.1} ft, {} panels",
        slab.name,
        slab.longest,
        layout.length,
        layout.panels.len()
    );
    svg + &format!("<text x='4' y='14' font-size='12'>{words}</text></svg>")
}

#[test]
#[ignore = "makes pictures, proves nothing"]
fn the_gallery_is_drawn() {
    let Ok(folder) = std::env::var("JOINTS") else {
        return;
    };
    for (number, slab) in gallery().iter().enumerate() {
        let started = std::time::Instant::now();
        let layout = slab.laid_out();
        let took = started.elapsed();
        println!(
            "{number:02} {} {took:?} {:.1} ft {} panels {:?}",
            slab.name,
            layout.length,
            layout.panels.len(),
            layout.breaks
        );
        let name = format!("{folder}/{number:02}.svg");
        std::fs::write(name, picture(slab, &layout)).unwrap();
    }
}
