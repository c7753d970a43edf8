"""The master's remarks on how a piece rocks: whether it stands at all, and whether its load makes it lean."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import TYPE_CHECKING

from woodmath.board_measure import metre_in
from woodmath.errors import ImpossibleShape
from woodmath.finding import Finding
from woodmath.rocking import RockingBody

if TYPE_CHECKING:
    from woodmath.piece import Piece

_LEANS = 0.5
"""Degrees: what leans less looks upright."""
_PLACE = "how it rocks"


def rocking_findings(piece: Piece) -> Iterator[Finding]:
    """Yield the remarks on how a piece rocks that has rockers, panels and a timber.

    Parameters
    ----------
    piece : Piece
        As read; what cannot be weighed yet gets no remark here.

    Yields
    ------
    Finding
        A stop where it does not stand on its rockers, empty or loaded; a caution where its load makes it lean.

    Source: `woodmath.rocking.stiffness_derivation`.

    >>> from woodmath.piece import Piece
    >>> list(rocking_findings(Piece.demo("cat-bed")))
    []
    """
    if piece.rocker is None or piece.timber is None or piece.end is None or piece.side is None:
        return
    try:
        bodies = [("empty", piece.rocking_body())]
        if piece.load:
            bodies.append(("with its load", piece.rocking_body(load=True)))
    except ImpossibleShape:
        # What cannot be built cannot be weighed: another remark says why.
        return
    for how, body in bodies:
        if not replace(body, centre_offset=0.0).is_stable:
            yield _goes_over(piece, how, body)
        elif not body.is_stable:
            yield Finding(
                "stop",
                _PLACE,
                "With its load as far aside as the file says, it rolls past its heel and over.",
                "Bring the load nearer to the middle, or make the rockers longer.",
            )
        elif abs(body.rest_tilt) >= _LEANS:
            yield Finding(
                "caution",
                _PLACE,
                f"With its load as it lies, it comes to rest {abs(body.rest_tilt):.1f} degrees askew.",
                "Bring the load nearer to the middle, or take a flatter rocker.",
            )


def _goes_over(piece: Piece, how: str, body: RockingBody) -> Finding:
    metre, mark = metre_in(piece.rule.unit), piece.rule.mark
    return Finding(
        "stop",
        _PLACE,
        f"It does not stand {how}: its weight lies {mark(body.centre_height * metre)} over the floor, and the circle "
        "as round as the rocker's bottom has a radius of only "
        f"{mark(body.ellipse.radius_at_bottom * metre, unit=True)}.",
        "Take a flatter rocker, with a radius greater than that height, or bring the weight down.",
    )
