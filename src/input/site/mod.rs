//! What is asked about a site before it is priced: a closed list of questions, each with few answers.
//!
//! A takeoff answers for its own site, business.yaml says what is usual, and the
//! price book says what an answer costs. Nothing here decides: a question that
//! nobody answered is told to the customer as something the price counts on.

mod answer;
mod read;
pub mod tables;

pub use answer::{Answer, Work};
pub use read::{SiteAnswers, SitePolicy, answers, or_usual, policy};

use crate::reading::words;

words! {
    /// One question, by its key in every file; the order is that of the printed lines.
    pub enum Question {
        TruckOver "truck over";
        OverheadWires "overhead wires";
        Sprinklers "sprinklers";
        LawnCrossed "lawn crossed";
        OtherHeights "other heights";
        CarsNear "cars near";
        Washout "washout";
        WallsToCover "walls to cover";
        Backfill "backfill";
        LinesMarked "lines marked";
    }
}

/// How a question is answered; `no` answers each of them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    Yes,
    Words(&'static [&'static str]),
    Length,
}

impl Question {
    /// Asked where business.yaml does not say which questions are.
    pub const USUAL: [Self; 2] = [Self::OverheadWires, Self::Sprinklers];

    pub const fn form(self) -> Form {
        match self {
            Self::TruckOver => Form::Words(&["driveway", "walk", "lawn", "septic tank"]),
            Self::Washout => Form::Words(&["on site", "hauled"]),
            Self::Backfill => Form::Words(&["ours", "theirs"]),
            Self::OverheadWires | Self::LawnCrossed | Self::OtherHeights | Self::WallsToCover => {
                Form::Length
            }
            Self::Sprinklers | Self::CarsNear | Self::LinesMarked => Form::Yes,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_question_has_its_key_in_both_tables() {
        for question in Question::ALL {
            for table in [&tables::SITE, &tables::USUAL_SITE] {
                assert!(
                    table.field(question.name()).is_some(),
                    "{}",
                    question.name()
                );
            }
        }
        assert_eq!(tables::SITE.fields.len(), Question::ALL.len());
    }

    #[test]
    fn the_example_of_every_question_answers_it() {
        for question in Question::ALL {
            let field = tables::SITE.field(question.name()).unwrap();
            assert!(Answer::to(question, field.example).is_some(), "{field:?}");
            assert_eq!(Answer::to(question, "no"), Some(Answer::No));
            assert_eq!(Answer::to(question, "perhaps"), None);
        }
    }
}
