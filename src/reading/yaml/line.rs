//! What a line of YAML looks like to a person: indent, dash, key, value.

/// The parts of one line, as far as they can be told apart without its neighbours.
pub(super) struct YamlLine<'a> {
    /// Bytes of white space at the front.
    pub(super) indent: usize,
    /// Bytes of dashes and blanks after that.
    pub(super) dashes: usize,
    /// The rest, without blanks at its end.
    pub(super) rest: &'a str,
}

impl<'a> YamlLine<'a> {
    pub(super) fn of(line: &'a str) -> YamlLine<'a> {
        let unindented = line.trim_start_matches([' ', '\t']);
        let mut rest = unindented;
        while let Some(after) = rest.strip_prefix('-') {
            if !after.is_empty() && !after.starts_with([' ', '\t']) {
                break;
            }
            rest = after.trim_start_matches([' ', '\t']);
        }
        YamlLine {
            indent: line.len() - unindented.len(),
            dashes: unindented.len() - rest.len(),
            rest: rest.trim_end(),
        }
    }

    pub(super) fn is_blank(&self) -> bool {
        self.dashes == 0 && (self.rest.is_empty() || self.rest.starts_with('#'))
    }

    /// The key before the first colon, if it looks like one.
    pub(super) fn key(&self) -> Option<&'a str> {
        let (key, _) = self.rest.split_once(':')?;
        looks_like_key(key).then_some(key)
    }

    /// The key and the text after `: `, if the line has both.
    pub(super) fn key_and_value(&self) -> Option<(&'a str, &'a str)> {
        let key = self.key()?;
        let value = self.rest[key.len() + 1..].strip_prefix(' ')?.trim_start();
        (!value.is_empty()).then_some((key, value))
    }
}

/// The text as it was meant when a colon lacks its space, as in `patio:12 ft`.
///
/// Web addresses and clock times have such colons too, and are left alone.
pub(in crate::reading) fn with_space_after_colon(text: &str) -> Option<String> {
    let text = text.lines().next()?.trim();
    let (key, value) = text.split_once(':')?;
    let missing = !value.is_empty() && !value.starts_with([' ', '/']);
    (looks_like_key(key) && missing).then(|| format!("{key}: {value}"))
}

fn looks_like_key(key: &str) -> bool {
    key.starts_with(char::is_alphabetic)
        && key.chars().count() <= 60
        && key
            .chars()
            .all(|letter| letter.is_alphanumeric() || " -_.'/&+()".contains(letter))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_colon_without_its_space_is_told_from_other_colons() {
        #[track_caller]
        fn case(text: &str, expected: Option<&str>) {
            assert_eq!(with_space_after_colon(text).as_deref(), expected, "{text}");
        }

        case("patio:12 ft", Some("patio: 12 ft"));
        case("back patio:12 ft", Some("back patio: 12 ft"));
        case("https://example.com", None);
        case("7:30", None);
        case("patio: 12 ft", None);
        case("patio:", None);
        case("patio", None);
    }
}
