//! From the records of a job to the bytes of an invoice, a credit, a receipt or a change order.

use crate::documents::billing::{self, Billing};
use crate::documents::change::{self, change_document};
use crate::documents::views::bill::BillView;
use crate::documents::{DocumentError, bill_document};
use crate::office::record::{Change, Credit, Invoice, Payment};
use crate::press::layout::style::Look;
use crate::press::page::Document;
use crate::press::pdf;
use crate::reading::{Problem, Problems};

/// The invoice as a PDF.
pub fn invoice(of: Billing<'_>, invoice: &Invoice, problems: &mut Problems) -> Option<Vec<u8>> {
    let view = billing::invoice(of, invoice)?;
    let figures = billing::figures(of, invoice, Look::default().accent);
    written(bill_document(&view, &figures), problems)
}

/// The credit as a PDF.
pub fn credit(of: Billing<'_>, credit: &Credit, problems: &mut Problems) -> Option<Vec<u8>> {
    plain(&billing::credit(of, credit)?, problems)
}

/// The change order as a PDF.
pub fn change(of: Billing<'_>, change: &Change, problems: &mut Problems) -> Option<Vec<u8>> {
    let view = change::change(of, change)?;
    written(change_document(&view), problems)
}

/// The receipt for a payment as a PDF.
pub fn receipt(of: Billing<'_>, payment: &Payment, problems: &mut Problems) -> Option<Vec<u8>> {
    plain(&billing::receipt(of, payment)?, problems)
}

/// The receipt for money paid back as a PDF.
pub fn refund(of: Billing<'_>, refund: &Payment, problems: &mut Problems) -> Option<Vec<u8>> {
    plain(&billing::refund(of, refund)?, problems)
}

/// A page without a figure.
fn plain(view: &BillView, problems: &mut Problems) -> Option<Vec<u8>> {
    let none = std::collections::BTreeMap::new();
    written(bill_document(view, &none), problems)
}

fn written(document: Result<Document, DocumentError>, problems: &mut Problems) -> Option<Vec<u8>> {
    match document {
        Ok(document) => Some(pdf::write(&document)),
        Err(error) => {
            problems.push(
                Problem::new("cannot-set-page", error.to_string())
                    .help("write it with letters of the bundled face, or shorter"),
            );
            None
        }
    }
}
