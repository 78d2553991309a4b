"""The crew's own ways by chance: how much longer a long way takes, trips as they are planned."""


def plan(c, job):
    """How often the crew comes to work, for the job and for an option."""
    if c.often(0.25, "trips planned"):
        job["trips"] = c.one("{}", "{} trips").format(c.whole(2, 6))
    for entry in job.get("options", []):
        if "choose one" not in entry and c.often(0.3, "trips planned for an option"):
            next(iter(entry.values()))["trips"] = str(c.whole(1, 6))


def units(c, shop):
    """Work rated by the minute, and work that is rated by some only, now and then."""
    if c.often(0.3, "covers are laid"):
        shop["rates"]["cover slabs"] = f"{c.decimal(30, 120)} hours per 100 sq ft"
    if c.often(0.4, "covers are lifted"):
        shop["rates"]["lift covers"] = c.one("{} hours per 100 sq ft", "{} hours per trip").format(c.decimal(30, 120))
    if c.often(0.4, "kept wet"):
        shop["rates"]["keep wet"] = c.one("{} hours per 100 sq ft", "{} crew hours per trip").format(c.decimal(30, 120))
    for task in ("place by chute", "bars", "finish broom", "drill holes"):
        if c.often(0.1, "rate in minutes"):
            per = shop["rates"][task].split(" per ")[1] if task in shop["rates"] else "piece"
            shop["rates"][task] = f"{c.whole(3, 40)} min per {per}"


def ways(c, shop, job):
    """Rates by distance of the owner's own, and ways that are long enough to count."""
    for method, (each, past) in {"chute": (10, 20), "wheelbarrow": (50, 40), "buggy": (100, 80), "pump": (100, 120)}.items():
        if c.often(0.3, "way of the book"):
            shop.setdefault("way", {})[method] = f"{c.whole(0, 30)}% per {each} ft past {past} ft"
    if isinstance(job["access"], dict) and c.often(0.3, "a long way"):
        job["access"]["distance"] = f"{c.whole(100, 400)} ft"
