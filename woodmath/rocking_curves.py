"""The derived curves of a rocking case, compiled for quick and exact use: height, lever arm, fall, energy, push.

Nothing is derived by hand here. Each function is the result of a derivation, put together by sympy and
compiled; tilts are in radians, since these are the inside of `woodmath.rocking`.
"""

from __future__ import annotations

import functools
from collections.abc import Callable

import sympy

from woodmath.rocking_derivations import derivation, lever_arm_in_full, middle_height_derivation, symbols
from woodmath.rocking_fall_derivations import fall_derivation, quantities
from woodmath.rocking_heel import lever_over_heel_derivation, over_heel_derivation, push_derivation
from woodmath.rocking_heel import quantities as heel_quantities
from woodmath.rocking_swing_derivations import energy_derivation

Curve = Callable[..., float]
"""A compiled formula: numbers in the order of its arguments, a number out."""

SIZES = ("half_length", "half_height", "centre_height", "centre_offset")
"""What a case's curves depend on besides the tilt, in the order in which they take it; metres."""


def compiled(formula: sympy.Expr, arguments: tuple[sympy.Symbol, ...]) -> Curve:
    """Return a formula as a function of plain numbers.

    Parameters
    ----------
    formula : sympy expression
        In the arguments alone; angles in radians.
    arguments : tuple of sympy.Symbol
        In the order in which the function takes them.

    Returns
    -------
    callable
        From numbers to a number.

    >>> x = sympy.Symbol("x")
    >>> compiled(2 * x, (x,))(3.0)
    6.0
    """
    function: Curve = sympy.lambdify(arguments, formula, modules="math", cse=True)
    return function


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
    return compiled(derivation().result.rhs, symbols("tilt", *SIZES))


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
    return compiled(lever_arm_in_full(), symbols("tilt", *SIZES))


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
    return compiled(formula, (way, apart, *symbols(*SIZES)))


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
    return compiled(middle + sympy.diff(middle, tilt, 2), symbols("tilt", "half_length", "half_height"))


@functools.cache
def energy_curve() -> Curve:
    """Return the energy that lifts a weight: of mass, gravity and lift.

    Returns
    -------
    callable
        From kilograms, metres per second squared and metres to joules.

    Source: `woodmath.rocking_swing_derivations.energy_derivation`.

    >>> energy_curve()(10.0, 10.0, 0.5)
    50.0
    """
    return compiled(energy_derivation().result.rhs, symbols("mass", "gravity", "lift"))


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
    return compiled(over_heel_derivation().result.rhs, _of_the_heel("tilt", "out", "above"))


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
    return compiled(lever_over_heel_derivation().result.rhs, _of_the_heel("tilt", "out", "above"))


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
    return compiled(push_derivation().result.rhs, _of_the_heel(*names))


def _of_the_heel(*names: str) -> tuple[sympy.Symbol, ...]:
    return tuple(quantity.symbol for quantity in heel_quantities(*names))
