"""How a case rocks, moment by moment: tilt, place and height against the time, with drag or without.

The equation of motion is followed step by step: from the last twelve steps the next is foretold, and with
what is found there it is put right (Adams, Bashforth and Moulton). Whether the steps were short enough is
judged by the energy: what there was must be there still, or have been taken by the drag.
"""

from __future__ import annotations

import functools
import math
from collections import deque
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from operator import mul

from woodmath.errors import ImpossibleShape
from woodmath.rocking_curves import energy_curve, fall_curve, height_curve
from woodmath.rocking_motion_curves import acceleration_curve, moving_energy_curve
from woodmath.rocking_swing import Sizes

PICTURES_A_SECOND = 60
_BACK = 12
"""How many steps back the next one is foretold from."""
_STEPS_A_SWING = 96
_KEPT = 5e-10
"""How much of the energy may be lost to the length of the steps."""
_ROUNDED = 1e-15
"""How much of a height may be lost to rounding, for each unit of tilt."""
_NEXT_TO_NOTHING = 1e-9
_MOST_TRIES = 20
_LONGEST = 600.0
"""Seconds: ten minutes of rocking are thirty thousand pictures."""


@dataclass(frozen=True)
class Motion:
    """A case that was let go, moment by moment.

    Parameters
    ----------
    times : tuple of float
        Evenly spaced from 0 on, in seconds.
    tilts, turnings : tuple of float
        In degrees from upright and in degrees a second, more than 0 to the right.
    positions, heights : tuple of float
        Of the centre of gravity: along the floor from where it stands upright, and over the floor, in metres.

    >>> Motion((0.0,), (5.0,), (0.0,), (0.02,), (0.3,)).seconds
    0.0
    """

    times: tuple[float, ...]
    tilts: tuple[float, ...]
    turnings: tuple[float, ...]
    positions: tuple[float, ...]
    heights: tuple[float, ...]

    @property
    def seconds(self) -> float:
        """How long it was watched."""
        return self.times[-1]


@dataclass(frozen=True)
class Swinging:
    """What a motion depends on.

    Parameters
    ----------
    sizes : (float, float, float, float)
        Half length, half height, centre height and offset, in metres.
    gyration_radius : float
        In metres, 0 or more.
    rest : float
        Where it lies, in radians.
    drag : float
        What slows it, for each kilogram and each radian a second, 0 or more, in square metres a second.
    gravity : float
        In metres per second squared.
    small_period : float
        Of a small swing, in seconds, > 0.

    >>> Swinging((1.0, 1.0, 0.5, 0.0), 0.5, 0.0, 0.0, 9.80665, 2.0).drag
    0.0
    """

    sizes: Sizes
    gyration_radius: float
    rest: float
    drag: float
    gravity: float
    small_period: float


def follow(
    case: Swinging, tilt: float, duration: float, pictures: int = 0, other: float | None = None
) -> Motion:
    """Follow a case that is let go at a tilt.

    Parameters
    ----------
    case : Swinging
        What rocks.
    tilt : float
        Where it is let go, in radians from upright, no further than it comes back from.
    duration : float
        In seconds, > 0 and at most ten minutes.
    pictures : int
        Into how many steps the time is divided; 0 for sixty a second.
    other : float, optional
        Where it turns round on the other side without drag, in radians; left out, as far from its rest.

    Returns
    -------
    Motion
        One moment more than there are steps.

    Raises
    ------
    ImpossibleShape
        If the duration cannot be, or the motion is too wild to be followed.

    Source: `woodmath.rocking_motion_curves.acceleration_curve`; Adams, Bashforth and Moulton's method of twelve
    steps.

    >>> len(follow(Swinging((1.0, 1.0, 0.5, 0.0), 0.5, 0.0, 0.0, 9.80665, 2.0), 0.1, 0.5).times)
    31
    """
    if not 0 < duration <= _LONGEST:
        raise ImpossibleShape(
            f"A motion of {duration:g} seconds was asked for. Ask for more than 0 and at most {_LONGEST:g}."
        )
    count = pictures or max(1, math.ceil(duration * PICTURES_A_SECOND))
    between = duration / count
    pieces = max(1, math.ceil(between * _STEPS_A_SWING / case.small_period))
    may_be_lost = _may_be_lost(case, tilt, 2 * case.rest - tilt if other is None else other)
    for _ in range(_MOST_TRIES):
        states, kept = _stepped(case, tilt, between / pieces, pieces, count, may_be_lost)
        if kept:
            return _told(case, states, between)
        pieces += math.ceil(pieces / 3)
    raise ImpossibleShape(
        "That motion is too wild to be followed: it turns round too quickly somewhere. Let it go from a "
        "smaller tilt."
    )


State = tuple[float, float]
"""Tilt in radians and turning in radians a second."""


def _may_be_lost(case: Swinging, tilt: float, other: float) -> float:
    """Return how much energy may be lost on the way between two ends of a swing, for each kilogram.

    Near the top of its hill a case sets off slowly, and a little energy more or less is a much longer time:
    so much more must be kept.
    """
    slow = 1.0
    for end in (tilt, other):
        out = end - case.rest
        if out:
            pull = acceleration_curve()(end, 0.0, *case.sizes, case.gyration_radius, case.gravity, 0.0)
            slow = min(slow, abs(pull / out) / (math.tau / case.small_period) ** 2)
    rounded = _ROUNDED * case.gravity * sum(case.sizes[:3]) * max(abs(tilt - case.rest), _NEXT_TO_NOTHING)
    return _KEPT * slow * _lifted(case, tilt) + rounded


def _stepped(
    case: Swinging, tilt: float, step: float, pieces: int, count: int, may_be_lost: float
) -> tuple[list[State], bool]:
    """Return the state at each picture, and whether the energy was kept on the way."""
    quickening = acceleration_curve()
    rest = (*case.sizes, case.gyration_radius, case.gravity, case.drag)
    foretell, mend = (tuple(step * weight for weight in _weights(ahead)) for ahead in (0, 1))
    newest, older = mend[-1], mend[:-1]
    # The oldest of the places is foretold from and not mended with: its weight in the mending is nothing.
    mended = (0.0, *older)
    turning = 0.0
    turnings, quickenings, drawn = (deque([0.0] * _BACK, _BACK) for _ in range(3))
    states, taken = [(tilt, turning)], 0.0
    lifted = _lifted(case, tilt)
    judged = pieces * next(every for every in (6, 5, 4, 3, 2, 1) if count % every == 0)
    for number in range(pieces * count):
        turnings.append(turning)
        quickenings.append(quickening(tilt, turning, *rest))
        drawn.append(turning * turning)
        if number < _BACK - 1:
            (tilt, turning), spent = _first(case, (tilt, turning), step)
            taken += spent
        else:
            guess = turning + _weighed(foretell, quickenings)
            there = quickening(tilt + _weighed(foretell, turnings), guess, *rest)
            turning += newest * there + _weighed(mended, quickenings)
            tilt += newest * turning + _weighed(mended, turnings)
            if case.drag:
                taken += case.drag * (newest * turning * turning + _weighed(mended, drawn))
        if (number + 1) % pieces == 0:
            states.append((tilt, turning))
        if (number + 1) % judged == 0:
            left = _lifted(case, tilt) + _in_motion(case, tilt, turning) + taken
            if not abs(left - lifted) <= may_be_lost:
                return states, False
    return states, True


def _weighed(weights: Sequence[float], values: Iterable[float]) -> float:
    total: float = sum(map(mul, weights, values))
    return total


def _first(case: Swinging, state: State, step: float) -> tuple[State, float]:
    """Take one of the first steps, which have nothing behind them (Gragg, Bulirsch and Stoer)."""
    quickening = acceleration_curve()
    rest = (*case.sizes, case.gyration_radius, case.gravity, case.drag)

    def slope(values: tuple[float, ...]) -> tuple[float, ...]:
        tilt, turning, _ = values
        return turning, quickening(tilt, turning, *rest), case.drag * turning * turning

    rows: list[list[tuple[float, ...]]] = []
    for parts in (2, 4, 6, 8):
        short = step / parts
        before: tuple[float, ...] = (*state, 0.0)
        now = tuple(v + short * s for v, s in zip(before, slope(before), strict=True))
        for _ in range(parts - 1):
            before, now = now, tuple(v + 2 * short * s for v, s in zip(before, slope(now), strict=True))
        end = tuple((v + w + short * s) / 2 for v, w, s in zip(now, before, slope(now), strict=True))
        row = [end]
        for column in range(len(rows[-1]) if rows else 0):
            ratio = (parts / (parts - 2 * (column + 1))) ** 2
            row.append(
                tuple(
                    fine + (fine - coarse) / (ratio - 1)
                    for fine, coarse in zip(row[-1], rows[-1][column], strict=True)
                )
            )
        rows.append(row)
    tilt, turning, spent = rows[-1][-1]
    return (tilt, turning), spent


@functools.cache
def _weights(ahead: int) -> tuple[float, ...]:
    """Return the weights of the last twelve places, oldest first, the newest so many steps ahead of now."""
    places = [Fraction(ahead - _BACK + 1 + number) for number in range(_BACK)]
    weights = []
    for place in places:
        polynomial = [Fraction(1)]
        for other in places:
            if other != place:
                shifted = [Fraction(0), *polynomial]
                scaled = [-other * each for each in polynomial] + [Fraction(0)]
                polynomial = [(up + low) / (place - other) for up, low in zip(shifted, scaled, strict=True)]
        weights.append(float(sum(each / (power + 1) for power, each in enumerate(polynomial))))
    return tuple(weights)


def _lifted(case: Swinging, tilt: float) -> float:
    """Return the energy of a tilt over that at rest, for each kilogram."""
    apart = (tilt - case.rest) / 2
    return energy_curve()(1.0, case.gravity, fall_curve()(tilt - apart, apart, *case.sizes))


def _in_motion(case: Swinging, tilt: float, turning: float) -> float:
    return moving_energy_curve()(tilt, turning, *case.sizes, case.gyration_radius, 1.0)


def _told(case: Swinging, states: list[State], between: float) -> Motion:
    height = height_curve()
    places, here, place = [], 0.0, 0.0
    for tilt, _ in states:
        place += along_the_floor(case.sizes, here, tilt)
        places.append(place)
        here = tilt
    return Motion(
        times=tuple(number * between for number in range(len(states))),
        tilts=tuple(math.degrees(tilt) for tilt, _ in states),
        turnings=tuple(math.degrees(turning) for _, turning in states),
        positions=tuple(places),
        heights=tuple(height(tilt, *case.sizes) for tilt, _ in states),
    )


_NODE = math.sqrt(3 / 5)


def along_the_floor(sizes: Sizes, start: float, end: float) -> float:
    """Return how far the centre of gravity goes along the floor between two tilts.

    Parameters
    ----------
    sizes : (float, float, float, float)
        Half length, half height, centre height and offset, in metres.
    start, end : float
        Tilts in radians.

    Returns
    -------
    float
        In metres, more than 0 to the right.

    Source: the touching point is the pivot, so the centre of gravity goes its height H along for each unit of
    turning; added up by the rule of Gauss and Legendre.

    >>> round(along_the_floor((1.0, 1.0, 1.0, 0.0), 0.0, 0.5), 12)
    0.5
    """
    height = height_curve()
    pieces = max(1, math.ceil(abs(end - start) / 0.05))
    half = (end - start) / 2 / pieces
    total = 0.0
    for piece in range(pieces):
        middle = start + half * (2 * piece + 1)
        total += (
            5 * height(middle - half * _NODE, *sizes)
            + 8 * height(middle, *sizes)
            + 5 * height(middle + half * _NODE, *sizes)
        )
    return half * total / 9
