//! Whether two outlines share ground.

use super::outline::Outline;

/// An eighth of an inch: what touches may differ by less.
const SLACK: i64 = 3_175_000;

impl Outline {
    /// Whether more than an eighth of an inch of one lies on the other; touching is no overlap.
    pub fn overlaps(&self, other: &Outline) -> bool {
        let mut levels: Vec<i64> = [self, other]
            .into_iter()
            .flat_map(|outline| std::iter::once(outline).chain(outline.holes()))
            .flat_map(|ring| {
                ring.chords()
                    .iter()
                    .map(|corner| corner.y)
                    .collect::<Vec<_>>()
            })
            .collect();
        levels.sort_unstable();
        levels.dedup();
        // Between two levels no corner lies, so that one line tells of the whole strip.
        levels
            .windows(2)
            .filter(|pair| SLACK < pair[1] - pair[0])
            .any(|pair| {
                let y = i64::midpoint(pair[0], pair[1]);
                let theirs = other.spans_at_y(y);
                self.spans_at_y(y).iter().any(|mine| {
                    theirs
                        .iter()
                        .any(|one| SLACK < mine.1.min(one.1) - mine.0.max(one.0))
                })
            })
    }
}

#[cfg(test)]
mod tests {
    use super::super::Point;
    use super::*;
    use crate::values::Length;

    fn at(wide: i64, tall: i64, east: i64, north: i64) -> Outline {
        let feet = |n: i64| Length::feet_whole(n);
        Outline::rectangle(feet(wide), feet(tall)).moved(Point {
            x: feet(east).as_nanometres(),
            y: feet(north).as_nanometres(),
        })
    }

    #[test]
    fn touching_is_no_overlap() {
        let slab = at(10, 10, 0, 0);
        assert!(!slab.overlaps(&at(4, 4, 10, 2)));
        assert!(!slab.overlaps(&at(4, 4, 3, 10)));
        assert!(!slab.overlaps(&at(4, 4, 30, 2)));
        assert!(slab.overlaps(&at(4, 4, 9, 2)));
        assert!(slab.overlaps(&at(4, 4, 3, 3)), "inside");
        assert!(at(4, 4, 3, 3).overlaps(&slab), "around");
        assert!(
            slab.overlaps(&at(30, 2, -5, 4)),
            "across, with no corner inside"
        );
    }

    #[test]
    fn what_lies_in_an_opening_shares_nothing() {
        let slab = at(20, 20, 0, 0).with_hole(at(6, 6, 4, 4)).unwrap();
        assert!(!slab.overlaps(&at(6, 6, 4, 4)));
        assert!(!slab.overlaps(&at(2, 2, 5, 5)));
        assert!(slab.overlaps(&at(7, 6, 4, 4)));
    }

    #[test]
    fn curves_count_by_their_curve() {
        let round = Outline::circle(Length::feet_whole(10));
        assert!(!round.overlaps(&at(1, 1, 0, 0)), "in the corner of its box");
        assert!(round.overlaps(&at(1, 1, 5, 5)));
    }
}
