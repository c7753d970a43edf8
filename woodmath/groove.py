"""A groove along a post: how often the chisel goes over it, where the router plane is set, what it leaves."""

from __future__ import annotations

import math
from dataclasses import dataclass

import sympy

from woodmath.derivation import Quantity
from woodmath.edge_derivations import floor_derivation, groove_derivation, taps_derivation
from woodmath.errors import ImpossibleShape
from woodmath.rule import Rule

_NEARLY = 1e-9


@dataclass(frozen=True)
class ChiselStep:
    """How far a groove gets with a few taps: what makers tell one another, and no more than that.

    Parameters
    ----------
    chisel, advance : str
        Width of the chisel, and how much further the groove is after the taps, as on a rule, with the unit.
    taps : int
        Taps of the mallet to a step, >= 1.
    mark : str
        Where it is from.

    >>> TWO_TAPS.chisel, TWO_TAPS.taps, TWO_TAPS.advance, TWO_TAPS.mark
    ('3/8 in', 2, '1/4 in', 'common practice')
    """

    chisel: str
    taps: int
    advance: str
    mark: str

    def taps_along(self, length: float, rule: Rule) -> int:
        """How many taps take the chisel once along a groove.

        Parameters
        ----------
        length : float
            Of the groove, > 0, in the rule's unit.
        rule : Rule
            Of the piece.

        Returns
        -------
        int
            Whole taps, one more where the last step is not full.

        Raises
        ------
        ImpossibleShape
            If the length is not a positive number.

        Source: `taps_derivation`; the step itself is common practice.

        >>> TWO_TAPS.taps_along(8.0, Rule.inches(16)), TWO_TAPS.taps_along(203.2, Rule.millimetres(1))
        (64, 64)
        """
        advance = rule.read(self.advance)
        found = taps_derivation().function("taps")(length=length, taps_each=float(self.taps), advance=advance)
        return _whole(found)


TWO_TAPS = ChiselStep(chisel="3/8 in", taps=2, advance="1/4 in", mark="common practice")
"""Two taps on a 3/8 chisel take a groove about a quarter of an inch further (common practice, no source)."""


@dataclass(frozen=True)
class Groove:
    """A groove of full width along one face of a post.

    Parameters
    ----------
    width, depth : float
        > 0, in any length unit.
    stopped : bool
        Whether it ends inside the post's length, so that a chisel must begin and end it; a through groove runs out
        at both ends, and a plough cuts it alone.

    Raises
    ------
    ImpossibleShape
        If a length is not a positive number.

    Source: `groove_derivation`.

    >>> groove = Groove(width=0.5, depth=0.375)
    >>> groove.passes(0.125), groove.router_setting, groove.left_beside(post=1.75, set_back=0.5)
    (3, 0.375, (0.5, 0.75))
    """

    width: float
    depth: float
    stopped: bool = True

    def __post_init__(self) -> None:
        """Refuse sizes that cannot be."""
        for name, value in (("width", self.width), ("depth", self.depth)):
            _length(name, f"{name} of the groove").taken_in(value)

    @property
    def router_setting(self) -> float:
        """Setting of the router plane: how far its iron stands below the sole, which rides on the face."""
        return self.depth

    def passes(self, per_pass: float) -> int:
        """How often the chisel goes over the groove until it is deep enough.

        Parameters
        ----------
        per_pass : float
            What one pass takes, > 0, in the groove's unit.

        Returns
        -------
        int
            At least 1; the last pass may take less.

        Raises
        ------
        ImpossibleShape
            If what a pass takes is not a positive number.

        >>> Groove(width=12, depth=10).passes(4)
        3
        """
        return passes(self.depth, per_pass)

    def left_beside(self, post: float, set_back: float) -> tuple[float, float]:
        """Wood that the groove leaves of the post on its outside and on its inside.

        Parameters
        ----------
        post : float
            Side of the post's square, > 0, in the groove's unit.
        set_back : float
            Outer face of the post to the groove's outer cheek, 0 or more.

        Returns
        -------
        tuple of two float
            Outside and inside, in the same unit.

        Raises
        ------
        ImpossibleShape
            If the groove runs out through the post's inner face.

        Source: `groove_derivation`.

        >>> Groove(width=0.25, depth=0.25).left_beside(post=0.75, set_back=0.25)
        (0.25, 0.25)
        """
        inside = groove_derivation().function("inside")(post=post, set_back=set_back, width=self.width)
        return set_back, inside

    def left_under(self, post: float) -> float:
        """Wood that is left of the post behind the groove's floor.

        Parameters
        ----------
        post : float
            Side of the post's square, > 0, in the groove's unit.

        Returns
        -------
        float
            More than 0, in the same unit.

        Raises
        ------
        ImpossibleShape
            If the groove is as deep as the post, or deeper.

        >>> Groove(width=0.5, depth=0.375).left_under(post=1.75)
        1.375
        """
        under = post - self.depth
        if not under > 0:
            raise ImpossibleShape(
                f"A groove {self.depth:g} deep goes through a post of {post:g}. Make it less deep than the post "
                "is thick: a tongue needs no more than its own length and a clearance."
            )
        return under


def depth_for(length: float, clearance: float) -> float:
    """How deep a groove or a mortise must be for what goes into it.

    Parameters
    ----------
    length : float
        Of the tongue or the tenon, from its shoulder, > 0, in any length unit.
    clearance : float
        Left free at the floor, 0 or more, in the same unit.

    Returns
    -------
    float
        In the same unit.

    Raises
    ------
    ImpossibleShape
        If the length is not more than 0.

    Source: `woodmath.edge_derivations.floor_derivation`.

    >>> depth_for(length=0.75, clearance=0.0625)
    0.8125
    """
    return floor_derivation().function("groove_depth")(tongue_length=length, floor_clearance=clearance)


def passes(depth: float, per_pass: float) -> int:
    """How often a chisel goes over a groove until it is deep enough.

    Parameters
    ----------
    depth : float
        That is wanted, > 0, in any length unit.
    per_pass : float
        What one pass takes, > 0, in the same unit.

    Returns
    -------
    int
        At least 1; the last pass may take less.

    Raises
    ------
    ImpossibleShape
        If either is not a positive number.

    >>> passes(0.375, 0.125), passes(0.4, 0.125)
    (3, 4)
    """
    _length("depth", "depth of the groove").taken_in(depth)
    _length("per_pass", "what one pass takes").taken_in(per_pass)
    return _whole(depth / per_pass)


def _whole(count: float) -> int:
    """Round up, but take a count that is whole but for the rounding of a float as it is meant."""
    return max(1, math.ceil(count - _NEARLY * max(1.0, count)))


def _length(name: str, meaning: str) -> Quantity:
    return Quantity(sympy.Symbol(name, positive=True), name[0], meaning)
