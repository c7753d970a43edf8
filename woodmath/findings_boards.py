"""The master's remarks on the boards: a panel that no board on hand is wide enough for is glued up."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from woodmath.boards_for_parts import glued_up, widest_board
from woodmath.case import Case
from woodmath.errors import ImpossibleShape
from woodmath.finding import Finding, size
from woodmath.parts import Part, parts_of

if TYPE_CHECKING:
    from woodmath.piece import Piece


def board_findings(piece: Piece) -> Iterator[Finding]:
    """Yield the remarks on the parts that the boards on hand do not give in one width.

    Parameters
    ----------
    piece : Piece
        As read; one that lists no boards gets none.

    Yields
    ------
    Finding
        A note for each panel to be glued up, with its joint lines; a caution where no board is thick enough.

    Source: `woodmath.glue_up`.

    >>> from woodmath.piece import Piece
    >>> [finding.place for finding in board_findings(Piece.demo("cat-bed"))]
    ['the width of the bottom board']
    """
    if not piece.boards.on_hand:
        return
    try:
        parts = parts_of(piece)
    except ImpossibleShape:
        # Another remark says why there is no such case.
        return
    for part in parts:
        yield from _glued(piece, part)


def _glued(piece: Piece, part: Part) -> Iterator[Finding]:
    rule = piece.rule
    widest = widest_board(piece, part)
    if widest is None:
        yield Finding(
            "caution",
            f"the wood for the {part.name}",
            f"It is {size(rule, part.rough_thickness)} thick, and no board on hand is as thick as that.",
            "Buy or mill what is missing, or add it under [boards].",
        )
        return
    try:
        glued = glued_up(piece, part)
    except ImpossibleShape as fault:
        yield Finding("caution", f"the width of the {part.name}", str(fault), "Look for other boards.")
        return
    if glued is None:
        return
    lines = ", ".join(rule.mark(line) for line in glued.joint_lines)
    hit = _tenons_on_a_joint(piece, part, glued.joint_lines)
    yield Finding(
        "caution" if hit else "note",
        f"the width of the {part.name}",
        f"It wants {rule.mark(part.rough_width)} in the rough and the widest board of its thickness is "
        f"{size(rule, widest)}: glue up {glued.strips} boards of {rule.mark(glued.strip_width)}, the joint "
        f"line{'s' if glued.strips > 2 else ''} {lines} from one edge."
        + (f" A joint line runs through tenon {hit}." if hit else ""),
        "Rip the boards to unequal widths, so that the joint lies between two tenons."
        if hit
        else "Let the rings of neighbouring boards lie as they will move together.",
    )


def _tenons_on_a_joint(piece: Piece, part: Part, lines: tuple[float, ...]) -> str:
    """Name the tenons that a joint line would run through; the blank's spare goes off both edges alike."""
    if part.name not in ("end panel", "side panel"):
        return ""
    case = Case.of(piece)
    spare = (part.rough_width - part.width) / 2
    # An end is measured upright and its tenons along the slope.
    stretch = case.slope_length / part.width
    hit = [
        str(number)
        for number, (low, high) in enumerate(case.tenons, 1)
        if any(low < case.panel[0] + (line - spare) * stretch < high for line in lines)
    ]
    return " and ".join(hit)
