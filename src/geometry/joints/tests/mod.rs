//! Layouts looked at, laws that hold for any slab, and every small case tried.

mod drawn;
mod gallery;
mod laws;
