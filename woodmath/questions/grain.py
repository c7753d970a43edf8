"""Questions of the page on the grain: which way to plane, which face inside, what short grain costs."""

from __future__ import annotations

import math
from collections.abc import Mapping
from fractions import Fraction
from typing import TYPE_CHECKING

from woodmath.grain_strength import (
    hankinson_derivation,
    share_derivation,
    strength_at_angle,
    strength_kept,
)
from woodmath.planing_direction import fibre_angle_derivation, runs_with_the_grain
from woodmath.questions.joint_sizes import touching
from woodmath.questions.kinds import ChoiceAnswer, LengthAnswer, NumberAnswer
from woodmath.questions.notation import length_shown
from woodmath.questions.question import Question, Slip
from woodmath.questions.wording import in_words, on_the_rule, put_in
from woodmath.ring_section import RingSection, heart_for, ring_derivation
from woodmath.tenon_fibres import crossing_derivation, cut_through_derivation, through_derivation
from woodmath.timber import species

if TYPE_CHECKING:
    from woodmath.piece import Piece

LEAN = 12.0
"""Degrees of splay of a trial edge."""
STEEP = 20.0
"""Degrees of splay of a trial tenon: enough to tell a tangent from a sine."""
PRESSED = 30.0
"""Degrees to the grain at which a trial timber is pressed."""
SHARE = 0.07
"""Strength across the grain as a part of that along it, in the middle of what the handbook gives for bending."""
EXPONENT = 2.0
"""Of the rule: the one of which the squares can be done by hand."""
TIMBER = "cherry, black"
DRYING = {"ring_growth": -0.04, "ray_growth": -0.02}

UPWARD, DOWNWARD, EITHER = "upward", "downward", "either way alike"
BARK, HEART, NO_MATTER = "the bark side", "the heart side", "it does not matter"


def _reach(piece: Piece) -> float:
    return touching(piece).tenon.reach


def _strengths() -> tuple[float, float]:
    known = species(TIMBER)
    assert known.compression_parallel and known.compression_perpendicular
    return known.compression_parallel.value, known.compression_perpendicular.value


def _way(_: Piece) -> str:
    if runs_with_the_grain(LEAN, 0.0, upward=True):
        return UPWARD
    return DOWNWARD if runs_with_the_grain(LEAN, 0.0, upward=False) else EITHER


def _inside(_: Piece) -> str:
    # The heart lies below, so the upper face of the section is that of the bark.
    cup = RingSection(8.0, 1.0, heart_for(0.0, 6.0), **DRYING).cup
    return BARK if cup > 0 else HEART if cup < 0 else NO_MATTER


def _cut(piece: Piece) -> float:
    return cut_through_derivation().function("cut_through")(reach=_reach(piece), splay=STEEP)


def _cut_by_the_sine(piece: Piece) -> float:
    """Return what comes out where the reach is taken for the length of the fibre."""
    return crossing_derivation().function("tenon_width")(crossing=_reach(piece), splay=STEEP)


def _kept(angle: float, exponent: float = EXPONENT) -> float:
    return 100 * strength_kept(angle, SHARE, exponent)


def _evenly(angle: float, along: float, across: float) -> float:
    """Return what an even way from the one strength to the other would give at an angle."""
    return along + (across - along) * angle / 90


def _given_kept(_: Piece) -> Mapping[str, str]:
    return {
        "grain": f"{LEAN:g}° to the tenon",
        "across the grain": f"{100 * SHARE:g} percent of the strength along it (from memory, for bending)",
        "exponent": f"{EXPONENT:g}",
    }


def _given_pressed(_: Piece) -> Mapping[str, str]:
    along, across = _strengths()
    return {
        "timber": f"{TIMBER}, pressed at {PRESSED:g}° to its grain",
        "along the grain": f"{along:g} psi",
        "across it": f"{across:g} psi",
        "exponent": f"{EXPONENT:g}",
    }


def _worked_way(piece: Piece) -> str:
    return "\n\n".join(
        (
            put_in(fibre_angle_derivation(), "fibre_angle", piece.rule, splay=LEAN, run_out=0.0),
            in_words(
                "That is less than a right angle from the way up: the fibres lean upward where they come out, and a "
                "plane that goes upward lays them down. Clamp waste behind the upper corner."
            ),
        )
    )


def _worked_inside(piece: Piece) -> str:
    return "\n\n".join(
        (
            put_in(ring_derivation(), "turned", piece.rule, angle=90.0, **DRYING),
            in_words(
                "The rings close like a fan as the board dries, the face turned to the bark goes hollow, and that is "
                "also the face with the sapwood. Turned inside, both are out of sight."
            ),
        )
    )


def _worked_cut(piece: Piece) -> str:
    return "\n\n".join(
        (
            put_in(cut_through_derivation(), "cut_through", piece.rule, reach=_reach(piece), splay=STEEP),
            on_the_rule(_cut(piece), piece.rule),
        )
    )


def _worked_kept(piece: Piece) -> str:
    return "\n\n".join(
        (
            put_in(share_derivation(), "kept", piece.rule, share=SHARE, angle=LEAN, exponent=EXPONENT),
            in_words(
                f"In percent that is {_kept(LEAN):.1f}. It compares two ways of cutting a tenon, and rates no load."
            ),
        )
    )


def _worked_pressed(piece: Piece) -> str:
    along, across = _strengths()
    return "\n\n".join(
        (
            put_in(
                hankinson_derivation(),
                "strength",
                piece.rule,
                parallel=along,
                perpendicular=across,
                angle=PRESSED,
                exponent=EXPONENT,
            ),
            in_words(
                "A third of the way round, and most of what there was to lose is lost. It is an average of small "
                "clear samples: it compares, and rates no load."
            ),
        )
    )


QUESTIONS = (
    Question(
        key="grain-1",
        ask="Which way do you plane the sloping edge of an end that is wider above?",
        kind=ChoiceAnswer((UPWARD, DOWNWARD, EITHER)),
        given=lambda _: {"trial edge": f"it leans {LEAN:g}° outward above; the grain is level"},
        truth=_way,
        slips=(
            Slip(
                "Downward the plane meets the fibres' ends and lifts them. Which way do they lean where they come out?",
                lambda _: DOWNWARD,
            ),
            Slip(
                "That is so on an upright edge only. Here the fibres do not come out square.",
                lambda _: EITHER,
            ),
        ),
        hints=(
            "Draw the edge and a few level fibres that come out of it.",
            "Stroke along the edge with a finger. In which direction do the fibres point away from you?",
        ),
        worked=_worked_way,
    ),
    Question(
        key="grain-2",
        ask="Which face of a flat-sawn panel goes to the inside of the case?",
        kind=ChoiceAnswer((BARK, HEART, NO_MATTER)),
        given=lambda _: {"panel": "sapwood along one face; it will dry a little more"},
        truth=_inside,
        slips=(
            Slip(
                "Then sapwood and hollow would both be on the show face. Which face goes hollow as it dries?",
                lambda _: HEART,
            ),
            Slip(
                "The two faces of a flat-sawn board do not dry alike. Look at its rings.", lambda _: NO_MATTER
            ),
        ),
        hints=(
            "Two things speak for one face: where the sapwood lies, and which face goes hollow as the board dries.",
            "Rings close like a fan when they dry. On which side does the fan's wide end lie?",
        ),
        worked=_worked_inside,
    ),
    Question(
        key="grain-3",
        ask="In how much of its width does the trial tenon have no fibre from shoulder to tip, within three eighths of "
        "a mark?",
        kind=LengthAnswer(Fraction(3, 8)),
        given=lambda piece: {
            "trial tenon": f"reach {length_shown(_reach(piece), piece.rule)}, cut square to its edge",
            "splay": f"{STEEP:g}°; the grain is level",
        },
        truth=_cut,
        slips=(
            Slip(
                "You took the reach for the length of the fibre. The fibre is the long side of the triangle.",
                _cut_by_the_sine,
            ),
            Slip(
                "You took the angle from the edge. The tenon stands square to it.",
                lambda piece: cut_through_derivation().function("cut_through")(
                    reach=_reach(piece), splay=90.0 - STEEP
                ),
            ),
            Slip(
                "That is how long a fibre is that runs through. How far does it go sideways?",
                lambda piece: through_derivation().function("through")(reach=_reach(piece), splay=STEEP),
            ),
        ),
        hints=(
            "Follow one fibre from the lower corner of the shoulder out to the tip.",
            "It goes the reach outward, and sideways by the reach times the tangent of its angle to the tenon.",
        ),
        worked=_worked_cut,
    ),
    Question(
        key="grain-4",
        ask="What percent of its strength along the grain does a tenon keep that is cut square to an edge leaning 12°?",
        kind=NumberAnswer("percent", Fraction(1)),
        given=_given_kept,
        truth=lambda _: _kept(LEAN),
        slips=(
            Slip(
                "You took the cosine. The little that runs across the grain costs far more than that.",
                lambda _: 100 * math.cos(math.radians(LEAN)),
            ),
            Slip(
                "You squared the cosine and left out the part that runs across the grain, where wood is weakest.",
                lambda _: 100 * math.cos(math.radians(LEAN)) ** 2,
            ),
            Slip(
                "You went evenly from along to across. Strength falls little in the first few degrees, steeply in the "
                "next, and slowly after.",
                lambda _: 100 * _evenly(LEAN, 1.0, SHARE),
            ),
            Slip(
                "You measured the angle from across the grain. Nought degrees is along it.",
                lambda _: _kept(90.0 - LEAN),
            ),
            Slip("You left out the squares of sine and cosine.", lambda _: _kept(LEAN, 1.0)),
        ),
        hints=(
            "Weaknesses add up: the part along the grain against the strength along it, the part across against that "
            "across.",
            "Divide the share by a sum: sine squared, and the share times cosine squared.",
        ),
        worked=_worked_kept,
    ),
    Question(
        key="grain-5",
        ask="Pressed at 30° to its grain, how much strength has the trial timber left on average?",
        kind=NumberAnswer("psi", Fraction(5)),
        given=_given_pressed,
        truth=lambda _: strength_at_angle(*_strengths(), PRESSED),
        slips=(
            Slip(
                "You went evenly from along to across. It falls much faster than that.",
                lambda _: _evenly(PRESSED, *_strengths()),
            ),
            Slip(
                "You measured the angle from across the grain. Nought degrees is along it.",
                lambda _: strength_at_angle(*_strengths(), 90.0 - PRESSED),
            ),
            Slip(
                "You took the cosine of the strength along the grain, and left the other out.",
                lambda _: _strengths()[0] * math.cos(math.radians(PRESSED)),
            ),
            Slip(
                "You added strengths. It is the weaknesses, one over each, that add up.",
                lambda _: (
                    _strengths()[0] * math.cos(math.radians(PRESSED)) ** 2
                    + _strengths()[1] * math.sin(math.radians(PRESSED)) ** 2
                ),
            ),
        ),
        hints=(
            "The sine of 30° is a half, so its square is a quarter, and that of the cosine three quarters.",
            "Multiply the two strengths; divide by the sum of a quarter of the greater and three quarters of the "
            "lesser.",
        ),
        worked=_worked_pressed,
    ),
)
