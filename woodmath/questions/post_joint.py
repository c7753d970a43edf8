"""Questions of the page on the corner post, where two tenons meet."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from woodmath import post_joint
from woodmath.questions import glue
from woodmath.questions.joint_sizes import (
    joint_shown,
    others,
    set_backs_changed,
    thinner_tenon,
    touching,
    with_square_ends,
    with_thinner_side,
)
from woodmath.questions.kinds import AngleAnswer, LengthAnswer
from woodmath.questions.notation import length_shown
from woodmath.questions.question import Question, Slip
from woodmath.questions.wording import in_words, on_the_rule, put_in

if TYPE_CHECKING:
    from woodmath.piece import Piece


def _bevel(own: float, other: float) -> float:
    return post_joint.derivation().function("angle")(tenon_thickness=own, other_thickness=other)


def _given_thinner(piece: Piece) -> Mapping[str, str]:
    return joint_shown(piece, f"now {length_shown(thinner_tenon(piece), piece.rule)}")


def _worked_reach(piece: Piece) -> str:
    joint = touching(piece)
    return "\n\n".join(
        (
            put_in(
                post_joint.outer_cheek_derivation(),
                "outer_cheek",
                piece.rule,
                post=joint.post,
                other_set_back=others(piece)[1],
            ),
            on_the_rule(joint.tenon.reach, piece.rule),
            "Where the end's own mortise stands does not matter: its tenon runs into the post until it "
            "meets the far cheek of the other mortise.",
            in_words(
                f"That is where the ends touch. The tenon itself is sawn shorter by the end clearance, "
                f"{length_shown(piece.joint.end_clearance, piece.rule)}, so that the shoulders close first."
            ),
        )
    )


def _worked_bevel(piece: Piece) -> str:
    return _worked_angle(piece, piece.joint.tenon_thickness, others(piece)[0])


def _worked_angle(piece: Piece, own: float, other: float) -> str:
    return "\n\n".join(
        (
            put_in(post_joint.derivation(), "angle", piece.rule, tenon_thickness=own, other_thickness=other),
            "Neither the post nor a set-back stands in it: the two thicknesses alone decide. The two "
            "bevels of a joint make a right angle together.",
        )
    )


def _worked_wall(piece: Piece) -> str:
    joint = touching(piece)
    return "\n\n".join(
        (
            put_in(
                post_joint.outer_cheek_derivation(),
                "other_set_back",
                piece.rule,
                post=joint.post,
                outer_cheek=joint.tenon.outer_cheek,
            ),
            on_the_rule(joint.walls.behind_tenon, piece.rule),
            "What is left behind the long point is the other mortise's set-back, whatever the post's size. "
            "To leave more wood there, set the other mortise further back.",
        )
    )


def _worked_partner(piece: Piece) -> str:
    return _worked_angle(piece, thinner_tenon(piece), piece.joint.tenon_thickness)


QUESTIONS = (
    Question(
        key="post-1",
        ask="With mitred ends that just touch, how long is the end's tenon from the post's inside face to "
        "its long point?",
        kind=LengthAnswer(),
        given=joint_shown,
        truth=lambda piece: touching(piece).tenon.reach,
        slips=(
            Slip(
                "That is the short point, on the inner cheek. The long point is on the other cheek.",
                lambda piece: touching(piece).tenon.inner_cheek,
            ),
            Slip(
                "You took the set-back of the end's own mortise. The tenon runs across to the side's "
                "mortise: whose set-back lies in its way?",
                lambda piece: set_backs_changed(piece).tenon.reach,
            ),
            Slip(
                "That goes through the whole post and out at the far face.",
                lambda piece: piece.post.square,
            ),
            Slip(
                "That reaches the middle of the post. The tenons do not meet there.",
                lambda piece: piece.post.square / 2,
            ),
            Slip(
                "You took the end's own thickness off the post. It lies across the way that the tenon runs.",
                lambda piece: piece.post.square - piece.joint.tenon_thickness,
            ),
        ),
        hints=(
            "Follow the outer cheek from the inside face of the post. Against which cheek of the side's "
            "mortise does it end?",
            "From there to the far outer face is one set-back. Whose?",
        ),
        worked=_worked_reach,
    ),
    Question(
        key="post-2",
        ask="At what bevel, in degrees off square, is the end of the end's tenon cut?",
        kind=AngleAnswer(),
        given=joint_shown,
        truth=lambda piece: touching(piece).tenon.bevel,
        slips=(
            Slip(
                "That is the bevel of the side's tenon: you changed the two thicknesses about. "
                "The cut crosses the tenon's own thickness; the other one is the offset.",
                lambda piece: touching(piece).other_tenon.bevel,
            ),
            Slip(
                "You put the set-backs where the thicknesses belong. Set-backs make tenons longer or "
                "shorter; they do not turn their ends.",
                lambda piece: _bevel(piece.joint.set_back, others(piece)[1]),
            ),
            Slip(
                "45° is for tenons of the same thickness. Are these two?",
                lambda piece: _bevel(piece.joint.tenon_thickness, piece.joint.tenon_thickness),
            ),
            Slip(
                "That is half the bevel. The mitre lies on the diagonal of the crossing, from corner to "
                "corner.",
                lambda piece: touching(piece).tenon.bevel / 2,
            ),
            Slip("That end is cut square, and two square ends stop each other sooner.", lambda piece: 0.0),
        ),
        hints=(
            "Where the two mortises cross there is a rectangle, as wide and as high as the tenons are thick. "
            "The ends lie on its diagonal.",
            "The long point is further in than the short one by the thickness of the other tenon. That is "
            "the offset; what thickness does the cut cross?",
        ),
        worked=_worked_bevel,
    ),
    Question(
        key="post-3",
        ask="How much of the post is left behind the long point of the end's tenon?",
        kind=LengthAnswer(),
        given=joint_shown,
        truth=lambda piece: touching(piece).walls.behind_tenon,
        slips=(
            Slip(
                "That is behind a square-ended tenon, or behind the short point. The long point goes "
                "further.",
                lambda piece: with_square_ends(piece).walls.behind_tenon,
            ),
            Slip(
                "That is the wood behind the side's tenon: you took the set-back of the end's own mortise.",
                lambda piece: touching(piece).walls.behind_other,
            ),
            Slip(
                "That is the wood inside the mortise, toward the room. Behind means beyond the tenon's end.",
                lambda piece: touching(piece).walls.inside_tenon,
            ),
            Slip(
                "That is the tenon's own length. What does it leave of the post?",
                lambda piece: touching(piece).tenon.reach,
            ),
        ),
        hints=(
            "What the tenon does not use of the post is behind it. How long is it to its long point?",
            "Post less reach. The answer is one of the sizes that are given; see whose it is.",
        ),
        worked=_worked_wall,
    ),
    Question(
        key="post-4",
        ask="The side's tenon came out two marks thinner. At what bevel, in degrees off square, is the "
        "side's tenon cut now?",
        kind=AngleAnswer(),
        given=_given_thinner,
        truth=lambda piece: with_thinner_side(piece).other_tenon.bevel,
        slips=(
            Slip(
                "That is the bevel of the end's tenon now. Its partner, the side's, is asked for.",
                lambda piece: with_thinner_side(piece).tenon.bevel,
            ),
            Slip(
                "So it would be had the board come out as planned. What is cut now must fit what is there "
                "now.",
                lambda piece: touching(piece).other_tenon.bevel,
            ),
            Slip(
                "45° is for tenons of the same thickness, not of the same set-back. These two differ.",
                lambda piece: _bevel(piece.joint.tenon_thickness, piece.joint.tenon_thickness),
            ),
        ),
        hints=(
            "The rectangle of the crossing is no longer the same both ways. Draw it, with its diagonal.",
            "The cut crosses the side's tenon, which is thin now; the offset is the thickness of the end's "
            "tenon.",
            "A thinner tenon takes the greater angle off square.",
        ),
        worked=_worked_partner,
    ),
    glue.QUESTION,
)
