"""How a pattern larger than a sheet is shared out over several: windows that overlap, and marks to join them by.

A joint runs where it meets least of the pattern's words and lines, as far as the sheets leave it free. Two sheets
share a strip along their joint, and on it stand match marks: one and the same place of the pattern, printed on both
sheets with the same number.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property

from woodmath.errors import ImpossibleShape
from woodmath.outlines import Point

OVERLAP = 12.0
"""Width of the strip that neighbours share, in millimetres."""

MARK = 7.0
"""How far a match mark with its number reaches, in millimetres."""

_STEP = 1.5
_MOST_SHEETS = 200

Box = tuple[float, float, float, float]
"""Left, bottom, right and top, in millimetres from the pattern's lower left corner."""

Span = tuple[float, float, int]


@dataclass(frozen=True)
class Taken:
    """A part of the pattern that neither a joint nor a mark should meet.

    Parameters
    ----------
    box : (float, float, float, float)
        Left, bottom, right and top, in millimetres from the pattern's lower left corner.
    weight : int
        How bad it is to meet it, >= 1.

    >>> Taken((0.0, 0.0, 30.0, 4.0), 10).weight
    10
    """

    box: Box
    weight: int = 1


@dataclass(frozen=True)
class MatchMark:
    """A place of the pattern that is printed on two sheets.

    Parameters
    ----------
    number : int
        Counted from 1, over the whole pattern.
    place : (float, float)
        In millimetres from the pattern's lower left corner.
    upright : bool
        Whether the joint through it is upright.

    >>> MatchMark(1, (155.0, 60.0), True).number
    1
    """

    number: int
    place: Point
    upright: bool


@dataclass(frozen=True)
class Tile:
    """The part of a pattern that one sheet shows.

    Parameters
    ----------
    column, row : int
        Counted from 1, columns from the left and rows from the top.
    left, bottom, right, top : float
        Of the window, in millimetres from the pattern's lower left corner.

    >>> Tile(2, 1, 150.0, 0.0, 300.0, 200.0).middle
    (225.0, 100.0)
    """

    column: int
    row: int
    left: float
    bottom: float
    right: float
    top: float

    @property
    def middle(self) -> Point:
        """The middle of the window."""
        return ((self.left + self.right) / 2, (self.bottom + self.top) / 2)

    def shows(self, place: Point) -> bool:
        """Tell whether a place of the pattern lies in the window."""
        return self.left <= place[0] <= self.right and self.bottom <= place[1] <= self.top


@dataclass(frozen=True)
class Tiling:
    """A pattern shared out over sheets of one size.

    Parameters
    ----------
    sheet_width, sheet_height : float
        Of each sheet, in millimetres.
    width, height : float
        Of the pattern, in millimetres.
    upright_joints, level_joints : tuple of float
        Where two sheets meet, in millimetres from the pattern's left end and from its lower end, in rising order.
    taken : tuple of Taken
        What the match marks are to stand clear of, where they can.

    >>> tiling = Tiling(210.0, 297.0, 300.0, 100.0, (150.0,), ())
    >>> [(tile.left, tile.right) for tile in tiling.tiles]
    [(0.0, 156.0), (144.0, 300.0)]
    """

    sheet_width: float
    sheet_height: float
    width: float
    height: float
    upright_joints: tuple[float, ...]
    level_joints: tuple[float, ...]
    taken: tuple[Taken, ...] = ()

    @property
    def columns(self) -> int:
        """How many sheets lie side by side."""
        return len(self.upright_joints) + 1

    @property
    def rows(self) -> int:
        """How many sheets lie over one another."""
        return len(self.level_joints) + 1

    @cached_property
    def tiles(self) -> tuple[Tile, ...]:
        """Every window, row by row from the upper left."""
        across = _windows(self.width, self.upright_joints)
        upward = _windows(self.height, self.level_joints)
        return tuple(
            Tile(column, row, left, bottom, right, top)
            for row, (bottom, top) in enumerate(reversed(upward), start=1)
            for column, (left, right) in enumerate(across, start=1)
        )

    @cached_property
    def match_marks(self) -> tuple[MatchMark, ...]:
        """All marks, numbered row by row: two on each joint of two sheets, clear of where four meet."""
        return tuple(
            MatchMark(number, place, upright)
            for number, (place, upright) in enumerate(self._joints(), start=1)
        )

    def marks_on(self, tile: Tile) -> tuple[MatchMark, ...]:
        """Return the marks that stand on one sheet.

        Parameters
        ----------
        tile : Tile
            One of this tiling's.

        >>> tiling = Tiling(210.0, 297.0, 300.0, 100.0, (150.0,), ())
        >>> [mark.number for mark in tiling.marks_on(tiling.tiles[0])]
        [1, 2]
        """
        return tuple(mark for mark in self.match_marks if tile.shows(mark.place))

    def _joints(self) -> Iterator[tuple[Point, bool]]:
        for tile in self.tiles:
            right, below = tile.right - OVERLAP / 2, tile.bottom + OVERLAP / 2
            if tile.column < self.columns:
                spans = self._met_by((right, tile.bottom, right, tile.top), 1)
                yield from (((right, up), True) for up in reversed(_places(tile.bottom, tile.top, spans)))
            if tile.row < self.rows:
                spans = self._met_by((tile.left, below, tile.right, below), 0)
                yield from (((along, below), False) for along in _places(tile.left, tile.right, spans))

    def _met_by(self, joint: Box, axis: int) -> list[Span]:
        """Return what a mark on a joint could meet, as spans along it."""
        return [
            (taken.box[axis], taken.box[axis + 2], taken.weight)
            for taken in self.taken
            if all(
                taken.box[side] < joint[side + 2] + MARK and taken.box[side + 2] > joint[side] - MARK
                for side in (0, 1)
            )
        ]


def _windows(length: float, joints: Sequence[float]) -> list[tuple[float, float]]:
    """Return where each window begins and ends along one side of the pattern."""
    begins = [0.0, *(joint - OVERLAP / 2 for joint in joints)]
    ends = [*(joint + OVERLAP / 2 for joint in joints), length]
    return list(zip(begins, ends, strict=True))


def _met(place: float, spans: Sequence[Span]) -> int:
    """Return how much a mark at a place meets of what is taken."""
    return sum(weight for low, high, weight in spans if low < place + MARK and high > place - MARK)


def _clearest(wanted: float, way: float, spans: Sequence[Span]) -> float:
    """Return the place no further than a way from the one wanted that meets least; of several the nearest."""
    count = int(way / _STEP)
    places = [wanted + _STEP * number for number in range(-count, count + 1)]
    return min(places, key=lambda place: (_met(place, spans), abs(place - wanted)))


def _places(low: float, high: float, spans: Sequence[Span]) -> tuple[float, float]:
    """Return two places along a window, one in each half, where least is taken, and clear of the strips at its ends."""
    length = high - low
    strip = OVERLAP if length > 4 * OVERLAP else 0.0
    half = length / 2 - strip
    way = max(0.0, half / 2 - MARK)
    return (
        _clearest(low + strip + half / 2, way, spans),
        _clearest(high - strip - half / 2, way, spans),
    )


def tiling_of(
    width: float,
    height: float,
    sheet: tuple[float, float],
    room_upright: tuple[float, float],
    room_lying: tuple[float, float],
    taken: Sequence[Taken] = (),
) -> Tiling:
    """Share a pattern out over as few sheets as possible, all upright or all on their side.

    Parameters
    ----------
    width, height : float
        Of the pattern, in millimetres, >= 0.
    sheet : (float, float)
        Width and height of the upright sheet, in millimetres.
    room_upright, room_lying : (float, float)
        What a sheet that stands, and one on its side, can show, in millimetres.
    taken : sequence of Taken
        What the joints are to run clear of, where they can.

    Returns
    -------
    Tiling
        Of one sheet where that is enough; upright where both ways need as many.

    Raises
    ------
    ImpossibleShape
        If it would take more than 200 sheets.

    >>> tiling = tiling_of(600.0, 100.0, (210.0, 297.0), (164.0, 250.0), (251.0, 163.0))
    >>> tiling.columns, tiling.rows, tiling.sheet_width
    (3, 1, 297.0)
    """
    fewest, (sheet_width, sheet_height), room = min(
        (
            (_count(width, room[0]) * _count(height, room[1]), size, room)
            for size, room in ((sheet, room_upright), ((sheet[1], sheet[0]), room_lying))
        ),
        key=lambda way: way[0],
    )
    if fewest > _MOST_SHEETS:
        raise ImpossibleShape(
            f"At full size the pattern is {math.ceil(width)} by {math.ceil(height)} mm, which takes "
            f"{fewest} sheets; {_MOST_SHEETS} is the most. Draw a smaller part of it, or set it out on a board."
        )
    upright, level = (
        _joints_of(length, room[axis], [(each.box[axis], each.box[axis + 2], each.weight) for each in taken])
        for axis, length in enumerate((width, height))
    )
    return Tiling(sheet_width, sheet_height, width, height, upright, level)


def _joints_of(length: float, room: float, spans: Sequence[Span]) -> tuple[float, ...]:
    """Return where the sheets meet: evenly, and each joint moved as far as the room allows to where least is met."""
    count = _count(length, room)
    window = (length + (count - 1) * OVERLAP) / count
    way = max(0.0, min((room - window) / 2, (window - 4 * OVERLAP) / 2))
    return tuple(
        _clearest(number * (window - OVERLAP) + OVERLAP / 2, way, spans) for number in range(1, count)
    )


def _count(length: float, room: float) -> int:
    return 1 if length <= room else math.ceil((length - OVERLAP) / (room - OVERLAP))
