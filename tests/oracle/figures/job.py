"""One job: its files, what is bought at which price, and every combination of its options."""

import copy
import datetime
import itertools
from decimal import Decimal as D
from pathlib import Path
from typing import NamedTuple

from .also import Also
from .boxes import Boxes
from .dowels import Dowels
from .finish import Finish
from .goods import Goods
from .labor import Labor
from .machines import Machines
from .orders import Orders
from .placing import Placing
from .reading import amount, cents, inches, known, load, number, percent, singular, up
from .removal import Removal
from .season import Season
from .sell import Sell
from .site import Site
from .slab import Slab
from .touching import share_edges

JOB = {"format", "job", "title", "customer", "measured", "quoted", "pour", "exposure", "access", "zone"}
JOB |= {"allowance", "hold back", "permit", "slabs", "remove", "extra", "set", "options", "assumptions", "photos"}
JOB |= {"not included", "notes", "price", "discounts", "difficulty", "left alone", "site", "trips"}
JOB |= {"people", "truck", "temperature"}
BUSINESS = {"format", "firm", "books", "price", "order", "crew", "quote", "payments", "kinds", "cure"}
BUSINESS |= {"payments of a short job", "promises", "assumptions", "not included", "unforeseen", "terms", "site", "invoices", "numbers", "frost depth", "pour day"}
BOOK = {"book", "format", "good until", "items", "holds", "mixes", "bases", "bars", "mesh", "fiber"}
BOOK |= {"finishes", "colors", "sealers", "disposal", "supply", "pump", "buggy", "use", "rates"}
BOOK |= {"dowels", "boxes", "site", "also", "way"}
USE = {"forms", "stakes", "isolation strip", "curing compound", "chairs", "short load", "delivery"}
USE |= {"standing time", "pump", "labor", "trip", "saw cutting", "breaking machine", "deep forms"}
USE |= {"vapor retarder", "curing cover", "blankets"}
ITEM = {"unit", "is", "class", "prices", "sold in", "at least", "waste", "work", "stage", "taxed", "group", "height", "after"}
ORDER = {"allowance": "7%", "thickness allowance": "0 in", "smallest allowance": "0 cu yd"}
ORDER |= {"buy": "as needed"}
ORDER |= {"cover": "2 in", "stake spacing": "3 ft", "chair area": "9 sq ft"}
ORDER |= {"stake spacing on curves": "2 ft", "corner bars": "2 bars, 4 ft long", "bent corner bars": "yes"}
ORDER |= {"steel at joints": "through"}
ORDER |= {"compound coverage": "200 sq ft", "deep form over": "8 in"}
ORDER |= {"retarder width": "10 ft", "retarder lap": "6 in", "smallest opening": "2 sq ft"}
ORDER |= {"base past forms": "0 in", "base under edges": "no", "dig past forms": "0 in"}


class Line(NamedTuple):
    """One thing bought: its name in the takeoff's own terms, and the price of its day; a lump has no item."""

    title: str
    much: D
    value: D
    kind: str
    taxed: bool
    cause: str
    key: str | None = None
    unit: str | None = None
    pour: int | None = None
    each: D | None = None


def goes_on_after(item):
    """Days from the last pour until an added item goes on; none where it waits for nothing."""
    return int(amount(item["after"])[0]) if "after" in item else None


class Job(Also, Orders, Goods, Dowels, Boxes, Site, Removal, Machines, Labor, Placing, Finish, Season, Sell):
    ordering: dict = {}

    def __init__(self, takeoff, business, book, today):
        self.job, self.business, self.book = load(takeoff), load(business), load(book)
        self.today, self.file_name = today, Path(takeoff).stem
        self.read()

    def read(self):
        known("takeoff", self.job, JOB)
        known("business", self.business, BUSINESS)
        known("book", self.book, BOOK)
        known("use", self.book["use"], USE)
        self.name = self.job.get("job", self.file_name)
        self.order = ORDER | self.business.get("order", {})
        known("order", self.order, [*ORDER, "groove depth"])
        self.crew = {"people": "2", "hours in a day": "8", "travel": "0 hours", "round days up to": "1/2"}
        self.crew |= {"difficulty": "100%"} | self.business.get("crew", {})
        if "people" in self.job:
            self.crew = self.crew | {"people": self.job["people"]}
        self.slabs = [
            Slab(n, v, self.business["kinds"], self.book, self.order) for n, v in self.job["slabs"].items()
        ]
        self.arrange_pours(self.job.get("quoted", self.today))
        share_edges(self.slabs)
        for slab in self.slabs:
            self.surface(slab)

    def arrange_pours(self, quoted):
        """Everything is priced for the day it is needed: the pour, else the quote and the lead time."""
        lead = self.business.get("quote", {}).get("lead time", "30 days").split()[0]
        later = datetime.date.fromisoformat(quoted) + datetime.timedelta(days=int(lead))
        written = self.job.get("pour")
        self.pours = []
        if not isinstance(written, list):
            written = [{"day": written, "slabs": [slab.name for slab in self.slabs]}]
        by_name = {slab.name: slab for slab in self.slabs}
        for n, one in enumerate(written):
            known("pour", one, ("day", "slabs", "access", "allowance", "temperature"))
            access = one.get("access", self.job.get("access", "chute"))
            access = {"by": access} if isinstance(access, str) else access
            known("access", access, ("by", "distance", "gate"))
            far = inches(access["distance"]) if "distance" in access else None
            day = one["day"] or later.isoformat()
            said = one["day"] is not None
            self.pours.append({"day": day, "said": said, "by": access.get("by", "chute"), "distance": far})
            self.pours[-1]["allowance"] = one.get("allowance")
            self.pours[-1]["temperature"] = one.get("temperature")
            for name in one["slabs"]:
                by_name[name].pour = n

    def surface(self, slab):
        """What the slab says of color, seal and curing wins over its finish."""
        finish = self.book.get("finishes", {}).get(slab.value.get("finish", "broom"), {})
        said = lambda key: slab.value.get(key, finish.get(key, "none"))
        slab.color, slab.seal = (None if said(key) == "none" else said(key) for key in ("color", "seal"))
        slab.curing = slab.value.get("curing", finish.get("curing", "compound"))

    def set(self, name, computed, usual=""):
        """The owner's figure takes the place of the computed one, and what follows uses it."""
        chosen = self.job.get("set", {}).get(name)
        return computed if chosen is None else self.in_hours(*amount(chosen["to"]), usual)

    def in_hours(self, much, unit, usual):
        """A crew's hour is one of everybody; a number alone is in the usual unit."""
        if (unit or usual).startswith("crew"):
            return much * D(self.crew["people"])
        return much / 60 if unit == "min" else much

    # ---- buying

    def group_of(self, key):
        """As the book first writes it, whatever the capitals; a class by its own word or its heading."""
        said = self.item(key).get("group")
        if said is None:
            return None
        classes = ("material", "labor", "equipment", "disposal", "subcontract", "fee")
        meant = [one for one in classes if said.lower() in (one, one + "s")]
        groups = [item["group"] for item in self.book["items"].values() if "group" in item]
        return (meant + [one for one in groups if one.lower() == said.lower()])[0]

    def item(self, key):
        found = self.book["items"][key]
        known(f"item {key}", found, ITEM)
        return found

    def buying_day(self, pour):
        """The day of the pour; what belongs to none is bought for the first that has slabs."""
        first = min((slab.pour for slab in self.slabs), default=0)
        return self.pours[first if pour is None else pour]["day"]

    def held(self, key, day):
        """A hold beats the list from its first to its last day, both inclusive; of two, the later in the book."""
        for hold in reversed(self.book.get("holds", [])):
            ours = hold["item"] == key and hold.get("job", self.name) == self.name
            if ours and hold.get("from", "0") <= day <= hold["until"]:
                return D(hold["price"])
        return None

    def price(self, key, pour):
        day = self.buying_day(pour)
        held = self.held(key, day)
        return self.listed(key, day) if held is None else held

    def listed(self, key, day):
        prices = self.item(key)["prices"]
        found = prices[max(since for since in prices if since <= day)]
        if isinstance(found, dict):  # wages and what is paid beside them
            return D(found["wage"]) * (1 + percent(found["burden"]))
        return D(found)

    def buy_exactly(self, key, much, name, pour=None, even_nothing=False):
        if (much == 0 and not even_nothing) or key == "none":
            return
        item, each = self.item(key), self.price(key, pour)
        taxed = item.get("taxed", "yes" if item["class"] == "material" else "no") == "yes"
        what = (item.get("is", key), much, cents(much * each), item["class"], taxed)
        self.lines.append(Line(*what, name, key, singular(item["unit"]), pour, each))

    def buy(self, key, name, parts, pour=None, added=False):
        """Added up, then once up to how the item is sold, and no less than its least. What is added
        by hand of an item that a rule buys for the whole job is bought together with it."""
        total = sum(parts, D(0))
        if total == 0 or key == "none":
            return
        if not added:  # what is added by hand is what was written
            total *= 1 + self.wasted(key)
        earlier = [one for one in self.bought if one[0] == key and (added or one[3])] if pour is None else []
        sold = self.sold(key, total + sum(wanted for _, wanted, *_ in earlier))
        much = self.set(name, max(sold - sum(had for _, _, had, _ in earlier), D(0)))
        if pour is None:
            chosen = name in self.job.get("set", {})
            self.bought.append((key, much if chosen else total, much, added))
        # A line of nothing says that what was bought before is enough.
        self.buy_exactly(key, much, name, pour, even_nothing=bool(earlier))

    def wasted(self, key):
        return percent(self.item(key).get("waste", "0%"))

    def sold(self, key, total):
        item = self.item(key)
        counted = singular(item["unit"]) in ("piece", "bag", "sheet", "roll", "load", "trip")
        step = number(item.get("sold in", "0")) or D(1 if counted and "waste" in item else 0)
        least = item.get("at least", "0")
        return max(up(total, step) if step else total, D(0) if least.startswith("$") else amount(least)[0])

    def least_charges(self):
        """What each order of an item with a smallest charge comes to less than that: one of the job,
        with the first pour, or one of each pour."""
        first = min((slab.pour for slab in self.slabs), default=0)
        orders = {}
        for line in self.lines:
            if line.key and self.item(line.key).get("at least", "").startswith("$"):
                orders.setdefault((line.key, first if line.pour is None else line.pour), []).append(line)
        for (key, pour), lines in sorted(orders.items()):
            less = D(self.item(key)["at least"].lstrip("$")) - sum(line.value for line in lines)
            if less > 0 and any(line.much for line in lines):
                one = lines[0]
                title = f"Minimum charge, {one.title}"
                yield one._replace(title=title, much=None, value=less, cause=f"minimum charge, {key}", key=None)

    def role_of(self, role):
        key = self.book["use"].get(role, "none")
        return None if key == "none" else key

    def role(self, role, name, parts, pour=None):
        key = self.role_of(role)
        if key and sum(parts, D(0)):
            self.buy(key, name, parts, pour)

    def extras(self, chosen):
        """Items of the book with their own work, or lumps; work goes by what is written."""
        for entry in itertools.chain(self.job.get("extra", []), *chosen):
            ((key, written),) = entry.items()
            if isinstance(written, dict) and "much" in written:
                known("extra", written, ("much", "says"))
                written = written["much"]
            if isinstance(written, dict):
                known("lump", written, ("cost", "class", "group", "says"))
                kind = written.get("class", "subcontract")
                self.lines.append(Line(key, D(1), D(written["cost"]), kind, kind == "material", key))
                continue
            wanted = amount(written)[0]
            if key == self.role_of("labor"):
                self.added_hours.append(self.in_hours(*amount(written), ""))
                continue
            self.buy(key, key, [wanted], added=True)
            item, after = self.item(key), goes_on_after(self.item(key))
            if after is not None:
                self.added_after[key] = after
            if "work" in item:
                stage = item.get("stage", "form") if after is None else "seal"
                self.item_work.append((key, wanted, item["work"], stage))

    # ---- the whole

    def estimate(self, chosen):
        """Every line of one combination, then overhead to tax, as (title, quantity, amount)."""
        if any(key in option for option in chosen for key in ("change", "drop", "trips")):
            other = self.written_in(chosen)
            found = other.estimate([])
            self.is_short, self.stages, self.finishing = other.is_short, other.stages, other.finishing
            return found
        return self.priced_as_bought([option.get("add", []) for option in chosen])

    def priced_as_bought(self, added):
        """With its orders as the business places them."""
        ways = {"as needed": lambda added: {}, "cheapest": self.cheapest}
        self.ordering = ways[self.order["buy"]](added)
        return self.priced(added)

    def written_in(self, chosen):
        """The job as if the takeoff had said what is chosen."""
        job = copy.deepcopy(self.job)
        for option in chosen:
            for name, changed in option.get("change", {}).items():
                own = job["slabs"][name]
                own = {"size": own} if isinstance(own, str) else own
                job["slabs"][name] = {**own, **changed}
            job["extra"] = [*job.get("extra", []), *option.get("add", [])]
            job.update({"trips": option["trips"]} if "trips" in option else {})
        for name in [name for option in chosen for name in option.get("drop", [])]:
            job["slabs"].pop(name, None)
            for key in ("remove", "extra"):
                job[key] = [entry for entry in job.get(key, []) if name not in entry]
        # Without its neighbor a slab lies by itself; a pour without slabs keeps its number.
        for own in job["slabs"].values():
            if isinstance(own, dict) and own.get("beside", "").split(",")[0] not in job["slabs"]:
                own.pop("beside", None)
        if isinstance(job.get("pour"), list):
            for pour in job["pour"]:
                pour["slabs"] = [name for name in pour["slabs"] if name in job["slabs"]]
        other = copy.copy(self)
        other.job = job
        other.read()
        return other

    def priced(self, added):
        self.lines, self.item_work, self.bought, self.added_hours = [], [], [], []
        self.added_after = {}
        self.order_concrete()
        self.goods()
        self.pins()
        self.set_boxes()
        self.site_goods()
        self.pump_trips()
        self.removals()
        self.extras(added)
        permit = self.job.get("permit", "none")
        if permit not in ("none", "customer"):
            self.buy(permit, "permit", [D(1)])
        self.also()
        hours = self.labor()
        self.pumps()
        self.machines(hours)
        self.also_after_crew(self.of_crew)
        return self.sell()

    def groups(self):
        """The choices of each question: (name, option), or None where nothing need be taken."""
        for entry in self.job.get("options", []):
            if "choose one" in entry:
                known("choose one", entry, ("choose one", "from", "must choose"))
                answers = [pair for one in entry["from"] for pair in one.items()]
                must = entry.get("must choose") == "yes"
                yield answers if must else [None, *answers]
            else:
                yield [None, *entry.items()]

    def quoted_as(self):
        """What is taken in the job as quoted: the first answer of what must be chosen."""
        return tuple(group[0][0] for group in self.groups() if group[0])

    def combinations(self):
        """Names taken -> the options; a choose-one group includes `as quoted`."""
        for taken in itertools.product(*self.groups()):
            taken = [pair for pair in taken if pair]
            for name, option in taken:
                known(f"option {name}", option, ("add", "says", "change", "drop", "trips"))
            yield tuple(name for name, _ in taken), [option for _, option in taken]
