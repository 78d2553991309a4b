"""Boxes, openings, dowels, other shapes, answers about the site, and options that change a job by chance."""

from .chance import said
from .takeoff import KINDS, OPPOSITE

ITEMS = {
    "cover": ("piece", "material", 2500, 6000),
    "deep box": ("piece", "material", 8000, 16000),
    "lid": ("piece", "material", 5000, 9900),
    "board lid": ("piece", "material", 400, 900),
    "ring": ("piece", "material", 2000, 4000),
    "film": ("roll", "material", 1500, 2500),
    "bag": ("piece", "fee", 4000, 7000),
    "boards": ("ft", "equipment", 60, 200),
    "dowel": ("piece", "material", 300, 700),
    "cap": ("piece", "material", 40, 90),
    "tie": ("piece", "material", 100, 300),
    "glue": ("piece", "material", 1800, 3500),
}


def stock(c, shop, item):
    """What the book needs for all of it."""
    for key, (unit, kind, low, high) in ITEMS.items():
        shop["items"][key if key != "cover" else "box cover"] = item(c, unit, kind, low, high, 0.1, ("1", "2"), 0)
    shop["boxes"] = {
        "cleanout": {"item": "box cover", "opening": c.one("8 in round", "10 in round"), "hours": "1/2 hour"},
        "valve box": {"item": "deep box", "opening": c.one("12 in x 18 in", "18 in x 18 in"), "lid": "lid", "temporary lid": "board lid", "ring": "ring"},
    }
    shop["site"] = {
        "walls to cover": {"item": "film", "each": "1 roll per 100 ft", "hours": f"{c.whole(1, 3)} hours per 100 ft"},
        "lawn crossed": {"item": "boards", "hours": "1.5 hours per 100 ft"},
        "washout": {"item": "bag", "hours": "1/2 hour per job"},
        "backfill": {"hours": f"{c.decimal(50, 150)} hours per 100 ft"},
    }
    shop["dowels"] = {
        "smooth": {"item": "dowel", "bar": c.one("1/2 in smooth", "5/8 in smooth"), "cap": "cap"},
        "tie": {"item": "tie", "bar": "no. 4", "length": "12 in", "depth": "6 in", "hole": "5/8 in", "adhesive": "glue"},
    }
    if c.often(0.3):
        shop["dowels"]["tie"] |= {"cartridge": "650 ml", "loss": f"{c.whole(5, 25)}%"}
    shop["rates"] |= {"drill holes": f"{c.decimal(10, 30)} hours per piece", "set box": "3/4 hour per piece"}
    shop["rates"] |= {"adjust box": "1 hour per piece", "set lid": "1/4 hour per piece", "come back": "1/2 hour per trip"}


def plain(slab):
    """Whether a slab is a rectangle with enough room, and its two sides in quarters of an inch."""
    own = {"size": slab} if isinstance(slab, str) else slab
    size = own.get("size", "")
    if size.count(" x ") != 1 or "steps" in own or "on" in own:
        return None
    sides = [quarters(part) for part in size.split(" x ")]
    return own if min(sides) >= 7 * 48 else None


def quarters(length):
    total = number = 0
    for word in length.split():
        if word in ("ft", "in"):
            total += number * (48 if word == "ft" else 4)
            number = 0
        elif "/" in word:
            top, bottom = word.split("/")
            number += int(top) / int(bottom)
        else:
            number += int(word)
    return int(total)


def into(c, job, name, own):
    """One or two things set in a slab or left open in it, in places that do not meet."""
    if c.often(0.35, "boxes"):
        own["boxes"] = []
        kind = c.one("cleanout", "valve box")
        box = {"box": kind, "at": "2 ft from west and 2 ft from south"}
        if c.often(0.4, "strip around a box"):
            box["isolated"] = "yes"
        if kind == "valve box" and c.often(0.5, "lid not at once"):
            box["lid"] = c.one("on order", "theirs")
        own["boxes"].append({"new box": box})
        if c.often(0.3, "box adjusted"):
            way = c.one("raise 2 in", "lower 1 in")
            own["boxes"].append({"old box": {"box": "valve box", "at": "2 ft from west and 2 ft from north", "adjust": way}})
    if "thickened" not in own and c.often(0.3, "left open"):
        size = c.one("2 ft x 18 in", "1 ft x 1 ft", "circle 2 ft", "circle 18 in", "18 in x 2 ft 1/2 in")
        at = f"{said(c.whole(100, 160))} from east and {said(c.whole(100, 150))} from {c.one('north', 'south')}"
        well = {"size": size, "at": at}
        if c.often(0.3):
            well["edge"] = c.one("existing concrete", "isolated", "house")
        own["cut out"] = [{"tree well": well}]
        own.setdefault("thickened", "none")
    edges = own.get("edges", {})
    old = [edge for edge, kind in edges.items() if kind == "existing concrete"]
    if old and c.often(0.6, "dowels or ties"):
        pin = c.one("doweled", "doweled", "tied")
        edges[old[0]] = f"{pin} existing concrete"
        if c.often(0.5):
            key, kind = ("dowels", "smooth") if pin == "doweled" else ("ties", "tie")
            own[key] = f"{kind} at {c.one('18 in', '2 ft', '4 ft')}"


def shaped(c):
    """A slab of another shape that stands by itself."""
    wide, deep = (said(c.whole(6 * 48, 20 * 48)) for _ in "ab")
    corner, side = c.one("southwest", "northeast", "southeast", "northwest"), c.one("north", "east", "south", "west")
    small, large = c.whole(2, 4), c.whole(7, 16)
    first, second = c.whole(6, 12), c.whole(13, 16)
    tapes = [f"{n} ft" for n in (first, second, c.whole(second + 1, first + second - 2))]
    c.dice.shuffle(tapes)
    size = c.one(
        f"triangle {' x '.join(tapes)}",
        f"triangle {wide} x {deep}, square at {corner}",
        f"trapezoid {said(c.whole(12, 20) * 48)} and {said(c.whole(6, 11) * 48)}, {deep} apart{c.one('', ', square at west', ', square at east')}",
        f"half circle {said(c.whole(8, 18) * 48)}, flat at {side}",
        f"quarter circle {large} ft radius, square at {corner}",
        f"ring {2 * large} ft outside, {small} ft inside",
        f"ring sector {large + small} ft outside radius, {large} ft inside radius, {c.whole(30, 150)} degrees, toward {side}",
        f"sector {large} ft radius, {c.whole(30, 150)} degrees, toward {c.one(side, corner)}",
    )
    shape = "ring sector" if "ring sector" in size else size.split(" ")[0]
    c.features.add(f"shape {shape}")
    own = {"size": size, "kind": "patio", "thickened": "none", "bars": c.one("no. 3 at 18 in", "none")}
    if c.often(0.3, "one end of another shape thicker"):
        own |= {"thickness": f"{c.one('4 in', '5 in')} to {c.one('7 1/2 in', '9 in')} {c.one(*OPPOSITE)}"}
    elif c.often(0.3, "level base below another shape"):
        own |= {"fall": f"{c.one('1/4 in', '3/8 in')} per ft {c.one(*OPPOSITE)}", "level base": "yes"}
        own["thickness"] = c.one("4 in", "5 in")
    tapes = [*tapes, "side 1", "side 2"] if " x " in size and "square" not in size else []
    names = {
        "triangle": tapes or ["base", "height", "long side", opposite(corner)],
        "trapezoid": ["north side", "south", "side 3", "east end", "west end"],
        "half": ["arc", "flat side", side],
        "quarter": ["arc", *(way for way in OPPOSITE if way in corner)],
        "ring": ["inner arc", "outer arc"],
        "ring sector": ["inner arc", "outer arc", "side 1", "side 3"],
        "sector": ["arc", "side 1", "side 3"],
    }[shape]
    edges = {c.one(*names): c.one(*KINDS)} if c.often(0.6, "edge by name") else {}
    if c.often(0.2, "edge all round"):
        edges["all"] = c.one(*KINDS)
    return own | ({"edges": edges} if edges else {})


def strip(c):
    """A path along a line: sharp or round bends, or a bow, with something along its edges."""
    if c.often(0.25, "narrow strip"):
        size = c.one("{} x {}", "{1} x {0}").format(said(c.whole(6 * 48, 30 * 48)), f"{c.whole(3, 11)} in")
        return {"size": size, "kind": "patio", "thickened": "none", "bars": "none"}
    c.features.add("path")
    turns = ["north", "northeast", "east", "southeast", "south", "southwest", "west", "northwest"]
    at, legs, width = c.whole(0, 7), [], c.whole(24, 60)
    if c.often(0.2, "path of bows"):
        long, rise = c.whole(10, 18), c.whole(8, 24)
        way = c.one(*turns)
        legs = [f"{way} {long} ft, bulge {side} {rise} in" for side in c.one(["left"], ["right"], ["right", "left"])]
    else:
        many = c.whole(1, 4)
        for n in range(many):
            words = f"{turns[at]} {said(c.whole(9 * 48, 15 * 48))}"
            if n + 1 < many and c.often(0.5, "path with round bends"):
                words += f", bend {said(c.whole(width * 2, 4 * 48 + 24))} radius"
            legs.append(words)
            # To the left and to the right in turn, so that it never comes back.
            at = (at + c.one(1, 2) * (1 if n % 2 else -1)) % 8
    own = {"path": legs, "width": said(width * 4), "kind": "patio", "thickened": "none"}
    own["bars"] = c.one("no. 3 at 18 in", "none")
    edges = {c.one("left", "right", "start", "end"): c.one(*KINDS)} if c.often(0.6, "edge of a path") else {}
    if c.often(0.2):
        edges["all"] = c.one(*KINDS)
    return own | ({"edges": edges} if edges else {})


def opposite(corner):
    north, east = (OPPOSITE[way] for way in OPPOSITE if way in corner)
    return f"{north}{east}" if north in ("north", "south") else f"{east}{north}"


def answers(c):
    given = {
        "walls to cover": f"{c.whole(10, 150)} ft",
        "lawn crossed": f"{c.whole(10, 120)} ft",
        "washout": c.one("hauled", "on site"),
        "backfill": c.one("ours", "theirs"),
        "truck over": "driveway",
        "cars near": "yes",
    }
    return {key: one for key, one in given.items() if c.often(0.4)}


def choices(c, job):
    """Options that change a slab or leave something out, beside those that add."""
    names = [name for name, own in job["slabs"].items() if not isinstance(own, dict) or "on" not in own]
    found, name = [], c.one(*names)
    if c.often(0.5, "option that changes"):
        own = job["slabs"][name]
        keys = {"thickness": c.one("5 in", "6 in")} if "stoop" not in own else {}
        keys |= {"finish": c.one("broom", "trowel")}
        found.append({"Otherwise made": {"change": {name: keys}}})
    elif c.often(0.4, "one must be chosen"):
        way = {"change": {name: {"finish": "trowel", "seal": "none"}}}
        found.append({"choose one": "Which top", "must choose": "yes", "from": [{"As it is": {"says": "As in this quote"}}, {"Smooth": way}]})
    placed = [own for own in job["slabs"].values() if isinstance(own, dict)]
    based = {own[key].split(",")[0] for own in placed for key in ("on", "beside") if key in own}
    free = [other for other in names if other not in based and other != name]
    if len(names) > 1 and free and c.often(0.5, "option that leaves out"):
        found.append({"Not this one": {"drop": [c.one(*free)]}})
    elif "remove" in job and c.often(0.4, "option that leaves out"):
        found.append({"Nothing removed": {"drop": [next(iter(one)) for one in job["remove"]]}})
    return found


def put(c, job):
    """Into a job that is made: about half of all stay as they are."""
    for name, slab in job["slabs"].items():
        own = plain(slab)
        if own and c.often(0.4):
            into(c, job, name, own)
            job["slabs"][name] = own
    if isinstance(job.get("pour"), (str, type(None))) and c.often(0.22, "another shape"):
        job["slabs"]["odd one"] = shaped(c) if c.often(0.6) else strip(c)
    site = answers(c) if c.often(0.3, "answers about the site") else {}
    if site:
        job["site"] = site
    if c.often(0.3):
        more = choices(c, job)
        if more:
            job["options"] = [*job.get("options", []), *more]
