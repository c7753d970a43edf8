"""How a scale is written: read off a text, chosen from the recommended ones, and named in a title block.

A scale is a ratio of two lengths, drawing to bench or old size to new, and is kept as an exact fraction.
"""

from __future__ import annotations

import math
import re
from fractions import Fraction

from woodmath.as_given import quoted
from woodmath.errors import ImpossibleShape, WoodmathError
from woodmath.numbers_as_written import number_shown, read_number
from woodmath.scaling_derivations import scale_derivation

LARGEST_SCALE = 10_000
"""The standard's own list of recommended scales ends there, and nothing is made from a smaller drawing."""

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
    ratio = scale_derivation().function("scale")(known=full, wanted=room)
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


def scale_name(scale: Fraction | float) -> str:
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
