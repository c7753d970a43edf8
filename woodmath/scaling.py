"""Make a piece at another size than its drawing: every length times one scale, and the stock kept.

The scale is read as a ratio or found from one length that is wanted. What the boards' kept thickness does to the
inside, to the mass and to the proportions follows from it, each by a rule of its own.
"""

from __future__ import annotations

import math
from collections.abc import Collection, Iterable
from fractions import Fraction
from typing import Literal

from woodmath.as_given import quoted
from woodmath.errors import ImpossibleShape, UnknownName
from woodmath.scaling_derivations import (
    board_mass_derivation,
    inside_derivation,
    inside_ratio_derivation,
    mass_derivation,
    paper_step_derivation,
    scale_derivation,
    slenderness_derivation,
)
from woodmath.written_scale import read_scale, recommended_scale, scale_name

__all__ = [
    "board_mass_derivation",
    "inside_after",
    "inside_derivation",
    "inside_ratio",
    "inside_ratio_derivation",
    "mass_derivation",
    "mass_ratio",
    "paper_step_derivation",
    "read_scale",
    "recommended_scale",
    "scale_derivation",
    "scale_for",
    "scale_name",
    "scaled",
    "slenderness",
    "slenderness_derivation",
    "total_mass_ratio",
]

Scale = float | Fraction
Direction = Literal["length", "width", "thickness"]

_DIRECTIONS: tuple[Direction, ...] = ("length", "width", "thickness")


def scale_for(known: float, wanted: float) -> float:
    """Scale that makes a wanted length of a known one.

    Parameters
    ----------
    known : float
        A length in the drawing, > 0, in any length unit.
    wanted : float
        What the same length is to become, > 0, in the same unit.

    Returns
    -------
    float
        How many times as long.

    Raises
    ------
    ImpossibleShape
        If either length is not a positive number.

    Source: `scale_derivation`.

    >>> scale_for(known=18, wanted=27)
    1.5
    """
    return scale_derivation().function("scale")(known=known, wanted=wanted)


def scaled(length: float, scale: Scale) -> float:
    """Length of the piece for a length of the drawing.

    Parameters
    ----------
    length : float
        In the drawing, > 0, in any length unit; no stock.
    scale : float
        How many times as long, > 0.

    Returns
    -------
    float
        In the same unit.

    Raises
    ------
    ImpossibleShape
        If either is not a positive number.

    Source: `scale_derivation`.

    >>> scaled(18, 1.5)
    27.0
    """
    return scale_derivation().function("wanted")(known=length, scale=float(scale))


def inside_after(outside: float, stock: float, scale: Scale) -> float:
    """Inside of a case whose outside is scaled while its boards keep their thickness.

    Parameters
    ----------
    outside : float
        Outside of the drawing, over both boards, > 0, in any length unit.
    stock : float
        Thickness of each board, > 0, in the same unit; the same before and after.
    scale : float
        How many times as long the outside becomes, > 0; 1 gives the drawing's own inside.

    Returns
    -------
    float
        In the same unit.

    Raises
    ------
    ImpossibleShape
        If the two boards would fill the outside, or a number is not positive.

    Source: `inside_derivation`.

    >>> inside_after(outside=18, stock=0.75, scale=2)
    34.5
    """
    return inside_derivation().function("inside")(outside=outside, stock=stock, scale=float(scale))


def inside_ratio(outside: float, stock: float, scale: Scale) -> float:
    """How many times as large the inside becomes, when the outside is scaled and the stock kept.

    Parameters
    ----------
    outside, stock, scale : float
        As for `inside_after`; the drawing itself must have an inside.

    Returns
    -------
    float
        More than the scale for a piece made larger, less for one made smaller.

    Raises
    ------
    ImpossibleShape
        If before or after there is no inside, or a number is not positive.

    Source: `inside_ratio_derivation`.

    >>> inside_ratio(outside=18, stock=1, scale=2)
    2.125
    """
    return inside_ratio_derivation().function("inside_ratio")(
        outside=outside, stock=stock, scale=float(scale)
    )


def mass_ratio(scale: Scale, scaled: Collection[str] = ("length", "width")) -> float:
    """How many times as heavy a part becomes when some of its directions are scaled and the others kept.

    Parameters
    ----------
    scale : float
        How many times as long a scaled direction becomes, > 0.
    scaled : collection of {"length", "width", "thickness"}
        The directions that are scaled. A board keeps its thickness; a post of kept section is scaled in
        length alone; a scaled copy of everything names all three.

    Returns
    -------
    float
        The scale once for each direction that is scaled.

    Raises
    ------
    UnknownName
        If a direction has another name.
    ImpossibleShape
        If the scale is not a positive number.

    Source: `mass_derivation`.

    >>> mass_ratio(2), mass_ratio(2, scaled=("length",)), mass_ratio(2, ("length", "width", "thickness"))
    (4.0, 2.0, 8.0)
    """
    strangers = sorted(set(scaled) - set(_DIRECTIONS))
    if isinstance(scaled, str) or strangers:
        raise UnknownName(
            f"{quoted(scaled if isinstance(scaled, str) else ', '.join(strangers))} is no list of directions. "
            f"A part has {', '.join(_DIRECTIONS)}: name those that are scaled, as in "
            'scaled=("length", "width").'
        )
    return mass_derivation().function("mass_ratio")(
        **{f"{direction}_ratio": float(scale) if direction in scaled else 1.0 for direction in _DIRECTIONS}
    )


def total_mass_ratio(parts: Iterable[tuple[float, Collection[str]]], scale: Scale) -> float:
    """How many times as heavy a whole piece becomes, part by part.

    Parameters
    ----------
    parts : iterable of (float, collection of str)
        Mass or volume of each part in the drawing, > 0 and all in one unit, and its scaled directions.
    scale : float
        How many times as long a scaled direction becomes, > 0.

    Returns
    -------
    float
        Between the least and the greatest of the parts' own ratios.

    Raises
    ------
    ImpossibleShape
        If there are no parts, or one has no mass.
    UnknownName
        If a direction has another name.

    Source: masses add up; `mass_derivation` for each part.

    >>> total_mass_ratio([(6.0, ("length", "width")), (2.0, ("length",))], scale=2)
    3.5
    """
    listed = list(parts)
    if not listed or not all(math.isfinite(mass) and mass > 0 for mass, _ in listed):
        raise ImpossibleShape(
            f"{len(listed)} parts were given. Give at least one, each with a mass or a volume of more than 0."
        )
    after = math.fsum(mass * mass_ratio(scale, directions) for mass, directions in listed)
    return after / math.fsum(mass for mass, _ in listed)


def slenderness(length: float, stock: float, scale: Scale = 1.0) -> float:
    """Length of a part over its kept thickness, after scaling.

    Parameters
    ----------
    length : float
        In the drawing, > 0, in any length unit.
    stock : float
        Its thickness, kept, > 0, in the same unit.
    scale : float
        How many times as long it becomes, > 0.

    Returns
    -------
    float
        How many times its own thickness the part is long.

    Raises
    ------
    ImpossibleShape
        If a number is not positive.

    Source: `slenderness_derivation`.

    >>> slenderness(length=18, stock=0.75, scale=2)
    48.0
    """
    return slenderness_derivation().function("slenderness")(length=length, stock=stock, scale=float(scale))
