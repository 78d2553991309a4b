//! An answer to a question about the site, and the work it brings.

use super::{Form, Question};
use crate::input::phrases::positive;
use crate::values::Length;

#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Answer {
    No,
    Yes,
    /// One word, or several where a truck drives over several things.
    Words(Vec<&'static str>),
    Length(Length),
}

/// What the price book's rule for a question is applied to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Work {
    Nothing,
    Once,
    Feet(Length),
    /// Along every edge that had a form.
    FormedEdges,
}

impl Answer {
    /// Reads an answer; none when it is no answer to this question.
    pub fn to(question: Question, text: &str) -> Option<Self> {
        let text = text.trim();
        match (text, question.form()) {
            ("no" | "No" | "NO" | "false" | "False" | "FALSE" | "none", _) => Some(Self::No),
            ("yes" | "Yes" | "YES" | "true" | "True" | "TRUE", Form::Yes) => Some(Self::Yes),
            (_, Form::Yes) => None,
            (_, Form::Length) => positive(text).ok().map(Self::Length),
            (_, Form::Words(known)) => {
                let parts: Vec<&str> = text.split([',']).flat_map(|p| p.split(" and ")).collect();
                let found: Option<Vec<&'static str>> = parts
                    .iter()
                    .map(|part| known.iter().find(|word| **word == part.trim()).copied())
                    .collect();
                found
                    .filter(|found| found.len() == 1 || question == Question::TruckOver)
                    .map(Self::Words)
            }
        }
    }

    /// Whether one of its words is this one.
    pub fn has(&self, word: &str) -> bool {
        match self {
            Self::Words(words) => words.contains(&word),
            Self::No | Self::Yes | Self::Length(_) => false,
        }
    }

    /// The work this answer brings, if the book has a rule for it.
    pub fn work(&self, question: Question) -> Work {
        match (self, question) {
            (Self::No, _) | (_, Question::OverheadWires | Question::LinesMarked) => Work::Nothing,
            (Self::Yes, _)
            | (Self::Length(_), Question::OtherHeights)
            | (Self::Words(_), Question::TruckOver) => Work::Once,
            (Self::Length(length), _) => Work::Feet(*length),
            (Self::Words(_), Question::Backfill) if self.has("ours") => Work::FormedEdges,
            (Self::Words(_), _) if self.has("hauled") => Work::Once,
            (Self::Words(_), _) => Work::Nothing,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn answers_bring_work_or_do_not() {
        #[track_caller]
        fn case(question: Question, text: &str, work: Work) {
            let answer = Answer::to(question, text).expect(text);
            assert_eq!(answer.work(question), work, "{text}");
        }
        case(
            Question::WallsToCover,
            "24 ft",
            Work::Feet(Length::feet_whole(24)),
        );
        case(Question::WallsToCover, "no", Work::Nothing);
        case(Question::Washout, "on site", Work::Nothing);
        case(Question::Washout, "hauled", Work::Once);
        case(Question::Backfill, "ours", Work::FormedEdges);
        case(Question::Backfill, "theirs", Work::Nothing);
        case(Question::OverheadWires, "16 ft", Work::Nothing);
        case(Question::OtherHeights, "1 in", Work::Once);
        case(Question::TruckOver, "driveway and walk", Work::Once);
        case(Question::Sprinklers, "yes", Work::Once);
        case(Question::LinesMarked, "yes", Work::Nothing);
    }

    #[test]
    fn only_a_truck_has_several_answers() {
        let truck = Answer::to(Question::TruckOver, "driveway, walk and septic tank");
        assert_eq!(
            truck,
            Some(Answer::Words(vec!["driveway", "walk", "septic tank"]))
        );
        assert_eq!(Answer::to(Question::Backfill, "ours and theirs"), None);
    }
}
