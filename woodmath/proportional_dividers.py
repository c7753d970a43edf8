"""Proportional dividers: two equal legs pointed at both ends, crossing at a pivot, carry a length over to scale.

The triangles on either side of the pivot have the same shape, so their openings are as their arms. Where the
pivot sits along the legs is the only thing to work out, and it is worked out once.
"""

from __future__ import annotations

import functools

import sympy

from woodmath.derivation import Derivation, Limit, Quantity
from woodmath.errors import ImpossibleShape
from woodmath.operations import Isolate, Multiply, Substitute, equation


@functools.cache
def opening_derivation() -> Derivation:
    """Derive one opening of the dividers from the other.

    Returns
    -------
    Derivation
        Speaks of `wide_opening`, `narrow_opening`, `long_arm` and `short_arm` (lengths in one unit); its
        subject is the wide opening.

    Source: similar triangles.

    >>> opening_derivation().result
    Eq(wide_opening, long_arm*narrow_opening/short_arm)
    """
    wide, narrow, long_arm, short_arm = sympy.symbols(
        "wide_opening narrow_opening long_arm short_arm", positive=True
    )
    return Derivation.start(
        "The two openings of the dividers",
        (
            Quantity(wide, "W", "opening between the points of the long arms"),
            Quantity(narrow, "w", "opening between the points of the short arms"),
            Quantity(long_arm, "a", "from the pivot to the long arms' points"),
            Quantity(short_arm, "b", "from the pivot to the short arms' points"),
        ),
        equation(wide / long_arm, narrow / short_arm),
        "the two triangles share the angle at the pivot, and in each the two arms are equal: they have the same "
        "shape, so opening and arm stand in the same ratio",
        subject="wide_opening",
        example={wide: 5, narrow: 3, long_arm: 5, short_arm: 3},
        limits=(
            Limit(
                narrow < 2 * short_arm,
                "The points cannot be further apart than the two short arms in one line: take longer legs, or "
                "step the length off in two parts",
            ),
        ),
    ).then(Isolate(wide), "what is taken off the drawing at one end stands ready for the wood at the other")


@functools.cache
def pivot_derivation() -> Derivation:
    """Derive where along the legs the pivot sits for a wanted ratio.

    Returns
    -------
    Derivation
        Speaks of `long_arm`, `length` (of a leg) and `ratio` (of the openings); its subject is the long arm.

    Source: similar triangles.

    >>> pivot_derivation().result
    Eq(long_arm, length*ratio/(ratio + 1))
    """
    ratio, long_arm, short_arm, length = sympy.symbols("ratio long_arm short_arm length", positive=True)
    return (
        Derivation.start(
            "The pivot's place",
            (
                Quantity(long_arm, "a", "from the pivot to the points that open wide"),
                Quantity(short_arm, "b", "from the pivot to the other points"),
                Quantity(length, "L", "length of a leg, point to point"),
                Quantity(ratio, "k", "wide opening over narrow opening", "number"),
            ),
            equation(ratio, long_arm / short_arm),
            "the openings stand in the ratio of the arms",
            subject="long_arm",
            example={ratio: sympy.Rational(5, 3), long_arm: 5, short_arm: 3, length: 8},
        )
        .then(Substitute(short_arm, length - long_arm), "the two arms together are one leg")
        .then(Multiply(length - long_arm), "the bracket comes up from below, and is multiplied out")
        .then(Isolate(long_arm), "this is where the hole for the pivot goes")
    )


def pivot_place(ratio: float, length: float) -> float:
    """Where the pivot sits: distance from the points that open wide.

    Parameters
    ----------
    ratio : float
        Wide opening over narrow opening, > 0; less than 1 says that the named points open less than the others.
    length : float
        Of a leg, point to point, > 0, in any length unit.

    Returns
    -------
    float
        In the same unit, more than 0 and less than the length.

    Raises
    ------
    ImpossibleShape
        If either is not a positive number.

    Source: `pivot_derivation`.

    >>> pivot_place(ratio=2, length=6)
    4.0
    """
    return pivot_derivation().function("long_arm")(ratio=ratio, length=length)


def wide_opening(narrow_opening: float, ratio: float, length: float) -> float:
    """Opening between the long arms' points, for an opening between the short arms' points.

    Parameters
    ----------
    narrow_opening : float
        Taken off the drawing, > 0, in any length unit; less than twice the short arm.
    ratio : float
        That the pivot is set to, > 0.
    length : float
        Of a leg, point to point, > 0, in the same unit.

    Returns
    -------
    float
        In the same unit.

    Raises
    ------
    ImpossibleShape
        If the legs do not open so far, or a number is not positive.

    Source: `opening_derivation`.

    >>> round(wide_opening(narrow_opening=1.5, ratio=2, length=6), 9)
    3.0
    """
    long_arm = pivot_place(ratio, length)
    return opening_derivation().function("wide_opening")(
        narrow_opening=narrow_opening, long_arm=long_arm, short_arm=length - long_arm
    )


def ratio_error(ratio: float, length: float, pivot_error: float) -> float:
    """How far the ratio is out, at worst, when the pivot sits so far from its place.

    Parameters
    ----------
    ratio : float
        That was wanted, > 0.
    length : float
        Of a leg, point to point, > 0, in any length unit.
    pivot_error : float
        How far off the pivot may sit along the leg, either way, 0 or more, in the same unit.

    Returns
    -------
    float
        The greatest change of the ratio, either way.

    Raises
    ------
    ImpossibleShape
        If the pivot could slip to the end of the leg, or a number cannot be.

    Source: `pivot_derivation` solved for the ratio, at both ends of the error.

    >>> round(ratio_error(ratio=2, length=6, pivot_error=1 / 32), 3)
    0.048
    """
    place = pivot_place(ratio, length)
    if not 0 <= pivot_error < min(place, length - place):
        raise ImpossibleShape(
            f"The pivot sits {place:g} from one end of a leg {length:g} long, and its error is {pivot_error:g}. "
            "An error is 0 or more, and smaller than either arm."
        )
    ratio_at = pivot_derivation().function("ratio")
    return max(
        abs(ratio_at(long_arm=place + off, length=length) - ratio) for off in (-pivot_error, pivot_error)
    )
