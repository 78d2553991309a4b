"""Placing: hours by what goes over which way, and the minutes a truck is at the slab."""

from decimal import Decimal as D

from .reading import amount, inches, known, percent, rate

# Common practice, no source: so much more for each stretch past the usual way.
WAYS = {"chute": "20% per 10 ft past 20 ft", "wheelbarrow": "10% per 50 ft past 50 ft"}
WAYS |= {"buggy": "5% per 100 ft past 100 ft", "pump": "5% per 100 ft past 100 ft"}


class Placing:
    def way(self, pour):
        """How many times as long it takes over the way of a pour."""
        own = self.book.get("way", {})
        known("way", own, WAYS)
        more, stretch = {**WAYS, **own}[pour["by"]].split(" per ")
        each, past = stretch.split(" past ")
        longer = (pour["distance"] or D(0)) - inches(past)
        return 1 + percent(more) * max(longer, D(0)) / inches(each)

    def as_usual(self, order):
        """What of the task an order is, as much over the usual way."""
        by_area = amount(self.book["rates"][f"place by {order.by}"].split(" per ")[1])[1] == "sq ft"
        much = sum(slab.area for slab in order.slabs) if by_area else order.placed
        if order.makes:
            return D(0)  # mixed and placed by one rate
        return much * self.way(self.pours[order.pour])

    def person_hours(self, task, much, written):
        """A set number of hours is final, not multiplied, and in the unit of its rate."""
        each, unit = rate(written)
        crew_hours = D(self.crew["people"]) if unit.startswith("crew") else 1
        hard = percent(self.job.get("difficulty", self.crew["difficulty"]))
        return self.set(f"{task} hours", much * each * crew_hours * hard / (60 if unit == "min" else 1), unit)

    def placing_of(self, order):
        """Its share of the hours that all orders placed like it take."""
        task = f"place by {order.by}"
        alike = sum(self.as_usual(one) for one in self.orders if one.by == order.by)
        if not alike:
            return D(0)
        return self.person_hours(task, alike, self.book["rates"][task]) * self.as_usual(order) / alike

    def minutes_a_yard(self, order):
        """The longer of what the way of placing takes and what the crew takes."""
        unloaded = rate(self.book["rates"][f"unload by {order.by}"])[0]
        placed = self.placing_of(order) * 60 / D(self.crew["people"]) / order.total if order.total else D(0)
        placed = self.set(f"{order.name} minutes to place a yard", placed)
        return self.set(f"{order.name} minutes to unload a yard", max(unloaded, placed))
