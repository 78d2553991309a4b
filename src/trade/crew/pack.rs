//! Blocks of work packed into the days of a crew.
//!
//! Blocks follow each other, from one hour to the next, unless a night lies between them. What lies
//! between two nights is a stretch: the crew comes for it on so many days, and its days go up to the
//! owner's step by themselves.

use rust_decimal::Decimal;

use super::blocks::Block;
use super::step::Step;
use crate::input::business::{NightBefore, SetLids};
use crate::input::job::{Permit, Takeoff};
use crate::trade::working::Quantity;
use crate::values::{Day, rounding};

/// Forms come off within so many days of their pour; common practice, no source.
const FORMS_OFF: i64 = 7;

/// Blocks without a night between them.
#[derive(Clone, Debug)]
pub struct Stretch {
    /// `remove, form and place`.
    pub name: String,
    pub blocks: Vec<Block>,
    /// Why there is a night before it; nothing before the first.
    pub night: &'static str,
    pub worked: Quantity,
    /// It has a pour that takes the crew longer than a day.
    pub is_long: bool,
    /// Days on site by its hours alone, as the calendar counts them.
    pub on_site: Quantity,
    /// Nothing is made or poured on it: as few come as it takes.
    pub is_visit: bool,
    /// Who comes for it, of a visit; for all other work the crew comes.
    pub people: Option<Quantity>,
    /// Days of those who come for a visit; what is charged are days of the whole crew.
    pub there: Option<Quantity>,
    /// How often the crew comes, as it is charged; none where the job is counted in one sum.
    pub trips: Option<Quantity>,
    /// Crew days up to the owner's step; none where the job is counted in one sum.
    pub days: Option<Quantity>,
}

impl Stretch {
    /// Whether it is done after the work, when the crew comes back.
    pub fn is_later(&self) -> bool {
        self.blocks.iter().all(|block| block.step.is_later())
    }

    /// Days that the customer reads: a long pour is one, and a visit of few takes their days.
    pub fn days_at_house(&self) -> Option<&Quantity> {
        let days = self.days.as_ref()?;
        if days.overruled().is_some() {
            return Some(days);
        }
        if self.is_long {
            return Some(&self.on_site);
        }
        self.there.as_ref().or(Some(days))
    }

    /// Person hours in which a pour is waited for.
    pub fn waiting(&self) -> impl Iterator<Item = &Quantity> {
        self.blocks.iter().filter_map(|one| one.waiting.as_ref())
    }

    pub fn steps(&self) -> impl Iterator<Item = Step> {
        self.blocks.iter().map(|block| block.step)
    }

    pub fn has(&self, step: Step) -> bool {
        self.steps().any(|one| one == step)
    }
}

/// Whether the forms of this job stand for a night before the pour.
pub fn is_inspected(takeoff: &Takeoff, night: NightBefore) -> bool {
    match night {
        NightBefore::Always => true,
        NightBefore::Never => false,
        NightBefore::WithPermit => match takeoff.head.permit {
            Permit::Customer | Permit::Item(_) => true,
            Permit::Unsaid | Permit::None => false,
        },
    }
}

/// Blocks that follow each other without a night, and why there is one before them. `day` is what
/// the whole crew works in a day, without travel.
pub(super) fn pack(
    blocks: Vec<Block>,
    between: Between<'_>,
    day: Decimal,
) -> Vec<(&'static str, Vec<Block>)> {
    let mut packed: Vec<(&'static str, Vec<Block>)> = Vec::new();
    // Hours worked since the last night that was asked for.
    let mut spent = Decimal::ZERO;
    for block in blocks {
        let last = packed.last_mut();
        let night = last.as_ref().and_then(|(_, before)| {
            let asked = before.last().and_then(|last| between.night(last, &block));
            asked.or_else(|| too_little_left(&block, spent, day))
        });
        let worked = block.there();
        match (last, night) {
            (Some((_, stretch)), None) => {
                spent += worked;
                stretch.push(block);
            }
            (_, night) => {
                spent = worked;
                packed.push((night.unwrap_or_default(), vec![block]));
            }
        }
    }
    packed
}

/// What decides on the nights between blocks.
#[derive(Clone, Copy)]
pub(super) struct Between<'a> {
    /// The day of each pour.
    pub pours: &'a [Day],
    pub is_inspected: bool,
    /// Trips that the owner plans are for the work alone: then no visit after it shares its days.
    pub is_planned: bool,
    pub lids: SetLids,
}

impl Between<'_> {
    /// Why there is a night between two blocks, however short they are.
    fn night(self, before: &Block, next: &Block) -> Option<&'static str> {
        match (before.step, next.step) {
            (Step::Remove | Step::Form, Step::Place) => {
                self.is_inspected.then_some("the forms are inspected")
            }
            (Step::Place, Step::Place) => Some("the pour is on another day"),
            (Step::Place, _) => Some("the concrete hardens"),
            (before_it, Step::Place)
                if Step::Strip <= before_it && self.are_apart(before, next) =>
            {
                Some("the forms come off within a week")
            }
            // Washed or sawn on the visit that strips; forms and covers come off together.
            (Step::Strip | Step::Lift | Step::Finish, Step::Finish) if !self.is_planned => None,
            (Step::Strip, Step::Lift) => None,
            (Step::Finish, _) if self.is_planned => Some("the crew comes back for it"),
            (Step::Strip | Step::Lift | Step::Finish, Step::Lid)
                if self.lids == SetLids::WithStripping =>
            {
                None
            }
            (_, next) => next.is_later().then_some("the crew comes back for it"),
        }
    }

    /// Whether forms would stand too long, or covers not long enough, until the next pour.
    fn are_apart(self, before: &Block, next: &Block) -> bool {
        let day = |pour: Option<&usize>| self.pours.get(*pour?);
        let (Some(poured), Some(next)) = (day(before.pours.last()), day(next.pours.first())) else {
            return false;
        };
        let wait = before.wait.map_or(FORMS_OFF, i64::from).max(FORMS_OFF);
        wait < next.days_since(*poured)
    }
}

/// A pour is one piece: it begins on a day only where it can be finished on it.
fn too_little_left(block: &Block, spent: Decimal, day: Decimal) -> Option<&'static str> {
    if block.step != Step::Place || day.is_zero() {
        return None;
    }
    let left = day - rounding::to_nine_places(spent) % day;
    let is_begun = left < day || spent.is_zero();
    let fits = is_begun && rounding::to_nine_places(block.there()) <= left;
    (!fits).then_some("the pour does not fit into what is left of the day")
}
