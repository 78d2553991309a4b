//! The outside world: files, the clock, the command line.

pub mod cabinet;
pub mod changing;
pub mod cli;
pub mod closing;
pub mod desk;
pub mod exports;
pub mod files;
pub mod filing;
pub mod home;
pub mod kept;
pub mod making;
pub mod paper;
pub mod progress;
pub mod repricing;
pub mod verify;
