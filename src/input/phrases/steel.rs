//! `no. 4 at 18 in`: which bars, how far apart, both ways or each way by itself.

use super::reader::{Said, phrase};
use crate::tables::bars::Bar;
use crate::values::{Length, Unreadable};

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BarsPhrase {
    None,
    Both {
        bar: Bar,
        spacing: Length,
    },
    /// Bars that run east-west, and bars that run north-south; at least one of them.
    Ways {
        east_west: Option<(Bar, Length)>,
        north_south: Option<(Bar, Length)>,
    },
}

phrase!(
    BarsPhrase,
    "bar at spacing",
    "bad-bars",
    "bars",
    "write bar and spacing, for example `no. 4 at 18 in`, or each way: `no. 4 at 12 in east-west and no. 3 at 18 in north-south`, or `none`",
    |said| {
        if said.is("none") {
            return Ok(BarsPhrase::None);
        }
        let (mut east_west, mut north_south) = (None, None);
        let parts = said.parts(&[",", " and "]);
        for part in &parts {
            let (way, plain) = if let Some(plain) = part.before(" east-west") {
                (&mut east_west, plain)
            } else if let Some(plain) = part.before(" north-south") {
                (&mut north_south, plain)
            } else if parts.len() == 1 {
                let (bar, spacing) = one(part.before(" both ways").unwrap_or(*part))?;
                return Ok(BarsPhrase::Both { bar, spacing });
            } else {
                return Err(said.refuse());
            };
            if way.is_some() {
                return Err(said.refuse());
            }
            *way = Some(one(plain)?);
        }
        Ok(BarsPhrase::Ways {
            east_west,
            north_south,
        })
    }
);

fn one(said: Said<'_>) -> Result<(Bar, Length), Unreadable> {
    let (bar, spacing) = said.halves(" at ")?;
    Ok((bar.read()?, spacing.positive()?))
}

#[cfg(test)]
mod tests {
    use super::super::reader::tests::refused;
    use super::*;

    #[test]
    fn reads_bars_both_ways_each_way_and_one_way() {
        #[track_caller]
        fn case(text: &str, wanted: BarsPhrase) {
            assert_eq!(text.parse(), Ok(wanted), "{text}");
        }
        let inches = Length::inches_whole;
        let both = BarsPhrase::Both {
            bar: Bar::No4,
            spacing: inches(18),
        };
        case("no. 4 at 18 in", both);
        case("no. 4 at 18 in both ways", both);
        let each = BarsPhrase::Ways {
            east_west: Some((Bar::No4, inches(12))),
            north_south: Some((Bar::No3, inches(18))),
        };
        case("no. 4 at 12 in east-west, no. 3 at 18 in north-south", each);
        case(
            "no. 3 at 18 in north-south and no. 4 at 12 in east-west",
            each,
        );
        case(
            "no. 4 at 12 in north-south",
            BarsPhrase::Ways {
                east_west: None,
                north_south: Some((Bar::No4, inches(12))),
            },
        );
    }

    #[test]
    fn refuses_bars_that_say_a_way_twice_or_not_at_all() {
        let others = [
            "no. 4 at 12 in east-west, no. 3 at 18 in east-west",
            "no. 4 at 12 in, no. 3 at 18 in",
            "no. 4 at 12 in east-west, no. 3 at 18 in",
            "no. 4 east-west",
        ];
        refused::<BarsPhrase>("bad-bars", &others);
    }
}
