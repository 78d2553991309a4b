"""The days of a crew: work with a night before it is a stage, and what fits on one day shares it."""

import copy
import datetime
from decimal import Decimal as D

from .reading import amount, number, up

DEFAULT = {"count days": "by stage", "night before a pour": "with a permit", "set lids": "on a visit of their own"}
LATER = ("finish", "return", "keep wet", "lift covers", "seal", "set lids")
FORMS_STAND = 7  # days, at most
OF_SLABS = ("area", "concrete", "base", "straight form", "curved form", "deep form", "risers")
OF_SLABS += ("forms", "curing compound", "curing cover")


def nine(value):
    return round(value, 9)


def pour_fits(hours, left):
    """A pour is one piece: it is begun where it can be finished on the day."""
    return nine(hours) <= left


def hardens(before):
    """Whether a night has to pass because concrete was placed."""
    return before == "place"


def is_served(due, poured):
    """Whether the visit that is due on a day seals what is poured on another too."""
    return due is not None and poured <= due


class Clock:
    """A crew that works on until a night is asked for."""

    def __init__(self, day):
        self.day, self.left, self.groups = day, None, []

    def work(self, piece, night):
        is_pour, there = piece["step"] == "place", piece["hours"] + piece["waiting"]
        if self.left is None or night or (is_pour and not pour_fits(there, self.left)):
            self.groups.append([])
            self.left = self.day
        self.groups[-1].append(piece)
        self.left -= there
        while nine(self.left) < 0:
            self.left += self.day


class Days:
    def said(self, key):
        return self.crew.get(key, DEFAULT[key])

    def pour_days(self):
        """Pours with slabs, together where they are on one day, the earliest first."""
        days = {}
        for pour in sorted({slab.pour for slab in self.slabs}):
            days.setdefault(self.pours[pour]["day"], []).append(pour)
        return [days[day] for day in sorted(days)]

    def numbered(self, step, pours):
        if len({slab.pour for slab in self.slabs}) < 2:
            return step
        return f"{step} pour{'s' if len(pours) > 1 else ''} " + " and ".join(str(pour + 1) for pour in pours)

    def only(self, slabs):
        """The job as if it had these slabs alone."""
        view = copy.copy(self)
        view.slabs = list(slabs)
        pours = {slab.pour for slab in slabs}
        view.orders = [order for order in self.orders if order.pour in pours]
        return view

    def is_of_slabs(self, name, of_item):
        """Whether a task is done on slabs, each its part; else it is of the job."""
        of_extras = [one[0] for one in self.item_work]
        if name in of_extras or name.startswith("site ") or name == "added labor":
            return False
        rule = self.book.get("also", {}).get(name)
        return rule is None or rule.get("once a") in ("slab", "box") or rule.get("for") in OF_SLABS

    def hours_on(self, entries, step, slabs, with_whole, wait=None):
        """Hours of a step on some slabs, and of the job where they are done with them."""
        here = {(name, of): much for name, much, _, of in self.only(slabs).tasks()}
        total = D(0)
        for name, much, took, of, its in entries:
            if its != step:
                continue
            if self.is_of_slabs(name, of):
                total += took * here.get((name, of), D(0)) / much
            elif with_whole and (step != "seal" or self.added_after.get(name) == wait):
                total += took
        return total

    def visits(self):
        """(step, pours, slabs, days to wait, how often) of everything the crew may come back for."""
        found = []
        finishes = self.book.get("finishes", {})
        for pour in range(len(self.pours)):
            used = [finish for slab, finish, *_ in self.faces() if slab.pour == pour]
            often = max((number(finishes.get(finish, {}).get("trips", "0")) for finish in used), default=D(0))
            if often:
                found.append(("finish", [pour], [], None, often))
            here = [slab for slab in self.slabs if slab.pour == pour]
            found.append(("return", [pour], here, None, self.also_returns(pour)))
        if self.wetting():
            for pour in sorted({slab.pour for slab in self.slabs if slab.curing == "wet"}):
                wet = [slab for slab in self.slabs if slab.pour == pour and slab.curing == "wet"]
                found.append(("keep wet", [pour], wet, None, D(7)))
        waits = {}
        for slab in self.slabs:
            if slab.seal:
                rule = self.book["sealers"][slab.seal]
                poured = datetime.date.fromisoformat(self.pours[slab.pour]["day"])
                one = (poured, slab.pour, number(rule.get("trips", "1")), slab)
                waits.setdefault(int(amount(rule.get("after", "28 days"))[0]), []).append(one)
        last = max({slab.pour for slab in self.slabs}, key=lambda pour: (self.date_of(pour), pour), default=None)
        for wait in self.added_after.values():
            if last is not None:
                waits.setdefault(wait, []).append((self.date_of(last), last, D(1), None))
        for wait, sealed in sorted(waits.items()):
            due, rounds = None, []
            for poured, pour, often, slab in sorted(sealed, key=lambda one: one[:2]):
                if not is_served(due, poured):
                    due = poured + datetime.timedelta(days=wait)
                    rounds.append([])
                rounds[-1].append((pour, often, slab))
            for each in rounds:
                pours = sorted({pour for pour, *_ in each}, key=lambda one: (self.pours[one]["day"], one))
                slabs = [slab for *_, slab in each if slab]
                found.append(("seal", pours, slabs, wait, max(often for _, often, _ in each)))
        if any(box.is_late for box in self.all_boxes()):
            alone = self.said("set lids") != "when we strip"
            pours = sorted({slab.pour for slab in self.slabs})
            found.append(("set lids", pours, self.slabs, None, D(1) if alone else D(0)))
        return found

    def returns(self):
        """Visits that are asked for; in one sum lids have a trip of their own."""
        in_one = self.said("count days") == "by the job"
        total = sum((often for step, *_, often in self.visits() if not (in_one and step == "set lids")), D(0))
        return self.set("return trips", total) if total else total

    def date_of(self, pour):
        return datetime.date.fromisoformat(self.pours[pour]["day"])

    def bared(self, pours):
        """The day on which nothing of these pours has to lie under blankets any more; none where nothing does."""
        found = []
        for slab in self.slabs:
            if slab.pour in pours and "blankets" in self.book["use"] and self.freezes(slab):
                early = self.book["mixes"][slab.value["mix"]].get("cement") == "early"
                found.append(self.date_of(slab.pour) + datetime.timedelta(days=(2 if early else 3) + 1))
        return max(found, default=None)

    def rounds(self):
        """Days of pours in turn, and the pours whose forms come off before the next of them, with the days
        waited for that after the last: (poured, off, wait). Where blankets still lie then, none come off."""
        standing, found = [], []
        days = self.pour_days() or [[]]
        for n, poured in enumerate(days):
            standing += poured
            bared = self.bared(standing)
            if bared and n + 1 < len(days) and self.date_of(days[n + 1][0]) <= bared:
                found.append((poured, [], None))
                continue
            wait = (bared - self.date_of(standing[-1])).days if bared else None
            found.append((poured, standing, wait))
            standing = []
        return found

    def waited(self, pours, hours):
        """Who is on a pour that is longer on the clock than a working day is there until its end."""
        people, day = D(self.crew["people"]), amount(self.crew["hours in a day"])[0]
        day -= amount(self.crew["travel"])[0] + amount(self.crew.get("set up and clean up", "0 hours"))[0]
        longest = max((one["day_hours"] for one in self.finishing if one["pour"] - 1 in pours), default=D(0))
        wait = longest * people - hours
        return wait if day < longest and nine(wait) > 0 else D(0)

    def pieces(self, entries, returns):
        """Everything in the order in which it is done."""
        found = []

        def add(step, name, pours, hours, often=D(0), wait=None):
            if hours or often:
                waiting = self.waited(pours, hours) if step == "place" else D(0)
                piece = {"step": step, "name": name, "pours": pours, "hours": hours, "often": often}
                found.append(piece | {"waiting": waiting, "wait": wait})

        all_of = lambda steps: sum((took for *_, took, _, its in entries if its in steps), D(0))
        for step in ("remove", "form"):
            add(step, step, None, all_of([step]))
        asked = self.visits()
        is_set = returns and "return trips" in self.job.get("set", {})
        days = self.pour_days() or [[]]
        waits = lambda wait: f" after {wait} days" if wait is not None else ""
        for n, (pours, off, wait) in enumerate(self.rounds()):
            def of_slabs(step, those, with_whole, wait=None):
                slabs = [slab for slab in self.slabs if slab.pour in those]
                hours = all_of([step]) if len(days) == 1 else self.hours_on(entries, step, slabs, with_whole)
                add(step, self.numbered(step, those), those, hours, wait=wait)

            of_slabs("place", pours, n == 0)
            if not off and days != [[]]:
                continue
            of_slabs("strip", off, n == len(days) - 1, wait)
            of_slabs("lift covers", off, n == len(days) - 1, wait)
            for step, its, _, _, often in asked:
                if step == "finish" and not is_set and its[0] in off:
                    add(step, self.numbered(step, its), its, D(0), often)
        if is_set:
            add("return", "return", None, all_of(["return", "keep wet", "seal", "set lids"]), returns)
            return found
        lids = [one for one in asked if one[0] == "set lids"]
        rest = [one for one in asked if one[0] not in ("set lids", "finish")]
        with_strip = self.said("set lids") == "when we strip"
        for step, pours, slabs, wait, often in lids + rest if with_strip else rest + lids:
            if step == "set lids":
                add(step, step, pours, all_of([step]), often)
                continue
            order = [pour for poured in days for pour in poured]
            whole = bool(order) and order[-1 if step == "seal" else 0] in pours
            name = self.numbered(step, pours) + waits(wait)
            add(step, name, pours, self.hours_on(entries, step, slabs, whole, wait), often)
        return found

    def is_inspected(self):
        night = self.said("night before a pour")
        permit = self.job.get("permit", "none")
        return night == "always" or (night == "with a permit" and permit not in ("none", "no"))

    def stand_too_long(self, first, pour):
        """Whether forms would stand for more than a week, or what waits longer would wait longer, until a pour."""
        if pour["step"] != "place" or first["step"] in ("remove", "form", "place") or not first["pours"]:
            return False
        days = (self.date_of(pour["pours"][0]) - self.date_of(first["pours"][-1])).days
        return days > max(FORMS_STAND, first["wait"] or 0)

    def nights(self, first, second):
        """Whether a night lies between two pieces whatever time they take."""
        planned = "trips" in self.job
        before, after = first["step"], second["step"]
        if self.stand_too_long(first, second):
            return True
        if (before, after) == ("strip", "lift covers"):
            return False
        if hardens(before):
            return True
        if before == "finish" and planned:
            return True
        if after == "place":
            return before in ("remove", "form") and self.is_inspected()
        if after == "finish":
            return planned
        with_strip = after == "set lids" and self.said("set lids") == "when we strip"
        return after in LATER and not (with_strip and before in ("strip", "lift covers", "finish"))

    def stretches(self, entries, returns, in_a_day):
        clock, before = Clock(in_a_day), None
        for piece in self.pieces(entries, returns):
            clock.work(piece, before is not None and self.nights(before, piece))
            before = piece
        return clock.groups


def title(group):
    names = [piece["name"] for piece in group]
    return names[0] if len(names) == 1 else ", ".join(names[:-1]) + " and " + names[-1]


def is_later(group):
    return all(piece["step"] in LATER for piece in group)


def is_visit(group, is_apart):
    """Nothing is made or poured; where stages are counted together, or planned, forms come off with the work."""
    return all(piece["step"] in (("strip", *LATER) if is_apart else LATER) for piece in group)


def days_on_site(group, in_a_day):
    """One for a pour by itself, else by hours, and as often as is asked for."""
    if len(group) == 1 and group[0]["step"] == "place":
        return D(1)
    hours = sum(piece["hours"] for piece in group)
    return max(up(hours / in_a_day, D(1)), sum(piece["often"] for piece in group))


def few_for(hours, trips, at_work, most, is_said, charged=None):
    """Who comes back: as many as the owner says, else as few as do the hours of each trip in its day, and of
    more the fewest who are charged less."""
    if is_said:
        return most
    wanted = up(hours / trips / at_work, D(1)) if trips else D(1)
    fewest = min(max(wanted, D(1)), most)
    if charged is None:
        return fewest
    return min((D(n) for n in range(int(fewest), int(most) + 1)), key=lambda n: (charged(n), n))


def is_long_pour(group, in_a_day):
    """A pour is finished on its day, and charged as long as that is."""
    return any(piece["step"] == "place" and in_a_day < piece["hours"] + piece["waiting"] for piece in group)
