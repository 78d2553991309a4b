//! What does not matter: the order of the file, where the walk began, which way is north.

use flatwork::inside::costing::Offer;
use rust_decimal::Decimal;

use super::jobs::{self, Dice, Job, Shape};
use super::{SHOP, each};
use crate::support::{listed, reachable};

/// A millionth of a foot: points on curves are whole nanometres, and the last one may fall
/// the other way when the slab is turned.
const CLOSE: Decimal = Decimal::from_parts(1, 0, 0, false, 6);

/// Names and values of what is bought and what it costs.
pub fn bought(offer: &Offer) -> Vec<Vec<(String, String, i64)>> {
    let lines = offer.by_choice.values().map(|priced| {
        let mut lines: Vec<_> = priced
            .lines
            .iter()
            .map(|line| {
                let quantity = line
                    .quantity
                    .as_ref()
                    .map(|quantity| quantity.amount().to_string());
                (
                    line.title.clone(),
                    quantity.unwrap_or_default(),
                    line.money().as_cents(),
                )
            })
            .collect();
        lines.sort();
        lines
    });
    lines.collect()
}

/// Areas, volumes, edges, steel and joints of each slab by its key.
pub fn measured(offer: &Offer) -> Vec<(String, Decimal)> {
    let slabs = offer.quoted().needs.slabs.iter().flat_map(|slab| {
        [
            Some(&slab.area),
            Some(&slab.concrete),
            Some(&slab.edges.straight),
            Some(&slab.edges.curved),
            Some(&slab.edges.strip),
            slab.base.as_ref().map(|base| &base.compacted),
            slab.mesh.as_ref(),
            slab.bars.first().map(|bars| &bars.placed),
            listed(slab, " joints").next(),
            listed(slab, " thickened strip").next(),
            slab.thickened.as_ref().map(|edge| &edge.concrete),
        ]
    });
    let mut all: Vec<_> = slabs
        .flatten()
        .map(|quantity| (quantity.name().to_owned(), quantity.value()))
        .collect();
    all.sort();
    all
}

#[track_caller]
pub fn close(one: &[(String, Decimal)], other: &[(String, Decimal)], text: &str) {
    assert_eq!(one.len(), other.len(), "{text}");
    for (one, other) in one.iter().zip(other) {
        let near = one.0 == other.0 && (one.1 - other.1).abs() <= CLOSE;
        assert!(near, "{one:?} is not {other:?}\n{text}");
    }
}

/// Prices the job and the job `changed`; both must come to the same.
#[track_caller]
fn same(changed: impl Fn(u64, &Job) -> Job) {
    let mut different = 0;
    each(0..120, |seed, job, offer| {
        let other = changed(seed, job);
        let found = SHOP.with(|shop| shop.offer(&other.text()));
        let texts = || format!("seed {seed}\n{}\n{}", job.text(), other.text());
        close(&measured(offer), &measured(&found), &texts());
        assert_eq!(bought(offer), bought(&found), "{}", texts());
        assert_eq!(
            offer.quoted().totals(),
            found.quoted().totals(),
            "{}",
            texts()
        );
        different += usize::from(job.text() != other.text());
    });
    assert!(20 < different, "only {different} jobs were changed at all");
}

#[test]
fn the_order_of_slabs_and_keys() {
    same(|seed, job| {
        let (mut job, mut dice) = (job.clone(), Dice::new(seed));
        dice.shuffle(&mut job.slabs);
        dice.shuffle(&mut job.rest);
        job
    });
}

/// A slab walked from another corner lies elsewhere on the sheet.
#[test]
fn where_the_walk_began() {
    same(|seed, job| {
        let (mut job, mut dice) = (job.clone(), Dice::new(seed));
        for slab in &mut job.slabs {
            if let Shape::Walked(legs) = &mut slab.shape {
                legs.rotate_left(usize::try_from(dice.between(1, 5)).expect("six legs"));
            }
        }
        job
    });
}

#[test]
fn in_a_mirror() {
    same(|_, job| {
        let mut job = job.clone();
        for slab in &mut job.slabs {
            match &mut slab.shape {
                Shape::Circle(_) => {}
                Shape::Rectangle(_, _, walls) => walls.swap(1, 3),
                Shape::Walked(legs) => legs
                    .iter_mut()
                    .for_each(|leg| leg.toward = (4 - leg.toward) % 4),
            }
        }
        job
    });
}

#[test]
fn after_a_quarter_turn() {
    same(|_, job| {
        let mut job = job.clone();
        for slab in &mut job.slabs {
            match &mut slab.shape {
                Shape::Circle(_) => {}
                Shape::Rectangle(east_west, north_south, walls) => {
                    std::mem::swap(east_west, north_south);
                    walls.rotate_right(1);
                }
                Shape::Walked(legs) => legs
                    .iter_mut()
                    .for_each(|leg| leg.toward = (leg.toward + 1) % 4),
            }
        }
        job
    });
}

#[test]
fn asked_twice() {
    each(0..100, |seed, _, offer| {
        let again = SHOP.with(|shop| shop.offer(&jobs::job(seed).text()));
        let shown = |offer: &Offer| -> Vec<String> {
            let lines = offer.by_choice.values().flat_map(|priced| &priced.lines);
            lines
                .map(|line| {
                    format!(
                        "{:?} {} {} {} {:?}",
                        line.cause,
                        line.title,
                        line.amount.amount(),
                        line.amount.shown(),
                        line.shares
                    )
                })
                .collect()
        };
        assert_eq!(shown(offer), shown(&again), "seed {seed}");
    });
}

/// A quantity set to what it already is changes no total and no other quantity; one that cannot
/// be set is refused, never silently left as it was.
#[test]
fn set_to_what_it_is() {
    let (mut tried, mut refused) = (0, 0);
    each(0..60, |seed, job, offer| {
        let mut dice = Dice::new(seed);
        let mut roots = offer.quoted().needs.roots();
        roots.retain(|root| {
            root.rule() != ""
                && root.value().normalize().scale() <= 4
                && Decimal::ZERO < root.value()
        });
        for _ in 0..3.min(roots.len()) {
            let root = roots.swap_remove(
                usize::try_from(dice.between(0, roots.len() as u64 - 1)).expect("a short list"),
            );
            let mut changed = job.clone();
            changed.rest.push((
                "set",
                format!(
                    "{{\"{}\": {{to: {}, because: it is so}}}}",
                    root.name(),
                    root.value().normalize()
                ),
            ));
            let text = changed.text();
            let found = match SHOP.with(|shop| shop.tried(&text)) {
                Ok(found) => found,
                Err(codes) => {
                    assert_eq!(codes, ["cannot-set"], "seed {seed}\n{text}");
                    refused += 1;
                    continue;
                }
            };
            assert!(
                reachable(&found)
                    .iter()
                    .any(|quantity| quantity.shown().starts_with("set by you")),
                "nothing was set: seed {seed}\n{text}"
            );
            close(&measured(offer), &measured(&found), &text);
            // Another choice may compute another number; the owner has overruled it all the same.
            assert_eq!(bought(offer)[0], bought(&found)[0], "seed {seed}\n{text}");
            tried += 1;
        }
    });
    assert!(
        100 < tried && refused < tried / 4,
        "{tried} were set, {refused} refused"
    );
}
