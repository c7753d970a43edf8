"""The numbers that are stamped on auger bits: sixteenths of an inch."""

from __future__ import annotations

import math

from woodmath.errors import ImpossibleShape


def auger_bit_number(diameter: float) -> int:
    """Number stamped on an auger bit of a diameter: how many sixteenths of an inch it bores.

    Parameters
    ----------
    diameter : float
        In inches, a whole number of sixteenths.

    Returns
    -------
    int
        The number.

    Raises
    ------
    ImpossibleShape
        If no bit is numbered so; the message names the nearest that are.

    Source: Noyes, *Handwork in Wood*, 1910, ch. IV, "Boring tools".

    >>> auger_bit_number(3 / 8)
    6
    """
    sixteenths = diameter * 16
    number = round(sixteenths) if math.isfinite(sixteenths) else 0
    if number < 1 or not math.isclose(sixteenths, number, rel_tol=1e-9):
        below = max(1, math.floor(sixteenths)) if math.isfinite(sixteenths) else 1
        raise ImpossibleShape(
            f"No auger bit is numbered for a hole of {diameter:g} in: the numbers are whole sixteenths of "
            f"an inch. The nearest are number {below} ({below}/16 in) and number {below + 1} "
            f"({below + 1}/16 in)."
        )
    return number


def auger_bit_diameter(number: int) -> float:
    """Diameter, in inches, of the auger bit that is stamped with a number.

    Parameters
    ----------
    number : int
        As stamped on the tang, 1 or more.

    Returns
    -------
    float
        In inches.

    Raises
    ------
    ImpossibleShape
        If it is not a whole number from 1.

    Source: Noyes, *Handwork in Wood*, 1910, ch. IV, "Boring tools".

    >>> auger_bit_diameter(9)
    0.5625
    """
    if not (math.isfinite(number) and number >= 1 and number == int(number)):
        raise ImpossibleShape(
            f"An auger bit is numbered 1, 2, 3 and so on, not {number:g}. Read the tang again."
        )
    return number / 16
