"""Questions of the page on making a piece of one's own."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from typing import TYPE_CHECKING

from woodmath import scaling, splay
from woodmath.case import Case
from woodmath.findings_as_made import as_made_findings
from woodmath.piece_origin import scaled_piece
from woodmath.questions.kinds import ChoiceAnswer, LengthAnswer, NumberAnswer
from woodmath.questions.notation import length_shown
from woodmath.questions.question import Question, Slip
from woodmath.questions.wording import in_words, needed, on_the_rule, put_in

if TYPE_CHECKING:
    from woodmath.piece import Piece

WANTED = Fraction(24, 13)
"""What the end's upper edge is to become, times what it is, before it is put on a mark."""
LARGER = "3:2"
"""The scale of the second question."""
MARKS_OVER = 2
"""By so many marks the ends came out too high in the third."""

POSTS, SIDES, NOTHING = "the posts", "the side panels", "nothing"


def _top(piece: Piece) -> float:
    return needed(piece.end, "end", piece).top


def _wanted(piece: Piece) -> float:
    return piece.rule.nearest(_top(piece) * float(WANTED))


def _scale(piece: Piece) -> float:
    return scaling.scale_for(known=_top(piece), wanted=_wanted(piece))


def _inside(piece: Piece) -> float:
    return 2 * Case.of(piece).inside_of_end


def _length(piece: Piece) -> float:
    return needed(piece.side, "side", piece).length


def _larger(piece: Piece) -> Piece:
    return scaled_piece(piece, LARGER, "Larger")


def _higher(piece: Piece) -> Piece:
    """Return the piece with all of it cut to the plan, but for its ends, which came out too high."""
    end = needed(piece.end, "end", piece)
    made = replace(end, height=end.height + MARKS_OVER * piece.rule.one_mark)
    return replace(piece, end=made, cut=("posts", "end panels", "side panels"), plan=piece.planned)


def _made_again(piece: Piece) -> str:
    stops = [each.place for each in as_made_findings(_higher(piece)) if each.severity == "stop"]
    return stops[0] if stops else NOTHING


def _given_scale(piece: Piece) -> Mapping[str, str]:
    return {
        "end's upper edge, in the drawing": length_shown(_top(piece), piece.rule),
        "wanted": length_shown(_wanted(piece), piece.rule),
    }


def _given_inside(piece: Piece) -> Mapping[str, str]:
    rule = piece.rule
    return {
        "side, shoulder to shoulder, in the drawing": length_shown(_length(piece), rule),
        "inside, in the drawing": length_shown(_inside(piece), rule),
        "post": f"{length_shown(piece.post.square, rule)} square",
        "end's tenon": f"{length_shown(piece.joint.tenon_thickness, rule)} thick, set back "
        f"{length_shown(piece.joint.set_back, rule)}",
        "scale": LARGER,
    }


def _given_again(piece: Piece) -> Mapping[str, str]:
    end, rule = needed(piece.end, "end", piece), piece.rule
    return {
        "cut already": "posts, end panels and side panels, all to the plan",
        "ends, planned": f"{length_shown(end.height, rule)} high",
        "ends, measured": f"{length_shown(needed(_higher(piece).end, 'end', piece).height, rule)} high",
    }


def _worked_scale(piece: Piece) -> str:
    return "\n\n".join(
        (
            put_in(scaling.scale_derivation(), "scale", piece.rule, known=_top(piece), wanted=_wanted(piece)),
            in_words(
                'In the file: scaled_from, and wanted = { "end.top" = ... }. The scale follows, and every other length '
                "that is no stock with it."
            ),
        )
    )


def _worked_inside(piece: Piece) -> str:
    beyond = _inside(piece) - _length(piece)
    rule = piece.rule
    return "\n\n".join(
        (
            put_in(
                scaling.scale_derivation(),
                "wanted",
                rule,
                known=_length(piece),
                scale=float(scaling.read_scale(LARGER)),
            ),
            in_words(
                f"That is the side's length at the new size. The inside is longer than it by "
                f"{length_shown(beyond, rule)}, because the end panels stand back in the posts; that comes from the "
                "post, the tenon and its set-back, which are stock, so it is the same before and after."
            ),
            on_the_rule(_inside(_larger(piece)), rule),
        )
    )


def _worked_again(piece: Piece) -> str:
    end = needed(_higher(piece).end, "end", piece)
    sizes = {"outward": end.outward, "height": end.height}
    told = [str(finding) for finding in as_made_findings(_higher(piece)) if finding.severity == "stop"]
    return "\n\n".join(
        (
            put_in(splay.slope_derivation(), "slope_length", piece.rule, **sizes),
            "That is the end's sloping edge now, and so the width that the side panels must have.",
            *map(in_words, told),
        )
    )


QUESTIONS = (
    Question(
        key="own-1",
        ask="The end is to be wider at its upper edge, as given. How many times as large as the drawing does the "
        "piece become?",
        kind=NumberAnswer("times", Fraction(1, 100)),
        given=_given_scale,
        truth=_scale,
        slips=(
            Slip(
                "You divided the drawing by the piece. That is the scale from the piece back to the drawing.",
                lambda piece: scaling.scale_for(known=_wanted(piece), wanted=_top(piece)),
            ),
            Slip(
                "That is how much wider it becomes. A scale tells how many times, and has no unit.",
                lambda piece: _wanted(piece) - _top(piece),
            ),
            Slip(
                "You measured over the posts. They are stock: they add the same to both, and so they are no part of "
                "what is scaled.",
                lambda piece: scaling.scale_for(
                    known=_top(piece) + 2 * piece.post.square, wanted=_wanted(piece) + 2 * piece.post.square
                ),
            ),
        ),
        hints=(
            "Drawing times scale is piece. Which of the two lengths do you divide by which?",
            "What is wanted, over what is drawn.",
        ),
        worked=_worked_scale,
    ),
    Question(
        key="own-2",
        ask="Made at 3:2 with the stock kept: how long is the inside, from one end panel's inner face to the other's?",
        kind=LengthAnswer(),
        given=_given_inside,
        truth=lambda piece: _inside(_larger(piece)),
        slips=(
            Slip(
                "You scaled the inside. The panels stand in posts that do not grow, so the inside is not so many times "
                "the inside.",
                lambda piece: scaling.scaled(_inside(piece), float(scaling.read_scale(LARGER))),
            ),
            Slip(
                "That is the side from shoulder to shoulder. The end panels stand back in the posts beyond that.",
                lambda piece: _length(_larger(piece)),
            ),
            Slip(
                "That is the length over the posts.",
                lambda piece: _length(_larger(piece)) + 2 * piece.post.square,
            ),
            Slip(
                "You added what one end panel stands back. There are two.",
                lambda piece: _length(_larger(piece)) + (_inside(piece) - _length(piece)) / 2,
            ),
        ),
        hints=(
            "Scale the side's length. What is the inside longer by, in the drawing? Does that grow?",
            "Post less set-back less tenon, at each end: all three are stock.",
        ),
        worked=_worked_inside,
    ),
    Question(
        key="own-3",
        ask="Everything is cut to the plan, and the end panels came out a little too high. What must be made again?",
        kind=ChoiceAnswer((POSTS, SIDES, NOTHING)),
        given=_given_again,
        truth=_made_again,
        slips=(
            Slip(
                "The mortises are measured up from the panels' lower edge, and that is where it was; only their "
                "grooves are cut a little higher. Which board is as wide as the end's sloping edge is long?",
                lambda piece: POSTS,
            ),
            Slip(
                "The sides run along the posts beside the ends: their width is the length of the end's sloping edge, "
                "and that has grown.",
                lambda piece: NOTHING,
            ),
        ),
        hints=(
            "Which other part has a size that is worked out from the end's height?",
            "Write it under [as_made] in the file and read the remarks.",
        ),
        worked=_worked_again,
    ),
)
