"""The parts of the live rocker: the case as it stands on its curve, drawn at rest and brought to any tilt."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property

from woodmath.drawing import Circle, Frame, Hatch, Line, Point, Points, Wood
from woodmath.rocking import FlatBase, RockingBody
from woodmath.rocking_stand import Stand, stand_at
from woodmath.views.weight_mark import weight_mark

Drawable = Wood | Line | Circle | Hatch
"""What can be brought to another place with a body."""
Pose = tuple[float, float, float]

_WOOD_AT_THE_HEEL = 0.09
"""Times the rocker's length."""
_POST = 0.085
_FOOT, _HEAD = 0.29, 0.36
"""Times the rocker's length, from the middle out to a post's outer edge, below and above."""
_ARC = 24
_EVOLUTE = 17


def brought(points: Points, about: Point, pose: Pose) -> Points:
    """Return points of a body at rest where the body has brought them.

    Parameters
    ----------
    points : tuple of points
        Of the body at rest.
    about : point
        The point of the body whose place the pose tells.
    pose : (float, float, float)
        Where that point is, and how far the body is turned, in degrees counter-clockwise.

    Returns
    -------
    tuple of points
        In the same unit.

    >>> [(round(x, 9), round(y, 9)) for x, y in brought(((1.0, 0.0),), (0.0, 0.0), (5.0, 0.0, 90.0))]
    [(5.0, 1.0)]
    """
    x0, y0, turned = pose
    sine, cosine = math.sin(math.radians(turned)), math.cos(math.radians(turned))
    return tuple(
        (
            x0 + (x - about[0]) * cosine - (y - about[1]) * sine,
            y0 + (x - about[0]) * sine + (y - about[1]) * cosine,
        )
        for x, y in points
    )


@dataclass(frozen=True)
class CaseOnRocker:
    """A case on a curved rocker, in the unit of the picture.

    Parameters
    ----------
    body : RockingBody
        In metres.
    metre : float
        One metre in the picture's unit.
    top : float
        How high the case is at rest, in the picture's unit.
    """

    body: RockingBody
    metre: float
    top: float

    @property
    def weight(self) -> Point:
        """Place of the centre of gravity at rest."""
        return (self.body.centre_offset * self.metre, self.body.centre_height * self.metre)

    @property
    def half(self) -> float:
        """Half the rocker's length."""
        return self.body.half_rocker * self.metre

    @cached_property
    def arc(self) -> Points:
        """The rocker's lower edge at rest, from the left heel to the right one."""
        ellipse, half = self.body.ellipse, self.half / self.metre
        places = (half * math.sin(math.pi * step / _ARC / 2) for step in range(-_ARC, _ARC + 1))
        return tuple(
            (x * self.metre, ellipse.height_at(min(ellipse.half_length, abs(x))) * self.metre) for x in places
        )

    def stand(self, tilt: float) -> Stand:
        """Return where it is at a tilt, in metres."""
        return stand_at(self.body, tilt)

    def pose(self, tilt: float) -> Pose:
        """Return the pose that brings the body at rest to a tilt."""
        stand = self.stand(tilt)
        return (stand.across * self.metre, stand.height * self.metre, -tilt)

    def wood(self, frame: Frame) -> tuple[Drawable, ...]:
        """Return the case and its rocker at rest, with the mark of its weight."""
        rise = self.arc[-1][1]
        depth = rise + _WOOD_AT_THE_HEEL * 2 * self.half
        board = Wood((*self.arc, (self.half, depth), (-self.half, depth)), "board", "long", 0.0)
        return (
            *_case(self.half, depth, self.top),
            board,
            Line(self.arc, "accent"),
            *weight_mark(self.weight, frame),
        )

    @property
    def corners(self) -> Points:
        """What of it reaches furthest, at rest."""
        return _corners(self.half, self.arc[-1][1], self.top)

    def centres(self) -> Points:
        """Return the centres of the circles that fit the curve, at rest, from heel to heel."""
        heel = self.body.heel_angle
        found: list[Point] = []
        for number in range(_EVOLUTE):
            tilt = heel * (2 * number / (_EVOLUTE - 1) - 1)
            # As it lies from the weight at that tilt; turned back, where the body is at rest.
            away = (
                self.body.lever_arm_at(tilt) * self.metre,
                (self.body.radius_at(tilt) - self.body.height_at(tilt)) * self.metre,
            )
            found += brought((away,), (0.0, 0.0), (*self.weight, tilt))
        return tuple(found)


@dataclass(frozen=True)
class CaseOnFlatBase:
    """The same case on a flat base, which turns on its edge from the start.

    Parameters
    ----------
    base : FlatBase
        In metres.
    body : RockingBody
        The case whose weight it has.
    metre, top : float
        As for `CaseOnRocker`.
    """

    base: FlatBase
    body: RockingBody
    metre: float
    top: float

    @property
    def weight(self) -> Point:
        """Place of the centre of gravity at rest."""
        return (0.0, self.base.centre_height * self.metre)

    @property
    def half(self) -> float:
        """Half the width of the base."""
        return self.base.half_width * self.metre

    @property
    def corners(self) -> Points:
        """What of it reaches furthest, at rest."""
        return _corners(self.half, 0.0, self.top)

    def pose(self, tilt: float) -> Pose:
        """Return the pose that brings the body at rest to a tilt, on its edge."""
        edge = self.half if tilt >= 0 else -self.half
        ((x, y),) = brought((self.weight,), (edge, 0.0), (edge, 0.0, -tilt))
        return (x, y, -tilt)

    def wood(self, frame: Frame) -> tuple[Drawable, ...]:
        """Return the case and its base at rest, with the mark of its weight."""
        depth = _WOOD_AT_THE_HEEL * 2 * self.half
        board = Wood(
            ((-self.half, 0.0), (self.half, 0.0), (self.half, depth), (-self.half, depth)),
            "board",
            "long",
            0.0,
        )
        foot = Line(((-self.half, 0.0), (self.half, 0.0)), "accent")
        return (*_case(self.half, depth, self.top), board, foot, *weight_mark(self.weight, frame))


def _corners(half: float, low: float, top: float) -> Points:
    depth, head = low + _WOOD_AT_THE_HEEL * 2 * half, _HEAD * 2 * half
    return ((-half, low), (half, low), (half, depth), (-half, depth), (head, top), (-head, top))


def reach(case: CaseOnRocker | CaseOnFlatBase, low: float, high: float) -> tuple[float, float, float]:
    """Return how far a case reaches to the left, to the right and upward, however it is tilted between two tilts.

    Parameters
    ----------
    case : CaseOnRocker or CaseOnFlatBase
        Which one.
    low, high : float
        The two tilts, in degrees.

    Returns
    -------
    (float, float, float)
        Less than 0 to the left; in the case's unit.
    """
    seen = [
        point
        for part in (0.0, 0.25, 0.5, 0.75, 1.0)
        for point in brought(case.corners, case.weight, case.pose(low + part * (high - low)))
    ]
    return min(x for x, _ in seen), max(x for x, _ in seen), max(y for _, y in seen)


def _case(half: float, low: float, top: float) -> tuple[Drawable, ...]:
    """Return the end of a case with leaning posts over a rocker: a panel between two posts."""
    length = 2 * half
    thick = _POST * length

    def post(side: float) -> Points:
        foot, head = side * _FOOT * length, side * _HEAD * length
        return ((foot, low), (head, top), (head - side * thick, top), (foot - side * thick, low))

    slope = (_HEAD - _FOOT) * length / (top - low)

    def inside(y: float) -> float:
        return _FOOT * length - thick + slope * (y - low)

    bottom, rim = low + 0.12 * (top - low), low + 0.88 * (top - low)
    panel = ((-inside(bottom), bottom), (inside(bottom), bottom), (inside(rim), rim), (-inside(rim), rim))
    lean = math.degrees(math.atan(slope))
    return (
        Wood(panel, "end", "long", 0.0, line="edge"),
        Wood(post(1.0), "post", "long", 90.0 - lean, line="edge"),
        Wood(post(-1.0), "post", "long", 90.0 + lean, line="edge"),
    )
