"""The wood in one stretch of a turning: a straight run, half a bead, half a cove.

Each is made of thin discs about the axis. How wide a disc is at its place says what the stretch is; sympy sums the
discs once for each kind, in symbols, and the sum is compiled.
"""

from __future__ import annotations

import functools
from collections.abc import Callable

import sympy

from woodmath.ellipse_derivations import derivation as ellipse_derivation

STRAIGHT, ROUND, HOLLOW = "straight", "round", "hollow"
RUNS = (STRAIGHT, ROUND, HOLLOW)
"""How a turning goes on from one station to the next: a cylinder or a taper, half a bead, half a cove."""

_LARGE, _SMALL, _LENGTH, _SHARE = sympy.symbols("large small length share", positive=True)


@functools.cache
def radius_formula(run: str) -> sympy.Expr:
    """Return the radius at a share of a stretch, from its larger end, in symbols.

    Parameters
    ----------
    run : {"straight", "round", "hollow"}
        A taper; a convex quarter of an ellipse, level with the axis at the larger end; a concave one, level with the
        axis at the smaller end.

    Returns
    -------
    sympy expression
        In `large` and `small`, the radii at the ends, and `share`, 0 at the larger end and 1 at the smaller.

    Source: the equation of the ellipse, `woodmath.ellipse_derivations.derivation`, solved for the height in a
    quarter as long as the stretch and as high as its two radii differ.

    >>> radius_formula("straight")
    large - share*(large - small)
    """
    if run == ROUND:
        return _SMALL + _quarter()
    if run == HOLLOW:
        return _LARGE - _quarter().subs(_SHARE, 1 - _SHARE)
    return _LARGE - (_LARGE - _SMALL) * _SHARE


@functools.cache
def _quarter() -> sympy.Expr:
    """Return how high a quarter of an ellipse is, 1 long, as high as the two ends differ, at a share of its length."""
    ellipse = ellipse_derivation()
    # The derivation speaks of the lower half, where the height is less than nothing.
    return -ellipse.solved_for("up").rhs.subs(
        {
            ellipse.quantity("half_length").symbol: 1,
            ellipse.quantity("half_height").symbol: _LARGE - _SMALL,
            ellipse.quantity("across").symbol: _SHARE,
        }
    )


@functools.cache
def volume_formula(run: str) -> sympy.Expr:
    """Return the volume of a stretch in symbols; sympy carries the integral out, once for each kind.

    Parameters
    ----------
    run : {"straight", "round", "hollow"}
        As for `radius_formula`.

    Returns
    -------
    sympy expression
        In `large`, `small` and `length`.

    Source: the sum of thin discs about the axis.

    >>> volume_formula("straight").factor()
    pi*length*(large**2 + large*small + small**2)/3
    """
    # Counted from the end where the curve is level, the sum is the same, and the share is the sine of a turn.
    radius = radius_formula(run).subs(_SHARE, 1 - _SHARE) if run == HOLLOW else radius_formula(run)
    if run == STRAIGHT:
        return sympy.expand(_LENGTH * sympy.integrate(sympy.expand(sympy.pi * radius**2), (_SHARE, 0, 1)))
    turn = sympy.Symbol("turn", positive=True)
    round_it = radius.subs(sympy.sqrt(1 - _SHARE**2), sympy.cos(turn))
    disc = sympy.expand(sympy.pi * round_it**2 * sympy.diff(sympy.sin(turn), turn))
    return sympy.expand(_LENGTH * sympy.integrate(disc, (turn, 0, sympy.pi / 2)))


@functools.cache
def _compiled_volume(run: str) -> Callable[[float, float, float], float]:
    formula: Callable[[float, float, float], float] = sympy.lambdify(
        (_LARGE, _SMALL, _LENGTH), volume_formula(run), "math"
    )
    return formula


@functools.cache
def _compiled_radius(run: str) -> Callable[[float, float, float], float]:
    formula: Callable[[float, float, float], float] = sympy.lambdify(
        (_LARGE, _SMALL, _SHARE), radius_formula(run), "math"
    )
    return formula


def stretch_radius(run: str, diameter: float, next_diameter: float, share: float) -> float:
    """Radius at a share of the way along one stretch of a turning.

    Parameters
    ----------
    run : {"straight", "round", "hollow"}
        As for `radius_formula`.
    diameter, next_diameter : float
        At its two ends, > 0, in any length unit.
    share : float
        From 0 at the first end to 1 at the second.

    Returns
    -------
    float
        In the same unit.

    Source: `radius_formula`.

    >>> stretch_radius("round", 2.0, 0.0, 0.6)
    0.8
    """
    if diameter == next_diameter:
        return diameter / 2
    small, large = sorted((diameter / 2, next_diameter / 2))
    return _compiled_radius(run)(large, small, share if diameter > next_diameter else 1 - share)


def stretch_volume(run: str, diameter: float, next_diameter: float, length: float) -> float:
    """Volume of one stretch of a turning.

    Parameters
    ----------
    run : {"straight", "round", "hollow"}
        As for `radius_formula`.
    diameter, next_diameter : float
        At its two ends, > 0, in any length unit; which is which makes no difference.
    length : float
        Along the axis, 0 or more, in the same unit.

    Returns
    -------
    float
        In the cubed unit.

    Source: `volume_formula`.

    >>> round(stretch_volume("round", 2.0, 1e-9, 1.0), 6)
    2.094395
    """
    small, large = sorted((diameter / 2, next_diameter / 2))
    return _compiled_volume(run)(large, small, length)
