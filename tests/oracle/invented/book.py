"""A supplier world by chance, with every way of selling that the book knows."""

FIRST, LATER = "2026-01-01", "2026-07-01"


def item(c, unit, kind, low, high, step=0.3, steps=("1", "1/2", "5"), least=0.15):
    prices = {FIRST: c.decimal(low, high)}
    if c.often(0.3, "price that changes"):
        prices[LATER] = c.decimal(low, high)
    made = {"unit": unit, "class": kind, "prices": prices}
    if c.often(step, "sold in steps"):
        made["sold in"] = c.one(*steps)
    if c.often(least, "smallest sale"):
        made["at least"] = f"{c.whole(2, 12)} {unit}"
    elif c.often(0.1, "smallest charge"):
        made["at least"] = f"${c.decimal(2000, 30000)}"
    if kind in ("equipment", "fee", "disposal") and c.often(0.15, "taxed though no material"):
        made["taxed"] = "yes"
    if c.often(0.05, "group of the owner's own"):
        made["group"] = c.one("Ground work", "The plant", "the plant", "Fees")
    return made


def fee(c, *units):
    return item(c, c.one(*units), "fee", 500, 9000, step=0, least=0)


def bar(c, feet):
    """By the piece, by the foot or by the pound; the price of a stick of 20 ft is about as many dimes as `feet` says."""
    unit = c.one("piece", "piece", "ft", "lb")
    low = {"piece": 35 * feet, "ft": 2 * feet, "lb": 3 * feet}[unit]
    return item(c, unit, "material", low, 2 * low, 0.2, ("1", "10"), 0.1)


def made(c):
    items = {
        "ready-mix": {"is": "Ready-mix, 4,000 psi", **item(c, "cu yd", "material", 14000, 21000, 0, (), 0)},
        "ready-mix inside": item(c, "cu yd", "material", 13000, 19000, 0, (), 0),
        "stone": item(c, c.one("ton", "cu yd"), "material", 2500, 4500),
        "sand": item(c, "ton", "material", 1500, 2500),
        "bar no. 3": bar(c, 20),
        "bar no. 4": bar(c, 30),
        "mesh": item(c, c.one("sheet", "roll"), "material", 1500, 19000, 0, (), 0),
        "fiber plant": item(c, "cu yd", "material", 700, 1200, 0, (), 0),
        "fiber bag": item(c, "bag", "material", 900, 1500, 0, (), 0),
        "chair": item(c, "piece", "material", 30, 60, 0.5, ("25", "50", "100")),
        "board": item(c, "ft", "material", 50, 110, 0.1),
        "deep board": item(c, "ft", "material", 100, 250, 0.1),
        "stake": item(c, "piece", "material", 20, 60, 0.2, ("10", "25")),
        "strip": item(c, "ft", "material", 50, 120, 0.3, ("50", "10")),
        "compound": item(c, "gal", "material", 2000, 3500, 0.5, ("1", "5")),
        "cover": item(c, "sq ft", "material", 8, 20, 0.2, ("100",)),
        "sheet": item(c, "sq ft", "material", 10, 30, 0.3, ("500", "1000")),
        "powder": item(c, "lb", "material", 100, 300, 0.5, ("30", "10")),
        "retarder": item(c, "gal", "material", 3000, 5000, 0.5, ("1",)),
        "stamps": item(c, "day", "equipment", 8000, 15000, 0, (), 0),
        "roller": item(c, "ft", "equipment", 10, 40, 0, (), 0),
        "color stone": item(c, "lb", "material", 120, 260, 0.5, ("1", "25")),
        "color slate": item(c, "lb", "material", 120, 260, 0.5, ("1", "25")),
        "sealer pail": item(c, "gal", "material", 2500, 4500, 0.5, ("5", "1")),
        "sealer job": {**item(c, "sq ft", "subcontract", 60, 150, 0, (), 0.3), **c.one({}, {"after": "28 days"})},
        "short": fee(c, "cu yd"),
        "delivery": fee(c, "load"),
        "standing": item(c, "min", "fee", 150, 350, 0, (), 0),
        "fuel": fee(c, "load", "cu yd", "trip"),
        "north zone": fee(c, "load", "cu yd", "trip"),
        "Saturday": fee(c, "load", "cu yd", "trip"),
        "winter": fee(c, "load", "cu yd", "trip"),
        "on call": fee(c, "load", "cu yd", "trip"),
        "returned": fee(c, "load", "cu yd", "trip"),
        "pump trip": item(c, "trip", "equipment", 40000, 70000, 0, (), 0),
        "pump hour": item(c, "hour", "equipment", 12000, 19000, 0.6, ("1/4", "1/2", "1"), 0.4),
        "pump on site": item(c, "trip", "equipment", 9000, 15000, 0, (), 0),
        "primer": item(c, "bag", "material", 2000, 4000, 0, (), 0),
        "hose": item(c, "ft", "equipment", 100, 250, 0.3, ("25",)),
        "buggy": item(c, c.one("day", "hour"), "equipment", 3000, 15000, 0.6, ("1/2", "1"), 0.2),
        "breaker": item(c, c.one("day", "hour"), "equipment", 5000, 30000, 0.6, ("1/2", "1"), 0.2),
        "sawing": item(c, c.one("ft", "sq ft"), "subcontract", 200, 500, 0.2, ("10",), 0.3),
        "dump concrete": item(c, c.one("ton", "cu yd", "load"), "disposal", 2000, 17000, 0.2, ("1",)),
        "dump asphalt": item(c, c.one("ton", "cu yd", "load"), "disposal", 2000, 15000, 0.2, ("1",)),
        "dump pavers": item(c, c.one("ton", "cu yd", "load"), "disposal", 2000, 12000, 0.2, ("1",)),
        "dump soil": item(c, c.one("ton", "cu yd", "load"), "disposal", 1500, 18000, 0.2, ("1",)),
        "permit": item(c, "lump", "fee", 5000, 15000, 0, (), 0),
        "topsoil": {**item(c, "cu yd", "material", 3000, 5000), "work": f"{c.decimal(50, 150)} hours per cu yd", "stage": c.one("strip", "form", "return")},
        "edging": {**item(c, "ft", "material", 200, 500), **c.one({}, {"after": c.one("28 days", "60 days")}), "work": f"{c.whole(4, 20)} {c.one('', 'crew ')}hours per 100 ft"},
        "compactor": item(c, "day", "equipment", 6000, 12000, 0, (), 0),
        "trip": item(c, "trip", "fee", 2000, 6000, 0, (), 0),
        "labor": {"unit": "hour", "class": "labor", "prices": {FIRST: c.decimal(4000, 6500)}},
    }
    if c.often(0.3, "wage and burden"):
        items["labor"]["prices"][FIRST] = {"wage": c.decimal(2500, 4000), "burden": f"{c.whole(20, 60)}%"}
    shop = {"format": "1", "book": "A world by chance", "items": items}
    shop["mixes"] = {
        "exterior": {"item": "ready-mix", "strength": "4000 psi", "air": "6%", "cement content": f"{c.whole(480, 620)} lb per cu yd"},
        "inside": {"item": "ready-mix inside", "strength": "3000 psi", "cement content": "517 lb per cu yd"},
    }
    if c.often(0.15, "concrete by the bag"):
        items["sack"] = item(c, "bag", "material", 400, 900, 0, (), 0)
        shop["mixes"]["inside"] |= {"item": "sack", "yield": c.one("0.6 cu ft", "0.45 cu ft")}
    unit = items["stone"]["unit"]
    shop["bases"] = {
        "stone": {"item": "stone", "delivered": f"{c.decimal(110, 220)} {unit} per cu yd"},
        "sand": {"item": "sand", "delivered": "1.6 ton per cu yd"},
    }
    shop["bars"] = {f"no. {n}": {"item": f"bar no. {n}", "stock": c.one("20 ft", "20 ft", "40 ft")} for n in (3, 4)}
    if c.often(0.3, "own lap"):
        shop["bars"]["no. 4"]["lap"] = str(c.whole(24, 48))
    roll = items["mesh"]["unit"] == "roll"
    shop["mesh"] = {"6x6 W1.4/W1.4": {"item": "mesh", "width": "5 ft", "length": "150 ft" if roll else "10 ft", "lap": c.one("6 in", "8 in")}}
    shop["fiber"] = {
        "micro": {"item": "fiber plant", "by": "plant"},
        "bags": {"item": "fiber bag", "by": "us", "dose": "1.5 lb per cu yd", "bag": "1 lb"},
    }
    surfaces(c, shop)
    shop["disposal"] = {
        of: {"item": f"dump {of}", "loose": c.decimal(115, 160), "weight": f"{c.whole(26, 42)}00 lb per cu yd", "load": f"{c.whole(5, 12)} cu yd"}
        for of in ("concrete", "asphalt", "pavers", "soil")
    }
    shop["supply"] = supply(c)
    if c.often(0.6, "pump by the hour"):
        pump = {"item": "pump hour", "rate": f"{c.whole(12, 30)} cu yd per hour"}
        extra = {"set up": "1 hour", "travel time": "3/4 hour", "base charge": "pump on site", "travel": "pump trip"}
        extra |= {"prime": "primer", "washout": "primer", "hose": {"included": f"{c.whole(40, 100)} ft", "item": "hose"}}
        shop["pump"] = pump | {key: one for key, one in extra.items() if c.often(0.6)}
    if c.often(0.7):
        shop["buggy"] = {"item": "buggy", "width": "34 in"}
    use(c, shop)
    shop["rates"] = rates(c)
    return shop


def surfaces(c, shop):
    shop["finishes"] = {
        "stamped slate": {
            "says": "stamped like split slate",
            "hours": f"{c.decimal(500, 900)} hours per 100 sq ft",
            "items": [{"powder": f"{c.whole(2, 4)} lb per 100 sq ft"}, {"roller": "1 ft per ft"}, {"stamps": "1 day per pour"}],
            "trips": c.one("0", "1", "2"),
            "color": "sandstone",
            "seal": "wet look",
            "curing": "cover",
        },
        "washed pebbles": {"items": [{"retarder": f"{c.whole(15, 25)}0 sq ft per gal"}], "trips": c.one("0", "1")},
    }
    shop["colors"] = {
        "sandstone": {"item": "color stone", "dose": f"{c.whole(2, 5)}% of cement"},
        "slate": {"item": "color slate", "dose": f"{c.whole(4, 9)} lb per cu yd"},
    }
    shop["sealers"] = {
        "wet look": {"item": "sealer pail", "coverage": "250 sq ft per gal, 2 coats", "hours": "1.5 hours per 100 sq ft"},
        "dull": {"item": c.one("sealer job", "sealer pail"), "after": c.one("28 days", "35 days"), "trips": c.one("1", "2")},
    }
    if shop["sealers"]["dull"]["item"] == "sealer pail":
        shop["sealers"]["dull"] |= {"coverage": f"{c.whole(150, 300)} sq ft per gal", "hours": "0.7 hours per 100 sq ft"}


def supply(c):
    made = {
        "sold in": c.one("1/4 cu yd", "1/4 cu yd", "1/2 cu yd", "1 cu yd"),
        "smallest order": c.one("0 cu yd", "1 cu yd", "1 1/2 cu yd"),
        "truck": c.one("9 cu yd", "10 cu yd", "4 cu yd", "2 1/2 cu yd"),
    }
    if c.often(0.85, "short load"):
        counted, charge = c.one("by truck", "by order", "on the last truck"), c.one("each yard", "flat")
        c.features |= {f"short load {counted}", f"short load {charge}"}
        made["short load"] = {"under": f"{c.whole(2, 6)} cu yd", "counted": counted, "charge": charge}
    if c.often(0.8):
        per = c.one("cu yd", "load")
        c.features.add(f"free time per {per}")
        made["free time"] = f"{c.whole(3, 8) if per == 'cu yd' else c.whole(15, 45)} min per {per}"
    if c.often(0.6):
        made["pump prime"] = c.one("1/4 cu yd", "1/2 cu yd")
    if c.often(0.2, "held yards on their own truck"):
        made["called yards"] = "on their own truck"
    if c.often(0.4, "evened loads"):
        made["loads"] = "evened"
    if c.often(0.5, "fees"):
        made["fees"] = ["fuel"]
    made["zones"] = {"north": "north zone"}
    if c.often(0.6):
        made["saturday"] = "Saturday"
    if c.often(0.6):
        made["winter"] = {"item": "winter", "during": c.one("11-01 to 03-31", "06-01 to 06-20")}
    if c.often(0.6):
        made["on call"] = "on call"
    if c.often(0.3, "returned"):
        made["returned"] = {"item": "returned", "over": c.one("0 cu yd", "1/4 cu yd", "1 cu yd")}
    return made


def use(c, shop):
    short = shop["supply"].get("short load", {}).get("charge")
    shop["items"]["short"]["unit"] = "load" if short == "flat" else "cu yd"
    # Dearer than the yards that would fill it up.
    if short == "flat" and c.often(0.4, "dear short load"):
        shop["items"]["short"]["prices"] = {FIRST: c.decimal(15000, 40000)}
    maybe = lambda key, part=0.85: key if c.often(part) else "none"
    shop["use"] = {
        "forms": "board",
        "stakes": maybe("stake"),
        "isolation strip": maybe("strip"),
        "curing compound": maybe("compound"),
        "curing cover": maybe("cover"),
        **({"blankets": maybe("cover")} if c.often(0.6, "blankets") else {}),
        "chairs": maybe("chair"),
        "short load": maybe("short"),
        "delivery": maybe("delivery"),
        "standing time": maybe("standing"),
        "vapor retarder": maybe("sheet"),
        "pump": maybe("pump trip"),
        "breaking machine": maybe("breaker"),
        "labor": "labor",
        "trip": maybe("trip", 0.4),
    }
    if c.often(0.6, "item for deep forms"):
        shop["use"]["deep forms"] = "deep board"
    shop["sawn by others"] = c.often(0.5)
    if shop["sawn by others"]:
        shop["use"]["saw cutting"] = "sawing"


def rates(c):
    per_area, per_foot, per_yard = "per 100 sq ft", "per 100 ft", "per cu yd"
    hours = lambda low, high, per: f"{c.decimal(low, high)} {c.one('hours', 'hours', 'hours', 'crew hours')} {per}"
    made = {}
    for task in ("concrete", "reinforced concrete", "with machine", "reinforced with machine", "asphalt", "asphalt with machine"):
        made[f"break out {task}"] = hours(100, 700, per_area)
    made |= {"take up pavers": hours(200, 500, per_area), "dig": hours(80, 150, per_yard)}
    made |= {"dig with machine": hours(20, 50, per_yard), "base": hours(80, 150, per_yard)}
    made |= {"form straight": hours(500, 900, per_foot), "form curved": hours(1000, 1800, per_foot)}
    if c.often(0.6, "rate for deep forms"):
        made["form deep"] = hours(900, 1600, per_foot)
    made |= {"vapor retarder": hours(20, 60, per_area), "bars": hours(60, 140, per_foot), "mesh": hours(40, 90, per_area)}
    for way in ("chute", "wheelbarrow", "buggy", "pump"):
        made[f"place by {way}"] = hours(40, 160, per_yard)
        made[f"unload by {way}"] = f"{c.whole(3, 12)} min {per_yard}"
    made |= {"finish broom": hours(180, 300, per_area), "finish trowel": hours(280, 400, per_area)}
    made |= {"finish washed pebbles": hours(600, 1000, per_area), "step": f"{c.whole(3, 6)} hours per piece"}
    made |= {"mix bags": hours(4, 10, "per bag"), "saw cut": hours(300, 900, per_area), "cure, strip and clean": hours(80, 200, per_area)}
    return made
