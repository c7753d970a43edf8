"""A piece on its rockers as one stiff body: its weight from its parts, its curve from its file, in metres."""

from __future__ import annotations

import functools
from typing import TYPE_CHECKING

from woodmath import board_measure, mass
from woodmath.ellipse import Ellipse
from woodmath.rocking import RockingBody

if TYPE_CHECKING:
    from woodmath.mass import MassOf
    from woodmath.piece import Piece

_ROUNDING = 1e-12
"""As a part of its height: so little to the side is what adding up its parts left over."""


@functools.lru_cache(maxsize=64)
def rocking_body_of(piece: Piece, load: bool = False) -> RockingBody:
    """Return a piece as the body that rocks.

    Parameters
    ----------
    piece : Piece
        With rockers, both pairs of panels and its timber.
    load : bool
        Whether what its file lists under [[load]] lies in it, each thing where the file says.

    Returns
    -------
    RockingBody
        In metres and kilograms; rocking about the line along its sides.

    Raises
    ------
    ImpossibleShape
        If it has no rockers, names no timber, or makes no case.

    Source: `woodmath.mass.whole` and `Piece.ellipse`.

    >>> from woodmath.piece import Piece
    >>> round(rocking_body_of(Piece.demo("cat-bed")).period(), 2)
    0.78
    """
    ellipse = piece.ellipse()
    whole = mass.whole(piece, load=load)
    length = piece.rocker.length if piece.rocker else 2 * ellipse.half_length
    return body_in_metres(whole, ellipse, length, piece.rule.unit, offset=whole.centre[1])


def body_in_metres(
    whole: MassOf, ellipse: Ellipse, rocker_length: float, unit: board_measure.Unit, offset: float = 0.0
) -> RockingBody:
    """Return what has been weighed, on rockers of some curve, in metres.

    Parameters
    ----------
    whole : MassOf
        All that rocks.
    ellipse : Ellipse
        Of the rockers' lower edge, in the piece's unit.
    rocker_length : float
        Heel to heel, in the piece's unit.
    unit : str
        The piece's unit.
    offset : float
        How far the centre of gravity lies to the right of the middle, in the piece's unit.

    Returns
    -------
    RockingBody
        In metres and kilograms.

    Raises
    ------
    ImpossibleShape
        If there is no such body.

    Source: `woodmath.board_measure.metre_in`.

    >>> from woodmath.piece import Piece
    >>> log_box = mass.whole(Piece.demo("log-box"))
    >>> body_in_metres(log_box, Ellipse(500, 250), 400, "millimetre").rocker_length
    0.4
    """
    metre = board_measure.metre_in(unit)
    return RockingBody(
        mass=whole.kilograms,
        centre_height=whole.centre_height / metre,
        gyration_radius=whole.gyration_radius() / metre,
        ellipse=Ellipse(ellipse.half_length / metre, ellipse.half_height / metre),
        rocker_length=rocker_length / metre,
        centre_offset=offset / metre if abs(offset) > _ROUNDING * whole.centre_height else 0.0,
    )
