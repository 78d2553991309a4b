//! The table of an invoice: stage by stage what is agreed, billed before, billed now, left.

use super::{Billing, dash};
use crate::documents::offering;
use crate::documents::views::bill::BillRow;
use crate::office::account::ChangeAnswer;
use crate::office::billing::stages;
use crate::office::record::{Bills, Figures, Invoice};
use crate::values::Money;

/// One row before it is put in words.
struct InvoiceRow {
    mark: String,
    what: String,
    share: String,
    agreed: Figures,
    before: Figures,
    this: Figures,
}

/// Rows before tax, and the sums below them; none where nothing was signed.
pub(super) fn rows(of: Billing<'_>, invoice: &Invoice) -> Option<(Vec<BillRow>, Vec<BillRow>)> {
    let parts = parts(of, invoice)?;
    let rows = parts
        .iter()
        .map(|part| {
            shown(
                (&part.mark, &part.what, &part.share),
                &[&part.agreed, &part.before, &part.this],
                |figures| figures.price.0,
                false,
            )
        })
        .collect();
    let whole = |of: &dyn Fn(&InvoiceRow) -> &Figures| {
        parts
            .iter()
            .fold(Figures::default(), |sum, part| sum.plus(of(part)))
    };
    let sums = [
        whole(&|part| &part.agreed),
        whole(&|part| &part.before),
        whole(&|part| &part.this),
    ];
    debug_assert_eq!(
        sums[2], invoice.figures,
        "the rows of an invoice make what it asks"
    );
    let sums: Vec<&Figures> = sums.iter().collect();
    let mut below = vec![shown(("", "Subtotal", ""), &sums, |one| one.price.0, true)];
    for tax in &sums[0].taxes {
        let name = tax.name.clone();
        let amount = move |one: &Figures| -> Money {
            let of_name = one.taxes.iter().filter(|tax| tax.name == name);
            of_name.map(|tax| tax.amount.0).sum()
        };
        let title = offering::named(std::slice::from_ref(&tax.name));
        below.push(shown(("", &title, ""), &sums, amount, false));
    }
    below.push(shown(("", "Total", ""), &sums, |one| one.total.0, true));
    Some((rows, below))
}

fn parts(of: Billing<'_>, invoice: &Invoice) -> Option<Vec<InvoiceRow>> {
    let (_, quote) = of.account.quote()?;
    let (_, accepted) = of.account.accepted()?;
    let agreed = stages(&accepted.contract, &quote.payments);
    let mut kept = of.account.invoices.iter().filter(|one| !one.voided);
    if matches!(invoice.bills, Bills::Progress(_))
        || kept.any(|one| matches!(one.invoice.bills, Bills::Progress(_)))
    {
        // Billed by work done, the stages of the schedule no longer stand for anything.
        return Some(vec![InvoiceRow {
            mark: String::new(),
            what: "Work as agreed, changes included".to_owned(),
            share: String::new(),
            agreed: of.account.contract()?,
            before: of.account.billed(),
            this: invoice.figures.clone(),
        }]);
    }
    let billed = |wanted: &Bills| {
        let kept = of.account.invoices.iter().filter(|one| !one.voided);
        kept.filter(|one| one.invoice.bills == *wanted)
            .fold(Figures::default(), |sum, one| {
                sum.plus(&one.invoice.figures)
            })
    };
    let last = invoice.bills == Bills::Final;
    // A final invoice before this one has billed every stage, and every change signed until then.
    let ended = of.account.last_final().map(|one| one.place);
    let mut parts: Vec<InvoiceRow> = quote
        .payments
        .iter()
        .zip(agreed)
        .enumerate()
        .map(|(i, (stage, agreed))| {
            let before = match ended {
                Some(_) => agreed.clone(),
                None => billed(&Bills::Stage(i)),
            };
            let this = if last {
                agreed.less(&before)
            } else if invoice.bills == Bills::Stage(i) {
                invoice.figures.clone()
            } else {
                Figures::default()
            };
            InvoiceRow {
                mark: (i + 1).to_string(),
                what: stage.when.clone(),
                share: stage.share.clone(),
                agreed,
                before,
                this,
            }
        })
        .collect();
    for one in &of.account.changes {
        let ChangeAnswer::Accepted(place) = one.answer else {
            continue;
        };
        let agreed = one.change.figures.clone();
        let before = match ended {
            Some(ended) if place < ended => agreed.clone(),
            Some(_) | None => Figures::default(),
        };
        parts.push(InvoiceRow {
            mark: format!("C{}", one.change.change),
            what: one.change.title.clone(),
            share: String::new(),
            this: if last {
                agreed.less(&before)
            } else {
                Figures::default()
            },
            agreed,
            before,
        });
    }
    Some(parts)
}

/// Agreed, before and this; to date and left follow from them.
fn shown(
    (mark, what, share): (&str, &str, &str),
    figures: &[&Figures],
    amount: impl Fn(&Figures) -> Money,
    is_total: bool,
) -> BillRow {
    let [agreed, before, this] = [0, 1, 2].map(|i| amount(figures[i]));
    BillRow {
        mark: mark.to_owned(),
        what: what.to_owned(),
        share: share.to_owned(),
        agreed: dash(agreed),
        before: dash(before),
        now: dash(this),
        to_date: dash(before + this),
        left: dash(agreed - before - this),
        is_total,
    }
}
