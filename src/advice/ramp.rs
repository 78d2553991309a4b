//! Is a public slope a ramp, and has it what a ramp must have?

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::{Case, DECIDES};
use crate::geometry::Compass;
use crate::input::job::Slab;
use crate::input::phrases::Slope;
use crate::reading::Problem;
use crate::tables::{Source, slopes};
use crate::values::{Amount, Length, Unit, rounding};

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let slabs = case.takeoff.slabs.iter();
    let public = slabs.filter(|slab| slab.around.is_public());
    public.filter_map(|slab| of_slab(slab)).collect()
}

fn of_slab(slab: &Slab) -> Option<Problem> {
    let (low, high) = slab.outline.bounds();
    let (east_west, north_south) = (high.x - low.x, high.y - low.y);
    let falls = slab.falls.iter().filter_map(|fall| {
        let run = match fall.to.side()? {
            Compass::North | Compass::South => north_south,
            Compass::East | Compass::West => east_west,
        };
        Some((fall, Length::nanometres(run)))
    });
    // People walk along it.
    let (fall, run) = falls.max_by_key(|(_, run)| *run)?;
    let slope = Slope::per_foot(fall.rise.value);
    if run.as_nanometres() < east_west.max(north_south) {
        return None;
    }
    if !slope.is_steeper_than(Slope::one_in(slopes::WALK_RUN)) {
        return None;
    }
    let rise = fall.rise.value.inches() * run.feet();
    let inches = Amount::new(rounding::to_places(rise, 1), Unit::Inch);
    let message = format!(
        "`{}` is public and falls `{}` in a foot, which is a ramp; it rises `{inches}` over `{run}`",
        slab.key, fall.rise.value
    );
    let problem = Problem::new("public-ramp", message).at(fall.rise.place);
    Some(problem.help(format!("{}; {DECIDES}", asked(slope, rise).join("; "))))
}

/// What a ramp of this slope and rise in inches must have.
fn asked(slope: Slope, rise: Decimal) -> Vec<String> {
    let steepest = Slope::one_in(slopes::RAMP_RUN);
    let mut asked = Vec::new();
    if slope.is_steeper_than(steepest) {
        asked.push(format!("1:12 is the steepest; source: {}", slopes::RAMP));
    }
    let mut beside = "a level landing of 5 ft at the top and at the bottom".to_owned();
    if MOST_RISE < rise {
        beside += ", and another before it has risen more than 30 in";
    }
    if RAILS_OVER < rise {
        beside += ", and rails on both sides, since it rises over 6 in";
    }
    asked.push(format!("{beside} ({})", Source::PRACTICE));
    asked
}

/// Inches between two landings, and from which rails are asked for; common practice, no source.
const MOST_RISE: Decimal = dec!(30);
const RAILS_OVER: Decimal = dec!(6);
