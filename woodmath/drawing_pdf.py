"""A drawing on paper: painted by Matplotlib from the same marks as the picture on the screen.

A picture is as large on paper as it is on a screen; a page at true size keeps the lettering of the screen and
draws its lengths one to one.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Iterator
from dataclasses import replace
from types import MappingProxyType

from matplotlib.figure import Figure

from woodmath.drawing import Angle, Dimension, Drawing, Frame, Label, Points, Shape, arc
from woodmath.errors import ImpossibleShape, UnknownName
from woodmath.fractions_in_print import set_fractions
from woodmath.lettering import text_width
from woodmath.marks import marks
from woodmath.paint import UNITS_IN_AN_INCH, paint, written
from woodmath.pens import PALETTE, Disc, Mark, Motion, Stroke, Words
from woodmath.rule_reading import INCH

PAPERS = MappingProxyType({"a4": ("A4", 210.0, 297.0), "letter": ("Letter", 215.9, 279.4)})
"""Name, width and height in millimetres (A4: ISO 216; Letter: 8 1/2 by 11 in)."""

_UNITS_IN_A_MILLIMETRE = UNITS_IN_AN_INCH / float(INCH)
_INSET = 24.0
_LINE_HEIGHT = 22.0
_EDGE = 10.0
_BESIDE, _ABOVE, _BELOW = 26.0, 10.0, 17.0


def figure_of(drawing: Drawing, sentence: bool = True) -> Figure:
    """Paint a drawing on a figure, with its words below it.

    Parameters
    ----------
    drawing : Drawing
        What is to be seen; of a line that moves, the first frame.
    sentence : bool
        Whether headline, told words and faults stand below the picture.

    Returns
    -------
    Figure
        As large as the picture's frame at 96 picture units to the inch, and taller by the words.

    >>> from woodmath.drawing import Line
    >>> line = Drawing("a line", Frame(96, 48, 0, 0, 10), (Line(((1, 1), (2, 2))),), "Short.")
    >>> figure = figure_of(line, sentence=False)
    >>> [round(float(size), 3) for size in figure.get_size_inches()]
    [1.0, 0.5]
    """
    frame = drawing.frame
    words = tuple(_below(drawing)) if sentence else ()
    height = max((mark.where[1] + 16.0 for mark in words), default=frame.height)
    sheet = Stroke((_rounded(frame.width, height, 10.0),), None, True, "paper")
    return paint(drawing.title, frame.width, height, (sheet, *marks(drawing)), PALETTE["paper"], words)


def true_size_page(
    drawing: Drawing,
    unit_in_millimetres: float,
    paper: str = "a4",
    name: str = "",
    sheet: int = 1,
    sheets: int = 1,
) -> Figure:
    """Paint a drawing on a sheet of paper at full size, with check bars and the reminder to measure them.

    Parameters
    ----------
    drawing : Drawing
        What is to be printed; its frame's scale is not used. Lines and lettering keep their size.
    unit_in_millimetres : float
        One length unit of the drawing, in millimetres, > 0: 25.4 for inches.
    paper : {"a4", "letter"}
        Upright, or laid on its side where only that has the room.
    name : str
        Name of the piece, before the drawing's title.
    sheet, sheets : int
        Which sheet of how many, 1 <= sheet <= sheets.

    Returns
    -------
    Figure
        The whole sheet; `pdf_bytes` makes a file of it.

    Raises
    ------
    ImpossibleShape
        If the drawing with its dimensions is larger than the printable area.
    UnknownName
        If there is no such paper or sheet.

    >>> from woodmath.drawing import Line
    >>> line = Drawing("a line", Frame(96, 48, 0, 0, 10), (Line(((1, 1), (2, 2))),), "Short.")
    >>> [round(25.4 * float(size), 3) for size in true_size_page(line, 25.4).get_size_inches()]
    [210.0, 297.0]
    """
    if not 1 <= sheet <= sheets:
        raise UnknownName(f"There is no sheet {sheet} of {sheets}. Count the sheets from 1 to {sheets}.")
    if not 0 < unit_in_millimetres < float("inf"):
        raise ImpossibleShape(
            f"One unit of the drawing cannot be {unit_in_millimetres} millimetres. Give 25.4 for a drawing "
            "in inches, 1 for one in millimetres."
        )
    scale = unit_in_millimetres * _UNITS_IN_A_MILLIMETRE
    title = f"{name}: {drawing.title}" if name else drawing.title
    left, top, right, bottom = _extent(marks(_reframed(drawing, Frame(1.0, 0.0, 0.0, 0.0, scale))))
    width, height = _sheet_for(
        (right - left) / _UNITS_IN_A_MILLIMETRE, (bottom - top) / _UNITS_IN_A_MILLIMETRE, paper
    )
    page = _page(title, width, height, f"sheet {sheet} of {sheets}")
    room = _room(width, height)
    middle_x = (_EDGE + _BESIDE + room[0] / 2) * _UNITS_IN_A_MILLIMETRE
    middle_y = (_EDGE + _BELOW + room[1] / 2) * _UNITS_IN_A_MILLIMETRE
    placed = replace(
        page.frame,
        left=((left + right) / 2 - middle_x) / scale,
        bottom=(-(top + bottom) / 2 - middle_y) / scale,
        scale=scale,
    )
    painted = (*marks(_reframed(drawing, placed)), *marks(page))
    return paint(title, placed.width, placed.height, painted, "#ffffff")


def pdf_bytes(figure: Figure) -> bytes:
    """Return a figure as a PDF file that asks to be printed at 100 %, the same bytes for the same figure.

    Parameters
    ----------
    figure : Figure
        From `figure_of` or `true_size_page`.

    Returns
    -------
    bytes
        The whole file, to be written as it is.

    >>> pdf_bytes(figure_of(Drawing("nothing", Frame(96, 48, 0, 0, 10), (), "Nothing.")))[:5]
    b'%PDF-'
    """
    told = {"Title": figure.get_label(), "Creator": None, "Producer": None, "CreationDate": None}
    return _without_scaling(written(figure, "pdf", told))


def svg_bytes(figure: Figure) -> bytes:
    """Return a figure as an SVG file, letters as outlines, the same bytes for the same figure.

    Parameters
    ----------
    figure : Figure
        From `figure_of` or `true_size_page`.

    Returns
    -------
    bytes
        The whole file, to be written as it is.

    >>> svg_bytes(figure_of(Drawing("nothing", Frame(96, 48, 0, 0, 10), (), "Nothing.")))[:5]
    b'<?xml'
    """
    return written(figure, "svg", {"Title": figure.get_label(), "Creator": None, "Date": None})


def _without_scaling(pdf: bytes) -> bytes:
    """Renew the catalogue of a PDF so that it asks not to be scaled (ISO 32000-1, 7.5.6 and 12.2)."""
    catalogue = re.search(rb"\n(\d+) 0 obj\n<< (/Type /Catalog .*?) >>\nendobj", pdf)
    trailer = re.search(rb"trailer\n<< (.*?) >>\nstartxref\n(\d+)\n%%EOF\n\Z", pdf, re.DOTALL)
    assert catalogue and trailer
    number = int(catalogue[1])
    preferences = b"/ViewerPreferences << /PrintScaling /None >>"
    renewed = b"%d 0 obj\n<< %b %b >>\nendobj\n" % (number, catalogue[2], preferences)
    table = b"xref\n%d 1\n%010d 00000 n \n" % (number, len(pdf))
    end = b"trailer\n<< %b /Prev %b >>\nstartxref\n%d\n%%%%EOF\n"
    return pdf + renewed + table + end % (trailer[1], trailer[2], len(pdf) + len(renewed))


def _rounded(width: float, height: float, radius: float) -> Points:
    corners = ((width, height, 0), (0.0, height, 90), (0.0, 0.0, 180), (width, 0.0, 270))
    return tuple(
        point
        for x, y, turn in corners
        for point in arc((abs(x - radius), abs(y - radius)), radius, turn, turn + 90, 6)
    )


def _below(drawing: Drawing) -> Iterator[Words]:
    """Yield the lines below a picture: the headline, what else is told, and each fault with its mark."""
    parts = [(drawing.headline, "ink", True), (drawing.told, "ink", False)]
    parts += [(f"✗ {fault}", "accent", False) for fault in drawing.faults]
    level = drawing.frame.height + 6.0
    for text, colour, bold in parts:
        for line in _wrapped(set_fractions(text), 15.0, bold, drawing.frame.width - 2 * _INSET):
            level += _LINE_HEIGHT
            yield Words(line, (_INSET, level), 15.0, colour, "start", bold)


def _wrapped(text: str, size: float, bold: bool, width: float) -> list[str]:
    lines: list[str] = []
    for word in text.split(" ") if text else []:
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and text_width(longer, size, bold) <= width:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines


def _reframed(drawing: Drawing, frame: Frame) -> Drawing:
    """Return a drawing in another frame: its lengths scale, its labels stay as far from what they name."""
    shapes: list[Shape] = []
    for shape in drawing.shapes:
        if isinstance(shape, Label) and shape.point:
            (x, y), (from_x, from_y) = drawing.frame.place(shape.where), drawing.frame.place(shape.point)
            to_x, to_y = frame.place(shape.point)
            shapes.append(replace(shape, where=frame.at(to_x + x - from_x, to_y + y - from_y)))
        elif isinstance(shape, Angle):
            shapes.append(replace(shape, radius=shape.radius * min(1.0, frame.scale / drawing.frame.scale)))
        else:
            shapes.append(shape)
    return replace(drawing, frame=frame, shapes=tuple(shapes))


def _room(width: float, height: float) -> tuple[float, float]:
    """Return the width and height that a sheet leaves beside its bars and its title, in millimetres."""
    return (width - 2 * _EDGE - _BESIDE, height - 2 * _EDGE - _ABOVE - _BELOW)


def _sheet_for(needed_width: float, needed_height: float, paper: str) -> tuple[float, float]:
    """Return width and height of the sheet, upright if it fits and else on its side, all in millimetres."""
    if paper not in PAPERS:
        raise UnknownName(f"There is no paper called {paper!r}. Choose one of: {', '.join(PAPERS)}.")
    called, *upright = PAPERS[paper]
    rooms = []
    for width, height in (upright, reversed(upright)):
        rooms.append(_room(width, height))
        if needed_width <= rooms[-1][0] and needed_height <= rooms[-1][1]:
            return width, height
    standing, lying = (f"{math.floor(wide)} by {math.floor(high)} mm" for wide, high in rooms)
    raise ImpossibleShape(
        f"At full size the drawing needs {math.ceil(needed_width)} by {math.ceil(needed_height)} mm with its "
        f"dimensions. A sheet of {called} has room for {standing}, or for {lying} laid on its side. "
        "Draw a smaller part of it."
    )


def _extent(painted: Iterable[Mark]) -> tuple[float, float, float, float]:
    """Return left, top, right and bottom of everything that is seen, in picture units."""
    boxes = []
    for mark in painted:
        if isinstance(mark, Words):
            boxes.append(mark.box)
            continue
        reach = mark.pen.width / 2 if mark.pen else 0.0
        if isinstance(mark, Motion):
            reach = max(reach, mark.dot)
            points = [point for frame in mark.frames for point in frame]
        elif mark.clip:
            points = list(mark.clip)
        elif isinstance(mark, Disc):
            reach += mark.radius
            points = [mark.centre]
        else:
            points = [point for line in mark.lines for point in line]
        xs, ys = [x for x, _ in points], [y for _, y in points]
        boxes.append((min(xs) - reach, min(ys) - reach, max(xs) + reach, max(ys) + reach))
    lefts, tops, rights, bottoms = zip(*boxes or [(0.0, 0.0, 0.0, 0.0)], strict=True)
    return (min(lefts), min(tops), max(rights), max(bottoms))


def _page(title: str, width: float, height: float, count: str) -> Drawing:
    """Return what every sheet carries, in millimetres of the sheet."""
    corner_x, corner_y, top = _EDGE + 6.0, _EDGE, height - _EDGE - 3.0
    room = (width - 2 * _EDGE - 30.0) * _UNITS_IN_A_MILLIMETRE
    reminder = _wrapped(
        "Print at 100 %, measure before you cut: all four bars must be true.",
        13.0,
        False,
        (width - _EDGE - corner_x - 108.0) * _UNITS_IN_A_MILLIMETRE,
    )
    shapes: list[Shape] = []
    for step, (text, length) in enumerate((("100 mm", 100.0), ("4 in", 4 * float(INCH)))):
        x, y = corner_x + 11.0 * step, corner_y + 7.0 * step
        shapes += [
            Dimension((corner_x, y), (corner_x + length, y), text, 10.0),
            Dimension((x, corner_y + 17.0), (x, corner_y + 17.0 + length), text, -10.0, 30.0 * step),
        ]
    shapes += [
        Label(line, (_EDGE, top - 5.0 * row), bold=True)
        for row, line in enumerate(_wrapped(set_fractions(title), 15.0, True, room))
    ]
    shapes += [
        Label(line, (corner_x + 108.0, corner_y + 13.0 - 5.0 * row), size=13.0)
        for row, line in enumerate(reminder)
    ]
    shapes.append(Label(count, (width - _EDGE, top), side="left", role="quiet"))
    size = (width * _UNITS_IN_A_MILLIMETRE, height * _UNITS_IN_A_MILLIMETRE)
    return Drawing(title, Frame(*size, 0.0, 0.0, _UNITS_IN_A_MILLIMETRE), tuple(shapes), "")
