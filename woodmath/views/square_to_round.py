"""The end of a post on its way from square to round: the lines that are gauged, the waste, the round within."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from woodmath.drawing import (
    Circle,
    Dimension,
    Drawing,
    Frame,
    Hatch,
    Label,
    Line,
    Point,
    Points,
    Shape,
    Wood,
    arc,
)
from woodmath.finding import in_decimals
from woodmath.rule import Rule
from woodmath.turning import (
    OCTAGON_SIDES,
    SIXTEEN_SIDES,
    SQUARE_SIDES,
    corner_beyond_round,
    flat_of,
    octagon_setting,
    polygon,
    sixteen_setting,
)
from woodmath.views.view import ChoiceControl, LengthControl, Settings, View, number

if TYPE_CHECKING:
    from woodmath.piece import Piece

_SIZE = (640.0, 470.0)
_MARGINS = (86.0, 264.0, 64.0, 66.0)
_COLUMN = 414.0
_ROUND = 48
_ROWS = ((130.0, 200.0, 330.0), (130.0, 300.0), (260.0,), (235.0,))
"""How far down the words beside the picture stand, stage by stage."""
_STAGES = ("square", "octagon", "sixteen", "round")
_SIDES = (SQUARE_SIDES, OCTAGON_SIDES, SIXTEEN_SIDES)


def _draw(rule: Rule, settings: Settings) -> Drawing:
    square, stage = number(settings, "square"), _STAGES.index(str(settings["stage"]))
    half = square / 2
    frame = Frame.around(((-half, -half), (half, half)), _SIZE, _MARGINS)
    headline, told = _told(rule, square, stage)
    return Drawing(
        title="The end of a post on its way from square to round",
        frame=frame,
        shapes=(
            *_wood(square, stage),
            *_lines(square, stage, frame),
            *_sizes(rule, square, stage),
            *_labels(rule, square, stage, frame),
        ),
        headline=headline,
        told=told,
    )


def _section(square: float, stage: int) -> Points:
    if stage < len(_SIDES):
        return polygon(_SIDES[stage], square)
    return arc((0.0, 0.0), square / 2, 0.0, 360.0, _ROUND)[:-1]


def _wood(square: float, stage: int) -> list[Shape]:
    """Return what is left, what was just taken away round it, and where the square was."""
    pith = (-1.1 * square, -0.9 * square)
    shapes: list[Shape] = []
    if stage > 1:
        shapes.append(Line(_section(square, 0), "quiet", True))
    if stage:
        shapes.append(Hatch(_section(square, stage - 1), "waste"))
    shapes.append(Wood(_section(square, stage), "post", "end", pith=pith, line="outline"))
    return shapes


def _lines(square: float, stage: int, frame: Frame) -> list[Shape]:
    """Return the lines of the next step, the round within, and the compass that finds the octagon."""
    half, beyond = square / 2, frame.length(18.0)
    shapes: list[Shape] = [
        Line(((-half - beyond, 0.0), (half + beyond, 0.0)), "centre"),
        Line(((0.0, -half - beyond), (0.0, half + beyond)), "centre"),
    ]
    if stage < len(_SIDES):
        shapes.append(Line(arc((0.0, 0.0), half, 0.0, 360.0, _ROUND)[:-1], "hidden", True))
    if stage + 1 < len(_SIDES):
        shapes += [Line(ends, "accent") for ends in _cuts(square, stage)]
    if stage == 0:
        reach = math.hypot(half, half)
        shapes.append(Line(arc((-half, -half), reach, 0.0, 90.0), "pencil"))
        shapes.append(Circle((-half, -half), 0.0, "edge", "steel", dot=4.0))
    return shapes


def _cuts(square: float, stage: int) -> list[tuple[Point, Point]]:
    """Return the new flats of the next step: every other flat of the next section."""
    corners = polygon(_SIDES[stage + 1], square)
    ends = list(zip(corners, (*corners[1:], corners[0]), strict=True))
    return ends[0::2]


def _sizes(rule: Rule, square: float, stage: int) -> list[Shape]:
    half, flat = square / 2, flat_of(OCTAGON_SIDES, square)
    left, right = -flat / 2, flat / 2
    sizes: list[Shape] = [
        Dimension((half, -half), (-half, -half), rule.mark(square), 34.0),
    ]
    if stage == 0:
        sizes += [
            Dimension((right, half), (half, half), rule.mark(octagon_setting(square)), 30.0),
            Dimension((-half, -half), (-half, right), rule.mark(right + half), 34.0),
        ]
    elif stage == 1:
        setting = sixteen_setting(square)
        sizes += [
            Dimension((left, half), (right, half), rule.mark(flat), 58.0),
            Dimension((right - setting, half), (right, half), rule.mark(setting), 26.0),
        ]
    elif stage == 2:
        narrow = flat_of(SIXTEEN_SIDES, square)
        sizes.append(Dimension((-narrow / 2, half), (narrow / 2, half), rule.mark(narrow), 34.0))
    return sizes


def _labels(rule: Rule, square: float, stage: int, frame: Frame) -> list[Shape]:
    """Return what stands in the column beside the picture: the step, its setting, what is left for the gouge."""
    lines: list[tuple[str, str, Point | None]] = []
    if stage == 0:
        setting = rule.mark(octagon_setting(square))
        lines = [
            (f"{setting} from each corner", "gauged along both faces", None),
            ("or with the compass", "on a corner, open to the middle", None),
        ]
    elif stage == 1:
        lines = [(f"{rule.mark(sixteen_setting(square))} from each corner", "along both flats", None)]
    if stage < len(_SIDES):
        # The lower corner of the flat at the right.
        corner = _section(square, stage)[_SIDES[stage] // SQUARE_SIDES - 1]
        beyond = corner_beyond_round(_SIDES[stage], square)
        lines.append((f"{in_decimals(rule, beyond)} beyond the round", "at every corner", corner))
    else:
        lines.append((f"round, {rule.mark(square)}", "the largest in the square", (square / 2, 0.0)))
    return [
        Label(text, frame.at(_COLUMN, row), point, note, bold=True, size=14.0)
        for (text, note, point), row in zip(lines, _ROWS[stage], strict=True)
    ]


def _told(rule: Rule, square: float, stage: int) -> tuple[str, str]:
    left = [in_decimals(rule, corner_beyond_round(sides, square)) for sides in _SIDES]
    if stage == 0:
        setting = octagon_setting(square)
        return (
            f"Square to octagon: set the gauge to {rule.mark(setting, unit=True, remainder=True)} from each corner.",
            f"From the far corner the same line is {rule.mark(square - setting, remainder=True)}, half the diagonal of "
            f"the square. At the corners {left[0]} stands beyond the round.",
        )
    if stage == 1:
        return (
            "Octagon to sixteen: set "
            f"{rule.mark(sixteen_setting(square), unit=True, remainder=True)} off along each flat from every corner.",
            f"Each of the eight flats is {rule.mark(flat_of(OCTAGON_SIDES, square), remainder=True)} wide. At the "
            f"corners {left[1]} stands beyond the round; it was {left[0]} on the square.",
        )
    if stage == 2:
        return (
            f"Sixteen flats: at the corners only {left[2]} stands beyond the round.",
            f"Each flat is {rule.mark(flat_of(SIXTEEN_SIDES, square), remainder=True)} wide. On the octagon {left[1]} "
            "stood beyond the round: every doubling leaves about a quarter.",
        )
    return (
        f"Round: {rule.mark(square, unit=True)} thick, as thick as the square was.",
        f"The gouge took what sixteen flats had left at their corners, {left[2]}.",
    )


def _start(piece: Piece) -> Settings:
    return {"square": piece.post.square, "stage": _STAGES[0]}


square_to_round = View(
    name="square_to_round",
    draw=_draw,
    controls=(
        LengthControl("square", "square, side", ("1", "4"), ("25", "100")),
        ChoiceControl(
            "stage",
            "stage",
            (
                ("square, lines gauged", "square"),
                ("octagon", "octagon"),
                ("sixteen flats", "sixteen"),
                ("round", "round"),
            ),
        ),
    ),
    start=_start,
)
