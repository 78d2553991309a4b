//! The outside world: files, the clock, the command line.
//!
//! The rooms stand in reading order; each uses only those above it.

pub mod files;

pub mod business_folder;
pub mod records;

pub mod desk;

pub mod from_record;

pub mod pdf_bytes;

pub mod bill_pdf;
pub mod quote_pdf;
pub mod quote_record;

pub mod changing;
pub mod closing;
pub mod repricing;

pub mod verify;

pub mod exports;

pub mod cli;
