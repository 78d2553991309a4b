//! `no. 4 at 18 in`: which bars, how far apart, both ways or each way by itself.

use std::str::FromStr;

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

impl FromStr for BarsPhrase {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        if text.trim() == "none" {
            return Ok(Self::None);
        }
        let (mut east_west, mut north_south) = (None, None);
        let parts: Vec<&str> = text
            .split(',')
            .flat_map(|part| part.split(" and "))
            .collect();
        for part in &parts {
            let part = part.trim();
            let (way, plain) = if let Some(plain) = part.strip_suffix(" east-west") {
                (&mut east_west, plain)
            } else if let Some(plain) = part.strip_suffix(" north-south") {
                (&mut north_south, plain)
            } else if parts.len() == 1 {
                let plain = part.strip_suffix(" both ways").unwrap_or(part);
                let (bar, spacing) = one(plain, text)?;
                return Ok(Self::Both { bar, spacing });
            } else {
                return Err(refuse(text));
            };
            if way.is_some() {
                return Err(refuse(text));
            }
            *way = Some(one(plain, text)?);
        }
        Ok(Self::Ways {
            east_west,
            north_south,
        })
    }
}

fn one(part: &str, text: &str) -> Result<(Bar, Length), Unreadable> {
    let (bar, spacing) = part.split_once(" at ").ok_or_else(|| refuse(text))?;
    Ok((bar.trim().parse()?, super::size::positive(spacing)?))
}

fn refuse(text: &str) -> Unreadable {
    Unreadable::new(
        "bad-bars",
        format!("cannot read `{text}` as bars"),
        "write bar and spacing, for example `no. 4 at 18 in`, or each way: `no. 4 at 12 in east-west and no. 3 at 18 in north-south`, or `none`",
    )
}

#[cfg(test)]
mod tests {
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
        for text in [
            "no. 4 at 12 in east-west, no. 3 at 18 in east-west",
            "no. 4 at 12 in, no. 3 at 18 in",
            "no. 4 at 12 in east-west, no. 3 at 18 in",
            "no. 4 east-west",
        ] {
            let refused = text.parse::<BarsPhrase>().map_err(|e| e.code);
            assert_eq!(refused, Err("bad-bars"), "{text}");
        }
    }
}
