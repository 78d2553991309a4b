//! Reads answers about the site; what cannot be read is reported and left out.

use std::collections::BTreeMap;

use super::{Answer, Form, Question, tables};
use crate::reading::{At, Fields, Node, Problem, Problems, Read, suggest};

/// The answers that were given, each with its place.
pub type SiteAnswers = BTreeMap<Question, At<Answer>>;

/// What business.yaml says of every site.
#[derive(Clone, Debug)]
pub struct SitePolicy {
    pub usual: SiteAnswers,
    /// Questions a quote tells of when nobody answered them.
    pub asked: Vec<Question>,
}

/// The answers of a takeoff.
pub fn answers(job: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Read<SiteAnswers> {
    let fields = job
        .node(key)
        .map(|node| node.fields(&tables::SITE, problems));
    Ok(match fields {
        Some(Ok(fields)) => answered(&fields, problems),
        Some(Err(_)) | None => SiteAnswers::new(),
    })
}

/// `site` of business.yaml; without it, a short list is asked.
pub fn policy(
    business: &Fields<'_>,
    key: &'static str,
    problems: &mut Problems,
) -> Read<SitePolicy> {
    let node = business.node(key);
    let mut policy = SitePolicy {
        usual: SiteAnswers::new(),
        asked: Question::USUAL.to_vec(),
    };
    let Some(fields) = node.and_then(|node| node.fields(&tables::USUAL_SITE, problems).ok()) else {
        return Ok(policy);
    };
    policy.usual = answered(&fields, problems);
    if let Some(node) = fields.node("ask") {
        let asked = node.items("`ask`", problems).into_iter();
        policy.asked = asked.filter_map(|item| question(item, problems)).collect();
    }
    Ok(policy)
}

/// What the takeoff answers, then what is usual.
pub fn or_usual(mut own: SiteAnswers, usual: &SiteAnswers) -> SiteAnswers {
    for (question, answer) in usual {
        own.entry(*question).or_insert_with(|| answer.clone());
    }
    own
}

fn question(node: &Node, problems: &mut Problems) -> Option<Question> {
    let text = node.text("a question", problems).ok()?;
    let found = Question::ALL.into_iter().find(|one| one.name() == text);
    if found.is_none() {
        let keys = Question::ALL.map(Question::name);
        let problem =
            Problem::new("unknown-question", format!("nobody asks about `{text}`")).at(node.place);
        problems.push(match suggest::closest(text, keys) {
            Some(near) => problem.help(format!("did you mean `{near}`?")),
            None => problem.help(format!("the questions are {}", keys.join(", "))),
        });
    }
    found
}

fn answered(fields: &Fields<'_>, problems: &mut Problems) -> SiteAnswers {
    let mut found = SiteAnswers::new();
    for question in Question::ALL {
        let Some(text) = fields.read::<String>(question.name(), problems) else {
            continue;
        };
        match Answer::to(question, &text.value) {
            Some(value) => {
                let place = text.place;
                found.insert(question, At { value, place });
            }
            None => {
                problems.push(
                    Problem::new(
                        "not-an-answer",
                        format!("`{}` is no answer to `{}`", text.value, question.name()),
                    )
                    .at(text.place)
                    .help(help(question)),
                );
            }
        }
    }
    found
}

fn help(question: Question) -> String {
    match question.form() {
        Form::Yes => "write `yes` or `no`, or leave the line out".to_owned(),
        Form::Length => "write a length, for example `16 ft`, or `no`".to_owned(),
        Form::Words(words) => {
            let words: Vec<String> = words.iter().map(|word| format!("`{word}`")).collect();
            format!("write {} or `no`", words.join(", "))
        }
    }
}
