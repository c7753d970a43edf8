"""The rocking piece as the questions take it: what it weighs and where, in round numbers that can be worked with."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from woodmath.board_measure import metre_in
from woodmath.numbers_as_written import number_shown
from woodmath.questions.notation import length_shown
from woodmath.questions.rocker_sizes import rocker_of
from woodmath.rocking import RockingBody

if TYPE_CHECKING:
    from woodmath.piece import Piece


def body_of(piece: Piece) -> RockingBody:
    """Return the piece with all that lies in it, its weight to a tenth of a kilogram and its lengths on a mark.

    Raises
    ------
    ImpossibleShape
        If it has no rockers.
    """
    rocker_of(piece)
    exact, rule = piece.rocking_body(load=True), piece.rule
    metre = metre_in(rule.unit)

    def on_a_mark(metres: float) -> float:
        return rule.length(rule.marks(metres * metre)) / metre

    return replace(
        exact,
        mass=round(exact.mass, 1),
        centre_height=on_a_mark(exact.centre_height),
        gyration_radius=on_a_mark(exact.gyration_radius),
        centre_offset=0.0,
    )


def both_units(metres: float, piece: Piece) -> str:
    """Return a length as the piece's rule has it, and in metres."""
    return f"{length_shown(metres * metre_in(piece.rule.unit), piece.rule)} ({number_shown(metres, 4)} m)"
