//! What is asked about a site before it is priced: a closed list of questions, each with few answers.
//!
//! A takeoff answers for its own site, business.yaml says what is usual, and the
//! price book says what an answer costs. Nothing here decides: a question that
//! nobody answered is told to the customer as something the price counts on.

mod answer;
mod read;
pub mod tables;

pub use answer::{Answer, Work};
pub use read::{SiteAnswers, SitePolicy, or_usual, policy, read};

/// One question; the order is that of the printed lines.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Question {
    TruckOver,
    OverheadWires,
    Sprinklers,
    LawnCrossed,
    OtherHeights,
    CarsNear,
    Washout,
    WallsToCover,
    Backfill,
    LinesMarked,
}

/// How a question is answered; `no` answers each of them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    Yes,
    Words(&'static [&'static str]),
    Length,
}

impl Question {
    pub const ALL: [Self; 10] = [
        Self::TruckOver,
        Self::OverheadWires,
        Self::Sprinklers,
        Self::LawnCrossed,
        Self::OtherHeights,
        Self::CarsNear,
        Self::Washout,
        Self::WallsToCover,
        Self::Backfill,
        Self::LinesMarked,
    ];

    /// Asked where business.yaml does not say which questions are.
    pub const USUAL: [Self; 2] = [Self::OverheadWires, Self::Sprinklers];

    /// Its key in every file.
    pub const fn key(self) -> &'static str {
        match self {
            Self::TruckOver => "truck over",
            Self::OverheadWires => "overhead wires",
            Self::Sprinklers => "sprinklers",
            Self::LawnCrossed => "lawn crossed",
            Self::OtherHeights => "other heights",
            Self::CarsNear => "cars near",
            Self::Washout => "washout",
            Self::WallsToCover => "walls to cover",
            Self::Backfill => "backfill",
            Self::LinesMarked => "lines marked",
        }
    }

    pub fn named(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|question| question.key() == key)
    }

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
            assert_eq!(Question::named(question.key()), Some(question));
            for table in [&tables::SITE, &tables::USUAL_SITE] {
                assert!(table.field(question.key()).is_some(), "{}", question.key());
            }
        }
        assert_eq!(tables::SITE.fields.len(), Question::ALL.len());
    }

    #[test]
    fn the_example_of_every_question_answers_it() {
        for question in Question::ALL {
            let field = tables::SITE.field(question.key()).unwrap();
            assert!(Answer::to(question, field.example).is_some(), "{field:?}");
            assert_eq!(Answer::to(question, "no"), Some(Answer::No));
            assert_eq!(Answer::to(question, "perhaps"), None);
        }
    }
}
