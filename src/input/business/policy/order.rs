//! What is ordered beyond the drawing, and how goods are laid.

use crate::input::checks::{area_above_zero, cubic_yards, length_above_zero, square_feet, written};
use crate::input::phrases::{CornerBarsPhrase, Ratio, SteelAtJoints};
use crate::reading::keys::{keys, placeless};
use crate::reading::{At, Fields, Problem, Problems, Read, words};
use crate::values::{Amount, Length, Percent, Unit};

keys! {
    pub struct OrderPolicy in "`order`" {
        allowance: At<Percent> = "allowance", usual "7%", "concrete over the drawing", "7%";
        thickness_allowance: At<Length> = "thickness allowance", usual "0 in",
            "how much too deep the ground may be, times the area", "1/4 in";
        smallest_allowance: At<Amount> = "smallest allowance" as "cubic yards", usual "0 cu yd",
            "never less than this, of what comes by the truck", "1/4 cu yd", then cubic_yards;
        buy: Buying = "buy" as "words", usual "as needed",
            "how orders are placed: as needed, or cheapest, with more yards or evened trucks where that costs less",
            "cheapest";
        cover: At<Length> = "cover", usual "2 in", "from the edge of the slab to the end of a bar", "2 in";
        stake_spacing: At<Length> = "stake spacing", usual "3 ft", "along a form", "3 ft", then length_above_zero;
        stake_spacing_on_curves: At<Length> = "stake spacing on curves", usual "2 ft",
            "along a curved form, and never more than along a straight one", "18 in", then length_above_zero;
        corner_bars: At<CornerBarsPhrase> = "corner bars" as "bars and length", usual "2 bars, 4 ft long",
            "across every corner that turns into a slab with bars, at its edge, an opening or a box; or none",
            "2 no. 4, 4 ft long";
        bent_corner_bars: bool = "bent corner bars", usual "yes",
            "whether the bars along thickened edges are lapped by an L where two edges meet", "no";
        steel_at_joints: At<SteelAtJoints> = "steel at joints" as "word", usual "through",
            "whether bars and mesh run through joints: through, every other or cut; cut bars end as short of a joint as of an edge",
            "every other";
        sill_above: At<Length> = "sill above slab", usual "2 in",
            "how far a door sill stays above a slab; you are told where it does not", "4 in";
        chair_area: At<Amount> = "chair area" as "square feet", usual "9 sq ft",
            "slab held by one chair", "9 sq ft", then area_above_zero;
        compound_coverage: At<Amount> = "compound coverage" as "square feet", usual "200 sq ft",
            "slab cured by a gallon", "200 sq ft", then area_above_zero;
        crossings_tied: At<Percent> = "crossings tied", usual "50%",
            "share of the crossings of bars that are tied", "50%";
        wire_for_a_tie: At<Length> = "wire for a tie", usual "12 in",
            "wire for one tie, what falls off included", "12 in";
        /// Pounds a foot.
        tie_wire: At<Ratio> = "tie wire", usual "3.5 lb per 336 ft",
            "weight and length of a roll", "3.5 lb per 336 ft", then pounds_a_foot;
        /// A form deeper than this has a rate and an item of its own.
        deep_form_over: At<Length> = "deep form over", usual "8 in",
            "deeper straight forms go by the rate `form deep`, if the book has it", "8 in";
        retarder_width: At<Length> = "retarder width", usual "10 ft", "of a sheet of vapor retarder", "10 ft";
        retarder_lap: At<Length> = "retarder lap", usual "6 in", "where two sheets meet", "6 in";
        base_past_forms: At<Length> = "base past forms", usual "0 in",
            "how far the base runs out past open edges", "6 in";
        base_under_edges: bool = "base under edges", usual "no",
            "whether the base lies below thickened edges too, or they stand in it on the ground", "yes";
        dig_past_forms: At<Length> = "dig past forms", usual "0 in",
            "room for forms and people at open edges, where `remove` digs under slabs", "12 in";
        /// How deep the owner's tool cuts, where it is known.
        groove: Option<At<Length>> = "groove depth", none,
            "how deep your groover or saw cuts; you are told where a slab asks for more", "1 in",
            then written(length_above_zero);
        /// Smaller openings are formed, but taken off nothing.
        smallest_opening: At<Amount> = "smallest opening" as "square feet", usual "2 sq ft",
            "a smaller opening is formed, but not taken off the area; nor a smaller box off the concrete",
            "2 sq ft", then square_feet;
    } then laid
}

words! {
    /// How orders of concrete are placed.
    pub enum Buying("unknown-word", "`buy` is not `{}`", choose) {
        AsNeeded "as needed";
        /// As many yards and trucks as cost least, and never fewer than are needed.
        Cheapest "cheapest";
    }
}

placeless! { Buying }

fn pounds_a_foot(at: At<Ratio>, _: &str, problems: &mut Problems) -> Read<At<Ratio>> {
    if (at.value.much.unit, at.value.per.unit) == (Unit::Pound, Unit::Foot) {
        return Ok(at);
    }
    let message = "tie wire is given in pounds for so many feet";
    let problem = Problem::new("wrong-unit", message).at(at.place);
    let help = "write what your roll weighs and how long it is, for example `3.5 lb per 336 ft`";
    Err(problems.push(problem.help(help)))
}

/// A lap as wide as the sheet would cover nothing.
fn laid(order: OrderPolicy, _: &Fields<'_>, problems: &mut Problems) -> Read<OrderPolicy> {
    let (width, lap) = (order.retarder_width.value, &order.retarder_lap);
    if lap.value < width {
        return Ok(order);
    }
    let message = format!(
        "sheets `{width}` wide that lap `{}` cover nothing",
        lap.value
    );
    let problem = Problem::new("lap-too-wide", message).at(lap.place);
    Err(problems.push(problem.help("a lap of 6 in is usual, on a sheet of 10 ft or more")))
}
