//! Which characters a glyph stands for, so that text can be copied, searched and read aloud.

use std::{collections::BTreeMap, fmt::Write};

use super::numbers::hexadecimal;

/// A glyph has one text in the whole file. The shortest and lowest wins, whichever came
/// first: a space over a no-break space, a hyphen over a non-breaking one.
pub fn is_plainer(text: &str, than: &str) -> bool {
    text != than && !text.is_empty() && (than.is_empty() || rank(text) < rank(than))
}

fn rank(text: &str) -> (usize, &str) {
    (text.chars().count(), text)
}

/// The character map (ISO 32000-1, 9.10.3) from glyph numbers to UTF-16.
pub fn map(texts: &BTreeMap<u16, String>) -> String {
    let mut map = String::from(HEAD);
    let texts: Vec<_> = texts.iter().collect();
    // The format allows a hundred entries in one block.
    for block in texts.chunks(100) {
        line(&mut map, format_args!("{} beginbfchar", block.len()));
        for (glyph, text) in block {
            line(&mut map, format_args!("<{glyph:04X}> <{}>", utf16(text)));
        }
        line(&mut map, format_args!("endbfchar"));
    }
    map + TAIL
}

fn line(map: &mut String, text: std::fmt::Arguments) {
    writeln!(map, "{text}").expect("memory takes every character written to it");
}

/// A glyph without text of its own joins the one before: the word joiner says just that.
fn utf16(text: &str) -> String {
    let text = if text.is_empty() { "\u{2060}" } else { text };
    let bytes: Vec<u8> = text.encode_utf16().flat_map(u16::to_be_bytes).collect();
    hexadecimal(&bytes)
}

const HEAD: &str = "/CIDInit /ProcSet findresource begin
12 dict begin
begincmap
/CIDSystemInfo <</Registry (Adobe) /Ordering (UCS) /Supplement 0>> def
/CMapName /Adobe-Identity-UCS def
/CMapType 2 def
1 begincodespacerange
<0000> <FFFF>
endcodespacerange
";

const TAIL: &str = "endcmap
CMapName currentdict /CMap defineresource pop
end
end
";

#[cfg(test)]
mod tests {
    use super::{is_plainer, map};

    #[test]
    fn the_plainest_text_of_a_glyph_wins() {
        #[track_caller]
        fn case(text: &str, than: &str, plainer: bool) {
            assert_eq!(is_plainer(text, than), plainer, "{text:?} than {than:?}");
        }

        case(" ", "\u{a0}", true);
        case("\u{a0}", " ", false);
        case("fi", "", true);
        case("", "fi", false);
        case("-", "\u{2011}", true);
        case("a", "a", false);
        case("ab", "z", false);
    }

    #[test]
    fn maps_beyond_the_first_plane_and_a_hundred_entries() {
        let mut texts: std::collections::BTreeMap<u16, String> =
            (1..=101).map(|glyph| (glyph, "x".to_owned())).collect();
        texts.insert(5, "ffi".to_owned());
        texts.insert(6, "\u{1f3d7}".to_owned());
        let map = map(&texts);
        assert!(
            map.contains("100 beginbfchar") && map.contains("\n1 beginbfchar"),
            "{map}"
        );
        assert!(
            map.contains("<0005> <006600660069>\n<0006> <D83CDFD7>"),
            "{map}"
        );
    }
}
