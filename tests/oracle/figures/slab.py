"""One slab: its shape, its edges, its concrete, its steps and what goes deeper along them."""

import functools
from decimal import Decimal as D

from . import named, path, sides
from .boxes import Box
from .reading import FT, YARD, NotCovered, amount, inches, known, number, up

STRIP = {"house", "existing concrete", "doweled existing concrete", "curb", "isolated"}  # a strip, no form
FORMED = {"open", "bulkhead", "doweled bulkhead", "tied bulkhead", "keyed bulkhead"}
USUAL = {"thickness", "mix", "base", "bars", "mesh", "fiber", "finish", "border", "color", "seal"}
USUAL |= {"corner bars", "steel at joints", "allowance", "curing", "joints", "fall", "thickened", "vapor retarder", "dowels", "ties", "level base"}
USUAL |= {"carries", "inside"}
INSIDE = {"garage", "basement", "workshop"}  # kinds with a roof and walls
SLAB_KEYS = USUAL | {"size", "outline", "kind", "edges", "beside", "on", "steps", "stoop", "called"}
SLAB_KEYS |= {"path", "width", "boxes", "cut out", "siding clearance", "public", "cross fall", "lower", "levels", "meets"}
COMPASS = ("north", "east", "south", "west")
OPPOSITE = {"north": "south", "south": "north", "east": "west", "west": "east"}


def is_sharp(_, dot):
    """More than 30 degrees: its cosine is under half the root of three."""
    return dot < 0 or 4 * dot * dot < 3


def edge_kind(text):
    """`existing concrete, doweled` and `doweled existing concrete` are the same."""
    kind, _, pin = text.partition(", ")
    return f"{pin} {kind}" if pin else kind


class Piece:
    """A stretch of edge: which side, where along it (inches), what stands there."""

    def __init__(self, side, start, end, kind, strip=False):
        self.side, self.start, self.end, self.kind, self.strip = side, start, end, kind, strip
        self.face = None  # inches of it over a slab that lies lower
        self.beyond = None  # where another slab touches: that slab and its pieces here

    @property
    def feet(self):
        return (self.end - self.start) / FT


class Slab:
    def __init__(self, name, written, kinds, book, order):
        own = {"size": written} if isinstance(written, str) else written
        words = [own.get("kind", name), *reversed(name.split())]
        self.kind = next(word for word in words if word in kinds)
        known(f"slab {name}", own, SLAB_KEYS)
        known(f"kind {self.kind}", kinds[self.kind], USUAL)
        # What stands on another slab has no ground below, unless somebody says so.
        usual = {key: value for key, value in kinds[self.kind].items() if key != "base" or "on" not in own}
        self.name, self.own, self.value = name, own, {**usual, **own}
        self.pour = 0
        if "outline" in own:
            self.shape = named.walked([self.leg(text) for text in own["outline"]])
            middle = None
        elif "path" in own:
            self.shape, middle = path.path(own["path"], inches(own["width"])), None
        else:
            self.shape, middle = self.sized(own["size"])
        said = {edge: edge_kind(kind) for edge, kind in own.get("edges", {}).items()}
        sides.stand(said, own.get("size", "outline"), self.shape, middle)
        self.holes = [(middle, middle.sides[0].kind)] if middle else []
        self.holes += [self.hole(entry) for entry in own.get("cut out", [])]
        self.smallest = amount(order["smallest opening"])[0]
        # The middle of a ring is taken off however small it is.
        self.taken = [h for h, _ in self.holes if h is middle or h.area / 144 >= self.smallest]
        self.area = (self.shape.area - sum(h.area for h in self.taken)) / 144
        self.pieces = [Piece(s, D(0), s.length(), s.kind) for s in self.shape.sides]
        self.inner = [Piece(s, D(0), s.length(), kind) for h, kind in self.holes for s in h.sides]
        self.thin, self.thick, self.toward = self.thicknesses(self.value["thickness"])
        if self.value.get("level base") == "yes":
            self.on_level()
        self.boxes = [Box(entry, book) for entry in own.get("boxes", [])]
        self.flight = self.steps(own["steps"]) if "steps" in own else None
        self.stoop_of(own.get("stoop"))

    @property
    def is_step(self):
        """Formed and finished as one piece of work."""
        return self.kind == "step" and "steps" not in self.own

    @property
    def inside(self):
        """As it is said; else over a vapor retarder, or by its kind."""
        said = self.value.get("inside")
        if said is None:
            return self.value.get("vapor retarder") == "yes" or bool(INSIDE & set(self.kind.lower().split()))
        return said == "yes"

    @property
    def on_ground(self):
        return not self.is_step and "on" not in self.own

    @staticmethod
    def sized(size):
        found = named.named(size)
        if found:
            return found
        east_west, north_south = size.split(" x ")
        return named.rectangle(inches(east_west), inches(north_south)), None

    def hole(self, entry):
        """An opening where it lies: from two sides of the slab to its own nearest sides."""
        ((name, own),) = entry.items()
        known(f"cut out {name}", own, ("size", "at", "edge"))
        shape, middle = self.sized(own["size"])
        if middle:
            raise NotCovered(f"a ring in `{name}`")
        move = [D(0), D(0)]
        for part in own["at"].split(" and "):
            distance, side = part.split(" from ")
            axis = 0 if side in ("east", "west") else 1
            (low, high), (mine, other) = self.shape.bounds(axis), shape.bounds(axis)
            near = low + inches(distance) - mine
            move[axis] = near if side in ("west", "south") else high - inches(distance) - other
        return shape.moved(*move), edge_kind(own.get("edge", "open"))

    @staticmethod
    def leg(text):
        parts = [part.strip() for part in text.split(",")]
        direction, length = None, "0 in"
        if parts[0] != "back to start":
            direction, length = parts[0].split(" ", 1)
        if direction not in (None, *COMPASS):
            raise NotCovered(f"leg `{text}`")
        bulge, kind = D(0), "open"
        for part in parts[1:]:
            if part.startswith("bulge in "):
                bulge = -inches(part[9:])
            elif part.startswith("bulge "):
                bulge = inches(part[6:])
            elif part.startswith("against "):
                kind = part.removeprefix("against ")
            elif part in ("doweled", "tied"):
                kind = f"{part} {kind}"
            else:
                kind = part
        return direction, inches(length), bulge, kind

    def thicknesses(self, text):
        """`4 in to 6 in north`: thin and thick end, and where the thick one lies."""
        words = text.split()
        toward = words.pop() if words[-1] in COMPASS else None
        thin, _, thick = " ".join(words).partition(" to ")
        return inches(thin), inches(thick or thin), toward

    def on_level(self):
        """Its bottom is level: up along its fall it is thicker, by the fall times the run; by what was shot
        at corners of a rectangle that falls one way, by the difference of its two ends."""
        if "levels" in self.own:
            down = {name: inches(level.removesuffix(" down")) if level != "0" else D(0) for name, level in self.own["levels"].items()}
            side = next(s for s in COMPASS if all((s in name) == (level > 0) for name, level in down.items()))
            self.thick = self.thin + max(down.values())
        else:
            steep, _, side = self.value["fall"].rpartition(" ")
            low, high = self.shape.bounds(0 if side in ("east", "west") else 1)
            self.thick = self.thin + inches(steep.removesuffix(" per ft")) * (high - low) / FT
        self.toward = OPPOSITE[side]

    def thickness_at(self, place):
        """At a place along the way to the thick end: it rises evenly."""
        low, high = self.shape.bounds(0 if self.toward in ("east", "west") else 1)
        far = place - low if self.toward in ("east", "north") else high - place
        return self.thin + ((self.thick - self.thin) * far / (high - low)).quantize(D("1e-25"))

    @functools.cached_property
    def mean(self):
        """As thick as in the middle of what is poured; halfway, if nobody said where the thick end is."""
        if not self.toward:
            return (self.thin + self.thick) / 2
        axis = 0 if self.toward in ("east", "west") else 1
        moment = self.shape.moment(axis) - sum(h.moment(axis) for h in self.taken)
        return self.thickness_at(moment / (self.shape.area - sum(h.area for h in self.taken)))

    def deepest(self, piece):
        """The greatest thickness along the side of a piece."""
        if not self.toward:
            return self.thick
        shapes = [self.shape, *(hole for hole, _ in self.holes)]
        shape = next(shape for shape in shapes if piece.side in shape.sides)
        ends = shape.reach(piece.side, 0 if self.toward in ("east", "west") else 1)
        return max(self.thickness_at(end) for end in ends)

    def steps(self, written):
        """A flight leads down from an edge, which is joined there and has no form."""
        if isinstance(written, str):
            own = {}
            for part in written.split(", "):
                if " risers of " in part:
                    own["risers"], own["rise"] = part.split(" risers of ")
                elif " riser of " in part:
                    own["risers"], own["rise"] = part.split(" riser of ")
                elif part.endswith((" treads", " tread")):
                    own["tread"] = part.rsplit(" ", 1)[0]
                elif part.endswith(" wide"):
                    own["width"] = part[:-5]
                elif part.endswith((" thick", " bottom")):
                    own["bottom"] = part.removesuffix(" bottom")
                elif part.startswith("base "):
                    own["base"] = part[5:]
                elif " no. " in part:
                    own["bars"] = part
                elif part.endswith(" edge") or part.startswith("from side "):
                    own["from"] = part.removeprefix("from ")
                elif " from " in part:
                    own["at"] = part
                elif part.endswith(" in all"):
                    own["in all"] = part
                else:
                    raise NotCovered(f"steps `{part}`")
        else:
            own = written
        known("steps", own, ("risers", "rise", "tread", "width", "from", "at", "in all", "base", "bars", "bottom"))
        side = self.leads_down(own["from"].removesuffix(" edge"), own.get("width"))
        length = side.length()
        width = inches(own["width"]) if "width" in own else length
        start = (length - width) / 2
        if "at" in own:
            distance, corner = own["at"].removesuffix(" end").split(" from ")
            axis = 0 if side.start[1] == side.end[1] else 1
            forward = side.start[axis] < side.end[axis]
            from_low = corner in ("west", "south")
            start = inches(distance) if forward == from_low else length - inches(distance) - width
        self.cut(side, start, start + width, "joined")
        return {
            "risers": D(own["risers"]),
            "rise": inches(own["rise"]),
            "tread": inches(own.get("tread", "0 in")),
            "width": width,
            "base": own.get("base", "none"),
            "bars": own.get("bars"),
            "thick": inches(own["bottom"].removesuffix(" thick")) if own.get("bottom", "level") != "level" else None,
        }

    def leads_down(self, name, width):
        """The side with this number, or the only one looking that way that is open and has room."""
        if name.startswith("side "):
            return self.shape.sides[int(name.removeprefix("side ")) - 1]
        found = [s for s in self.shape.sides if s.bulge == 0 and self.shape.looks(s) == name]
        if len(found) > 1:
            need = inches(width) if width else D(0)
            found = [s for s in found if s.kind == "open" and s.length() >= need]
        if len(found) != 1:
            raise NotCovered(f"steps from {name}, which {len(found)} sides look")
        return found[0]

    def stoop_of(self, words):
        """Solid: as thick as its steps are high. Filled: walls of that height around fill."""
        self.walls = self.fill_of = self.height = None
        if words is None:
            return
        self.height = self.flight["risers"] * self.flight["rise"]
        if words == "solid":
            self.thin = self.thick = self.height
            return
        first, walls = words.split(", ")
        self.fill_of = first.removeprefix("filled").removeprefix(" with ").strip() or None
        self.walls = inches(walls.removesuffix(" walls"))

    def cut(self, side, start, end, kind):
        """Makes a stretch of one side another kind."""
        pieces = []
        for piece in self.pieces:
            if piece.side is not side or piece.end <= start or end <= piece.start:
                pieces.append(piece)
                continue
            low, high = max(start, piece.start), min(end, piece.end)
            parts = [(piece.start, low, piece.kind), (low, high, kind), (high, piece.end, piece.kind)]
            pieces += [Piece(side, a, b, k) for a, b, k in parts if a < b]
        self.pieces = pieces
        return [p for p in pieces if p.side is side and start <= p.start and p.end <= end]

    def touch(self, compass, low, high, kind):
        """A stretch between two places on the ground, along x or y."""
        side = self.shape.facing(compass)
        axis = 0 if compass in ("north", "south") else 1
        first, last = side.start[axis], side.end[axis]
        start, end = (low - first, high - first) if first < last else (first - high, first - low)
        return self.cut(side, start, end, kind)

    # ---- along the edges

    @functools.cached_property
    def along(self):
        """What goes deeper along the edges: its pieces, width, depth, taper and bars; or None."""
        if self.walls is not None:
            return {"pieces": self.pieces, "width": self.walls, "depth": self.height, "taper": D(0), "bars": None}
        own, own_size = self.value.get("thickened", "none"), self.own.get("size", "outline")
        if own == "none":
            return None
        if isinstance(own, str):
            first, *rest = own.split(", ")
            text, own = own, {"edges": first}
            for part in rest:
                if part.endswith(" wide"):
                    own["width"] = part[:-5]
                elif part.endswith(" deep"):
                    own["depth"] = part[:-5]
                elif part.startswith("taper "):
                    own["taper"] = part[6:]
                elif " no. " in part:
                    own["bars"] = part
                elif part not in ("turndown", "thickened"):
                    raise NotCovered(f"thickened `{text}`")
        known("thickened", own, ("edges", "width", "depth", "taper", "bars", "kind"))
        edges = own["edges"]
        names = edges if isinstance(edges, list) else edges.replace(" and ", ", ").split(", ")
        chosen = []
        for name in names:
            if name == "all":
                chosen += self.pieces
            elif name == "all open":
                chosen += [p for p in self.pieces if p.kind == "open"]
            elif name.isdigit():
                chosen += [p for p in self.pieces if p.side is self.shape.sides[int(name) - 1]]
            elif name in COMPASS:
                looking = [s for s in self.shape.sides if s.bulge == 0 and self.shape.looks(s) == name]
                chosen += [p for p in self.pieces if p.side in looking]
            else:
                along = sides.meant(name, own_size, self.shape)
                chosen += [p for p in self.pieces if p.side in along]
        return {
            "pieces": [p for p in self.pieces if p in chosen],
            "width": inches(own["width"]),
            "depth": inches(own["depth"]),
            "taper": inches(own.get("taper", "0 in")),
            "bars": own.get("bars"),
        }

    def corners(self, chosen):
        """(piece that ends there, piece that begins there), for every corner of the outline."""
        sides = self.shape.sides
        for n, side in enumerate(sides):
            after = sides[(n + 1) % len(sides)]
            last = max((p for p in self.pieces if p.side is side), key=lambda p: p.end)
            first = min((p for p in self.pieces if p.side is after), key=lambda p: p.start)
            yield side, after, last in chosen, first in chosen

    def joints_across(self, axis):
        """Where joints cross the bars that lie at places of this axis: even panels of a plain rectangle."""
        if not self.shape.is_rectangle() or self.holes or self.boxes:
            raise NotCovered("joints of a slab that is no plain rectangle")
        low, high = self.shape.bounds(1 - axis)
        if self.value.get("joints", "none") == "none":
            return []
        many = int(up((high - low) / inches(self.value["joints"]), D(1)))
        return [low + (high - low) * n / many for n in range(1, many)]

    def sharp_corners(self):
        """Corners by more than 30 degrees where bars of two thick edges meet."""
        return sum(1 for s, n, here, there in self.corners(self.along["pieces"]) if here and there and is_sharp(*self.shape.turn(s, n)))

    def inside_corners(self):
        """Corners that turn into the slab by more than 30 degrees: of its edge, but where slabs of the same
        pour fill them; of openings and of square boxes that are taken off."""
        joined = [p for p in self.pieces if p.kind == "joined"]
        found = 0
        for side, after, here, there in self.corners(joined):
            cross, dot = self.shape.turn(side, after)
            found += cross < 0 and is_sharp(cross, dot) and not (here and there)
        for hole in self.taken:
            turns = [hole.turn(s, hole.sides[(n + 1) % len(hole.sides)]) for n, s in enumerate(hole.sides)]
            found += sum(1 for cross, dot in turns if cross > 0 and is_sharp(cross, dot))
        return found + 4 * sum(1 for box in self.boxes if box.is_square and box.area >= self.smallest)

    @functools.cached_property
    def strip(self):
        """Square feet of the bottom that is at full depth, and of the slope beside it."""
        return self.strip_of(self.along["taper"])

    def strip_of(self, taper):
        """The same with a slope that runs this far in.

        Each corner between two strips takes off tan(turn / 2) of a square, an inside corner adds
        it; where a strip ends at a bare side, half of the cotangent of the inside angle; an arc
        half of its angle.
        """
        chosen = self.along["pieces"]
        length = sum(p.end - p.start for p in chosen)
        k = D(0)
        for side, after, here, there in self.corners(chosen):
            cross, dot = self.shape.turn(side, after)
            if here and there:
                k += cross / (1 + dot)
            elif (here or there) and cross > 0:  # beyond an inside corner it ends square
                k += -dot / cross / 2
        for piece in chosen:
            if piece.side.bulge:
                bend = piece.side.angle() * (piece.end - piece.start) / piece.side.length()
                k += bend / 2 if piece.side.bulge > 0 else -bend / 2
        width = self.along["width"]
        flat = length * width - k * width**2
        slope = length * taper / 2 - k * taper * (width + taper / 3)
        return flat / 144, slope / 144

    @functools.cached_property
    def thickened(self):
        return D(0) if self.along is None else self.edge_below(D(0))

    def edge_below(self, level):
        """Cubic yards of thick edges more than so many inches below the slab."""
        below = self.goes_below() - level
        if below <= 0:
            return D(0)
        return sum(self.strip_of(self.along["taper"] * below / (below + level))) * below / YARD

    def goes_below(self):
        ends = {self.shape.looks(p.side) for p in self.along["pieces"]}
        thickness = self.mean
        if self.toward and ends == {self.toward}:
            thickness = self.thick
        elif self.toward and ends == {OPPOSITE[self.toward]}:
            thickness = self.thin
        return self.along["depth"] - thickness

    @functools.cached_property
    def concrete(self):
        flat = self.area * self.mean / YARD
        flat -= sum(b.displaced(self.mean) for b in self.boxes if b.area >= self.smallest)
        return flat + self.thickened + self.step_concrete

    @property
    def step_concrete(self):
        if not self.flight:
            return D(0)
        f = self.flight
        return f["width"] / FT * f["tread"] * self.below_treads / 3888

    @property
    def below_treads(self):
        """Inches below all treads together: one rise, two, and so on; or all alike where they go up with the ground."""
        f, n = self.flight, self.flight["risers"]
        return f["thick"] * (n - 1) if f["thick"] else f["rise"] * n * (n - 1) / 2

    @property
    def riser_form(self):
        return self.flight["risers"] * self.flight["width"] / FT if self.flight else D(0)

    @property
    def step_sides(self):
        return 2 * (self.flight["risers"] - 1) * self.flight["tread"] / FT if self.flight else D(0)

    @property
    def face(self):
        """Square feet of risers and of the treads below the slab."""
        if not self.flight:
            return D(0)
        f, n = self.flight, self.flight["risers"]
        return (n * f["width"] * f["rise"] + (n - 1) * f["tread"] * f["width"]) / 144

    @property
    def fill(self):
        if self.walls is None:
            return D(0)
        return (self.area - self.strip[0]) * (self.height - self.thin) / YARD

    def depth(self, piece):
        """How deep the form of an edge is: between two slabs as deep as the deeper."""
        if piece.face is not None and piece.kind not in FORMED:
            return piece.face
        if piece.beyond is None:
            return max(piece.face or D(0), self.own_depth(piece))
        other, theirs = piece.beyond
        return max([piece.face or D(0), self.own_depth(piece), *(other.own_depth(p) for p in theirs)])

    def own_depth(self, piece):
        deep = [self.deepest(piece)]
        if self.height is not None:
            deep.append(self.height)
        if self.along and piece in self.along["pieces"]:
            deep.append(self.along["depth"])
        return max(deep)

    def formed(self):
        return [p for p in self.pieces + self.inner if p.kind in FORMED or p.face is not None]

    def spans(self, axis, at):
        """Stretches of the slab on a line, without what is left open in it; a line that only touches
        an opening is not cut there."""
        spans = self.shape.spans(axis, at)
        for hole, _ in self.holes:
            for low, high in hole.over(axis, at):
                if low == high:
                    continue
                cut = []
                for start, end in spans:
                    cut += [(a, b) for a, b in ((start, min(end, low)), (max(start, high), end)) if a < b]
                spans = cut
        return spans

    def forms_apart(self):
        """(feet, ends, curved) of each piece of form; one that closes on itself has no end."""
        pieces = self.formed()
        for shape in (self.shape, *(hole for hole, _ in self.holes)):
            here = [p for p in pieces if p.side in shape.sides]
            if shape.is_round and here:
                yield sum(p.feet for p in here), 0, True
            else:
                yield from ((p.feet, 1, p.side.bulge != 0) for p in here)

    def form(self, limit):
        """Feet of straight, deep and curved form; a limit of None makes nothing deep."""
        straight = deep = curved = D(0)
        for piece in self.formed():
            if piece.side.bulge:
                curved += piece.feet
            elif limit is not None and limit < self.depth(piece):
                deep += piece.feet
            else:
                straight += piece.feet
        return straight, deep, curved

    def past(self, chosen, out):
        """Square feet outside of these pieces, so far out: corners stand out square, an arc swells."""
        length, k = sum(p.end - p.start for p in chosen), D(0)
        for side, after, here, there in self.corners(chosen):
            cross, dot = self.shape.turn(side, after)
            if here and there:
                k += cross / (1 + dot)
            elif (here or there) and cross < 0:  # in an inside corner it ends at the bare side
                k += dot / -cross / 2
        for piece in chosen:
            if piece.side.bulge:
                bend = piece.side.angle() * (piece.end - piece.start) / piece.side.length()
                k += bend / 2 if piece.side.bulge > 0 else -bend / 2
        return (length * out + k * out**2) / 144

    def runs_under(self, order):
        """Whether the base lies below thick edges too; the walls of a stoop stand on it."""
        return self.walls is not None or order["base under edges"] == "yes"

    def faces(self, limit):
        """Square feet of straight, deep and curved form, each as high as its edge is deep."""
        straight = deep = curved = D(0)
        for piece in self.formed():
            face = piece.feet * (self.depth(piece) if piece in self.pieces else self.deepest(piece)) / FT
            if piece.side.bulge:
                curved += face
            elif limit is not None and limit < self.depth(piece):
                deep += face
            else:
                straight += face
        return straight, deep, curved

    @property
    def riser_face(self):
        return self.riser_form * self.flight["rise"] / FT if self.flight else D(0)

    @property
    def side_face(self):
        if not self.flight:
            return D(0)
        return 2 * self.flight["tread"] * self.below_treads / 144

    def base_area(self, order):
        deep = self.along["pieces"] if self.along and not self.runs_under(order) else []
        open_ones = [p for p in self.pieces if p.kind == "open" and p not in deep]
        return self.area + self.past(open_ones, inches(order["base past forms"]))

    def base(self, order):
        """Compacted yards where it lies, of what; (0, None) without a base."""
        text = self.value.get("base", "none")
        if text == "none":
            return D(0), None
        depth, material = text.split(" of ")
        yards = self.base_area(order) * inches(depth) / YARD
        if self.along and not self.runs_under(order):
            yards -= self.thickened - self.edge_below(inches(depth))
        return yards, material

    @property
    def step_base_area(self):
        return (self.flight["risers"] - 1) * self.flight["tread"] * self.flight["width"] / 144

    @property
    def step_base(self):
        """Compacted yards under the steps below the slab."""
        if not self.flight or self.flight["base"] == "none":
            return D(0), None
        depth, material = self.flight["base"].split(" of ")
        return self.step_base_area * inches(depth) / YARD, material

    def dug(self, order):
        """(square feet, yards beside their depth) where soil is dug out under it."""
        open_ones = [p for p in self.pieces if p.kind == "open"]
        area = self.area + self.past(open_ones, inches(order["dig past forms"]))
        deeper = self.step_base[0]
        if self.along and self.walls is None:
            text = self.value.get("base", "none")
            level = D(0) if text == "none" or self.runs_under(order) else inches(text.split(" of ")[0])
            deeper += self.edge_below(level)
        return area, deeper

    def border(self):
        """(square feet, finish) of the band along the open edges."""
        text = self.value.get("border", "none")
        if text == "none":
            return D(0), None
        width, finish = text.split(" of ")
        width = inches(width) / FT
        chosen = [p for p in self.pieces if p.kind == "open"]
        square = D(0)
        for side, after, here, there in self.corners(chosen):
            cross, dot = self.shape.turn(side, after)
            if here and there and dot == 0:
                square += 1 if cross > 0 else -1
        return sum(p.feet for p in chosen) * width - square * width**2, finish
