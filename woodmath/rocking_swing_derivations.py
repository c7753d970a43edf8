"""How strongly a case comes back, how long it swings, how fast it turns: each derived from where its weight goes."""

from __future__ import annotations

import functools

import sympy

from woodmath.derivation import Derivation, Limit
from woodmath.operations import (
    Divide,
    Expand,
    Factor,
    Isolate,
    Substitute,
    TakeLimit,
    TakeRoot,
    equation,
)
from woodmath.rocking_derivations import lever_arm_in_full, quantities


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
            "between. On the way out the lever arm grows from nothing to ΔA, so on average the weight "
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
