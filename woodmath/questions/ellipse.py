"""Questions of the page on the rocker's ellipse, its pins and its string."""

from __future__ import annotations

import functools
import math
from collections.abc import Mapping
from dataclasses import replace
from typing import TYPE_CHECKING

from woodmath.derivation import Derivation
from woodmath.ellipse import (
    bottom_radius_derivation,
    focus_derivation,
    height_derivation,
    string_derivation,
)
from woodmath.questions import tied_string
from woodmath.questions.kinds import LengthAnswer
from woodmath.questions.notation import length_shown
from woodmath.questions.question import Question, Slip
from woodmath.questions.rocker_sizes import ellipse_of, rocker_of
from woodmath.questions.wording import in_words, on_the_rule, put_in

if TYPE_CHECKING:
    from woodmath.piece import Piece


def _half_way(piece: Piece) -> float:
    """Return the place half way from the rocker's middle to its heel."""
    return rocker_of(piece).length / 4


@functools.cache
def _circle_on_the_floor() -> Derivation:
    """Return what the derivation of the bottom's roundness begins with: any circle that stands on the floor."""
    whole = bottom_radius_derivation()
    return replace(whole, steps=whole.steps[:1])


def _circle_through_the_heels(piece: Piece) -> float:
    """Return the radius of the circle through both heels and the lowest point."""
    rocker = rocker_of(piece)
    return _circle_on_the_floor().function("radius")(across=rocker.length / 2, height=rocker.rise)


def _given_halves(piece: Piece) -> Mapping[str, str]:
    drawn, rule = ellipse_of(piece), piece.rule
    return {
        "half-length a": length_shown(drawn.half_length, rule),
        "half-height b": length_shown(drawn.half_height, rule),
    }


def _given_place(piece: Piece) -> Mapping[str, str]:
    rule = piece.rule
    return {
        **_given_halves(piece),
        "rocker": f"{length_shown(rocker_of(piece).length, rule)} from heel to heel",
        "half way": f"{length_shown(_half_way(piece), rule)} from the middle",
    }


def _long_and_short(piece: Piece) -> dict[str, float]:
    halves = sorted((ellipse_of(piece).half_length, ellipse_of(piece).half_height))
    return {"half_length": halves[1], "half_height": halves[0]}


def _halves(piece: Piece) -> dict[str, float]:
    return {"half_length": ellipse_of(piece).half_length, "half_height": ellipse_of(piece).half_height}


def _worked_pins(piece: Piece) -> str:
    spacing = ellipse_of(piece).pin_spacing
    return "\n\n".join(
        (
            put_in(focus_derivation(), "focus_distance", piece.rule, **_long_and_short(piece)),
            in_words(
                "So far is each pin from the centre; the two are twice as far apart, "
                f"{length_shown(spacing, piece.rule)}."
            ),
            on_the_rule(spacing, piece.rule),
        )
    )


def _worked_loop(piece: Piece) -> str:
    drawn, rule = ellipse_of(piece), piece.rule
    return "\n\n".join(
        (
            put_in(
                string_derivation(),
                "loop",
                rule,
                half_length=_long_and_short(piece)["half_length"],
                focus_distance=drawn.focus_distance,
            ),
            on_the_rule(drawn.loop, rule),
            in_words(
                f"Tied to the pins the string would be {length_shown(drawn.tied_string, rule)} between the "
                "knots; round both pins it is longer by the way from one to the other. Thick pins add once "
                "round one of them."
            ),
        )
    )


def _worked_radius(piece: Piece) -> str:
    return "\n\n".join(
        (
            put_in(bottom_radius_derivation(), "radius", piece.rule, **_halves(piece)),
            on_the_rule(ellipse_of(piece).radius_at_bottom, piece.rule),
        )
    )


def _worked_rise(piece: Piece) -> str:
    half_way = _half_way(piece)
    rise = ellipse_of(piece).height_at(half_way)
    return "\n\n".join(
        (
            put_in(height_derivation(), "height", piece.rule, across=half_way, **_halves(piece)),
            on_the_rule(rise, piece.rule),
            in_words(
                f"At the heel the rocker stands {length_shown(rocker_of(piece).rise, piece.rule)} high. Half "
                "way there it is far less than half: near the middle the curve is nearly level, and it "
                "steepens toward the heel."
            ),
        )
    )


QUESTIONS = (
    Question(
        key="ellipse-1",
        ask="How far apart do the two pins stand?",
        kind=LengthAnswer(),
        given=_given_halves,
        truth=lambda piece: ellipse_of(piece).pin_spacing,
        slips=(
            Slip(
                "That is from the centre to one pin. There are two.",
                lambda piece: ellipse_of(piece).focus_distance,
            ),
            Slip(
                "You added the squares. The half-length is the longest side of the triangle of "
                "half-height, pin and string: take the one square from the other.",
                lambda piece: 2 * math.hypot(ellipse_of(piece).half_length, ellipse_of(piece).half_height),
            ),
            Slip(
                "You took half-height from half-length without squaring them.",
                lambda piece: 2 * abs(ellipse_of(piece).half_length - ellipse_of(piece).half_height),
            ),
            Slip(
                "That is the length of the whole ellipse. The pins stand inside its ends.",
                lambda piece: 2 * ellipse_of(piece).half_length,
            ),
            Slip(
                "That is the length of the rocker. It ends at the heels; where the pins go is another "
                "matter.",
                lambda piece: rocker_of(piece).length,
            ),
        ),
        hints=(
            "Bring the pencil to the top of the ellipse. How long is the string from there to one pin?",
            "Half-height, pin and string make a right triangle, and the string to one pin is as long as "
            "the half-length.",
            "c² is a² less b²; and the pins are 2c apart.",
        ),
        worked=_worked_pins,
    ),
    Question(
        key="ellipse-2",
        ask="How long is the endless loop of string round both pins and the pencil?",
        kind=LengthAnswer(),
        given=lambda piece: {
            **_given_halves(piece),
            "pins": f"{length_shown(ellipse_of(piece).pin_spacing, piece.rule)} apart",
        },
        truth=lambda piece: ellipse_of(piece).loop,
        slips=(
            Slip(
                "That is a string tied to the pins. A loop goes back from pin to pin as well.",
                lambda piece: ellipse_of(piece).tied_string,
            ),
            Slip(
                "That is the way once round the ellipse itself. The string does not lie on the curve.",
                lambda piece: ellipse_of(piece).perimeter,
            ),
            Slip(
                "You went from pin to pin there and back. The loop lies between them once; the other two "
                "stretches go to the pencil.",
                lambda piece: ellipse_of(piece).tied_string + 2 * ellipse_of(piece).pin_spacing,
            ),
            Slip("That is half the loop.", lambda piece: ellipse_of(piece).loop / 2),
        ),
        hints=(
            "Three straight stretches make the loop: from a pin to the pencil, from the pencil to the "
            "other pin, and back.",
            "The two stretches at the pencil are always 2a together. What is the third?",
        ),
        worked=_worked_loop,
    ),
    Question(
        key="ellipse-3",
        ask="A circle of what radius is as round as the bottom of this ellipse?",
        kind=LengthAnswer(),
        given=_given_halves,
        truth=lambda piece: ellipse_of(piece).radius_at_bottom,
        slips=(
            Slip(
                "That is how round the end is, b²/a. Change a and b about.",
                lambda piece: ellipse_of(piece).radius_at_end,
            ),
            Slip(
                "That is the half-length a. Such a circle is as round as the bottom only where a and b are alike.",
                lambda piece: ellipse_of(piece).half_length,
            ),
            Slip(
                "That is the half-height b. Such a circle is as round as the bottom only where a and b are alike.",
                lambda piece: ellipse_of(piece).half_height,
            ),
            Slip(
                "That is the circle through the two heels and the lowest point. The one that is asked for "
                "lies against the bottom alone.",
                _circle_through_the_heels,
            ),
            Slip(
                "That is the circle's diameter. A compass is set to the half of it.",
                lambda piece: 2 * ellipse_of(piece).radius_at_bottom,
            ),
        ),
        hints=(
            "Neither half alone gives it: a long, low ellipse is very flat below, flatter than its own "
            "half-length.",
            "Its centre is a²/b above the floor. Square the one half; divide by the other.",
        ),
        worked=_worked_radius,
    ),
    Question(
        key="ellipse-4",
        ask="How high above its lowest point does the rocker's edge stand half way from the middle to the "
        "heel?",
        kind=LengthAnswer(),
        given=_given_place,
        truth=lambda piece: ellipse_of(piece).height_at(_half_way(piece)),
        slips=(
            Slip(
                "That is half the rise at the heel. The curve is no straight ramp: near the middle it is "
                "nearly level.",
                lambda piece: rocker_of(piece).rise / 2,
            ),
            Slip(
                "That is the rise at the heel. You are asked half way there.",
                lambda piece: ellipse_of(piece).height_at(2 * _half_way(piece)),
            ),
            Slip(
                "You measured from the centre of the ellipse. The floor is at its lowest point, b further "
                "down.",
                lambda piece: ellipse_of(piece).half_height - ellipse_of(piece).height_at(_half_way(piece)),
            ),
            Slip(
                "A quarter of the rise: that would be a curve that goes by squares alone. The ellipse "
                "steepens more than that toward the heel, so half way it is lower.",
                lambda piece: rocker_of(piece).rise / 4,
            ),
        ),
        hints=(
            "The ellipse's equation gives the height from the centre for any place along the floor.",
            "From the centre down it is b times the root of 1 less (x/a)². What is left of b is the height.",
        ),
        worked=_worked_rise,
    ),
    tied_string.QUESTION,
)
