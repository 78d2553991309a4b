//! The least strength published for concrete outdoors, by code, place and weather.
//!
//! Every figure carries its document and edition, for editions differ: class RF3
//! of ACI 332 was 4,000 psi in 2014 and is 4,500 psi in 2020. The IRC row does
//! not name driveways, patios or walks; ACI 332 does. Local codes decide.

use super::source::{Read, Source};

/// The least strength some document asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Least {
    /// Pounds per square inch at 28 days.
    pub psi: u32,
    pub source: Source,
}

/// Weathering of the region: the ends of the IRC's map, the IBC's frost classes F0 and F2.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Weathering {
    Negligible,
    Severe,
}

const fn least(psi: u32, document: &'static str, clause: &'static str) -> Least {
    let source = Source::new(document, clause, Read::Secondary);
    Least { psi, source }
}

/// The IRC's for porches, carport slabs and steps exposed to weather, and garage floors.
pub const fn house_step(weathering: Weathering) -> Least {
    let psi = match weathering {
        Weathering::Negligible => 2_500,
        Weathering::Severe => 3_500,
    };
    least(psi, "IRC", "Table R402.2")
}

/// The IBC's for nonstructural concrete.
pub const fn nonstructural(weathering: Weathering) -> Least {
    let psi = match weathering {
        Weathering::Negligible => 2_500,
        Weathering::Severe => 3_500,
    };
    least(psi, "IBC", "section 1904.2")
}

/// Flatwork that can soak up water, freeze, and be salted: driveways, curbs,
/// steps and porches (class RF3).
pub const SALTED: Least = least(4_500, "ACI 332-20", "class RF3");
/// The same by the edition before.
pub const SALTED_IN_2014: Least = least(4_000, "ACI 332-14", "class RF3");

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn harder_weather_never_asks_for_less_and_two_codes_agree_on_a_step() {
        let (mild, hard) = (Weathering::Negligible, Weathering::Severe);
        assert!(house_step(mild).psi < house_step(hard).psi);
        for weathering in [mild, hard] {
            let (house, building) = (house_step(weathering), nonstructural(weathering));
            assert_eq!(house.psi, building.psi, "{weathering:?}");
        }
    }

    #[test]
    fn the_edition_is_part_of_the_number() {
        assert_eq!((SALTED_IN_2014.psi, SALTED.psi), (4_000, 4_500));
        assert_ne!(SALTED_IN_2014.source, SALTED.source);
        // Salted flatwork is never asked for less than the hardest row of the house code.
        assert!(house_step(Weathering::Severe).psi < SALTED_IN_2014.psi);
    }
}
