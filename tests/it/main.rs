//! Tests of the whole program.

// A test that cannot go on has failed, and says where.
#![allow(clippy::unwrap_used)]

mod advice;
mod book_check;
mod book_import;
mod cost_sheet;
mod crew;
mod defaults;
mod docs;
mod errors;
mod golden;
mod ground;
mod joints;
mod money_forms;
mod named_sides;
mod own_rules;
mod pdf;
mod photos;
mod pour_days;
mod properties;
mod quote;
mod quote_shapes;
mod quote_steel;
mod records;
mod reference;
mod reference_tables;
mod reissue;
mod reprice;
mod reprice_page;
mod rooms;
mod rules_guide;
mod scope_words;
mod seasons;
mod site;
mod sources;
mod supply;
mod support;
mod surfaces;
mod tidy;
mod what_if;
