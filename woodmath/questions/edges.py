"""Questions of the page on rebate, bead and groove."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import TYPE_CHECKING

from woodmath.bead import aslant_derivation, begin_derivation
from woodmath.edge_derivations import (
    floor_derivation,
    inner_face_derivation,
    panel_derivation,
    rebate_derivation,
)
from woodmath.questions.kinds import ChoiceAnswer, LengthAnswer
from woodmath.questions.notation import length_shown
from woodmath.questions.question import Question, Slip
from woodmath.questions.wording import in_words, needed, on_the_rule, put_in
from woodmath.rebate import INNER_FACE, OUTER_FACE, panel_set_back

if TYPE_CHECKING:
    from woodmath.piece import Piece
    from woodmath.piece_details import Bead, Tongue

SLANTED = 30.0
"""Degrees from upright, for the question about an edge that leans a good deal."""

BEAD_SECOND, BEAD_LAST, BEAD_FIRST = "rebate, bead, tenon", "rebate, tenon, bead", "bead, tenon, rebate"

_HALF_A_MARK = LengthAnswer(marks=Fraction(1, 2))
"""The settings of a rebate lie close to one another: one mark off is another setting."""


def _board(piece: Piece) -> float:
    return needed(piece.end, "end", piece).thickness


def _left(piece: Piece) -> float:
    return piece.joint.tenon_thickness


def _tongue(piece: Piece) -> Tongue:
    return needed(piece.joint.tongue, "joint.tongue", piece)


def _bead(piece: Piece) -> Bead:
    return needed(piece.bead, "bead", piece)


def _depth(piece: Piece) -> float:
    return rebate_derivation().function("depth")(board=_board(piece), tongue=_left(piece))


def _panel(piece: Piece, rebated_from: str) -> float:
    return panel_set_back(piece.joint.set_back, _board(piece), _left(piece), rebated_from)


def _other_face(piece: Piece) -> str:
    return INNER_FACE if _tongue(piece).rebated_from == OUTER_FACE else OUTER_FACE


def _groove(piece: Piece, clearance: float) -> float:
    return floor_derivation().function("groove_depth")(
        tongue_length=_tongue(piece).length, floor_clearance=clearance
    )


def _along(piece: Piece, splay: float) -> float:
    bead = _bead(piece)
    return begin_derivation().function("along")(width=bead.width, quirk=bead.quirk, splay=splay)


def _given_rebate(piece: Piece) -> Mapping[str, str]:
    return {
        "end board": f"{length_shown(_board(piece), piece.rule)} thick",
        "tongue": f"{length_shown(_left(piece), piece.rule)} thick, "
        f"{length_shown(_tongue(piece).length, piece.rule)} long",
    }


def _given_groove(piece: Piece) -> Mapping[str, str]:
    return {
        "tongue": f"{length_shown(_tongue(piece).length, piece.rule)} long",
        "clearance at the floor": length_shown(_tongue(piece).clearance, piece.rule),
    }


def _given_panel(piece: Piece) -> Mapping[str, str]:
    return {
        "set-back of the groove": length_shown(piece.joint.set_back, piece.rule),
        "end board": f"{length_shown(_board(piece), piece.rule)} thick",
        "tongue": f"{length_shown(_left(piece), piece.rule)} thick",
        "rebated from": f"the {_tongue(piece).rebated_from}",
    }


def _given_bead(piece: Piece) -> Mapping[str, str]:
    bead = _bead(piece)
    return {
        "bead": f"{length_shown(bead.width, piece.rule)} wide",
        "quirk": f"{length_shown(bead.quirk, piece.rule)} wide",
    }


def _given_slanted(piece: Piece) -> Mapping[str, str]:
    return {**_given_bead(piece), "lean of the edge": f"{SLANTED:.0f}° from upright"}


def _worked_rebate(piece: Piece) -> str:
    return "\n\n".join(
        (
            put_in(rebate_derivation(), "depth", piece.rule, board=_board(piece), tongue=_left(piece)),
            on_the_rule(_depth(piece), piece.rule),
            "How far the rebate reaches along the face is the fence's business, not the stop's.",
        )
    )


def _worked_groove(piece: Piece) -> str:
    tongue = _tongue(piece)
    return "\n\n".join(
        (
            put_in(
                floor_derivation(),
                "groove_depth",
                piece.rule,
                tongue_length=tongue.length,
                floor_clearance=tongue.clearance,
            ),
            on_the_rule(_groove(piece, tongue.clearance), piece.rule),
        )
    )


def _worked_panel(piece: Piece) -> str:
    set_back, face = piece.joint.set_back, _tongue(piece).rebated_from
    formula = (
        put_in(
            panel_derivation(),
            "panel_set_back",
            piece.rule,
            set_back=set_back,
            board=_board(piece),
            tongue=_left(piece),
        )
        if face == OUTER_FACE
        else put_in(inner_face_derivation(), "panel_set_back", piece.rule, set_back=set_back)
    )
    return "\n\n".join(
        (
            formula,
            on_the_rule(_panel(piece, face), piece.rule),
            in_words(
                f"Rebated from its {_other_face(piece)} the panel would lie "
                f"{length_shown(abs(_panel(piece, _other_face(piece))), piece.rule)} from the post's face."
            ),
        )
    )


def _worked_begin(piece: Piece, splay: float) -> str:
    bead = _bead(piece)
    return put_in(begin_derivation(), "along", piece.rule, width=bead.width, quirk=bead.quirk, splay=splay)


def _worked_order(piece: Piece) -> str:
    return "\n\n".join(
        (
            _worked_begin(piece, 0.0),
            "Even on an upright edge the tenon's place follows from the width of the bead and its quirk. The rebate "
            "comes before both: it makes the shoulder over which the bead runs out, and the tongue out of which the "
            "tenon is cut.",
        )
    )


def _worked_slanted(piece: Piece) -> str:
    return "\n\n".join((_worked_begin(piece, SLANTED), on_the_rule(_along(piece, SLANTED), piece.rule)))


QUESTIONS = (
    Question(
        key="edges-1",
        ask="How far below the fillister's sole do you set its depth stop for the end's tongue?",
        kind=_HALF_A_MARK,
        given=_given_rebate,
        truth=_depth,
        slips=(
            Slip("That is what stays. The stop is set to what goes: the rest of the board.", _left),
            Slip(
                "That is how long the tongue stands out, along the face. The stop is set to "
                "the depth, into the board.",
                lambda piece: _tongue(piece).length,
            ),
            Slip(
                "You took half of the board. Many rebates do that; here the tongue has a thickness of its own.",
                lambda piece: _board(piece) / 2,
            ),
        ),
        hints=(
            "Tongue and rebate lie one on the other, and together they are the board.",
            "Take the tongue's thickness away from the board's. Its length has no part in it.",
        ),
        worked=_worked_rebate,
    ),
    Question(
        key="edges-2",
        ask="How deep do you cut the post's groove, so that the shoulder closes and the clearance is left?",
        kind=_HALF_A_MARK,
        given=_given_groove,
        truth=lambda piece: _groove(piece, _tongue(piece).clearance),
        slips=(
            Slip(
                "So deep a groove takes the tongue and leaves no clearance: one shaving too many on the shoulder, "
                "and it stands open.",
                lambda piece: _tongue(piece).length,
            ),
            Slip(
                "You took the clearance off the groove, and the tongue touches its floor first. It is "
                "added to the groove, never taken from it.",
                lambda piece: _groove(piece, -_tongue(piece).clearance),
            ),
            Slip(
                "You left the clearance twice. It is wanted at the floor only.",
                lambda piece: _groove(piece, 2 * _tongue(piece).clearance),
            ),
        ),
        hints=(
            "With the shoulder closed the tongue stands in the groove by its whole length.",
            "Beyond the tongue's end there is still the clearance: the groove holds both.",
        ),
        worked=_worked_groove,
    ),
    Question(
        key="edges-3",
        ask="How far behind the post's outer face does the outer face of the end panel lie?",
        kind=_HALF_A_MARK,
        given=_given_panel,
        truth=lambda piece: _panel(piece, _tongue(piece).rebated_from),
        slips=(
            Slip(
                "That is where it would lie if the rebate were taken from the other face. Look which cheek of the "
                "tongue is the panel's own face.",
                lambda piece: _panel(piece, _other_face(piece)),
            ),
            Slip(
                "You took the tongue away. What stands in front of it, on the outer face, is the depth of the "
                "rebate.",
                lambda piece: abs(piece.joint.set_back - _left(piece)),
            ),
            Slip(
                "You counted the rebate inward from the tongue. It lies on the tongue's outer side, toward the "
                "post's face.",
                lambda piece: piece.joint.set_back + _depth(piece),
            ),
        ),
        hints=(
            "Go from the post's outer face inward, and name what you meet: the panel's face, then the rebate, then "
            "the tongue.",
            "The set-back reaches to the tongue. The rebate's depth lies within it.",
        ),
        worked=_worked_panel,
    ),
    Question(
        key="edges-4",
        ask="In which order are rebate, bead and tenon made?",
        kind=ChoiceAnswer((BEAD_SECOND, BEAD_LAST, BEAD_FIRST)),
        given=_given_bead,
        truth=lambda piece: BEAD_SECOND,
        slips=(
            Slip(
                "Then the tenon stands before you know where the bead ends, and the bead's hollow runs out "
                "beside it at the shoulder. Which of the two decides the place of the other?",
                lambda piece: BEAD_LAST,
            ),
            Slip(
                "Out of what would you lay out the tenon? The rebate leaves the tongue, and the tenon is a part "
                "of that.",
                lambda piece: BEAD_FIRST,
            ),
        ),
        hints=(
            "Each step needs a line that the step before it has made.",
            "The tenon is cut out of the tongue, and may not begin before the bead ends.",
        ),
        worked=_worked_order,
    ),
    Question(
        key="edges-5",
        ask="The same bead on an edge that leans 30° from upright: how far along that edge from the corner may the "
        "first tenon begin?",
        kind=_HALF_A_MARK,
        given=_given_slanted,
        truth=lambda piece: _along(piece, SLANTED),
        slips=(
            Slip(
                "That is the reach, square to the level edge. The tenon is marked along the leaning one, which "
                "crosses the bead aslant.",
                lambda piece: _along(piece, 0.0),
            ),
            Slip(
                "You forgot the quirk. It is a part of the hollow, and shows just as the bead does.",
                lambda piece: aslant_derivation().function("along")(reach=_bead(piece).width, splay=SLANTED),
            ),
            Slip(
                "You took the lean from the bench, and not from upright: sine and cosine have changed places.",
                lambda piece: _along(piece, 90 - SLANTED),
            ),
        ),
        hints=(
            "Draw the corner: the reach stands square to the level edge, and the leaning edge is longer.",
            "The reach over the way along the edge is the cosine of the lean.",
            "Bead and quirk together, divided by the cosine of 30°.",
        ),
        worked=_worked_slanted,
    ),
)
