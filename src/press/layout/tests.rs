//! Where pages break, and what never parts.

use super::block::{
    Align, Block, CellVoice, Flow, Inking, RowKind, Rule, Section, Table, TableColumn, TableRow,
};
use super::style::{Look, Style};
use super::{LayoutError, paginate};
use crate::press::page::{About, Document, Ink, Owner};
use crate::press::text::{Rich, Span, Voice};
use std::collections::BTreeMap;

fn laid_out(blocks: Vec<Block>) -> Result<Document, LayoutError> {
    let mut all = vec![heading(1, "Title")];
    all.extend(blocks);
    let flow = Flow {
        blocks: all,
        ..Flow::default()
    };
    let about = About {
        title: String::new(),
        author: String::new(),
        subject: String::new(),
        language: "en-US".to_owned(),
        created: 0,
    };
    paginate(&flow, &BTreeMap::new(), &Look::default(), about)
}

fn heading(level: u8, words: &str) -> Block {
    Block::Heading {
        level,
        style: Style::Section,
        gap: 1,
        text: Rich::plain(words),
    }
}

fn paragraph(words: &str) -> Block {
    Block::Paragraph {
        style: Style::Body,
        ink: Inking::Ink,
        gap: 1,
        keep_next: false,
        text: Rich::plain(words),
    }
}

/// Paragraphs of one line each, 18 points high with their gap.
fn filler(count: usize) -> Vec<Block> {
    (0..count)
        .map(|at| paragraph(&format!("row {at}")))
        .collect()
}

/// The words on a page, line by line, without running words.
fn page(document: &Document, number: usize) -> Vec<String> {
    words(document, number, |owner| matches!(owner, Owner::Node(_)))
}

fn words(document: &Document, number: usize, wanted: impl Fn(Owner) -> bool) -> Vec<String> {
    let marks = &document.pages[number].marks;
    let runs = marks.iter().filter_map(|mark| match &mark.ink {
        Ink::Glyphs(run) if wanted(mark.owner) => Some(run),
        _ => None,
    });
    runs.map(|run| {
        let all: String = run.glyphs.iter().map(|glyph| glyph.text.as_str()).collect();
        all.trim().to_owned()
    })
    .collect()
}

#[test]
fn a_heading_never_ends_a_page() {
    for count in 30..40 {
        let mut blocks = filler(count);
        blocks.push(heading(2, "Below"));
        blocks.push(paragraph("its text"));
        let document = laid_out(blocks).expect("all fits");
        for number in 0..document.pages.len() {
            let last = page(&document, number).pop().expect("no page is empty");
            assert_ne!(last, "Below", "after {count} rows");
        }
    }
}

#[test]
fn two_lines_stay_together_at_either_end_of_a_page() {
    let long = "one word after another and so on ".repeat(16);
    for count in 30..40 {
        let mut blocks = filler(count);
        blocks.push(paragraph(&long));
        let document = laid_out(blocks).expect("all fits");
        let parts: Vec<usize> = (0..document.pages.len())
            .map(|number| page(&document, number))
            .map(|lines| lines.iter().filter(|line| line.contains("word")).count())
            .filter(|&lines| lines != 0)
            .collect();
        assert!(parts.iter().all(|&lines| 2 <= lines), "{count}: {parts:?}");
        assert!(5 <= parts.iter().sum::<usize>(), "{count}: {parts:?}");
    }
}

fn table(rows: usize) -> Block {
    let column = |width, align| TableColumn {
        width,
        align,
        voice: CellVoice::Plain,
    };
    let row = |kind, name: String, amount: &str| TableRow {
        kind,
        cells: vec![Rich::plain(name).into(), Rich::plain(amount).into()],
    };
    let mut all: Vec<TableRow> = (0..rows)
        .map(|at| row(RowKind::Plain, format!("line {at}"), "1.5"))
        .collect();
    all.push(row(RowKind::Total, "Total".to_owned(), "10.25"));
    Block::Table(Table {
        columns: vec![column(0, Align::Left), column(60, Align::Decimal)],
        head: Some(vec![Rich::plain("what"), Rich::plain("amount")]),
        rows: all,
        head_beside_title: false,
        close: false,
    })
}

#[test]
fn a_long_table_repeats_its_head_and_keeps_its_total_with_a_row() {
    for rows in 30..80 {
        let document = laid_out(vec![table(rows)]).expect("all fits");
        let count = document.pages.len();
        for number in 1..count {
            let head = words(&document, number, |owner| owner == Owner::Header);
            assert_eq!(head, ["what", "amount"], "{rows} rows");
        }
        let last = page(&document, count - 1);
        let total = last.iter().position(|words| words == "Total");
        assert!(total.is_some_and(|at| 2 <= at), "{rows}: {last:?}");
    }
}

#[test]
fn amounts_stand_on_one_decimal_point() {
    let document = laid_out(vec![table(3)]).expect("all fits");
    let points: Vec<i32> = document.pages[0]
        .marks
        .iter()
        .filter_map(|mark| match &mark.ink {
            Ink::Glyphs(run) => {
                let at = run.glyphs.iter().position(|glyph| glyph.text == ".")?;
                let before = crate::press::text::width(&run.glyphs[..at], run.size);
                #[allow(
                    clippy::cast_possible_truncation,
                    reason = "hundredths of points on a page"
                )]
                Some(((run.at.x + before) * 100.0).round() as i32)
            }
            _ => None,
        })
        .collect();
    assert_eq!(points.len(), 4);
    assert!(
        points.iter().all(|point| (point - points[0]).abs() <= 1),
        "{points:?}"
    );
}

#[test]
fn a_section_moves_whole() {
    for count in 28..38 {
        let mut blocks = filler(count);
        let mut inside = vec![heading(2, "Section")];
        inside.extend(filler(4));
        blocks.push(Block::Section(Section {
            rule: Rule::Thin,
            blocks: inside,
        }));
        let document = laid_out(blocks).expect("all fits");
        let holds = |number| page(&document, number).iter().any(|line| line == "Section");
        let on = (0..document.pages.len())
            .find(|&number| holds(number))
            .expect("the section is somewhere");
        let lines = page(&document, on);
        let title = lines.iter().position(|line| line == "Section");
        assert_eq!(title.map(|at| lines.len() - at), Some(5), "{count}");
    }
}

#[test]
fn page_numbers_in_texts_are_those_of_the_pages() {
    let mut blocks = vec![Block::Paragraph {
        style: Style::Body,
        ink: Inking::Ink,
        gap: 1,
        keep_next: false,
        text: Rich(vec![
            Span::Text("see page ".to_owned(), Voice::Plain),
            Span::PageOf("end".to_owned(), Voice::Plain),
        ]),
    }];
    blocks.extend(filler(90));
    blocks.push(Block::Anchor("end".to_owned()));
    blocks.push(paragraph("the end"));
    let document = laid_out(blocks).expect("all fits");
    let count = document.pages.len();
    assert!(2 < count);
    let first = page(&document, 0);
    assert!(
        first.concat().contains(&format!("see page {count}")),
        "{first:?}"
    );
}

#[test]
fn an_unknown_part_and_a_second_title_are_refused() {
    let lost = Block::Paragraph {
        style: Style::Body,
        ink: Inking::Ink,
        gap: 1,
        keep_next: false,
        text: Rich(vec![Span::PageOf("nowhere".to_owned(), Voice::Plain)]),
    };
    assert_eq!(
        laid_out(vec![lost]).err(),
        Some(LayoutError::UnknownPart {
            name: "nowhere".to_owned()
        })
    );
    assert_eq!(
        laid_out(vec![heading(1, "Another")]).err(),
        Some(LayoutError::Headings { count: 2 })
    );
}

#[test]
fn a_row_taller_than_a_page_is_named() {
    let mut rows = Table {
        columns: vec![TableColumn {
            width: 0,
            align: Align::Left,
            voice: CellVoice::Plain,
        }],
        ..Table::default()
    };
    rows.rows.push(TableRow {
        kind: RowKind::Plain,
        cells: vec![Rich::plain("endless words ".repeat(2000)).into()],
    });
    let error = laid_out(vec![Block::Table(rows)]).expect_err("no page is that tall");
    assert!(error.to_string().contains("endless words"), "{error}");
}
