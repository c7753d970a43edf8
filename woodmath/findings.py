"""The master's remarks on a piece: what must stop, what wants care, what is worth knowing, with its numbers.

A remark judges what the topics worked out; it works out nothing of its own. Where a threshold is a rule of
thumb, it says so.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from typing import TYPE_CHECKING

from woodmath.finding import SEVERITIES, Finding, Remarks, about, more, size, thicknesses
from woodmath.findings_as_made import as_made_findings
from woodmath.findings_boards import board_findings
from woodmath.findings_case import bottom_findings, case_findings
from woodmath.findings_foot import foot_findings
from woodmath.findings_joint import bit_width_findings, joint_findings
from woodmath.findings_ornament import ornament_findings
from woodmath.findings_rocker import rocker_findings
from woodmath.findings_rocking import rocking_findings
from woodmath.findings_seasons import season_findings
from woodmath.findings_turned import turned_findings
from woodmath.post_joint import usual_thickness
from woodmath.wall_findings import THIN_WALL

if TYPE_CHECKING:
    from woodmath.piece import Piece

HORN = "25 mm"
"""Wood left past a mortise at a post's end (diyinfo.org, Constructing Mortice and Tenon Joints, READ)."""
WIDEST_TENON = 5
"""Times its thickness (Manual of Purpose-Made Woodworking Joinery, p. 23, READ)."""


def findings_of(piece: Piece) -> Remarks:
    """Return every remark on a piece: stops first, then cautions, then notes.

    Parameters
    ----------
    piece : Piece
        As read.

    Returns
    -------
    Remarks
        A tuple of findings, empty when there is nothing to say.

    Source: beside each threshold of this module.

    >>> from woodmath.piece import Piece
    >>> [finding.place for finding in findings_of(Piece.demo("log-box"))]
    ['the mitred ends', 'the inside corner of the post', 'the face of the side', 'the seasons']
    """
    remarks = [
        *joint_findings(piece),
        *_tenons(piece),
        *bit_width_findings(piece),
        *_rack(piece),
        *_panels(piece),
        *rocker_findings(piece),
        *rocking_findings(piece),
        *foot_findings(piece),
        *case_findings(piece),
        *bottom_findings(piece),
        *season_findings(piece),
        *turned_findings(piece),
        *ornament_findings(piece),
        *board_findings(piece),
        *as_made_findings(piece),
    ]
    return Remarks(sorted(remarks, key=lambda remark: SEVERITIES.index(remark.severity)))


def _tenons(piece: Piece) -> Iterator[Finding]:
    least, most = usual_thickness(piece.post.square)
    panels = {"end": piece.end, "side": piece.side}
    for panel, thickness in thicknesses(piece).items():
        if more(least, thickness) or more(thickness, most):
            yield Finding(
                "note",
                f"the {panel}'s tenons",
                f"They are {size(piece.rule, thickness)} thick; a quarter to a third of the post would be "
                f"{piece.rule.mark(least)} to {piece.rule.mark(most)}.",
                "That is a rule of thumb: know why you leave it.",
            )
        board = panels[panel]
        if board and not more(board.thickness, thickness):
            yield Finding(
                "stop",
                f"the {panel}'s tenons",
                f"They are {size(piece.rule, thickness)} thick and the board is {size(piece.rule, board.thickness)}: a "
                "bare-faced tenon needs a shoulder on one face.",
                "Make the tenons about half as thick as the board.",
            )
    thinnest = min(thicknesses(piece).values())
    for number, tenon in enumerate(piece.joint.tenons, 1):
        if more(tenon.width, WIDEST_TENON * thinnest):
            yield Finding(
                "caution",
                f"tenon {number}",
                f"It is {size(piece.rule, tenon.width)} wide and {size(piece.rule, thinnest)} thick; wider than "
                f"{WIDEST_TENON} times its thickness, {size(piece.rule, WIDEST_TENON * thinnest)}, it shrinks "
                "loose and its mortise weakens the post.",
                "Make two tenons of it.",
            )
    yield from _places(piece)


def _places(piece: Piece) -> Iterator[Finding]:
    numbered = sorted(enumerate(piece.joint.tenons, 1), key=lambda each: each[1].place)
    for (number, lower), (next_number, upper) in pairwise(numbered):
        top = lower.place + lower.width
        place = f"tenons {number} and {next_number}"
        if more(top, upper.place):
            yield Finding(
                "stop",
                place,
                f"They collide: along the post, one ends {size(piece.rule, top)} from the panel's lower edge, the "
                f"next begins at {size(piece.rule, upper.place)}.",
                "Change place or width of one of them.",
            )
        elif more(piece.rule.read(THIN_WALL), upper.place - top):
            yield Finding(
                "caution",
                place,
                f"Between their mortises {size(piece.rule, upper.place - top)} of the post is left, and less than "
                f"{about(piece.rule, THIN_WALL)} splits easily when you lever against it.",
                "Move them apart, or make one wide tenon of the two.",
            )
    for number, tenon in numbered:
        top = tenon.place + tenon.width
        if piece.end and more(top, piece.end.slope_length):
            yield Finding(
                "stop",
                f"tenon {number}",
                f"It ends {size(piece.rule, top)} from the panel's lower edge, and the whole edge along the post "
                f"measures {size(piece.rule, piece.end.slope_length)}.",
                "Place it lower, or make it narrower.",
            )


def _rack(piece: Piece) -> Iterator[Finding]:
    widths = {width: f"the {panel}'s mortise" for panel, width in reversed(thicknesses(piece).items())}
    wanted = [("chisel", use, width, piece.tools.chisels) for width, use in widths.items()]
    for tool, use, width, rack in (*wanted, ("bit", "the mortises", piece.bit.diameter, piece.tools.bits)):
        if not rack or piece.rule.marks(width) in map(piece.rule.marks, rack):
            continue
        near = piece.rule.mark(min(rack, key=lambda each: abs(each - width)))
        yield Finding(
            "caution",
            f"the {tool}s in the rack",
            f"There is no {tool} of {size(piece.rule, width)} for {use}; there are "
            f"{', '.join(map(piece.rule.mark, sorted(rack)))}.",
            f"Lay {use} out to a {tool} that you have, such as {near}, or borrow one.",
        )


def _panels(piece: Piece) -> Iterator[Finding]:
    if not piece.end:
        return
    needed = piece.post.foot + piece.end.slope_length + piece.post.top
    if more(needed, piece.post.length):
        yield Finding(
            "stop",
            "the length of the posts",
            f"Foot, panel and top make {size(piece.rule, needed)} along the post, and the posts are "
            f"{size(piece.rule, piece.post.length)} long.",
            "Cut longer posts, or lower the panels.",
        )
    if not piece.joint.tenons:
        return
    highest = max(tenon.place + tenon.width for tenon in piece.joint.tenons)
    lowest = min(tenon.place for tenon in piece.joint.tenons)
    for where, which, horn, remedy in (
        (
            "top",
            "above the highest",
            piece.post.top + piece.end.slope_length - highest,
            "saw off what is too much once the joint is closed",
        ),
        (
            "foot",
            "below the lowest",
            piece.post.foot + lowest,
            "make the foot longer, or set the lowest tenon higher",
        ),
    ):
        if more(piece.rule.read(HORN), horn) and horn >= 0:
            yield Finding(
                "caution",
                f"the {where} of the posts",
                f"Only {size(piece.rule, horn)} of the post stands {which} mortise, and its short grain can be "
                "pushed out.",
                f"Leave {about(piece.rule, HORN)} or more there: {remedy}.",
            )
