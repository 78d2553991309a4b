//! Where a published number comes from, and how far that was read.
//!
//! A document of which nothing was seen is named in `SOURCES.md` alone; to the owner its number is
//! common practice.

use std::fmt;

/// How far a document was really read before its number was used.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Read {
    /// The passage itself was seen, not the whole document.
    Primary,
    /// A page restating the document was seen.
    Secondary,
    /// Common practice: there is no source.
    Practice,
}

/// A document, edition and clause, with how far it was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Source {
    /// Document with its edition, for example `ACI 332-20`.
    pub document: &'static str,
    /// Section or table; empty when none was seen.
    pub clause: &'static str,
    pub read: Read,
}

impl Source {
    pub const fn new(document: &'static str, clause: &'static str, read: Read) -> Self {
        Self {
            document,
            clause,
            read,
        }
    }

    /// A habit of the trade that nobody has published.
    pub const PRACTICE: Self = Self::new("", "", Read::Practice);
}

/// `ACI 332-20, class RF3 (as restated elsewhere)`.
impl fmt::Display for Source {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let how = match self.read {
            Read::Primary => "",
            Read::Secondary => " (as restated elsewhere)",
            Read::Practice => return out.pad("common practice, no source"),
        };
        let clause = match self.clause {
            "" => String::new(),
            clause => format!(", {clause}"),
        };
        out.pad(&format!("{}{clause}{how}", self.document))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn never_claims_more_than_was_read() {
        #[track_caller]
        fn case(read: Read, shown: &str) {
            assert_eq!(
                Source::new("ACI 332-20", "class RF3", read).to_string(),
                shown
            );
        }
        case(Read::Primary, "ACI 332-20, class RF3");
        case(
            Read::Secondary,
            "ACI 332-20, class RF3 (as restated elsewhere)",
        );
        case(Read::Practice, "common practice, no source");
    }
}
