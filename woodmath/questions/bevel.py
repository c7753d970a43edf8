"""Questions of the page on striking a bevel from two distances."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import TYPE_CHECKING

from woodmath import bevel
from woodmath.post_joint import meeting_face_derivation
from woodmath.questions.kinds import AngleAnswer, ChoiceAnswer, LengthAnswer
from woodmath.questions.notation import length_shown
from woodmath.questions.question import Question, Slip
from woodmath.questions.wording import in_words, needed, on_the_rule, put_in

if TYPE_CHECKING:
    from woodmath.derivation import Sensitivity
    from woodmath.piece import Piece

SHALLOW = 30.0
"""Degrees off square, for the questions about a bevel that is not 45."""

OFFSET, THICKNESS, ALIKE = "offset", "thickness", "both alike"


def _tenon(piece: Piece) -> float:
    return piece.joint.tenon_thickness


def _board(piece: Piece) -> float:
    return needed(piece.side, "side", piece).thickness


def _sensitivity(piece: Piece) -> Sensitivity:
    """What half a mark in each distance does to the shallow bevel across the side board."""
    half_a_mark = piece.rule.one_mark / 2
    return bevel.derivation().sensitivity(
        {"offset": bevel.offset_for(SHALLOW, _board(piece)), "thickness": _board(piece)},
        {"offset": half_a_mark, "thickness": half_a_mark},
    )


def _matters_most(piece: Piece) -> str:
    return _sensitivity(piece).matters_most or ALIKE


def _one_mark_over(piece: Piece) -> float:
    return bevel.bevel_angle(_tenon(piece) + piece.rule.one_mark, _tenon(piece))


def _given_tenon(piece: Piece) -> Mapping[str, str]:
    return {
        "end's tenon": f"{length_shown(_tenon(piece), piece.rule)} thick",
        "set back": length_shown(piece.joint.set_back, piece.rule),
        "bevel wanted": "45°",
    }


def _given_board(piece: Piece) -> Mapping[str, str]:
    return {
        "side board": f"{length_shown(_board(piece), piece.rule)} thick",
        "bevel wanted": f"{SHALLOW:.0f}° off square",
    }


def _given_errors(piece: Piece) -> Mapping[str, str]:
    return {
        **_given_board(piece),
        "each distance out by": f"half a mark, {piece.rule.one_mark / 2:g} {piece.rule.unit_mark}",
    }


def _given_slip_of_the_gauge(piece: Piece) -> Mapping[str, str]:
    return {
        **_given_tenon(piece),
        "gauge set": f"one mark too wide, {length_shown(_tenon(piece) + piece.rule.one_mark, piece.rule)}",
    }


def _worked_equal(piece: Piece) -> str:
    offset = bevel.offset_for(45, _tenon(piece))
    return "\n\n".join(
        (
            put_in(bevel.derivation(), "offset", piece.rule, angle=45, thickness=_tenon(piece)),
            on_the_rule(offset, piece.rule),
            "The tangent of 45° is 1, so the offset is the thickness itself: set the gauge to the tenon, "
            "not to the rule, and no number is needed at all.",
        )
    )


def _worked_shallow(piece: Piece) -> str:
    offset = bevel.offset_for(SHALLOW, _board(piece))
    return "\n\n".join(
        (
            put_in(bevel.derivation(), "offset", piece.rule, angle=SHALLOW, thickness=_board(piece)),
            on_the_rule(offset, piece.rule),
        )
    )


def _worked_matters(piece: Piece) -> str:
    told = _sensitivity(piece)
    moved = "; ".join(
        f"half a mark in the {part.name} turns the bevel by {part.effect:.2f}°" for part in told.contributions
    )
    return "\n\n".join(
        (
            put_in(
                bevel.derivation(),
                "angle",
                piece.rule,
                offset=bevel.offset_for(SHALLOW, _board(piece)),
                thickness=_board(piece),
            ),
            f"Differentiated and with half a mark put in: {moved}.",
            "The shorter of the two distances matters more: half a mark is a larger share of it. "
            "At 45° both are equally long, and both matter alike.",
        )
    )


def _worked_one_mark_over(piece: Piece) -> str:
    wide = _tenon(piece) + piece.rule.one_mark
    out = bevel.angle_error(_tenon(piece), _tenon(piece), offset_error=piece.rule.one_mark)
    return "\n\n".join(
        (
            put_in(bevel.derivation(), "angle", piece.rule, offset=wide, thickness=_tenon(piece)),
            in_words(
                f"That is {_one_mark_over(piece) - 45:.2f}° more than 45°. One mark too narrow would be "
                f"{out:.2f}° less: not quite the same, because the tangent does not grow evenly."
            ),
        )
    )


QUESTIONS = (
    Question(
        key="bevel-1",
        ask="How far from the square end, along the cheek, do you gauge the line, so that the cut across the end's "
        "tenon lies at 45°?",
        kind=LengthAnswer(),
        given=_given_tenon,
        truth=lambda piece: bevel.offset_for(45, _tenon(piece)),
        slips=(
            Slip(
                "You measured along the slanting cut. The offset lies along the cheek, one of the two short "
                "sides of the triangle.",
                lambda piece: meeting_face_derivation().function("meeting_face")(
                    tenon_thickness=_tenon(piece), other_thickness=_tenon(piece)
                ),
            ),
            Slip(
                "45 is half of 90, but the offset is not half of anything. Look at the triangle again: "
                "which two of its sides are equal at 45°?",
                lambda piece: bevel.offset_for(45, _tenon(piece) / 2),
            ),
            Slip(
                "That is the set-back. Where the mortise stands has no part in how the tenon's end is cut.",
                lambda piece: piece.joint.set_back,
            ),
            Slip(
                "That is the thickness of the board. The saw crosses the tenon here, which is thinner.",
                lambda piece: bevel.offset_for(45, needed(piece.end, "end", piece).thickness),
            ),
        ),
        hints=(
            "Draw the triangle: the square line across the tenon, the offset along its cheek, the cut from "
            "one to the other. What do you know of a right triangle with 45° in it?",
            "The tangent of the bevel is the offset over the thickness, and the tangent of 45° is a very "
            "plain number.",
        ),
        worked=_worked_equal,
    ),
    Question(
        key="bevel-2",
        ask="What offset strikes 30° off square across the edge of the side board?",
        kind=LengthAnswer(),
        given=_given_board,
        truth=lambda piece: bevel.offset_for(SHALLOW, _board(piece)),
        slips=(
            Slip(
                "That would strike 60° off square: you counted the degrees from the face and not from the "
                "square line.",
                lambda piece: bevel.offset_for(90 - SHALLOW, _board(piece)),
            ),
            Slip(
                "You took 30 forty-fifths of the thickness. The angle does not grow evenly with the offset; "
                "its tangent does.",
                lambda piece: bevel.offset_for(45, _board(piece)) * SHALLOW / 45,
            ),
            Slip(
                "You used the sine. It belongs to the slanting cut, and the thickness is not the cut but "
                "the square line.",
                lambda piece: _board(piece) * math.sin(math.radians(SHALLOW)),
            ),
            Slip(
                "That strikes 45°. For 30° the line lies nearer to the square line.",
                lambda piece: bevel.offset_for(45, _board(piece)),
            ),
        ),
        hints=(
            "At 45° the offset is the whole thickness, and at 0° nothing. For 30° it lies between.",
            "Tangent of the bevel is offset over thickness: so the offset is the thickness times a tangent.",
            "The tangent of 30° is a little under six tenths. Is your calculator set to degrees?",
        ),
        worked=_worked_shallow,
    ),
    Question(
        key="bevel-3",
        ask="Offset and thickness may each be out by half a mark. Which of the two turns the 30° bevel "
        "further?",
        kind=ChoiceAnswer((OFFSET, THICKNESS, ALIKE)),
        given=_given_errors,
        truth=_matters_most,
        slips=(
            Slip(
                "Half a mark is half a mark, but it is not the same share of a short distance as of a long "
                "one. Which of the two is the shorter here?",
                lambda piece: THICKNESS,
            ),
            Slip(
                "So it is at 45°, where both distances are equally long. Are they here?",
                lambda piece: ALIKE,
            ),
        ),
        hints=(
            "Ask the derivation: its sensitivity takes the two distances and the two errors.",
            "Work the angle out twice more, once with each distance half a mark longer, and see which "
            "moves further.",
        ),
        worked=_worked_matters,
    ),
    Question(
        key="bevel-4",
        ask="You meant 45°, but the gauge stood one mark too wide. What bevel, in degrees off square, did "
        "you strike?",
        kind=AngleAnswer(),
        given=_given_slip_of_the_gauge,
        truth=_one_mark_over,
        slips=(
            Slip(
                "That is what you meant to strike. The gauge stood wider than the tenon is thick.",
                lambda piece: bevel.bevel_angle(_tenon(piece), _tenon(piece)),
            ),
            Slip(
                "That is how far the bevel is out. The question is where it ended up.",
                lambda piece: _one_mark_over(piece) - bevel.bevel_angle(_tenon(piece), _tenon(piece)),
            ),
            Slip(
                "You let the angle grow in step with the offset. Its tangent does; the angle lags behind.",
                lambda piece: 45 * (_tenon(piece) + piece.rule.one_mark) / _tenon(piece),
            ),
            Slip(
                "That is the bevel of a gauge set one mark too narrow. Here it stood too wide.",
                lambda piece: bevel.bevel_angle(_tenon(piece) - piece.rule.one_mark, _tenon(piece)),
            ),
        ),
        hints=(
            "Only one of the two distances has changed. Divide the one by the other again.",
            "Offset over thickness is now a little more than 1, and the bevel is the angle with that "
            "tangent.",
        ),
        worked=_worked_one_mark_over,
    ),
)
