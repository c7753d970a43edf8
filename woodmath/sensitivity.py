"""What an error of measuring does to a result, and which measurement deserves the most care."""

from __future__ import annotations

import math
from dataclasses import dataclass

from woodmath.quantities import spoken, with_unit


@dataclass(frozen=True)
class Contribution:
    """How far one measurement's error moves the result: its rate, its error, and their product.

    Parameters
    ----------
    name : str
        Of the quantity that is measured.
    rate : float
        How far the result moves for each unit of the quantity, in the result's unit.
    error : float
        How far the measurement may be out, 0 or more, in the quantity's unit.
    unit : {"length", "degrees", "number", "length a turn", "area"}
        The quantity's.

    >>> Contribution("offset", rate=2.0, error=0.5).effect
    1.0
    """

    name: str
    rate: float
    error: float
    unit: str = "length"

    @property
    def effect(self) -> float:
        """The change of the result, in the result's unit, never negative."""
        return abs(self.rate * self.error)


@dataclass(frozen=True)
class Sensitivity:
    """What measuring errors do to a result, each measurement on its own; shows itself on a page.

    Parameters
    ----------
    of : str
        Name of the result.
    value : float
        The result without any error, in its unit.
    contributions : tuple of Contribution
        One for each measurement, at least one.
    unit : {"length", "degrees", "number", "length a turn", "area"}
        The result's.

    >>> parts = (Contribution("offset", 2.0, 0.5), Contribution("thickness", 1.0, 0.1))
    >>> told = Sensitivity("bevel", 45.0, parts, "degrees")
    >>> told.matters_most
    'offset'
    """

    of: str
    value: float
    contributions: tuple[Contribution, ...]
    unit: str = "length"

    @property
    def matters_most(self) -> str:
        """The name of the measurement whose error moves the result furthest; "" where two move it as far."""
        largest = self._largest()
        return largest[0].name if len(largest) == 1 else ""

    @property
    def at_worst(self) -> float:
        """The sum of all effects: every error at its full size, all pulling the same way."""
        return math.fsum(contribution.effect for contribution in self.contributions)

    def _largest(self) -> tuple[Contribution, ...]:
        furthest = max(part.effect for part in self.contributions)
        return tuple(part for part in self.contributions if math.isclose(part.effect, furthest))

    def _told(self) -> tuple[Contribution, ...]:
        """Return what is told: what was counted or is known exactly only where there is nothing else."""
        return tuple(part for part in self.contributions if part.error) or self.contributions

    def _advice(self) -> str:
        largest = self._largest()
        if len(largest) == 1:
            return f"Measure the **{spoken(largest[0].name)}** with most care."
        if len(largest) == len(self.contributions):
            return "All matter alike."
        named = " and the ".join(f"**{spoken(part.name)}**" for part in largest)
        return f"Measure the {named} with most care: they matter alike."

    def _repr_markdown_(self) -> str:
        rows = "\n".join(
            f"| {spoken(part.name)} | {with_unit(f'{part.error:.4g}', part.unit)} "
            f"| {with_unit(f'{part.effect:.4g}', self.unit)} |"
            for part in self._told()
        )
        return (
            f"{spoken(self.of).capitalize()} is {with_unit(f'{self.value:.6g}', self.unit)}; at worst it is out "
            f"by {with_unit(f'{self.at_worst:.4g}', self.unit)}. {self._advice()}\n\n"
            f"| measurement | its error | moves the result by |\n|---|---|---|\n{rows}"
        )
