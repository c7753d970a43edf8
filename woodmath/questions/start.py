"""Questions of the start page: reading the rule, the piece's file and the drawing."""

from __future__ import annotations

import math
from collections.abc import Mapping
from fractions import Fraction
from typing import TYPE_CHECKING

from woodmath.piece_reading import kinds_of
from woodmath.piece_tables import Post
from woodmath.questions.kinds import ChoiceAnswer, LengthAnswer
from woodmath.questions.notation import length_shown
from woodmath.questions.question import Question, Slip
from woodmath.questions.wording import in_words, needed

if TYPE_CHECKING:
    from woodmath.piece import Piece
    from woodmath.piece_tables import End

_OVER_THE_POST = 2.7
"""Marks by which the measure of the first question is longer than the post: nearer to the third mark."""

SQUARE, LENGTH, SET_BACK, THICKNESS = "post.square", "post.length", "joint.set_back", "end.thickness"


def _measure(piece: Piece) -> float:
    """Return a length between two marks, to three decimals as it is shown."""
    return round(piece.post.square + _OVER_THE_POST * piece.rule.one_mark, 3)


def _end(piece: Piece) -> End:
    return needed(piece.end, "end", piece)


def _difference(piece: Piece) -> float:
    return abs(_end(piece).top - _end(piece).bottom)


def _given_measure(piece: Piece) -> Mapping[str, str]:
    rule = piece.rule
    return {
        "measure": f"{_measure(piece):g} {rule.unit_mark}",
        "one mark of the rule": f"{rule.mark(rule.one_mark, unit=True)}, which is {rule.one_mark:g}",
    }


def _given_file(piece: Piece) -> Mapping[str, str]:
    return {"corner post": f"{length_shown(piece.post.square, piece.rule)} thick both ways"}


def _given_end(piece: Piece) -> Mapping[str, str]:
    return {
        "end's width at the top": length_shown(_end(piece).top, piece.rule),
        "at the bottom": length_shown(_end(piece).bottom, piece.rule),
    }


def _digits_taken_for_marks(piece: Piece) -> float | None:
    """Return the length with its first decimal taken for so many marks; only where a rule has fractions."""
    if piece.rule.unit != "inch":
        return None
    whole = math.floor(_measure(piece))
    return whole + math.floor((_measure(piece) - whole) * 10) * piece.rule.one_mark


def _beyond(piece: Piece, marks: int) -> float:
    return piece.rule.length(math.floor(_measure(piece) / piece.rule.one_mark) + marks)


def _worked_measure(piece: Piece) -> str:
    rule, measure = piece.rule, _measure(piece)
    return in_words(
        f"Count in marks: {measure:g} divided by {rule.one_mark:g} is {measure / rule.one_mark:.2f} marks, "
        f"and the nearest whole number of them is {rule.marks(measure)}. That line of the rule reads "
        f"{rule.mark(measure, unit=True)}; {rule.mark(measure, remainder=True)}."
    )


def _worked_file(piece: Piece) -> str:
    return in_words(
        f"`square` in the table `[post]` is the {_meaning()}. In this file it says "
        f"{length_shown(piece.post.square, piece.rule)}."
    )


def _meaning() -> str:
    return kinds_of(Post)["square"].meaning


def _worked_end(piece: Piece) -> str:
    end, rule = _end(piece), piece.rule
    wider, narrower = max(end.top, end.bottom), min(end.top, end.bottom)
    widths = f"{length_shown(wider, rule)} less {length_shown(narrower, rule)}"
    told = f"{widths} is {length_shown(_difference(piece), rule)}. "
    if wider == narrower:
        return in_words(
            f"{told}The piece stands upright: its ends are no wider at the top than at the bottom."
        )
    return in_words(
        f"{told}Half of it, {length_shown(_difference(piece) / 2, rule)}, is on either side: "
        "so far does each edge lean."
    )


QUESTIONS = (
    Question(
        key="start-1",
        ask="Which mark of this rule lies nearest to the measure?",
        # The mark itself is asked for, and a tolerance of one mark would let its neighbours pass.
        kind=LengthAnswer(marks=Fraction(1, 4)),
        given=_given_measure,
        truth=lambda piece: piece.rule.nearest(_measure(piece)),
        slips=(
            Slip(
                "That is the mark before the measure. Look at what is left over: is it more than half a "
                "mark?",
                lambda piece: _beyond(piece, 0),
            ),
            Slip(
                "That mark is a whole one too far. Count again from the last full inch or centimetre.",
                lambda piece: _beyond(piece, 2),
            ),
            Slip(
                "That is the measure itself, and it falls between two lines. Name the line.",
                _measure,
            ),
            Slip(
                "You took the first decimal for so many marks. A tenth of an inch is more than a sixteenth: "
                "turn the decimals into marks first.",
                _digits_taken_for_marks,
            ),
        ),
        hints=(
            "How many marks is that? Divide the measure by one mark.",
            "Between two lines, take the nearer one; at just half a mark, take the longer.",
        ),
        worked=_worked_measure,
    ),
    Question(
        key="start-2",
        ask="Which line of the piece's file says how thick a corner post is: its table and its word?",
        kind=ChoiceAnswer((SQUARE, LENGTH, SET_BACK, THICKNESS)),
        given=_given_file,
        truth=lambda piece: SQUARE,
        slips=(
            Slip("That is how long the post is, from its foot to its top.", lambda piece: LENGTH),
            Slip(
                "That says where the mortise stands: how far its outer cheek is from the post's outer face.",
                lambda piece: SET_BACK,
            ),
            Slip(
                "That is the thickness of a board, the end's. Look in the post's own table.",
                lambda piece: THICKNESS,
            ),
        ),
        hints=(
            "A key is written as its table, a point, and its name. Which table is the post's?",
            "A post is as thick one way as the other. What do you call a section like that?",
        ),
        worked=_worked_file,
    ),
    Question(
        key="start-3",
        ask="By how much do the end's widths at top and bottom differ, both edges together?",
        kind=LengthAnswer(),
        given=_given_end,
        truth=_difference,
        slips=(
            Slip(
                "That is how far one edge leans out. The end has two edges.",
                lambda piece: _difference(piece) / 2,
            ),
            Slip(
                "You added the two widths. Take the one from the other.",
                lambda piece: _end(piece).top + _end(piece).bottom,
            ),
            Slip("That is the width at the top alone.", lambda piece: _end(piece).top),
            Slip("That is the width at the bottom alone.", lambda piece: _end(piece).bottom),
        ),
        hints=(
            "Read both widths, shoulder to shoulder, and take the smaller from the larger.",
            "Take the fractions to the same size first: a half is eight sixteenths.",
        ),
        worked=_worked_end,
    ),
)
