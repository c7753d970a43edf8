"""The patterns of a piece at true size: end, end of a side, the posts of either hand, their tops, rocker, stick."""

from __future__ import annotations

import contextlib
from typing import TYPE_CHECKING

from woodmath.case import Case
from woodmath.errors import ImpossibleShape
from woodmath.pattern import Pattern
from woodmath.pattern_ornament import ornament_pattern
from woodmath.pattern_panels import end_pattern, side_pattern
from woodmath.pattern_post import post_pattern, stick_pattern
from woodmath.pattern_rocker import rocker_pattern
from woodmath.pattern_turned import turned_pattern

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
        Each in the piece's unit. A rocker that no ellipse gives has none, nor an ornament that does not fit.

    Raises
    ------
    ImpossibleShape
        If the sizes make no case.

    >>> from woodmath.piece import Piece
    >>> [pattern.name for pattern in patterns_of(Piece.demo("log-box"))][3:]
    ['Post, left hand', 'Post, right hand', 'Ornament of the end panel']
    """
    case = Case.of(piece)
    patterns = [
        stick_pattern(piece, case),
        end_pattern(piece, case),
        side_pattern(piece, case),
        post_pattern(piece, case, "left"),
        post_pattern(piece, case, "right"),
    ]
    if piece.post.turned:
        patterns.append(turned_pattern(piece, case))
    # What cannot be drawn is told by the findings, and the other patterns are wanted all the same.
    with contextlib.suppress(ImpossibleShape):
        if piece.rocker:
            patterns.append(rocker_pattern(piece, case, piece.ellipse()))
    with contextlib.suppress(ImpossibleShape):
        if piece.ornament:
            patterns.append(ornament_pattern(piece))
    return tuple(patterns)
