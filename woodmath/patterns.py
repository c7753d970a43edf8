"""The patterns of a piece at true size: its end, the end of a side, the posts of either hand, the rocker, the stick."""

from __future__ import annotations

from typing import TYPE_CHECKING

from woodmath.case import Case
from woodmath.errors import ImpossibleShape
from woodmath.pattern import Pattern
from woodmath.pattern_panels import end_pattern, side_pattern
from woodmath.pattern_post import post_pattern, stick_pattern
from woodmath.pattern_rocker import rocker_pattern

if TYPE_CHECKING:
    from woodmath.piece import Piece


def patterns_of(piece: Piece) -> tuple[Pattern, ...]:
    """Return every pattern of a piece, in the order in which the bench wants them.

    Parameters
    ----------
    piece : Piece
        With both pairs of panels.

    Returns
    -------
    tuple of Pattern
        Each in the piece's unit. A rocker that no ellipse gives has none: the findings say why.

    Raises
    ------
    ImpossibleShape
        If the sizes make no case.

    >>> from woodmath.piece import Piece
    >>> [pattern.name for pattern in patterns_of(Piece.demo("log-box"))]
    ['Story stick', 'End panel', 'End of a side panel', 'Post, left hand', 'Post, right hand']
    """
    case = Case.of(piece)
    patterns = [
        stick_pattern(piece, case),
        end_pattern(piece, case),
        side_pattern(piece, case),
        post_pattern(piece, case, "left"),
        post_pattern(piece, case, "right"),
    ]
    if piece.rocker:
        try:
            patterns.append(rocker_pattern(piece, case, piece.ellipse()))
        except ImpossibleShape:
            return tuple(patterns)
    return tuple(patterns)
