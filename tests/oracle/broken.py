"""Rules of the second computation, broken one at a time: some job by chance must notice each."""

import contextlib
from decimal import ROUND_FLOOR
from decimal import Decimal as D
from unittest import mock

from figures import also, boxes, days, dowels, finish, goods, job, labor, machines, named, orders, path, placing, reading, removal, season, sell, sides, site, slab, steel, touching


def down(value, step):
    """Rounds a purchase down to its step instead of up."""
    return (value / step).to_integral_value(ROUND_FLOOR) * step


def instead(place, name, make):
    """`place.name` replaced by `make(what it was)` for a while."""

    @contextlib.contextmanager
    def breaking():
        with mock.patch.object(place, name, make(getattr(place, name))):
            yield

    return breaking


def nothing(_):
    return lambda *_, **__: None


def only_pumping(pumps):
    def pumped(self):
        days, self.finishing = self.finishing, [day | {"placing_hours": D(0)} for day in self.finishing]
        pumps(self)
        self.finishing = days

    return pumped


def before(all_sides, found):
    """The sides before those that were found."""
    return [all_sides[all_sides.index(side) - 1] for side in found]


def more(part):
    return lambda was: lambda *args, **names: was(*args, **names) * part


def prop(part):
    """A property a little larger than it is."""
    return lambda was: property(lambda self: was.fget(self) * part)


def cached(part):
    return lambda was: property(lambda self: was.func(self) * part)


RULES = {
    "purchases go down to their step": instead(job, "up", lambda _: down),
    "orders go down to the plant's step": instead(orders, "up", lambda _: down),
    "half a cent is dropped": instead(job, "cents", lambda _: lambda v: reading.D(int(v * 100)) / 100),
    "trucks are filled one yard short": instead(orders, "filled", lambda was: lambda t, truck, *a: was(t, truck - 1, *a)),
    "a slab has no allowance of its own": instead(
        orders.Order, "over", lambda _: lambda self, usual, said: reading.percent(usual)
    ),
    "a pour has no allowance of its own": instead(
        orders.Order, "over", lambda was: lambda self, usual, said: was(self, usual)
    ),
    "nothing is charged for a short load": instead(orders.Orders, "short", lambda _: lambda *_: D(0)),
    "what is cheapest is bought as it is needed": instead(orders.Orders, "cheapest", lambda _: lambda *_: {}),
    "a bag makes a tenth more": instead(
        orders.Orders, "by_the_bag", lambda was: lambda self, order, total, by: was(self, order, total / D("1.1"), by)
    ),
    "what waits comes with the rest": instead(orders, "alone", lambda _: lambda *_: False),
    "no yard more is ever asked for": instead(orders.Orders, "more_yards", lambda _: lambda *_: [D(0)]),
    "nothing is charged for standing": instead(orders.Orders, "standing", lambda _: lambda *_: D(0)),
    "the last load is never held": instead(orders.Orders, "hold_back", nothing),
    "a tenth more in thickened edges": instead(slab.Slab, "thickened", cached(D("1.1"))),
    "ground is dug too deep under steps": instead(slab.Slab, "on_ground", lambda _: property(lambda _: True)),
    "a landing takes the hours of one step": instead(
        slab.Slab, "is_step", lambda was: property(lambda self: was.fget(self) or "on" in self.own)
    ),
    "base stops at the forms": instead(slab.Slab, "base_area", lambda _: lambda self, _: self.area),
    "base lies where thick edges stand": instead(slab.Slab, "edge_below", lambda was: lambda self, level: was(self, D(0))),
    "the corners of base and digging are round": instead(
        slab.Slab, "past", lambda was: lambda self, chosen, out: was(self, chosen, out) - len(chosen) * out * out / 1000
    ),
    "nothing is dug under slabs": instead(slab.Slab, "dug", lambda _: lambda self, _: (self.area, D(0))),
    "a level base makes nothing thicker": instead(slab.Slab, "on_level", lambda _: lambda _: None),
    "an uneven slab is as thick as halfway": instead(
        slab.Slab, "mean", lambda _: property(lambda self: (self.thin + self.thick) / 2)
    ),
    "every side is as deep as the thickest end": instead(slab.Slab, "deepest", lambda _: lambda self, _: self.thick),
    "the face of a step-down needs no form": instead(
        slab.Slab, "formed", lambda _: lambda self: [p for p in self.pieces + self.inner if p.kind in slab.FORMED]
    ),
    "every form is a foot high": instead(slab.Slab, "faces", lambda _: lambda self, limit: self.form(limit)),
    "steps have no base": instead(slab.Slab, "step_base", lambda _: property(lambda _: (D(0), None))),
    "steps have no bars": instead(steel, "step_bars", lambda _: lambda *_: []),
    "steps a tenth taller": instead(slab.Slab, "step_concrete", prop(D("1.1"))),
    "risers need no form": instead(slab.Slab, "riser_form", prop(D(0))),
    "a stoop is filled twice": instead(slab.Slab, "fill", prop(D(2))),
    "a border counts its corners not at all": instead(
        slab.Slab, "border", lambda was: lambda self: (was(self)[0] * D("1.05"), was(self)[1])
    ),
    "touching slabs keep both forms": instead(job, "share_edges", nothing),
    "a strip takes the place of a form between two pours": instead(
        touching, "two_pours", lambda was: lambda a, b: ("joined", b) if b in slab.STRIP else was(a, b)
    ),
    "a bulkhead holds one side only": instead(slab.Slab, "depth", lambda _: lambda self, piece: self.own_depth(piece)),
    "laps are forgotten": instead(steel, "lap_of", lambda _: lambda *_: D(1)),
    "bars along an edge are dropped": instead(steel, "HAIR", lambda _: reading.D(0)),
    "every slab has the same chairs": instead(steel, "chair", lambda _: lambda slab, usual, items: usual),
    "bars run through every joint": instead(slab.Slab, "joints_across", lambda _: lambda *_: []),
    "steps go down to the lowest level": instead(
        slab.Slab,
        "below_treads",
        lambda _: property(lambda self: self.flight["rise"] * self.flight["risers"] * (self.flight["risers"] - 1) / 2),
    ),
    "no bars lie across corners": instead(steel, "across", nothing),
    "edge bars meet without an L": instead(slab.Slab, "sharp_corners", lambda _: lambda _: 0),
    "stakes of curves stand as far apart as others": instead(
        slab.Slab, "forms_apart", lambda was: lambda self: [(feet, ends, False) for feet, ends, _ in was(self)]
    ),
    "one stick too few": instead(steel, "sticks", lambda was: lambda *a: was(*a) - 1),
    "a strip by itself loses a lap": instead(
        steel, "side_by_side", lambda _: lambda room, each, lap: reading.up(room / (each - lap), reading.D(1))
    ),
    "sheet goes by area": instead(goods.Goods, "sheet", lambda _: lambda self, slab: slab.area * 20 / 19),
    "one sheet too many": instead(steel, "mesh", lambda was: lambda *a: was(*a) + 1),
    "a finish takes twice its powder": instead(goods.Goods, "dose", lambda was: staticmethod(more(2)(was))),
    "color is bagged for the whole order": instead(
        goods.Goods, "colored", lambda _: lambda self, order, each, key: order.total * each
    ),
    "what is added waits for nothing": instead(job, "goes_on_after", lambda _: lambda item: None),
    "no pour is sealed with another": instead(days, "is_served", lambda _: lambda due, poured: False),
    "hours added by hand take no time": instead(labor.Labor, "written_hours", lambda _: lambda _: reading.D(0)),
    "sealing needs no trip": instead(labor.Labor, "returns", lambda _: lambda *_: D(0)),
    "the whole crew comes back": instead(labor, "few_for", lambda _: lambda hours, trips, at_work, most, *_: most),
    "no more come back than a day asks for": instead(labor, "few_for", lambda was: lambda *a: was(*a[:5])),
    "one is enough to come back": instead(labor, "few_for", lambda _: lambda *_: D(1)),
    "visits fill days before": instead(labor, "is_later", lambda _: lambda group: False),
    "a pour begins on any day": instead(days, "pour_fits", lambda _: lambda *_: True),
    "no pour shares the day of its forms": instead(days, "pour_fits", lambda _: lambda *_: False),
    "concrete hardens in an hour": instead(days, "hardens", lambda _: lambda _: False),
    "a long pour goes up to the step": instead(labor, "is_long_pour", lambda _: lambda *_: False),
    "no inspector looks at forms": instead(days.Days, "is_inspected", lambda _: lambda _: False),
    "a long pour is two visits": instead(
        labor, "days_on_site", lambda was: lambda group, day: was([*group, {**group[0], "hours": D(0), "often": D(0)}], day)
    ),
    "pours of several days are one": instead(
        days.Days, "pour_days", lambda was: lambda self: [[pour for pours in was(self) for pour in pours]]
    ),
    "lids are always set by themselves": instead(
        days.Days, "said", lambda was: lambda self, key: "on a visit of their own" if key == "set lids" else was(self, key)
    ),
    "everything is done while forming": instead(labor, "stage_of", lambda _: lambda *_: "form"),
    "soil is hauled at half its volume": instead(removal, "area_and_depth", lambda was: lambda o: (was(o)[0], was(o)[1] / 2)),
    "a pump costs nothing": instead(machines.Machines, "pumps", nothing),
    "a pump is there only while it pumps": instead(machines.Machines, "pumps", only_pumping),
    "a part of a day is hired where days are whole": instead(machines, "up", lambda _: lambda value, step: value),
    "what is added by hand goes up by itself": instead(
        job.Job, "buy", lambda was: lambda self, *args, added=False, **names: was(self, *args, **names)
    ),
    "a long way takes no longer": instead(placing.Placing, "way", lambda _: lambda *_: D(1)),
    "the month does not tell how fast it sets": instead(job.Job, "normal_by_day", lambda _: lambda *_: None),
    "concrete sets alike at every temperature": instead(finish, "by_temperature", lambda _: lambda _: D(1)),
    "trucks come whenever the crew is ready": instead(finish, "longest_wait", lambda _: lambda trucks, _: sum(trucks, D(0))),
    "a truck of the job is a full one": instead(
        finish.Finish, "full_truck", lambda _: lambda self: reading.amount(self.book["supply"].get("truck", "10 cu yd"))[0]
    ),
    "a crew's hour is one of one person": instead(job.Job, "in_hours", lambda _: lambda self, much, unit, usual: much),
    "trips an option plans are not made": instead(
        job.Job, "written_in", lambda was: lambda self, chosen: was(self, [{**one, "trips": "1"} for one in chosen])
    ),
    "concrete is kept wet by nobody": instead(labor.Labor, "covers", lambda _: lambda _: []),
    "no night is cold": instead(season.Season, "freezes", lambda _: lambda *_: False),
    "what covers it is left on": instead(season.Season, "lifting", lambda _: lambda _: 0),
    "nobody comes to wet it": instead(labor.Labor, "wetting", lambda _: lambda _: D(0)),
    "no truck waits for the crew": instead(placing.Placing, "placing_of", lambda _: lambda *_: D(0)),
    "an order has no smallest charge": instead(job.Job, "least_charges", lambda _: lambda _: []),
    "nothing is wasted": instead(job.Job, "wasted", lambda _: lambda *_: D(0)),
    "nothing is taken off": instead(sell.Sell, "taken_off", lambda _: lambda *_: []),
    "bars weigh a tenth more": instead(
        goods, "WEIGHT", lambda was: {size: each * reading.D("1.1") for size, each in was.items()}
    ),
    "a path is a foot longer": instead(
        sell.Sell, "long", lambda was: lambda self, slab: (length := was(self, slab)) and length + 1
    ),
    "the price of one leaves the cents out": instead(
        sell.Sell, "of_one", lambda was: lambda *of: ((part, unit, price // 1) for part, unit, price in was(*of))
    ),
    "a buggy comes for free": instead(machines.Machines, "machines", nothing),
    "payments go by halves": instead(sell.Sell, "payments", lambda _: lambda self, total: [total / 2, total / 2]),
    "work is always in its usual unit": instead(labor.Labor, "by_rate", lambda _: lambda self, task, much: much),
    "own rules buy nothing": instead(also.Also, "also_bought", nothing),
    "own rules take no time": instead(also.Also, "also_tasks", lambda _: lambda *_: []),
    "own rules replace nothing": instead(also.Also, "left", lambda _: lambda self, built_in, slab, much: much),
    "own rules serve every slab": instead(also.Also, "serves", lambda _: lambda *_: True),
    "own rules bring the crew back three times": instead(also.Also, "also_returns", more(3)),
    "own rules are never over so much": instead(
        also.Also, "goes_by", lambda was: lambda self, name, rule: was(self, name, {k: v for k, v in rule.items() if k != "over"})
    ),
    "own rules buy one for one": instead(
        also.Also,
        "also_bought",
        lambda was: lambda self, name, rule, found: was(self, name, {k: v for k, v in rule.items() if k != "much"}, found),
    ),
    "own rules know no trips": instead(also.Also, "also_after_crew", nothing),
    "boxes displace nothing": instead(boxes.Box, "displaced", lambda _: lambda *_: D(0)),
    "boxes are set for nothing": instead(boxes.Boxes, "set_boxes", nothing),
    "late lids need no trip": instead(boxes.Boxes, "comes_back_for_lids", lambda _: lambda *_: False),
    "answers about the site bring nothing": instead(site.Site, "site_goods", nothing),
    "the site takes no time": instead(site.Site, "site_tasks", lambda _: lambda *_: []),
    "dowels cost nothing": instead(dowels.Dowels, "pins", nothing),
    "holes drill themselves": instead(dowels.Dowels, "holes", lambda _: lambda *_: D(0)),
    "openings are never taken off": instead(slab.Slab, "hole", lambda was: lambda *a: (was(*a)[0].moved(0, 0), "house")),
    "a sector is a third too small": instead(named, "sector", lambda was: lambda r, *a: was(r * D("0.9"), *a)),
    "a side that is not named by where it looks is the one before it": instead(
        sides, "meant", lambda was: lambda *a: was(*a) if a[0] in slab.COMPASS else before(a[2].sides, was(*a))
    ),
    "steps from an outline lie on its first side": instead(
        slab.Slab, "leads_down", lambda was: lambda self, *a: was(self, *a) if "size" in self.own else self.shape.sides[0]
    ),
    "a ring sector has a smaller middle": instead(
        named, "ring_sector", lambda was: lambda large, small, *a: was(large, small * D("0.9"), *a)
    ),
    "a path is a tenth wider": instead(path, "path", lambda was: lambda legs, width: was(legs, width * D("1.1"))),
    "a path bends on the spot": instead(path, "leg", lambda was: lambda text: (*was(text)[:3], D(0))),
    "all is said of no side": instead(
        sides, "stand", lambda was: lambda edges, *a: was({k: v for k, v in edges.items() if k != "all"}, *a)
    ),
    "changes of an option are not made": instead(job.Job, "written_in", lambda _: lambda self, _: self),
}
