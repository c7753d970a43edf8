"""The end of a board, where it lay in the log, and what a change of moisture makes of it, played through a year."""

from __future__ import annotations

import math
from dataclasses import replace
from fractions import Fraction
from typing import TYPE_CHECKING

from woodmath.drawing import Circle, Dimension, Drawing, Frame, Label, Line, Point, Points, Shape, Wood, arc
from woodmath.finding import in_decimals
from woodmath.ring_section import RingSection, heart_for
from woodmath.rule import Rule
from woodmath.views.moving_timber import (
    growth,
    moisture_control,
    through_the_year,
    timber_control,
    timber_of,
    usual,
    year_of,
)
from woodmath.views.view import ChoiceControl, LengthControl, Settings, StepControl, View, number
from woodmath.wood_movement import limits_left

if TYPE_CHECKING:
    from woodmath.piece import Piece

_SIZE = (680.0, 560.0)
_LOG = (158.0, 148.0)
_LOG_RADIUS = 118.0
_BOARD = (348.0, 400.0)
_ROOM = (500.0, 190.0)
_RINGS_SEEN = 12
_STEPS_ROUND = 40
_MOST_DRAWN = 0.16
"""Of its length that a ring may gain or lose in the picture."""


def _draw(rule: Rule, settings: Settings) -> Drawing:
    frame = Frame(*_SIZE, 0.0, 0.0, 1.0)
    timber = str(settings["timber"])
    ring, ray = (growth(timber, cut, settings, "from_moisture", "to_moisture") for cut in ("flat", "quarter"))
    section = RingSection(
        number(settings, "width"),
        number(settings, "thickness"),
        heart_for(number(settings, "rings"), number(settings, "distance")),
        ring,
        ray,
    )
    # Drawn larger still, a board would leave the picture or shrink to nothing.
    times = min(float(str(settings["times"])), _MOST_DRAWN / max(abs(ring), 1e-9))
    scale = min(_ROOM[0] / section.width, _ROOM[1] / section.thickness)
    drawn = replace(section, ring_growth=times * ring, ray_growth=times * ray)
    moving = settings["motion"] == "moving"
    headline, told = _told(rule, settings, section)
    split = section.has_heart and min(ring, ray) < 0
    return Drawing(
        title="The end of a board: where it lay in the log, and what a change of moisture makes of it",
        frame=frame,
        shapes=(
            *_log(section, frame),
            *_board(rule, section, drawn, scale, frame, moving),
            *_words(section, times, frame),
        ),
        headline=headline,
        told=told,
        faults=(
            (
                "The heart is in it. Drying closes every ring like a fan, and round the heart a fan cannot close: it "
                "splits. Saw the heart out, and make two narrower boards.",
            )
            if split
            else ()
        ),
    )


def _log(section: RingSection, frame: Frame) -> tuple[Shape, ...]:
    """Draw the log's end in the corner, its rings, and where in it the board was sawn."""
    reach = max(math.dist(section.heart, corner) for corner in section.corners)
    scale = 0.9 * _LOG_RADIUS / reach
    middle = frame.at(*_LOG)

    def placed(point: Point) -> Point:
        return (
            middle[0] + (point[0] - section.heart[0]) * scale,
            middle[1] + (point[1] - section.heart[1]) * scale,
        )

    bark = arc(middle, _LOG_RADIUS, 0.0, 360.0, 72)[:-1]
    corners = tuple(map(placed, section.corners))
    return (
        Wood(bark, "board", "end", 0.0, middle, line=""),
        Line(bark, "string", True),
        Circle(middle, 0.0, "edge", "ink", dot=2.5),
        Line(corners, "accent", True),
        Label("the log's end, and the board in it", frame.at(20.0, 18.0), role="quiet", size=13.0),
    )


def _board(
    rule: Rule, section: RingSection, drawn: RingSection, scale: float, frame: Frame, moving: bool
) -> tuple[Shape, ...]:
    middle = frame.at(*_BOARD)

    def placed(points: Points) -> Points:
        return tuple((middle[0] + x * scale, middle[1] + y * scale) for x, y in points)

    still = replace(drawn, ring_growth=0.0, ray_growth=0.0)
    first, last = placed(still.outline), placed(drawn.outline)
    rings = [
        (placed(stretch), placed(tuple(map(drawn.moved, stretch))))
        for radius in _radii(section)
        for stretch in section.ring_as_sawn(radius, _STEPS_ROUND)
    ]
    if moving:
        body: tuple[Shape, ...] = (
            through_the_year(first, last, "outline", True, "board"),
            *(through_the_year(one, other, "ring") for one, other in rings),
        )
    else:
        body = (
            Line(last, "outline", True, "board"),
            *(Line(other, "ring") for _, other in rings),
        )
    left, right = (middle[0] + side * section.width / 2 * scale for side in (-1, 1))
    up = middle[1] + section.thickness / 2 * scale
    down = middle[1] - section.thickness / 2 * scale
    return (
        *body,
        Line(placed(section.corners), "hidden", True),
        Dimension((right, down), (left, down), rule.mark(section.width), 44.0),
        Dimension((left, down), (left, up), rule.mark(section.thickness), left - 52.0),
    )


def _radii(section: RingSection) -> list[float]:
    """Return the radii of the rings to be drawn: a dozen over the section, no two alike far apart."""
    far = max(math.dist(section.heart, corner) for corner in section.corners)
    x, y = section.heart
    near = math.hypot(max(abs(x) - section.width / 2, 0.0), max(abs(y) - section.thickness / 2, 0.0))
    step = (far - near) / (_RINGS_SEEN + 1)
    return [near + step * (number + 0.35 * ((number * 0.618) % 1.0)) for number in range(1, _RINGS_SEEN + 1)]


def _words(section: RingSection, times: float, frame: Frame) -> tuple[Shape, ...]:
    drawn = "as it is" if times == 1 else f"{times:.2g} times over"
    return (
        Label("broken line: before", frame.at(330.0, 40.0), role="quiet", size=13.0),
        Label(f"whole line: after, drawn {drawn}", frame.at(330.0, 62.0), role="quiet", size=13.0),
        Label(_sawn(section), frame.at(330.0, 104.0), role="accent", bold=True, size=17.0),
        Label(
            "most along the rings, least square to them",
            frame.at(330.0, 128.0),
            role="quiet",
            size=13.0,
        ),
    )


def _sawn(section: RingSection) -> str:
    x, y = section.heart
    if section.has_heart:
        return "sawn with the heart in it"
    rings = math.degrees(math.atan2(abs(x), abs(y)))
    return "flat-sawn" if rings < 30 else "quarter-sawn" if rings > 60 else "rift-sawn, rings aslant"


def _told(rule: Rule, settings: Settings, section: RingSection) -> tuple[str, str]:
    change = section.new_width - section.width
    first, afterwards = number(settings, "from_moisture"), number(settings, "to_moisture")
    timber = str(settings["timber"])
    verb = "grows" if change > 0 else "shrinks"
    if abs(change) < 1e-12:
        headline = f"At {first:g} percent it stays as it is."
    else:
        headline = (
            f"From {first:g} to {afterwards:g} percent this board ({timber}) {verb} "
            f"{_fine(rule, abs(change))} in {rule.mark(section.width, unit=True)} of width."
        )
    told = [_cup(rule, section), *limits_left(first, afterwards)]
    return headline, " ".join(filter(None, told))


def _cup(rule: Rule, section: RingSection) -> str:
    words = []
    if abs(section.cup) > rule.one_mark / 8:
        shape = "hollow" if section.cup > 0 else "round"
        away = ", away from the heart," if section.heart[1] <= -section.thickness / 2 else ""
        words.append(f"Its upper face{away} becomes {shape} by {_fine(rule, abs(section.cup))}.")
    if abs(section.out_of_square) >= 0.1:
        words.append(f"Its corners leave the right angle by {abs(section.out_of_square):.1f}°.")
    return " ".join(words)


def _fine(rule: Rule, length: float) -> str:
    """Return a small length on the rule, and as a plain number where it falls between two marks."""
    on_the_rule = rule.mark(length) if rule.marks(length) else "less than half a mark"
    return f"{in_decimals(rule, length)} {rule.unit_mark} ({on_the_rule} on the rule)"


def _start(piece: Piece) -> Settings:
    low, high = year_of(piece)
    return {
        "timber": timber_of(piece),
        "width": usual(piece.rule, "8", "200"),
        "thickness": piece.end.thickness if piece.end else usual(piece.rule, "7/8", "22"),
        "rings": 0,
        "distance": usual(piece.rule, "6", "150"),
        "from_moisture": high,
        "to_moisture": low,
        "times": "8",
        "motion": "still",
    }


board_through_the_year = View(
    name="board_through_the_year",
    draw=_draw,
    controls=(
        timber_control(),
        LengthControl("width", "board, wide", ("1", "14"), ("25", "350")),
        LengthControl("thickness", "board, thick", ("1/2", "3"), ("12", "75")),
        StepControl("rings", "rings to the face", "degrees", Fraction(0), Fraction(90), Fraction(5)),
        LengthControl("distance", "from the heart", ("0", "14"), ("0", "350")),
        moisture_control("from_moisture", "moisture before"),
        moisture_control("to_moisture", "moisture after"),
        ChoiceControl("times", "drawn", (("as it is", "1"), ("eight times", "8"), ("twenty times", "20"))),
        ChoiceControl(
            "motion", "the year", (("stands at its end", "still"), ("goes round by itself", "moving"))
        ),
    ),
    start=_start,
)
