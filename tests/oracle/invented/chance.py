"""Dice of a job, and lengths as they are said."""

import random


class Chance:
    """Dice of one job, and the names of what came up."""

    def __init__(self, seed):
        self.dice, self.features = random.Random(seed), set()

    def often(self, part, feature=None):
        came = self.dice.random() < part
        if came and feature:
            self.features.add(feature)
        return came

    def one(self, *of):
        return self.dice.choice(of)

    def whole(self, low, high):
        return self.dice.randint(low, high)

    def decimal(self, low, high, places=2):
        """A decimal as text, from two whole numbers of its last place."""
        digits = str(self.dice.randint(low, high)).zfill(places + 1)
        return f"{digits[:-places]}.{digits[-places:]}"

    def length(self, low, high):
        """So many inches, in quarters, as they are said on a site."""
        quarters = self.dice.randint(low * 4, high * 4)
        if self.often(0.6):
            quarters -= quarters % 24 if quarters >= 48 else quarters % 4
        return said(quarters)


def said(quarters):
    """Quarters of an inch as feet, inches and a fraction."""
    feet, rest = divmod(quarters, 48)
    whole, part = divmod(rest, 4)
    words = [f"{feet} ft"] if feet else []
    fraction = ("", "1/4", "1/2", "3/4")[part]
    inch = " ".join(word for word in (str(whole) if whole else "", fraction) if word)
    if inch or not words:
        words.append(f"{inch or 0} in")
    return " ".join(words)
