"""A section that is not square, or whose centre is off: the round about the marked centre, and the largest there is."""

from __future__ import annotations

import math
from fractions import Fraction
from typing import TYPE_CHECKING

from woodmath.drawing import Circle, Dimension, Drawing, Frame, Label, Line, Point, Points, Shape, Wood, arc
from woodmath.errors import ImpossibleShape
from woodmath.finding import more
from woodmath.largest_round import best_round, largest_round
from woodmath.rule import Rule
from woodmath.views.view import LengthControl, Settings, StepControl, View, number

if TYPE_CHECKING:
    from woodmath.piece import Piece

_SIZE = (640.0, 440.0)
_MARGINS = (44.0, 250.0, 66.0, 84.0)
_COLUMN = 430.0
_ROUND = 48
_CROSS = 9.0


def _draw(rule: Rule, settings: Settings) -> Drawing:
    square, lean = number(settings, "square"), number(settings, "out_of_square")
    outline = _outline(square, lean)
    frame = Frame.around(((0.0, 0.0), (square, square)), _SIZE, _MARGINS)
    crossing = _crossing(outline)
    marked = (crossing[0] + number(settings, "off_right"), crossing[1] + number(settings, "off_up"))
    best = best_round(outline)
    rows = (290.0, 120.0) if marked[1] >= best.centre[1] else (120.0, 290.0)
    try:
        about, fault = largest_round(outline, marked), ""
    except ImpossibleShape as trouble:
        about, fault = 0.0, str(trouble)
    shapes: list[Shape] = [
        Wood(outline, "post", "end", pith=(-0.9 * square, 1.9 * square), line="outline"),
        Line((outline[0], outline[2]), "thin"),
        Line((outline[1], outline[3]), "thin"),
        Line(arc(best.centre, best.diameter / 2, 0.0, 360.0, _ROUND)[:-1], "accent", True),
        *_cross(best.centre, frame, "accent"),
    ]
    if about:
        shapes.append(Line(arc(marked, about / 2, 0.0, 360.0, _ROUND)[:-1], "hidden", True))
    shapes += [
        *_cross(marked, frame, "edge"),
        Dimension((square, 0.0), (0.0, 0.0), rule.mark(square), 34.0),
        Dimension((0.0, 0.0), (0.0, square), rule.mark(square), 34.0),
        Label(
            f"largest round, {rule.mark(best.diameter)}",
            frame.at(_COLUMN, rows[0]),
            best.centre,
            "about the red cross",
            bold=True,
            size=14.0,
        ),
        Label(
            f"as marked, {rule.mark(about)}" if about else "as marked, none",
            frame.at(_COLUMN, rows[1]),
            marked if about else None,
            "about the black cross",
            bold=True,
            size=14.0,
        ),
    ]
    return Drawing(
        title="A section out of square, with the round about its marked centre and the largest that it holds",
        frame=frame,
        shapes=tuple(shapes),
        headline=_headline(rule, about, best.diameter),
        told=_told(rule, square, lean, math.dist(marked, best.centre)),
        faults=(fault,) if fault else (),
    )


def _outline(square: float, lean: float) -> Points:
    """Return a square whose right-hand face leans inward by some degrees."""
    in_by = square * math.tan(math.radians(lean))
    return ((0.0, 0.0), (square, 0.0), (square - in_by, square), (0.0, square))


def _crossing(outline: Points) -> Point:
    """Return where the diagonals cross: each is a straight line from a corner to the one opposite."""
    (ax, ay), (bx, by), (cx, cy), (dx, dy) = outline
    across = (cx - ax) * (dy - by) - (cy - ay) * (dx - bx)
    share = ((bx - ax) * (dy - by) - (by - ay) * (dx - bx)) / across
    return (ax + share * (cx - ax), ay + share * (cy - ay))


def _cross(centre: Point, frame: Frame, role: str) -> list[Shape]:
    x, y = centre
    arm = frame.length(_CROSS)
    return [
        Line(((x - arm, y), (x + arm, y)), role),
        Line(((x, y - arm), (x, y + arm)), role),
        Circle(centre, 0.0, "", "accent" if role == "accent" else "ink", dot=2.5),
    ]


def _headline(rule: Rule, about: float, best: float) -> str:
    if not about:
        return "About a centre outside the wood nothing can be turned."
    if not more(rule.one_mark / 2, best - about):
        return f"The marked centre gives a round of {rule.mark(about)}; the best gives {rule.mark(best, unit=True)}."
    return f"The marked centre is good enough: a round of {rule.mark(about, unit=True)}, and no other gives more."


def _told(rule: Rule, square: float, lean: float, away: float) -> str:
    narrower = rule.mark(square * math.tan(math.radians(lean)))
    shape = (
        f"One face leans by {lean:g}°, so the section is {narrower} narrower above."
        if lean
        else "The section is square."
    )
    return f"{shape} The two centres lie {rule.mark(away, remainder=True)} apart; the nearest edge stops the round."


def _start(piece: Piece) -> Settings:
    return {
        "square": piece.post.square,
        "out_of_square": 4.0,
        "off_right": piece.rule.read("1/16" if piece.rule.unit == "inch" else "1.5"),
        "off_up": 0.0,
    }


crooked_square = View(
    name="crooked_square",
    draw=_draw,
    controls=(
        LengthControl("square", "square, side", ("1", "4"), ("25", "100")),
        StepControl("out_of_square", "one face leans", "degrees", Fraction(0), Fraction(12), Fraction(1, 2)),
        LengthControl("off_right", "centre, off to the right", ("0", "3/8"), ("0", "10")),
        LengthControl("off_up", "centre, off upward", ("0", "3/8"), ("0", "10")),
    ),
    start=_start,
)
