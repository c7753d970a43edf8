"""The table of a piece's ornament: on which panel, which design, and how it is to fit.

A length is in the piece's own unit.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from woodmath.ornament_fitted import DESIGNS
from woodmath.ornament_rosette import MOST
from woodmath.piece_reading import Table
from woodmath.piece_values import Choice, Count, Length

PANELS = ("end", "side")
"""Which panels can carry an ornament."""


@dataclass(frozen=True)
class Ornament(Table):
    """The ornament on the outer face of one pair of panels.

    Parameters
    ----------
    margin : float
        Kept free all round, measured square to each edge or to the bead's quirk, > 0, in the piece's unit.
    unit : float
        That would be welcome: of the border, or from one running circle's centre to the next, > 0.
    on : str
        One of `PANELS`.
    design : str
        One of `woodmath.ornament_fitted.DESIGNS`.
    petals : int
        Of the rosette, 3 to 12.

    >>> Ornament(margin=0.75, unit=1.0).design
    'rosette'
    """

    margin: Annotated[float, Length("margin round the ornament, measured square to each edge")]
    unit: Annotated[
        float, Length("unit of the border that would be welcome, or from one running circle to the next")
    ]
    on: Annotated[str, Choice("the panel that carries the ornament", PANELS)] = PANELS[0]
    design: Annotated[str, Choice("the design", DESIGNS)] = DESIGNS[0]
    petals: Annotated[int, Count("petals of the rosette, 3 or more", MOST)] = 6
