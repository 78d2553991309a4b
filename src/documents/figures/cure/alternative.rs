//! What someone who cannot see the figure hears: every number in it.

use rust_decimal::Decimal;

use super::axes::Axes;
use super::band::steady;
use super::bars::UseBar;
use super::view::CureView;
use super::words::fill;
use crate::trade::curing::Milestone;
use crate::values::rounding;

/// The band at every vertical line, then every use.
pub fn alternative(view: &CureView, axes: &Axes, bars: &[UseBar]) -> String {
    let words = view.words;
    let conditions = view.timeline.conditions;
    let (about, moment) = if steady(view) {
        (words.about_steady, words.about_steady_moment)
    } else {
        (words.about_band, words.about_moment)
    };
    let mut sentences = vec![fill(
        about,
        &[
            ("strength", view.ordered),
            ("warm", &conditions.warm.to_string()),
            ("cool", &conditions.cool.to_string()),
        ],
    )];
    for day in axes.ticks().skip(1) {
        let there = view.timeline.at(Decimal::from(day));
        let percent = |percent: crate::values::Percent| {
            rounding::to_places(percent.number(), 0)
                .normalize()
                .to_string()
        };
        sentences.push(fill(
            moment,
            &[
                ("day", &day.to_string()),
                ("warm", &percent(there.warm)),
                ("cool", &percent(there.cool)),
            ],
        ));
    }
    for bar in bars {
        sentences.push(about_use(view, &bar.milestone));
    }
    let deicer = fill(
        words.about_deicer,
        &[
            ("use", words.deicer),
            ("first", words.first_winter),
            ("second", words.second_winter),
            ("sparingly", words.sparingly),
        ],
    );
    sentences.extend(view.deicer.then_some(deicer));
    sentences.join(" ")
}

fn about_use(view: &CureView, milestone: &Milestone) -> String {
    let words = view.words;
    let name = words.name_of(milestone.use_);
    let (warm, cool) = (milestone.warm.to_string(), milestone.cool.to_string());
    if warm == cool {
        let day = fill(words.day_of(milestone.use_), &[("day", &cool)]);
        return fill(words.about_use, &[("use", name), ("day", &day)]);
    }
    fill(
        words.about_days,
        &[("use", name), ("warm", &warm), ("day", &cool)],
    )
}
