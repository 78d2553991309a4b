//! The PDF writer, read back by another road: the finished bytes.

mod aloud;
mod reader;
mod sample;
mod shaping;

use flatwork::inside::press::{
    drawing::Face,
    page::{NodeId, StructureRole},
    pdf::{self, Jpeg},
};
use lopdf::Object;

use self::{aloud::Aloud, reader::File, sample::Sample};

/// What a screen reader says of a PDF, one element or content a line.
pub fn spoken(bytes: &[u8]) -> Vec<String> {
    Aloud::read(&File::read(bytes)).lines
}

/// All words on each page, running heads and feet too, which are not heard.
pub fn printed(bytes: &[u8]) -> Vec<String> {
    let file = File::read(bytes);
    let words = |page| file.marked(page).into_iter().map(|mark| mark.text);
    let pages = file.pages().into_iter();
    pages
        .map(|page| words(page).collect::<Vec<_>>().join(" "))
        .collect()
}

/// What is heard in place of each figure.
pub fn alternatives(bytes: &[u8]) -> Vec<String> {
    let file = File::read(bytes);
    let elements = file.0.objects.values();
    elements
        .filter_map(|object| object.as_dict().ok())
        .filter(|element| {
            let kind = element.get(b"S");
            kind.is_ok_and(|kind| *kind == Object::from("Figure"))
        })
        .map(|element| file.text(element, "Alt"))
        .collect()
}

fn file() -> File {
    File::read(&pdf::write(&sample::document()))
}

/// Kept where the validators of `tests/oracle` look for it.
#[test]
fn the_sample_is_written_for_the_validators() {
    let folder = std::path::Path::new(env!("CARGO_TARGET_TMPDIR"));
    std::fs::write(folder.join("sample.pdf"), pdf::write(&sample::document())).unwrap();
}

/// Reading checks on the way that every mark has one owner, and the owner knows it.
#[test]
fn a_screen_reader_hears_everything_once_and_in_order() {
    let expected = include_str!("aloud.txt");
    assert_eq!(Aloud::read(&file()).lines.join("\n") + "\n", expected);
}

/// In a box y counts upward: left, bottom, right, top.
#[test]
fn elements_say_what_kind_they_are() {
    let file = file();
    let attributes = |kind: &str| -> Vec<String> {
        let elements = file
            .0
            .objects
            .values()
            .filter_map(|object| object.as_dict().ok());
        elements
            .filter(|element| {
                element
                    .get(b"S")
                    .is_ok_and(|found| *found == Object::from(kind))
            })
            .map(|element| format!("{:?}", file.dictionary(element, "A")))
            .collect()
    };
    let table = |scope: &str| format!("<</O /Table/Scope /{scope}>>");
    assert_eq!(
        attributes("TH"),
        ["Column", "Column", "Row", "Row", "Row"].map(table)
    );
    assert_eq!(attributes("L"), ["<</O /List/ListNumbering /Disc>>"]);
    assert_eq!(
        attributes("Figure")[1],
        "<</O /Layout/Placement /Block/BBox [72 532 172 592]>>"
    );
}

#[test]
fn the_first_label_tells_how_a_list_is_numbered() {
    #[track_caller]
    fn case(label: Option<&str>, numbering: &str) {
        let mut sample = Sample::new();
        let list = sample.node(StructureRole::List, NodeId(0));
        let item = sample.node(StructureRole::ListItem, list);
        let node = sample.node(StructureRole::Label, item);
        match label {
            Some("") => sample.box_at(node),
            Some(text) => sample.words(node, Face::Regular, 10.0, (72.0, 90.0), text),
            None => {}
        }
        let body = sample.node(StructureRole::ListBody, item);
        sample.words(body, Face::Regular, 10.0, (90.0, 90.0), "No. 4 bars");
        let file = File::read(&pdf::write(&sample.finish()));
        let mut elements = file
            .0
            .objects
            .values()
            .filter_map(|object| object.as_dict().ok());
        let list = elements.find(|element| {
            element
                .get(b"S")
                .is_ok_and(|kind| *kind == Object::from("L"))
        });
        let attributes = file.dictionary(list.unwrap(), "A");
        assert_eq!(
            file.get(attributes, "ListNumbering"),
            &Object::from(numbering),
            "{label:?}"
        );
    }

    case(Some("\u{2022}"), "Disc");
    case(Some("1."), "Decimal");
    case(Some(""), "Square");
    case(None, "None");
}

/// The figure of the sample, as its page paints it: colours, holes, clips, dashes, turned words.
#[test]
fn marks_become_page_content() {
    let file = file();
    let content = file.0.get_page_content(file.pages()[0]);
    let content = String::from_utf8(content).unwrap();
    let figure = content
        .split_once("/Figure")
        .unwrap()
        .1
        .split_once("EMC")
        .unwrap()
        .0;
    assert_eq!(figure.trim_start(), include_str!("figure.txt"));
}

#[test]
fn artifacts_say_what_they_are() {
    let file = file();
    let texts: Vec<(String, String)> = file
        .pages()
        .into_iter()
        .flat_map(|page| file.marked(page))
        .filter(|marked| marked.mcid.is_none())
        .map(|marked| (marked.tag, marked.text))
        .collect();
    let expected = [
        "Larkspur Flatwork",
        "Page 1",
        "Larkspur Flatwork",
        "Page 2",
        "Line",
        "",
    ];
    assert_eq!(
        texts,
        expected.map(|text| ("Artifact".to_owned(), text.to_owned()))
    );
    let content = file.0.get_page_content(file.pages()[1]);
    let content = String::from_utf8_lossy(&content);
    for properties in [
        "/Subtype/Header/Type/Pagination",
        "/Subtype/Footer/Type/Pagination",
        "<</Type/Layout>>",
    ] {
        assert!(content.contains(properties), "{properties}");
    }
}

#[test]
fn the_same_document_gives_the_same_bytes_in_every_thread() {
    let document = sample::document();
    let once = pdf::write(&document);
    let again: Vec<Vec<u8>> = std::thread::scope(|scope| {
        let threads: Vec<_> = (0..8)
            .map(|_| scope.spawn(|| pdf::write(&document)))
            .collect();
        threads
            .into_iter()
            .map(|thread| thread.join().unwrap())
            .collect()
    });
    assert!(again.into_iter().all(|bytes| bytes == once));
}

#[test]
fn another_document_has_another_identity() {
    let identity = |file: &File| format!("{:?}", file.0.trailer.get(b"ID").unwrap());
    let mut other = sample::document();
    other.about.created += 86_400;
    let other = File::read(&pdf::write(&other));
    assert_ne!(identity(&file()), identity(&other));
}

#[test]
fn info_and_metadata_say_the_same() {
    #[track_caller]
    fn case(info: &str, xmp: &str) {
        assert_eq!(info, xmp);
        assert!(!info.is_empty());
    }

    let file = file();
    let info = file.dictionary(&file.0.trailer, "Info");
    let xmp = String::from_utf8(file.stream(file.catalog().get(b"Metadata").unwrap())).unwrap();
    let start = xmp.find("<x:xmpmeta").unwrap();
    let xmp = roxmltree::Document::parse(&xmp[start..xmp.find("<?xpacket end").unwrap()]).unwrap();
    let said = |name: &str| {
        let node = xmp
            .descendants()
            .find(|node| node.tag_name().name() == name)
            .unwrap();
        let text: String = node
            .descendants()
            .filter(roxmltree::Node::is_text)
            .filter_map(|node| node.text())
            .collect();
        text.trim().to_owned()
    };
    case(&file.text(info, "Title"), &said("title"));
    case(&file.text(info, "Author"), &said("creator"));
    case(&file.text(info, "Subject"), &said("description"));
    case(&file.text(info, "Creator"), &said("CreatorTool"));
    case(&file.text(info, "Producer"), &said("Producer"));
    case(&file.text(info, "CreationDate"), "D:20260504000000Z");
    case(&file.text(info, "ModDate"), "D:20260504000000Z");
    case(&said("CreateDate"), "2026-05-04T00:00:00Z");
    case(&said("ModifyDate"), "2026-05-04T00:00:00Z");
    case(&said("title"), "Offer 2026-0041: concrete & <finish>");
    case(&file.text(file.catalog(), "Lang"), &said("language"));
}

/// A viewer steps by the widths in the file; with the gaps it must land where shaping did.
#[test]
fn kerning_survives_the_way_into_the_file() {
    let mut sample = Sample::new();
    let node = sample.node(StructureRole::Paragraph, NodeId(0));
    let text = "AVATAR To Ty, Wa.";
    sample.words(node, Face::Bold, 12.0, (72.0, 90.0), text);
    let shaped: i32 = shaping::shape(Face::Bold, text)
        .iter()
        .map(|glyph| glyph.advance)
        .sum();
    let file = File::read(&pdf::write(&sample.finish()));
    let marked = file.marked(file.pages()[0]);
    let marked = marked.iter().find(|marked| marked.tag == "P").unwrap();
    let expected = f32::from(i16::try_from(shaped).unwrap()) / 1000.0 * 12.0;
    assert!(
        (marked.advance - expected).abs() < 0.001,
        "{} is not {expected}",
        marked.advance
    );
}

/// Counted in the raw bytes, since reading unpacks some of them.
#[test]
fn every_stream_is_packed() {
    let written = pdf::write(&sample::document());
    let count = |part: &[u8]| {
        written
            .windows(part.len())
            .filter(|window| *window == part)
            .count()
    };
    let streams = count(b">>stream\n");
    assert_eq!(count(b"/Filter/"), streams);
    assert!(10 < streams);
}

#[test]
fn the_outline_follows_the_levels() {
    let file = file();
    let outline = file.dictionary(file.catalog(), "Outlines");
    let chapter = file.dictionary(outline, "First");
    let section = file.dictionary(chapter, "First");
    assert_eq!(file.text(chapter, "Title"), "Offer \u{2013} driveway");
    assert_eq!(file.text(section, "Title"), "Lines");
    assert_eq!(file.get(outline, "Count").as_i64().unwrap(), 2);
    assert!(!chapter.has(b"Next") && !section.has(b"First"));
    let destination = file.get(section, "Dest").as_array().unwrap();
    assert_eq!(destination[0].as_reference().unwrap(), file.pages()[0]);
    assert_eq!(destination[3], Object::from(326));
}

#[test]
fn a_photo_keeps_its_points_and_loses_where_it_was_taken() {
    assert!(holds(sample::PHOTO, b"Private Lane") && holds(sample::PHOTO, b"private remark"));
    let written = pdf::write(&sample::document());
    assert!(!holds(&written, b"Private Lane") && !holds(&written, b"private remark"));
    let scan = sample::PHOTO
        .windows(2)
        .position(|pair| pair == b"\xFF\xDA")
        .unwrap();
    assert!(
        holds(&written, &sample::PHOTO[scan..]),
        "the coded points pass through untouched"
    );
}

#[test]
fn a_picture_that_cannot_be_shown_is_refused() {
    #[track_caller]
    fn case(bytes: &[u8], message: &str) {
        let error = Jpeg::read(bytes).unwrap_err();
        assert!(error.starts_with(message), "{error}");
    }

    case(b"\x89PNG\r\n\x1a\n", "this is not a JPEG picture");
    case(&sample::PHOTO[..200], "the JPEG picture cannot be read: ");
}

#[test]
fn a_picture_placed_twice_is_carried_once() {
    let mut document = sample::document();
    let marks = document.pages[1].marks.clone();
    document.pages[1].marks.extend(marks);
    let file = File::read(&pdf::write(&document));
    let is_picture = |object: &&Object| {
        object
            .as_stream()
            .is_ok_and(|stream| stream.dict.has(b"ColorSpace"))
    };
    assert_eq!(file.0.objects.values().filter(is_picture).count(), 1);
}

fn holds(bytes: &[u8], part: &[u8]) -> bool {
    bytes.windows(part.len()).any(|window| window == part)
}
