"""Rules of an owner's own by chance; what they buy comes with them into the book."""

from .book import item


OTHERWISE = {"base": "per 100 sq ft", "bars": "per 100 sq ft", "dig": "per 100 sq ft", "take up pavers": "per cu yd"}
OTHERWISE |= {f"place by {way}": "per 100 sq ft" for way in ("chute", "wheelbarrow", "buggy", "pump")}
OTHERWISE |= {f"break out {what}": "per cu yd" for what in ("concrete", "with machine", "asphalt")}


def rates(c, shop):
    """Rates by another unit of the same work, now and then."""
    for task, per in OTHERWISE.items():
        if c.often(0.15, "rate by another unit"):
            if per == "per cu yd" and c.often(0.5, "rate by weight"):
                per = "per ton"
            shop["rates"][task] = f"{c.decimal(50, 400)} {c.one('hours', 'crew hours')} {per}"
    for task in ("form straight", "form curved", "form deep"):
        if task in shop["rates"] and c.often(0.15, "forms rated by their face"):
            shop["rates"][task] = f"{c.decimal(500, 4000)} hours per 100 sq ft"
    for key in ("board", "deep board"):
        if c.often(0.15, "form boards by their face"):
            board = shop["items"][key]
            board["unit"] = "sq ft"
            if "at least" in board:
                board["at least"] = board["at least"].replace(" ft", " sq ft")


def discounts(c, job):
    """What is taken off the price, now and then."""
    if c.often(0.3, "discounts"):
        says = ["Two patios at once", "Your own gravel", "A good neighbor"][: c.whole(1, 3)]
        job["discounts"] = [{one: c.one(f"{c.whole(1, 12)}%", f"{c.whole(1, 12)}.5%", c.decimal(500, 9000))} for one in says]


def waste(c, shop):
    """Waste on some of what is bought, never on ready-mix or on bars, which have rules of their own."""
    for key, one in shop["items"].items():
        own = key.startswith(("ready-mix", "bar no.", "sack"))
        if not own and one["class"] == "material" and c.often(0.08, "waste"):
            one["waste"] = f"{c.whole(2, 15)}%"


def rules(c, shop):
    """Adds `also` to a book, now and then."""
    if not c.often(0.4, "own rules"):
        return
    items, also = shop["items"], {}

    def rule(name, of, **more):
        also[name] = of | more

    def sold(key, unit, kind="equipment"):
        items[key] = item(c, unit, kind, 500, 9000, 0.2, ("1",), 0.1)
        return key

    place = c.one("form", "place", "strip")
    where = [{"kind": "walk"}, {"placed by": "pump"}, {"thicker than": "4 1/2 in"}, {"has": "base"}, {"finish": "broom"}]
    only = {"where": c.one(*where)} if c.often(0.4, "own rule: only for some slabs") else {}
    if c.often(0.4, "own rule: bent boards"):
        rule("bent boards", {"for": "curved form", "buy": sold("bent board", "ft", "material"), "instead of": "forms"}, **only)
    if c.often(0.3, "own rule: forming of its own"):
        hours = f"{c.decimal(500, 2000)} {c.one('hours', 'crew hours')} per 100 ft"
        rule("long forms", {"for": "straight form", "hours": hours, "instead of": "form straight"}, **only)
    if c.often(0.4, "own rule: for so much begun"):
        by, each = c.one(("concrete", "cu yd"), ("straight form", "ft"), ("area", "sq ft"), ("base", "cu yd"))
        more = {"over": f"{c.whole(1, 40)} {each}"} if c.often(0.3, "own rule: only over so much") else {}
        if c.often(0.4, "own rule: so much for so much"):
            rule("begun", {"for": by, "buy": sold("crate", "lb"), "much": f"{c.decimal(50, 900)} lb per {c.whole(2, 90)} {each}"}, **only, **more)
        else:
            rule("begun", {"for": by, "buy": sold("crate", "load"), "each": f"{c.whole(2, 30)} {each}"}, **only, **more)
    if c.often(0.3, "own rule: of what is bought"):
        stone = items["stone"]["unit"]
        rule("stone truck", {"for": "stone", "buy": sold("truck of stone", "load", "fee"), "each": f"{c.whole(3, 12)} {stone}"})
        rule("truck wash", {"for": "stone truck", "buy": sold("wash", "load", "fee")})
    dumped = items["dump concrete"]["unit"]
    if dumped != "load" and c.often(0.3, "own rule: by weight or loose yards"):
        each = f"{c.whole(1, 9)} {dumped} or {c.whole(1, 6)} cu yd" if dumped == "ton" else f"{c.whole(1, 9)} cu yd"
        rule("trailer", {"for": "dump concrete", "buy": sold("trailer load", "load", "disposal"), "each": each})
    once = c.one("job", "pour", "slab", "load", "box")
    if c.often(0.5, f"own rule: once a {once}"):
        hours = {"hours": f"{c.decimal(25, 300)} {c.one('hours', 'crew hours')}"} if c.often(0.6) else {}
        buy = {"buy": sold("kit", c.one("piece", "day"))} if c.often(0.6) or not hours else {}
        if buy and c.often(0.4, "own rule: so many each time"):
            buy["much"] = f"{c.whole(2, 5)}"
        stage = c.one("form", "place", "return") if once in ("job", "pour", "slab") else place
        rule("each time", {"once a": once, "stage": stage, **hours, **buy}, **only)
    if c.often(0.3, "own rule: of trips or days"):
        of = c.one({"once a": "trip"}, {"for": "trips"})
        rule("on the road", of | {"buy": sold("fuel for the truck", "trip", "fee")})
    if c.often(0.3, "own rule: of removal"):
        rule("blade", {"for": "saw cut", "buy": sold("blade wear", "ft"), "hours": f"{c.decimal(10, 90)} hours per 100 ft"})
    if c.often(0.3, "own rule: of the order"):
        hours = f"{c.decimal(5, 30)} hours per cu yd"
        rule("washing out", {"for": "ordered concrete", "hours": hours, "stage": place}, **only)
    if c.often(0.3, "own rule: in place of a purpose"):
        purpose = c.one("forms", "curing compound", "curing cover")
        unit = {"forms": "ft", "curing compound": "gal", "curing cover": "sq ft"}[purpose]
        if purpose != "forms" or "bent boards" not in also:
            rule("another", {"for": purpose, "buy": sold("another", unit, "material"), "instead of": purpose}, **only)
    if also:
        shop["also"] = also
