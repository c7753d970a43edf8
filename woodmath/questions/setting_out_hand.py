"""The question of the page on setting out about the hand of a post, and where its mortises look."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from woodmath import setting_out
from woodmath.hands_of_posts import FACE_SIDE, LEFT, RIGHT
from woodmath.questions.kinds import ChoiceAnswer
from woodmath.questions.notation import length_shown
from woodmath.questions.question import Question, Slip
from woodmath.questions.wording import in_words, put_in

if TYPE_CHECKING:
    from woodmath.piece import Piece
    from woodmath.setting_out import CornerPost

TO_THE_RIGHT, TO_THE_LEFT, AWAY = "to the right", "to the left", "away from you"


def _side_of_the_ends_mortises(post: CornerPost) -> str:
    """Return where the end's mortises look when the post stands with its face side toward you."""
    names = [face.name for face in post.faces]
    turn = (names.index(post.mortised[0].name) - names.index(FACE_SIDE)) % len(names)
    return (TO_THE_RIGHT, AWAY, TO_THE_LEFT)[turn - 1]


def _given_hand(piece: Piece) -> Mapping[str, str]:
    rule, joint = piece.rule, piece.joint
    return {
        "post": "a left hand",
        "toward you": "its face side",
        "end's mortise": f"{length_shown(joint.set_back, rule)} from the face side, "
        f"{length_shown(joint.tenon_thickness, rule)} wide",
    }


def _worked_hand(piece: Piece) -> str:
    joint = piece.joint
    return "\n\n".join(
        (
            "Facing an end from outside you look at the face sides of its two posts, and the end stands between "
            "them. A left hand has it on its right, and the mortises with it. Gauge them from the arris with the "
            "face side:",
            put_in(
                setting_out.pins_derivation(),
                "inner_pin",
                piece.rule,
                set_back=joint.set_back,
                thickness=joint.tenon_thickness,
            ),
            in_words(
                f"So they lie between {length_shown(joint.set_back, piece.rule)} and that, off the face side."
            ),
        )
    )


QUESTION = Question(
    key="lines-5",
    ask="A left-hand post stands before you, its foot down and its face side toward you. Where do the end's "
    "mortises look: to the right, to the left, or away from you?",
    kind=ChoiceAnswer((TO_THE_RIGHT, TO_THE_LEFT, AWAY)),
    given=_given_hand,
    truth=lambda piece: _side_of_the_ends_mortises(setting_out.post_of_hand(LEFT)),
    slips=(
        Slip(
            "So it is on a post of the other hand. Stand outside, face an end, and look at the post on your "
            "left: where is the end?",
            lambda piece: _side_of_the_ends_mortises(setting_out.post_of_hand(RIGHT)),
        ),
        Slip(
            "Opposite the face side are the mortises of the side board. The end is in one plane with the face "
            "side, and meets the post from beside.",
            lambda piece: AWAY,
        ),
    ),
    hints=(
        "The face side is the outer face in the plane of the end. Walk round the case until you stand before "
        "it.",
        "You face the end from outside, and this is the post on your left. The end stands between it and the "
        "other one.",
    ),
    worked=_worked_hand,
)
