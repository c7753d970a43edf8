"""A small chart within a picture: two scales at right angles, their marks, and curves drawn between them."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from woodmath.drawing import Frame, Label, Line, Point, Shape
from woodmath.numbers_as_written import number_shown

_NICE = (1.0, 2.0, 5.0, 10.0)
_TICK = 5.0
_SIZE = 12.5


def nice_step(low: float, high: float, most: int) -> float:
    """Return a step of 1, 2 or 5 times a power of ten that marks a range a few times.

    Parameters
    ----------
    low, high : float
        The range, in any unit, low < high.
    most : int
        How many steps there may be, 1 or more.

    Returns
    -------
    float
        In the same unit.

    >>> nice_step(0.0, 1.0, 5), nice_step(3.0, 47.0, 5)
    (0.2, 10.0)
    """
    rough = (high - low) / most
    power: float = 10.0 ** math.floor(math.log10(rough))
    return next(nice * power for nice in _NICE if nice * power >= rough * (1 - 1e-9))


@dataclass(frozen=True)
class Chart:
    """A rectangle of a picture with a scale along its lower edge and one up its left edge.

    Parameters
    ----------
    frame : Frame
        Of the picture.
    left, top, right, bottom : float
        The rectangle, in picture units from the upper left corner.
    across, up : (float, float)
        What the ends of the two scales stand for, the lesser first.

    >>> chart = Chart(Frame(100, 100, 0.0, 0.0, 1.0), 10.0, 10.0, 90.0, 90.0, (0.0, 8.0), (0.0, 4.0))
    >>> chart.at(4.0, 2.0)
    (50.0, 50.0)
    """

    frame: Frame
    left: float
    top: float
    right: float
    bottom: float
    across: tuple[float, float]
    up: tuple[float, float]

    def at(self, x: float, y: float) -> Point:
        """Return where a pair of values stands, in the picture's length units; beyond the chart, at its edge."""
        (low_x, high_x), (low_y, high_y) = self.across, self.up
        part_x = min(1.0, max(0.0, (x - low_x) / (high_x - low_x)))
        part_y = min(1.0, max(0.0, (y - low_y) / (high_y - low_y)))
        return self.frame.at(
            self.left + (self.right - self.left) * part_x, self.bottom - (self.bottom - self.top) * part_y
        )

    def curve(self, values: Iterable[tuple[float, float]], role: str = "edge") -> tuple[Line, ...]:
        """Return the lines through values, broken off where they leave the chart.

        Parameters
        ----------
        values : iterable of (float, float)
            From left to right.
        role : str
            As for `Line`.

        Returns
        -------
        tuple of Line
            None where fewer than two values beside one another lie in the chart.
        """
        lines: list[list[Point]] = [[]]
        before: tuple[float, float] | None = None
        for value in values:
            if before is not None and self._holds(before) != self._holds(value):
                edge = self._edge(before, value)
                lines[-1].append(self.at(*edge))
            if self._holds(value):
                lines[-1].append(self.at(*value))
            elif lines[-1]:
                lines.append([])
            before = value
        return tuple(Line(tuple(points), role) for points in lines if len(points) > 1)

    def _holds(self, value: tuple[float, float]) -> bool:
        return self.across[0] <= value[0] <= self.across[1] and self.up[0] <= value[1] <= self.up[1]

    def _edge(self, one: tuple[float, float], other: tuple[float, float]) -> tuple[float, float]:
        """Return where the straight line from a value within to one without, or back, crosses the chart's edge."""
        within, without = (one, other) if self._holds(one) else (other, one)
        part = 1.0
        for here, there, (low, high) in zip(within, without, (self.across, self.up), strict=True):
            if there > high:
                part = min(part, (high - here) / (there - here))
            elif there < low:
                part = min(part, (low - here) / (there - here))
        return (
            within[0] + (without[0] - within[0]) * part,
            within[1] + (without[1] - within[1]) * part,
        )

    def scales(
        self, across: str, up: str, steps: tuple[int, int] = (5, 4), least: Sequence[float] = (0.0, 0.0)
    ) -> tuple[Shape, ...]:
        """Return the two scales with their marks, the numbers at them and what they stand for.

        Parameters
        ----------
        across, up : str
            What each scale stands for, with its unit.
        steps : (int, int)
            How many marks there may be along each.
        least : (float, float)
            The smallest step of each; 0 for any.

        Returns
        -------
        tuple of Shape
            For a drawing.
        """
        corner = self.frame.at(self.left, self.bottom)
        shapes: list[Shape] = [
            Line(
                (self.frame.at(self.left, self.top), corner, self.frame.at(self.right, self.bottom)), "thin"
            ),
            Label(
                across, self.frame.at(self.right, self.bottom + 36.0), side="left", role="quiet", size=_SIZE
            ),
            Label(up, self.frame.at(self.left - 6.0, self.top - 16.0), role="quiet", size=_SIZE),
        ]
        for value in _marks(self.across, steps[0], least[0]):
            x, y = self.frame.place(self.at(value, self.up[0]))
            shapes += [
                Line((self.frame.at(x, y), self.frame.at(x, y + _TICK)), "thin"),
                Label(number_shown(value, 3), self.frame.at(x, y + 17.0), side="middle", size=_SIZE),
            ]
        for value in _marks(self.up, steps[1], least[1]):
            x, y = self.frame.place(self.at(self.across[0], value))
            shapes += [
                Line((self.frame.at(x - _TICK, y), self.frame.at(x, y)), "thin"),
                Label(number_shown(value, 3), self.frame.at(x - 9.0, y + 4.0), side="left", size=_SIZE),
            ]
        return tuple(shapes)


def _marks(ends: tuple[float, float], most: int, least: float) -> list[float]:
    low, high = ends
    step = max(least, nice_step(low, high, most))
    first = math.ceil(low / step - 1e-9)
    return [number * step for number in range(first, math.floor(high / step + 1e-9) + 1)]


def key_of(chart: Chart, left: float, above: float, role: str, words: str) -> tuple[Shape, ...]:
    """Return what a line of a chart stands for, over its upper right corner.

    Parameters
    ----------
    chart : Chart
        Which one.
    left, above : float
        From that corner to where the sample begins, in picture units.
    role, words : str
        Of the line, and what it stands for.

    Returns
    -------
    tuple of Shape
        For a drawing.
    """
    frame, x, y = chart.frame, chart.right - left, chart.top - above
    return (
        Line((frame.at(x, y), frame.at(x + 26.0, y)), role),
        Label(words, frame.at(x + 34.0, y + 4.0), role="quiet", size=_SIZE),
    )
