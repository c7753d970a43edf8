"""Level sections through a post with two mortises: outlines, what backs a cheek, what is left behind an end.

Plain geometry over points, for either tenon in the same words: `along` is measured on the tenon's own way in,
from the far outer face to the inside face, `across` from the other outer face.
"""

from __future__ import annotations

from dataclasses import dataclass

from woodmath.outlines import rectangle

Point = tuple[float, float]
Outline = tuple[Point, ...]

_ROUNDING = 1e-9
"""Lengths this small a part of the post are the computer's rounding, not wood."""


@dataclass(frozen=True)
class Tenon:
    """One tenon as it is sawn, all lengths from the inside face of the post, clearance taken off.

    Parameters
    ----------
    thickness, set_back : float
        Across the post, in the joint's unit.
    outer_cheek, inner_cheek : float
        Lengths of the two cheeks, 0 or more.
    bevel : float
        Of the end, in degrees off square.
    outline, short_outline : tuple of points
        In the post's section. A halved tenon is told by its long half, and `short_outline` is the half that
        stops short; for all other ends the two are the same.

    >>> outline = ((4, 1), (4, 2), (2, 2), (1, 1))
    >>> Tenon(1, 1, outer_cheek=3, inner_cheek=2, bevel=45.0, outline=outline, short_outline=outline).reach
    3
    """

    thickness: float
    set_back: float
    outer_cheek: float
    inner_cheek: float
    bevel: float
    outline: Outline
    short_outline: Outline

    @property
    def reach(self) -> float:
        """The deepest point, from the inside face."""
        return max(self.outer_cheek, self.inner_cheek)


@dataclass(frozen=True)
class Walls:
    """Wood of the post left about the mortises: outside each, inside each, behind the end of each.

    Behind an end counts to the far outer face, without what the other mortise takes of it.

    Parameters
    ----------
    outside_tenon, outside_other, inside_tenon, inside_other, behind_tenon, behind_other : float
        By the first tenon's mortise and by the other one's, each 0 or more, in the joint's unit.

    >>> walls = Walls(1, 1, inside_tenon=2, inside_other=2, behind_tenon=1, behind_other=1)
    >>> walls.outside_tenon + 1 + walls.inside_tenon
    4
    """

    outside_tenon: float
    outside_other: float
    inside_tenon: float
    inside_other: float
    behind_tenon: float
    behind_other: float


@dataclass(frozen=True)
class Section:
    """What a level cut shows over a share of the tenons' width; only halved tenons have more than one.

    Parameters
    ----------
    share : float
        Part of the tenons' width, more than 0 and up to 1.
    tenon, other_tenon, mortise, other_mortise : tuple of points
        Outlines in the post's section, against the clock.

    >>> cut = Cut(post=4, set_back=1, thickness=1, outer=3, inner=2, depth=3)
    >>> Section(1.0, cut.tenon, mirrored(cut.tenon), cut.mortise, mirrored(cut.mortise)).other_mortise
    ((2, 1), (2, 4), (1, 4), (1, 1))
    """

    share: float
    tenon: Outline
    other_tenon: Outline
    mortise: Outline
    other_mortise: Outline


@dataclass(frozen=True)
class Cut:
    """One tenon and its mortise at one height, in the tenon's own directions.

    Parameters
    ----------
    post : float
        Side of the square post, > 0, in any length unit.
    set_back, thickness : float
        Where the mortise stands across the post, and how wide it is, in the same unit.
    outer, inner : float
        Lengths of the tenon's two cheeks from the inside face, 0 or more.
    depth : float
        Depth of the mortise from the inside face, at least as long as the tenon.

    >>> Cut(post=4, set_back=1, thickness=1, outer=3, inner=2, depth=3).tenon
    ((4, 1), (4, 2), (2, 2), (1, 1))
    """

    post: float
    set_back: float
    thickness: float
    outer: float
    inner: float
    depth: float

    @property
    def inner_side(self) -> float:
        """How far across the post the inner cheek lies, from the outer face."""
        return self.set_back + self.thickness

    @property
    def floor(self) -> float:
        """How far along the post the mortise's floor lies, from the far outer face."""
        return self.post - self.depth

    @property
    def tenon(self) -> Outline:
        """The tenon's outline inside the post, against the clock, (along, across)."""
        corners = (
            (self.post, self.set_back),
            (self.post, self.inner_side),
            (self.post - self.inner, self.inner_side),
            (self.post - self.outer, self.set_back),
        )
        return tuple(dict.fromkeys(corners))

    @property
    def mortise(self) -> Outline:
        """The mortise's outline, against the clock, (along, across)."""
        return rectangle(self.floor, self.set_back, self.post, self.inner_side)

    def backed_by_wood(self, other: Cut) -> float:
        """Length of this tenon's two cheeks together that lies against wood of the post.

        Left out is what crosses the mouth of the other mortise, and a cheek flush with a face of the post.
        """
        slack = _ROUNDING * self.post
        mouth = (other.set_back, other.inner_side)
        length = 0.0
        if self.set_back > slack:
            crossed = _shared((self.post - self.outer, self.post), mouth)
            length += self.outer - (crossed if other.floor < self.set_back - slack else 0.0)
        if self.inner_side < self.post - slack:
            crossed = _shared((self.post - self.inner, self.post), mouth)
            length += self.inner - (crossed if other.floor <= self.inner_side + slack else 0.0)
        return length

    def wood_behind(self, other: Cut) -> float:
        """Wood from the mortise's floor to the far outer face, less what the other mortise takes of it."""
        slack = _ROUNDING * self.post
        beside = _shared((self.set_back, self.inner_side), (other.floor, other.post))
        taken = _shared((0.0, self.floor), (other.set_back, other.inner_side))
        return settled(self.floor - (taken if min(beside, taken) > slack else 0.0), self.post)

    def meets_mouth_of(self, other: Cut) -> bool:
        """Whether this mortise runs in far enough to open into the other one, or to touch it."""
        return self.floor <= other.inner_side + _ROUNDING * self.post


def mirrored(outline: Outline) -> Outline:
    """Change along and across, and walk round the other way so that it is against the clock again.

    Parameters
    ----------
    outline : tuple of points
        Against the clock, (along, across).

    Returns
    -------
    tuple of points
        Against the clock, (across, along).

    >>> mirrored(((0, 0), (2, 0), (2, 1), (0, 1)))
    ((1, 0), (1, 2), (0, 2), (0, 0))
    """
    return tuple((across, along) for along, across in reversed(outline))


def settled(length: float, post: float) -> float:
    """Return a length, or 0 where nothing but the computer's rounding is left of it.

    Parameters
    ----------
    length, post : float
        The length, and the post's side, > 0, beside which it is judged, in one unit.

    Returns
    -------
    float
        0 or more, in the same unit.

    >>> settled(38.1 - 12.7 - 25.4, post=38.1)
    0.0
    """
    return length if length > _ROUNDING * post else 0.0


def _shared(one: tuple[float, float], two: tuple[float, float]) -> float:
    return max(0.0, min(one[1], two[1]) - max(one[0], two[0]))
