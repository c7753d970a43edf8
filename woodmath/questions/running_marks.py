"""The question of the scaling page about equal parts laid end to end."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import TYPE_CHECKING

from woodmath.numbers_as_written import number_shown
from woodmath.questions.kinds import LengthAnswer
from woodmath.questions.notation import length_shown
from woodmath.questions.question import Question, Slip
from woodmath.questions.wording import in_words, needed, put_in
from woodmath.running_marks import drift_derivation, rounded_alone
from woodmath.scaling import scaled

if TYPE_CHECKING:
    from woodmath.piece import Piece

PARTS = 7


def question(key: str, scale: Fraction) -> Question:
    """Return the question, for a piece that is made at some scale.

    Parameters
    ----------
    key : str
        Of the question.
    scale : Fraction
        That the piece is made at.

    >>> question("scale-4", Fraction(5, 3)).key
    'scale-4'
    """

    def part(piece: Piece) -> float:
        return scaled(needed(piece.side, "side", piece).length, scale) / PARTS

    def drift(piece: Piece) -> float:
        return abs(rounded_alone([part(piece)] * PARTS, piece.rule).errors[-1])

    def one_part(piece: Piece) -> float:
        return abs(rounded_alone([part(piece)], piece.rule).errors[-1])

    def at_most(piece: Piece) -> float:
        return drift_derivation().function("drift")(count=PARTS, mark=piece.rule.one_mark)

    def given(piece: Piece) -> Mapping[str, str]:
        rule = piece.rule
        whole = scaled(needed(piece.side, "side", piece).length, scale)
        return {
            "scaled side": length_shown(whole, rule),
            "equal parts": f"{PARTS}, each {length_shown(part(piece), rule)} long",
            "rule": f"marks {rule.mark(rule.one_mark, unit=True)} apart",
        }

    def worked(piece: Piece) -> str:
        rule = piece.rule
        return "\n\n".join(
            (
                in_words(
                    f"Each part of {length_shown(part(piece), rule)} is marked as "
                    f"{rule.mark(part(piece), unit=True)}, which is {number_shown(one_part(piece), 4)} out. "
                    f"Times {PARTS} that is {number_shown(drift(piece), 4)} {rule.unit_mark}."
                ),
                "At worst it could have been",
                put_in(drift_derivation(), "drift", rule, count=PARTS, mark=rule.one_mark),
                "Mark the running sums from one end, and every line is within half a mark of its place.",
            )
        )

    return Question(
        key=key,
        ask="The larger side is set out in seven equal parts. You round the part to your rule, and step it off "
        "seven times. How far from its true place does the last line stand, within a quarter of a mark?",
        kind=LengthAnswer(Fraction(1, 4)),
        given=given,
        truth=drift,
        slips=(
            Slip(
                "So far it could be at worst, if each part lay just between two marks. How far is this one from "
                "its mark?",
                at_most,
            ),
            Slip(
                "That is what one part is out by. The second begins where the first has ended.",
                one_part,
            ),
            Slip(
                "The parts add up to the side only while they are exact. Add up what you marked.",
                lambda piece: 0.0,
            ),
        ),
        hints=(
            "Which mark is nearest to one part, and how far is it from the part?",
            "Every part pushes those behind it by the same amount, in the same direction.",
        ),
        worked=worked,
    )
