//! When we come: the start, the days that are charged, visits after them.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::Offering;
use super::phrases::{list, printed};
use crate::documents::views::quote::Sentence;
use crate::input::job::RemovalMaterial;
use crate::input::site::Question;
use crate::trade::calendar::{Calendar, Window};
use crate::trade::crew::{Block, Crew, Step, Stretch};
use crate::trade::curing::is_sealer;
use crate::values::{Amount, Day, Unit, rounding};

pub(super) fn when(of: Offering<'_>) -> Vec<Sentence> {
    let crew = &of.offer.quoted().needs.crew;
    let calendar = Calendar::of(of.takeoff, crew, of.quoted, of.business);
    let wide = of.business.quote.start_window.0;
    let window = calendar.window(of.takeoff, of.quoted, wide);
    let mut sentences = vec![start(&window)];
    sentences.extend(sign(of, &window));
    sentences.push(working_days(of, crew, &calendar));
    sentences.extend(visits(of, crew));
    sentences.push(sentence(super::season::moves(of), String::new(), ""));
    sentences
}

fn sentence(before: &str, strong: String, after: impl Into<String>) -> Sentence {
    Sentence {
        before: before.to_owned(),
        strong,
        after: after.into(),
    }
}

/// `June 1 to 16, 2026: start by June 12, pour June 15.`, to the last day of the work.
fn start(window: &Window) -> Sentence {
    let (from, start_by, until) = (window.from, window.start_by, window.until);
    match &window.pours[..] {
        [pour] if *pour == start_by => sentence("Start on ", pour.long(), ", the day of the pour."),
        [first, .., last] if start_by == *first => sentence(
            "",
            from.to(until),
            format!(": pour {}.", each(&window.pours, *last)),
        ),
        [first, ..] if start_by < *first => {
            let by = if from == start_by { "on" } else { "by" };
            let how = format!(
                ": start {by} {}, pour {}.",
                start_by.beside(until),
                each(&window.pours, until)
            );
            sentence("", from.to(until), how)
        }
        _ if from == start_by => sentence("Start on ", from.long(), "."),
        _ => {
            let between = format!("{} and {}", from.beside(start_by), start_by.long());
            sentence("Start between ", between, ".")
        }
    }
}

/// `June 10 and 12`.
fn each(pours: &[Day], beside: Day) -> String {
    let mut months: Vec<(String, Vec<String>)> = Vec::new();
    for pour in pours {
        let text = pour.beside(beside);
        match text.split_once(' ') {
            Some((month, day)) if months.last().is_some_and(|(last, _)| last == month) => {
                if let Some((_, days)) = months.last_mut() {
                    days.push(day.to_owned());
                }
            }
            Some((month, day)) => months.push((month.to_owned(), vec![day.to_owned()])),
            None => months.push((text, Vec::new())),
        }
    }
    let months = months.into_iter();
    let months: Vec<String> = months
        .map(|(month, days)| format!("{month} {}", list(&days)))
        .collect();
    list(&months)
}

/// Where the work has to begin before the price ends.
fn sign(of: Offering<'_>, window: &Window) -> Option<Sentence> {
    let is_said = !window.pours.is_empty() && window.start_by < of.good_until();
    is_said.then(|| sentence("Sign by ", window.sign_by.long(), " to keep these days."))
}

/// Days as they are charged, and what each is for.
fn working_days(of: Offering<'_>, crew: &Crew, calendar: &Calendar<'_>) -> Sentence {
    let work: Vec<&Stretch> = crew
        .stretches
        .iter()
        .filter(|one| !one.is_later())
        .collect();
    let parts: Option<Vec<(Decimal, String)>> = work
        .iter()
        .map(|one| Some((shown(one.days_at_house()?.value()), done(of, one))))
        .collect();
    let is_set = crew.charged.overruled().or(crew.days.overruled()).is_some();
    let parts = parts.filter(|parts| !is_set && !parts.is_empty());
    // No work is done in no time.
    let sum = |parts: &Vec<(Decimal, String)>| parts.iter().map(|(days, _)| days).sum();
    let days: Decimal = parts.as_ref().map_or(crew.at_house.value(), sum);
    let days = days.max(dec!(0.5));
    let strong = match number(days).as_str() {
        "1" => "1 working day".to_owned(),
        "½" => "Half a working day".to_owned(),
        "¾" => "¾ of a working day".to_owned(),
        count => format!("{count} working days"),
    };
    // Half days are days on which we come.
    let on = match calendar.days() {
        on if days < Decimal::from(on) => format!(" on {on} days"),
        _ => String::new(),
    };
    let what = match parts.as_deref() {
        None | Some([]) => String::new(),
        Some([(_, what)]) => format!(", to {what}"),
        Some([before @ .., (days, what)]) => {
            let before = before.iter().map(|(days, what)| part(*days, what));
            let before: Vec<String> = before.collect();
            format!(": {}, then {}", before.join(", "), part(*days, what))
        }
    };
    let place = if what.is_empty() {
        " at your house"
    } else {
        ""
    };
    sentence("", strong, format!("{on}{place}{what}."))
}

/// `1 to pour`.
fn part(days: Decimal, what: &str) -> String {
    match number(days).as_str() {
        "½" => format!("half a day to {what}"),
        quarters @ ("¼" | "¾") => format!("{quarters} of a day to {what}"),
        count => format!("{count} to {what}"),
    }
}

/// As charged; what is charged by the hour in half days.
fn shown(days: Decimal) -> Decimal {
    let step = if is_quarter(days) {
        dec!(0.25)
    } else {
        dec!(0.5)
    };
    rounding::round_up_to(days, step)
}

fn is_quarter(days: Decimal) -> bool {
    (days * dec!(4)).fract().is_zero()
}

/// `2½`, `¾`; decimals as they are.
fn number(days: Decimal) -> String {
    let whole = rounding::whole_below(days);
    let part = match days - whole {
        part if part == dec!(0.25) => "¼",
        part if part == dec!(0.5) => "½",
        part if part == dec!(0.75) => "¾",
        _ => return Amount::new(days, Unit::Plain).number(),
    };
    if whole.is_zero() {
        part.to_owned()
    } else {
        format!("{}{part}", whole.normalize())
    }
}

/// `dig, form and pour`.
fn done(of: Offering<'_>, stretch: &Stretch) -> String {
    let mut words: Vec<String> = Vec::new();
    for block in &stretch.blocks {
        let mut said = said(of, stretch, block.step).into_iter().map(str::to_owned);
        let which = which(of, block);
        words.extend(said.next().map(|first| format!("{first}{which}")));
        words.extend(said);
    }
    list(&words)
}

/// The slabs of a pour, where there are pours on several days.
fn which(of: Offering<'_>, block: &Block) -> String {
    let pours = of.takeoff.pours().count();
    if block.step != Step::Place || block.pours.len() == pours {
        return String::new();
    }
    let slabs = of.takeoff.slabs.iter();
    let poured = slabs.filter(|slab| block.pours.contains(&slab.placement));
    let names: Vec<String> = poured.map(|slab| slab.called.clone()).collect();
    format!(" the {}", list(&names))
}

/// The customer's words for what is done.
fn said(of: Offering<'_>, stretch: &Stretch, step: Step) -> Vec<&'static str> {
    match step {
        Step::Remove => {
            let removals = &of.takeoff.head.removals;
            let is_soil = |one: &crate::input::job::Removal| one.material == RemovalMaterial::Soil;
            match (removals.iter().any(is_soil), removals.iter().all(is_soil)) {
                (_, true) => vec!["dig"],
                (true, false) => vec!["break out", "dig"],
                (false, _) => vec!["break out"],
            }
        }
        Step::Form => vec!["form"],
        Step::Place => vec!["pour"],
        Step::Strip => {
            let off = match (stretch.has(Step::Lift), of.has_forms()) {
                (true, true) => "take off the covers and the forms",
                (true, false) => "take off the covers and clean up",
                (false, true) => "take off the forms",
                (false, false) => "clean up",
            };
            let answers = of.takeoff.head.site.iter();
            let mut backfill = answers.filter(|(question, _)| **question == Question::Backfill);
            if backfill.any(|(_, answer)| answer.value.has("ours")) {
                vec![off, "fill in along the edges"]
            } else {
                vec![off]
            }
        }
        Step::Lid => vec!["set the lids on order"],
        Step::Finish => vec!["finish the surface"],
        Step::Lift if !stretch.has(Step::Strip) => vec!["take off the covers"],
        Step::Return | Step::Wet | Step::Lift | Step::Seal => Vec::new(),
    }
}

/// What the crew comes back for; one number where the owner set it.
fn visits(of: Offering<'_>, crew: &Crew) -> Option<Sentence> {
    let asked = crew.stretches.iter().filter(|one| one.is_later());
    let mut told: Vec<(Decimal, bool, String)> = Vec::new();
    for stretch in asked {
        let block = stretch.blocks.first()?;
        let many = rounding::round_up_to(stretch.on_site.value(), Decimal::ONE);
        let is_short = matches!(block.step, Step::Wet | Step::Lift);
        let what = match block.step {
            Step::Finish => " to finish the surface".to_owned(),
            Step::Wet => " to keep the concrete wet".to_owned(),
            Step::Lift => " to take the covers off".to_owned(),
            Step::Seal => sealing(of, block),
            Step::Lid => format!(" to set the {} on order", lids(of)),
            Step::Return | Step::Remove | Step::Form | Step::Place | Step::Strip => {
                " after the pour".to_owned()
            }
        };
        match told.iter_mut().find(|(.., known)| *known == what) {
            Some((all, ..)) => *all += many,
            None => told.push((many, is_short, what)),
        }
    }
    if told.is_empty() {
        return None;
    }
    let told = told.into_iter().map(|(many, is_short, what)| {
        let short = if is_short { "short " } else { "" };
        match many {
            many if many == Decimal::ONE => format!("one {short}visit{what}"),
            many if many == Decimal::TWO => format!("two {short}visits{what}"),
            many => {
                let many = Amount::new(many, Unit::Plain).number();
                format!("{many} {short}visits{what}")
            }
        }
    });
    let told: Vec<String> = told.collect();
    Some(sentence("Then ", list(&told), "."))
}

/// `to seal it, 28 days after the pour`, which of several; `for the joint filler` where it is no sealer.
fn sealing(of: Offering<'_>, block: &Block) -> String {
    let is_one = of.takeoff.pours().count() == 1;
    let slabs = of.takeoff.slabs.iter().filter(|slab| slab.seal.is_some());
    let here = slabs.filter(|slab| block.pours.contains(&slab.placement));
    let names: Vec<String> = here.map(|slab| slab.called.clone()).collect();
    let (sealers, others): (Vec<&str>, Vec<&str>) =
        added(of, block).partition(|name| is_sealer(name, of.rules));
    let mut what = Vec::new();
    if sealers.is_empty() && block.wait.is_some() && !is_one && !names.is_empty() {
        what.push(format!("to seal the {}", list(&names)));
    } else if !(names.is_empty() && sealers.is_empty()) || others.is_empty() {
        what.push("to seal it".to_owned());
    }
    what.extend(
        others
            .iter()
            .map(|name| format!("for the {}", printed(name))),
    );
    let pour = match block.pours.len() {
        _ if is_one => "the pour",
        1 => "its pour",
        _ => "the last of their pours",
    };
    match block.wait {
        Some(days) => format!(" {}, {days} days after {pour}", list(&what)),
        None => format!(" {}", list(&what)),
    }
}

/// Items that the takeoff adds and that go on so many days after the pour.
fn added<'a>(of: Offering<'a>, block: &Block) -> impl Iterator<Item = &'a str> {
    let wait = block.wait;
    let extras = of.takeoff.head.extras.iter().chain(&of.takeoff.added);
    let names = extras.map(|extra| extra.name.value.as_str());
    names.filter(move |name| {
        let selling = of.rules.selling.get(name);
        let after = selling.and_then(|selling| selling.after.as_ref());
        wait.is_some() && after.map(|after| after.value.0) == wait
    })
}

fn lids(of: Offering<'_>) -> &'static str {
    let boxes = of.takeoff.slabs.iter().flat_map(|slab| &slab.boxes);
    match boxes.filter(|one| one.waits_for_lid()).count() {
        1 => "lid",
        _ => "lids",
    }
}
