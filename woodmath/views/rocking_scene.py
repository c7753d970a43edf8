"""A case on the floor as the live rocker shows it: held at its tilt, or let go and played by the screen."""

from __future__ import annotations

import itertools
import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from woodmath.drawing import (
    Circle,
    Dimension,
    Frame,
    Hatch,
    Label,
    Line,
    MovingBody,
    MovingLine,
    Point,
    Points,
    Shape,
    Wood,
)
from woodmath.rocking import Motion
from woodmath.rule import Rule
from woodmath.views.rocking_case import CaseOnFlatBase, CaseOnRocker, Drawable, Pose, brought, reach

TOUCH, BALL = 5.5, 7.5
"""Radius of the dot at the touching point, and of the ball on the curve of energy, in picture units."""
_KEPT_FREE = 12.0
"""Picture units at the edges into which no construction line goes."""
_SHORTEST_ARM = 2.0
_TENS = 10


@dataclass(frozen=True)
class Shown:
    """One case of the picture: the middle of its place, how it stands, how its energy is drawn.

    Parameters
    ----------
    case : CaseOnRocker or CaseOnFlatBase
        What stands there.
    middle : float
        Where its middle stands when it is upright, in length units.
    role : str
        Of the line of its energy, as for `Line`.
    name, note : str
        What stands below it: its name and what it does; "" where it is the only one.
    below, slot : float
        Where the middle of these words is, and the width of the place that it stands in, in length units.
    tilt : float
        At which it is held, or let go, in degrees.
    motion : Motion or None
        What is played; None where it is held.
    again : bool
        Whether the motion is a whole swing, whose end is its beginning.

    >>> from woodmath.ellipse import Ellipse
    >>> from woodmath.rocking import RockingBody
    >>> body = RockingBody(10.0, 0.25, 0.15, Ellipse(0.5, 0.25), 0.5)
    >>> Shown(CaseOnRocker(body, 1.0, 0.5), 0.0, "edge", 12.0).furthest(5)
    (-5, 20.0)
    """

    case: CaseOnRocker | CaseOnFlatBase
    middle: float
    role: str
    tilt: float
    name: str = ""
    note: str = ""
    below: float = 0.0
    slot: float = 0.0
    motion: Motion | None = None
    again: bool = False

    def furthest(self, least: float) -> tuple[float, float]:
        """Return between which tilts it may be seen: at least so far to both sides, and as far as it swings.

        Held by hand it may be seen up to the next ten degrees, so that a picture keeps its scale for a while.
        """
        by_hand = math.copysign(_TENS * math.ceil(abs(self.tilt) / _TENS), self.tilt)
        tilts = self.motion.tilts if self.motion else (by_hand,)
        return min(-least, *tilts), max(least, *tilts)

    def reach(self, least: float) -> tuple[float, float, float]:
        """Return how far it reaches to the left, to the right and upward at those tilts, in length units."""
        left, right, high = reach(self.case, *self.furthest(least))
        left, right = self.middle + left, self.middle + right
        return min(left, self.below - self.slot / 2), max(right, self.below + self.slot / 2), high


def scene(shown: Shown, rule: Rule, frame: Frame, alone: bool) -> tuple[Shape, ...]:
    """Return a case on the floor, with its plumb line and its touching point.

    Parameters
    ----------
    shown : Shown
        The case and how it stands.
    rule : Rule
        On which the lever arm is marked.
    frame : Frame
        Of the picture.
    alone : bool
        Whether it is the only one; then there is room for the lever arm and the centres of curvature.

    Returns
    -------
    tuple of Shape
        For a drawing.
    """
    case, names = shown.case, _names(shown, frame)
    at_rest = tuple(_brought(shape, (0.0, 0.0), (shown.middle, 0.0, 0.0)) for shape in case.wood(frame))
    about = (case.weight[0] + shown.middle, case.weight[1])
    if shown.motion is not None and isinstance(case, CaseOnRocker):
        return (*_playing(shown, shown.motion, case, at_rest, about, frame, alone), *names)
    x, y, turned = case.pose(shown.tilt)
    pose = (x + shown.middle, y, turned)
    still = tuple(_brought(shape, about, pose) for shape in at_rest)
    if not isinstance(case, CaseOnRocker):
        edge = shown.middle + (case.half if shown.tilt > 0 else -case.half)
        touching = (_dot((edge, 0.0), TOUCH),) if shown.tilt else ()
        return (*still, _plumb(pose), *touching, *names)
    touch = shown.middle + case.stand(shown.tilt).touch * case.metre
    return (
        *still,
        *(_curvature(shown, case, pose, about, touch, frame) if alone else ()),
        _plumb(pose),
        *((Label("G", frame.at(*_beside(frame.place(pose[:2]))), bold=True),) if alone else ()),
        *(_lever(rule, frame, pose[0], touch) if alone else ()),
        _dot((touch, 0.0), TOUCH),
        *names,
    )


def _dot(place: Point, size: float) -> Circle:
    return Circle(place, 0.0, "", "accent", dot=size)


def _plumb(pose: Pose) -> Line:
    return Line((pose[:2], (pose[0], 0.0)), "centre")


def _beside(place: Point) -> Point:
    """Return where a letter stands beside a mark of the picture."""
    return (place[0] + 13.0, place[1] - 7.0)


def _names(shown: Shown, frame: Frame) -> tuple[Label, ...]:
    if not shown.name:
        return ()
    x, level = frame.place((shown.below, 0.0))
    return (Label(shown.name, frame.at(x, level + 26.0), note=shown.note, side="middle", bold=True),)


def _playing(
    shown: Shown,
    motion: Motion,
    case: CaseOnRocker,
    at_rest: tuple[Drawable, ...],
    about: Point,
    frame: Frame,
    alone: bool,
) -> tuple[Shape, ...]:
    """Return the case let go, with its plumb line, its lever arm and its touching point in step."""
    body, metre = case.body, case.metre
    poses: list[Pose] = [
        (shown.middle + (body.centre_offset + position) * metre, height * metre, -tilt)
        for position, height, tilt in zip(motion.positions, motion.heights, motion.tilts, strict=True)
    ]
    touches = [
        x + body.lever_arm_at(tilt) * metre for (x, _, _), tilt in zip(poses, motion.tilts, strict=True)
    ]
    if shown.again:
        poses[-1], touches[-1] = poses[0], touches[0]
    both = tuple(zip(poses, touches, strict=True))

    def moving(role: str, points: Callable[[Pose, float], Points], dot: float = 0.0) -> MovingLine:
        return MovingLine(tuple(points(pose, touch) for pose, touch in both), motion.seconds, role, dot=dot)

    _, high = frame.at(0.0, _KEPT_FREE)
    ends = [min(poses, key=_turned), max(poses, key=_turned), min(poses, key=lambda pose: abs(pose[2]))]
    # On the body, so that the circles' centres are seen to lie on it however it stands.
    way = _centres(shown, case, about, ends, frame) if alone else ()
    # A line more in every picture costs the kernel a millisecond for the seconds of a swing with drag.
    fitting = (
        (moving("quiet", lambda pose, touch: ((touch, 0.0), (touch, min(high, _fit(case, -pose[2]))))),)
        if alone and shown.again
        else ()
    )
    return (
        MovingBody((*at_rest, *way), about, tuple(poses), motion.seconds),
        *fitting,
        moving("centre", lambda pose, _: (pose[:2], (pose[0], 0.0))),
        moving("accent", lambda pose, touch: ((pose[0], 0.0), (touch, 0.0))),
        moving("accent", lambda _, touch: ((touch, 0.0),), dot=TOUCH),
    )


def _turned(pose: Pose) -> float:
    return pose[2]


def _fit(case: CaseOnRocker, tilt: float) -> float:
    """Return how high over the floor the centre of the circle is that fits where it touches."""
    return case.body.radius_at(tilt) * case.metre


def _brought(shape: Drawable, about: Point, pose: Pose) -> Drawable:
    """Return a shape of the body at rest where the body has brought it."""
    match shape:
        case Wood():
            return replace(shape, outline=brought(shape.outline, about, pose), angle=shape.angle + pose[2])
        case Line():
            return replace(shape, points=brought(shape.points, about, pose))
        case Circle():
            return replace(shape, centre=brought((shape.centre,), about, pose)[0])
        case Hatch():
            return replace(shape, outline=brought(shape.outline, about, pose))


def _centres(
    shown: Shown, case: CaseOnRocker, about: Point, poses: Sequence[Pose], frame: Frame
) -> tuple[Line, ...]:
    """Return the way of the fitting circles' centres on the body at rest, as far as it is seen at all poses."""
    left, high = frame.at(_KEPT_FREE, _KEPT_FREE)
    right, low = frame.at(frame.width - _KEPT_FREE, 0.0)[0], 0.0
    rest = tuple((x + shown.middle, y) for x, y in case.centres())
    seen = [True] * len(rest)
    for pose in poses:
        there = brought(rest, about, pose)
        seen = [
            ever and left < x < right and low < y < high for ever, (x, y) in zip(seen, there, strict=True)
        ]
    runs = itertools.groupby(zip(rest, seen, strict=True), key=lambda found: found[1])
    lines = [tuple(point for point, _ in run) for is_seen, run in runs if is_seen]
    return tuple(Line(points, "quiet") for points in lines if len(points) > 1)


def _curvature(
    shown: Shown, case: CaseOnRocker, pose: Pose, about: Point, touch: float, frame: Frame
) -> tuple[Shape, ...]:
    """Return the centre of the circle that fits where it touches, and the way that it goes as the case rolls."""
    if not case.stand(shown.tilt).rolls:
        return ()
    way = (_brought(line, about, pose) for line in _centres(shown, case, about, (pose,), frame))
    _, high = frame.at(0.0, _KEPT_FREE)
    radius = _fit(case, shown.tilt)
    if radius >= high:
        return (*way, Line(((touch, 0.0), (touch, high)), "quiet"))
    return (
        *way,
        Line(((touch, 0.0), (touch, radius)), "quiet"),
        Circle((touch, radius), 0.0, "edge", "paper", dot=4.5),
        Label("C", (touch - frame.length(10.0), radius), side="left", role="quiet"),
    )


def _lever(rule: Rule, frame: Frame, weight: float, touch: float) -> tuple[Shape, ...]:
    """Return the lever arm along the floor, with its length below where there is room for it."""
    if abs(touch - weight) * frame.scale < _SHORTEST_ARM:
        return ()
    right, left = max(weight, touch), min(weight, touch)
    arm = Line(((weight, 0.0), (touch, 0.0)), "accent")
    return (arm, Dimension((right, 0.0), (left, 0.0), rule.mark(right - left), 24.0))
