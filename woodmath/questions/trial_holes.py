"""The question of the boring page about the lead that trial holes tell."""

from __future__ import annotations

import math
from collections.abc import Mapping
from fractions import Fraction
from typing import TYPE_CHECKING

from woodmath.boring import LeadFit, derivation, fit_lead
from woodmath.questions.kinds import LengthAnswer
from woodmath.questions.notation import length_shown
from woodmath.questions.question import Question, Slip
from woodmath.questions.wording import in_words, put_in

if TYPE_CHECKING:
    from woodmath.piece import Piece

_TRIAL_HOLES, _TURNS_BETWEEN = 4, 4
_TWENTIETH_OF_A_MARK = Fraction(1, 20)


def _trial(piece: Piece) -> tuple[tuple[int, ...], tuple[float, ...]]:
    """Return turns and depths of trial holes as a maker would read them, to the nearest mark of the rule."""
    bit = piece.auger_bit()
    first = math.ceil(bit.turns(0, "screw")) + _TURNS_BETWEEN
    turns = tuple(first + _TURNS_BETWEEN * hole for hole in range(_TRIAL_HOLES))
    return turns, tuple(piece.rule.nearest(bit.depth(count, "screw")) for count in turns)


def _fit(piece: Piece) -> LeadFit:
    return fit_lead(*_trial(piece))


def _through_nothing(piece: Piece) -> float:
    """Return the lead of a line that is forced to begin at no turns and no depth."""
    turns, depths = _trial(piece)
    return math.fsum(count * deep for count, deep in zip(turns, depths, strict=True)) / math.fsum(
        count**2 for count in turns
    )


def _from_one_hole(piece: Piece, hole: int) -> float:
    turns, depths = _trial(piece)
    return derivation().function("lead")(turns=turns[hole], depth=depths[hole], point_length=0)


def _given_trial(piece: Piece) -> Mapping[str, str]:
    turns, depths = _trial(piece)
    return {
        f"after {count} turns": f"{length_shown(deep, piece.rule)} deep"
        for count, deep in zip(turns, depths, strict=True)
    }


def _worked_lead(piece: Piece) -> str:
    turns, depths = _trial(piece)
    fit, rule = _fit(piece), piece.rule
    return "\n\n".join(
        (
            in_words(
                f"From the first hole to the last the bit was turned {turns[-1] - turns[0]} times more and "
                f"went {length_shown(depths[-1] - depths[0], rule)} deeper. Between two holes the screw's "
                "point plays no part:"
            ),
            put_in(
                derivation(),
                "lead",
                rule,
                turns=turns[-1] - turns[0],
                depth=depths[-1] - depths[0],
                point_length=0.0,
            ),
            in_words(
                f"The straight line that fits all {len(turns)} holes best gives "
                f"{length_shown(fit.lead, rule)} a turn, to within {length_shown(fit.lead_error, rule)} or "
                f"so. It begins {length_shown(fit.point_length, rule)} below nothing: that is the screw's "
                "point, found without measuring it."
            ),
        )
    )


QUESTION = Question(
    key="boring-5",
    ask="You bored these trial holes, counting from the first bite. How far does one turn take the bit, "
    "within a twentieth of a mark?",
    kind=LengthAnswer(_TWENTIETH_OF_A_MARK),
    given=_given_trial,
    truth=lambda piece: _fit(piece).lead,
    slips=(
        Slip(
            "You divided a depth by its turns. The first turns made no hole, they only brought the lips to "
            "the face: look at how much deeper one hole is than another.",
            lambda piece: _from_one_hole(piece, -1),
        ),
        Slip(
            "You divided a depth by its turns. The first turns made no hole, they only brought the lips to "
            "the face: look at how much deeper one hole is than another.",
            lambda piece: _from_one_hole(piece, 0),
        ),
        Slip(
            "You drew the line through no turns and no depth. The holes do not begin there: let the line "
            "begin where it will.",
            _through_nothing,
        ),
        Slip(
            "That is how many turns go to one inch or millimetre. The lead is the length that goes to one "
            "turn.",
            lambda piece: 1 / _fit(piece).lead,
        ),
    ),
    hints=(
        "From one hole to the next: how many turns more, and how much deeper?",
        "Take the two holes that lie furthest apart, and divide the difference of depth by that of turns; "
        "or let boring.fit_lead draw the line through all of them.",
    ),
    worked=_worked_lead,
)
