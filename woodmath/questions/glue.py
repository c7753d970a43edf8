"""The question of the post page about which tenons have more glue on them."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import TYPE_CHECKING

from woodmath.numbers_as_written import number_shown
from woodmath.post_joint import inner_cheek_derivation
from woodmath.questions.joint_sizes import joint_shown, others, tenon_width, touching, with_square_ends
from woodmath.questions.kinds import ChoiceAnswer
from woodmath.questions.notation import length_shown
from woodmath.questions.question import Question, Slip
from woodmath.questions.wording import in_words, put_in

if TYPE_CHECKING:
    from woodmath.piece import Piece

MITRED, SQUARE, SAME = "mitred", "square", "the same"


def _more_glue(piece: Piece) -> str:
    mitred, square = _glue(piece)
    if math.isclose(mitred, square):
        return SAME
    return MITRED if mitred > square else SQUARE


def _glue(piece: Piece) -> tuple[float, float]:
    width = tenon_width(piece)
    return touching(piece).glue_area(width), with_square_ends(piece).glue_area(width)


def _given_widths(piece: Piece) -> Mapping[str, str]:
    return {**joint_shown(piece), "both tenons": f"{length_shown(tenon_width(piece), piece.rule)} wide"}


def _worked_glue(piece: Piece) -> str:
    rule = piece.rule
    mitred, square = _glue(piece)
    longer = touching(piece).tenon.reach - with_square_ends(piece).tenon.reach
    return "\n\n".join(
        (
            put_in(
                inner_cheek_derivation(),
                "inner_cheek",
                rule,
                post=piece.post.square,
                other_set_back=others(piece)[1],
                other_thickness=others(piece)[0],
            ),
            in_words(
                "So long is the square-ended tenon, and the inner cheek of the mitred one. The mitred "
                f"one's outer cheek is longer by {length_shown(longer, rule)}, the thickness of the other "
                "tenon, and that cheek lies on wood to its very end. Only the wood that the two mortises "
                "leave is counted; the glue line where the ends meet is end grain, and counts for nothing."
            ),
            in_words(
                f"Both tenons together, {length_shown(tenon_width(piece), rule)} wide: mitred "
                f"{number_shown(mitred)} square {_unit_words(piece)}, square-ended {number_shown(square)}."
            ),
        )
    )


def _unit_words(piece: Piece) -> str:
    return "inches" if piece.rule.unit == "inch" else "millimetres"


QUESTION = Question(
    key="post-5",
    ask="Which pair of tenons has more glue on cheeks with wood behind them, the mitred or the "
    "square-ended one?",
    kind=ChoiceAnswer((MITRED, SQUARE, SAME)),
    given=_given_widths,
    truth=_more_glue,
    slips=(
        Slip(
            "Square ends stop at the inner cheek of the other mortise. Which cheek of a mitred tenon "
            "goes on past that line, and does it lie on wood there?",
            lambda piece: SQUARE,
        ),
        Slip(
            "The inner cheeks are alike in both. Look at the outer cheeks: how long is each, and what "
            "lies beside it?",
            lambda piece: SAME,
        ),
    ),
    hints=(
        "Each tenon has two cheeks: measure along each of the four how much lies against wood.",
        "The joint can count for you: piece.post_joint().glue_area(tenon_width), once for each kind of end.",
    ),
    worked=_worked_glue,
)
