"""The compiled curves of a case in motion: how fast it turns, how that quickens, how the floor pushes."""

from __future__ import annotations

import functools
from collections.abc import Callable

import sympy

from woodmath.rocking_curves import SIZES, Curve, compiled
from woodmath.rocking_derivations import derivation, lever_arm_in_full, symbols
from woodmath.rocking_swing_derivations import speed_derivation


@functools.cache
def turning_curve() -> Curve:
    """Return how fast the case turns: of a tilt in radians, what it came down, the `SIZES`, k and gravity.

    Returns
    -------
    callable
        From tilt, fall (metres), the sizes, k and gravity to radians a second.

    Source: `woodmath.rocking_swing_derivations.speed_derivation`.

    >>> turning_curve()(0.0, 0.0, 0.5, 0.4, 0.3, 0.0, 0.4, 9.80665)
    0.0
    """
    return compiled(
        _at_a_tilt(speed_derivation().result.rhs),
        symbols("tilt", "fall", *SIZES, "gyration_radius", "gravity"),
    )


@functools.cache
def moving_energy_curve() -> Curve:
    """Return the energy of a turning case that is in its motion: of tilt, turning, `SIZES`, k and mass.

    Returns
    -------
    callable
        From radians and radians a second to joules.

    Source: `woodmath.rocking_swing_derivations.speed_derivation`, where it begins.

    >>> moving_energy_curve()(0.0, 0.0, 0.5, 0.4, 0.3, 0.0, 0.4, 10.0)
    0.0
    """
    return compiled(
        _at_a_tilt(speed_derivation().steps[0].equation.lhs),
        symbols("tilt", "turning", *SIZES, "gyration_radius", "mass"),
    )


@functools.cache
def pushes_of_the_floor_curve() -> Callable[..., tuple[float, float]]:
    """Return the pushes of the floor on a turning case that does not slip: what they would be for each kilogram.

    Returns
    -------
    callable
        From tilt (radians), turning and its quickening (radians a second, and each second), the `SIZES` and
        gravity to the level push and the upward one, in newtons a kilogram; less than 0 for a push to the
        left, and for a floor that would have to pull.

    Source: Newton's second law for the centre of gravity, which goes H a unit of turning along the floor (the
    touching point is the pivot) and rises as `woodmath.rocking_derivations.derivation` says.

    >>> pushes_of_the_floor_curve()(0.0, 0.0, 0.0, 0.5, 0.4, 0.3, 0.0, 9.80665)
    (0.0, 9.80665)
    """
    tilt, turning, gravity = symbols("tilt", "turning", "gravity")
    quickening = sympy.Symbol("quickening", real=True)
    height = derivation().result.rhs
    rise = sympy.diff(height, tilt)
    along = height * quickening + rise * turning**2
    upward = rise * quickening + sympy.diff(rise, tilt) * turning**2
    arguments = (tilt, turning, quickening, *symbols(*SIZES), gravity)
    pushes: Callable[..., tuple[float, float]] = sympy.lambdify(
        arguments, (along, gravity + upward), modules="math", cse=True
    )
    return pushes


@functools.cache
def acceleration_curve() -> Curve:
    """Return how the turning quickens: the energy kept from one moment to the next, less what a drag takes.

    Returns
    -------
    callable
        From tilt (radians), turning (radians a second), the `SIZES`, k, gravity and drag (m² a second, for
        each kilogram) to radians a second, each second.

    Source: `woodmath.rocking_swing_derivations.speed_derivation`, differentiated by the time. That the pivot moves
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
    return compiled(formula, (*symbols("tilt", "turning", *SIZES, "gyration_radius", "gravity"), drag))


@functools.cache
def heaviness_curve() -> Curve:
    """Return how heavily the case turns about the touching point: of a tilt in radians, the `SIZES` and k.

    Returns
    -------
    callable
        The square of the gyration radius about the touching point, in square metres.

    Source: `woodmath.rocking_swing_derivations.speed_derivation`.

    >>> round(heaviness_curve()(0.0, 0.5, 0.4, 0.3, 0.0, 0.4), 12)
    0.25
    """
    return compiled(_heaviness(), symbols("tilt", *SIZES, "gyration_radius"))


@functools.cache
def _heaviness() -> sympy.Expr:
    """Return the square of the gyration radius about the touching point, as the rule of the speed has it."""
    turning, mass = symbols("turning", "mass")
    return _at_a_tilt(2 * speed_derivation().steps[0].equation.lhs / (mass * turning**2))


def _at_a_tilt(formula: sympy.Expr) -> sympy.Expr:
    """Return a formula in height and lever arm as one in the tilt and the `SIZES`."""
    height, lever_arm = symbols("height", "lever_arm")
    return formula.subs({height: derivation().result.rhs, lever_arm: lever_arm_in_full()}, simultaneous=True)
