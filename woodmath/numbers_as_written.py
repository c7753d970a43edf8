"""A plain number as it is written at the bench, such as so many turns of the brace: read, and shown."""

import re
from fractions import Fraction

from woodmath.as_given import quoted
from woodmath.errors import BadLength, WoodmathError
from woodmath.rule_reading import millimetres_in

_A_UNIT = re.compile(r"[A-Za-z\"'\u2018-\u201f\u2032\u2033]")


def read_number(text: str) -> float:
    """Number that a text holds, written as a length is on a rule, without a unit.

    Parameters
    ----------
    text : str
        As at the bench: 6, 6.5, 6 1/2, 6-1/2, 6½; at most 40 characters, 0 or more.

    Returns
    -------
    float
        The number.

    Raises
    ------
    WoodmathError
        If it is anything else; a length with its unit is not taken for a number.

    >>> [read_number(text) for text in ("6", "6.5", "6 1/2", "6½")]
    [6.0, 6.5, 6.5, 6.5]
    >>> read_number("8 mm")
    Traceback (most recent call last):
    woodmath.errors.WoodmathError: “8 mm” cannot be read as a number. Write digits alone, without a unit, for
    example 6, 6.5 or 6 1/2.
    """
    try:
        if not (isinstance(text, str) and _A_UNIT.search(text)):
            return float(millimetres_in(text, Fraction(1)))
    except BadLength:
        pass
    comma = " A decimal is written with a point." if isinstance(text, str) and "," in text else ""
    raise WoodmathError(
        f"{quoted(text)} cannot be read as a number. Write digits alone, without a unit, for example 6, 6.5 "
        f"or 6 1/2.{comma}"
    )


def number_shown(value: float, places: int = 2) -> str:
    """Return a number for reading, without the noughts that say nothing.

    Parameters
    ----------
    value : float
        Any finite number.
    places : int
        Decimal places at most, >= 0.

    Returns
    -------
    str
        The number in digits.

    >>> number_shown(15.0), number_shown(18.7512), number_shown(18.7512, 1)
    ('15', '18.75', '18.8')
    """
    text = f"{value:.{places}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text
