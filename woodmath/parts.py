"""The parts of a piece: how many, their finished size over the tenons, the blank, the grain, the wood in them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from woodmath.case import Case
from woodmath.case_solids import Placed, solids_of
from woodmath.solids import Solid, Vector
from woodmath.whole_marks import mark_at_least

if TYPE_CHECKING:
    from woodmath.piece import Piece

SPARE_LENGTH = "12 mm"
"""What a blank is sawn longer than its part, for squaring both ends (common practice)."""
SPARE_WIDTH = "6 mm"
"""What a blank is sawn wider than its part, for planing both edges (common practice)."""

_X: Vector = (1.0, 0.0, 0.0)
_Y: Vector = (0.0, 1.0, 0.0)
_Z: Vector = (0.0, 0.0, 1.0)


@dataclass(frozen=True)
class Part:
    """One kind of part, all of them alike or mirrored.

    Parameters
    ----------
    name : str
        What it is called.
    count : int
        How many there are in one piece.
    hands : "", "left and right" or "pair"
        How they differ: not at all, half of them mirrored, or two and two with their face sides outward.
    length, width, thickness : float
        Of the finished part over everything, tenons too; the length is along the grain.
    rough_length, rough_width, rough_thickness : float
        Of the blank to saw out of planed stock; the same stock has the thickness already.
    grain : str
        How the grain runs, in words.
    solid : Solid
        One of them where it lies in the case.

    >>> from woodmath.piece import Piece
    >>> post = parts_of(Piece.demo("log-box"))[0]
    >>> post.name, post.count, post.length
    ('post', 4, 380.0)
    """

    name: str
    count: int
    hands: str
    length: float
    width: float
    thickness: float
    rough_length: float
    rough_width: float
    rough_thickness: float
    grain: str
    solid: Solid

    @property
    def volume(self) -> float:
        """The wood in one of them, in cubed length units; beads are not taken off."""
        return self.solid.volume

    def hands_of(self, copies: int) -> str:
        """Say how many of the parts of so many pieces are of which hand.

        Parameters
        ----------
        copies : int
            How many pieces are made, 1 or more.

        Returns
        -------
        str
            "" where all are alike.

        >>> from woodmath.piece import Piece
        >>> parts = parts_of(Piece.demo("cat-bed"))
        >>> parts[0].hands_of(3), parts[3].hands_of(3)
        ('6 left, 6 right', '3 pairs, face sides outward')
        """
        half = self.count * copies // 2
        if self.hands == "left and right":
            return f"{half} left, {half} right"
        return (f"{half} pairs" if half > 1 else "a pair") + ", face sides outward" if self.hands else ""

    @property
    def rough(self) -> tuple[float, float, float]:
        """Length, width and thickness of the blank."""
        return self.rough_length, self.rough_width, self.rough_thickness

    @property
    def finished(self) -> tuple[float, float, float]:
        """Length, width and thickness."""
        return self.length, self.width, self.thickness


def parts_of(piece: Piece) -> tuple[Part, ...]:
    """Return the parts of a piece, each kind once.

    Parameters
    ----------
    piece : Piece
        With both pairs of panels.

    Returns
    -------
    tuple of Part
        In the order in which they are made.

    Raises
    ------
    ImpossibleShape
        If the sizes make no case.

    Source: the conventions of `woodmath.case`; allowances are common practice.

    >>> from woodmath.piece import Piece
    >>> [(part.count, part.name) for part in parts_of(Piece.demo("cat-bed"))][:4]
    [(4, 'post'), (2, 'end panel'), (2, 'side panel'), (2, 'rocker')]
    """
    case, placed = Case.of(piece), solids_of(piece)
    (out_y, out_z), (up_y, up_z) = case.outward, case.upward
    up_the_post: Vector = (0.0, up_y, up_z)
    through_the_side: Vector = (0.0, out_y, out_z)
    # Length along the grain, width across it, and thickness, for each kind of part.
    kinds = {
        "post": ((up_the_post, _X, through_the_side), "along the post", "left and right"),
        "end panel": ((_Y, _Z, _X), "level, along the width", ""),
        "side panel": ((_X, up_the_post, through_the_side), "level, along the length", ""),
        "rocker": ((_Y, _Z, _X), "level, along the length", "pair"),
        "bottom board": ((_X, _Y, _Z), "along the length", ""),
        "side cleat": ((_X, _Y, _Z), "along the length", ""),
        "end cleat": ((_Y, _X, _Z), "along the length", ""),
    }
    found: list[Part] = []
    for name, (axes, grain, hands) in kinds.items():
        alike = [each for each in placed if each.name == name]
        if alike:
            found.append(_part(piece, case, alike, axes, grain, hands))
    return tuple(found)


def _part(
    piece: Piece,
    case: Case,
    alike: list[Placed],
    axes: tuple[Vector, Vector, Vector],
    grain: str,
    hands: str,
) -> Part:
    name, solid = alike[0].name, alike[0].solid
    length, width, thickness = (high - low for low, high in (solid.extent(way) for way in axes))
    if name == "post":
        # The blank is squared to the file's length; the foot is shaped out of it.
        length, width, thickness = piece.post.length, case.square, case.square
    spare_length, spare_width = (
        piece.rule.nearest(piece.rule.read(each)) for each in (SPARE_LENGTH, SPARE_WIDTH)
    )
    # The rebate runs over the whole edge as wide as the tenons reach, and is widest at the wider of its ends.
    blank = length
    if name == "end panel":
        blank = 2 * max(case.along_a_level(case.at(along)[1], case.joint.tenon.reach) for along in case.panel)
    return Part(
        name=name,
        count=len(alike),
        hands=hands,
        length=length,
        width=width,
        thickness=thickness,
        rough_length=mark_at_least(piece.rule, blank + spare_length),
        rough_width=mark_at_least(piece.rule, width + spare_width),
        rough_thickness=thickness,
        grain=grain,
        solid=solid,
    )
