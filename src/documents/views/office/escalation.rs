//! What an escalation clause comes to, and the change order that would say so.

use crate::input::business::Escalation;
use crate::office::escalation::Followed;
use crate::values::Money;

pub fn text(number: &str, clause: &Escalation, index: Money, found: Option<&Followed>) -> String {
    let Some(Followed { amount, working }) = found else {
        return format!(
            "nothing to follow: {index} is within {} of {}\n",
            clause.over, clause.reference.value
        );
    };
    let (of, named) = (&clause.of, &clause.index);
    let plain = amount.plain().replace(',', "");
    format!(
        "working     {working}
comes to    {amount} before tax

A change order that says so; put it into a file, then `flatwork change {number} FILE`:

change: {of} by the clause of our contract
because: \"{named}: {index} a cubic yard. {working}\"
lines:
  - {of} by the clause: {plain}
"
    )
}
