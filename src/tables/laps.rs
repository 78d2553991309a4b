//! Class B laps of bars, and how many pieces make a run.
//!
//! Sources: the formula of the simplified development length was seen restated for ACI 318-11
//! Table 12.2.2. The customary rule of forty diameters (common practice, no source) is shorter:
//! for a no. 4 bar at 4,000 psi class B is about 49 diameters, so whoever prints a lap says
//! which rule it is.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::bars::Bar;
use crate::values::{Length, rounding};

/// A class B splice is so many times the development length (as a wall manual restates ACI 318-11).
pub const CLASS_B: Decimal = dec!(1.3);
/// Inches; not read.
pub const CLASS_B_LEAST: Decimal = dec!(12);

/// What the root of the strength is multiplied by in the simplified development length.
///
/// `ld = fy db / (25 root f'c)`, 20 above no. 6, for uncoated bars with the spacing and cover
/// the table asks for and normal-weight concrete.
pub fn class_b_divisor(bar: Bar) -> Decimal {
    if bar <= Bar::No6 { dec!(25) } else { dec!(20) }
}

/// How many pieces of `stock` make a run when neighbours overlap by `lap`.
///
/// One if the run is not longer than the stock, else (run - lap) / (stock - lap),
/// rounded up: the first piece covers its whole length, each further one loses a lap.
/// `None` when the lap eats the whole stock, so that no number of pieces would do.
pub fn pieces_in_run(run: Length, stock: Length, lap: Length) -> Option<u32> {
    if run <= stock {
        return Some(1);
    }
    if stock <= lap {
        return None;
    }
    let gained = Decimal::from((stock - lap).as_nanometres());
    let needed = Decimal::from((run - lap).as_nanometres());
    let pieces = rounding::round_up_to(needed / gained, Decimal::ONE);
    u32::try_from(pieces).ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn pieces(run: &str, stock: &str, lap: &str) -> Option<u32> {
        let length = |text: &str| text.parse::<Length>().unwrap();
        pieces_in_run(length(run), length(stock), length(lap))
    }

    #[test]
    fn counts_pieces_with_their_laps() {
        assert_eq!(pieces("39 ft 6 in", "20 ft", "20 in"), Some(3)); // 37.83 / 18.33 = 2.06
        assert_eq!(pieces("35 ft 6 in", "20 ft", "20 in"), Some(2));
        assert_eq!(pieces("20 ft", "20 ft", "20 in"), Some(1));
        assert_eq!(pieces("20 ft 1 in", "20 ft", "20 in"), Some(2));
        // Two pieces reach exactly 2 x 20 ft less one lap.
        assert_eq!(pieces("38 ft 4 in", "20 ft", "20 in"), Some(2));
        assert_eq!(pieces("38 ft 4 1/64 in", "20 ft", "20 in"), Some(3));
        assert_eq!(pieces("30 ft", "2 ft", "2 ft"), None);
    }

    /// By another road: lay pieces one after the other until the run is covered.
    #[test]
    fn agrees_with_laying_them_out() {
        for run in (1..=120).map(|half| Length::inches_whole(half * 6)) {
            let (stock, lap) = (Length::feet_whole(20), Length::inches_whole(25));
            let (mut reach, mut laid) = (stock, 1);
            while reach < run {
                reach = reach - lap + stock;
                laid += 1;
            }
            assert_eq!(pieces_in_run(run, stock, lap), Some(laid), "{run}");
        }
    }
}
