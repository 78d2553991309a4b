//! The order of the rooms of each floor, and what still runs against it.

/// Rooms that others of their floor use, each only by rooms after it; any other room is used by none.
pub const ROOMS: &[(&str, &[&str])] = &[
    (
        "values",
        &[
            "area", "unit", "day", "rounding", "length", "money", "percent",
        ],
    ),
    (
        "geometry",
        &[
            "point", "arc", "compass", "side", "angle", "cross", "chords", "scan", "walk",
            "outline", "clip", "grid", "square", "holes",
        ],
    ),
    ("tables", &["source", "bars"]),
    (
        "reading",
        &[
            "place", "problem", "written", "suggest", "tree", "yaml", "fields",
        ],
    ),
    ("press", &["drawing", "faces", "page", "text", "pdf"]),
    (
        "input",
        &["checks", "phrases", "site", "business", "book", "job"],
    ),
    (
        "trade",
        &["working", "term", "sets", "measure", "order", "crew"],
    ),
    (
        "costing",
        &[
            "prices",
            "pricing",
            "lines",
            "totals",
            "estimate",
            "unit_prices",
            "offer",
            "compare",
            "sensitivity",
        ],
    ),
    ("office", &["text", "name", "chain", "record", "account"]),
    ("advice", &["spacing"]),
    (
        "documents",
        &[
            "views", "figures", "markup", "template", "error", "pages", "offering", "billing",
        ],
    ),
    (
        "outside",
        &[
            "files",
            "home",
            "desk",
            "cabinet",
            "filing",
            "kept",
            "making",
            "paper",
            "progress",
            "changing",
            "closing",
            "repricing",
            "verify",
            "exports",
        ],
    ),
];

/// Arrows back that still have to be turned: the list only gets shorter.
pub const KNOWN: &[(&str, &str)] = &[
    (
        "documents/figures/cure/frame",
        "documents/figures/cure/bars",
    ),
    (
        "documents/figures/plan/slabs",
        "documents/figures/plan/edges",
    ),
    (
        "documents/figures/plan/words",
        "documents/figures/plan/view",
    ),
    ("documents/markup/forms", "documents/markup/blocks"),
    (
        "documents/views/office/takeoff/slab",
        "documents/views/office/takeoff/groups",
    ),
    ("input/book/item", "input/book/rules"),
    ("input/business", "input/job/values"),
    ("input/business/unforeseen", "input/book/item"),
    ("input/job/options", "input/job/takeoff"),
    ("input/job/sections", "input/job/takeoff"),
    ("input/phrases/side", "input/job/edge"),
    ("input/phrases/size", "input/phrases/shape"),
    ("office/record/progress", "office/record/bills"),
    ("press/drawing", "press/page"),
    ("press/layout/piece", "press/layout/flows"),
    ("press/pdf/attributes", "press/pdf/structure"),
    ("press/pdf/jpeg", "press/pdf/picture"),
    ("press/pdf/kids", "press/pdf/structure"),
    ("press/pdf/png", "press/pdf/picture"),
    ("press/pdf/xmp", "press/pdf/catalog"),
    ("reading/yaml/copies", "reading/yaml/builder"),
    ("reading/yaml/quotes", "reading/yaml/syntax"),
    ("trade/crew/surfaces", "trade/crew/tasks"),
    ("trade/order/machines", "trade/crew"),
    ("trade/order", "trade/crew"),
    ("trade/order/slabs", "trade/crew"),
    ("trade/order/worked", "trade/crew"),
    ("trade/order/worked", "trade/order/slabs"),
    ("trade/working", "trade/term"),
    ("values/rounding", "values/money"),
];
