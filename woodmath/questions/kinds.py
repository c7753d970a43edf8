"""The kinds of answer that a question takes: how each is read, and when two answers are the same.

Whatever notation the bench uses is read; what cannot be read is told in one sentence with two examples.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from fractions import Fraction

from woodmath.errors import WoodmathError
from woodmath.numbers_as_written import number_shown, read_number
from woodmath.questions.notation import (
    SAME_NUMBER,
    angle_shown,
    as_number,
    length_shown,
    number_of,
    on_a_mark,
)
from woodmath.rule import Rule

Value = float | str

ANGLE_TOLERANCE = 0.25
"""Degrees, either way."""

_DEGREES = re.compile(r"\s*(?:°|º|deg\.?|degrees?)\s*$", re.IGNORECASE)


class AnswerKind:
    """A kind of answer; a subclass reads it, compares it, writes it and knows its usual slips.

    >>> ChoiceAnswer(("end", "side")).accepts(Rule.inches(16))
    '"end" or "side"'
    """

    def read(self, given: object, rule: Rule) -> Value:
        """Return what was given as a value.

        Raises
        ------
        WoodmathError
            If it cannot be read; the message says what is accepted, the reply beside it what was given.
        """
        raise NotImplementedError

    def same(self, value: Value, other: Value, rule: Rule) -> bool:
        """Whether two answers are the same within the tolerance of their kind."""
        raise NotImplementedError

    def write(self, value: Value, rule: Rule) -> str:
        """Return an answer as it is written at the bench."""
        raise NotImplementedError

    def accepts(self, rule: Rule) -> str:
        """Return two examples of what can be read, in words."""
        raise NotImplementedError

    def usual_slips(self, truth: Value, rule: Rule) -> tuple[tuple[str, Value], ...]:
        """Return the slips that belong to the kind, whatever the question: (hint, value)."""
        return ()

    def _refused(self, given: object, what: str, rule: Rule) -> WoodmathError:
        comma = " A decimal is written with a point." if isinstance(given, str) and "," in given else ""
        return WoodmathError(f"That cannot be read as {what}. Write {self.accepts(rule)}.{comma}")


@dataclass(frozen=True)
class LengthAnswer(AnswerKind):
    """A length, read by the piece's rule; a plain number is in the piece's own unit.

    Parameters
    ----------
    marks : Fraction
        Tolerance in marks of the rule: one, unless the question asks for the mark itself or something finer.

    >>> kind, rule = LengthAnswer(), Rule.inches(16)
    >>> kind.read("1 1/4", rule), kind.read("31.75 mm", rule), kind.read(1.25, rule)
    (1.25, 1.25, 1.25)
    >>> kind.same(1.1875, 1.25, rule), kind.same(1.187, 1.25, rule)
    (True, False)
    """

    marks: Fraction = Fraction(1)

    def read(self, given: object, rule: Rule) -> float:
        """Return the length, in the unit of the rule."""
        try:
            if isinstance(given, str):
                return rule.read(given)
            length = as_number(given)
            rule.mark(length)
        except (WoodmathError, TypeError):
            raise self._refused(given, "a length", rule) from None
        return length

    def same(self, value: Value, other: Value, rule: Rule) -> bool:
        """Whether two lengths lie within the tolerance of one another."""
        return _near(value, other, float(self.marks) * rule.one_mark)

    def write(self, value: Value, rule: Rule) -> str:
        """Return a length with its unit, and its mark where it falls between two."""
        written = length_shown(float(value), rule)
        if self.marks < 1 or on_a_mark(float(value), rule):
            return written
        return f"{written}, on the rule {rule.mark(float(value))}"

    def accepts(self, rule: Rule) -> str:
        """Return two lengths that can be read."""
        if rule.unit == "inch":
            return f'a length as on your rule, such as "{rule.mark(3.625)}" or "92 mm"{self._within()}'
        return f'a length as on your rule, such as "92" or "9.2 cm"{self._within()}'

    def _within(self) -> str:
        return " (one mark either way counts as right)" if self.marks == 1 else ""

    def usual_slips(self, truth: Value, rule: Rule) -> tuple[tuple[str, Value], ...]:
        """Return the slip of the other unit."""
        own, other = ("inches", "millimetres") if rule.unit == "inch" else ("millimetres", "inches")
        other_rule = Rule.millimetres(1) if rule.unit == "inch" else Rule.inches(16)
        told = (
            f"That number is right in {other}, and a plain number here is in {own}. Write the unit behind it."
        )
        return ((told, rule.convert(float(truth), other_rule)),)


@dataclass(frozen=True)
class AngleAnswer(AnswerKind):
    """An angle in degrees, with or without the sign; a quarter of a degree either way is the same.

    >>> kind, rule = AngleAnswer(), Rule.inches(16)
    >>> [kind.read(given, rule) for given in (45, "45", "45°", "22 1/2 degrees")]
    [45.0, 45.0, 45.0, 22.5]
    """

    def read(self, given: object, rule: Rule) -> float:
        """Return the angle, in degrees."""
        try:
            return read_number(_DEGREES.sub("", given)) if isinstance(given, str) else as_number(given)
        except (WoodmathError, TypeError):
            raise self._refused(given, "an angle", rule) from None

    def same(self, value: Value, other: Value, rule: Rule) -> bool:
        """Whether two angles lie within a quarter of a degree of one another."""
        return _near(value, other, ANGLE_TOLERANCE)

    def write(self, value: Value, rule: Rule) -> str:
        """Return an angle with its sign."""
        return angle_shown(float(value))

    def accepts(self, rule: Rule) -> str:
        """Return two angles that can be read."""
        return (
            'an angle in degrees, such as 60 or "22 1/2°" (a quarter of a degree either way counts as right)'
        )

    def usual_slips(self, truth: Value, rule: Rule) -> tuple[tuple[str, Value], ...]:
        """Return the slips of the other side and of the radian."""
        degrees = float(truth)
        return (
            (
                "That is the angle from the other side: from the face of the wood, and not off square. "
                "The two make a right angle together.",
                90 - degrees,
            ),
            (
                "That is the angle in radians, as a calculator gives it. Turn it into degrees: 180 degrees "
                "are pi.",
                math.radians(degrees),
            ),
        )


@dataclass(frozen=True)
class CountAnswer(AnswerKind):
    """A whole number of things, exact.

    >>> kind, rule = CountAnswer("holes"), Rule.inches(16)
    >>> kind.read("7 holes", rule), kind.read(7.0, rule)
    (7.0, 7.0)
    """

    things: str

    def read(self, given: object, rule: Rule) -> float:
        """Return the number, which is whole."""
        try:
            count = number_of(given, self.things)
        except (WoodmathError, TypeError):
            raise self._refused(given, f"a number of {self.things}", rule) from None
        if count < 0 or count != round(count):
            raise self._refused(given, f"a number of {self.things}, which is whole", rule)
        return count

    def same(self, value: Value, other: Value, rule: Rule) -> bool:
        """Whether two numbers are the same."""
        return value == other

    def write(self, value: Value, rule: Rule) -> str:
        """Return the number with what is counted."""
        return f"{float(value):.0f} {self.things}"

    def accepts(self, rule: Rule) -> str:
        """Return two numbers that can be read."""
        return f'a whole number, such as 12 or "12 {self.things}"'


@dataclass(frozen=True)
class NumberAnswer(AnswerKind):
    """A number of something that need not be whole, with a tolerance that the question states.

    >>> kind, rule = NumberAnswer("turns", Fraction(1, 4)), Rule.inches(16)
    >>> kind.read("6 1/2 turns", rule), kind.same(6.5, 6.75, rule), kind.same(6.5, 6.76, rule)
    (6.5, True, False)
    """

    things: str
    tolerance: Fraction

    def read(self, given: object, rule: Rule) -> float:
        """Return the number."""
        try:
            return number_of(given, self.things)
        except (WoodmathError, TypeError):
            raise self._refused(given, f"a number of {self.things}", rule) from None

    def same(self, value: Value, other: Value, rule: Rule) -> bool:
        """Whether two numbers lie within the tolerance of one another."""
        return _near(value, other, float(self.tolerance))

    def write(self, value: Value, rule: Rule) -> str:
        """Return the number with what it is of."""
        return f"{number_shown(float(value))} {self.things}"

    def accepts(self, rule: Rule) -> str:
        """Return two numbers that can be read, and the tolerance."""
        return f'a number, such as 2.5 or "2 1/2 {self.things}" (within {self.tolerance} counts as right)'


@dataclass(frozen=True)
class ChoiceAnswer(AnswerKind):
    """One of a few words, in capitals or not.

    >>> ChoiceAnswer(("end", "side")).read(" End ", Rule.inches(16))
    'end'
    """

    options: tuple[str, ...]

    def read(self, given: object, rule: Rule) -> str:
        """Return the option that is meant, as it is listed."""
        if isinstance(given, str):
            for option in self.options:
                if _levelled(option) == _levelled(given):
                    return option
        raise WoodmathError(f"That is not one of the choices. Write {self.accepts(rule)}.")

    def same(self, value: Value, other: Value, rule: Rule) -> bool:
        """Whether two options are the same."""
        return value == other

    def write(self, value: Value, rule: Rule) -> str:
        """Return the option."""
        return str(value)

    def accepts(self, rule: Rule) -> str:
        """Return every option there is."""
        quoted = [f'"{option}"' for option in self.options]
        return f"{', '.join(quoted[:-1])} or {quoted[-1]}"


def _levelled(text: str) -> str:
    return " ".join(text.casefold().replace("_", " ").replace("-", " ").split())


def _near(value: Value, other: Value, tolerance: float) -> bool:
    return abs(float(value) - float(other)) <= tolerance + SAME_NUMBER
