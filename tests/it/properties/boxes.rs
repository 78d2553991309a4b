//! A box taken out of a slab never lets the job order less concrete.

use rust_decimal::Decimal;

use super::jobs::Dice;
use crate::site::book;
use crate::support::{BUSINESS, Shop, with};

#[test]
fn a_box_taken_out_never_orders_less() {
    let book = with(
        &book(),
        &[("opening: 2 ft x 1 ft", "opening: 40 in x 40 in")],
    );
    let shop = Shop::new(BUSINESS, &book);
    let mut fell = 0;
    for seed in 0..60 {
        let mut dice = Dice::new(seed);
        let (wide, long) = (dice.between(12, 40), dice.between(12, 40));
        let boxes: Vec<String> = (0..dice.between(1, 4))
            .map(|n| {
                let kind = dice.pick(&["vault", "valve box", "cleanout 8 in"]);
                let (east, north) = (2 + 5 * (n % 2), 2 + 5 * (n / 2));
                format!("      - box {n}: {{box: {kind}, at: {east} ft from west and {north} ft from south}}\n")
            })
            .collect();
        let order = |boxes: &[String]| -> Decimal {
            let list = if boxes.is_empty() {
                String::new()
            } else {
                format!("    boxes:\n{}", boxes.concat())
            };
            let job = format!(
                "customer: Ira Sample\nquoted: 2026-05-04\nslabs:\n  driveway:\n    size: {wide} ft x {long} ft\n{list}"
            );
            let offer = shop.offer(&job);
            let orders = &offer.quoted().needs.orders;
            orders.iter().map(|order| order.order.value()).sum()
        };
        let with_all = order(&boxes);
        for out in 0..boxes.len() {
            let mut fewer = boxes.clone();
            fewer.remove(out);
            let without = order(&fewer);
            assert!(with_all <= without, "seed {seed}, without {out}: {boxes:?}");
            fell += usize::from(with_all < without);
        }
    }
    // The boxes are large enough to move an order now and then, or this would prove nothing.
    assert!(0 < fell);
}
