"""Questions of the page on bevels where boards lean both ways, and on the bottom between them."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import TYPE_CHECKING

from woodmath import corner_derivations, level_bottom, regular_mitre
from woodmath.questions.kinds import AngleAnswer, LengthAnswer
from woodmath.questions.notation import length_shown
from woodmath.questions.question import Question, Slip
from woodmath.questions.wording import needed, on_the_rule, put_in
from woodmath.splay_derivations import level_derivation
from woodmath.splayed_corner import SplayedCorner

if TYPE_CHECKING:
    from woodmath.piece import Piece

SIDE, END = 30.0, 20.0
"""Splay of the trough's sides and ends: steep, so that a slip is more than a quarter of a degree."""
LEAN = 15.0
"""Splay of the sides of the bottom's question and of the table's."""

TROUGH = SplayedCorner(SIDE, END)
"""Its own corner; nothing of it is worked out before it is asked."""


def _given_trough(_: Piece) -> Mapping[str, str]:
    return {
        "a trough": f"sides lean {SIDE:.0f}°, ends {END:.0f}° from upright, all boards equally thick",
    }


def _bottom(piece: Piece) -> level_bottom.LevelBottom:
    end, side = needed(piece.end, "end", piece), needed(piece.side, "side", piece)
    return level_bottom.LevelBottom(
        outside_width=end.bottom,
        outside_length=end.bottom,
        side_splay=LEAN,
        end_splay=0.0,
        side_thickness=side.thickness,
        end_thickness=end.thickness,
        thickness=side.thickness,
        height=piece.post.square,
    )


def _given_bottom(piece: Piece) -> Mapping[str, str]:
    side, rule = needed(piece.side, "side", piece), piece.rule
    end = needed(piece.end, "end", piece)
    return {
        "leaning sides": f"{LEAN:.0f}° from upright, {length_shown(side.thickness, rule)} thick, "
        f"{length_shown(end.bottom, rule)} over both at their lower edges",
        "bottom": f"{length_shown(side.thickness, rule)} thick, its underside {length_shown(piece.post.square, rule)} "
        "up",
    }


def _worked_bottom(piece: Piece) -> str:
    bottom = _bottom(piece)
    return "\n\n".join(
        (
            put_in(
                level_bottom.inside_derivation(),
                "inside",
                piece.rule,
                outside=bottom.outside_width,
                up=bottom.height + bottom.thickness,
                across=bottom.side_thickness,
                splay=LEAN,
            ),
            on_the_rule(bottom.upper.width, piece.rule),
            "The saw takes that width, and the bevel then takes the lower arris away.",
        )
    )


QUESTIONS = (
    Question(
        key="corner-1",
        ask="What does the corner between side and end measure inside, square to the hip?",
        kind=AngleAnswer(),
        given=_given_trough,
        truth=lambda _: TROUGH.dihedral,
        slips=(
            Slip(
                "Seen from above it is square. But you are to measure square to the hip, and the hip leans.",
                lambda _: 90.0,
            ),
            Slip(
                "You went the other way: boards that lean outward open the corner, they do not close it.",
                lambda _: 180 - TROUGH.dihedral,
            ),
            Slip(
                "You added the two splays to a right angle. They are not angles in one plane.",
                lambda _: 90 + SIDE + END,
            ),
        ),
        hints=(
            "Stand the two boards' outward directions beside one another: their products with one another, added, are "
            "the cosine of the angle between them.",
            "The cosine of the corner is minus the product of the two sines.",
        ),
        worked=lambda piece: put_in(
            corner_derivations.dihedral_derivation(),
            "dihedral",
            piece.rule,
            side_splay=SIDE,
            end_splay=END,
        ),
    ),
    Question(
        key="corner-2",
        ask="The corner is mitred. How far off square do you tilt the saw?",
        kind=AngleAnswer(),
        given=_given_trough,
        truth=lambda _: TROUGH.mitre_tilt,
        slips=(
            Slip("That is for an upright box. The corner here is wider than square.", lambda _: 45.0),
            Slip(
                "That is half of the corner, counted from the face. The tilt is counted off square.",
                lambda _: TROUGH.dihedral / 2,
            ),
            Slip(
                "That is for a butt: the other board's face is met square, not in the middle.",
                lambda _: TROUGH.butt_tilt,
            ),
        ),
        hints=(
            "The mitre halves the corner, since both boards are equally thick.",
            "Off square is what half of the corner lacks of a right angle.",
        ),
        worked=lambda piece: put_in(
            corner_derivations.mitre_tilt_derivation(),
            "mitre_tilt",
            piece.rule,
            dihedral=TROUGH.dihedral,
            own_thickness=1.0,
            other_thickness=1.0,
        ),
    ),
    Question(
        key="corner-3",
        ask="How far off square do you draw the line across the side's face?",
        kind=AngleAnswer(),
        given=_given_trough,
        truth=lambda _: TROUGH.side_face_angle,
        slips=(
            Slip(
                "That is the splay of the end, as you see it from the side. On the side's own face, which leans away "
                "from you, the same line is longer.",
                lambda _: END,
            ),
            Slip(
                "That is the side's own splay. It is the neighbour's lean that the line follows.",
                lambda _: SIDE,
            ),
            Slip(
                "That is the line on the end's face: there the two splays change places.",
                lambda _: TROUGH.end_face_angle,
            ),
        ),
        hints=(
            "If the side stood upright, the line would lean as the end does.",
            "It leans, and its face is foreshortened by the cosine of its own splay.",
        ),
        worked=lambda piece: put_in(
            corner_derivations.face_angle_derivation(),
            "face_angle",
            piece.rule,
            own_splay=SIDE,
            other_splay=END,
        ),
    ),
    Question(
        key="corner-4",
        ask="How wide must a loose bottom be on its upper face, to touch both sides?",
        kind=LengthAnswer(Fraction(1, 2)),
        given=_given_bottom,
        truth=lambda piece: _bottom(piece).upper.width,
        slips=(
            Slip(
                "That is its underside. Up to its upper face the sides go on leaning outward.",
                lambda piece: _bottom(piece).lower.width,
            ),
            Slip(
                "You took the sides as thick as they are planed. A level rule reads more across a board that leans.",
                lambda piece: (
                    _bottom(piece).upper.width
                    + 2
                    * (
                        level_derivation().function("level")(across=_bottom(piece).side_thickness, splay=LEAN)
                        - _bottom(piece).side_thickness
                    )
                ),
            ),
            Slip(
                "You forgot the sides' own thickness: that is over their outer faces.",
                lambda piece: (
                    _bottom(piece).upper.width
                    + 2
                    * level_derivation().function("level")(across=_bottom(piece).side_thickness, splay=LEAN)
                ),
            ),
        ),
        hints=(
            "How far has one side gone outward by the height of the upper face?",
            "Twice that is gained, and twice a side's level thickness is lost.",
        ),
        worked=_worked_bottom,
    ),
    Question(
        key="corner-5",
        ask="A printed table for saws lists the pitch of the sides, counted from the bench. Your sides lean 15° "
        "from upright. Which pitch do you look up?",
        kind=AngleAnswer(),
        given=lambda _: {"splay": f"{LEAN:.0f}° from upright"},
        truth=lambda _: regular_mitre.pitch(LEAN),
        slips=(
            Slip("That is the splay, counted from upright. The table counts from the bench.", lambda _: LEAN),
            Slip(
                "You went past upright. From the bench up to a leaning side it is less than a right angle.",
                lambda _: 90 + LEAN,
            ),
        ),
        hints=(
            "What would the table list for an upright box?",
            "From the bench to upright is a right angle, and the splay is missing from it.",
        ),
        worked=lambda piece: put_in(regular_mitre.pitch_derivation(), "pitch", piece.rule, splay=LEAN),
    ),
)
