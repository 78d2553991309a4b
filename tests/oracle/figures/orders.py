"""Concrete: one order for each mix and color of a pour, its loads, and what the plant charges."""

import datetime
from decimal import ROUND_FLOOR
from decimal import Decimal as D

from .reading import YARD, NotCovered, amount, inches, known, percent, rate, singular, up

SUPPLY = {"sold in", "smallest order", "truck", "short load", "free time", "pump prime", "loads"}
SUPPLY |= {"discharge within", "on the road", "called yards", "fees", "zones", "saturday", "winter", "on call", "returned"}


class Order:
    """What is ordered of one mix in one color for one pour."""

    def __init__(self, pour, mix, color):
        self.pour, self.mix, self.color, self.slabs = pour, mix, color, []
        self.bags = self.makes = None

    def net(self):
        return sum(slab.concrete for slab in self.slabs)

    def over(self, usual, said=()):
        """Over the drawing, as a part of it: each slab's, by its concrete. What the slab says itself, else
        what its pour or its job says, else its kind, else the business."""
        said = [one for one in said if one is not None]
        part = lambda slab: slab.own.get("allowance") or next(iter(said), slab.value.get("allowance", usual))
        return sum(slab.concrete * percent(part(slab)) for slab in self.slabs) / self.net()


def filled(total, truck, evened, step):
    """Trucks are filled in turn, the last takes the rest; or evened, as many first ones as need be with a step more."""
    if not evened:
        loads = []
        while total > 0:
            loads.append(min(total, truck))
            total -= loads[-1]
        return loads
    count = int(up(total / truck, D(1)))
    each = (total / count / step).to_integral_value(ROUND_FLOOR) * step if count else D(0)
    loads = [each] * count
    for n in range(count):
        loads[n] += min(step, total - sum(loads), truck - each)
    left = total - sum(loads)
    return filled(total, truck, False, step) if left else loads


def alone(supply, order):
    """Whether what waits comes by itself."""
    own = {"on the last truck": False, "on their own truck": True}
    return own[supply.get("called yards", "on the last truck")] or order.waits > order.loads[-1]


class Orders:
    """Part of a job: it uses the book, the takeoff and the slabs of the rest."""

    def order_concrete(self):
        known("supply", self.book["supply"], SUPPLY)
        found = {}
        for slab in self.slabs:
            key = (slab.pour, slab.value["mix"], slab.color)
            found.setdefault(key, Order(*key)).slabs.append(slab)
        self.orders = sorted(found.values(), key=lambda order: order.pour)
        for order in self.orders:
            makes = self.book["mixes"][order.mix].get("yield")
            order.makes = makes and amount(makes)[0]
        for order in self.orders:
            self.size(order)
        self.hold_back()
        for order in self.orders:
            if not order.makes:
                self.charge(order)

    def size(self, order):
        """Net and the largest of three allowances, once an order, up to the plant's step."""
        supply, policy = self.book["supply"], self.order
        order.name = order.mix + (f" {order.color}" if order.color else "") + " order"
        if len(self.pours) > 1:
            order.name += f", pour {order.pour + 1}"
        net = self.set(f"{order.name} net", order.net())
        said = (self.pours[order.pour]["allowance"], self.job.get("allowance"))
        # Ground dug too deep takes more; what stands on a slab, and a step, has none under it.
        area = sum((slab.area for slab in order.slabs if slab.on_ground), D(0))
        deep = area * inches(policy["thickness allowance"]) / YARD
        least = amount(policy["smallest allowance"])[0]
        more = max(net * order.over(policy["allowance"], said), deep, D(0) if order.makes else least)
        more = self.set(f"{order.name} allowance", more)
        method = self.pours[order.pour]["by"]
        # The prime of the pump is lost once a pour; it belongs to the largest order.
        same = [one for one in self.orders if one.pour == order.pour and not one.makes]
        largest = max(same, key=lambda one: (one.net(), self.orders.index(one)), default=None)
        prime = D(0)
        if method == "pump" and order is largest:
            prime = amount(supply.get("pump prime", "0 cu yd"))[0]
        if order.makes:
            return self.by_the_bag(order, self.set(order.name, net + more), method)
        step = amount(supply.get("sold in", "1/4 cu yd"))[0]
        poured = up(net + more + prime, step)
        total = self.set(order.name, max(poured, amount(supply.get("smallest order", "0 cu yd"))[0]))
        # What is left over is paid, and not placed.
        order.needed, order.placed = total, total if order.name in self.job.get("set", {}) else poured
        more, filling = self.ordering.get(order.name, (D(0), supply.get("loads", "in turn")))
        total += more
        self.buy_exactly(self.book["mixes"][order.mix]["item"], total, order.name, order.pour)
        order.total, order.by, order.waits = total, method, None
        ways = {"in turn": False, "evened": True}
        truck = self.full_truck()
        order.fill = lambda yards: filled(yards, truck, ways[filling], step)
        order.loads, order.trucks = order.fill(total), up(total / truck, D(1))
        order.back = D(0)
        if "returned" in supply:
            free = amount(supply["returned"].get("over", "0 cu yd"))[0]
            order.back = max(total - net - prime - free, D(0))

    def by_the_bag(self, order, total, method):
        """Whole bags, mixed by hand: no truck, no step of the plant, nothing that it charges."""
        order.bags = self.set(f"{order.name} bags", up(total * 27 / order.makes, D(1)))
        self.buy_exactly(self.book["mixes"][order.mix]["item"], order.bags, f"{order.name} bags", order.pour)
        order.total = order.placed = total
        order.by, order.waits, order.loads, order.trucks, order.back = method, None, [], D(0), D(0)

    def hold_back(self):
        """A part of the largest order of each pour waits for a call: on the last truck where that
        carries as much, else, or where the plant sends it so, on trucks of its own."""
        truck = self.full_truck()
        held = amount(self.job.get("hold back", "0 cu yd"))[0]
        for pour in range(len(self.pours)) if held else ():
            same = [order for order in self.orders if order.pour == pour and not order.makes]
            if not same:
                continue
            order = max(same, key=lambda one: (one.total, self.orders.index(one)))
            order.waits = self.set(f"{order.name} on call", min(held, order.total))
            if alone(self.book["supply"], order):
                firm = max(order.total - order.waits, D(0))
                order.loads = order.fill(firm) + order.fill(order.total - firm)
                order.trucks = up(firm / truck, D(1)) + up(order.waits / truck, D(1))
        for order in self.orders:
            order.trucks = order.trucks if order.makes else self.set(f"{order.name} loads", order.trucks)

    def cheapest(self, added):
        """The cheapest way to place each order in turn, the whole job priced for each; ties to less change."""
        self.ordering = {}
        least = self.priced(added)[1]["direct"]
        supply = self.book["supply"]
        usual, truck = supply.get("loads", "in turn"), self.full_truck()
        mine = self.job.get("set", {})
        for name in [order.name for order in self.orders if order.name not in mine and not order.makes]:
            before, best = dict(self.ordering), None
            order = next(order for order in self.orders if order.name == name)
            ways = ("in turn", "evened") if order.needed else ()
            tried = [(more, way != usual, way) for way in ways for more in self.more_yards(order, way == "evened", truck)]
            for more, _, filling in sorted(tried):
                self.ordering = before | {name: (more, filling)}
                direct = self.priced(added)[1]["direct"]
                if direct < least:
                    least, best = direct, (more, filling)
            self.ordering = before | ({name: best} if best else {})
        return self.ordering

    def more_yards(self, order, evened, truck):
        """Nothing more; each step that leaves fewer loads short than any before it; full trucks."""
        supply, needed = self.book["supply"], order.needed
        step = amount(supply.get("sold in", "1/4 cu yd"))[0]
        full = up(needed / truck, D(1)) * truck
        found, rule = {D(0), full - needed}, supply.get("short load")
        under = amount(rule["under"])[0] if rule else D(0)

        def lacking(total):
            loads = filled(total, truck, evened, step)
            if order.waits:
                own = supply.get("called yards") == "on their own truck" or order.waits > loads[-1]
                waits = min(order.waits, total)
                if own:
                    loads = filled(total - waits, truck, evened, step) + filled(waits, truck, evened, step)
            looked = {"by truck": loads, "by order": [total], "on the last truck": loads[-1:]}
            return sum(1 for load in looked[rule.get("counted", "by truck")] if 0 < load < under)

        if rule:
            fewest, total = lacking(needed), up(needed, step)
            while fewest and total <= max(full, under):
                if lacking(total) < fewest:
                    fewest = lacking(total)
                    found.add(total - needed)
                total += step
        return sorted(found)

    def short(self, order):
        rule = self.book["supply"].get("short load")
        if rule is None:
            return D(0)
        known("short load", rule, ("under", "counted", "charge"))
        under, counted = amount(rule["under"])[0], rule.get("counted", "by truck")
        looked = {"by truck": order.loads, "by order": [order.total], "on the last truck": order.loads[-1:]}
        short = [under - load for load in looked[counted] if load < under]
        return D(len(short)) if rule.get("charge", "each yard") == "flat" else sum(short, D(0))

    def standing(self, order):
        """Each truck: its minutes past the free ones, up to a whole minute."""
        slow = self.minutes_a_yard(order)
        free = self.book["supply"].get("free time", "1000 min per cu yd")
        minutes, per = rate(free)[0], amount(free.split(" per ")[1])[1]
        if per == "load":
            past = [load * slow - minutes for load in order.loads]
        else:
            past = [load * (slow - minutes) for load in order.loads]
        return self.set(f"{order.name} standing", sum((up(p, D(1)) for p in past if p > 0), D(0)))

    def charge(self, order):
        supply, pour = self.book["supply"], self.pours[order.pour]
        for role, what, much in (
            ("delivery", "loads", order.trucks),
            ("short load", "short", self.short(order)),
            ("standing time", "standing", self.standing(order)),
        ):
            key = self.role_of(role)
            if key:
                self.buy_exactly(key, much, f"{order.name} {what}", order.pour)
        day = datetime.date.fromisoformat(pour["day"])
        items = [(key, key) for key in supply.get("fees", [])]
        if "zone" in self.job:
            key = supply["zones"][self.job["zone"]]
            items += [] if key == "none" else [(key, f"zone {self.job['zone']}")]
        # A day that was only counted from the day of the quote is not a Saturday yet.
        if "saturday" in supply and pour["said"] and day.weekday() == 5:
            items.append((supply["saturday"], "Saturday"))
        if "winter" in supply:
            first, last = supply["winter"]["during"].split(" to ")
            at = pour["day"][5:]
            if first <= at <= last if first <= last else at >= first or at <= last:
                items.append((supply["winter"]["item"], "winter"))
        opens = order is next(one for one in self.orders if one.pour == order.pour and not one.makes)
        for key, what in items:
            counts = {"load": order.trucks, "cu yd": order.total}
            unit = singular(self.item(key)["unit"])
            if unit not in counts and unit != "trip":
                raise NotCovered(f"{what} charged by the {unit}")
            much = counts.get(unit, D(1) if opens else D(0))
            self.buy(key, f"{order.name} {what}", [much], order.pour)
        if order.waits is not None and "on call" in supply:
            key = supply["on call"]
            by_yard = self.item(key)["unit"] == "cu yd"
            self.buy(key, f"{order.name} call", [order.waits if by_yard else D(1)], order.pour)
        if order.back > 0:
            key = supply["returned"]["item"]
            by_yard = self.item(key)["unit"] == "cu yd"
            self.buy(key, f"{order.name} returned", [order.back if by_yard else D(1)], order.pour)
