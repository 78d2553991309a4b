"""Asks jobs by chance at the prices and by the rules of another book by chance, and compares.

    tests/oracle/random_prices.py FLATWORK [--jobs 300] [--seed 1] [--only N] [--keep FOLDER]

The other book knows the same names and sells in its own way: other units, steps, trucks, fees,
purposes without an item, a hold that may cover the pour. Compared is what reprice.py compares.
A job that cannot be bought from the other book is left out. Exit status: 0 all equal, 1 a difference.
"""

import argparse
import collections
import json
import multiprocessing
import random
import re
import subprocess
import sys
import tempfile
import traceback
from pathlib import Path

import invented
import random_jobs
import reprice
from figures.other import Asked, Quote

DAY = random_jobs.DAY


def held(dice, book):
    """Concrete held, or not quite, for the days on which jobs by chance are poured."""
    if dice.random() < 0.5:
        days = sorted(f"2026-{dice.randint(5, 8):02}-{dice.randint(1, 28):02}" for _ in range(2))
        price = f"{dice.randint(140, 200)}.{dice.randint(0, 99):02}"
        book["holds"] = [{"item": "ready-mix", "price": price, "from": days[0], "until": days[1]}]


def one(work):
    """(number, figures compared, differences, why it was left out, groups of its causes) of one job."""
    flatwork, seed, number, room = work
    job, business, book, _ = invented.job(f"{seed}/{number}")
    job.pop("set", None)
    other = invented.job(f"{seed}/{number} other")[2]
    dice = random.Random(f"{seed}/{number} asked")
    held(dice, other)
    random_jobs.write(room, job, business, book)
    (room / "other.yaml").write_text(invented.page(other))
    takeoff, firm, own = random_jobs.files(room)
    supposed = dice.sample(["ready-mix", "labor", "delivery", "stone"], dice.choice((0, 0, 1, 2)))
    what_ifs = [(item, dice.choice(("+8%", "-10%", "+3.7%", "61.25"))) for item in supposed]
    rooms = dice.sample(["ready-mix", "labor", "stone", "board", "short", "trip"], 2)
    command = [flatwork, "reprice", str(takeoff), "--on", DAY, "--book", str(room / "other.yaml"), "--format", "json"]
    command += [word for item, to in what_ifs for word in ("--what-if", f"{item}={to}")]
    command += [word for item in rooms for word in ("--room", item)]
    done = subprocess.run(command, capture_output=True, text=True, stdin=subprocess.DEVNULL)
    if done.returncode != 0:
        return number, 0, [f"refused: {done.stderr.strip()}"], None, {}
    answer = json.loads(done.stdout)
    if answer["left_out"]:
        return number, 0, [], re.sub("`.*?`|\\d[\\d/., -]*", "...", answer["left_out"][0]["because"]), {}
    try:
        old, new = (Asked(takeoff, firm, file, DAY) for file in (own, room / "other.yaml"))
        old.bought_on, new.what_ifs = old.job.get("quoted", DAY), what_ifs
        quote = Quote(takeoff.stem, "open", old, new, old.quoted_as())
        seen, differences = reprice.compare(answer, [quote], rooms)
        return number, seen, differences, None, collections.Counter(cause[0] for cause in quote.causes())
    except Exception:  # the oracle must never pass over a job in silence
        return number, 0, [f"the oracle stopped: {traceback.format_exc(limit=-3)}"], None, {}


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("flatwork")
    parser.add_argument("--jobs", type=int, default=300)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--only", type=int)
    parser.add_argument("--show", type=int, default=6)
    parser.add_argument("--keep", type=Path)
    wanted = parser.parse_args()
    numbers = [wanted.only] if wanted.only is not None else range(1, wanted.jobs + 1)
    left_out, groups, figures, wrong = collections.Counter(), collections.Counter(), 0, 0
    with tempfile.TemporaryDirectory() as room, multiprocessing.Pool() as pool:
        place = wanted.keep or Path(room)
        work = [(wanted.flatwork, wanted.seed, n, place / str(n)) for n in numbers]
        for number, seen, differences, because, told in pool.imap(one, work, chunksize=8):
            figures, wrong = figures + seen, wrong + bool(differences)
            left_out.update([because] if because else [])
            groups.update(told)
            if differences:
                print(f"  DIFFERS job {number} of seed {wanted.seed}")
                for line in differences[: wanted.show]:
                    print(f"    {line}")
    for because, n in left_out.most_common():
        print(f"left out {n}: {because}")
    out = left_out.total()
    told = ", ".join(f"{n} of {group}" for group, n in groups.items())
    print(f"{len(work) - out} jobs by another book, {out} left out, causes: {told};")
    print(f"{figures} figures compared, {wrong} jobs differ")
    sys.exit(1 if wrong or not figures or len(work) < 10 * out else 0)


if __name__ == "__main__":
    main()
