"""How long a rocker is that has a wished rise, roundness and tilt at its heel: the length that rocks so far.

The tilt at which the rolling ends is the slope of the curve at its heel. With the roundness at the bottom that
gives the period, and the rise that the heels are to have, only one length is left.
"""

from __future__ import annotations

import functools
from dataclasses import replace
from types import MappingProxyType

import sympy

from woodmath.derivation import Derivation, Limit, Quantity
from woodmath.ellipse_curve import angle_derivation, bottom_radius_derivation
from woodmath.ellipse_derivations import quantities as ellipse_quantities
from woodmath.ellipse_rocker import NO_ELLIPSE_LEFT, rocker_derivation, shallowness_derivation
from woodmath.operations import Factor, Isolate, Multiply, Substitute
from woodmath.quantities import worded

_WORDS = MappingProxyType(
    {
        "heel_angle": (
            r"\theta_v",
            "the tilt at which the touching point reaches the heel",
            "degrees",
            "real",
        ),
    }
)


def quantities(*names: str) -> tuple[Quantity, ...]:
    r"""Return the quantities that choosing a rocker speaks of; those of the ellipse keep their letters.

    Parameters
    ----------
    *names : str
        Their names, in the order in which a derivation introduces them.

    Returns
    -------
    tuple of Quantity
        One for each name.

    >>> [quantity.letter for quantity in quantities("rise", "heel_angle")]
    ['s', '\\theta_v']
    """
    return worded(_WORDS, names, ellipse_quantities)


@functools.cache
def _slope_at_the_heel() -> Derivation:
    """Derive the slope at a rocker's heel from its length, its rise and its roundness."""
    spoken_of = quantities(
        "half_chord", "heel_angle", "rise", "radius", "across", "up", "slope", "half_length", "half_height"
    )
    half_chord, heel_angle, rise, radius, across, up, slope, half_length, half_height = (
        quantity.symbol for quantity in spoken_of
    )
    before_up_is_put_in = next(
        step.equation
        for step in angle_derivation().steps
        if step.equation.lhs == slope and up in step.equation.free_symbols
    )
    return (
        Derivation.start(
            "How long the rocker is that rolls so far",
            spoken_of,
            before_up_is_put_in,
            "the slope of the ellipse at a point of its lower half, as derived",
            subject="half_chord",
            example={
                half_chord: 3,
                heel_angle: sympy.atan(sympy.Rational(3, 5)),
                rise: sympy.Rational(4, 5),
                radius: sympy.Rational(25, 4),
                across: 3,
                up: sympy.Rational(-16, 5),
                slope: sympy.Rational(3, 5),
                half_length: 5,
                half_height: 4,
            },
            limits=(
                Limit(
                    heel_angle > 0,
                    "A rocker that rolls has a slope at its heel: wish for a rolling limit of more than 0 degrees",
                ),
                Limit(
                    heel_angle < sympy.pi / 2,
                    "No heel is steeper than upright: wish for a rolling limit of less than 90 degrees",
                ),
                Limit(
                    2 * rise < radius * sympy.tan(heel_angle) ** 2,
                    "The heels stand too high for so small a tilt: wish for a smaller rise, for a greater "
                    "rolling limit, or for a shorter period, which makes the bottom flatter",
                ),
            ),
            keeps={"half_chord": "it is a length"},
        )
        .then(Substitute(across, half_chord), "the heel lies half the rocker's length from the middle")
        .then(
            Substitute(up, rise - half_height),
            "and the rise above the lowest point, which is b below the centre",
        )
        .then(
            Substitute(half_length**2, bottom_radius_derivation().solved_for("half_length").rhs ** 2),
            "a² is the radius at the bottom times b",
        )
        .then(
            Substitute(half_height, rocker_derivation().result.rhs),
            "b is known for a rocker of this length, rise and roundness",
        )
        .then(Factor(), "most of it cancels")
        .then(
            Substitute(slope, sympy.tan(heel_angle)),
            "when the case has tilted so far that the floor touches the heel, the straight edge at the heel "
            "is the floor: the slope there is the tangent of that tilt",
        )
    )


@functools.cache
def half_chord_derivation() -> Derivation:
    """Derive half the length of a rocker from its rise, its roundness and the tilt at its heel.

    Returns
    -------
    Derivation
        Speaks of `half_chord`, `rise`, `radius`, `heel_angle` (degrees); its subject is `half_chord`.

    Source: the slope of the ellipse and the ellipse of a rocker, both as derived.

    >>> round(half_chord_derivation().function("half_chord")(rise=0.8, radius=6.25, heel_angle=30.9638), 4)
    3.0
    """
    half_chord, rise, radius = (each.symbol for each in quantities("half_chord", "rise", "radius"))
    return (
        _slope_at_the_heel()
        .then(Multiply(half_chord**2 - radius * rise), "the length comes above the line")
        .then(
            Isolate(half_chord, keep="the other answer is less than nothing, and no length"),
            "the length stands there as itself and as a square",
        )
    )


@functools.cache
def shallow_heel_angle_derivation() -> Derivation:
    """Derive the tilt at a rocker's heel from its rise, its roundness and how shallow its arc is.

    Returns
    -------
    Derivation
        Speaks of `heel_angle` (degrees), `rise`, `radius`, `shallowness`; its subject is `heel_angle`.

    Source: the slope at the heel, as derived, and `woodmath.ellipse_rocker.shallowness_derivation`.

    >>> rule = shallow_heel_angle_derivation().function("heel_angle")
    >>> round(rule(rise=0.8, radius=6.25, shallowness=1.8), 4)
    30.9638
    """
    spoken_of = quantities("heel_angle", "rise", "radius", "half_chord", "shallowness")
    heel_angle, rise, radius, half_chord, shallowness = (each.symbol for each in spoken_of)
    return (
        Derivation.start(
            "The tilt at the heel of a shallow rocker",
            spoken_of,
            _slope_at_the_heel().result,
            "the tilt at the heel of a rocker, as derived",
            subject="heel_angle",
            example={
                heel_angle: sympy.atan(sympy.Rational(1, 3)),
                rise: 2,
                radius: 36,
                half_chord: 12,
                shallowness: 2,
            },
            limits=(
                Limit(
                    shallowness > 1,
                    "An arc of n = 1 is the whole lower half, and upright at its heel: give an n of more than 1",
                ),
            ),
            keeps={
                "heel_angle": "no heel leans further than upright",
                "shallowness": "n is more than 1, and the other answer less",
            },
        )
        .then(
            Substitute(half_chord, shallowness_derivation().solved_for("half_chord").rhs),
            "the length by how shallow the arc is: n times the radius times the rise is its square",
        )
        .then(Isolate(heel_angle), "the longer the rocker, the smaller the tilt")
    )


@functools.cache
def least_heel_angle_derivation() -> Derivation:
    """Derive the smallest tilt at which a rocker of some rise and roundness can reach its heel.

    Returns
    -------
    Derivation
        Speaks of `heel_angle` (degrees), `rise`, `radius`; its subject is `heel_angle`. The tilt itself is not
        reached: its ellipse would be taller than any board.

    Source: the rule of the shallowest arc (`woodmath.ellipse_rocker.shallowness_derivation`).

    >>> round(least_heel_angle_derivation().function("heel_angle")(rise=2, radius=36), 4)
    18.4349
    """
    (shallowness,) = (each.symbol for each in quantities("shallowness"))
    before = shallow_heel_angle_derivation()
    return replace(before, title="The smallest tilt at which the heel can be reached", limits=()).then(
        Substitute(shallowness, sympy.nsimplify(NO_ELLIPSE_LEFT)),
        "the longer the rocker, the smaller the tilt at its heel, and at n = 2 no ellipse is left",
    )
