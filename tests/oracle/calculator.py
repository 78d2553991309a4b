"""Reads `flatwork takeoff JOB --explain` and calculates every working that is plain arithmetic.

    flatwork takeoff JOB.yaml --explain | tests/oracle/calculator.py [--self-test]

Figures are printed in four places, so what is calculated from them may stand off by what half
a unit of the last printed place does to each figure: every figure is an interval, and the
printed result must lie in the interval that comes out. `--self-test` adds a hundredth, and at
least a hundredth part, to every printed result, and all must be refused.
Exit status: 0 all agree, 1 a difference, 2 nothing was there to calculate.
"""

import re
import sys
from decimal import ROUND_CEILING
from decimal import Decimal as D

HALF = D("0.00005")
TOKEN = re.compile(r"largest of|up to a whole one|up to the next|[\d,]*\d(?:\.\d+)?%?|[-+×÷−(),]|[^\W\d]+")


class Unclear(Exception):
    pass


def interval(text, is_result=False):
    """A zero at the end is not printed, so three decimals may have been rounded to four; fewer are
    taken as exact, but a result may have been rounded however it looks."""
    value = D(text.rstrip("%").replace(",", ""))
    rounded = is_result or len(text.rstrip("%").partition(".")[2]) >= 3
    low, high = (value - HALF, value + HALF) if rounded else (value, value)
    return (low / 100, high / 100) if text.endswith("%") else (low, high)


class Reader:
    """Sums of products of figures; words after a figure are its unit."""

    def __init__(self, text):
        self.tokens, self.at = TOKEN.findall(text), 0

    def peek(self):
        return self.tokens[self.at] if self.at < len(self.tokens) else ""

    def take(self):
        self.at += 1
        return self.tokens[self.at - 1]

    def sum(self):
        low, high = self.product()
        while self.peek() in ("+", "−"):
            sign, (a, b) = self.take(), self.product()
            low, high = (low + a, high + b) if sign == "+" else (low - b, high - a)
        return low, high

    def product(self):
        ends = self.figure()
        while self.peek() in ("×", "÷"):
            sign, other = self.take(), self.figure()
            both = [a * b if sign == "×" else a / b for a in ends for b in other]
            ends = min(both), max(both)
        return ends

    def figure(self):
        token = self.take() if self.peek() else ""
        if token == "largest of":
            self.need("(")
            found = [self.sum()]
            while self.peek() == ",":
                self.take()
                found.append(self.sum())
            self.need(")")
            return max(a for a, _ in found), max(b for _, b in found)
        if token == "(":
            ends = self.stepped()
            self.need(")")
        elif token[:1].isdigit():
            ends = interval(token)
        else:
            raise Unclear(token)
        while re.fullmatch(r"[^\W\d]+", self.peek()) and self.peek() not in ("up",):
            self.take()
        return ends

    def stepped(self):
        ends = self.sum()
        while self.peek() in (",", "up to the next", "up to a whole one"):
            if self.peek() == ",":
                self.take()
            if self.peek() not in ("up to the next", "up to a whole one"):
                raise Unclear(self.peek())
            if self.take() == "up to a whole one":
                step = D(1)
            else:
                step = D(self.take().replace(",", ""))
            ends = tuple((x / step).to_integral_value(ROUND_CEILING) * step for x in ends)
        return ends

    def need(self, token):
        if self.peek() != token:
            raise Unclear(self.peek())
        self.take()

    def whole(self):
        ends = self.stepped()
        if self.at != len(self.tokens):
            raise Unclear(self.peek())
        return ends


def workings(lines):
    """(name, printed result, working) of each quantity; a working may run over lines."""
    head = re.compile(r"^  (\S.*?)\s{2,}([\d,]+(?:\.\d+)?)(?:  |$)")
    name, result, n = "", "", 0
    while n < len(lines):
        found = head.match(lines[n])
        if found:
            name, result = found.groups()
        if lines[n].startswith("      = "):
            text = lines[n].strip()[2:]
            # A further line of the same working is indented by eight, before any place.
            while n + 1 < len(lines) and re.match(r"^ {8}\S", lines[n + 1]) and "  [" not in text:
                n += 1
                text += " " + lines[n].strip()
            yield name, result, text.split("  [")[0]
        n += 1


def main():
    shift = "--self-test" in sys.argv
    agreed = differ = unclear = 0
    for name, result, text in workings(sys.stdin.read().split("\n")):
        try:
            low, high = Reader(text).whole()
        except Unclear:
            unclear += 1
            print(f"  not arithmetic: {name} = {text}")
            continue
        a, b = interval(result, is_result=True)
        if shift:
            more = max(D("0.01"), b / 100)
            a, b = a + more, b + more
        if b < low or high < a:
            differ += 1
            if not shift:
                print(f"  DIFFERS {name}: printed {result}, {text} lies in {low:f} to {high:f}")
        else:
            agreed += 1
            if shift:
                print(f"  UNSEEN {name}: {result} altered, {text}")
    if shift:
        agreed, differ = differ, agreed
    print(f"{agreed} passed, {differ} failed, {unclear} not arithmetic")
    sys.exit(1 if differ else 0 if agreed else 2)


if __name__ == "__main__":
    main()
