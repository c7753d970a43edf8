"""A drawing as data: outlines, wood, dimensions and labels in the length unit of the piece.

Nothing here knows how a picture is made; `marks` turns a drawing into strokes and words, and the two
renderers paint those.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from woodmath.outlines import Point, Points, arc, break_line, rectangle, spread
from woodmath.shapes import Angle, Circle, Dimension, Hatch, Label, Line, MovingBody, MovingLine, Shape, Wood

__all__ = [
    "Angle",
    "Circle",
    "Dimension",
    "Drawing",
    "Frame",
    "Hatch",
    "Label",
    "Line",
    "MovingBody",
    "MovingLine",
    "Point",
    "Points",
    "Shape",
    "Wood",
    "arc",
    "break_line",
    "rectangle",
    "spread",
]


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

        Returns
        -------
        Frame
            Of the size asked for; its scale is the largest that shows every point.

        >>> Frame.around(((0, 0), (4, 2)), size=(100.0, 100.0), margins=(10.0, 10.0, 10.0, 10.0)).scale
        20.0
        """
        top, right, bottom, left = margins
        low_x, high_x = min(x for x, _ in points), max(x for x, _ in points)
        low_y, high_y = min(y for _, y in points), max(y for _, y in points)
        room_x, room_y = size[0] - left - right, size[1] - top - bottom
        scale = min(room_x / max(high_x - low_x, 1e-9), room_y / max(high_y - low_y, 1e-9))
        spare_x = (room_x - (high_x - low_x) * scale) / 2
        spare_y = (room_y - (high_y - low_y) * scale) / 2
        return cls(
            size[0], size[1], low_x - (left + spare_x) / scale, low_y - (bottom + spare_y) / scale, scale
        )

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
