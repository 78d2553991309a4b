"""Holds files of the owner against the schemas that editors get, by a validator of others.

    tests/oracle/schema.py [--self-test]

Every takeoff, business and book of the demos and of the recorded runs that the program takes must
be taken by its schema too. `--self-test` adds a key nobody knows to each group of each file, one
at a time, and the schema must refuse it. Exit status: 0 all as it should be, 1 a difference.
"""

import copy
import json
import sys
from pathlib import Path

import jsonschema
import yaml

ROOT = Path(__file__).resolve().parents[2]
KINDS = {"takeoff": "customer", "business": "firm", "mapping": "columns", "price-book": "items"}
# Groups by names that the owner chooses: any key may stand there.
FREE = {"slabs", "kinds", "items", "units", "set", "of", "zones", "change", "prices", "columns", "use", "rates"}
FREE |= {"mixes", "bases", "bars", "mesh", "fiber", "dowels", "finishes", "colors", "sealers", "disposal", "boxes"}
FREE |= {"site", "what", "also", "edges", "levels", "meets"}


def files():
    """Every file with its schema; the demos, and what recorded runs take."""
    folders = [ROOT / "demo-quotes", ROOT / "price-books", *(ROOT / "tests/golden").rglob("input")]
    for file in sorted(file for folder in folders for file in folder.glob("*.yaml")):
        # To this loader every value is its text, as it is to the program.
        tree = yaml.load(file.read_text(), yaml.BaseLoader)
        if kind := next((kind for kind, key in KINDS.items() if isinstance(tree, dict) and key in tree), None):
            yield file, tree, validator(kind)


def validator(kind):
    return jsonschema.Draft202012Validator(json.loads((ROOT / f"demo-quotes/keys/{kind}.json").read_text()))


def groups(tree, path=()):
    """Paths to all groups whose keys are fixed."""
    if isinstance(tree, dict):
        if not path or isinstance(path[-1], str) and path[-1] not in FREE:
            yield path
        for key, below in tree.items():
            yield from groups(below, (*path, key))


def main(wanted):
    count = wrong = 0
    for file, tree, schema in files():
        if not wanted:
            count += 1
            for fault in schema.iter_errors(tree):
                wrong += 1
                print(f"{file.relative_to(ROOT)}: {'/'.join(map(str, fault.path))}: {fault.message[:120]}")
            continue
        for path in groups(tree):
            broken = copy.deepcopy(tree)
            place = broken
            for key in path:
                place = place[key]
            place["nobody knows this"] = "1"
            count += 1
            if schema.is_valid(broken):
                wrong += 1
                print(f"{file.relative_to(ROOT)}: a key more in {'/'.join(path) or 'the file'} is taken")
    print(f"{count} {'groups broken' if wanted else 'files'}, {wrong} wrong")
    return 1 if wrong or not count else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:] == ["--self-test"]))
