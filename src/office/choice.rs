//! What the customer ticked, by the titles of a quote on record.

use super::record::{ChoiceGroup, Combination, Quote};
use crate::reading::{Problem, Problems, Read, suggest};

impl Quote {
    /// The combination that holds just these options, each by its title or the first words of it.
    pub fn chosen(&self, with: &[String], problems: &mut Problems) -> Read<&Combination> {
        let before = problems.len();
        let mut choice = self.as_quoted.clone();
        let mut chosen = vec![false; choice.len()];
        for wanted in with {
            match self.option(wanted) {
                Ok((group, _)) if chosen[group] => {
                    let message =
                        format!("`{wanted}` stands in a group of which one is chosen already");
                    problems.push(Problem::new("chosen-twice", message).help("take one of them"));
                }
                Ok((group, option)) => {
                    choice[group] = option + 1;
                    chosen[group] = true;
                }
                Err(problem) => {
                    problems.push(problem);
                }
            }
        }
        for (group, chosen) in self.choices.iter().zip(&chosen) {
            if group.must_choose && !chosen {
                problems.push(unanswered(group));
            }
        }
        problems.none_since(before)?;
        let found = self.combinations.iter().find(|one| one.choice == choice);
        found.ok_or_else(|| {
            let message = "this quote was not priced with this choice";
            problems.push(Problem::new("no-such-option", message).help(self.listed()))
        })
    }

    /// The group and the place in it of the one option that begins with these words.
    fn option(&self, wanted: &str) -> Result<(usize, usize), Problem> {
        let begins = wanted.to_lowercase();
        let mut found = Vec::new();
        for (g, group) in self.choices.iter().enumerate() {
            for (i, title) in group.options.iter().enumerate() {
                if title.to_lowercase().starts_with(&begins) {
                    found.push((g, i));
                }
            }
        }
        match found[..] {
            [one] => Ok(one),
            [] => {
                let message = format!("this quote has no option `{wanted}`");
                let near = suggest::closest(wanted, self.titles().map(String::as_str));
                let near = near.map(|near| format!("did you mean `{near}`?"));
                let help = near.unwrap_or_else(|| self.listed());
                Err(Problem::new("no-such-option", message).help(help))
            }
            _ => {
                let message = format!("more than one option begins with `{wanted}`");
                Err(Problem::new("which-option", message).help(self.listed()))
            }
        }
    }

    fn titles(&self) -> impl Iterator<Item = &String> {
        self.choices.iter().flat_map(|group| &group.options)
    }

    fn listed(&self) -> String {
        if self.titles().next().is_none() {
            return "this quote has no options".to_owned();
        }
        format!("it has {}", quoted(self.titles()))
    }
}

fn unanswered(group: &ChoiceGroup) -> Problem {
    let question = group.question.as_deref().unwrap_or("one of these");
    let message = format!("`{question}` has to be answered before the job can be signed");
    Problem::new("choice-missing", message)
        .help(format!("`--with` one of {}", quoted(group.options.iter())))
}

fn quoted<'a>(titles: impl Iterator<Item = &'a String>) -> String {
    let quoted: Vec<String> = titles.map(|title| format!("`{title}`")).collect();
    quoted.join(", ")
}
