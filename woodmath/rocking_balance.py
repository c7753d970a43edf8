"""Where a case on its curve lies still, and how far it may lean before it no longer comes back.

All on the curve itself: what happens past the heel is `woodmath.rocking_heel`. Tilts are in radians here.
"""

from __future__ import annotations

import functools
import math
from collections.abc import Callable
from dataclasses import dataclass

from woodmath.ellipse import Ellipse
from woodmath.errors import ImpossibleShape
from woodmath.rocking_curves import fall_curve, height_curve, lever_curve, radius_curve
from woodmath.rocking_heel import balance_derivation
from woodmath.rocking_swing import Sizes
from woodmath.rocking_swing_derivations import stiffness_derivation

_PLACES = 120
_HALVINGS = 64


@dataclass(frozen=True)
class Balance:
    """What a case's curve of heights says.

    Parameters
    ----------
    heel : float
        The tilt at which the touching point has come to the heel.
    rest : float or None
        Where it lies still by itself; None where it does so nowhere on its curve.
    low, high : float
        To the left and to the right of its rest: where it stands balanced, or else the heel.

    >>> Balance(heel=0.5, rest=0.0, low=-0.5, high=0.4).high
    0.4
    """

    heel: float
    rest: float | None
    low: float
    high: float


@functools.lru_cache(maxsize=64)
def balance_of(sizes: Sizes, heel: float) -> Balance:
    """Find where a case lies, and its bounds to both sides.

    Parameters
    ----------
    sizes : (float, float, float, float)
        Half length, half height, centre height and offset, in metres.
    heel : float
        The tilt at which the touching point has come to the heel, in radians.

    Returns
    -------
    Balance
        In radians.

    Source: `woodmath.rocking_derivations.lever_arm_derivation`; it lies where the arm is nothing and grows.

    >>> balance_of((0.5, 0.25, 0.2, 0.0), 0.5)
    Balance(heel=0.5, rest=0.0, low=-0.5, high=0.5)
    """
    *_, offset = sizes
    found = _middle_balances(sizes, heel) if offset == 0 else _balances(sizes, heel)
    # A weight far beside its rockers would come to hang below the floor: there is no lying so.
    over_the_floor = [tilt for tilt in found if height_curve()(tilt, *sizes) > 0]
    lying = [
        tilt
        for tilt in over_the_floor
        if _margin(sizes, tilt) > 0 or (tilt == 0 and is_upright_at_rest(sizes))
    ]
    downhill = math.copysign(1.0, -lever_curve()(0.0, *sizes)) if offset else 1.0
    ahead = [tilt for tilt in lying if tilt * downhill >= 0]
    if not ahead:
        return Balance(heel, None, 0.0, 0.0)
    rest = min(ahead, key=abs)
    return Balance(
        heel,
        rest,
        max((tilt for tilt in found if tilt < rest), default=-heel),
        min((tilt for tilt in found if tilt > rest), default=heel),
    )


def is_upright_at_rest(sizes: Sizes) -> bool:
    """Tell whether a case with its weight on the middle line stands upright by itself.

    Parameters
    ----------
    sizes : (float, float, float, float)
        Half length, half height, centre height and offset, in metres.

    Returns
    -------
    bool
        Where R and h are alike, a tall ellipse still stands and a flat one does not; a circle is indifferent.

    Source: `stiffness_derivation`; at R = h the next term decides, whose sign is that of b less a.

    >>> is_upright_at_rest((1.0, 2.0, 0.5, 0.0)), is_upright_at_rest((2.0, 1.0, 4.0, 0.0))
    (True, False)
    """
    half_length, half_height, *_ = sizes
    margin = _margin(sizes, 0.0)
    return margin > 0 or (margin == 0 and half_length < half_height)


def margin_at(sizes: Sizes, tilt: float) -> float:
    """Return how round the curve is where it touches, less how high the weight is: R less h at that tilt.

    Parameters
    ----------
    sizes : (float, float, float, float)
        Half length, half height, centre height and offset, in metres.
    tilt : float
        In radians.

    Returns
    -------
    float
        In metres; more than 0 where a small tilt more brings it back.

    Source: `stiffness_derivation`; at another tilt the curve's roundness there takes the place of the
    bottom's.

    >>> round(margin_at((5.0, 4.0, 1.0, 0.0), 0.0), 9)
    5.25
    """
    return _margin(sizes, tilt)


def _margin(sizes: Sizes, tilt: float) -> float:
    half_length, half_height, *_ = sizes
    return stiffness_derivation().function("stiffness_margin")(
        radius=radius_at(half_length, half_height, tilt), centre_height=height_curve()(tilt, *sizes)
    )


def radius_at(half_length: float, half_height: float, tilt: float) -> float:
    """Return how round the rocker is where it touches at a tilt.

    Parameters
    ----------
    half_length, half_height : float
        Of the ellipse, > 0, in metres.
    tilt : float
        In radians.

    Returns
    -------
    float
        In metres; at the bottom exactly what the ellipse's own rule says.

    Source: `woodmath.rocking_curves.radius_curve`, `woodmath.ellipse.bottom_radius_derivation`.

    >>> radius_at(5.0, 4.0, 0.0)
    6.25
    """
    if tilt == 0:
        return Ellipse(half_length, half_height).radius_at_bottom
    return radius_curve()(tilt, half_length, half_height)


def _middle_balances(sizes: Sizes, heel: float) -> list[float]:
    """Return where a case with its weight on the middle line is balanced: upright, perhaps once on either side."""
    half_length, half_height, centre_height, _ = sizes
    if half_length == half_height or centre_height == half_height:
        return [0.0]
    if (half_length > half_height) != (centre_height > half_height):
        return [0.0]
    try:
        aside = math.radians(
            abs(
                balance_derivation().function("tilt")(
                    half_length=half_length, half_height=half_height, centre_height=centre_height
                )
            )
        )
    except ImpossibleShape:
        return [0.0]
    return [-aside, 0.0, aside] if 0 < aside < heel else [0.0]


def _balances(sizes: Sizes, heel: float) -> list[float]:
    lever = lever_curve()
    places = [heel * (2 * place / _PLACES - 1) for place in range(_PLACES + 1)]
    arms = [lever(tilt, *sizes) for tilt in places]
    return [
        place_between(lambda tilt: lever(tilt, *sizes), before, after)
        for before, after, first, second in zip(places, places[1:], arms, arms[1:], strict=False)
        if (first < 0) != (second < 0)
    ]


def place_between(arm: Callable[[float], float], low: float, high: float) -> float:
    """Return where a quantity that changes its sign between two places is nothing.

    Parameters
    ----------
    arm : callable
        From a place to a number.
    low, high : float
        Two places at which its signs differ.

    Returns
    -------
    float
        To the last figure, by halving.

    >>> round(place_between(lambda x: x - 0.25, 0.0, 1.0), 12)
    0.25
    """
    below = arm(low) < 0
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        if (arm(middle) < 0) == below:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def other_side(sizes: Sizes, balance: Balance, tilt: float) -> float | None:
    """Return the tilt on the other side of a case's rest at which its weight is as high.

    Parameters
    ----------
    sizes : (float, float, float, float)
        Half length, half height, centre height and offset, in metres.
    balance : Balance
        Of that case, with a rest.
    tilt : float
        In radians.

    Returns
    -------
    float or None
        In radians; None where it would roll past its heel there, or over.

    Source: `woodmath.rocking_fall_derivations.fall_derivation`.

    >>> other_side((0.5, 0.25, 0.2, 0.0), Balance(0.5, 0.0, -0.5, 0.5), 0.25)
    -0.25
    """
    if balance.rest is None:
        return None
    if sizes[3] == 0 and balance.rest == 0:
        return -tilt if balance.low <= -tilt <= balance.high else None
    far = balance.low if tilt > balance.rest else balance.high

    def left(other: float) -> float:
        return _fallen(sizes, tilt, other)

    if left(far) > 0:
        return None
    return place_between(left, balance.rest, far)


def _fallen(sizes: Sizes, start: float, end: float) -> float:
    apart = (start - end) / 2
    return fall_curve()(end + apart, apart, *sizes)
