"""The master's remarks on an ornament: whether it fits, and where the wood or the compass asks for care."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from woodmath.errors import ImpossibleShape
from woodmath.finding import Finding, about, more, size
from woodmath.ornament_fitted import Fitted
from woodmath.ornament_strokes import CompassArc
from woodmath.piece_ornament import Ornament
from woodmath.piece_ornamented import fitted_to, ground_of

if TYPE_CHECKING:
    from woodmath.piece import Piece

SMALLEST_RADIUS = "6 mm"
"""Below this a compass's own legs are in the way, and a gouge or a punch does it better (common practice)."""
NEAREST_LINE = "3 mm"
"""Wood left between an incised line and an edge; less of it breaks away (common practice)."""
NARROW_TIP = 30.0
"""Degrees to which a tip opens at most where its short fibres crumble across the grain (common practice)."""


def ornament_findings(piece: Piece) -> Iterator[Finding]:
    """Yield the remarks on a piece's ornament.

    Parameters
    ----------
    piece : Piece
        As read; one without [ornament] in its file gets none.

    Yields
    ------
    Finding
        A stop where it does not fit, notes on what asks for care.

    Source: `woodmath.ornament_fitted`; thresholds beside their names.

    >>> from woodmath.piece import Piece
    >>> list(ornament_findings(Piece.demo("cat-bed")))
    []
    """
    told: Ornament | None = piece.ornament
    if told is not None:
        yield from remarks_on(piece, told)


def remarks_on(piece: Piece, told: Ornament) -> Iterator[Finding]:
    """Yield the remarks on an ornament that a piece has, or may be given.

    Parameters
    ----------
    piece : Piece
        With the panel.
    told : Ornament
        What is to be on it.

    Yields
    ------
    Finding
        As `ornament_findings`.

    >>> from woodmath.piece import Piece
    >>> [finding.severity for finding in remarks_on(Piece.demo("log-box"), Ornament(margin=200.0, unit=30.0))]
    ['stop']
    """
    place = f"the ornament of the {told.on}"
    try:
        found = fitted_to(piece, told)
        clear = ground_of(piece, told.on).least_clear(found.motif.kept)
    except ImpossibleShape as trouble:
        yield Finding(
            "stop", place, str(trouble), "Change the margin, the unit or the design under [ornament]."
        )
        return
    rule = piece.rule
    if more(found.outside, 0.0):
        yield Finding(
            "stop",
            place,
            f"It goes {size(rule, found.outside)} beyond its field.",
            "Make the unit smaller, or choose another design.",
        )
    if more(rule.read(NEAREST_LINE), clear):
        yield Finding(
            "note",
            place,
            f"A line comes within {size(rule, max(clear, 0.0))} of an edge, where wood breaks away as it is incised.",
            f"Leave {about(rule, NEAREST_LINE)} or more: widen the margin.",
        )
    yield from _compass(piece, place, found)
    tip = 360.0 / told.petals
    if found.design != "running circles" and not more(tip, NARROW_TIP):
        yield Finding(
            "note",
            place,
            f"{told.petals} petals open to {tip:.0f}° each; at the tips of those that stand across the grain only "
            "short fibres are left.",
            "Incise them shallow, cutting toward the tip from both sides, or take fewer petals.",
        )


def _compass(piece: Piece, place: str, found: Fitted) -> Iterator[Finding]:
    radii = [stroke.radius for stroke in found.motif.kept if isinstance(stroke, CompassArc)]
    least = min(radii)
    if more(piece.rule.read(SMALLEST_RADIUS), least):
        yield Finding(
            "note",
            place,
            f"It wants a compass set to {size(piece.rule, least)}, which few can be.",
            "Strike such arcs with a gouge or a punch of that sweep, or ask for a longer unit.",
        )
