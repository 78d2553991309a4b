"""Where slabs touch, neither has a form of its own, or only one of them."""

from decimal import Decimal as D

from .reading import inches
from .slab import OPPOSITE


def share_edges(slabs):
    """`beside` makes the shared stretch joined, with no form and no strip, or between two pours
    or mixes a form of the first pour; of one pour, of the older slab. A strip said on the slab
    that is placed stays, counted once. `on` leaves the slab below as it is."""
    by_name = {slab.name: slab for slab in slabs}
    for slab in slabs:
        if "beside" not in slab.own:
            continue
        base, edge, end = (part.strip() for part in slab.own["beside"].split(","))
        base, edge = by_name[base], edge.removesuffix(" edge")
        distance, _, corner = end.removesuffix(" end").rpartition("from ")
        offset = inches(distance.strip()) if distance.strip() else D(0)
        axis = 0 if edge in ("north", "south") else 1
        theirs, mine = base.shape.facing(edge), slab.shape.facing(OPPOSITE[edge])
        low, high = sorted((theirs.start[axis], theirs.end[axis]))
        my_low, my_high = sorted((mine.start[axis], mine.end[axis]))
        if corner in ("north", "east"):
            stop = high - offset
            start = stop - (my_high - my_low)
        else:
            start = low + offset
            stop = start + (my_high - my_low)
        move = start - my_low
        start, stop = max(start, low), min(stop, high)
        if stop <= start:
            continue
        kind, their_kind = mine.kind, "joined"
        if mine.kind == "open":
            kind = "joined"
            if (slab.pour, slab.value["mix"]) != (base.pour, base.value["mix"]):
                first = slab.pour < base.pour
                kind, their_kind = ("bulkhead", "joined") if first else ("joined", "bulkhead")
        base.touch(edge, start, stop, their_kind)
        slab.touch(OPPOSITE[edge], start - move, stop - move, kind)
