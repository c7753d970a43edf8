"""Questions of the page on wood that moves: what grows, what stays, what opens, and how much room it wants."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import TYPE_CHECKING

from woodmath.questions.kinds import AngleAnswer, ChoiceAnswer, LengthAnswer
from woodmath.questions.notation import length_shown
from woodmath.questions.question import Question, Slip
from woodmath.questions.wording import in_words, needed, on_the_rule, put_in
from woodmath.season_derivations import (
    edge_derivation,
    groove_derivation,
    mitre_derivation,
    splay_change_derivation,
)
from woodmath.wood_movement import coefficient, movement, movement_derivation

if TYPE_CHECKING:
    from woodmath.piece import Piece

TIMBER = "cherry, black"
DRIEST, TODAY, DAMPEST = 6.0, 8.0, 11.0
LEAN, LOST = 20.0, 0.04
"""Of a trial panel: degrees of splay, and the part of its height that it loses."""

WIDTHS, HEIGHT, BOTH = "its widths", "its height", "all of them"
INSIDE, OUTSIDE, NOWHERE = "inside", "outside", "nowhere"


def _height(piece: Piece) -> float:
    return needed(piece.end, "end", piece).height


def _grown(piece: Piece, cut: str = "flat", first: float = DRIEST) -> float:
    return movement(_height(piece), TIMBER, cut, first, DAMPEST)


def _hold(piece: Piece) -> float:
    """Return the hold that is asked of the tongue: half of the end's tenons' thickness."""
    return piece.joint.tenon_thickness / 2


def _edge(piece: Piece, to_moisture: float, held: float = 0.5) -> float:
    height = _height(piece)
    change = movement(height, TIMBER, "flat", TODAY, to_moisture)
    return abs(edge_derivation().function("edge_moves")(change=change, width=height, held=held * height))


def _groove(piece: Piece, held: float = 0.5) -> float:
    return groove_derivation().function("groove_depth")(
        hold=_hold(piece), shrinks=_edge(piece, DRIEST, held), grows=_edge(piece, DAMPEST, held)
    )


def _turned(part: float) -> float:
    return splay_change_derivation().function("new_splay")(splay=LEAN, height=1.0, new_height=part)


def _given_movement(piece: Piece) -> Mapping[str, str]:
    return {
        "board": f"an end panel {length_shown(_height(piece), piece.rule)} high, grain level, flat-sawn, of {TIMBER}",
        "coefficients": f"{coefficient(TIMBER, 'flat'):g} along the rings, "
        f"{coefficient(TIMBER, 'quarter'):g} across them",
        "moisture": f"{DRIEST:g} percent at the driest, {DAMPEST:g} at the dampest",
    }


def _given_lean(_: Piece) -> Mapping[str, str]:
    return {
        "trial panel": f"grain level, made with a splay of {LEAN:g}°",
        "drying": f"it loses {100 * LOST:g} percent across the grain",
    }


def _given_groove(piece: Piece) -> Mapping[str, str]:
    return {
        "panel": f"{length_shown(_height(piece), piece.rule)} across the grain, flat-sawn, of {TIMBER}; "
        "its long edges in the grooves of a frame, and held in its middle",
        "coefficient": f"{coefficient(TIMBER, 'flat'):g}",
        "moisture": f"{TODAY:g} percent today, {DRIEST:g} at the driest, {DAMPEST:g} at the dampest",
        "hold": f"{length_shown(_hold(piece), piece.rule)} of tongue in the groove on the driest day",
    }


def _worked_movement(piece: Piece) -> str:
    return "\n\n".join(
        (
            put_in(
                movement_derivation(),
                "change",
                piece.rule,
                width=_height(piece),
                coefficient=coefficient(TIMBER, "flat"),
                from_moisture=DRIEST,
                to_moisture=DAMPEST,
            ),
            on_the_rule(_grown(piece), piece.rule),
            in_words(
                "A flat-sawn board has its rings along the face: the greater of the two coefficients counts."
            ),
        )
    )


def _worked_stays(piece: Piece) -> str:
    return "\n\n".join(
        (
            in_words(
                "Wood moves across its grain and hardly along it. The grain of an end lies level, so its widths above "
                "and below stay, and its height changes. Outward over height is the tangent of the splay: a panel that "
                f"was made with {LEAN:g}° and loses {100 * LOST:g} percent of its height leans more."
            ),
            _leaning(piece),
        )
    )


def _worked_lean(piece: Piece) -> str:
    return "\n\n".join(
        (
            _leaning(piece),
            in_words(
                "What it goes outward lies along the grain and stays; over a lower height it leans more."
            ),
        )
    )


def _leaning(piece: Piece) -> str:
    return put_in(
        splay_change_derivation(), "new_splay", piece.rule, splay=LEAN, height=1.0, new_height=1.0 - LOST
    )


def _worked_groove(piece: Piece) -> str:
    shrinks, grows = _edge(piece, DRIEST), _edge(piece, DAMPEST)
    return "\n\n".join(
        (
            in_words(
                f"Held in the middle, each edge moves half as much as the panel: {shrinks:.4g} back until the driest "
                f"day, {grows:.4g} outward until the dampest."
            ),
            put_in(
                groove_derivation(),
                "groove_depth",
                piece.rule,
                hold=_hold(piece),
                shrinks=shrinks,
                grows=grows,
            ),
            on_the_rule(_groove(piece), piece.rule),
        )
    )


def _opens(_: Piece) -> str:
    opening = mitre_derivation().function("opening")(shrinkage=LOST)
    return INSIDE if opening > 0 else OUTSIDE if opening < 0 else NOWHERE


def _worked_mitre(piece: Piece) -> str:
    return "\n\n".join(
        (
            put_in(mitre_derivation(), "opening", piece.rule, shrinkage=LOST),
            in_words(
                f"That is for boards that have lost {100 * LOST:g} percent of their width. They keep their length, "
                "so each mitre leans closer to its board than 45°, and what the two leave of the right angle opens "
                "inside."
            ),
        )
    )


QUESTIONS = (
    Question(
        key="seasons-1",
        ask="Which sizes of the end panel stay as they are through the year?",
        kind=ChoiceAnswer((WIDTHS, HEIGHT, BOTH)),
        given=lambda _: {"end panel": "solid wood, its grain level"},
        truth=lambda _: WIDTHS,
        slips=(
            Slip("Its height lies across the grain. That is the way in which wood moves.", lambda _: HEIGHT),
            Slip(
                "No board of solid wood keeps all its sizes. Which of them cross the grain?", lambda _: BOTH
            ),
        ),
        hints=(
            "Which way does the grain run, and which way does wood move?",
            "Along the grain wood moves so little that nobody allows for it.",
        ),
        worked=_worked_stays,
    ),
    Question(
        key="seasons-2",
        ask="How much higher is the end panel on the dampest day than on the driest, within an eighth of a mark?",
        kind=LengthAnswer(Fraction(1, 8)),
        given=_given_movement,
        truth=_grown,
        slips=(
            Slip(
                "You took the coefficient across the rings. A flat-sawn board has them along its face.",
                lambda piece: _grown(piece, "quarter"),
            ),
            Slip(
                "That is for one percent of moisture. How many percent lie between the two ends of the year?",
                lambda piece: _grown(piece, first=DAMPEST - 1),
            ),
            Slip(
                "You counted from no moisture at all. It is the difference of the two that moves the board.",
                lambda piece: _grown(piece, first=0.0),
            ),
        ),
        hints=(
            "The coefficient is the part of its size that the board gains for each percent of moisture.",
            "Size, times coefficient, times the percent between the two ends of the year.",
        ),
        worked=_worked_movement,
    ),
    Question(
        key="seasons-3",
        ask="What splay has the trial panel once it has dried?",
        kind=AngleAnswer(),
        given=_given_lean,
        truth=lambda _: _turned(1 - LOST),
        slips=(
            Slip(
                "That is the splay as it was made. Its height has changed, its widths have not.",
                lambda _: LEAN,
            ),
            Slip(
                "You made the panel higher. Drying takes height away, and what goes outward stays.",
                lambda _: _turned(1 + LOST),
            ),
        ),
        hints=(
            "What goes outward lies along the grain. Only the height becomes less.",
            "Take the tangent of the splay, divide it by what is left of the height, and look up the angle.",
        ),
        worked=_worked_lean,
    ),
    Question(
        key="seasons-4",
        ask="How deep a groove, within a quarter of a mark, does a framed panel want that is held in its middle and "
        "must neither strike the floor nor come out?",
        kind=LengthAnswer(Fraction(1, 4)),
        given=_given_groove,
        truth=_groove,
        slips=(
            Slip(
                "You let one edge move as much as the whole panel. Held in the middle, each edge has half of it.",
                lambda piece: _groove(piece, held=1.0),
            ),
            Slip(
                "That is the hold alone: on the dampest day the tongue would strike the floor and push the frame "
                "apart.",
                _hold,
            ),
            Slip(
                "You left out the driest day: then the tongue is held by less than you asked.",
                lambda piece: _hold(piece) + _edge(piece, DAMPEST),
            ),
        ),
        hints=(
            "Three stretches add up: the hold, what the edge moves back, and what it moves outward.",
            "Each edge moves half as much as the panel, because the middle stays.",
        ),
        worked=_worked_groove,
    ),
    Question(
        key="seasons-5",
        ask="A frame was mitred at 45° and closed in a damp summer. Where is its mitre open in a heated winter?",
        kind=ChoiceAnswer((INSIDE, OUTSIDE, NOWHERE)),
        given=lambda _: {"boards": "flat-sawn, the grain along each of them"},
        truth=_opens,
        slips=(
            Slip(
                "That is the damp season's fault, when the boards grow wider. In winter they are narrower.",
                lambda _: OUTSIDE,
            ),
            Slip(
                "Both boards lose width, but neither loses length: the mitre is no longer half of the right angle.",
                lambda _: NOWHERE,
            ),
        ),
        hints=(
            "Draw one board narrower, and keep its length. Where does the end of its mitre go?",
            "The two inner corners have moved, each across its own board.",
        ),
        worked=_worked_mitre,
    ),
)
