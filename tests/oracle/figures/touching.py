"""Where slabs touch, neither has a form of its own, or only one of them."""

from decimal import Decimal as D

from .reading import inches
from .slab import OPPOSITE, STRIP


def share_edges(slabs):
    """`beside` makes the shared stretch joined, with no form and no strip, or between two pours
    or mixes a form of the first pour; of one pour, of the older slab. `on` leaves the slab below
    as it is."""
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
        kinds = met(slab, base, mine.kind, theirs.kind)
        parts = slab.touch(OPPOSITE[edge], start - move, stop - move, kinds[0])
        others = base.touch(edge, start, stop, kinds[1])
        if "lower" in slab.own:
            for piece in others:
                piece.face = inches(slab.own["lower"])
        # On a step-down each form holds the slab whose edge it is: the other lies lower, or upon it.
        for part, other in () if "lower" in slab.own else ((parts, (base, others)), (others, (slab, parts))):
            for piece in part:
                piece.beyond = other


PINS = ("doweled", "tied")
BULKHEADS = {"bulkhead", "keyed bulkhead", *(f"{pin} bulkhead" for pin in PINS)}


def met(slab, base, mine, theirs):
    """Of one pour whatever somebody says stands once, and else nothing. Of two pours the first
    ends at a form, and a strip is put beside it when it is off, so it is the second's."""
    if (slab.pour, slab.value["mix"]) == (base.pour, base.value["mix"]):
        if mine not in ("open", "joined"):
            return mine, "joined"
        return "joined", theirs if theirs != "open" else "joined"
    if slab.pour >= base.pour:
        return two_pours(theirs, mine)[::-1]
    return two_pours(mine, theirs)


def two_pours(first, second):
    """(what stands at the first pour, what at the second). Bars go through the form of the slab
    that names them; a hole is drilled only where the form is gone."""
    pin = next((pin for pin in PINS if first.startswith(pin)), None)
    if pin is None and second in BULKHEADS and second.startswith(PINS):
        return "joined", second
    # A key is nailed to the form of the first pour, whoever names it.
    plain = "keyed bulkhead" if "keyed bulkhead" in (first, second) else "bulkhead"
    strip = "isolated" if {first, second} & STRIP else "joined"
    if pin is None and second.startswith(PINS):
        return plain, second
    if pin is None and second in STRIP:
        return plain, second
    return f"{pin} bulkhead" if pin else plain, strip
