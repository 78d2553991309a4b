"""A rule of the owner's that only repeats a built-in purpose changes nothing.

    tests/oracle/repeats.py FLATWORK [--jobs 500] [--seed 1] [--self-test]

Jobs by chance are priced as they are, and once more by a book in which a purpose is bought by a
rule that goes by it and replaces it: with the same item, so every total is the same to the cent.
Each job tries one purpose, in turn; every purpose must have been bought in some job. With
`--self-test` the rule replaces nothing, and jobs must notice. Exit status: 0 as it should be.
"""

import argparse
import collections
import json
import sys
import tempfile
from pathlib import Path

import invented
import random_jobs

PURPOSES = ["forms", "deep forms", "stakes", "isolation strip", "curing compound"]
PURPOSES += ["curing cover", "vapor retarder", "chairs"]


def totals(done):
    return [done.get("totals"), done.get("combinations")]


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("flatwork")
    parser.add_argument("--jobs", type=int, default=500)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--self-test", action="store_true")
    wanted = parser.parse_args()
    bought, differ, counted = collections.Counter(), 0, 0
    with tempfile.TemporaryDirectory() as room:
        for number in range(1, wanted.jobs + 1):
            purpose = PURPOSES[number % len(PURPOSES)]
            job, business, book, _ = invented.job(f"{wanted.seed}/{number}")
            # Set quantities have names, and a rule's name is another.
            job.pop("set", None)
            book.pop("also", None)
            item = book["use"].get(purpose, "none")
            if item == "none":
                continue
            if purpose == "chairs":
                # By their heights several are chosen among, and a rule buys the one it names.
                for other in ("chair", "tall chair", "high chair"):
                    book["items"].get(other, {}).pop("height", None)
            place = Path(room) / str(number)
            random_jobs.write(place, job, business, book)
            plain = random_jobs.run(wanted.flatwork, place)
            rule = {"for": purpose, "buy": item}
            if not wanted.self_test:
                rule["instead of"] = purpose
            book["also"] = {"the same": rule}
            random_jobs.write(place, job, business, book)
            again = random_jobs.run(wanted.flatwork, place)
            if plain.returncode != 0:
                continue
            counted += 1
            one, other = json.loads(plain.stdout), json.loads(again.stdout or "{}")
            lines = [line for line in other.get("lines", []) if line.get("cause") == "the same"]
            bought[purpose] += bool(lines)
            if again.returncode != 0 or totals(one) != totals(other):
                differ += 1
                if not wanted.self_test:
                    print(f"job {number}, {purpose}: {again.stderr[:200]}")
    never = [purpose for purpose in PURPOSES if not bought[purpose]]
    print(f"{counted} jobs, {differ} differ; bought by a rule: {dict(bought)}")
    if wanted.self_test:
        return 0 if differ > counted // 4 else 1
    return 1 if differ or never else 0


if __name__ == "__main__":
    sys.exit(main())
