"""A mass as it is written beside a rule: in pounds where lengths are in inches, else in kilograms; kilograms inside."""

from __future__ import annotations

import re
from fractions import Fraction
from types import MappingProxyType

from woodmath.as_given import LONGEST_QUOTED, quoted
from woodmath.errors import WoodmathError
from woodmath.numbers_as_written import number_shown, read_number
from woodmath.rule import Rule

KILOGRAMS_IN_A_POUND = 0.45359237
"""Exactly (international yard and pound agreement, 1959; from memory)."""
GREATEST_MASS = 1000.0
"""Kilograms: nothing heavier is ever put into a piece of furniture."""

_POUND = Fraction(str(KILOGRAMS_IN_A_POUND))
_KILOGRAMS = MappingProxyType(
    {
        name: kilograms
        for names, kilograms in (
            ("kg kilogram kilograms", Fraction(1)),
            ("g gram grams", Fraction(1, 1000)),
            ("lb lbs pound pounds", _POUND),
            ("oz ounce ounces", _POUND / 16),
        )
        for name in names.split()
    }
)
_WRITTEN = re.compile(r"\s*(?P<number>\S.*?)\s*(?P<unit>[A-Za-z]+)\.?\s*")
EXAMPLES = '"10 lb", "12 oz" or "4.5 kg"'


def read_mass(text: str) -> float:
    """Mass that is written in a text.

    Parameters
    ----------
    text : str
        A number as at the bench with its unit: kg, g, lb or oz.

    Returns
    -------
    float
        In kilograms, more than 0 and at most `GREATEST_MASS`.

    Raises
    ------
    WoodmathError
        If it is anything else; the message shows what can be read.

    >>> read_mass("10 lb"), read_mass("4 1/2 kg"), read_mass("650 g")
    (4.5359237, 4.5, 0.65)
    """
    found = _WRITTEN.fullmatch(text) if isinstance(text, str) and len(text) <= LONGEST_QUOTED else None
    unit = found["unit"].lower() if found else ""
    if found is None or unit not in _KILOGRAMS:
        raise WoodmathError(f"{quoted(text)} cannot be read as a mass. Write it with its unit: {EXAMPLES}.")
    try:
        kilograms = float(Fraction(read_number(found["number"])) * _KILOGRAMS[unit])
    except WoodmathError:
        raise WoodmathError(
            f"{quoted(text)} cannot be read as a mass. Write digits and then the unit: {EXAMPLES}."
        ) from None
    if not 0 < kilograms <= GREATEST_MASS:
        raise WoodmathError(
            f"{quoted(text)} is no mass to put into a piece: it must be more than 0, and at most "
            f"{GREATEST_MASS:g} kg. Write it like {EXAMPLES}."
        )
    return kilograms


def mass_shown(kilograms: float, rule: Rule) -> str:
    """Return a mass as it is read beside a rule: in pounds beside one in inches, else in kilograms.

    Parameters
    ----------
    kilograms : float
        0 or more.
    rule : Rule
        Of the piece.

    Returns
    -------
    str
        With its unit.

    >>> mass_shown(10, Rule.inches(16)), mass_shown(10, Rule.millimetres(1))
    ('22 lb', '10 kg')
    """
    if rule.unit == "inch":
        return f"{number_shown(kilograms / KILOGRAMS_IN_A_POUND, 1)} lb"
    return f"{number_shown(kilograms, 1)} kg"


def mass_written(kilograms: float, rule: Rule) -> str:
    """Return a mass so that reading it gives the very same: in pounds beside inches where that is exact.

    Parameters
    ----------
    kilograms : float
        More than 0.
    rule : Rule
        Of the piece.

    Returns
    -------
    str
        With its unit.

    >>> mass_written(4.5359237, Rule.inches(16)), mass_written(4.5, Rule.inches(16))
    ('10 lb', '4.5 kg')
    """
    if rule.unit == "inch":
        for name in ("lb", "oz"):
            text = f"{number_shown(kilograms / float(_KILOGRAMS[name]), 3)} {name}"
            if not text.startswith("0 ") and read_mass(text) == kilograms:
                return text
    short = number_shown(kilograms, 3)
    return f"{short if float(short) == kilograms else repr(kilograms)} kg"
