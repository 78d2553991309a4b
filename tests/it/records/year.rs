//! A year of an invented business: sixty jobs, each going its own way, and what the office reads.
//!
//! Everything goes by the rules the commands go by, in memory, so that it takes no disk.
//! `BLESS=1 cargo test --test it year` writes what is read at the ends of four quarters.

use std::collections::BTreeMap;
use std::path::Path;

use flatwork::inside::documents::views::office::ledger;
use flatwork::inside::input::phrases::Share;
use flatwork::inside::input::progress as written;
use flatwork::inside::office::account::Account;
use flatwork::inside::office::ageing;
use flatwork::inside::office::billing::{share_of, stages};
use flatwork::inside::office::job::Job;
use flatwork::inside::office::progress::{asked, progress};
use flatwork::inside::office::record::{
    Accepted, Bills, Change, Credit, Figures, Happened, Invoice, Payment, Record,
};
use flatwork::inside::office::standing::standing;
use flatwork::inside::office::text::{Cents, Day as Written};
use flatwork::inside::reading::{Problems, Sources, yaml};
use flatwork::inside::values::{Day, Money};

use super::laws::{check, day, figures, quote, record};
use crate::properties::jobs::Dice;

/// One job while it is told.
struct Story {
    seed: u64,
    number: String,
    records: Vec<Record>,
    /// Days after the first quote of the year.
    today: u64,
}

impl Story {
    /// Something more happens, `after` days later; the rules have to allow it.
    fn goes(&mut self, after: u64, what: impl FnOnce(&Account<'_>, Day) -> Happened) {
        self.today += after;
        let on = day(self.today);
        let account = Account::replay(&self.records);
        let what = what(&account, on);
        let job = Job {
            number: &self.number,
            day: on,
            account: &account,
        };
        if let Err(refusal) = job.may(&what, false) {
            panic!("{}: {refusal:?}", self.number);
        }
        let mut next = record(self.records.len() + 1, self.today, what);
        next.number.clone_from(&self.number);
        self.records.push(next);
        check(&self.records, self.seed);
    }

    fn signs(&mut self, after: u64) {
        self.goes(after, |account, _| {
            Happened::Accepted(Accepted {
                revision: 1,
                by: "Ira Sample".into(),
                how: "on paper".into(),
                choice: Vec::new(),
                taken: Vec::new(),
                contract: account.quote().unwrap().1.combinations[0].figures.clone(),
                cancel_until: None,
            })
        });
    }

    fn bills(&mut self, after: u64, bills: Bills, asks: impl FnOnce(&Account<'_>) -> Figures) {
        self.goes(after, |account, on| {
            Happened::Invoice(Box::new(Invoice {
                invoice: u32::try_from(account.invoices.len()).unwrap() + 1,
                bills,
                lines: Vec::new(),
                figures: asks(account),
                due: Written(on.plus(10)),
                closing: None,
                inputs: Vec::new(),
                pdf: None,
            }))
        });
    }

    fn bills_stage(&mut self, after: u64, stage: usize) {
        self.bills(after, Bills::Stage(stage), |account| {
            let contract = &account.accepted().unwrap().1.contract;
            stages(contract, &account.quote().unwrap().1.payments)[stage].clone()
        });
    }

    fn bills_rest(&mut self, after: u64) {
        self.bills(after, Bills::Final, |account| {
            account.contract().unwrap().less(&account.billed())
        });
    }

    /// So many percent of all work, a tenth of it withheld.
    fn bills_progress(&mut self, after: u64, percent: u32) {
        let account = Account::replay(&self.records);
        let price = account.contract().unwrap().price.0.dollars();
        let text = format!("retainage: 10%\nlines: [Work: {{value: {price}, done: {percent}%}}]\n");
        let (mut sources, mut problems) = (Sources::default(), Problems::default());
        let id = sources.add("values.yaml", text);
        let node = yaml::read(id, &sources, &mut problems).unwrap();
        let read = written::read(&node, &mut problems).unwrap();
        assert!(matches!(read.retainage.value, Share::Percent(_)));
        let job = Job {
            number: &self.number,
            day: day(self.today + after),
            account: &account,
        };
        let done = progress(&read, job, &mut problems).unwrap();
        let figures = asked(&done, &account);
        self.bills(after, Bills::Progress(Box::new(done)), |_| figures);
    }

    fn pays(&mut self, after: u64, part: impl FnOnce(Money) -> Money) {
        self.goes(after, |account, _| {
            Happened::Paid(Payment {
                payment: u32::try_from(account.payments.len()).unwrap() + 1,
                amount: Cents(part(account.owed())),
                how: "check".into(),
                invoice: None,
                inputs: Vec::new(),
                pdf: None,
            })
        });
    }
}

fn all(owed: Money) -> Money {
    owed
}

fn half(owed: Money) -> Money {
    Money::cents(owed.as_cents() / 2)
}

fn because() -> String {
    "so it was".to_owned()
}

/// A payment comes back, a part is forgiven, a bill is taken back.
fn mends(story: &mut Story) {
    match story.seed % 10 {
        5 => {
            story.signs(2);
            story.bills_rest(9);
            story.pays(3, all);
            story.goes(4, |_, _| Happened::Returned {
                payment: 1,
                because: because(),
            });
        }
        6 => {
            story.signs(2);
            story.bills_rest(9);
            story.goes(1, |account, _| {
                let of = &account.invoices[0].invoice.figures;
                Happened::Credit(Box::new(Credit {
                    credit: 1,
                    invoice: 1,
                    because: because(),
                    figures: share_of(of, half(of.total.0)),
                    inputs: Vec::new(),
                    pdf: None,
                }))
            });
            story.pays(20, half);
        }
        _ => {
            story.signs(2);
            story.bills_rest(1);
            story.goes(1, |_, _| Happened::Voided {
                invoice: 1,
                because: because(),
            });
            story.bills_stage(1, 0);
            story.pays(5, all);
        }
    }
}

/// One job from its quote on; ten ways, in turn.
fn told(seed: u64) -> Vec<Record> {
    let mut dice = Dice::new(seed);
    let mut quote = quote(&mut dice);
    let first = 4 * seed;
    quote.good_until = Written(day(first + 30));
    quote.customer = format!("Invented {seed}");
    let mut story = Story {
        seed,
        number: format!("2026-{seed:04}"),
        records: Vec::new(),
        today: first,
    };
    story.goes(0, |_, _| Happened::Quote(Box::new(quote)));
    match seed % 10 {
        0 => {}
        1 => story.goes(9, |_, _| Happened::Declined {
            because: because(),
            change: None,
        }),
        2 => {
            story.signs(3);
            story.bills_stage(0, 0);
            story.pays(1, all);
            story.goes(1, |_, on| Happened::Cancelled {
                because: because(),
                refund_by: Some(Written(on.plus(14))),
            });
        }
        3 => {
            story.signs(5);
            story.bills_progress(10, 40);
            story.pays(8, all);
            story.bills_progress(10, 100);
            story.pays(40, half);
            story.bills_rest(2);
        }
        4 => {
            story.signs(6);
            let more = figures(&mut dice, -30_000);
            story.goes(4, |_, on| {
                Happened::Change(Box::new(Change {
                    change: 1,
                    title: "More".into(),
                    because: None,
                    lines: Vec::new(),
                    figures: more,
                    work: Vec::new(),
                    days: 0,
                    priced: Written(on),
                    inputs: Vec::new(),
                    pdf: None,
                }))
            });
            story.goes(2, |_, _| Happened::ChangeAccepted {
                change: 1,
                by: "Ira Sample".into(),
                how: "on paper".into(),
            });
            story.bills_rest(9);
            story.pays(12, all);
        }
        5..=7 => mends(&mut story),
        _ => {
            story.signs(4);
            story.bills_stage(0, 0);
            story.pays(6, all);
            story.bills_stage(10, 1);
            story.pays(15, if seed % 10 == 8 { half } else { all });
            story.bills_rest_if_any(3);
        }
    }
    story.records
}

impl Story {
    fn bills_rest_if_any(&mut self, after: u64) {
        let account = Account::replay(&self.records);
        let left = account.contract().unwrap().less(&account.billed());
        if !left.is_nothing() {
            self.bills_rest(after);
            self.pays(30, |owed| owed);
        }
    }
}

/// Jobs and what is owed as of a day, from what was on record by then.
fn read(year: &[Vec<Record>], today: Day) -> String {
    let known: Vec<Vec<Record>> = year
        .iter()
        .map(|records| {
            let known = records.iter().filter(|record| record.day.0 <= today);
            known.cloned().collect()
        })
        .filter(|records: &Vec<Record>| !records.is_empty())
        .collect();
    let jobs: BTreeMap<String, Account<'_>> = known
        .iter()
        .map(|records| (records[0].number.clone(), Account::replay(records)))
        .collect();
    let lines: Vec<_> = jobs
        .iter()
        .filter_map(|(number, account)| standing(number, account, today))
        .collect();
    let open: Vec<_> = jobs
        .iter()
        .flat_map(|(number, account)| ageing::open(number, account, today))
        .collect();
    // What is listed by age is what the overview says is owed, credits aside.
    let aged: Money = open.iter().map(|due| due.open).sum();
    let owed: Money = lines.iter().map(|line| line.owed.max(Money::ZERO)).sum();
    assert_eq!(aged, owed, "as of {today}");
    format!(
        "As of {today}\n\n{}\n{}\n",
        ledger::overview(&lines),
        ledger::owed(&open)
    )
}

#[test]
fn a_year_of_sixty_jobs_reads_as_expected() {
    let year: Vec<Vec<Record>> = (1..=60).map(told).collect();
    let quarters = ["2026-06-30", "2026-09-30", "2026-12-31", "2027-03-31"];
    let read_all = |year: &[Vec<Record>]| -> String {
        let quarters = quarters.iter();
        quarters.map(|on| read(year, on.parse().unwrap())).collect()
    };
    let found = read_all(&year);
    // From the kept texts alone, the same.
    let again: Vec<Vec<Record>> = year
        .iter()
        .map(|records| {
            let texts = records.iter().map(Record::to_text);
            texts
                .map(|text| Record::from_text(&text).unwrap().0)
                .collect()
        })
        .collect();
    assert_eq!(read_all(&again), found);
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/it/records/year.txt");
    if std::env::var_os("BLESS").is_some() {
        std::fs::write(&path, &found).unwrap();
    }
    let wanted = std::fs::read_to_string(&path).unwrap_or_default();
    let apart = wanted.lines().zip(found.lines()).find(|(a, b)| a != b);
    assert!(wanted == found, "first difference: {apart:?}");
}
