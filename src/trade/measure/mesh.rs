//! Welded wire: strip by strip on rectangles, else area over what a sheet or roll covers net.
//!
//! On a rectangle with openings whole sheets are laid and cut out, so none is saved.

use crate::input::book::{MeshStock, Rules};
use crate::input::business::OrderPolicy;
use crate::input::job::Slab;
use crate::reading::At;
use crate::trade::sets::Sets;
use crate::trade::term::{number, of};
use crate::trade::working::{Quantity, Working};
use crate::values::{Length, Unit};

/// Whole sheets, or so much of a roll: rolls become whole when the job's are added up.
pub(super) fn measure(
    slab: &Slab,
    policy: &OrderPolicy,
    rules: &Rules,
    area: &Quantity,
    sets: Sets<'_>,
) -> Option<Quantity> {
    let style = slab.mesh.as_ref()?;
    let stock = rules.mesh.get(&style.value)?;
    let unit = if rules.is_roll(stock) {
        Unit::Roll
    } else {
        Unit::Sheet
    };
    let by_area = by_area(slab, stock, unit, area);
    let Some((east_west, north_south)) = slab.outline.is_rectangle() else {
        return Some(by_area);
    };
    let one_way = strips(slab, (east_west, north_south), policy, stock, unit, sets);
    let other_way = strips(slab, (north_south, east_west), policy, stock, unit, sets);
    let by_strips = if one_way.value() <= other_way.value() {
        one_way
    } else {
        other_way
    };
    Some(if by_area.value() <= by_strips.value() {
        by_strips
    } else {
        by_area
    })
}

/// What a sheet or roll covers is less a lap each way; adding the lap as a percentage is too little.
fn by_area(slab: &Slab, stock: &MeshStock, unit: Unit, area: &Quantity) -> Quantity {
    let net = |name: &str, side: &At<Length>| {
        Quantity::new(
            name,
            (side.value - stock.lap.value).in_feet(),
            Working::Shape {
                how: format!("less one lap of {}", stock.lap.value),
                place: side.place,
            },
        )
    };
    let cover = of(&net("net width", &stock.width)) * &net("net length", &stock.length);
    let pieces = of(area) / cover;
    Quantity::by(
        "area ÷ net cover, laps taken off",
        format!("{} mesh", slab.key),
        unit,
        if unit == Unit::Roll {
            pieces
        } else {
            pieces.whole()
        },
    )
}

/// Strips side by side across one side of a rectangle, each as long as the other.
fn strips(
    slab: &Slab,
    (across, along): (Length, Length),
    policy: &OrderPolicy,
    stock: &MeshStock,
    unit: Unit,
    sets: Sets<'_>,
) -> Quantity {
    let side = |name: &str, value: Length| {
        Quantity::inches(
            name,
            &At {
                value,
                place: slab.size.as_ref().map_or(slab.place, |size| size.place),
            },
        )
    };
    let cover = Quantity::inches("cover", &policy.cover);
    let lap = Quantity::inches("mesh lap", &stock.lap);
    // The first covers its whole width, each further one less a lap.
    let count = |rule: &'static str, name: &str, room: &Quantity, piece: &Quantity| {
        let term = (of(room) - number(2) * &cover - &lap) / (of(piece) - &lap);
        let needed = term.whole();
        sets.settle(Quantity::by(
            rule,
            format!("{} mesh {name}", slab.key),
            Unit::Plain,
            if needed.value() < 1.into() {
                number(1)
            } else {
                needed
            },
        ))
    };
    let width = Quantity::inches("mesh width", &stock.width);
    let length = Quantity::inches("mesh length", &stock.length);
    let (across, along) = (
        side("slab across the strips", across),
        side("slab along the strips", along),
    );
    let strips = count(
        "(side − cover at both ends − a lap) ÷ (width − a lap), up to a whole one",
        "strips",
        &across,
        &width,
    );
    if unit == Unit::Roll {
        return Quantity::by(
            "strips × length of a strip ÷ (roll − a lap, where the next roll begins)",
            format!("{} mesh", slab.key),
            unit,
            of(&strips) * (of(&along) - number(2) * &cover) / (of(&length) - &lap),
        );
    }
    let sheets = count(
        "(side − cover at both ends − a lap) ÷ (length − a lap), up to a whole one",
        "sheets in a strip",
        &along,
        &length,
    );
    Quantity::by(
        "strips × sheets in a strip, laps taken off",
        format!("{} mesh", slab.key),
        unit,
        of(&strips) * &sheets,
    )
}
