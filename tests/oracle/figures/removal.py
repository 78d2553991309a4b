"""What is broken out or dug out, sawn, and hauled away; and the machines for it."""

from decimal import Decimal as D

from . import named
from .reading import YARD, amount, inches, known, rate, singular, up

KEYS = ("size", "under", "depth", "of", "break", "reinforced", "saw cut", "stays")


def area_and_depth(own):
    size = own["size"]
    parts = size.split(" x ")
    if size.startswith("circle "):
        first, *rest = parts
        area = named.circle(inches(first[7:])).area / 144
    elif amount(parts[0])[1] == "sq ft":
        first, *rest = parts
        area = amount(first)[0]
    else:
        first, second, *rest = parts
        area = inches(first) * inches(second) / 144
    (depth,) = rest or [own["depth"]]
    return area, inches(depth)


def task_of(of, machine, reinforced):
    if of == "soil":
        return "dig with machine" if machine else "dig"
    if of == "pavers":
        return "take up pavers"
    if of == "asphalt":
        return "break out asphalt with machine" if machine else "break out asphalt"
    if machine:
        return "break out reinforced with machine" if reinforced else "break out with machine"
    return "break out reinforced concrete" if reinforced else "break out concrete"


class Removal:
    def removals(self):
        """Work by task for the crew, then what the dump takes, as it charges."""
        self.removing, self.removed, self.sawn, self.by_machine = {}, {}, D(0), set()
        cut, face, hauled, sum_area, volume = D(0), D(0), {}, D(0), D(0)
        for entry in self.job.get("remove", []):
            ((name, written),) = entry.items()
            own = {"size": written} if isinstance(written, str) else written
            known(f"remove {name}", own, KEYS)
            of = own.get("of", "concrete")
            if "under" in own:
                dug = [slab.dug(self.order) for slab in self.slabs if slab.name in own["under"]]
                area, depth = sum((a for a, _ in dug), D(0)), inches(own["depth"])
                yards = area * depth / YARD + sum((more for _, more in dug), D(0))
            else:
                area, depth = area_and_depth(own)
                yards = area * depth / YARD
            sum_area, volume = sum_area + area, volume + yards
            machine = own.get("break", "by hand") == "machine"
            task = task_of(of, machine, own.get("reinforced", "no") == "yes")
            work = yards if of == "soil" else area
            self.removing[task] = self.removing.get(task, D(0)) + work
            both = self.removed.setdefault(task, {"sq ft": D(0), "cu yd": D(0), "ton": D(0)})
            both["sq ft"] += area
            both["cu yd"] += yards
            both["ton"] += yards * rate(self.book["disposal"].get(of, {}).get("weight", "4050 lb per cu yd"))[0] / 2000
            if machine:
                self.by_machine.add(task)
            if own.get("stays", "no") != "yes":
                hauled[of] = hauled.get(of, D(0)) + yards
            sawn = inches(own.get("saw cut", "0 in"))
            cut += sawn / 12
            face += sawn / 12 * depth / 12
        self.taken_out = {"removed area": sum_area, "removed volume": volume, "saw cut": cut, "sawn face": face}
        self.loose = []
        for material, yards in hauled.items():
            self.haul(material, yards)
        key = self.role_of("saw cutting") if cut else None
        if key:
            by_face = singular(self.item(key)["unit"]) == "sq ft"
            self.buy(key, "saw cutting", [face if by_face else cut])
        # The crew saws by its own rate unless the book pays somebody for it.
        if cut and (not key or "saw cut" in self.book["rates"]):
            self.removing["saw cut"] = face

    def haul(self, material, yards):
        rule = self.book["disposal"][material]
        known(f"disposal {material}", rule, ("item", "loose", "weight", "load"))
        unit = singular(self.item(rule["item"])["unit"])
        self.loose.append((rule["item"], yards * D(rule.get("loose", "1"))))
        if unit == "ton":
            much = yards * rate(rule.get("weight", "4050 lb per cu yd"))[0] / 2000
        else:
            much = self.set(f"{material} hauled, loose", yards * D(rule.get("loose", "1")))
        if unit == "load":
            much = up(much / amount(rule.get("load", "10 cu yd"))[0], D(1))
        self.buy(rule["item"], f"{material} hauled", [much])
