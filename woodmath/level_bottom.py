"""A level bottom board inside leaning sides: how large it is, above and below, and the bevel of its edges.

The higher it lies, the larger it is, and its upper face is larger than its lower one. Where both pairs of sides
lean each edge still has the bevel of the one wall that it touches: only the corners are compound, not the edges.
"""

from __future__ import annotations

import functools
import math
from dataclasses import dataclass
from types import MappingProxyType

import sympy

from woodmath.derivation import Derivation, Quantity
from woodmath.errors import ImpossibleShape
from woodmath.operations import Isolate, Substitute, equation
from woodmath.splay_derivations import level_derivation, splay_derivation

_WORDS = MappingProxyType(
    {
        "outside": (
            "w_o",
            "width over the outer faces at the walls' lower edges, measured level",
            "positive",
        ),
        "up": ("y", "height above those lower edges", "real"),
        "gone_out": ("o_y", "how far one wall has gone outward at that height", "real"),
        "across": ("c", "thickness of the walls, measured square to their faces", "positive"),
        "level": (r"\ell", "what a level rule reads of that thickness", "positive"),
        "inside": ("w_i", "width between the inner faces at that height, measured level", "positive"),
    }
)


@functools.cache
def inside_derivation() -> Derivation:
    """Derive the width between two leaning walls at any height.

    Returns
    -------
    Derivation
        Its result gives `inside` from `outside`, `up`, `across` and `splay`.

    Source: plane trigonometry.

    >>> round(inside_derivation().function("inside")(outside=10.0, up=1.0, across=0.5, splay=60.0), 6)
    11.464102
    """
    spoken_of = (
        *(
            Quantity(sympy.Symbol(name, **{kind: True}), letter, meaning)
            for name, (letter, meaning, kind) in _WORDS.items()
        ),
        splay_derivation().quantity("splay"),
    )
    outside, up, gone_out, across, level, inside, splay = (quantity.symbol for quantity in spoken_of)
    root = sympy.sqrt(3)
    return (
        Derivation.start(
            "The room between two walls",
            spoken_of,
            equation(inside, outside + 2 * gone_out - 2 * level),
            "over the outer faces below, and what both walls have gone outward, less the wood of both, all of it "
            "measured level",
            subject="inside",
            example={
                outside: 10,
                up: 1,
                gone_out: root,
                across: 1,
                level: 2,
                splay: sympy.pi / 3,
                inside: 6 + 2 * root,
            },
        )
        .then(
            Substitute(gone_out, up * sympy.tan(splay)),
            "how far a wall goes outward on the way up is an offset that strikes the splay as its bevel",
        )
        .then(
            Substitute(level, level_derivation().solved_for("level").rhs),
            "a level rule crosses a leaning board aslant and reads more than its thickness",
        )
    )


@functools.cache
def cleat_derivation() -> Derivation:
    """Derive where a level cleat is marked on a leaning side, from the side's own lower edge.

    Returns
    -------
    Derivation
        Its result gives `along` from `up`, `depth` and `splay`.

    Source: plane trigonometry: a step along the slope and a step square to it, each seen upright.

    >>> round(cleat_derivation().function("along")(up=1.0, depth=0.0, splay=60.0), 9)
    2.0
    """
    splay = splay_derivation().quantity("splay")
    along, up, depth = sympy.symbols("along up depth", real=True)
    return Derivation.start(
        "Where a level cleat goes on a leaning side",
        (
            Quantity(along, "a", "from the side's lower edge up its inner face"),
            Quantity(up, "u", "from the end's lower edge up to the cleat, measured upright"),
            Quantity(depth, "d", "post's inside face to the side's inner face, square to the post"),
            splay,
        ),
        equation(up, along * sympy.cos(splay.symbol) - depth * sympy.sin(splay.symbol)),
        "up the slope one rises by the cosine; but the side's edge is square to its face, and so far outward it "
        "begins lower than the end's edge by the sine",
        subject="along",
        example={up: 2, depth: 5, along: 10, splay.symbol: sympy.atan(sympy.Rational(4, 3))},
    ).then(Isolate(along), "we want the mark on the side")


@dataclass(frozen=True)
class PlanSize:
    """Size of one face of the bottom board, seen from above.

    Parameters
    ----------
    width, length : float
        From side to side and from end to end, in the unit of the piece.

    >>> PlanSize(9.5, 17.0).width
    9.5
    """

    width: float
    length: float


@dataclass(frozen=True)
class LevelBottom:
    """A board that lies level between two sides and two ends, and touches all four.

    Parameters
    ----------
    outside_width, outside_length : float
        Over the outer faces of the sides, and of the ends, at their lower edges, > 0, in any length unit.
    side_splay, end_splay : float
        Lean of each pair from upright, in degrees, more than -90 and less than 90; 0 for a pair that stands.
    side_thickness, end_thickness : float
        Of the boards, square to their faces, > 0, in the same unit.
    thickness : float
        Of the bottom board, > 0.
    height : float
        Of its lower face above the walls' lower edges.

    Raises
    ------
    ImpossibleShape
        If the walls leave no room there, or a size cannot be.

    Source: `inside_derivation`.

    >>> bottom = LevelBottom(10, 18, side_splay=9, end_splay=0, side_thickness=0.875, end_thickness=0.875,
    ...                      thickness=0.5, height=1)
    >>> round(bottom.side_bevel, 6), bottom.end_bevel
    (9.0, 0.0)
    """

    outside_width: float
    outside_length: float
    side_splay: float
    end_splay: float
    side_thickness: float
    end_thickness: float
    thickness: float
    height: float

    def __post_init__(self) -> None:
        if not (math.isfinite(self.thickness) and self.thickness > 0):
            raise ImpossibleShape(f"The bottom is {self.thickness:g} thick. Give a thickness of more than 0.")
        for walls, splay in (("sides", self.side_splay), ("ends", self.end_splay)):
            if not -90 < splay < 90:
                raise ImpossibleShape(
                    f"The {walls} lean {splay:g} degrees from upright. Give less than 90 either way; 0 stands upright."
                )
        self._at(self.height)
        self._at(self.height + self.thickness)

    @property
    def lower(self) -> PlanSize:
        """Plan size of the lower face."""
        return self._at(self.height)

    @property
    def upper(self) -> PlanSize:
        """Plan size of the upper face: what the board must measure before its edges are bevelled."""
        return self._at(self.height + self.thickness)

    @property
    def side_bevel(self) -> float:
        """Bevel of the edges along the sides, in degrees off square."""
        return self._bevel(self.lower.width, self.upper.width)

    @property
    def end_bevel(self) -> float:
        """Bevel of the edges along the ends, in degrees off square."""
        return self._bevel(self.lower.length, self.upper.length)

    def _bevel(self, lower: float, upper: float) -> float:
        return splay_derivation().function("splay")(outward=(upper - lower) / 2, height=self.thickness)

    def _at(self, up: float) -> PlanSize:
        inside = inside_derivation().function("inside")
        return PlanSize(
            inside(outside=self.outside_width, up=up, across=self.side_thickness, splay=self.side_splay),
            inside(outside=self.outside_length, up=up, across=self.end_thickness, splay=self.end_splay),
        )


def height_where_it_rests(width: float, outside: float, splay: float, wall: float) -> float:
    """Height at which a bottom of a given width comes to rest between two walls that lean outward.

    Parameters
    ----------
    width : float
        Of the bottom's lower face, > 0, in any length unit.
    outside : float
        Over the outer faces of the two walls at their lower edges, > 0, in the same unit.
    splay : float
        Lean of the walls from upright, in degrees, more than 0 and less than 90.
    wall : float
        Thickness of the walls, square to their faces, > 0.

    Returns
    -------
    float
        Of the lower face above the walls' lower edges; less than 0 where it would fall through.

    Raises
    ------
    ImpossibleShape
        If the walls do not lean outward: an upright wall stops no board.

    Source: `inside_derivation`, solved for the height.

    >>> round(height_where_it_rests(width=9.0, outside=10.0, splay=45, wall=0.5), 6)
    0.207107
    """
    if not 0 < splay < 90:
        raise ImpossibleShape(
            f"The walls lean {splay:g} degrees outward, and a board comes to rest only between walls that lean out. "
            "Give a splay between 0 and 90, or let the bottom rest on ledges."
        )
    return inside_derivation().function("up")(inside=width, outside=outside, across=wall, splay=splay)
