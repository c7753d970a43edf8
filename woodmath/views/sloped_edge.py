"""The sloping edge of an end under the plane: with the grain it lies down, against it the fibres are torn out."""

from __future__ import annotations

import functools
import math
from collections.abc import Iterator
from fractions import Fraction
from typing import TYPE_CHECKING

from woodmath.drawing import (
    Angle,
    Drawing,
    Frame,
    Hatch,
    Label,
    Line,
    Point,
    Points,
    Shape,
    Wood,
    break_line,
)
from woodmath.planing_direction import fibre_angle, runs_with_the_grain
from woodmath.rule import Rule
from woodmath.views.planes import Cut, plane_at_work
from woodmath.views.view import ChoiceControl, Settings, StepControl, View, number

if TYPE_CHECKING:
    from woodmath.piece import Piece

_SIZE = (720.0, 440.0)
_EDGE, _DEEP = 274.0, 118.0
"""Where the edge lies in the picture, and how much of the panel is seen below it."""
_LEFT, _RIGHT = 96.0, 620.0
_SHAVING = 7.0
_NEXT = 13.0
"""From one torn fibre to the next, in picture units."""
_PLACES = {"up": 0.60, "down": 0.40}
_INSET = (92.0, 96.0)
"""Middle of the small picture of the whole end."""


def _draw(rule: Rule, settings: Settings) -> Drawing:
    splay, run_out = number(settings, "splay"), number(settings, "run_out")
    way = str(settings["direction"])
    frame = Frame(*_SIZE, 0.0, 0.0, 1.0)
    angle = fibre_angle(splay, run_out)
    cuts = tuple(_cuts(splay, run_out, way))
    return Drawing(
        title="The sloping edge of an end, clamped with the edge uppermost, and a plane that goes along it",
        frame=frame,
        shapes=(
            *_panel(splay, angle, cuts, frame),
            *_backing(splay, way, frame),
            *(shape for cut in cuts for shape in plane_at_work(cut, _EDGE, frame)),
            *_angle(angle, frame),
            *_whole_end(splay, run_out, way, frame),
            *_words_beside(frame),
        ),
        headline=_headline(angle, way, any(cut.torn for cut in cuts)),
        told=_told(splay, run_out, angle, way),
    )


def _cuts(splay: float, run_out: float, way: str) -> Iterator[Cut]:
    """Return how the planes go: where each stands, and whether it tears."""
    middle = (_LEFT + _RIGHT) / 2
    for upward in (True, False):
        if way not in ("both", "up" if upward else "down"):
            continue
        place = _LEFT + (_RIGHT - _LEFT) * _PLACES["up" if upward else "down"]
        if way == "both":
            place = middle - 134.0 if upward else middle + 134.0
        yield Cut(
            upward=upward,
            iron=place,
            depth=_SHAVING,
            torn=runs_with_the_grain(splay, run_out, not upward),
        )


def _panel(splay: float, angle: float, cuts: tuple[Cut, ...], frame: Frame) -> Iterator[Shape]:
    slant = _DEEP * math.tan(math.radians(splay))
    surface = tuple(_surface(cuts, angle))
    low = (_RIGHT - slant, _EDGE + _DEEP), (_LEFT - slant, _EDGE + _DEEP)
    outline = (*surface, *break_line(*low))
    yield Wood(tuple(frame.at(*point) for point in outline), "end", "long", angle, line="")
    yield Line(tuple(frame.at(*point) for point in (low[1], *surface, low[0])), "edge")


def _surface(cuts: tuple[Cut, ...], angle: float) -> Iterator[Point]:
    """Return the edge from the lower corner to the upper one: planed behind each plane, as sawn before it."""
    splits = functools.partial(_torn, angle=angle)
    planed = {cut.upward: cut for cut in cuts}
    up, down = planed.get(True), planed.get(False)
    if up is None:
        yield (_LEFT, _EDGE)
    else:
        yield (_LEFT, _EDGE + up.depth)
        if up.torn:
            yield from splits(_LEFT + 8.0, up.iron - 6.0, up.depth)
        yield from ((up.iron, _EDGE + up.depth), (up.iron, _EDGE))
    if down is None:
        yield (_RIGHT, _EDGE)
    else:
        yield from ((down.iron, _EDGE), (down.iron, _EDGE + down.depth))
        if down.torn:
            yield from splits(down.iron + 6.0, _RIGHT - 8.0, down.depth)
        yield (_RIGHT, _EDGE + down.depth)


def _torn(start: float, end: float, depth: float, angle: float) -> Iterator[Point]:
    """Return pits along a stretch of the edge, each as far down along the fibres as they lean over."""
    lean = math.radians(90.0 - angle)
    fibre = (-math.sin(lean), math.cos(lean))
    count = int((end - start) / _NEXT)
    for each in range(count):
        deep = (5.0 + 40.0 * abs(math.sin(lean))) * (0.45 + 0.55 * ((each * 0.618) % 1.0))
        x, y = start + _NEXT * each, _EDGE + depth
        bottom = (x + fibre[0] * deep + _NEXT / 2, y + fibre[1] * deep)
        yield from ((x, y), (min(max(bottom[0], start), end), bottom[1]), (x + 0.75 * _NEXT, y))


def _backing(splay: float, way: str, frame: Frame) -> Iterator[Shape]:
    """Return the waste that is clamped behind the corner to which the plane goes."""
    if way == "both":
        return
    slant = math.tan(math.radians(splay))
    corner, side = (_RIGHT, 1.0) if way == "up" else (_LEFT, -1.0)
    deep = 74.0
    outline: Points = (
        (corner + side, _EDGE),
        (corner + side * 46.0, _EDGE),
        (corner + side * 46.0 - slant * deep, _EDGE + deep),
        (corner + side - slant * deep, _EDGE + deep),
    )
    placed = tuple(frame.at(*point) for point in outline)
    yield Hatch(placed, "waste", 45.0, 7.0)
    yield Line(placed, "edge", True)


def _angle(angle: float, frame: Frame) -> tuple[Shape, ...]:
    vertex = ((_LEFT + _RIGHT) / 2, _EDGE + 64.0)
    turn = math.radians(angle)
    reach = 58.0
    ends = tuple(
        frame.at(vertex[0] + side * reach * math.cos(turn), vertex[1] - side * reach * math.sin(turn) * 0.75)
        for side in (-0.8, 0.75)
    )
    level = (frame.at(*vertex), frame.at(vertex[0] + 70.0, vertex[1]))
    return (
        Line(ends, "accent"),
        Line(level, "hidden"),
        Angle(frame.at(*vertex), 0.0, angle, "", 34.0),
        Label(f"{angle:.1f}°", frame.at(vertex[0] + 82.0, vertex[1] - 4.0), role="accent", bold=True),
    )


def _whole_end(splay: float, run_out: float, way: str, frame: Frame) -> tuple[Shape, ...]:
    """Return the whole end as it stands, small, with the edge that is planed and the way of the plane."""
    x, y = _INSET
    half, high = 44.0, 34.0
    slant = high * math.tan(math.radians(splay))
    corners = tuple(
        frame.at(x + side * (half + up * slant), y - up * high)
        for side, up in ((-1, -1), (1, -1), (1, 1), (-1, 1))
    )
    beside = 13.0
    low = frame.at(x - half + slant - beside, y + high)
    top = frame.at(x - half - slant - beside, y - high)
    middle = ((low[0] + top[0]) / 2, (low[1] + top[1]) / 2)
    ways = {"up": ((low, top),), "down": ((top, low),), "both": ((low, middle), (top, middle))}[way]
    return (
        Wood(corners, "end", "long", 0.0 - run_out, line="edge"),
        Line((corners[0], corners[3]), "accent"),
        *(Line(_arrow(*each), "pencil") for each in ways),
        Label("the end as it stands", frame.at(24.0, 28.0), role="quiet", size=13.0),
    )


def _arrow(start: Point, end: Point) -> Points:
    way = math.atan2(end[1] - start[1], end[0] - start[0])
    barbs = [
        (end[0] - 8.0 * math.cos(way + turn), end[1] - 8.0 * math.sin(way + turn)) for turn in (0.45, -0.45)
    ]
    return (start, end, barbs[0], end, barbs[1])


def _words_beside(frame: Frame) -> tuple[Shape, ...]:
    row = _EDGE + _DEEP + 34.0
    return (
        Label("toward the lower corner", frame.at(24.0, row), role="quiet", size=13.0),
        Label("toward the upper corner", frame.at(696.0, row), role="quiet", size=13.0, side="left"),
        Label("its edge, clamped uppermost", frame.at(696.0, 28.0), role="quiet", size=13.0, side="left"),
    )


def _headline(angle: float, way: str, torn: bool) -> str:
    if _square(angle):
        return "The fibres come out square: this is end grain, and both ways are alike."
    good = "upward" if angle < 90 else "downward"
    if way == "both":
        return f"From both corners: no corner breaks out, but one half is planed against the grain. {_with(good)}"
    if torn:
        return f"Against the grain: the fibres are lifted and tear out below the line. {_with(good)}"
    corner = "upper" if way == "up" else "lower"
    return f"With the grain: the fibres lean the plane's way and lie down. Back up the {corner} corner with waste."


def _square(angle: float) -> bool:
    lean = angle - 90.0
    return not any(runs_with_the_grain(0.0, lean, upward) for upward in (True, False))


def _with(way: str) -> str:
    return f"Plane {way} where you can."


def _told(splay: float, run_out: float, angle: float, way: str) -> str:
    rises = (
        "level" if run_out == 0 else f"{'rising' if run_out > 0 else 'falling'} {abs(run_out):g}° to the edge"
    )
    leans = (
        "upright" if splay == 0 else f"leaning {abs(splay):.1f}° {'outward' if splay > 0 else 'inward'} above"
    )
    made = f"An edge {leans} with the grain {rises}: the fibres come out at {angle:.1f}° to the way up."
    if _square(angle):
        return (
            f"{made} Set the iron fine and keen, skew the plane, and go from both corners toward the middle, or back "
            "up the far corner with waste."
        )
    nearly = (
        " So near to square it cuts almost as end grain does, and tears little either way; the corner breaks out all "
        "the same."
        if abs(angle - 90.0) < 5.0
        else ""
    )
    return (
        f"{made}{nearly} How deep it tears is drawn, not reckoned: a keen iron and a fine cut make it less."
    )


def _start(piece: Piece) -> Settings:
    lean = piece.end.splay if piece.end else 0.0
    return {"direction": "up", "splay": max(-15.0, min(25.0, lean)), "run_out": 0.0}


sloped_edge = View(
    name="sloped_edge",
    draw=_draw,
    controls=(
        ChoiceControl(
            "direction",
            "plane",
            (("upward", "up"), ("downward", "down"), ("from both corners", "both")),
        ),
        StepControl("splay", "splay", "degrees", Fraction(-15), Fraction(25), Fraction(1, 2)),
        StepControl("run_out", "grain rises", "degrees", Fraction(-10), Fraction(10), Fraction(1, 2)),
    ),
    start=_start,
)
