"""Outlines as they are written: walked, by corners, and the shapes that have a name."""

from decimal import Decimal as D

from .reading import NotCovered, inches, number
from .shapes import STEPS, Outline, Side, cosine, sine

PI = D("3.1415926535897932384626433832795028841971693993751")
# Eighths of a turn from the east, the other way round than a clock.
EIGHTHS = {"east": 0, "northeast": 1, "north": 2, "northwest": 3, "west": 4, "southwest": 5}
EIGHTHS |= {"south": 6, "southeast": 7}


def circle(diameter):
    """Two half circles."""
    top, low = (D(0), diameter / 2), (D(0), -diameter / 2)
    return Outline([Side(low, top, diameter / 2, "open"), Side(top, low, diameter / 2, "open")], True)


def walked(legs):
    """Outline from (direction, inches, bulge, kind) as walked with the tape; without a direction
    the last goes straight back to the start."""
    sides, here = [], (D(0), D(0))
    for direction, length, bulge, kind in legs:
        there = (D(0), D(0))
        if direction:
            dx, dy = STEPS[direction]
            there = (here[0] + dx * length, here[1] + dy * length)
        sides.append(Side(here, there, bulge, kind))
        here = there
    assert here == (0, 0), "the walk does not close"
    return Outline(sides)


def polygon(corners, kinds=None):
    """Straight sides from corner to corner, counted from the first."""
    ends = corners[1:] + corners[:1]
    kinds = kinds or ["open"] * len(corners)
    return Outline([Side(a, b, D(0), kind) for a, b, kind in zip(corners, ends, kinds)])


def rectangle(east_west, north_south):
    """Its sides are numbered south, east, north, west."""
    turns = [("east", east_west), ("north", north_south), ("west", east_west), ("south", north_south)]
    return walked([(go, n, D(0), "open") for go, n in turns])


def sector(radius, degrees, toward):
    """A piece of a disk: two straight sides and the arc, whose middle looks `toward`."""
    middle, half = PI / 4 * EIGHTHS[toward], PI * degrees / 360
    place = lambda turn: (radius * cosine(turn), radius * sine(turn))
    centre, first, last = (D(0), D(0)), place(middle - half), place(middle + half)
    bow = radius * (1 - cosine(half))
    return Outline([Side(centre, first, D(0), "open"), Side(first, last, bow, "open"), Side(last, centre, D(0), "open")])


def ring_sector(large, small, degrees, toward):
    """A sector less the smaller one around the same centre: its area by the rule for a ring."""
    outer, inner = sector(large, degrees, toward).sides, sector(small, degrees, toward).sides
    first = Side(inner[1].start, outer[1].start, D(0), "open")
    last = Side(outer[1].end, inner[1].end, D(0), "open")
    outline = Outline([first, outer[1], last, Side(inner[1].end, inner[1].start, -inner[1].bulge, "open")])
    area = PI * (large**2 - small**2) * degrees / 360
    assert abs(outline.area - area) < D("1e-6"), "a ring sector by its corners"
    return outline


def right_triangle(wide, high, square):
    corners = {"southwest": (D(0), D(0)), "southeast": (wide, D(0)), "northeast": (wide, high), "northwest": (D(0), high)}
    del corners[{"southwest": "northeast", "northeast": "southwest", "southeast": "northwest", "northwest": "southeast"}[square]]
    return polygon(list(corners.values()))


def triangle(along, east, west):
    """By its tapes: along the south, from its east end, and back: the law of cosines says where they meet."""
    x = (along**2 + west**2 - east**2) / (2 * along)
    return polygon([(D(0), D(0)), (along, D(0)), (x, (west**2 - x**2).sqrt())])


def half_circle(diameter, flat):
    """The flat side stands at `flat`."""
    radius = diameter / 2
    ends = {"north": ((-radius, D(0)), (radius, D(0))), "south": ((radius, D(0)), (-radius, D(0)))}
    ends |= {"east": ((D(0), radius), (D(0), -radius)), "west": ((D(0), -radius), (D(0), radius))}
    a, b = ends[flat]
    return Outline([Side(a, b, radius, "open"), Side(b, a, D(0), "open")])


def named(size):
    """(outline, hole or None) of a shape with a name; None when it has none."""
    parts = [part.strip() for part in size.split(",")]
    if size.startswith("circle "):
        return circle(inches(size[7:])), None
    if size.startswith("ring sector "):
        large, small = (inches(part.removeprefix("ring sector ").rsplit(" ", 2)[0]) for part in parts[:2])
        return ring_sector(large, small, number(parts[2].removesuffix(" degrees")), parts[3].removeprefix("toward ")), None
    if size.startswith("ring "):
        outside, inside = (inches(part.removeprefix("ring ").rsplit(" ", 1)[0]) for part in parts)
        return circle(outside), circle(inside)
    if size.startswith("triangle ") and len(parts) == 2:
        wide, high = parts[0].removeprefix("triangle ").split(" x ")
        return right_triangle(inches(wide), inches(high), parts[1].removeprefix("square at ")), None
    if size.startswith("triangle "):
        return triangle(*(inches(part) for part in size.removeprefix("triangle ").split(" x "))), None
    if size.startswith("trapezoid "):
        south, north = (inches(part) for part in parts[0].removeprefix("trapezoid ").split(" and "))
        high = inches(parts[1].removesuffix(" apart"))
        shift = (south - north) / 2
        if len(parts) > 2:
            shift = {"square at west": D(0), "square at east": south - north}[parts[2]]
        corners = [(D(0), D(0)), (south, D(0)), (shift + north, high), (shift, high)]
        return polygon(corners), None
    if size.startswith("half circle "):
        return half_circle(inches(parts[0][12:]), parts[1].removeprefix("flat at ")), None
    if size.startswith("quarter circle "):
        radius = inches(parts[0].removeprefix("quarter circle ").removesuffix(" radius"))
        square = parts[1].removeprefix("square at ")
        toward = next(name for name, n in EIGHTHS.items() if n == (EIGHTHS[square] + 4) % 8)
        return sector(radius, D(90), toward), None
    if size.startswith("sector "):
        radius = inches(parts[0].removeprefix("sector ").removesuffix(" radius"))
        return sector(radius, number(parts[1].removesuffix(" degrees")), parts[2].removeprefix("toward ")), None
    if size.count(" x ") != 1 or not size[0].isdigit():
        raise NotCovered(f"size `{size}`")
    return None
