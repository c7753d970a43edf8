"""Strike a bevel from two distances: an offset gauged along the face, and the thickness that the cut crosses.

The angle off square is the one whose tangent is offset over thickness. Equal distances strike 45 degrees,
whatever their size, so a marking gauge can stand in for a bevel gauge.
"""

from __future__ import annotations

import functools
import math

import sympy

from woodmath.derivation import Derivation, Limit, Quantity
from woodmath.errors import ImpossibleShape
from woodmath.operations import Isolate, Substitute, equation


@functools.cache
def derivation() -> Derivation:
    """Derive the bevel's angle from the right triangle that offset and thickness make.

    Returns
    -------
    Derivation
        Speaks of `angle` (degrees), `offset` and `thickness` (lengths in one unit); its subject is the angle.

    Source: plane trigonometry, the tangent in a right triangle.

    >>> derivation().result
    Eq(angle, atan(offset/thickness))
    """
    angle, offset, thickness = sympy.symbols("angle offset thickness", positive=True)
    return Derivation.start(
        "A bevel from two distances",
        (
            Quantity(angle, r"\beta", "bevel, off square", "degrees"),
            Quantity(offset, "o", "offset, along the face from the square line to the gauge line"),
            Quantity(thickness, "t", "thickness that the bevel crosses"),
        ),
        equation(sympy.tan(angle), offset / thickness),
        "the square line across the edge, the offset along the face and the slanting cut close a right "
        "triangle; the offset lies opposite the angle, the thickness beside it, and their ratio is the "
        "angle's tangent",
        subject="angle",
        example={angle: sympy.pi / 4, offset: 1, thickness: 1},
        limits=(
            Limit(
                angle < sympy.pi / 2,
                "A bevel runs along the wood at 90 degrees off square and never comes out of it: "
                "ask for less than 90 degrees",
            ),
        ),
    ).then(Isolate(angle), "we want the angle itself: the one under a right angle that has this tangent")


@functools.cache
def equal_distances() -> Derivation:
    """Derive the special case by which a bevel is struck without a bevel gauge.

    Returns
    -------
    Derivation
        Takes up the rule of `derivation()`, with an offset as long as the thickness.

    Source: plane trigonometry; equal distances strike 45 degrees (common practice).

    >>> equal_distances().result
    Eq(angle, pi/4)
    """
    rule = derivation()
    offset, thickness = rule.quantity("offset"), rule.quantity("thickness")
    return Derivation.start(
        "Equal distances strike 45 degrees",
        rule.quantities,
        rule.result,
        "this is the rule for any two distances",
        subject="angle",
        example=dict(rule.example),
    ).then(
        Substitute(offset.symbol, thickness.symbol),
        "gauge the offset with the setting that gave the thickness: the length drops out, and what is left "
        "is half a right angle, 45 degrees, in wood of any thickness",
    )


def bevel_angle(offset: float, thickness: float) -> float:
    """Angle of a bevel struck by an offset across a thickness, in degrees off square.

    Parameters
    ----------
    offset : float
        Distance along the face from the square line to the gauge line, > 0, in any length unit.
    thickness : float
        Thickness that the bevel crosses, > 0, in the same unit.

    Returns
    -------
    float
        Degrees off square, more than 0 and less than 90.

    Raises
    ------
    ImpossibleShape
        If either length is not a positive number.

    Source: plane trigonometry; equal distances strike 45 degrees (common practice).

    >>> bevel_angle(offset=0.625, thickness=0.625)
    45.0
    """
    return derivation().function("angle")(offset=offset, thickness=thickness)


def offset_for(angle: float, thickness: float) -> float:
    """Offset to gauge along the face for a bevel of a given angle.

    Parameters
    ----------
    angle : float
        Bevel in degrees off square, more than 0 and less than 90.
    thickness : float
        Thickness that the bevel crosses, > 0, in any length unit.

    Returns
    -------
    float
        Distance along the face from the square line to the gauge line, in the same unit.

    Raises
    ------
    ImpossibleShape
        If the angle is not between 0 and 90 degrees, or the thickness is not a positive number.

    Source: plane trigonometry, the same rule solved for the offset.

    >>> round(offset_for(angle=45, thickness=0.75), 9)
    0.75
    """
    return derivation().function("offset")(angle=angle, thickness=thickness)


def angle_error(
    offset: float, thickness: float, offset_error: float = 0.0, thickness_error: float = 0.0
) -> float:
    """How far the bevel may be out, at worst, when each distance may be out by so much either way.

    Exact, not a first approximation: a longer offset always opens the angle and a greater thickness always
    closes it, so the worst is found where both errors are at their full size.

    Parameters
    ----------
    offset, thickness : float
        The two distances meant, > 0, in any length unit.
    offset_error, thickness_error : float
        How far each may be out, either way: 0 or more, less than the distance itself, in the same unit.

    Returns
    -------
    float
        The greatest change of the angle, in degrees, 0 or more.

    Raises
    ------
    ImpossibleShape
        If a distance is not positive, or an error is negative or as large as its distance.

    Source: plane trigonometry, the same rule at both ends of each error.

    >>> round(angle_error(offset=0.625, thickness=0.625, offset_error=1 / 32), 2)
    1.47
    """
    meant = bevel_angle(offset, thickness)
    struck = [
        bevel_angle(offset + along, thickness + across)
        for along in _either_way("offset", offset, offset_error)
        for across in _either_way("thickness", thickness, thickness_error)
    ]
    return max(abs(angle - meant) for angle in struck)


def _either_way(name: str, length: float, error: float) -> tuple[float, float]:
    if not (math.isfinite(error) and 0 <= error < length):
        raise ImpossibleShape(
            f"The {name} is {length:g} and its error {error:g}. An error is 0 or more, and less than the "
            f"{name} itself: give how far your marking may be out, such as half a mark of the rule."
        )
    return -error, error
