"""The rocker of a piece as the questions take it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from woodmath.ellipse import Ellipse
from woodmath.questions.wording import needed

if TYPE_CHECKING:
    from woodmath.piece import Piece
    from woodmath.piece_tables import Rocker


def rocker_of(piece: Piece) -> Rocker:
    """Return the piece's rocker; ImpossibleShape where it has none."""
    return needed(piece.rocker, "rocker", piece)


def ellipse_of(piece: Piece) -> Ellipse:
    """Return the ellipse of the piece's rocker; ImpossibleShape where it has no rocker."""
    rocker_of(piece)
    return piece.ellipse()
