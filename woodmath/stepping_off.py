"""Stepping off with dividers beside marking from one datum: where each line comes, and how far out it is."""

from __future__ import annotations

import math
from dataclasses import dataclass

from woodmath.errors import ImpossibleShape
from woodmath.setting_out_derivations import drift_derivation, scatter_derivation

MOST_STEPS = 1000


@dataclass(frozen=True)
class SteppedLine:
    """One line of a chain of steps.

    Parameters
    ----------
    number : int
        Which step it ends, >= 1.
    meant : float
        Its distance from the datum as it should be, in the unit of the step.
    drift : float
        How far beyond that it is, when every step has the same error; below 0, short of it.
    scatter : float
        How far out it usually is, when each step is set anew and errs either way; 0 or more.

    >>> SteppedLine(number=4, meant=8.0, drift=0.5, scatter=0.25).stepped
    8.5
    """

    number: int
    meant: float
    drift: float
    scatter: float

    @property
    def stepped(self) -> float:
        """Where the dividers put it, from the datum."""
        return self.meant + self.drift


def stepping_off(step: float, count: int, error: float) -> tuple[SteppedLine, ...]:
    """Step a distance off again and again with dividers that stand a little wrong.

    A line marked from one datum is out by one error, whichever it is; here the errors come together.

    Parameters
    ----------
    step : float
        The step that is meant, > 0, in any length unit.
    count : int
        Number of steps, 1 to 1000.
    error : float
        How much too wide the dividers stand, in the same unit; below 0, too narrow; less than the step.

    Returns
    -------
    tuple of SteppedLine
        One for each step, the first step first.

    Raises
    ------
    ImpossibleShape
        If there is no such step, count or error.

    Source: `woodmath.setting_out_derivations.drift_derivation` and `scatter_derivation`.

    >>> [(line.number, line.drift, line.scatter) for line in stepping_off(step=2.0, count=4, error=0.0625)][-1]
    (4, 0.25, 0.125)
    """
    if not (math.isfinite(step) and step > 0):
        raise ImpossibleShape(f"The step is {step:g}. Set the dividers to a length of more than 0.")
    if count != int(count) or not 1 <= count <= MOST_STEPS:
        raise ImpossibleShape(f"The number of steps is {count}. Give a whole number from 1 to {MOST_STEPS}.")
    if not (math.isfinite(error) and abs(error) < step):
        raise ImpossibleShape(
            f"The dividers are out by {error:g} in a step of {step:g}. An error is less than the step: give "
            "what a careful setting may miss, such as half a mark of the rule."
        )
    drift = drift_derivation().function("drift")
    scatter = scatter_derivation().function("scatter")
    return tuple(
        SteppedLine(
            number,
            number * step,
            drift(count=number, error=error),
            scatter(count=number, error=abs(error)) if error else 0.0,
        )
        for number in range(1, int(count) + 1)
    )
