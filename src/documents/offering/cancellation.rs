//! The customer's right to cancel, in the words of 16 CFR 429.1 (a) and (b).
//!
//! Read in two public copies of the rule, one current to September 30, 2024. The rule asks for
//! bold type of ten points. Both dates on the form stay blank: the day of signing is unknown.

use super::phrases::printed;
use crate::documents::views::quote::Cancellation;
use crate::input::business::Business;

const STATEMENT: &str = "You, the buyer, may cancel this transaction at any time prior to midnight of the third business day after the date of this transaction. See the attached notice of cancellation form for an explanation of this right.";

const FORM: [&str; 4] = [
    "You may CANCEL this transaction, without any Penalty or Obligation, within THREE BUSINESS DAYS from the above date.",
    "If you cancel, any property traded in, any payments made by you under the contract or sale, and any negotiable instrument executed by you will be returned within TEN BUSINESS DAYS following receipt by the seller of your cancellation notice, and any security interest arising out of the transaction will be cancelled.",
    "If you cancel, you must make available to the seller at your residence, in substantially as good condition as when received, any goods delivered to you under this contract or sale, or you may, if you wish, comply with the instructions of the seller regarding the return shipment of the goods at the seller\u{2019}s expense and risk.",
    "If you do make the goods available to the seller and the seller does not pick them up within 20 days of the date of your Notice of Cancellation, you may retain or dispose of the goods without any further obligation. If you fail to make the goods available to the seller, or if you agree to return the goods to the seller and fail to do so, then you remain liable for performance of all obligations under the contract.",
];

/// The statement beside the signature and two copies of the form, where the owner switched them on.
pub(super) fn cancellation(business: &Business) -> Option<Cancellation> {
    business.quote.cancellation?;
    // Reading the business sees to it that there is an address.
    let address = business.firm.address.as_deref().unwrap_or_default();
    Some(Cancellation {
        statement: STATEMENT.to_owned(),
        heading: "Notice of Cancellation".to_owned(),
        text: FORM.map(str::to_owned).to_vec(),
        to: printed(&format!(
            "To cancel this transaction, mail or deliver a signed and dated copy of this Cancellation Notice or any other written notice, or send a telegram, to {}, at {address}, NOT LATER THAN MIDNIGHT OF the date below.",
            business.firm.name
        )),
        copies: vec![
            "First copy: to send if you cancel".to_owned(),
            "Second copy: to keep".to_owned(),
        ],
    })
}
