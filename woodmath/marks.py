"""A drawing turned into the few marks that a renderer must know: strokes, discs and words, in picture units.

Drafting conventions live here: the gap in a dimension line, arrowheads, dash-dot centre lines, growth rings for
end grain and lines along the board for long grain. Both renderers paint these marks, so paper and screen agree.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from woodmath.drawing import (
    Angle,
    Circle,
    Dimension,
    Drawing,
    Frame,
    Hatch,
    Label,
    Line,
    MovingLine,
    Point,
    Points,
    Wood,
)
from woodmath.fractions_in_print import set_fractions
from woodmath.lettering import BELOW_THE_LINE, LETTER_HEIGHT, text_width

PALETTE = {
    "paper": "#fbf7ef",
    "ink": "#2b2622",
    "quiet": "#6b6358",
    "measure": "#1f5f8b",
    "accent": "#b5411e",
    "post": "#ead9ba",
    "post grain": "#c3a06a",
    "end": "#d9a866",
    "end grain": "#ad783a",
    "side": "#b8c6ae",
    "side grain": "#7f9874",
    "board": "#e3c48f",
    "board grain": "#bd9456",
    "void": "#f4ede0",
    "steel": "#c6cdd4",
    "string": "#7a5326",
    "fault": "#f3d3c6",
    "waste": "#f3e9d8",
}


@dataclass(frozen=True)
class Pen:
    """How a line is drawn: its colour's role, its width and its dashes, in picture units."""

    colour: str
    width: float
    dashes: tuple[float, ...] = ()


PENS = {
    "outline": Pen("ink", 2.4),
    "edge": Pen("ink", 1.5),
    "thin": Pen("measure", 1.1),
    "centre": Pen("quiet", 1.0, (12, 4, 2, 4)),
    "hidden": Pen("ink", 1.2, (6, 4)),
    "accent": Pen("accent", 3.6),
    "string": Pen("string", 2.0),
    "pencil": Pen("ink", 1.6),
    "quiet": Pen("quiet", 1.0),
    "fault": Pen("accent", 1.2),
    "waste": Pen("quiet", 0.8),
}
_DIMENSION_SIZE = 15.0
_NOTE_SIZE = 13.0
_ARROW = 9.0
_OVERSHOOT = 5.0
_SET_OFF = 4.0


@dataclass(frozen=True)
class Stroke:
    """One or more lines of one kind; with `clip`, only what lies inside that outline is seen."""

    lines: tuple[Points, ...]
    pen: Pen | None
    closed: bool = False
    fill: str = ""
    clip: Points = ()


@dataclass(frozen=True)
class Disc:
    """A circle; with `clip`, only what lies inside that outline is seen."""

    centre: Point
    radius: float
    pen: Pen | None
    fill: str = ""
    clip: Points = ()


@dataclass(frozen=True)
class Words:
    """A text in one line: its anchor is the start, middle or end of its base line."""

    text: str
    where: Point
    size: float
    colour: str
    anchor: str = "start"
    bold: bool = False

    @property
    def box(self) -> tuple[float, float, float, float]:
        """Left, top, right and bottom of the room that the text takes, by the table of widths."""
        width = text_width(self.text, self.size, self.bold)
        x, y = self.where
        left = {"start": x, "middle": x - width / 2, "end": x - width}[self.anchor]
        return (left, y - LETTER_HEIGHT * self.size, left + width, y + BELOW_THE_LINE * self.size)


@dataclass(frozen=True)
class Motion:
    """A line (or the dot at its place) that goes through its frames again and again."""

    frames: tuple[Points, ...]
    pen: Pen
    seconds: float
    closed: bool
    dot: float


Mark = Stroke | Disc | Words | Motion


def marks(drawing: Drawing) -> tuple[Mark, ...]:
    """Turn a drawing into strokes, discs, words and motions, in picture units from the upper left corner.

    Parameters
    ----------
    drawing : Drawing
        What is to be painted.

    Returns
    -------
    tuple of Stroke, Disc, Words or Motion
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
            yield from _hatch(shape, frame)
        case MovingLine():
            frames = tuple(tuple(map(frame.place, points)) for points in shape.frames)
            yield Motion(frames, PENS[shape.role], shape.seconds, shape.closed, shape.dot)


def _wood(wood: Wood, frame: Frame) -> Iterator[Mark]:
    outline = tuple(map(frame.place, wood.outline))
    yield Stroke((outline,), None, True, wood.tint)
    if wood.grain == "end":
        yield from _rings(outline, frame.place(wood.pith) if wood.pith else None, wood.tint)
    else:
        yield from _long_grain(outline, wood.angle, wood.tint)
    if wood.line:
        yield Stroke((outline,), PENS[wood.line], True)


def _fraction(index: int) -> float:
    """Return a number between 0 and 1 that looks haphazard and is always the same for an index."""
    return (index * 0.6180339887) % 1.0


def _rings(outline: Points, pith: Point | None, tint: str) -> Iterator[Disc]:
    left, top = min(x for x, _ in outline), min(y for _, y in outline)
    right, bottom = max(x for x, _ in outline), max(y for _, y in outline)
    size = max(right - left, bottom - top)
    heart = pith or (left - 0.35 * size, bottom + 0.55 * size)
    corners = [math.dist(heart, corner) for corner in outline]
    inside = left <= heart[0] <= right and top <= heart[1] <= bottom
    radius = size * 0.03 if inside else min(corners) * 0.7
    radii: list[float] = []
    while radius < max(corners):
        radii.append(radius)
        radius += size * (0.014 + 0.026 * _fraction(len(radii) - 1))
    late = radii[2::3]
    early = [ring for ring in radii if ring not in late]
    for rings, width in ((early, 0.7), (late, 1.5)):
        pen = Pen(f"{tint} grain", width)
        yield from (Disc(heart, ring, pen, "", outline) for ring in rings)


def _long_grain(outline: Points, angle: float, tint: str) -> Iterator[Stroke]:
    turn = math.radians(-angle)
    along, across = (math.cos(turn), math.sin(turn)), (-math.sin(turn), math.cos(turn))
    runs = [x * along[0] + y * along[1] for x, y in outline]
    rows = [x * across[0] + y * across[1] for x, y in outline]
    start, length = min(runs), max(runs) - min(runs)
    steps = max(2, min(40, round(length / 16)))
    row, index, lines = min(rows) + 3.0, 0, []
    gap = max(6.5, (max(rows) - min(rows)) / 36)
    while row < max(rows):
        line = []
        for step in range(steps + 1):
            run = start + length * step / steps
            lift = row + 1.3 * math.sin(run / 23 + 7 * _fraction(index)) * (0.4 + _fraction(index + 5))
            line.append((run * along[0] + lift * across[0], run * along[1] + lift * across[1]))
        lines.append(tuple(line))
        row += gap * (0.7 + 0.6 * _fraction(index))
        index += 1
    if lines:
        yield Stroke(tuple(lines), Pen(f"{tint} grain", 0.8), False, "", outline)


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


def _hatch(hatch: Hatch, frame: Frame) -> Iterator[Mark]:
    outline = tuple(map(frame.place, hatch.outline))
    turn = math.radians(-hatch.angle)
    along, across = (math.cos(turn), math.sin(turn)), (-math.sin(turn), math.cos(turn))
    runs = [x * along[0] + y * along[1] for x, y in outline]
    rows = [x * across[0] + y * across[1] for x, y in outline]
    count = int((max(rows) - min(rows)) / hatch.spacing) + 1
    lines = tuple(
        tuple(
            (run * along[0] + row * across[0], run * along[1] + row * across[1])
            for run in (min(runs), max(runs))
        )
        for row in (min(rows) + hatch.spacing * (index + 0.5) for index in range(count))
    )
    yield Stroke((outline,), None, True, hatch.role)
    yield Stroke(lines, PENS[hatch.role], False, "", outline)
    yield Stroke((outline,), PENS[hatch.role], True)
