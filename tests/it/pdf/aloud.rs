//! The structure tree walked as a screen reader does, strict where validators are not.

use std::collections::{BTreeMap, BTreeSet};

use lopdf::{Dictionary, Object, ObjectId};

use super::reader::{File, Marked, name};

/// The structure tree as text, one element or content a line, and what it covers.
pub struct Aloud {
    pub lines: Vec<String>,
    /// Page by its place, number of the mark.
    seen: BTreeSet<(usize, i64)>,
}

impl Aloud {
    /// Walks the tree; panics when a mark is met twice, by the wrong tag, with the wrong
    /// entry in the parent tree, or not at all.
    pub fn read(file: &File) -> Self {
        let root = file.dictionary(file.catalog(), "StructTreeRoot");
        let pages = file.pages();
        let marked: Vec<Vec<Marked>> = pages.iter().map(|page| file.marked(*page)).collect();
        let walk = Walk {
            file,
            pages,
            marked,
            parents: parents(file, root),
        };
        let mut aloud = Self {
            lines: Vec::new(),
            seen: BTreeSet::new(),
        };
        for kid in file.get(root, "K").as_array().expect("kids") {
            walk.element(kid.as_reference().expect("indirect"), 0, &mut aloud);
        }
        for (page, marked) in walk.marked.iter().enumerate() {
            let numbers: Vec<i64> = marked.iter().filter_map(|mark| mark.mcid).collect();
            assert!(
                numbers
                    .iter()
                    .copied()
                    .eq(0..i64::try_from(numbers.len()).expect("few")),
                "numbered in order"
            );
            for mcid in numbers {
                assert!(
                    aloud.seen.contains(&(page, mcid)),
                    "mark {mcid} of page {page} is nobody's kid"
                );
            }
        }
        aloud
    }
}

struct Walk<'a> {
    file: &'a File,
    pages: Vec<ObjectId>,
    marked: Vec<Vec<Marked>>,
    parents: BTreeMap<i64, Object>,
}

impl Walk<'_> {
    fn element(&self, id: ObjectId, depth: usize, aloud: &mut Aloud) {
        let element = self.file.0.get_dictionary(id).expect("an element");
        let tag = name(self.file.get(element, "S"));
        aloud.lines.push(format!("{}{tag}", " ".repeat(depth)));
        let own_page = element
            .get(b"Pg")
            .ok()
            .map(|page| page.as_reference().expect("a page"));
        let Ok(kids) = element.get(b"K") else { return };
        for kid in kids.as_array().expect("kids") {
            if let Ok(mcid) = kid.as_i64() {
                self.mark(
                    own_page.expect("a number alone needs Pg"),
                    mcid,
                    id,
                    &tag,
                    depth,
                    aloud,
                );
                continue;
            }
            if let Ok(below) = kid.as_reference() {
                let parent = self
                    .file
                    .0
                    .get_dictionary(below)
                    .expect("an element")
                    .get(b"P");
                assert_eq!(
                    parent.expect("a parent").as_reference().expect("indirect"),
                    id,
                    "each knows the other"
                );
                self.element(below, depth + 1, aloud);
                continue;
            }
            let kid = kid.as_dict().expect("content elsewhere");
            assert_eq!(name(self.file.get(kid, "Type")), "MCR");
            let page = kid
                .get(b"Pg")
                .and_then(Object::as_reference)
                .expect("a page");
            let mcid = self.file.get(kid, "MCID").as_i64().expect("a number");
            self.mark(page, mcid, id, &tag, depth, aloud);
        }
    }

    fn mark(
        &self,
        page: ObjectId,
        mcid: i64,
        element: ObjectId,
        tag: &str,
        depth: usize,
        aloud: &mut Aloud,
    ) {
        let place = self
            .pages
            .iter()
            .position(|other| *other == page)
            .expect("a page of this file");
        assert!(
            aloud.seen.insert((place, mcid)),
            "mark {mcid} of page {place} has two owners"
        );
        let marked = self.marked[place]
            .iter()
            .find(|marked| marked.mcid == Some(mcid))
            .expect("a mark");
        assert_eq!(marked.tag, tag, "the tag is the element's type");
        let key = self
            .file
            .0
            .get_dictionary(page)
            .expect("a page")
            .get(b"StructParents")
            .expect("a key");
        let entry = &self.parents[&key.as_i64().expect("a number")]
            .as_array()
            .expect("by mark")[usize::try_from(mcid).expect("not negative")];
        assert_eq!(
            entry.as_reference().expect("indirect"),
            element,
            "the parent tree leads back"
        );
        aloud
            .lines
            .push(format!("{}\"{}\"", " ".repeat(depth + 1), marked.text));
    }
}

fn parents(file: &File, root: &Dictionary) -> BTreeMap<i64, Object> {
    let numbers = file
        .get(file.dictionary(root, "ParentTree"), "Nums")
        .as_array()
        .expect("pairs");
    let pair = |pair: &[Object]| (pair[0].as_i64().expect("a key"), pair[1].clone());
    let parents: BTreeMap<i64, Object> = numbers.chunks(2).map(pair).collect();
    let next = file
        .get(root, "ParentTreeNextKey")
        .as_i64()
        .expect("a number");
    assert!(
        parents.keys().copied().eq(0..next),
        "keys from 0, none left out"
    );
    parents
}
