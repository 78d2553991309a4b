"""Pump, buggy and breaker: hired for the time the crew works with them."""

from decimal import Decimal as D

from .reading import amount, inches, known, rate, singular, up

ONCE = ("base charge", "travel", "prime", "washout")
PUMP = ("item", "rate", "set up", "travel time", "hose", *ONCE)


class Machines:
    def pumped(self):
        by_pump = [n for n, pour in enumerate(self.pours) if pour["by"] == "pump"]
        return [n for n in by_pump if any(order.pour == n for order in self.orders)]

    def pump_trips(self):
        """Once a pour, where the book says nothing of a hire."""
        for n in self.pumped() if "pump" not in self.book else ():
            self.role("pump", f"pump, pour {n + 1}", [D(1)], n)

    def pumps(self):
        """What it pumps in an hour, and no less than the pour is placed; set up and travel; the rest once a
        pour; hose by the foot."""
        hire = self.book.get("pump")
        placed = {day["pour"]: day["placing_hours"] for day in self.finishing}
        for n in self.pumped() if hire else ():
            pour = self.pours[n]
            known("pump", hire, PUMP)
            yards = sum(order.placed for order in self.orders if order.pour == n)
            hours = max(yards / rate(hire["rate"])[0], placed[n + 1])
            hours += sum(amount(hire.get(key, "0 hours"))[0] for key in ("set up", "travel time"))
            hours = self.set(f"pump time, pour {n + 1}", hours)
            self.buy(hire["item"], f"pump hours, pour {n + 1}", [hours], n)
            for key in ONCE:
                if key in hire:
                    self.buy(hire[key], f"pump {key}, pour {n + 1}", [D(1)], n)
            hose = hire.get("hose")
            if hose and pour["distance"] is not None:
                known("hose", hose, ("included", "item"))
                more = pour["distance"] - inches(hose.get("included", "0 ft"))
                if more > 0:
                    self.buy(hose["item"], f"pump hose, pour {n + 1}", [more / 12], n)

    def hire(self, key, name, person_hours, pour=None):
        """The crew works at once: person hours ÷ people, by the hour, or by the day as it is sold:
        without a step of its own by whole days."""
        time = person_hours / D(self.crew["people"])
        if singular(self.item(key)["unit"]) == "day":
            time /= amount(self.crew["hours in a day"])[0]
            if "sold in" not in self.item(key):
                time = up(time, D(1))
        self.buy(key, name, [time], pour)

    def machines(self, hours):
        """A buggy for every pour placed by it, for as long as the crew places with it; one breaker a job."""
        buggy = self.book.get("buggy")
        orders = [order for order in self.orders if order.by == "buggy"]
        if buggy and orders:
            known("buggy", buggy, ("item", "width"))
            for n in sorted({order.pour for order in orders}):
                here = sum(self.placing_of(order) for order in orders if order.pour == n)
                self.hire(buggy["item"], f"buggy, pour {n + 1}", here, n)
        key = self.role_of("breaking machine") if self.by_machine else None
        if key:
            self.hire(key, "breaking machine", sum(hours[task] for task in self.by_machine))
