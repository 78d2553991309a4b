"""One job at other prices: two estimates beside each other, the step between them, and headroom.

By the rules in DEVELOPERS.md, "How is a difference between two books told?", and in README.md,
"When ready-mix moves".
"""

import copy
import functools
from decimal import Decimal as D

from .job import Job
from .reading import cents, percent, singular

GROUPS = ("prices", "rules of buying", "what follows")


class Asked(Job):
    """A job of which the prices of one day, or other prices, are asked."""

    bought_on = None  # all on this day, whenever it is poured
    what_ifs = ()  # (item, "+8%" or "172.50"), one after the other
    moved = ("", D(0))  # this item, so much dearer, every day

    def buying_day(self, pour):
        return self.bought_on or super().buying_day(pour)

    def stays(self, key, pour):
        """A price that is held stays, whatever is supposed."""
        return self.held(key, self.buying_day(pour)) is not None

    def price(self, key, pour):
        """No price is rounded before it is multiplied."""
        price = super().price(key, pour)
        if not self.stays(key, pour):
            for item, to in self.what_ifs:
                if item == key:
                    price = price * (1 + percent(to)) if to.endswith("%") else D(to)
        item, more = self.moved
        return price + more if item == key else price

    def chosen(self, taken):
        """The estimate with these options taken."""
        options = dict(self.combinations())[tuple(taken)]
        job, added = copy.copy(self), [option.get("add", []) for option in options]
        if any("change" in option or "drop" in option for option in options):
            job, added = self.written_in(options), []
        told, totals = job.priced_as_bought(added)
        return Estimate(job, job.lines, told, totals)


class Estimate:
    def __init__(self, job, lines, told, totals):
        """`told` begins with the lines of what is bought; the rest was added to them."""
        self.job, self.lines, self.totals = job, lines, totals
        self.direct = [(line.cause, line.title, line.kind, line.value) for line in lines + job.charged]
        self.added = []
        for title, _, value in told[len(self.direct) :]:
            if title.endswith(" paid on purchases"):
                self.direct.append((title, title, "fee", value))
            else:
                self.added.append((title, title, None, value))

    def at_prices_of(self, other):
        """The same things at the prices of the other estimate."""
        job = copy.copy(self.job)
        job.lines = []
        for line in self.lines:
            each = line.key and second_price(line, other)
            job.lines.append(line if each is None else line._replace(value=cents(line.much * each), each=each))
        told, totals = job.sell()
        return Estimate(job, job.lines, told, totals)


def second_price(line, other):
    """What the other book asks for the same need by the same unit, else for the item of this name
    by this unit; else nothing, and the price stays as it was."""
    for one in other.lines:
        if one.cause == line.cause and one.unit == line.unit and one.key:
            return one.each
    item = other.job.book["items"].get(line.key)
    if item and singular(item["unit"]) == line.unit:
        return other.job.price(line.key, line.pour)
    return None


def joined(old, new):
    """(class, title, by) of each cause whose amount changed, in the words of the first that has it."""
    found = {}
    for sign, lines in ((-1, old), (1, new)):
        for cause, title, kind, value in lines:
            one = found.setdefault(cause, [kind, title, D(0)])
            one[2] += sign * value
    return [tuple(one) for one in found.values() if one[2]]


def causes(old, new):
    """(group, class, title, by): other prices, then other rules of buying, then what follows."""
    between = old.at_prices_of(new)
    steps = joined(old.direct, between.direct), joined(between.direct, new.direct), joined(old.added, new.added)
    return [(group, *one) for group, step in zip(GROUPS, steps) for one in step]


class Quote:
    """A quote that is out, as quoted or as signed, and the same at other prices."""

    def __init__(self, number, state, old, new, taken):
        self.number, self.state, self.taken, self.asked = number, state, taken, new
        customer = new.job["customer"]
        self.customer = customer.split(",")[0] if isinstance(customer, str) else customer["name"]
        self.old, self.new = old.chosen(taken), new.chosen(taken)
        self.floor = percent(new.business["price"].get("margin floor", "0%")) * 100

    def margin(self, cost):
        """Of the price that was promised."""
        price = self.old.totals["price"]
        return (price - cost) / price * 100

    def harm(self):
        return self.new.totals["cost"] - self.old.totals["cost"]

    def causes(self):
        return causes(self.old, self.new)

    def prices(self, item):
        """Of the item on the day of each pour."""
        return [self.asked.price(item, n) for n in range(len(self.asked.pours))]

    def step(self, item):
        """A cent, or the last place of the prices where they have more."""
        places = max(-price.normalize().as_tuple().exponent for price in self.prices(item))
        return D(1).scaleb(-max(places, 2))

    @functools.cache
    def stands(self, item, to, floor):
        """Whether the margin is no lower than this when the item of the first day costs `to`."""
        dearer = copy.copy(self.asked)
        dearer.moved = (item, to - self.prices(item)[0])
        return self.margin(dearer.chosen(self.taken).totals["cost"]) >= floor
