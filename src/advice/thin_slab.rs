//! Is a slab thick enough for what stands on it?

use super::{Case, DECIDES};
use crate::reading::Problem;
use crate::tables::Source;
use crate::values::Length;

/// Under people, and under cars.
const LEAST: Length = Length::sixty_fourths(224);
const UNDER_CARS: Length = Length::inches_whole(4);

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let on_ground = case.takeoff.slabs.iter().filter(|slab| !slab.is_step());
    let thin = on_ground.filter_map(|slab| {
        let (least, what) = match slab.kind.as_str() {
            "driveway" | "apron" => (UNDER_CARS, "cars"),
            _ => (LEAST, "people"),
        };
        let thickness = &slab.thickness;
        if least <= thickness.value.thin {
            return None;
        }
        let message = format!(
            "`{}` is `{}` thick, under {what}",
            slab.key, thickness.value.thin
        );
        let help = format!(
            "make it {least} or thicker ({}); {DECIDES}",
            Source::PRACTICE
        );
        let problem = Problem::new("thin-slab", message);
        Some(problem.at(thickness.place).help(help))
    });
    thin.collect()
}
