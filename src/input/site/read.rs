//! Reads answers about the site; what cannot be read is reported and left out.

use std::collections::BTreeMap;

use super::question::FIELDS;
use super::{Answer, Form, Question};
use crate::reading::keys::keys;
use crate::reading::{
    At, FieldTable, Fields, Group, IfLeftOut, Keyed, Node, Problem, Problems, Read, suggest,
};

/// The answers that were given, each with its place.
pub type SiteAnswers = BTreeMap<Question, At<Answer>>;

keys! {
    /// What business.yaml says of every site.
    pub struct SitePolicy in "the usual `site`" {
        ^ usual: SiteAnswers;
        /// Questions a quote tells of when nobody answered them.
        asked: Vec<Question> = "ask" as "list of questions", usual "overhead wires, sprinklers",
            "which questions a quote tells of when nobody answered them", "[overhead wires, washout]", by asked;
    }
}

impl Keyed for SiteAnswers {}

impl Group for SiteAnswers {
    const TABLE: &'static FieldTable = &FieldTable {
        name: "`site`",
        before: &[],
        fields: FIELDS,
        includes: &[],
    };

    fn read(fields: &Fields<'_>, problems: &mut Problems) -> Read<Self> {
        Ok(answered(fields, problems))
    }
}

/// What the takeoff answers, then what is usual.
pub fn or_usual(mut own: SiteAnswers, usual: &SiteAnswers) -> SiteAnswers {
    for (question, answer) in usual {
        own.entry(*question).or_insert_with(|| answer.clone());
    }
    own
}

fn asked(site: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Vec<Question> {
    let Some(node) = site.node(key) else {
        let IfLeftOut::Usual(usual) = site.if_left_out(key) else {
            return Vec::new();
        };
        return usual.split(", ").filter_map(called).collect();
    };
    let items = node.items(&format!("`{key}`"), problems).into_iter();
    items
        .filter_map(|item| question(item, problems).ok())
        .collect()
}

fn called(name: &str) -> Option<Question> {
    Question::ALL.into_iter().find(|one| one.name() == name)
}

fn question(node: &Node, problems: &mut Problems) -> Read<Question> {
    let text = node.text("a question", problems)?;
    called(text).ok_or_else(|| {
        let keys = Question::ALL.map(Question::name);
        let problem =
            Problem::new("unknown-question", format!("nobody asks about `{text}`")).at(node.place);
        problems.push(match suggest::closest(text, keys) {
            Some(near) => problem.help(format!("did you mean `{near}`?")),
            None => problem.help(format!("the questions are {}", keys.join(", "))),
        })
    })
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
