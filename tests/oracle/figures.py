"""Quantities and money of one job, computed a second time from the same YAML files.

Written from the settled rules of the project, in `decimal`; it shares no code and no
intermediate figure with the program. What a rule is stands where it is used. A key that
this file does not know is refused, so that nothing is passed over in silence.
"""

import datetime
import itertools
from decimal import ROUND_CEILING, ROUND_HALF_UP
from decimal import Decimal as D
from pathlib import Path

import yaml

import shapes

FT = D(12)
YARD = D(324)  # sq ft x in in a cubic yard: 27 cu ft x 12 in
STRIP = {"house", "existing concrete", "curb", "isolated"}  # a strip, no form
SLAB_KEYS = {"kind", "size", "outline", "edges", "beside", "on", "fall", "thickness", "mix", "base"}
SLAB_KEYS |= {"bars", "finish", "joints"}
JOB_KEYS = {"format", "job", "title", "customer", "measured", "quoted", "pour", "exposure", "access"}
JOB_KEYS |= {"slabs", "remove", "extra", "set", "options", "assumptions", "not included", "notes"}
JOB_KEYS |= {"price", "difficulty"}


def load(path):
    # BaseLoader keeps every scalar as its text: no binary float is ever made.
    return yaml.load(Path(path).read_text(), Loader=yaml.BaseLoader)


def number(text):
    total = D(0)
    for part in text.split():
        top, _, bottom = part.partition("/")
        total += D(top) / D(bottom) if bottom else D(top)
    return total


def amount(text):
    """`3/4 hour` -> (0.75, "hour"); `cu yd` alone is one of it."""
    words = text.split()
    n = 0
    while n < len(words) and words[n][0].isdigit():
        n += 1
    return (number(" ".join(words[:n])) if n else D(1)), " ".join(words[n:])


def inches(text):
    words, total = text.split(), D(0)
    while words:
        n = next(i for i, word in enumerate(words) if word in ("ft", "in"))
        total += number(" ".join(words[:n])) * (FT if words[n] == "ft" else 1)
        words = words[n + 1 :]
    return total


def percent(text):
    return D(text.strip().rstrip("%")) / 100


def rate(text):
    """`7 hours per 100 ft` -> (0.07, "hours")."""
    much, per = text.split(" per ")
    value, unit = amount(much)
    return value / amount(per)[0], unit


def cents(value):
    """Half a cent goes away from zero; amounts here are never negative."""
    return value.quantize(D("0.01"), ROUND_HALF_UP)


def up(value, step):
    """The next multiple of a step; nine places are kept first, so a trace orders nothing."""
    steps = (value / step).quantize(D("1e-9"), ROUND_HALF_UP).to_integral_value(ROUND_CEILING)
    return steps * step


def split(total, weights):
    """Largest remainder in cents, ties to the earlier part."""
    whole = total * 100
    exact = [whole * w / sum(weights) for w in weights]
    parts = [x // 1 for x in exact]
    order = sorted(range(len(parts)), key=lambda i: -(exact[i] - parts[i]))
    for i in order[: int(whole - sum(parts))]:
        parts[i] += 1
    return [part / 100 for part in parts]


class Slab:
    def __init__(self, name, written, kinds):
        own = {"size": written} if isinstance(written, str) else written
        words = [own.get("kind", name), *reversed(name.split())]
        self.kind = next(word for word in words if word in kinds)
        assert not set(own) - SLAB_KEYS, f"{name}: not covered: {set(own) - SLAB_KEYS}"
        self.name, self.own, self.value = name, own, {**kinds[self.kind], **own}
        assert "mesh" not in self.value, f"{name}: mesh is not covered"
        self.is_step = self.kind == "step"
        edges = own.get("edges", {})
        if "outline" in own:
            self.shape = shapes.walked([self.leg(text) for text in own["outline"]])
        elif own["size"].startswith("circle "):
            self.shape = shapes.circle(inches(own["size"][7:]))
        else:
            east_west, north_south = own["size"].split(" x ")
            self.shape = shapes.rectangle(inches(east_west), inches(north_south), edges)
        self.area = self.shape.area / 144
        self.thickness = inches(self.value["thickness"])
        self.concrete = self.area * self.thickness / YARD
        # (feet, kind, curved) of every piece of edge.
        self.edges = [(s.length() / FT, s.kind, s.bulge != 0) for s in self.shape.sides]

    @staticmethod
    def leg(text):
        parts = [part.strip() for part in text.split(",")]
        direction, length = parts[0].split(" ", 1)
        bulge, kind = D(0), "open"
        for part in parts[1:]:
            if part.startswith("bulge in "):
                bulge = -inches(part[9:])
            elif part.startswith("bulge "):
                bulge = inches(part[6:])
            else:
                kind = part.removeprefix("against ")
        return direction, inches(length), bulge, kind

    def touch(self, compass, start, end, kind):
        """Cuts the edge that looks that way into what is shared and what is not."""
        side = self.shape.facing(compass)
        number, shared = self.shape.sides.index(side), (end - start) / FT
        assert len(self.edges) == len(self.shape.sides), "one neighbour a slab is covered"
        axis = 0 if compass in ("north", "south") else 1
        low, high = sorted((side.start[axis], side.end[axis]))
        pieces = [((start - low) / FT, side.kind, False), (shared, kind, False)]
        pieces.append(((high - end) / FT, side.kind, False))
        self.edges[number : number + 1] = [piece for piece in pieces if piece[0] > 0]

    def formed(self, curved=None):
        """Pieces of open edge: only these have a form."""
        pieces = [(feet, bow) for feet, kind, bow in self.edges if kind == "open"]
        return [feet for feet, bow in pieces if curved is None or bow == curved]


def share_edges(slabs):
    """`beside` makes the shared stretch joined on the older slab (no form, no strip); on the
    slab that is placed it is joined too unless it says otherwise there (strip counted once).
    `on` leaves the slab below as it is."""
    by_name = {slab.name: slab for slab in slabs}
    opposite = {"north": "south", "south": "north", "east": "west", "west": "east"}
    for slab in slabs:
        if "beside" not in slab.own:
            continue
        base, edge, end = (part.strip() for part in slab.own["beside"].split(","))
        base, edge = by_name[base], edge.removesuffix(" edge")
        distance, _, corner = end.removesuffix(" end").rpartition("from ")
        offset = inches(distance) if distance.strip() else D(0)
        axis = 0 if edge in ("north", "south") else 1
        theirs, mine = base.shape.facing(edge), slab.shape.facing(opposite[edge])
        low, high = sorted((theirs.start[axis], theirs.end[axis]))
        my_low, my_high = sorted((mine.start[axis], mine.end[axis]))
        if corner in ("north", "east"):
            stop = high - offset
            start = stop - (my_high - my_low)
        else:
            start = low + offset
            stop = start + (my_high - my_low)
        move = start - my_low
        start, stop = max(start, low), min(stop, high)
        if stop <= start:
            continue
        base.touch(edge, start, stop, "joined")
        kind = mine.kind if mine.kind != "open" else "joined"
        slab.touch(opposite[edge], start - move, stop - move, kind)


def bars(slab, cover, stock, diameters):
    """Runs of bar as (inches, sticks spliced), and feet placed with laps.

    Spacing is a maximum: gaps that fit up to a whole one, evenly spread between the covers;
    each line is clipped to the slab less the cover at both ends; under 6 in nothing is laid.
    A run longer than a stick takes (run - lap) / (stock - lap) sticks, up to a whole one.
    """
    size, spacing = slab.value["bars"].split(" at ")
    spacing, lap = inches(spacing), D(size.removeprefix("no. ")) / 8 * diameters
    runs = []
    for axis in (1, 0):
        low, high = slab.shape.bounds(axis)
        usable = high - low - 2 * cover
        gaps = up(usable / spacing, D(1)) if usable > 0 else D(0)
        places = [low + cover + usable * i / gaps for i in range(int(gaps) + 1)] if gaps else []
        for at in places or [(low + high) / 2]:
            for start, end in slab.shape.spans(axis, at):
                length = (end - start - 2 * cover).quantize(D("1e-7"), ROUND_HALF_UP)
                if length >= 6:
                    pieces = D(1)
                    if length > stock:
                        pieces = up((length - lap) / (stock - lap), D(1))
                    runs.append((length, int(pieces)))
    placed = sum(length + (pieces - 1) * lap for length, pieces in runs) / FT
    return size, runs, placed, lap


def sticks(runs, stock, lap):
    """Longest piece first, each into the fullest stick that still holds it."""
    whole, rests = 0, []
    for length, pieces in runs:
        whole += pieces - 1
        rests.append(length - (pieces - 1) * (stock - lap))
    left = []
    for piece in sorted(rests, reverse=True):
        fits = [room for room in left if room >= piece]
        if fits:
            left.remove(min(fits))
            left.append(min(fits) - piece)
        else:
            left.append(stock - piece)
    return whole + len(left)


class Job:
    def __init__(self, takeoff, business, book, today):
        self.job, self.business, self.book = load(takeoff), load(business), load(book)
        assert not set(self.job) - JOB_KEYS, f"not covered: {set(self.job) - JOB_KEYS}"
        self.name = self.job.get("job", Path(takeoff).stem)
        self.order = {"allowance": "7%", "thickness allowance": "0 in", "smallest allowance": "0 cu yd"}
        self.order |= {"cover": "2 in", "stake spacing": "3 ft", "chair area": "9 sq ft"}
        self.order |= {"compound coverage": "200 sq ft"} | self.business.get("order", {})
        self.crew = {"people": "2", "hours in a day": "8", "travel": "0 hours", "round days up to": "1/2"}
        self.crew |= {"difficulty": "100%"} | self.business.get("crew", {})
        # Everything is priced for the day it is needed: the pour, else the quote and the lead time.
        lead = self.business.get("quote", {}).get("lead time", "30 days").split()[0]
        later = datetime.date.fromisoformat(today) + datetime.timedelta(days=int(lead))
        pour = self.job.get("pour", later.isoformat())
        assert isinstance(pour, str), "several pours are not covered"
        self.day = pour
        self.slabs = [Slab(n, v, self.business["kinds"]) for n, v in self.job["slabs"].items()]
        share_edges(self.slabs)

    def set(self, name, computed):
        """The owner's figure takes the place of the computed one, and what follows uses it."""
        chosen = self.job.get("set", {}).get(name)
        return computed if chosen is None else amount(chosen["to"])[0]

    def price(self, key):
        """A hold beats the list from its first to its last day, both inclusive."""
        for hold in self.book.get("holds", []):
            ours = hold["item"] == key and hold.get("job", self.name) == self.name
            if ours and hold.get("from", "0") <= self.day <= hold["until"]:
                return D(hold["price"])
        prices = self.book["items"][key]["prices"]
        return D(prices[max(day for day in prices if day <= self.day)])

    def buy(self, key, name, parts):
        """Added up, then once up to how the item is sold."""
        total = sum(parts, D(0))
        if total == 0 or key == "none":
            return
        item = self.book["items"][key]
        if "sold in" in item:
            total = up(total, number(item["sold in"]))
        total = self.set(name, max(total, number(item.get("at least", "0"))))
        taxed = item.get("taxed", "yes" if item["class"] == "material" else "no") == "yes"
        value = cents(total * self.price(key))
        self.lines.append((item["is"], total, value, item["class"], taxed))

    def role(self, role, name, parts):
        if sum(parts, D(0)):
            self.buy(self.book["use"][role], name, parts)

    def goods(self):
        slabs, order, book = self.slabs, self.order, self.book
        materials = sorted({s.value["base"].split(" of ")[1] for s in slabs if self.has(s, "base")})
        for material in materials:
            factor = rate(book["bases"][material]["delivered"])[0]
            of = [s for s in slabs if self.has(s, "base") and s.value["base"].endswith(" of " + material)]
            parts = [self.base(s) * factor for s in of]
            self.buy(book["bases"][material]["item"], f"base, {material}", parts)
        self.placed, by_size = D(0), {}
        for slab in (s for s in slabs if self.has(s, "bars")):
            rule = book["bars"][slab.value["bars"].split(" at ")[0]]
            stock, diameters = inches(rule.get("stock", "20 ft")), D(rule.get("lap", "40"))
            size, runs, placed, lap = bars(slab, inches(order["cover"]), stock, diameters)
            self.placed += self.set(f"{slab.name} bars", placed)
            by_size.setdefault(size, [stock, lap, []])[2].extend(runs)
        for size, (stock, lap, runs) in sorted(by_size.items()):
            self.buy(book["bars"][size]["item"], f"{size} bars", [D(sticks(runs, stock, lap))])
        each = amount(order["chair area"])[0]
        self.role("chairs", "chairs", [up(s.area / each, D(1)) for s in slabs if self.has(s, "bars")])
        self.role("forms", "form boards", [f for s in slabs for f in s.formed()])
        # Common practice: each piece of form has its length over the spacing, up, and one more.
        gap = inches(order["stake spacing"]) / FT
        self.role("stakes", "stakes", [up(f / gap, D(1)) + 1 for s in slabs for f in s.formed()])
        strip = [feet for s in slabs for feet, kind, _ in s.edges if kind in STRIP]
        self.role("isolation strip", "isolation strip", strip)
        coverage = amount(order["compound coverage"])[0]
        self.role("curing compound", "curing compound", [s.area / coverage for s in slabs])
        if self.method == "pump":
            self.role("pump", "pump, pour 1", [D(1)])

    @staticmethod
    def has(slab, key):
        return slab.value.get(key, "none") != "none"

    @staticmethod
    def base(slab):
        return slab.area * inches(slab.value["base"].split(" of ")[0]) / YARD

    def concrete(self):
        """One order a mix: net and the largest of three allowances, up to the plant's step once."""
        supply, order = self.book["supply"], self.order
        plant = []
        self.ordered = D(0)
        by_volume = lambda mix: sum(s.concrete for s in self.slabs if s.value["mix"] == mix)
        mixes = list(dict.fromkeys(s.value["mix"] for s in self.slabs))
        for mix in mixes:
            members = [s for s in self.slabs if s.value["mix"] == mix]
            name = f"{mix} order"
            net = self.set(f"{name} net", by_volume(mix))
            deep = sum(s.area for s in members) * inches(order["thickness allowance"]) / YARD
            least = amount(order["smallest allowance"])[0]
            more = self.set(f"{name} allowance", max(net * percent(order["allowance"]), deep, least))
            prime = amount(supply.get("pump prime", "0 cu yd"))[0]
            if self.method == "pump" and mix == max(mixes, key=by_volume):
                more += prime
            total = up(net + more, amount(supply.get("sold in", "1/4 cu yd"))[0])
            total = self.set(name, max(total, amount(supply.get("smallest order", "0 cu yd"))[0]))
            item = self.book["items"][self.book["mixes"][mix]["item"]]
            value = cents(total * self.price(self.book["mixes"][mix]["item"]))
            self.lines.append((item["is"], total, value, item["class"], item["class"] == "material"))
            self.ordered += total
            # Trucks are filled in turn, the last takes the rest.
            truck, loads, rest = amount(supply["truck"])[0], [], total
            while rest > 0:
                loads.append(min(rest, truck))
                rest -= loads[-1]
            rule = supply["short load"]
            under, counted = amount(rule["under"])[0], rule.get("counted", "by truck")
            looked = {"by truck": loads, "by order": [total]}.get(counted, loads[-1:])
            short = [under - load for load in looked if load < under]
            missing = D(len(short)) if rule.get("charge") == "flat" else sum(short, D(0))
            # Each truck: its minutes past the free ones, up to a whole minute.
            slow = rate(self.book["rates"][f"unload by {self.method}"])[0]
            past = max(slow - rate(supply["free time"])[0], D(0))
            standing = sum((up(load * past, D(1)) for load in loads), D(0))
            standing = self.set(f"{name} standing", standing)
            plant.append(("delivery", f"{name} loads", D(len(loads))))
            plant.append(("short load", f"{name} short", missing))
            plant.append(("standing time", f"{name} standing", standing))
        return plant

    def removals(self):
        self.broken, self.dug = D(0), D(0)
        solid = {"concrete": D(0), "soil": D(0)}
        for entry in self.job.get("remove", []):
            ((_, written),) = entry.items()
            own = {"size": written} if isinstance(written, str) else written
            of = own.get("of", "concrete")
            parts = own["size"].split(" x ")
            if len(parts) == 2:
                area = amount(parts[0])[0]
            else:
                area = inches(parts[0]) * inches(parts[1]) / 144
            yards = area * inches(parts[-1]) / YARD
            solid[of] += yards
            self.broken += area if of == "concrete" else 0
            self.dug += yards if of == "soil" else 0
        for material, yards in solid.items():
            if yards == 0:
                continue
            rule = self.book["disposal"][material]
            unit = self.book["items"][rule["item"]]["unit"]
            loose = self.set(f"{material} hauled, loose", yards * D(rule.get("loose", "1")))
            if unit == "load":
                hauled = up(loose / amount(rule["load"])[0], D(1))
            else:
                hauled = yards * rate(rule["weight"])[0] / 2000 if unit == "ton" else loose
            self.buy(rule["item"], f"{material} hauled", [hauled])

    def extras(self, chosen):
        """Items of the book with their own work, or lumps; work goes by what is written."""
        for entry in itertools.chain(self.job.get("extra", []), *chosen):
            ((key, written),) = entry.items()
            if isinstance(written, dict):
                kind = written.get("class", "subcontract")
                self.lines.append((key, D(1), D(written["cost"]), kind, kind == "material"))
                continue
            wanted = amount(written)[0]
            self.buy(key, key, [wanted])
            if "work" in self.book["items"][key]:
                self.item_work.append((key, wanted, self.book["items"][key]["work"]))

    def labor(self):
        """Person hours by rate; difficulty on every task; travel a trip; days up to a step."""
        rates, slabs = self.book["rates"], self.slabs
        flat = [s for s in slabs if not s.is_step]  # a step has one rate for forming and finish
        work = {"break out concrete": self.broken, "dig": self.dug}
        work["base"] = sum(self.base(s) for s in slabs if self.has(s, "base"))
        work["form straight"] = sum(f for s in flat for f in s.formed(False))
        work["form curved"] = sum(f for s in flat for f in s.formed(True))
        work["bars"] = self.placed
        work[f"place by {self.method}"] = self.ordered  # placing goes by ordered yards
        for slab in flat:
            task = f"finish {slab.value.get('finish', 'broom')}"
            work[task] = work.get(task, D(0)) + slab.area
        work["step"] = D(len(slabs) - len(flat))
        work["cure, strip and clean"] = sum(s.area for s in slabs)
        people, day = D(self.crew["people"]), amount(self.crew["hours in a day"])[0]
        hard = percent(self.job.get("difficulty", self.crew["difficulty"]))
        worked = D(0)
        tasks = [(name, much, rates[name]) for name, much in work.items() if much]
        for name, much, written in tasks + self.item_work:
            each, unit = rate(written)
            crew_hours = people if unit.startswith("crew") else 1
            # A set number of hours is final, and not multiplied.
            worked += self.set(f"{name} hours", much * each * crew_hours * hard)
        worked = self.set("hours worked", worked)
        each = amount(self.crew["travel"])[0]
        trips = self.set("trips", up(worked / (people * (day - each)), D(1)))
        hours = worked + self.set("travel hours", trips * people * each)
        step = number(self.crew["round days up to"])
        days = hours / (people * day)
        days = self.set("crew days", up(days, step) if step else days)
        charged = self.set("labor", days * people * day)
        item = self.book["items"][self.book["use"]["labor"]]
        value = cents(charged * self.price(self.book["use"]["labor"]))
        self.lines.append((item["is"], charged, value, item["class"], False))
        if self.book["use"].get("trip", "none") != "none":
            self.buy(self.book["use"]["trip"], "trips", [trips])

    def estimate(self, chosen):
        """Every line of one combination, then overhead to tax, as (title, quantity, amount)."""
        self.lines, self.item_work = [], []
        access = self.job.get("access", "chute")
        self.method = access if isinstance(access, str) else access.get("by", "chute")
        plant = self.concrete()
        self.goods()
        self.removals()
        self.extras(chosen)
        self.labor()
        for role, name, much in plant:
            if much:
                self.role(role, name, [much])
        return self.sell()

    def sell(self):
        price = self.business["price"]
        taxes = price.get("tax", [])
        taxes = taxes if isinstance(taxes, list) else [taxes]
        lines = [(title, quantity, value) for title, quantity, value, _, _ in self.lines]
        paid = sum(value for *_, value, _, taxed in self.lines if taxed)
        materials = sum(value for *_, value, kind, _ in self.lines if kind == "material")
        for tax in (t for t in taxes if t.get("on") == "purchases"):
            title = f"{tax.get('name', 'sales tax').capitalize()} paid on purchases"
            lines.append((title, None, cents(paid * percent(tax["rate"]))))
        direct = sum(value for *_, value in lines)
        add = lambda title, value: lines.append((title, None, value)) if value else None
        overhead = cents(direct * percent(price.get("overhead", "0%")))
        contingency = cents(direct * percent(price.get("contingency", "0%")))
        add("Overhead", overhead)
        add("Contingency", contingency)
        cost = direct + overhead + contingency
        if "price" in self.job:
            sale = D(self.job["price"])
            add("Left by the fixed price", sale - cost)
        else:
            way, much = price["profit"].split()
            much = percent(much)
            profit = cents(cost * much if way == "markup" else cost / (1 - much) - cost)
            add("Profit", profit)
            sale = cost + profit
            least = D(price.get("minimum job", "0"))
            add("Up to the minimum job", max(least - sale, D(0)))
            sale = max(sale, least)
            rounded = up(sale, D(price.get("round up to", "0.01")))
            add("Price rounded up", rounded - sale)
            sale = rounded
        total_tax = D(0)
        for tax in taxes:
            if tax.get("on", "none") in ("none", "purchases"):
                continue
            base = sale if tax["on"] == "sale" else cents(sale * materials / direct)
            value = cents(base * percent(tax["rate"]))
            add(tax.get("name", "sales tax").capitalize(), value)
            total_tax += value
        totals = {"direct": direct, "cost": cost, "price": sale}
        totals |= {"tax": total_tax, "total": sale + total_tax}
        return lines, totals

    def combinations(self):
        """Names taken -> what they add; a choose-one group includes `as quoted`."""
        groups = []
        for entry in self.job.get("options", []):
            if "choose one" in entry:
                groups.append([None, *(pair for one in entry["from"] for pair in one.items())])
            else:
                groups.append([None, *entry.items()])
        for taken in itertools.product(*groups):
            taken = [pair for pair in taken if pair]
            yield tuple(name for name, _ in taken), [option["add"] for _, option in taken]

    def payments(self, total):
        """Percents that make 100 or shares: largest remainder. With a `rest`: each of the
        others to the cent, and the rest takes what is left."""
        shares = [share for entry in self.business["payments"] for share in entry.values()]
        if "rest" not in shares:
            weight = lambda s: percent(s) if s.endswith("%") else number(s)
            return split(total, [weight(share) for share in shares])
        parts = []
        for share in shares:
            if share == "rest":
                parts.append(D(0))
            elif share.endswith("%"):
                parts.append(cents(total * percent(share)))
            else:
                parts.append(cents(total * number(share)) if "/" in share else D(share))
        parts[shares.index("rest")] = total - sum(parts)
        return parts
