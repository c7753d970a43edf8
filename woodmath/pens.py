"""Pens, colours and the five kinds of marks that a renderer must know; all sizes in picture units."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType

from woodmath.lettering import BELOW_THE_LINE, LETTER_HEIGHT, text_width
from woodmath.outlines import Point, Points

PALETTE: Mapping[str, str] = MappingProxyType(
    {
        "paper": "#fbf7ef",
        "ink": "#2b2622",
        "quiet": "#6b6358",
        "measure": "#1f5f8b",
        "accent": "#b5411e",
        "post": "#ead9ba",
        "post grain": "#c3a06a",
        "end": "#d9a866",
        "end grain": "#ad783a",
        "side": "#b8c6ae",
        "side grain": "#7f9874",
        "board": "#e3c48f",
        "board grain": "#bd9456",
        "void": "#f4ede0",
        "steel": "#c6cdd4",
        "string": "#7a5326",
        "fault": "#f3d3c6",
        "waste": "#f3e9d8",
        "pattern": "#fdfbf6",
        "pattern grain": "#dccbb0",
    }
)
"""Colours by role; told apart by lightness too, so that nothing hangs on telling red from green."""


@dataclass(frozen=True)
class Pen:
    """How a line is drawn.

    Parameters
    ----------
    colour : str
        A role of the palette.
    width : float
        In picture units, > 0.
    dashes : tuple of float
        Lengths of dash and gap in turn, in picture units; none for a whole line.

    >>> Pen("ink", 1.5).dashes
    ()
    """

    colour: str
    width: float
    dashes: tuple[float, ...] = ()


PENS: Mapping[str, Pen] = MappingProxyType(
    {
        "outline": Pen("ink", 2.4),
        "edge": Pen("ink", 1.5),
        "thin": Pen("measure", 1.1),
        "centre": Pen("quiet", 1.0, (12, 4, 2, 4)),
        "hidden": Pen("ink", 1.2, (6, 4)),
        "accent": Pen("accent", 3.6),
        "string": Pen("string", 2.0),
        "pencil": Pen("ink", 1.6),
        "quiet": Pen("quiet", 1.0),
        "fault": Pen("accent", 1.2),
        "waste": Pen("quiet", 0.8),
        "ring": Pen("board grain", 1.2),
    }
)
"""Pens by role: thick outlines, thin dimension lines, dash-dot centre lines."""


@dataclass(frozen=True)
class Stroke:
    """One or more lines of one kind.

    Parameters
    ----------
    lines : tuple of outlines
        Points in picture units, from the upper left corner.
    pen : Pen or None
        None for an area without a line.
    closed : bool
        Whether each line goes back to its beginning.
    fill : str
        A role of the palette, or "".
    clip : outline
        Only what lies inside it is seen; all where there is none.

    >>> Stroke((((0.0, 0.0), (1.0, 1.0)),), PENS["thin"]).closed
    False
    """

    lines: tuple[Points, ...]
    pen: Pen | None
    closed: bool = False
    fill: str = ""
    clip: Points = ()


@dataclass(frozen=True)
class Disc:
    """A circle.

    Parameters
    ----------
    centre : point
        In picture units.
    radius : float
        In picture units, >= 0.
    pen, fill, clip
        As for a stroke.

    >>> Disc((5.0, 5.0), 2.0, None, "ink").radius
    2.0
    """

    centre: Point
    radius: float
    pen: Pen | None
    fill: str = ""
    clip: Points = ()


@dataclass(frozen=True)
class Words:
    """A text in one line.

    Parameters
    ----------
    text : str
        What is written.
    where : point
        On the base line, at the anchor.
    size : float
        Of the lettering, in picture units, > 0.
    colour : str
        A role of the palette.
    anchor : {"start", "middle", "end"}
        Which part of the text stands at `where`.
    bold : bool
        Whether the letters are bold.

    >>> Words("1", (10.0, 20.0), 10.0, "ink").box[0]
    10.0
    """

    text: str
    where: Point
    size: float
    colour: str
    anchor: str = "start"
    bold: bool = False

    @property
    def box(self) -> tuple[float, float, float, float]:
        """Left, top, right and bottom of the room that the text takes, by the table of widths."""
        width = text_width(self.text, self.size, self.bold)
        x, y = self.where
        left = {"start": x, "middle": x - width / 2, "end": x - width}[self.anchor]
        return (left, y - LETTER_HEIGHT * self.size, left + width, y + BELOW_THE_LINE * self.size)


@dataclass(frozen=True)
class Motion:
    """A line, or the dot at its place, that goes through its frames.

    Parameters
    ----------
    frames : tuple of outlines
        All with as many points, in picture units.
    pen : Pen
        For the line, or for the colour of the dot.
    seconds : float
        How long one round takes, > 0.
    closed : bool
        Whether the line goes back to its beginning.
    dot : float
        Radius of the dot, in picture units; 0 for a line.
    again : bool
        Whether it begins again after the last frame; otherwise it stays there.
    fill : str
        What the line goes round; "" for nothing.

    >>> Motion((((0.0, 0.0),), ((1.0, 0.0),)), PENS["pencil"], 2.0, False, 5.0).dot
    5.0
    """

    frames: tuple[Points, ...]
    pen: Pen
    seconds: float
    closed: bool
    dot: float
    again: bool = True
    fill: str = ""


@dataclass(frozen=True)
class Body:
    """Strokes and discs that move together as one stiff body.

    Parameters
    ----------
    marks : tuple of Stroke or Disc
        The body at rest, in painting order.
    about : point
        The point of the body at rest whose way the poses tell.
    poses : tuple of (float, float, float)
        Where that point is at each moment, in picture units, and how far the body is turned about it, in degrees:
        counter-clockwise, as it is seen, is more than 0. At least one.
    seconds : float
        From the first pose to the last, > 0.
    again : bool
        Whether it begins again after the last pose; otherwise it stays there.

    >>> hand = Stroke((((0.0, 0.0), (10.0, 0.0)),), PENS["thin"])
    >>> (turned,) = Body((hand,), (0.0, 0.0), ((50.0, 50.0, 90.0),), 1.0).first
    >>> turned.lines
    (((50.0, 50.0), (50.0, 40.0)),)
    """

    marks: tuple[Stroke | Disc, ...]
    about: Point
    poses: tuple[tuple[float, float, float], ...]
    seconds: float
    again: bool = True

    @property
    def first(self) -> tuple[Stroke | Disc, ...]:
        """The marks where they stand at the first pose: what paper shows."""
        return self.at(self.poses[0])

    def at(self, pose: tuple[float, float, float]) -> tuple[Stroke | Disc, ...]:
        """Return the marks where they stand at a pose, in painting order."""
        (from_x, from_y), (to_x, to_y, degrees) = self.about, pose
        cosine, sine = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))

        def there(line: Points) -> Points:
            ways = ((x - from_x, y - from_y) for x, y in line)
            return tuple(
                (to_x + cosine * right + sine * down, to_y + cosine * down - sine * right)
                for right, down in ways
            )

        return tuple(
            replace(mark, lines=tuple(map(there, mark.lines)), clip=there(mark.clip))
            if isinstance(mark, Stroke)
            else replace(mark, centre=there((mark.centre,))[0], clip=there(mark.clip))
            for mark in self.marks
        )


Mark = Stroke | Disc | Words | Motion | Body
