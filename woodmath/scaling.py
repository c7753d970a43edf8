"""Make a piece at another size than its drawing: every length times one scale, and the stock kept.

The scale is read as a ratio or found from one length that is wanted. What the boards' kept thickness does to the
inside, to the mass and to the proportions follows from it, each by a rule of its own.
"""

from __future__ import annotations

import math
import re
from collections.abc import Collection, Iterable
from fractions import Fraction
from typing import Literal

from woodmath.as_given import quoted
from woodmath.errors import ImpossibleShape, UnknownName, WoodmathError
from woodmath.numbers_as_written import number_shown, read_number
from woodmath.scaling_derivations import (
    board_mass_derivation,
    inside_derivation,
    inside_ratio_derivation,
    mass_derivation,
    paper_step_derivation,
    scale_derivation,
    slenderness_derivation,
)

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

LARGEST_SCALE = 10_000
"""The standard's own list of recommended scales ends there, and nothing is made from a smaller drawing."""

_DIRECTIONS: tuple[Direction, ...] = ("length", "width", "thickness")
_EXAMPLES = "Write how many times as large it becomes: 3/2, 1:2, 1.75 or 175 %."


def read_scale(text: str) -> Fraction:
    """Scale that is written in a text, exactly as written.

    Parameters
    ----------
    text : str
        The new size to the old: a ratio ("1:2", "3/2"), a number ("1.75", "1 3/4") or a percentage
        ("175 %"); from 1/10000 to 10000.

    Returns
    -------
    Fraction
        How many times as long every scaled length becomes.

    Raises
    ------
    WoodmathError
        If it is anything else; the message shows what can be read.

    >>> [str(read_scale(text)) for text in ("3/2", "1:2", "1.75", "175 %")]
    ['3/2', '1/2', '7/4', '7/4']
    """
    try:
        scale = _read(text)
    except (WoodmathError, ZeroDivisionError):
        raise WoodmathError(f"{quoted(text)} cannot be read as a scale. {_EXAMPLES}") from None
    if not Fraction(1, LARGEST_SCALE) <= scale <= LARGEST_SCALE:
        raise WoodmathError(
            f"{quoted(text)} is no scale to work by: it must lie between 1:{LARGEST_SCALE} and "
            f"{LARGEST_SCALE}:1. {_EXAMPLES}"
        )
    return scale


def _read(text: str) -> Fraction:
    if not isinstance(text, str):
        raise WoodmathError("not a text")
    new, colon, old = re.sub(r"^\s*scale\b", "", text, flags=re.IGNORECASE).partition(":")
    if colon:
        return _exact(new) / _exact(old)
    if new.rstrip().endswith("%"):
        return _exact(new.rstrip().removesuffix("%")) / 100
    return _exact(new)


def _exact(text: str) -> Fraction:
    # Read as the bench writes numbers; the nearest fraction with a bottom that a scale can have is what was meant.
    return Fraction(read_number(text.strip())).limit_denominator(10**6)


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


def recommended_scale(full: float, room: float) -> Fraction:
    """Largest recommended scale at which a length fits the room that there is on the paper.

    Parameters
    ----------
    full : float
        The length at the bench, > 0, in any length unit.
    room : float
        What the paper has for it, > 0, in the same unit.

    Returns
    -------
    Fraction
        Drawing to bench: 1, 2 or 5 to a power of ten, or the inverse of such a number.

    Raises
    ------
    ImpossibleShape
        If either length is not a positive number, or the list has no scale so small.

    Source: ISO 5455:1979, clause 5.1: 50:1, 20:1, 10:1, 5:1, 2:1; 1:1; 1:2, 1:5, 1:10 and so on to 1:10 000,
    extended by powers of ten (read).

    >>> str(recommended_scale(full=1200, room=180))
    '1/10'
    """
    ratio = scale_for(known=full, wanted=room)
    power = math.floor(math.log10(ratio))
    fitting = [
        scale
        for step in (power - 1, power, power + 1)
        for scale in (Fraction(10) ** step * digit for digit in (1, 2, 5))
        if scale <= ratio * (1 + 1e-9)
    ]
    largest = max(fitting)
    if largest < Fraction(1, LARGEST_SCALE):
        raise ImpossibleShape(
            f"{full:g} long does not fit {room:g} at any recommended scale; the smallest is "
            f"1:{LARGEST_SCALE}. Draw a part of it, or take a larger sheet."
        )
    return largest


def scale_name(scale: Scale) -> str:
    """The scale of a drawing as it is written in its title block.

    Parameters
    ----------
    scale : Fraction or float
        Drawing to bench, > 0; less than 1 for a reduced drawing.

    Returns
    -------
    str
        The word and the ratio.

    Raises
    ------
    ImpossibleShape
        If the scale is not a positive number.

    Source: EN ISO 5455:1994, clause 3: the word SCALE, then the ratio (read).

    >>> scale_name(Fraction(1, 5)), scale_name(2), scale_name(1), scale_name(0.6)
    ('SCALE 1:5', 'SCALE 2:1', 'SCALE 1:1', 'SCALE 3:5')
    """
    if not (math.isfinite(scale) and scale > 0):
        raise ImpossibleShape(
            f"The scale is {number_shown(float(scale))}, and it must be more than 0: the drawing's length over "
            "the length at the bench."
        )
    ratio = Fraction(scale).limit_denominator(LARGEST_SCALE)
    return f"SCALE {ratio.numerator}:{ratio.denominator}"
