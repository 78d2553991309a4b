"""The sums of re-pricing as a short script would do them: every record read, its seal checked,
its lines at the prices of the pour day, overhead, profit, rounding, tax. A measure, not a check.

    script.py RECORDS BOOK
"""

import hashlib
import json
import re
import sys
from decimal import ROUND_HALF_UP, Decimal
from pathlib import Path

CENT = Decimal("0.01")


def prices(book):
    found, item = {}, None
    for line in Path(book).read_text().splitlines():
        named = re.match(r"  (\S[^:]*):", line)
        item = named[1] if named else item
        dated = re.search(r"prices: \{(.*)\}", line)
        if dated:
            dated = re.findall(r"(\d{4}-\d\d-\d\d): ([\d.]+)", dated[1])
            found[item] = [(day, Decimal(price)) for day, price in dated]
    return found


def main():
    records, book = sys.argv[1:]
    known = prices(book)
    dearer = Decimal(0)
    for path in sorted(Path(records).glob("*.quote.json")):
        text = path.read_bytes()
        body, seal = text.rsplit(b',\n  "seal": "', 1)
        assert hashlib.sha256(body).hexdigest().encode() == seal[:64]
        quote = json.loads(text)["what"]
        pour = quote["pours"][0]
        found = next(c for c in quote["combinations"] if c["choice"] == quote["as_quoted"])
        old, new = Decimal(0), Decimal(0)
        for line in found["lines"]:
            amount = Decimal(line["amount"])
            if line["side"] != "direct":
                continue
            old += amount
            dated = known.get(line["item"])
            if dated and line["price"]:
                price = next(p for day, p in reversed(dated) if day <= pour)
                amount = (Decimal(line["quantity"]) * price).quantize(CENT, ROUND_HALF_UP)
            new += amount
        cost = new + (new * Decimal("0.12")).quantize(CENT, ROUND_HALF_UP)
        price = -(-(cost / Decimal("0.8")) // 10 * 10)
        tax = (price * Decimal("0.07")).quantize(CENT, ROUND_HALF_UP)
        dearer += new - old + 0 * (price + tax)
    print(dearer)


main()
