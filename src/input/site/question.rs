//! The questions about a site, each declared once: its key, how it is answered, its row in the guide.

use crate::reading::{Below, Field, IfLeftOut, words};

/// How a question is answered; `no` answers each of them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    Yes,
    Words(&'static [&'static str]),
    Length,
}

impl Form {
    /// A word or two for the guide.
    const fn kind(self) -> &'static str {
        match self {
            Self::Yes => "yes or no",
            Self::Words(_) => "words",
            Self::Length => "length",
        }
    }
}

macro_rules! questions {
    ($($variant:ident $key:literal, $form:expr, $meaning:literal, $example:literal;)+) => {
        words! {
            /// One question, by its key in every file; the order is that of the printed lines.
            pub enum Question { $($variant $key;)+ }
        }

        impl Question {
            pub const fn form(self) -> Form {
                match self { $(Self::$variant => $form,)+ }
            }
        }

        pub(super) const FIELDS: &[Field] = &[$(Field {
            key: $key,
            kind: Question::$variant.form().kind(),
            if_left_out: IfLeftOut::Nothing,
            meaning: $meaning,
            example: $example,
            below: Below::Nothing,
        },)+];
    };
}

questions! {
    TruckOver "truck over", Form::Words(&["driveway", "walk", "lawn", "septic tank"]),
        "what our truck must drive over: driveway, walk, lawn, septic tank; each is a release to initial",
        "driveway and walk";
    OverheadWires "overhead wires", Form::Length,
        "how high wires hang where the truck or a boom works; moving them is not included", "16 ft";
    Sprinklers "sprinklers", Form::Yes, "sprinkler lines in the way; a release to initial", "yes";
    LawnCrossed "lawn crossed", Form::Length,
        "way over grass; priced by the book, else not included", "40 ft";
    OtherHeights "other heights", Form::Length,
        "how far existing surfaces beside it lie higher or lower; not included", "1 in";
    CarsNear "cars near", Form::Yes, "cars within reach of dust and splashes", "yes";
    Washout "washout", Form::Words(&["on site", "hauled"]),
        "where the chute is washed: on site, or hauled away by us", "hauled";
    WallsToCover "walls to cover", Form::Length,
        "walls, doors and windows near the pour; priced by the book, else not included", "24 ft";
    Backfill "backfill", Form::Words(&["ours", "theirs"]),
        "who puts soil back along the edges: ours or theirs", "ours";
    LinesMarked "lines marked", Form::Yes, "whether the public lines underground are marked", "yes";
}

#[cfg(test)]
mod tests {
    use super::super::Answer;
    use super::*;

    #[test]
    fn the_example_of_every_question_answers_it() {
        for (question, field) in Question::ALL.into_iter().zip(FIELDS) {
            assert_eq!(question.name(), field.key);
            assert!(Answer::to(question, field.example).is_some(), "{field:?}");
            assert_eq!(Answer::to(question, "no"), Some(Answer::No));
            assert_eq!(Answer::to(question, "perhaps"), None);
        }
    }
}
