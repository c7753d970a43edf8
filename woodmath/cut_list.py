"""The cut list: every part with its finished and its rough size, what timber it takes and what it weighs."""

from __future__ import annotations

import csv
import io
import re
from collections import Counter
from dataclasses import dataclass
from typing import TYPE_CHECKING

from woodmath.board_measure import (
    board_cubic_metres,
    board_feet,
    cubic_metres,
    mass,
    square_metres,
    with_waste,
)
from woodmath.boards_for_parts import glued_up
from woodmath.boards_on_hand import PLANED_AWAY, Blank, Fitting, StockBoard, fit
from woodmath.card import Card
from woodmath.errors import ImpossibleShape
from woodmath.finding import more
from woodmath.glue_up import GlueUp
from woodmath.numbers_as_written import number_shown
from woodmath.parts import SPARE_LENGTH, SPARE_WIDTH, Part, parts_of
from woodmath.timber import in_a_sentence
from woodmath.weighing import mass_shown
from woodmath.whole_marks import mark_at_least

if TYPE_CHECKING:
    from woodmath.piece import Piece

WASTE = 25.0
"""Percent to buy beyond what the blanks take, for knots, ends and mistakes (common practice)."""
KERF = "3 mm"
"""What a saw cut and its truing take between two blanks (common practice)."""

_MOST_LEFT = 4
_NUMBER = re.compile(r" \d+(?:, strip \d+ of \d+)?$|, strip \d+ of \d+$")
_FORMULA_SIGNS = ("=", "+", "-", "@", "\t", "\r")
"""A cell that begins with one of these would be worked out by a spreadsheet instead of being shown."""


@dataclass(frozen=True)
class CutLine:
    """One line of the cut list, for all copies together.

    Parameters
    ----------
    part : Part
        What it is.
    count : int
        How many in all.
    measure : float
        Of all their blanks: board feet for a piece in inches, square metres for one in millimetres.
    sold_as : float
        What a yard counts for these blanks, in the same measure: thinner than an inch is sold as an inch.
    blanks : float
        Volume of all their blanks, in cubic metres.
    wood : float
        The finished wood of all of them, in cubic metres.
    kilograms : float or None
        What they weigh; None where the piece does not say what it is made of.

    >>> from woodmath.piece import Piece
    >>> cut_lines(Piece.demo("cat-bed"), copies=3)[0].count
    12
    """

    part: Part
    count: int
    measure: float
    sold_as: float
    blanks: float
    wood: float
    kilograms: float | None


def cut_lines(piece: Piece, copies: int = 1) -> tuple[CutLine, ...]:
    """Work out the cut list.

    Parameters
    ----------
    piece : Piece
        With both pairs of panels.
    copies : int
        How many pieces are made, 1 or more.

    Returns
    -------
    tuple of CutLine
        One for each kind of part.

    Raises
    ------
    ImpossibleShape
        If the sizes make no case.

    Source: `woodmath.board_measure`.

    >>> from woodmath.piece import Piece
    >>> round(cut_lines(Piece.demo("cat-bed"))[0].measure, 2)
    1.41
    """
    unit, timber = piece.rule.unit, piece.timber
    lines: list[CutLine] = []
    for part in parts_of(piece):
        count = part.count * copies
        blank = (part.rough_length, part.rough_width, part.rough_thickness)
        if unit == "inch":
            one, sold_as = board_feet(*blank, unit=unit), board_feet(*blank, as_sold=True, unit=unit)
        else:
            one = sold_as = square_metres(*blank[:2], unit=unit)
        blanks = board_cubic_metres(*blank, unit=unit) * count
        volume = part.volume * count
        weight = mass(volume, timber.kilograms_per_cubic_metre, unit=unit) if timber else None
        wood = cubic_metres(volume, unit=unit)
        lines.append(CutLine(part, count, one * count, sold_as * count, blanks, wood, weight))
    return tuple(lines)


def cut_list_card(piece: Piece, copies: int = 1) -> Card:
    """Print the cut list.

    Parameters
    ----------
    piece : Piece
        With both pairs of panels.
    copies : int
        How many pieces are made, 1 or more.

    Returns
    -------
    Card
        A line for each kind of part, and what to buy.

    Raises
    ------
    ImpossibleShape
        If the sizes make no case.

    Source: `woodmath.board_measure`; the waste is common practice.

    >>> from woodmath.piece import Piece
    >>> cut_list_card(Piece.demo("log-box")).columns[-2:]
    ('m³', 'kg')
    """
    lines = cut_lines(piece, copies)
    inches = piece.rule.unit == "inch"
    measures, weight = (("board feet",), "lb") if inches else (("m²", "m³"), "kg")
    rows = tuple(
        (
            line.part.name,
            f"{line.count}" + (f" ({line.part.hands_of(copies)})" if line.part.hands else ""),
            _by(piece, line.part.finished),
            _by(piece, (line.part.rough_length, line.part.rough_width, line.part.rough_thickness)),
            line.part.grain,
            *_measures(piece, line),
            _weight(piece, line.kilograms),
        )
        for line in lines
    )
    notes = [_to_buy(piece, lines), _whole_weight(piece, lines)]
    notes += [_glued_note(piece, line.part) for line in lines if _glued(piece, line.part)]
    made_of = in_a_sentence(piece.timber.species) if piece.timber else "a timber that the file does not name"
    longer, wider = (piece.rule.mark(piece.rule.read(spare)) for spare in (SPARE_LENGTH, SPARE_WIDTH))
    many = "one piece" if copies == 1 else f"{copies} pieces"
    return Card(
        "Cut list",
        f"For {many}, of {made_of}. Sizes are length along the grain, width, thickness; the rough size leaves {longer} "
        f"in length and {wider} in width, and takes stock that is planed to thickness.",
        ("part", "number", "finished", "rough", "grain", *measures, weight),
        rows,
        tuple(note for note in notes if note),
        numeric=tuple(range(5, 6 + len(measures))),
    )


def fitting_card(piece: Piece, copies: int = 1) -> Card | None:
    """Print which blank comes out of which board on hand.

    Parameters
    ----------
    piece : Piece
        With both pairs of panels.
    copies : int
        How many pieces are made, 1 or more.

    Returns
    -------
    Card or None
        None for a piece that lists no boards.

    Raises
    ------
    ImpossibleShape
        If the sizes make no case.

    Source: `woodmath.boards_on_hand.fit`.

    >>> from woodmath.piece import Piece
    >>> fitting_card(Piece.demo("log-box")) is None
    True
    """
    if not piece.boards.on_hand:
        return None
    mark = piece.rule.mark
    fitted, parts = fitting_of(piece, copies), parts_of(piece)
    rows: list[tuple[str, ...]] = []
    for board in fitted.boards:
        cut = [region for region in fitted.blanks if region.board == board.name]
        if not cut:
            rows.append(
                (board.name, _by(piece, (board.length, board.width, board.thickness)), "stays whole", "")
            )
        rows += [
            (
                board.name if place == 0 else "",
                _by(piece, (board.length, board.width, board.thickness)) if place == 0 else "",
                f"{region.name}, {mark(region.length)} × {mark(region.width)}"
                f"{_to_plane(piece, parts, board, region.name)}",
                f"{mark(region.along)} along, {mark(region.across)} across",
            )
            for place, region in enumerate(cut)
        ]
    notes = [
        f"Between two blanks {mark(_kerf(piece))} is left for the saw and for truing. Crosscut into lengths "
        "first, then rip; look at the grain before you believe the card."
    ]
    left = sorted(fitted.left_over, key=lambda region: -region.length * region.width)[:_MOST_LEFT]
    if left:
        pieces = ", ".join(f"{mark(each.length)} × {mark(each.width)} of {each.board}" for each in left)
        notes.append(f"The largest pieces that are left over: {pieces}.")
    if fitted.missing:
        # In a class of thirty nobody reads thirty numbers: alike blanks are counted.
        alike = Counter(
            (_NUMBER.sub("", blank.name), blank.length, blank.width, blank.thickness)
            for blank in fitted.missing
        )
        named = ", ".join(
            f"{count} × {name} ({' × '.join(map(mark, sizes))})" for (name, *sizes), count in alike.items()
        )
        notes.insert(0, f"No board on hand is left for: {named}.")
    return Card(
        "Boards on hand",
        "Where each blank lies in its board, counted from one end and from one edge. A board is kept for parts of its "
        "own thickness while there are any; then it goes to those that a little planing brings down, and thick stock "
        "is thinned only when nothing else is left.",
        ("board", "length × width × thickness", "blank", "from"),
        tuple(rows),
        tuple(notes),
    )


def fitting_of(piece: Piece, copies: int = 1) -> Fitting:
    """Fit every blank of a piece to its boards on hand; wide panels are glued up of several.

    Parameters
    ----------
    piece : Piece
        With both pairs of panels.
    copies : int
        How many pieces are made, 1 or more.

    Returns
    -------
    Fitting
        In the piece's unit.

    Raises
    ------
    ImpossibleShape
        If the sizes make no case.

    >>> from woodmath.piece import Piece
    >>> fitting_of(Piece.demo("cat-bed")).missing
    ()
    """
    boards: list[StockBoard] = []
    for board in piece.boards.on_hand:
        for _ in range(board.count):
            name = f"board {len(boards) + 1}"
            boards.append(StockBoard(name, board.length, board.width, board.thickness))
    blanks: list[Blank] = []
    for part in parts_of(piece):
        glued = _glued(piece, part)
        for number in range(1, part.count * copies + 1):
            name = part.name if part.count * copies == 1 else f"{part.name} {number}"
            if glued is None:
                blanks.append(Blank(name, part.rough_length, part.rough_width, part.rough_thickness))
                continue
            for strip in range(glued.strips):
                called = f"{name}, strip {strip + 1} of {glued.strips}"
                blanks.append(Blank(called, part.rough_length, glued.strip_width, part.rough_thickness))
    return fit(blanks, boards, _kerf(piece))


def _to_plane(piece: Piece, parts: tuple[Part, ...], board: StockBoard, name: str) -> str:
    """Say to what thickness a blank is brought where its board is thicker."""
    for part in parts:
        if name.startswith(part.name) and more(board.thickness, part.rough_thickness):
            much = more(board.thickness, PLANED_AWAY * part.rough_thickness)
            return f", {'resaw or plane' if much else 'plane'} to {piece.rule.mark(part.rough_thickness)}"
    return ""


def cut_list_csv(piece: Piece, copies: int = 1) -> str:
    """Write the cut list for a spreadsheet.

    Parameters
    ----------
    piece : Piece
        With both pairs of panels.
    copies : int
        How many pieces are made, 1 or more.

    Returns
    -------
    str
        Lines of comma-separated values (RFC 4180), the first naming the columns; lengths twice, as on the rule and
        as a number in the piece's unit.

    Raises
    ------
    ImpossibleShape
        If the sizes make no case.

    >>> from woodmath.piece import Piece
    >>> cut_list_csv(Piece.demo("log-box")).splitlines()[1].split(",")[:3]
    ['post', '4', '"2 left']
    """
    unit = piece.rule.unit_mark
    inches = piece.rule.unit == "inch"
    text = io.StringIO()
    write = csv.writer(text, lineterminator="\r\n").writerow
    names = ("length", "width", "thickness")
    write(
        [
            "part",
            "number",
            "hands",
            *(f"finished {name}" for name in names),
            *(f"finished {name} ({unit})" for name in names),
            *(f"rough {name}" for name in names),
            *(f"rough {name} ({unit})" for name in names),
            "grain",
            "timber",
            "board feet" if inches else "square metres",
            "cubic metres of blanks",
            "cubic metres of wood",
            "kilograms",
        ]
    )
    for line in cut_lines(piece, copies):
        part = line.part
        cells = [
            part.name,
            str(line.count),
            part.hands_of(copies),
            *(piece.rule.mark(size) for size in part.finished),
            *(f"{size:.4f}" for size in part.finished),
            *(piece.rule.mark(size) for size in part.rough),
            *(f"{size:.4f}" for size in part.rough),
            part.grain,
            piece.timber.species if piece.timber else "",
            f"{line.measure:.3f}",
            f"{line.blanks:.6f}",
            f"{line.wood:.6f}",
            "" if line.kilograms is None else f"{line.kilograms:.3f}",
        ]
        write([_harmless(cell) for cell in cells])
    return text.getvalue()


def _harmless(cell: str) -> str:
    return f"'{cell}" if cell.startswith(_FORMULA_SIGNS) else cell


def _by(piece: Piece, sizes: tuple[float, ...]) -> str:
    return " × ".join(piece.rule.mark(size) for size in sizes)


def _weight(piece: Piece, kilograms: float | None) -> str:
    return mass_shown(kilograms, piece.rule).split()[0] if kilograms is not None else "not known"


def _measures(piece: Piece, line: CutLine) -> tuple[str, ...]:
    if piece.rule.unit == "inch":
        return (number_shown(line.measure, 2),)
    return number_shown(line.measure, 2), number_shown(line.blanks, 4)


def _to_buy(piece: Piece, lines: tuple[CutLine, ...]) -> str:
    needed, sold_as = sum(line.measure for line in lines), sum(line.sold_as for line in lines)
    more_of_it = f"with {number_shown(WASTE, 0)} % more for knots, ends and mistakes (common practice) buy"
    if piece.rule.unit == "millimetre":
        blanks = sum(line.blanks for line in lines)
        return (
            f"The blanks take {number_shown(needed, 2)} square metres, {number_shown(blanks, 4)} cubic metres; "
            f"{more_of_it} {number_shown(with_waste(needed, WASTE), 1)} square metres, "
            f"{number_shown(with_waste(blanks, WASTE), 3)} cubic metres."
        )
    told = f"The blanks take {number_shown(needed, 2)} board feet"
    if more(sold_as, needed):
        told += f", and a yard counts what is thinner than an inch as an inch: {number_shown(sold_as, 2)}"
    return f"{told}; {more_of_it} {number_shown(with_waste(sold_as, WASTE), 1)}."


def _whole_weight(piece: Piece, lines: tuple[CutLine, ...]) -> str:
    known = [line.kilograms for line in lines if line.kilograms is not None]
    if not known:
        return ""
    return (
        f"Together the finished wood weighs about {mass_shown(sum(known), piece.rule)}, by an average density; a board "
        "may differ by a tenth."
    )


def _glued(piece: Piece, part: Part) -> GlueUp | None:
    try:
        return glued_up(piece, part)
    except ImpossibleShape:
        # Boards as narrow as laths: the findings say so.
        return None


def _glued_note(piece: Piece, part: Part) -> str:
    glued = _glued(piece, part)
    if glued is None:
        return ""
    mark = piece.rule.mark
    lines = ", ".join(mark(line) for line in glued.joint_lines)
    return (
        f"The {part.name} is wider than any board of its thickness: glue up {glued.strips} strips of "
        f"{mark(glued.strip_width)}, joints at {lines} from one edge."
    )


def _kerf(piece: Piece) -> float:
    """Return what a saw cut takes, in whole marks, so that the places of the blanks can be read off the rule."""
    return mark_at_least(piece.rule, piece.rule.nearest(piece.rule.read(KERF)))
