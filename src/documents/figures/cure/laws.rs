//! What must hold for every cure figure: words stand apart, inside, and on what they belong to.

use super::{CureView, CureWords, cure};
use crate::documents::figures::pen::{SMALL, WHITE, width};
use crate::press::drawing::{Anchor, Drawing, Face, Path, Rgb, Shape, Words};
use crate::press::frame::Frame;
use crate::trade::curing::{
    Cement, Conditions, CuringRules, Floors, Timeline, Use, steady as timeline,
};

const ACCENT: Rgb = Rgb::BLUE;
const MILD: Conditions = Conditions {
    cool: 60,
    warm: 80,
    cement: Cement::Ordinary,
};
const EVERY_USE: [Use; 4] = [Use::Walk, Use::Car, Use::Heavy, Use::Seal];

fn drawn(timeline: &Timeline, uses: &[Use]) -> Drawing {
    cure(&CureView {
        timeline,
        uses,
        ordered: "4,000 psi",
        accent: ACCENT,
        deicer: true,
        words: &CureWords::ENGLISH,
    })
}

/// Figures for weather from frost to heat, every cement, and floors later than the curve.
fn every_figure() -> Vec<(String, Timeline, Drawing)> {
    let late = CuringRules {
        floors: Floors {
            walk: 3,
            car: 30,
            heavy: 45,
            seal: 90,
        },
        ..CuringRules::default()
    };
    let mut figures = Vec::new();
    for rules in [CuringRules::default(), late] {
        for cement in Cement::ALL {
            for cool in (33..=90).step_by(9) {
                // Two degrees apart, the curves' names would stand on each other.
                for warm in (cool..=90).step_by(9).chain([cool + 2]) {
                    let conditions = Conditions { cool, warm, cement };
                    let found = timeline(&conditions, &rules);
                    for uses in [&EVERY_USE[..], &[Use::Walk]] {
                        let figure = drawn(&found, uses);
                        let name = format!("{cool} to {warm} °F, {cement:?}, {uses:?}");
                        figures.push((name, found.clone(), figure));
                    }
                }
            }
        }
    }
    figures
}

fn words_of(figure: &Drawing) -> Vec<(&Words, Frame)> {
    let words = figure.shapes.iter().filter_map(|shape| match shape {
        Shape::Words(words) => Some(words),
        Shape::Path(_) | Shape::Picture(_) => None,
    });
    words.map(|words| (words, box_of(words))).collect()
}

/// The ink of a line of words: capitals stand 0.7 of the size high, tails hang 0.2.
fn box_of(words: &Words) -> Frame {
    let wide = width(&words.text, words.face, words.size);
    let left = match words.anchor {
        Anchor::Start => words.at.x,
        Anchor::Middle => words.at.x - wide / 2.0,
        Anchor::End => words.at.x - wide,
    };
    let (above, below) = (0.7 * words.size, 0.2 * words.size);
    Frame::new(left, words.at.y - above, left + wide, words.at.y + below)
}

fn paths_of(figure: &Drawing) -> Vec<&Path> {
    let paths = figure.shapes.iter().filter_map(|shape| match shape {
        Shape::Path(path) => Some(path),
        Shape::Words(_) | Shape::Picture(_) => None,
    });
    paths.collect()
}

fn bounds(path: &Path) -> Frame {
    Frame::around_all(path.points())
}

fn meet(one: Frame, other: Frame, air: f32) -> bool {
    one.left < other.right + air
        && other.left < one.right + air
        && one.top < other.bottom
        && other.top < one.bottom
}

#[test]
fn words_never_touch_their_neighbours() {
    for (name, _, figure) in every_figure() {
        let words = words_of(&figure);
        for (at, (one, first)) in words.iter().enumerate() {
            for (other, second) in &words[at + 1..] {
                let touch = meet(*first, *second, 2.0);
                assert!(!touch, "{name}: `{}` and `{}`", one.text, other.text);
            }
        }
    }
}

#[test]
fn everything_stays_on_its_paper() {
    for (name, _, figure) in every_figure() {
        assert!(figure.size.width <= 516.0 && figure.size.height <= 288.0);
        let paper = Frame::new(0.0, 0.0, figure.size.width, figure.size.height);
        for (words, place) in words_of(&figure) {
            assert!(paper.contains(&place), "{name}: `{}` {place:?}", words.text);
        }
        for path in paths_of(&figure) {
            assert!(paper.contains(&bounds(path)), "{name}: {:?}", bounds(path));
        }
    }
}

/// White words belong on the solid bar and would vanish anywhere else; ink words
/// would vanish on it.
#[test]
fn words_stand_on_a_ground_that_shows_them() {
    for (name, _, figure) in every_figure() {
        let solid: Vec<Frame> = paths_of(&figure)
            .into_iter()
            .filter(|path| path.fill == Some(ACCENT))
            .map(bounds)
            .collect();
        for (words, place) in words_of(&figure) {
            if words.color == WHITE {
                let held = solid.iter().any(|bar| bar.contains(&place));
                assert!(held, "{name}: `{}` leaves its bar", words.text);
            } else {
                let lost = solid.iter().any(|bar| meet(place, *bar, 0.0));
                assert!(!lost, "{name}: `{}` is on a solid bar", words.text);
            }
        }
    }
}

#[test]
fn no_edge_of_a_bar_cuts_a_word() {
    for (name, _, figure) in every_figure() {
        let parts: Vec<Frame> = paths_of(&figure)
            .into_iter()
            .filter(|path| path.fill.is_some() && path.points().count() == 4)
            .map(bounds)
            .filter(|part| (part.bottom - part.top - 12.0).abs() < 0.1)
            .collect();
        assert!(!parts.is_empty());
        for (words, place) in words_of(&figure) {
            for part in &parts {
                let cut = meet(place, *part, 0.0) && !part.contains(&place);
                assert!(!cut, "{name}: `{}` crosses {part:?}", words.text);
            }
        }
    }
}

#[test]
fn no_curve_runs_through_words() {
    for (name, _, figure) in every_figure() {
        let words = words_of(&figure);
        let curves = paths_of(&figure)
            .into_iter()
            .filter(|path| 20 < path.points().count());
        for point in curves.flat_map(Path::points) {
            for (words, place) in &words {
                let hit = place.left <= point.x
                    && point.x <= place.right
                    && place.top <= point.y
                    && point.y <= place.bottom;
                assert!(!hit, "{name}: a curve through `{}`", words.text);
            }
        }
    }
}

#[test]
fn every_day_is_written_in_the_figure_and_said_aloud() {
    for (name, timeline, figure) in every_figure() {
        let written: Vec<String> = words_of(&figure)
            .into_iter()
            .map(|(words, _)| words.text.clone())
            .collect();
        let drawn = |use_: &str| written.iter().any(|text| text == use_);
        for milestone in &timeline.milestones {
            let words = CureWords::ENGLISH;
            let use_ = match milestone.use_ {
                Use::Walk => words.walk,
                Use::Car => words.car,
                Use::Heavy => words.heavy,
                Use::Seal => words.seal,
            };
            if !drawn(use_) {
                continue;
            }
            for day in [milestone.warm, milestone.cool] {
                let day = format!("day {day}");
                let whole = |text: &str| {
                    text.split(&day)
                        .skip(1)
                        .any(|rest| !rest.starts_with(|next: char| next.is_ascii_digit()))
                };
                assert!(written.iter().any(|text| whole(text)), "{name}: {day}");
                assert!(whole(&figure.alternative), "{name}: {day} not said");
            }
        }
    }
}

#[test]
fn the_mild_figure_reads_like_this() {
    let found = timeline(&MILD, &CuringRules::default());
    let figure = drawn(&found, &EVERY_USE);
    let bars: Vec<&str> = words_of(&figure)
        .into_iter()
        .filter(|(words, _)| words.text.contains("day "))
        .map(|(words, _)| words.text.as_str())
        .collect();
    assert_eq!(
        bars,
        [
            "day 2",
            "warm: day 7",
            "day 13",
            "warm: day 17",
            "day 31",
            "day 28, when dry"
        ]
    );
    assert!(figure.alternative.contains("Day 7: 76% warm, 58% cool."));
    let said = "Light car: day 7 if it stays warm, day 13 if it stays cool";
    assert!(figure.alternative.contains(said));
    assert!(!figure.alternative.contains('{'), "{}", figure.alternative);
}

#[test]
fn the_same_view_is_drawn_the_same_twice() {
    let found = timeline(&MILD, &CuringRules::default());
    let once = || format!("{:?}", drawn(&found, &EVERY_USE));
    assert_eq!(once(), once());
}

#[test]
fn an_absurd_floor_still_gives_a_figure() {
    for floor in [400, 100_000, u32::MAX] {
        let rules = CuringRules {
            floors: Floors {
                walk: 1,
                car: 7,
                heavy: floor,
                seal: 28,
            },
            ..CuringRules::default()
        };
        let conditions = Conditions {
            cool: 40,
            warm: 80,
            cement: Cement::Blended,
        };
        let figure = drawn(&timeline(&conditions, &rules), &EVERY_USE);
        assert!(figure.alternative.contains(&format!("day {floor}.")));
    }
    assert!(width("day 4,294,967,295", Face::Bold, SMALL) < 100.0);
}
