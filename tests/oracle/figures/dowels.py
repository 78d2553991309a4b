"""Bars across an edge: dowels that slide, ties that do not, their holes and what bonds them."""

from decimal import Decimal as D

from .reading import amount, inches, known, percent, up

RULE = {"item", "bar", "length", "depth", "hole", "spacing", "from ends", "cap", "bonded", "adhesive"}
RULE |= {"cartridge", "loss"}
PI = D("3.1415926535897932384626433832795028841971693993751")


def diameter(bar):
    if bar.endswith(" smooth"):
        return inches(bar.removesuffix(" smooth"))
    return D(bar.removeprefix("no. ")) / 8


class Dowels:
    """Part of a job."""

    def pinned(self):
        """(dowels or ties, kind, rule, bars, holes) for each slab and way that has some."""
        for slab in self.slabs:
            for pin, word in (("dowels", "doweled"), ("ties", "tied")):
                pieces = [p for p in slab.pieces if p.kind.startswith(word + " ")]
                if not pieces:
                    continue
                smooth = pin == "dowels"
                fits = [k for k, r in self.book["dowels"].items() if r["bar"].endswith(" smooth") == smooth]
                kind, _, spacing = slab.value.get(pin, "").partition(" at ")
                kind = kind or fits[0]
                rule = self.book["dowels"][kind]
                known(f"dowels {kind}", rule, RULE)
                spacing = inches(spacing or rule.get("spacing", "24 in"))
                ends = inches(rule.get("from ends", "12 in"))
                many, holes = D(0), D(0)
                for piece in pieces:
                    between = piece.feet * 12 - 2 * ends
                    here = up(between / spacing, D(1)) + 1 if between > 0 else D(1)
                    here = self.set(f"{slab.name} {pin} along", here)
                    many += here
                    holes += here if piece.kind.endswith("existing concrete") else 0
                many = self.set(f"{slab.name} {pin}", many)
                # Where every edge is drilled, a count the owner sets is a count of holes too.
                if all(piece.kind.endswith("existing concrete") for piece in pieces):
                    holes = many
                yield pin, kind, rule, many, holes

    def pins(self):
        by_kind, glue = {}, {}
        for pin, kind, rule, many, holes in self.pinned():
            by_kind.setdefault((pin, kind), (rule, [], []))[1].append(many)
            by_kind[pin, kind][2].append(holes)
        for (pin, kind), (rule, many, holes) in by_kind.items():
            self.buy(rule["item"], f"{pin}, {kind}", many)
            if "cap" in rule and pin == "dowels":
                self.buy(rule["cap"], f"caps, {kind}", holes)
            bonded = rule.get("bonded", "no" if rule["bar"].endswith(" smooth") else "yes") == "yes"
            if bonded and rule.get("adhesive", "none") != "none":
                bar = diameter(rule["bar"])
                hole = inches(rule["hole"]) if "hole" in rule else bar + D("0.125")
                filled = PI / 4 * (hole**2 - bar**2) * inches(rule.get("depth", "9 in")) * D("16.387064")
                filled *= sum(holes) * (1 + percent(rule.get("loss", "10%")))
                part = filled / amount(rule.get("cartridge", "300 ml"))[0]
                glue[rule["adhesive"]] = glue.get(rule["adhesive"], D(0)) + part
        for key, part in glue.items():
            self.buy(key, f"adhesive, {key}", [up(part, D(1))])

    def holes(self):
        return sum((holes for *_, holes in self.pinned()), D(0))
