"""Jobs by chance: a takeoff, a business and a price book that go together, from a number.

Everything in them is invented. The same number gives the same job on every machine.
"""

import re

from . import around, belongs, book, business, crew, own, takeoff
from .chance import Chance

PLAIN = re.compile(r"[A-Za-z0-9.][A-Za-z0-9 ./%-]*[A-Za-z0-9.%]|[A-Za-z0-9]")


def text(value):
    """YAML in one line; a scalar is quoted only where it must be."""
    if isinstance(value, dict):
        return "{" + ", ".join(f"{text(key)}: {text(one)}" for key, one in value.items()) + "}"
    if isinstance(value, list):
        return "[" + ", ".join(text(one) for one in value) + "]"
    value = str(value)
    return value if PLAIN.fullmatch(value) else '"' + value.replace('"', '\\"') + '"'


def page(value):
    """YAML with one line for each entry of the two upper floors."""
    lines = []
    for key, one in value.items():
        if isinstance(one, dict) and one:
            lines.append(f"{text(key)}:")
            lines += [f"  {text(name)}: {text(part)}" for name, part in one.items()]
        elif isinstance(one, list) and one:
            lines.append(f"{text(key)}:")
            lines += [f"  - {text(part)}" for part in one]
        else:
            lines.append(f"{text(key)}: {text(one)}")
    return "\n".join(lines) + "\n"


def job(seed):
    """(takeoff, business, book) as trees of text, and the features in them."""
    chance = Chance(seed)
    shop = book.made(chance)
    firm = business.made(chance, shop)
    made = takeoff.made(chance, shop, firm)
    around.stock(chance, shop, book.item)
    around.put(chance, made)
    # With dice of their own, so that a job stays what it was.
    also = Chance(f"{seed} own rules")
    own.rates(also, shop)
    own.rules(also, shop)
    own.waste(also, shop)
    own.discounts(also, made)
    steel = Chance(f"{seed} steel")
    belongs.usual(steel, firm)
    belongs.chairs(steel, shop, book.item)
    belongs.slabs(steel, made)
    hands = Chance(f"{seed} crew")
    crew.ways(hands, shop, made)
    crew.plan(hands, made)
    crew.units(hands, shop)
    setting = Chance(f"{seed} pour days")
    crew.pours(setting, shop, firm, made)
    return made, firm, shop, chance.features | also.features | steel.features | hands.features | setting.features
