"""A drawing on paper: painted by Matplotlib from the same marks as the picture on the screen.

A picture is as large on paper as it is on a screen; a page at true size keeps the lettering of the screen and
draws its lengths one to one.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from dataclasses import replace

from matplotlib.figure import Figure

from woodmath.drawing import Drawing, Frame, Points, arc
from woodmath.errors import ImpossibleShape, UnknownName
from woodmath.fractions_in_print import set_fractions
from woodmath.layout import wrapped
from woodmath.marks import marks
from woodmath.paint import paint, written
from woodmath.paper import PAPERS, UNITS_IN_A_MILLIMETRE, paper_size
from woodmath.pens import PALETTE, Stroke, Words
from woodmath.true_size import bars_and_title, extent, middle_of_the_room, reframed, room_beside_the_bars

_INSET = 24.0
_LINE_HEIGHT = 22.0


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
    scale = unit_in_millimetres * UNITS_IN_A_MILLIMETRE
    title = f"{name}: {drawing.title}" if name else drawing.title
    left, top, right, bottom = extent(marks(reframed(drawing, Frame(1.0, 0.0, 0.0, 0.0, scale))))
    width, height = _sheet_for(
        (right - left) / UNITS_IN_A_MILLIMETRE, (bottom - top) / UNITS_IN_A_MILLIMETRE, paper
    )
    page = bars_and_title(title, width, height, f"sheet {sheet} of {sheets}")
    middle_x, middle_y = (each * UNITS_IN_A_MILLIMETRE for each in middle_of_the_room(width, height))
    placed = replace(
        page.frame,
        left=((left + right) / 2 - middle_x) / scale,
        bottom=(-(top + bottom) / 2 - middle_y) / scale,
        scale=scale,
    )
    painted = (*marks(reframed(drawing, placed)), *marks(page))
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
    return without_scaling(written(figure, "pdf", told))


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


def without_scaling(pdf: bytes) -> bytes:
    """Renew the catalogue of a PDF so that it asks not to be scaled (ISO 32000-1, 7.5.6 and 12.2).

    Parameters
    ----------
    pdf : bytes
        A whole file that Matplotlib wrote.

    Returns
    -------
    bytes
        The file with one object more.
    """
    catalogue = re.search(rb"\n(\d+) 0 obj\n<< (/Type /Catalog .*?) >>\nendobj", pdf)
    trailer = re.search(rb"trailer\n<< (.*?) >>\nstartxref\n(\d+)\n%%EOF\n\Z", pdf, re.DOTALL)
    assert catalogue and trailer
    number = int(catalogue[1])
    preferences = b"/ViewerPreferences << /PrintScaling /None /Duplex /Simplex >>"
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
        for line in wrapped(set_fractions(text), 15.0, bold, drawing.frame.width - 2 * _INSET):
            level += _LINE_HEIGHT
            yield Words(line, (_INSET, level), 15.0, colour, "start", bold)


def _sheet_for(needed_width: float, needed_height: float, paper: str) -> tuple[float, float]:
    """Return width and height of the sheet, upright if it fits and else on its side, all in millimetres."""
    upright = paper_size(paper)
    rooms = []
    for width, height in (upright, upright[::-1]):
        rooms.append(room_beside_the_bars(width, height))
        if needed_width <= rooms[-1][0] and needed_height <= rooms[-1][1]:
            return width, height
    standing, lying = (f"{math.floor(wide)} by {math.floor(high)} mm" for wide, high in rooms)
    raise ImpossibleShape(
        f"At full size the drawing needs {math.ceil(needed_width)} by {math.ceil(needed_height)} mm with its "
        f"dimensions. A sheet of {PAPERS[paper][0]} has room for {standing}, or for {lying} laid on its side. "
        "Draw a smaller part of it."
    )
