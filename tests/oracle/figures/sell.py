"""From direct cost to price, tax, total and payments."""

import re
from decimal import ROUND_HALF_UP, Decimal as D

from .reading import cents, inches, known, number, percent, split, up

PRICE = ("overhead", "contingency", "profit", "minimum job", "round up to", "margin floor", "tax")


class Sell:
    def sell(self):
        """Overhead and contingency on direct cost; profit, minimum, rounding, tax, in this order."""
        price = self.business["price"]
        known("price", price, PRICE)
        taxes = price.get("tax", [])
        taxes = taxes if isinstance(taxes, list) else [taxes]
        self.charged = list(self.least_charges())
        bought = self.lines + self.charged
        lines = [line[:3] for line in bought]
        paid = sum(line.value for line in bought if line.taxed)
        materials = sum(line.value for line in bought if line.kind == "material")
        for tax in (t for t in taxes if t.get("on") == "purchases"):
            title = f"{tax.get('name', 'sales tax').capitalize()} paid on purchases"
            lines.append((title, None, cents(paid * percent(tax["rate"]))))
        direct = sum(value for *_, value in lines)
        add = lambda title, value: lines.append((title, None, value)) if value else None
        overhead = cents(direct * percent(price.get("overhead", "0%")))
        contingency = cents(direct * percent(price.get("contingency", "0%")))
        add("Overhead", overhead)
        add("Contingency", contingency)
        cost = direct + overhead + contingency
        if "price" in self.job:
            sale = D(self.job["price"])
            add("Left by the fixed price", sale - cost)
        else:
            way, much = price["profit"].split()
            much = percent(much)
            profit = cents(cost * much if way == "markup" else cost / (1 - much) - cost)
            add("Profit", profit)
            sale = cost + profit
            least = D(price.get("minimum job", "0"))
            add("Up to the minimum job", max(least - sale, D(0)))
            sale = max(sale, least)
            rounded = up(sale, D(price.get("round up to", "0.01")))
            add("Price rounded up", rounded - sale)
            sale = rounded
        for says, off in list(self.taken_off(sale)):
            add(f"Taken off: {says}", -off)
            sale -= off
        total_tax = D(0)
        for tax in taxes:
            if tax.get("on", "none") in ("none", "purchases"):
                continue
            base = sale if tax["on"] in ("sale", "receipts") else cents(sale * materials / direct)
            rate = percent(tax["rate"])
            value = cents(base * rate / (1 - rate) if tax["on"] == "receipts" else base * rate)
            add(tax.get("name", "sales tax").capitalize(), value)
            total_tax += value
        totals = {"direct": direct, "cost": cost, "price": sale}
        totals |= {"tax": total_tax, "total": sale + total_tax}
        return lines, totals

    def taken_off(self, sale):
        """Each discount: a percentage of the price before all of them, or so many dollars."""
        for entry in self.job.get("discounts", []):
            for says, off in entry.items():
                yield says, cents(sale * percent(off)) if off.endswith("%") else D(off)

    def of_one(self, price_of):
        """(part, unit, price of one) of each slab that has a price of its own; a strip is a rectangle
        four times as long as it is wide, and a path without bends is as long as its legs. Nine places of
        what there is of it are kept first."""
        for slab in self.slabs:
            much = {"sq ft": slab.area, "cu yd": slab.concrete, "ft": self.long(slab)}
            for unit, value in much.items():
                if value and slab.name in price_of:
                    yield slab.name, unit, cents(price_of[slab.name] / value.quantize(D("1e-9"), ROUND_HALF_UP))

    def long(self, slab):
        own = slab.own
        if "path" in own:
            legs = [leg.split(" ", 1)[1] for leg in own["path"]]
            plain = all(re.fullmatch(r"[0-9/ ]+(ft|in)( [0-9/ ]+in)?", leg) for leg in legs)
            return sum(inches(leg) for leg in legs) / 12 if plain else None
        sides = own.get("size", "").split(" x ")
        if len(sides) != 2 or not all(side[0].isdigit() for side in sides):
            return None
        wide, long = sorted(inches(side) for side in sides)
        return long / 12 if wide * 4 <= long else None

    def payments(self, total):
        """Percents that make 100 or shares: largest remainder. With a `rest`: each of the
        others to the cent, and the rest takes what is left. A short job may have its own."""
        usual = self.business["payments"]
        asked = self.business.get("payments of a short job", usual) if self.is_short else usual
        shares = [share for entry in asked for share in entry.values()]
        if "rest" not in shares:
            weight = lambda s: percent(s) if s.endswith("%") else number(s)
            return split(total, [weight(share) for share in shares])
        parts = []
        for share in shares:
            if share == "rest":
                parts.append(D(0))
            elif share.endswith("%"):
                parts.append(cents(total * percent(share)))
            else:
                parts.append(cents(total * number(share)) if "/" in share else D(share))
        parts[shares.index("rest")] = total - sum(parts)
        return parts
