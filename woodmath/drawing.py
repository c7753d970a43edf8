"""A drawing as data: outlines, wood, dimensions and labels in the length unit of the piece.

Nothing here knows how a picture is made; `marks` turns a drawing into strokes and words, and the two
renderers paint those.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field

Point = tuple[float, float]
Points = tuple[Point, ...]


@dataclass(frozen=True)
class Frame:
    """The picture's window: which part of the plane is seen, and how large.

    Parameters
    ----------
    width, height : float
        Size of the picture, in picture units (a screen pixel when it is not scaled), > 0.
    left, bottom : float
        The point of the plane at the picture's lower left corner, in length units; y goes up.
    scale : float
        Picture units for one length unit, > 0.

    >>> frame = Frame(640, 480, left=0.0, bottom=0.0, scale=100.0)
    >>> frame.place((1.0, 1.0))
    (100.0, 380.0)
    >>> frame.at(100.0, 380.0)
    (1.0, 1.0)
    """

    width: float
    height: float
    left: float
    bottom: float
    scale: float

    @classmethod
    def around(
        cls,
        points: Sequence[Point],
        size: tuple[float, float] = (640.0, 480.0),
        margins: tuple[float, float, float, float] = (24.0, 24.0, 24.0, 24.0),
    ) -> Frame:
        """Fit points into a picture, as large as they go, in the middle of what the margins leave.

        Parameters
        ----------
        points : sequence of (float, float)
            What must be seen, in length units.
        size : (float, float)
            Width and height of the picture.
        margins : (float, float, float, float)
            Room kept at the top, right, bottom and left, in picture units.
        """
        top, right, bottom, left = margins
        low_x, high_x = min(x for x, _ in points), max(x for x, _ in points)
        low_y, high_y = min(y for _, y in points), max(y for _, y in points)
        room_x, room_y = size[0] - left - right, size[1] - top - bottom
        scale = min(room_x / max(high_x - low_x, 1e-9), room_y / max(high_y - low_y, 1e-9))
        spare_x = (room_x - (high_x - low_x) * scale) / 2
        spare_y = (room_y - (high_y - low_y) * scale) / 2
        return cls(size[0], size[1], low_x - (left + spare_x) / scale, low_y - (bottom + spare_y) / scale, scale)

    def place(self, point: Point) -> Point:
        """Return where a point of the plane stands in the picture, from its upper left corner."""
        x, y = point
        return ((x - self.left) * self.scale, self.height - (y - self.bottom) * self.scale)

    def at(self, x: float, y: float) -> Point:
        """Return the point of the plane that stands at a place of the picture."""
        return (self.left + x / self.scale, self.bottom + (self.height - y) / self.scale)

    def length(self, picture_units: float) -> float:
        """Return the length that so many picture units show."""
        return picture_units / self.scale


@dataclass(frozen=True)
class Wood:
    """A piece of wood cut by the picture's plane or seen on its face: an outline filled with its own grain.

    Parameters
    ----------
    outline : tuple of points
        Closed by itself.
    tint : {"post", "end", "side", "board"}
        Which part it is; parts differ in tint and in the run of their grain, never in tint alone.
    grain : {"end", "long"}
        Growth rings for end grain, lines along the board for long grain.
    angle : float
        Direction of long grain, in degrees from level.
    pith : point or None
        Where the heart of the tree stood, for end grain.
    line : str
        Role of the outline; "" for none.
    """

    outline: Points
    tint: str = "board"
    grain: str = "long"
    angle: float = 0.0
    pith: Point | None = None
    line: str = "outline"


@dataclass(frozen=True)
class Line:
    """A line through points; closed and filled on wish.

    Roles of the line: "outline", "edge", "thin", "centre", "hidden", "accent", "string", "pencil", "quiet".
    Fills: "", "void", "steel", "paper", "fault", "post", "end", "side", "board".
    """

    points: Points
    role: str = "outline"
    closed: bool = False
    fill: str = ""


@dataclass(frozen=True)
class Circle:
    """A circle of a given radius, in length units, or (with `dot` above 0) a dot of that many picture units."""

    centre: Point
    radius: float = 0.0
    role: str = "outline"
    fill: str = ""
    dot: float = 0.0


@dataclass(frozen=True)
class Dimension:
    """A dimension: two points, the line set off to the left of the way from one to the other, and its text.

    `offset` is in picture units; a negative one sets it off to the right. `along` moves the text from the
    middle, in picture units towards the end point.
    """

    start: Point
    end: Point
    text: str
    offset: float = 0.0
    along: float = 0.0


@dataclass(frozen=True)
class Angle:
    """An angle at a vertex, from one direction to another (degrees, counter-clockwise), with its text."""

    vertex: Point
    start: float
    end: float
    text: str
    radius: float = 60.0
    role: str = "thin"


@dataclass(frozen=True)
class Label:
    """Words beside the picture, with a second quieter line on wish, and a leader to what they name.

    `where` is in length units: the end of the text that is nearest to the leader. `side` says to which side
    of `where` the words stand: "right", "left" or "middle".
    """

    text: str
    where: Point
    point: Point | None = None
    note: str = ""
    side: str = "right"
    role: str = "ink"
    bold: bool = False
    size: float = 15.0


@dataclass(frozen=True)
class Hatch:
    """An area struck with parallel lines: role "waste" for wood to be cut away, "fault" for what cannot be."""

    outline: Points
    role: str = "fault"
    angle: float = 45.0
    spacing: float = 8.0


@dataclass(frozen=True)
class MovingLine:
    """A line that the screen moves through its frames by itself; paper and reduced motion show the first."""

    frames: tuple[Points, ...]
    seconds: float
    role: str = "string"
    closed: bool = False
    dot: float = 0.0


Shape = Wood | Line | Circle | Dimension | Angle | Label | Hatch | MovingLine


@dataclass(frozen=True)
class Drawing:
    """A picture with its words: what is seen, the sentence below it, and the faults that it shows.

    Parameters
    ----------
    title : str
        What the picture is of; a screen reader says it first.
    frame : Frame
        The window.
    shapes : tuple of shapes
        Painted in this order.
    headline : str
        The result in one short sentence.
    told : str
        What else there is to say, with the numbers.
    faults : tuple of str
        What cannot be or should not be, each with what to change; the picture marks them too.

    >>> Drawing("a line", Frame(100, 80, 0, 0, 10), (Line(((1, 1), (2, 2))),), "It is short.").words
    'It is short.'
    """

    title: str
    frame: Frame
    shapes: tuple[Shape, ...]
    headline: str
    told: str = ""
    faults: tuple[str, ...] = field(default=())

    @property
    def words(self) -> str:
        """Everything that the picture says in words, for those who cannot see it."""
        return " ".join(part for part in (self.headline, self.told, *self.faults) if part)


def rectangle(left: float, bottom: float, right: float, top: float) -> Points:
    """Return the corners of a rectangle, counter-clockwise from the lower left.

    >>> rectangle(0, 0, 2, 1)
    ((0, 0), (2, 0), (2, 1), (0, 1))
    """
    return ((left, bottom), (right, bottom), (right, top), (left, top))


def arc(centre: Point, radius: float, start: float, end: float, pieces: int = 24) -> Points:
    """Return points along an arc, from one direction to another, in degrees.

    >>> [round(value, 6) for point in arc((0, 0), 1, 0, 90, 1) for value in point]
    [1.0, 0.0, 0.0, 1.0]
    """
    turns = [math.radians(start + (end - start) * step / pieces) for step in range(pieces + 1)]
    return tuple((centre[0] + radius * math.cos(turn), centre[1] + radius * math.sin(turn)) for turn in turns)


def break_line(start: Point, end: Point, pieces: int = 20) -> Points:
    """Return the wavy line that says: the board goes on beyond here.

    >>> break_line((0, 0), (0, 4))[0], break_line((0, 0), (0, 4))[-1]
    ((0.0, 0.0), (0.0, 4.0))
    """
    away = (end[0] - start[0], end[1] - start[1])
    waves = [(step / pieces, 0.04 * math.sin(2 * math.pi * step / pieces)) for step in range(pieces + 1)]
    waves[-1] = (1.0, 0.0)
    return tuple(
        (start[0] + along * away[0] - sway * away[1], start[1] + along * away[1] + sway * away[0])
        for along, sway in waves
    )


def spread(places: Sequence[float], gap: float, low: float, high: float) -> list[float]:
    """Move places along a line so that each keeps a gap from the next and all stay between two bounds.

    Parameters
    ----------
    places : sequence of float
        In rising order.
    gap : float
        Least distance between neighbours, >= 0.
    low, high : float
        The bounds; when they are too near for all gaps, the last places give way past none of them evenly.

    Returns
    -------
    list of float
        As near to the given places as a push to either side allows.

    >>> spread([1.0, 1.2, 5.0], gap=1.0, low=0.0, high=6.0)
    [1.0, 2.0, 5.0]
    """
    if not places:
        return []
    room = (high - low) / max(len(places) - 1, 1)
    step = min(gap, room)
    moved = [max(places[0], low)]
    for place in places[1:]:
        moved.append(max(place, moved[-1] + step))
    moved[-1] = min(moved[-1], high)
    for index in range(len(moved) - 2, -1, -1):
        moved[index] = min(moved[index], moved[index + 1] - step)
    return moved
