"""Quotes at other prices: what the program is asked, and the same quotes by the second computation."""

import shutil
import subprocess
import sys
from pathlib import Path

import figures
from figures.other import Asked, Quote

DAY = "2026-05-04"
POURED_IS_OVER = True
AIR, PLAIN, STONE = "ready-mix 4000 air", "ready-mix 4000 plain", "crushed stone"
WHAT_IFS = [
    {AIR: "+8%"}, {AIR: "-10%"}, {AIR: "172.50"}, {"crew labor": "+8%"}, {"delivery": "-10%"},
    {STONE: "41.27"}, {"short load": "+3.7%"}, {"bar no. 4": "15.115"},
    {AIR: "+8%", PLAIN: "-10%", "delivery": "55", "crew labor": "51.25"},
    {AIR: "+100%", "crew labor": "+60%"},
]
OF_FAR_BANK = {AIR: "+8%", "fuel": "22.50", "dump soil": "-10%"}
PRICES = {  # as they stand in river-road.yaml
    AIR: "{2026-03-01: 178.00, 2026-09-01: 189.50}",
    PLAIN: "{2026-03-01: 174.00, 2026-09-01: 185.00}",
    STONE: "{2026-03-01: 34.50, 2026-09-01: 36.00}",
}
HOLD = "holds:\n"
TWO_TAXES = (
    "  tax: [{on: sale, rate: 1.15%, name: town tax}, {on: purchases, rate: 4%, name: paid tax},"
    " {on: materials, rate: 3.3%, name: goods tax}]\n"
)


def begins(**days):
    """Prices of river-road with one more, from a day: `air=("2026-05-20", "184.35")`."""
    names = {"air": AIR, "plain": PLAIN, "stone": STONE}
    return [(PRICES[names[n]], PRICES[names[n]].replace(", ", f", {d}: {p}, ")) for n, (d, p) in days.items()]


BEFORE = begins(air=("2026-05-20", "184.35"), plain=("2026-06-10", "180.15"), stone=("2026-06-08", "36.05"))
DAY_AFTER = begins(plain=("2026-06-11", "180.15"), stone=("2026-06-26", "36.05"))
# To the very day of one pour of the terrace, to the day before it, and from the day after the first.
HELD = [(HOLD, f"{HOLD}  - {{item: {AIR}, price: 171.30, from: 2026-06-15, until: 2026-06-22}}\n")]
HELD_TOO_SHORT = [(HOLD, f"{HOLD}  - {{item: {AIR}, price: 171.30, until: 2026-06-21}}\n")]
HELD_LATE = [(HOLD, f"{HOLD}  - {{item: {AIR}, price: 171.30, from: 2026-06-23, until: 2026-06-30}}\n")]
# Garden patio has a hold of its own before this one; the later in the book counts.
NOTED, OURS = ", note: promised by the dispatcher}\n", f"  - {{item: {AIR}, price: 171.30, job: Garden patio, until: 2026-06-15}}\n"
HELD_TWICE = [(NOTED, "}\n" + OURS)]


def edited(file, changes):
    text = file.read_text()
    for old, new in changes:
        assert text.count(old) == 1, f"`{old}` is not once in {file.name}"
        text = text.replace(old, new)
    file.write_text(text)


def usual(takeoff):
    business = takeoff.parent / "business.yaml"
    return business, takeoff.parent / figures.load(business)["books"][0]


def of_takeoff(takeoff, book=None, what_ifs=()):
    """As it was on the day of the quote, against the prices of the day it is poured."""
    business, own = usual(takeoff)
    old, new = Asked(takeoff, business, own, DAY), Asked(takeoff, business, book or own, DAY)
    old.bought_on, new.what_ifs = old.job.get("quoted", DAY), what_ifs
    return Quote(takeoff.stem, "open", old, new, old.quoted_as())


def of_record(number, kept, issued, taken, book, what_ifs, today):
    """The files as they were on the day of issue, at their own prices of the day of the pour."""
    business, own = usual(kept)
    sides = [Asked(kept, business, one, issued) for one in (own, book)]
    for side in sides:
        side.job["quoted"] = issued
        side.read()
    sides[1].what_ifs = what_ifs
    state = "open" if taken is None else "signed"
    if POURED_IS_OVER and taken is not None and all(pour["day"] < today for pour in sides[0].pours):
        return None
    return Quote(number, state, *sides, sides[0].quoted_as() if taken is None else taken)


class Case:
    def __init__(self, name, flatwork, folder, quotes, *, on=DAY, book=None, what_ifs=None, rooms=(), same=False):
        """`quotes` makes the quotes anew from a book and prices supposed; `same`: nothing may change."""
        self.name, self.what_ifs, self.rooms, self.same = name, tuple((what_ifs or {}).items()), list(rooms), same
        command = [flatwork, "reprice", str(folder), "--on", on, "--format", "json"]
        command += ["--book", str(book)] if book else []
        for item, to in self.what_ifs:
            command += ["--what-if", f"{item}={to}"]
        for item in self.rooms:
            command += ["--room", item]
        self.answer = run(command)
        self.make = lambda: [one for one in quotes(book, self.what_ifs, on) if one]


def run(command):
    done = subprocess.run(command, capture_output=True, text=True, stdin=subprocess.DEVNULL)
    if done.returncode != 0:
        sys.exit(f"{' '.join(command)}\n{done.stdout}{done.stderr}")
    return done.stdout


def home_in(room, name, *, business=(), book=(), takeoffs=None):
    """A copy of the demos in a folder of its own, with changes; `takeoffs`: changes by file, the rest left out."""
    home = room / name
    source = Path(__file__).resolve().parents[2]
    for folder in ("demo-quotes", "price-books"):
        shutil.copytree(source / folder, home / folder)
    edited(home / "demo-quotes" / "business.yaml", business)
    edited(home / "price-books" / "river-road.yaml", book)
    for file in jobs_in(home) if takeoffs is not None else ():
        edited(file, takeoffs[file.stem]) if file.stem in takeoffs else file.unlink()
    return home


def jobs_in(home):
    return [file for file in sorted((home / "demo-quotes").glob("*.yaml")) if file.stem != "business"]


def on_takeoffs(flatwork, room):
    plain = home_in(room, "plain")
    far = plain / "price-books" / "far-bank.yaml"

    def case(name, home=plain, **asked):
        quotes = lambda book, what_ifs, _: [of_takeoff(file, book, what_ifs) for file in jobs_in(home)]
        return Case(name, flatwork, home / "demo-quotes", quotes, **asked)

    yield case("nothing supposed", same=True)
    for what_ifs in WHAT_IFS:
        yield case("what if " + ", ".join(f"{item} {to}" for item, to in what_ifs.items()), what_ifs=what_ifs)
    yield case("far bank", book=far)
    yield case("far bank, and what if", book=far, what_ifs=OF_FAR_BANK)
    edits = {
        "begins before": BEFORE, "begins the day after": DAY_AFTER, "held": HELD, "held too short": HELD_TOO_SHORT,
        "held late": HELD_LATE, "held twice": HELD_TWICE, "before and held": BEFORE + HELD,
    }  # fmt: skip
    for name, changes in edits.items():
        home = home_in(room, name, book=changes)
        book, same = home / "price-books" / "river-road.yaml", name == "begins the day after"
        yield case(f"{name}, in the usual book", home, same=same)
        yield case(f"{name}, in another book", book=book, same=same)
        yield case(f"{name}, and what if", book=book, what_ifs={AIR: "+8%"})
    taxes = ("  tax: {on: sale, rate: 6%, name: sales tax}   # on: none, sale, materials or purchases\n", TWO_TAXES)
    policy = [taxes, ("profit: markup 25% ", "profit: margin 23.5% "), ("minimum job: 1500.00", "minimum job: 3333.33")]
    home = home_in(room, "policy", business=policy)
    yield case("margin, minimum and three taxes", home, book=far)
    yield case("margin, minimum, three taxes and what if", home, what_ifs=WHAT_IFS[-2])
    at = lambda price: [("\nslabs:\n", f"\nprice: {price}\nslabs:\n")]
    fixed = {"front-walk": at("2500.00"), "stone-terrace": at("16000.00")}
    home = home_in(room, "fixed", takeoffs=fixed)
    yield case("fixed price", home, book=far, rooms=[AIR, "delivery"])
    by_task = [("  people: 3\n", "  people: 3\n  labor lines: by task\n")]
    yield case("labor by task", home_in(room, "by task", business=by_task), book=far, what_ifs={"crew labor": "+8%"})
    for name, book, what_ifs in (
        ("river road", plain / "price-books" / "river-road.yaml", None), ("far bank", far, OF_FAR_BANK),
        ("thin margins", None, {AIR: "+20%", "crew labor": "50.125"}), ("below the floor", None, {"crew labor": "+40%"}),
    ):  # fmt: skip
        items = figures.load(book or plain / "price-books" / "river-road.yaml")["items"]
        yield case(f"room, {name}", book=book, what_ifs=what_ifs, rooms=items)
    # Each pour has its own price, and the item moves by the same on all of them.
    home = home_in(room, "two prices", book=begins(air=("2026-06-24", "181.505")))
    yield case("room, a price for each pour", home, rooms=[AIR, "crew labor"])


ISSUED = [  # takeoff, day of issue, day of the signature and what was ticked
    ("carport-and-walk", "2026-05-04", "2026-05-12", ["You keep the old walk", "Clear sealer that soaks in, on the carport"]),
    ("front-walk", "2026-05-04", None, None),
    ("garden-patio", "2026-05-04", "2026-05-20", ["Smooth border, 6 in wide"]),
    ("sidewalk-panels", "2026-05-04", "2026-05-06", []),
    ("stone-terrace", "2026-05-04", "2026-05-07", ["Broomed, in buff", "A band of washed pebbles along the open edges"]),
    ("workshop-slab", "2026-05-04", None, None),
]  # fmt: skip


def on_record(flatwork, room, name, issued, book, **changes):
    """Jobs issued and signed by the book as it was; asked again when the books have changed."""
    home, kept = home_in(room, name, **changes), home_in(room, f"{name} as it was", **changes)
    folder, quotes = home / "demo-quotes", []
    for n, (job, day, signed, ticked) in enumerate(issued, 1):
        run([flatwork, "quote", str(folder / f"{job}.yaml"), "--issue", "--on", day])
        number = f"2026-{n:04}"
        if signed:
            options = [word for title in ticked for word in ("--with", title)]
            run([flatwork, "accept", number, "--on", signed, "--in", str(folder), *options])
            file = kept / "demo-quotes" / f"{job}.yaml"
            questions = [[pair[0] for pair in group if pair] for group in Asked(file, *usual(file), day).groups()]
            must = Asked(file, *usual(file), day).quoted_as()
            ticked = [next((o for o in q if o in ticked), next((o for o in q if o in must), None)) for q in questions]
            ticked = tuple(one for one in ticked if one)
        quotes.append((number, kept / "demo-quotes" / f"{job}.yaml", day, ticked))
    own = home / "price-books" / "river-road.yaml"
    edited(own, book)

    def case(name, **asked):
        make = lambda other, what_ifs, on: [of_record(*one, other or own, what_ifs, on) for one in quotes]
        return Case(name, flatwork, folder, make, **asked)

    return case, home, quotes


def on_records(flatwork, room):
    newer = BEFORE + [
        ("prices: {2026-03-01: 47.50}", "prices: {2026-03-01: 47.50, 2026-05-15: {wage: 33.85, burden: 47.3%}}"),
        ("short load: {under: 4 cu yd, counted: by truck, charge: each yard}", "short load: {under: 5 cu yd, counted: by order}"),
        ("  truck: 9 cu yd", "  truck: 7 cu yd"), ("  smallest order: 1 cu yd", "  smallest order: 2 1/4 cu yd"),
    ]  # fmt: skip
    case, home, _ = on_record(flatwork, room, "records", ISSUED, newer)
    yield case("records", on="2026-05-21")
    yield case("records, after some pours", on="2026-06-20", rooms=[AIR, "crew labor"])
    yield case("records, on the last pour", on="2026-06-25")
    yield case("records, long after", on="2026-12-01")
    yield case("records, far bank", on="2026-05-21", book=home / "price-books" / "far-bank.yaml", rooms=[AIR, "delivery"])
    yield case("records, what if", on="2026-05-21", what_ifs=WHAT_IFS[-2])
    # The day of the pour counts from the day of issue, whatever the takeoff says.
    later = [(job, "2026-05-18", None, None) for job, *_ in ISSUED]
    newer = begins(plain=("2026-06-20", "181.15"), air=("2026-06-20", "184.15"))
    case, home, _ = on_record(flatwork, room, "later", later, newer)
    yield case("records, issued later", on="2026-05-19")
    # Only the second pour is left; the other book counts no strip, and its price changed between the pours.
    options = (home / "demo-quotes" / "stone-terrace.yaml").read_text().partition("options:")[2]
    beside = "    beside: terrace, south edge, 0 ft from west end\n"
    option = "\n  - The landing by itself: {says: Nothing else, drop: [terrace]}\n"
    only = {"stone-terrace": [(options, option), (beside, "")]}
    signed = [("stone-terrace", "2026-05-04", "2026-05-06", ["The landing by itself"])]
    no_strip = [
        ("  isolation strip: isolation strip\n", "  isolation strip: none\n"),
        ("prices: {2026-03-01: 0.95}", "prices: {2026-03-01: 0.95, 2026-06-24: 1.45}"),
    ]
    case, *_ = on_record(flatwork, room, "one pour left", signed, no_strip, takeoffs=only)
    yield case("records, one pour left", on="2026-05-07")
    # A revision counts from its own day by the book of that day; what was withdrawn or declined is over.
    issued = [(job, "2026-05-04", None, None) for job in ("front-walk", "sidewalk-panels", "garden-patio", "workshop-slab")]
    case, home, quotes = on_record(flatwork, room, "revised", issued, BEFORE)
    folder, kept = home / "demo-quotes", room / "as it was revised"
    shutil.copytree(home, kept)
    run([flatwork, "quote", str(folder / "front-walk.yaml"), "--issue", "--revise", "2026-0001", "--on", "2026-05-15"])
    run([flatwork, "withdraw", "2026-0002", "--because", "no time", "--on", "2026-05-15", "--in", str(folder)])
    run([flatwork, "decline", "2026-0003", "--because", "too dear", "--on", "2026-05-15", "--in", str(folder)])
    compound = ("prices: {2026-03-01: 29.50}", "prices: {2026-03-01: 29.50, 2026-05-16: 31.20}")
    edited(home / "price-books" / "river-road.yaml", [compound])
    quotes[:3] = [("2026-0001", kept / "demo-quotes" / "front-walk.yaml", "2026-05-15", None)]
    yield case("records, one revised", on="2026-05-17")


def all_cases(flatwork, room):
    yield from on_takeoffs(flatwork, room)
    yield from on_records(flatwork, room)
