"""Answers about the site that bring work, by the rules of the book."""

from decimal import Decimal as D

from .reading import FT, amount, inches, rate

# Answers that are told to the customer and bring no work.
TOLD = {"truck over", "overhead wires", "sprinklers", "other heights", "cars near", "lines marked"}
FEET = {"lawn crossed", "walls to cover"}


class Site:
    """Part of a job."""

    def answered(self):
        """(question, rule of the book, work) of every answer that brings some."""
        usual = {key: text for key, text in self.business.get("site", {}).items() if key != "ask"}
        for question, answer in {**usual, **self.job.get("site", {})}.items():
            rule = self.book.get("site", {}).get(question)
            if question in TOLD or rule is None:
                continue
            if question in FEET:
                yield question, rule, inches(answer) / FT
            elif question == "washout":
                if answer == "hauled":
                    yield question, rule, D(1)
            elif question == "backfill":
                if answer == "ours":
                    yield question, rule, sum(sum(s.form(self.deep_limit)) for s in self.slabs)
            else:
                raise KeyError(question)

    def site_goods(self):
        for question, rule, work in self.answered():
            if "item" in rule:
                self.buy(rule["item"], f"site {question}", [work * rate(rule["each"])[0] if "each" in rule else work])

    def site_tasks(self):
        return [
            (f"site {question}", work, rule["hours"], False)
            for question, rule, work in self.answered()
            if "hours" in rule
        ]
