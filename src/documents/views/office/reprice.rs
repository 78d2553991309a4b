//! Every open quote at other prices: the worst first, what to do, and why.

use super::{counted, headed, rise};
use crate::costing::Room;
use crate::costing::outcome::{
    CauseGroup, CommonCause, Finding, Outcomes, Standing, Verdict, causes, exposure,
};
use crate::documents::column::{Column, Columns, Reader};
use crate::documents::table::Align::{Left, Right};
use crate::documents::table::table;
use crate::input::book::Class;
use crate::values::{Day, Money};

/// A quote a row.
pub fn quotes<'a>() -> Columns<'a, Finding<'a>> {
    type Of<'a> = Column<'a, Finding<'a>>;
    const FILES: &[Reader] = &[Reader::Csv, Reader::Json];
    Columns(vec![
        Of::left("number", |one| one.quote.number.as_str()).head(""),
        Of::left("customer", |one| one.quote.customer.as_str()),
        Of::left("state", |one| state(one.quote.standing)).only(FILES),
        Of::left("quoted", |one| one.quote.quoted).only(FILES),
        Of::left("good_until", |one| one.quote.good_until).only(FILES),
        Of::right("age", |one| one.age),
        Of::right("days_left", |one| one.days_left),
        Of::right("old_cost", |one| one.found.old.cost),
        Of::right("new_cost", |one| one.found.new.cost),
        Of::right("more", |one| one.found.harm()).only(&[Reader::Terminal]),
        Of::right("old_price", |one| one.found.old.price),
        Of::right("new_price", |one| one.found.new.price),
        Of::right("old_total", |one| one.found.old.total).only(&[Reader::Json]),
        Of::right("new_total", |one| one.found.new.total).only(&[Reader::Json]),
        Of::right("margin_held", |one| one.margin().cell()),
        Of::left("verdict", |one| verdict(one.verdict)),
    ])
}

const fn state(standing: Standing) -> &'static str {
    match standing {
        Standing::Open => "open",
        Standing::Signed(_) => "signed",
    }
}

/// What to do, in a few words.
pub fn verdict(verdict: Verdict) -> String {
    match verdict {
        Verdict::Hold => "hold the price".to_owned(),
        Verdict::Revise => "below your floor: send a revision".to_owned(),
        Verdict::QuoteAgain => "expired: quote it again".to_owned(),
        Verdict::GoesBack(much) => format!("signed: {much} goes back by its clause"),
        Verdict::PassedOn(much) => format!("signed: {much} is passed on by its clause"),
        Verdict::BearUnlessClause => "signed: yours to bear but for its clause".to_owned(),
        Verdict::Bear => "signed: yours to bear".to_owned(),
        Verdict::NothingToBear => "signed: nothing to bear".to_owned(),
    }
}

/// What its causes are called together.
pub const fn group(group: CauseGroup) -> &'static str {
    match group {
        CauseGroup::Prices => "prices",
        CauseGroup::RulesOfBuying => "rules of buying",
        CauseGroup::WhatFollows => "what follows",
    }
}

/// `material`, for what is bought.
pub fn class(cause: &CommonCause) -> &'static str {
    cause.class.map_or("", Class::name)
}

/// The whole answer in plain text; `each` tells the causes quote by quote, too.
pub fn text(answer: &Outcomes, today: Day, each: bool) -> String {
    let findings = answer.findings(today);
    let mut out = headed(format!(
        "{} at the prices of the pour day, asked on {today}",
        counted(findings.len(), "quote", "quotes")
    ));
    out.extend(quotes().lines(&findings));
    out.push(String::new());
    for (open, words) in [
        (true, "open quotes cost you"),
        (false, "signed work costs you"),
    ] {
        let by = exposure(&findings, open);
        out.push(if by < Money::ZERO {
            format!("{words} {} less", -by)
        } else {
            format!("{words} {by} more")
        });
    }
    let all = answer.together();
    if !all.is_empty() {
        out.extend([
            String::new(),
            "WHY, over all quotes, at the same policy and with tax".to_owned(),
        ]);
        out.extend(why(&all));
    }
    for one in &findings {
        out.extend(beside(one, each));
    }
    for (number, because) in answer.left_out() {
        out.push(format!("{number} is left out: {because}"));
    }
    out.join("\n") + "\n"
}

/// The causes over all quotes, and their sum.
fn why(all: &[CommonCause]) -> Vec<String> {
    let row = |one: &CommonCause| {
        let quotes = counted(one.quotes, "quote", "quotes");
        let [group, class] = [group(one.group), class(one)].map(str::to_owned);
        vec![group, one.title.clone(), class, quotes, one.by.plain()]
    };
    let mut rows: Vec<Vec<String>> = all.iter().map(row).collect();
    let sum: Money = all.iter().map(|one| one.by).sum();
    let none = String::new;
    rows.push(vec!["together".into(), none(), none(), none(), sum.plain()]);
    table(&[Left, Left, Left, Right, Right], &rows)
}

/// What belongs to one quote: notes, headroom, and its causes if they are asked for.
fn beside(one: &Finding<'_>, each: bool) -> Vec<String> {
    let notes = one.quote.notes.iter();
    let mut said: Vec<String> = notes.map(|note| format!("  {note}")).collect();
    said.extend(one.found.rooms.iter().map(|room| {
        format!(
            "  {} may rise {} before the margin falls below {}, and {} before there is no profit",
            room.item,
            far(room.to_floor),
            one.floor,
            far(room.to_zero)
        )
    }));
    if each {
        let row = |(of, change): (CauseGroup, &crate::costing::CauseChange)| {
            let by = change.by().plain();
            vec![format!("  {}", group(of)), change.title.clone(), by]
        };
        let rows: Vec<Vec<String>> = causes(one.found).map(row).collect();
        said.extend(table(&[Left, Left, Right], &rows));
    }
    if !said.is_empty() {
        said.splice(0..0, [String::new(), one.quote.number.clone()]);
    }
    said
}

/// `by 12.4%, to $195.75`: the last price that still stands.
fn far(room: Room) -> String {
    match room {
        Room::UpTo { price, .. } => format!("by {}, to ${price}", rise::room(room)),
        Room::Far => "by over 900%".to_owned(),
        Room::None => "not at all".to_owned(),
    }
}
