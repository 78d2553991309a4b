//! What the parser cannot read, in a contractor's words.

use super::quotes;
use super::scene::Scene;
use crate::reading::place::Place;
use crate::reading::problem::Problem;
use serde_yaml::granit_parser::{ErrorKind, ScanError};

/// The problem behind a parser error. Its place is the spot to mend.
pub(super) fn problem(error: &ScanError, scene: &Scene) -> Problem {
    use ErrorKind as Kind;
    if !scene.tabs_mended
        && let Some(tab) = scene.tab()
    {
        return tab;
    }
    match error.kind() {
        Kind::UnclosedQuotedScalar | Kind::DocumentIndicatorInQuotedScalar => {
            quotes::unclosed(scene.place)
        }
        Kind::InvalidTrailingSingleQuotedScalar
        | Kind::InvalidTrailingDoubleQuotedScalar
        | Kind::InvalidQuotedScalarIndent => quotes::goes_on(scene),
        Kind::UnknownQuotedScalarEscape
        | Kind::InvalidQuotedScalarHexEscape
        | Kind::InvalidLowSurrogateHexEscape
        | Kind::InvalidLowSurrogate
        | Kind::MissingLowSurrogate
        | Kind::UnpairedLowSurrogate
        | Kind::InvalidUnicodeEscape => quotes::backslash(scene.place),
        Kind::RecursionLimitExceeded => super::too_deep(scene.place),
        _ if scene.bracket.is_some() => scene.bracket_problem(),
        Kind::UnexpectedEofFlowSequence
        | Kind::UnexpectedEofFlowMapping
        | Kind::UnexpectedEofImplicitFlowMapping
        | Kind::MisplacedFlowCollectionEnd
        | Kind::MismatchedFlowCollectionEnd { .. }
        | Kind::UnclosedFlowCollection { .. } => scene.bracket_problem(),
        Kind::MappingValueNotAllowed | Kind::InvalidMappingValueWhitespace => scene.second_colon(),
        Kind::SimpleKeyExpected | Kind::InvalidSimpleKey => scene.no_key(),
        Kind::ExpectedBlockMappingKey
        | Kind::ExpectedBlockSequenceEntry
        | Kind::InvalidIndentation
        | Kind::UnexpectedEofBlockMapping
        | Kind::UnexpectedEofBlockSequence => scene.out_of_line(),
        Kind::BlockSequenceEntryNotAllowed | Kind::InvalidBlockEntryWhitespace => Problem::new(
            "list-on-key-line",
            "a list cannot start on the line of its key",
        )
        .at(scene.place)
        .help("write each item on its own line below the key, after a dash: `- item`"),
        Kind::UnexpectedCharacter { character } => scene.character(*character),
        _ => scene.other(error),
    }
}

impl Scene<'_> {
    pub(super) fn spot(&self, start: usize, length: usize) -> Place {
        let offset = |byte: usize| u32::try_from(byte).unwrap_or(u32::MAX);
        Place {
            start: offset(start),
            end: offset(start + length),
            ..self.place
        }
    }

    fn character(&self, character: char) -> Problem {
        if character.is_control() {
            let message = format!(
                "a character that cannot be seen stands here ({})",
                character.escape_unicode()
            );
            return Problem::new("stray-character", message)
                .at(self.place)
                .help("delete it and type the line again");
        }
        let (line, line_start) = self.sources.line(self.place);
        let value = line
            .get(self.place.start as usize - line_start..)
            .unwrap_or("")
            .trim_end();
        let message = format!("a value cannot start with `{character}` unless it is in quotes");
        Problem::new("needs-quotes", message)
            .at(self.spot(self.place.start as usize, value.len()))
            .help(quotes::quoted("", value))
    }

    fn other(&self, error: &ScanError) -> Problem {
        Problem::new("not-yaml", format!("this cannot be read as YAML: {}", error.info()))
            .at(self.place)
            .help("write keys and values as in the other lines; put quotes round a value with unusual signs")
    }
}
