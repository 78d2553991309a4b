//! Thicknesses and thickened edges, as the owner writes them.

use crate::input::job::Slab;
use crate::input::phrases::{EdgeName, EdgesPhrase};

/// `4 in`, or `4 in to 6 in north`.
pub(super) fn thickness(slab: &Slab) -> String {
    let thin = slab.thickness.value.thin;
    match slab.thickness.value.thick {
        None => thin.to_string(),
        Some((thick, None)) => format!("{thin} to {thick}"),
        Some((thick, Some(toward))) => format!("{thin} to {thick} {}", toward.name()),
    }
}

/// `all open, 12 in wide, 12 in deep`.
pub(super) fn thickened(slab: &Slab) -> Option<String> {
    let edge = slab.sections.thickened.as_ref()?;
    let edges = match &edge.edges.value {
        EdgesPhrase::All => "all".to_owned(),
        EdgesPhrase::AllOpen => "all open".to_owned(),
        EdgesPhrase::Named(names) => {
            let names: Vec<String> = names
                .iter()
                .map(|name| match name {
                    EdgeName::Number(number) => number.to_string(),
                    EdgeName::Looking(_) | EdgeName::Long(_) | EdgeName::Called(_) => {
                        name.to_string()
                    }
                })
                .collect();
            names.join(" and ")
        }
    };
    let (width, depth) = (edge.width.value, edge.depth.value);
    let taper = edge.taper.as_ref();
    let taper = taper.map(|run| format!(", taper {}", run.value));
    let bars = edge.bars.as_ref();
    let bars = bars.map(|bars| format!(", {} {}", bars.value.count, bars.value.bar));
    Some(format!(
        "{edges}, {width} wide, {depth} deep{}{}",
        taper.unwrap_or_default(),
        bars.unwrap_or_default()
    ))
}
