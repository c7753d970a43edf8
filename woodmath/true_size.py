"""What a sheet at true size needs: a drawing in another frame, how far it reaches, bars to check the print by."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from woodmath.drawing import Angle, Dimension, Drawing, Frame, Label, Point, Shape
from woodmath.fractions_in_print import set_fractions
from woodmath.layout import wrapped
from woodmath.lettering import text_width
from woodmath.paper import UNITS_IN_A_MILLIMETRE
from woodmath.pens import Body, Disc, Mark, Motion, Words
from woodmath.rule_reading import INCH

_EDGE = 10.0
_BESIDE, _ABOVE, _BELOW = 26.0, 10.0, 17.0
_REMINDER = "Print at 100 %, measure before you cut: all four bars must be true."


def reframed(drawing: Drawing, frame: Frame) -> Drawing:
    """Put a drawing in another frame: its lengths scale, its labels stay as far from what they name.

    Parameters
    ----------
    drawing : Drawing
        In any frame.
    frame : Frame
        The frame that it is to have.

    Returns
    -------
    Drawing
        An angle's arc never grows, so that it stays within the corner that it stands in.

    >>> from woodmath.drawing import Line
    >>> line = Drawing("a line", Frame(96, 48, 0, 0, 10), (Line(((1, 1), (2, 2))),), "Short.")
    >>> reframed(line, Frame(96, 48, 0, 0, 20)).frame.scale
    20
    """
    shapes: list[Shape] = []
    for shape in drawing.shapes:
        if isinstance(shape, Label) and shape.point:
            (x, y), (from_x, from_y) = drawing.frame.place(shape.where), drawing.frame.place(shape.point)
            to_x, to_y = frame.place(shape.point)
            shapes.append(replace(shape, where=frame.at(to_x + x - from_x, to_y + y - from_y)))
        elif isinstance(shape, Angle):
            shapes.append(replace(shape, radius=shape.radius * min(1.0, frame.scale / drawing.frame.scale)))
        else:
            shapes.append(shape)
    return replace(drawing, frame=frame, shapes=tuple(shapes))


def extent(painted: Iterable[Mark]) -> tuple[float, float, float, float]:
    """Left, top, right and bottom of everything that is seen, in picture units.

    Parameters
    ----------
    painted : iterable of marks
        What is painted, with the room that pens and words take.

    Returns
    -------
    (float, float, float, float)
        Zeros where nothing is painted.

    >>> extent((Disc((10.0, 20.0), 3.0, None, "ink"),))
    (7.0, 17.0, 13.0, 23.0)
    """
    boxes = []
    for mark in painted:
        if isinstance(mark, Words):
            boxes.append(mark.box)
            continue
        if isinstance(mark, Body):
            boxes.append(extent(mark.first))
            continue
        reach = mark.pen.width / 2 if mark.pen else 0.0
        if isinstance(mark, Motion):
            reach = max(reach, mark.dot)
            points = [point for frame in mark.frames for point in frame]
        elif mark.clip:
            points = list(mark.clip)
        elif isinstance(mark, Disc):
            reach += mark.radius
            points = [mark.centre]
        else:
            points = [point for line in mark.lines for point in line]
        xs, ys = [x for x, _ in points], [y for _, y in points]
        boxes.append((min(xs) - reach, min(ys) - reach, max(xs) + reach, max(ys) + reach))
    lefts, tops, rights, bottoms = zip(*boxes or [(0.0, 0.0, 0.0, 0.0)], strict=True)
    return (min(lefts), min(tops), max(rights), max(bottoms))


def room_beside_the_bars(width: float, height: float) -> tuple[float, float]:
    """Width and height that a sheet leaves for the drawing, in millimetres.

    Parameters
    ----------
    width, height : float
        Of the sheet, in millimetres.

    >>> room_beside_the_bars(210.0, 297.0)
    (164.0, 250.0)
    """
    return (width - 2 * _EDGE - _BESIDE, height - 2 * _EDGE - _ABOVE - _BELOW)


def middle_of_the_room(width: float, height: float) -> Point:
    """Middle of the room for the drawing, in millimetres from the sheet's lower left corner.

    Parameters
    ----------
    width, height : float
        Of the sheet, in millimetres.

    >>> middle_of_the_room(210.0, 297.0)
    (118.0, 152.0)
    """
    wide, high = room_beside_the_bars(width, height)
    return (_EDGE + _BESIDE + wide / 2, _EDGE + _BELOW + high / 2)


def bars_and_title(
    title: str, width: float, height: float, count: str, place: str = "", kept_free: float = 0.0
) -> Drawing:
    """Draw what every sheet at true size carries: title, bars in both directions, the reminder to measure them.

    Parameters
    ----------
    title : str
        What is on the sheet.
    width, height : float
        Of the sheet, in millimetres.
    count : str
        Which sheet of how many; at the upper right. "" where something else is to stand there.
    place : str
        Which part of a larger drawing it is, below the title; "" for the whole.
    kept_free : float
        Width at the lower right corner that nothing is written on, in millimetres.

    Returns
    -------
    Drawing
        In millimetres of the sheet, from its lower left corner.

    >>> [shape.text for shape in bars_and_title("a", 210.0, 297.0, "").shapes if isinstance(shape, Dimension)]
    ['100 mm', '100 mm', '4 in', '4 in']
    """
    corner_x, corner_y, top = _EDGE + 6.0, _EDGE, height - _EDGE - 3.0
    beside_count = max(text_width(count, 15.0) / UNITS_IN_A_MILLIMETRE + 6.0, 30.0)
    room = (width - 2 * _EDGE - beside_count) * UNITS_IN_A_MILLIMETRE
    start = corner_x + 108.0
    reminder = wrapped(_REMINDER, 13.0, False, (width - _EDGE - start - kept_free) * UNITS_IN_A_MILLIMETRE)
    shapes: list[Shape] = []
    for step, (text, length) in enumerate((("100 mm", 100.0), ("4 in", 4 * float(INCH)))):
        x, y = corner_x + 11.0 * step, corner_y + 7.0 * step
        shapes += [
            Dimension((corner_x, y), (corner_x + length, y), text, 10.0),
            Dimension((x, corner_y + 17.0), (x, corner_y + 17.0 + length), text, -10.0, 30.0 * step),
        ]
    shapes += [
        Label(line, (_EDGE, top - 5.0 * row), bold=True)
        for row, line in enumerate(wrapped(set_fractions(title), 15.0, True, room)[: 1 if place else 2])
    ]
    if place:
        shapes.append(Label(place, (_EDGE, top - 5.0), role="quiet", size=13.0))
    shapes += [
        Label(line, (start, corner_y + 13.0 - 4.6 * row), size=13.0) for row, line in enumerate(reminder)
    ]
    if count:
        shapes.append(Label(count, (width - _EDGE, top), side="left", role="quiet"))
    size = (width * UNITS_IN_A_MILLIMETRE, height * UNITS_IN_A_MILLIMETRE)
    return Drawing(title, Frame(*size, 0.0, 0.0, UNITS_IN_A_MILLIMETRE), tuple(shapes), "")
