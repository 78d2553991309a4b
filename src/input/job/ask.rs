//! Options asked for by their titles, as a person types them.

use super::written::options::{Choice, OptionGroup};
use crate::reading::{Problem, Problems, suggest};

/// The choice that takes the options of these titles, and nothing else that may be left.
pub fn choose(
    groups: &[OptionGroup],
    titles: &[String],
    problems: &mut Problems,
) -> Option<Choice> {
    let mut choice = Choice::as_quoted(groups);
    let mut asked: Vec<Option<&str>> = vec![None; groups.len()];
    let before = problems.len();
    for title in titles {
        let Some((group, number)) = find(groups, title, problems) else {
            continue;
        };
        if let Some(other) = asked[group].replace(title) {
            let message = format!("`{other}` and `{title}` are answers of one question");
            problems.push(Problem::new("two-answers", message).help("ask for one of them"));
        }
        choice.0[group] = number;
    }
    (problems.len() == before).then_some(choice)
}

/// The group and the number of the option whose title this is, or begins with.
fn find(groups: &[OptionGroup], title: &str, problems: &mut Problems) -> Option<(usize, usize)> {
    let all: Vec<(usize, usize, &str)> = groups
        .iter()
        .enumerate()
        .flat_map(|(i, group)| {
            let options = group.options.iter().enumerate();
            options.map(move |(j, option)| (i, j + 1, option.name.value.as_str()))
        })
        .collect();
    let wanted = title.trim().to_lowercase();
    let fitting = |fits: &dyn Fn(&str) -> bool| {
        let mut found = all
            .iter()
            .filter(|(.., known)| fits(&known.to_lowercase()))
            .map(|(group, number, _)| (*group, *number));
        found.next().filter(|_| found.next().is_none())
    };
    let found = fitting(&|known| known == wanted)
        .or_else(|| fitting(&|known| !wanted.is_empty() && known.starts_with(&wanted)));
    if found.is_none() {
        let titles = all.iter().map(|(.., title)| *title);
        let problem = Problem::new("unknown-option", format!("no one option is `{title}`"));
        problems.push(match suggest::closest(title, titles.clone()) {
            Some(near) => problem.help(format!("did you mean `{near}`?")),
            None if all.is_empty() => problem.help("this takeoff has no `options`"),
            None => problem.help(format!(
                "its options are {}",
                titles
                    .map(|title| format!("`{title}`"))
                    .collect::<Vec<_>>()
                    .join(", ")
            )),
        });
    }
    found
}
