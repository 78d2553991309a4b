//! Is a slab thick enough for what goes over it?

use super::{Case, DECIDES};
use crate::input::job::Carries;
use crate::reading::Problem;
use crate::tables::thickness::least;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let on_ground = case.takeoff.slabs.iter().filter(|slab| !slab.is_step());
    let thin = on_ground.filter_map(|slab| {
        let carries = slab.carries();
        let (least, source) = least(carries == Carries::Cars, carries == Carries::Trucks);
        let thickness = &slab.thickness;
        if least <= thickness.value.thin {
            return None;
        }
        let message = format!(
            "`{}` is `{}` thick, under {}",
            slab.key,
            thickness.value.thin,
            carries.name()
        );
        let lighter = match carries {
            Carries::People => "",
            Carries::Cars => ", or write `carries: people` where no car goes over it",
            Carries::Trucks => ", or write `carries: cars` where nothing heavier goes over it",
        };
        let help = format!("make it {least} or thicker{lighter}; source: {source}; {DECIDES}");
        let problem = Problem::new("thin-slab", message);
        Some(problem.at(thickness.place).help(help))
    });
    thin.collect()
}
