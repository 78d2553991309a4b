//! A quote as records hold it, and the customer's yes to it.

use super::{Figures, Input, InputKind, Pdf};
use crate::office::text::{Cents, Day, Number};
use crate::reading::{Problem, Problems, Read};
use crate::values::Money;

parts! {
    /// A quote as it went out.
    pub struct Quote {
        pub revision: u32,
        pub job: String,
        pub title: String,
        pub customer: String,
        pub address: Option<String>,
        /// The kinds of slab in it, for the win rate by kind of work.
        pub kinds: Vec<String>,
        pub good_until: Day,
        /// One day for each pour.
        pub pours: Vec<Day>,
        pub choices: Vec<ChoiceGroup>,
        /// The combination that is the job as quoted.
        pub as_quoted: Vec<usize>,
        pub combinations: Vec<Combination>,
        pub payments: Vec<Stage>,
        /// The share of the price below which the owner wants to be told.
        pub margin_floor: Number,
        /// The most of the total that may be asked at signing.
        pub deposit_cap: Number,
        pub deposit_limit: Option<Cents>,
        /// The quote whose place it takes, where the customer is told.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        pub replaces: Option<Replaces>,
        /// Whole files, word for word: takeoff, business, price book.
        pub inputs: Vec<Input>,
        /// Every string the customer reads.
        pub view: serde_json::Value,
        pub pdf: Option<Pdf>,
    }

    /// A quote that went out before: its day, and its total as quoted.
    #[derive(Copy)]
    pub struct Replaces {
        pub day: Day,
        pub total: Cents,
    }

    /// What the customer could choose.
    pub struct ChoiceGroup {
        pub question: Option<String>,
        /// One answer has to be taken.
        pub must_choose: bool,
        pub options: Vec<String>,
    }

    /// One combination of options and every line of its price.
    pub struct Combination {
        pub choice: Vec<usize>,
        pub taken: Vec<String>,
        pub cost: Cents,
        pub figures: Figures,
        pub lines: Vec<Line>,
    }

    /// One line of a cost or a price, with its working in words.
    pub struct Line {
        pub cause: String,
        pub side: String,
        pub class: Option<String>,
        pub item: Option<String>,
        pub quantity: Option<Number>,
        pub unit: Option<String>,
        /// The pour for whose day it is bought, from 0, where the job has several.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        pub pour: Option<usize>,
        pub price: Option<Number>,
        /// The first day of the price, or of the hold.
        pub priced: Option<Day>,
        pub held_until: Option<Day>,
        pub amount: Cents,
        pub working: String,
    }

    /// One payment of the schedule, for the job as quoted.
    pub struct Stage {
        pub when: String,
        /// As the owner wrote it: `10%`, `1/3`, `500.00`, `rest`.
        pub share: String,
    }

    /// The customer's yes.
    pub struct Accepted {
        pub revision: u32,
        pub by: String,
        /// `signed on paper`, `by mail` and the like.
        pub how: String,
        pub choice: Vec<usize>,
        pub taken: Vec<String>,
        pub contract: Figures,
        /// The last day on which the customer may cancel, where the owner's law gives one.
        pub cancel_until: Option<Day>,
    }
}

impl Quote {
    /// The combination that is the job as quoted.
    pub fn quoted(&self) -> Option<&Combination> {
        let mut all = self.combinations.iter();
        all.find(|one| one.choice == self.as_quoted)
    }

    /// The total of the job as quoted.
    pub fn quoted_total(&self, problems: &mut Problems) -> Read<Money> {
        let quoted = self.quoted().ok_or_else(|| {
            let message = "this quote was not priced as it was quoted";
            problems.push(Problem::new("bad-record", message))
        })?;
        Ok(quoted.figures.total.0)
    }

    pub fn input(&self, what: InputKind) -> Option<&Input> {
        self.inputs.iter().find(|input| input.what == what)
    }
}
