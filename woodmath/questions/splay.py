"""Questions of the page on the splayed end."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from woodmath import splay
from woodmath.questions.kinds import AngleAnswer, LengthAnswer
from woodmath.questions.notation import length_shown
from woodmath.questions.question import Question, Slip
from woodmath.questions.wording import needed, on_the_rule, put_in
from woodmath.splay import SplayedPanel

if TYPE_CHECKING:
    from woodmath.piece import Piece


def _panel(piece: Piece) -> SplayedPanel:
    end = needed(piece.end, "end", piece)
    return SplayedPanel(end.top, end.bottom, end.height)


def _steep(piece: Piece) -> SplayedPanel:
    """An end of the piece's own height that leans by a third: for pieces that stand upright too."""
    panel = _panel(piece)
    return SplayedPanel(panel.bottom + 2 * panel.height / 3, panel.bottom, panel.height)


def _given_steep(piece: Piece) -> Mapping[str, str]:
    panel, rule = _steep(piece), piece.rule
    return {
        "another end": f"{length_shown(panel.bottom, rule)} below, {length_shown(panel.top, rule)} above, "
        f"{length_shown(panel.height, rule)} high",
    }


def _given_posts(piece: Piece) -> Mapping[str, str]:
    return {**_given_steep(piece), "posts": f"{length_shown(piece.post.square, piece.rule)} square"}


def _worked_slope(piece: Piece) -> str:
    panel = _steep(piece)
    return "\n\n".join(
        (
            put_in(
                splay.slope_derivation(),
                "slope_length",
                piece.rule,
                outward=panel.outward,
                height=panel.height,
            ),
            on_the_rule(panel.slope_length, piece.rule),
        )
    )


def _over_posts(piece: Piece) -> float:
    return _steep(piece).widths_at(0.0, post=piece.post.square, reach=piece.post.square / 2).over_posts


QUESTIONS = (
    Question(
        key="splay-1",
        ask="How wide is the end between the shoulders, halfway up?",
        kind=LengthAnswer(),
        given=_given_steep,
        truth=lambda piece: _steep(piece).width_at(_steep(piece).height / 2),
        slips=(
            Slip(
                "That is the lower edge. Halfway up it has gone outward on both sides.",
                lambda piece: _steep(piece).bottom,
            ),
            Slip(
                "You let one edge go outward. There is one at either end.",
                lambda piece: _steep(piece).bottom + _steep(piece).outward / 2,
            ),
        ),
        hints=(
            "How much wider is it at the top than at the bottom, in all?",
            "Halfway up, half of that has been gained.",
        ),
        worked=lambda piece: "\n\n".join(
            (
                put_in(
                    splay.width_derivation(),
                    "width",
                    piece.rule,
                    bottom=_steep(piece).bottom,
                    top=_steep(piece).top,
                    height=_steep(piece).height,
                    place=_steep(piece).height / 2,
                ),
                on_the_rule(_steep(piece).width_at(_steep(piece).height / 2), piece.rule),
            )
        ),
    ),
    Question(
        key="splay-2",
        ask="How wide do you rip the side boards that go with this end?",
        kind=LengthAnswer(),
        given=_given_steep,
        truth=lambda piece: _steep(piece).slope_length,
        slips=(
            Slip(
                "That is how high the case is. The side leans with the posts and lies along the slope.",
                lambda piece: _steep(piece).height,
            ),
            Slip(
                "You added what the edge goes outward. Two ways square to one another do not add up like that: the "
                "slope is the short cut between them.",
                lambda piece: _steep(piece).height + _steep(piece).outward,
            ),
            Slip(
                "You took the whole difference of the widths. Each edge goes outward by half of it.",
                lambda piece: splay.slope_derivation().function("slope_length")(
                    outward=2 * _steep(piece).outward, height=_steep(piece).height
                ),
            ),
        ),
        hints=(
            "The side board is as wide as the end's sloping edge is long.",
            "Half of the difference of the widths goes outward, the height goes up: Pythagoras.",
        ),
        worked=_worked_slope,
    ),
    Question(
        key="splay-3",
        ask="At what angle does the grain run through a tenon that is cut square to the sloping edge?",
        kind=AngleAnswer(),
        given=_given_steep,
        truth=lambda piece: _steep(piece).grain_angle,
        slips=(
            Slip(
                "That is the corner between the slope and the level edge's own line. The tenon stands square to the "
                "slope, and the grain is level.",
                lambda piece: 90 - _steep(piece).grain_angle,
            ),
            Slip("The grain would lie along the tenon only if the edge stood upright.", lambda piece: 0.0),
            Slip(
                "You took the whole difference of the widths for one edge.",
                lambda piece: splay.splay_derivation().function("splay")(
                    outward=2 * _steep(piece).outward, height=_steep(piece).height
                ),
            ),
        ),
        hints=(
            "Turn the slope upright in your mind. By how much have you turned the level grain?",
            "It is the splay itself: its tangent is what one edge goes outward, over the height.",
        ),
        worked=lambda piece: put_in(
            splay.splay_derivation(),
            "splay",
            piece.rule,
            outward=_steep(piece).outward,
            height=_steep(piece).height,
        ),
    ),
    Question(
        key="splay-4",
        ask="At the panel's lower edge, what does a level rule measure over both posts, from outer face to outer "
        "face?",
        kind=LengthAnswer(),
        given=_given_posts,
        truth=_over_posts,
        slips=(
            Slip(
                "You added the posts as they are planed. A level rule crosses a leaning post at a slant, and reads "
                "more.",
                lambda piece: _steep(piece).bottom + 2 * piece.post.square,
            ),
            Slip(
                "You added one post. There is one at either end.",
                lambda piece: (_steep(piece).bottom + _over_posts(piece)) / 2,
            ),
            Slip("That is between the shoulders, without the posts.", lambda piece: _steep(piece).bottom),
        ),
        hints=(
            "What does the rule read across one leaning post?",
            "The post's square over the cosine of the splay, twice, and the width between the shoulders.",
        ),
        worked=lambda piece: "\n\n".join(
            (
                put_in(
                    splay.over_all_derivation(),
                    "over_all",
                    piece.rule,
                    width=_steep(piece).bottom,
                    across=piece.post.square,
                    splay=_steep(piece).splay,
                ),
                on_the_rule(_over_posts(piece), piece.rule),
            )
        ),
    ),
)
