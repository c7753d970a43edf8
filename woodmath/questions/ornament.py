"""Questions of the page on a pattern from one radius: the rosette, its petals, and a border with nothing over."""

from __future__ import annotations

import math
from collections.abc import Mapping
from fractions import Fraction
from typing import TYPE_CHECKING

from woodmath.ornament import (
    Field,
    between_edges,
    chord,
    derivation,
    even_division,
    half_corner_derivation,
    in_the_corners,
    petal_length,
    unit_derivation,
)
from woodmath.ornament_derivations import six_steps
from woodmath.piece_ornamented import ground_of, panel_of
from woodmath.questions.kinds import ChoiceAnswer, CountAnswer, LengthAnswer
from woodmath.questions.notation import length_shown
from woodmath.questions.question import Question, Slip
from woodmath.questions.wording import in_words, on_the_rule, put_in

if TYPE_CHECKING:
    from woodmath.piece import Piece

_EIGHT = 8
_WHY_SIX = ("three equal sides", "six is an even number", "it only nearly does")
_FINELY = Fraction(1, 10)
"""A tenth of a mark: the unit itself is asked for, not the mark that it reads."""


def _wished(piece: Piece, inches: str, millimetres: str) -> float:
    """Return a round size in the piece's own unit."""
    return piece.rule.read(inches if piece.rule.unit == "inch" else millimetres)


def _margin(piece: Piece) -> float:
    return _wished(piece, "1", "25")


def _unit(piece: Piece) -> float:
    return _wished(piece, "1", "30")


def _field(piece: Piece) -> Field:
    return ground_of(piece).inside_margin(_margin(piece))


def _radius(piece: Piece) -> float:
    return _field(piece).largest_circle.radius


def _given_panel(piece: Piece) -> Mapping[str, str]:
    panel, ground, rule = panel_of(piece), ground_of(piece), piece.rule
    told = {
        "end": f"{length_shown(panel.bottom, rule)} below, {length_shown(panel.top, rule)} above, "
        f"{length_shown(panel.height, rule)} high"
    }
    if ground.low:
        told["bead and quirk"] = f"{length_shown(ground.low, rule)} along the lower and along the upper edge"
    told["margin"] = f"{length_shown(_margin(piece), rule)}, from the quirk and from the shoulders"
    return told


def _given_radius(piece: Piece) -> Mapping[str, str]:
    return {"compass": length_shown(_radius(piece), piece.rule)}


def _given_edge(piece: Piece) -> Mapping[str, str]:
    return {
        "field's upper edge": length_shown(_field(piece).top, piece.rule),
        "wanted unit": length_shown(_unit(piece), piece.rule),
    }


def _division(piece: Piece) -> tuple[int, float]:
    return even_division(_field(piece).top, _unit(piece))


def _given_count(piece: Piece) -> Mapping[str, str]:
    return {
        "field's upper edge": length_shown(_field(piece).top, piece.rule),
        "units": f"{_division(piece)[0]}",
    }


def _worked_why(piece: Piece) -> str:
    return "\n\n".join(
        (
            in_words(
                "The middle, a mark and the next one make a triangle: from the middle to each mark is the radius, "
                "and from mark to mark is the radius too, for that is how you stepped. Three equal sides make three "
                "equal corners, 60 degrees each; six of them fill the turn, and the last step ends on the first "
                "mark. The chord of a sixth says the same:"
            ),
            put_in(six_steps(), "chord", piece.rule, radius=_radius(piece)),
        )
    )


def _worked_radius(piece: Piece) -> str:
    field, rule = _field(piece), piece.rule
    if field.largest_circle.limited_by == "lower and upper edge":
        told = put_in(between_edges(), "radius", rule, height=field.height)
        why = (
            f"Beads and margins leave a field {length_shown(field.height, rule)} high, and the sides leave the circle "
            "more room than that."
        )
    else:
        half_corner = half_corner_derivation().function("half_corner")(splay=abs(field.splay))
        longer = max(field.bottom, field.top)
        told = put_in(in_the_corners(), "radius", rule, half_edge=longer / 2, half_corner=half_corner)
        why = "The sides leave the circle less room than the height does."
    return "\n\n".join((in_words(why), told, on_the_rule(_radius(piece), rule)))


def _worked_petal(piece: Piece) -> str:
    radius, rule = _radius(piece), piece.rule
    length = petal_length(radius, _EIGHT)
    return "\n\n".join(
        (
            put_in(derivation(), "petal", rule, radius=radius, petals=_EIGHT),
            on_the_rule(length, rule),
            in_words(
                "The dividers that step round this circle eight times are set to the same length: both are the third "
                "side of a triangle with two sides as long as the radius and 45 degrees between them."
            ),
        )
    )


def _worked_count(piece: Piece) -> str:
    count, _ = _division(piece)
    edge, unit = _field(piece).top, _unit(piece)
    return "\n\n".join(
        (
            put_in(unit_derivation(), "count", piece.rule, length=edge, unit=unit),
            in_words(
                f"The nearest whole number is {count}: the unit gives way a little, and the border ends as it began."
            ),
        )
    )


def _worked_unit(piece: Piece) -> str:
    count, unit = _division(piece)
    return "\n\n".join(
        (
            put_in(unit_derivation(), "unit", piece.rule, length=_field(piece).top, count=count),
            in_words(
                f"Set the dividers to {length_shown(unit, piece.rule)} as near as you can see, step along the edge, "
                "share what is left among all the steps, and step again before you prick."
            ),
        )
    )


QUESTIONS = (
    Question(
        key="pattern-1",
        ask="You step round a circle with the compass as it stands. Why does the sixth step end exactly on the first "
        "mark?",
        kind=ChoiceAnswer(_WHY_SIX),
        given=lambda piece: {"compass": "untouched since it drew the circle"},
        truth=lambda piece: _WHY_SIX[0],
        slips=(
            Slip(
                "So are four and eight, and four steps of the radius do not come round. Look at one step and the "
                "middle: what figure do they make?",
                lambda piece: _WHY_SIX[1],
            ),
            Slip(
                "On wood it may be a hair out, but that is your hand. Look at the lengths of the three sides between "
                "the middle and two marks.",
                lambda piece: _WHY_SIX[2],
            ),
        ),
        hints=(
            "Draw the middle, one mark and the next, and join them.",
            "How long is each of the three sides, and what does that make of the corner at the middle?",
        ),
        worked=_worked_why,
    ),
    Question(
        key="pattern-2",
        ask="To what radius is the compass set for the largest rosette of six that fits the end inside its margins?",
        kind=LengthAnswer(),
        given=_given_panel,
        truth=_radius,
        slips=(
            Slip(
                "That is the circle's diameter. A compass is set to the half of it.",
                lambda piece: 2 * _radius(piece),
            ),
            Slip(
                "You left the margins out: that circle touches the beads.",
                lambda piece: ground_of(piece).largest_circle.radius,
            ),
            Slip(
                "You left out bead and quirk: the margin begins where they end.",
                lambda piece: panel_of(piece).inside_margin(_margin(piece)).largest_circle.radius,
            ),
            Slip(
                "You took one margin off the height. There is one below and one above.",
                lambda piece: between_edges().function("radius")(
                    height=_field(piece).height + _margin(piece)
                ),
            ),
            Slip(
                "That is half the field's upper edge. The circle would go beyond the field below and above.",
                lambda piece: _field(piece).top / 2,
            ),
        ),
        hints=(
            "Draw the end, take off the beads, then the margins: how high is what is left, and how wide?",
            "The largest circle touches either the two level edges, or both sides and the longer level edge, whichever "
            "gives the smaller circle.",
        ),
        worked=_worked_radius,
    ),
    Question(
        key="pattern-3",
        ask="With the compass at that radius, how long is each petal of a rosette of eight, within half a mark?",
        kind=LengthAnswer(Fraction(1, 2)),
        given=_given_radius,
        truth=lambda piece: petal_length(_radius(piece), _EIGHT),
        slips=(
            Slip(
                "That is the radius. Petals are as long as that where there are six; eight stand closer and are "
                "shorter.",
                _radius,
            ),
            Slip(
                "That is half a petal: from the middle to where it is widest.",
                lambda piece: petal_length(_radius(piece), _EIGHT) / 2,
            ),
            Slip(
                "You took the whole of 45 degrees. The right triangle has only half of it.",
                lambda piece: chord(_radius(piece), _EIGHT // 2),
            ),
            Slip(
                "You took six eighths of the radius. The petals do not shorten in step with their number.",
                lambda piece: _radius(piece) * 6 / _EIGHT,
            ),
        ),
        hints=(
            "Middle, compass point and tip make a triangle with two sides as long as the radius. What is the angle "
            "between the petal's side and its own line?",
            "Eight petals share 360 degrees; half of one opens to 180 over 8.",
            "Half the petal is the radius times the sine of that half angle.",
        ),
        worked=_worked_petal,
    ),
    Question(
        key="pattern-4",
        ask="How many units divide the field's upper edge with nothing over, each as near as can be to the wanted one?",
        kind=CountAnswer("units"),
        given=_given_edge,
        truth=lambda piece: float(_division(piece)[0]),
        slips=(
            Slip(
                "So many whole units go in, and a good part of one is left. Would one more be nearer to the wish?",
                lambda piece: float(math.floor(_field(piece).top / _unit(piece))),
            ),
            Slip(
                "One fewer comes nearer to the wish: try both and see how far each unit is from it.",
                lambda piece: float(math.ceil(_field(piece).top / _unit(piece))),
            ),
            Slip(
                "You divided the whole panel's upper edge. The border keeps inside the margins.",
                lambda piece: float(even_division(panel_of(piece).top, _unit(piece))[0]),
            ),
            Slip(
                "Those are the marks. There is one unit fewer than marks, counting both ends.",
                lambda piece: float(_division(piece)[0] + 1),
            ),
        ),
        hints=(
            "How often does the wanted unit go into the edge? It need not be a whole number.",
            "Take the whole number nearest to that.",
        ),
        worked=_worked_count,
    ),
    Question(
        key="pattern-5",
        ask="How long is each of these units, to a tenth of a mark?",
        kind=LengthAnswer(_FINELY),
        given=_given_count,
        truth=lambda piece: _division(piece)[1],
        slips=(
            Slip(
                "That is the unit that you wished for. Stepped off so often, it misses the end.",
                _unit,
            ),
            Slip(
                "You divided the whole panel's upper edge. The border keeps inside the margins.",
                lambda piece: unit_derivation().function("unit")(
                    length=panel_of(piece).top, count=_division(piece)[0]
                ),
            ),
            Slip(
                "You divided by the number of marks. There is one unit fewer.",
                lambda piece: unit_derivation().function("unit")(
                    length=_field(piece).top, count=_division(piece)[0] + 1
                ),
            ),
            Slip(
                "You rounded to a mark of the rule. Stepped off so often, what you rounded away adds up.",
                lambda piece: piece.rule.nearest(_division(piece)[1]),
            ),
        ),
        hints=(
            "The count is settled; the unit gives way.",
            "Divide the edge by the count, and keep the decimals: the dividers can take them, the rule cannot.",
        ),
        worked=_worked_unit,
    ),
)
