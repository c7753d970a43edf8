"""Questions of the page on rocking: what brings it back, how fast, how far, and what tips it over."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from typing import TYPE_CHECKING

from woodmath import bevel
from woodmath.board_measure import metre_in
from woodmath.ellipse import angle_derivation, bottom_radius_derivation
from woodmath.errors import ImpossibleShape
from woodmath.numbers_as_written import number_shown
from woodmath.questions.kinds import AngleAnswer, ChoiceAnswer, LengthAnswer, NumberAnswer
from woodmath.questions.notation import length_shown
from woodmath.questions.question import Question, Slip
from woodmath.questions.rocker_sizes import ellipse_of, rocker_of
from woodmath.questions.rocking_sizes import body_of, both_units
from woodmath.questions.wording import in_words, on_the_rule, put_in
from woodmath.rocking import (
    GRAVITY,
    energy_derivation,
    period_derivation,
    stiffness_derivation,
    top_derivation,
)

if TYPE_CHECKING:
    from woodmath.piece import Piece

QUICKER, SLOWER, ALIKE = "quicker", "more slowly", "as before"
_LIFTED = 1.05
"""Times its height: so far the weight is lifted in the first question."""
_SAME_TIME = 1e-6


def _metre(piece: Piece) -> float:
    return metre_in(piece.rule.unit)


def _height(piece: Piece) -> float:
    """Return the height of the centre of gravity, in the piece's unit."""
    return body_of(piece).centre_height * _metre(piece)


def _margin(piece: Piece) -> float:
    return body_of(piece).stiffness_margin * _metre(piece)


def _lifted(piece: Piece) -> str:
    body = body_of(piece)
    change = replace(body, centre_height=body.centre_height * _LIFTED).period() / body.period() - 1
    if abs(change) < _SAME_TIME:
        return ALIKE
    return SLOWER if change > 0 else QUICKER


def _in_metres(piece: Piece) -> dict[str, float]:
    body = body_of(piece)
    return {
        "gyration_radius": body.gyration_radius,
        "centre_height": body.centre_height,
        "radius": body.ellipse.radius_at_bottom,
        "gravity": GRAVITY,
    }


def _period(piece: Piece, **changes: float) -> float:
    return period_derivation().function("period")(**{**_in_metres(piece), **changes})


def _hung(piece: Piece) -> float:
    """Return the period of a bob that hangs on a string as long as the weight is high: no rocker at all."""
    height = body_of(piece).centre_height
    return _period(piece, gyration_radius=0.0, radius=2 * height)


def _over_the_heel(piece: Piece) -> dict[str, float]:
    body = body_of(piece)
    if body.tip_angle < body.heel_angle:
        raise ImpossibleShape(
            f"{piece.name} goes over before it comes to its heel, and the question is about one that turns on it."
        )
    return {"out": body.half_rocker, "above": body.centre_height - body.rise}


def _top(piece: Piece) -> float:
    return top_derivation().function("top")(**_over_the_heel(piece))


def _on_the_circle(piece: Piece) -> float:
    """Return the slope, as far out as the heel, of the circle that fits the bottom."""
    radius = ellipse_of(piece).radius_at_bottom
    return angle_derivation().function("angle")(
        across=rocker_of(piece).length / 2, half_length=radius, half_height=radius
    )


def _straight_to_the_heel(piece: Piece) -> float:
    """Return the slope of the straight line from the lowest point: as a bevel is struck, from two distances."""
    rocker = rocker_of(piece)
    return bevel.derivation().function("angle")(offset=rocker.rise, thickness=rocker.length / 2)


def _heel_on_the_floor(piece: Piece) -> float:
    """Return the work if the heel were as low as the floor."""
    height = body_of(piece).centre_height
    top = top_derivation().function("top")(out=body_of(piece).half_rocker, above=height)
    return _energy(piece, top - height)


def _energy(piece: Piece, lift: float) -> float:
    return energy_derivation().function("energy")(mass=body_of(piece).mass, gravity=GRAVITY, lift=lift)


def _given_margin(piece: Piece) -> Mapping[str, str]:
    drawn, rule = ellipse_of(piece), piece.rule
    return {
        "half-length a": length_shown(drawn.half_length, rule),
        "half-height b": length_shown(drawn.half_height, rule),
        "centre of gravity": f"{length_shown(_height(piece), rule)} over the floor",
    }


def _given_period(piece: Piece) -> Mapping[str, str]:
    body = body_of(piece)
    return {
        "radius R": both_units(body.ellipse.radius_at_bottom, piece),
        "height h": both_units(body.centre_height, piece),
        "gyration radius k": both_units(body.gyration_radius, piece),
        "gravity g": f"{number_shown(GRAVITY, 3)} m/s²",
    }


def _given_heel(piece: Piece) -> Mapping[str, str]:
    drawn, rule = ellipse_of(piece), piece.rule
    return {
        "half-length a": length_shown(drawn.half_length, rule),
        "half-height b": length_shown(drawn.half_height, rule),
        "rocker": f"{length_shown(rocker_of(piece).length, rule)} from heel to heel",
    }


def _given_tip(piece: Piece) -> Mapping[str, str]:
    body = body_of(piece)
    return {
        "mass": f"{number_shown(body.mass, 2)} kg",
        "height h": both_units(body.centre_height, piece),
        "half the rocker": both_units(body.rocker_length / 2, piece),
        "rise": both_units(body.rise, piece),
        "gravity g": f"{number_shown(GRAVITY, 3)} m/s²",
    }


def _worked_lifted(piece: Piece) -> str:
    body = body_of(piece)
    lifted = replace(body, centre_height=body.centre_height * _LIFTED)
    return "\n\n".join(
        (
            put_in(period_derivation(), "period", piece.rule, **_in_metres(piece)),
            in_words(
                f"With the weight {length_shown(lifted.centre_height * _metre(piece), piece.rule)} over "
                f"the floor it is {number_shown(lifted.period(), 3)} s. Higher up there is more to turn, "
                "and less that brings it back."
            ),
        )
    )


def _worked_margin(piece: Piece) -> str:
    drawn, rule = ellipse_of(piece), piece.rule
    halves = {"half_length": drawn.half_length, "half_height": drawn.half_height}
    return "\n\n".join(
        (
            put_in(bottom_radius_derivation(), "radius", rule, **halves),
            put_in(
                stiffness_derivation(),
                "stiffness_margin",
                rule,
                radius=drawn.radius_at_bottom,
                centre_height=_height(piece),
            ),
            on_the_rule(_margin(piece), rule),
        )
    )


def _worked_heel(piece: Piece) -> str:
    drawn = ellipse_of(piece)
    return "\n\n".join(
        (
            put_in(
                angle_derivation(),
                "angle",
                piece.rule,
                across=rocker_of(piece).length / 2,
                half_length=drawn.half_length,
                half_height=drawn.half_height,
            ),
            in_words("When the case has tilted so far, the slope at the heel lies flat on the floor."),
        )
    )


def _worked_tip(piece: Piece) -> str:
    lift = _top(piece) - body_of(piece).centre_height
    return "\n\n".join(
        (
            put_in(top_derivation(), "top", piece.rule, **_over_the_heel(piece)),
            in_words(f"So it is lifted by {number_shown(lift, 4)} m, and the work is"),
            put_in(
                energy_derivation(),
                "energy",
                piece.rule,
                mass=body_of(piece).mass,
                gravity=GRAVITY,
                lift=lift,
            ),
        )
    )


QUESTIONS = (
    Question(
        key="rocking-1",
        ask="The cushion is packed higher, so that the centre of gravity lies a twentieth higher over the same "
        "rockers. How does the piece swing now?",
        kind=ChoiceAnswer((QUICKER, SLOWER, ALIKE)),
        given=_given_period,
        truth=_lifted,
        slips=(
            Slip(
                "That would be so if more brought it back. R less h has become smaller.",
                lambda piece: QUICKER,
            ),
            Slip(
                "The mass does not matter, but where it lies does: h stands in the rule twice.",
                lambda piece: ALIKE,
            ),
        ),
        hints=(
            "The lever arm that brings it back grows with R less h. What has h done?",
            "And the weight must now be swung about a place that lies further below it.",
        ),
        worked=_worked_lifted,
    ),
    Question(
        key="rocking-2",
        ask="How much higher could the centre of gravity lie before the piece stands upright no more?",
        kind=LengthAnswer(),
        given=_given_margin,
        truth=_margin,
        slips=(
            Slip(
                "That is the radius at the bottom, and so the height at which it stands no more. How far "
                "is it to there from where the weight is?",
                lambda piece: ellipse_of(piece).radius_at_bottom,
            ),
            Slip(
                "You took the half-length for the roundness at the bottom. A long, low ellipse is "
                "flatter there.",
                lambda piece: abs(ellipse_of(piece).half_length - _height(piece)),
            ),
            Slip(
                "You took the half-height for the roundness at the bottom.",
                lambda piece: abs(ellipse_of(piece).half_height - _height(piece)),
            ),
            Slip(
                "You added the two. The weight counts against the roundness.",
                lambda piece: ellipse_of(piece).radius_at_bottom + _height(piece),
            ),
        ),
        hints=(
            "It stands as long as the weight lies lower than the centre of the circle that fits the bottom.",
            "That circle has the radius a²/b.",
        ),
        worked=_worked_margin,
    ),
    Question(
        key="rocking-3",
        ask="To a hundredth: how many seconds does a small swing take, there and back?",
        kind=NumberAnswer("seconds", Fraction(1, 100)),
        given=_given_period,
        truth=_period,
        slips=(
            Slip("That is one way only. A period is there and back.", lambda piece: _period(piece) / 2),
            Slip(
                "That is a weight on a string. A rocker's pivot moves along under it, and what brings it "
                "back is R less h.",
                _hung,
            ),
            Slip(
                "You left k out: the weight is no point, and has to be turned as well.",
                lambda piece: _period(piece, gyration_radius=0.0),
            ),
            Slip(
                "You took R for R less h.",
                lambda piece: _period(
                    piece, radius=body_of(piece).ellipse.radius_at_bottom + body_of(piece).centre_height
                ),
            ),
        ),
        hints=(
            "Work in metres: g is in metres too.",
            "Above the line stand k² and h² together, below it g times R less h; then the root, and twice π.",
        ),
        worked=lambda piece: put_in(period_derivation(), "period", piece.rule, **_in_metres(piece)),
    ),
    Question(
        key="rocking-4",
        ask="At what tilt does the touching point reach the heel, so that the rolling ends?",
        kind=AngleAnswer(),
        given=_given_heel,
        truth=lambda piece: body_of(piece).heel_angle,
        slips=(
            Slip(
                "That is the slope of the straight line from the lowest point to the heel. The curve is "
                "steeper there.",
                _straight_to_the_heel,
            ),
            Slip(
                "That is the slope on the circle that fits the bottom. Further out the ellipse leaves it.",
                _on_the_circle,
            ),
        ),
        hints=(
            "The tilt at which the floor touches the heel is the slope of the curve there.",
            "The slope of an ellipse at x is b over a, times x over the root of a² less x².",
        ),
        worked=_worked_heel,
    ),
    Question(
        key="rocking-5",
        ask="Past its curve the piece turns on the heel. To a tenth: how many joules does it take to bring it from "
        "rest to where it goes over?",
        kind=NumberAnswer("joules", Fraction(1, 10)),
        given=_given_tip,
        truth=lambda piece: _energy(piece, _top(piece) - body_of(piece).centre_height),
        slips=(
            Slip(
                "That is the work until the touching point reaches the heel. From there it turns on the "
                "heel and still comes back.",
                lambda piece: body_of(piece).rolling_barrier,
            ),
            Slip(
                "That lifts it from the floor to the highest place. It lies at its own height already.",
                lambda piece: _energy(piece, _top(piece)),
            ),
            Slip(
                "You measured to the heel from the floor. The heel stands higher by the rise.",
                _heel_on_the_floor,
            ),
        ),
        hints=(
            "It goes over when the centre of gravity stands plumb over the heel. How high is it then?",
            "As high as it is far from the heel: half the rocker out, and h less the rise up, by Pythagoras.",
            "Work is mass times g times how far it is lifted.",
        ),
        worked=_worked_tip,
    ),
)
