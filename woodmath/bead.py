"""A bead along a panel's edge: how far it reaches, how deep its quirk goes, and where a tenon may begin beside it.

The bead is a half-round of its own width, and a narrow groove beside it, the quirk, goes down to the middle of the
round. Both run along the level edge. A tenon may not begin before they end, or their hollow shows at the shoulder.
"""

from __future__ import annotations

import functools
from dataclasses import dataclass
from typing import Protocol

import sympy

from woodmath.derivation import Derivation, Limit, Quantity
from woodmath.operations import Isolate, Substitute, equation

_UPRIGHT = (
    "An edge leans by less than 90 degrees from upright: measure its lean against the square, not the bench"
)


@functools.cache
def reach_derivation() -> Derivation:
    """Derive how far a bead takes up the face, from the board's edge.

    Returns
    -------
    Derivation
        Its result gives `reach` from `width` and `quirk`.

    Source: widths set side by side.

    >>> reach_derivation().function("reach")(width=0.25, quirk=0.0625)
    0.3125
    """
    width, quirk, reach = _width(), _quirk(), _reach()
    return Derivation.start(
        "How far a bead reaches",
        (width, quirk, reach),
        equation(reach.symbol - quirk.symbol, width.symbol),
        "from the board's edge you meet the bead first and then the quirk: without the quirk the bead is left",
        subject="reach",
        example={width.symbol: 4, quirk.symbol: 1, reach.symbol: 5},
    ).then(Isolate(reach.symbol), "we want the whole of it")


@functools.cache
def radius_derivation() -> Derivation:
    """Derive the radius of a bead's round, which is also the depth of its quirk.

    Returns
    -------
    Derivation
        Its result gives `radius` from `width`.

    Source: the diameter of a half-round.

    >>> radius_derivation().function("radius")(width=0.25)
    0.125
    """
    width = _width()
    radius = Quantity(
        sympy.Symbol("radius", positive=True), "R", "radius of the round, and depth of the quirk"
    )
    return Derivation.start(
        "The round of a bead",
        (width, radius),
        equation(width.symbol, 2 * radius.symbol),
        "the bead is a half-round, and its width is the diameter",
        subject="radius",
        example={width.symbol: 4, radius.symbol: 2},
    ).then(
        Isolate(radius.symbol),
        "we want the radius; the round begins level with its own middle, and to there the quirk goes down",
    )


@functools.cache
def aslant_derivation() -> Derivation:
    """Derive how long a leaning edge is on its way past something that reaches so far from the level edge.

    Returns
    -------
    Derivation
        Its result gives `along` from `reach` and `splay` (degrees).

    Source: plane trigonometry, the cosine in a right triangle.

    >>> aslant_derivation().result
    Eq(along, reach/cos(splay))
    """
    reach = _reach()
    along = Quantity(
        sympy.Symbol("along", positive=True), "m", "from the panel's corner along its leaning edge"
    )
    splay = Quantity(
        sympy.Symbol("splay", real=True), r"\sigma", "lean of the panel's edge from upright", "degrees"
    )
    return Derivation.start(
        "A leaning edge crosses a level bead",
        (reach, splay, along),
        equation(sympy.cos(splay.symbol), reach.symbol / along.symbol),
        "the bead keeps to the level edge, so its reach stands square to that; the leaning edge crosses it "
        "aslant: it is the longest side of a right triangle, with the reach beside the angle",
        subject="along",
        example={reach.symbol: 4, splay.symbol: sympy.pi / 3, along.symbol: 8},
        limits=(
            Limit(splay.symbol < sympy.pi / 2, _UPRIGHT),
            Limit(splay.symbol > -sympy.pi / 2, _UPRIGHT),
        ),
        keeps={"splay": "an edge leans by less than a right angle, outward unless you say otherwise"},
    ).then(Isolate(along.symbol), "we want the way along the edge, where the tenon is marked")


@functools.cache
def begin_derivation() -> Derivation:
    """Derive where along a leaning edge a bead ends, so that a tenon may begin.

    Returns
    -------
    Derivation
        Its result gives `along` from `width`, `quirk` and `splay` (degrees).

    Source: `aslant_derivation` and `reach_derivation`.

    >>> begin_derivation().result
    Eq(along, (quirk + width)/cos(splay))
    """
    reached, aslant = reach_derivation(), aslant_derivation()
    reach = reached.quantity("reach").symbol
    return Derivation.start(
        "Where a tenon may begin",
        (*reached.quantities, aslant.quantity("splay"), aslant.quantity("along")),
        aslant.result,
        "so far along its edge a leaning panel is crossed by a level bead",
        subject="along",
        example={
            **dict(aslant.example),
            reached.quantity("width").symbol: 3,
            reached.quantity("quirk").symbol: 1,
        },
        limits=aslant.limits,
        keeps=dict(aslant.keeps),
    ).then(
        Substitute(reach, reached.result.rhs),
        "the reach is the bead and its quirk: both run out at the shoulder",
    )


@dataclass(frozen=True)
class Bead:
    """A bead along a board's edge, with the quirk beside it.

    Parameters
    ----------
    width, quirk : float
        Of the round, and of the narrow groove beside it, > 0, in any length unit.

    Raises
    ------
    ImpossibleShape
        If either is not a positive number.

    Source: `reach_derivation` and `radius_derivation`.

    >>> bead = Bead(width=0.25, quirk=0.0625)
    >>> bead.reach, bead.radius, bead.quirk_depth
    (0.3125, 0.125, 0.125)
    """

    width: float
    quirk: float

    def __post_init__(self) -> None:
        """Refuse sizes that cannot be."""
        _ = self.reach

    @property
    def reach(self) -> float:
        """How far bead and quirk together take up the face, square to the board's edge."""
        return reach_derivation().function("reach")(width=self.width, quirk=self.quirk)

    @property
    def radius(self) -> float:
        """Radius of the round: half the width."""
        return radius_derivation().function("radius")(width=self.width)

    @property
    def quirk_depth(self) -> float:
        """How deep the quirk goes below the face: to the middle of the round."""
        return self.radius


class BeadSizes(Protocol):
    """What has the two sizes of a bead: ours, and the one that a piece's file tells.

    >>> def reach_of(bead: BeadSizes) -> float:
    ...     return reach_derivation().function("reach")(width=bead.width, quirk=bead.quirk)
    >>> reach_of(Bead(width=8, quirk=2))
    10.0
    """

    @property
    def width(self) -> float:
        """Width of the round."""

    @property
    def quirk(self) -> float:
        """Width of the narrow groove beside it."""


def tenon_may_begin(bead: BeadSizes, splay: float = 0.0) -> float:
    """How far along the panel's edge a bead goes, so that a tenon may begin there.

    Parameters
    ----------
    bead : BeadSizes
        Along the panel's level edge.
    splay : float
        Lean of the panel's edge from upright, in its own plane, in degrees, more than -90 and less than 90; 0 for an
        upright end, and for a side.

    Returns
    -------
    float
        From the panel's corner along its edge, in the bead's unit.

    Raises
    ------
    ImpossibleShape
        If the edge leans by 90 degrees or more.

    Source: `begin_derivation`, plane trigonometry.

    >>> tenon_may_begin(Bead(width=0.25, quirk=0.0625)), round(tenon_may_begin(Bead(3, 1), splay=60), 9)
    (0.3125, 8.0)
    """
    return begin_derivation().function("along")(width=bead.width, quirk=bead.quirk, splay=splay)


def hollow_shown(bead: BeadSizes, place: float, splay: float = 0.0) -> float:
    """How much of the bead's hollow would show at the shoulder beside a tenon that begins too early.

    Parameters
    ----------
    bead : BeadSizes
        Along the panel's level edge.
    place : float
        Where the tenon begins, from the panel's corner along its edge, 0 or more, in the bead's unit.
    splay : float
        Lean of the panel's edge from upright, in degrees, more than -90 and less than 90.

    Returns
    -------
    float
        Along the edge, in the bead's unit; 0 where the tenon begins late enough.

    Raises
    ------
    ImpossibleShape
        If the place is less than 0, or the edge leans by 90 degrees or more.

    Source: `begin_derivation`.

    >>> bead = Bead(width=0.25, quirk=0.0625)
    >>> hollow_shown(bead, place=0.75), hollow_shown(bead, place=0.25)
    (0.0, 0.0625)
    """
    _place().taken_in(place)
    return max(0.0, tenon_may_begin(bead, splay) - place)


def _width() -> Quantity:
    return Quantity(sympy.Symbol("width", positive=True), "w", "width of the bead")


def _quirk() -> Quantity:
    return Quantity(sympy.Symbol("quirk", positive=True), "k", "width of the quirk beside it")


def _reach() -> Quantity:
    return Quantity(sympy.Symbol("reach", positive=True), "e", "reach of bead and quirk, square to the edge")


def _place() -> Quantity:
    return Quantity(sympy.Symbol("place", nonnegative=True), "p", "where the tenon begins")
