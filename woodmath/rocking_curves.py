"""The derived curves of a rocking case, compiled for quick and exact use: height, lever arm, fall, turning.

Nothing is derived by hand here. Each function is the result of a derivation, put together by sympy and
compiled; tilts are in radians, since these are the inside of `woodmath.rocking`.
"""

from __future__ import annotations

import functools
from collections.abc import Callable
from types import MappingProxyType

import sympy

from woodmath.derivation import Derivation, Quantity
from woodmath.operations import Divide, Expand, Factor, Substitute, equation
from woodmath.quantities import worded
from woodmath.rocking_derivations import (
    contact_derivation,
    derivation,
    energy_derivation,
    lever_arm_in_full,
    middle_height_derivation,
    speed_derivation,
    symbols,
)
from woodmath.rocking_derivations import quantities as rocking_quantities
from woodmath.rocking_heel import lever_over_heel_derivation, over_heel_derivation, push_derivation
from woodmath.rocking_heel import quantities as heel_quantities

Curve = Callable[..., float]
"""A compiled formula: numbers in the order of its arguments, a number out."""

SIZES = ("half_length", "half_height", "centre_height", "centre_offset")
"""What a case's curves depend on besides the tilt, in the order in which they take it; metres."""

_WORDS = MappingProxyType(
    {
        "let_go": (r"\theta_0", "the tilt at which it was let go", "degrees", "real"),
        "half_way": ("m", "half way between the two tilts", "degrees", "real"),
        "half_apart": ("n", "half of what lies between the two tilts", "degrees", "real"),
        "middle_let_go": (
            "p_0",
            "height of the ellipse's centre at the tilt at which it was let go",
            "metres",
            "positive",
        ),
        "sinking": ("q", "how far the ellipse's centre has sunk since", "metres", "real"),
    }
)


def quantities(*names: str) -> tuple[Quantity, ...]:
    r"""Return the quantities that the fall speaks of; those of rocking keep their letters.

    Parameters
    ----------
    *names : str
        Their names, in the order in which a derivation introduces them.

    Returns
    -------
    tuple of Quantity
        One for each name.

    >>> [quantity.letter for quantity in quantities("let_go", "tilt")]
    ['\\theta_0', '\\theta']
    """
    return tuple(
        found
        for name in names
        for found in (worded(_WORDS, (name,)) if name in _WORDS else rocking_quantities(name))
    )


@functools.cache
def fall_derivation() -> Derivation:
    """Derive how far the centre of gravity comes down between two tilts, in a form that keeps its figures.

    Returns
    -------
    Derivation
        Speaks of `fall`, `half_way`, `half_apart` (degrees), `half_length`, `half_height`, `middle_let_go`,
        `middle_height`, `centre_height`, `centre_offset`; its subject is `fall`.

    Source: `woodmath.rocking_derivations.derivation`, at both tilts.

    >>> fall_derivation().function("fall")(half_way=10, half_apart=0, half_length=0.5, half_height=0.4,
    ...     middle_let_go=0.4, middle_height=0.4, centre_height=0.3, centre_offset=0)
    0.0
    """
    spoken_of = quantities(
        "fall",
        "let_go",
        "tilt",
        "half_way",
        "half_apart",
        "half_length",
        "half_height",
        "middle_let_go",
        "middle_height",
        "sinking",
        "centre_height",
        "centre_offset",
    )
    fall, let_go, tilt, way, apart, a, b, middle_let_go, middle, sinking, centre_height, offset = (
        quantity.symbol for quantity in spoken_of
    )
    sine, cosine = sympy.sin, sympy.cos

    def at(angle: sympy.Symbol, middle_height: sympy.Symbol) -> sympy.Expr:
        return derivation().result.rhs.subs(
            {middle_height_derivation().result.rhs: middle_height, tilt: angle}, simultaneous=True
        )

    steep = sympy.atan(sympy.Rational(3, 8))
    return (
        Derivation.start(
            "How far the weight comes down",
            spoken_of,
            equation(fall, at(let_go, middle_let_go) - at(tilt, middle)),
            "the height at the tilt at which it was let go, less the height where it is now",
            subject="fall",
            example={
                fall: 39 / sympy.sqrt(73) - 4,
                let_go: steep,
                tilt: 0,
                way: steep / 2,
                apart: steep / 2,
                a: 10,
                b: 5,
                middle_let_go: 50 / sympy.sqrt(73),
                middle: 5,
                sinking: 50 / sympy.sqrt(73) - 5,
                centre_height: 4,
                offset: 1,
            },
        )
        .then(
            Substitute(middle_let_go, middle + sinking),
            "two nearly equal heights are taken from one another, and a calculator loses their figures: "
            "name the difference",
        )
        .then(Expand(), "the height that both have in common cancels")
        .then(
            Substitute(sinking, _sinking().result.rhs),
            "sum times difference is the difference of the squares, and the squares have no roots",
        )
        .then(
            Substitute(let_go, way + apart), "the one tilt is the middle of the two and half their distance"
        )
        .then(Substitute(tilt, way - apart), "the other is the middle less half their distance")
        .then(
            Substitute(sine(way + apart), sine(way) * cosine(apart) + cosine(way) * sine(apart)),
            "the sine of two angles together",
        )
        .then(
            Substitute(sine(apart - way), sine(apart) * cosine(way) - cosine(apart) * sine(way)),
            "and of one less the other",
        )
        .then(
            Substitute(cosine(way + apart), cosine(way) * cosine(apart) - sine(way) * sine(apart)),
            "the cosine of two angles together",
        )
        .then(
            Substitute(cosine(way - apart), cosine(way) * cosine(apart) + sine(way) * sine(apart)),
            "and of one less the other",
        )
        .then(Expand(), "what the two tilts have in common cancels")
        .then(
            Factor(),
            "what is left is a product: when the tilts are alike it is nothing, exactly, and near that no "
            "figure is lost",
        )
    )


@functools.cache
def _sinking() -> Derivation:
    """Derive how far the ellipse's centre sinks between two tilts, without taking one root from another."""
    spoken_of = quantities(
        "sinking", "middle_let_go", "middle_height", "let_go", "tilt", "half_length", "half_height"
    )
    sinking, middle_let_go, middle, let_go, tilt, a, b = (quantity.symbol for quantity in spoken_of)
    square = middle_height_derivation().result.rhs ** 2
    return (
        Derivation.start(
            "How far the ellipse's centre sinks",
            spoken_of,
            equation(sinking * (middle_let_go + middle), square.subs(tilt, let_go) - square),
            "sum times difference is the difference of the squares, and the squares of the two heights "
            "have no roots",
            subject="sinking",
            example={
                sinking: 50 / sympy.sqrt(73) - 5,
                middle_let_go: 50 / sympy.sqrt(73),
                middle: 5,
                let_go: sympy.atan(sympy.Rational(3, 8)),
                tilt: 0,
                a: 10,
                b: 5,
            },
        )
        .then(Substitute(sympy.cos(let_go) ** 2, 1 - sympy.sin(let_go) ** 2), "Pythagoras")
        .then(Substitute(sympy.cos(tilt) ** 2, 1 - sympy.sin(tilt) ** 2), "and again")
        .then(Expand(), "b² cancels")
        .then(Factor(), "a square less a square is sum times difference")
        .then(Divide(middle_let_go + middle), "the difference alone")
        .then(Factor(), "over the sum of the two heights")
    )


def _compile(formula: sympy.Expr, arguments: tuple[sympy.Symbol, ...]) -> Curve:
    compiled: Curve = sympy.lambdify(arguments, formula, modules="math", cse=True)
    return compiled


@functools.cache
def height_curve() -> Curve:
    """Return the height of the centre of gravity over the floor: of a tilt in radians and the `SIZES`.

    Returns
    -------
    callable
        From `tilt` and the sizes to metres.

    Source: `woodmath.rocking_derivations.derivation`.

    >>> round(height_curve()(0.0, 0.5, 0.4, 0.3, 0.0), 12)
    0.3
    """
    return _compile(derivation().result.rhs, symbols("tilt", *SIZES))


@functools.cache
def lever_curve() -> Curve:
    """Return the lever arm of the weight about the touching point: of a tilt in radians and the `SIZES`.

    Returns
    -------
    callable
        From `tilt` and the sizes to metres; more than 0 where the touching point lies to the right of the
        weight.

    Source: `woodmath.rocking_derivations.lever_arm_derivation`.

    >>> lever_curve()(0.0, 0.5, 0.4, 0.3, 0.0)
    0.0
    """
    return _compile(lever_arm_in_full(), symbols("tilt", *SIZES))


@functools.cache
def fall_curve() -> Curve:
    """Return how far the weight comes down between two tilts: of their middle, half their distance and `SIZES`.

    Returns
    -------
    callable
        From both angles in radians and the sizes to metres.

    Source: `fall_derivation`.

    >>> fall_curve()(0.1, 0.0, 0.5, 0.4, 0.3, 0.0)
    0.0
    """
    names = ("half_way", "half_apart", "middle_let_go", "middle_height", "tilt")
    way, apart, middle_let_go, middle, tilt = (quantity.symbol for quantity in quantities(*names))
    height = middle_height_derivation().result.rhs
    formula = fall_derivation().result.rhs.subs(
        {middle_let_go: height.subs(tilt, way + apart), middle: height.subs(tilt, way - apart)}
    )
    return _compile(formula, (way, apart, *symbols(*SIZES)))


@functools.cache
def heaviness_curve() -> Curve:
    """Return how heavily the case turns about the touching point: of a tilt in radians, the `SIZES` and k.

    Returns
    -------
    callable
        The square of the gyration radius about the touching point, in square metres.

    Source: `woodmath.rocking_derivations.speed_derivation`.

    >>> round(heaviness_curve()(0.0, 0.5, 0.4, 0.3, 0.0, 0.4), 12)
    0.25
    """
    return _compile(_heaviness(), symbols("tilt", *SIZES, "gyration_radius"))


@functools.cache
def radius_curve() -> Curve:
    """Return how round the rocker is where it touches: of a tilt in radians and the ellipse's halves.

    Returns
    -------
    callable
        From `tilt`, half length and half height to metres.

    Source: a convex curve is as round as its height over the floor and the second slope of it together (from
    memory); at the bottom it is a² over b, which is tested.

    >>> round(radius_curve()(0.0, 5.0, 4.0), 9)
    6.25
    """
    (tilt,) = symbols("tilt")
    middle = middle_height_derivation().result.rhs
    return _compile(middle + sympy.diff(middle, tilt, 2), symbols("tilt", "half_length", "half_height"))


@functools.cache
def middle_curve() -> Curve:
    """Return the height of the ellipse's centre over the floor: of a tilt in radians and both halves.

    Returns
    -------
    callable
        From `tilt`, half length and half height to metres.

    Source: `woodmath.rocking_derivations.middle_height_derivation`.

    >>> round(middle_curve()(0.0, 5.0, 4.0), 9)
    4.0
    """
    return _compile(middle_height_derivation().result.rhs, symbols("tilt", "half_length", "half_height"))


@functools.cache
def contact_curve() -> Curve:
    """Return how far the touching point lies to the right of the ellipse's centre, level.

    Returns
    -------
    callable
        From `tilt` in radians, half length and half height to metres.

    Source: `woodmath.rocking_derivations.lever_arm_derivation`, for a weight in the ellipse's centre.

    >>> contact_curve()(0.0, 5.0, 4.0)
    0.0
    """
    centre_height, half_height, offset = symbols("centre_height", "half_height", "centre_offset")
    formula = lever_arm_in_full().subs({centre_height: half_height, offset: 0})
    return _compile(formula, symbols("tilt", "half_length", "half_height"))


@functools.cache
def depth_curve() -> Curve:
    """Return how deep below the ellipse's centre the floor touches, along the case's middle line.

    Returns
    -------
    callable
        From `tilt` in radians, half length and half height to metres.

    Source: `woodmath.rocking_derivations.contact_derivation`.

    >>> round(depth_curve()(0.0, 5.0, 4.0), 9)
    4.0
    """
    return _compile(contact_derivation().result.rhs, symbols("tilt", "half_length", "half_height"))


@functools.cache
def energy_curve() -> Curve:
    """Return the energy that lifts a weight: of mass, gravity and lift.

    Returns
    -------
    callable
        From kilograms, metres per second squared and metres to joules.

    Source: `woodmath.rocking_derivations.energy_derivation`.

    >>> energy_curve()(10.0, 10.0, 0.5)
    50.0
    """
    return _compile(energy_derivation().result.rhs, symbols("mass", "gravity", "lift"))


@functools.cache
def over_heel_curve() -> Curve:
    """Return how high a point stands when the case turns on its heel: of the tilt, and where it is upright.

    Returns
    -------
    callable
        From `tilt` in radians, out and above (metres from the heel) to metres over the floor.

    Source: `woodmath.rocking_heel.over_heel_derivation`.

    >>> over_heel_curve()(0.0, 0.3, 0.4)
    0.4
    """
    return _compile(over_heel_derivation().result.rhs, _of_the_heel("tilt", "out", "above"))


@functools.cache
def lever_over_heel_curve() -> Curve:
    """Return the lever arm of the weight about the heel: of the tilt, and where the weight is upright.

    Returns
    -------
    callable
        From `tilt` in radians, out and above (metres from the heel) to metres.

    Source: `woodmath.rocking_heel.lever_over_heel_derivation`.

    >>> lever_over_heel_curve()(0.0, 0.3, 0.4)
    0.3
    """
    return _compile(lever_over_heel_derivation().result.rhs, _of_the_heel("tilt", "out", "above"))


@functools.cache
def push_curve() -> Curve:
    """Return the level push that just holds a case: of the push's height, mass, gravity and lever arm.

    Returns
    -------
    callable
        From metres, > 0, kilograms, metres per second squared and metres to newtons.

    Source: `woodmath.rocking_heel.push_derivation`.

    >>> push_curve()(0.5, 10.0, 10.0, 0.25)
    50.0
    """
    names = ("push_height", "mass", "gravity", "lever_arm")
    return _compile(push_derivation().result.rhs, _of_the_heel(*names))


def _of_the_heel(*names: str) -> tuple[sympy.Symbol, ...]:
    return tuple(quantity.symbol for quantity in heel_quantities(*names))


@functools.cache
def turning_curve() -> Curve:
    """Return how fast the case turns: of a tilt in radians, what it came down, the `SIZES`, k and gravity.

    Returns
    -------
    callable
        From tilt, fall (metres), the sizes, k and gravity to radians a second.

    Source: `woodmath.rocking_derivations.speed_derivation`.

    >>> turning_curve()(0.0, 0.0, 0.5, 0.4, 0.3, 0.0, 0.4, 9.80665)
    0.0
    """
    height, lever_arm = symbols("height", "lever_arm")
    formula = speed_derivation().result.rhs.subs(
        {height: derivation().result.rhs, lever_arm: lever_arm_in_full()}, simultaneous=True
    )
    return _compile(formula, symbols("tilt", "fall", *SIZES, "gyration_radius", "gravity"))


@functools.cache
def moving_energy_curve() -> Curve:
    """Return the energy of a turning case that is in its motion: of tilt, turning, `SIZES`, k and mass.

    Returns
    -------
    callable
        From radians and radians a second to joules.

    Source: `woodmath.rocking_derivations.speed_derivation`, where it begins.

    >>> moving_energy_curve()(0.0, 0.0, 0.5, 0.4, 0.3, 0.0, 0.4, 10.0)
    0.0
    """
    height, lever_arm = symbols("height", "lever_arm")
    moving = (
        speed_derivation()
        .steps[0]
        .equation.lhs.subs(
            {height: derivation().result.rhs, lever_arm: lever_arm_in_full()}, simultaneous=True
        )
    )
    return _compile(moving, symbols("tilt", "turning", *SIZES, "gyration_radius", "mass"))


@functools.cache
def grip_curve() -> Curve:
    """Return what share of its weight's hold on the floor a turning case needs so as not to slip.

    Returns
    -------
    callable
        From tilt (radians), turning and its quickening (radians a second, and each second), the `SIZES` and
        gravity to the level push of the floor over its upward push; less than 0 for a push to the left.

    Source: Newton's second law for the centre of gravity, which goes H a unit of turning along the floor (the
    touching point is the pivot) and rises as `woodmath.rocking_derivations.derivation` says.

    >>> grip_curve()(0.0, 0.0, 0.0, 0.5, 0.4, 0.3, 0.0, 9.80665)
    0.0
    """
    tilt, turning, gravity = symbols("tilt", "turning", "gravity")
    quickening = sympy.Symbol("quickening", real=True)
    height = derivation().result.rhs
    rise = sympy.diff(height, tilt)
    along = height * quickening + rise * turning**2
    upward = rise * quickening + sympy.diff(rise, tilt) * turning**2
    return _compile(along / (gravity + upward), (tilt, turning, quickening, *symbols(*SIZES), gravity))


@functools.cache
def acceleration_curve() -> Curve:
    """Return how the turning quickens: the energy kept from one moment to the next, less what a drag takes.

    Returns
    -------
    callable
        From tilt (radians), turning (radians a second), the `SIZES`, k, gravity and drag (m² a second, for
        each kilogram) to radians a second, each second.

    Source: `woodmath.rocking_derivations.speed_derivation`, differentiated by the time. That the pivot moves
    gives a term with the square of the turning (Hu, European Journal of Physics 32, L51, 2011, read in
    outline).

    >>> acceleration_curve()(0.1, 0.0, 0.5, 0.4, 0.3, 0.0, 0.2, 9.80665, 0.0) < 0
    True
    """
    tilt, turning, gravity = symbols("tilt", "turning", "gravity")
    drag = sympy.Symbol("drag", nonnegative=True)
    heaviness, height = _heaviness(), derivation().result.rhs
    brought_back = gravity * sympy.diff(height, tilt) + sympy.diff(heaviness, tilt) * turning**2 / 2
    formula = -(brought_back + drag * turning) / heaviness
    return _compile(formula, (*symbols("tilt", "turning", *SIZES, "gyration_radius", "gravity"), drag))


@functools.cache
def _heaviness() -> sympy.Expr:
    """Return the square of the gyration radius about the touching point, as the rule of the speed has it."""
    height, lever_arm, turning, mass = symbols("height", "lever_arm", "turning", "mass")
    moving = speed_derivation().steps[0].equation.lhs
    return (2 * moving / (mass * turning**2)).subs(
        {height: derivation().result.rhs, lever_arm: lever_arm_in_full()}, simultaneous=True
    )
