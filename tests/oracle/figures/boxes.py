"""Boxes and covers set in slabs: the holes they make, and what is bought and done for them."""

from decimal import Decimal as D

from . import named
from .reading import FT, YARD, NotCovered, inches, known

KEYS = ("box", "at", "lid", "isolated", "adjust")
STOCK = {"item", "called", "opening", "depth", "rated", "design load", "stands for", "says", "lid"}
STOCK |= {"temporary lid", "ring", "hours"}


class Box:
    def __init__(self, entry, book):
        ((name, written),) = entry.items()
        own = {"at": written} if isinstance(written, str) else written
        known(f"box {name}", own, KEYS)
        self.name, self.stock = name, own.get("box", name)
        self.rule = book["boxes"][self.stock]
        known(f"box {self.stock}", self.rule, STOCK)
        self.lid, self.adjust = own.get("lid", "now"), own.get("adjust")
        if self.lid not in ("now", "on order", "theirs"):
            raise NotCovered(f"lid `{self.lid}`")
        self.is_late = self.lid == "on order" and not self.adjust
        self.isolated = own.get("isolated") == "yes"
        opening = self.rule["opening"]
        self.is_square = not opening.endswith(" round")
        if opening.endswith(" round"):
            round_one = named.circle(inches(opening.removesuffix(" round")))
            self.area, self.around = round_one.area / 144, sum(s.length() for s in round_one.sides) / FT
        else:
            one, other = (inches(part) for part in opening.split(" x "))
            self.area, self.around = one * other / 144, 2 * (one + other) / FT

    def displaced(self, thickness):
        return self.area * thickness / YARD

    def bought(self):
        """(what, item) of everything that has to be bought for it."""
        if self.adjust:
            return [("rings", self.rule["ring"])] if self.adjust.startswith("raise") and "ring" in self.rule else []
        found = [("boxes", self.rule["item"])]
        if self.lid != "theirs" and "lid" in self.rule:
            found.append(("lids" if self.lid == "now" else "lids set later", self.rule["lid"]))
        if self.is_late and "temporary lid" in self.rule:
            found.append(("temporary lids", self.rule["temporary lid"]))
        return found


class Boxes:
    """Part of a job."""

    def all_boxes(self):
        return [box for slab in self.slabs for box in slab.boxes]

    def comes_back_for_lids(self):
        in_one = self.said("count days") == "by the job" and self.said("set lids") == "on a visit of their own"
        return in_one and any(box.is_late for box in self.all_boxes())

    def set_boxes(self):
        wanted = {}
        for box in self.all_boxes():
            for what, key in box.bought():
                wanted.setdefault((box.stock, what), (key, []))[1].append(D(1))
        for (stock, what), (key, parts) in sorted(wanted.items()):
            self.buy(key, f"{stock} {what}", parts)
        if self.comes_back_for_lids():
            self.role("trip", "trip to set lids", [D(1)])

    def box_tasks(self):
        found, work, rates = [], {}, self.book["rates"]
        for box in self.all_boxes():
            if box.adjust:
                work["adjust box"] = work.get("adjust box", D(0)) + 1
            elif "hours" in box.rule:
                task = f"set {box.stock}"
                found.append((task, D(1), f"{box.rule['hours']} per piece"))
            else:
                work["set box"] = work.get("set box", D(0)) + 1
            if box.is_late:
                work["set lid"] = work.get("set lid", D(0)) + 1
        if self.comes_back_for_lids():
            work["come back"] = D(1)
        together = {}
        for task, much, written in found:
            together.setdefault((task, written), []).append(much)
        own = [(task, sum(much), written, False) for (task, written), much in together.items()]
        return own + [(task, much, rates[task], False) for task, much in work.items()]
