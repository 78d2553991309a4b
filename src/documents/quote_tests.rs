//! The quote's pages: complete, inside the margins, nothing on top of anything else.

use super::quote_document;
use super::views::quote::{
    Cancellation, ChoiceGroup, ChoiceItem, CombinationAmount, CombinationRow, Combinations,
    QuoteView, Term,
};
use crate::press::drawing::{Drawing, Path, Point, Rgb, Shape, Size, Step, Stroke};
use crate::press::page::{Document, Ink, Mark, Owner, Page, Role};
use crate::press::text::width;
use std::collections::BTreeMap;

/// Frames in place of real figures.
fn figures() -> BTreeMap<String, Drawing> {
    let frame = |height: f32, alternative: &str| {
        let corner = |x, y| Point { x, y };
        Drawing {
            size: Size {
                width: 516.0,
                height,
            },
            shapes: vec![Shape::Path(Path {
                steps: vec![
                    Step::Move(corner(0.5, 0.5)),
                    Step::Line(corner(515.5, 0.5)),
                    Step::Line(corner(515.5, height - 0.5)),
                    Step::Line(corner(0.5, height - 0.5)),
                    Step::Close,
                ],
                stroke: Some(Stroke {
                    color: Rgb(0xa9, 0xa3, 0x9a),
                    width: 0.4,
                    dash: Vec::new(),
                }),
                fill: None,
            })],
            alternative: alternative.to_owned(),
        }
    };
    BTreeMap::from([
        ("plan".to_owned(), frame(252.0, "Plan of the patio")),
        ("cure".to_owned(), frame(288.0, "Strength by day")),
    ])
}

fn pages(view: &QuoteView) -> Document {
    quote_document(view, &figures()).unwrap_or_else(|error| panic!("{error}"))
}

/// Views that are as long, as short or as wide as quotes get.
fn stress_views() -> Vec<(String, QuoteView)> {
    let changed = |name: &str, change: &dyn Fn(&mut QuoteView)| {
        let mut view = QuoteView::sample();
        change(&mut view);
        (name.to_owned(), view)
    };
    vec![
        changed("long scope", &long_scope),
        changed("many options", &many_options),
        changed("nothing optional", &nothing_optional),
        changed("long words", &long_words),
        changed("long legal text", &long_legal_text),
        changed("all at once", &|view| {
            long_scope(view);
            many_options(view);
            long_words(view);
            long_legal_text(view);
        }),
        changed("wide combinations", &|view| {
            let mut grid = Combinations {
                note: "tax included".into(),
                heads: Vec::new(),
                rows: rows(16, 4),
            };
            for head in ["plain", "sealed", "colored", "sealed and colored"] {
                grid.heads.push(head.into());
            }
            view.combinations = Some(grid);
        }),
    ]
}

fn rows(count: usize, amounts: usize) -> Vec<CombinationRow> {
    (0..count)
        .map(|at| CombinationRow {
            name: format!("Washed pebble border, sealer and step light {at}"),
            amounts: (0..amounts)
                .map(|_| CombinationAmount {
                    text: "$1,012,200.60".into(),
                    as_quoted: at == 0,
                })
                .collect(),
        })
        .collect()
}

fn long_scope(view: &mut QuoteView) {
    view.scope = (0..20)
        .map(|at| Term {
            word: format!("Part {at}"),
            text: "patio 24 × 20 ft and walk 22 × 4 ft, 4 in thick, 520 sq ft in all; one step"
                .into(),
        })
        .collect();
    view.not_included = (0..12)
        .map(|at| {
            format!("Thing {at} that somebody else must see to before the crew can come in June")
        })
        .collect();
}

fn many_options(view: &mut QuoteView) {
    let choices = view.choices.as_mut().expect("the sample has choices");
    choices.groups = (0..5)
        .map(|group| ChoiceGroup {
            question: format!("Question {group}, about the border along the open edges, 60 ft:"),
            how_many: "tick one at most".into(),
            only_one: group % 2 == 0,
            items: (0..4)
                .map(|item| ChoiceItem {
                    title: format!(
                        "Choice {item} with a name so long that it needs a second line \
                                    on any sheet of paper"
                    ),
                    description: "The top skin is washed off to show small round stones, which \
                                  takes another day and a pump on site"
                        .into(),
                    adds: "+ 1,314.40".into(),
                    new_total: "1,013,515.00".into(),
                })
                .collect(),
        })
        .collect();
    view.combinations = Some(Combinations {
        note: "tax included".into(),
        heads: vec![String::new()],
        rows: rows(64, 1),
    });
}

fn nothing_optional(view: &mut QuoteView) {
    view.has_plan = false;
    view.size_statement = Some("Patio, 12 × 15 ft, 180 sq ft".into());
    view.choices = None;
    view.combinations = None;
    view.cure.has_figure = false;
    view.firm.tagline = None;
    view.firm.email = None;
    view.firm.licence = None;
    view.firm.insurance = None;
    view.payments.note = None;
    view.acceptance.has_choices = false;
    view.not_included.truncate(4);
}

fn long_words(view: &mut QuoteView) {
    view.customer = "Dana Example and Robin Example-Longname, Apartment 1204, \
                     18 Sample Lane at the corner of Quarry Road, Upper Quillhaven"
        .into();
    view.title = "A new patio, walk, step, driveway, apron and carport slab behind and beside \
                  your house and garage"
        .into();
    view.total.amount = "$1,012,200.60".into();
    view.acceptance.total = "$1,012,200.60".into();
    view.payments.total = "$1,012,200.60".into();
    view.payments.rows[1].event =
        "When base, forms, steel and the first of the three placements are ready".into();
    view.payments.rows[1].amount = "404,880.24".into();
    view.unit_prices[0].work = "Unbelievablylongwordwithoutanyspaces and old concrete".into();
    view.firm.name = "Larkspur Flatwork and Daughters of Greater Quillhaven".into();
}

fn long_legal_text(view: &mut QuoteView) {
    let paragraph = view.terms[0].clone();
    view.terms = (0..24).map(|_| paragraph.clone()).collect();
    view.cancellation = Some(Cancellation {
        heading: "Your right to cancel".into(),
        text: (0..6).map(|_| paragraph.clone()).collect(),
    });
}

/// A text's place: left, top, right, bottom from ascender to descender.
type Reach = [f32; 4];

fn texts(page: &Page) -> Vec<(Reach, String, Owner)> {
    page.marks
        .iter()
        .filter_map(|mark| match &mark.ink {
            Ink::Glyphs(run) => {
                let last = run
                    .glyphs
                    .iter()
                    .rposition(|glyph| !glyph.text.trim().is_empty())?;
                let words: String = run.glyphs.iter().map(|glyph| glyph.text.as_str()).collect();
                let length = width(&run.glyphs[..=last], run.size);
                let Point { x, y } = run.at;
                // Capital height and a descender of Plex, in parts of the size.
                let reach = [x, y - 0.7 * run.size, x + length, y + 0.2 * run.size];
                Some((reach, words, mark.owner))
            }
            Ink::Path(_) | Ink::Clipped { .. } | Ink::Picture { .. } => None,
        })
        .collect()
}

/// Straight rules of the layout itself, as boxes without height or width.
fn rules(page: &Page) -> Vec<Reach> {
    let points = |mark: &Mark| match &mark.ink {
        Ink::Path(path) if mark.owner == Owner::Layout => match path.steps.as_slice() {
            [Step::Move(from), Step::Line(to)] => Some([from.x, from.y, to.x, to.y]),
            _ => None,
        },
        _ => None,
    };
    page.marks.iter().filter_map(points).collect()
}

fn meet(a: Reach, b: Reach) -> bool {
    const HAIR: f32 = 0.3;
    a[0] + HAIR < b[2] && b[0] + HAIR < a[2] && a[1] + HAIR < b[3] && b[1] + HAIR < a[3]
}

#[track_caller]
fn check_pages(name: &str, document: &Document) {
    for (number, page) in document.pages.iter().enumerate() {
        let texts = texts(page);
        for (at, (reach, words, owner)) in texts.iter().enumerate() {
            let place = format!("{name}, page {}: `{words}` at {reach:?}", number + 1);
            assert!(
                47.9 <= reach[0] && reach[2] <= 564.1,
                "left or right: {place}"
            );
            let bottom = if *owner == Owner::Footer {
                756.0
            } else {
                732.1
            };
            assert!(
                44.0 <= reach[1] && reach[3] <= bottom,
                "above or below: {place}"
            );
            for (other, other_words, _) in &texts[at + 1..] {
                assert!(
                    !meet(*reach, *other),
                    "over `{other_words}` {other:?}: {place}"
                );
            }
            for rule in rules(page) {
                let [left, top, right, bottom] = rule;
                let thick = [left, top - 0.4, right, bottom + 0.4];
                assert!(!meet(*reach, thick), "on the rule {rule:?}: {place}");
            }
        }
        assert!(
            texts
                .iter()
                .any(|(_, _, owner)| matches!(owner, Owner::Node(_))),
            "{name}: page {} is empty",
            number + 1
        );
    }
}

fn all_words(document: &Document) -> String {
    let mut all = String::new();
    for page in &document.pages {
        for (_, words, owner) in texts(page) {
            if matches!(owner, Owner::Node(_)) {
                all.push_str(words.trim());
                all.push(' ');
            }
        }
    }
    all
}

#[test]
fn the_sample_is_three_pages() {
    let document = pages(&QuoteView::sample());
    assert_eq!(document.pages.len(), 3);
    check_pages("sample", &document);
    let words = all_words(&document);
    for expected in [
        "below 8 in (page 2 )",
        "$12,200.60",
        "Price good until June 3, 2026",
    ] {
        let plain = words.replace("page\u{a0}", "page ");
        assert!(
            plain
                .replace(" )", ")")
                .contains(&expected.replace(" )", ")")),
            "{expected} in {plain}"
        );
    }
}

#[test]
fn nothing_overlaps_or_leaves_the_page_however_long_the_quote() {
    for (name, view) in stress_views() {
        check_pages(&name, &pages(&view));
    }
}

#[test]
fn nothing_is_lost_however_long_the_quote() {
    for (name, view) in stress_views() {
        let words = all_words(&pages(&view));
        for expected in view.not_included.iter().chain(&view.assumptions) {
            let last = expected.split(' ').next_back().expect("a text has words");
            let last = last.trim_end_matches(|character| "{}:)".contains(character));
            if !last.contains("page:") {
                assert!(words.contains(last), "{name}: {expected}");
            }
        }
        for group in view.choices.iter().flat_map(|choices| &choices.groups) {
            assert!(
                words.contains(&group.how_many),
                "{name}: {}",
                group.question
            );
        }
        for term in &view.scope {
            assert!(words.contains(&term.word), "{name}: {}", term.word);
            let last = term.text.split(' ').next_back().expect("a text has words");
            assert!(words.contains(last), "{name}: {}", term.text);
        }
    }
}

#[test]
fn one_heading_of_level_one_no_level_skipped_every_figure_bounded() {
    let mut views = stress_views();
    views.push(("sample".into(), QuoteView::sample()));
    for (name, view) in views {
        let document = pages(&view);
        let mut level = 0;
        for node in &document.structure {
            if let Role::Heading(next) = node.role {
                assert!(next <= level + 1, "{name}: from level {level} to {next}");
                level = next;
            }
            if node.role == Role::Figure {
                let (_, [left, top, right, bottom]) = node.bounds.expect("a figure is placed");
                assert!(left < right && top < bottom, "{name}");
            }
        }
    }
}

#[test]
fn the_same_view_gives_the_same_bytes() {
    let once = crate::press::pdf::write(&pages(&QuoteView::sample()));
    let again = crate::press::pdf::write(&pages(&QuoteView::sample()));
    assert_eq!(once, again);
}

#[test]
fn a_character_without_a_sign_is_named() {
    let mut view = QuoteView::sample();
    view.customer = "Dana 漢 Example".into();
    let error = quote_document(&view, &figures()).expect_err("the faces lack this character");
    assert!(error.to_string().contains('漢'), "{error}");
    assert!(error.to_string().contains("Dana"), "{error}");
}

#[test]
fn markup_in_a_string_stays_text() {
    let mut view = QuoteView::sample();
    view.customer = "Dana </p><newpage/> & \"Sons\" <b>".into();
    let document = pages(&view);
    assert_eq!(document.pages.len(), 3);
    assert!(all_words(&document).contains("Dana </p><newpage/> & \"Sons\" <b>"));
}
