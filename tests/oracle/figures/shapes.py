"""Plane outlines for the oracle: sides straight or bowed, area, lines across.

Everything is in inches, in `decimal` with 50 digits. x grows to the east, y to the north.
"""

import functools
from decimal import Decimal as D
from decimal import getcontext

getcontext().prec = 50
STEPS = {"north": (0, 1), "east": (1, 0), "south": (0, -1), "west": (-1, 0)}


def arctan(x):
    """Halves the argument until the series is quick, then sums it."""
    halvings = 0
    while abs(x) > D("0.01"):
        x = x / (1 + (1 + x * x).sqrt())
        halvings += 1
    total, power, n = D(0), x, 1
    while abs(power) > D("1e-48"):
        total += power / n if n % 4 == 1 else -power / n
        power, n = power * x * x, n + 2
    return total * 2**halvings


def sine(x):
    total, term, n = D(0), x, 1
    while abs(term) > D("1e-48"):
        total += term
        term, n = -term * x * x / ((n + 1) * (n + 2)), n + 2
    return total


def cosine(x):
    return 1 - 2 * sine(x / 2) ** 2


class Side:
    """From one corner to the next; `bulge` is how far the middle of a bow stands outside."""

    def __init__(self, start, end, bulge, kind):
        self.start, self.end, self.bulge, self.kind = start, end, bulge, kind
        self.chord = ((end[0] - start[0]) ** 2 + (end[1] - start[1]) ** 2).sqrt()

    @functools.cached_property
    def turned(self):
        return 4 * arctan(2 * abs(self.bulge) / self.chord)

    def angle(self):
        return self.turned

    def radius(self):
        rise = abs(self.bulge)
        return (self.chord**2 / 4 + rise**2) / (2 * rise)

    def length(self):
        return self.chord if self.bulge == 0 else self.radius() * self.angle()

    def bow_area(self):
        """Area between chord and bow: sector less triangle; negative for a bow inward."""
        if self.bulge == 0:
            return D(0)
        radius, rise = self.radius(), abs(self.bulge)
        area = radius**2 * self.angle() / 2 - (radius - rise) * self.chord / 2
        return area if self.bulge > 0 else -area


class Outline:
    def __init__(self, sides, is_round=False):
        self.sides, self.is_round = sides, is_round
        doubled = sum(s.start[0] * s.end[1] - s.end[0] * s.start[1] for s in sides)
        self.clockwise = doubled < 0
        self.area = abs(doubled) / 2 + sum(s.bow_area() for s in sides)

    def outward(self, side):
        """Unit vector that points out of the slab: left of the walk when it goes clockwise."""
        dx, dy = ((side.end[i] - side.start[i]) / side.chord for i in (0, 1))
        return (-dy, dx) if self.clockwise else (dy, -dx)

    @functools.cached_property
    def polygon(self):
        """Corners, with every bow made chords: halved until none stands off by over 1/32 in."""
        return [corner for side in self.sides for corner in self.corners_of(side)]

    def corners_of(self, side):
        corners = [side.start]
        if side.bulge == 0:
            return corners
        angle, radius, chords = side.angle(), side.radius(), 1
        while radius * (1 - cosine(angle / chords / 2)) > D(1) / 32:
            chords *= 2
        out = self.outward(side)
        along = [(side.end[i] - side.start[i]) / side.chord for i in (0, 1)]
        sign = 1 if side.bulge > 0 else -1
        deep = radius - abs(side.bulge)  # from the chord back to the centre
        for n in range(1, chords):
            turn = angle * n / chords - angle / 2
            x, y = side.chord / 2 + radius * sine(turn), radius * cosine(turn) - deep
            corners.append(tuple(side.start[i] + along[i] * x + out[i] * sign * y for i in (0, 1)))
        return corners

    def moment(self, axis):
        """The area integral of coordinate `axis`, by Green: half its square along the edge, times
        what the other coordinate grows there. Cubic inches; straight sides and arcs exactly."""
        round_it = (-1 if self.clockwise else 1) * (1 if axis == 0 else -1)
        total = D(0)
        for side in self.sides:
            (a, c), (b, d) = ((place[axis], place[1 - axis]) for place in (side.start, side.end))
            if side.bulge == 0:
                total += (d - c) * (a * a + a * b + b * b) / 6
                continue
            radius, sign, out = side.radius(), 1 if side.bulge > 0 else -1, self.outward(side)
            back = sign * (abs(side.bulge) - radius)
            centre = [(side.start[i] + side.end[i]) / 2 + out[i] * back for i in (axis, 1 - axis)]

            def grown(here, other, turned):
                cos, sin = (here - centre[0]) / radius, (other - centre[1]) / radius
                square = centre[0] ** 2 * sin + centre[0] * radius * (turned + sin * cos)
                return radius / 2 * (square + radius**2 * (sin - sin**3 / 3))

            total += grown(b, d, round_it * sign * side.angle()) - grown(a, c, D(0))
        return round_it * total

    def reach(self, side, axis):
        """How far a side comes both ways along an axis; a circle is one side."""
        sides = self.sides if self.is_round else [side]
        places = [corner[axis] for one in sides for corner in (*self.corners_of(one), one.end)]
        return min(places), max(places)

    def bounds(self, axis):
        places = [corner[axis] for corner in self.polygon]
        return min(places), max(places)

    def spans(self, axis, at):
        """Stretches inside the slab on the line where coordinate `axis` is `at`; on a line that
        runs along an edge only what has slab on both sides of it."""
        below = self.crossed(axis, lambda corner: corner[axis] < at, at)
        above = self.crossed(axis, lambda corner: corner[axis] <= at, at)
        both = sorted((max(a, c), min(b, d)) for a, b in below for c, d in above)
        spans = []
        for start, end in both:
            if spans and spans[-1][1] == start:  # it only touches a corner there
                spans[-1] = (spans[-1][0], end)
            elif start < end:
                spans.append((start, end))
        return spans

    def crossed(self, axis, is_before, at):
        corners, other, hits = self.polygon, 1 - axis, []
        for a, b in zip(corners, corners[1:] + corners[:1]):
            if is_before(a) != is_before(b):
                part = (at - a[axis]) / (b[axis] - a[axis])
                hits.append(a[other] + part * (b[other] - a[other]))
        hits.sort()
        assert len(hits) % 2 == 0, "a line enters as often as it leaves"
        return list(zip(hits[::2], hits[1::2]))

    def over(self, axis, at):
        """The same of an opening: also where the line runs along one of its edges."""
        below = self.crossed(axis, lambda corner: corner[axis] < at, at)
        return below or self.crossed(axis, lambda corner: corner[axis] <= at, at)

    def moved(self, east, north):
        move = lambda place: (place[0] + east, place[1] + north)
        sides = [Side(move(s.start), move(s.end), s.bulge, s.kind) for s in self.sides]
        return Outline(sides, self.is_round)

    def looks(self, side):
        """The direction a straight side looks to, if it is one of the four."""
        out = self.outward(side) if side.bulge == 0 else None
        return next((name for name, step in STEPS.items() if step == out), None)

    def tangents(self, side):
        """Directions of the walk where a side begins and where it ends."""
        along = tuple((side.end[i] - side.start[i]) / side.chord for i in (0, 1))
        if side.bulge == 0:
            return along, along
        out, sign, radius = self.outward(side), 1 if side.bulge > 0 else -1, side.radius()
        c, s = (radius - abs(side.bulge)) / radius, side.chord / 2 / radius * sign
        return tuple(tuple(along[i] * c + out[i] * s * way for i in (0, 1)) for way in (1, -1))

    def turn(self, side, after):
        """Sine and cosine of the turn from one side to the next; outward corners are positive."""
        a, b = self.tangents(side)[1], self.tangents(after)[0]
        cross, dot = a[0] * b[1] - a[1] * b[0], a[0] * b[0] + a[1] * b[1]
        return (-cross if self.clockwise else cross), dot

    def is_rectangle(self):
        return len(self.sides) == 4 and all(s.bulge == 0 and self.looks(s) for s in self.sides)

    def facing(self, compass):
        """The straight side that looks that way and lies farthest out; the longest of several."""
        want = STEPS[compass]
        found = [s for s in self.sides if s.bulge == 0 and self.outward(s) == want]
        reach = lambda s: s.start[0] * want[0] + s.start[1] * want[1]
        return max(found, key=lambda s: (reach(s), s.chord))
