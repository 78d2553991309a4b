//! A quote as it is put on record: everything that proves its figures, and everything it says.

use super::desk::Desk;
use super::files::Files;
use crate::costing::{self, LineItem, Offer, Priced, Tier};
use crate::documents::views::quote::QuoteView;
use crate::input::book::{Basis, Class};
use crate::input::job::Choice;
use crate::input::phrases::Share;
use crate::office::record::{ChoiceGroup, Combination, Figures, InputKind, Line, Quote, Stage};
use crate::office::text::{Cents, Day, Number};
use crate::office::words::{cause, side};
use crate::trade::order::{Need, NeedItem};

/// The quote of this desk, as it goes out; its PDF comes with its name.
pub fn quote_record(
    desk: &Desk,
    offer: &Offer,
    view: &QuoteView,
    revision: u32,
    files: &Files,
) -> Quote {
    let (takeoff, business) = (&desk.takeoff, &desk.business);
    let mut kinds: Vec<String> = takeoff.slabs.iter().map(|slab| slab.kind.clone()).collect();
    kinds.sort();
    kinds.dedup();
    let groups = takeoff.options.iter().map(|group| ChoiceGroup {
        question: group.question.clone(),
        must_choose: group.must_choose,
        options: group
            .options
            .iter()
            .map(|one| one.name.value.clone())
            .collect(),
    });
    Quote {
        revision,
        job: takeoff.name.clone(),
        title: view.title.clone(),
        customer: takeoff.customer.name.clone(),
        address: takeoff.customer.address.clone(),
        kinds,
        good_until: Day(desk.quoted.plus(i64::from(business.quote.good_for.0))),
        pours: desk.days.iter().map(|prices| Day(prices.day)).collect(),
        choices: groups.collect(),
        as_quoted: offer.as_quoted.0.clone(),
        combinations: combinations(desk, offer),
        payments: payments(desk, offer),
        margin_floor: Number(business.price.margin_floor.value.number()),
        deposit_cap: Number(business.quote.deposit_cap.value.number()),
        deposit_limit: Some(Cents(business.quote.deposit_limit.value)),
        replaces: None,
        inputs: files.inputs(
            [
                InputKind::Takeoff,
                InputKind::Business,
                InputKind::PriceBook,
            ],
            desk.texts,
        ),
        view: serde_json::to_value(view).expect("a view is plain data"),
        pdf: None,
    }
}

/// Every combination with all its lines.
pub fn combinations(desk: &Desk, offer: &Offer) -> Vec<Combination> {
    let taken = |choice: &Choice| {
        let picks = choice.0.iter().zip(desk.takeoff.options.iter());
        picks
            .filter_map(|(&pick, group)| {
                Some(group.options[pick.checked_sub(1)?].name.value.clone())
            })
            .collect()
    };
    let by_choice = offer.by_choice.iter();
    by_choice
        .map(|(choice, priced)| Combination {
            choice: choice.0.clone(),
            taken: taken(choice),
            cost: Cents(priced.totals().cost),
            figures: figures(priced),
            lines: lines(priced, desk.days.len()),
        })
        .collect()
}

/// Price and taxes of one combination.
fn figures(priced: &Priced) -> Figures {
    let taxes = priced.lines.iter().filter(|line| line.side == Tier::Tax);
    let taxes = taxes.map(|line| (cause(&line.cause), line.money()));
    Figures::of(priced.totals().price, taxes.collect())
}

/// All lines of a job with so many pours.
pub fn lines(priced: &Priced, pours: usize) -> Vec<Line> {
    let first_pour = priced.needs.first_pour;
    let mut needs = priced.needs.needs.iter();
    let lines = priced.lines.iter().map(|one| {
        let need = needs.next();
        let pour = need.map(|need| need.placement.unwrap_or(first_pour));
        line(one, need, pour.filter(|_| 1 < pours))
    });
    lines.collect()
}

/// The first lines are those of the needs, in their order.
fn line(line: &LineItem, need: Option<&Need>, pour: Option<usize>) -> Line {
    let item = need
        .filter(|_| line.class.is_some())
        .and_then(|need| match &need.item {
            NeedItem::Item(item) => Some(item.value.clone()),
            NeedItem::Lump { .. } => None,
        });
    let quantity = line.quantity.as_ref();
    let price = line.price.as_ref();
    Line {
        cause: cause(&line.cause),
        side: side(line.side).to_owned(),
        class: line.class.map(|class| Class::name(class).to_owned()),
        item,
        quantity: quantity.map(|quantity| Number(quantity.value().normalize())),
        pour,
        unit: quantity.map(|quantity| quantity.amount().unit.symbol().to_owned()),
        price: price.map(|dated| Number(dated.price.dollars())),
        priced: price.map(|dated| Day(dated.from)),
        held_until: price.and_then(|dated| match &dated.basis {
            Basis::Held { until, .. } => Some(Day(*until)),
            Basis::Listed => None,
        }),
        amount: Cents(line.money()),
        working: line.amount.shown(),
    }
}

fn payments(desk: &Desk, offer: &Offer) -> Vec<Stage> {
    let payments = costing::payments(&desk.business, &offer.quoted().needs.crew).iter();
    payments
        .map(|payment| Stage {
            when: payment.when.clone(),
            share: match payment.share {
                Share::Percent(percent) => percent.to_string(),
                Share::Fraction { top, bottom } => format!("{top}/{bottom}"),
                Share::Amount(money) => money.dollars().to_string(),
                Share::Rest => "rest".to_owned(),
            },
        })
        .collect()
}
