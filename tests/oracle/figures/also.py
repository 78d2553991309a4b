"""The owner's own rules: of something the job has, something bought or done, in place of what is built in."""

from decimal import Decimal as D

from .reading import NotCovered, amount, inches, known, rate, singular, up

KEYS = ("for", "once a", "buy", "each", "much", "over", "hours", "stage", "instead of", "where", "says")
WHERE = ("slab", "kind", "finish", "placed by", "thicker than", "has")
OF_SLABS = ("area", "concrete", "base", "straight form", "curved form", "deep form", "risers")
OF_REMOVAL = ("removed area", "removed volume", "saw cut", "sawn face")
OF_ORDERS = ("ordered concrete", "loads")
OF_CREW = ("trips", "crew days", "hours worked")
PURPOSES = ("forms", "curing compound", "curing cover")


class Also:
    def rules(self):
        """Each after those it goes by; there is no way round."""
        rules, done = self.book.get("also", {}), []

        def follow(name):
            if name in done:
                return
            by = rules[name].get("for")
            for other, rule in rules.items():
                if other != name and by in (other, rule.get("buy", "")):
                    follow(other)
            done.append(name)

        for name in sorted(rules):
            known(f"also {name}", rules[name], KEYS)
            known(f"where of {name}", rules[name].get("where", {}), WHERE)
            follow(name)
        return [(name, rules[name]) for name in done]

    def serves(self, rule, slab):
        where = rule.get("where", {})
        said = {"slab": slab.name, "kind": slab.kind, "finish": slab.value.get("finish", "broom")}
        said["placed by"] = self.pours[slab.pour]["by"]
        thick = max(slab.thin, slab.thick)
        return (
            all(said[key] == where[key] for key in said if key in where)
            and ("thicker than" not in where or inches(where["thicker than"]) < thick)
            and ("has" not in where or self.has(slab, where["has"]) > 0)
        )

    def has(self, slab, what):
        straight, deep, curved = slab.form(self.deep_limit)
        return {
            "area": slab.area,
            "concrete": slab.concrete,
            "base": slab.base(self.order)[0],
            "straight form": straight,
            "deep form": deep,
            "curved form": curved,
            "risers": D(slab.flight["risers"]) if slab.flight else D(0),
        }[what]

    def by_pour(self, rule, many):
        """What each order with a slab of the rule has, by its pour."""
        found = []
        for order in self.orders:
            if not order.makes and any(self.serves(rule, slab) for slab in order.slabs):
                found.append((order.pour, many(order)))
        return found

    def goes_by(self, name, rule):
        """(pour or None, how much) of everything that is bought or done by itself."""
        slabs = [slab for slab in self.slabs if self.serves(rule, slab)]
        once, by = rule.get("once a"), rule.get("for")
        if once == "job":
            found = [(None, D(1))] if slabs else []
        elif once == "pour":
            found = [(pour, D(1)) for pour in sorted({slab.pour for slab in slabs})]
        elif once == "slab":
            found = [(None, D(len(slabs)))]
        elif once == "box":
            found = [(None, D(sum(len(slab.boxes) for slab in slabs)))]
        elif once == "load":
            found = self.by_pour(rule, lambda order: D(len(order.loads)))
        elif once == "trip" or by in OF_CREW:
            found = []
        elif by in PURPOSES:
            found = [(None, sum((self.purpose(by, slab) for slab in slabs), D(0)))]
        elif by in OF_SLABS:
            found = [(None, sum((self.has(slab, by) for slab in slabs), D(0)))]
        elif by in OF_REMOVAL:
            found = [(None, self.taken_out[by])]
        elif by == "ordered concrete":
            found = self.by_pour(rule, lambda order: order.total)
        elif by == "loads":
            found = self.by_pour(rule, lambda order: D(len(order.loads)))
        elif by in self.book["items"] or by in self.book.get("also", {}):
            found = [(None, sum((line.much for line in self.lines if by in (line.key, line.cause)), D(0)))]
        else:
            raise NotCovered(f"a rule for `{by}`")
        if "over" in rule and sum((much for _, much in found), D(0)) <= amount(rule["over"])[0]:
            return []
        return [(pour, much) for pour, much in found if much]

    def purpose(self, name, slab):
        """What the purpose would go by in this slab."""
        straight, deep, curved = slab.form(self.deep_limit)
        if name == "forms":
            deep = D(0) if "deep forms" in self.book["use"] else deep + slab.step_sides
            return straight + curved + slab.riser_form + deep
        way = {"curing compound": "compound", "curing cover": "cover"}[name]
        if slab.curing != way:
            return D(0)
        return (slab.area + slab.face) / amount(self.order["compound coverage"])[0] if way == "compound" else slab.area

    def left(self, built_in, slab, much):
        """What of a purpose or task is left to it in a slab."""
        for _, rule in self.rules():
            if rule.get("instead of") != built_in or not self.serves(rule, slab):
                continue
            if rule.get("for") == built_in:
                much = D(0)
            elif "for" in rule:
                much = max(much - self.has(slab, rule["for"]), D(0))
            else:
                raise NotCovered("a rule that counts times in place of a quantity")
        return much

    def also(self):
        for name, rule in self.rules():
            self.also_bought(name, rule, self.goes_by(name, rule))

    def also_after_crew(self, of_crew):
        for name, rule in self.rules():
            what = rule.get("for") if rule.get("once a") != "trip" else "trips"
            if what in OF_CREW and of_crew[what]:
                self.also_bought(name, rule, [(None, of_crew[what])])

    def also_bought(self, name, rule, found):
        for pour, much in found if "buy" in rule else ():
            if "each" in rule:
                first, _, second = rule["each"].partition(" or ")
                pieces = up(much / amount(first)[0], D(1))
                if second:
                    loose = sum(
                        (yards for item, yards in self.loose if item == rule["for"]), D(0)
                    )
                    pieces = max(pieces, up(loose / amount(second)[0], D(1)))
                much = pieces
            elif " per " in str(rule.get("much", "")):
                so_much, each = rule["much"].split(" per ")
                much = much * amount(so_much)[0] / amount(each)[0]
            elif "much" in rule:
                much = much * amount(str(rule["much"]))[0]
            title = name if len(self.pours) == 1 or pour is None else f"{name}, pour {pour + 1}"
            self.buy(rule["buy"], title, [much], pour)

    def also_tasks(self):
        """(task, work, rate as written, stage) of every rule with hours."""
        tasks = []
        for name, rule in self.rules():
            much = sum((much for _, much in self.goes_by(name, rule)), D(0))
            if "hours" in rule and much:
                hours = rule["hours"] if " per " in rule["hours"] else f"{rule['hours']} per 1 piece"
                tasks.append((name, much, hours, rule.get("stage", "form")))
        return tasks

    def also_returns(self, pour):
        """One visit for all rules that bring the crew back to a pour."""
        first = min((slab.pour for slab in self.slabs), default=0)
        for name, rule in self.rules():
            if "hours" not in rule or rule.get("stage") != "return":
                continue
            by, once = rule.get("for"), rule.get("once a")
            here = [slab for slab in self.slabs if slab.pour == pour and self.serves(rule, slab)]
            if once in ("pour", "slab"):
                back = bool(here)
            elif once == "job":
                back = pour == first and any(self.serves(rule, slab) for slab in self.slabs)
            elif by in OF_SLABS:
                back = any(self.has(slab, by) for slab in here)
            else:
                raise NotCovered("a return for other than slabs")
            if back:
                return D(1)
        return D(0)
