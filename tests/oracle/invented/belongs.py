"""Steel where it belongs, by chance: across corners, around them, on chairs of several heights, cut at joints."""


def usual(c, firm):
    """What the firm does as a rule."""
    some = {"stake spacing on curves": c.one("18 in", "1 ft", "3 ft"), "bent corner bars": c.one("no", "yes")}
    some["corner bars"] = c.one("none", "1 bar, 3 ft long", "2 no. 4, 4 ft long", "3 bars, 5 ft long")
    firm["order"] |= {key: one for key, one in some.items() if c.often(0.5)}


def chairs(c, shop, item):
    if not c.often(0.4, "chairs by their height"):
        return
    items = shop["items"]
    items["chair"]["height"] = c.one("2 in", "1 3/4 in")
    items["tall chair"] = {**item(c, "piece", "material", 40, 80, 0.5, ("25", "50")), "height": c.one("3 in", "2 1/2 in")}
    items["high chair"] = {**item(c, "piece", "material", 60, 90), "height": "5 1/2 in"}


CORNERS = ("northwest", "northeast", "southeast", "southwest")


def levels(c, own):
    """Shot at the corners of a rectangle: two of them lower, so that it falls one way."""
    side = c.one("north", "east", "south", "west")
    own.pop("fall", None)
    own["levels"] = {corner: "8 in down" if side in corner else "0" for corner in CORNERS[: c.one(3, 4)]}
    own["meets"] = {"door sill": c.one("4 in above", "1 in above"), "old walk": c.one("flush", "2 in below, ramp")}


def slabs(c, job):
    for own in job["slabs"].values():
        square = isinstance(own, dict) and own.get("size", "").count(" x ") == 1 and " ft" in own["size"] and "ring" not in own["size"]
        if square and own["size"][0].isdigit() and "on" not in own and c.often(0.25, "levels of corners"):
            levels(c, own)
    for own in job["slabs"].values():
        if isinstance(own, dict) and isinstance(own.get("steps"), dict) and c.often(0.4, "steps with a stepped bottom"):
            own["steps"]["bottom"] = c.one("level", f"{c.whole(10, 16)} in thick", "1 ft 2 in thick")
    for own in job["slabs"].values():
        if isinstance(own, dict) and "on" not in own and c.often(0.12, "own corner bars"):
            own["corner bars"] = c.one("none", "2 no. 3, 3 ft long", "1 no. 4, 6 ft long")
    if isinstance(job.get("pour"), (str, type(None))) and c.often(0.15, "steel cut at joints"):
        own = {"kind": "patio", "size": c.one("20 ft x 20 ft", "30 ft x 20 ft", "20 ft x 40 ft"), "joints": "10 ft"}
        own["steel at joints"] = c.one("cut", "cut", "every other", "through")
        job["slabs"]["jointed pad"] = own | {"bars": c.one("no. 3 at 18 in", "no. 4 at 2 ft")}
