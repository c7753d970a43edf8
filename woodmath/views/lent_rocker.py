"""Rockers to try under a piece that has none."""

from __future__ import annotations

from woodmath.errors import ImpossibleShape
from woodmath.piece import Piece
from woodmath.piece_tables import Rocker


def lent_rocker(piece: Piece) -> Rocker:
    """Return rockers to try under a piece that has none: half as long again as its end is wide.

    Parameters
    ----------
    piece : Piece
        With its ends.

    Returns
    -------
    Rocker
        In the piece's unit.

    Raises
    ------
    ImpossibleShape
        If it has no ends either.

    >>> lent_rocker(Piece.demo("log-box")).length
    585.0
    """
    if piece.end is None:
        raise ImpossibleShape(
            f"{piece.name} has neither ends nor rockers. Add [end] or [rocker] to its file, or open another piece."
        )
    length = 1.5 * (piece.end.bottom + 2 * piece.post.square)
    return Rocker(
        length=length,
        rise=length / 10,
        bottom_radius=1.6 * length,
        thickness=piece.post.square / 2,
        depth=length / 5,
    )
