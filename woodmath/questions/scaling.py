"""Questions of the page on making a piece at another size than its drawing."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import TYPE_CHECKING

from woodmath import scaling
from woodmath.numbers_as_written import number_shown
from woodmath.questions import printed_plate, running_marks
from woodmath.questions.kinds import LengthAnswer, NumberAnswer
from woodmath.questions.notation import length_shown
from woodmath.questions.question import Question, Slip
from woodmath.questions.wording import in_words, needed, on_the_rule, put_in

if TYPE_CHECKING:
    from woodmath.piece import Piece

SCALE = Fraction(5, 3)
"""That the questions make the piece at: no length of a drawing in quarters of an inch stays on the marks."""

EVERYTHING = ("length", "width", "thickness")
BOARD, POST = ("length", "width"), ("length",)


def _height(piece: Piece) -> float:
    return needed(piece.end, "end", piece).height


def _length(piece: Piece) -> float:
    return needed(piece.side, "side", piece).length


def _stock(piece: Piece) -> float:
    return needed(piece.side, "side", piece).thickness


def _inside(piece: Piece, scale: float = float(SCALE)) -> float:
    return scaling.inside_after(_length(piece), _stock(piece), scale)


def _volumes(piece: Piece) -> tuple[float, float]:
    """Return the volumes of a side board and of a post, in the drawing."""
    return _length(piece) * _height(piece) * _stock(piece), piece.post.length * piece.post.square**2


def _percent(piece: Piece) -> float:
    board, post = _volumes(piece)
    return 100 * scaling.total_mass_ratio(((board, BOARD), (post, POST)), SCALE)


def _given_height(piece: Piece) -> Mapping[str, str]:
    return {"end, in the drawing": f"{length_shown(_height(piece), piece.rule)} high", "scale": "5:3"}


def _given_inside(piece: Piece) -> Mapping[str, str]:
    return {
        "outside, in the drawing": length_shown(_length(piece), piece.rule),
        "boards": f"{length_shown(_stock(piece), piece.rule)} thick, before and after",
        "scale": "5:3",
    }


def _given_mass(piece: Piece) -> Mapping[str, str]:
    rule = piece.rule
    sizes = (_length(piece), _height(piece), _stock(piece))
    return {
        "side board, in the drawing": " by ".join(length_shown(size, rule) for size in sizes),
        "post, in the drawing": f"{length_shown(piece.post.length, rule)} long and "
        f"{length_shown(piece.post.square, rule)} square",
        "scale": "5:3",
    }


def _worked_height(piece: Piece) -> str:
    wanted = scaling.scaled(_height(piece), SCALE)
    return "\n\n".join(
        (
            put_in(
                scaling.scale_derivation(), "wanted", piece.rule, known=_height(piece), scale=float(SCALE)
            ),
            on_the_rule(wanted, piece.rule),
        )
    )


def _worked_inside(piece: Piece) -> str:
    sizes = {"outside": _length(piece), "stock": _stock(piece), "scale": float(SCALE)}
    grows = number_shown(scaling.inside_ratio(**sizes))
    return "\n\n".join(
        (
            put_in(scaling.inside_derivation(), "inside", piece.rule, **sizes),
            on_the_rule(_inside(piece), piece.rule),
            f"The inside has grown {grows} times, the outside only {number_shown(float(SCALE))} times: "
            "whatever the boards do not take goes to the room within.",
        )
    )


def _worked_mass(piece: Piece) -> str:
    board, post = _volumes(piece)
    scale = float(SCALE)
    share = number_shown(100 * board / (board + post), 1)
    return "\n\n".join(
        (
            "The board is scaled in two directions:",
            put_in(
                scaling.mass_derivation(),
                "mass_ratio",
                piece.rule,
                length_ratio=scale,
                width_ratio=scale,
                thickness_ratio=1.0,
            ),
            "The post is scaled in one:",
            put_in(
                scaling.mass_derivation(),
                "mass_ratio",
                piece.rule,
                length_ratio=scale,
                width_ratio=1.0,
                thickness_ratio=1.0,
            ),
            in_words(
                f"Of the wood in the drawing {share} percent is in the board and the rest in the post, so "
                f"together they come to {number_shown(_percent(piece), 1)} percent."
            ),
        )
    )


QUESTIONS = (
    Question(
        key="scale-1",
        ask="How high is the end of the larger piece?",
        kind=LengthAnswer(),
        given=_given_height,
        truth=lambda piece: scaling.scaled(_height(piece), SCALE),
        slips=(
            Slip(
                "That is smaller than the drawing. You went from the piece back to the drawing; here the "
                "drawing is the smaller of the two.",
                lambda piece: scaling.scaled(_height(piece), 1 / SCALE),
            ),
            Slip(
                "That is only what is added. The drawing's own height belongs to it.",
                lambda piece: scaling.scaled(_height(piece), SCALE - 1),
            ),
            Slip(
                "You scaled twice. A length takes the scale once; an area takes it twice.",
                lambda piece: scaling.scaled(scaling.scaled(_height(piece), SCALE), SCALE),
            ),
        ),
        hints=(
            "5:3 says: for every 3 in the drawing, 5 at the bench.",
            "Multiply by 5, then divide by 3, and only then look for the nearest mark.",
        ),
        worked=_worked_height,
    ),
    Question(
        key="scale-2",
        ask="A plain box of the side's board is that long outside; its outside is scaled and its boards are "
        "not. How long is the larger box inside?",
        kind=LengthAnswer(),
        given=_given_inside,
        truth=_inside,
        slips=(
            Slip(
                "You scaled the inside, and with it the boards. They come from the same stack as before: only "
                "the outside is scaled.",
                lambda piece: scaling.scaled(_inside(piece, 1.0), SCALE),
            ),
            Slip(
                "That is the outside. Going across the box, what do you meet before the room and after it?",
                lambda piece: scaling.scaled(_length(piece), SCALE),
            ),
            Slip(
                "You took off one board. There is one at either end.",
                lambda piece: scaling.inside_after(_length(piece), _stock(piece) / 2, float(SCALE)),
            ),
            Slip(
                "That is the drawing's own inside, before anything was scaled.",
                lambda piece: _inside(piece, 1.0),
            ),
        ),
        hints=(
            "Scale first what is scaled: the outside, and nothing else.",
            "Then go across the larger box: a board, the inside, a board. The boards are as thick as ever.",
        ),
        worked=_worked_inside,
    ),
    Question(
        key="scale-3",
        ask="A side board keeps its thickness, a post its section. How heavy are the two together after "
        "scaling, in percent of what they weigh in the drawing?",
        kind=NumberAnswer("percent", Fraction(1)),
        given=_given_mass,
        truth=_percent,
        slips=(
            Slip(
                "That is three directions scaled, as in a textbook. Which of them is stock, and stays?",
                lambda piece: 100 * scaling.mass_ratio(SCALE, EVERYTHING),
            ),
            Slip(
                "That is true of the board. The post grows in one direction only.",
                lambda piece: 100 * scaling.mass_ratio(SCALE, BOARD),
            ),
            Slip(
                "That is true of the post. The board grows in two directions.",
                lambda piece: 100 * scaling.mass_ratio(SCALE, POST),
            ),
            Slip(
                "You took the middle between board and post. There is more wood in one of them, and it counts "
                "for more.",
                lambda piece: 50 * (scaling.mass_ratio(SCALE, BOARD) + scaling.mass_ratio(SCALE, POST)),
            ),
        ),
        hints=(
            "In how many directions does each of the two grow? Each of them brings the scale once.",
            "Work out both volumes in the drawing, multiply each by its own number, add, and compare with the "
            "sum before.",
        ),
        worked=_worked_mass,
    ),
    running_marks.question("scale-4", SCALE),
    printed_plate.question("scale-5"),
)
