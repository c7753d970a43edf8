"""Questions of the page on the way from square to round."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import TYPE_CHECKING

from woodmath import turning
from woodmath.questions.kinds import ChoiceAnswer, LengthAnswer
from woodmath.questions.notation import length_shown
from woodmath.questions.question import Question, Slip
from woodmath.questions.wording import in_words, on_the_rule, put_in

if TYPE_CHECKING:
    from woodmath.piece import Piece

JOINTS_FIRST, TURNING_FIRST, GLUE_FIRST = (
    "joints, turning, glue",
    "turning, joints, glue",
    "joints, glue, turning",
)
_TENTH_OF_A_MARK, _TWENTIETH_OF_A_MARK = Fraction(1, 10), Fraction(1, 20)
_OFF = 14
"""The centre of the question is marked about this part of the side away from the middle."""


def _square(piece: Piece) -> float:
    return piece.post.square


def _flat(piece: Piece) -> float:
    """Return the flat of the octagon."""
    return turning.flat_of(turning.OCTAGON_SIDES, _square(piece))


def _off(piece: Piece) -> float:
    """Return how far the centre of the question is marked from the middle, on a mark of the rule."""
    return piece.rule.nearest(_square(piece) / _OFF)


def _about_the_mark(piece: Piece) -> float:
    return turning.off_centre_derivation().function("diameter")(square=_square(piece), off=_off(piece))


def _beyond(piece: Piece, sides: int) -> float:
    return turning.corner_beyond_round(sides, _square(piece))


def _given_square(piece: Piece) -> Mapping[str, str]:
    return {"post": f"{length_shown(_square(piece), piece.rule)} square"}


def _given_octagon(piece: Piece) -> Mapping[str, str]:
    return {
        "octagon": f"{length_shown(_square(piece), piece.rule)} across its flats",
        "each flat": f"{length_shown(_flat(piece), piece.rule)} wide",
    }


def _given_centre(piece: Piece) -> Mapping[str, str]:
    return {
        **_given_square(piece),
        "marked centre": f"{length_shown(_off(piece), piece.rule)} from the middle, toward one face",
    }


def _given_sixteen(piece: Piece) -> Mapping[str, str]:
    return {"sixteen flats": f"{length_shown(_square(piece), piece.rule)} from flat to flat"}


def _worked_octagon(piece: Piece) -> str:
    square, rule = _square(piece), piece.rule
    setting = turning.octagon_setting(square)
    return "\n\n".join(
        (
            put_in(turning.octagon_derivation(), "set_off", rule, square=square),
            on_the_rule(setting, rule),
            in_words(
                f"The compass finds the same line from the far corner: opened from a corner to the middle it spans "
                f"{length_shown(square - setting, rule)}."
            ),
        )
    )


def _worked_sixteen(piece: Piece) -> str:
    rule = piece.rule
    return "\n\n".join(
        (
            put_in(
                turning.doubling_derivation(),
                "set_off",
                rule,
                sides=turning.OCTAGON_SIDES,
                flat=_flat(piece),
            ),
            on_the_rule(turning.sixteen_setting(_square(piece)), rule),
        )
    )


def _worked_centre(piece: Piece) -> str:
    rule = piece.rule
    return "\n\n".join(
        (
            put_in(turning.off_centre_derivation(), "diameter", rule, square=_square(piece), off=_off(piece)),
            on_the_rule(_about_the_mark(piece), rule),
            "Two diagonals from corner to corner find the middle of a square; on a crooked one look for the point "
            "that is as far from three faces as you can get.",
        )
    )


def _worked_beyond(piece: Piece) -> str:
    left = {
        sides: length_shown(_beyond(piece, sides), piece.rule)
        for sides in (turning.SQUARE_SIDES, turning.OCTAGON_SIDES)
    }
    return "\n\n".join(
        (
            put_in(
                turning.corner_derivation(),
                "beyond",
                piece.rule,
                sides=turning.SIXTEEN_SIDES,
                diameter=_square(piece),
            ),
            in_words(
                f"On the square it was {left[turning.SQUARE_SIDES]}, on the octagon {left[turning.OCTAGON_SIDES]}: "
                "each doubling leaves about a quarter of what was there."
            ),
        )
    )


def _worked_order(piece: Piece) -> str:
    square = _square(piece)
    return "\n\n".join(
        (
            "Joints first, while the post has faces to gauge from: a line squared across a round is a guess. A mortise "
            "that goes wrong then costs a square post and no turning. And before glue, because the lathe takes one "
            "post alone.",
            in_words(
                f"So the {length_shown(square, piece.rule)} square stays whole until the panels' tenons fit in it. "
                "(Only the tenon on its foot waits until after the turning: the lathe drives the post by its square "
                "end.) When they fit, the octagon's lines are gauged on the part to be turned:"
            ),
            put_in(turning.octagon_derivation(), "set_off", piece.rule, square=square),
        )
    )


QUESTIONS = (
    Question(
        key="turn-1",
        ask="How far from each corner of the post do you set the gauge for the octagon?",
        kind=LengthAnswer(),
        given=_given_square,
        truth=lambda piece: turning.octagon_setting(_square(piece)),
        slips=(
            Slip(
                "That is a third of the side. Three equal parts leave the old flats narrower than the new ones, "
                "because a cut across a corner is longer than either leg of it.",
                lambda piece: _square(piece) / 3,
            ),
            Slip(
                "That is a quarter of the side. The new flats come out narrower than the old: plane further.",
                lambda piece: _square(piece) / 4,
            ),
            Slip(
                "That is the width of the flat. The gauge is set to what is taken off beside it.",
                _flat,
            ),
            Slip(
                "That is the line from the far corner, as the compass has it. Measure from the near one.",
                lambda piece: _square(piece) - turning.octagon_setting(_square(piece)),
            ),
            Slip(
                "That is measured from the middle of the face. The gauge runs against its edge.",
                lambda piece: _flat(piece) / 2,
            ),
        ),
        hints=(
            "What is left of each face must be as wide as the new flat across the corner.",
            "The new flat is the long side of a triangle with two equal legs: a leg times the root of two. Leg, flat "
            "and leg make up the side.",
        ),
        worked=_worked_octagon,
    ),
    Question(
        key="turn-2",
        ask="The lathe's centre is marked a little beside the middle of the square. How thick is the largest round "
        "about it?",
        kind=LengthAnswer(),
        given=_given_centre,
        truth=_about_the_mark,
        slips=(
            Slip(
                "You took it off once. The round is short of the far face too: both sides lose it.",
                lambda piece: _square(piece) - _off(piece),
            ),
            Slip("That is the round about the true middle.", _square),
            Slip(
                "That is the radius: how far it is from the marked centre to the nearest face.",
                lambda piece: _about_the_mark(piece) / 2,
            ),
        ),
        hints=(
            "Turn it down in thought: on which face is a flat left longest?",
            "From the marked centre to that face, the nearest, is the radius; a round is twice as thick.",
        ),
        worked=_worked_centre,
    ),
    Question(
        key="turn-3",
        ask="From the octagon to sixteen flats: how far from each of its corners do you set off, within a tenth of a "
        "mark?",
        kind=LengthAnswer(_TENTH_OF_A_MARK),
        given=_given_octagon,
        truth=lambda piece: turning.sixteen_setting(_square(piece)),
        slips=(
            Slip(
                "That is the part of the flat that was right for the square. The octagon's corners are blunter, and "
                "what is cut off them is wider for its legs: take less.",
                lambda piece: turning.octagon_setting(_flat(piece)),
            ),
            Slip("That is a third of the flat.", lambda piece: _flat(piece) / 3),
            Slip(
                "That is a quarter of the flat: near, and what you would set by eye. It is asked more exactly.",
                lambda piece: _flat(piece) / 4,
            ),
            Slip(
                "That is the width of each of the sixteen flats.",
                lambda piece: turning.flat_of(turning.SIXTEEN_SIDES, _square(piece)),
            ),
        ),
        hints=(
            "The rule is the one of the square, with eight flats in place of four.",
            "Half of the new flat is the set-off times the cosine of 180°/8, which is 22.5°.",
            "Divide the flat by twice the sum of 1 and that cosine.",
        ),
        worked=_worked_sixteen,
    ),
    Question(
        key="turn-4",
        ask="The post has sixteen flats now. How far does each corner stand beyond the round, within a twentieth of a "
        "mark?",
        kind=LengthAnswer(_TWENTIETH_OF_A_MARK),
        given=_given_sixteen,
        truth=lambda piece: _beyond(piece, turning.SIXTEEN_SIDES),
        slips=(
            Slip(
                "That is what the octagon leaves. Sixteen flats leave about a quarter of it.",
                lambda piece: _beyond(piece, turning.OCTAGON_SIDES),
            ),
            Slip(
                "That is what the square leaves.",
                lambda piece: _beyond(piece, turning.SQUARE_SIDES),
            ),
            Slip(
                "That is both corners of a diagonal together, or a round of twice the thickness. Reckon with the "
                "radius.",
                lambda piece: _beyond(piece, turning.SIXTEEN_SIDES) * 2,
            ),
        ),
        hints=(
            "Middle, middle of a flat, and corner make a right triangle. Which of its sides is the round's radius?",
            "The way to the corner is the radius divided by the cosine of 180°/16; the radius is half of what lies "
            "from flat to flat.",
        ),
        worked=_worked_beyond,
    ),
    Question(
        key="turn-5",
        ask="In which order are the joints of a post cut, its top turned, and the glue opened?",
        kind=ChoiceAnswer((JOINTS_FIRST, TURNING_FIRST, GLUE_FIRST)),
        given=_given_square,
        truth=lambda piece: JOINTS_FIRST,
        slips=(
            Slip(
                "From which face will you gauge the mortise, and what is lost if it goes wrong?",
                lambda piece: TURNING_FIRST,
            ),
            Slip(
                "Try to swing a post in the lathe with its panels on.",
                lambda piece: GLUE_FIRST,
            ),
        ),
        hints=(
            "A gauge needs a flat face to run against.",
            "And the lathe needs the post by itself.",
        ),
        worked=_worked_order,
    ),
)
