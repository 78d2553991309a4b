"""Joint layouts checked from `flatwork takeoff --format json` alone: the panels and what is left open
are the slab, every joint lies in it, no panel is longer than its limit unless the program says so.

    joints.py FLATWORK TAKEOFF.yaml... [--on DAY] [--self-test]
    joints.py FLATWORK --jobs N [--seed S] [--self-test]     slabs by chance

Nothing of the program's own geometry is used: areas and lengths are sums over corners and arcs, and a
thousand places in every slab are each looked up in the panels. `--self-test` spoils each layout in one
way after another; every way has to be noticed somewhere.
"""

import argparse
import copy
import json
import math
import random
import subprocess
import sys
import tempfile
from pathlib import Path

NEAR = 1e-6
# Chords stand off an arc by less than this.
FINE = 1e-4


def at(value):
    return float(value["x"]), float(value["y"])


def along(a, b, bulge):
    """Places along a side, its end left out; an arc bulges to the right of the way along it."""
    if not bulge:
        return [a]
    dx, dy = b[0] - a[0], b[1] - a[1]
    chord = math.hypot(dx, dy)
    t = 2 * bulge / chord
    quarter = math.atan(t)  # of the angle of the whole arc
    radius = chord * (1 + t * t) / (4 * t)
    mx, my = (a[0] + b[0]) / 2, (a[1] + b[1]) / 2
    nx, ny = dy / chord, -dx / chord  # to the right
    cx, cy = mx - nx * (radius - bulge), my - ny * (radius - bulge)
    many = max(8, math.ceil(abs(quarter) * 4 / math.sqrt(8 * FINE / abs(radius))))
    start = math.atan2(a[1] - cy, a[0] - cx)
    turn = 4 * quarter
    return [
        (cx + abs(radius) * math.cos(start + turn * n / many), cy + abs(radius) * math.sin(start + turn * n / many))
        for n in range(many)
    ]


def long(a, b, bulge):
    chord = math.hypot(b[0] - a[0], b[1] - a[1])
    if not bulge:
        return chord
    t = 2 * abs(bulge) / chord
    return chord * (1 + t * t) / (4 * t) * 4 * math.atan(t)


class Ring:
    """A closed way of straight and bulged sides."""

    def __init__(self, corners):
        places = [at(corner) for corner in corners]
        bulges = [float(corner["bulge"]) for corner in corners]
        self.sides = list(zip(places, places[1:] + places[:1], bulges))
        self.polygon = [place for side in self.sides for place in along(*side)]

    def area(self):
        """By corners, and by the segments of its arcs; counter-clockwise above zero."""
        ox, oy = self.sides[0][0]
        total = 0.0
        for (ax, ay), (bx, by), bulge in self.sides:
            total += ((ax - ox) * (by - oy) - (bx - ox) * (ay - oy)) / 2
            if bulge:
                chord = math.hypot(bx - ax, by - ay)
                t = 2 * abs(bulge) / chord
                radius = chord * (1 + t * t) / (4 * t)
                angle = 4 * math.atan(t)
                total += math.copysign(radius * radius * (angle - math.sin(angle)) / 2, bulge)
        return total

    def has(self, place):
        x, y = place
        inside = False
        for (ax, ay), (bx, by) in zip(self.polygon, self.polygon[1:] + self.polygon[:1]):
            if (ay <= y) != (by <= y) and x < ax + (bx - ax) * (y - ay) / (by - ay):
                inside = not inside
        return inside

    def off(self, place):
        """How far its way is from a place."""
        x, y = place
        best = math.inf
        for (ax, ay), (bx, by) in zip(self.polygon, self.polygon[1:] + self.polygon[:1]):
            dx, dy = bx - ax, by - ay
            square = dx * dx + dy * dy
            part = 0 if square == 0 else max(0, min(1, ((x - ax) * dx + (y - ay) * dy) / square))
            best = min(best, math.hypot(x - ax - part * dx, y - ay - part * dy))
        return best

    def box(self):
        xs, ys = zip(*self.polygon)
        return min(xs), min(ys), max(xs), max(ys)


def faults(slab, seed=1):
    """What does not hold of a slab that was laid out."""
    if "panels" not in slab or not slab["panels"]:
        return []
    found = []
    own = Ring(slab["corners"])
    holes = [Ring(opening["corners"]) for opening in slab["openings"]]
    holes += [Ring(corners) for corners in slab["left out"]]
    panels = [(Ring(panel["corners"]), [Ring(hole) for hole in panel["holes"]]) for panel in slab["panels"]]
    told = {fault["what"] for fault in slab["not kept"]}
    for panel, (ring, inner) in zip(slab["panels"], panels):
        area = ring.area() - sum(abs(hole.area()) for hole in inner)
        if ring.area() <= 0:
            found.append("a panel does not go counter-clockwise")
        if abs(area - float(panel["area"])) > NEAR * max(1, area):
            found.append(f"a panel of {area:.8f} sq ft says that it has {panel['area']}")
        size = [float(part) for part in panel["size"]]
        if size[0] < size[1] - NEAR:
            found.append("the longer way of a panel comes second")
        # It fits into a box of its size, bowed or turned a little, and fills a good part of it.
        if size[0] * size[1] * 1.1 < area or area < size[0] * size[1] / 2.5:
            found.append(f"a panel of {area:.4f} sq ft is {size[0]} x {size[1]}")
        # No side of four is longer than the panel.
        if any(long(*side) > size[0] + 1e-3 for side in ring.sides) and len(ring.sides) == 4:
            found.append(f"a side of a panel is longer than the {size[0]} it says")
        if size[0] > float(slab["longest"]) + 1e-4 and not told & {"panel too long", "too many panels"}:
            found.append(f"a panel is {size[0]} long, over {slab['longest']}, and nothing is said")
    # What stands half on the slab and half beside it is not clipped here; places tell of it.
    whole = all(own.has(place) or own.off(place) < 1e-3 for ring in holes for place in ring.polygon)
    area = own.area() - sum(abs(hole.area()) for hole in holes)
    tiled = sum(float(panel["area"]) for panel in slab["panels"])
    if whole and abs(area - tiled) > NEAR * max(1, area):
        found.append(f"panels of {tiled:.8f} sq ft in a slab of {area:.8f}")
    chance = random.Random(seed)
    west, south, east, north = own.box()
    for _ in range(400):
        place = chance.uniform(west, east), chance.uniform(south, north)
        rings = [own, *holes, *(ring for ring, inner in panels for ring in (ring, *inner))]
        if min(ring.off(place) for ring in rings) < 2 * FINE:
            continue
        is_slab = own.has(place) and not any(hole.has(place) for hole in holes)
        many = sum(ring.has(place) and not any(hole.has(place) for hole in inner) for ring, inner in panels)
        if many != is_slab:
            found.append(f"a place of the {'slab' if is_slab else 'ground'} lies in {many} panels")
            break
    for joint in slab["joints"]:
        side = at(joint["from"]), at(joint["to"]), float(joint["bulge"])
        if joint["kind"] != "contraction":
            if max(own.off(side[0]), own.off(side[1])) > 2 * FINE:
                found.append(f"a {joint['kind']} joint does not lie at an edge")
            continue
        places = [*along(*side), side[1]]
        places += [((a[0] + b[0]) / 2, (a[1] + b[1]) / 2) for a, b in zip(places, places[1:])]
        outside = [place for place in places if not own.has(place) and own.off(place) > 2 * FINE]
        opened = [place for place in places if any(h.has(place) and h.off(place) > 2 * FINE for h in holes)]
        if outside:
            found.append("a joint runs out of the slab")
        if opened and "joint under what stands on it" not in told:
            found.append("a joint runs through what is open, set or stands on it")
        if not 0 < float(joint["depth"]) <= 2:
            found.append("a joint has no depth")
    return found


def sums(job):
    """Feet of joint in the list of quantities are those of the joints."""
    listed = {one["name"]: one["amount"] for group in job["groups"] for one in group["quantities"]}
    found = []
    for slab in job["slabs"]:
        feet = sum(
            long(at(joint["from"]), at(joint["to"]), float(joint["bulge"]))
            for joint in slab["joints"]
            if joint["kind"] != "construction"
        )
        if "panels" in slab and abs(feet - float(listed.get(slab["slab"] + " joints", 0))) > 2e-4 * max(1, feet):
            found.append(f"{slab['slab']}: {feet:.4f} ft of joint are drawn, and listed otherwise")
        if "panels" in slab and len(slab["panels"]) != float(listed.get(slab["slab"] + " panels", 0)):
            found.append(f"{slab['slab']}: panels are listed otherwise than drawn")
    return found


def checked(job):
    found = sums(job)
    for slab in job["slabs"]:
        found += [f"{slab['slab']}: {fault}" for fault in faults(slab)]
    return found


def moved(place, by):
    place["x"] = str(float(place["x"]) + by)


def longest_over(slab):
    slab["longest"] = str(float(slab["longest"]) / 4)
    slab["not kept"] = []


SPOILT = {
    "a panel is left out": lambda slab: slab["panels"].pop(),
    "a panel is there twice": lambda slab: slab["panels"].append(slab["panels"][0]),
    "a corner of a panel is moved": lambda slab: moved(slab["panels"][0]["corners"][0], 0.01),
    "a panel says another area": lambda slab: slab["panels"][0].update(area=str(float(slab["panels"][0]["area"]) + 0.001)),
    "a panel says half its size": lambda slab: slab["panels"][0].update(size=[str(float(x) / 2) for x in slab["panels"][0]["size"]]),
    "a limit is passed without a word": longest_over,
    "a joint is moved out of the slab": lambda slab: moved(slab["joints"][0]["from"], 400),
    "a joint is left out": lambda slab: slab["joints"].pop(0),
    "the slab is larger than its panels": lambda slab: moved(slab["corners"][1], 0.5),
}


def unnoticed(jobs):
    """Ways of spoiling a layout that no job notices."""
    silent = []
    for name, spoil in SPOILT.items():
        noticed = tried = 0
        for job in jobs:
            spoilt = copy.deepcopy(job)
            slabs = [slab for slab in spoilt["slabs"] if slab.get("panels") and slab["joints"]]
            if not slabs:
                continue
            spoil(slabs[0])
            tried += 1
            noticed += bool(checked(spoilt))
        print(f"{name}: noticed {noticed} of {tried} times")
        if not noticed:
            silent.append(name)
    return silent


# One slab of each kind, with what is drawn by chance.
def by_chance(chance):
    def feet(low, high):
        return f"{chance.randint(low * 2, high * 2) / 2:g} ft"

    a, b = chance.randint(8, 40), chance.randint(6, 30)
    shape = chance.choice(["rectangle", "ell", "tee", "path", "ring", "circle", "half", "triangle", "trapezoid", "bulge", "corners"])
    c, d = chance.randint(2, a - 4), chance.randint(2, b - 3)
    own = {
        "rectangle": f"size: {a} ft x {b} ft",
        "ell": f"outline: [east {a} ft, north {d} ft, west {a - c} ft, north {b - d} ft, west {c} ft, south {b} ft]",
        "tee": f"outline: [east {a} ft, north {d} ft, west 2 ft, north {b - d} ft, west {a - 4} ft, south {b - d} ft, west 2 ft, south {d} ft]",
        "path": f"path: [\"east {a} ft, bend {chance.randint(4, 6)} ft radius\", \"north {b + 6} ft, bend 5 ft radius\", east {chance.randint(8, 30)} ft], width: {chance.choice([3, 4, 5, 6])} ft",
        "ring": f"size: \"ring {a + 6} ft outside, {chance.randint(2, a)} ft inside\"",
        "circle": f"size: circle {a} ft",
        "half": f"size: \"half circle {a} ft, flat at {chance.choice(['north', 'south', 'east'])}\"",
        "triangle": f"size: triangle {a} ft x {a} ft x {a + 1} ft",
        "trapezoid": f"size: \"trapezoid {a} ft and {c + 1} ft, {b} ft apart\"",
        "bulge": f"outline: [east {a} ft, \"north {b} ft, bulge {'in ' if chance.random() < 0.5 else ''}{chance.randint(4, 20)} in\", west {a} ft, south {b} ft]",
        "corners": f"corners: [[0 ft, 0 ft], [{a} ft, {chance.randint(-3, 3)} ft], [{a - 2} ft, {b} ft], [{chance.randint(1, 3)} ft, {b + 2} ft]]",
    }[shape]
    lines = [f"  plate:", f"    {own.replace(', width', chr(10) + '    width')}", "    kind: patio", "    bars: none"]
    lines.append(f"    joints: {chance.choice([4, 5, 6, 8, 10, 12])} ft")
    if shape in ("rectangle", "ell", "bulge") and chance.random() < 0.4:
        lines.append(f"    cut out: [well: {{size: 2 ft x 2 ft, at: {feet(1, 2)} from west and {feet(1, 2)} from south}}]")
    elif shape == "rectangle" and chance.random() < 0.5:
        lines.append(f"    joints at: [{chance.randint(1, a - 1)} ft from west, {chance.randint(1, b - 1)} ft from south]")
    elif shape == "rectangle":
        lines.append(f"    match: [{chance.randint(1, a - 1)} ft from the west end of the south side]")
    if shape == "rectangle" and chance.random() < 0.5:
        lines += ["  beside:", f"    size: {feet(3, 30)} x {feet(3, 8)}", "    kind: walk", "    beside: plate, north edge, 0 ft from west end"]
    return "customer: Ira Sample, Quillhaven\nquoted: 2026-05-04\nslabs:\n" + "\n".join(lines) + "\n"


def takeoff(flatwork, path, on):
    command = [flatwork, "takeoff", str(path), "--format", "json", *(["--on", on] if on else [])]
    done = subprocess.run(command, capture_output=True, text=True)
    if done.returncode:
        raise SystemExit(f"{path}: {done.stderr}")
    return json.loads(done.stdout)


def main():
    asked = argparse.ArgumentParser()
    asked.add_argument("flatwork")
    asked.add_argument("takeoffs", nargs="*")
    asked.add_argument("--on", default="2026-05-04")
    asked.add_argument("--jobs", type=int, default=0)
    asked.add_argument("--seed", type=int, default=1)
    asked.add_argument("--keep")
    asked.add_argument("--self-test", action="store_true")
    asked = asked.parse_args()
    jobs, wrong, refused = [], 0, 0
    for path in asked.takeoffs:
        job = takeoff(asked.flatwork, path, asked.on)
        jobs.append(job)
        for fault in checked(job):
            wrong += 1
            print(f"{path}: {fault}")
    here = Path(__file__).resolve().parents[2]
    with tempfile.TemporaryDirectory() as room:
        room = Path(asked.keep or room)
        for name in ("demo-quotes", "price-books"):
            (room / name).mkdir(parents=True, exist_ok=True)
        for book in (here / "price-books").glob("*.yaml"):
            (room / "price-books" / book.name).write_text(book.read_text())
        business = here / "demo-quotes" / "business.yaml"
        (room / "demo-quotes" / "business.yaml").write_text(business.read_text())
        for number in range(asked.jobs):
            path = room / "demo-quotes" / f"slab-{number}.yaml"
            path.write_text(by_chance(random.Random(asked.seed * 100_000 + number)))
            try:
                job = takeoff(asked.flatwork, path, asked.on)
            except SystemExit as stop:
                # An outline that crosses itself, an opening at an edge: chance does not look.
                if "error[" not in str(stop):
                    raise
                refused += 1
                continue
            jobs.append(job)
            for fault in checked(job):
                wrong += 1
                print(f"slab {number} of seed {asked.seed}: {fault}")
    if asked.self_test:
        silent = unnoticed(jobs)
        sys.exit(f"nobody notices: {', '.join(silent)}" if silent else 0)
    slabs = sum(len(job["slabs"]) for job in jobs)
    panels = sum(len(slab.get("panels", [])) for job in jobs for slab in job["slabs"])
    print(f"{len(jobs)} jobs, {slabs} slabs, {panels} panels: {wrong} faults; {refused} jobs were refused")
    sys.exit(1 if wrong else 0)


if __name__ == "__main__":
    main()
