"""A rosette drawn like a lesson: one thing done with the compass at a time, and then the scaffold is rubbed out."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import TYPE_CHECKING

from woodmath.drawing import Circle, Dimension, Drawing, Frame, Label, Point, Shape, Wood, rectangle
from woodmath.numbers_as_written import number_shown
from woodmath.ornament_rosette import chord, compass_points, petal_length, points_to_divide, reach, rosette
from woodmath.ornament_strokes import CompassArc, Motif, Step
from woodmath.piece_ornamented import fitted_to
from woodmath.rule import Rule
from woodmath.views.ornament_drawn import FINELY, compass, drawn, growing, painted
from woodmath.views.view import ChoiceControl, LengthControl, Settings, StepControl, View, number

if TYPE_CHECKING:
    from woodmath.piece import Piece

_SIZE = (640.0, 560.0)
_MARGINS = (24.0, 84.0, 74.0, 118.0)
_BOARD = 1.26
_NUMBERS = 1.12
_SECONDS = 0.9
_LAST = 15


def _draw(rule: Rule, settings: Settings) -> Drawing:
    petals, radius = round(number(settings, "petals")), number(settings, "radius")
    motif = rosette(petals, radius)
    taken = min(max(round(number(settings, "step")), 0), len(motif.steps))
    moving = settings["motion"] == "moving"
    half = _BOARD * reach(radius, petals)
    frame = Frame.around(((-half, -half), (half, half)), _SIZE, _MARGINS)
    shapes: list[Shape] = [Wood(rectangle(-half, -half, half, half), "board", "long", 0.0, line="edge")]
    if moving:
        shapes += drawn(
            (stroke for step in motif.steps for stroke in step.strokes), "quiet", frame.length(FINELY)
        )
        shapes += growing(motif, _SECONDS, "accent")
    elif taken == len(motif.steps):
        shapes += painted(motif.regions, frame.length(FINELY))
        shapes += drawn(motif.kept, "pencil", frame.length(FINELY))
    else:
        shapes += _so_far(motif, taken, frame.length(FINELY))
    shapes.append(Circle((0.0, 0.0), 0.0, "edge", "ink", dot=2.4))
    if (moving or taken > 1) and (moving or taken < len(motif.steps)):
        shapes += _numbers(petals, radius)
    if not moving and 0 < taken < len(motif.steps):
        shapes += _compass_of(motif.steps[taken - 1])
    length = petal_length(radius, petals)
    shapes += [
        Dimension((0.0, -half), (radius, -half), f"r = {rule.mark(radius)}", -34.0),
        Dimension((-half, 0.0), (-half, length), f"p = {rule.mark(length)}", 46.0),
        Label(_counted(taken, motif, moving), frame.at(118.0, 540.0), role="quiet", size=14.0),
    ]
    return Drawing(
        title=f"A rosette of {petals} petals, drawn with one setting of the compass",
        frame=frame,
        shapes=tuple(shapes),
        headline=_headline(motif, taken, moving),
        told=_told(rule, petals, radius, length),
    )


def _so_far(motif: Motif, taken: int, finely: float) -> Iterator[Shape]:
    """Yield what has been drawn: the scaffold thin, what stays as pencil, the newest in the accent."""
    for place, step in enumerate(motif.steps[:taken], 1):
        newest = place == taken
        yield from drawn(step.strokes, "accent" if newest else "pencil" if step.kept else "quiet", finely)


def _compass_of(step: Step) -> Iterator[Shape]:
    """Yield the compass where the newest arc leaves it, its hinge toward the middle; for the first circle, above."""
    arcs = [stroke for stroke in step.strokes if isinstance(stroke, CompassArc)]
    if arcs:
        last = arcs[-1]
        x, y = last.centre
        at_the_middle = abs(x) + abs(y) < last.radius / 1000
        pencil: Point = last.at(last.start + 30.0) if at_the_middle else last.ends[1]
        yield from compass(last.centre, pencil, (0.0, last.radius) if at_the_middle else (0.0, 0.0))


def _numbers(petals: int, radius: float) -> Iterator[Shape]:
    """Yield the number of every compass point on the circle, beside it."""
    marks = zip(compass_points(radius, petals), compass_points(radius * _NUMBERS, petals), strict=True)
    for count, (point, beside) in enumerate(marks, 1):
        yield Circle(point, 0.0, "edge", "ink", dot=2.0)
        yield Label(str(count), beside, side="middle", role="quiet", size=13.0)


def _counted(taken: int, motif: Motif, moving: bool) -> str:
    return "draws itself" if moving else f"step {taken} of {len(motif.steps)}"


def _headline(motif: Motif, taken: int, moving: bool) -> str:
    if moving:
        return f"One radius, {len(motif.steps)} steps: it draws itself."
    if taken == 0:
        return "Bare wood, and a mark for the middle: set the compass."
    return motif.steps[taken - 1].words


def _told(rule: Rule, petals: int, radius: float, length: float) -> str:
    parts = points_to_divide(petals)
    opening = chord(radius, parts)
    dividers = (
        "the dividers need no setting of their own, for the radius steps round six times"
        if parts == 6
        else f"the dividers step off {rule.mark(opening)} for {parts} points"
    )
    return (
        f"The compass stays at {rule.mark(radius, unit=True)}; {dividers}. Each petal opens to "
        f"{number_shown(360 / petals)}° and is {rule.mark(length, unit=True)} long."
    )


def _start(piece: Piece) -> Settings:
    return {
        "petals": 6,
        "radius": piece.rule.nearest(fitted_to(piece).radius),
        "step": 5,
        "motion": "still",
    }


ornament_step_by_step = View(
    name="ornament_step_by_step",
    draw=_draw,
    controls=(
        StepControl("petals", "petals", "petals", Fraction(5), Fraction(12)),
        LengthControl("radius", "compass, radius", ("1/2", "6"), ("12", "150")),
        StepControl("step", "step", "steps", Fraction(0), Fraction(_LAST)),
        ChoiceControl("motion", "pencil", (("stays where you put it", "still"), ("draws itself", "moving"))),
    ),
    start=_start,
)
