//! The invented Larkspur quote that tests fill their pages with.

use super::quote::{
    Acceptance, ChoiceGroup, ChoiceItem, Choices, CombinationAmount, CombinationRow, Combinations,
    Cure, FileFacts, Firm, Headed, Payment, Payments, QuoteView, Sentence, Term, Total, UnitPrice,
};

fn term(word: &str, text: &str) -> Term {
    Term {
        word: word.into(),
        text: text.into(),
    }
}

fn sentence(before: &str, strong: &str, after: &str) -> Sentence {
    Sentence {
        before: before.into(),
        strong: strong.into(),
        after: after.into(),
    }
}

fn texts(all: &[&str]) -> Vec<String> {
    all.iter().map(|&text| text.into()).collect()
}

impl QuoteView {
    /// A full quote, in which all amounts are consistent.
    pub fn sample() -> Self {
        Self {
            file: FileFacts {
                title: "Quote 26-031, Larkspur Flatwork".into(),
                subject: "A new patio, walk and step behind your house".into(),
                language: "en-US".into(),
                created: 1_777_852_800,
            },
            firm: Firm {
                name: "Larkspur Flatwork".into(),
                tagline: Some("Concrete patios, walks, driveways and slabs".into()),
                phone: Some("555-0142".into()),
                email: Some("office@example.com".into()),
                address: Some("4 Kiln Yard, Quillhaven".into()),
                licence: Some("License 0000-118".into()),
                insurance: Some("Liability insured to $1,000,000".into()),
            },
            title: "A new patio, walk and step behind your house".into(),
            customer: "Dana Example, 18 Sample Lane, Quillhaven".into(),
            quote: "26-031, May 4, 2026".into(),
            running_head: "Quote 26-031 for Dana Example, May 4, 2026".into(),
            total: Total {
                amount: "$12,200.60".into(),
                tax_sentence: "Total, including 6% sales tax of $690.60".into(),
                good_until: "Price good until June 3, 2026".into(),
            },
            replaces: Some("This takes the place of our quote of April 20, 2026.".into()),
            scope: scope(),
            when_we_come: vec![
                sentence("Start between ", "June 8 and June 19, 2026", "."),
                sentence("", "5 working days", " at your house."),
                sentence("Rain may move the pour, never the price.", "", ""),
            ],
            not_included: texts(&[
                "Town permit, if one is asked for",
                "Moving pipes, wires or sprinkler lines",
                "Rock, roots or soft soil below 8 in (page\u{a0}{page:hidden})",
                "Grass seed, plants, work on the fence",
                "Border and sealer: your choice (page\u{a0}{page:choices})",
            ]),
            payments: payments(),
            choices: Some(choices()),
            combinations: Some(combinations()),
            assumptions: texts(&[
                "Firm, dry soil under the grass; old patio without steel",
                "A clear way through the side gate, 42 in wide",
                "Water and power at the house on all five days",
                "A place on the street where the mixer may stand",
            ]),
            unit_prices: unit_prices(),
            promises: texts(&[
                "Joints are a quarter of the slab deep, in even panels.",
                "The surface sheds water: ¼ in per ft, away from the house.",
                "A 10 ft straightedge finds no dip over ¼ in.",
                "We repair scaling, or settling of ¾ in or more, for 2 years.",
                "Extra work starts only when you have signed its price.",
            ]),
            kind_word: Headed {
                heading: "A word on cracks and color".into(),
                text: "Concrete shrinks as it dries and no two loads match, so a hairline crack \
                       or a cloud of lighter gray is the nature of the material and not a fault; \
                       should one ever worry you, call, and we will come and look at it with you."
                    .into(),
            },
            releases: Vec::new(),
            acceptance: Acceptance {
                heading: "Yes, please go ahead".into(),
                sentence: "I accept this quote with the choices ticked above.".into(),
                total_label: "Total without choices".into(),
                total: "$12,200.60".into(),
                has_choices: true,
            },
            cure: Cure {
                heading: "While your concrete cures".into(),
                lead: "It hardens for weeks, faster when it is warm. Count from the day of the \
                       pour; if in doubt, wait the longer time."
                    .into(),
            },
            care: care(),
            safety: safety(),
            terms: terms(),
            deferral: "Local codes, your concrete supplier and licensed professionals decide \
                       wherever they say otherwise; nothing here is engineering or legal advice."
                .into(),
            cancellation: None,
            photos: Vec::new(),
        }
    }
}

fn scope() -> Vec<Term> {
    vec![
        term(
            "Remove",
            "old patio, 200 sq ft, and lawn soil 8 in deep; we haul both away",
        ),
        term("Base", "4 in of crushed stone, packed"),
        term(
            "Pour",
            "patio 24 × 20 ft and walk 22 × 4 ft, 4 in thick, 520 sq ft in all; one step, 7 in high",
        ),
        term("Concrete", "4,000 psi mix, with air against frost"),
        term("Steel", "⅜ in bars every 18 in, both ways"),
        term("Finish", "light broom, rounded edges"),
        term("Clean up", "forms out, topsoil along edges, swept"),
    ]
}

fn payments() -> Payments {
    let row = |event: &str, share: &str, amount: &str| Payment {
        event: event.into(),
        share: share.into(),
        amount: amount.into(),
    };
    Payments {
        rows: vec![
            row("When you sign", "10%", "$1,220.06"),
            row("When base and forms are ready", "40%", "4,880.24"),
            row("The day after the pour", "40%", "4,880.24"),
            row("At the final walk-through", "10%", "1,220.06"),
        ],
        total: "$12,200.60".into(),
        note: Some("Choices on page\u{a0}{page:choices} change each payment in proportion.".into()),
    }
}

fn choices() -> Choices {
    let item = |title: &str, description: &str, adds: &str, new_total: &str| ChoiceItem {
        title: title.into(),
        description: description.into(),
        adds: adds.into(),
        new_total: new_total.into(),
    };
    Choices {
        lead: "The slab is complete and sound without any of these. Prices include 6% sales tax."
            .into(),
        groups: vec![
            ChoiceGroup {
                question: "Border along the open edges, 60 ft:".into(),
                how_many: "tick one at most".into(),
                only_one: true,
                items: vec![
                    item(
                        "Washed pebble border, 12 in wide",
                        "Exposed aggregate: the top skin is washed off to show small round stones",
                        "+ 1,314.40",
                        "13,515.00",
                    ),
                    item(
                        "Smooth border, 6 in wide",
                        "A troweled band with a tooled line beside it",
                        "+ 413.40",
                        "12,614.00",
                    ),
                ],
            },
            ChoiceGroup {
                question: "Sealer:".into(),
                how_many: "tick or leave".into(),
                only_one: false,
                items: vec![item(
                    "Clear sealer that soaks in, on patio, walk and step",
                    "Put on after day 28; keeps out water and salt",
                    "+ 519.40",
                    "12,720.00",
                )],
            },
        ],
    }
}

fn combinations() -> Combinations {
    let row = |name: &str, without: &str, with: &str, as_quoted: bool| CombinationRow {
        name: name.into(),
        amounts: vec![
            CombinationAmount {
                text: without.into(),
                as_quoted,
            },
            CombinationAmount {
                text: with.into(),
                as_quoted: false,
            },
        ],
    };
    Combinations {
        note: "tax included".into(),
        heads: texts(&["no sealer", "with sealer"]),
        rows: vec![
            row("No border", "$12,200.60", "$12,720.00", true),
            row("Washed pebble border", "13,515.00", "14,034.40", false),
            row("Smooth border", "12,614.00", "13,133.40", false),
        ],
    }
}

fn unit_prices() -> Vec<UnitPrice> {
    [
        ("Soft soil out, stone in", "per cu yd", "150.00", "159.00"),
        ("Crushed stone, placed", "per ton", "70.00", "74.20"),
        ("Concrete, placed", "per cu yd", "320.00", "339.20"),
        ("Rock or old concrete", "per cu yd", "240.00", "254.40"),
        ("Other small jobs", "per hour", "75.00", "79.50"),
    ]
    .map(|(work, unit, price, with_tax)| UnitPrice {
        work: work.into(),
        unit: unit.into(),
        price: price.into(),
        with_tax: with_tax.into(),
    })
    .into()
}

fn care() -> Vec<Term> {
    vec![
        term(
            "Curing coat.",
            "We spray one on. Leave it alone: no washing and no scrubbing for 28 days.",
        ),
        term(
            "First winter.",
            "Sand, no salt. Never use lawn fertilizer against ice: it eats concrete.",
        ),
        term(
            "Water.",
            "Steer roof and garden water away from the slab, and keep soil up along its edges.",
        ),
    ]
}

fn safety() -> Vec<Term> {
    vec![
        term(
            "Wet concrete burns",
            "skin and eyes. Rinse at once with much water; for eyes and burns see a doctor.",
        ),
        term(
            "Dust from cutting",
            "harms lungs. We cut wet; please keep windows shut and stay back.",
        ),
        term(
            "Barricades stay up",
            "until we take them down. Please keep children and pets out, evenings too.",
        ),
    ]
}

fn terms() -> Vec<String> {
    texts(&[
        "Changes are written down with price and days and start when you have signed them. \
         Hidden ground is charged at the unit prices on page\u{a0}{page:hidden} after we have shown it \
         to you. We have the public lines marked; please show us private ones, such as sprinklers \
         and garden lights. Local codes come before this quote.",
        "Invoices are due in 10 days; after that 1% a month (simple, not compounded) is added. \
         Weather, supply or illness may move a date; we tell you the same day. The slab is yours \
         to guard once the barricades are down. Nothing here takes away a right that the law \
         gives you.",
    ])
}
