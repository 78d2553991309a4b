"""The time of the year: what the air is like on the day of a pour, and what is kept from freezing."""

from .reading import known, number

MONTHS = "january february march april may june july august september october november december".split()
CURE = {"cool", "warm", "normals", "winter", "cold below", "walk", "car", "heavier vehicle", "seal"}
CURE |= {"strength to walk", "strength for a car", "strength for a heavier vehicle"}


def nights(text):
    """`22 to 36 F`: the first of both; one figure is both."""
    return number(text.replace("F", "").split(" to ")[0].strip())


class Season:
    def night_of(self, day):
        """The normal of the month, else the plant's winter, else a cool spell."""
        cure = self.business.get("cure", {})
        known("cure", cure, CURE)
        month = MONTHS[int(day[5:7]) - 1]
        if month in cure.get("normals", {}):
            return nights(cure["normals"][month])
        winter = self.book.get("supply", {}).get("winter")
        if winter:
            first, last = winter["during"].split(" to ")
            at = day[5:]
            if first <= at <= last if first <= last else at >= first or at <= last:
                return nights(cure.get("winter", "35 to 45 F"))
        return number(cure.get("cool", "60"))

    def normal_by_day(self, day):
        """What the days of the month are like, as the crew pours by day; none where the month is not told."""
        told = self.business.get("cure", {}).get("normals", {}).get(MONTHS[int(day[5:7]) - 1])
        return told and told.replace("F", "").split(" to ")[-1].strip()

    def freezes(self, slab):
        """What lies outdoors, and is poured when nights are colder than the owner's limit."""
        limit = number(self.business.get("cure", {}).get("cold below", "40"))
        return not slab.inside and self.night_of(self.pours[slab.pour]["day"]) < limit

    def lies_under(self, slab):
        """A cover, or blankets, is taken off again."""
        return slab.curing == "cover" or "blankets" in self.book["use"] and self.freezes(slab)

    def lifting(self):
        """One visit to each pour of which something lies under a cover, where the book rates it."""
        if "lift covers" not in self.book["rates"]:
            return 0
        return len({slab.pour for slab in self.slabs if self.lies_under(slab)})
