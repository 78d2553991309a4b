"""Compares cost and price of the program, to the cent, with a second computation.

    tests/oracle/recompute.py FLATWORK [--on DATE] [--self-test] [JOB.yaml...]

Without files it takes both demo jobs, and variants of them in a temporary folder that
change one rule each (see variants.py). `--self-test` makes one list price a cent dearer in
memory only, and then every job must differ. Needs PyYAML. Exit status: 0 all equal, 1 a difference.
"""

import argparse
import json
import subprocess
import sys
import tempfile
from collections import Counter
from decimal import Decimal as D
from pathlib import Path

import figures
import variants

HOME = Path(__file__).resolve().parents[2]


def program(flatwork, takeoff, day):
    command = [flatwork, "cost", str(takeoff), "--on", day, "--format", "json"]
    done = subprocess.run(command, capture_output=True, text=True)
    if done.returncode != 0:
        sys.exit(f"{' '.join(command)}\n{done.stdout}{done.stderr}")
    return json.loads(done.stdout)


def compare(name, theirs, job):
    """Every difference in words, and how many figures were looked at."""
    seen, differences = 0, []

    def check(what, ours, said):
        nonlocal seen
        seen += 1
        if ours != said:
            differences.append(f"{name}: {what}: oracle {ours}, program {said}")

    combinations = {tuple(one["taken"]): one for one in theirs["combinations"]}
    ours = dict(job.combinations())
    check("combinations", sorted(ours), sorted(combinations))
    for taken, adds in ours.items():
        lines, totals = job.estimate(adds)
        label = " + ".join(taken) or "as quoted"
        said = combinations.get(taken, {})
        for key, value in totals.items():
            check(f"{label}, {key}", value, D(said.get(key, "-1")))
        if taken != job.quoted_as():
            continue
        # Lines of one title are told apart by their quantity and their amount.
        mine = sorted((title, value, much) for title, much, value in lines)
        their = [(x["title"], D(x["amount"]), x["quantity"]) for x in theirs["lines"]]
        their = sorted((title, value, D(much) if much else None) for title, value, much in their)
        check("number of lines", [line[0] for line in mine], [line[0] for line in their])
        for (title, value, much), (_, said_value, said_much) in zip(mine, their):
            check(f"{title}, amount", value, said_value)
            if much is not None and said_much is not None:
                # A file holds four places; a third of a yard leaves a digit at the far end.
                same = abs(said_much - much) <= D("0.00005") + D("1e-20")
                check(f"{title}, quantity {much:f} and {said_much:f}", True, same)
        stages = [one for one in theirs["crew"]["stages"] if one["trips"] is not None]
        check("stages", [name for name, *_ in job.stages], [one["stage"] for one in stages])
        for (name, *ours_of), one in zip(job.stages, stages):
            for what, value in zip(("hours_worked", "people", "trips", "crew_days"), ours_of):
                same = abs(value - D(one[what])) <= D("0.00005") + D("1e-20")
                check(f"{what} to {name}, {value:f} and {one[what]}", True, same)
        check("pours", len(job.finishing), len(theirs["pour_days"]))
        for ours_of, one in zip(job.finishing, theirs["pour_days"]):
            for what, value in ours_of.items():
                close = None not in (value, one[what]) and abs(value - D(one[what])) <= D("0.00005") + D("1e-20")
                check(f"{what} of pour {ours_of['pour']}, {value} and {one[what]}", True, close or value is one[what])
        parts = [D(part["price"]) for part in theirs["sections"]]
        check("parts of the job add up to the price", totals["price"], sum(parts))
        changed = any("change" in one or "drop" in one for one in adds)
        if not changed and not job.job.get("set"):
            price_of = {part["section"]: D(part["price"]) for part in theirs["sections"]}
            said_of = {(one["part"], one["unit"]): D(one["price"]) for one in theirs["of_one"]}
            for part, unit, price in job.of_one(price_of):
                check(f"a {unit} of {part}", price, said_of.get((part, unit)))
            grouped = [(line.title, job.group_of(line.key)) for line in job.lines if line.key]
            missing = Counter(grouped) - Counter((x["title"], x["group"]) for x in theirs["lines"])
            check("groups", Counter(), missing)
        for key, value in totals.items():
            check(f"quoted {key}", value, D(theirs["totals"][key]))
        parts = [D(part["amount"]) for part in theirs["payments"]]
        check("payments", job.payments(totals["total"]), parts)
        check("payments add up", totals["total"], sum(parts))
    return seen, differences


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("flatwork")
    parser.add_argument("--on", default="2026-05-04")
    parser.add_argument("--self-test", action="store_true")
    parser.add_argument("jobs", nargs="*")
    wanted = parser.parse_args()
    passed = failed = 0
    with tempfile.TemporaryDirectory() as room:
        jobs = [(Path(job).stem, Path(job)) for job in wanted.jobs]
        for name, takeoff in jobs or variants.all_jobs(HOME, Path(room)):
            business = takeoff.parent / "business.yaml"
            book = takeoff.parent / figures.load(business)["books"][0]
            theirs = program(wanted.flatwork, takeoff, wanted.on)
            job = figures.Job(takeoff, business, book, wanted.on)
            if wanted.self_test:
                prices = job.book["items"]["crushed stone"]["prices"]
                job.book["items"]["crushed stone"]["prices"] = {
                    day: str(D(price) + D("0.01")) for day, price in prices.items()
                }
            seen, differences = compare(name, theirs, job)
            if wanted.self_test:
                differences = [] if differences else [f"{name}: an altered price went unseen"]
            for line in differences:
                print(f"  DIFFERS {line}")
            passed += seen - len(differences)
            failed += len(differences)
            total = theirs["totals"]["total"]
            print(f"{name}: {seen} figures, {len(theirs['combinations'])} combinations, total {total}")
    print(f"{passed} passed, {failed} failed")
    sys.exit(1 if failed else 0)


if __name__ == "__main__":
    main()
