"""Text to exact figures, and the two ways of rounding."""

import functools
from decimal import ROUND_CEILING, ROUND_HALF_UP
from decimal import Decimal as D
from pathlib import Path

import yaml

FT = D(12)
YARD = D(324)  # sq ft x in in a cubic yard: 27 cu ft x 12 in
LOADER = getattr(yaml, "CBaseLoader", yaml.BaseLoader)


class NotCovered(Exception):
    """A key or a phrase that the oracle does not know: said loudly, never passed over."""


def load(path):
    # BaseLoader keeps every scalar as its text: no binary float is ever made.
    return yaml.load(Path(path).read_text(), Loader=LOADER)


def known(where, keys, allowed):
    """Refuses what nobody here would look at."""
    strange = set(keys) - set(allowed)
    if strange:
        raise NotCovered(f"{where}: {', '.join(sorted(strange))}")


def number(text):
    total = D(0)
    for part in text.split():
        top, _, bottom = part.partition("/")
        total += D(top) / D(bottom) if bottom else D(top)
    return total


@functools.cache
def amount(text):
    """`3/4 hour` -> (0.75, "hour"); `cu yd` alone is one of it."""
    words = text.split()
    n = 0
    while n < len(words) and words[n][0].isdigit():
        n += 1
    return (number(" ".join(words[:n])) if n else D(1)), " ".join(words[n:])


@functools.cache
def inches(text):
    words, total = text.split(), D(0)
    while words:
        n = next((i for i, word in enumerate(words) if word in ("ft", "in")), None)
        if n is None:
            raise NotCovered(f"length `{text}`")
        total += number(" ".join(words[:n])) * (FT if words[n] == "ft" else 1)
        words = words[n + 1 :]
    return total


def percent(text):
    return D(text.strip().rstrip("%")) / 100


def rate(text):
    """`7 hours per 100 ft` -> (0.07, "hours")."""
    much, per = text.split(" per ")
    value, unit = amount(much)
    return value / amount(per)[0], unit


def singular(unit):
    return {"hours": "hour", "days": "day", "trips": "trip", "loads": "load", "rolls": "roll"}.get(unit, unit)


def cents(value):
    """Half a cent goes away from zero; twenty places are kept first, so no trace moves a half."""
    return value.quantize(D("1e-20"), ROUND_HALF_UP).quantize(D("0.01"), ROUND_HALF_UP)


def up(value, step):
    """The next multiple of a step; nine places are kept first, so a trace orders nothing."""
    steps = (value / step).quantize(D("1e-9"), ROUND_HALF_UP).to_integral_value(ROUND_CEILING)
    return steps * step


def split(total, weights):
    """Largest remainder in cents, ties to the earlier part."""
    whole = total * 100
    exact = [whole * w / sum(weights) for w in weights]
    parts = [x // 1 for x in exact]
    order = sorted(range(len(parts)), key=lambda i: -(exact[i] - parts[i]))
    for i in order[: int(whole - sum(parts))]:
        parts[i] += 1
    return [part / 100 for part in parts]
