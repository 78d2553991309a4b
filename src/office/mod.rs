//! What was promised and what came of it: records that are written once, and what follows from them.
//!
//! A job is a row of records, each one file: `2026-0041.01.quote`, `2026-0041.02.accepted`
//! and so on. Nothing is edited or deleted; a mistake is answered by a record that
//! opposes it. The state of a job is computed from its records every time and kept
//! nowhere. Amounts are whole cents, days have no time. No disk and no clock here.

pub mod account;
pub mod billing;
pub mod cancellation;
pub mod chain;
pub mod escalation;
pub mod late;
pub mod name;
pub mod progress;
pub mod quote_excerpt;
pub mod record;
pub mod rules;
pub mod text;
