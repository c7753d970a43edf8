"""A drawing to be looked at, with what it says and the master's remarks below it, drawn to fit the sheet."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from woodmath.drawing import Drawing
from woodmath.finding import Finding
from woodmath.flow import Block, paragraph
from woodmath.marks import marks
from woodmath.paper import PaperSheet, paper_size
from woodmath.written_sheets import picture, room_for_writing, written_sheets

_TITLE, _HEADLINE, _TEXT = 26.0, 16.0, 14.0
_SEVERITY = 84.0
_COLOURS = {"stop": "accent", "caution": "ink", "note": "quiet"}


def drawing_sheets(
    title: str, drawings: Sequence[Drawing], remarks: Sequence[Finding], paper: str, name: str
) -> tuple[PaperSheet, ...]:
    """Set drawings on paper, to fit and not to be measured, and the remarks below them.

    Parameters
    ----------
    title : str
        What the sheets are.
    drawings : sequence of Drawing
        One below the other.
    remarks : sequence of Finding
        The gravest first.
    paper : {"a4", "letter"}
        Upright.
    name : str
        Of the piece.

    Returns
    -------
    tuple of PaperSheet
        As many as the remarks need.

    Raises
    ------
    UnknownName
        If there is no such paper.

    >>> len(drawing_sheets("The piece", (), (), "a4", "A bed"))
    1
    """
    width, height = paper_size(paper)
    room = room_for_writing(width, height)[0]
    blocks = (*_pictures(title, drawings, room, name), *_remarks(remarks, room))
    return written_sheets(title, name, blocks, width, height)


def _pictures(title: str, drawings: Sequence[Drawing], room: float, name: str) -> Iterator[Block]:
    yield paragraph(name, room, _TITLE, bold=True, after=2.0)
    yield paragraph(f"{title}. Drawn to fit the sheet; do not measure.", room, _TEXT, "quiet", after=8.0)
    for drawing in drawings:
        yield picture(marks(drawing), (drawing.frame.width, drawing.frame.height), room, 6.0)
        yield paragraph(drawing.headline, room, _HEADLINE, bold=True, after=4.0)
        if drawing.told:
            yield paragraph(drawing.told, room, _TEXT, after=4.0)
        for fault in drawing.faults:
            yield paragraph(f"✗ {fault}", room, _TEXT, "accent", after=4.0)
        yield Block((), 10.0)


def _remarks(remarks: Sequence[Finding], room: float) -> Iterator[Block]:
    if not remarks:
        yield paragraph("The master has nothing to remark on it.", room, _TEXT, bold=True)
        return
    head = paragraph("The master's remarks", room, _HEADLINE, bold=True, after=6.0)
    again = paragraph("The master's remarks, continued", room, _TEXT, bold=True, after=8.0)
    blocks = [replace(_remark(remark, room), head=(again,)) for remark in remarks]
    yield Block(head.marks, head.height, followed_by=blocks[0].height)
    yield from blocks


def _remark(remark: Finding, room: float) -> Block:
    severity = paragraph(
        remark.severity.capitalize(), _SEVERITY, _TEXT, _COLOURS[remark.severity], remark.severity != "note"
    )
    text = paragraph(
        f"{remark.place[:1].upper()}{remark.place[1:]}: {remark.reason} {remark.remedy}",
        room - _SEVERITY,
        _TEXT,
        left=_SEVERITY,
    )
    return Block((*severity.marks, *text.marks), text.height + 7.0)
