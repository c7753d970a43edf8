"""What a drawing is made of: wood, lines, dimensions and words, in the length unit of the piece."""

from __future__ import annotations

from dataclasses import dataclass

from woodmath.outlines import Point, Points


@dataclass(frozen=True)
class Wood:
    """A piece of wood cut by the picture's plane or seen on its face: an outline filled with its own grain.

    Parameters
    ----------
    outline : tuple of points
        Closed by itself.
    tint : {"post", "end", "side", "board", "pattern"}
        Which part it is; parts differ in tint and in the run of their grain, never in tint alone.
    grain : {"end", "long"}
        Growth rings for end grain, lines along the board for long grain.
    angle : float
        Direction of long grain, in degrees from level.
    pith : point or None
        Where the heart of the tree stood, for end grain.
    line : str
        Role of the outline; "" for none.

    >>> Wood(((0, 0), (2, 0), (2, 1)), "post", "end").grain
    'end'
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

    Parameters
    ----------
    points : tuple of (float, float)
        In length units.
    role : {"outline", "edge", "thin", "centre", "hidden", "accent", "string", "pencil", "quiet", "ring"}
        What the line is, and so how heavy and how broken it is drawn.
    closed : bool
        Whether the last point is joined to the first.
    fill : {"", "void", "steel", "paper", "fault", "post", "end", "side", "board"}
        What the area within is; "" for nothing.

    >>> Line(((0, 0), (1, 0)), "centre").closed
    False
    """

    points: Points
    role: str = "outline"
    closed: bool = False
    fill: str = ""


@dataclass(frozen=True)
class Circle:
    """A circle, or a dot that is as large at every scale.

    Parameters
    ----------
    centre : (float, float)
        In length units.
    radius : float
        In length units, >= 0; without meaning for a dot.
    role, fill : str
        As for `Line`.
    dot : float
        Radius in picture units, which makes it a dot; 0 for a circle.

    >>> Circle((0, 0), 1.5).radius, Circle((0, 0), dot=6.0).dot
    (1.5, 6.0)
    """

    centre: Point
    radius: float = 0.0
    role: str = "outline"
    fill: str = ""
    dot: float = 0.0


@dataclass(frozen=True)
class Dimension:
    """A dimension: two points, a line with arrowheads set off beside them, and its text.

    Parameters
    ----------
    start, end : (float, float)
        What is measured, in length units.
    text : str
        The length as it is marked.
    offset : float
        How far to the left of the way from start to end the line is set off, in picture units; to the right
        if it is less than 0.
    along : float
        How far the text is moved from the middle towards the end, in picture units.

    >>> Dimension((0, 0), (1.75, 0), "1 3/4", offset=-20.0).text
    '1 3/4'
    """

    start: Point
    end: Point
    text: str
    offset: float = 0.0
    along: float = 0.0


@dataclass(frozen=True)
class Angle:
    """An angle at a vertex, an arc from one direction to another, with its text.

    Parameters
    ----------
    vertex : (float, float)
        In length units.
    start, end : float
        Directions in degrees, counter-clockwise from level to the right.
    text : str
        The angle as it is told.
    radius : float
        Of the arc, in picture units, > 0.
    role : str
        As for `Line`.

    >>> Angle((0, 0), 0.0, 45.0, "45°").radius
    60.0
    """

    vertex: Point
    start: float
    end: float
    text: str
    radius: float = 60.0
    role: str = "thin"


@dataclass(frozen=True)
class Label:
    """Words beside the picture, with a second quieter line on wish, and a leader to what they name.

    Parameters
    ----------
    text : str
        The words.
    where : (float, float)
        The end of the text that is nearest to the leader, in length units.
    point : (float, float) or None
        What the leader points to, in length units; None for no leader.
    note : str
        The second line; "" for none.
    side : {"right", "left", "middle"}
        To which side of `where` the words stand.
    role : str
        Colour of the words: "ink", "accent", "quiet".
    bold : bool
        Whether the letters are bold.
    size : float
        Of the letters, in picture units, > 0.

    >>> Label("lips", (0.0, 0.0), (1.0, 0.0), note="full width to here").side
    'right'
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
    """An area struck with parallel lines.

    Parameters
    ----------
    outline : tuple of (float, float)
        In length units, closed by itself.
    role : {"waste", "fault"}
        Wood to be cut away, or what cannot be.
    angle : float
        Direction of the lines, in degrees from level.
    spacing : float
        From line to line, in picture units, > 0.

    >>> Hatch(((0, 0), (2, 0), (2, 1)), "waste").spacing
    8.0
    """

    outline: Points
    role: str = "fault"
    angle: float = 45.0
    spacing: float = 8.0


@dataclass(frozen=True)
class MovingLine:
    """A line that the screen moves through its frames by itself; paper and reduced motion show the first.

    Parameters
    ----------
    frames : tuple of tuples of (float, float)
        The line's points at each moment, in length units; as many points in every frame.
    seconds : float
        From the first frame to the last, > 0; the frames are evenly spaced in time.
    role : str
        As for `Line`.
    closed : bool
        Whether the last point is joined to the first.
    dot : float
        Radius of a dot at the first point, in picture units; with it there is a dot and no line. 0 for the line.
    again : bool
        Whether it begins again after the last frame; otherwise it stays there.
    fill : str
        As for `Line`.

    >>> len(MovingLine((((0, 0), (1, 0)), ((0, 0), (1, 1))), seconds=2.0).frames)
    2
    """

    frames: tuple[Points, ...]
    seconds: float
    role: str = "string"
    closed: bool = False
    dot: float = 0.0
    again: bool = True
    fill: str = ""


@dataclass(frozen=True)
class MovingBody:
    """Shapes that move as one stiff body, played by the screen itself; paper and reduced motion show the first pose.

    Parameters
    ----------
    shapes : tuple of Wood, Line, Circle or Hatch
        The body as it is drawn at rest, in length units; words do not move.
    about : (float, float)
        The point of the body at rest whose way the poses tell, in length units.
    poses : tuple of (float, float, float)
        Across and up where that point is at each moment, in length units; and how far the body is turned about it
        from rest, in degrees: counter-clockwise is more than 0, clockwise less. At least one.
    seconds : float
        From the first pose to the last, > 0; the poses are evenly spaced in time, and the body goes straight from
        one to the next. So that it begins again without a jump, the last pose is the first.
    again : bool
        Whether it begins again after the last pose; otherwise it stays there.

    >>> wheel = (Circle((0.0, 1.0), 1.0), Line(((0.0, 0.0), (0.0, 1.0))))
    >>> half_a_turn = ((0.0, 1.0, 0.0), (1.570796, 1.0, -90.0), (3.141593, 1.0, -180.0))
    >>> MovingBody(wheel, (0.0, 1.0), half_a_turn, seconds=2.0, again=False).poses[-1][2]
    -180.0
    """

    shapes: tuple[Wood | Line | Circle | Hatch, ...]
    about: Point
    poses: tuple[tuple[float, float, float], ...]
    seconds: float
    again: bool = True


Shape = Wood | Line | Circle | Dimension | Angle | Label | Hatch | MovingLine | MovingBody
