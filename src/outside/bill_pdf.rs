//! From the records of a job to the PDF of an invoice, a credit, a receipt or a change order.

use std::collections::BTreeMap;

use super::pdf_bytes::pdf_bytes;
use crate::documents::billing::{self, Billing};
use crate::documents::{change, document};
use crate::input::business::Business;
use crate::office::job::Job;
use crate::office::record::Happened;
use crate::press::layout::style::Look;
use crate::reading::{Problems, Read};

/// The page that the customer gets of what happened; none where there is no such page, or where
/// it is a quote, which is made from its takeoff.
pub fn bill_pdf(
    job: Job<'_>,
    business: &Business,
    what: &Happened,
    problems: &mut Problems,
) -> Read<Option<Vec<u8>>> {
    let of = Billing {
        number: job.number,
        day: job.day,
        account: job.account,
        business,
    };
    let mut figures = BTreeMap::new();
    let view = match what {
        Happened::Change(change) => {
            let view = change::change(of, change);
            let view = view.ok_or_else(|| problems.push(job.not_accepted()))?;
            return pdf_bytes(document(&view, &figures), problems).map(Some);
        }
        Happened::Invoice(invoice) => {
            figures = billing::figures(of, invoice, Look::default().accent);
            billing::invoice(of, invoice)
        }
        Happened::Credit(credit) => billing::credit(of, credit),
        Happened::Paid(payment) => billing::receipt(of, payment),
        Happened::Refunded(refund) => billing::refund(of, refund),
        Happened::Quote(_)
        | Happened::Accepted(_)
        | Happened::Cancelled { .. }
        | Happened::Declined { .. }
        | Happened::Withdrawn { .. }
        | Happened::Postponed { .. }
        | Happened::ChangeAccepted { .. }
        | Happened::Voided { .. }
        | Happened::Returned { .. } => return Ok(None),
    };
    let view = view.ok_or_else(|| problems.push(job.not_accepted()))?;
    pdf_bytes(document(&view, &figures), problems).map(Some)
}
