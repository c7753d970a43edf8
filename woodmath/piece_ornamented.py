"""From a piece to the field of its panel and the ornament that fits it.

Beads and their quirks stay free: the margin is counted from the quirk where there is one, else from the panel's edge.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from woodmath.bead import reach_derivation
from woodmath.errors import ImpossibleShape
from woodmath.ornament_field import Field
from woodmath.ornament_fitted import Fitted, fitted
from woodmath.piece_ornament import Ornament

if TYPE_CHECKING:
    from woodmath.piece import Piece

USUAL_MARGIN, USUAL_UNIT = "20 mm", "35 mm"
"""What a piece is given that says nothing of an ornament, at the nearest mark of its rule (common practice)."""


def ornament_of(piece: Piece) -> Ornament:
    """Return what a piece says of its ornament; where it says nothing, a rosette of six with usual sizes.

    Parameters
    ----------
    piece : Piece
        As read.

    Returns
    -------
    Ornament
        In the piece's unit.

    >>> from woodmath.piece import Piece
    >>> ornament_of(Piece.demo("log-box")).on
    'end'
    """
    told: Ornament | None = piece.ornament
    if told is not None:
        return told
    rule = piece.rule
    return Ornament(
        margin=rule.nearest(rule.read(USUAL_MARGIN)), unit=rule.nearest(rule.read(USUAL_UNIT)), on="end"
    )


def panel_of(piece: Piece, on: str = "end") -> Field:
    """Return a panel as it is seen square on its face, shoulder to shoulder, its lower edge at 0.

    Parameters
    ----------
    piece : Piece
        Whose panel it is.
    on : {"end", "side"}
        Which.

    Returns
    -------
    Field
        The whole panel. A side is as wide as the end's edge is long, measured along the slope.

    Raises
    ------
    ImpossibleShape
        If the piece has no such panel.

    >>> from woodmath.piece import Piece
    >>> panel_of(Piece.demo("cat-bed"))
    Field(bottom=10.5, top=13.0, height=8.0, low=0.0)
    """
    if piece.end is None or (on == "side" and piece.side is None):
        raise ImpossibleShape(
            f"{piece.name} has no {on} to carry an ornament. Add [{on}] to its file, or choose another panel."
        )
    if on == "side" and piece.side is not None:
        return Field(piece.side.length, piece.side.length, piece.end.slope_length)
    return Field(piece.end.bottom, piece.end.top, piece.end.height)


def ground_of(piece: Piece, on: str = "end") -> Field:
    """Return what the beads leave of a panel: the ground from which the margins are counted.

    Parameters
    ----------
    piece : Piece
        Whose panel it is.
    on : {"end", "side"}
        Which.

    Returns
    -------
    Field
        From quirk to quirk; the whole panel where the piece has no beads.

    Raises
    ------
    ImpossibleShape
        If there is no such panel, or its beads leave nothing.

    Source: `woodmath.bead.reach_derivation`.

    >>> from woodmath.piece import Piece
    >>> ground_of(Piece.demo("cat-bed")).low
    0.3125
    """
    panel = panel_of(piece, on)
    if piece.bead is None:
        return panel
    reach = reach_derivation().function("reach")(width=piece.bead.width, quirk=piece.bead.quirk)
    height = panel.height - 2 * reach
    if height <= 0:
        raise ImpossibleShape(
            f"Two beads and their quirks take {2 * reach:.4g} of a panel {panel.height:.4g} high, and nothing is left "
            "for an ornament. Make the beads narrower."
        )
    return Field(panel.width_at(reach), panel.width_at(panel.high - reach), height, reach)


def fitted_to(piece: Piece, ornament: Ornament | None = None) -> Fitted:
    """Return the ornament of a piece, fitted to its panel.

    Parameters
    ----------
    piece : Piece
        Whose panel it is.
    ornament : Ornament, optional
        Another one than the piece's own.

    Returns
    -------
    Fitted
        In the piece's unit, the middle of the panel's lower edge at 0.

    Raises
    ------
    ImpossibleShape
        If there is no such panel, or the margins leave no room on it.

    Source: `woodmath.ornament_fitting_derivations`.

    >>> from woodmath.piece import Piece
    >>> round(fitted_to(Piece.demo("log-box")).radius, 6)
    125.0
    """
    told = ornament or ornament_of(piece)
    return fitted(ground_of(piece, told.on), told.margin, told.design, told.petals, told.unit)
