//! Layouts looked at, laws that hold for any slab, and every small case tried.

mod drawn;
mod every;
mod gallery;
mod known;
mod laws;
mod turned;
