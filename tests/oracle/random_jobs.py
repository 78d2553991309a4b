"""Prices jobs by chance with the program and with the oracle, and compares them to the cent.

    tests/oracle/random_jobs.py FLATWORK [--jobs 2000] [--seed 1] [--only N] [--keep FOLDER] [--self-test]

Every job is a takeoff, a business and a price book made from the seed and its number, so a
number names a job again; `--only N --keep FOLDER` writes that one out. What either side refuses
is a failure. Compared are every line's quantity and amount, direct cost, cost, price, tax and
total of every combination, the payments, and that the parts add up. What was in the jobs, and
which lines they had, is counted and printed. `--self-test` breaks one rule of the oracle at a
time (see broken.py), and some job must notice each. Exit status: 0 all equal, 1 a difference.
"""

import argparse
import collections
import json
import multiprocessing
import random
import subprocess
import sys
import tempfile
import traceback
from pathlib import Path

import broken
import figures
import invented
import recompute

DAY = "2026-05-04"
# What dice may lay out and nobody can build; a few in a hundred, or nothing would be compared.
LEFT_OUT = {
    "edge-too-wide": "no room for thick edges",
    "edge-too-shallow": "a thick edge no deeper than the slab",
    "slabs-overlap": "slabs that overlap",
    "over-an-opening": "a step over an opening",
    "box-outside": "a box over an opening",
}


def write(room, job, business, book):
    room.mkdir(parents=True, exist_ok=True)
    for name, tree in (("job", job), ("business", business), ("book", book)):
        (room / f"{name}.yaml").write_text(invented.page(tree))


def files(room):
    return room / "job.yaml", room / "business.yaml", room / "book.yaml"


def overruled(room, job, number, chance):
    """Sets one or two of the quantities that the job has, a little more than they are."""
    dice = random.Random(f"{number} set")
    if dice.random() > 0.2:
        return set()
    oracle, found = figures.Job(*files(room), DAY), {}
    oracle.set = lambda name, computed, *_: found.setdefault(name, computed)
    oracle.estimate([])
    names = sorted(name for name, value in found.items() if value > 0)
    job["set"] = {}
    for name in dice.sample(names, dice.choice((1, 1, 2))):
        more = int(found[name]) + dice.choice((1, 2))
        unit = dice.choice(("", "", " hours", " labor hours", " crew hours", " min")) if name.endswith(" hours") else ""
        job["set"][name] = {"to": f"{more}{unit}", "because": "I stood there"}
    return {"set"}


def one(work):
    """(number, figures compared, differences, features, titles, combinations) of one job."""
    flatwork, seed, number, room = work
    job, business, book, features = invented.job(f"{seed}/{number}")
    try:
        write(room, job, business, book)
        features |= overruled(room, job, f"{seed}/{number}", features)
        write(room, job, business, book)
        oracle = figures.Job(*files(room), DAY)
        done = run(flatwork, room)
        if done.returncode != 0 and "error[unknown-quantity]" in done.stderr:
            # The oracle works some figures out that are bought by nobody here.
            del job["set"]
            features.discard("set")
            write(room, job, business, book)
            oracle, done = figures.Job(*files(room), DAY), run(flatwork, room)
        for code, why in LEFT_OUT.items():
            if done.returncode != 0 and f"error[{code}]" in done.stderr:
                return number, 0, [], {f"left out: {why}"}, [], 0
        if done.returncode != 0:
            return number, 0, [f"refused: {done.stderr.strip()}"], features, [], 0
        theirs = json.loads(done.stdout)
        seen, differences = recompute.compare(str(number), theirs, oracle)
        titles = [line["title"] for line in theirs["lines"]]
        return number, seen, differences, features, titles, len(theirs["combinations"])
    except Exception:  # the oracle must never pass over a job in silence
        return number, 0, [f"the oracle stopped: {traceback.format_exc(limit=-3)}"], features, [], 0


def run(flatwork, room):
    command = [flatwork, "cost", str(room / "job.yaml"), "--on", DAY, "--format", "json"]
    return subprocess.run(command, capture_output=True, text=True, stdin=subprocess.DEVNULL)


def compare(wanted, room):
    numbers = [wanted.only] if wanted.only is not None else range(1, wanted.jobs + 1)
    work = [(wanted.flatwork, wanted.seed, n, room / str(n)) for n in numbers]
    features, titles = collections.Counter(), collections.Counter()
    seen = lines = combinations = wrong = 0
    with multiprocessing.Pool() as pool:
        for number, looked, differences, had, bought, priced in pool.imap(one, work, chunksize=8):
            seen, lines, combinations = seen + looked, lines + len(bought), combinations + priced
            features.update(had)
            titles.update(bought)
            if differences:
                wrong += 1
                print(f"  DIFFERS job {number} of seed {wanted.seed}")
                for line in differences[: wanted.show]:
                    print(f"    {line}")
    count = lambda counter: ", ".join(f"{name} {n}" for name, n in sorted(counter.items()))
    print(f"in so many jobs: {count(features)}")
    print(f"so many lines: {count(titles)}")
    print(
        f"{len(work)} jobs, {combinations} combinations, {lines} lines, {seen} figures compared;"
        f" {len(work) - wrong} jobs agree, {wrong} differ"
    )
    out = sum(n for name, n in features.items() if name.startswith("left out"))
    return 1 if wrong or not lines or len(work) < 20 * out else 0


def notices(place, theirs):
    """Whether the oracle differs; where it holds a figure against itself, that notices too."""
    try:
        return bool(recompute.compare("", theirs, figures.Job(*files(place), DAY))[1])
    except AssertionError:
        return True


def self_test(wanted, room):
    """Breaks one rule at a time, and looks for a job that notices."""
    cases = []
    for number in range(1, wanted.jobs + 1):
        place = room / str(number)
        job, business, book, _ = invented.job(f"{wanted.seed}/{number}")
        write(place, job, business, book)
        done = run(wanted.flatwork, place)
        if done.returncode == 0:
            cases.append((place, json.loads(done.stdout)))
    unseen = 0
    for name, breaking in broken.RULES.items():
        noticed = 0
        with breaking():
            for noticed, (place, theirs) in enumerate(cases, 1):
                if notices(place, theirs):
                    break
            else:
                unseen, noticed = unseen + 1, None
        print(f"  {'UNSEEN' if noticed is None else f'job {noticed} notices'}: {name}")
    print(f"{len(broken.RULES)} rules broken, {unseen} unseen")
    return 1 if unseen else 0


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("flatwork")
    parser.add_argument("--jobs", type=int, default=2000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--only", type=int)
    parser.add_argument("--show", type=int, default=6)
    parser.add_argument("--keep", type=Path)
    parser.add_argument("--self-test", action="store_true")
    wanted = parser.parse_args()
    with tempfile.TemporaryDirectory() as room:
        place = wanted.keep or Path(room)
        sys.exit(self_test(wanted, place) if wanted.self_test else compare(wanted, place))


if __name__ == "__main__":
    main()
