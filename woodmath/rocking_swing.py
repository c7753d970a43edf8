"""The exact time of a swing, however wide: every short piece of the way over the speed there, added up.

The sum is taken at places that crowd towards both ends of the swing, where the case hardly moves; twice as
many places each time, until nothing changes any more.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from woodmath.errors import ImpossibleShape
from woodmath.rocking_curves import fall_curve
from woodmath.rocking_motion_curves import turning_curve

Sizes = tuple[float, float, float, float]
"""Half length and height, height and offset of the centre of gravity: `rocking_curves.SIZES`, in metres."""

_FEWEST, _MOST = 16, 16384
_ALIKE = 1e-11
"""Two sums so near to one another (as a part of themselves) are the same: the next would agree to the last figure."""


def swing_time(sizes: Sizes, gyration_radius: float, low: float, high: float, gravity: float) -> float:
    """Return the time of a whole swing from one turning point to the other and back.

    Parameters
    ----------
    sizes : (float, float, float, float)
        Half length, half height, centre height and offset, in metres.
    gyration_radius : float
        About the centre of gravity, 0 or more, in metres.
    low, high : float
        The two turning points, equally high, in radians; low less than high.
    gravity : float
        In metres per second squared, > 0.

    Returns
    -------
    float
        In seconds.

    Raises
    ------
    ImpossibleShape
        If the swing ends so near to where it would stand balanced that no time can be told.

    Source: `woodmath.rocking_swing_derivations.speed_derivation`, added up over the swing.

    >>> round(swing_time((1.0, 1.0, 0.5, 0.0), 0.5, -0.01, 0.01, 9.80665), 5)
    2.00647
    """
    alike = sizes[3] == 0 and low == -high
    count, before = _FEWEST, math.inf
    while count <= _MOST:
        # A case that is the same on both sides takes as long for the one half of the swing as for the other.
        halves = (1,) if alike else (1, -1)
        pieces = (
            piece
            for side in halves
            for piece in _pieces(sizes, gyration_radius, (low, high), gravity, side, count)
        )
        total = 2 * math.fsum(pieces) * (2 if alike else 1)
        if abs(total - before) <= _ALIKE * total:
            return total
        count, before = 2 * count, total
    raise ImpossibleShape(
        "Let go there it hangs balanced for so long that no time can be told. Let it go from a smaller tilt."
    )


def _pieces(
    sizes: Sizes, gyration_radius: float, ends: tuple[float, float], gravity: float, side: int, count: int
) -> Iterator[float]:
    """Yield the time of each piece of one half of the swing, from its end to the middle of the turning points."""
    fall, turning = fall_curve(), turning_curve()
    low, high = ends
    end, half = (high, (high - low) / 2) if side > 0 else (low, (low - high) / 2)
    step = math.pi / 2 / count
    for piece in range(count):
        place = (piece + 0.5) * step
        turned = place - math.sin(2 * place) / 2
        apart = half * math.sin(turned / 2) ** 2
        fallen = fall(end - apart, apart, *sizes)
        if fallen <= 0:
            raise ImpossibleShape(
                "The swing does not come down from where it is let go. Let it go from a smaller tilt."
            )
        speed = turning(end - 2 * apart, fallen, *sizes, gyration_radius, gravity)
        yield abs(half) * math.sin(turned) / speed * 2 * math.sin(place) ** 2 * step
