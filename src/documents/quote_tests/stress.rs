//! Quotes as long, as short and as wide as they get.

use super::sample;
use crate::documents::views::quote::{
    Cancellation, ChoiceGroup, ChoiceItem, CombinationAmount, CombinationRow, Combinations,
    QuoteView, Term,
};

/// Each with a name for messages.
pub(super) fn stress_views() -> Vec<(String, QuoteView)> {
    let changed = |name: &str, change: &dyn Fn(&mut QuoteView)| {
        let mut view = sample();
        change(&mut view);
        (name.to_owned(), view)
    };
    vec![
        changed("long scope", &long_scope),
        changed("many options", &many_options),
        changed("nothing optional", &nothing_optional),
        changed("long words", &long_words),
        changed("long legal text", &long_legal_text),
        changed("all at once", &|view| {
            long_scope(view);
            many_options(view);
            long_words(view);
            long_legal_text(view);
        }),
        changed("wide combinations", &|view| {
            let mut grid = Combinations {
                note: "tax included".into(),
                heads: Vec::new(),
                rows: rows(16, 4),
            };
            for head in ["plain", "sealed", "colored", "sealed and colored"] {
                grid.heads.push(head.into());
            }
            view.combinations = Some(grid);
        }),
    ]
}

fn rows(count: usize, amounts: usize) -> Vec<CombinationRow> {
    (0..count)
        .map(|at| CombinationRow {
            name: format!("Washed pebble border, sealer and step light {at}"),
            amounts: (0..amounts)
                .map(|_| CombinationAmount {
                    text: "$1,012,200.60".into(),
                    as_quoted: at == 0,
                })
                .collect(),
        })
        .collect()
}

fn long_scope(view: &mut QuoteView) {
    view.scope = (0..20)
        .map(|at| {
            let text =
                "patio 24 × 20 ft and walk 22 × 4 ft, 4 in thick, 520 sq ft in all; one step";
            Term::new(format!("Part {at}"), text)
        })
        .collect();
    view.not_included = (0..12)
        .map(|at| {
            format!("Thing {at} that somebody else must see to before the crew can come in June")
        })
        .collect();
}

fn many_options(view: &mut QuoteView) {
    view.releases = ["Driveway", "Walk", "Lawn", "Septic tank", "Sprinklers"]
        .map(|word| {
            let text =
                "Our truck drives over it. What breaks under its weight is not ours to mend.";
            Term::new(word, text)
        })
        .to_vec();
    let choices = view.choices.as_mut().expect("the sample has choices");
    choices.groups = (0..5)
        .map(|group| ChoiceGroup {
            question: format!("Question {group}, about the border along the open edges, 60 ft:"),
            how_many: "tick one at most".into(),
            only_one: group % 2 == 0,
            items: (0..4)
                .map(|item| ChoiceItem {
                    title: format!(
                        "Choice {item} with a name so long that it needs a second line \
                                    on any sheet of paper"
                    ),
                    description: "The top skin is washed off to show small round stones, which \
                                  takes another day and a pump on site"
                        .into(),
                    adds: "+ 1,314.40".into(),
                    new_total: "1,013,515.00".into(),
                })
                .collect(),
        })
        .collect();
    view.combinations = Some(Combinations {
        note: "tax included".into(),
        heads: vec![String::new()],
        rows: rows(64, 1),
    });
}

fn nothing_optional(view: &mut QuoteView) {
    view.choices = None;
    view.combinations = None;
    view.firm.tagline = None;
    view.firm.email = None;
    view.firm.licence = None;
    view.firm.insurance = None;
    view.payments.note = None;
    view.acceptance.has_choices = false;
    view.not_included.truncate(4);
}

fn long_words(view: &mut QuoteView) {
    view.customer = "Dana Example and Robin Example-Longname, Apartment 1204, \
                     18 Sample Lane at the corner of Quarry Road, Upper Quillhaven"
        .into();
    view.title = "A new patio, walk, step, driveway, apron and carport slab behind and beside \
                  your house and garage"
        .into();
    view.total.amount = "$1,012,200.60".into();
    view.acceptance.total = "$1,012,200.60".into();
    view.payments.total = "$1,012,200.60".into();
    view.payments.rows[1].event =
        "When base, forms, steel and the first of the three placements are ready".into();
    view.payments.rows[1].amount = "404,880.24".into();
    view.unit_prices[0].work = "Unbelievablylongwordwithoutanyspaces and old concrete".into();
    view.firm.name = "Larkspur Flatwork and Daughters of Greater Quillhaven".into();
}

fn long_legal_text(view: &mut QuoteView) {
    let paragraph = view.terms[0].clone();
    view.terms = (0..24).map(|_| paragraph.clone()).collect();
    view.cancellation = Some(Cancellation {
        statement: paragraph.clone(),
        heading: "Your right to cancel".into(),
        text: (0..6).map(|_| paragraph.clone()).collect(),
        to: paragraph,
        copies: vec!["First copy".into(), "Second copy".into()],
    });
}
