"""The lead of your own bit, found from holes that you bored on a trial piece.

Counted from the screw's first bite, the line of depth against turns does not go through nothing: the first
turns only bring the lips to the face. So a straight line is fitted that finds two numbers, the lead and where
the line begins, and says how well it knows each.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from woodmath.errors import ImpossibleShape

_FEWEST_HOLES = 3


@dataclass(frozen=True)
class LeadFit:
    """What trial holes tell about a bit.

    Parameters
    ----------
    lead : float
        Advance at each turn, in the unit of the depths.
    lead_error : float
        Its standard error, in the same unit: how far it would scatter if holes like these were bored and
        measured again and again.
    intercept : float
        Depth at which the line begins, at no turns; less than 0 if counted from the screw's first bite.
    intercept_error : float
        Its standard error, in the same unit.
    residuals : tuple of float
        How much deeper each hole is than the line says, in the order given.

    >>> LeadFit(0.125, 0.001, -0.25, 0.01, (0.0, 0.0, 0.0)).point_length
    0.25
    """

    lead: float
    lead_error: float
    intercept: float
    intercept_error: float
    residuals: tuple[float, ...]

    @property
    def point_length(self) -> float:
        """Length of the screw's point ahead of the lips, if turns were counted from its first bite."""
        return -self.intercept

    def line_at(self, turns: float) -> float:
        """Depth that the fitted line gives after so many turns, in the unit of the depths."""
        return self.intercept + self.lead * turns


def fit_lead(turns: Sequence[float], depths: Sequence[float]) -> LeadFit:
    """Fit a bit's lead to trial holes by least squares, and where the line begins.

    The line is not forced through nothing: that would spread the screw's point over the turns and give too
    short a lead (or, counted from the lips, hide a miscount).

    Parameters
    ----------
    turns : sequence of float
        Turns of the brace for each hole, three holes or more, not all with the same turns.
    depths : sequence of float
        Depth of each hole at its full width, in any length unit, in the same order.

    Returns
    -------
    LeadFit
        In the unit of the depths; each error is one standard error (n - 2 degrees of freedom).

    Raises
    ------
    ImpossibleShape
        If there are too few holes, or they do not tell a lead.

    Source: ordinary least squares, as in every statistics text.

    >>> fit = fit_lead(turns=[8, 12, 16, 20], depths=[0.75, 1.25, 1.75, 2.25])
    >>> fit.lead, fit.intercept
    (0.125, -0.25)
    """
    count = len(turns)
    if count != len(depths):
        raise ImpossibleShape(
            f"{count} counts of turns and {len(depths)} depths were given. Give both for every hole, in one "
            "order."
        )
    if count < _FEWEST_HOLES:
        raise ImpossibleShape(
            f"{count} holes were given. Two points fit any line and tell nothing of its error: bore three "
            "holes or more."
        )
    for hole, (at, deep) in enumerate(zip(turns, depths, strict=True), start=1):
        if not (math.isfinite(at) and math.isfinite(deep) and at >= 0 and deep >= 0):
            raise ImpossibleShape(
                f"Hole {hole} is given as {at:g} turns and {deep:g} deep. Both are plain numbers, 0 or more: count "
                "and measure that hole again, or leave it out."
            )
    middle_turns, middle_depth = math.fsum(turns) / count, math.fsum(depths) / count
    spread = math.fsum((at - middle_turns) ** 2 for at in turns)
    if min(turns) == max(turns) or spread == 0:
        raise ImpossibleShape(
            f"All holes were bored with {turns[0]:g} turns. Bore some with fewer turns and some with more."
        )
    lead = (
        math.fsum((at - middle_turns) * (deep - middle_depth) for at, deep in zip(turns, depths, strict=True))
        / spread
    )
    if lead <= 0:
        raise ImpossibleShape(
            "These holes do not get deeper with more turns. Look whether turns and depths changed places, "
            "or whether the screw lost its hold."
        )
    intercept = middle_depth - lead * middle_turns
    residuals = tuple(
        (deep - middle_depth) - lead * (at - middle_turns) for at, deep in zip(turns, depths, strict=True)
    )
    scatter = math.sqrt(math.fsum(residual**2 for residual in residuals) / (count - 2))
    return LeadFit(
        lead=lead,
        lead_error=scatter / math.sqrt(spread),
        intercept=intercept,
        intercept_error=scatter * math.sqrt(1 / count + middle_turns**2 / spread),
        residuals=residuals,
    )
