//! `28 to 45 F`: how cold the nights and how warm the days are.

use super::reader::phrase;

/// Whole degrees Fahrenheit, the nights first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Air {
    pub night: i32,
    pub day: i32,
}

phrase!(
    Air,
    "degrees F",
    "bad-temperature",
    "the temperature of a month",
    "write whole degrees Fahrenheit of the nights and the days, for example `28 to 45 F`, from -40 to 120",
    |said| {
        let said = said.before("F").unwrap_or(said);
        let (night, day) = said.split(" to ").unwrap_or((said, said));
        let degrees = |text: &str| text.trim_end_matches('F').trim().parse().ok();
        let air = Air {
            night: said.need(degrees(night.text()))?,
            day: said.need(degrees(day.text()))?,
        };
        let is_one = -40 <= air.night && air.night <= air.day && air.day <= 120;
        said.need(is_one.then_some(air))
    }
);

#[cfg(test)]
mod tests {
    use super::super::reader::tests::refused;
    use super::*;

    #[test]
    fn nights_come_first() {
        #[track_caller]
        fn case(text: &str, night: i32, day: i32) {
            assert_eq!(text.parse(), Ok(Air { night, day }), "{text}");
        }
        case("28 to 45 F", 28, 45);
        case("28 F to 45 F", 28, 45);
        case("-5 to 12", -5, 12);
        case("40 F", 40, 40);
    }

    #[test]
    fn what_is_no_weather_is_refused() {
        refused::<Air>(
            "bad-temperature",
            &["45 to 28", "cold", "28.5 to 30", "-41 to 0", "90 to 121"],
        );
    }
}
