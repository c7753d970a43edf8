"""Why a case on rockers comes back, and how fast: from one touching point to the period, in symbols.

The rocker rolls on a hard level floor and does not slip. At a tilt the floor touches the ellipse where the
curve itself has that slope; from there follow how high everything stands, the lever arm that brings it back,
the energy of the tilt, and the time that a swing takes.
"""

from __future__ import annotations

import functools
from types import MappingProxyType

import sympy

from woodmath.derivation import Derivation, Limit, Quantity
from woodmath.ellipse_curve import angle_derivation
from woodmath.ellipse_derivations import derivation as ellipse_derivation
from woodmath.operations import (
    Divide,
    Expand,
    Factor,
    Isolate,
    Substitute,
    TakeLimit,
    TakeRoot,
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
            "c",
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


@functools.cache
def energy_derivation() -> Derivation:
    """Derive the energy that a tilt takes.

    Returns
    -------
    Derivation
        Speaks of `energy` (joules), `mass`, `gravity`, `lift`; its subject is `energy`.

    Source: work is weight times height.

    >>> energy_derivation().function("energy")(mass=10, gravity=10, lift=0.25)
    25.0
    """
    spoken_of = quantities("energy", "mass", "gravity", "height", "centre_height", "lift")
    energy, mass, gravity, height, centre_height, lift = (quantity.symbol for quantity in spoken_of)
    return (
        Derivation.start(
            "What a tilt costs",
            spoken_of,
            equation(energy, mass * gravity * height - mass * gravity * centre_height),
            "on a hard floor, without slipping, nothing is rubbed away: what is put in stands in the "
            "height of the weight, and the curve of heights is the hill that the case has to climb",
            subject="energy",
            example={energy: 40, mass: 4, gravity: 10, height: 13, centre_height: 12, lift: 1},
        )
        .then(
            Substitute(height, centre_height + lift),
            "the height at the tilt is that at rest and what it was lifted",
        )
        .then(Expand(), "the height at rest cancels: only the lift counts")
    )


@functools.cache
def damping_derivation() -> Derivation:
    """Derive the drag that takes a stated part of what would just stop a small swing from swinging.

    Returns
    -------
    Derivation
        Speaks of `drag`, `damping_ratio`, `heaviness`, `gravity`, `stiffness_margin`; its subject is `drag`.

    Source: critical damping, in every mechanics text (from memory).

    >>> damping_derivation().function("drag")(damping_ratio=0.5, heaviness=1, gravity=4, stiffness_margin=1)
    2.0
    """
    spoken_of = quantities("drag", "damping_ratio", "heaviness", "gravity", "stiffness_margin")
    drag, ratio, heaviness, gravity, margin = (quantity.symbol for quantity in spoken_of)
    return Derivation.start(
        "How much is rubbed away",
        spoken_of,
        equation(drag**2, ratio**2 * 4 * heaviness * gravity * margin),
        "a case creeps back without swinging through as soon as the square of its drag is four times its "
        "heaviness times what brings it back; the damping ratio says how large a part of that drag there is",
        subject="drag",
        example={drag: 2, ratio: sympy.Rational(1, 2), heaviness: 1, gravity: 4, margin: 1},
        limits=(Limit(margin > 0, "It does not swing, so there is nothing to damp"),),
    ).then(TakeRoot("neither a drag nor a ratio is less than nothing"), "the drag is wanted")


@functools.cache
def stiffness_derivation() -> Derivation:
    """Derive when an upright case comes back from a small tilt, and how strongly.

    Returns
    -------
    Derivation
        Speaks of `stiffness_margin`, `radius`, `centre_height`; its subject is `stiffness_margin`.

    Source: `lever_arm_derivation`, for a small tilt; the condition R > h is that of a dome on a plane in
    mathematics syllabus notes on the stability of equilibrium (read), with the floor's radius without end.

    >>> stiffness_derivation().result
    Eq(stiffness_margin, -centre_height + radius)
    """
    spoken_of = quantities(
        "stiffness_margin",
        "lever_arm",
        "tilt",
        "half_length",
        "half_height",
        "centre_height",
        "centre_offset",
        "radius",
    )
    margin, lever_arm, tilt, half_length, half_height, centre_height, centre_offset, radius = (
        quantity.symbol for quantity in spoken_of
    )
    return (
        Derivation.start(
            "Whether it comes back",
            spoken_of,
            equation(margin * tilt, lever_arm),
            "near upright the lever arm grows in step with the tilt, so many metres for each unit of it. "
            "If it grows to the low side, the weight turns the case back; if to the high side, it throws "
            "the case over",
            subject="stiffness_margin",
            example={
                margin: 27,
                lever_arm: 0,
                tilt: 0,
                half_length: 20,
                half_height: 10,
                centre_height: 13,
                centre_offset: 0,
                radius: 40,
            },
        )
        .then(
            Substitute(lever_arm, lever_arm_in_full().subs(centre_offset, 0)),
            "the lever arm at a tilt, as derived, for a weight on the middle line: u is nothing",
        )
        .then(Divide(tilt), "so much for each unit of tilt")
        .then(
            TakeLimit(tilt, sympy.Integer(0)),
            "let the tilt shrink: what is left is how the case begins to come back, or begins to fall",
        )
        .then(Expand(), "term by term: the ellipse's own half-height cancels")
        .then(
            Substitute(half_length**2, radius * half_height),
            "a² over b is the radius R at the bottom of the rocker, as derived on the page of the ellipse. "
            "So the touching point wanders out by R for each unit of tilt, and the weight by h: whichever "
            "is faster decides",
        )
    )


@functools.cache
def period_derivation() -> Derivation:
    """Derive the time of a small swing.

    Returns
    -------
    Derivation
        Speaks of `period`, `gyration_radius`, `centre_height`, `radius`, `gravity`; its subject is `period`.

    Source: energy at the middle and at the end of a swing; agrees with Routh, Lamb and Loney (from memory).

    >>> round(period_derivation().function("period")(
    ...     gyration_radius=0, centre_height=1, radius=2, gravity=9.80665), 4)
    2.0064
    """
    spoken_of = quantities(
        "period",
        "mass",
        "gyration_radius",
        "centre_height",
        "quickest",
        "gravity",
        "radius",
        "stiffness_margin",
        "small_tilt",
    )
    period, mass, gyration_radius, centre_height, quickest, gravity, radius, margin, small_tilt = (
        quantity.symbol for quantity in spoken_of
    )
    return (
        Derivation.start(
            "How long a small swing takes",
            spoken_of,
            equation(
                mass * (gyration_radius**2 + centre_height**2) * quickest**2 / 2,
                mass * gravity * margin * small_tilt**2 / 2,
            ),
            "in the middle of the swing all is motion, at its end all is height, and nothing is lost "
            "between. On the way out the lever arm grows from nothing to c A, so on average the weight "
            "works against half of that. In the middle the case turns about the touching point, which lies "
            "h below the centre of gravity: it turns as heavily as a mass at k from its own centre, and h² "
            "more because that centre moves",
            subject="period",
            example={
                period: 2 * sympy.pi,
                mass: 2,
                gyration_radius: 3,
                centre_height: 4,
                quickest: sympy.Rational(1, 10),
                gravity: 5,
                radius: 9,
                margin: 5,
                small_tilt: sympy.Rational(1, 10),
            },
            limits=(
                Limit(
                    centre_height < radius,
                    "It does not swing: the centre of gravity lies as high as the bottom is round, or "
                    "higher. Take a flatter bottom, with a radius greater than that height, or bring the "
                    "weight down",
                ),
            ),
            keeps={
                "gyration_radius": "it is a length",
                "centre_height": "it is a height over the floor, and so more than nothing",
            },
        )
        .then(
            Substitute(quickest, 2 * sympy.pi * small_tilt / period),
            "a small swing goes to and fro as the shadow of a point on a circle does: in the time T the "
            "point runs the whole way round, 2πA, and in the middle the shadow is as fast as the point",
        )
        .then(
            Divide(mass * small_tilt**2 / 2),
            "the mass goes, and the width of the swing too: a heavier case on the same rockers keeps the "
            "same time if its weight lies as it did",
        )
        .then(Substitute(margin, stiffness_derivation().result.rhs), "what brings it back is R less h")
        .then(Isolate(period**2), "the time is wanted, and it stands there as a square")
        .then(Factor(), "with R less h below the line, as it was")
        .then(
            TakeRoot("a time is more than nothing, and so is what stands under the root"),
            "so long does one swing take",
        )
    )


@functools.cache
def speed_derivation() -> Derivation:
    """Derive how fast the case turns at a tilt, from how far its centre of gravity has come down: no small swing.

    Returns
    -------
    Derivation
        Speaks of `turning` (radians a second), `gyration_radius`, `height`, `lever_arm`, `gravity`, `fall`;
        its subject is `turning`.

    Source: energy; the pivot moves, and the square of its distance with it (Turner and Turner, American
    Journal of Physics 78, 905, 2010, as used in a course note, read).

    >>> speed_derivation().function("turning")(gyration_radius=0.3, height=0.4, lever_arm=0, gravity=10, fall=0)
    0.0
    """
    spoken_of = quantities("turning", "mass", "gyration_radius", "height", "lever_arm", "gravity", "fall")
    turning, mass, gyration_radius, height, lever_arm, gravity, fall = (
        quantity.symbol for quantity in spoken_of
    )
    return (
        Derivation.start(
            "How fast it turns on its way",
            spoken_of,
            equation(
                mass * (gyration_radius**2 + height**2 + lever_arm**2) * turning**2 / 2, mass * gravity * fall
            ),
            "at each moment the case turns about the point that touches. From there to the centre of "
            "gravity it is H up and the lever arm aside; Pythagoras gives the square of that distance, and "
            "the pivot wanders with the tilt, so it is another at each moment. What the weight has come "
            "down is now motion",
            subject="turning",
            example={
                turning: sympy.Rational(1, 5),
                mass: 2,
                gyration_radius: 2,
                height: 4,
                lever_arm: 1,
                gravity: 10,
                fall: sympy.Rational(21, 500),
            },
            keeps={
                "gyration_radius": "it is a length",
                "height": "it is more than nothing",
                "lever_arm": "the touching point lies to the right",
            },
        )
        .then(Divide(mass / 2), "the mass goes")
        .then(Isolate(turning, keep="how fast, whichever way it goes"), "the speed is wanted")
    )
