"""The demo jobs, and copies of them that change one rule each, so that the rules which the
demos leave alone are compared too."""

import shutil

DEMOS = ("garden-patio", "front-walk", "carport-and-walk", "workshop-slab", "sidewalk-panels", "stone-terrace")
MARKUP, TAX = "profit: markup 25%", "tax: {on: sale, rate: 6%, name: sales tax}"
SET = "set:\n  finish broom hours: {to: 14, because: two people on the curve until dark}\n"
# name, demo, file that changes (None is the takeoff), text there, text instead
CHANGES = [
    ("margin", "garden-patio", "business", MARKUP, "profit: margin 23.5%"),
    ("tax-on-materials", "garden-patio", "business", TAX, "tax: {on: materials, rate: 7.25%}"),
    ("tax-on-purchases", "garden-patio", "business", TAX, "tax: {on: purchases, rate: 6.35%}"),
    ("no-tax", "front-walk", "business", TAX, "tax: {on: none}"),
    (
        "three-taxes", "garden-patio", "business", TAX,
        "tax: [{on: sale, rate: 1.15%, name: town tax}, {on: purchases, rate: 4%, name: paid tax},"
        " {on: materials, rate: 3.3%, name: goods tax}]",
    ),
    ("minimum", "front-walk", "business", "minimum job: 1500.00", "minimum job: 3333.33"),
    ("fixed-price", "front-walk", None, "slabs:", "price: 2500.00\nslabs:"),
    ("autumn", "garden-patio", None, "pour: 2026-06-15", "pour: 2026-09-10"),
    ("last-day-of-the-hold", "garden-patio", None, "pour: 2026-06-15", "pour: 2026-06-30"),
    ("day-after-the-hold", "garden-patio", None, "pour: 2026-06-15", "pour: 2026-07-01"),
    ("by-chute", "garden-patio", None, "by: wheelbarrow", "by: chute"),
    ("by-pump", "garden-patio", None, "by: wheelbarrow", "by: pump"),
    ("difficult", "garden-patio", None, "exposure: frost", "difficulty: 115%\nexposure: frost"),
    ("nothing-set", "garden-patio", None, SET, ""),
    ("circle", "front-walk", None, "walk: 28 ft x 4 ft", "patio: circle 17 ft 3 in"),
    ("bulge-in", "garden-patio", None, "bulge 18 in", "bulge in 18 in"),
    ("small-trucks", "garden-patio", "book", "truck: 9 cu yd", "truck: 4 cu yd"),
    ("short-by-order", "front-walk", "book", "counted: by truck", "counted: by order"),
    ("by-the-hour", "garden-patio", "business", "round days up to: 1/2", "round days up to: 0"),
    ("all-percents", "front-walk", "business", "walk-through: rest", "walk-through: 10%"),
    (
        "thirds", "front-walk", "business",
        "  - When you sign: 10%\n  - When base and forms are ready: 40%\n"
        "  - The day after the pour: 40%\n  - At the final walk-through: rest\n",
        "  - When you sign: 1/3\n  - Half way: 1/3\n  - At the end: rest\n",
    ),
]


def all_jobs(home, room):
    """(name, takeoff) of both demos as they are, then of every variant, written into `room`."""
    for demo in DEMOS:
        yield demo, home / "demo-quotes" / f"{demo}.yaml"
    for name, demo, where, old, new in CHANGES:
        place = room / name
        shutil.copytree(home / "demo-quotes", place / "demo-quotes")
        shutil.copytree(home / "price-books", place / "price-books")
        takeoff = place / "demo-quotes" / f"{demo}.yaml"
        file = takeoff
        if where == "business":
            file = place / "demo-quotes" / "business.yaml"
        elif where == "book":
            file = place / "price-books" / "river-road.yaml"
        text = file.read_text()
        assert text.count(old) == 1, f"{name}: `{old}` is not once in {file.name}"
        file.write_text(text.replace(old, new))
        yield name, takeoff
