//! Laws of a job's account, over random rows of records, after every one of them.

use flatwork::inside::documents::views::office::ledger;
use flatwork::inside::office::account::{Account, Billed, Reply};
use flatwork::inside::office::ageing;
use flatwork::inside::office::billing::{share_of, stages};
use flatwork::inside::office::job::Job;
use flatwork::inside::office::record::{
    Accepted, Bills, Change, Combination, Credit, Figures, Happened, Invoice, Payment, Quote,
    RECORD, RULES, Record, Stage,
};
use flatwork::inside::office::standing::{State, state};
use flatwork::inside::office::text::{Cents, Day as Written, Number};
use flatwork::inside::values::{Day, Money};
use rust_decimal::Decimal;

use crate::properties::jobs::Dice;

const NUMBER: &str = "2026-0041";

pub(super) fn day(after: u64) -> Day {
    let first: Day = "2026-05-04".parse().unwrap();
    first.plus(i64::try_from(after).unwrap())
}

pub(super) fn figures(dice: &mut Dice, least: i64) -> Figures {
    let price = least + i64::try_from(dice.between(0, 2_000_000)).unwrap();
    let tax = (price * 6 + if price < 0 { -50 } else { 50 }) / 100;
    Figures::of(
        Money::cents(price),
        vec![("sales tax".into(), Money::cents(tax))],
    )
}

pub(super) fn quote(dice: &mut Dice) -> Quote {
    let shares: &[&str] = match dice.between(0, 2) {
        0 => &["10%", "40%", "40%", "10%"],
        1 => &["1/3", "rest"],
        _ => &["33%", "33%", "34%"],
    };
    let payments = shares.iter().map(|share| Stage {
        when: "then".into(),
        share: (*share).to_owned(),
    });
    Quote {
        revision: 1,
        job: "job".into(),
        title: "A new slab".into(),
        customer: "Ira Sample".into(),
        address: None,
        kinds: vec!["slab".into()],
        good_until: Written(day(400)),
        pours: Vec::new(),
        choices: Vec::new(),
        as_quoted: Vec::new(),
        combinations: vec![Combination {
            choice: Vec::new(),
            taken: Vec::new(),
            cost: Cents(Money::ZERO),
            figures: figures(dice, 100_000),
            lines: Vec::new(),
        }],
        payments: payments.collect(),
        margin_floor: Number(Decimal::ZERO),
        deposit_cap: Number(Decimal::ONE_HUNDRED),
        deposit_limit: None,
        replaces: None,
        inputs: Vec::new(),
        view: serde_json::Value::Null,
        pdf: None,
    }
}

/// The payment of just what is owed, where something is.
fn whole(payment: Payment, owed: Money) -> Payment {
    Payment {
        amount: if Money::ZERO < owed {
            Cents(owed)
        } else {
            payment.amount
        },
        ..payment
    }
}

/// Something that may be tried next, sensible or not.
fn event(dice: &mut Dice, account: &Account<'_>) -> Option<Happened> {
    let any = |dice: &mut Dice| u32::try_from(dice.between(1, 4)).unwrap();
    let because = || "so it was".to_owned();
    let amount = |dice: &mut Dice, most: u64| {
        Cents(Money::cents(i64::try_from(dice.between(1, most)).unwrap()))
    };
    let payment = |dice: &mut Dice, before: usize| Payment {
        payment: u32::try_from(before).unwrap() + 1,
        amount: amount(dice, 900_000),
        how: "check".into(),
        invoice: dice.one_in(3).then(|| any(dice)),
        inputs: Vec::new(),
        pdf: None,
    };
    Some(match dice.between(0, 15) {
        0 | 1 => Happened::Accepted(Accepted {
            revision: 1,
            by: "Ira Sample".into(),
            how: "on paper".into(),
            choice: Vec::new(),
            taken: Vec::new(),
            contract: account.quote()?.1.combinations[0].figures.clone(),
            cancel_until: None,
        }),
        2 if dice.one_in(4) => Happened::Cancelled {
            because: because(),
            refund_by: None,
        },
        2 => Happened::Quote(Box::new(quote(dice))),
        3 if account.changes.len() < 4 => Happened::Change(Box::new(Change {
            change: u32::try_from(account.changes.len()).unwrap() + 1,
            title: "More".into(),
            because: None,
            lines: Vec::new(),
            figures: figures(dice, -300_000),
            work: Vec::new(),
            days: 0,
            priced: Written(day(0)),
            inputs: Vec::new(),
            pdf: None,
        })),
        3 | 4 => Happened::ChangeAccepted {
            change: any(dice),
            by: "Ira Sample".into(),
            how: "on paper".into(),
        },
        5 => Happened::Declined {
            because: because(),
            change: Some(any(dice)),
        },
        6..=8 => invoice(dice, account)?,
        9 => Happened::Voided {
            invoice: any(dice),
            because: because(),
        },
        10 => {
            let invoice = any(dice);
            let found = account
                .invoices
                .iter()
                .find(|one| one.invoice.invoice == invoice)?;
            Happened::Credit(Box::new(Credit {
                credit: 1,
                invoice,
                because: because(),
                figures: share_of(&found.invoice.figures, amount(dice, 200_000).0),
                inputs: Vec::new(),
                pdf: None,
            }))
        }
        11 => Happened::Returned {
            payment: any(dice),
            because: because(),
        },
        12 => Happened::Refunded(whole(payment(dice, account.refunds.len()), -account.owed())),
        13 => Happened::Paid(payment(dice, account.payments.len())),
        _ => Happened::Paid(whole(payment(dice, account.payments.len()), account.owed())),
    })
}

fn invoice(dice: &mut Dice, account: &Account<'_>) -> Option<Happened> {
    let (_, accepted) = account.accepted()?;
    let (_, quote) = account.quote()?;
    let parts = stages(&accepted.contract, &quote.payments);
    let (bills, figures) = if dice.one_in(4) {
        (Bills::Final, account.contract()?.less(&account.billed()))
    } else {
        let stage = usize::try_from(dice.between(0, parts.len() as u64 - 1)).unwrap();
        (Bills::Stage(stage), parts[stage].clone())
    };
    // As the command has it: nothing, and less than nothing, is not billed.
    (Money::ZERO < figures.total.0).then(|| {
        Happened::Invoice(Box::new(Invoice {
            invoice: u32::try_from(account.invoices.len()).unwrap() + 1,
            bills,
            lines: Vec::new(),
            figures,
            due: Written(day(30)),
            closing: None,
            inputs: Vec::new(),
            pdf: None,
        }))
    })
}

pub(super) fn record(place: usize, after: u64, what: Happened) -> Record {
    Record {
        record: RECORD,
        rules: RULES,
        program: "flatwork".into(),
        number: NUMBER.into(),
        place: u32::try_from(place).unwrap(),
        day: Written(day(after)),
        previous: None,
        what,
    }
}

/// What holds after every record.
pub(super) fn check(records: &[Record], seed: u64) {
    let account = Account::replay(records);
    let told = || {
        format!(
            "seed {seed}, after {:#?}",
            records.last().unwrap().what.event()
        )
    };
    let open: Money = account.invoices.iter().map(Billed::open).sum();
    let open = open + account.refund_owed;
    let owed = account.owed();
    for one in &account.invoices {
        assert!(Money::ZERO <= one.paid, "paid below zero: {}", told());
        assert!(
            Money::ZERO <= one.open() || one.voided,
            "open below zero: {}",
            told()
        );
        assert!(!one.voided || one.open() == -one.paid, "{}", told());
    }
    // Either the customer owes just what is open, or has a credit and nothing is open.
    assert!(
        owed == open || (owed < Money::ZERO && open.is_zero()),
        "owed {owed}, open {open}: {}",
        told()
    );
    // What is listed by age is what is open.
    let listed: Money = ageing::open(NUMBER, &account, day(90))
        .iter()
        .map(|due| due.open)
        .sum();
    assert_eq!(listed, open, "{}", told());
    // Billed and what is left make the contract.
    if let Some(contract) = account.contract() {
        let left = contract.less(&account.billed());
        assert_eq!(
            left.plus(&account.billed()).total,
            contract.total,
            "{}",
            told()
        );
    }
    // No job is without a state.
    assert!(state(&account, day(90)).is_some(), "{}", told());
    assert!(ledger::statement(NUMBER, &account).contains("owed"));
    // The same from the texts as from memory.
    let again: Vec<Record> = records
        .iter()
        .map(|record| Record::from_text(&record.to_text()).unwrap().0)
        .collect();
    assert_eq!(Account::replay(&again).owed(), owed, "{}", told());
}

#[test]
fn accounts_add_up_after_every_record() {
    let (mut filed, mut signed, mut paid, mut ended) = (0, 0, 0, 0);
    for seed in 1..=400 {
        let mut dice = Dice::new(seed);
        let first = Happened::Quote(Box::new(quote(&mut dice)));
        let mut records = vec![record(1, 0, first)];
        for step in 1..60 {
            let what = {
                let account = Account::replay(&records);
                let what = event(&mut dice, &account);
                let job = Job {
                    number: NUMBER,
                    day: day(step),
                    account: &account,
                };
                what.filter(|what| job.may(what, false).is_ok())
            };
            let Some(what) = what else {
                continue;
            };
            records.push(record(records.len() + 1, step, what));
            check(&records, seed);
            let account = Account::replay(&records);
            paid += usize::from(matches!(state(&account, day(90)), Some((State::Paid, _))));
        }
        filed += records.len();
        let account = Account::replay(&records);
        signed += usize::from(account.accepted().is_some());
        ended += usize::from(matches!(account.answer, Reply::Cancelled { .. }));
    }
    assert!(5_000 < filed, "only {filed} records");
    assert!(
        180 < signed && 50 < paid && 20 < ended,
        "{signed} {paid} {ended}"
    );
}
