"""The master's remarks on the rockers: whether there is such a curve, and whether the board holds it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from woodmath.ellipse_rocker import rocker_ranges
from woodmath.errors import ImpossibleShape
from woodmath.finding import Finding, marks_between, more, size

if TYPE_CHECKING:
    from woodmath.piece import Piece
    from woodmath.piece_tables import Rocker
    from woodmath.rule import Rule


def rocker_findings(piece: Piece) -> Iterator[Finding]:
    """Yield the remarks on the rockers of a piece that has any.

    Parameters
    ----------
    piece : Piece
        As read.

    Yields
    ------
    Finding
        A stop for each thing that cannot be.

    Source: the ellipse through the rocker's heels (see `woodmath.ellipse_rocker`).

    >>> from woodmath.piece import Piece
    >>> list(rocker_findings(Piece.demo("cat-bed")))
    []
    """
    if not piece.rocker:
        return
    try:
        piece.ellipse()
    except ImpossibleShape as fault:
        yield _no_such_curve(piece.rule, piece.rocker, fault)
    if not more(piece.rocker.depth, piece.rocker.rise):
        yield Finding(
            "stop",
            "the rocker's heels",
            f"The rocker is {size(piece.rule, piece.rocker.depth)} deep and its heels rise "
            f"{size(piece.rule, piece.rocker.rise)}: nothing is left of the board there.",
            "Take a deeper board, or let the heels rise less.",
        )


def _no_such_curve(rule: Rule, rocker: Rocker, fault: ImpossibleShape) -> Finding:
    try:
        can_be = rocker_ranges(rocker.length, rocker.rise, rocker.bottom_radius)
    except ImpossibleShape:
        return Finding("stop", "the rocker", str(fault), "Change the size under [rocker].")
    (short, long), (low, high), (least, most) = (
        marks_between(rule, *limits) for limits in (can_be.lengths, can_be.rises, can_be.radii)
    )
    return Finding(
        "stop",
        "the rocker",
        f"It is {size(rule, rocker.length)} long with a rise of {size(rule, rocker.rise)}, and a radius of "
        f"{size(rule, rocker.bottom_radius)} at the bottom is {can_be.fault}.",
        f"Change one of the three under [rocker]: length from {short} to less than {long}, or rise to more than "
        f"{low} and up to {high}, or bottom_radius to more than {least} and up to {most}.",
    )
