"""The question of the ellipse page about a loop that is cut open and tied to the pins."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import TYPE_CHECKING

from woodmath.ellipse import Ellipse, string_derivation
from woodmath.questions.kinds import ChoiceAnswer
from woodmath.questions.notation import length_shown
from woodmath.questions.question import Question, Slip
from woodmath.questions.rocker_sizes import ellipse_of
from woodmath.questions.wording import in_words, put_in

if TYPE_CHECKING:
    from woodmath.piece import Piece

UNCHANGED, LARGER, SMALLER = "the same ellipse", "a longer and higher one", "a shorter and lower one"


def _drawn_by_tied_string(piece: Piece) -> Ellipse:
    """Return what all the loop's string draws when tied to the pins: as a loop longer by their spacing."""
    drawn = ellipse_of(piece)
    upright = drawn.half_height > drawn.half_length
    return Ellipse.from_pins(drawn.pin_spacing, drawn.loop + drawn.pin_spacing, upright=upright)


def _compared(piece: Piece) -> str:
    wanted, drawn = ellipse_of(piece), _drawn_by_tied_string(piece)
    if math.isclose(drawn.half_length, wanted.half_length):
        return UNCHANGED
    return LARGER if drawn.half_length > wanted.half_length else SMALLER


def _given_loop(piece: Piece) -> Mapping[str, str]:
    drawn, rule = ellipse_of(piece), piece.rule
    return {
        "pins": f"{length_shown(drawn.pin_spacing, rule)} apart",
        "loop": f"{length_shown(drawn.loop, rule)} once round",
    }


def _worked_tied(piece: Piece) -> str:
    wanted, drawn, rule = ellipse_of(piece), _drawn_by_tied_string(piece), piece.rule
    return "\n\n".join(
        (
            put_in(
                string_derivation(),
                "half_length",
                rule,
                loop=wanted.loop + wanted.pin_spacing,
                focus_distance=wanted.focus_distance,
            ),
            in_words(
                "A tied string has no stretch from pin to pin, so all of it serves the pencil, as in a "
                f"loop that is longer by {length_shown(wanted.pin_spacing, rule)}. Half-length "
                f"{length_shown(drawn.half_length, rule)} instead of "
                f"{length_shown(wanted.half_length, rule)}, half-height "
                f"{length_shown(drawn.half_height, rule)} instead of "
                f"{length_shown(wanted.half_height, rule)}."
            ),
        )
    )


QUESTION = Question(
    key="ellipse-5",
    ask="Someone cuts open the loop, ties its ends to the two pins, and draws. What comes of it?",
    kind=ChoiceAnswer((UNCHANGED, LARGER, SMALLER)),
    given=_given_loop,
    truth=_compared,
    slips=(
        Slip(
            "The loop had one stretch that lay from pin to pin and drew nothing. Where is that string now?",
            lambda piece: UNCHANGED,
        ),
        Slip(
            "No string was lost. The stretch that lay between the pins now serves the pencil too.",
            lambda piece: SMALLER,
        ),
    ),
    hints=(
        "With the loop, how much string is there for the two stretches to the pencil? And with the tied one?",
        "The tied string is 2a long for the ellipse that it draws. Compare that with the loop's 2a.",
    ),
    worked=_worked_tied,
)
