//! The values a slab and its kind can both give; what a slab leaves out, its kind supplies.

use crate::input::book::Curing;
use crate::input::phrases::{
    BarsPhrase, BasePhrase, BorderPhrase, Carries, CornerBarsPhrase, DowelsPhrase, Falls, Sawn,
    SteelAtJoints, Thickness,
};
use crate::input::sections::Thickened;
use crate::reading::At;
use crate::reading::keys::keys;
use crate::values::{Length, Percent};

keys! {
    #[derive(Default)]
    pub struct SlabValues in "a changed slab" or usual {
        thickness: Option<At<Thickness>> = "thickness", none,
            "of the concrete; `4 in to 6 in north` where one end is thicker", "4 in";
        allowance: Option<At<Percent>> = "allowance", else "the business's",
            "concrete ordered over the drawing of this slab", "10%";
        mix: Option<At<String>> = "mix" as "name", none, "a mix of the price book", "exterior";
        base: Option<At<BasePhrase>> = "base", else "none", "compacted under the slab", "4 in of crushed stone";
        bars: Option<At<BarsPhrase>> = "bars", else "none",
            "both ways; or each by itself, `no. 4 at 12 in east-west and no. 3 at 18 in north-south`",
            "no. 3 at 18 in";
        corner_bars: Option<At<CornerBarsPhrase>> = "corner bars", else "the business's, where it has bars",
            "across every corner that turns into it", "2 no. 4, 4 ft long";
        mesh: Option<At<String>> = "mesh" as "style", else "none", "welded wire", "6x6 W1.4/W1.4";
        dowels: Option<At<DowelsPhrase>> = "dowels", else "the book's only smooth kind",
            "across its doweled edges", "smooth at 24 in";
        ties: Option<At<DowelsPhrase>> = "ties", else "the book's only deformed kind",
            "across its tied edges", "no. 4 ties";
        steel_at_joints: Option<At<SteelAtJoints>> = "steel at joints" as "word", else "the business's",
            "whether its bars and mesh run through its joints: through, every other or cut", "cut";
        fiber: Option<At<String>> = "fiber" as "name", else "none", "a fiber of the price book", "micro";
        finish: Option<At<String>> = "finish" as "name", else "broom", "of the surface", "broom";
        border: Option<At<BorderPhrase>> = "border", else "none",
            "a band of another finish along the open edges", "12 in of washed pebbles";
        color: Option<At<String>> = "color" as "name", else "the finish's",
            "a color of the price book, all through the concrete; or none", "sandstone";
        seal: Option<At<String>> = "seal" as "name", else "the finish's",
            "a sealer of the price book, put on later; or none", "wet look";
        curing: Option<At<Curing>> = "curing", else "the finish's, else compound",
            "compound (sprayed on), cover (laid over it), wet or none", "wet";
        /// `Some(None)` is an explicit `none`.
        joints: Option<At<Option<Length>>> = "joints", else "none", "longest side of a panel", "8 ft";
        sawn: Option<At<Sawn>> = "sawn" as "yes, early, no or depth", usual "no",
            "whether its joints are sawn, `early` by a saw for the same day, and how deep if not a quarter of the slab", "1 1/4 in";
        fall: Option<At<Falls>> = "fall" as "slope", else "level",
            "so that water runs off: to a side, to a box of the slab, or one for each part by your words for it",
            "1/4 in per ft", by super::phrases::falls;
        level_base: Option<At<bool>> = "level base", usual "no",
            "its bottom is level, so that it is thicker where it is high; `thickness` is that of the low end", "yes";
        /// `Some(None)` is an explicit `none`.
        thickened: Option<At<Option<Thickened>>> = "thickened" as "edges", else "none",
            "edges that go deeper, with the whole depth", "all open, 12 in wide, 12 in deep",
            by super::sections::thickened, of Thickened;
        retarder: Option<At<bool>> = "vapor retarder", usual "no", "a sheet under the slab", "yes";
        carries: Option<At<Carries>> = "carries" as "word", else "by its kind and name",
            "the heaviest thing that goes over it: people, cars or trucks", "trucks";
        inside: Option<At<bool>> = "inside", else "yes over a vapor retarder, and for a garage, basement or workshop",
            "whether a roof and walls keep weather off it", "yes";
    }
}
