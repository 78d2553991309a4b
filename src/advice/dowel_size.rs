//! Are the dowels as thick, as long and as close as the slab's thickness asks where heavy vehicles cross?

use super::{Case, DECIDES};
use crate::input::job::Carries;
use crate::reading::Problem;
use crate::tables::dowels::{SOURCE, THINNEST, least};

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let doweled = case.slabs().filter_map(|(slab, measured)| {
        let counted = measured.dowels.iter().any(|one| Some(&one.kind) == slab.dowels.as_ref().map(|dowels| &dowels.kind.value));
        let dowels = slab.dowels.as_ref().filter(|_| counted)?;
        let stock = case.book.rules.dowels.get(&dowels.kind.value)?;
        let thickness = slab.thickness.value.thin;
        // The published table was never meant for thinner slabs, nor for cars.
        let wanted = least(thickness)
            .filter(|_| THINNEST <= thickness && slab.carries() == Carries::Trucks)?;
        let (diameter, long, apart) = (
            stock.bar.value.diameter(),
            stock.length.value,
            dowels.spacing.value,
        );
        let light =
            diameter < wanted.diameter || long < wanted.length || wanted.spacing < apart;
        light.then(|| {
            let message = format!(
                "dowels of `{}`, `{thickness}` thick, are `{diameter}`, `{long}` long, `{apart}` apart",
                slab.key
            );
            Problem::new("light-dowels", message)
                .at(dowels.spacing.place)
                .help(format!(
                    "where trucks cross, {} bars {} long and {} apart are published ({SOURCE}); {DECIDES}",
                    wanted.diameter, wanted.length, wanted.spacing
                ))
        })
    });
    doweled.collect()
}
