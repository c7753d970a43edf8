"""The master's remarks on the posts' feet in the rockers, and on the short grain at the rockers' heels."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from woodmath import foot_joint
from woodmath.case import Case
from woodmath.case_solids import foot_tenon_cheeks, wood_under_mortise
from woodmath.ellipse import Ellipse
from woodmath.errors import ImpossibleShape
from woodmath.finding import Finding, about, more, size
from woodmath.groove import depth_for
from woodmath.wall_findings import LEAST_BEHIND, THIN_WALL

if TYPE_CHECKING:
    from woodmath.piece import Piece
    from woodmath.piece_details import FootTenon

SHORT_GRAIN = 15.0
"""Degrees between grain and edge beyond which a thin end is told to be weak (common practice)."""


def foot_findings(piece: Piece) -> Iterator[Finding]:
    """Yield the remarks on the joint between posts and rockers.

    Parameters
    ----------
    piece : Piece
        As read; one without rockers gets none.

    Yields
    ------
    Finding
        Stops where the tenon has no wood, no room or no rocker under it; cautions for thin walls and short grain.

    Source: `woodmath.foot_joint`; thresholds beside their names.

    >>> from woodmath.piece import Piece
    >>> [finding.place for finding in foot_findings(Piece.demo("cat-bed"))]
    ["the rocker's heels", "the grain of the foot's tenon"]
    """
    rocker = piece.rocker
    if rocker is None or piece.end is None or piece.side is None:
        return
    try:
        case, ellipse = Case.of(piece), piece.ellipse()
    except ImpossibleShape:
        # No such case, or no such curve: other remarks say so.
        return
    if more(case.half_foot + case.level_width, rocker.length / 2):
        yield Finding(
            "stop",
            "the posts on the rocker",
            f"Over the posts' feet the case measures "
            f"{size(piece.rule, 2 * (case.half_foot + case.level_width))}, and the rocker is "
            f"{size(piece.rule, rocker.length)} long: the posts stand beyond its heels.",
            "Make the rocker longer, or the end narrower below.",
        )
    yield from _heels(piece, ellipse)
    if rocker.tenon is None:
        yield Finding(
            "caution",
            "the posts on the rocker",
            "Nothing is said about how the posts are joined to the rockers.",
            "Give the tenon of the foot under [rocker.tenon]: thickness, width and length.",
        )
        return
    yield from _room(piece, case, rocker.tenon)
    yield from _walls(piece, case, rocker.tenon, ellipse)


def _heels(piece: Piece, ellipse: Ellipse) -> Iterator[Finding]:
    rocker = piece.rocker
    if rocker is None or not more(rocker.depth, rocker.rise):
        return
    grain = ellipse.angle_at(rocker.length / 2)
    if grain > SHORT_GRAIN:
        yield Finding(
            "note",
            "the rocker's heels",
            f"There the curve crosses the level grain at {grain:.0f}°, and the board is "
            f"{size(piece.rule, rocker.depth - rocker.rise)} deep: the lower corner is short grain and chips.",
            "Take the arris off the heels, and keep a knot or a run-out of the grain away from them.",
        )


def _room(piece: Piece, case: Case, tenon: FootTenon) -> Iterator[Finding]:
    rule = piece.rule
    upright = tenon.line == "upright"
    room = foot_joint.room(case.square, case.splay, tenon.length) if upright else case.level_width
    if more(tenon.width, room):
        yield Finding(
            "stop",
            "the foot's tenon",
            f"It is {size(rule, tenon.width)} wide along the rocker, and the leaning post has room for "
            f"{size(rule, max(0.0, room))} over the tenon's whole length.",
            "Make it narrower or shorter.",
        )
        return
    inner, _ = foot_tenon_cheeks(case, tenon)
    needed = tenon.length
    if upright:
        inset = max(0.0, inner - case.half_foot)
        needed = max(0.0, foot_joint.post_needed(tenon.length, case.splay, inset))
    left = piece.post.length - case.top
    if more(needed, left):
        yield Finding(
            "stop",
            "the length of the posts",
            f"Foot, panel and top leave {size(rule, max(0.0, left))} of the post below the shoulder, and the tenon in "
            f"the rocker needs {size(rule, needed)}.",
            "Cut longer posts, or make the tenon shorter.",
        )
    if upright and abs(case.splay) > 0:
        yield Finding(
            "note",
            "the grain of the foot's tenon",
            f"The tenon stands upright in a post that leans {abs(case.splay):.1f}°, and its grain crosses it at that "
            "angle: shorter grain, and weaker than along the post.",
            "Choose posts with straight grain, and leave the tenon as wide as there is room for.",
        )


def _walls(piece: Piece, case: Case, tenon: FootTenon, ellipse: Ellipse) -> Iterator[Finding]:
    rule, rocker = piece.rule, piece.rocker
    if rocker is None:
        return
    beside = (rocker.thickness - tenon.thickness) / 2
    if not more(beside, 0.0):
        yield Finding(
            "stop",
            "the mortise in the rocker",
            f"It is {size(rule, tenon.thickness)} wide, and the rocker is {size(rule, rocker.thickness)} thick: "
            "nothing is left beside it.",
            "Take a thinner tenon or a thicker rocker.",
        )
    elif more(rule.read(THIN_WALL), beside):
        yield Finding(
            "caution",
            "the mortise in the rocker",
            f"Beside it {size(rule, beside)} of the rocker is left on each side, and less than "
            f"{about(rule, THIN_WALL)} splits easily when you lever against it.",
            "Take a thinner tenon or a thicker rocker.",
        )
    if more(tenon.thickness, case.square):
        yield Finding(
            "stop",
            "the foot's tenon",
            f"It is {size(rule, tenon.thickness)} thick, and the post is {size(rule, case.square)} square.",
            "Make it thinner.",
        )
    _, outer = foot_tenon_cheeks(case, tenon)
    if more(outer, rocker.length / 2):
        return
    depth = depth_for(tenon.length, piece.joint.end_clearance)
    under = wood_under_mortise(piece, case, tenon)
    if not more(under, 0.0):
        yield Finding(
            "stop",
            "the wood under the rocker's mortise",
            f"The mortise is {size(rule, depth)} deep, and the rocker has {size(rule, max(0.0, under + depth))} "
            "there: it comes through below.",
            "Make the tenon shorter or the rocker deeper.",
        )
    elif more(rule.read(LEAST_BEHIND), under):
        yield Finding(
            "caution",
            "the wood under the rocker's mortise",
            f"Under the mortise {size(rule, under)} of the rocker is left, and less than {about(rule, LEAST_BEHIND)} "
            "breaks out.",
            "Make the tenon shorter or the rocker deeper.",
        )
