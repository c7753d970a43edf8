"""The master's remarks on the boards: a panel that no board on hand is wide enough for is glued up."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from woodmath.boards_for_parts import glued_up, widest_board
from woodmath.case import Case, Range
from woodmath.errors import ImpossibleShape
from woodmath.finding import Finding, size
from woodmath.glue_up import joints_clear_of
from woodmath.parts import SPARE_WIDTH, Part, parts_of

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
    tenons = _tenons_of(piece, part)
    hit = " and ".join(
        str(number)
        for number, (low, high) in enumerate(tenons, 1)
        if any(low < line < high for line in glued.joint_lines)
    )
    boards = f"boards of {rule.mark(glued.strip_width)}"
    lines = f"joint line{'s' if glued.strips > 2 else ''} {', '.join(map(rule.mark, glued.joint_lines))} from one edge"
    yield Finding(
        "caution" if hit else "note",
        f"the width of the {part.name}",
        f"It wants {rule.mark(part.rough_width)} in the rough and the widest board of its thickness is "
        f"{size(rule, widest)}: "
        + (
            f"{glued.strips} equal {boards} would have the {lines}, through tenon {hit}."
            if hit
            else f"glue up {glued.strips} {boards}, the {lines}."
        ),
        _clear_of_the_tenons(piece, part, widest, glued.strips, tenons)
        if hit
        else "Lay neighbouring boards with their rings alike, so that they move alike.",
    )


def _tenons_of(piece: Piece, part: Part) -> tuple[Range, ...]:
    """Return where a panel's tenons lie across its blank, whose spare goes off both edges alike."""
    if part.name not in ("end panel", "side panel"):
        return ()
    case = Case.of(piece)
    spare = (part.rough_width - part.width) / 2
    # An end is measured upright and its tenons along the slope.
    stretch = case.slope_length / part.width
    return tuple(
        (spare + (low - case.panel[0]) / stretch, spare + (high - case.panel[0]) / stretch)
        for low, high in case.tenons
    )


def _clear_of_the_tenons(
    piece: Piece, part: Part, widest: float, strips: int, tenons: tuple[Range, ...]
) -> str:
    """Say where the joints come to lie between the tenons: with as many boards, with more, or not at all."""
    joints = joints_clear_of(tenons, part.rough_width, widest, piece.rule.read(SPARE_WIDTH))
    if joints is None:
        return "Move the tenons, or look for wider boards: no joint of these comes to lie between two tenons."
    lines = ", ".join(map(piece.rule.mark, joints))
    told = (
        f"Rip {len(joints) + 1} boards so that the joint line{'s' if len(joints) > 1 else ''} "
        f"lie{'' if len(joints) > 1 else 's'} at {lines} from one edge, clear of the tenons"
    )
    if len(joints) < strips:
        return f"{told}."
    return f"{told}, or move the tenons: fewer boards of this width cannot keep clear of them."
