//! Welded wire: strip by strip on rectangles, else area over what a sheet or roll covers net.
//!
//! Of strips laid side by side only the first has its whole width, so one alone loses nothing to laps.
//! On a rectangle with openings whole sheets are laid and cut out, so none is saved.

use super::{JointQuantities, Measuring};
use crate::input::book::MeshStock;
use crate::input::business::OrderPolicy;
use crate::input::job::Slab;
use crate::input::phrases::SteelAtJoints;
use crate::reading::At;
use crate::trade::tally::Tally;
use crate::trade::term::{number, of};
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, Length, Unit};

/// Whole sheets, or so much of a roll: rolls become whole when the job's are added up.
pub(super) fn measure(
    slab: &Slab,
    with: Measuring<'_>,
    area: &Quantity,
    tally: &mut Tally<'_>,
) -> Option<Quantity> {
    let style = slab.mesh.as_ref()?;
    let stock = with.rules.mesh.get(&style.value)?;
    let unit = if with.rules.is_roll(stock) {
        Unit::Roll
    } else {
        Unit::Sheet
    };
    let laid = if let Some((east_west, north_south)) = slab.outline.is_rectangle() {
        let strips = |sides| strips(slab, sides, with.policy, stock, unit, tally);
        let one_way = strips((east_west, north_south));
        let other_way = strips((north_south, east_west));
        if one_way.mesh.value() <= other_way.mesh.value() {
            one_way
        } else {
            other_way
        }
    } else {
        Strips {
            counts: Vec::new(),
            mesh: by_area(stock, unit, area, tally),
        }
    };
    let mesh = tally.sets.settle(laid.mesh.clone());
    if mesh.is(&laid.mesh) {
        tally.show(&laid.counts);
    }
    tally.list([&mesh]);
    Some(mesh)
}

/// Feet of joint in which wires are cut: whole sheets are laid all the same.
pub(super) fn cut(slab: &Slab, joints: Option<&JointQuantities>, tally: &mut Tally<'_>) {
    let rule = match slab.steel_at_joints {
        SteelAtJoints::Through => return,
        SteelAtJoints::EveryOther => "every other wire in all joints of the slab",
        SteelAtJoints::Cut => "every wire in all joints of the slab",
    };
    let (Some(_), Some(joints)) = (&slab.mesh, joints) else {
        return;
    };
    // Of one pour with its neighbour the mesh of both ends where they meet.
    let feet = Amount::new(joints.layout.length, Unit::Foot);
    let name = "mesh cut at joints";
    let working = Working::plan(rule, Vec::new(), "");
    let cut = Quantity::new(tally.name(name), feet, working);
    tally.settle(cut);
}

/// Mesh in strips, and the counts it is made of.
struct Strips {
    counts: Vec<Quantity>,
    mesh: Quantity,
}

/// What a sheet or roll covers is less a lap each way; adding the lap as a percentage is too little.
fn by_area(stock: &MeshStock, unit: Unit, area: &Quantity, tally: &Tally<'_>) -> Quantity {
    let net = |name: &'static str, side: &At<Length>| {
        let (how, place) = (format!("less one lap of {}", stock.lap.value), side.place);
        let net = (side.value - stock.lap.value).in_feet();
        Quantity::new(name, net, Working::Shape { how, place })
    };
    let cover = of(&net("net width", &stock.width)) * &net("net length", &stock.length);
    let pieces = of(area) / cover;
    Quantity::by(
        "area ÷ net cover, laps taken off",
        tally.name("mesh"),
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
    tally: &Tally<'_>,
) -> Strips {
    let place = slab.size.as_ref().map_or(slab.place, |size| size.place);
    let side = |name: &'static str, value| Quantity::inches(name, &At { value, place });
    let cover = Quantity::inches("cover", &policy.cover);
    let lap = Quantity::inches("mesh lap", &stock.lap);
    // The first covers its whole width, each further one less a lap.
    let count = |rule: &'static str, title: &str, room: &Quantity, piece: &Quantity| {
        let term = (of(room) - number(2) * &cover - &lap) / (of(piece) - &lap);
        let needed = term.whole();
        let one_at_least = if needed.value() < 1.into() {
            number(1)
        } else {
            needed
        };
        tally.between(rule, title, Unit::Plain, one_at_least)
    };
    let width = Quantity::inches("mesh width", &stock.width);
    let length = Quantity::inches("mesh length", &stock.length);
    let (across, along) = (
        side("slab across the strips", across),
        side("slab along the strips", along),
    );
    let strips = count(
        "(side − cover at both ends − a lap) ÷ (width − a lap), up to a whole one",
        "mesh strips",
        &across,
        &width,
    );
    if unit == Unit::Roll {
        let mesh = Quantity::by(
            "strips × length of a strip ÷ (roll − a lap, where the next roll begins)",
            tally.name("mesh"),
            unit,
            of(&strips) * (of(&along) - number(2) * &cover) / (of(&length) - &lap),
        );
        let counts = vec![strips];
        return Strips { counts, mesh };
    }
    let sheets = count(
        "(side − cover at both ends − a lap) ÷ (length − a lap), up to a whole one",
        "mesh sheets in a strip",
        &along,
        &length,
    );
    let mesh = Quantity::by(
        "strips × sheets in a strip, laps taken off",
        tally.name("mesh"),
        unit,
        of(&strips) * &sheets,
    );
    let counts = vec![strips, sheets];
    Strips { counts, mesh }
}
