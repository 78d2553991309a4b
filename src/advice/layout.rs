//! Does the joint layout keep what a finisher would: near to square, through corners, clear of what it passes?

use super::{Case, DECIDES, at_spot};
use crate::geometry::Point;
use crate::geometry::joints::{Break, Fault};
use crate::input::job::Slab;
use crate::reading::{Place, Problem};
use crate::tables::{Read, Source};
use crate::trade::measure::{JointQuantities, spacing_by_thickness};
use crate::values::Length;
use crate::values::rounding::to_places;

const SQUARE: Source = Source::new("a trade magazine's column on joints", "", Read::Secondary);

/// A box is as near as this to a joint that passes it.
const BESIDE: Length = Length::inches_whole(13);

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let slabs = case
        .slabs()
        .filter_map(|(slab, measured)| Some((slab, measured.joints.as_ref()?)));
    let answers = slabs.flat_map(|(slab, joints)| {
        let mut told: Vec<(&Break, usize)> = Vec::new();
        for one in &joints.layout.breaks {
            let same =
                |known: &Fault| std::mem::discriminant(known) == std::mem::discriminant(&one.what);
            match told.iter_mut().find(|(known, _)| same(&known.what)) {
                Some((_, more)) => *more += 1,
                None => told.push((one, 0)),
            }
        }
        let answers = told.into_iter().filter_map(move |(one, more)| {
            let told = Told { case, slab, joints };
            told.said(one, more)
        });
        answers.collect::<Vec<_>>()
    });
    answers.collect()
}

#[derive(Clone, Copy)]
struct Told<'a> {
    case: Case<'a>,
    slab: &'a Slab,
    joints: &'a JointQuantities,
}

impl<'a> Told<'a> {
    /// What is not kept there, and in as many places more.
    fn said(self, one: &Break, more: usize) -> Option<Problem> {
        let Self { slab, joints, .. } = self;
        let (key, at) = (&slab.key, at_spot(slab, one.at));
        let practice = Source::PRACTICE;
        let many = match more {
            0 => String::new(),
            1 => ", and one more like it".to_owned(),
            more => format!(", and {more} more like it"),
        };
        let (code, message, help) = match one.what {
            Fault::TooMany { panels } => {
                let allowed = spacing_by_thickness(slab, self.case.mix(slab));
                let limit = joints.longest;
                let message = format!(
                    "panels of `{limit}` would be {panels} of them in `{key}`: no layout was tried, and it has no joint"
                );
                (
                    "joint-layout",
                    message,
                    format!("write, for example, `joints: {allowed}`"),
                )
            }
            Fault::TooLong { long } => {
                let long = long.to_the_eighth();
                let message = format!(
                    "a panel of `{key}` is `{long}` long, and `{}` was to be the most ({at}){many}",
                    joints.longest
                );
                ("long-panel", message, self.one_more())
            }
            Fault::Stretched { ratio } => {
                let ratio = to_places(ratio, 2).normalize();
                let message = format!(
                    "a panel of `{key}` is `{ratio}` times as long as wide ({at}){many}; 1.5 is never to be passed"
                );
                let help = format!("{}; source: {SQUARE}; {DECIDES}", self.one_more());
                ("long-panel", message, help)
            }
            Fault::Unmet => {
                let message =
                    format!("no joint of `{key}` runs to a joint that `match` names ({at}){many}");
                let help = "draw it yourself under `joints at`, or isolate that edge: the crack goes on into the new slab";
                ("joint-layout", message, format!("{help} ({practice})"))
            }
            Fault::InSolid => {
                let message =
                    format!("a joint of `{key}` runs under what stands on it ({at}){many}");
                ("joint-layout", message, "let it end there".to_owned())
            }
            Fault::Corner => {
                if let Some((name, place)) = self.set_at(one.at) {
                    let message = format!(
                        "no joint of `{key}` runs to `{name}`{many}: a crack starts at its corners"
                    );
                    let help = format!(
                        "say `isolated: yes` for it, or move it to a joint, or draw one from it under `joints at` ({practice})"
                    );
                    return Some(Problem::new("joint-layout", message).at(place).help(help));
                }
                let message = format!(
                    "no joint of `{key}` runs to an inside corner, or to a corner of what stands or is left open in it ({at}){many}: a crack starts there"
                );
                let help = "draw one from it under `joints at`, or lay bars across the corner";
                ("joint-layout", message, format!("{help} ({practice})"))
            }
            Fault::Near { off } => return Some(self.near(one.at, off.to_the_eighth(), &many)),
            Fault::Sliver { wide } => {
                let wide = wide.to_the_eighth();
                let message = format!(
                    "a panel of `{key}` is only `{wide}` wide ({at}){many}: a strip like that breaks off"
                );
                let help = "draw the joints yourself under `joints at`, or reinforce the strip";
                ("joint-layout", message, format!("{help} ({practice})"))
            }
            Fault::Sharp { degrees } => {
                let message = format!(
                    "a panel of `{key}` ends in a point of {degrees} degrees ({at}){many}: points break off"
                );
                let help =
                    "let the joint meet the edge square for its last foot, under `joints at`";
                ("joint-layout", message, format!("{help} ({practice})"))
            }
            // Where the program lays them out, it had to: there is nothing to ask.
            Fault::Ends if slab.drawn.is_empty() => return None,
            Fault::Ends => {
                let message = format!(
                    "a joint of `{key}` ends at another one ({at}){many}: the crack may run on"
                );
                (
                    "joint-layout",
                    message,
                    format!("let it run through to an edge ({practice})"),
                )
            }
        };
        Some(Problem::new(code, message).at(self.place(one)).help(help))
    }

    /// A joint that passes a box, an opening or an inside corner.
    fn near(self, at: Point, off: Length, many: &str) -> Problem {
        let slab = self.slab;
        let (code, what, place) = if let Some((name, place)) = self.set_at(at) {
            ("box-off-joint", format!("`{name}`"), place)
        } else {
            let what = format!(
                "an inside corner or an opening of `{}` ({})",
                slab.key,
                at_spot(slab, at)
            );
            ("joint-layout", what, self.where_said())
        };
        let message = format!("a joint passes {what} by `{off}` and does not meet it{many}");
        Problem::new(code, message).at(place).help(format!(
            "let the joint run to it, or move either: the slab cracks between them ({}); {DECIDES}",
            Source::PRACTICE
        ))
    }

    /// The box that a place is beside, and where it is said to stand.
    fn set_at(self, at: Point) -> Option<(&'a str, Place)> {
        self.slab.boxes.iter().find_map(|set| {
            let middle = set.middle.as_ref()?;
            let stock = self.case.book.rules.boxes.get(&set.stock.value)?;
            let (low, high) = stock.opening.value.around(middle.value, BESIDE).bounds();
            let beside = low.x <= at.x && at.x <= high.x && low.y <= at.y && at.y <= high.y;
            beside.then_some((set.name.value.as_str(), middle.place))
        })
    }

    fn one_more(self) -> String {
        if self.slab.drawn.is_empty() {
            "set `joints` nearer to the short side, or draw them yourself under `joints at`"
                .to_owned()
        } else {
            "draw one more joint through it".to_owned()
        }
    }

    /// Where the owner says what is not kept.
    fn place(self, one: &Break) -> Place {
        let matched = self.slab.matched.iter();
        let named = matched.filter(|meet| one.what == Fault::Unmet && meet.value == one.at);
        let mut places = named.map(|meet| meet.place);
        places.next().unwrap_or_else(|| self.where_said())
    }

    /// Where its joints are asked for.
    fn where_said(self) -> Place {
        let slab = self.slab;
        let drawn = slab.drawn.first().map(|line| line.place);
        let said = slab.joints.as_ref().map(|joints| joints.place);
        drawn.or(said).unwrap_or(slab.place)
    }
}
