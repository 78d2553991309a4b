"""The day of each pour: trucks, placing, finishing before it sets, and how long all of it takes."""

from decimal import Decimal as D

from .reading import amount, known, percent

POUR_DAY = {"setting": "6 hours", "temperature": "70", "stiff after": "40%", "longest day": "10 hours"}
POUR_DAY |= {"people at once": "6", "between trucks": "20 min", "chute": "18 ft"}
AFTERWARDS = ("joints by early saw", "cover slabs")


def by_temperature(degrees):
    """Half for 20 degrees more than 70, twice for 20 less, straight in between."""
    twenties = (70 - degrees) / 20
    whole = int(twenties // 1) if twenties >= 0 else -int(-twenties // 1) - (1 if twenties % 1 else 0)
    return D(2) ** whole * (1 + twenties - whole)


def in_minutes(text):
    much, unit = amount(text)
    return much * 60 if unit.startswith("hour") else much


def longest_wait(trucks, between):
    """Each truck begins when it is there and the one before it is empty; (hour of the clock) when the last ends."""
    clock = D(0)
    for n, minutes in enumerate(trucks):
        clock = max(clock, n * between) + minutes
    return clock


class Finish:
    def full_truck(self):
        full = amount(self.book["supply"].get("truck", "10 cu yd"))[0]
        return min(full, amount(self.job["truck"])[0]) if "truck" in self.job else full

    def finish(self, entries):
        """The days of all pours with slabs, each as the figures of its row."""
        rules = POUR_DAY | self.business.get("pour day", {})
        known("pour day", rules, POUR_DAY)
        return [self.finished(pour, rules, entries) for pour in sorted({slab.pour for slab in self.slabs})]

    def finished(self, pour, rules, entries):
        part = "pour" if len(self.pours) == 1 else f"pour {pour + 1}"
        supply, people = self.book["supply"], D(self.crew["people"])
        slabs = [slab for slab in self.slabs if slab.pour == pour]
        orders = [order for order in self.orders if order.pour == pour]
        own = lambda fits: [one for one in entries if fits(one[0])]
        first = min({slab.pour for slab in self.slabs}, key=lambda one: (self.date_of(one), one))
        hours = lambda fits: self.hours_on(own(fits), "place", slabs, pour == first)
        is_placing = lambda name: name.startswith("place by ") or name == "mix bags"
        mixed = hours(lambda name: name == "mix bags")
        cover = hours(lambda name: name in AFTERWARDS)
        finish = hours(lambda name: not is_placing(name) and name not in AFTERWARDS)
        by_truck = [order for order in orders if not order.makes]
        trucks = [load * self.minutes_a_yard(order) for order in by_truck for load in order.loads]
        between = in_minutes(rules["between trucks"])
        may = in_minutes(supply.get("discharge within", "90 min")) - in_minutes(supply.get("on the road", "0 min"))
        placing = self.set(f"{part} placing", longest_wait(trucks, between) / 60 + mixed / people)
        placed = sum((self.placing_of(order) for order in by_truck), D(0))
        work = self.set(f"{part} work", mixed + placed + finish + cover)
        hands = min(people, D(rules["people at once"]))
        finishing = self.set(f"{part} finishing", finish / hands)
        said = self.pours[pour]["temperature"] or self.job.get("temperature")
        said = said or self.normal_by_day(self.pours[pour]["day"]) or rules["temperature"]
        mixes = [percent(self.book["mixes"][order.mix].get("setting", "100%")) for order in orders]
        setting = amount(rules["setting"])[0] * by_temperature(D(said)) * min(mixes)
        setting = self.set(f"{part} setting", setting)
        day = placing + max(finishing, setting * percent(rules["stiff after"])) + cover / people
        return {
            "pour": D(pour + 1),
            "people": people,
            "cubic_yards": sum(order.placed for order in orders),
            "trucks": D(len(trucks)),
            "truck_minutes": max(trucks, default=None),
            "truck_may": may,
            "placing_hours": placing,
            "person_hours": work,
            "finishing_hours": finishing,
            "setting_hours": setting,
            "day_hours": self.set(f"{part} day", day),
            "day_may": amount(rules["longest day"])[0],
        }
