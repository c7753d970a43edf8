"""Questions of the page on choosing the rocker: roundness from the period, length from the rolling limit."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from woodmath.board_measure import metre_in
from woodmath.ellipse import angle_derivation, width_derivation
from woodmath.numbers_as_written import number_shown
from woodmath.questions.kinds import AngleAnswer, ChoiceAnswer, LengthAnswer
from woodmath.questions.notation import angle_shown, length_shown
from woodmath.questions.question import Question, Slip
from woodmath.questions.rocker_sizes import rocker_of
from woodmath.questions.rocking_sizes import body_of, both_units
from woodmath.questions.wording import in_words, on_the_rule, put_in
from woodmath.rocker_choice_derivations import half_chord_derivation, least_heel_angle_derivation
from woodmath.rocking import GRAVITY, period_derivation

if TYPE_CHECKING:
    from woodmath.piece import Piece

ROUNDNESS, LENGTH, RISE = "the radius at the bottom", "the length", "the rise"
_TILT = 30.0
"""Degrees that are wished for in the question on the length."""
_SLOWER = 1.1


def _wished_period(piece: Piece) -> float:
    return round(_SLOWER * body_of(piece).period(), 2)


def _radius(piece: Piece, **changes: float) -> float:
    body = body_of(piece)
    values = {
        "period": _wished_period(piece),
        "gyration_radius": body.gyration_radius,
        "centre_height": body.centre_height,
        "gravity": GRAVITY,
    }
    return metre_in(piece.rule.unit) * period_derivation().function("radius")(**{**values, **changes})


def _length(piece: Piece) -> float:
    return 2 * half_chord_derivation().function("half_chord")(**_of_the_rocker(piece), heel_angle=_TILT)


def _least(piece: Piece, **changes: float) -> float:
    return least_heel_angle_derivation().function("heel_angle")(**{**_of_the_rocker(piece), **changes})


def _tilt_of_the_circle(piece: Piece) -> float:
    """Return the slope of a circle of that radius where it has risen so far."""
    rocker = rocker_of(piece)
    circle = {"half_length": rocker.bottom_radius, "half_height": rocker.bottom_radius}
    across = width_derivation().function("across")(height=rocker.rise, **circle)
    return angle_derivation().function("angle")(across=across, **circle)


def _of_the_rocker(piece: Piece) -> dict[str, float]:
    rocker = rocker_of(piece)
    return {"rise": rocker.rise, "radius": rocker.bottom_radius}


def _on_the_circle(piece: Piece) -> float:
    """Return the length of a round rocker of that radius that reaches its heels at that tilt."""
    radius = rocker_of(piece).bottom_radius
    return 2 * angle_derivation().function("across")(angle=_TILT, half_length=radius, half_height=radius)


def _given_wish(piece: Piece) -> Mapping[str, str]:
    body = body_of(piece)
    return {
        "period": f"{number_shown(_wished_period(piece))} s",
        "height h": both_units(body.centre_height, piece),
        "gyration radius k": both_units(body.gyration_radius, piece),
        "gravity g": f"{number_shown(GRAVITY, 3)} m/s²",
    }


def _given_heel(piece: Piece) -> Mapping[str, str]:
    return {**_given_roundness(piece), "tilt at the heel": angle_shown(_TILT)}


def _given_roundness(piece: Piece) -> Mapping[str, str]:
    rocker, rule = rocker_of(piece), piece.rule
    return {
        "radius at the bottom": length_shown(rocker.bottom_radius, rule),
        "rise": length_shown(rocker.rise, rule),
    }


def _worked_radius(piece: Piece) -> str:
    body = body_of(piece)
    radius = _radius(piece)
    return "\n\n".join(
        (
            put_in(
                period_derivation(),
                "radius",
                piece.rule,
                period=_wished_period(piece),
                gyration_radius=body.gyration_radius,
                centre_height=body.centre_height,
                gravity=GRAVITY,
            ),
            in_words(f"That is in metres; on the rule it is {length_shown(radius, piece.rule)}."),
        )
    )


def _worked_length(piece: Piece) -> str:
    return "\n\n".join(
        (
            put_in(
                half_chord_derivation(), "half_chord", piece.rule, **_of_the_rocker(piece), heel_angle=_TILT
            ),
            in_words(f"The rocker is twice as long, {length_shown(_length(piece), piece.rule)}."),
            on_the_rule(_length(piece), piece.rule),
        )
    )


def _worked_roundness(piece: Piece) -> str:
    return "\n\n".join(
        (
            _worked_radius(piece),
            in_words(
                "Length and rise do not stand in it. Of two rockers that are as round below, the longer swings the "
                "same weight in the same time; it lets it swing further."
            ),
        )
    )


QUESTIONS = (
    Question(
        key="choice-1",
        ask="Which of the rocker's sizes does the wished period settle, for a weight that lies as it does?",
        kind=ChoiceAnswer((ROUNDNESS, LENGTH, RISE)),
        given=_given_wish,
        truth=lambda piece: ROUNDNESS,
        slips=(
            Slip(
                "A longer rocker of the same curve swings as before. It only rolls further.",
                lambda piece: LENGTH,
            ),
            Slip(
                "Heels that stand higher let it roll further. In a small swing it never comes near them.",
                lambda piece: RISE,
            ),
        ),
        hints=(
            "A small swing uses only the lowest part of the curve.",
            "Which of the three stands in the rule of the period?",
        ),
        worked=_worked_roundness,
    ),
    Question(
        key="choice-2",
        ask="It is to swing more slowly, in the period given. How round must it be at the bottom?",
        kind=LengthAnswer(),
        given=_given_wish,
        truth=_radius,
        slips=(
            Slip(
                "That is R less h. The radius is greater by the height of the weight.",
                lambda piece: _radius(piece) - body_of(piece).centre_height * metre_in(piece.rule.unit),
            ),
            Slip(
                "You left k out: the weight is no point, and has to be turned as well.",
                lambda piece: _radius(piece, gyration_radius=0.0),
            ),
            Slip(
                "That is for a swing one way in that time.",
                lambda piece: _radius(piece, period=2 * _wished_period(piece)),
            ),
        ),
        hints=(
            "Square the rule of the period, and R less h stands alone on one side.",
            "R less h is 4π² times k² and h² together, over g times T².",
            "Work in metres, and turn the answer into the marks of your rule.",
        ),
        worked=_worked_radius,
    ),
    Question(
        key="choice-3",
        ask="How long is a rocker of this roundness and rise that reaches its heels at this tilt?",
        kind=LengthAnswer(),
        given=_given_heel,
        truth=_length,
        slips=(
            Slip("That is from the middle to one heel.", lambda piece: _length(piece) / 2),
            Slip(
                "That is a round rocker of the same radius. It has climbed higher than this rise before "
                "it is so steep: an ellipse gets steep sooner.",
                _on_the_circle,
            ),
        ),
        hints=(
            "With l for half the rocker's length, the tangent of the tilt is l times the rise, over l² less the radius "
            "times the rise.",
            "That is an equation with l² and l in it. Of its two answers one is a length.",
        ),
        worked=_worked_length,
    ),
    Question(
        key="choice-4",
        ask="With this roundness and rise, what is the smallest tilt at which the heel could be reached?",
        kind=AngleAnswer(),
        given=_given_roundness,
        truth=_least,
        slips=(
            Slip(
                "You forgot the two: at the shallowest of all arcs l², half the length squared, is twice the radius "
                "times the rise.",
                lambda piece: _least(piece, rise=rocker_of(piece).rise / 2),
            ),
            Slip(
                "That is the tilt on a circle of that radius. A circle is already steeper there than it "
                "need be.",
                _tilt_of_the_circle,
            ),
        ),
        hints=(
            "The longer the rocker, the smaller the tilt at its heel; but half its length stays under the root of "
            "twice the radius times the rise: beyond that no ellipse fits.",
            "Put that length into the rule of the slope at the heel: the tangent is the root of two "
            "rises over the radius.",
        ),
        worked=lambda piece: put_in(
            least_heel_angle_derivation(), "heel_angle", piece.rule, **_of_the_rocker(piece)
        ),
    ),
)
