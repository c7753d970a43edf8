"""The rocker's ellipse as it is drawn: two pins, a loop of string, and a pencil that goes round."""

from __future__ import annotations

import math
from fractions import Fraction
from typing import TYPE_CHECKING

from woodmath.drawing import (
    Circle,
    Dimension,
    Drawing,
    Frame,
    Label,
    Line,
    MovingLine,
    Point,
    Points,
    Shape,
    Wood,
    arc,
)
from woodmath.ellipse import Ellipse
from woodmath.errors import ImpossibleShape
from woodmath.rule import Rule
from woodmath.views.view import ChoiceControl, LengthControl, Settings, StepControl, View, number

if TYPE_CHECKING:
    from woodmath.piece import Piece

_SIZE = (640.0, 460.0)
_MARGINS = (100.0, 92.0, 92.0, 132.0)
_ROUND = 72


def _draw(rule: Rule, settings: Settings) -> Drawing:
    pin_spacing, loop = number(settings, "pin_spacing"), number(settings, "loop")
    try:
        ellipse = Ellipse.from_pins(pin_spacing, loop, upright=settings["pins"] == "upright")
    except ImpossibleShape as trouble:
        return _too_short(rule, pin_spacing, loop, str(trouble))
    a, b = ellipse.half_length, ellipse.half_height
    half_chord = number(settings, "rocker_length") / 2
    frame = Frame.around(((-a, -b), (a, b), (-half_chord, 0.0), (half_chord, 0.0)), _SIZE, _MARGINS)
    heel = ellipse.height_at(half_chord) if half_chord <= a else None
    first, second = sorted(ellipse.pins)
    pins = (first, second)
    circle = _as_round_as(ellipse)
    shapes = (
        Line(((-a, 0.0), (a, 0.0)), "centre"),
        Line(((0.0, -b), (0.0, b)), "centre"),
        Line(_round(ellipse), "edge", True),
        *_rocker(ellipse, half_chord, heel),
        Line(circle, "hidden"),
        *_dimensions(ellipse, pins, half_chord, heel, rule, frame),
        *_string(settings, pins, ellipse),
        *_pins(pins, number(settings, "pin_diameter"), frame),
        Label(
            f"radius R = {rule.mark(ellipse.radius_at_bottom)}",
            frame.at(28.0, 424.0),
            circle[0],
            "circle as round as the bottom",
            bold=True,
            size=14.0,
        ),
    )
    headline, told, faults = _told(ellipse, half_chord, heel, rule)
    thick = _thick_pins(ellipse, number(settings, "pin_diameter"), rule)
    return Drawing(
        title="An ellipse drawn with two pins and a loop of string, and the rocker cut from its lower arc",
        frame=frame,
        shapes=shapes,
        headline=headline,
        told=f"{told} {thick}".strip(),
        faults=faults,
    )


def _pins(pins: tuple[Point, Point], diameter: float, frame: Frame) -> tuple[Circle, ...]:
    """Return the pins at their true thickness, or as dots that can be seen where they are thinner than that."""
    seen = max(6.0, diameter / 2 * frame.scale)
    return tuple(Circle(pin, 0.0, "edge", "steel", dot=seen) for pin in pins)


def _thick_pins(ellipse: Ellipse, diameter: float, rule: Rule) -> str:
    if not diameter:
        return ""
    return (
        f"Pins {rule.mark(diameter, unit=True)} thick, with a pencil as thick as they are, make the loop "
        f"{rule.mark(ellipse.loop_round(diameter))}."
    )


def _round(ellipse: Ellipse) -> Points:
    return tuple(ellipse.point(360 * step / _ROUND) for step in range(_ROUND))


def _rocker(ellipse: Ellipse, half_chord: float, heel: float | None) -> tuple[Shape, ...]:
    if heel is None:
        return ()
    b = ellipse.half_height
    edge = tuple((x, height - b) for x, height in ellipse.lower_arc(2 * half_chord))
    return (
        Wood(edge, "board", "long", 0.0, line=""),
        Line(edge, "accent"),
        Line((edge[0], edge[-1]), "edge"),
    )


def _as_round_as(ellipse: Ellipse) -> Points:
    """Return the lower arc of the circle that lies closest to the bottom of the ellipse."""
    radius = ellipse.radius_at_bottom
    widest = math.degrees(math.asin(min(0.95, 0.95 * ellipse.half_length / radius)))
    return arc((0.0, radius - ellipse.half_height), radius, 270.0 - widest, 270.0 + widest, 40)


def _string(settings: Settings, pins: tuple[Point, Point], ellipse: Ellipse) -> tuple[Shape, ...]:
    first, second = pins
    pencil = ellipse.point(number(settings, "pencil"))
    if settings["motion"] == "still":
        return (Line((first, pencil, second), "string", True), Circle(pencil, 0.0, "pencil", "ink", dot=5.0))
    places = [*_round(ellipse), ellipse.point(0.0)]
    return (
        MovingLine(tuple((first, place, second) for place in places), 9.0, "string", True),
        MovingLine(tuple((place,) for place in places), 9.0, "pencil", dot=5.0),
    )


def _dimensions(
    ellipse: Ellipse,
    pins: tuple[Point, Point],
    half_chord: float,
    heel: float | None,
    rule: Rule,
    frame: Frame,
) -> tuple[Dimension, ...]:
    """Dimension outside the curve, each in a row or column of its own: pins, halves, rocker and rise."""
    a, b = ellipse.half_length, ellipse.half_height
    high, wide = b * frame.scale, max(a, half_chord) * frame.scale
    off = wide + 76.0 if a < b else high + 60.0
    apart = Dimension(*pins, f"2c = {rule.mark(ellipse.pin_spacing)}", off)
    dimensions = [
        apart,
        Dimension((0.0, b), (a, b), f"a = {rule.mark(a)}", 28.0),
        Dimension((a, 0.0), (a, -b), f"b = {rule.mark(b)}", wide - a * frame.scale + 40.0),
    ]
    if heel is not None:
        dimensions += [
            Dimension(
                (half_chord, heel - b),
                (-half_chord, heel - b),
                rule.mark(2 * half_chord),
                heel * frame.scale + 32.0,
            ),
            Dimension(
                (-half_chord, -b),
                (-half_chord, heel - b),
                rule.mark(heel),
                wide - half_chord * frame.scale + 34.0,
            ),
        ]
    return tuple(dimensions)


def _told(
    ellipse: Ellipse, half_chord: float, heel: float | None, rule: Rule
) -> tuple[str, str, tuple[str, ...]]:
    headline = (
        f"Pins {rule.mark(ellipse.pin_spacing)} apart and a loop of {rule.mark(ellipse.loop)} draw a half-length "
        f"of {rule.mark(ellipse.half_length)} and a half-height of {rule.mark(ellipse.half_height, unit=True)}."
    )
    tied = f"A string tied to the pins instead would be {rule.mark(ellipse.tied_string)} between its knots."
    length = rule.mark(2 * half_chord)
    if heel is None:
        return (
            headline,
            tied,
            (
                f"A rocker {length} long does not fit: the ellipse is {rule.mark(2 * ellipse.half_length)} long. "
                "Shorten the rocker or lengthen the loop.",
            ),
        )
    return headline, f"A rocker {length} long rises {rule.mark(heel)} at its heels. {tied}", ()


def _too_short(rule: Rule, pin_spacing: float, loop: float, trouble: str) -> Drawing:
    """Show pins that are too far apart: the string does not reach round them with any slack for a pencil."""
    half = max(pin_spacing, 1e-6) / 2
    frame = Frame.around(((-half, -half / 3), (half, half / 3)), _SIZE, _MARGINS)
    reach = min(loop / 2, pin_spacing) - half
    return Drawing(
        title="Two pins, too far apart for the loop of string",
        frame=frame,
        shapes=(
            Line(((-half, 0.0), (half, 0.0)), "centre"),
            Line(((-half, 0.0), (reach, 0.0)), "accent"),
            *(Circle((x, 0.0), 0.0, "edge", "steel", dot=6.0) for x in (-half, half)),
            Dimension((-half, 0.0), (half, 0.0), rule.mark(pin_spacing), 60.0),
            Dimension((reach, 0.0), (-half, 0.0), f"half the loop, {rule.mark(loop / 2)}", 60.0),
        ),
        headline="This string leaves no slack for a pencil.",
        faults=(trouble,),
    )


def _start(piece: Piece) -> Settings:
    ellipse = piece.ellipse()
    return {
        "pin_spacing": ellipse.pin_spacing,
        "loop": ellipse.loop,
        "pin_diameter": 0.0,
        "rocker_length": piece.rocker.length if piece.rocker else ellipse.half_length,
        "pins": "upright" if ellipse.half_height > ellipse.half_length else "lying",
        "pencil": 60.0,
        "motion": "still",
    }


pins_and_string = View(
    name="pins_and_string",
    draw=_draw,
    controls=(
        LengthControl("pin_spacing", "pins apart", ("0", "40"), ("0", "1000")),
        LengthControl("loop", "loop of string", ("10", "100"), ("250", "2500")),
        LengthControl("pin_diameter", "pins, thick", ("0", "1/2"), ("0", "12")),
        LengthControl("rocker_length", "rocker, length", ("4", "40"), ("100", "1000")),
        ChoiceControl("pins", "pins", (("side by side", "lying"), ("one above the other", "upright"))),
        StepControl("pencil", "pencil", "degrees round", Fraction(0), Fraction(360), Fraction(5)),
        ChoiceControl(
            "motion", "pencil", (("stays where you put it", "still"), ("goes round by itself", "moving"))
        ),
    ),
    start=_start,
)
