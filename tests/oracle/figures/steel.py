"""Bars and their cut plan, mesh, laps."""

from decimal import ROUND_HALF_UP
from decimal import Decimal as D

from .reading import FT, inches, known, up


HAIR = D("1e-9")


def lap_of(size, rule):
    """So many bar diameters; a bar's number is its diameter in eighths of an inch."""
    return D(size.removeprefix("no. ")) / 8 * D(rule.get("lap", "40"))


def spliced(length, stock, lap):
    """A run longer than a stick takes (run - lap) / (stock - lap) sticks, up to a whole one."""
    pieces = up((length - lap) / (stock - lap), D(1)) if length > stock else D(1)
    return length, int(pieces)


def feet(runs, lap):
    return sum(length + (pieces - 1) * lap for length, pieces in runs) / FT


def bars(slab, cover, stock, lap, at_joints):
    """Runs of bar as (inches, sticks spliced).

    Spacing is a maximum: gaps that fit up to a whole one, evenly spread between the covers;
    each line is clipped to the slab less the cover at both ends; under 6 in nothing is laid.
    Where steel is cut at joints every bar, or every other from the second on, ends a cover short of each.
    """
    every = {"through": 0, "every other": 2, "cut": 1}[slab.value.get("steel at joints", at_joints)]
    spacing = inches(slab.value["bars"].split(" at ")[1])
    runs = []
    for axis in (1, 0):
        low, high = slab.shape.bounds(axis)
        usable = high - low - 2 * cover
        gaps = up(usable / spacing, D(1)) if usable > 0 else D(0)
        places = [low + cover + usable * i / gaps for i in range(int(gaps) + 1)] if gaps else []
        for number, at in enumerate(places or [(low + high) / 2], 1):
            # Without cover the outermost lie along the edge, and are as long as the slab just inside it.
            within = min(max(at, low + HAIR), high - HAIR)
            cuts = slab.joints_across(axis) if every and number % every == 0 else []
            for start, end in slab.spans(axis, within):
                ends = [start, *(cut for cut in cuts if start < cut < end), end]
                for one, other in zip(ends, ends[1:]):
                    length = (other - one - 2 * cover).quantize(D("1e-7"), ROUND_HALF_UP)
                    if length >= 6:
                        runs.append(spliced(length, stock, lap))
    return runs


def edge_bars(slab, cover, stock, lap):
    """So many bars along each stretch that goes deeper, less the cover at both ends; pieces of
    one side that meet are one stretch, whatever stands beyond them."""
    count, size = slab.along["bars"].split(" ", 1)
    ends = []
    for piece in slab.along["pieces"]:
        if ends and ends[-1][0] is piece.side and ends[-1][2] == piece.start:
            ends[-1][2] = piece.end
        else:
            ends.append([piece.side, piece.start, piece.end])
    lengths = [end - start - 2 * cover for _, start, end in ends]
    lengths = [length for length in lengths if length >= 6]  # too short for any bar, as in the mat
    return size, [spliced(length, stock, lap) for length in lengths] * int(count)


def step_bars(slab, cover, stock, lap):
    """So many along each step below the slab, less the cover at both ends."""
    count = int(slab.flight["bars"].split(" ", 1)[0]) * (int(slab.flight["risers"]) - 1)
    length = slab.flight["width"] - 2 * cover
    return [spliced(length, stock, lap)] * (count if length >= 6 else 0)


def across(slab, usual):
    """(size, inches, how many) of the bars across its inside corners; what is usual is for slabs with bars."""
    bars = slab.value.get("bars", "none")
    said = slab.value.get("corner bars", usual if bars != "none" else "none")
    if said == "none":
        return None
    each, length = said.split(", ")
    count, size = each.split(" ", 1)
    size = bars.split(" at ")[0] if size in ("bar", "bars") else size
    return None if size == "none" else (size, inches(length.removesuffix(" long")), int(count) * slab.inside_corners())


def chair(slab, usual, items):
    """The chair nearest to where the steel belongs, from the middle of the slab up to a cover of a quarter
    of it, 1 1/2 to 2 1/2 in; of equals the one that brings it nearest to the cover."""
    if "height" not in items[usual]:
        return usual
    bars = slab.value.get("bars", "none")
    thick = D(0) if bars == "none" else 2 * D(bars.split(" at ")[0].removeprefix("no. ")) / 8
    high = slab.thin - min(max(slab.thin / 4, D("1.5")), D("2.5")) - thick
    low = min((slab.thin - thick) / 2, high)
    # Bars may hang 3/8 in low, but nothing is taken off the cover.
    is_off = lambda height: height > high or low - height > D("0.375")
    tall = {key: inches(item["height"]) for key, item in items.items() if "height" in item}
    return min(tall, key=lambda key: (is_off(tall[key]), max(low - tall[key], tall[key] - high, D(0)), abs(high - tall[key]), tall[key]))


def sticks(runs, stock, lap):
    """Longest piece first, each into the fullest stick that still holds it."""
    whole, rests = 0, []
    for length, pieces in runs:
        whole += pieces - 1
        rests.append(length - (pieces - 1) * (stock - lap))
    left = []
    for piece in sorted(rests, reverse=True):
        fits = [room for room in left if room >= piece]
        if fits:
            left.remove(min(fits))
            left.append(min(fits) - piece)
        else:
            left.append(stock - piece)
    return whole + len(left)


def mesh(slab, rule, cover, roll):
    """Whole sheets, or so much of a roll: they become whole when those of all slabs are added up.

    On a rectangle strips lie side by side, each but the first a lap less wide, and sheets in a
    strip end to end the same; the better of both ways. Elsewhere area over net cover.
    """
    known("mesh", rule, ("item", "width", "length", "lap"))
    lap, width, length = (inches(rule.get(*one)) for one in (("lap", "6 in"), ("width", "5 ft"), ("length", "10 ft")))
    if not slab.shape.is_rectangle():
        by_area = slab.area * 144 / ((width - lap) * (length - lap))
        return by_area if roll else up(by_area, D(1))
    sides = [high - low - 2 * cover for low, high in (slab.shape.bounds(0), slab.shape.bounds(1))]
    along = (lambda room: room / (length - lap)) if roll else (lambda room: side_by_side(room, length, lap))
    return min(side_by_side(a, width, lap) * along(b) for a, b in (sides, sides[::-1]))


def side_by_side(room, each, lap):
    """So many pieces reach across: the first as wide as it is, each further one a lap less."""
    return 1 + max(up((room - each) / (each - lap), D(1)), D(0))
