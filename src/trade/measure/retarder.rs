//! Sheet against moisture from below: strip by strip off its roll on rectangles, else area over what it covers net.

use crate::input::business::OrderPolicy;
use crate::input::job::Slab;
use crate::reading::At;
use crate::trade::tally::Tally;
use crate::trade::term::{number, of};
use crate::trade::working::Quantity;
use crate::values::{Length, Unit};

/// Square feet of sheet, laps included.
pub(super) fn measure(
    slab: &Slab,
    policy: &OrderPolicy,
    area: &Quantity,
    tally: &mut Tally<'_>,
) -> Option<Quantity> {
    slab.sections.retarder.as_ref()?;
    let width = Quantity::feet("sheet width", &policy.retarder_width);
    let lap = Quantity::feet("sheet lap", &policy.retarder_lap);
    let Some((east_west, north_south)) = slab.outline.is_rectangle() else {
        return Some(tally.by(
            "area × width ÷ (width − lap); laps of 6 in at least (IBC 1910.1, from a copy)",
            "vapor retarder",
            Unit::SquareFoot,
            of(area) * &width / (of(&width) - &lap),
        ));
    };
    let way = |across, along| strips(slab, (across, along), [&width, &lap], tally);
    let (one_way, other_way) = (way(east_west, north_south), way(north_south, east_west));
    let (strips, sheet) = if one_way.1.value() <= other_way.1.value() {
        one_way
    } else {
        other_way
    };
    let retarder = tally.sets.settle(sheet.clone());
    if retarder.is(&sheet) {
        tally.show([&strips]);
    }
    tally.list([&retarder]);
    Some(retarder)
}

/// Strips side by side across one side, each as long as the other: how many, and their sheet.
fn strips(
    slab: &Slab,
    (across, along): (Length, Length),
    [width, lap]: [&Quantity; 2],
    tally: &Tally<'_>,
) -> (Quantity, Quantity) {
    let place = slab.size.as_ref().map_or(slab.place, |size| size.place);
    let side = |name: &'static str, value| Quantity::feet(name, &At { value, place });
    let room = of(&side("slab across the strips", across)) - lap;
    let needed = (room / (of(width) - lap)).whole();
    let one_at_least = if needed.value() < 1.into() {
        number(1)
    } else {
        needed
    };
    let strips = tally.between(
        "(side − a lap) ÷ (width − a lap), up to a whole one; laps of 6 in at least (IBC 1910.1, from a copy)",
        "sheet strips",
        Unit::Plain,
        one_at_least,
    );
    let sheet = Quantity::by(
        "strips × width × length of a strip: only one beside another laps",
        tally.name("vapor retarder"),
        Unit::SquareFoot,
        of(&strips) * width * &side("slab along the strips", along),
    );
    (strips, sheet)
}
