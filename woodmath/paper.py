"""Sheets of paper before they are painted: a size, and the marks that stand on it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from types import MappingProxyType

from woodmath.errors import UnknownName
from woodmath.outlines import Point
from woodmath.pens import Mark, Words
from woodmath.rule_reading import INCH

PAPERS = MappingProxyType({"a4": ("A4", 210.0, 297.0), "letter": ("Letter", 215.9, 279.4)})
"""Name, width and height in millimetres (A4: ISO 216; Letter: 8 1/2 by 11 in)."""

UNITS_IN_AN_INCH = 96.0
"""Picture units to an inch of paper: lettering is as large as on the screen."""

UNITS_IN_A_MILLIMETRE = UNITS_IN_AN_INCH / float(INCH)


@dataclass(frozen=True)
class Layer:
    """Marks that are painted together, and the window through which they are seen.

    Parameters
    ----------
    marks : tuple of marks
        In painting order, in picture units from the sheet's upper left corner.
    window : tuple of float
        Left, top, right and bottom, in picture units; empty where all of the sheet is seen.
    moved : (float, float)
        How far the marks are moved to the right and down, in picture units; the window is not.

    >>> Layer((), (0.0, 0.0, 10.0, 10.0)).window[2]
    10.0
    """

    marks: tuple[Mark, ...]
    window: tuple[float, ...] = ()
    moved: Point = (0.0, 0.0)


@dataclass(frozen=True)
class PaperSheet:
    """One sheet, ready to be painted.

    Parameters
    ----------
    title : str
        What is on it.
    width, height : float
        In millimetres, > 0.
    layers : tuple of Layer
        One over the other.

    >>> PaperSheet("nothing", 210.0, 297.0, ()).height_in_units > 1122
    True
    """

    title: str
    width: float
    height: float
    layers: tuple[Layer, ...]

    @property
    def width_in_units(self) -> float:
        """The width in picture units."""
        return self.width * UNITS_IN_A_MILLIMETRE

    @property
    def height_in_units(self) -> float:
        """The height in picture units."""
        return self.height * UNITS_IN_A_MILLIMETRE


def paper_size(paper: str) -> tuple[float, float]:
    """Width and height of a paper that stands upright, in millimetres.

    Parameters
    ----------
    paper : {"a4", "letter"}

    Raises
    ------
    UnknownName
        If there is no such paper.

    Source: ISO 216 (A4); ANSI/ASME Y14.1 (Letter, 8 1/2 by 11 in).

    >>> paper_size("letter")
    (215.9, 279.4)
    """
    if paper not in PAPERS:
        raise UnknownName(f"There is no paper called {paper!r}. Choose one of: {', '.join(PAPERS)}.")
    _, width, height = PAPERS[paper]
    return width, height


def numbered(sheets: Iterable[PaperSheet], warning: str = "") -> tuple[PaperSheet, ...]:
    """Write on every sheet, at its upper right, which page of how many it is.

    Parameters
    ----------
    sheets : iterable of PaperSheet
        In the order in which they are printed.
    warning : str
        A few words over the number of every page; "" for none.

    >>> pages = numbered([PaperSheet("nothing", 210.0, 297.0, ())] * 2)
    >>> pages[1].layers[-1].marks[0].text
    'page 2 of 2'
    """
    pages = tuple(sheets)
    return tuple(
        replace(page, layers=(*page.layers, _corner(page, f"page {place} of {len(pages)}", warning)))
        for place, page in enumerate(pages, start=1)
    )


def _corner(page: PaperSheet, count: str, warning: str) -> Layer:
    right = page.width_in_units - 12.0 * UNITS_IN_A_MILLIMETRE
    counted = Words(count, (right, 14.0 * UNITS_IN_A_MILLIMETRE), 13.0, "quiet", "end")
    if not warning:
        return Layer((counted,))
    return Layer(
        (counted, Words(warning, (right, 10.0 * UNITS_IN_A_MILLIMETRE), 14.0, "accent", "end", True))
    )
