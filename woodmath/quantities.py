"""The quantities of a derivation: symbol, letter, meaning and unit, and how a value of one is taken in."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property
from types import MappingProxyType

import sympy
from sympy.core.relational import Relational

from woodmath.errors import ImpossibleShape

_BEHIND = MappingProxyType(
    {
        "degrees": "°",
        "length a turn": " a turn",
        "seconds": " s",
        "metres": " m",
        "kilograms": " kg",
        "joules": " J",
        "newtons": " N",
        "metres per second squared": " m/s²",
    }
)


@dataclass(frozen=True)
class Quantity:
    """One quantity of a derivation: its symbol, the letter it is written with, its meaning and its unit.

    Parameters
    ----------
    symbol : sympy.Symbol
        The name is the trade's word, spelt out; the assumptions (positive, real) are the quantity's.
    letter : str
        What stands for it in a formula, in LaTeX.
    meaning : str
        In plain words, short.
    unit : {"length", "degrees", "number", "length a turn", "area"}
        Degrees are converted at the edges: formulas run in radians, makers do not.

    >>> Quantity(sympy.Symbol("offset", positive=True), "o", "from the square end", "length").name
    'offset'
    """

    symbol: sympy.Symbol
    letter: str
    meaning: str
    unit: str = "length"

    @cached_property
    def name(self) -> str:
        """The name by which functions take it."""
        return str(self.symbol.name)

    @cached_property
    def turned(self) -> float:
        """How many of the formula's units one of the quantity's is: formulas run in radians."""
        return math.pi / 180 if self.unit == "degrees" else 1.0

    def taken_in(self, value: float) -> float:
        """Return a value in the formula's unit, once it is known to be one that the quantity can have.

        Parameters
        ----------
        value : float
            In the quantity's unit, finite, and more than 0 or no less where the quantity is so.

        Returns
        -------
        float
            In radians for an angle, else as it was given.

        Raises
        ------
        ImpossibleShape
            If it is no number, or is not positive where the quantity is.

        >>> Quantity(sympy.Symbol("lean", real=True), "l", "from upright", "degrees").taken_in(180)
        3.141592653589793
        """
        if 0.0 < value < math.inf:
            return float(value) * self.turned
        if not math.isfinite(value):
            raise ImpossibleShape(f"{spoken(self.name)} is {value}; give a plain number.")
        if self.symbol.is_positive and value <= 0:
            raise ImpossibleShape(
                f"{spoken(self.name)} is {value:g}, and it must be more than 0 ({self.meaning})."
            )
        if self.symbol.is_nonnegative and value < 0:
            raise ImpossibleShape(f"{spoken(self.name)} is {value:g}, and it cannot be less than 0.")
        return float(value) * self.turned


@dataclass(frozen=True)
class Limit:
    """What must hold before a formula means anything, and the sentence for when it does not.

    Parameters
    ----------
    condition : sympy relational
        In the derivation's symbols.
    words : str
        The sentence for the maker: what is wrong and what to change.

    >>> a, b = sympy.symbols("a b", positive=True)
    >>> Limit(a < b, "the pins cannot be further apart than the string allows").condition
    a < b
    """

    condition: Relational
    words: str


def spoken(name: str) -> str:
    """Return a name as it is said: underscores become spaces.

    >>> spoken("set_back")
    'set back'
    """
    return name.replace("_", " ")


def with_unit(figures: str, unit: str) -> str:
    """Return a number with what stands behind it: a length has nothing, for it is in the piece's own unit.

    Parameters
    ----------
    figures : str
        The number, as it is to be written.
    unit : str
        That of a `Quantity`: "length", "degrees", "number", "length a turn", "area", or an SI unit in words.

    Returns
    -------
    str
        With the sign of the degree, or with what the length goes to.

    >>> with_unit("45", "degrees"), with_unit("0.125", "length a turn"), with_unit("0.5", "length")
    ('45°', '0.125 a turn', '0.5')
    """
    return f"{figures}{_BEHIND.get(unit, '')}"


def worded(
    words: Mapping[str, tuple[str, str, str, str]],
    names: Iterable[str],
    others: Callable[[str], tuple[Quantity, ...]] | None = None,
) -> tuple[Quantity, ...]:
    """Return quantities from a table of their letters and meanings, so that every derivation says them alike.

    Parameters
    ----------
    words : mapping of str to (letter, meaning, unit, assumption)
        By name; the assumption is sympy's, "positive" or "real".
    names : iterable of str
        Those wanted, in order.
    others : callable, optional
        Gives the quantity of a name that is not in the table: that of the topic which this one builds on.

    Returns
    -------
    tuple of Quantity
        One for each name.

    >>> worded({"height": ("h", "of the end", "length", "positive")}, ("height",))[0].letter
    'h'
    """
    found: list[Quantity] = []
    for name in names:
        if others is not None and name not in words:
            found += others(name)
            continue
        letter, meaning, unit, kind = words[name]
        found.append(Quantity(sympy.Symbol(name, **{kind: True}), letter, meaning, unit))
    return tuple(found)
