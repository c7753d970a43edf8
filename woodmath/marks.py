"""A drawing turned into the few marks that a renderer must know, from strokes to motions, in picture units.

Drafting conventions live here: the gap in a dimension line, arrowheads, leaders, words over everything else. Both
renderers paint these marks, so paper and screen agree.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from woodmath.drawing import (
    Angle,
    Circle,
    Dimension,
    Drawing,
    Frame,
    Hatch,
    Label,
    Line,
    MovingBody,
    MovingLine,
    Point,
    Wood,
)
from woodmath.fractions_in_print import set_fractions
from woodmath.grain import hatching, long_grain, rings
from woodmath.lettering import BELOW_THE_LINE, LETTER_HEIGHT, text_width
from woodmath.pens import PENS, Body, Disc, Mark, Motion, Pen, Stroke, Words

_DIMENSION_SIZE = 15.0
_NOTE_SIZE = 13.0
_ARROW = 9.0
_OVERSHOOT = 5.0
_SET_OFF = 4.0


def marks(drawing: Drawing) -> tuple[Mark, ...]:
    """Turn a drawing into strokes, discs, words and what moves, in picture units from the upper left corner.

    Parameters
    ----------
    drawing : Drawing
        What is to be painted.

    Returns
    -------
    tuple of Stroke, Disc, Words, Motion or Body
        In painting order; words last, so that no line runs over a number.

    >>> from woodmath.drawing import Drawing, Frame, Line
    >>> picture = Drawing("a line", Frame(100.0, 80.0, 0.0, 0.0, 10.0), (Line(((1, 1), (2, 2))),), "It is short.")
    >>> marks(picture)[0].lines
    (((10.0, 70.0), (20.0, 60.0)),)
    """
    painted = [mark for shape in drawing.shapes for mark in _marks_of(shape, drawing.frame)]
    return (
        *(mark for mark in painted if not isinstance(mark, Words)),
        *(mark for mark in painted if isinstance(mark, Words)),
    )


def _marks_of(shape: object, frame: Frame) -> Iterator[Mark]:
    match shape:
        case Wood():
            yield from _wood(shape, frame)
        case Line():
            placed = tuple(map(frame.place, shape.points))
            yield Stroke((placed,), PENS.get(shape.role), shape.closed, shape.fill)
        case Circle():
            radius = shape.dot or shape.radius * frame.scale
            yield Disc(frame.place(shape.centre), radius, PENS.get(shape.role), shape.fill)
        case Dimension():
            yield from _dimension(shape, frame)
        case Angle():
            yield from _angle(shape, frame)
        case Label():
            yield from _label(shape, frame)
        case Hatch():
            outline = tuple(map(frame.place, shape.outline))
            yield from hatching(outline, shape.angle, shape.spacing, shape.role)
        case MovingLine():
            frames = tuple(tuple(map(frame.place, points)) for points in shape.frames)
            yield Motion(
                frames, PENS[shape.role], shape.seconds, shape.closed, shape.dot, shape.again, shape.fill
            )
        case MovingBody():
            parts = tuple(
                mark
                for part in shape.shapes
                for mark in _marks_of(part, frame)
                if isinstance(mark, Stroke | Disc)
            )
            poses = tuple((*frame.place((x, y)), degrees) for x, y, degrees in shape.poses)
            yield Body(parts, frame.place(shape.about), poses, shape.seconds, shape.again)


def _wood(wood: Wood, frame: Frame) -> Iterator[Mark]:
    outline = tuple(map(frame.place, wood.outline))
    yield Stroke((outline,), None, True, wood.tint)
    if wood.grain == "end":
        yield from rings(outline, frame.place(wood.pith) if wood.pith else None, wood.tint)
    else:
        yield from long_grain(outline, wood.angle, wood.tint)
    if wood.line:
        yield Stroke((outline,), PENS[wood.line], True)


def _arrow(tip: Point, direction: Point) -> Stroke:
    """Return a slim filled arrowhead whose tip points along a direction of length 1."""
    back = (tip[0] - _ARROW * direction[0], tip[1] - _ARROW * direction[1])
    half = (-direction[1] * _ARROW * 0.26, direction[0] * _ARROW * 0.26)
    wings = ((back[0] + half[0], back[1] + half[1]), (back[0] - half[0], back[1] - half[1]))
    return Stroke(((tip, *wings),), None, True, "measure")


def _dimension(dimension: Dimension, frame: Frame) -> Iterator[Mark]:
    start, end = frame.place(dimension.start), frame.place(dimension.end)
    length = math.dist(start, end)
    pen = PENS["thin"]
    if length < 1e-6:
        return
    way = ((end[0] - start[0]) / length, (end[1] - start[1]) / length)
    off = (way[1], -way[0])
    sign = math.copysign(1.0, dimension.offset) if dimension.offset else 0.0

    def moved(point: Point, distance: float) -> Point:
        return (point[0] + off[0] * distance, point[1] + off[1] * distance)

    if sign:
        reach = dimension.offset + sign * _OVERSHOOT
        for point in (start, end):
            yield Stroke(((moved(point, sign * _SET_OFF), moved(point, reach)),), pen)
    first, last = moved(start, dimension.offset), moved(end, dimension.offset)
    text = set_fractions(dimension.text)
    width = text_width(text, _DIMENSION_SIZE, bold=True)
    room = abs(way[0]) * (width + 10) + abs(way[1]) * (_DIMENSION_SIZE + 8)
    middle = length / 2 + dimension.along
    place = (first[0] + way[0] * middle, first[1] + way[1] * middle)
    yield Words(
        text,
        (place[0], place[1] + _DIMENSION_SIZE * (LETTER_HEIGHT - BELOW_THE_LINE) / 2),
        _DIMENSION_SIZE,
        "measure",
        "middle",
        True,
    )
    gap_start, gap_end = middle - room / 2, middle + room / 2
    pieces = [(0.0, min(gap_start, length)), (max(gap_end, 0.0), length)]
    drawn = [(low, high) for low, high in pieces if high - low > 0.5]
    if drawn:
        yield Stroke(
            tuple(
                tuple((first[0] + way[0] * run, first[1] + way[1] * run) for run in piece) for piece in drawn
            ),
            pen,
        )
    if gap_start > _ARROW or gap_end < 0:
        yield _arrow(first, (-way[0], -way[1]))
    if gap_end < length - _ARROW or gap_start > length:
        yield _arrow(last, way)


def _angle(angle: Angle, frame: Frame) -> Iterator[Mark]:
    centre = frame.place(angle.vertex)
    turns = [math.radians(angle.start + (angle.end - angle.start) * step / 24) for step in range(25)]
    points = tuple(
        (centre[0] + angle.radius * math.cos(t), centre[1] - angle.radius * math.sin(t)) for t in turns
    )
    yield Stroke((points,), PENS[angle.role])
    text = set_fractions(angle.text)
    middle = math.radians((angle.start + angle.end) / 2)
    width = text_width(text, _DIMENSION_SIZE, True)
    away = angle.radius + 8 + abs(math.cos(middle)) * width / 2 + abs(math.sin(middle)) * _DIMENSION_SIZE / 2
    where = (
        centre[0] + away * math.cos(middle),
        centre[1] - away * math.sin(middle) + 0.26 * _DIMENSION_SIZE,
    )
    if text:
        yield Words(text, where, _DIMENSION_SIZE, PENS[angle.role].colour, "middle", True)


def _label(label: Label, frame: Frame) -> Iterator[Mark]:
    x, y = frame.place(label.where)
    anchor = {"right": "start", "left": "end", "middle": "middle"}[label.side]
    if label.point is not None:
        point = frame.place(label.point)
        near = {"right": x - 6, "left": x + 6, "middle": x}[label.side]
        level = y if label.side != "middle" else y + math.copysign(12.0, point[1] - y)
        yield Stroke((((near, level), point),), Pen("ink", 0.9))
        yield Disc(point, 3.0, None, "ink")
    base = y + label.size * (LETTER_HEIGHT - BELOW_THE_LINE) / 2
    yield Words(set_fractions(label.text), (x, base), label.size, label.role, anchor, label.bold)
    if label.note:
        yield Words(set_fractions(label.note), (x, base + 18), _NOTE_SIZE, "quiet", anchor)
