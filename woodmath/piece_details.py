"""The tables of a piece's details: the tongue, the bead, the tenon of a post's foot, the bottom.

A length is in the piece's own unit.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from woodmath.groove import depth_for
from woodmath.piece_reading import Table
from woodmath.piece_values import Choice, Length
from woodmath.rebate import FACES

LINES = ("upright", "along the post")
"""How a tenon on a leaning foot can point: straight down, or in the post's own line."""


@dataclass(frozen=True)
class Tongue(Table):
    """The bare-faced tongue along every panel edge: what the tenons are cut out of.

    Parameters
    ----------
    length : float
        How far it stands out from the shoulder, > 0, in the piece's unit.
    clearance : float
        How much it falls short of the groove's floor, and of its stopped ends, 0 or more.
    rebated_from : str
        One of `FACES`: from which face of the panel the wood was taken away.

    >>> tongue = Tongue(length=0.3125, clearance=0.0625)
    >>> tongue.groove_depth, tongue.rebated_from
    (0.375, 'outer face')
    """

    length: Annotated[float, Length("how far the tongue stands out from the shoulder", stock=True)]
    clearance: Annotated[
        float,
        Length("how much the tongue falls short of its groove's floor and ends", stock=True, from_zero=True),
    ] = 0.0
    rebated_from: Annotated[str, Choice("the face of the panel from which its edges are rebated", FACES)] = (
        FACES[0]
    )

    @property
    def groove_depth(self) -> float:
        """Depth of the post's groove: the tongue and its clearance."""
        return depth_for(self.length, self.clearance)


@dataclass(frozen=True)
class Bead(Table):
    """The bead along the upper and the lower edge of every panel.

    Parameters
    ----------
    width, quirk : float
        Of the bead itself, and of the narrow groove beside it, > 0, in the piece's unit.

    >>> Bead(width=0.25, quirk=0.125).width
    0.25
    """

    width: Annotated[float, Length("width of the bead", stock=True)]
    quirk: Annotated[float, Length("width of the narrow groove beside the bead", stock=True)]


@dataclass(frozen=True)
class FootTenon(Table):
    """The tenon of a post's foot in the rocker.

    Parameters
    ----------
    thickness : float
        Across the rocker, > 0, in the piece's unit.
    width : float
        Along the rocker, measured level, > 0.
    length : float
        From the shoulder to its end, measured in its own line, > 0.
    line : str
        One of `LINES`.

    >>> FootTenon(thickness=0.5, width=1.25, length=0.75).line
    'upright'
    """

    thickness: Annotated[float, Length("thickness of the tenon, across the rocker", stock=True)]
    width: Annotated[float, Length("width of the tenon along the rocker, measured level", stock=True)]
    length: Annotated[float, Length("from the shoulder to the tenon's end", stock=True)]
    line: Annotated[str, Choice("how the tenon points", LINES)] = LINES[0]


@dataclass(frozen=True)
class Bottom(Table):
    """The loose bottom board, which lies between the panels and lifts out.

    Parameters
    ----------
    thickness : float
        Of the board, > 0, in the piece's unit.
    rest : float
        From the panels' lower edge up to the board's underside, measured upright, 0 or more.
    clearance : float
        Left free all round, measured level, 0 or more.
    cleat : float
        Side of the square cleats on the panels on which it lies; 0 where there are none.

    >>> Bottom(thickness=0.5, rest=1).cleat
    0.0
    """

    thickness: Annotated[float, Length("thickness of the bottom board", stock=True)]
    rest: Annotated[
        float,
        Length("from the panels' lower edge up to the bottom's underside, measured upright", from_zero=True),
    ]
    clearance: Annotated[
        float, Length("what the bottom leaves free all round", stock=True, from_zero=True)
    ] = 0.0
    cleat: Annotated[
        float, Length("side of the square cleats under the bottom", stock=True, from_zero=True)
    ] = 0.0
