"""A path of even width: offset lines cut with each other, arcs around the same middle.

Its area is the length of its middle line times its width; the outline made of its edges has to agree.
"""

from decimal import Decimal as D

from .reading import inches
from .shapes import STEPS, Outline, Side

HALF = D("0.5").sqrt()
WAYS = {name: (D(x), D(y)) for name, (x, y) in STEPS.items()}
WAYS |= {"northeast": (HALF, HALF), "southeast": (HALF, -HALF)}
WAYS |= {"southwest": (-HALF, -HALF), "northwest": (-HALF, HALF)}


def tidy(place):
    """What is off by less than an atom is not off."""
    return tuple(part.quantize(D("1e-30")) for part in place)


def left_of(way):
    return -way[1], way[0]


def plus(place, way, far):
    return place[0] + way[0] * far, place[1] + way[1] * far


def cross(a, b):
    return a[0] * b[1] - a[1] * b[0]


class Stretch:
    """From one place of the middle line to another; `bow` is how far its middle stands to the left."""

    def __init__(self, start, end, bow, ways):
        self.start, self.end, self.bow, self.ways = start, end, bow, ways
        self.middle = Side(start, end, bow, "open")

    def bowed(self, off):
        """The same of an edge so far to the left: its radius is larger or smaller, its angle the same."""
        if self.bow == 0:
            return D(0)
        toward = 1 if self.bow > 0 else -1
        return self.bow * (self.middle.radius() + toward * off) / self.middle.radius()


def leg(text):
    first, *rest = (part.strip() for part in text.split(","))
    way, long = first.split(" ", 1)
    bulge = bend = D(0)
    for part in rest:
        if part.startswith("bend "):
            bend = inches(part.removeprefix("bend ").removesuffix(" radius"))
        elif part.startswith("bulge left "):
            bulge = inches(part.removeprefix("bulge left "))
        else:
            bulge = -inches(part.removeprefix("bulge right "))
    return WAYS[way], inches(long), bulge, bend


def stretches(legs):
    """Legs, each cut back where a bend begins, and the bends between them."""
    here, taken, found = (D(0), D(0)), D(0), []
    for n, (way, long, bulge, bend) in enumerate(legs):
        end = plus(here, way, long)
        if bulge:
            # From the centre: a radius to each end, and the way square to it.
            radius = (long**2 / 4 + bulge**2) / (2 * abs(bulge))
            deep, side = radius - abs(bulge), 1 if bulge > 0 else -1
            centre = plus(plus(here, way, long / 2), left_of(way), -side * deep)
            ways = []
            for place in (here, end):
                spoke = ((place[0] - centre[0]) / radius, (place[1] - centre[1]) / radius)
                ways.append((side * spoke[1], -side * spoke[0]))
            found.append(Stretch(here, end, bulge, ways))
        else:
            after = legs[n + 1][0] if n + 1 < len(legs) else way
            turn, ahead = cross(way, after), 1 + way[0] * after[0] + way[1] * after[1]
            tangent = bend * abs(turn) / ahead
            first, last = plus(here, way, taken), plus(end, way, -tangent)
            if long - taken - tangent > D("1e-6"):
                found.append(Stretch(first, last, D(0), (way, way)))
            if tangent:
                rise = bend * (1 - (ahead / 2).sqrt())
                found.append(Stretch(last, plus(end, after, tangent), -rise if turn > 0 else rise, (way, after)))
            taken = tangent
        here = end
    return found


def corner(before, after, off):
    """Where the edges so far to the left of two stretches meet: their lines cut each other."""
    one, other = (before or after).ways, (after or before).ways
    one, other = (one[1] if before else one[0]), (other[0] if after else other[1])
    at = after.start if after else before.end
    first, second = plus(at, left_of(one), off), plus(at, left_of(other), off)
    turn = cross(one, other)
    if abs(turn) < D("1e-20"):
        return tidy(first)
    far = cross((second[0] - first[0], second[1] - first[1]), other) / turn
    return tidy(plus(first, one, far))


def path(legs, width):
    found = stretches([leg(text) for text in legs])
    pairs = list(zip([None, *found], [*found, None]))
    left, right = ([corner(a, b, off) for a, b in pairs] for off in (width / 2, -width / 2))
    sides = []

    def side(start, end, bulge, word):
        sides.append(Side(start, end, bulge, "open"))
        sides[-1].word = word

    for n, stretch in enumerate(found):
        side(right[n], right[n + 1], -stretch.bowed(-width / 2), "right")
    side(right[-1], left[-1], D(0), "end")
    for n, stretch in reversed(list(enumerate(found))):
        side(left[n + 1], left[n], stretch.bowed(width / 2), "left")
    side(left[0], right[0], D(0), "start")
    outline = Outline([s for s in sides if s.chord > D("1e-6")])
    area = sum(stretch.middle.length() for stretch in found) * width
    assert abs(area - outline.area) < D("1e-6") * 144, "the edges enclose something else"
    outline.area = area
    return outline
