"""Why a case on rockers comes back, and how fast: from one touching point to the period, in symbols.

The rocker rolls on a hard level floor and does not slip. At a tilt the floor touches the ellipse where the
curve itself has that slope; from there follow how high everything stands, the lever arm that brings it back,
the energy of the tilt, and the time that a swing takes.
"""

from __future__ import annotations

import functools
from types import MappingProxyType

import sympy

from woodmath.derivation import Derivation, Quantity
from woodmath.ellipse_curve import angle_derivation
from woodmath.ellipse_derivations import derivation as ellipse_derivation
from woodmath.operations import (
    Expand,
    Factor,
    Isolate,
    Substitute,
    equation,
    solutions_for,
)
from woodmath.quantities import worded

_WORDS = MappingProxyType(
    {
        "tilt": (r"\theta", "how far the case leans from upright", "degrees", "real"),
        "across": (
            "x",
            "from the rocker's middle line to where it touches, along the rocker",
            "metres",
            "real",
        ),
        "depth": (
            "d",
            "from the ellipse's centre down to where it touches, along the middle line",
            "metres",
            "positive",
        ),
        "half_length": ("a", "half the ellipse's length", "metres", "positive"),
        "half_height": ("b", "half its height", "metres", "positive"),
        "middle_height": ("p", "height of the ellipse's centre over the floor", "metres", "positive"),
        "centre_height": (
            "h",
            "height of the centre of gravity over the floor at rest",
            "metres",
            "positive",
        ),
        "centre_offset": (
            "u",
            "how far the centre of gravity lies to the right of the middle line",
            "metres",
            "real",
        ),
        "height": ("H", "height of the centre of gravity over the floor at the tilt", "metres", "positive"),
        "lever_arm": (
            r"\ell",
            "how far the touching point lies to the right of the centre of gravity, level",
            "metres",
            "real",
        ),
        "energy": ("E", "what must be put in to tilt it so far", "joules", "real"),
        "mass": ("m", "of case and load together", "kilograms", "positive"),
        "gravity": (
            "g",
            "what a falling thing gains in speed in a second",
            "metres per second squared",
            "positive",
        ),
        "radius": (
            "R",
            "radius of the circle that is as round as the rocker where it touches",
            "metres",
            "positive",
        ),
        "stiffness_margin": (
            r"\Delta",
            "how much the lever arm grows for each unit of a small tilt",
            "metres",
            "real",
        ),
        "gyration_radius": (
            "k",
            "where all the mass would sit round the centre of gravity to turn as heavily",
            "metres",
            "nonnegative",
        ),
        "small_tilt": (
            "A",
            "the end of a small swing, as an arc of a circle of radius 1",
            "number",
            "positive",
        ),
        "quickest": (
            r"\omega",
            "how fast it turns in the middle of the swing, in radians a second",
            "number",
            "positive",
        ),
        "turning": (r"\omega", "how fast it turns at a tilt, in radians a second", "number", "nonnegative"),
        "fall": (
            "f",
            "how far the centre of gravity has come down since it was let go",
            "metres",
            "nonnegative",
        ),
        "lift": ("z", "how far the centre of gravity was lifted", "metres", "real"),
        "drag": (
            "D",
            "what slows it, for each kilogram and each unit of turning",
            "square metres per second",
            "nonnegative",
        ),
        "damping_ratio": (
            r"\zeta",
            "part of the drag that would just stop it from swinging",
            "number",
            "nonnegative",
        ),
        "heaviness": (
            "J",
            "square of the gyration radius about the touching point",
            "square metres",
            "positive",
        ),
        "period": ("T", "time of one swing, there and back", "seconds", "positive"),
    }
)

_EIGHT_TO_THREE = sympy.atan(sympy.Rational(3, 8))
"""A tilt at which an ellipse twice as long as it is high has a touching point in whole numbers."""


GRAVITY = 9.80665
"""In m/s²: the standard value (third General Conference on Weights and Measures, 1901; from memory)."""


def quantities(*names: str) -> tuple[Quantity, ...]:
    """Return the quantities that rocking speaks of, always with the same letter and meaning.

    Parameters
    ----------
    *names : str
        Their names, in the order in which a derivation introduces them.

    Returns
    -------
    tuple of Quantity
        One for each name.

    >>> [quantity.letter for quantity in quantities("centre_height", "gyration_radius")]
    ['h', 'k']
    """
    return worded(_WORDS, names)


def symbols(*names: str) -> tuple[sympy.Symbol, ...]:
    """Return the symbols of quantities by name.

    Parameters
    ----------
    *names : str
        As for `quantities`.

    Returns
    -------
    tuple of sympy.Symbol
        One for each name.

    >>> symbols("tilt")
    (tilt,)
    """
    return tuple(quantity.symbol for quantity in quantities(*names))


def _slope_of_a_point() -> sympy.Expr:
    """Return the slope of the curve at a point of it, as the ellipse's own derivation finds it on its way."""
    whole = angle_derivation()
    slope = whole.quantity("slope").symbol
    (found,) = (
        step.equation.rhs
        for step in whole.steps
        if isinstance(step.operation, Isolate) and step.operation.wanted == slope
    )
    return found.subs(whole.quantity("up").symbol, -symbols("depth")[0])


def across_of_a_touching_point() -> sympy.Expr:
    """Return how far from the middle line the floor touches, in terms of the depth there and the tilt.

    Returns
    -------
    sympy.Expr
        In `depth`, `tilt`, `half_length` and `half_height`.

    >>> across_of_a_touching_point()
    depth*half_length**2*tan(tilt)/half_height**2
    """
    across, tilt = symbols("across", "tilt")
    (found,) = solutions_for(equation(_slope_of_a_point(), sympy.tan(tilt)), across)
    return found


@functools.cache
def contact_derivation() -> Derivation:
    """Derive how deep below the ellipse's centre the floor touches it at a tilt.

    Returns
    -------
    Derivation
        Speaks of `depth`, `across`, `tilt` (degrees), `half_length`, `half_height`; its subject is `depth`.

    Source: the ellipse's equation and its slope, as derived.

    >>> round(contact_derivation().function("depth")(tilt=0, half_length=5, half_height=4), 9)
    4.0
    """
    spoken_of = quantities("depth", "across", "tilt", "half_length", "half_height")
    depth, across, tilt, half_length, half_height = (quantity.symbol for quantity in spoken_of)
    up = ellipse_derivation().quantity("up").symbol
    return (
        Derivation.start(
            "Where the floor touches the rocker",
            spoken_of,
            ellipse_derivation().result.subs(up, -depth),
            "the touching point lies on the ellipse, d below its centre",
            subject="depth",
            example={
                depth: 4,
                across: 6,
                tilt: _EIGHT_TO_THREE,
                half_length: 10,
                half_height: 5,
            },
            keeps={
                "half_length": "it is a length",
                "half_height": "it is a length",
                "tilt": "the case leans to the right",
            },
        )
        .then(
            Substitute(across, across_of_a_touching_point()),
            "the floor is a straight edge that touches there, so the curve's slope at that point is the "
            "tilt itself; that tells x from d",
        )
        .then(
            Substitute(sympy.tan(tilt), sympy.sin(tilt) / sympy.cos(tilt)),
            "a tangent is a sine over a cosine",
        )
        .then(Factor(), "d² stands in both terms")
        .then(Isolate(depth, keep="it is a depth"), "the depth is wanted")
    )


@functools.cache
def middle_height_derivation() -> Derivation:
    """Derive how high the ellipse's centre stands over the floor at a tilt.

    Returns
    -------
    Derivation
        Speaks of `middle_height`, `tilt` (degrees), `half_length`, `half_height`; its subject is
        `middle_height`.

    Source: `contact_derivation`; agrees with the distance from centre to tangent in the handbooks (from
    memory).

    >>> round(middle_height_derivation().function("middle_height")(tilt=90, half_length=5, half_height=4), 9)
    5.0
    """
    spoken_of = quantities("middle_height", "across", "depth", "tilt", "half_length", "half_height")
    middle_height, across, depth, tilt, half_length, half_height = (quantity.symbol for quantity in spoken_of)
    return (
        Derivation.start(
            "How high the ellipse's centre stands when it leans",
            spoken_of,
            equation(middle_height, across * sympy.sin(tilt) + depth * sympy.cos(tilt)),
            "walk from the touching point to the centre, first up the leaning middle line by d, then along "
            "the leaning rocker by x: of d the part d cos θ goes upright, of x the part x sin θ",
            subject="middle_height",
            example={
                middle_height: 50 / sympy.sqrt(73),
                across: 6,
                depth: 4,
                tilt: _EIGHT_TO_THREE,
                half_length: 10,
                half_height: 5,
            },
            keeps={
                "tilt": "the case leans to the right",
                "half_length": "it is a length",
                "half_height": "it is a length",
            },
        )
        .then(
            Substitute(across, across_of_a_touching_point()),
            "where the floor touches, the curve's slope is the tilt, and that tells x from d",
        )
        .then(
            Substitute(sympy.tan(tilt), sympy.sin(tilt) / sympy.cos(tilt)),
            "a tangent is a sine over a cosine",
        )
        .then(
            Substitute(depth, contact_derivation().solved_for("depth").rhs),
            "and d is known from the ellipse's equation at that point",
        )
        .then(
            Factor(),
            "what stands above is the square of the root below: one root is left. Upright it is b, lying "
            "on its end a, and between them Pythagoras mixes the two",
        )
    )


@functools.cache
def derivation() -> Derivation:
    """Derive how high the centre of gravity stands over the floor at a tilt.

    Returns
    -------
    Derivation
        Speaks of `height`, `tilt` (degrees), `half_length`, `half_height`, `centre_height`, `centre_offset`;
        its subject is `height`.

    Source: `middle_height_derivation`.

    >>> round(derivation().function("height")(
    ...     tilt=0, half_length=0.5, half_height=0.4, centre_height=0.3, centre_offset=0), 9)
    0.3
    """
    spoken_of = quantities(
        "height", "middle_height", "tilt", "half_length", "half_height", "centre_height", "centre_offset"
    )
    height, middle_height, tilt, half_length, half_height, centre_height, centre_offset = (
        quantity.symbol for quantity in spoken_of
    )
    return Derivation.start(
        "How high the centre of gravity stands when the case leans",
        spoken_of,
        equation(
            height,
            middle_height + (centre_height - half_height) * sympy.cos(tilt) - centre_offset * sympy.sin(tilt),
        ),
        "the centre of gravity rides on the case: h − b above the ellipse's centre along the middle line, "
        "which leaves that times cos θ of it upright, and u to the right of the line, which goes down by u "
        "sin θ when the case leans to the right",
        subject="height",
        example={
            height: 108 / sympy.sqrt(73),
            middle_height: 50 / sympy.sqrt(73),
            tilt: _EIGHT_TO_THREE,
            half_length: 10,
            half_height: 5,
            centre_height: 13,
            centre_offset: 2,
        },
    ).then(
        Substitute(middle_height, middle_height_derivation().result.rhs),
        "the ellipse's centre itself rises as it rolls on to its longer or its shorter half",
    )


@functools.cache
def lever_arm_derivation() -> Derivation:
    """Derive the lever arm of the weight about the touching point: what brings the case back, or throws it over.

    Returns
    -------
    Derivation
        Speaks of `lever_arm`, `tilt` (degrees), `half_length`, `half_height`, `middle_height`,
        `centre_height`, `centre_offset`; its subject is `lever_arm`.

    Source: `contact_derivation`; it is also how fast the height grows with the tilt, which is tested.

    >>> upright = {"tilt": 0, "half_length": 0.5, "half_height": 0.4, "centre_height": 0.3, "centre_offset": 0.02}
    >>> round(lever_arm_derivation().function("lever_arm")(**upright, middle_height=0.4), 12)
    -0.02
    """
    spoken_of = quantities(
        "lever_arm",
        "across",
        "depth",
        "tilt",
        "half_length",
        "half_height",
        "middle_height",
        "centre_height",
        "centre_offset",
    )
    (
        lever_arm,
        across,
        depth,
        tilt,
        half_length,
        half_height,
        middle_height,
        centre_height,
        centre_offset,
    ) = (quantity.symbol for quantity in spoken_of)
    return (
        Derivation.start(
            "How far the touching point lies beside the weight",
            spoken_of,
            equation(
                lever_arm,
                (across - centre_offset) * sympy.cos(tilt)
                - (depth + centre_height - half_height) * sympy.sin(tilt),
            ),
            "seen from the centre of gravity the touching point lies x − u along the rocker and d + h − b "
            "down the middle line; of the first the part with cos θ is level, and leaning to the right "
            "swings the second back to the left by sin θ of it. As long as the point lies on the low side "
            "of the weight, the weight turns the case back",
            subject="lever_arm",
            example={
                lever_arm: -4 / sympy.sqrt(73),
                across: 6,
                depth: 4,
                tilt: _EIGHT_TO_THREE,
                half_length: 10,
                half_height: 5,
                middle_height: 50 / sympy.sqrt(73),
                centre_height: 13,
                centre_offset: 2,
            },
        )
        .then(
            Substitute(across, across_of_a_touching_point()),
            "where the floor touches, the curve's slope is the tilt, and that tells x from d",
        )
        .then(
            Substitute(sympy.tan(tilt), sympy.sin(tilt) / sympy.cos(tilt)),
            "a tangent is a sine over a cosine",
        )
        .then(
            Substitute(
                depth,
                contact_derivation().solved_for("depth").rhs
                * middle_height_derivation().result.rhs
                / middle_height,
            ),
            "the depth, as derived; the root in it is the height p of the ellipse's centre",
        )
        .then(
            Expand(),
            "each part of the arm by itself: what the curve gives, and what the weight's height takes",
        )
    )


def lever_arm_in_full() -> sympy.Expr:
    """Return the lever arm with the height of the ellipse's centre written out.

    Returns
    -------
    sympy.Expr
        In `tilt`, `half_length`, `half_height`, `centre_height` and `centre_offset`.

    Source: `lever_arm_derivation`, `middle_height_derivation`.

    >>> symbols("middle_height")[0] in lever_arm_in_full().free_symbols
    False
    """
    return lever_arm_derivation().result.rhs.subs(
        symbols("middle_height")[0], middle_height_derivation().result.rhs
    )
