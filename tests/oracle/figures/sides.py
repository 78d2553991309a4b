"""Which side of a shape a name means: where it looks, how long it is, its number, its word."""

from decimal import Decimal as D

from .reading import NotCovered, inches

WAYS = {(0, 1): "north", (1, 1): "northeast", (1, 0): "east", (1, -1): "southeast"}
WAYS |= {(0, -1): "south", (-1, -1): "southwest", (-1, 0): "west", (-1, 1): "northwest"}


def looks(outline, side):
    """By signs of what points out of the slab; a side nearly along an axis is along it."""
    tiny = D("1e-9")
    sign = lambda part: 0 if abs(part) < tiny else (1 if part > 0 else -1)
    return WAYS[tuple(sign(part) for part in outline.outward(side))]


def words(size, outline, side, n):
    """What its shape calls the nth side."""
    kind = size.split(" ")[0]
    if size.startswith("ring sector"):
        return {1: {"outer arc"}, 3: {"inner arc"}}.get(n, set())
    if side.bulge:
        return {"arc"}
    if kind == "half":
        return {"flat side"}
    if kind == "trapezoid":
        return {1: {"east end"}, 3: {"west end"}}.get(n, set())
    if kind == "triangle" and "square at" in size:
        way = looks(outline, side)
        return {"base" if way in ("north", "south") else "height" if way in ("east", "west") else "long side"}
    return set()


def meant(name, size, outline):
    """The sides that a name means; of a ring `inner arc` is not among them."""
    pairs = list(enumerate(outline.sides))
    if outline.is_round:
        # Both halves are one side.
        if name not in ("arc", "outer arc"):
            raise NotCovered(f"`{name}` of a circle")
        return outline.sides
    bare = name.removesuffix(" side").removesuffix(" edge")
    if bare in ("left", "right", "start", "end"):
        # The edges of a path; left and right may be of many pieces.
        return [s for s in outline.sides if s.word == bare]
    number = bare.removeprefix("side ")
    if number.isdigit():
        return [outline.sides[int(number) - 1]]
    if bare in WAYS.values():
        found = [s for _, s in pairs if looks(outline, s) == bare]
    elif name[0].isdigit():
        off = lambda s: abs(s.length() - inches(name))
        near = min(off(s) for _, s in pairs)
        found = [s for _, s in pairs if off(s) <= (D("0.02") if near <= D("0.02") else D("0.5"))]
    else:
        found = [s for n, s in pairs if name in words(size, outline, s, n)]
    if len(found) != 1:
        raise NotCovered(f"`{name}` means {len(found)} sides of `{size}`")
    return found


def stand(edges, size, outline, middle):
    """Puts what `edges` says where it means; `all` is for sides that nothing else is said of."""
    inner = middle.sides if middle else []
    of = lambda name: inner if inner and name == "inner arc" else meant(name, size, outline)
    said = [side for side in outline.sides if side.kind != "open"]
    for name, kind in edges.items():
        if name != "all":
            for side in of(name):
                side.kind = kind
                said.append(side)
    for side in (*outline.sides, *inner):
        if "all" in edges and not any(side is one for one in said):
            side.kind = edges["all"]
