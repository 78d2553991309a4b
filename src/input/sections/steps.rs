//! `3 risers of 7 in, 12 in treads, 5 ft wide, from south edge`: a flight of steps as written.

use super::{EdgeBars, Spoken, spoken};
use crate::input::checks::{length_of_some, some_length};
use crate::input::phrases::reader::{PhraseKind, phrase, read};
use crate::input::phrases::{BasePhrase, EdgeName, FromEnd};
use crate::reading::keys::keys;
use crate::reading::{At, Fields, Place, Problem, Problems, Read};
use crate::values::{Length, Unreadable};

keys! {
    /// A flight that leads down from an edge; each part knows where it was said.
    #[derive(PartialEq, Eq)]
    pub struct StepsWritten in "`steps`" {
        risers: At<Risers> = "risers" as "number", required, "steps up, the one onto the slab too", "3";
        rise: At<Length> = "rise", required, "of each riser", "7 in", by some_length;
        /// A single riser may have none of its own.
        tread: Option<At<Length>> = "tread", none,
            "of each step; needed from two risers on", "12 in", by length_of_some;
        width: Option<At<Length>> = "width", else "the edge's", "along the edge", "5 ft", by length_of_some;
        edge: At<EdgeName> = "from", required, "the edge they lead down from; a walked one by its number too", "south edge";
        /// Of its nearer side.
        from: Option<At<FromEnd>> = "at" as "distance", else "in the middle", "where along that edge", "1 ft from west end";
        total: Option<At<Length>> = "in all", none,
            "from bottom to top, as you measured it; a check only", "21 in", by length_of_some;
        base: Option<At<BasePhrase>> = "base", else "none", "compacted under the steps below the slab",
            "4 in of crushed stone";
        bars: Option<At<EdgeBars>> = "bars" as "number and bar", else "none",
            "along each step below the slab", "2 no. 4";
        bottom: Option<At<StepsBottom>> = "bottom" as "words", else "level with the foot of the lowest",
            "`level`, or so thick below each tread where it goes up in steps with the ground", "12 in thick";
        .. place: Place;
    }
}

/// How far down the concrete of steps goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StepsBottom {
    /// All of them to the foot of the lowest.
    Level,
    /// Each so thick below its tread.
    Stepped(Length),
}

phrase!(
    StepsBottom,
    "words",
    "bad-steps",
    "the bottom of steps",
    "write `level`, or how thick they are below each tread, for example `12 in thick`",
    |said| {
        if said.is("level") {
            return Ok(StepsBottom::Level);
        }
        let thick = said.before(" thick").unwrap_or(said);
        Ok(StepsBottom::Stepped(thick.positive()?))
    }
);

/// How many risers: 1 to 20.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Risers(pub u32);

phrase!(
    Risers,
    "risers",
    "bad-steps",
    "a number of risers",
    "write a whole number from 1 to 20; the step up onto the slab counts",
    |said| {
        let message = || said.because(format!("`{}` is not a number of risers", said.text()));
        said.count(1..=20).map(Risers).ok_or_else(message)
    }
);

const STEPS: PhraseKind = PhraseKind {
    code: "bad-steps",
    what: "steps",
    help: "write risers, treads, width and edge, for example `3 risers of 7 in, 12 in treads, 5 ft wide, from south edge`",
};

impl Spoken for StepsWritten {
    fn said(text: &str, place: Place) -> Result<Self, Unreadable> {
        read(text, STEPS, |said| {
            let (mut risers, mut tread, mut width, mut total) = (None, None, None, None);
            let (mut edge, mut from) = (None, None);
            let (mut base, mut bars, mut bottom) = (None, None, None);
            for part in said.parts(&[","]) {
                if let Some((count, rise)) =
                    part.split(" risers ").or_else(|| part.split(" riser "))
                {
                    let rise = (count.read()?, rise.without("of ").positive()?);
                    part.once("how many risers", &mut risers, rise)?;
                } else if let Some(deep) = part.before(" treads").or_else(|| part.before(" tread"))
                {
                    part.once("how deep a tread is", &mut tread, deep.positive()?)?;
                } else if let Some(wide) = part.before(" wide") {
                    part.once("how wide the steps are", &mut width, wide.positive()?)?;
                } else if let Some(high) = part.before(" in all") {
                    part.once("how high they are in all", &mut total, high.positive()?)?;
                } else if part.text().ends_with(" thick") {
                    part.once("how thick they are", &mut bottom, part.read()?)?;
                } else if let Some(flat) = part.before(" bottom") {
                    part.once("how thick they are", &mut bottom, flat.read()?)?;
                } else if let Some(under) = part.after("base ") {
                    part.once("what is under them", &mut base, under.read()?)?;
                } else if part.text().contains("no.") {
                    part.once("which bars they have", &mut bars, part.read()?)?;
                } else if part.text().ends_with(" end") {
                    part.once("how far from an end", &mut from, part.read()?)?;
                } else {
                    let side = part.without("from ");
                    let is_edge =
                        side.text().ends_with(" edge") || side.text().starts_with("side ");
                    let side =
                        said.need(is_edge.then_some(side.before(" edge").unwrap_or(side)))?;
                    part.once("which edge", &mut edge, side.read()?)?;
                }
            }
            let ((risers, rise), edge) = said.need(risers.zip(edge))?;
            let here = |length: Option<Length>| length.map(|length| At::new(length, place));
            Ok(Self {
                place,
                risers: At::new(risers, place),
                rise: At::new(rise, place),
                tread: here(tread),
                width: here(width),
                edge: At::new(edge, place),
                from: from.map(|from| At::new(from, place)),
                total: here(total),
                base: base.map(|base| At::new(base, place)),
                bars: bars.map(|bars| At::new(bars, place)),
                bottom: bottom.map(|bottom| At::new(bottom, place)),
            })
        })
    }
}

/// A flight, in one line or by keys, whose parts fit together.
pub fn steps(
    slab: &Fields<'_>,
    key: &'static str,
    problems: &mut Problems,
) -> Read<Option<StepsWritten>> {
    let Some(node) = slab.node(key) else {
        return Ok(None);
    };
    let steps: StepsWritten = spoken(node, key, problems)?;
    let Risers(count) = steps.risers.value;
    if 1 < count && steps.tread.is_none() {
        let message = format!("{count} risers, and nothing says how deep a tread is");
        let problem = Problem::new("bad-steps", message).at(steps.risers.place);
        let help = "add `tread: 12 in`, or in one line `12 in treads`";
        return Err(problems.push(problem.help(help)));
    }
    if let Some(bottom) = &steps.bottom
        && let StepsBottom::Stepped(thick) = bottom.value
        && thick <= steps.rise.value
    {
        let message = format!(
            "steps `{thick}` thick do not hold together: each riser is `{}`",
            steps.rise.value
        );
        let problem = Problem::new("bad-steps", message).at(bottom.place);
        let help = "measure from a tread straight down to the ground: the riser, and 4 in or so that hold one step to the next";
        return Err(problems.push(problem.help(help)));
    }
    Ok(Some(steps))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::{Compass, Direction};
    use crate::reading::FileId;

    const HERE: Place = Place {
        file: FileId(0),
        start: 0,
        end: 0,
    };

    fn said(text: &str) -> Result<StepsWritten, Unreadable> {
        StepsWritten::said(text, HERE)
    }

    #[test]
    fn reads_a_flight_as_it_is_said() {
        let at = |inches| At::new(Length::inches_whole(inches), HERE);
        let wanted = StepsWritten {
            place: HERE,
            risers: At::new(Risers(3), HERE),
            rise: at(7),
            tread: Some(at(12)),
            width: Some(at(60)),
            edge: At::new(EdgeName::Looking(Direction::South), HERE),
            from: None,
            total: None,
            base: None,
            bars: None,
            bottom: None,
        };
        for text in [
            "3 risers of 7 in, 12 in treads, 5 ft wide, from south edge",
            "3 risers 7 in, 12 in treads, 5 ft wide, south edge",
        ] {
            assert_eq!(said(text), Ok(wanted.clone()), "{text}");
        }
        let read = said("1 riser of 7 in, west edge, 2 ft from north end, 7 1/2 in in all");
        let read = read.unwrap();
        assert_eq!(read.risers.value, Risers(1));
        let from = FromEnd {
            offset: Length::feet_whole(2),
            end: Compass::North,
        };
        assert_eq!(read.from.map(|at| at.value), Some(from));
        let text = "2 risers of 7 in, 12 in treads, south edge, base 4 in of stone, 2 no. 4";
        let said = said(text).unwrap();
        let depth = Length::inches_whole(4);
        let material = "stone".to_owned();
        let base = BasePhrase::Of { depth, material };
        assert_eq!(said.base.map(|at| at.value), Some(base));
        let (count, bar) = (2, crate::tables::bars::Bar::No4);
        assert_eq!(said.bars.map(|at| at.value), Some(EdgeBars { count, bar }));
        let bottom = |text: &str| {
            let text = format!("2 risers of 7 in, 12 in treads, south edge, {text}");
            super::StepsWritten::said(&text, HERE).map(|steps| steps.bottom.map(|at| at.value))
        };
        let stepped = Ok(Some(StepsBottom::Stepped(Length::inches_whole(12))));
        assert_eq!(bottom("12 in thick"), stepped);
        assert_eq!(bottom("level bottom"), Ok(Some(StepsBottom::Level)));
        let total = read.total.map(|at| at.value);
        assert_eq!(total, Some("7.5 in".parse().unwrap()));
    }

    #[test]
    fn refuses_half_a_flight_and_more_than_one() {
        #[track_caller]
        fn case(text: &str, code: &str) {
            assert_eq!(said(text).map_err(|error| error.code), Err(code), "{text}");
        }
        case("3 risers of 7 in, 12 in treads", "bad-steps");
        case("12 in treads, south edge", "bad-steps");
        case("0 risers of 7 in, south edge", "bad-steps");
        case("21 risers of 7 in, south edge", "bad-steps");
        case("3 risers of 7, south edge", "length-without-unit");
        case("3 risers of 7 in, up", "bad-steps");
        for twice in [
            "2 risers of 7 in",
            "10 in tread",
            "4 ft wide",
            "2 ft from west end",
            "22 in in all",
            "from north edge",
        ] {
            let once = "3 risers of 7 in, 12 in treads, 5 ft wide, 1 ft from west end, 21 in in all, south edge";
            assert!(said(once).is_ok());
            case(&format!("{once}, {twice}"), "said-twice");
        }
    }
}
