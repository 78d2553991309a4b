"""The crew: person hours by rate, trips, days, and what is charged."""

from decimal import Decimal as D

from .days import LATER, Days, days_on_site, few_for, is_later, is_long_pour, is_visit, title
from .reading import amount, known, number, up

CREW = {"people", "hours in a day", "travel", "set up and clean up", "round days up to", "count days"}
CREW |= {"charge", "labor lines", "difficulty", "night before a pour", "set lids", "works", "days off", "holidays"}
CREW |= {"people on a visit"}
# The stage of a task, by how it begins; all else is done while forming.
STAGES = {"break out": "remove", "take up": "remove", "saw cut": "remove", "dig": "remove"}
STAGES |= {"site backfill": "strip", "site washout": "place", "set lid": "set lids", "come back": "set lids"}
STAGES |= {"place by": "place", "mix bags": "place", "finish ": "place", "step": "place", "cure": "strip", "seal ": "seal"}


def stage_of(task, of_item):
    if of_item:
        return of_item
    return next((stage for start, stage in STAGES.items() if task.startswith(start)), "form")


class Labor(Days):
    def tasks(self):
        """(task, work, rate as written, whether it comes with an item)."""
        slabs = self.slabs
        flat = [s for s in slabs if not s.is_step]  # a step has one rate for forming and finish
        work = dict(self.removing)
        work["base"] = sum(s.base(self.order)[0] + s.step_base[0] + (s.fill if s.fill_of else 0) for s in slabs)
        for n, task in enumerate(("form straight", "form deep", "form curved")):
            work[task] = sum(self.left(task, s, s.form(self.deep_limit)[n]) for s in flat)
        work["vapor retarder"] = sum(s.area for s in slabs if s.value.get("vapor retarder") == "yes")
        work["bars"] = self.placed
        work["drill holes"] = self.holes()
        work["mesh"] = sum(s.area for s in slabs if s.value.get("mesh", "none") != "none")
        for order in self.orders:
            task = f"place by {order.by}"
            work[task] = work.get(task, D(0)) + self.as_usual(order)
        work["mix bags"] = sum((order.bags for order in self.orders if order.bags), D(0))
        finishes = {}
        for slab, finish, area, _ in self.faces():
            if not slab.is_step:
                finishes[finish] = finishes.get(finish, D(0)) + area
        work["step"] = sum(s.flight["risers"] if s.flight else D(s.is_step) for s in slabs)
        work["cure, strip and clean"] = sum(s.area + s.face for s in slabs)
        found = [(name, self.by_rate(name, much), self.book["rates"][name], False) for name, much in work.items() if much]
        for finish, area in finishes.items():
            own = self.book.get("finishes", {}).get(finish, {}).get("hours")
            if area:
                name = f"finish {finish}"
                found.append((name, area, own or self.book["rates"][name], False))
        sealed = {}
        for slab in slabs:
            if slab.seal and "hours" in self.book["sealers"][slab.seal]:
                sealed[slab.seal] = sealed.get(slab.seal, D(0)) + slab.area
        for seal, area in sealed.items():
            found.append((f"seal {seal}", area, self.book["sealers"][seal]["hours"], False))
        found += self.site_tasks() + self.box_tasks() + self.covers()
        return found + self.also_tasks() + self.item_work

    def covers(self):
        """What takes time only where the book rates it: laying covers, keeping wet by area or by the visit."""
        rates, found = self.book["rates"], []
        surface = lambda way: sum((s.area + s.face for s in self.slabs if s.curing == way), D(0))
        covered = sum((s.area + s.face for s in self.slabs if self.lies_under(s)), D(0))
        if "cover slabs" in rates:
            found.append(("cover slabs", covered, rates["cover slabs"], "place"))
        if "lift covers" in rates:
            much = D(self.lifting()) if rates["lift covers"].endswith("per trip") else covered
            found.append(("lift covers", much, rates["lift covers"], "lift covers"))
        if self.wetting():
            found.append(("keep wet", self.wetting(), rates["keep wet"], "keep wet"))
        elif "keep wet" in rates:
            found.append(("keep wet", surface("wet"), rates["keep wet"], "strip"))
        return [one for one in found if one[1]]

    def wetting(self):
        """A visit a day for a week to every pour that is kept wet, where it is rated by the visit."""
        if not self.book["rates"].get("keep wet", "").endswith("per trip"):
            return D(0)
        return D(7 * len({s.pour for s in self.slabs if s.curing == "wet"}))

    def written_hours(self):
        """Hours the owner adds are final, and done while forming."""
        much = sum(self.added_hours, D(0))
        return self.set("added labor hours", much) if much else D(0)

    def by_rate(self, task, much):
        """The same work in the unit that the rate of the book is given by, where it is another."""
        unit = amount(self.book["rates"][task].split(" per ")[1])[1]
        has_steel = lambda s: s.value.get("bars", "none") != "none" or bool(s.along and s.along["bars"]) or bool(s.flight and s.flight["bars"] and s.flight["risers"] > 1)
        if unit == "sq ft" and task == "base":
            laid = [s.base_area(self.order) for s in self.slabs if s.base(self.order)[1]]
            return sum(laid + [s.step_base_area for s in self.slabs if s.step_base[1]], D(0))
        if unit == "ton" and task == "base":
            tons = D(0)
            for slab in self.slabs:
                for yards, material in (slab.base(self.order), slab.step_base, (slab.fill, slab.fill_of)):
                    tons += yards * rate(self.book["bases"][material]["delivered"])[0] if material else D(0)
            return tons
        if unit == "sq ft" and task.startswith("form "):
            n = ("form straight", "form deep", "form curved").index(task)
            total = D(0)
            for slab in self.slabs:
                feet = slab.form(self.deep_limit)[n]
                if feet and not slab.is_step:
                    total += slab.faces(self.deep_limit)[n] * self.left(task, slab, feet) / feet
            return total
        if unit == "sq ft" and task == "bars":
            return sum((s.area for s in self.slabs if has_steel(s)), D(0))
        if task in self.removed and task != "saw cut":
            return self.removed[task][unit]
        return much

    def labor(self):
        """Difficulty on every task; travel and set-up a trip; days up to a step, stage by stage."""
        known("crew", self.crew, CREW)
        people, day = D(self.crew["people"]), amount(self.crew["hours in a day"])[0]
        travel = amount(self.crew["travel"])[0]
        set_up = amount(self.crew.get("set up and clean up", "0 hours"))[0]
        step = number(self.crew["round days up to"])
        hours, entries = {}, []
        for name, much, written, of_item in self.tasks():
            took = self.person_hours(name, much, written)
            entries.append((name, much, took, of_item, stage_of(name, of_item)))
            hours[name] = hours.get(name, D(0)) + took
        if self.added_hours:
            took = self.written_hours()
            entries.append(("added labor", took, took, True, "form"))
        self.finishing = self.finish(entries)
        by_task = [took for _, _, took, *_ in entries]
        worked = self.set("hours worked", sum(by_task))
        if sum(by_task):
            more = worked / sum(by_task)
            entries = [(name, much, took * more, of, its) for name, much, took, of, its in entries]
        in_a_day = people * (day - travel - set_up)
        at_work = day - travel - set_up
        most_back = people  # who comes back at most
        if "people on a visit" in self.crew:
            most_back = min(people, amount(self.crew["people on a visit"])[0])
        few = lambda hours, trips, charged=None: few_for(hours, trips, at_work, most_back, "people on a visit" in self.crew, charged)
        # Days of the whole crew, of which only `so many` are there.
        in_days = lambda n, so_many=people: (up(n / (so_many * day), step) if step else n / (so_many * day)) * so_many / people
        returns = self.returns()
        groups = self.stretches(entries, returns, in_a_day)
        hours_of = lambda group: sum(piece["hours"] for piece in group)
        later = [group for group in groups if is_later(group)]
        pours = [group for group in groups if any(piece["step"] == "place" for piece in group)]
        self.is_short = len(pours) == 1 and pours[0] is groups[0] and days_on_site(groups[0], in_a_day) <= 1
        by_stage = self.said("count days") == "by stage"
        there = D(0)  # people × trips: who was on the way, and how often
        planned = amount(self.job["trips"])[0] if "trips" in self.job else None
        before = worked - sum(hours_of(group) for group in later)
        by_days = step and self.crew.get("charge", "crew days") == "crew days"
        on_visit = lambda group: is_visit(group, by_stage and planned is None)
        on_site = lambda group: days_on_site(group, most_back * at_work if on_visit(group) else in_a_day)
        self.stages = []
        if by_stage:
            came = []
            for group in groups:
                here = on_site(group)
                if planned is not None and not is_later(group):
                    here = planned * hours_of(group) / before if before else D(0)
                came.append(self.set(f"trips to {title(group)}", here))
            computed = sum(came)
            trips = self.set("trips", computed)
            days = D(0)
            for group, own in zip(groups, came):
                here = own * trips / computed if computed and trips != computed else own
                asked_of = lambda n: up((hours_of(group) + own * n * (travel + set_up)) / (n * day), step) * n
                who = few(hours_of(group), own, asked_of if by_days else None) if on_visit(group) else people
                there += here * who
                taken = hours_of(group) + sum(piece["waiting"] for piece in group) + here * who * (travel + set_up)
                exact = taken / (people * day)
                is_long = is_long_pour(group, in_a_day)
                took = self.set(f"days to {title(group)}", exact if is_long else in_days(taken, who))
                self.stages.append((title(group), hours_of(group), who, here, took))
                days += took
        else:
            back = sum(piece["hours"] for group in later for piece in group if piece["step"] != "set lids")
            if back:
                returns = self.set("trips to return", max(returns, up(back / (most_back * at_work), D(1))))
            in_one = planned if planned is not None else sum(on_site(group) for group in groups if not is_later(group))
            trips = self.set("trips", in_one + returns)
            of_set = trips / (in_one + returns) if in_one + returns else D(1)
            there = (trips - returns * of_set) * people + returns * of_set * few(back, returns)
        whole = worked + self.set("travel hours", there * travel)
        if set_up:
            whole += self.set("set-up hours", there * set_up)
        whole += sum(piece["waiting"] for group in groups for piece in group)
        if not by_stage:
            days = in_days(whole)
        days = self.set("crew days", days)
        charged = self.set("labor", days * people * day if by_days else whole)
        self.of_crew = {"trips": trips, "crew days": days, "hours worked": worked}
        key = self.book["use"]["labor"]
        lines = [("labor", charged)]
        if self.crew.get("labor lines", "one") == "by task":
            lines = [(f"{name} hours", much) for (name, *_), much in zip(entries, by_task)]
            lines.append(("other labor", charged - sum(by_task)))
        for name, much in lines:
            self.buy_exactly(key, much, name)
        self.role("trip", "trips", [trips])
        return hours
