"""Proportional dividers opened: two legs crossing at a pivot, and the two openings that they carry."""

from __future__ import annotations

import math
from fractions import Fraction
from typing import TYPE_CHECKING

from woodmath.drawing import Circle, Drawing, Frame, Label, Line, Point, Points, Shape, Wood, rectangle
from woodmath.errors import ImpossibleShape
from woodmath.numbers_as_written import number_shown
from woodmath.proportional_dividers import pivot_place, ratio_error, wide_opening
from woodmath.rule import Rule
from woodmath.views.view import LengthControl, Settings, StepControl, View, number

if TYPE_CHECKING:
    from woodmath.piece import Piece

_SIZE = (640.0, 440.0)
_MARGINS = (30.0, 190.0, 44.0, 190.0)
_WIDTH_OF_A_LEG = 0.06
_STRIP = 0.09
_BESIDE = 0.12
_WIDEST = 0.9
"""Of the straight line that the short arms would make: further open the points do not stand on paper."""


def _draw(rule: Rule, settings: Settings) -> Drawing:
    length, ratio, narrow = (number(settings, name) for name in ("length", "ratio", "narrow"))
    long_arm = pivot_place(ratio, length)
    short_arm = length - long_arm
    shown = min(narrow, 2 * short_arm * _WIDEST)
    try:
        wide = wide_opening(narrow, ratio, length)
        faults: tuple[str, ...] = ()
    except ImpossibleShape as trouble:
        wide, faults = wide_opening(shown, ratio, length), (str(trouble),)
    tilt = math.asin(shown / 2 / short_arm)
    legs = [_leg(side, tilt, long_arm, short_arm, length * _WIDTH_OF_A_LEG) for side in (-1, 1)]
    (left, low), (right, _) = _points(tilt, short_arm, -1)
    (far_left, high), (far_right, _) = _points(tilt, long_arm, 1)
    beside, strip = length * _BESIDE, length * _STRIP
    frame = Frame.around(((-length / 2, low - strip), (length / 2, high + strip)), _SIZE, _MARGINS)
    shapes: list[Shape] = [
        Wood(rectangle(far_left - beside, high, far_right + beside, high + strip), "board", "long"),
        Line(rectangle(left - beside, low - strip, right + beside, low), "thin", True, "void"),
        Wood(legs[0], "end", "long", 90.0 + math.degrees(tilt), line="edge"),
        Wood(legs[1], "post", "long", 90.0 - math.degrees(tilt), line="edge"),
        Line(((far_left, high), (far_right, high)), "outline"),
        Line(((left, low), (right, low)), "accent"),
        Circle((0.0, 0.0), length * _WIDTH_OF_A_LEG * 0.42, "edge", "steel"),
    ]
    return Drawing(
        title="Proportional dividers opened: two equal legs crossing at a pivot",
        frame=frame,
        shapes=(
            *shapes,
            *_words(rule, frame, (narrow, wide, long_arm, short_arm), bool(faults)),
        ),
        headline=f"{rule.mark(narrow, unit=True)} off the drawing opens to {rule.mark(wide, unit=True)}."
        if not faults
        else "The legs are too short to open so far.",
        told=f"For a ratio of {number_shown(ratio)} the pivot sits {rule.mark(long_arm, unit=True)} from the points "
        f"that open wide, on legs of {rule.mark(length, unit=True)}."
        + _spoilt(rule, ratio, length, min(long_arm, short_arm)),
        faults=faults,
    )


def _points(tilt: float, arm: float, way: int) -> tuple[Point, Point]:
    """Return the two points of one end of the dividers, the left one first; `way` is 1 above the pivot."""
    across, along = arm * math.sin(tilt), way * arm * math.cos(tilt)
    return (-across, along), (across, along)


def _leg(side: int, tilt: float, long_arm: float, short_arm: float, width: float) -> Points:
    """Return a leg that leans to one side above the pivot: straight through the middle, pointed at both ends."""
    across, along = side * math.sin(tilt), math.cos(tilt)

    def at(run: float, beside: float) -> Point:
        return (run * across + beside * along, run * along - beside * across)

    half, hub = width / 2, min(width, 0.3 * short_arm, 0.3 * long_arm)
    return (
        at(-short_arm, 0.0),
        at(-hub, half),
        at(hub, half),
        at(long_arm, 0.0),
        at(hub, -half),
        at(-hub, -half),
    )


def _words(rule: Rule, frame: Frame, sizes: tuple[float, float, float, float], too_far: bool) -> list[Shape]:
    narrow, wide, long_arm, short_arm = sizes
    shapes: list[Shape] = [
        Label(
            "the pivot",
            frame.at(150.0, 200.0),
            (0.0, 0.0),
            side="left",
            note=f"{rule.mark(long_arm)} and {rule.mark(short_arm)}",
        ),
    ]
    tilt = math.asin(min(narrow, 2 * short_arm * _WIDEST) / 2 / short_arm)
    (_, (far_right, high)), (_, (right, low)) = _points(tilt, long_arm, 1), _points(tilt, short_arm, -1)
    wood = "too far" if too_far else rule.mark(wide, unit=True)
    shapes += [
        Label(wood, frame.at(500.0, 60.0), (far_right, high), note="for the wood", bold=True),
        Label(
            rule.mark(narrow, unit=True),
            frame.at(500.0, 390.0),
            (right, low),
            note="off the drawing",
            role="accent",
            bold=True,
        ),
    ]
    return shapes


def _spoilt(rule: Rule, ratio: float, length: float, arm: float) -> str:
    if rule.one_mark >= arm:
        return ""
    out = ratio_error(ratio, length, rule.one_mark)
    return f" One mark out of place, it turns the ratio by {number_shown(out, 3)}."


def _start(piece: Piece) -> Settings:
    length = piece.rule.nearest(6.0 if piece.rule.unit == "inch" else 150.0)
    return {"length": length, "ratio": 1.65, "narrow": piece.rule.nearest(length / 4)}


dividers_opened = View(
    name="dividers_opened",
    draw=_draw,
    controls=(
        LengthControl("length", "leg, point to point", ("3", "12"), ("75", "300")),
        StepControl("ratio", "ratio of the openings", "times", Fraction(1), Fraction(4), Fraction(1, 20)),
        LengthControl("narrow", "opening, off the drawing", ("1/4", "3"), ("6", "75")),
    ),
    start=_start,
)
