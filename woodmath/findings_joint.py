"""The master's remarks on the joint in a post and on the bit that bores it.

A remark judges what the topics worked out. Where a threshold is a rule of thumb, it says so.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import TYPE_CHECKING

from woodmath.errors import ImpossibleShape
from woodmath.finding import Finding, about, in_decimals, mark_at_most, more, size, thicknesses
from woodmath.wall_findings import thin_walls

if TYPE_CHECKING:
    from woodmath.piece import Piece

CLEARANCE = "2 mm"
"""How much deeper than the tenon is long a stopped mortise is cut (the same page, READ)."""
LEAST_PARING = "0.8 mm"
"""Common practice: with less than 1/32 inch to pare, the scallops of the holes stay in the cheeks."""
HOLES_UNDER = "1/16 in"
"""How much narrower than the mortise to bore (WOOD magazine, Mortises and tenons, READ)."""


def joint_findings(piece: Piece) -> Iterator[Finding]:
    """Yield the remarks on the joint in a post: its walls, its clearance, its ends, and how deep it is bored.

    Parameters
    ----------
    piece : Piece
        As read.

    Yields
    ------
    Finding
        In no special order.

    Source: beside each threshold of this module and of `woodmath.wall_findings`.

    >>> from woodmath.piece import Piece
    >>> [remark.severity for remark in joint_findings(Piece.demo("cat-bed"))]
    ['note']
    """
    try:
        joint = piece.post_joint()
        bored = replace(joint, end_clearance=0.0)
    except ImpossibleShape as fault:
        yield Finding(
            "stop",
            "the post joint",
            str(fault),
            "The end's tenon is the first, the side's the other: change the size under [joint] or [post].",
        )
        return
    yield from (thin.finding for thin in thin_walls(piece.rule, joint))
    yield from _bit_depth(piece, max(bored.tenon.reach, bored.other_tenon.reach))
    if piece.joint.end_clearance == 0:
        yield Finding(
            "caution",
            "the ends of the tenons",
            f"The tenons are as long as the mortises are deep ({size(piece.rule, bored.tenon.reach)}), so the "
            "ends may touch before the shoulders close, and then they hold the joint open.",
            f"Give end_clearance about {about(piece.rule, CLEARANCE)}.",
        )
    if joint.ends == "mitred" and joint.tenon.thickness != joint.other_tenon.thickness:
        yield Finding(
            "note",
            "the mitred ends",
            f"The tenons are {size(piece.rule, joint.tenon.thickness)} and "
            f"{size(piece.rule, joint.other_tenon.thickness)} thick, so their ends are not at 45 degrees: the "
            f"end's is {joint.tenon.bevel:.1f} off square, the side's {joint.other_tenon.bevel:.1f}.",
            "Strike a bevel for each; tenons of one thickness would both take 45.",
        )
    if joint.corner_block:
        across, along = (
            size(piece.rule, wall) for wall in (joint.walls.inside_other, joint.walls.inside_tenon)
        )
        yield Finding(
            "note",
            "the inside corner of the post",
            f"Where the mortises meet they cut the inside corner free, {across} by {along} over their "
            "height: it hangs on the wood above and below.",
            "Leave whole wood between the tenons and above them, and never lever against that corner.",
        )


def _bit_depth(piece: Piece, depth: float) -> Iterator[Finding]:
    try:
        bit = piece.auger_bit()
        point = bit.point_depth(depth)
    except ImpossibleShape as fault:
        yield Finding("stop", "the auger bit", str(fault), "Change the size under [bit].")
        return
    post, left = piece.post.square, piece.post.square - point
    if more(left, bit.lead):
        return
    if more(left, 0):
        yield Finding(
            "caution",
            "the bottom of the mortises",
            f"At {size(piece.rule, depth)} deep the screw's point stands {size(piece.rule, left)} from the far "
            f"face, and one turn of the brace takes it {in_decimals(piece.rule, bit.lead)} {piece.rule.unit_mark} "
            "further.",
            "Count the turns, and stop one short; one too many shows outside.",
        )
    elif not more(post, depth):
        yield Finding(
            "stop",
            "the bottom of the mortises",
            f"The bit comes through: the mortise is {size(piece.rule, depth)} deep, and the post is "
            f"{size(piece.rule, post)}.",
            "Make the tenons shorter, or lay the mortise out on both faces and bore from both.",
        )
    else:
        least = mark_at_most(piece, post - bit.point_length - piece.rule.one_mark)
        yield Finding(
            "stop",
            "the bottom of the mortises",
            f"The screw's point comes through: {size(piece.rule, depth)} deep plus "
            f"{size(piece.rule, bit.point_length)} of screw needs {size(piece.rule, point)}, and the post is "
            f"{size(piece.rule, post)}.",
            (f"Bore to {least} or less" if least else "Take a bit with a shorter screw")
            + ", and finish the bottom with a chisel.",
        )


def bit_width_findings(piece: Piece) -> Iterator[Finding]:
    """Yield the remarks on the bit's diameter beside the narrower mortise.

    Parameters
    ----------
    piece : Piece
        As read.

    Yields
    ------
    Finding
        A stop where the bit is wider than the mortise, a note where it leaves too little to pare.

    Source: beside each threshold of this module.

    >>> from woodmath.piece import Piece
    >>> list(bit_width_findings(Piece.demo("cat-bed")))
    []
    """
    across = piece.bit.diameter
    panel, width = min(thicknesses(piece).items(), key=lambda each: each[1])
    fitting = mark_at_most(piece, width - piece.rule.read(HOLES_UNDER))
    bore = f"Bore with {fitting} or less" if fitting else "Chop it with the chisel alone"
    if more(across, width):
        yield Finding(
            "stop",
            "the auger bit",
            f"It is {size(piece.rule, across)} across, wider than the {panel}'s mortise, which is "
            f"{size(piece.rule, width)}.",
            f"{bore}, and pare to the line.",
        )
    elif more(piece.rule.read(LEAST_PARING), width - across):
        yield Finding(
            "note",
            "the auger bit",
            f"It is {size(piece.rule, across)} across and the {panel}'s mortise {size(piece.rule, width)}: little is "
            "left to pare, and a hole that wanders shows in the cheek.",
            f"{bore}, about {about(piece.rule, HOLES_UNDER)} under the mortise, and pare to the line.",
        )
