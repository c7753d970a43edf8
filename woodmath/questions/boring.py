"""Questions of the page on boring to depth by the count of turns."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import TYPE_CHECKING

from woodmath.boring import AugerBit, CountedFrom, derivation
from woodmath.numbers_as_written import number_shown
from woodmath.questions import row_of_holes, trial_holes
from woodmath.questions.joint_sizes import touching
from woodmath.questions.kinds import ChoiceAnswer, NumberAnswer
from woodmath.questions.notation import length_shown
from woodmath.questions.question import Question, Slip
from woodmath.questions.wording import in_words, put_in

if TYPE_CHECKING:
    from woodmath.piece import Piece

INSIDE, LEVEL, THROUGH = "inside the wood", "level with the far face", "through the far face"
_QUARTER_TURN = Fraction(1, 4)


def _bit(piece: Piece) -> AugerBit:
    return piece.auger_bit()


def _depth(piece: Piece) -> float:
    """Return the depth of the end's mortise, which is bored first: where the long point would touch."""
    return touching(piece).tenon.reach


def _turns(piece: Piece, counted_from: CountedFrom) -> float:
    return _bit(piece).turns(_depth(piece), counted_from)


def _where_the_point_is(piece: Piece) -> str:
    left = piece.post.square - _bit(piece).point_depth(_depth(piece))
    if abs(left) < piece.rule.one_mark / 2:
        return LEVEL
    return INSIDE if left > 0 else THROUGH


def _given_bit(piece: Piece) -> Mapping[str, str]:
    bit, rule = _bit(piece), piece.rule
    threads, starts = piece.bit.threads_per_inch, piece.bit.starts
    wound = "a single thread" if starts == 1 else f"{starts} threads side by side"
    screw = "" if threads is None else f" ({wound}, {threads:g} to the inch)"
    return {
        "depth of the end's mortise": length_shown(_depth(piece), rule),
        "lead": f"{length_shown(bit.lead, rule)} a turn{screw}",
        "screw's point": f"{length_shown(bit.point_length, rule)} ahead of the lips",
    }


def _given_through(piece: Piece) -> Mapping[str, str]:
    return {"post": length_shown(piece.post.square, piece.rule), **_given_bit(piece)}


def _worked_turns(piece: Piece, ahead: float) -> str:
    return put_in(
        derivation(), "turns", piece.rule, depth=_depth(piece), lead=_bit(piece).lead, point_length=ahead
    )


def _worked_from_lips(piece: Piece) -> str:
    return "\n\n".join(
        (
            _worked_turns(piece, 0.0),
            "Counted from the lips, the screw's point is in the wood already when the count begins: p is 0. "
            "Every turn then makes a whole lead of hole.",
            "The side's mortise comes second: bore it only as far as the first one. Where it opens into that, "
            "the screw finds no wood and pulls no further.",
        )
    )


def _worked_from_screw(piece: Piece) -> str:
    before = _bit(piece).turns(0, "screw")
    return "\n\n".join(
        (
            _worked_turns(piece, _bit(piece).point_length),
            f"The first {number_shown(before)} turns only bring the lips to the face. Whoever counts them "
            "as depth stops that much too soon.",
        )
    )


def _worked_point(piece: Piece) -> str:
    rule, point = piece.rule, _bit(piece).point_depth(_depth(piece))
    left = piece.post.square - point
    told = {
        INSIDE: f"{length_shown(abs(left), rule)} of wood is left before it",
        LEVEL: "it pricks the face",
        THROUGH: f"it stands out by {length_shown(abs(left), rule)}",
    }[_where_the_point_is(piece)]
    until = _bit(piece).turns_until_through(piece.post.square)
    return "\n\n".join(
        (
            put_in(
                derivation(), "turns", rule, depth=piece.post.square, lead=_bit(piece).lead, point_length=0.0
            ),
            in_words(
                f"So the point comes through after {number_shown(until)} turns from its first bite, however "
                f"long it is. The mortise needs {number_shown(_turns(piece, 'screw'))}. The point is then "
                f"at {length_shown(_depth(piece), rule)} and "
                f"{length_shown(_bit(piece).point_length, rule)}, together {length_shown(point, rule)}, and "
                f"the post is {length_shown(piece.post.square, rule)}: {told}."
            ),
        )
    )


QUESTIONS = (
    Question(
        key="boring-1",
        ask="How many turns bring the end's mortise, bored first, to depth, if you count from when the lips "
        "touch the face?",
        kind=NumberAnswer("turns", _QUARTER_TURN),
        given=_given_bit,
        truth=lambda piece: _turns(piece, "lips"),
        slips=(
            Slip(
                "That count begins at the screw's first bite. Here you begin when the lips touch.",
                lambda piece: _turns(piece, "screw"),
            ),
            Slip(
                "You took the screw's point off the depth. From the lips, the whole depth is still to be "
                "bored.",
                lambda piece: _bit(piece).turns(_depth(piece) - _bit(piece).point_length, "lips"),
            ),
            Slip(
                "You multiplied by the lead. How many leads go into the depth?",
                lambda piece: _depth(piece) * _bit(piece).lead,
            ),
            Slip(
                "That bores through the whole post. The mortise stops at its depth.",
                lambda piece: _bit(piece).turns_until_through(piece.post.square),
            ),
        ),
        hints=(
            "One turn takes the bit in by one lead. How many leads make the depth?",
            "Divide the depth by the lead. With threads to the inch and a single thread, that is depth in "
            "inches times threads.",
        ),
        worked=_worked_from_lips,
    ),
    Question(
        key="boring-2",
        ask="And how many turns for that first mortise, if you count from the first bite of the screw's "
        "point?",
        kind=NumberAnswer("turns", _QUARTER_TURN),
        given=_given_bit,
        truth=lambda piece: _turns(piece, "screw"),
        slips=(
            Slip(
                "That counts from the lips. Counted from the first bite, some turns are gone before the "
                "lips arrive.",
                lambda piece: _turns(piece, "lips"),
            ),
            Slip(
                "You took the screw's point off, and it has to go in before the lips do.",
                lambda piece: _bit(piece).turns(_depth(piece) - _bit(piece).point_length, "lips"),
            ),
            Slip(
                "Those are the turns that bring the lips to the face. The hole is still to come.",
                lambda piece: _bit(piece).turns(0, "screw"),
            ),
            Slip(
                "By then the point is through the far face.",
                lambda piece: _bit(piece).turns_until_through(piece.post.square),
            ),
        ),
        hints=(
            "How far has the tip of the screw gone when the hole is deep enough at its full width?",
            "The tip is ahead of the lips by the point's length: add it to the depth, then divide by the "
            "lead.",
        ),
        worked=_worked_from_screw,
    ),
    Question(
        key="boring-3",
        ask="When the end's mortise is bored to its depth, where in the post is the tip of the screw?",
        kind=ChoiceAnswer((INSIDE, LEVEL, THROUGH)),
        given=_given_through,
        truth=_where_the_point_is,
        slips=(
            Slip(
                "Add the point's length to the depth once, and see whether the sum is more than the post.",
                lambda piece: THROUGH,
            ),
            Slip(
                "Level it would be if depth and point together made just the post. Do they?",
                lambda piece: LEVEL,
            ),
            Slip(
                "The hole stops inside, but the tip runs ahead of it. Add the point's length to the depth.",
                lambda piece: INSIDE,
            ),
        ),
        hints=(
            "The tip is ahead of the hole's bottom by the length of the point.",
            "Compare depth and point together with the post.",
        ),
        worked=_worked_point,
    ),
    row_of_holes.QUESTION,
    trial_holes.QUESTION,
)
