"""Pens, colours and the four kinds of marks that a renderer must know; all sizes in picture units."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
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
    """A line, or the dot at its place, that goes through its frames again and again.

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

    >>> Motion((((0.0, 0.0),), ((1.0, 0.0),)), PENS["pencil"], 2.0, False, 5.0).dot
    5.0
    """

    frames: tuple[Points, ...]
    pen: Pen
    seconds: float
    closed: bool
    dot: float


Mark = Stroke | Disc | Words | Motion
