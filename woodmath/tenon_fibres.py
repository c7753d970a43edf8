"""The fibres of a tenon that is cut square to a sloping edge: which run through it, and which leave by its side.

Only a fibre that runs from the shoulder to the tip holds over the tenon's whole length. At the lower side the wood has
no root in the panel, at the upper side it does not come as far as the tip: both are short grain.
"""

from __future__ import annotations

import functools
from dataclasses import dataclass
from types import MappingProxyType

import sympy

from woodmath.derivation import Derivation, Quantity
from woodmath.errors import ImpossibleShape
from woodmath.operations import Add, Isolate, Substitute, equation
from woodmath.outlines import Points
from woodmath.quantities import worded
from woodmath.splay_derivations import grain_derivation
from woodmath.splay_derivations import quantities as of_the_splay

_WORDS = MappingProxyType(
    {
        "cut_through": (
            "u",
            "part of the tenon's width in which no fibre runs from shoulder to tip",
            "length",
            "real",
        ),
        "whole": ("v", "part of the width in which the fibres run through", "length", "real"),
        "reach": ("L", "of the tenon, from its shoulder to its tip", "length", "positive"),
        "tenon_width": ("b", "of the tenon, along the sloping edge", "length", "positive"),
        "crossing": ("f", "length of a fibre that crosses the tenon from side to side", "length", "positive"),
        "through": ("t", "length of a fibre that runs from shoulder to tip", "length", "positive"),
    }
)


def _quantities(*names: str) -> tuple[Quantity, ...]:
    return worded(_WORDS, names, of_the_splay)


@functools.cache
def cut_through_derivation() -> Derivation:
    """Derive how much of a tenon's width has no fibre that runs from its shoulder to its tip.

    Returns
    -------
    Derivation
        Its result gives `cut_through` from `reach` (lengths) and `splay` (degrees).

    Source: plane trigonometry, the tangent in a right triangle.

    >>> round(cut_through_derivation().function("cut_through")(reach=2.0, splay=45.0), 9)
    2.0
    """
    spoken_of = _quantities("cut_through", "reach", "grain_angle", "splay")
    cut, reach, grain, splay = (each.symbol for each in spoken_of)
    return (
        Derivation.start(
            "How much of the width is cut through",
            spoken_of,
            equation(sympy.tan(grain), cut / reach),
            "follow a fibre from the shoulder to the tip: it goes the tenon's reach outward, and sideways so far "
            "that the tangent of its angle is the one over the other",
            subject="cut_through",
            example={cut: 2, reach: 2, grain: sympy.pi / 4, splay: sympy.pi / 4},
        )
        .then(
            Substitute(grain, grain_derivation().solved_for("grain_angle").rhs),
            "in a tenon cut square to the edge, the angle to level grain is the splay",
        )
        .then(
            Isolate(cut),
            "that is the width lost: as much at the lower side, where the tip's fibres begin, as at the upper side, "
            "where the shoulder's fibres end",
        )
    )


@functools.cache
def whole_derivation() -> Derivation:
    """Derive how much of a tenon's width keeps fibres from its shoulder to its tip.

    Returns
    -------
    Derivation
        Its result gives `whole` from `tenon_width`, `reach` (lengths) and `splay` (degrees); less than 0 where
        no fibre runs through.

    Source: plane geometry, widths side by side.

    >>> round(whole_derivation().function("whole")(tenon_width=3.0, reach=2.0, splay=45.0), 9)
    1.0
    """
    spoken_of = _quantities("whole", "tenon_width", "cut_through", "reach", "splay")
    whole, width, cut, reach, splay = (each.symbol for each in spoken_of)
    return (
        Derivation.start(
            "How much of the width runs through",
            spoken_of,
            equation(whole + cut, width),
            "the fibres that run through and the width that is cut through make the whole width of the tenon",
            subject="whole",
            example={whole: 1, width: 3, cut: 2, reach: 2, splay: sympy.pi / 4},
        )
        .then(Add(-cut), "we want the part that runs through")
        .then(
            Substitute(cut, cut_through_derivation().solved_for("cut_through").rhs),
            "and what is cut through is reach times the tangent of the splay",
        )
    )


@functools.cache
def crossing_derivation() -> Derivation:
    """Derive how long a fibre is that crosses a tenon from side to side.

    Returns
    -------
    Derivation
        Its result gives `crossing` from `tenon_width` (lengths) and `splay` (degrees).

    Source: plane trigonometry, the sine in a right triangle.

    >>> round(crossing_derivation().function("crossing")(tenon_width=2.0, splay=30.0), 9)
    4.0
    """
    spoken_of = _quantities("crossing", "tenon_width", "grain_angle", "splay")
    crossing, width, grain, splay = (each.symbol for each in spoken_of)
    return (
        Derivation.start(
            "How long a fibre lasts",
            spoken_of,
            equation(sympy.sin(grain), width / crossing),
            "a fibre that enters at the lower side and leaves at the upper one is the long side of a right triangle; "
            "the tenon's width lies opposite the angle to the grain",
            subject="crossing",
            example={crossing: 4, width: 2, grain: sympy.pi / 6, splay: sympy.pi / 6},
            keeps={"splay": "an edge leans by less than a right angle"},
        )
        .then(
            Substitute(grain, grain_derivation().solved_for("grain_angle").rhs),
            "that angle is the splay",
        )
        .then(
            Isolate(crossing),
            "a longer tenon than this, measured along the fibre, has none that runs through",
        )
    )


@functools.cache
def through_derivation() -> Derivation:
    """Derive how long a fibre is that runs from the shoulder to the tip.

    Returns
    -------
    Derivation
        Its result gives `through` from `reach` (lengths) and `splay` (degrees).

    Source: plane trigonometry, the cosine in a right triangle.

    >>> round(through_derivation().function("through")(reach=2.0, splay=60.0), 9)
    4.0
    """
    spoken_of = _quantities("through", "reach", "grain_angle", "splay")
    through, reach, grain, splay = (each.symbol for each in spoken_of)
    return (
        Derivation.start(
            "How long a whole fibre is",
            spoken_of,
            equation(sympy.cos(grain), reach / through),
            "a fibre from shoulder to tip is the long side of a right triangle, and the reach lies beside its angle "
            "to the tenon",
            subject="through",
            example={through: 4, reach: 2, grain: sympy.pi / 3, splay: sympy.pi / 3},
            keeps={"splay": "the edge leans outward above"},
        )
        .then(
            Substitute(grain, grain_derivation().solved_for("grain_angle").rhs),
            "that angle is the splay",
        )
        .then(
            Isolate(through), "it is a little longer than the tenon itself, because it goes across it as well"
        )
    )


@dataclass(frozen=True)
class TenonFibres:
    """A tenon square to a sloping edge, and what its level fibres do.

    Parameters
    ----------
    width : float
        Along the edge, > 0, in any length unit.
    reach : float
        From shoulder to tip, > 0, in the same unit.
    splay : float
        Lean of the edge from upright, 0 or more and less than 90 degrees.

    Raises
    ------
    ImpossibleShape
        If a size is not positive, or there is no such splay.

    >>> tenon = TenonFibres(width=2.5, reach=1.25, splay=10.0)
    >>> round(tenon.cut_through, 3), round(tenon.whole, 3)
    (0.22, 2.28)
    """

    width: float
    reach: float
    splay: float

    def __post_init__(self) -> None:
        if not (self.width > 0 and self.reach > 0 and 0 <= self.splay < 90):
            raise ImpossibleShape(
                f"A tenon {self.width:g} wide with a reach of {self.reach:g} and a splay of {self.splay:g}° cannot be "
                "cut. Give two lengths more than 0, and a splay of 0 or more that is less than 90°."
            )

    @property
    def cut_through(self) -> float:
        """Part of the width in which no fibre runs from shoulder to tip: all of it at the most."""
        wanted = cut_through_derivation().function("cut_through")(reach=self.reach, splay=self.splay)
        return min(self.width, wanted)

    @property
    def whole(self) -> float:
        """Part of the width in which the fibres run from shoulder to tip, 0 or more."""
        return max(
            0.0,
            whole_derivation().function("whole")(tenon_width=self.width, reach=self.reach, splay=self.splay),
        )

    @property
    def crossing(self) -> float | None:
        """Length of a fibre from side to side; None where the fibres follow the tenon."""
        if not self.splay:
            return None
        return crossing_derivation().function("crossing")(tenon_width=self.width, splay=self.splay)

    @property
    def longest(self) -> float:
        """Length of a fibre from shoulder to tip, as far as the tenon's width lets it come."""
        through = through_derivation().function("through")(reach=self.reach, splay=self.splay)
        return through if self.crossing is None else min(through, self.crossing)

    @property
    def without_root(self) -> Points:
        """The part whose fibres begin at the lower side, as (outward from the shoulder, up along the edge)."""
        if not self.splay:
            return ()
        corner, tip, up = (0.0, 0.0), (self.reach, 0.0), (self.reach, self.cut_through)
        if self.whole:
            return (corner, tip, up)
        # The fibre from the lower corner of the shoulder leaves by the upper side before it comes to the tip.
        leaves = cut_through_derivation().function("reach")(cut_through=self.width, splay=self.splay)
        return (corner, tip, up, (leaves, self.width))

    @property
    def short_of_the_tip(self) -> Points:
        """The part whose fibres end at the upper side, told in the same way."""
        return tuple((self.reach - out, self.width - up) for out, up in self.without_root)
