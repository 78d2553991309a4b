//! `house`, `existing concrete, doweled`: what stands at an edge of a slab.

use std::str::FromStr;

use crate::reading::words;
use crate::reading::written::written;
use crate::values::Unreadable;

words! {
    /// What is beyond an edge; it decides forms, strips and joints.
    pub enum EdgeKind {
        /// A form, no strip.
        Open "open";
        /// An isolation strip, no form.
        House "house";
        /// An isolation strip, no form.
        Existing "existing concrete";
        /// An isolation strip, no form.
        Curb "curb";
        /// Another slab of this job, with a strip between and no form.
        Isolated "isolated";
        /// Another slab of the same pour: neither form nor strip.
        Joined "joined";
        /// The end of a pour: a form, and a construction joint.
        Bulkhead "bulkhead";
        /// Dowels that slide, through the strip to concrete that stays.
        DoweledExisting "doweled existing concrete";
        /// Bars bonded into concrete that stays; no strip.
        TiedExisting "tied existing concrete";
        /// A bulkhead crossed by dowels that slide.
        DoweledBulkhead "doweled bulkhead";
        /// A bulkhead crossed by deformed bars.
        TiedBulkhead "tied bulkhead";
        /// A bulkhead with a key: a groove along the first pour that the second fills.
        KeyedBulkhead "keyed bulkhead";
    }
}

/// Bars across an edge.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Pin {
    /// They carry a load across and let the slab move.
    Dowels,
    /// They hold both sides together.
    Ties,
}

impl Pin {
    pub const fn name(self) -> &'static str {
        match self {
            Self::Dowels => "dowels",
            Self::Ties => "ties",
        }
    }
}

impl EdgeKind {
    pub const fn has_form(self) -> bool {
        matches!(
            self,
            Self::Open
                | Self::Bulkhead
                | Self::DoweledBulkhead
                | Self::TiedBulkhead
                | Self::KeyedBulkhead
        )
    }

    /// Whether one pour ends here and another begins: a construction joint.
    pub const fn is_bulkhead(self) -> bool {
        matches!(
            self,
            Self::Bulkhead | Self::DoweledBulkhead | Self::TiedBulkhead | Self::KeyedBulkhead
        )
    }

    pub const fn has_strip(self) -> bool {
        matches!(
            self,
            Self::House | Self::Existing | Self::DoweledExisting | Self::Curb | Self::Isolated
        )
    }

    /// Whether bars cross it, and which.
    pub const fn pin(self) -> Option<Pin> {
        match self {
            Self::DoweledExisting | Self::DoweledBulkhead => Some(Pin::Dowels),
            Self::TiedExisting | Self::TiedBulkhead => Some(Pin::Ties),
            Self::Open
            | Self::House
            | Self::Existing
            | Self::Curb
            | Self::Isolated
            | Self::Joined
            | Self::Bulkhead
            | Self::KeyedBulkhead => None,
        }
    }

    /// The form between two pours, crossed by these bars.
    pub const fn bulkhead(pin: Option<Pin>) -> Self {
        match pin {
            None => Self::Bulkhead,
            Some(Pin::Dowels) => Self::DoweledBulkhead,
            Some(Pin::Ties) => Self::TiedBulkhead,
        }
    }

    /// Whether a hole is drilled for each bar.
    pub const fn is_drilled(self) -> bool {
        matches!(self, Self::DoweledExisting | Self::TiedExisting)
    }
}

written! { EdgeKind = "word"; }

impl FromStr for EdgeKind {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let text = text.trim();
        let text = text.strip_prefix("against ").unwrap_or(text);
        let text = text.strip_prefix("the ").unwrap_or(text);
        let plain = crossed_first(text);
        Self::ALL
            .into_iter()
            .find(|kind| kind.name() == plain)
            .ok_or_else(|| {
                Unreadable::new(
                    "unknown-edge",
                    format!("`{text}` is not a kind of edge"),
                    format!(
                        "write one of {}; an edge is doweled, tied or keyed, never two of them",
                        Self::ALL.map(Self::name).join(", ")
                    ),
                )
            })
    }
}

/// `existing concrete, doweled` said as `doweled existing concrete`.
fn crossed_first(text: &str) -> String {
    let text = text.replace("dowelled", "doweled");
    for how in ["doweled", "tied", "keyed"] {
        if let Some(edge) = text.strip_suffix(how)
            && !edge.trim().is_empty()
        {
            return format!("{how} {}", edge.trim().trim_end_matches(',').trim());
        }
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_what_crosses_an_edge_before_or_after_it() {
        #[track_caller]
        fn case(text: &str, kind: EdgeKind) {
            assert_eq!(text.parse(), Ok(kind), "{text}");
        }
        case("existing concrete", EdgeKind::Existing);
        case(
            "against existing concrete, doweled",
            EdgeKind::DoweledExisting,
        );
        case("doweled existing concrete", EdgeKind::DoweledExisting);
        case("existing concrete, dowelled", EdgeKind::DoweledExisting);
        case("the existing concrete tied", EdgeKind::TiedExisting);
        case("bulkhead, tied", EdgeKind::TiedBulkhead);
        case("bulkhead, keyed", EdgeKind::KeyedBulkhead);
        for kind in EdgeKind::ALL {
            case(kind.name(), kind);
        }
        for text in ["doweled", "tied", "house, doweled", "doweled house"] {
            let refused = text.parse::<EdgeKind>().map_err(|e| e.code);
            assert_eq!(refused, Err("unknown-edge"), "{text}");
        }
    }

    #[test]
    fn a_dowel_keeps_the_strip_and_a_tie_does_not() {
        assert!(EdgeKind::DoweledExisting.has_strip());
        assert!(!EdgeKind::TiedExisting.has_strip());
        for kind in [EdgeKind::DoweledBulkhead, EdgeKind::TiedBulkhead] {
            assert!(kind.has_form() && !kind.has_strip() && !kind.is_drilled());
        }
    }
}
