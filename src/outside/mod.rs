//! The outside world: files, the clock, the command line.

pub mod cli;
pub mod desk;
pub mod exports;
pub mod files;
