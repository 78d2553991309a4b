//! The name that was probably meant.

/// Longer words are no slip of a name, and comparing them takes time.
const LONGEST: usize = 64;

/// The candidate nearest to a misspelt word, if any is near enough.
///
/// Case does not count, nor which of space, `-` and `_` joins the parts. Near is one slip
/// (a letter more, less, other, or two swapped) for three or four letters, two for up to
/// eight, else three; or one word beginning with the other. On a tie the first wins.
pub fn closest<'a>(word: &str, candidates: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let word = folded(word);
    let length = word.chars().count();
    if length == 0 || LONGEST < length {
        return None;
    }
    let slips_allowed = match length {
        1..=2 => 0,
        3..=4 => 1,
        5..=8 => 2,
        _ => 3,
    };
    let mut best: Option<(usize, &str)> = None;
    for candidate in candidates {
        let slips = distance(&word, &folded(candidate), slips_allowed);
        if slips.is_some_and(|slips| best.is_none_or(|(fewest, _)| slips < fewest)) {
            best = slips.map(|slips| (slips, candidate));
        }
    }
    best.map(|(_, candidate)| candidate)
}

/// Slips between two words, or one more than allowed where one begins with the other.
fn distance(word: &str, candidate: &str, allowed: usize) -> Option<usize> {
    if LONGEST < candidate.chars().count() {
        return None;
    }
    let slips = strsim::osa_distance(word, candidate);
    if slips <= allowed {
        return Some(slips);
    }
    let begins = 3 <= word.chars().count() && candidate.starts_with(word)
        || 3 <= candidate.chars().count() && word.starts_with(candidate);
    begins.then_some(allowed + 1)
}

fn folded(word: &str) -> String {
    word.chars()
        .map(|letter| {
            if letter == '-' || letter == '_' {
                ' '
            } else {
                letter
            }
        })
        .flat_map(char::to_lowercase)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn finds_the_name_that_was_meant() {
        #[track_caller]
        fn case(word: &str, expected: Option<&str>) {
            let names = [
                "thickness",
                "finish",
                "fall",
                "rebar-4",
                "rebar-6",
                "ft",
                "in",
            ];
            assert_eq!(closest(word, names), expected, "{word}");
        }

        case("thicknes", Some("thickness"));
        case("Thickness", Some("thickness"));
        case("FINISH", Some("finish"));
        case("fnish", Some("finish"));
        case("fniish", Some("finish"));
        case("flal", Some("fall"));
        case("rebar-5", Some("rebar-4"));
        case("rebar 6", Some("rebar-6"));
        case("rebar_6", Some("rebar-6"));
        case("thick", Some("thickness"));
        case("finishing", Some("finish"));
        case("fi", None);
        case("colour", None);
        case("mm", None);
        case("", None);
        case(&"x".repeat(100), None);
    }
}
