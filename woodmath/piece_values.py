"""What may stand behind a key of a piece file: a length, a list of them, a number, a word out of a few.

Reading never stops at the first fault: what is wrong is gathered, with its key, and told all at once.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import Decimal

from woodmath.errors import BadLength
from woodmath.piece_kinds import Kind, Reading, as_written, is_huge, nearest
from woodmath.rule import Rule

MOST_THREADS = 100
LONGEST_NAME = 120
"""Signs: a line of print, and no more than a file's name can be made of."""
MOST_IN_A_LIST = 100

_RULE = re.compile(r"\s*(?:1\s*/\s*(?P<parts>\d{1,6})\s*in|(?P<size>\d{1,6}(?:\.\d{1,6})?)\s*mm)\s*")


@dataclass(frozen=True)
class Words(Kind):
    """A short text on one line.

    Parameters
    ----------
    meaning : str
        What stands there, for a message.

    >>> Words("what the piece is called").example(Rule.inches(16))
    '"Log box"'
    """

    meaning: str

    def read(self, given: object, key: str, reading: Reading) -> str | None:
        """Return the text, without the blanks around it."""
        if isinstance(given, str) and given.strip() and given.isprintable() and len(given) <= LONGEST_NAME:
            return given.strip()
        if isinstance(given, str) and len(given) > LONGEST_NAME:
            words = f"that is {len(given)} signs long; use at most {LONGEST_NAME}."
        elif isinstance(given, str) and not given.isprintable():
            words = (
                "a sign in it cannot be printed. Type it again, on one line, with letters, figures and stops."
            )
        else:
            words = f"give a text on one line, such as {self.example(reading.rule)}."
        reading.refuse(key, given, words)
        return None

    def example(self, rule: Rule) -> str:
        """Return one that works, written as in the file."""
        return '"Log box"'


@dataclass(frozen=True)
class RuleMark(Kind):
    """The rule itself, named by its smallest mark and its unit.

    Parameters
    ----------
    meaning : str
        What stands there, for a message.

    >>> RuleMark("the smallest mark of the rule").example(Rule.inches(16))
    '"1/16 in" or "0.5 mm"'
    """

    meaning: str

    def read(self, given: object, key: str, reading: Reading) -> Rule | None:
        """Return the rule that carries such marks."""
        written = _RULE.fullmatch(given) if isinstance(given, str) else None
        if not written:
            reading.refuse(
                key,
                given,
                f"name the smallest mark of your rule with its unit: {self.example(reading.rule)}.",
            )
            return None
        try:
            if written["parts"]:
                return Rule.inches(int(written["parts"]))
            return Rule.millimetres(float(written["size"]))
        except BadLength as error:
            reading.refuse(key, given, str(error))
            return None

    def example(self, rule: Rule) -> str:
        """Return one that works, written as in the file."""
        return '"1/16 in" or "0.5 mm"'


@dataclass(frozen=True)
class Length(Kind):
    """A length as on the rule, with a unit where it differs, or a number in the piece's own unit.

    Parameters
    ----------
    meaning : str
        What is measured, from where to where.
    from_zero : bool
        Whether 0 is a size that it can have.
    stock : bool
        Whether it is settled by the stock and the tools in the shop, so that it stays when a piece is scaled.

    >>> reading = Reading(Rule.inches(16))
    >>> Length("side of the post").read("1 3/4", "post.square", reading)
    1.75
    >>> Length("side of the post").read("0", "post.square", reading)
    >>> reading.faults
    ['post.square = "0": it must be more than 0 (side of the post).']
    """

    meaning: str
    from_zero: bool = False
    stock: bool = False

    def read(self, given: object, key: str, reading: Reading) -> float | None:
        """Return the length in the piece's unit."""
        if isinstance(given, bool) or not isinstance(given, str | int | float) or is_huge(given):
            reading.refuse(
                key,
                given,
                f"this is no length. Write it as on the rule, such as {self.example(reading.rule)}.",
            )
            return None
        text = given if isinstance(given, str) else format(Decimal(repr(given)), "f")
        try:
            value = reading.rule.read(text)
        except BadLength as error:
            reading.faults.append(f"{key}: {error}")
            return None
        if value == 0 and not self.from_zero:
            reading.refuse(key, given, f"it must be more than 0 ({self.meaning}).")
            return None
        return value

    def example(self, rule: Rule) -> str:
        """Return one that works, written as in the file."""
        return as_written(rule.mark(rule.read("45 mm")))


@dataclass(frozen=True)
class Lengths(Kind):
    """A list of lengths, such as the widths of the chisels in the rack.

    Parameters
    ----------
    meaning : str
        What stands there, for a message.

    >>> Lengths("widths of the chisels").read(["1/4", "1/2"], "tools.chisels", Reading(Rule.inches(16)))
    (0.25, 0.5)
    """

    meaning: str

    def read(self, given: object, key: str, reading: Reading) -> tuple[float, ...] | None:
        """Return those lengths that can be read."""
        if not isinstance(given, list):
            reading.refuse(key, given, f"give a list, such as {self.example(reading.rule)}.")
            return None
        if len(given) > MOST_IN_A_LIST:
            reading.fault(
                key,
                f"is a list of {len(given)}; give at most {MOST_IN_A_LIST}, without those that you never use.",
            )
            return None
        one = Length(self.meaning)
        values = [one.read(item, f"{key}, number {place}", reading) for place, item in enumerate(given, 1)]
        return tuple(value for value in values if value is not None)

    def example(self, rule: Rule) -> str:
        """Return one that works, written as in the file."""
        return (
            f"[{as_written(rule.mark(rule.read('6.35 mm')))}, {as_written(rule.mark(rule.read('12.7 mm')))}]"
        )


@dataclass(frozen=True)
class Threads(Kind):
    """A number of threads per inch, whole or not, more than 0 and up to `MOST_THREADS`.

    Parameters
    ----------
    meaning : str
        What stands there, for a message.

    >>> Threads("threads of the screw").read(12, "bit.threads_per_inch", Reading(Rule.inches(16)))
    12.0
    """

    meaning: str

    def read(self, given: object, key: str, reading: Reading) -> float | None:
        """Return the number."""
        if isinstance(given, int | float) and not isinstance(given, bool) and 0 < given <= MOST_THREADS:
            return float(given)
        example = self.example(reading.rule)
        reading.refuse(
            key,
            given,
            f"give a plain number, more than 0, at most {MOST_THREADS}, without quotes, such as {example}.",
        )
        return None

    def example(self, rule: Rule) -> str:
        """Return one that works, written as in the file."""
        return "12"


@dataclass(frozen=True)
class Number(Kind):
    """A plain number between two limits, such as a moisture in percent.

    Parameters
    ----------
    meaning : str
        What stands there and its unit, for a message.
    least, most : float
        Its limits, both possible.
    such_as : str
        One that works.

    >>> Number("moisture, in percent", 0, 30, "12").read(12, "timber.moisture_now", Reading(Rule.inches(16)))
    12.0
    """

    meaning: str
    least: float
    most: float
    such_as: str

    def read(self, given: object, key: str, reading: Reading) -> float | None:
        """Return the number."""
        if (
            isinstance(given, int | float)
            and not isinstance(given, bool)
            and self.least <= given <= self.most
        ):
            return float(given)
        limits = f"from {self.least:g} to {self.most:g}"
        reading.refuse(
            key,
            given,
            f"give a plain number {limits}, without quotes, such as {self.such_as} ({self.meaning}).",
        )
        return None

    def example(self, rule: Rule) -> str:
        """Return one that works, written as in the file."""
        return self.such_as


@dataclass(frozen=True)
class Count(Kind):
    """A small whole number from 1 up.

    Parameters
    ----------
    meaning : str
        What is counted, for a message.
    most : int
        The greatest count, 1 or more.

    >>> Count("threads side by side on the screw", 4).read(2, "bit.starts", Reading(Rule.inches(16)))
    2
    """

    meaning: str
    most: int

    def read(self, given: object, key: str, reading: Reading) -> int | None:
        """Return the count."""
        if isinstance(given, int) and not isinstance(given, bool) and 1 <= given <= self.most:
            return given
        reading.refuse(
            key, given, f"give a whole number from 1 to {self.most}, without quotes ({self.meaning})."
        )
        return None

    def example(self, rule: Rule) -> str:
        """Return one that works, written as in the file."""
        return "1"


@dataclass(frozen=True)
class Choice(Kind):
    """One word out of a few.

    Parameters
    ----------
    meaning : str
        What is chosen, for a message.
    possible : tuple of str
        The words there are.

    >>> reading = Reading(Rule.inches(16))
    >>> Choice("how the ends meet", ("mitred", "square")).read("mitered", "joint.ends", reading)
    >>> reading.faults
    ['joint.ends = "mitered": did you mean "mitred"? Possible: mitred, square.']
    """

    meaning: str
    possible: tuple[str, ...]

    def read(self, given: object, key: str, reading: Reading) -> str | None:
        """Return the word."""
        if isinstance(given, str) and given in self.possible:
            return given
        near = nearest(given, self.possible) if isinstance(given, str) else ""
        hint = f'did you mean "{near}"? ' if near else ""
        reading.refuse(key, given, f"{hint}Possible: {', '.join(self.possible)}.")
        return None

    def example(self, rule: Rule) -> str:
        """Return one that works, written as in the file."""
        return as_written(self.possible[0])
