//! The answers about the site, in the customer's words: work, exclusions, assumptions, releases.
//!
//! "Overhead" is a word of the cost sheet, so wires hang here.

use super::Offering;
use super::phrases::{capital, length};
use crate::documents::views::quote::Term;
use crate::input::site::{Answer, Question};

/// Where the words of an answer stand.
#[derive(PartialEq)]
enum QuotePart {
    /// Work that is priced.
    Scope,
    NotIncluded,
    CountedOn,
}

/// `walls and windows covered, 24 ft; soil put back along the edges`.
pub(super) fn scope(of: Offering<'_>) -> String {
    answers(of, &QuotePart::Scope).join("; ")
}

pub(super) fn not_included(of: Offering<'_>) -> Vec<String> {
    answers(of, &QuotePart::NotIncluded)
}

/// What was answered, then in two lines at most what nobody answered.
pub(super) fn assumptions(of: Offering<'_>) -> Vec<String> {
    let mut lines = answers(of, &QuotePart::CountedOn);
    let asked = Question::ALL
        .into_iter()
        .filter(|question| of.business.site.asked.contains(question))
        .filter(|question| !of.takeoff.head.site.contains_key(question));
    let (mut nothing_of, mut sentences) = (Vec::new(), Vec::new());
    for question in asked {
        match open(question) {
            Open::No(noun) => nothing_of.push(noun),
            Open::Sentence(sentence) => sentences.push(sentence),
        }
    }
    if let [most @ .., last] = &nothing_of[..] {
        let most = most.join(", ");
        let or = if most.is_empty() { "" } else { " or " };
        lines.push(format!("No {most}{or}{last} in our way"));
    }
    if !sentences.is_empty() {
        lines.push(capital(&sentences.join("; ")));
    }
    lines
}

/// What the customer takes upon themselves, each to initial.
pub(super) fn releases(of: Offering<'_>) -> Vec<Term> {
    const TRUCK: [(&str, &str, &str); 4] = [
        (
            "driveway",
            "Driveway",
            "Our truck stands on it. Cracks and dents from its weight are not ours to mend.",
        ),
        (
            "walk",
            "Walk",
            "Our truck drives over it. Cracks and dents from its weight are not ours to mend.",
        ),
        (
            "lawn",
            "Lawn",
            "Our truck drives over it. Ruts from its weight are not ours to mend.",
        ),
        (
            "septic tank",
            "Septic tank",
            "Our truck drives over it or its pipes. What breaks under its weight is not ours to mend.",
        ),
    ];
    let mut releases = Vec::new();
    if let Some(over) = of.takeoff.head.site.get(&Question::TruckOver) {
        let under = TRUCK.iter().filter(|(word, ..)| over.value.has(word));
        releases.extend(under.map(|(_, word, text)| Term::new(*word, *text)));
    }
    let sprinklers = of.takeoff.head.site.get(&Question::Sprinklers);
    if sprinklers.is_some_and(|answer| answer.value == Answer::Yes) {
        releases.push(Term::new(
            "Sprinklers",
            "You show us where the lines run. One that nobody could see, and that we cut, is not ours to mend.",
        ));
    }
    releases
}

/// The answers told in one part of the quote.
fn answers(of: Offering<'_>, wanted: &QuotePart) -> Vec<String> {
    let answers = of.takeoff.head.site.iter();
    let told = answers.filter_map(|(question, answer)| {
        let priced = of.rules.site.contains_key(question);
        told(*question, &answer.value, priced)
    });
    told.filter_map(|(part, text)| (part == *wanted).then_some(text))
        .collect()
}

fn told(question: Question, answer: &Answer, priced: bool) -> Option<(QuotePart, String)> {
    use QuotePart::{CountedOn, NotIncluded, Scope};
    let long = match answer {
        Answer::Length(value) => length(*value),
        Answer::No | Answer::Yes | Answer::Words(_) => String::new(),
    };
    if *answer == Answer::No {
        let marked = "The public lines underground are marked before we dig";
        return (question == Question::LinesMarked).then(|| (CountedOn, marked.to_owned()));
    }
    let (part, text) = match question {
        Question::TruckOver if priced => (Scope, "the way of our truck protected"),
        Question::TruckOver | Question::Sprinklers | Question::LinesMarked => return None,
        Question::OverheadWires => (NotIncluded, "Moving or shielding hanging wires"),
        Question::LawnCrossed if priced => (Scope, "the lawn covered where we cross it, {long}"),
        Question::LawnCrossed => (NotIncluded, "Mending the lawn where we cross it"),
        Question::OtherHeights if priced => (Scope, "what lies beside brought to the new height"),
        Question::OtherHeights => (
            NotIncluded,
            "Bringing what lies beside to the new height; it is {long} off",
        ),
        Question::CarsNear if priced => (Scope, "cars near the work covered"),
        Question::CarsNear => (CountedOn, "Cars stand well away while we work"),
        Question::Washout if answer.has("hauled") => (Scope, "wash water of the truck hauled away"),
        Question::Washout => (
            CountedOn,
            "A place on your ground where the truck is washed out",
        ),
        Question::WallsToCover if priced => (Scope, "walls and windows covered, {long}"),
        Question::WallsToCover => (NotIncluded, "Covering walls and windows against splashes"),
        Question::Backfill if answer.has("ours") => (Scope, "soil put back along the edges"),
        Question::Backfill => (NotIncluded, "Soil back along the edges"),
    };
    Some((part, text.replace("{long}", &long)))
}

/// What a quote counts on where nobody answered.
enum Open {
    /// Said after "No".
    No(&'static str),
    Sentence(&'static str),
}

fn open(question: Question) -> Open {
    match question {
        Question::TruckOver => Open::Sentence("our truck stays on the street"),
        Question::OverheadWires => Open::No("hanging wires"),
        Question::Sprinklers => Open::No("sprinkler lines"),
        Question::LawnCrossed => Open::Sentence("no lawn has to be crossed"),
        Question::OtherHeights => Open::Sentence("what lies beside is at the new height"),
        Question::CarsNear => Open::Sentence("cars stand well away while we work"),
        Question::Washout => Open::Sentence("a place on your ground where the truck is washed out"),
        Question::WallsToCover => Open::Sentence("no walls or windows need a cover"),
        Question::Backfill => Open::Sentence("you put soil back along the edges"),
        Question::LinesMarked => {
            Open::Sentence("the public lines underground are marked before we dig")
        }
    }
}
