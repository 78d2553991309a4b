//! Reads a takeoff; what cannot be read is reported and left out.

use std::collections::BTreeSet;

use super::access::{access, way};
use super::lists::{extra_what, list, photos, set, texts};
use super::openings::opening;
use super::options::option_group;
use super::removal::removal;
use super::shape::{flat, shape};
use super::{JobWritten, PourWritten, SectionsWritten, SlabWritten};
use crate::geometry::Compass;
use crate::input::job::options::{MOST, OptionGroup, count};
use crate::input::job::takeoff::{Customer, Extra};
use crate::input::job::{Around, EdgeKind, SlabValues, boxes, tables};
use crate::input::phrases::SizePhrase;
use crate::reading::Group as _;
use crate::reading::{At, Entry, Fields, Node, Problem, Problems};

/// Reads a takeoff; what cannot be read is reported and left out.
pub fn read(node: &Node, problems: &mut Problems) -> Option<JobWritten> {
    read_for(None, node, problems)
}

/// Reads work for a customer who is known already; it may have no slab.
pub fn read_for(
    known: Option<Customer>,
    node: &Node,
    problems: &mut Problems,
) -> Option<JobWritten> {
    let fields = node.fields(&tables::JOB, problems).ok()?;
    let _ = <crate::reading::FormatOne as crate::reading::FromKey>::from_key(
        &fields, "format", problems,
    );
    let may_lack_slabs = known.is_some() && fields.node("slabs").is_none();
    let customer = known.or_else(|| {
        fields
            .required("customer", problems)
            .ok()
            .and_then(|node| customer(node, problems))
    });
    let slabs = if may_lack_slabs {
        Some((Vec::new(), BTreeSet::new()))
    } else {
        fields
            .required("slabs", problems)
            .ok()
            .map(|node| slabs(node, problems))
    };
    let name = fields.read::<String>("job", problems).map(|at| at.value);
    let title = fields.read::<String>("title", problems).map(|at| at.value);
    let measured = fields.read("measured", problems).map(|at| at.value);
    let quoted = fields.read("quoted", problems).map(|at| at.value);
    let pours = fields
        .node("pour")
        .map(|node| pours(node, problems))
        .unwrap_or_default();
    let exposure = fields.need("exposure", problems).ok();
    let access = access(&fields, problems);
    let arranged = crate::input::job::arranged::read(&fields, problems);
    let difficulty = fields.read("difficulty", problems);
    let removals = list(&fields, "remove", problems, removal);
    let extras = list(&fields, "extra", problems, |name, node, problems| {
        Some(Extra {
            what: extra_what(node, problems)?,
            name,
        })
    });
    let sets = fields
        .node("set")
        .map(|node| {
            node.entries("`set`", problems)
                .into_iter()
                .filter_map(|entry| set(entry, problems))
                .collect()
        })
        .unwrap_or_default();
    let fixed_price = fields.read("price", problems);
    let options: Vec<OptionGroup> = fields
        .node("options")
        .map(|node| {
            node.items("`options`", problems)
                .into_iter()
                .filter_map(|item| option_group(item, problems))
                .collect()
        })
        .unwrap_or_default();
    few_enough(&options, &fields, problems);
    let mut texts = |key: &str| {
        fields
            .node(key)
            .map(|node| texts(node, problems))
            .unwrap_or_default()
    };
    let (assumptions, not_included) = (texts("assumptions"), texts("not included"));
    let left_alone = texts("left alone");
    let photos = photos(&fields, problems);
    let site = crate::input::site::read(fields.node("site"), &tables::SITE, problems);
    let _ = fields.read::<String>("notes", problems);
    let plain = |list: Vec<At<String>>| list.into_iter().map(|at| at.value).collect();
    let slabs = slabs?;
    Some(JobWritten {
        place: fields.heading(),
        name,
        title,
        customer: customer?,
        measured,
        quoted,
        exposure: exposure?,
        access: access?,
        arranged,
        difficulty,
        slabs: slabs.0,
        unread: slabs.1,
        pours,
        removals,
        extras,
        sets,
        fixed_price,
        options,
        assumptions: plain(assumptions),
        not_included: plain(not_included),
        left_alone: plain(left_alone),
        site,
        photos,
    })
}

/// The slabs, and the names of those that could not be read.
fn slabs(node: &Node, problems: &mut Problems) -> (Vec<SlabWritten>, BTreeSet<String>) {
    let (mut read, mut unread) = (Vec::new(), BTreeSet::new());
    let entries = node.entries("`slabs`", problems);
    if entries.is_empty() && node.is_map() {
        let problem = Problem::new("no-slabs", "this job has no slab").at(node.heading);
        problems.push(problem.help("name one under `slabs`, for example `patio: 12 ft x 15 ft`"));
    }
    for entry in entries {
        match slab(entry, problems) {
            Some(slab) => read.push(slab),
            None => {
                unread.insert(entry.key.clone());
            }
        }
    }
    (read, unread)
}

/// Every combination is priced and printed, so there is a most.
fn few_enough(options: &[OptionGroup], fields: &Fields<'_>, problems: &mut Problems) {
    let combinations = count(options);
    if combinations <= MOST {
        return;
    }
    let many = match combinations {
        usize::MAX => "far too many".to_owned(),
        combinations => combinations.to_string(),
    };
    let place = fields
        .node("options")
        .map_or(fields.heading(), |node| node.place);
    let message = format!("these options make {many} combinations, and each is priced");
    problems.push(Problem::new("too-many-options", message).at(place).help(format!("{MOST} at most: put those that exclude each other under `choose one`, or make a second quote")));
}

fn customer(node: &Node, problems: &mut Problems) -> Option<Customer> {
    if node.is_map() {
        let fields = node.fields(&tables::CUSTOMER, problems).ok()?;
        let name = fields
            .required("name", problems)
            .ok()
            .and_then(|_| fields.read::<String>("name", problems));
        let address = fields
            .read::<String>("address", problems)
            .map(|at| at.value);
        let _ = (
            fields.read::<String>("email", problems),
            fields.read::<String>("phone", problems),
        );
        return Some(Customer {
            name: name?.value,
            address,
        });
    }
    let text = node.text("the customer", problems).ok()?;
    let (name, address) = text
        .split_once(',')
        .map_or((text, None), |(name, address)| {
            (name, Some(address.trim().to_owned()))
        });
    Some(Customer {
        name: name.trim().to_owned(),
        address,
    })
}

fn slab(entry: &Entry, problems: &mut Problems) -> Option<SlabWritten> {
    let key = At {
        value: entry.key.clone(),
        place: entry.key_place,
    };
    if !entry.node.is_map() {
        let size = entry.node.read::<SizePhrase>(problems).ok()?;
        let shape = flat(
            At {
                value: size,
                place: entry.node.place,
            },
            problems,
        )?;
        return Some(SlabWritten {
            key,
            called: None,
            kind: None,
            shape,
            openings: Vec::new(),
            edges: Vec::new(),
            beside: None,
            on: None,
            values: SlabValues::default(),
            boxes: Vec::new(),
            around: Around::default(),
            sections: SectionsWritten::default(),
        });
    }
    let fields = entry.node.fields(&tables::SLAB, problems).ok()?;
    let values = SlabValues::read(&fields, problems).unwrap_or_default();
    let sections = SectionsWritten::read(&fields, problems);
    let kind = fields.read::<String>("kind", problems);
    let called = fields.read::<String>("called", problems).map(|at| at.value);
    let edges = fields
        .node("edges")
        .map(|node| edges(node, problems))
        .unwrap_or_default();
    let boxes = boxes::read(&fields, problems);
    let around = Around::read(&fields, problems);
    let beside = fields.read("beside", problems);
    let on = fields.read("on", problems);
    let openings = list(&fields, "cut out", problems, opening);
    let shape = shape(&fields, "this slab", problems);
    Some(SlabWritten {
        key,
        called,
        kind,
        shape: shape?,
        openings,
        edges,
        beside,
        on,
        values,
        boxes,
        around,
        sections,
    })
}

fn edges(node: &Node, problems: &mut Problems) -> Vec<(Compass, EdgeKind)> {
    let Some(fields) = node.fields(&tables::EDGES, problems).ok() else {
        return Vec::new();
    };
    Compass::ALL
        .into_iter()
        .filter_map(|side| {
            fields
                .read::<EdgeKind>(side.name(), problems)
                .map(|kind| (side, kind.value))
        })
        .collect()
}

fn pours(node: &Node, problems: &mut Problems) -> Vec<PourWritten> {
    if !node.is_list() {
        return node
            .read(problems)
            .ok()
            .map(|day| PourWritten {
                day: At {
                    value: day,
                    place: node.place,
                },
                slabs: Vec::new(),
                access: None,
            })
            .into_iter()
            .collect();
    }
    let mut found = Vec::new();
    for item in node.items("`pour`", problems) {
        let Some(fields) = item.fields(&tables::PLACEMENT, problems).ok() else {
            continue;
        };
        let day = fields.need("day", problems).ok();
        let slabs = fields
            .required("slabs", problems)
            .ok()
            .map(|node| texts(node, problems))
            .unwrap_or_default();
        let access = fields.node("access").and_then(|node| way(node, problems));
        if let Some(day) = day {
            found.push(PourWritten { day, slabs, access });
        }
    }
    found
}
