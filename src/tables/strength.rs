//! The least strength published for concrete outdoors, by code, place and weather.
//!
//! Every figure carries its document and edition, for editions differ: class RF3
//! of ACI 332 was 4,000 psi in 2014 and is 4,500 psi in 2020. The IRC row does
//! not name driveways, patios or walks; ACI 332 does. Local codes decide.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::source::{Read, Source};

/// The least strength some document asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Least {
    /// Pounds per square inch at 28 days.
    pub psi: u32,
    /// The most water for each pound of cement, when the document says.
    pub water_cement: Option<Decimal>,
    /// Whether air is asked for.
    pub air: bool,
    pub source: Source,
}

/// Weathering of the region, as the IRC's map calls it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Weathering {
    Negligible,
    Moderate,
    Severe,
}

/// What the IRC table tells apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum IrcMember {
    /// Foundations and the like, not exposed to weather.
    Foundation,
    /// Slabs on ground indoors, garages excepted.
    InteriorSlab,
    /// Walls exposed to weather.
    ExposedWall,
    /// Porches, carport slabs and steps exposed to weather, and garage floors.
    PorchCarportStep,
}

const IRC: Source = Source::new("IRC", "Table R402.2", Read::Secondary);
const ACI_332_14: Source = Source::new("ACI 332-14", "class RF3", Read::Secondary);
const ACI_332_20: Source = Source::new("ACI 332-20", "class RF3", Read::Secondary);
const IBC: Source = Source::new("IBC", "section 1904.2", Read::Secondary);

/// The IRC's least strength.
pub fn irc(member: IrcMember, weathering: Weathering) -> Least {
    let psi = match (member, weathering) {
        (IrcMember::Foundation | IrcMember::InteriorSlab, _) | (_, Weathering::Negligible) => 2_500,
        (IrcMember::PorchCarportStep, Weathering::Severe) => 3_500,
        (IrcMember::ExposedWall | IrcMember::PorchCarportStep, _) => 3_000,
    };
    let exposed = matches!(member, IrcMember::ExposedWall | IrcMember::PorchCarportStep);
    Least {
        psi,
        water_cement: None,
        air: exposed && weathering != Weathering::Negligible,
        source: IRC,
    }
}

/// Editions of ACI 332 whose figure was seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Aci332 {
    Of2014,
    Of2020,
}

/// Flatwork that can soak up water, freeze, and be salted: driveways, curbs,
/// steps and porches (class RF3).
pub fn salted_flatwork(edition: Aci332) -> Least {
    match edition {
        Aci332::Of2014 => Least {
            psi: 4_000,
            water_cement: None,
            air: true,
            source: ACI_332_14,
        },
        Aci332::Of2020 => Least {
            psi: 4_500,
            water_cement: Some(dec!(0.45)),
            air: true,
            source: ACI_332_20,
        },
    }
}

/// Frost classes of the IBC's nonstructural concrete.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum FrostClass {
    F0,
    F1,
    F2,
    F3,
}

/// The IBC's least strength for nonstructural concrete.
pub fn ibc(class: FrostClass) -> Least {
    Least {
        psi: match class {
            FrostClass::F0 => 2_500,
            FrostClass::F1 => 3_000,
            FrostClass::F2 | FrostClass::F3 => 3_500,
        },
        water_cement: None,
        air: class != FrostClass::F0,
        source: IBC,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const WEATHER: [Weathering; 3] = [
        Weathering::Negligible,
        Weathering::Moderate,
        Weathering::Severe,
    ];
    const MEMBERS: [IrcMember; 4] = [
        IrcMember::Foundation,
        IrcMember::InteriorSlab,
        IrcMember::ExposedWall,
        IrcMember::PorchCarportStep,
    ];

    #[test]
    fn harder_weather_and_places_never_ask_for_less() {
        for member in MEMBERS {
            for pair in WEATHER.windows(2) {
                assert!(irc(member, pair[0]).psi <= irc(member, pair[1]).psi);
            }
        }
        for weather in WEATHER {
            for pair in MEMBERS.windows(2) {
                assert!(irc(pair[0], weather).psi <= irc(pair[1], weather).psi);
            }
        }
    }

    /// By another road: the IBC's frost classes are the IRC's weather for a step.
    #[test]
    fn two_codes_agree_on_a_step() {
        let classes = [FrostClass::F0, FrostClass::F1, FrostClass::F2];
        for (weather, class) in WEATHER.into_iter().zip(classes) {
            let (house, building) = (irc(IrcMember::PorchCarportStep, weather), ibc(class));
            assert_eq!(house.psi, building.psi, "{weather:?}");
            assert_eq!(house.air, building.air, "{weather:?}");
        }
    }

    #[test]
    fn the_edition_is_part_of_the_number() {
        let (old, new) = (
            salted_flatwork(Aci332::Of2014),
            salted_flatwork(Aci332::Of2020),
        );
        assert!(old.psi < new.psi);
        assert_ne!(old.source, new.source);
        // Salted flatwork is never asked for less than the hardest row of the house code.
        let hardest = irc(IrcMember::PorchCarportStep, Weathering::Severe).psi;
        assert!(hardest < old.psi);
    }
}
