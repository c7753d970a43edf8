"""The primitives of an ornament: arcs of the compass, lines of the rule, the steps that draw them, and a motif.

A motif is what a student combines: it can be moved, turned, mirrored and put together with others. Its regions are
closed by its own strokes, each beginning where the one before it ends, so that they can be painted or cut out.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Callable
from dataclasses import dataclass

from woodmath.errors import ImpossibleShape
from woodmath.outlines import Point, Points, arc

_DEGREES_A_PIECE = 7.5
_SAME_PLACE = 1e-9


@dataclass(frozen=True)
class CompassArc:
    """An arc of the compass, from one direction to another; backwards where the end is less than the start.

    Parameters
    ----------
    centre : (float, float)
        Where the point stands.
    radius : float
        How far the compass is open, > 0.
    start, end : float
        Directions seen from the centre, in degrees, counter-clockwise from level to the right.

    Raises
    ------
    ImpossibleShape
        If the radius is not a positive number.

    >>> quarter = CompassArc((0.0, 0.0), 2.0, 0.0, 90.0)
    >>> round(quarter.length, 3), [round(value, 9) for value in quarter.ends[1]]
    (3.142, [0.0, 2.0])
    """

    centre: Point
    radius: float
    start: float
    end: float

    def __post_init__(self) -> None:
        """Refuse a compass that is not open."""
        if not (math.isfinite(self.radius) and self.radius > 0):
            raise ImpossibleShape(
                f"The compass is set to {self.radius:g}, and must be open: give a radius of more than 0."
            )

    @property
    def ends(self) -> tuple[Point, Point]:
        """Where it begins and where it ends."""
        return self.at(self.start), self.at(self.end)

    @property
    def length(self) -> float:
        """Along the arc."""
        return self.radius * math.radians(abs(self.end - self.start))

    @property
    def points(self) -> Points:
        """Points along it, close enough for the eye."""
        pieces = max(2, math.ceil(abs(self.end - self.start) / _DEGREES_A_PIECE))
        return arc(self.centre, self.radius, self.start, self.end, pieces)

    @property
    def middle(self) -> Point:
        """The point half way along it."""
        return self.at((self.start + self.end) / 2)

    @property
    def backwards(self) -> CompassArc:
        """The same arc drawn from its other end."""
        return CompassArc(self.centre, self.radius, self.end, self.start)

    def at(self, direction: float) -> Point:
        """Return the point of the circle in a direction from its centre, in degrees."""
        turn = math.radians(direction)
        x, y = self.centre
        return (x + self.radius * math.cos(turn), y + self.radius * math.sin(turn))

    def least_along(self, way: Point) -> float:
        """Return how far its point that lies least far along a way of length 1 lies along it."""
        across, up = way
        turn = math.degrees(math.atan2(-up, -across)) - min(self.start, self.end)
        if turn % 360.0 <= abs(self.end - self.start):
            return self.centre[0] * across + self.centre[1] * up - self.radius
        return min(x * across + y * up for x, y in self.ends)

    def along(self, pieces: int) -> Points:
        """Return points that divide it evenly, its ends among them."""
        return arc(self.centre, self.radius, self.start, self.end, pieces)


@dataclass(frozen=True)
class RuledLine:
    """A straight line along the rule.

    Parameters
    ----------
    start, end : (float, float)
        Its two ends.

    >>> RuledLine((0.0, 0.0), (3.0, 4.0)).length
    5.0
    """

    start: Point
    end: Point

    @property
    def ends(self) -> tuple[Point, Point]:
        """Where it begins and where it ends."""
        return self.start, self.end

    @property
    def length(self) -> float:
        """From end to end."""
        return math.dist(self.start, self.end)

    @property
    def points(self) -> Points:
        """Its two ends."""
        return (self.start, self.end)

    @property
    def middle(self) -> Point:
        """The point half way along it."""
        return ((self.start[0] + self.end[0]) / 2, (self.start[1] + self.end[1]) / 2)

    @property
    def backwards(self) -> RuledLine:
        """The same line drawn from its other end."""
        return RuledLine(self.end, self.start)

    def least_along(self, way: Point) -> float:
        """Return how far its point that lies least far along a way of length 1 lies along it."""
        return min(x * way[0] + y * way[1] for x, y in self.ends)

    def along(self, pieces: int) -> Points:
        """Return points that divide it evenly, its ends among them."""
        (x, y), (far_x, far_y) = self.start, self.end
        return tuple(
            (x + (far_x - x) * piece / pieces, y + (far_y - y) * piece / pieces)
            for piece in range(pieces + 1)
        )


Stroke = CompassArc | RuledLine


@dataclass(frozen=True)
class Step:
    """One thing done with compass or rule.

    Parameters
    ----------
    words : str
        What to do, in one sentence.
    strokes : tuple of strokes
        What appears.
    kept : bool
        Whether it stays when the scaffold is rubbed out.

    >>> Step("Draw a line.", (RuledLine((0.0, 0.0), (1.0, 0.0)),)).kept
    True
    """

    words: str
    strokes: tuple[Stroke, ...]
    kept: bool = True


@dataclass(frozen=True)
class Region:
    """An area that strokes close: a petal, the ground between two petals, a bay of a fan.

    Parameters
    ----------
    kind : {"petal", "bud", "ground", "bay", "leaf", "corner"}
        What it is, so that all of one kind can be painted alike.
    strokes : tuple of strokes
        In order round it, each beginning where the one before it ends.

    >>> whole = Region("ground", (CompassArc((0.0, 0.0), 1.0, 0.0, 360.0),))
    >>> whole.gap < 1e-12, len(whole.outline) > 24
    (True, True)
    """

    kind: str
    strokes: tuple[Stroke, ...]

    @property
    def gap(self) -> float:
        """The widest gap between the end of a stroke and the beginning of the next one."""
        return max(
            math.dist(stroke.ends[1], following.ends[0])
            for stroke, following in zip(self.strokes, (*self.strokes[1:], self.strokes[0]), strict=True)
        )

    @property
    def outline(self) -> Points:
        """Its points, closed by itself."""
        return tuple(itertools.chain.from_iterable(stroke.points[:-1] for stroke in self.strokes))


@dataclass(frozen=True)
class Motif:
    """A pattern of compass and rule: how it is drawn, step by step, and the regions that its strokes close.

    Parameters
    ----------
    name : str
        What it is called.
    steps : tuple of Step
        In the order in which they are drawn.
    regions : tuple of Region
        For painting.

    >>> from woodmath.ornament import rosette
    >>> six = rosette(petals=6, radius=40.0)
    >>> len(six.centres), gaps(six) < 1e-9
    (7, True)
    """

    name: str
    steps: tuple[Step, ...]
    regions: tuple[Region, ...] = ()

    @property
    def kept(self) -> tuple[Stroke, ...]:
        """Every stroke that stays."""
        return tuple(stroke for step in self.steps if step.kept for stroke in step.strokes)

    @property
    def scaffold(self) -> tuple[Stroke, ...]:
        """Every stroke that is rubbed out, or is only a prick on the way."""
        return tuple(stroke for step in self.steps if not step.kept for stroke in step.strokes)

    @property
    def centres(self) -> tuple[Point, ...]:
        """Where the compass stands for the strokes that stay, in the order in which it comes there."""
        found: list[Point] = []
        seen: set[tuple[int, int]] = set()
        arcs = [stroke for stroke in self.kept if isinstance(stroke, CompassArc)]
        grain = _SAME_PLACE * max((each.radius for each in arcs), default=1.0) * 100
        for each in arcs:
            place = (round(each.centre[0] / grain), round(each.centre[1] / grain))
            if place not in seen:
                seen.add(place)
                found.append(each.centre)
        return tuple(found)

    @property
    def points(self) -> Points:
        """Points of every stroke that stays."""
        return tuple(itertools.chain.from_iterable(stroke.points for stroke in self.kept))


def gaps(motif: Motif) -> float:
    """Return the widest gap in the outline of any region: nothing, but for rounding, where a motif closes.

    Parameters
    ----------
    motif : Motif
        Whose regions are looked at.

    Returns
    -------
    float
        In the motif's unit; 0 where it has no region.

    >>> from woodmath.ornament import fan
    >>> gaps(fan(ribs=5, radius=60.0, angle=90.0)) < 1e-9
    True
    """
    return max((region.gap for region in motif.regions), default=0.0)


def circle(centre: Point, radius: float) -> CompassArc:
    """Return a whole circle of the compass, which begins and ends to the right of its centre.

    Parameters
    ----------
    centre : (float, float)
        Where the point stands.
    radius : float
        How far the compass is open, > 0.

    Returns
    -------
    CompassArc
        Once round.

    >>> round(circle((0.0, 0.0), 1.0).length, 4)
    6.2832
    """
    return CompassArc(centre, radius, 0.0, 360.0)


def divide(around: CompassArc, parts: int, first: float = 90.0) -> Points:
    """Return the points that divide a circle evenly.

    Parameters
    ----------
    around : CompassArc
        A whole circle.
    parts : int
        Into how many, 2 or more.
    first : float
        Direction of the first point from the centre, in degrees.

    Returns
    -------
    tuple of (float, float)
        As many as parts, counter-clockwise.

    Raises
    ------
    ImpossibleShape
        If there are fewer than two parts.

    >>> [round(x, 3) for x, _ in divide(circle((0.0, 0.0), 1.0), 4)]
    [0.0, -1.0, -0.0, 1.0]
    """
    if parts < 2:
        raise ImpossibleShape(f"A circle is to be divided into {parts}. Give two parts or more.")
    return tuple(around.at(first + 360.0 * part / parts) for part in range(parts))


def moved(motif: Motif, by: Point) -> Motif:
    """Return a motif pushed along: across and up.

    Parameters
    ----------
    motif : Motif
        What is moved.
    by : (float, float)
        How far to the right and how far up.

    Returns
    -------
    Motif
        The same, elsewhere.

    >>> from woodmath.ornament import rosette
    >>> moved(rosette(6, 1.0), (5.0, 2.0)).centres[0]
    (5.0, 2.0)
    """
    across, up = by

    def shifted(point: Point) -> Point:
        return (point[0] + across, point[1] + up)

    def change(stroke: Stroke) -> Stroke:
        if isinstance(stroke, CompassArc):
            return CompassArc(shifted(stroke.centre), stroke.radius, stroke.start, stroke.end)
        return RuledLine(shifted(stroke.start), shifted(stroke.end))

    return _changed(motif, change)


def turned(motif: Motif, angle: float) -> Motif:
    """Return a motif turned about the origin.

    Parameters
    ----------
    motif : Motif
        What is turned.
    angle : float
        In degrees, counter-clockwise.

    Returns
    -------
    Motif
        The same, turned.

    >>> line = Motif("line", (Step("Draw a line.", (RuledLine((0.0, 0.0), (1.0, 0.0)),)),))
    >>> [round(value, 9) for value in turned(line, 90.0).kept[0].ends[1]]
    [0.0, 1.0]
    """
    cosine, sine = math.cos(math.radians(angle)), math.sin(math.radians(angle))

    def swung(point: Point) -> Point:
        return (point[0] * cosine - point[1] * sine, point[0] * sine + point[1] * cosine)

    def change(stroke: Stroke) -> Stroke:
        if isinstance(stroke, CompassArc):
            return CompassArc(swung(stroke.centre), stroke.radius, stroke.start + angle, stroke.end + angle)
        return RuledLine(swung(stroke.start), swung(stroke.end))

    return _changed(motif, change)


def mirrored(motif: Motif) -> Motif:
    """Return a motif as a mirror shows it that stands upright at the origin: right becomes left.

    Parameters
    ----------
    motif : Motif
        What is mirrored.

    Returns
    -------
    Motif
        Its mirror image.

    >>> line = Motif("line", (Step("Draw a line.", (RuledLine((1.0, 0.0), (2.0, 3.0)),)),))
    >>> mirrored(line).kept[0].ends
    ((-1.0, 0.0), (-2.0, 3.0))
    """

    def change(stroke: Stroke) -> Stroke:
        if isinstance(stroke, CompassArc):
            x, y = stroke.centre
            return CompassArc((-x, y), stroke.radius, 180.0 - stroke.start, 180.0 - stroke.end)
        (x, y), (far_x, far_y) = stroke.ends
        return RuledLine((-x, y), (-far_x, far_y))

    return _changed(motif, change)


def together(name: str, *motifs: Motif) -> Motif:
    """Return several motifs as one, drawn one after another.

    Parameters
    ----------
    name : str
        What the whole is called.
    *motifs : Motif
        In the order in which they are drawn.

    Returns
    -------
    Motif
        With every step and every region of them.

    >>> from woodmath.ornament import rosette
    >>> pair = together("a pair", rosette(6, 1.0), moved(rosette(6, 1.0), (2.0, 0.0)))
    >>> len(pair.regions)
    24
    """
    return Motif(
        name,
        tuple(step for motif in motifs for step in motif.steps),
        tuple(region for motif in motifs for region in motif.regions),
    )


def _changed(motif: Motif, change: Callable[[Stroke], Stroke]) -> Motif:
    return Motif(
        motif.name,
        tuple(Step(step.words, tuple(map(change, step.strokes)), step.kept) for step in motif.steps),
        tuple(Region(region.kind, tuple(map(change, region.strokes))) for region in motif.regions),
    )
