"""The screw at the point of a bit: its lead from the threads to the inch, and the threads from the lead."""

from __future__ import annotations

import math
from types import MappingProxyType
from typing import Literal

from woodmath.boring_derivations import lead_derivation
from woodmath.errors import ImpossibleShape, UnknownName
from woodmath.rule_reading import INCH

_INCH = MappingProxyType({"inch": 1.0, "millimetre": float(INCH)})


def lead_of(
    threads_per_inch: float, starts: int = 1, *, unit: Literal["inch", "millimetre"] = "inch"
) -> float:
    """Lead of a screw from the threads that are counted on it.

    Parameters
    ----------
    threads_per_inch : float
        Ridges counted along an inch of the screw, > 0; always to the inch, whatever the unit.
    starts : int
        Threads that wind side by side: 1 for a single thread, 2 for a double one.
    unit : "inch" or "millimetre"
        The unit of the lead.

    Returns
    -------
    float
        Advance at each turn, in `unit`.

    Raises
    ------
    ImpossibleShape
        If the threads are not more than 0, or `starts` is not a whole number from 1.
    UnknownName
        If the unit is neither of the two.

    Source: `lead_derivation`; 1 in = 25.4 mm exactly (1959; from memory).

    >>> lead_of(16, unit="millimetre"), lead_of(16, starts=2)
    (1.5875, 0.125)
    """
    return lead_derivation().function("lead")(
        starts=_side_by_side(starts), inch=_inch_in(unit), threads_per_inch=threads_per_inch
    )


def threads_per_inch(lead: float, starts: int = 1, *, unit: Literal["inch", "millimetre"] = "inch") -> float:
    """Ridges to an inch of a screw with a lead, such as one that trial holes told.

    Parameters
    ----------
    lead : float
        Advance at each turn, > 0, in `unit`.
    starts : int
        Threads that wind side by side: 1 for a single thread, 2 for a double one.
    unit : "inch" or "millimetre"
        The unit of the lead.

    Returns
    -------
    float
        Always to the inch, whatever the unit.

    Raises
    ------
    ImpossibleShape
        If the lead is not more than 0, or `starts` is not a whole number from 1.
    UnknownName
        If the unit is neither of the two.

    Source: `lead_derivation`; 1 in = 25.4 mm exactly (1959; from memory).

    >>> threads_per_inch(1.5875, unit="millimetre"), threads_per_inch(1 / 8, starts=2)
    (16.0, 16.0)
    """
    return lead_derivation().function("threads_per_inch")(
        starts=_side_by_side(starts), inch=_inch_in(unit), lead=lead
    )


def _inch_in(unit: str) -> float:
    if unit not in _INCH:
        raise UnknownName(
            f"The unit is {unit!r}; a piece is measured in 'inch' or 'millimetre'. Name one of them."
        )
    return _INCH[unit]


def _side_by_side(starts: int) -> int:
    if not (math.isfinite(starts) and starts >= 1 and starts == int(starts)):
        raise ImpossibleShape(
            f"The screw is said to have {starts:g} threads side by side. Look at its point, where they "
            "begin, and count them: 1 for a single thread, 2 for a double one."
        )
    return starts
