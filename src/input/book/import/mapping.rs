//! The owner's mapping: which column is what, which article is which item, which word which unit.

use std::collections::BTreeMap;
use std::str::FromStr;

use rust_decimal::Decimal;

use crate::input::checks::plain;
use crate::reading::keys::{keys, placeless};
use crate::reading::{At, Entry, Fields, FormatOne, Place, Problem, Problems, Read, words};
use crate::values::{Amount, Unit, Unreadable};

keys! {
    /// How one supplier's list is read into one book.
    pub struct Mapping in "a mapping" {
        _format: FormatOne = "format", usual "1", "version of this file's keys", "1";
        columns: Columns = "columns", required, "what the columns of the list are called",
            "{article: Item No., price: Net, unit: UOM}";
        separator: Separator = "separator", usual "comma",
            "what stands between two cells: comma, semicolon, tab or bar", "semicolon";
        units: Units = "units" as "keys by word", none,
            "what the list's words for units are here; a word that the book knows needs no line",
            "{CY: cu yd, EA: piece, C: 100 pieces}", by units;
        /// In the order of the file; no article twice.
        items: Vec<Mapped> = "items" as "keys by article", required,
            "which item of the book an article of the list is",
            "{RM-4000A: ready-mix 4000 air}", by items, of MappedTo;
    }
}

keys! {
    /// What the columns are called in the head of the list.
    pub struct Columns in "`columns`" {
        article: At<String> = "article", required,
            "the supplier's number or name of what is sold", "Item No.";
        price: At<String> = "price", required, "the price, as `1,234.50` or `$1,234.50`", "Net";
        unit: At<String> = "unit", required, "what the price is for", "UOM";
        from: Option<At<String>> = "from", none,
            "the day the price begins, as `2026-05-15` or `5/15/2026`; an empty cell means `--from`",
            "Effective";
        .. place: Place;
    }
}

/// An article of the list and the item of the book it is.
#[derive(Clone, Debug)]
pub struct Mapped {
    pub article: At<String>,
    pub is: MappedTo,
}

keys! {
    /// The item of an article, and how its price is read.
    pub struct MappedTo in "an article" {
        item: At<String> = "item" as "name", required, "an item of the book", "chair";
        /// The price is for so many of the list's unit; above zero.
        per: At<Amount> = "per", usual "1", "the list's price is for so many of its unit", "100", then some;
        /// Words that mean something else with this article than with others.
        units: Units = "units" as "keys by word", none,
            "as `units` above, for this article alone", "{TN: 149 pieces}", by units;
    }
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

placeless! { Separator }

fn units(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Units {
    let mut units = Units::new();
    if let Some(node) = fields.node(key) {
        for entry in node.entries("`units`", problems) {
            if let Ok(OneIs(amount)) = entry.node.read(problems) {
                units.insert(entry.key.clone(), amount);
            }
        }
    }
    units
}

fn items(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Vec<Mapped> {
    let mut items = Vec::new();
    if let Ok(node) = fields.required(key, problems) {
        for entry in node.entries("`items`", problems) {
            items.extend(mapped(entry, problems));
        }
    }
    twice(&items, problems);
    items
}

/// An article and the name of its item, or the keys that say more.
fn mapped(entry: &Entry, problems: &mut Problems) -> Read<Mapped> {
    let is = if entry.node.is_map() {
        entry.node.group(problems)?
    } else {
        MappedTo {
            item: entry.node.text_at(&format!("`{}`", entry.key), problems)?,
            per: At::new(Amount::new(Decimal::ONE, Unit::Plain), entry.node.place),
            units: Units::new(),
        }
    };
    let article = entry.name();
    Ok(Mapped { article, is })
}

fn some(per: At<Amount>, key: &str, problems: &mut Problems) -> Read<At<Amount>> {
    let per = plain(per, key, problems)?;
    if !per.value.value.is_zero() {
        return Ok(per);
    }
    let message = "a price for none of it says nothing";
    let problem = Problem::new("not-above-zero", message).at(per.place);
    let help = "write how many the list's price is for, such as `per: 100`";
    Err(problems.push(problem.help(help)))
}

/// Two articles cannot both say what one item costs.
fn twice(items: &[Mapped], problems: &mut Problems) {
    let mut seen: BTreeMap<&str, &Mapped> = BTreeMap::new();
    for one in items {
        let Some(first) = seen.insert(&one.is.item.value, one) else {
            continue;
        };
        let message = format!(
            "`{}` and `{}` are both the item `{}`",
            first.article.value, one.article.value, one.is.item.value
        );
        problems.push(
            Problem::new("item-mapped-twice", message)
                .at(one.is.item.place)
                .also(first.is.item.place, "the first")
                .help("leave the article you buy, and take the other out"),
        );
    }
}
