"""The joint of a piece as the questions take it: mitred ends that just touch, and what a slip makes of it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import TYPE_CHECKING

from woodmath.errors import ImpossibleShape
from woodmath.post_joint import PostJoint
from woodmath.questions.notation import length_shown

if TYPE_CHECKING:
    from woodmath.piece import Piece

THINNER_BY = 2
"""Marks by which the side's tenon comes out thinner than planned."""


def touching(piece: Piece) -> PostJoint:
    """Return the piece's joint with mitred ends that just touch: its numbers are those of geometry alone."""
    return PostJoint(
        post=piece.post.square,
        tenon_thickness=piece.joint.tenon_thickness,
        set_back=piece.joint.set_back,
        other_thickness=others(piece)[0],
        other_set_back=others(piece)[1],
        ends="mitred",
    )


def others(piece: Piece) -> tuple[float, float]:
    """Return thickness and set-back of the side's tenon."""
    return piece.joint.side_thickness, piece.joint.side_set_back


def with_square_ends(piece: Piece) -> PostJoint:
    """Return the same joint with both tenons stopping at the other's inner cheek."""
    return replace(touching(piece), ends="square")


def thinner_tenon(piece: Piece) -> float:
    """Return the thickness of a side's tenon that came out thinner than planned."""
    return others(piece)[0] - THINNER_BY * piece.rule.one_mark


def with_thinner_side(piece: Piece) -> PostJoint:
    """Return the joint with the side's tenon as it came out."""
    return replace(touching(piece), other_thickness=thinner_tenon(piece))


def set_backs_changed(piece: Piece) -> PostJoint:
    """Return the joint with the two set-backs changed about."""
    return replace(touching(piece), set_back=others(piece)[1], other_set_back=piece.joint.set_back)


def tenon_width(piece: Piece) -> float:
    """Return the width of the first tenon along a panel's edge: the length of its mortise.

    Raises
    ------
    ImpossibleShape
        If the piece names no tenons.
    """
    if not piece.joint.tenons:
        raise ImpossibleShape(
            f"{piece.name} names no tenons under [joint], and the question is about their width."
        )
    return piece.joint.tenons[0].width


def joint_shown(piece: Piece, others_thickness: str = "") -> Mapping[str, str]:
    """Return the sizes of the joint for reading; the side's tenon as it came out, where that is told."""
    rule, joint = piece.rule, piece.joint
    thickness = others_thickness or length_shown(others(piece)[0], rule)
    return {
        "post": length_shown(piece.post.square, rule),
        "end's tenon": f"{length_shown(joint.tenon_thickness, rule)} thick and set back "
        f"{length_shown(joint.set_back, rule)}",
        "side's tenon": f"{thickness} thick and set back {length_shown(others(piece)[1], rule)}",
    }
