"""What slabs need beside concrete: base, steel, forms, sheets, curing, finishes, colors, sealers."""

from decimal import Decimal as D

from . import steel
from .reading import FT, NotCovered, amount, inches, known, number, percent, rate, singular, up
from .slab import STRIP

FINISH = ("says", "hours", "items", "trips", "color", "seal", "curing", "troweled")


# Pounds in a foot, ASTM A615/A615M, as restated on secondary pages.
WEIGHT = {"no. 3": D("0.376"), "no. 4": D("0.668"), "no. 5": D("1.043"), "no. 6": D("1.502")}

class Goods:
    def goods(self):
        self.base_and_fill()
        self.steel()
        self.forms()
        self.curing()
        self.fiber()
        self.put_on()

    def base_and_fill(self):
        parts = {}
        for slab in self.slabs:
            for yards, material in (slab.base(self.order), slab.step_base, (slab.fill, slab.fill_of)):
                if material:
                    parts.setdefault(material, []).append(yards)
        for material, yards in sorted(parts.items()):
            rule = self.book["bases"][material]
            known("base", rule, ("item", "delivered"))
            factor = rate(rule["delivered"])[0]
            self.buy(rule["item"], f"base, {material}", [n * factor for n in yards])

    def counted(self, size, key, sticks, stock):
        """What they are called and how much there is: pieces, feet, or pounds by the nominal weight of a foot."""
        item = self.item(key)
        name = {"ft": f"{size} bars by the foot", "lb": f"{size} bars by weight"}.get(item["unit"], f"{size} bars")
        each = {"ft": stock / 12, "lb": stock / 12 * WEIGHT[size]}.get(item["unit"], D(1))
        smallest = not item.get("at least", "$").startswith("$")
        return (f"{name} as sold" if "sold in" in item or smallest else name), [sticks * each]

    def steel(self):
        cover, by_size = inches(self.order["cover"]), {}
        self.placed = D(0)
        for slab in self.slabs:
            laid = []
            if slab.value.get("bars", "none") != "none":
                size = slab.value["bars"].split(" at ")[0]
                laid.append((size, f"{slab.name} bars", steel.bars))
            across = steel.across(slab, self.order["corner bars"])
            if across:
                laid.append((across[0], f"{slab.name} corner bars", "across"))
            if slab.along and slab.along["bars"]:
                laid.append((slab.along["bars"].split(" ", 1)[1], f"{slab.name} edge bars", None))
                if self.order["bent corner bars"] == "yes":
                    laid.append((slab.along["bars"].split(" ", 1)[1], f"{slab.name} bent corner bars", "bent"))
            if slab.flight and slab.flight["bars"] and slab.flight["risers"] > 1:
                laid.append((slab.flight["bars"].split(" ", 1)[1], f"{slab.name} step bars", "steps"))
            for size, name, lay in laid:
                rule = self.book["bars"][size]
                known(f"bars {size}", rule, ("item", "stock", "lap"))
                stock, lap = inches(rule.get("stock", "20 ft")), steel.lap_of(size, rule)
                if lay == "steps":
                    runs = steel.step_bars(slab, cover, stock, lap)
                elif lay == "across":
                    runs = [steel.spliced(across[1], stock, lap)] * across[2] if across[1] >= 6 else []
                elif lay == "bent":
                    count = int(slab.along["bars"].split(" ", 1)[0]) * slab.sharp_corners()
                    runs = [steel.spliced(2 * lap, stock, lap)] * count
                elif lay:
                    runs = lay(slab, cover, stock, lap, self.order["steel at joints"])
                else:
                    runs = steel.edge_bars(slab, cover, stock, lap)[1]
                self.placed += self.set(name, steel.feet(runs, lap))
                by_size.setdefault(size, [rule["item"], stock, lap, []])[3].extend(runs)
        for size, (key, stock, lap, runs) in sorted(by_size.items()):
            sticks = self.set(f"{size} bars", D(steel.sticks(runs, stock, lap)))
            self.buy(key, *self.counted(size, key, sticks, stock))
        by_style = {}
        for slab in self.slabs:
            style = slab.value.get("mesh", "none")
            if style != "none":
                rule = self.book["mesh"][style]
                sheets = steel.mesh(slab, rule, cover, self.is_roll(rule))
                by_style.setdefault(style, []).append(self.set(f"{slab.name} mesh", sheets))
        for style, parts in by_style.items():
            rule = self.book["mesh"][style]
            if self.is_roll(rule):
                parts = [up(sum(parts), D(1))]
            self.buy(rule["item"], f"mesh {style}", parts)
        each = amount(self.order["chair area"])[0]
        held = [s for s in self.slabs if "none" != s.value.get("bars", "none") or "none" != s.value.get("mesh", "none")]
        # Chairs of each height by themselves; the ones that `use` names are called just so.
        usual, by_height = self.role_of("chairs"), {}
        for slab in held if usual else ():
            key = steel.chair(slab, usual, self.book["items"])
            by_height.setdefault(key, []).append(up(slab.area / each, D(1)))
        for key, parts in sorted(by_height.items(), key=lambda one: one[0] != usual):
            self.buy(key, "chairs" if key == usual else f"chairs of {self.item(key)['height']}", parts)

    def is_roll(self, rule):
        return singular(self.item(rule["item"])["unit"]) == "roll"

    def by_face(self, role):
        key = self.role_of(role)
        return key is not None and singular(self.item(key)["unit"]) == "sq ft"

    @property
    def deep_limit(self):
        """Deep forms are counted apart only where the book has a rate for them."""
        return inches(self.order["deep form over"]) if "form deep" in self.book["rates"] else None

    def forms(self):
        """Sides of steps are deep; risers take an ordinary board; without an item all are boards."""
        deep = [s.form(self.deep_limit)[1] + s.step_sides for s in self.slabs]
        boards = [sum(s.form(self.deep_limit)[::2]) + s.riser_form for s in self.slabs]
        high = [s.faces(self.deep_limit)[1] + s.side_face for s in self.slabs]
        faces = [sum(s.faces(self.deep_limit)[::2]) + s.riser_face for s in self.slabs]
        if "deep forms" in self.book["use"]:
            self.role("deep forms", "deep form boards", high if self.by_face("deep forms") else deep)
        else:
            boards = [board + more for board, more in zip(boards, deep)]
            faces = [face + more for face, more in zip(faces, high)]
        left = [self.left("forms", slab, board) for slab, board in zip(self.slabs, boards)]
        if self.by_face("forms"):  # what is left is as high as all of it on the mean
            left = [f * much / all_of_it if all_of_it else f for f, much, all_of_it in zip(faces, left, boards)]
        boards = left
        self.role("forms", "form boards", boards)
        # Common practice: each piece of form has its length over the spacing, up, and one more
        # at its other end; a form that closes on itself has no ends. On curves they stand closer.
        gap = inches(self.order["stake spacing"]) / FT
        closer = min(gap, inches(self.order["stake spacing on curves"]) / FT)
        pieces = [piece for s in self.slabs for piece in s.forms_apart()]
        self.role("stakes", "stakes", [up(feet / (closer if bent else gap), D(1)) + ends for feet, ends, bent in pieces])
        strip = [p.feet for s in self.slabs for p in s.pieces + s.inner if p.kind in STRIP]
        strip += [box.around for box in self.all_boxes() if box.isolated]
        self.role("isolation strip", "isolation strip", strip)
        under = [self.sheet(s) for s in self.slabs if s.value.get("vapor retarder") == "yes"]
        self.role("vapor retarder", "vapor retarder", under)

    def sheet(self, slab):
        """It comes off a roll of one width: whole strips on a rectangle, the better way."""
        wide, lap = inches(self.order["retarder width"]), inches(self.order["retarder lap"])
        if not slab.shape.is_rectangle():
            return slab.area * wide / (wide - lap)
        sides = [high - low for low, high in (slab.shape.bounds(0), slab.shape.bounds(1))]
        return min(steel.side_by_side(a, wide, lap) * wide * b for a, b in (sides, sides[::-1])) / 144

    def curing(self):
        coverage = amount(self.order["compound coverage"])[0]
        way = lambda want: [s for s in self.slabs if s.curing == want]
        sprayed = [self.left("curing compound", s, (s.area + s.face) / coverage) for s in way("compound")]
        self.role("curing compound", "curing compound", sprayed)
        self.role("curing cover", "curing cover", [self.left("curing cover", s, s.area) for s in way("cover")])
        if "blankets" in self.book["use"]:
            cold = [self.left("blankets", s, s.area) for s in self.slabs if self.freezes(s)]
            self.role("blankets", "insulated blankets", cold)

    def fiber(self):
        for order in self.orders:
            names = {slab.value.get("fiber", "none") for slab in order.slabs} - {"none"}
            for name in sorted(names):
                rule = self.book["fiber"][name]
                known("fiber", rule, ("item", "by", "dose", "bag"))
                much = order.total
                if rule.get("by", "plant") == "us":
                    dose = rate(rule.get("dose", "1 lb per cu yd"))[0]
                    much = up(much * dose / amount(rule.get("bag", "1 lb"))[0], D(1))
                self.buy(rule["item"], f"{name} fiber for {order.name}", [much], order.pour)

    def faces(self):
        """(slab, finish, square feet, feet of formed edge); a border takes the open edge for itself."""
        for slab in self.slabs:
            band, finish = slab.border()
            edge = sum(p.feet for p in slab.formed())
            outer = sum(p.feet for p in slab.pieces if p.kind == "open")
            finish = finish if outer else None
            main = slab.value.get("finish", "broom")
            yield slab, main, slab.area - band, D(0) if finish else edge
            if finish:
                yield slab, finish, band, outer

    def put_on(self):
        """What finishes and sealers take, added up over all slabs and stepped once an item."""
        parts, poured, before = {}, set(), None
        for slab, finish, area, edge in self.faces():
            face = f"{slab.name} border" if slab is before else slab.name
            before = slab
            entry = self.book.get("finishes", {}).get(finish, {})
            known(f"finish {finish}", entry, FINISH)
            for one in entry.get("items", []):
                ((key, dose),) = one.items()
                per = amount(dose.split(" per ")[1].split(",")[0])[1]
                if per == "pour":
                    if (slab.pour, finish, key) in poured:
                        continue
                    poured.add((slab.pour, finish, key))
                much = self.dose(dose, area, edge)
                much = self.set(f"{face} {key}", much) if per != "pour" else much
                parts.setdefault(key, []).append(much)
        for key, much in parts.items():
            self.buy(key, f"{key} for finishes", much)
        colors = {}
        for order in self.orders:
            if order.color:
                rule = self.book["colors"][order.color]
                known("color", rule, ("item", "dose", "says"))
                each = rate(rule["dose"])[0] if not rule["dose"].endswith(" of cement") else None
                if each is None:
                    cement = rate(self.book["mixes"][order.mix]["cement content"])[0]
                    each = cement * percent(rule["dose"].removesuffix(" of cement"))
                colors.setdefault(rule["item"], []).append(self.colored(order, each, rule["item"]))
        for key, much in colors.items():
            self.buy(key, f"{key} for the mix", much)
        sealed = {}
        for slab in self.slabs:
            if slab.seal:
                rule = self.book["sealers"][slab.seal]
                known("sealer", rule, ("item", "coverage", "hours", "after", "trips", "says"))
                much = self.dose(rule["coverage"], slab.area, D(0)) if "coverage" in rule else slab.area
                sealed.setdefault(rule["item"], []).append(much)
        for key, much in sealed.items():
            self.buy(key, f"{key} for sealing", much)

    def colored(self, order, each, key):
        """Each truck is mixed by itself, with whole bags where it is sold in bags."""
        step = number(self.item(key).get("sold in", "0"))
        if order.makes:
            return order.total * each
        return sum(up(load * each, step) if step else load * each for load in order.loads)

    @staticmethod
    def dose(text, area, edge):
        """`3 lb per 100 sq ft`, `250 sq ft per gal, 2 coats`, `1 ft per ft`, `1 day per pour`."""
        first, _, coats = text.partition(", ")
        times = number(coats.split()[0]) if coats else D(1)
        much, per = (amount(part) for part in first.split(" per "))
        if per[1] == "sq ft":
            return area * much[0] / per[0] * times
        if much[1] == "sq ft":
            return area * per[0] / much[0] * times
        if per[1] == "ft":
            return edge * much[0] / per[0] * times
        if per[1] == "pour":
            return much[0]
        raise NotCovered(f"dose `{text}`")
