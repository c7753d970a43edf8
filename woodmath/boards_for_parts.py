"""Which boards on hand a part can come from, and of how many strips it is glued up where none is wide enough."""

from __future__ import annotations

from typing import TYPE_CHECKING

from woodmath.finding import more
from woodmath.glue_up import GlueUp, glue_up
from woodmath.parts import SPARE_WIDTH, Part

if TYPE_CHECKING:
    from woodmath.piece import Piece


def widest_board(piece: Piece, part: Part) -> float | None:
    """Return the width of the widest board among the thinnest that are thick enough for a part.

    Parameters
    ----------
    piece : Piece
        With its boards on hand.
    part : Part
        One of its parts.

    Returns
    -------
    float or None
        In the piece's unit; None where no board is thick enough.

    >>> from woodmath.parts import parts_of
    >>> from woodmath.piece import Piece
    >>> bed = Piece.demo("cat-bed")
    >>> widest_board(bed, parts_of(bed)[1])
    9.5
    """
    thick = [board for board in piece.boards.on_hand if not more(part.rough_thickness, board.thickness)]
    if not thick:
        return None
    thinnest = min(board.thickness for board in thick)
    return max(board.width for board in thick if not more(board.thickness, thinnest))


def glued_up(piece: Piece, part: Part) -> GlueUp | None:
    """Return of which strips a part is glued up, when no board on hand is wide enough for it.

    Parameters
    ----------
    piece : Piece
        With its boards on hand.
    part : Part
        One of its parts.

    Returns
    -------
    GlueUp or None
        None where one board does, or where none is thick enough.

    Raises
    ------
    ImpossibleShape
        If it would take more boards than anybody glues.

    Source: `woodmath.glue_up`.

    >>> from woodmath.parts import parts_of
    >>> from woodmath.piece import Piece
    >>> hound = Piece.demo("hound-bed")
    >>> glued_up(hound, parts_of(hound)[1]).strips
    2
    """
    widest = widest_board(piece, part)
    if widest is None or not more(part.rough_width, widest):
        return None
    return glue_up(part.rough_width, widest, piece.rule.read(SPARE_WIDTH))
