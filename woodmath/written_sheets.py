"""Sheets to be read and not measured: blocks of words and pictures, with the piece's name at the foot."""

from __future__ import annotations

from collections.abc import Sequence

from woodmath.flow import Block, in_pages, moved
from woodmath.fractions_in_print import set_fractions
from woodmath.layout import shortened
from woodmath.lettering import text_width
from woodmath.paper import UNITS_IN_A_MILLIMETRE, Layer, PaperSheet
from woodmath.pens import Mark, Pen, Stroke, Words

_LEFT, _RIGHT, _TOP, _BOTTOM = (side * UNITS_IN_A_MILLIMETRE for side in (17.0, 12.0, 18.0, 19.0))
_FOOT = 11.0 * UNITS_IN_A_MILLIMETRE
_FOOT_SIZE = 12.5
_FOOT_PEN = Pen("quiet", 0.8)


def room_for_writing(width: float, height: float) -> tuple[float, float]:
    """Width and height that a sheet has for its blocks, in picture units.

    Parameters
    ----------
    width, height : float
        Of the sheet, in millimetres.

    >>> [round(side) for side in room_for_writing(210.0, 297.0)]
    [684, 983]
    """
    return (
        width * UNITS_IN_A_MILLIMETRE - _LEFT - _RIGHT,
        height * UNITS_IN_A_MILLIMETRE - _TOP - _BOTTOM,
    )


def written_sheets(
    title: str, name: str, blocks: Sequence[Block], width: float, height: float
) -> tuple[PaperSheet, ...]:
    """Set blocks on as many sheets as they need.

    Parameters
    ----------
    title : str
        What the sheets are; at their foot.
    name : str
        Of the piece; at their foot too.
    blocks : sequence of Block
        From top to bottom, in picture units.
    width, height : float
        Of the sheets, in millimetres.

    Returns
    -------
    tuple of PaperSheet
        One at least.

    >>> len(written_sheets("Gauge card", "A bed", [], 210.0, 297.0))
    1
    """
    pages = in_pages(blocks, room_for_writing(width, height)[1])
    return tuple(
        PaperSheet(
            title,
            width,
            height,
            (
                Layer(page, moved=(_LEFT, _TOP)),
                Layer(_foot(f"{title}, sheet {place} of {len(pages)}", name, width, height)),
            ),
        )
        for place, page in enumerate(pages, start=1)
    )


def _foot(told: str, name: str, width: float, height: float) -> tuple[Mark, ...]:
    right, level = width * UNITS_IN_A_MILLIMETRE - _RIGHT, height * UNITS_IN_A_MILLIMETRE - _FOOT
    room = right - _LEFT - text_width(told, _FOOT_SIZE) - 24.0
    return (
        Stroke((((_LEFT, level - 18.0), (right, level - 18.0)),), _FOOT_PEN),
        Words(shortened(set_fractions(name), _FOOT_SIZE, room), (_LEFT, level), _FOOT_SIZE, "quiet"),
        Words(told, (right, level), _FOOT_SIZE, "quiet", "end"),
    )


def picture(marks: Sequence[Mark], size: tuple[float, float], width: float, after: float = 0.0) -> Block:
    """Return a picture as wide as the sheet's room, as a block.

    Parameters
    ----------
    marks : sequence of marks
        In picture units.
    size : (float, float)
        Width and height of the picture as it was drawn.
    width : float
        What it may take, in picture units.
    after : float
        Room below it.

    >>> picture((), (640.0, 480.0), 320.0).height
    240.0
    """
    scale = width / size[0]
    return Block(tuple(moved(mark, 0.0, 0.0, scale) for mark in marks), size[1] * scale + after)
