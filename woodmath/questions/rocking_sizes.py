"""The rocking piece as the questions take it: what it weighs and where, in round numbers that can be worked with."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from woodmath.board_measure import metre_in
from woodmath.errors import ImpossibleShape
from woodmath.numbers_as_written import number_shown
from woodmath.questions.rocker_sizes import rocker_of
from woodmath.rocking import RockingBody

if TYPE_CHECKING:
    from woodmath.piece import Piece


def body_of(piece: Piece) -> RockingBody:
    """Return the piece with all that lies in it in the middle, in the round numbers that are given.

    Parameters
    ----------
    piece : Piece
        With rockers.

    Returns
    -------
    RockingBody
        Its mass to 10 grams, its height and its gyration radius to a tenth of a millimetre.

    Raises
    ------
    ImpossibleShape
        If it has no rockers, or does not stand on them.

    >>> from woodmath.piece import Piece
    >>> body_of(Piece.demo("cat-bed")).centre_height
    0.2557
    """
    rocker_of(piece)
    exact = piece.rocking_body(load=True)
    body = replace(
        exact,
        mass=round(exact.mass, 2),
        centre_height=round(exact.centre_height, 4),
        gyration_radius=round(exact.gyration_radius, 4),
        centre_offset=0.0,
    )
    if not body.is_stable:
        raise ImpossibleShape(
            f"{piece.name} does not stand on its rockers, and the question is about one that does."
        )
    return body


def both_units(metres: float, piece: Piece) -> str:
    """Return a length in metres, and as the piece's rule marks it.

    Parameters
    ----------
    metres : float
        The length.
    piece : Piece
        Whose rule it is.

    Returns
    -------
    str
        Metres to a tenth of a millimetre; the mark is the nearest one.

    >>> from woodmath.piece import Piece
    >>> both_units(0.2566, Piece.demo("cat-bed"))
    '0.2566 m (10 1/8 in)'
    """
    mark = piece.rule.mark(metres * metre_in(piece.rule.unit), unit=True)
    return f"{number_shown(metres, 4)} m ({mark})"
