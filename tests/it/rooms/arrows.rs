//! Which file uses which: the names each file of `src` takes, followed to the file that defines them.
//!
//! Names are followed through `use` and through what a `mod.rs` hands on, so that a file which takes a
//! name from its parent is known to lean on the sibling where the name is made. What only names the parts
//! of a folder (`mod`, and handing on what they make) is no use of them.

use std::collections::{BTreeMap, BTreeSet};

/// Words and signs of Rust, `::` as one sign; without comments, texts and what is built for tests only.
pub fn words(text: &str) -> Vec<String> {
    let letters: Vec<char> = text.chars().collect();
    let is = |at: usize, wanted: &str| {
        wanted
            .chars()
            .enumerate()
            .all(|(more, c)| letters.get(at + more) == Some(&c))
    };
    let part = |c: &char| c.is_alphanumeric() || *c == '_';
    let mut found: Vec<String> = Vec::new();
    let mut at = 0;
    while let Some(&letter) = letters.get(at) {
        let rest = &letters[at..];
        at += if is(at, "//") {
            rest.iter().take_while(|c| **c != '\n').count()
        } else if is(at, "/*") {
            let end = rest.windows(2).position(|next| next == ['*', '/']);
            end.map_or(rest.len(), |end| end + 2)
        } else if letter == '"' {
            text_length(rest)
        } else if is(at, "r\"") || is(at, "r#\"") {
            raw_length(rest)
        } else if letter == '\'' {
            letter_length(rest)
        } else if part(&letter) {
            let word: String = rest.iter().take_while(|c| part(c)).collect();
            let length = word.chars().count();
            found.push(word);
            length
        } else if is(at, "::") {
            found.push("::".to_owned());
            2
        } else {
            if !letter.is_whitespace() {
                found.push(letter.to_string());
            }
            1
        };
    }
    without_tests(&found)
}

/// From one quote to the other.
fn text_length(letters: &[char]) -> usize {
    let mut at = 1;
    while at < letters.len() && letters[at] != '"' {
        at += if letters[at] == '\\' { 2 } else { 1 };
    }
    at + 1
}

/// `r"…"` and `r#"…"#`.
fn raw_length(letters: &[char]) -> usize {
    let hashes = letters[1..].iter().take_while(|c| **c == '#').count();
    let end: String = format!("\"{}", "#".repeat(hashes));
    let body: String = letters[hashes + 2..].iter().collect();
    let length = body.find(&end).unwrap_or(body.len());
    hashes + 2 + body[..length].chars().count() + end.len()
}

/// `'a'` and `'\n'` are letters, and `'a` alone is a lifetime.
fn letter_length(letters: &[char]) -> usize {
    match letters {
        [_, '\\', _, ..] => 3 + letters[3..].iter().take_while(|c| **c != '\'').count(),
        [_, _, '\'', ..] => 3,
        _ => 1,
    }
}

fn without_tests(words: &[String]) -> Vec<String> {
    const MARK: [&str; 7] = ["#", "[", "cfg", "(", "test", ")", "]"];
    let mut kept = Vec::new();
    let mut at = 0;
    while at < words.len() {
        let marked = words[at..].iter().take(MARK.len()).eq(MARK.iter());
        if marked {
            at += MARK.len() + item_length(&words[at + MARK.len()..]);
        } else {
            kept.push(words[at].clone());
            at += 1;
        }
    }
    kept
}

/// To the `;` or the last bracket of the item that begins here.
fn item_length(words: &[String]) -> usize {
    let mut open = 0_i32;
    for (at, word) in words.iter().enumerate() {
        match word.as_str() {
            "{" | "(" | "[" => open += 1,
            "}" | ")" | "]" => open -= 1,
            _ => {}
        }
        if open == 0 && (word == ";" || word == "}") {
            return at + 1;
        }
    }
    words.len()
}

/// The names from the top of the house to a module, or as a path was written.
type Path = Vec<String>;

/// One file of `src`.
#[derive(Debug, Default)]
struct Module {
    file: String,
    /// Files of its own.
    children: BTreeSet<String>,
    /// Names it has from elsewhere, by the name they have here.
    taken: BTreeMap<String, Taken>,
    /// Paths in its code, as written.
    paths: Vec<Path>,
    words: Vec<String>,
}

#[derive(Debug)]
struct Taken {
    path: Path,
    handed_on: bool,
}

enum Found<'a> {
    Module(&'a Path),
    Name(&'a str, String),
    Elsewhere,
}

/// All files of `src`, by the path of their module.
pub struct House(BTreeMap<Path, Module>);

impl House {
    pub fn new<'a>(files: impl IntoIterator<Item = (&'a str, &'a str)>) -> Self {
        Self(
            files
                .into_iter()
                .map(|(file, text)| (module_path(file), Module::read(file, text)))
                .collect(),
        )
    }

    /// Every file that a file uses, with the names that tie them.
    pub fn arrows(&self) -> BTreeMap<(&str, &str), BTreeSet<String>> {
        let mut arrows: BTreeMap<(&str, &str), BTreeSet<String>> = BTreeMap::new();
        for (here, module) in &self.0 {
            let taken = module.taken.iter().filter(|(name, taken)| {
                !taken.handed_on || module.words.iter().filter(|word| word == name).count() > 1
            });
            let paths = taken.map(|(_, taken)| &taken.path).chain(&module.paths);
            for path in paths {
                if let Found::Name(file, name) = self.find(here, path, 0)
                    && file != module.file
                {
                    arrows.entry((&module.file, file)).or_default().insert(name);
                }
            }
        }
        arrows
    }

    /// Follows a path as it is written in the module `here`.
    fn find<'a>(&'a self, here: &Path, path: &[String], steps: usize) -> Found<'a> {
        let Some((mut at, mut module)) = self.0.get_key_value(here) else {
            return Found::Elsewhere;
        };
        let mut fixed = false;
        for (number, name) in path.iter().enumerate() {
            let last = number + 1 == path.len();
            let next = match name.as_str() {
                "crate" => Some(Path::new()),
                "super" => Some(at[..at.len().saturating_sub(1)].to_vec()),
                "self" => Some(at.clone()),
                _ => {
                    let taken = module
                        .taken
                        .get(name)
                        .filter(|taken| taken.path != [name.as_str()]);
                    let child = module.children.contains(name);
                    match taken {
                        Some(taken) if (last || !child) && steps < 30 => {
                            match self.find(at, &taken.path, steps + 1) {
                                Found::Module(found) => Some(found.clone()),
                                other => return other,
                            }
                        }
                        _ if child => Some([at.as_slice(), std::slice::from_ref(name)].concat()),
                        _ if fixed || taken.is_none() && module.taken.contains_key(name) => {
                            return Found::Name(&module.file, name.clone());
                        }
                        _ => return Found::Elsewhere,
                    }
                }
            };
            fixed = true;
            let Some(found) = next.and_then(|next| self.0.get_key_value(&next)) else {
                return Found::Elsewhere;
            };
            (at, module) = found;
        }
        Found::Module(at)
    }
}

/// `src/trade/order/mod.rs` is `trade::order`.
fn module_path(file: &str) -> Path {
    file.trim_start_matches("src/")
        .trim_end_matches(".rs")
        .split('/')
        .filter(|name| !["mod", "lib"].contains(name))
        .map(str::to_owned)
        .collect()
}

impl Module {
    fn read(file: &str, text: &str) -> Self {
        let mut module = Self {
            file: file.to_owned(),
            words: words(text),
            ..Self::default()
        };
        let words = module.words.clone();
        let mut at = 0;
        while at < words.len() {
            let next = |more: usize| words.get(at + more).map_or("", String::as_str);
            if next(0) == "mod" && next(2) == ";" {
                module.children.insert(next(1).to_owned());
                at += 3;
            } else if next(0) == "use" && next(1) != "<" {
                let handed_on = at > 0 && ["pub", ")"].contains(&words[at - 1].as_str());
                let end = words[at..].iter().position(|word| word == ";").unwrap_or(0) + at;
                for (name, path) in leaves(&[], &words[at + 1..end]) {
                    module.taken.insert(name, Taken { path, handed_on });
                }
                at = end + 1;
            } else if next(1) == "::" && is_name(next(0)) {
                let mut path = vec![next(0).to_owned()];
                while words.get(at + 1).is_some_and(|word| word == "::")
                    && words.get(at + 2).is_some_and(|word| is_name(word))
                {
                    path.push(words[at + 2].clone());
                    at += 2;
                }
                module.paths.push(path);
                at += 1;
            } else {
                at += 1;
            }
        }
        module
    }
}

fn is_name(word: &str) -> bool {
    word.starts_with(|c: char| c.is_alphabetic() || c == '_')
}

/// Every name a `use` brings, with its path: `a::{b, c as d}` brings `b` and `d`.
fn leaves(before: &[String], words: &[String]) -> Vec<(String, Path)> {
    let mut path = before.to_vec();
    let mut at = 0;
    while let Some(word) = words.get(at) {
        match word.as_str() {
            "{" => {
                let inside = &words[at + 1..words.len() - 1];
                return split(inside)
                    .into_iter()
                    .flat_map(|part| leaves(&path, part))
                    .collect();
            }
            "as" => return vec![(words[at + 1].clone(), path)],
            "::" => {}
            "self" if at == 0 && !before.is_empty() => {}
            _ => path.push(word.clone()),
        }
        at += 1;
    }
    path.last()
        .map(|name| (name.clone(), path.clone()))
        .into_iter()
        .collect()
}

/// At the commas that are in no bracket.
fn split(words: &[String]) -> Vec<&[String]> {
    let mut open = 0;
    words
        .split(|word| {
            match word.as_str() {
                "{" => open += 1,
                "}" => open -= 1,
                _ => {}
            }
            open == 0 && word == ","
        })
        .filter(|part| !part.is_empty())
        .collect()
}
