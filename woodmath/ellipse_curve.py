"""How wide, how high, how steep and how round the ellipse is at a place: each derived from its equation.

A straight edge that touches the curve, and the circle that fits its bottom, are found by letting two points
close up: no calculus, only what is left when a short length shrinks to nothing.
"""

from __future__ import annotations

import functools

import sympy

from woodmath.derivation import Derivation
from woodmath.ellipse_derivations import LOWER_RIGHT, derivation, quantities
from woodmath.operations import (
    Divide,
    Expand,
    Gather,
    Isolate,
    MultiplyAboveAndBelow,
    Substitute,
    TakeLimit,
    equation,
)

_LOWER_HALF = "the rocker is the lower half, no higher than the centre"


def _above_the_floor(title: str, subject: str, kept: tuple[str, ...]) -> Derivation:
    """Begin with the ellipse's equation, its heights counted from the floor that it stands on."""
    spoken_of = quantities("across", "up", "height", "half_length", "half_height")
    across, up, height, half_length, half_height = (quantity.symbol for quantity in spoken_of)
    reasons = {**dict(derivation().keeps), "height": _LOWER_HALF}
    return Derivation.start(
        title,
        spoken_of,
        derivation().result,
        "the ellipse's equation, as derived from the string",
        subject=subject,
        example={
            across: 3,
            up: sympy.Rational(-16, 5),
            height: sympy.Rational(4, 5),
            half_length: 5,
            half_height: 4,
        },
        limits=derivation().limits,
        keeps={name: reasons[name] for name in kept},
    ).then(Substitute(up, height - half_height), "the lowest point, on the floor, lies b below the centre")


@functools.cache
def width_derivation() -> Derivation:
    """Derive how wide the ellipse is at a height above the floor that it stands on.

    Returns
    -------
    Derivation
        Speaks of `across`, `height`, `half_length`, `half_height`; its result gives the square of across.

    Source: the ellipse's equation, as derived.

    >>> round(width_derivation().function("across")(height=0.8, half_length=5, half_height=4), 9)
    3.0
    """
    begun = _above_the_floor(
        "How wide the ellipse is at a height",
        "across",
        kept=("across", "height", "half_length", "half_height"),
    )
    across = begun.quantity("across").symbol
    return begun.then(Isolate(across**2), "the width is wanted").then(
        Expand(), "then the part that matters near the floor is seen by itself"
    )


@functools.cache
def height_derivation() -> Derivation:
    """Derive how high the ellipse's lower half stands above the floor, in a form that keeps its figures.

    Returns
    -------
    Derivation
        Speaks of `height`, `across`, `half_length`, `half_height`; its subject is `height`.

    Source: the ellipse's equation, as derived.

    >>> height_derivation().function("height")(across=3, half_length=5, half_height=4)
    0.8
    """
    begun = _above_the_floor(
        "How high the rocker's curve stands above the floor", "height", kept=("across", "half_length")
    )
    across, height, half_length = (
        begun.quantity(name).symbol for name in ("across", "height", "half_length")
    )
    return begun.then(
        Isolate(height, keep=_LOWER_HALF),
        "the height is wanted",
    ).then(
        MultiplyAboveAndBelow(half_length + sympy.sqrt(half_length**2 - across**2)),
        "near the bottom this is the small difference of two nearly equal lengths, and a calculator "
        "loses it; sum times difference leaves a plain x² above, and only a sum below",
    )


@functools.cache
def angle_derivation() -> Derivation:
    """Derive the slope of the ellipse's lower half from two points of it that close up.

    Returns
    -------
    Derivation
        Speaks of `angle` (degrees), `across`, `half_length`, `half_height`; its subject is `angle`.

    Source: the ellipse's equation, as derived; agrees with the tangent of the handbooks.

    >>> round(angle_derivation().function("angle")(across=3, half_length=5, half_height=4), 4)
    30.9638
    """
    spoken_of = quantities("across", "up", "run", "slope", "angle", "half_length", "half_height")
    across, up, run, slope, angle, half_length, half_height = (quantity.symbol for quantity in spoken_of)
    standard = derivation()
    return (
        Derivation.start(
            "How steep the rocker's curve is",
            spoken_of,
            standard.result.subs({across: across + run, up: up + slope * run}, simultaneous=True),
            "take two points of the curve, the second a short run r further along; it lies higher by the "
            "slope m times the run, and being on the ellipse it fulfils the ellipse's equation",
            subject="angle",
            example={
                across: 6,
                up: -4,
                run: 0,
                slope: sympy.Rational(3, 8),
                angle: sympy.atan(sympy.Rational(3, 8)),
                half_length: 10,
                half_height: 5,
            },
            limits=standard.limits,
            keeps={"half_length": LOWER_RIGHT},
        )
        .then(Expand(), "what the first point has by itself can then be seen")
        .then(
            Substitute(across**2, standard_width_squared()),
            "the first point lies on the ellipse too, so x² is known from y",
        )
        .then(
            Gather((slope,)),
            "what belongs to the first point alone cancels; what has the slope in it is kept on the left",
        )
        .then(Divide(run), "every term that is left has the run in it, and the run is not nothing")
        .then(
            TakeLimit(run, sympy.Integer(0)),
            "bring the second point as near to the first as you like: the line through both turns into the "
            "straight edge that touches the curve",
        )
        .then(Isolate(slope), "the slope is wanted")
        .then(Substitute(up, standard.solved_for("up").rhs), f"{standard.why_kept('up')}; y is known from x")
        .then(Substitute(slope, sympy.tan(angle)), "rise over run is the tangent of the angle from level")
        .then(
            Isolate(angle),
            "the angle is wanted: the one between upright down and upright up that has this tangent",
        )
    )


def standard_width_squared() -> sympy.Expr:
    """Return x² as the ellipse's equation gives it from y.

    Returns
    -------
    sympy.Expr
        In `up`, `half_length` and `half_height`.

    >>> standard_width_squared()
    half_length**2 - half_length**2*up**2/half_height**2
    """
    across = derivation().quantity("across").symbol
    return derivation().then(Isolate(across**2), "x² is wanted").then(Expand(), "term by term").result.rhs


@functools.cache
def bottom_radius_derivation() -> Derivation:
    """Derive how round the ellipse is at its lowest point, without calculus.

    Returns
    -------
    Derivation
        Speaks of `radius`, `half_length`, `half_height`; its subject is `radius`.

    Source: two curves on one floor; agrees with the radius of curvature of the handbooks (from memory).

    >>> bottom_radius_derivation().function("radius")(half_length=5, half_height=4)
    6.25
    """
    spoken_of = quantities("across", "height", "radius", "half_length", "half_height")
    across, height, radius, half_length, half_height = (quantity.symbol for quantity in spoken_of)
    return (
        Derivation.start(
            "How round the bottom is",
            spoken_of,
            equation(across**2 + (height - radius) ** 2, radius**2),
            "a circle stands on the same floor, touching it at the same place: its centre is one radius "
            "up, and Pythagoras gives every point of it",
            subject="radius",
            example={across: 0, height: 0, radius: sympy.Rational(25, 4), half_length: 5, half_height: 4},
            keeps={"half_length": "it is a length"},
        )
        .then(Expand(), "R² stands on both sides then")
        .then(Isolate(across**2), "how wide the circle is at a height")
        .then(
            Substitute(across**2, width_derivation().result.rhs),
            "choose the circle that goes through the ellipse's own point at this height: there both are "
            "equally wide",
        )
        .then(Divide(height), "every term has the height in it, and the height is not nothing yet")
        .then(
            TakeLimit(height, sympy.Integer(0)),
            "the nearer to the floor the two meet, the better the circle fits the bottom; let the height "
            "shrink, and what is left is the circle that fits best",
        )
        .then(Isolate(radius), "the radius is wanted: not a, not b, but a times a over b")
    )
