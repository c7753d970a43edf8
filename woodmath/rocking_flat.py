"""Turning on an edge: the heel past the end of the curve, and a flat base, which is all edge from the start."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from typing import NoReturn

from woodmath.derivation import spoken
from woodmath.errors import ImpossibleShape
from woodmath.rocking_curves import lever_over_heel_curve, over_heel_curve, push_curve
from woodmath.rocking_derivations import GRAVITY
from woodmath.rocking_heel import tip_derivation, top_derivation
from woodmath.rocking_swing_derivations import energy_derivation

_PLACES = 32
_NARROWINGS = 48
_GOLDEN = (math.sqrt(5) - 1) / 2


def check_more_than_nothing(body: object, *names: str) -> None:
    """Raise unless each of a body's sizes is a plain number of more than 0.

    Parameters
    ----------
    body : object
        With these attributes.
    *names : str
        Theirs.

    Raises
    ------
    ImpossibleShape
        For the first that is none.

    >>> check_more_than_nothing(1.5, "real")
    """
    for name in names:
        value = getattr(body, name)
        if not (math.isfinite(value) and value > 0):
            raise ImpossibleShape(f"The {spoken(name)} is {value:g}, and it must be more than 0.")


def check_push_height(at_height: float) -> None:
    """Raise unless a push is above the floor.

    Parameters
    ----------
    at_height : float
        Over the floor, in metres.

    Raises
    ------
    ImpossibleShape
        If it is not more than 0.

    >>> check_push_height(0.3)
    """
    if not (math.isfinite(at_height) and at_height > 0):
        raise ImpossibleShape(
            f"A push at a height of {at_height:g} m was asked for. Push above the floor: give more than 0."
        )


def greatest(of: Callable[[float], float], low: float, high: float) -> float:
    """Return the greatest value of a smooth quantity between two places.

    Parameters
    ----------
    of : callable
        From a place to a number.
    low, high : float
        The two places.

    Returns
    -------
    float
        In the quantity's unit: the best of some places, and then of the narrowing room about it.

    >>> round(greatest(lambda x: x * (1 - x), 0.0, 1.0), 12)
    0.25
    """
    places = [low + (high - low) * place / _PLACES for place in range(_PLACES + 1)]
    values = [of(place) for place in places]
    best = max(range(_PLACES + 1), key=values.__getitem__)
    left, right = places[max(0, best - 1)], places[min(_PLACES, best + 1)]
    first, second = right - _GOLDEN * (right - left), left + _GOLDEN * (right - left)
    one, other = of(first), of(second)
    for _ in range(_NARROWINGS):
        # Of the two places one serves again: that is what the golden section is for.
        if one < other:
            left, first, one = first, second, other
            second = left + _GOLDEN * (right - left)
            other = of(second)
        else:
            right, second, other = second, first, one
            first = right - _GOLDEN * (right - left)
            one = of(first)
    return max(values[best], of((left + right) / 2))


def over_the_heel(out: float, above: float) -> tuple[float, float]:
    """Return the tilt at which a case that turns on its heel goes over, and how high its weight is then.

    Parameters
    ----------
    out : float
        From the centre of gravity out to the heel, along the rocker, > 0, in metres.
    above : float
        From the heel up to the centre of gravity; less than 0 where it lies lower.

    Returns
    -------
    (float, float)
        In radians from upright, and in metres over the heel.

    Source: `tip_derivation`, `top_derivation`.

    >>> tilt, top = over_the_heel(out=0.3, above=0.4)
    >>> round(math.degrees(tilt), 3), top
    (36.87, 0.5)
    """
    tip = tip_derivation().function("tip_angle")(out=out, above=above)
    return math.radians(tip), top_derivation().function("top")(out=out, above=above)


@dataclass(frozen=True)
class OnTheHeel:
    """A case that turns on its heel and is pushed.

    Parameters
    ----------
    mass : float
        In kilograms, > 0.
    out, above : float
        From the heel to the centre of gravity: in along the rocker, and up, in metres.
    push_out, push_above : float
        From the heel to the place that is pushed, likewise.

    >>> round(OnTheHeel(10.0, 0.3, 0.4, 0.3, 0.6).push_at(0.0), 3)
    49.033
    """

    mass: float
    out: float
    above: float
    push_out: float
    push_above: float

    def push_at(self, tilt: float) -> float:
        """Return the level push that just holds it at a tilt in radians, in newtons; 0 where none is possible."""
        high = over_heel_curve()(tilt, self.push_out, self.push_above)
        if high <= 0:
            return 0.0
        arm = lever_over_heel_curve()(tilt, self.out, self.above)
        return push_curve()(high, self.mass, GRAVITY, arm)

    def greatest_push(self, start: float) -> float:
        """Return the greatest push from a tilt (in radians) on until it goes over, in newtons."""
        tip, _ = over_the_heel(self.out, self.above)
        return greatest(self.push_at, start, max(start, tip))


@dataclass(frozen=True)
class FlatBase:
    """A case that stands on a flat base, for comparison: it does not rock, it only tips.

    Parameters
    ----------
    mass : float
        In kilograms, > 0.
    centre_height : float
        Of its centre of gravity over the floor, > 0, in metres.
    half_width : float
        From its middle to the edge over which it tips, > 0, in metres.

    Raises
    ------
    ImpossibleShape
        If one of them is not more than 0.

    Source: `woodmath.rocking_heel`; the edge is a heel that is reached at once.

    >>> FlatBase(10.0, 0.25, 0.25).tip_angle
    45.0
    """

    mass: float
    centre_height: float
    half_width: float

    def __post_init__(self) -> None:
        check_more_than_nothing(self, "mass", "centre_height", "half_width")

    @property
    def is_stable(self) -> bool:
        """Always: a flat base comes back from any tilt short of going over."""
        return True

    @property
    def tip_angle(self) -> float:
        """Tilt at which it goes over, in degrees."""
        return math.degrees(over_the_heel(self.half_width, self.centre_height)[0])

    @property
    def barrier(self) -> float:
        """Energy to bring it over, in joules."""
        _, top = over_the_heel(self.half_width, self.centre_height)
        return energy_derivation().function("energy")(
            mass=self.mass, gravity=GRAVITY, lift=top - self.centre_height
        )

    def push(self, at_height: float) -> float:
        """Greatest level push that is needed to tip it slowly.

        Parameters
        ----------
        at_height : float
            How high over the floor it is pushed, on its middle line, > 0, in metres.

        Returns
        -------
        float
            In newtons. Without slip: the floor must hold as much.

        Raises
        ------
        ImpossibleShape
            If it is not pushed above the floor.

        Source: `woodmath.rocking_heel.push_derivation`.

        >>> round(FlatBase(10.0, 0.25, 0.25).push(0.5), 3)
        49.033
        """
        check_push_height(at_height)
        edge = OnTheHeel(self.mass, self.half_width, self.centre_height, self.half_width, at_height)
        return edge.greatest_push(0.0)

    def period(self, amplitude: float = 0.0) -> NoReturn:
        """Refuse: a flat base has no time of its own.

        Parameters
        ----------
        amplitude : float
            Whatever is asked for.

        Raises
        ------
        ImpossibleShape
            Always, with the reason.

        >>> FlatBase(10.0, 0.25, 0.25).period()  # doctest: +ELLIPSIS
        Traceback (most recent call last):
        woodmath.errors.ImpossibleShape: A flat base does not rock: ...
        """
        raise ImpossibleShape(
            "A flat base does not rock: it stands on its whole width and knocks from edge to edge when it "
            "is let go, losing speed at each knock. Ask a case on rockers for its period."
        )
