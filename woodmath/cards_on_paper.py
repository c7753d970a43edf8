"""A card on paper: its table set to be read at arm's length, over as many sheets as it needs."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from woodmath.card import Card
from woodmath.flow import Block, line_pitch, moved, paragraph
from woodmath.fractions_in_print import set_fractions
from woodmath.layout import wrapped_anywhere
from woodmath.lettering import text_width
from woodmath.paper import PaperSheet, paper_size
from woodmath.pens import Mark, Pen, Stroke, Words
from woodmath.written_sheets import room_for_writing, written_sheets

_TITLE, _LEAD, _CELL, _HEAD = 26.0, 15.0, 15.0, 13.0
_BETWEEN, _AIR = 14.0, 5.0
_HEAVY, _FINE = Pen("ink", 1.8), Pen("quiet", 0.6)
_WIDEST, _CROWDED = 1.6, 1.25

_NAMES = 0.19
"""What the first column gets of the width before the others are asked."""


def card_sheets(card: Card, paper: str, name: str) -> tuple[PaperSheet, ...]:
    """Set a card on paper.

    Parameters
    ----------
    card : Card
        What is to be read.
    paper : {"a4", "letter"}
        Upright, or on its side where that takes fewer sheets.
    name : str
        Of the piece.

    Returns
    -------
    tuple of PaperSheet
        The head of the table is set again on each.

    Raises
    ------
    UnknownName
        If there is no such paper.

    >>> card = Card("Gauge card", "In order of use.", ("what", "set to"), (("tenon", "1/2"),) * 50)
    >>> len(card_sheets(card, "a4", "A bed"))
    2
    """
    width, height = paper_size(paper)
    upright, lying = (
        written_sheets(card.title, name, tuple(_blocks(card, room_for_writing(*size))), *size)
        for size in ((width, height), (height, width))
    )
    return lying if len(lying) < len(upright) or _is_crowded(card, width, height) else upright


def _is_crowded(card: Card, width: float, height: float) -> bool:
    """Tell whether a short table would be set in long narrow cells on an upright sheet, and not on one on its side."""
    heights = [
        sum(block.height for block in _blocks(card, room_for_writing(*size)))
        for size in ((width, height), (height, width))
    ]
    return heights[0] > _CROWDED * heights[1] and heights[1] <= room_for_writing(height, width)[1]


def _blocks(card: Card, size: tuple[float, float]) -> Iterator[Block]:
    room = size[0]
    yield paragraph(card.title, room, _TITLE, bold=True, after=4.0)
    if card.lead:
        yield paragraph(card.lead, room, _LEAD, "quiet", after=14.0)
    for warning in card.warnings:
        yield _beside_a_bar(paragraph(warning, room - 16.0, _LEAD, "accent", bold=True, left=16.0))
    if card.rows:
        yield from _table(card, size)
    if card.notes:
        yield Block((), 12.0)
    for note in card.notes:
        yield _beside_a_bar(paragraph(note, room - 16.0, _LEAD, left=16.0))


def _beside_a_bar(text: Block) -> Block:
    bar = Stroke((((3.0, 4.0), (3.0, text.height)),), Pen("accent", 2.4))
    return Block((bar, *text.marks), text.height + 9.0)


def _table(card: Card, room: tuple[float, float]) -> Iterator[Block]:
    rows = [tuple(map(set_fractions, row)) for row in card.rows]
    widths = _widths(card, rows, room[0])
    lefts = [sum(widths[:column]) + _BETWEEN * column for column in range(len(widths))]
    columns = tuple(
        zip(lefts, widths, (column in card.numeric for column in range(len(widths))), strict=True)
    )
    right = lefts[-1] + widths[-1]
    names = _row(_lines(card.columns, widths, _HEAD, bold=True), columns, _HEAD, bold=True)
    head = Block(
        (
            _line(0.0, right, _HEAVY),
            *(moved(mark, 0.0, _AIR) for mark in names.marks),
            _line(names.height + _AIR, right, _FINE),
        ),
        names.height + _AIR,
    )
    again = paragraph(f"{card.title}, continued", room[0], _LEAD, bold=True, after=8.0)
    most_lines = int((room[1] - again.height - head.height - 2 * _AIR) / line_pitch(_CELL))
    blocks = []
    for row in rows:
        lines = _lines(row, widths, _CELL)
        for start in range(0, max(map(len, lines)), most_lines):
            part = _row([cell[start : start + most_lines] for cell in lines], columns, _CELL)
            marks = (*part.marks, _line(part.height, right, _FINE))
            blocks.append(Block(marks, part.height, (again, head)))
    yield replace(head, followed_by=blocks[0].height)
    yield from blocks


def _line(level: float, right: float, pen: Pen) -> Mark:
    return Stroke((((0.0, level), (right, level)),), pen)


def _lines(cells: Sequence[str], widths: Sequence[float], size: float, bold: bool = False) -> list[list[str]]:
    """Break the cells of a row into lines; the first is bold, because the eye looks for it."""
    return [
        wrapped_anywhere(cell, size, bold or column == 0, width) or [""]
        for column, (cell, width) in enumerate(zip(cells, widths, strict=True))
    ]


def _row(
    cells: Sequence[Sequence[str]],
    columns: Sequence[tuple[float, float, bool]],
    size: float,
    bold: bool = False,
) -> Block:
    """Set a row broken into lines; a column is its left end, its width, and whether it is flush right."""
    pitch = line_pitch(size)
    marks = [
        Words(
            line,
            (left + width if flush else left, _AIR + size + row * pitch),
            size,
            "quiet" if bold else "ink",
            "end" if flush else "start",
            bold or number == 0,
        )
        for number, (lines, (left, width, flush)) in enumerate(zip(cells, columns, strict=True))
        for row, line in enumerate(lines)
    ]
    return Block(tuple(marks), max(map(len, cells)) * pitch + 2 * _AIR)


def _widths(card: Card, rows: Sequence[Sequence[str]], room: float) -> list[float]:
    """Return how wide each column is: its longest cell where there is room, and never less than its longest word."""
    cells = [(_HEAD, True, card.columns), *((_CELL, False, row) for row in rows)]
    wanted, least = [], []
    for column in range(len(card.columns)):
        texts = [(row[column], size, bold or column == 0) for size, bold, row in cells]
        wanted.append(max(text_width(text, size, bold) for text, size, bold in texts) + 0.5)
        words = [(word, size, bold) for text, size, bold in texts for word in text.split()]
        least.append(max((text_width(word, size, bold) for word, size, bold in words), default=0.0) + 0.5)
    free = room - _BETWEEN * (len(card.columns) - 1)
    if sum(wanted) <= free:
        stretch = min(free / sum(wanted), _WIDEST)
        return [width * stretch for width in wanted]
    # The name at the beginning of a row is what the eye looks for, and is kept in one line where it can be.
    least[0] = max(least[0], min(wanted[0], _NAMES * free))
    return _shared_out(wanted, _no_wider(least, free), free)


def _no_wider(least: Sequence[float], free: float) -> list[float]:
    """Return the widths of the longest words, or what the longest of them are cut to so that all have room."""
    low, high = 0.0, max(least)
    for _ in range(40):
        most = (low + high) / 2
        low, high = (most, high) if sum(min(width, most) for width in least) <= free else (low, most)
    return [min(width, high) for width in least]


def _shared_out(wanted: Sequence[float], least: Sequence[float], free: float) -> list[float]:
    """Give short columns all that they want, and share the rest among the long ones by what they want."""
    long = list(range(len(wanted)))
    while True:
        left = free - sum(want for column, want in enumerate(wanted) if column not in long)
        short = [column for column in long if wanted[column] <= left / len(long)]
        if not short:
            break
        long = [column for column in long if column not in short]
    low, high = 0.0, 1.0
    widths = list(wanted)
    for _ in range(40):
        part = (low + high) / 2
        for column in long:
            widths[column] = max(part * wanted[column], least[column])
        low, high = (part, high) if sum(widths) <= free else (low, part)
    return [width * min(1.0, free / sum(widths)) for width in widths]
