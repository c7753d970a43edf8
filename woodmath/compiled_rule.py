"""A solved equation as a fast function: values are checked, the formula that sympy derived is run."""

from __future__ import annotations

import math
from collections.abc import Mapping

import sympy
from sympy.core.relational import Equality

from woodmath.errors import ImpossibleShape, UnknownName
from woodmath.quantities import Limit, Quantity, spoken


class CompiledRule:
    """One quantity of a derivation as a fast function of the others, called by name.

    Made by `Derivation.function`. Values are checked first (finite, positive where the quantity is), then the
    derivation's limits, then the formula that sympy derived is run; degrees go in and come out as degrees.

    Parameters
    ----------
    solved : sympy.Eq
        The equation, with the wanted quantity alone on its left.
    wanted : Quantity
        The quantity that is found.
    quantities : tuple of Quantity
        Every one that the equation may speak of.
    limits : tuple of Limit
        What must hold; a limit that speaks of other quantities than those given is passed over.

    >>> side, area = sympy.symbols("side area", positive=True)
    >>> face = Quantity(area, "A", "face of a square board", "area")
    >>> CompiledRule(sympy.Eq(area, side**2), face, (Quantity(side, "s", "its side"), face), ())(side=3)
    9.0
    """

    def __init__(
        self, solved: Equality, wanted: Quantity, quantities: tuple[Quantity, ...], limits: tuple[Limit, ...]
    ) -> None:
        self._wanted = wanted
        self._given = tuple(quantity for quantity in quantities if quantity.symbol in solved.rhs.free_symbols)
        self._names = tuple(quantity.name for quantity in self._given)
        self._wants = set(self._names)
        symbols = [quantity.symbol for quantity in self._given]
        self._formula = sympy.lambdify(symbols, solved.rhs, modules="math")
        self._limits = tuple(
            (sympy.lambdify(symbols, limit.condition, modules="math"), limit.words)
            for limit in limits
            if limit.condition.free_symbols <= set(symbols)
        )

    def __call__(self, **values: float) -> float:
        """Return the wanted quantity.

        Parameters
        ----------
        **values : float
            Each of the other quantities by its name, in its unit (degrees for angles).

        Returns
        -------
        float
            In the wanted quantity's unit.

        Raises
        ------
        UnknownName
            If a quantity is missing or one too many is given.
        ImpossibleShape
            If a value cannot be, or the values cannot stand together.

        >>> from woodmath.bevel import derivation
        >>> derivation().function("angle")(offset=0.5, thickness=0.5)
        45.0
        """
        if values.keys() != self._wants:
            raise UnknownName(
                f"{self._wanted.name} follows from {', '.join(self._names)}; given: "
                f"{', '.join(values) or 'nothing'}. Name exactly those."
            )
        numbers = [
            quantity.taken_in(values[name]) for name, quantity in zip(self._names, self._given, strict=True)
        ]
        for holds, words in self._limits:
            if not holds(*numbers):
                raise ImpossibleShape(f"{words} (given: {self._told(values)}).")
        try:
            result = float(self._formula(*numbers))
        except (ValueError, ZeroDivisionError, OverflowError, TypeError):
            result = math.nan
        if self._wanted.symbol.is_nonnegative and result < 0:
            # What should be nothing may come out a rounding error below it; more than that cannot be made.
            result = 0.0 if -result <= 1e-12 * max(map(abs, numbers), default=0.0) else math.nan
        if not math.isfinite(result):
            raise ImpossibleShape(
                f"No {spoken(self._wanted.name)} goes with {self._told(values)}. "
                "Change one of these sizes and try again."
            )
        return result / self._wanted.turned

    def _told(self, values: Mapping[str, float]) -> str:
        return ", ".join(f"{spoken(name)} {values[name]:.6g}" for name in self._names)
