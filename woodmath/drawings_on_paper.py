"""A drawing to be looked at, with what it says and the master's remarks below it, drawn to fit the sheet."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from woodmath.drawing import Drawing
from woodmath.finding import Finding, stops_among
from woodmath.flow import Block, paragraph
from woodmath.marks import marks
from woodmath.paper import PaperSheet, paper_size
from woodmath.written_sheets import picture, room_for_writing, written_sheets

_TITLE, _HEADLINE, _TEXT = 26.0, 16.0, 14.0
_SEVERITY = 84.0
NOT_TO_BE_CUT = "Stopped: nothing is to be cut by these sheets before this is put right."
"""What stands over the remarks that stop the work."""

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
        The gravest first; those that stop the work are set before the drawings.
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
    stops = stops_among(remarks)
    blocks = (
        paragraph(name, room, _TITLE, bold=True, after=2.0),
        *_stops(stops, room),
        *_pictures(title, drawings, room),
        *_remarks([remark for remark in remarks if remark not in stops], room, bool(stops)),
    )
    return written_sheets(title, name, blocks, width, height)


def _stops(stops: Sequence[Finding], room: float) -> Iterator[Block]:
    if stops:
        yield paragraph(NOT_TO_BE_CUT, room, _HEADLINE, "accent", bold=True, after=4.0)
        yield from (_remark(stop, room) for stop in stops)
        yield Block((), 8.0)


def _pictures(title: str, drawings: Sequence[Drawing], room: float) -> Iterator[Block]:
    pictures = [
        picture(marks(drawing), (drawing.frame.width, drawing.frame.height), room, 6.0)
        for drawing in drawings
    ]
    caption = paragraph(f"{title}. Drawn to fit the sheet; do not measure.", room, _TEXT, "quiet", after=8.0)
    yield replace(caption, followed_by=pictures[0].height if pictures else 0.0)
    for drawing, block in zip(drawings, pictures, strict=True):
        yield block
        yield paragraph(drawing.headline, room, _HEADLINE, bold=True, after=4.0)
        if drawing.told:
            yield paragraph(drawing.told, room, _TEXT, after=4.0)
        for fault in drawing.faults:
            yield paragraph(f"✗ {fault}", room, _TEXT, "accent", after=4.0)
        yield Block((), 10.0)


def _remarks(remarks: Sequence[Finding], room: float, stopped: bool) -> Iterator[Block]:
    if not remarks:
        if not stopped:
            yield paragraph("The master has nothing to remark on it.", room, _TEXT, bold=True)
        return
    title = "What the master remarks besides" if stopped else "The master's remarks"
    head = paragraph(title, room, _HEADLINE, bold=True, after=6.0)
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
