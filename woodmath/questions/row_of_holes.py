"""The question of the boring page about the holes along a mortise."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from woodmath.boring import holes_along, row_derivation
from woodmath.questions.joint_sizes import tenon_width
from woodmath.questions.kinds import CountAnswer
from woodmath.questions.notation import length_shown
from woodmath.questions.question import Question, Slip
from woodmath.questions.wording import put_in

if TYPE_CHECKING:
    from woodmath.piece import Piece


def _overlap(piece: Piece) -> float:
    """Return a quarter of the bit's width, to the nearest mark."""
    return piece.rule.nearest(piece.bit.diameter / 4)


def _holes(piece: Piece, overlap: float) -> float:
    return float(len(holes_along(tenon_width(piece), piece.bit.diameter, overlap=overlap)))


def _given_row(piece: Piece) -> Mapping[str, str]:
    rule = piece.rule
    return {
        "mortise": f"{length_shown(tenon_width(piece), rule)} long",
        "bit": f"{length_shown(piece.bit.diameter, rule)} across",
        "overlap": f"{length_shown(_overlap(piece), rule)} or more",
    }


def _worked_row(piece: Piece) -> str:
    holes = _holes(piece, _overlap(piece))
    return "\n\n".join(
        (
            put_in(
                row_derivation(),
                "spaces",
                piece.rule,
                length=tenon_width(piece),
                diameter=piece.bit.diameter,
                overlap=_overlap(piece),
            ),
            f"Spaces are whole, and fewer of them would overlap too little: take {holes - 1:.0f}. "
            f"Holes are one more than spaces: {holes:.0f}.",
        )
    )


QUESTION = Question(
    key="boring-4",
    ask="How many holes go along one mortise, the outer two touching its ends, with at least that overlap?",
    kind=CountAnswer("holes"),
    given=_given_row,
    truth=lambda piece: _holes(piece, _overlap(piece)),
    slips=(
        Slip(
            "That is the number of spaces from centre to centre, or spaces rounded down. How many holes "
            "stand at the ends of so many spaces, and which way does a wanted overlap round?",
            lambda piece: _holes(piece, _overlap(piece)) - 1,
        ),
        Slip(
            "So many just touch one another. With an overlap they stand closer.",
            lambda piece: _holes(piece, 0.0),
        ),
        Slip(
            "You left webs between the holes. They are to cut into each other.",
            lambda piece: float(
                len(holes_along(tenon_width(piece), piece.bit.diameter, web=_overlap(piece)))
            ),
        ),
    ),
    hints=(
        "Lay out the centres first: from half a bit off one end to half a bit off the other. How far is "
        "that?",
        "Two neighbours stand apart by the bit less the overlap, at most. How often does that go in?",
        "A part of a space counts as a whole one here; and a row has one hole more than it has spaces.",
    ),
    worked=_worked_row,
)
