"""What an error of measuring does to a result, and which measurement deserves the most care."""

from __future__ import annotations

import math
from dataclasses import dataclass

from woodmath.quantities import spoken


@dataclass(frozen=True)
class Contribution:
    """How far one measurement's error moves the result: its rate, its error, and their product.

    >>> Contribution("offset", rate=2.0, error=0.5).effect
    1.0
    """

    name: str
    rate: float
    error: float

    @property
    def effect(self) -> float:
        """The change of the result, in the result's unit, never negative."""
        return abs(self.rate * self.error)


@dataclass(frozen=True)
class Sensitivity:
    """What measuring errors do to a result, each measurement on its own.

    >>> parts = (Contribution("offset", 2.0, 0.5), Contribution("thickness", 1.0, 0.1))
    >>> told = Sensitivity("bevel", 45.0, parts)
    >>> told.matters_most
    'offset'
    """

    of: str
    value: float
    contributions: tuple[Contribution, ...]

    @property
    def matters_most(self) -> str:
        """The name of the measurement whose error moves the result furthest."""
        return max(self.contributions, key=lambda contribution: contribution.effect).name

    @property
    def at_worst(self) -> float:
        """The sum of all effects: every error at its full size, all pulling the same way."""
        return math.fsum(contribution.effect for contribution in self.contributions)

    def _repr_markdown_(self) -> str:
        rows = "\n".join(
            f"| {spoken(part.name)} | {part.error:.4g} | {part.effect:.4g} |" for part in self.contributions
        )
        return (
            f"{spoken(self.of).capitalize()} is {self.value:.6g}; at worst it is out by {self.at_worst:.4g}. "
            f"Measure the **{spoken(self.matters_most)}** with most care.\n\n"
            f"| measurement | its error | moves the result by |\n|---|---|---|\n{rows}"
        )
