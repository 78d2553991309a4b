//! What is asked about a site before it is priced: a closed list of questions, each with few answers.
//!
//! A takeoff answers for its own site, business.yaml says what is usual, and the
//! price book says what an answer costs. Nothing here decides: a question that
//! nobody answered is told to the customer as something the price counts on.

mod answer;
mod question;
mod read;

pub use answer::{Answer, Work};
pub use question::{Form, Question};
pub use read::{SiteAnswers, SitePolicy, or_usual};
