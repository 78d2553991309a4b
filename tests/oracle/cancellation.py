"""The last day to cancel, for every day of ten years, against a public list of holidays.

usage: cancellation.py FLATWORK [--self-test]

A business day is any day but Sunday and a federal holiday; Saturdays count. Whether the day a
holiday is kept on counts is not said, so neither it nor the holiday itself is one.
"""

import datetime
import os
import pathlib
import re
import subprocess
import sys
import tempfile
from concurrent.futures import ThreadPoolExecutor

import holidays

FIRST, LAST = datetime.date(2026, 1, 1), datetime.date(2035, 12, 31)
COMMON = pathlib.Path(__file__).parents[1] / "golden" / "common"
FEDERAL = holidays.country_holidays("US", years=range(2025, 2038), observed=True)


def last_day(signed, saturdays=True):
    day, left = signed, 3
    while left:
        day += datetime.timedelta(1)
        off = day.weekday() == 6 or day in FEDERAL or (day.weekday() == 5 and not saturdays)
        left -= not off
    return day


def shop(folder):
    """A business with the right to cancel, and one quote that went out."""
    (folder / "book.yaml").write_text((COMMON / "book.yaml").read_text())
    business = (COMMON / "business.yaml").read_text()
    asked = business.replace("deposit cap: 33%", "deposit cap: 33%, right to cancel: yes")
    assert asked != business
    (folder / "business.yaml").write_text(asked)
    (folder / "job.yaml").write_text("customer: Ira Sample, Quillhaven\nslabs: {slab: 20 ft x 18 ft}\n")


def run(program, folder, *arguments):
    done = subprocess.run([program, *arguments], cwd=folder, capture_output=True, text=True)
    if done.returncode:
        sys.exit(f"{' '.join(arguments)}\n{done.stdout}{done.stderr}")
    return done.stdout


def told(program, folder, number, signed):
    said = run(program, folder, "accept", number, "--on", str(signed), "--late", "--dry-run")
    found = re.search(r"may cancel[^\n]*?([A-Z][a-z]+ \d+, \d{4})", said)
    if not found:
        sys.exit(f"no last day for {signed} in\n{said}")
    return datetime.datetime.strptime(found[1], "%B %d, %Y").date()


def main():
    program = os.path.abspath(sys.argv[1])
    saturdays = "--self-test" not in sys.argv
    days = [FIRST + datetime.timedelta(n) for n in range((LAST - FIRST).days + 1)]
    with tempfile.TemporaryDirectory() as folder:
        folder = pathlib.Path(folder)
        shop(folder)
        said = run(program, folder, "quote", "job.yaml", "--issue", "--on", str(FIRST))
        number = re.search(r"issued +(\S+)", said)[1].rstrip(",")
        with ThreadPoolExecutor(2) as crew:
            found = list(crew.map(lambda day: told(program, folder, number, day), days))
    apart = [(day, one, last_day(day, saturdays)) for day, one in zip(days, found)]
    apart = [row for row in apart if row[1] != row[2]]
    for signed, one, other in apart[:10]:
        print(f"signed {signed}: the program says {one}, the list {other}")
    if not saturdays:
        print(f"without Saturdays {len(apart)} days differ")
        sys.exit(0 if apart else "a wrong rule was not noticed")
    print(f"{len(days)} days to sign, {len(apart)} last days to cancel that differ")
    sys.exit(1 if apart else 0)


main()
