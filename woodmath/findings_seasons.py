"""The master's remarks on what a year does to a piece: whether panels and bottom have room, and what opens."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from woodmath.case import Case
from woodmath.errors import ImpossibleShape, UnknownName
from woodmath.finding import Finding, about, more, size
from woodmath.piece_seasons import PieceSeasons
from woodmath.wood_movement import limits_left

if TYPE_CHECKING:
    from woodmath.piece import Piece
    from woodmath.piece_shop import Timber


def season_findings(piece: Piece) -> Iterator[Finding]:
    """Yield the remarks on how a piece gets through the year.

    Parameters
    ----------
    piece : Piece
        As read; one that names no timber or no year gets none.

    Yields
    ------
    Finding
        Cautions where there is no room to move, notes on what moves.

    Source: `woodmath.piece_seasons`; USDA Wood Handbook, GTR-190, chapter 13 (read).

    >>> from woodmath.piece import Piece
    >>> [finding.place for finding in season_findings(Piece.demo("log-box"))]
    ['the seasons']
    """
    timber = piece.timber
    if timber is None or timber.year is None or piece.end is None or piece.side is None:
        return
    try:
        year = PieceSeasons.of(piece)
    except UnknownName as unknown:
        yield Finding(
            "note", "the seasons", str(unknown), "Until you know, leave more room than looks needed."
        )
        return
    except ImpossibleShape:
        # Whatever makes no case is told by a remark of its own.
        return
    yield from _today(timber, timber.year)
    yield from _panels(piece, year)
    yield from _groove(piece, year)
    yield from _bottom(piece, year)


def _today(timber: Timber, year: tuple[float, float]) -> Iterator[Finding]:
    low, high = year
    if not low <= timber.moisture_now <= high:
        yield Finding(
            "caution",
            "the moisture of the wood",
            f"It holds {timber.moisture_now:g} percent today, and where the piece will stand it comes to {low:g} to "
            f"{high:g}: what you fit now turns out too {'narrow' if timber.moisture_now > high else 'wide'} all the "
            "year.",
            "Stack it with sticks between the boards in such a room until its weight stays the same.",
        )
    if timber.shrinkage is None:
        now = timber.moisture_now
        for sentence in limits_left(min(low, now), max(high, now)):
            yield Finding(
                "note", "the figures of the seasons", sentence, "Leave a little more room than they ask for."
            )


def _panels(piece: Piece, year: PieceSeasons) -> Iterator[Finding]:
    rule, end = piece.rule, year.end
    if not more(end.over_the_year, rule.one_mark):
        return
    today, driest, dampest = year.splays
    leans = (
        f" Their widths stay, and so the splay they ask of the posts goes from {driest:.2f}° at the driest to "
        f"{dampest:.2f}° at the dampest."
        if abs(today) > 0
        else ""
    )
    yield Finding(
        "note",
        "the height of the panels",
        f"Across the grain they measure {size(rule, end.driest)} on the driest day and {size(rule, end.dampest)} on "
        f"the dampest.{leans}",
        _one_glued(piece, year),
    )


def _one_glued(piece: Piece, year: PieceSeasons) -> str:
    case = Case.of(piece)
    if len(case.tenons) < 2:
        return (
            "Glue the tenon of each edge alone, and leave the tongues dry, so that the panel moves beside it."
        )
    return (
        f"Glue tenon {case.glued_tenon} of each edge, the one nearest its middle, and leave the others dry. Give "
        f"each of those a mortise longer than the tenon is wide, by {_written(piece, max(year.edge_grows, 0.0))} on "
        f"the side away from the glued tenon and by {_written(piece, max(year.edge_shrinks, 0.0))} on the side "
        "toward it, so that the panel moves and the joint does not."
    )


def _groove(piece: Piece, year: PieceSeasons) -> Iterator[Finding]:
    rule = piece.rule
    if piece.joint.tongue is None or not more(year.edge_grows, year.groove_clearance):
        return
    yield Finding(
        "caution",
        "the tongues' clearance",
        f"Until the dampest day an edge of the panels moves {size(rule, max(year.edge_grows, 0.0))} along the post, "
        f"and the groove leaves the tongue {size(rule, year.groove_clearance)} at its end: the swelling panel "
        "pushes against the post.",
        f"{_more_room(piece, year)}, or fit the panels when they are at their dampest.",
    )


def _more_room(piece: Piece, year: PieceSeasons) -> str:
    """Return what gives the tongues their room: their clearance, or a bead that can hide so long a groove."""
    tongue, wanted = piece.joint.tongue, about(piece.rule, _written(piece, year.edge_grows))
    if tongue and more(tongue.clearance, year.groove_clearance):
        return f"Stop the tongues with a bead that is {wanted} or more from the edge with its quirk"
    return f"Give [joint.tongue] a clearance of {wanted} or more"


def _written(piece: Piece, length: float) -> str:
    """Return a length to the next mark above it, with its unit."""
    marks = piece.rule.marks(length)
    if more(length, piece.rule.length(marks)):
        marks += 1
    return piece.rule.mark(piece.rule.length(marks), unit=True)


def _bottom(piece: Piece, year: PieceSeasons) -> Iterator[Finding]:
    bottom, rule = year.bottom, piece.rule
    if bottom is None:
        return
    if more(bottom.grows, year.bottom_clearance):
        yield Finding(
            "caution",
            "the bottom in a damp season",
            f"It grows {size(rule, bottom.grows)} wider until the dampest day, and its two edges leave "
            f"{size(rule, year.bottom_clearance)} together: it jams, and pushes the sides off their posts.",
            f"Give [bottom] a clearance of {_written(piece, bottom.grows / 2 + rule.one_mark)} or more.",
        )
    elif more(bottom.over_the_year, rule.one_mark):
        yield Finding(
            "note",
            "the bottom through the year",
            f"It is {size(rule, bottom.over_the_year)} wider on the dampest day than on the driest, and has room "
            "for that.",
            "Lay it loose: no glue, no nails through both edges.",
        )
