//! Reads a takeoff; what cannot be read is reported and left out.

use super::access::{access, way};
use super::lists::{extra_what, list, photos, set, texts};
use super::options::option_group;
use super::removal::removal;
use super::{JobWritten, PourWritten, SectionsWritten, ShapeWritten, SlabWritten};
use crate::input::job::options::{MOST, OptionGroup};
use crate::input::job::takeoff::{Customer, Extra};
use crate::input::job::{EdgeKind, SlabValues, tables};
use crate::input::phrases::{Compass, LegPhrase, SizePhrase};
use crate::reading::{At, Entry, Node, Problem, Problems};

/// Reads a takeoff; what cannot be read is reported and left out.
pub fn read(node: &Node, problems: &mut Problems) -> Option<JobWritten> {
    let fields = node.fields(&tables::JOB, problems)?;
    crate::input::format_one(&fields, problems);
    let customer = fields
        .required("customer", problems)
        .and_then(|node| customer(node, problems));
    let slabs: Option<Vec<SlabWritten>> = fields.required("slabs", problems).map(|node| {
        let entries = node.entries("`slabs`", problems);
        if entries.is_empty() && node.is_map() {
            let problem = Problem::new("no-slabs", "this job has no slab").at(node.heading);
            problems
                .push(problem.help("name one under `slabs`, for example `patio: 12 ft x 15 ft`"));
        }
        let slabs = entries.into_iter();
        slabs.filter_map(|entry| slab(entry, problems)).collect()
    });
    let name = fields.text("job", problems).map(|at| at.value);
    let title = fields.text("title", problems).map(|at| at.value);
    let measured = fields.read("measured", problems).map(|at| at.value);
    let quoted = fields.read("quoted", problems).map(|at| at.value);
    let pours = fields
        .node("pour")
        .map(|node| pours(node, problems))
        .unwrap_or_default();
    let exposure = fields.usual("exposure", problems);
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
    let combinations = options
        .iter()
        .map(|group| group.options.len() + 1)
        .product::<usize>();
    if MOST < combinations {
        let place = fields.node("options").map_or(node.place, |node| node.place);
        let message = format!("these options make {combinations} combinations, and each is priced");
        problems.push(Problem::new("too-many-options", message).at(place).help(format!("{MOST} at most: put those that exclude each other under `choose one`, or make a second quote")));
    }
    let mut texts = |key: &str| {
        fields
            .node(key)
            .map(|node| texts(node, problems))
            .unwrap_or_default()
    };
    let (assumptions, not_included) = (texts("assumptions"), texts("not included"));
    let photos = photos(&fields, problems);
    let _ = fields.text("notes", problems);
    let plain = |list: Vec<At<String>>| list.into_iter().map(|at| at.value).collect();
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
        slabs: slabs?,
        pours,
        removals,
        extras,
        sets,
        fixed_price,
        options,
        assumptions: plain(assumptions),
        not_included: plain(not_included),
        photos,
    })
}

fn customer(node: &Node, problems: &mut Problems) -> Option<Customer> {
    if node.is_map() {
        let fields = node.fields(&tables::CUSTOMER, problems)?;
        let name = fields
            .required("name", problems)
            .and_then(|_| fields.text("name", problems));
        let address = fields.text("address", problems).map(|at| at.value);
        let _ = (
            fields.text("email", problems),
            fields.text("phone", problems),
        );
        return Some(Customer {
            name: name?.value,
            address,
        });
    }
    let text = node.text("the customer", problems)?;
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
        let size = entry.node.read::<SizePhrase>(problems)?;
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
            edges: Vec::new(),
            beside: None,
            on: None,
            values: SlabValues::default(),
            sections: SectionsWritten::default(),
        });
    }
    let fields = entry.node.fields(&tables::SLAB, problems)?;
    let values = SlabValues::read(&fields, problems);
    let sections = SectionsWritten::read(&fields, problems);
    let kind = fields.text("kind", problems);
    let called = fields.text("called", problems).map(|at| at.value);
    let edges = fields
        .node("edges")
        .map(|node| edges(node, problems))
        .unwrap_or_default();
    let beside = fields.read("beside", problems);
    let on = fields.read("on", problems);
    let shape = match (fields.node("size"), fields.node("outline")) {
        (Some(_), Some(outline)) => {
            problems.push(
                Problem::new("two-shapes", "this slab has both a `size` and an `outline`")
                    .at(outline.place)
                    .help("keep the one you measured"),
            );
            None
        }
        (None, Some(outline)) => {
            let sides = outline.items("`outline`", problems);
            let legs: Vec<Option<At<LegPhrase>>> = sides
                .iter()
                .map(|side| {
                    side.read(problems).map(|value| At {
                        value,
                        place: side.place,
                    })
                })
                .collect();
            let legs: Option<Vec<At<LegPhrase>>> = legs.into_iter().collect();
            legs.map(|legs| ShapeWritten::Walked(legs, outline.place))
        }
        (_, None) => fields
            .need("size", problems)
            .and_then(|size| flat(size, problems)),
    };
    Some(SlabWritten {
        key,
        called,
        kind,
        shape: shape?,
        edges,
        beside,
        on,
        values,
        sections,
    })
}

/// A slab's size has no depth in it; its thickness has a key of its own.
fn flat(size: At<SizePhrase>, problems: &mut Problems) -> Option<ShapeWritten> {
    match size.value {
        SizePhrase::Rectangle { .. } | SizePhrase::Circle { .. } => Some(ShapeWritten::Size(size)),
        SizePhrase::Block { .. } | SizePhrase::AreaDeep { .. } => {
            let problem =
                Problem::new("bad-size", "a slab's size is length and width only").at(size.place);
            problems
                .push(problem.help("write `size: 12 ft x 15 ft` and, below it, `thickness: 4 in`"));
            None
        }
    }
}

fn edges(node: &Node, problems: &mut Problems) -> Vec<(Compass, EdgeKind)> {
    let Some(fields) = node.fields(&tables::EDGES, problems) else {
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
        let Some(fields) = item.fields(&tables::PLACEMENT, problems) else {
            continue;
        };
        let day = fields.need("day", problems);
        let slabs = fields
            .required("slabs", problems)
            .map(|node| texts(node, problems))
            .unwrap_or_default();
        let access = fields.node("access").and_then(|node| way(node, problems));
        if let Some(day) = day {
            found.push(PourWritten { day, slabs, access });
        }
    }
    found
}
