//! The order of the rooms of each floor.

/// Rooms that others of their floor use, each only by rooms after it; any other room is used by none.
pub const ROOMS: &[(&str, &[&str])] = &[
    (
        "values",
        &[
            "number", "area", "unit", "money", "rounding", "length", "percent",
        ],
    ),
    (
        "geometry",
        &[
            "point", "arc", "compass", "line", "side", "angle", "cross", "chords", "scan", "walk",
            "outline", "holes",
        ],
    ),
    ("tables", &["source", "bars"]),
    (
        "reading",
        &[
            "place", "problem", "written", "suggest", "tree", "yaml", "fields", "keys",
        ],
    ),
    (
        "press",
        &["drawing", "frame", "faces", "page", "text", "pdf"],
    ),
    (
        "input",
        &[
            "phrases",
            "signed",
            "checks",
            "site",
            "book",
            "sections",
            "slab_values",
            "business",
            "job",
        ],
    ),
    (
        "trade",
        &[
            "working", "term", "sets", "tally", "curing", "measure", "order", "crew", "also", "cut",
        ],
    ),
    (
        "costing",
        &[
            "prices",
            "pricing",
            "lines",
            "totals",
            "least",
            "estimate",
            "unit_prices",
            "bought",
            "ways",
            "compare",
            "sensitivity",
            "repricing",
        ],
    ),
    (
        "office",
        &[
            "text", "chain", "record", "account", "job", "billing", "progress", "late",
        ],
    ),
    (
        "advice",
        &[
            "spacing",
            "access",
            "narrow_gate",
            "barely_a_load",
            "pour_day",
        ],
    ),
    (
        "documents",
        &[
            "table", "column", "views", "figures", "markup", "template", "error", "pages",
            "offering", "billing",
        ],
    ),
    (
        "outside",
        &[
            "files",
            "pdf_bytes",
            "business_folder",
            "records",
            "desk",
            "quote_pdf",
            "bill_pdf",
            "quote_record",
            "from_record",
            "changing",
            "closing",
            "repricing",
            "verify",
            "exports",
        ],
    ),
];
