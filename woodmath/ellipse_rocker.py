"""Which ellipse has a rocker's arc: its length, its rise and the roundness of its bottom are given.

With l half the length and R the radius at the bottom there is one ellipse exactly when l² over rise times R
lies from 1 (the arc is the whole lower half) to less than 2 (no ellipse is big enough).
"""

from __future__ import annotations

import functools
from dataclasses import dataclass

import sympy

from woodmath.derivation import Derivation, Limit
from woodmath.ellipse_curve import bottom_radius_derivation
from woodmath.ellipse_derivations import derivation, quantities
from woodmath.operations import Divide, Factor, Gather, Isolate, Multiply, Substitute

WHOLE_LOWER_HALF = 1.0
NO_ELLIPSE_LEFT = 2.0


@functools.cache
def rocker_derivation() -> Derivation:
    """Derive the half height of the ellipse that has an arc of given chord, rise and roundness.

    Returns
    -------
    Derivation
        Speaks of `half_height`, `half_chord`, `rise`, `radius`; its subject is `half_height`.

    Source: the ellipse's equation and the radius at its bottom, as derived.

    >>> round(rocker_derivation().function("half_height")(half_chord=3, rise=0.8, radius=6.25), 9)
    4.0
    """
    spoken_of = quantities("half_height", "half_chord", "rise", "radius", "half_length", "across", "up")
    half_height, half_chord, rise, radius, half_length, across, up = (
        quantity.symbol for quantity in spoken_of
    )
    return (
        Derivation.start(
            "The rocker from its length, its rise and its roundness",
            spoken_of,
            derivation().result,
            "the ellipse's equation, as derived from the string",
            subject="half_height",
            example={
                half_height: 4,
                half_chord: 3,
                rise: sympy.Rational(4, 5),
                radius: sympy.Rational(25, 4),
                half_length: 5,
                across: 3,
                up: sympy.Rational(-16, 5),
            },
            limits=(
                Limit(
                    rise * radius <= half_chord**2,
                    "The bottom is too flat for an arc so short and so high: make the arc longer, or its "
                    "rise or its radius at the bottom smaller",
                ),
                Limit(
                    half_chord**2 < 2 * rise * radius,
                    "The bottom is too round for an arc so long and so low: make the arc shorter, or its "
                    "rise or its radius at the bottom greater",
                ),
            ),
            keeps={"rise": "the arc is part of the lower half", "half_chord": "it is a length"},
        )
        .then(Substitute(across, half_chord), "the heel of the rocker lies half the chord from the middle")
        .then(
            Substitute(up, rise - half_height),
            "and the rise above the lowest point, which is b below the centre",
        )
        .then(
            Substitute(half_length**2, bottom_radius_derivation().solved_for("half_length").rhs ** 2),
            "the bottom is to have this radius, and a² over b is the radius: only b is left to find",
        )
        .then(Multiply(half_height**2), "b is better above the line than below it")
        .then(Gather((half_height,)), "the square of b cancels: no root will be needed")
        .then(Multiply(-radius), "the radius comes above the line, and the minus in front of s² goes")
        .then(Factor(), "b stands in every term on the left")
        .then(
            Divide(2 * radius * rise - half_chord**2),
            "b stands alone. The bracket is more than nothing for every rocker that can be: a bottom of "
            "this roundness climbs past the rise before the heel otherwise. The half length is then the "
            "root of R times b",
        )
    )


@functools.cache
def shallowness_derivation() -> Derivation:
    """Derive how much of the ellipse's lower half a rocker's arc is, and so which arcs there are.

    Returns
    -------
    Derivation
        Speaks of `shallowness`, `half_chord`, `rise`, `radius`; its subject is `shallowness`.

    Source: the rocker's rule, as derived.

    >>> shallowness_derivation().result
    Eq(shallowness, half_chord**2/(radius*rise))
    """
    spoken_of = quantities("shallowness", "half_chord", "rise", "radius", "half_height")
    shallowness, half_chord, rise, radius, half_height = (quantity.symbol for quantity in spoken_of)
    return (
        Derivation.start(
            "Which rockers there are",
            spoken_of,
            rocker_derivation().result,
            "the half height that goes with chord, rise and roundness, as derived",
            subject="shallowness",
            example={
                shallowness: sympy.Rational(9, 5),
                half_chord: 3,
                rise: sympy.Rational(4, 5),
                radius: sympy.Rational(25, 4),
                half_height: 4,
            },
            keeps={"half_chord": "it is a length"},
        )
        .then(
            Substitute(half_height, rise / (2 - shallowness)),
            "measure the half height by the rise: at n = 1 the two are equal, and the arc is the whole "
            "lower half; as n nears 2 the ellipse outgrows every drawing board; an arc that fits lies "
            "between",
        )
        .then(Isolate(shallowness), "so n is found from the three sizes asked for")
    )


@dataclass(frozen=True)
class RockerRanges:
    """What each of a rocker's three sizes may be while the other two stay, as (least, most).

    Parameters
    ----------
    too_flat : bool
        Whether the bottom asked for is too flat for its arc; otherwise it is too round, or can be.
    lengths : (float, float)
        From the least to less than the most.
    rises, radii : (float, float)
        More than the least, and up to the most.

    >>> round(rocker_ranges(length=12, rise=4, bottom_radius=16).lengths[0], 9)
    16.0
    """

    too_flat: bool
    lengths: tuple[float, float]
    rises: tuple[float, float]
    radii: tuple[float, float]

    @property
    def fault(self) -> str:
        """What is wrong with the bottom, as a half sentence."""
        if self.too_flat:
            return "too flat: an ellipse so flat is longer than that by the time it has risen so far"
        return "too round: a curve so round has risen further than that before it is so long"


def rocker_ranges(length: float, rise: float, bottom_radius: float) -> RockerRanges:
    """Return what each of a rocker's three sizes may be while the other two stay.

    Parameters
    ----------
    length, rise, bottom_radius : float
        Chord, rise and radius at the bottom, > 0, in one length unit.

    Returns
    -------
    RockerRanges
        In the same unit.

    Raises
    ------
    ImpossibleShape
        If one of the three is not a positive number.

    Source: `shallowness_derivation`, at both ends of its range.

    >>> [round(radius, 6) for radius in rocker_ranges(length=19, rise=2, bottom_radius=60).radii]
    [22.5625, 45.125]
    """
    rule = shallowness_derivation()
    shallowness = rule.function("shallowness")(half_chord=length / 2, rise=rise, radius=bottom_radius)

    def half_chord(end: float) -> float:
        return rule.function("half_chord")(rise=rise, radius=bottom_radius, shallowness=end)

    def rise_at(end: float) -> float:
        return rule.function("rise")(half_chord=length / 2, radius=bottom_radius, shallowness=end)

    def radius_at(end: float) -> float:
        return rule.function("radius")(half_chord=length / 2, rise=rise, shallowness=end)

    return RockerRanges(
        too_flat=shallowness < WHOLE_LOWER_HALF,
        lengths=(2 * half_chord(WHOLE_LOWER_HALF), 2 * half_chord(NO_ELLIPSE_LEFT)),
        rises=(rise_at(NO_ELLIPSE_LEFT), rise_at(WHOLE_LOWER_HALF)),
        radii=(radius_at(NO_ELLIPSE_LEFT), radius_at(WHOLE_LOWER_HALF)),
    )


def no_such_rocker(length: float, rise: float, bottom_radius: float) -> str:
    """Say why no ellipse has such an arc, and what each of the three sizes may be instead.

    Parameters
    ----------
    length, rise, bottom_radius : float
        Chord, rise and radius at the bottom, > 0, in one length unit.

    Returns
    -------
    str
        Sentences for the maker.

    Source: `shallowness_derivation`, at both ends of its range.

    >>> "a length from 16 to less than 22.6274" in no_such_rocker(length=12, rise=4, bottom_radius=16)
    True
    """
    can_be = rocker_ranges(length, rise, bottom_radius)
    (short, long), (low, high), (least, most) = can_be.lengths, can_be.rises, can_be.radii
    return (
        f"A rocker {length:.6g} long with a rise of {rise:.6g} cannot have a radius of {bottom_radius:.6g} "
        f"at the bottom, which is {can_be.fault}. Change one of the three: a length from {short:.6g} to "
        f"less than {long:.6g}, or a rise of more than {low:.6g} and up to {high:.6g}, or a radius at the "
        f"bottom of more than {least:.6g} and up to {most:.6g}."
    )
