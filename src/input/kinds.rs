//! What the guide calls each value that is written as one text.

use super::phrases::{
    Adjust, BarsPhrase, BasePhrase, BesidePhrase, BorderPhrase, Contingency, CornerPhrase, Days,
    Dose, DowelBar, DowelsPhrase, EdgeBars, EdgeName, EdgesPhrase, FallPhrase, FromEnd, LapPhrase,
    LateCharge, LegPhrase, Opening, Pattern, Pounds, Profit, Ratio, Risers, Season, Share,
    SizePhrase, Slope, SpotPhrase, StepsPhrase, StoopPhrase, ThickenedPhrase, ThicknessPhrase,
    positive,
};
use crate::geometry::Compass;
use crate::reading::Written;
use crate::reading::keys::placeless;
use crate::reading::written::written;
use crate::values::{Length, Unreadable};

written! {
    Adjust = "length and direction";
    BarsPhrase = "bar at spacing";
    BasePhrase = "depth of material";
    BesidePhrase = "position";
    BorderPhrase = "width of a finish";
    Compass = "side";
    Contingency = "percent";
    CornerPhrase = "position";
    Days = "days";
    Dose = "dose";
    DowelBar = "bar";
    DowelsPhrase = "name, at spacing";
    EdgeBars = "bars";
    EdgeName = "edge";
    EdgesPhrase = "edges";
    FallPhrase = "slope";
    FromEnd = "position";
    LapPhrase = "lap";
    LateCharge = "charge";
    LegPhrase = "side";
    Opening = "size";
    Pattern = "pattern";
    Pounds = "pounds";
    Profit = "markup or margin";
    Ratio = "rate";
    Risers = "risers";
    Season = "season";
    Share = "share";
    SizePhrase = "size";
    Slope = "slope";
    SpotPhrase = "place";
    StepsPhrase = "flight of steps";
    StoopPhrase = "words";
    ThickenedPhrase = "edges";
    ThicknessPhrase = "length";
}

placeless! { Days }

/// `none`, or more than nothing.
impl Written for Option<Length> {
    const KIND: &'static str = "length";

    fn written(text: &str) -> Result<Self, Unreadable> {
        if text == "none" {
            return Ok(None);
        }
        positive(text).map(Some)
    }
}
