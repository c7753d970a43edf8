"""Questions of the page on setting out four posts at once."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import TYPE_CHECKING

from woodmath import setting_out
from woodmath.questions import setting_out_hand
from woodmath.questions.kinds import LengthAnswer
from woodmath.questions.notation import length_shown
from woodmath.questions.question import Question, Slip
from woodmath.questions.wording import needed, on_the_rule, put_in

if TYPE_CHECKING:
    from woodmath.piece import Piece
    from woodmath.piece_tables import TenonPlace

STEPS = 8
"""How often the dividers are stepped off in the question about them."""


def _upper_tenon(piece: Piece) -> TenonPlace:
    return needed(piece.joint.tenons or None, "joint.tenons", piece)[-1]


def _running(base: float, beyond: float) -> float:
    return setting_out.running_derivation().function("running")(base=base, beyond=beyond)


def _upper_end(piece: Piece) -> float:
    """Return the running mark of the upper end of the topmost mortise."""
    tenon = _upper_tenon(piece)
    return _running(_running(piece.post.foot, tenon.place), tenon.width)


def _below_the_shoulder(piece: Piece) -> float:
    """Return how much of the post lies below the shoulder at the foot."""
    end = needed(piece.end, "end", piece)
    return piece.post.length - piece.post.foot - end.slope_length - piece.post.top


def _upper_edge(piece: Piece) -> float:
    return _running(piece.post.foot, needed(piece.end, "end", piece).slope_length)


def _inner_pin(set_back: float, thickness: float) -> float:
    return setting_out.gauge_settings(set_back, thickness)[1].distance


def _half_a_mark(piece: Piece) -> float:
    return piece.rule.one_mark / 2


def _drift(piece: Piece, steps: int) -> float:
    return setting_out.drift_derivation().function("drift")(count=steps, error=_half_a_mark(piece))


def _given_mortise(piece: Piece) -> Mapping[str, str]:
    rule, tenon = piece.rule, _upper_tenon(piece)
    return {
        "foot": f"{length_shown(piece.post.foot, rule)} along the post",
        "upper tenon begins": f"{length_shown(tenon.place, rule)} above the panel's lower edge",
        "its width": length_shown(tenon.width, rule),
    }


def _given_gauge(piece: Piece) -> Mapping[str, str]:
    rule, joint = piece.rule, piece.joint
    return {
        "post": f"{length_shown(piece.post.square, rule)} square",
        "side's set-back": length_shown(joint.side_set_back, rule),
        "side's tenon": f"{length_shown(joint.side_thickness, rule)} thick",
    }


def _given_edge(piece: Piece) -> Mapping[str, str]:
    rule, end = piece.rule, needed(piece.end, "end", piece)
    return {
        "foot": f"{length_shown(piece.post.foot, rule)} along the post",
        "panel": f"{length_shown(end.height, rule)} high, measured upright",
        "its sloping edge": length_shown(end.slope_length, rule),
    }


def _given_steps(piece: Piece) -> Mapping[str, str]:
    return {
        "steps": str(STEPS),
        "each too wide by": f"half a mark, {_half_a_mark(piece):g} {piece.rule.unit_mark}",
    }


def _worked_mortise(piece: Piece) -> str:
    rule, tenon = piece.rule, _upper_tenon(piece)
    begins = _running(piece.post.foot, tenon.place)
    derivation = setting_out.running_derivation()
    return "\n\n".join(
        (
            put_in(derivation, "running", rule, base=piece.post.foot, beyond=tenon.place),
            "There the mortise begins. It ends one width of the tenon further up:",
            put_in(derivation, "running", rule, base=begins, beyond=tenon.width),
            on_the_rule(_upper_end(piece), rule),
        )
    )


def _worked_gauge(piece: Piece) -> str:
    joint = piece.joint
    inner = _inner_pin(joint.side_set_back, joint.side_thickness)
    return "\n\n".join(
        (
            put_in(
                setting_out.pins_derivation(),
                "inner_pin",
                piece.rule,
                set_back=joint.side_set_back,
                thickness=joint.side_thickness,
            ),
            on_the_rule(inner, piece.rule),
        )
    )


def _worked_edge(piece: Piece) -> str:
    edge = needed(piece.end, "end", piece).slope_length
    return "\n\n".join(
        (
            put_in(
                setting_out.running_derivation(), "running", piece.rule, base=piece.post.foot, beyond=edge
            ),
            on_the_rule(_upper_edge(piece), piece.rule),
        )
    )


def _worked_steps(piece: Piece) -> str:
    drift = setting_out.drift_derivation()
    return "\n\n".join(
        (
            put_in(drift, "drift", piece.rule, count=STEPS, error=_half_a_mark(piece)),
            on_the_rule(_drift(piece, STEPS), piece.rule),
            "Marked from one datum, no line would be out by more than one such error.",
        )
    )


QUESTIONS = (
    Question(
        key="lines-1",
        ask="How far from the datum, the shoulder at the foot, is the upper end of the uppermost mortise?",
        kind=LengthAnswer(),
        given=_given_mortise,
        truth=_upper_end,
        slips=(
            Slip(
                "You counted from the panel's lower edge. The datum is the shoulder, further down.",
                lambda piece: _upper_end(piece) - piece.post.foot,
            ),
            Slip(
                "There the mortise begins. The line that is asked for is its other end.",
                lambda piece: _running(piece.post.foot, _upper_tenon(piece).place),
            ),
            Slip(
                "You counted from the sawn end of the post. What lies below the shoulder goes into the rocker.",
                lambda piece: _upper_end(piece) + _below_the_shoulder(piece),
            ),
        ),
        hints=(
            "Three lengths lie end to end along the post, from the shoulder up to that line.",
            "The running mark of a line is that of the line below it, and what lies between the two.",
        ),
        worked=_worked_mortise,
    ),
    Question(
        key="lines-2",
        ask="The gauge's stock rides on the face edge: how far from it is the inner pin for the side's mortises?",
        kind=LengthAnswer(),
        given=_given_gauge,
        truth=lambda piece: _inner_pin(piece.joint.side_set_back, piece.joint.side_thickness),
        slips=(
            Slip(
                "That is the other pin, the one at the outer cheek.",
                lambda piece: piece.joint.side_set_back,
            ),
            Slip(
                "So far are the two pins apart. From the stock to the inner one it is more.",
                lambda piece: piece.joint.side_thickness,
            ),
            Slip(
                "You gauged from the inside face. That one gets no mark: only the outer faces were trued to one "
                "another.",
                lambda piece: piece.post.square - piece.joint.side_set_back,
            ),
            Slip(
                "You gauged from the inside face, and to the wrong cheek besides.",
                lambda piece: (
                    piece.post.square - _inner_pin(piece.joint.side_set_back, piece.joint.side_thickness)
                ),
            ),
            Slip(
                "That is the setting for the end's mortises. The side's tenons are not as thick, or not set as far "
                "back.",
                lambda piece: _inner_pin(piece.joint.set_back, piece.joint.tenon_thickness),
            ),
        ),
        hints=(
            "Going in from the face edge, which cheek of the mortise do you come to first?",
            "The pins stand as far apart as the tenon is thick, and the nearer one stands at the set-back.",
        ),
        worked=_worked_gauge,
    ),
    Question(
        key="lines-3",
        ask="How far from the datum is the line of the panel's upper edge?",
        kind=LengthAnswer(Fraction(1, 2)),
        given=_given_edge,
        truth=_upper_edge,
        slips=(
            Slip(
                "You measured the panel upright, and the line runs across a leaning post. Everything on the post is "
                "measured along it.",
                lambda piece: _running(piece.post.foot, needed(piece.end, "end", piece).height),
            ),
            Slip(
                "So much of the post the panel takes. The foot stands below it.",
                lambda piece: needed(piece.end, "end", piece).slope_length,
            ),
            Slip(
                "That is the top of the post. It stands above the panel.",
                lambda piece: _running(_upper_edge(piece), piece.post.top),
            ),
        ),
        hints=(
            "Which of the two lengths of the panel lies along the post?",
            "The running mark of the lower edge is the foot. From there the sloping edge goes up.",
        ),
        worked=_worked_edge,
    ),
    Question(
        key="lines-4",
        ask="You step the same distance off again and again with dividers that stand a little too wide. How far "
        "out is the last line, within a quarter of a mark?",
        kind=LengthAnswer(Fraction(1, 4)),
        given=_given_steps,
        truth=lambda piece: _drift(piece, STEPS),
        slips=(
            Slip(
                "So far out is the first line. The dividers are not set again for the others, and each begins where "
                "the one before ended.",
                _half_a_mark,
            ),
            Slip(
                "So it would usually be if each step were set anew, now too wide and now too narrow. These dividers "
                "err the same way every time.",
                lambda piece: setting_out.scatter_derivation().function("scatter")(
                    count=STEPS, error=_half_a_mark(piece)
                ),
            ),
            Slip(
                "You counted the lines between and left one step out. Every step brings its error.",
                lambda piece: _drift(piece, STEPS - 1),
            ),
            Slip(
                "You started counting at the datum. Nothing is out there: the errors are as many as the steps.",
                lambda piece: _drift(piece, STEPS + 1),
            ),
        ),
        hints=(
            "How far out is the first line? And the second, which begins at the first?",
            "The same error comes once with every step, always the same way.",
        ),
        worked=_worked_steps,
    ),
    setting_out_hand.QUESTION,
)
