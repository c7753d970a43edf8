"""A rebate along a board's edge: what the fillister takes, what it leaves, and where the panel's face comes to lie.

Rebate and tongue together are the board. The face from which the rebate is taken decides how far the panel lies
behind the post's face.
"""

from __future__ import annotations

from dataclasses import dataclass

import sympy

from woodmath.derivation import Quantity
from woodmath.edge_derivations import (
    inner_face_derivation,
    panel_derivation,
    rebate_derivation,
    share_derivation,
)
from woodmath.errors import ImpossibleShape

OUTER_FACE, INNER_FACE = "outer face", "inner face"
FACES = (OUTER_FACE, INNER_FACE)
"""The faces of a panel from which its edges can be rebated."""


@dataclass(frozen=True)
class Rebate:
    """A rebate over the whole length of an edge, and the bare-faced tongue that it leaves.

    Parameters
    ----------
    board : float
        Thickness of the board, > 0, in any length unit.
    tongue : float
        Thickness left as the tongue, > 0, less than the board, in the same unit.
    width : float
        Width of the rebate along the face, > 0: as far as the tongue stands out from the shoulder.

    Raises
    ------
    ImpossibleShape
        If a length is not a positive number, or the tongue is not thinner than the board.

    Source: `rebate_derivation`.

    >>> rebate = Rebate(board=0.875, tongue=0.5, width=0.3125)
    >>> rebate.depth, rebate.fence, rebate.stop, rebate.left
    (0.375, 0.3125, 0.375, 0.5)
    """

    board: float
    tongue: float
    width: float

    def __post_init__(self) -> None:
        """Refuse sizes that cannot be."""
        rebate_derivation().function("depth")(board=self.board, tongue=self.tongue)
        _width().taken_in(self.width)

    @property
    def depth(self) -> float:
        """Depth of the rebate from the face: the board less the tongue."""
        return rebate_derivation().function("depth")(board=self.board, tongue=self.tongue)

    @property
    def fence(self) -> float:
        """Setting of the fillister's fence: from the board's edge to the far side of the cutter, the rebate's width."""
        return self.width

    @property
    def stop(self) -> float:
        """Setting of the fillister's depth stop, below the face."""
        return self.depth

    @property
    def left(self) -> float:
        """Wood left under the rebate: the tongue."""
        return self.tongue

    @property
    def share(self) -> float:
        """What the rebate takes of the board's thickness, more than 0 and less than 1."""
        return share_derivation().function("share")(board=self.board, tongue=self.tongue)


def panel_set_back(set_back: float, board: float, tongue: float, rebated_from: str) -> float:
    """How far the panel's outer face lies behind the post's outer face.

    Parameters
    ----------
    set_back : float
        Outer face of the post to the outer cheek of groove and mortise, 0 or more, in any length unit.
    board, tongue : float
        Thickness of the panel and of its tongue, > 0, the tongue less than the board, in the same unit.
    rebated_from : str
        One of `FACES`.

    Returns
    -------
    float
        In the same unit; less than 0 where the panel stands proud of the post.

    Raises
    ------
    ImpossibleShape
        If a size cannot be, or the face is none of the two.

    Source: `panel_derivation` and `inner_face_derivation`.

    >>> panel_set_back(0.5, 0.875, 0.5, "outer face"), panel_set_back(0.5, 0.875, 0.5, "inner face")
    (0.125, 0.5)
    """
    if rebated_from not in FACES:
        raise ImpossibleShape(
            f'A panel is rebated from its "{OUTER_FACE}" or its "{INNER_FACE}", and {rebated_from!r} is neither. '
            "Name one of the two."
        )
    if rebated_from == OUTER_FACE:
        return panel_derivation().function("panel_set_back")(set_back=set_back, board=board, tongue=tongue)
    # The rule for the inner face has lost board and tongue on its way: they are still to be wood.
    rebate_derivation().function("depth")(board=board, tongue=tongue)
    return inner_face_derivation().function("panel_set_back")(set_back=set_back)


def _width() -> Quantity:
    return Quantity(sympy.Symbol("width", positive=True), "w", "width of the rebate along the face")
