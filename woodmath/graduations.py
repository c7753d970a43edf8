"""The graduations of rules: the parts an inch is divided into, and how far apart millimetre marks stand."""

from fractions import Fraction

from woodmath.errors import BadLength

INCH_DIVISIONS = (1, 2, 4, 8, 10, 12, 16, 20, 32, 50, 64, 100, 128)
"""Marks to the inch that rules and steel squares carry."""
DECIMAL_DIVISIONS = (10, 20, 50, 100)
"""Those of them that are read as decimals: 0.62 rather than 31/50."""


def is_carried(mark_size: Fraction, unit: str) -> bool:
    """Whether some rule has marks so far apart.

    Parameters
    ----------
    mark_size : Fraction
        From one mark to the next, in `unit`.
    unit : "inch" or "millimetre"

    Returns
    -------
    bool
        In inches, whether it is one of `INCH_DIVISIONS`; in millimetres, whether the marks go into one
        millimetre a whole number of times with at most three decimals, down to 0.01, or stand whole
        millimetres apart, up to 1000.

    >>> is_carried(Fraction(1, 16), "inch"), is_carried(Fraction(3, 10), "millimetre")
    (True, False)
    """
    over, under = mark_size.numerator, mark_size.denominator
    if unit == "inch":
        return over == 1 and under in INCH_DIVISIONS
    divides = over == 1 and under <= 100 and 1000 % under == 0
    return divides or (under == 1 and 1 <= over <= 1000)


def no_such_rule(given: str) -> BadLength:
    """Error that names the rules there are.

    Parameters
    ----------
    given : str
        What was asked for, in words.

    Returns
    -------
    BadLength
        Ready to be raised.

    >>> str(no_such_rule("7 marks to the inch")).partition(".")[0]
    'There is no rule with 7 marks to the inch'
    """
    inches = ", ".join(str(divisions) for divisions in INCH_DIVISIONS)
    return BadLength(
        f"There is no rule with {given}. A rule in inches has {inches} marks to the inch; one in millimetres "
        "has marks that go into 1 mm a whole number of times (1, 0.5, 0.25, 0.2, 0.1; down to 0.01) or stand "
        "whole millimetres apart (up to 1000). Write for example Rule.inches(16) or Rule.millimetres(0.5)."
    )
