"""The question of the scaling page about a size that is measured off a printed drawing."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from woodmath.plate_scale import bench_derivation, plate_derivation, plate_scale
from woodmath.questions.kinds import LengthAnswer
from woodmath.questions.notation import length_shown
from woodmath.questions.question import Question, Slip
from woodmath.questions.wording import needed, on_the_rule, put_in

if TYPE_CHECKING:
    from woodmath.piece import Piece

PRINTED_AT = 0.23
"""Size of the drawing on its page: no scale that anybody would guess."""


def _known(piece: Piece) -> float:
    return needed(piece.side, "side", piece).length


def _known_on_the_page(piece: Piece) -> float:
    return piece.rule.nearest(PRINTED_AT * _known(piece))


def _on_the_page(piece: Piece) -> float:
    return piece.rule.nearest(PRINTED_AT * needed(piece.end, "end", piece).height)


def _size(piece: Piece) -> float:
    return plate_scale(_known(piece), _known_on_the_page(piece)).bench_size(_on_the_page(piece)).size


def _given(piece: Piece) -> Mapping[str, str]:
    rule = piece.rule
    return {
        "side, as the drawing says": length_shown(_known(piece), rule),
        "side, measured on the page": length_shown(_known_on_the_page(piece), rule),
        "end's height, measured on the page": length_shown(_on_the_page(piece), rule),
    }


def _worked(piece: Piece) -> str:
    rule, known = piece.rule, _known(piece)
    scale = plate_derivation().function("plate_scale")(known_length=known, measured=_known_on_the_page(piece))
    return "\n\n".join(
        (
            put_in(
                plate_derivation(),
                "plate_scale",
                rule,
                known_length=known,
                measured=_known_on_the_page(piece),
            ),
            put_in(bench_derivation(), "bench_size", rule, plate_scale=scale, measured=_on_the_page(piece)),
            on_the_rule(_size(piece), rule),
            "The drawing was measured to a mark, so this is not yet the size that its maker meant. Measure the "
            "longest length that the drawing gives, and the share that a mark can spoil is smallest.",
        )
    )


def question(key: str) -> Question:
    """Return the question.

    Parameters
    ----------
    key : str
        Of the question.

    >>> question("scale-5").kind.accepts.__name__
    'accepts'
    """
    return Question(
        key=key,
        ask="A printed plate gives one length only. How high is the end at the bench?",
        kind=LengthAnswer(),
        given=_given,
        truth=_size,
        slips=(
            Slip(
                "You went from the bench to the page once more. Which of the two is larger, and which way are "
                "you going?",
                lambda piece: (
                    plate_scale(_known_on_the_page(piece), _known(piece)).bench_size(_on_the_page(piece)).size
                ),
            ),
            Slip(
                "The ratio stands on its head: the end cannot be so much higher than the side is long.",
                lambda piece: (
                    plate_scale(_known(piece), _on_the_page(piece)).bench_size(_known_on_the_page(piece)).size
                ),
            ),
            Slip(
                "You added what the side is longer at the bench. To scale is to multiply: a short length gains "
                "less than a long one.",
                lambda piece: _on_the_page(piece) + _known(piece) - _known_on_the_page(piece),
            ),
        ),
        hints=(
            "The side is given and measured: how many times as long is it at the bench as on the page?",
            "The height is larger by the same number of times.",
        ),
        worked=_worked,
    )
