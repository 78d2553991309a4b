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


def pours(c, shop, firm, job):
    """What a pour day allows, as the firm, the plant and the takeoff see it."""
    kinds = {"setting": "{} hours", "stiff after": "{}0%", "longest day": "{} hours", "people at once": "{}"}
    day = {key: how.format(c.whole(3, 9)) for key, how in kinds.items() if c.often(0.2, key)}
    if c.often(0.2, "between trucks"):
        day["between trucks"] = c.one("45 min", "1 hour", "0 min")
    if c.often(0.2, "a temperature of the firm"):
        day["temperature"] = str(c.whole(40, 100))
    if day:
        firm["pour day"] = day
    if c.often(0.2, "discharge within"):
        shop["supply"] |= {"discharge within": c.one("100 min", "2 hours"), "on the road": f"{c.whole(5, 40)} min"}
    for mix in shop["mixes"].values():
        if c.often(0.15, "a mix that sets otherwise"):
            mix["setting"] = f"{c.whole(6, 20)}0%"
    if c.often(0.2, "people of the job"):
        job["people"] = str(c.whole(2, 7))
    if c.often(0.2, "trucks of the job"):
        job["truck"] = f"{c.one('3', '4', '5 1/2', '12')} cu yd"
    if c.often(0.3, "a temperature of the job"):
        job["temperature"] = str(c.whole(35, 105))
    if isinstance(job.get("pour"), list):
        for one in job["pour"]:
            if c.often(0.3, "a temperature of the pour"):
                one["temperature"] = str(c.whole(35, 105))
