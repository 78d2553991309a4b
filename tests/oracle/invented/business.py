"""How a firm prices, by chance."""


def made(c, shop):
    if shop.pop("sawn by others"):
        del shop["rates"]["saw cut"]
    firm = {"name": "Larkspur Flatwork", "phone": "555-0142", "email": "office@example.com", "address": "4 Kiln Yard, Quillhaven"}
    business = {"format": "1", "firm": firm, "books": ["book.yaml"], "price": price(c), "crew": crew(c)}
    order = {"allowance": f"{c.whole(3, 10)}%"}
    some = {"thickness allowance": c.one("1/4 in", "1/8 in", "1 in"), "smallest allowance": c.one("1/4 cu yd", "1/2 cu yd")}
    some |= {"cover": c.one("2 in", "3 in", "2 in", "3 in", "0 in"), "stake spacing": c.one("3 ft", "4 ft", "2 ft 6 in")}
    some |= {"chair area": f"{c.whole(6, 20)} sq ft", "compound coverage": f"{c.whole(150, 250)} sq ft"}
    some |= {"deep form over": c.one("6 in", "10 in", "5 1/2 in"), "retarder width": c.one("12 ft", "20 ft")}
    some |= {"retarder lap": c.one("8 in", "1 ft")}
    # Each way of every order is priced in full, so not too often.
    if c.often(0.1, "bought the cheapest way"):
        order["buy"] = "cheapest"
    for key, values in (("base past forms", ("6 in", "4 in", "1 ft")), ("dig past forms", ("12 in", "2 ft")), ("base under edges", ("yes",))):
        if c.often(0.3, key):
            order[key] = c.one(*values)
    business["order"] = order | {key: one for key, one in some.items() if c.often(0.5)}
    business["quote"] = {"good for": "30 days", "lead time": f"{c.whole(5, 45)} days", "deposit cap": "90%"}
    if c.often(0.6, "temperatures of its own"):
        business["cure"] = season(c)
    business["payments"] = payments(c)
    if c.often(0.4, "payments of a short job"):
        business["payments of a short job"] = payments(c)
    business["kinds"] = kinds(c)
    return business


def season(c):
    """Months whose nights are told, a winter of its own, another limit."""
    months = ("may", "june", "november", "december")
    air = lambda: f"{c.whole(10, 50)} to {c.whole(51, 70)} F"
    made = {"normals": {month: air() for month in months if c.often(0.5)}}
    some = {"winter": air(), "cold below": str(c.whole(30, 50)), "cool": "41"}
    return made | {key: one for key, one in some.items() if c.often(0.3)}


def price(c):
    made = {"overhead": f"{c.whole(5, 20)}%", "profit": f"{c.one('markup', 'margin')} {c.decimal(1000, 3000)}%"}
    c.features.add("profit by " + made["profit"].split()[0])
    if c.often(0.5, "contingency"):
        made["contingency"] = f"{c.whole(1, 5)}%"
    if c.often(0.3, "minimum job"):
        made["minimum job"] = f"{c.whole(1500, 9000)}.00"
    made["round up to"] = c.one("0.01", "1.00", "10.00", "25.00")
    taxes = []
    for _ in range(c.one(0, 1, 1, 1, 2, 3)):
        on = c.one("sale", "materials", "purchases", "none", "receipts")
        c.features.add(f"tax on {on}")
        taxes.append({"on": on, "rate": f"{c.decimal(100, 900)}%", "name": f"{c.one('town', 'state', 'road')} tax {len(taxes) + 1}"})
    if taxes:
        made["tax"] = taxes if len(taxes) > 1 or c.often(0.3) else taxes[0]
    return made


def crew(c):
    made = {"people": str(c.whole(2, 4)), "hours in a day": c.one("8", "8", "9", "10")}
    if c.often(0.8, "travel"):
        made["travel"] = c.one("1/2 hour", "3/4 hour", "1 hour")
    if c.often(0.3, "set up and clean up"):
        made["set up and clean up"] = c.one("1/4 hour", "1/2 hour")
    made["round days up to"] = c.one("1/2", "1/4", "1", "0")
    if c.often(0.35, "days in one sum"):
        made["count days"] = "by the job"
    elif c.often(0.2):
        made["count days"] = "by stage"
    if c.often(0.4, "nights before pours"):
        made["night before a pour"] = c.one("always", "never", "with a permit")
    if c.often(0.3, "lids when we strip"):
        made["set lids"] = "when we strip"
    if c.often(0.2, "who comes back"):
        made["people on a visit"] = str(c.whole(1, int(made["people"])))
    if c.often(0.3, "days off"):
        made |= {"works": c.one("Monday to Saturday", "Tuesday to Thursday and Saturday"), "holidays": c.one("off", "worked")}
        made["days off"] = "2026-07-03, 2026-12-24 to 2027-01-01"
    if c.often(0.3, "charged by the hour"):
        made["charge"] = "hours"
    if c.often(0.3, "labor by task"):
        made["labor lines"] = "by task"
    if c.often(0.3, "difficulty of the crew"):
        made["difficulty"] = f"{c.whole(90, 130)}%"
    return made


def payments(c):
    return c.one(
        [{"When you sign": "10%"}, {"When forms are ready": "45%"}, {"At the end": "rest"}],
        [{"When you sign": "1/3"}, {"Half way": "1/3"}, {"At the end": "rest"}],
        [{"When you sign": "250.00"}, {"At the end": "rest"}],
        [{"When you sign": "33%"}, {"Half way": "33%"}, {"At the end": "34%"}],
        [{"At the end": "100%"}],
    )


def kinds(c):
    stone = lambda: f"{c.whole(3, 8)} in of {c.one('stone', 'stone', 'sand')}"
    made = {
        "patio": {"thickness": "4 in", "mix": "exterior", "base": stone(), "bars": "no. 3 at 18 in", "finish": "broom", "joints": "10 ft"},
        "walk": {"thickness": "4 in", "mix": "exterior", "base": stone(), "finish": "broom", "joints": "5 ft"},
        "driveway": {"thickness": "5 in", "mix": "exterior", "base": stone(), "bars": "no. 4 at 18 in", "joints": "10 ft"},
        "slab": {"thickness": "4 in", "mix": "inside", "mesh": "6x6 W1.4/W1.4", "finish": "trowel", "joints": "8 ft", "vapor retarder": "yes"},
        "step": {"thickness": "7 in", "mix": "exterior", "finish": "broom"},
    }
    if c.often(0.2, "usual for a kind: thickened"):
        made["slab"]["thickened"] = "all open, 10 in wide, 12 in deep"
    if c.often(0.2, "usual for a kind: thick end"):
        made["driveway"]["thickness"] = "5 in to 6 in"
    if c.often(0.2, "usual for a kind: seal"):
        made["patio"]["seal"] = "dull"
    return made
