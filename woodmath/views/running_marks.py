"""Equal parts marked along three story sticks: rounded one by one, rounded to add up, and rounded from one datum."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING

from woodmath.drawing import Drawing, Frame, Label, Line, Shape, Wood, rectangle
from woodmath.numbers_as_written import number_shown
from woodmath.rule import SAME_LENGTH, Rule
from woodmath.running_marks import RunningMarks, marked_to_sum, marks_along, rounded_alone
from woodmath.scaling import scaled
from woodmath.views.view import ChoiceControl, LengthControl, Settings, StepControl, View, number

if TYPE_CHECKING:
    from woodmath.piece import Piece

_SIZE = (640.0, 420.0)
_LEFT, _RIGHT = 34.0, 606.0
_ROWS = (96.0, 206.0, 316.0)
_STICK = 44.0
_DATUM = 14.0
_SHARE_OF_A_PART = 0.8
_HALF_A_MARK_AT_MOST = 0.22
_SHARE_OF_A_ZONE = 0.4
"""Of the stick's height: wood stays above it, so that the stick is seen to be one."""


@dataclass(frozen=True)
class _Magnified:
    """Where things stand in the picture: true places to scale, what they are out by magnified."""

    frame: Frame
    first: float
    per_unit: float
    times: float

    def place(self, exact: float, error: float = 0.0) -> float:
        """Return how far from the picture's left edge a line stands, in picture units."""
        return self.first + exact * self.per_unit + error * self.times

    @property
    def magnified(self) -> float:
        """How many times larger than the distances between the lines their errors are drawn."""
        return self.times / self.per_unit

    def box(self, left: float, top: float, right: float, bottom: float) -> tuple[tuple[float, float], ...]:
        """Return a rectangle of the picture, in length units."""
        (low_x, low_y), (high_x, high_y) = self.frame.at(left, bottom), self.frame.at(right, top)
        return rectangle(low_x, low_y, high_x, high_y)

    def upright(self, x: float, top: float, bottom: float) -> tuple[tuple[float, float], ...]:
        """Return an upright line of the picture, in length units."""
        return (self.frame.at(x, top), self.frame.at(x, bottom))


def _draw(rule: Rule, settings: Settings) -> Drawing:
    count, coarse = round(number(settings, "count")), int(str(settings["marks"]))
    used = Rule(rule.unit, rule.mark_size * coarse)
    part = scaled(number(settings, "part"), number(settings, "scale"))
    ways = (
        ("each part rounded by itself", rounded_alone([part] * count, used)),
        ("parts rounded so that they add up", marked_to_sum([part] * count, used)),
        ("running sums from one datum", marks_along([part] * count, used)),
    )
    seen = _magnified(used, part, count, max(way.furthest for _, way in ways))
    shapes: list[Shape] = []
    for top, (name, way) in zip(_ROWS, ways, strict=True):
        shapes += _stick(seen, used, way, top)
        shapes += _words(seen, used, name, way, top)
    alone, to_sum, along = (way for _, way in ways)
    return Drawing(
        title=f"{count} equal parts marked along a story stick in three ways, the errors magnified",
        frame=seen.frame,
        shapes=(*shapes, *_true_places(seen, along)),
        headline=_headline(used, count, alone),
        told=f"Each part is {number_shown(part, 4)} {rule.unit_mark} long, marked to "
        f"{used.mark(used.one_mark, unit=True)}. Rounded so that they add up, a line is "
        f"out by {_in_marks(to_sum.furthest, used)} at most; from one datum by {_in_marks(along.furthest, used)}.",
    )


def _magnified(rule: Rule, part: float, count: int, furthest: float) -> _Magnified:
    room = _RIGHT - _LEFT - 2 * _DATUM
    per_unit = room / (part * (count + _SHARE_OF_A_PART))
    apart = part * per_unit
    times = _HALF_A_MARK_AT_MOST * apart / (rule.one_mark / 2)
    if furthest > SAME_LENGTH:
        times = min(times, _SHARE_OF_A_PART * apart / furthest)
    return _Magnified(Frame(*_SIZE, 0.0, 0.0, 1.0), _LEFT + _DATUM, per_unit, times)


def _stick(seen: _Magnified, rule: Rule, way: RunningMarks, top: float) -> list[Shape]:
    """Return a stick with the zone of half a mark about each true place, and the lines where they fall."""
    bottom = top + _STICK
    zone_top = bottom - _SHARE_OF_A_ZONE * _STICK
    shapes: list[Shape] = [Wood(seen.box(_LEFT, top, _RIGHT, bottom), "board", "long")]
    half = rule.one_mark / 2
    for exact in way.exact:
        zone = seen.box(seen.place(exact, -half), zone_top, seen.place(exact, half), bottom)
        shapes.append(Line(zone, "", True, "void"))
    shapes.append(Line(seen.box(_LEFT, top, _RIGHT, bottom), "outline", True))
    shapes.append(Line(seen.upright(seen.place(0.0), top, bottom), "outline"))
    for exact, error in zip(way.exact, way.errors, strict=True):
        role = "accent" if abs(error) > half + SAME_LENGTH else "outline"
        shapes.append(Line(seen.upright(seen.place(exact, error), top, bottom), role))
    return shapes


def _true_places(seen: _Magnified, along: RunningMarks) -> list[Shape]:
    numbers = _ROWS[-1] + _STICK + 22.0
    shapes: list[Shape] = [
        Line(seen.upright(seen.place(exact), top - 7.0, top + _STICK + 7.0), "centre")
        for top in _ROWS
        for exact in along.exact
    ]
    shapes += [
        Label(called, seen.frame.at(seen.place(exact), numbers), side="middle", role="quiet", size=13.0)
        for called, exact in (("datum", 0.0), *((str(n), at) for n, at in enumerate(along.exact, start=1)))
    ]
    larger = number_shown(seen.magnified, 0 if seen.magnified >= 10 else 1)
    legend = f"dash and dot: true places; light: half a mark to either side, drawn {larger} times as large"
    shapes.append(Label(legend, seen.frame.at(_RIGHT, 34.0), side="left", role="quiet", size=13.0))
    return shapes


def _words(seen: _Magnified, rule: Rule, name: str, way: RunningMarks, top: float) -> list[Shape]:
    out = way.furthest > rule.one_mark / 2 + SAME_LENGTH
    return [
        Label(name, seen.frame.at(_LEFT, top - 20.0), side="right", bold=True, size=14.0),
        Label(
            f"worst line {_in_marks(way.furthest, rule)} out"
            if way.furthest > SAME_LENGTH
            else "all in place",
            seen.frame.at(_RIGHT, top - 20.0),
            side="left",
            role="accent" if out else "ink",
            bold=out,
            size=14.0,
        ),
    ]


def _in_marks(error: float, rule: Rule) -> str:
    marks = number_shown(error / rule.one_mark, 1)
    return f"{marks} mark" if marks == "1" else f"{marks} marks"


def _headline(rule: Rule, count: int, alone: RunningMarks) -> str:
    last = alone.errors[-1]
    if abs(last) <= SAME_LENGTH:
        return f"The parts lie on the marks, and line {count} stands where it should."
    side = "past" if last > 0 else "short of"
    return (
        f"Rounded one by one, line {count} stands {number_shown(abs(last), 3)} {rule.unit_mark} {side} its place: "
        f"{_in_marks(abs(last), rule)}."
    )


def _start(piece: Piece) -> Settings:
    part = piece.joint.tenons[0].width if piece.joint.tenons else piece.post.square
    return {"part": part, "scale": float(Fraction(167, 100)), "count": 6, "marks": "1"}


running_marks_compared = View(
    name="running_marks_compared",
    draw=_draw,
    controls=(
        LengthControl("part", "part, in the drawing", ("1/2", "6"), ("10", "150")),
        StepControl("count", "parts, end to end", "parts", Fraction(2), Fraction(12)),
        StepControl("scale", "scale", "times", Fraction(1, 2), Fraction(3), Fraction(1, 100)),
        ChoiceControl(
            "marks",
            "marks in use",
            (("all marks of the rule", "1"), ("every second mark", "2"), ("every fourth mark", "4")),
        ),
    ),
    start=_start,
)
