//! Words that mean something: one line a word gives the enum, its names and how it is read.

/// An enum of words as the owner writes them, one a line.
///
/// With a code, a sentence about the text that is none of them and one of the helps below, it is
/// read from text too. What stands after a word is said behind it in the help.
macro_rules! words {
    (
        $(#[$about:meta])*
        $seen:vis enum $name:ident {
            $($(#[$note:meta])* $variant:ident $word:literal $($aside:literal)?;)+
        }
    ) => {
        $(#[$about])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        $seen enum $name { $($(#[$note])* $variant,)+ }

        impl $name {
            /// In the order in which they are offered and shown.
            $seen const ALL: [Self; [$($word,)+].len()] = [$(Self::$variant,)+];

            /// As the owner writes it.
            $seen const fn name(self) -> &'static str {
                match self { $(Self::$variant => $word,)+ }
            }
        }
    };
    (
        $(#[$about:meta])*
        $seen:vis enum $name:ident ($code:literal, $sentence:literal, $help:ident) {
            $($(#[$note:meta])* $variant:ident $word:literal $($aside:literal)?;)+
        }
    ) => {
        $crate::reading::words! {
            $(#[$about])*
            $seen enum $name { $($(#[$note])* $variant $word;)+ }
        }

        impl std::str::FromStr for $name {
            type Err = $crate::values::Unreadable;

            fn from_str(text: &str) -> Result<Self, Self::Err> {
                let found = Self::ALL.into_iter().find(|one| one.name() == text);
                found.ok_or_else(|| {
                    let known = [$(($word, concat!($(" ", $aside)?)),)+];
                    let help = $crate::reading::words::$help(&known);
                    $crate::values::Unreadable::new($code, format!($sentence, text), help)
                })
            }
        }

        $crate::reading::written::written! { $name = "word"; }
    };
}
pub(crate) use words;

/// A word, and what is said behind it.
type KnownWord = (&'static str, &'static str);

/// Write `a`, `b` or `c`.
pub(crate) fn choose(known: &[KnownWord]) -> String {
    let quoted: Vec<String> = known.iter().map(quoted).collect();
    let (last, others) = quoted.split_last().expect("an enum has a word");
    format!("write {} or {last}", others.join(", "))
}

/// Write `none`, `a`, `b` or `c`.
pub(crate) fn none_or(known: &[KnownWord]) -> String {
    choose(&[&[("none", "")], known].concat())
}

/// Write `a` or `b` or `c`: words that have commas and spaces of their own.
pub(crate) fn either(known: &[KnownWord]) -> String {
    let quoted: Vec<String> = known.iter().map(quoted).collect();
    format!("write {}", quoted.join(" or "))
}

/// Use one of a, b, c.
pub(crate) fn one_of(known: &[KnownWord]) -> String {
    let words: Vec<&str> = known.iter().map(|(word, _)| *word).collect();
    format!("use one of {}", words.join(", "))
}

fn quoted((word, aside): &KnownWord) -> String {
    format!("`{word}`{aside}")
}

#[cfg(test)]
mod tests {
    words! {
        enum Lunch("unknown-word", "nobody eats `{}`", choose) {
            Soup "soup";
            Bread "bread" "(with butter)";
            Fish "fried fish";
        }
    }

    #[test]
    fn a_word_is_read_as_it_is_named_and_others_are_told_all_of_them() {
        for lunch in Lunch::ALL {
            assert_eq!(lunch.name().parse(), Ok(lunch));
        }
        let refused = "Soup".parse::<Lunch>().unwrap_err();
        assert_eq!(refused.message, "nobody eats `Soup`");
        assert_eq!(
            refused.help,
            "write `soup`, `bread` (with butter) or `fried fish`"
        );
    }

    #[test]
    fn words_are_offered_in_the_order_of_the_list() {
        let known = [("sale", ""), ("use", " (what you buy)")];
        for (help, wanted) in [
            (
                super::choose(&known),
                "write `sale` or `use` (what you buy)",
            ),
            (
                super::none_or(&known),
                "write `none`, `sale` or `use` (what you buy)",
            ),
            (
                super::either(&known),
                "write `sale` or `use` (what you buy)",
            ),
            (super::one_of(&known), "use one of sale, use"),
        ] {
            assert_eq!(help, wanted);
        }
    }
}
