//! One declaration of a key gives its field, its reader, its row in the guide and its suggestion.
//!
//! ```text
//! keys! {
//!     /// How hours become days.
//!     pub struct CrewPolicy in "`crew`" {
//!         people: At<Amount> = "people", usual "2", "in the crew", "3", then plain;
//!         notes: Option<String> = "notes", none, "what the office should know", "a dog";
//!     }
//! }
//! ```
//!
//! A key is `required`, or has a `usual` value that is read where it is left out, or it may be
//! missing: then `none`, or `else` and a word or two on what holds instead. Its type says how it
//! is read and what the guide calls it, unless `as` names it better; `by` names another reader,
//! `of` the keys that this one reads below it, and `then` looks at what was read. `..` takes in
//! all keys of another declaration, and `then` behind the bracket looks at the whole. Every key
//! is read before one that could not be stops the group; who hands back a plain value, and no
//! `Read` of it, never does.

use super::fields::{Below, FieldTable, Fields, IfLeftOut};
use super::place::{At, Place};
use super::problem::{Problem, Problems, Read};
use super::tree::Node;
use super::written::Written;
use std::collections::BTreeMap;

/// A type that a key can have.
pub trait FromKey: Sized {
    /// A word or two for the guide.
    const KIND: &'static str;

    /// The keys below it, or below each of its lines or names.
    const BELOW: Below = Below::Nothing;

    fn from_key(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Read<Self>;
}

/// Keys that belong together, as `keys!` declares them.
pub trait Group: Sized {
    const TABLE: &'static FieldTable;

    fn read(fields: &Fields<'_>, problems: &mut Problems) -> Read<Self>;
}

/// What stands after a key of the owner's own, or on a line of a list, with its name.
pub trait FromLine: Sized {
    /// The keys that may stand on the line.
    const BELOW: Below = Below::Nothing;

    fn from_line(name: At<String>, node: &Node, problems: &mut Problems) -> Read<Self>;
}

/// The lines of a list that have one name each.
impl<T: FromLine> FromKey for Vec<T> {
    const KIND: &'static str = "list";
    const BELOW: Below = T::BELOW;

    fn from_key(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Read<Self> {
        fields.unless_left_out(key, problems)?;
        let lines = fields.named(key, problems).into_iter();
        Ok(lines
            .filter_map(|(name, node)| T::from_line(name, node, problems).ok())
            .collect())
    }
}

/// A group that stands after a key, as `keys!` makes them.
pub trait Keyed: Group {}

impl Node {
    /// The keys of a group that has a name, read.
    pub fn group_called<G: Group>(&self, name: At<String>, problems: &mut Problems) -> Read<G> {
        G::read(&self.fields(G::TABLE, problems)?.called(name), problems)
    }

    /// The keys of a group, read.
    pub fn group<G: Group>(&self, problems: &mut Problems) -> Read<G> {
        G::read(&self.fields(G::TABLE, problems)?, problems)
    }
}

/// A group that was left out has the usual value of every key.
impl<G: Keyed> FromKey for G {
    const KIND: &'static str = "keys";
    const BELOW: Below = Below::Keys(G::TABLE);

    fn from_key(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Read<Self> {
        match fields.unless_left_out(key, problems)? {
            Some(node) => node.group(problems),
            None => G::read(&Fields::empty(G::TABLE, fields.heading()), problems),
        }
    }
}

/// What is missing or could not be read counts as left out, once it is reported.
impl<G: Keyed> FromKey for Option<G> {
    const KIND: &'static str = "keys";
    const BELOW: Below = Below::Keys(G::TABLE);

    fn from_key(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Read<Self> {
        let node = fields.unless_left_out(key, problems).ok().flatten();
        Ok(node.and_then(|node| node.group(problems).ok()))
    }
}

impl<T: Written> FromKey for At<T> {
    const KIND: &'static str = T::KIND;

    fn from_key(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Read<Self> {
        fields.need(key, problems)
    }
}

/// What could not be read counts as left out, once it is reported.
impl<T: Written> FromKey for Option<At<T>> {
    const KIND: &'static str = T::KIND;

    fn from_key(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Read<Self> {
        Ok(fields.read(key, problems))
    }
}

/// Where the group stands, for `..` among its keys.
impl Group for Place {
    const TABLE: &'static FieldTable = NO_KEYS;

    fn read(fields: &Fields<'_>, _: &mut Problems) -> Read<Self> {
        Ok(fields.heading())
    }
}

const NO_KEYS: &FieldTable = &FieldTable {
    name: "",
    before: &[],
    fields: &[],
    includes: &[],
};

/// What the owner calls the group, for `^` or `..` among its keys.
impl Group for At<String> {
    const TABLE: &'static FieldTable = NO_KEYS;

    fn read(fields: &Fields<'_>, _: &mut Problems) -> Read<Self> {
        let name = fields.name().cloned();
        Ok(name.unwrap_or(At::new(String::new(), fields.heading())))
    }
}

/// A group by each name that the owner chose; what could not be read is left out.
impl<G: Keyed> FromKey for BTreeMap<String, G> {
    const KIND: &'static str = "keys by name";
    const BELOW: Below = Below::Each(&[G::TABLE]);

    fn from_key(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Read<Self> {
        let mut found = BTreeMap::new();
        let Some(node) = fields.unless_left_out(key, problems)? else {
            return Ok(found);
        };
        for entry in node.entries(&format!("`{key}`"), problems) {
            if let Ok(group) = entry.node.group(problems) {
                found.insert(entry.key.clone(), group);
            }
        }
        Ok(found)
    }
}

/// Types of keys whose place nobody asks for.
macro_rules! placeless {
    ($($type:ty)*) => { $(
        impl $crate::reading::FromKey for $type {
            const KIND: &'static str = <$type as $crate::reading::Written>::KIND;

            fn from_key(
                fields: &$crate::reading::Fields<'_>,
                key: &'static str,
                problems: &mut $crate::reading::Problems,
            ) -> $crate::reading::Read<Self> {
                Ok(fields.need::<$type>(key, problems)?.value)
            }
        }

        impl $crate::reading::FromKey for Option<$type> {
            const KIND: &'static str = <$type as $crate::reading::Written>::KIND;

            fn from_key(
                fields: &$crate::reading::Fields<'_>,
                key: &'static str,
                problems: &mut $crate::reading::Problems,
            ) -> $crate::reading::Read<Self> {
                Ok(fields.read::<$type>(key, problems).map(|at| at.value))
            }
        }
    )* };
}

pub(crate) use placeless;

placeless! {
    String crate::values::Day crate::values::Percent crate::values::Unit crate::values::UnitPrice
}

/// `yes` or `no`; without a word, what is usual.
impl FromKey for bool {
    const KIND: &'static str = "yes or no";

    fn from_key(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Read<Self> {
        let usual = fields.if_left_out(key) == IfLeftOut::Usual("yes");
        Ok(fields.yes(key, problems).map_or(usual, |yes| yes.value))
    }
}

impl FromKey for Option<At<bool>> {
    const KIND: &'static str = "yes or no";

    fn from_key(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Read<Self> {
        Ok(fields.yes(key, problems))
    }
}

impl FromKey for Vec<At<String>> {
    const KIND: &'static str = "list";

    fn from_key(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Read<Self> {
        let node = fields.unless_left_out(key, problems)?;
        Ok(node.map_or_else(Vec::new, |node| node.texts(&format!("`{key}`"), problems)))
    }
}

impl FromKey for Vec<String> {
    const KIND: &'static str = "list of sentences";

    fn from_key(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Read<Self> {
        let texts = Vec::<At<String>>::from_key(fields, key, problems)?;
        Ok(texts.into_iter().map(|text| text.value).collect())
    }
}

/// A key that is read together with another one.
#[derive(Clone, Copy, Debug, Default)]
pub struct WithAnother;

impl FromKey for WithAnother {
    const KIND: &'static str = "text";

    fn from_key(_: &Fields<'_>, _: &'static str, _: &mut Problems) -> Read<Self> {
        Ok(WithAnother)
    }
}

/// Text that only the owner reads.
#[derive(Clone, Copy, Debug, Default)]
pub struct Unread;

impl FromKey for Unread {
    const KIND: &'static str = "text";

    fn from_key(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Read<Self> {
        fields.read::<String>(key, problems);
        Ok(Unread)
    }
}

/// The version of a file's keys; there is one so far.
#[derive(Clone, Copy, Debug, Default)]
pub struct FormatOne;

impl FromKey for FormatOne {
    const KIND: &'static str = "number";

    fn from_key(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Read<Self> {
        if let Some(format) = fields.read::<String>(key, problems)
            && format.value != "1"
        {
            let message = format!("this program reads format 1, not `{}`", format.value);
            let problem = Problem::new("unknown-format", message).at(format.place);
            problems.push(problem.help("write `format: 1`, or use a newer program"));
        }
        Ok(FormatOne)
    }
}

/// What a reader or a look hands back: a value in any case, or a `Read` of one.
pub trait Given<T> {
    fn given(self) -> Read<T>;
}

impl<T> Given<T> for T {
    fn given(self) -> Read<T> {
        Ok(self)
    }
}

impl<T> Given<T> for Read<T> {
    fn given(self) -> Read<T> {
        self
    }
}

macro_rules! keys {
    // What holds where the key is left out.
    (@left required) => { $crate::reading::IfLeftOut::Required };
    (@left none) => { $crate::reading::IfLeftOut::Nothing };
    (@left usual $value:literal) => { $crate::reading::IfLeftOut::Usual($value) };
    (@left else $words:literal) => { $crate::reading::IfLeftOut::Else($words) };
    // What the guide calls it: the word given, or that of its type.
    (@kind $type:ty, $kind:literal) => { $kind };
    (@kind $type:ty,) => { <$type as $crate::reading::FromKey>::KIND };
    // The keys below it: those of its type, or of the group that another reader reads.
    (@below $type:ty,) => { <$type as $crate::reading::FromKey>::BELOW };
    (@below $type:ty, $by:path) => { $crate::reading::Below::Nothing };
    (@below $type:ty, $by:path, $($below:ty),+) => {
        $crate::reading::Below::Each(&[$(<$below as $crate::reading::Group>::TABLE,)+])
    };
    (@read $type:ty, $by:path) => { $by };
    (@read $type:ty,) => { <$type as $crate::reading::FromKey>::from_key };
    // Values that may come from elsewhere when a group leaves them out.
    (@or [] $($rest:tt)*) => {};
    (@or [usual] $name:ident $($field:ident $key:literal)*) => {
        impl $name {
            /// These values, with `usual` where there are none; and the keys that were taken from it.
            pub fn or(self, usual: &Self) -> (Self, Vec<&'static str>) {
                let mut taken = Vec::new();
                let merged = Self {
                    $($field: self.$field.or_else(|| {
                        let usual = usual.$field.clone()?;
                        taken.push($key);
                        Some(usual)
                    }),)*
                };
                (merged, taken)
            }
        }
    };
    (
        $(#[$about:meta])*
        $vis:vis struct $name:ident in $what:literal $(or $usual:ident)? {
            $(^ $(#[$about_first:meta])* $first:ident: $first_group:ty;)*
            $(
                $(#[$about_field:meta])*
                $field:ident: $type:ty = $key:literal $(as $kind:literal)?, $left:ident $($left_as:literal)?,
                    $meaning:literal, $example:literal $(, by $by:path $(, of $($below:ty),+)?)? $(, then $then:expr)?;
            )*
            $(.. $(#[$about_more:meta])* $more:ident: $group:ty;)*
        } $(then $look:path)?
    ) => {
        $(#[$about])*
        #[derive(Clone, Debug)]
        #[allow(clippy::pub_underscore_fields)]
        $vis struct $name {
            $($(#[$about_first])* pub $first: $first_group,)*
            $($(#[$about_field])* pub $field: $type,)*
            $($(#[$about_more])* pub $more: $group,)*
        }

        impl $crate::reading::Keyed for $name {}

        keys!(@or [$($usual)?] $name $($field $key)*);

        impl $crate::reading::Group for $name {
            const TABLE: &'static $crate::reading::FieldTable = &$crate::reading::FieldTable {
                name: $what,
                before: &[$(<$first_group as $crate::reading::Group>::TABLE,)*],
                fields: &[$($crate::reading::Field {
                    key: $key,
                    kind: keys!(@kind $type, $($kind)?),
                    if_left_out: keys!(@left $left $($left_as)?),
                    meaning: $meaning,
                    example: $example,
                    below: keys!(@below $type, $($by $($(, $below)+)?)?),
                },)*],
                includes: &[$(<$group as $crate::reading::Group>::TABLE,)*],
            };

            fn read(
                fields: &$crate::reading::Fields<'_>,
                problems: &mut $crate::reading::Problems,
            ) -> $crate::reading::Read<Self> {
                $(let $first = <$first_group as $crate::reading::Group>::read(fields, problems);)*
                $(let $field = $crate::reading::Given::<$type>::given(
                    keys!(@read $type, $($by)?)(fields, $key, problems),
                )$(.and_then(|value| {
                    $crate::reading::Given::<$type>::given($then(value, $key, problems))
                }))?;)*
                $(let $more = <$group as $crate::reading::Group>::read(fields, problems);)*
                let group = Self { $($first: $first?,)* $($field: $field?,)* $($more: $more?,)* };
                $(let group = $crate::reading::Given::<Self>::given($look(group, fields, problems))?;)?
                Ok(group)
            }
        }
    };
}

pub(crate) use keys;
