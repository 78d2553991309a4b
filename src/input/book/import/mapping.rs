//! The owner's mapping: which column is what, which article is which item, which word which unit.

use std::collections::BTreeMap;
use std::str::FromStr;

use rust_decimal::Decimal;

use crate::input::book::tables;
use crate::reading::{At, Entry, Fields, Node, Place, Problem, Problems, words};
use crate::values::{Amount, Unit, Unreadable};

/// How one supplier's list is read into one book.
#[derive(Clone, Debug)]
pub struct Mapping {
    pub columns: Columns,
    pub separator: Separator,
    pub units: Units,
    /// In the order of the file; no article twice.
    pub items: Vec<Mapped>,
}

/// What the columns are called in the head of the list.
#[derive(Clone, Debug)]
pub struct Columns {
    pub article: At<String>,
    pub price: At<String>,
    pub unit: At<String>,
    pub from: Option<At<String>>,
    pub place: Place,
}

/// An article of the list and the item of the book it is.
#[derive(Clone, Debug)]
pub struct Mapped {
    pub article: At<String>,
    pub item: At<String>,
    /// The price is for so many of the list's unit; above zero.
    pub per: Decimal,
    /// Words that mean something else with this article than with others.
    pub units: Units,
}

/// How much of our unit one of the list's is, by the list's word.
pub type Units = BTreeMap<String, Amount>;

words! {
    /// What stands between two columns.
    pub enum Separator(
        "unknown-word",
        "`{}` is not a separator this program knows by name",
        one_of
    ) {
        Comma "comma";
        Semicolon "semicolon";
        Tab "tab";
        Bar "bar";
    }
}

impl Separator {
    pub const fn byte(self) -> u8 {
        match self {
            Self::Comma => b',',
            Self::Semicolon => b';',
            Self::Tab => b'\t',
            Self::Bar => b'|',
        }
    }
}

/// `cu yd`, or `100 pieces`.
struct OneIs(Amount);

crate::reading::written::written! { OneIs = "word"; }

impl FromStr for OneIs {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let amount = Amount::one_or_more(text)?;
        if amount.unit == Unit::Plain || amount.value.is_zero() {
            return Err(Unreadable::new(
                "bad-quantity",
                format!("`{text}` is not so much of a unit"),
                "write what one of it is here, for example `cu yd` or `100 pieces`",
            ));
        }
        Ok(Self(amount))
    }
}

/// Reads a mapping; what cannot be read is reported.
pub fn read(node: &Node, problems: &mut Problems) -> Option<Mapping> {
    let fields = node.fields(&tables::MAPPING, problems).ok()?;
    let _ = <crate::reading::FormatOne as crate::reading::FromKey>::from_key(
        &fields, "format", problems,
    );
    let columns = fields
        .required("columns", problems)
        .ok()
        .and_then(|node| columns(node, problems));
    let separator = fields.need("separator", problems).ok();
    let units = units(&fields, problems);
    let items: Vec<Mapped> = fields
        .required("items", problems)
        .ok()
        .map(|node| node.entries("`items`", problems))
        .unwrap_or_default()
        .into_iter()
        .filter_map(|entry| mapped(entry, problems))
        .collect();
    twice(&items, problems);
    Some(Mapping {
        columns: columns?,
        separator: separator?.value,
        units,
        items,
    })
}

fn columns(node: &Node, problems: &mut Problems) -> Option<Columns> {
    let fields = node.fields(&tables::COLUMNS, problems).ok()?;
    let mut named = |key| {
        fields
            .required(key, problems)
            .ok()
            .and_then(|_| fields.read::<String>(key, problems))
    };
    let (article, price, unit) = (named("article"), named("price"), named("unit"));
    let from = fields.read::<String>("from", problems);
    Some(Columns {
        article: article?,
        price: price?,
        unit: unit?,
        from,
        place: fields.heading(),
    })
}

fn units(fields: &Fields<'_>, problems: &mut Problems) -> Units {
    let entries = fields
        .node("units")
        .map(|node| node.entries("`units`", problems))
        .unwrap_or_default();
    let one = |entry: &Entry| {
        let OneIs(amount) = entry.node.read(problems).ok()?;
        Some((entry.key.clone(), amount))
    };
    entries.into_iter().filter_map(one).collect()
}

/// An article and the name of its item, or the keys that say more.
fn mapped(entry: &Entry, problems: &mut Problems) -> Option<Mapped> {
    let article = At {
        value: entry.key.clone(),
        place: entry.key_place,
    };
    if !entry.node.is_map() {
        let name = entry
            .node
            .text(&format!("`{}`", entry.key), problems)
            .ok()?;
        return Some(Mapped {
            article,
            item: At {
                value: name.to_owned(),
                place: entry.node.place,
            },
            per: Decimal::ONE,
            units: Units::new(),
        });
    }
    let fields = entry.node.fields(&tables::MAPPED, problems).ok()?;
    let item = fields
        .required("item", problems)
        .ok()
        .and_then(|_| fields.read::<String>("item", problems));
    let per = fields
        .need("per", problems)
        .ok()
        .and_then(|per| crate::input::checks::in_unit(per, Unit::Plain, "per", problems).ok());
    let units = units(&fields, problems);
    let per = per?;
    if per.value.value.is_zero() {
        problems.push(
            Problem::new("not-above-zero", "a price for none of it says nothing")
                .at(per.place)
                .help("write how many the list's price is for, such as `per: 100`"),
        );
        return None;
    }
    Some(Mapped {
        article,
        item: item?,
        per: per.value.value,
        units,
    })
}

/// Two articles cannot both say what one item costs.
fn twice(items: &[Mapped], problems: &mut Problems) {
    let mut seen: BTreeMap<&str, &Mapped> = BTreeMap::new();
    for one in items {
        let Some(first) = seen.insert(&one.item.value, one) else {
            continue;
        };
        let message = format!(
            "`{}` and `{}` are both the item `{}`",
            first.article.value, one.article.value, one.item.value
        );
        problems.push(
            Problem::new("item-mapped-twice", message)
                .at(one.item.place)
                .also(first.item.place, "the first")
                .help("leave the article you buy, and take the other out"),
        );
    }
}
