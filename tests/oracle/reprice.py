"""Compares quotes at other prices, to the cent, with a second computation.

    tests/oracle/reprice.py FLATWORK [--self-test] [--show N]

All demo jobs are asked at many other prices, by another book, and on record; see
other_prices.py. Compared are old and new cost, price and total, the margin if the price is
held, every cause with its group and class, that the causes add up to the difference of the
totals, what all cost together, and how far an item may rise: the whole estimate is made at
exactly that price, which must stand, and at one price step more, which must not.
`--self-test` breaks one rule here, or one figure of the answer, at a time, and a case must
notice each. Exit status: 0 all equal, 1 a difference or something unseen.
"""

import argparse
import copy
import functools
import json
import sys
import tempfile
from collections import Counter
from decimal import Decimal as D
from pathlib import Path
from unittest import mock

import other_prices
from figures import orders, other
from figures.job import Job
from figures.other import Asked, Quote
from figures.reading import cents

TOTALS = ("cost", "price", "total")


def compare(answer, quotes, rooms, same=False):
    """Every difference in words, and how many figures were looked at."""
    seen, differences = 0, []

    def check(what, ours, said):
        nonlocal seen
        seen += 1
        if ours != said:
            differences.append(f"{what}: oracle {ours}, program {said}")

    check("left out", [], answer["left_out"])
    theirs = {one["number"]: one for one in answer["quotes"]}
    check("quotes", sorted(quote.number for quote in quotes), sorted(one["number"] for one in answer["quotes"]))
    for key, state in (("open_quotes_cost_more_by", "open"), ("signed_work_costs_more_by", "signed")):
        check(key, sum((quote.harm() for quote in quotes if quote.state == state), D(0)), D(answer[key]))
    for quote in quotes:
        if quote.number in theirs:
            of_quote(lambda what, *figures: check(f"{quote.number}, {what}", *figures), theirs[quote.number], quote, rooms)
            if same:
                check(f"{quote.number}, nothing changes", [], theirs[quote.number]["causes"])
    return seen, differences


def of_quote(check, said, quote, rooms):
    check("customer", quote.customer, said["customer"])
    check("state", quote.state, said["state"])
    for key in TOTALS:
        check(f"old {key}", quote.old.totals[key], D(said[f"old_{key}"]))
        check(f"new {key}", quote.new.totals[key], D(said[f"new_{key}"]))
    margin = quote.margin(quote.new.totals["cost"])
    # A file holds two places.
    check(f"margin held {margin} and {said['margin_held']}", True, abs(margin - D(said["margin_held"])) <= D("0.005"))
    ours = Counter(quote.causes())
    program = Counter((one["group"], one["class"], one["title"], D(one["by"])) for one in said["causes"])
    for one in ours | program:
        check(", ".join(str(part) for part in one), ours[one], program[one])
    order = [other.GROUPS.index(one["group"]) for one in said["causes"]]
    check("groups in their order", sorted(order), order)
    more = D(said["new_total"]) - D(said["old_total"])
    check("causes of the program add up", more, sum((D(one["by"]) for one in said["causes"]), D(0)))
    check("causes of the oracle add up", more, sum((one[-1] for one in ours.elements()), D(0)))
    bought = {line.key for line in quote.new.lines}
    check("items with room", [item for item in rooms if item in bought], [one["item"] for one in said["room"]])
    for one in said["room"]:
        if one["item"] in bought:
            room(check, quote, one["item"], quote.floor, one["to_the_floor"])
            room(check, quote, one["item"], D(0), one["to_no_profit"])


def room(check, quote, item, floor, told):
    now, step = quote.prices(item)[0], quote.step(item)
    if told is None:  # below the floor already, or still above it at ten times the price
        fine = not quote.stands(item, now, floor) or quote.stands(item, now * 10, floor)
        check(f"no room told for {item} to {floor}", True, fine)
        return
    check(f"{item} at {told} stands above {floor}", True, quote.stands(item, D(told), floor))
    check(f"{item} at {told} and {step} more falls below {floor}", False, quote.stands(item, D(told) + step, floor))
    check(f"{item} at {told} is whole steps from {now}", D(0), (D(told) - now) % step)


# ---- faults on purpose


def instead(place, name, other_way):
    return lambda: mock.patch.object(place, name, other_way)


def quote_day(job, _):
    return job.job.get("quoted", job.today)


def as_quoted(was):
    return lambda self, taken: was(self, self.quoted_as())


def by_any_unit(line, estimate):
    same = [one for one in estimate.lines if one.cause == line.cause and one.key]
    return same[0].each if same else None


def only_same_cause(line, estimate):
    same = [one for one in estimate.lines if one.cause == line.cause and one.unit == line.unit and one.key]
    return same[0].each if same else None


PRICE, CHOSEN, CAUSES, SECOND = Asked.price, Asked.chosen, other.causes, other.second_price
RULES = {
    "a hold is ignored": instead(Job, "held", lambda *_: None),
    "a hold covers every day": instead(Job, "held", lambda self, key, day: next(
        (D(one["price"]) for one in self.book.get("holds", []) if one["item"] == key
         and one.get("job", self.name) == self.name), None)),
    "a supposed price moves what is held": instead(Asked, "stays", lambda *_: False),
    "a supposed price is rounded to the cent": instead(Asked, "price", lambda *a: cents(PRICE(*a))),
    "new prices are those of the quote day": instead(Asked, "buying_day", lambda self, pour: quote_day(self, pour)),
    "old prices are those of the pour day": instead(Asked, "buying_day", Job.buying_day),
    "an item without a pour goes by the first pour there ever was": instead(Asked, "buying_day", lambda self, pour: (
        self.bought_on or self.pours[pour or 0]["day"])),
    "short loads are forgotten": instead(orders.Orders, "short", lambda *_: D(0)),
    "every change is a rule of buying": instead(other, "second_price", lambda *_: None),
    "another unit has a second price": instead(other, "second_price", by_any_unit),
    "an item of the same name has no second price": instead(other, "second_price", only_same_cause),
    "what was ticked is forgotten": instead(Asked, "chosen", as_quoted(CHOSEN)),
    "every pour is priced as the first": instead(Asked, "buying_day", lambda self, _: (
        self.bought_on or Job.buying_day(self, None))),
    "the margin is that of the new price": instead(Quote, "margin", lambda self, cost: (
        (self.new.totals["price"] - cost) / self.new.totals["price"] * 100)),
    "a need without a like one is a matter of price": instead(other, "second_price", lambda line, estimate: (
        SECOND(line, estimate) if any(one.cause == line.cause for one in estimate.lines) else D(0))),
    "paid tax is left out of the causes": instead(other, "causes", lambda *a: [
        one for one in CAUSES(*a) if not one[2].endswith(" paid on purchases")]),
    "signed work stays when it is poured": instead(other_prices, "POURED_IS_OVER", False),
}  # fmt: skip


def first(answer, enough=1):
    """A quote of the answer with so many causes."""
    return next((one for one in answer["quotes"] if len(one["causes"]) >= enough), None)


def cent(key):
    def spoil(answer):
        holder = first(answer) if key in (first(answer) or {}) else answer if key in answer else None
        if holder:
            holder[key] = str(D(holder[key]) + D("0.01"))

    return spoil


def one_cause(change):
    def spoil(answer):
        quote = first(answer, 2)
        if quote:
            change(quote["causes"])

    return spoil


def swapped(causes):
    a, b = causes[0], next((one for one in causes if one["by"] != causes[0]["by"]), causes[0])
    a["by"], b["by"] = b["by"], a["by"]


def regrouped(causes):
    causes[0]["group"] = next(group for group in other.GROUPS if group != causes[0]["group"])


def farther(key, by):
    def spoil(answer):
        rooms = [one for quote in answer["quotes"] for one in quote["room"] if one[key]]
        if rooms:
            rooms[0][key] = str(D(rooms[0][key]) + D(by))

    return spoil


def room_gone(answer):
    rooms = [one for quote in answer["quotes"] for one in quote["room"] if one["to_the_floor"]]
    if rooms:
        rooms[0]["to_the_floor"] = None


FIGURES = {f"a cent more in {key}": cent(key) for key in (
    "open_quotes_cost_more_by", "signed_work_costs_more_by", *(f"{when}_{key}" for when in ("old", "new") for key in TOTALS))}
FIGURES |= {
    "a margin a little higher": lambda answer: first(answer) and first(answer).update(
        {"margin_held": str(D(first(answer)["margin_held"]) + D("0.01"))}),
    "a cent more in a cause": one_cause(lambda causes: causes[0].update(by=str(D(causes[0]["by"]) + D("0.01")))),
    "two amounts swapped": one_cause(swapped),
    "a cause in another group": one_cause(regrouped),
    "a cause of another class": one_cause(lambda causes: causes[0].update({"class": "disposal"})),
    "a cause is missing": one_cause(lambda causes: causes.pop()),
    "a cause is told twice": one_cause(lambda causes: causes.append(dict(causes[-1]))),
    "causes out of order": one_cause(lambda causes: causes.reverse()),
    "a quote is missing": lambda answer: answer["quotes"] and answer["quotes"].pop(),
    "a quote of another state": lambda answer: first(answer) and first(answer).update(state="lost"),
    "room to the floor a step too far": farther("to_the_floor", "0.01"),
    "room to the floor a step too short": farther("to_the_floor", "-0.01"),
    "room to no profit a step too far": farther("to_no_profit", "0.01"),
    "room to no profit a step too short": farther("to_no_profit", "-0.01"),
    "room is not told": room_gone,
}  # fmt: skip


def self_test(cases):
    unseen = 0

    def told(name, noticed):
        nonlocal unseen
        unseen += noticed is None
        print(f"  {'UNSEEN' if noticed is None else f'{noticed} notices'}: {name}")

    answers = {case: json.loads(case.answer) for case in cases}
    for quote in (quote for answer in answers.values() for quote in answer["quotes"]):
        quote["room"] = []  # the figures below are those of room
    look = lambda case: compare(answers[case], case.make(), [], case.same)[1]
    sound = functools.cache(look)
    for name, breaking in RULES.items():
        noticed = None
        for case in cases:
            before = sound(case)
            with breaking():
                if look(case) != before:
                    noticed = case.name
                    break
        told(name, noticed)
    made = {}
    for name, spoil in FIGURES.items():
        noticed = None
        for case in cases:
            answer = json.loads(case.answer)
            before = copy.deepcopy(answer)
            spoil(answer)
            if answer != before:
                quotes = made.setdefault(case.name, case.make() if case.name not in made else None)
                noticed = case.name if compare(answer, quotes, case.rooms, case.same)[1] else None
                break
        told(name, noticed)
    print(f"{len(RULES)} rules and {len(FIGURES)} figures broken, {unseen} unseen")
    return 1 if unseen else 0


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("flatwork")
    parser.add_argument("--self-test", action="store_true")
    parser.add_argument("--show", type=int, default=6)
    wanted = parser.parse_args()
    figures = quotes = wrong = 0
    with tempfile.TemporaryDirectory() as room:
        cases = list(other_prices.all_cases(wanted.flatwork, Path(room)))
        if wanted.self_test:
            sys.exit(self_test(cases))
        for case in cases:
            made = case.make()
            seen, differences = compare(json.loads(case.answer), made, case.rooms, case.same)
            for line in differences[: wanted.show]:
                print(f"  DIFFERS {case.name}: {line}")
            figures, quotes, wrong = figures + seen, quotes + len(made), wrong + len(differences)
    print(f"{len(cases)} questions, {quotes} quotes, {figures} figures compared, {wrong} differ")
    sys.exit(1 if wrong or not figures else 0)


if __name__ == "__main__":
    main()
