"""Numbers between the maker and a question: read in every notation of the bench, and written in its own."""

from __future__ import annotations

import math
import re

from woodmath.as_given import on_one_line
from woodmath.errors import WoodmathError
from woodmath.numbers_as_written import number_shown, read_number
from woodmath.rule import Rule

SAME_NUMBER = 1e-9
LONGEST_SHOWN = 60


def on_a_mark(value: float, rule: Rule) -> bool:
    """Whether a length lies on a mark of the rule.

    >>> on_a_mark(1.75, Rule.inches(16)), on_a_mark(1.76, Rule.inches(16))
    (True, False)
    """
    return abs(rule.nearest(value) - value) <= SAME_NUMBER


def length_shown(value: float, rule: Rule) -> str:
    """Return a length for reading, with its unit: as on the rule where it lies on a mark, else in decimals.

    >>> length_shown(1.75, Rule.inches(16)), length_shown(4.03361, Rule.inches(16))
    ('1 3/4 in', '4.0336 in')
    """
    if on_a_mark(value, rule):
        return rule.mark(value, unit=True)
    decimals = f"{value:.4f}" if rule.unit == "inch" else f"{value:.2f}"
    return f"{decimals.rstrip('0').rstrip('.')} {rule.unit_mark}"


def angle_shown(degrees: float) -> str:
    """Return an angle for reading, to a hundredth of a degree.

    >>> angle_shown(45.0), angle_shown(38.65981)
    ('45°', '38.66°')
    """
    return f"{number_shown(degrees)}°"


def as_typed(given: object) -> str:
    """Return what was given, short, printable and on one line.

    >>> as_typed(" 1 3/4 "), as_typed(4 + 2j)
    ('1 3/4', '(4+2j)')
    """
    try:
        text = str(given)
    except ValueError:
        # Python refuses to write whole numbers of several thousand digits.
        text = "a number of thousands of digits"
    plain = on_one_line(text)
    return plain if len(plain) <= LONGEST_SHOWN else f"{plain[:LONGEST_SHOWN]}…"


def number_of(given: object, things: str) -> float:
    """Return how many things are meant, by a number, or by a text with or without their name.

    Raises
    ------
    WoodmathError
        If that is no number.

    >>> number_of("6½ turns", "turns"), number_of("7", "holes"), number_of(7, "holes")
    (6.5, 7.0, 7.0)
    """
    if not isinstance(given, str):
        return as_number(given)
    words = "|".join(re.escape(word) for word in (things, things.removesuffix("s")))
    return read_number(re.sub(rf"\s*(?:{words})\s*$", "", given, flags=re.IGNORECASE))


def as_number(given: object) -> float:
    """Return a number that is given as one, of Python, NumPy or sympy.

    Raises
    ------
    WoodmathError
        If it is a truth value, a text or a table of numbers, or not finite.

    >>> from fractions import Fraction
    >>> as_number(Fraction(5, 4))
    1.25
    """
    if isinstance(given, bool | str | bytes) or type(given).__name__.startswith("bool"):
        raise WoodmathError("that is no number")
    if getattr(given, "ndim", 0):
        raise WoodmathError("that is a whole table of numbers")
    try:
        number = float(given)  # type: ignore[arg-type]
    except (ValueError, ArithmeticError):
        raise WoodmathError("that is no number") from None
    if not math.isfinite(number):
        raise WoodmathError("that is no plain number")
    return number
