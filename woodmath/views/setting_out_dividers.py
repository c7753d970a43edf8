"""Stepping off with dividers beside one datum: the lines on a lath, and below it their drift, drawn too large."""

from __future__ import annotations

import math
from fractions import Fraction
from typing import TYPE_CHECKING

from woodmath.drawing import Drawing, Frame, Label, Line, Points, Shape, Wood, rectangle, spread
from woodmath.numbers_as_written import number_shown
from woodmath.rule import Rule
from woodmath.setting_out import SteppedLine, stepping_off
from woodmath.views.view import LengthControl, Settings, StepControl, View, number

if TYPE_CHECKING:
    from woodmath.piece import Piece

_SIZE = (640.0, 460.0)
_LEFT, _RIGHT = 34.0, 196.0
_LATH = (96.0, 142.0)
_ZERO, _ROOM = 306.0, 96.0
_WORD = 13.0


def _draw(rule: Rule, settings: Settings) -> Drawing:
    step, count = number(settings, "step"), max(1, round(number(settings, "count")))
    error = number(settings, "error") / 100 * rule.one_mark
    lines = stepping_off(step, count, error)
    end = max(lines[-1].meant, lines[-1].stepped)
    scale = (_SIZE[0] - _LEFT - _RIGHT) / end
    frame = Frame(_SIZE[0], _SIZE[1], left=-_LEFT / scale, bottom=0.0, scale=scale)
    half_mark = rule.one_mark / 2
    last = lines[-1]
    times = _times_too_large(max(abs(last.drift), half_mark) * scale)
    return Drawing(
        title="A lath stepped off with dividers and marked from one datum, and the drift of every line",
        frame=frame,
        shapes=(
            *_lath(lines, frame),
            *_drift(lines, half_mark, times, frame),
            *_words(lines, rule, times, frame),
        ),
        headline=_headline(count, last.drift, rule),
        told=f"Each step is {rule.mark(step, unit=True)} and {_in_marks(error, rule)} "
        f"{'too wide' if error > 0 else 'too narrow'}. Set anew for every step, and out by as much either way, "
        f"they would usually leave the last line {_in_marks(last.scatter, rule)} out."
        if error
        else f"Each step is {rule.mark(step, unit=True)}. Slide the error away from 0 and watch the last line.",
    )


def _headline(count: int, drift: float, rule: Rule) -> str:
    if not drift:
        return "Dividers that are set without any error do not drift: nobody has such a pair."
    steps = "1 step" if count == 1 else f"{count} steps"
    way = "too far" if drift > 0 else "short"
    return (
        f"After {steps} the last line is {_in_marks(drift, rule)} {way}; from one datum no line is more than half a "
        "mark out."
    )


def _in_marks(length: float, rule: Rule) -> str:
    marks = number_shown(abs(length) / rule.one_mark)
    return f"{marks} mark" if marks == "1" else f"{marks} marks"


def _times_too_large(height: float) -> int:
    """Return by how much the drift can be drawn too large: 1, 2 or 5, with noughts."""
    most = _ROOM / height
    size = 10 ** max(0, math.floor(math.log10(most)))
    return max((each * size for each in (1, 2, 5) if each * size <= most), default=1)


def _lath(lines: tuple[SteppedLine, ...], frame: Frame) -> list[Shape]:
    """Return the lath with the lines that are meant, and the dividers' way along it."""
    top, bottom = _LATH

    def across(x: float, low: float, high: float) -> Points:
        place = frame.place((x, 0.0))[0]
        return (frame.at(place, low), frame.at(place, high))

    right = frame.at(_SIZE[0] - _RIGHT + 16.0, bottom)
    left = frame.at(_LEFT - 16.0, top)
    shapes: list[Shape] = [
        Wood(rectangle(left[0], right[1], right[0], left[1]), "board", "long", 0.0, line="edge")
    ]
    shapes += [Line(across(line.meant, top, bottom), "edge") for line in lines]
    shapes += [Line(across(line.stepped, top, top + 18.0), "accent") for line in lines]
    shapes.append(Line(across(0.0, top - 10.0, bottom + 10.0), "outline"))
    before = 0.0
    for line in lines:
        x, wide = frame.place((before, 0.0))[0], (line.stepped - before) * frame.scale
        rise = min(34.0, 0.5 * wide)
        shapes.append(
            Line(
                tuple(
                    frame.at(x + wide * part / 16, top - 5.0 - rise * math.sin(math.pi * part / 16))
                    for part in range(17)
                ),
                "pencil",
            )
        )
        before = line.stepped
    return shapes


def _drift(lines: tuple[SteppedLine, ...], half_mark: float, times: int, frame: Frame) -> list[Shape]:
    """Return the drift of every line as a bar, with what one reading leaves and what chance leaves."""
    stretch = frame.scale * times
    left, right = _LEFT, _SIZE[0] - _RIGHT + 16.0
    band = half_mark * stretch
    shapes: list[Shape] = [
        Line(
            (
                frame.at(left, _ZERO - band),
                frame.at(right, _ZERO - band),
                frame.at(right, _ZERO + band),
                frame.at(left, _ZERO + band),
            ),
            "",
            True,
            "void",
        )
    ]
    shapes += [
        Line((frame.at(left, _ZERO + turn * band), frame.at(right, _ZERO + turn * band)), "hidden")
        for turn in (-1, 1)
    ]
    shapes.append(Line((frame.at(left, _ZERO), frame.at(right, _ZERO)), "edge"))
    for line in lines:
        x = frame.place((line.meant, 0.0))[0]
        shapes.append(Line((frame.at(x, _ZERO), frame.at(x, _ZERO - line.drift * stretch)), "accent"))
    if lines[-1].scatter:
        for turn in (-1, 1):
            way = [frame.at(left, _ZERO)]
            for line in lines:
                way.append(frame.at(frame.place((line.meant, 0.0))[0], _ZERO + turn * line.scatter * stretch))
            shapes.append(Line(tuple(way), "thin"))
    return shapes


def _words(lines: tuple[SteppedLine, ...], rule: Rule, times: int, frame: Frame) -> list[Shape]:
    stretch, last = frame.scale * times, lines[-1]
    x = _SIZE[0] - _RIGHT + 26.0
    up = 1.0 if last.drift >= 0 else -1.0
    named = sorted(
        (
            (_ZERO - last.drift * stretch, "dividers, one setting", "accent"),
            (_ZERO - up * last.scatter * stretch, "dividers, set anew", "measure"),
            (_ZERO + up * rule.one_mark / 2 * stretch, "one datum, at most", "ink"),
        )
        if last.drift
        else ((_ZERO - rule.one_mark / 2 * stretch, "one datum, at most", "ink"),)
    )
    places = spread([place for place, _, _ in named], 20.0, 190.0, 430.0)
    shapes: list[Shape] = [
        Label(text, frame.at(x, place), role=role, bold=role == "accent", size=_WORD)
        for place, (_, text, role) in zip(places, named, strict=True)
    ]
    enlarged = "as large as it is" if times == 1 else f"{times} times as large as it is"
    shapes += [
        Label("stepped off, and as it is meant", frame.at(_LEFT, 30.0), bold=True, size=15.0),
        Label(f"how far out each line is, drawn {enlarged}", frame.at(_LEFT, 186.0), bold=True, size=15.0),
        Label("red: stepped", frame.at(x, 109.0), role="accent", size=_WORD),
        Label("black: meant", frame.at(x, 130.0), size=_WORD),
    ]
    return shapes


def _start(piece: Piece) -> Settings:
    tenons = piece.joint.tenons
    step = tenons[0].width if tenons else piece.post.square
    return {"step": step, "count": 8.0, "error": 50.0}


dividers_and_datum = View(
    name="dividers_and_datum",
    draw=_draw,
    controls=(
        LengthControl("step", "one step", ("1/2", "4"), ("10", "100")),
        StepControl("count", "steps", "steps", Fraction(1), Fraction(16)),
        StepControl("error", "out by", "% of a mark", Fraction(-100), Fraction(100), Fraction(5)),
    ),
    start=_start,
)
