//! What was promised and what came of it: records that are written once, and what follows from them.
//!
//! A job is a row of records, each one file: `2026-0041.01.quote`, `2026-0041.02.accepted`
//! and so on. Nothing is edited or deleted; a mistake is answered by a record that
//! opposes it. The state of a job is computed from its records every time and kept
//! nowhere. Amounts are whole cents, days have no time. No disk and no clock here.
//!
//! The rooms stand in reading order; each uses only those above it.

pub mod text;

pub mod chain;

pub mod record;

pub mod choice;
pub mod name;
pub mod quote_excerpt;

pub mod billing;

pub mod account;

pub mod job;

pub mod progress;

pub mod invoicing;
pub mod rules;

pub mod cancellation;
pub mod escalation;
pub mod late;

pub mod ageing;
pub mod standing;
pub mod win_rate;
pub mod words;
