//! The words that attributes may say, each with its meaning.

use crate::press::layout::block::{Align, CellVoice, Inking, RowKind, Rule, TermVoice};
use crate::press::layout::style::Style;

pub(super) const STYLES: [(&str, Style); 9] = [
    ("amount", Style::Amount),
    ("title", Style::Title),
    ("about", Style::About),
    ("key", Style::Key),
    ("section", Style::Section),
    ("notice", Style::Notice),
    ("body", Style::Body),
    ("note", Style::Note),
    ("small", Style::Small),
];
pub(super) const RULES: [(&str, Rule); 4] = [
    ("none", Rule::None),
    ("thin", Rule::Thin),
    ("heavy", Rule::Heavy),
    ("dashed", Rule::Dashed),
];
pub(super) const INKS: [(&str, Inking); 3] = [
    ("ink", Inking::Ink),
    ("soft", Inking::Soft),
    ("accent", Inking::Accent),
];
pub(super) const ALIGNS: [(&str, Align); 3] = [
    ("left", Align::Left),
    ("right", Align::Right),
    ("decimal", Align::Decimal),
];
pub(super) const VOICES: [(&str, CellVoice); 3] = [
    ("plain", CellVoice::Plain),
    ("bold", CellVoice::Bold),
    ("soft", CellVoice::Soft),
];
pub(super) const KINDS: [(&str, RowKind); 4] = [
    ("plain", RowKind::Plain),
    ("group", RowKind::Group),
    ("sum", RowKind::Sum),
    ("total", RowKind::Total),
];
pub(super) const TERM_VOICES: [(&str, TermVoice); 2] =
    [("bold", TermVoice::Bold), ("soft", TermVoice::Soft)];
