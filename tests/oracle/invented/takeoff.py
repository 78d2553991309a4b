"""A site by chance: slabs and how they touch, what is removed, how concrete comes, what is chosen."""

from .chance import said

OPPOSITE = {"north": "south", "south": "north", "east": "west", "west": "east"}
ACROSS = {"north": ("west", "east"), "south": ("west", "east"), "east": ("north", "south"), "west": ("north", "south")}
KINDS = ("house", "existing concrete", "curb", "isolated")


def feet(quarters):
    return quarters / 48


class Site:
    def __init__(self, c, shop, firm):
        self.c, self.shop, self.firm = c, shop, firm
        self.slabs, self.free = {}, {}  # what is written; open edges of rectangles and their quarters

    def add(self, name, kind, own, sides):
        if kind not in name.split():
            own["kind"] = kind
        self.slabs[name] = own
        self.free[name] = sides

    def size(self, low, high):
        """A length from low to high feet, in quarters of an inch."""
        c = self.c
        return c.one(c.whole(low, high) * 48, c.whole(low * 12, high * 12) * 4, c.whole(low * 48, high * 48))

    def rectangle(self, name, kind, low=3, high=30, more=None):
        c = self.c
        wide, deep = self.size(low, high), self.size(low, high)
        own = {"size": f"{said(wide)} x {said(deep)}"}
        edges = {edge: c.one(*KINDS) for edge in OPPOSITE if c.often(0.18)}
        if more and more not in edges and c.often(0.2):  # said on the slab that is placed
            edges[more] = c.one("bulkhead", "keyed bulkhead", "joined", *KINDS)
        if edges:
            own["edges"] = edges
            self.c.features.update(f"edge at {kind}" for kind in edges.values())
        sides = {edge: wide if edge in ("north", "south") else deep for edge in OPPOSITE if edge not in edges}
        self.add(name, kind, own, sides)
        self.dress(name, kind, min(wide, deep), straight=True, plain=False)

    def ell(self, name, kind):
        """An L, as walked; its notch at the south-east, one leg perhaps swelling or hollow."""
        c = self.c
        c.features.add("walked outline")
        wide, deep = self.size(10, 26), self.size(10, 22)
        notch, rise = self.size(3, 6), self.size(3, 6)
        legs = [("east", wide), ("south", deep - rise), ("west", notch), ("south", rise)]
        legs += [("west", wide - notch), ("north", deep)]
        if c.often(0.5):  # the same, seen in a mirror
            legs = [({"east": "west", "west": "east"}.get(go, go), n) for go, n in legs]
            c.features.add("walked the other way")
        swollen = c.whole(0, 5) if c.often(0.35, "bulge") else None
        words = []
        for n, (go, length) in enumerate(legs):
            leg = f"{go} {said(length)}"
            if n == swollen:
                c.features.add("bulge in" if c.often(0.4) else "bulge out")
                inward = "in " if c.often(0.4) and length > 48 * 6 else ""
                leg += f", bulge {inward}{said(c.whole(8, min(length // 6, 96)))}"
            elif c.often(0.15):
                leg += f", against {c.one(*KINDS[:3])}"
            words.append(leg)
        own = {"outline": words}
        bare = [n + 1 for n, leg in enumerate(words) if "against" not in leg]
        if bare and c.often(0.3, "edge by number"):
            own["edges"] = {f"{c.one('', 'side ')}{c.one(*bare)}": c.one(*KINDS)}
        self.add(name, kind, own, {})
        self.dress(name, kind, min(wide - notch, deep - rise), straight=swollen is None, plain=False)
        if "edges" not in own and c.often(0.3):
            self.down(own, words, [length for _, length in legs])

    def down(self, own, words, lengths):
        """Steps from a side of an outline: by its number, or where it looks if only it has room."""
        c = self.c
        bare = [n for n, leg in enumerate(words) if "," not in leg and lengths[n] >= 4 * 48]
        if not bare:
            return
        n = c.one(*bare)
        way = lambda n: words[n].split(" ")[0]
        alike = [m for m in range(len(words)) if way(m) == way(n) and m != n]
        room, least = lengths[n] // 48, max((lengths[m] // 48 + 1 for m in alike), default=3)
        edge = f"side {n + 1}"
        turns = "north", "east", "south", "west"
        if least <= room and c.often(0.6, "steps from the only edge with room"):
            # The first leg goes east along the north side, or west along it in a mirror.
            turn = -1 if way(0) == "east" else 1
            edge = f"{turns[(turns.index(way(n)) + turn) % 4]} edge"
        else:
            least = 3
        own["thickened"] = "none"
        own["steps"] = f"2 risers of 7 in, 12 in treads, {c.whole(least, room)} ft wide, from {edge}"
        c.features.add("steps from a side of an outline")

    def round(self, name, kind):
        self.c.features.add("circle")
        across = self.size(4, 18)
        self.add(name, kind, {"size": f"circle {said(across)}"}, {})
        self.dress(name, kind, across, straight=False, plain=False)

    def beside(self, name, kind, base):
        """Another rectangle against an open edge of one that stands."""
        c = self.c
        edge = c.one(*self.free[base])
        room = self.free[base].pop(edge)
        self.rectangle(name, kind, 3, 16, more=OPPOSITE[edge])
        own = self.slabs[name]
        mine = self.free[name].pop(OPPOSITE[edge], None)
        shift = c.whole(0, max(0, room // 48 - 1)) * 48
        corner = c.one(*ACROSS[edge])
        own["beside"] = f"{base}, {edge} edge, {said(shift)} from {corner} end"
        if c.often(0.25, "a step-down"):
            own["lower"] = c.one("3 in", "2 1/2 in", "4 in")
        c.features.add("beside")
        if mine is None:  # a strip there, said on the slab that is placed
            c.features.add("strip between two slabs")

    def on(self, name, base):
        """A step at an edge, or a landing: it leaves the slab below as it is."""
        c = self.c
        edge = c.one(*self.free[base])
        room = self.free[base][edge]
        long, deep = c.whole(3, 6) * 48, c.whole(2, 4) * 48
        if room < long + 48:
            return
        wide = (long, deep) if edge in ("north", "south") else (deep, long)
        own = {"size": f"{said(wide[0])} x {said(wide[1])}", "edges": {edge: "house"}}
        shift = c.whole(0, (room - long) // 48) * 48
        own["on"] = f"{base}, {edge} edge, {said(shift)} from {c.one(*ACROSS[edge])} end"
        kind = c.one("step", "step", "patio")
        if kind != "step":
            own |= {"thickness": c.one("7 in", "9 in"), "thickened": "none"}
        c.features.add("step on a slab" if kind == "step" else "landing on a slab")
        self.add(name, kind, own, {})

    def stoop(self, name):
        """A landing with steps that lead down from one of its edges."""
        c = self.c
        wide, deep = self.size(4, 9), self.size(4, 9)
        edge = c.one(*OPPOSITE)
        room = wide if edge in ("north", "south") else deep
        risers = c.whole(1, 4)
        flight = {"risers": str(risers), "rise": c.one("7 in", "6 1/2 in", "7 1/4 in")}
        if risers > 1:
            flight["tread"] = c.one("12 in", "11 in", "14 in")
        if c.often(0.6):
            width = c.whole(3, room // 48) * 48
            flight["width"] = said(width)
            if c.often(0.4, "steps at a place along the edge"):
                flight["at"] = f"{said(c.whole(0, (room - width) // 48) * 48)} from {c.one(*ACROSS[edge])} end"
        if risers > 1 and c.often(0.3, "base under steps"):
            flight["base"] = c.one("4 in of stone", "3 in of sand")
        if risers > 1 and c.often(0.3, "bars in steps"):
            flight["bars"] = c.one("2 no. 4", "1 no. 3")
        own = {"size": f"{said(wide)} x {said(deep)}", "thickened": "none"}
        if c.often(0.5):
            own["edges"] = {OPPOSITE[edge]: "house"}
        if c.often(0.5, "steps in one line"):
            words = [f"{risers} riser{'s' if risers > 1 else ''} of {flight['rise']}"]
            words += [f"{flight['tread']} treads"] if risers > 1 else []
            words += [f"{flight['width']} wide"] if "width" in flight else []
            words += [f"base {flight['base']}"] if "base" in flight else []
            words += [flight["bars"]] if "bars" in flight else []
            own["steps"] = ", ".join([*words, f"from {edge} edge", *([flight["at"]] if "at" in flight else [])])
        else:
            own["steps"] = flight | {"from": edge}
        c.features.add("steps")
        kind = c.one("patio", "walk")
        own["thickness"] = c.one("4 in", "5 in")
        way = c.one("ground", "solid", "filled", "filled with stone")
        if risers > 1 and way != "ground":
            c.features.add(f"stoop {way}")
            own["stoop"] = "solid" if way == "solid" else f"{way}, {c.one('8 in', '6 in')} walls"
            if way == "solid":
                del own["thickness"]
        self.add(name, kind, own, {})
        self.top(own)

    # ---- what is said of one slab

    def dress(self, name, kind, least, straight, plain):
        """Thickness, edges that go deeper, steel, sheet, finish: now and then not the usual."""
        c, own = self.c, self.slabs[name]
        if c.often(0.25, "own thickness"):
            own["thickness"] = c.one("4 in", "4 1/2 in", "5 in", "6 in")
        elif c.often(0.2, "one end thicker"):
            own["thickness"] = f"{c.one('4 in', '5 in')} to {c.one('6 in', '7 1/2 in')}{c.one('', ' north', ' east', ' south')}"
        if c.often(0.12, "level base below a fall"):
            own |= {"fall": f"{c.one('1/4 in', '1/8 in')} per ft {c.one(*OPPOSITE)}", "level base": "yes"}
            own["thickness"] = c.one("4 in", "5 in")
        elif c.often(0.1, "falls of parts"):
            own["fall"] = {"by the house": "1/4 in per ft south", "by the gate": "1/8 in per ft east"}
        if c.often(0.1, "own allowance"):
            own["allowance"] = f"{c.whole(2, 12)}%"
        if least < 48 * 5:
            own["thickened"] = "none"
        elif c.often(0.3, "thickened"):
            self.thicken(own, straight)
        if c.often(0.15):
            own["bars"] = c.one("no. 3 at 12 in", "no. 4 at 16 in", "no. 4 at 2 ft", "none")
            own["mesh"] = "none"
        elif c.often(0.15, "mesh"):
            own |= {"mesh": "6x6 W1.4/W1.4", "bars": "none"}
        if c.often(0.12, "vapor retarder"):
            own["vapor retarder"] = c.one("yes", "yes", "no")
        if c.often(0.1, "inside or not"):
            own |= {"inside": c.one("yes", "no"), "carries": c.one("people", "cars", "trucks")}
        if c.often(0.12):
            own["base"] = c.one("none", "5 in of stone", "2 in of sand")
        if c.often(0.15, "fiber"):
            own["fiber"] = c.one("micro", "bags")
        if c.often(0.2, "own mix"):
            own["mix"] = c.one("exterior", "inside")
        self.top(own)

    def thicken(self, own, straight):
        c = self.c
        edges = c.one("all open", "all", c.one(*OPPOSITE), "north and east", "all open")
        if "outline" in own:
            edges = c.one("all open", "all", "1 and 2", "2", "3 and 4", "5 and 6 and 1")
        elif own["size"].startswith("circle"):
            edges = "all"
        made = {"edges": edges.split(" and "), "width": f"{c.whole(8, 14)} in", "depth": f"{c.whole(9, 18)} in"}
        if len(made["edges"]) == 1:
            made["edges"] = edges
        if c.often(0.4, "thickened with a taper"):
            made["taper"] = f"{c.whole(4, 10)} in"
        if straight and c.often(0.4, "bars along an edge"):
            made["bars"] = f"{c.whole(1, 3)} {c.one('no. 3', 'no. 4')}"
        if c.often(0.2):
            made["kind"] = "turndown"
        if c.often(0.4):
            words = [edges, f"{made['width']} wide", f"{made['depth']} deep"]
            words += [f"taper {made['taper']}"] if "taper" in made else []
            words += [made["bars"]] if "bars" in made else []
            words += ["turndown"] if "kind" in made else []
            made = ", ".join(words)
        own["thickened"] = made

    def top(self, own):
        c = self.c
        if c.often(0.3):
            own["finish"] = c.one("broom", "trowel", "stamped slate", "stamped slate", "washed pebbles")
            c.features.add(f"finish {own['finish']}")
        if "size" in own and not own["size"].startswith("circle") and c.often(0.15, "border"):
            own["border"] = f"{c.one('12 in', '6 in', '8 in')} of {c.one('washed pebbles', 'trowel', 'stamped slate')}"
        if c.often(0.15, "color"):
            own["color"] = c.one("sandstone", "slate", "none")
        if c.often(0.15, "seal"):
            own["seal"] = c.one("wet look", "dull", "none")
        if c.often(0.15, "curing"):
            own["curing"] = c.one("compound", "cover", "wet", "none")


def removals(c, names):
    found = []
    if c.often(0.25, "dug under slabs"):
        under = [name for name in names if c.often(0.7)] or names[:1]
        found.append({"ground": {"under": under, "depth": f"{c.whole(4, 14)} in", "of": "soil"}})
    for n in range(c.one(0, 0, 1, 1, 2, 3)):
        of = c.one("concrete", "concrete", "asphalt", "pavers", "soil")
        own = {"of": of} if of != "concrete" else {}
        depth = f"{c.whole(3, 8)} in"
        shape = c.one("flat", "area", "circle", "depth apart")
        if shape == "circle":
            own |= {"size": f"circle {c.length(48, 200)}", "depth": depth}
        elif shape == "area":
            own["size"] = f"{c.whole(30, 600)} sq ft x {depth}"
        elif shape == "depth apart":
            own |= {"size": f"{c.length(60, 300)} x {c.length(36, 200)}", "depth": depth}
        else:
            own["size"] = f"{c.length(60, 300)} x {c.length(36, 200)} x {depth}"
        if of != "pavers" and c.often(0.4, "break by machine"):
            own["break"] = "machine"
        if of == "concrete" and c.often(0.3, "reinforced"):
            own["reinforced"] = "yes"
        if of in ("concrete", "asphalt") and c.often(0.3, "saw cut"):
            own["saw cut"] = c.length(24, 400)
        if of == "soil" and c.often(0.3, "soil that stays"):
            own["stays"] = "yes"
        c.features.add(f"remove {of}")
        found.append({f"old {of} {n + 1}": own["size"] if set(own) == {"size"} else own})
    return found


def extra(c):
    key, unit, low, high = c.one(
        ("topsoil", "cu yd", 1, 6), ("edging", "ft", 10, 90), ("compactor", "days", 1, 3), ("sealer job", "sq ft", 50, 400)
    )
    if c.often(0.25, "extra of what a rule buys"):
        key, unit, low, high = c.one(("sand", "ton", 1, 6), ("stake", "pieces", 5, 60), ("strip", "ft", 5, 60), ("chair", "pieces", 2, 40))
    if c.often(0.1, "extra hours"):
        key, unit, low, high = "labor", c.one("hours", "hours", "crew hours"), 2, 12
    if c.often(0.25, "lump"):
        lump = {"cost": c.decimal(5000, 90000)}
        if c.often(0.5):
            lump["class"] = c.one("material", "equipment", "subcontract", "fee")
        if c.often(0.2, "group of a lump"):
            lump["group"] = c.one("Ground work", "fee", "Yard")
        return {f"{c.one('Move', 'Mend', 'Guard')} the {c.one('fence', 'gate', 'tree')}": lump}
    c.features.add("extra")
    much = c.whole(low, high)
    much = f"{much} {unit if much > 1 or unit != 'days' else 'day'}"
    return {key: {"much": much, "says": "nothing"} if c.often(0.15, "extra that says nothing") else much}


def options(c):
    option = lambda: {"add": [extra(c) for _ in range(c.one(1, 1, 2))]}
    found = []
    for n in range(c.one(0, 0, 0, 1, 2)):
        if c.often(0.4, "choose one"):
            found.append({"choose one": f"Which {n + 1}", "from": [{f"Way {n + 1} {way}": option()} for way in "AB"]})
        else:
            c.features.add("option")
            found.append({f"Option {n + 1}": option()})
    return found


def access(c):
    by = c.one("chute", "chute", "wheelbarrow", "buggy", "pump", "pump")
    c.features.add(f"place by {by}")
    return {"by": by, "distance": f"{c.whole(20, 160)} ft"} if c.often(0.5) else by


def days(c, site, job):
    """A day, none, or a list of days; spring, summer with other prices, Saturdays, winter."""
    several = len(site.slabs) > 1 and c.often(0.4)
    day = lambda month: f"2026-{month:02}-{c.whole(10, 28)}"
    if several:
        c.features.add("several pours")
        names = list(site.slabs)
        cut = c.whole(1, len(names) - 1)
        c.dice.shuffle(names)
        parts, months = [names[:cut], names[cut:]], sorted((c.whole(5, 12), c.whole(5, 12)))
        job["pour"] = []
        for part, at in zip(parts, (f"2026-{months[0]:02}-{c.whole(10, 18)}", f"2026-{months[1]:02}-{c.whole(20, 28)}")):
            one = {"day": at, "slabs": part}
            if c.often(0.4, "access of a pour"):
                one["access"] = access(c)
            if c.often(0.2, "allowance of a pour"):
                one["allowance"] = f"{c.whole(2, 12)}%"
            job["pour"].append(one)
    elif c.often(0.7, "day of the pour said"):
        job["pour"] = c.one("2026-06-13", "2026-11-21", "2026-12-12", day(c.whole(5, 12)))


def made(c, shop, firm):
    site = Site(c, shop, firm)
    first = c.one("patio", "patio", "driveway", "walk", "slab")
    shape = c.one("rectangle", "rectangle", "rectangle", "ell", "round")
    {"rectangle": site.rectangle, "ell": site.ell, "round": site.round}[shape](first, first)
    for n in range(c.one(0, 0, 1, 1, 2, 3)):
        kind = c.one("walk", "patio", "slab", "driveway")
        name = f"{c.one('east', 'far', 'small')} {kind} {n + 2}"
        bases = [base for base, sides in site.free.items() if sides]
        if bases and c.often(0.6):
            site.beside(name, kind, c.one(*bases))
        elif c.often(0.3):
            site.ell(name, kind)
        else:
            site.rectangle(name, kind)
    bases = [base for base, sides in site.free.items() if sides]
    if bases and c.often(0.4):
        site.on("step", c.one(*bases))
    if c.often(0.25):
        site.stoop("stoop")
    job = {"format": "1", "customer": "Ira Sample, Quillhaven", "quoted": "2026-05-04"}
    days(c, site, job)
    job["access"] = access(c)
    if c.often(0.1, "allowance of the job"):
        job["allowance"] = f"{c.whole(2, 12)}%"
    if c.often(0.3, "zone"):
        job["zone"] = "north"
    if c.often(0.25, "hold back"):
        job["hold back"] = c.one("1 cu yd", "2 cu yd", "1/2 cu yd", "4 1/2 cu yd")
    if c.often(0.3, "permit"):
        job["permit"] = c.one("permit", "customer", "none")
    if c.often(0.2, "difficulty of the job"):
        job["difficulty"] = f"{c.whole(95, 140)}%"
    job["slabs"] = {name: own["size"] if set(own) == {"size"} else own for name, own in site.slabs.items()}
    for key, found in (("remove", removals(c, list(site.slabs))), ("extra", [extra(c) for _ in range(c.one(0, 0, 1, 2))]), ("options", options(c))):
        if found:
            job[key] = found
    if c.often(0.08, "fixed price"):
        job["price"] = f"{c.whole(3000, 30000)}.00"
    if c.often(0.2, "hold of a price"):
        shop["holds"] = [{"item": "ready-mix", "price": "150.25", "until": c.one("2026-06-30", "2026-12-31")}]
    return job
