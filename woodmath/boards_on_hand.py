"""Fit rough blanks to the boards that lie in the rack: which comes from which, what is left, what is missing.

Every blank's grain runs along its board. A board is crosscut into sections, each section is ripped into strips,
and a strip that is longer than its blank is cut to length last. Each cut turns a kerf's width into dust.
"""

from __future__ import annotations

import math
from bisect import bisect_left, insort
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import Literal

from woodmath.board_measure import check_positive
from woodmath.errors import ImpossibleShape

PLANED_AWAY = 1.25
"""Times its blank's thickness that a board may be before planing it down is a waste (common practice)."""

_SAME = 1e-9
"""Lengths this small are the computer's rounding, not wood."""


@dataclass(frozen=True)
class Blank:
    """One rough blank that is wanted.

    Parameters
    ----------
    name : str
        Which part it is for.
    length, width : float
        In the rough, along the grain and across it, > 0, in any length unit.
    thickness : float
        The least that the board must have, > 0.

    >>> Blank("rocker 1", length=20, width=4.25, thickness=1).length
    20
    """

    name: str
    length: float
    width: float
    thickness: float

    def __post_init__(self) -> None:
        for name in ("length", "width", "thickness"):
            check_positive(f"The {name} of the blank for {self.name}", getattr(self, name))


@dataclass(frozen=True)
class StockBoard:
    """One board in the rack.

    Parameters
    ----------
    name : str
        What it is called, "board 1" for instance.
    length, width, thickness : float
        > 0, in the unit of the blanks.

    >>> StockBoard("board 1", length=84, width=9.5, thickness=0.875).width
    9.5
    """

    name: str
    length: float
    width: float
    thickness: float

    def __post_init__(self) -> None:
        for name in ("length", "width", "thickness"):
            check_positive(f"The {name} of {self.name}", getattr(self, name))


@dataclass(frozen=True)
class Region:
    """A rectangle of a board: a blank, wood that is left over, or what the saw turned to dust.

    Parameters
    ----------
    board : str
        The board's name.
    kind : {"blank", "left over", "kerf"}
        What becomes of it.
    name : str
        The blank's name; "" for the other two.
    along, across : float
        Where it begins, from the board's one end and its one edge, 0 or more.
    length, width : float
        Along the grain and across it, > 0.

    >>> Region("board 1", "blank", "rocker 1", along=0, across=0, length=20, width=4).area
    80
    """

    board: str
    kind: Literal["blank", "left over", "kerf"]
    name: str
    along: float
    across: float
    length: float
    width: float

    @property
    def area(self) -> float:
        """Of its face, in squared length units."""
        return self.length * self.width


@dataclass(frozen=True)
class Fitting:
    """How the blanks come out of the boards.

    Parameters
    ----------
    boards : tuple of StockBoard
        Those that were offered.
    regions : tuple of Region
        Board by board, covering every board that is sawn, and none that is not.
    missing : tuple of Blank
        Those for which there is no wood.

    >>> fit([Blank("lid", 10, 6, 1)], [StockBoard("board 1", 24, 6, 1)], kerf=0.125).missing
    ()
    """

    boards: tuple[StockBoard, ...]
    regions: tuple[Region, ...]
    missing: tuple[Blank, ...]

    @property
    def blanks(self) -> tuple[Region, ...]:
        """Where every blank lies that there is wood for."""
        return tuple(region for region in self.regions if region.kind == "blank")

    @property
    def left_over(self) -> tuple[Region, ...]:
        """What is left of the boards that were sawn."""
        return tuple(region for region in self.regions if region.kind == "left over")

    @property
    def kerfs(self) -> tuple[Region, ...]:
        """What the saw turned to dust."""
        return tuple(region for region in self.regions if region.kind == "kerf")

    @property
    def untouched(self) -> tuple[StockBoard, ...]:
        """The boards that stay whole."""
        sawn = {region.board for region in self.regions}
        return tuple(board for board in self.boards if board.name not in sawn)


@dataclass
class _Section:
    """A piece crosscut from a board, with the strips ripped from it so far."""

    length: float
    strips: list[Blank] = field(default_factory=list)


@dataclass(frozen=True, order=True)
class _Room:
    """What is still to be had: of a board's length, or of a section's width. The least comes first."""

    left: float
    place: int
    section: _Section | None = field(default=None, compare=False)

    def less(self, taken: float, kerf: float) -> _Room:
        """Return what is left when so much and a kerf is taken."""
        return _Room(max(0.0, self.left - taken - kerf), self.place, self.section)


class _Rack:
    """Boards of one thickness and one width, and the sections begun on them."""

    def __init__(self, boards: Sequence[tuple[int, StockBoard]], kerf: float) -> None:
        self.width = boards[0][1].width
        self.kerf = kerf
        self.ends = sorted(_Room(board.length, place) for place, board in boards)
        self.sections: list[_Room] = []

    def rip_beside(self, blank: Blank) -> bool:
        """Rip the blank from the section that has the least to spare beside what was ripped before."""
        place = _least(self.sections, blank.width)
        if place is None:
            return False
        for number in range(place, len(self.sections)):
            section = self.sections[number].section
            if section is not None and _fits(blank.length, section.length):
                self._rip(blank, self.sections.pop(number))
                return True
        return False

    def crosscut(self, blank: Blank) -> tuple[int, _Section] | None:
        """Crosscut a section as long as the blank from the board with the least length to spare, and rip it."""
        place = _least(self.ends, blank.length) if _fits(blank.width, self.width) else None
        if place is None:
            return None
        end = self.ends.pop(place)
        insort(self.ends, end.less(blank.length, self.kerf))
        section = _Section(blank.length)
        self._rip(blank, _Room(self.width, end.place, section))
        return end.place, section

    def _rip(self, blank: Blank, room: _Room) -> None:
        assert room.section is not None
        room.section.strips.append(blank)
        insort(self.sections, room.less(blank.width, self.kerf))


def fit(blanks: Sequence[Blank], boards: Sequence[StockBoard], kerf: float) -> Fitting:
    """Fit blanks to boards: first those whose thickness a board has, and of these the longest first.

    Boards are kept for blanks of their own thickness. What finds none of its own takes, when all of those lie in
    their boards, what little planing brings down to it; and only what is still left over takes thicker stock. A blank
    takes the thinnest board that it may, and of these the narrowest that is wide enough, so that wide boards are
    kept for wide parts. It is a good way and not always the best one.

    Parameters
    ----------
    blanks : sequence of Blank
        What is wanted, in any order.
    boards : sequence of StockBoard
        What there is, each with a name of its own, in the unit of the blanks.
    kerf : float
        What one saw cut takes, with the truing after it, 0 or more.

    Returns
    -------
    Fitting
        Every blank is either in a board or among the missing.

    Raises
    ------
    ImpossibleShape
        If the kerf is less than 0, or two boards have one name.

    Source: crosscut into sections, then rip (common practice).

    >>> fitted = fit([Blank("side", 20, 8, 1), Blank("end", 15, 8, 1)], [StockBoard("board 1", 36, 8, 1)], kerf=1)
    >>> [(region.name, region.along) for region in fitted.blanks], fitted.left_over
    ([('side', 0.0), ('end', 21.0)], ())
    """
    if not (math.isfinite(kerf) and kerf >= 0):
        raise ImpossibleShape(f"A saw cut is said to take {kerf:g}. Give the width of the cut, 0 or more.")
    if len({board.name for board in boards}) < len(boards):
        raise ImpossibleShape("Two boards have one name. Number them, so that each can be found in the rack.")
    racks = _racks(boards, kerf)
    on_board: dict[int, list[_Section]] = {}
    missing = sorted(blanks, key=lambda each: (-each.length, -each.width, each.name))
    for thickest in (1.0, PLANED_AWAY, math.inf):
        missing = [blank for blank in missing if not _found(blank, racks, on_board, thickest)]
    regions = tuple(
        region for place in sorted(on_board) for region in _regions(boards[place], on_board[place], kerf)
    )
    return Fitting(tuple(boards), regions, tuple(missing))


def _found(
    blank: Blank,
    racks: Sequence[tuple[float, list[_Rack]]],
    on_board: dict[int, list[_Section]],
    thickest: float,
) -> bool:
    """Find wood for a blank in boards up to so many times its thickness: beside others if it can be."""
    for thickness, narrowest_first in racks:
        if not (_fits(blank.thickness, thickness) and _fits(thickness, thickest * blank.thickness)):
            continue
        if any(rack.rip_beside(blank) for rack in narrowest_first):
            return True
        for rack in narrowest_first:
            begun = rack.crosscut(blank)
            if begun is not None:
                place, section = begun
                on_board.setdefault(place, []).append(section)
                return True
    return False


def _racks(boards: Sequence[StockBoard], kerf: float) -> list[tuple[float, list[_Rack]]]:
    sizes: dict[tuple[float, float], list[tuple[int, StockBoard]]] = {}
    for place, board in enumerate(boards):
        sizes.setdefault((board.thickness, board.width), []).append((place, board))
    racks: dict[float, list[_Rack]] = {}
    for thickness, width in sorted(sizes):
        racks.setdefault(thickness, []).append(_Rack(sizes[thickness, width], kerf))
    return list(racks.items())


def _least(rooms: list[_Room], wanted: float) -> int | None:
    place = bisect_left(rooms, wanted - _SAME, key=lambda each: each.left)
    return place if place < len(rooms) else None


def _fits(wanted: float, there: float) -> bool:
    return wanted <= there + _SAME


def _regions(board: StockBoard, sections: Sequence[_Section], kerf: float) -> Iterator[Region]:
    """Draw the cuts of one board: every part of it is a blank, a kerf or left over."""
    along = 0.0
    for section in sections:
        across = 0.0
        for strip in section.strips:
            yield Region(board.name, "blank", strip.name, along, across, strip.length, strip.width)
            yield from _beyond(
                board, along + strip.length, across, section.length - strip.length, strip, kerf
            )
            across += strip.width
            cut = min(kerf, board.width - across)
            yield from _rest(board, "kerf", along, across, section.length, cut)
            across += cut
        yield from _rest(board, "left over", along, across, section.length, board.width - across)
        along += section.length
        cut = min(kerf, board.length - along)
        yield from _rest(board, "kerf", along, 0.0, cut, board.width)
        along += cut
    yield from _rest(board, "left over", along, 0.0, board.length - along, board.width)


def _beyond(
    board: StockBoard, along: float, across: float, length: float, strip: Blank, kerf: float
) -> Iterator[Region]:
    """Draw what is cut off a strip that is longer than its blank."""
    cut = min(kerf, length)
    yield from _rest(board, "kerf", along, across, cut, strip.width)
    yield from _rest(board, "left over", along + cut, across, length - cut, strip.width)


def _rest(
    board: StockBoard,
    kind: Literal["left over", "kerf"],
    along: float,
    across: float,
    length: float,
    width: float,
) -> Iterator[Region]:
    if length > _SAME and width > _SAME:
        yield Region(board.name, kind, "", along, across, length, width)
