"""What the pictures of moving wood share: the choice of a timber, its two figures, the ends of a change."""

from __future__ import annotations

import math
from collections.abc import Sequence
from fractions import Fraction
from typing import TYPE_CHECKING

from woodmath.drawing import MovingLine, Points
from woodmath.timber_table import SPECIES
from woodmath.views.view import ChoiceControl, Settings, StepControl, number
from woodmath.wood_movement import movement

if TYPE_CHECKING:
    from woodmath.piece import Piece
    from woodmath.rule import Rule

_USUAL = "cherry, black"
_DRIEST, _DAMPEST = 6.0, 11.0
_SECONDS = 8.0
_FRAMES = 12

TIMBERS = tuple(each.name for each in SPECIES if each.radial_coefficient and each.tangential_coefficient)
"""The timbers for which both coefficients of movement are printed."""


def timber_control() -> ChoiceControl:
    """Return the control that chooses among the timbers whose movement is known."""
    return ChoiceControl("timber", "timber", tuple((name, name) for name in TIMBERS))


def moisture_control(name: str, label: str) -> StepControl:
    """Return a control for a moisture of wood in percent."""
    return StepControl(name, label, "percent", Fraction(4), Fraction(24), Fraction(1, 2))


def timber_of(piece: Piece) -> str:
    """Return the piece's timber, or cherry where nothing is known of how it moves."""
    name = piece.timber.species.strip() if piece.timber else ""
    return name if name in TIMBERS else _USUAL


def year_of(piece: Piece) -> tuple[float, float]:
    """Return the two ends of the piece's year, or those of a heated house where its file gives none."""
    year = piece.timber.year if piece.timber else None
    return year or (_DRIEST, _DAMPEST)


def usual(rule: Rule, inches: str, millimetres: str) -> float:
    """Return a size that is whole on either rule."""
    return rule.read(inches if rule.unit == "inch" else millimetres)


def growth(timber: str, cut: str | float, settings: Settings, first: str, afterwards: str) -> float:
    """Return what one unit of width gains between two moistures of the settings."""
    return movement(1.0, timber, cut, number(settings, first), number(settings, afterwards))


def through_the_year(
    one: Points, other: Points, role: str, closed: bool = False, fill: str = ""
) -> MovingLine:
    """Return a line that goes from one place to another and back, slowly at both ends, as a year does.

    Parameters
    ----------
    one, other : tuple of (float, float)
        As many points in both.
    role, closed, fill : str, bool, str
        As for `MovingLine`.
    """
    return MovingLine(
        tuple(between(one, other, part) for part in _parts()), _SECONDS, role, closed, fill=fill
    )


def between(one: Points, other: Points, part: float) -> Points:
    """Return the points so far on the way from one place to another."""
    return tuple((x + (u - x) * part, y + (v - y) * part) for (x, y), (u, v) in zip(one, other, strict=True))


def _parts() -> Sequence[float]:
    return [(1 - math.cos(2 * math.pi * step / _FRAMES)) / 2 for step in range(_FRAMES + 1)]
