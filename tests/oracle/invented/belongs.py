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


def slabs(c, job):
    for own in job["slabs"].values():
        if isinstance(own, dict) and "on" not in own and c.often(0.12, "own corner bars"):
            own["corner bars"] = c.one("none", "2 no. 3, 3 ft long", "1 no. 4, 6 ft long")
    if isinstance(job.get("pour"), (str, type(None))) and c.often(0.15, "steel cut at joints"):
        own = {"kind": "patio", "size": c.one("20 ft x 20 ft", "30 ft x 20 ft", "20 ft x 40 ft"), "joints": "10 ft"}
        own["steel at joints"] = c.one("cut", "cut", "every other", "through")
        job["slabs"]["jointed pad"] = own | {"bars": c.one("no. 3 at 18 in", "no. 4 at 2 ft")}
