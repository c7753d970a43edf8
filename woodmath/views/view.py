"""A view: the function that draws, the controls that move it, and where a piece lets it start.

The controls are data (a label, a unit, a sensible range); the explorer makes sliders and boxes of them.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from woodmath.drawing import Drawing
from woodmath.errors import UnknownName
from woodmath.piece import Piece
from woodmath.rule import Rule

Value = float | int | str | tuple[tuple[str, ...], ...] | Piece
"""What a setting holds; a view of the whole piece takes what no control moves from the piece itself."""
Settings = Mapping[str, Value]


@dataclass(frozen=True)
class LengthControl:
    """A length in whole marks of the rule; the two ranges are texts that a rule reads.

    >>> LengthControl("post", "post, square", ("1", "3"), ("25", "75")).bounds(Rule.inches(16))
    (1.0, 3.0)
    """

    name: str
    label: str
    inches: tuple[str, str]
    millimetres: tuple[str, str]

    def bounds(self, rule: Rule) -> tuple[float, float]:
        """Return the least and the greatest length, in the rule's unit."""
        low, high = self.inches if rule.unit == "inch" else self.millimetres
        return rule.read(low), rule.read(high)


@dataclass(frozen=True)
class StepControl:
    """A number that is no length (degrees, turns, holes), in even steps between two bounds.

    >>> StepControl("turns", "turns", "turns", Fraction(0), Fraction(20), Fraction(1, 4)).positions
    80
    """

    name: str
    label: str
    unit: str
    low: Fraction
    high: Fraction
    step: Fraction = Fraction(1)

    @property
    def positions(self) -> int:
        """How many steps lead from the low end to the high one."""
        return int((self.high - self.low) / self.step)


@dataclass(frozen=True)
class ChoiceControl:
    """One of a few words: (what is written, what it means to the view)."""

    name: str
    label: str
    options: tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class TableControl:
    """A small table to write one's own measurements in; the view gets the texts, row by row."""

    name: str
    label: str
    columns: tuple[str, ...]
    rows: int


Control = LengthControl | StepControl | ChoiceControl | TableControl


@dataclass(frozen=True)
class View:
    """A drawing that moves: what draws it, its controls in order, and the start that a piece gives.

    Parameters
    ----------
    name : str
        As a page writes it.
    draw : callable
        From a rule and the settings (by control name) to a Drawing.
    controls : tuple of controls
        In the order in which they stand: the thing, how it is made, how it is shown.
    start : callable
        From a piece to the settings that it begins with, one for every control.
    """

    name: str
    draw: Callable[[Rule, Settings], Drawing]
    controls: tuple[Control, ...]
    start: Callable[[Piece], Settings]

    def settings(self, piece: Piece, **changes: Value) -> dict[str, Value]:
        """Return the start settings of a piece, with some changed by name.

        Raises
        ------
        UnknownName
            If a change names no control of this view; the message lists those there are.
        """
        strangers = sorted(set(changes) - {control.name for control in self.controls})
        if strangers:
            raise UnknownName(
                f"{self.name} has no control called {', '.join(strangers)}. "
                f"It has: {', '.join(control.name for control in self.controls)}."
            )
        return {**self.start(piece), **changes}

    def drawing(self, piece: Piece, **changes: Value) -> Drawing:
        """Return the drawing of a piece as it starts, with some settings changed by name."""
        return self.draw(piece.rule, self.settings(piece, **changes))


def number(settings: Settings, name: str) -> float:
    """Return a setting that is a number (a length in the piece's unit, degrees, turns).

    >>> number({"post": 2}, "post")
    2.0
    """
    value = settings[name]
    if not isinstance(value, (int, float)):
        raise UnknownName(f"{name} is {value!r}, and a number is wanted there. Give a length or a count.")
    return float(value)
