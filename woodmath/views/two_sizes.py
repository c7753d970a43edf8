"""A case at two sizes, cut level: the outside scaled, the boards as thick as before, and the inside between."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from woodmath.drawing import Dimension, Drawing, Frame, Hatch, Label, Line, Points, Shape, Wood, rectangle
from woodmath.errors import ImpossibleShape
from woodmath.numbers_as_written import number_shown
from woodmath.rule import Rule
from woodmath.scaling import inside_after, inside_ratio, mass_ratio, scaled
from woodmath.views.view import LengthControl, Settings, StepControl, View, number

if TYPE_CHECKING:
    from woodmath.piece import Piece

_SIZE = (640.0, 400.0)
_LEFT, _RIGHT, _TOP, _BOTTOM = 54.0, 616.0, 96.0, 312.0
_BETWEEN = 64.0
_LEAST_WIDTH = 84.0


def _draw(rule: Rule, settings: Settings) -> Drawing:
    length, width, stock = (number(settings, name) for name in ("length", "width", "stock"))
    scale = number(settings, "scale")
    after = (scaled(length, scale), scaled(width, scale))
    per_unit = min((_RIGHT - _LEFT - _BETWEEN) / (length + after[0]), (_BOTTOM - _TOP) / max(width, after[1]))
    frame = Frame(*_SIZE, 0.0, 0.0, per_unit)
    left_room = max(length * per_unit, _LEAST_WIDTH)
    right_room = max(after[0] * per_unit, _LEAST_WIDTH)
    start = (_SIZE[0] - left_room - right_room - _BETWEEN) / 2 + 10.0
    plate = _case(frame, start + left_room / 2, (length, width), stock)
    bench = _case(frame, start + left_room + _BETWEEN + right_room / 2, after, stock)
    faults = _faults((length, width), stock, scale)
    shapes: list[Shape] = [*plate, *bench]
    for middle, name, (long, across) in (
        (start + left_room / 2, "the drawing", (length, width)),
        (start + left_room + _BETWEEN + right_room / 2, f"times {number_shown(scale)}", after),
    ):
        shapes.append(Label(name, frame.at(middle, 36.0), side="middle", bold=True))
        shapes += _dimensions(rule, frame, middle, (long, across), stock)
    shapes += _photograph(frame, start + left_room + _BETWEEN + right_room / 2, (length, width), stock, scale)
    headline, told = _told(rule, (length, width), stock, scale) if not faults else ("It has no inside.", "")
    return Drawing(
        title="A case cut level at two sizes, its boards equally thick in both",
        frame=frame,
        shapes=tuple(shapes),
        headline=headline,
        told=told,
        faults=faults,
    )


def _outline(frame: Frame, middle: float, sizes: tuple[float, float], inset: float = 0.0) -> Points:
    """Return a rectangle standing on the common base line, about an upright middle line of the picture."""
    centre_x, base = frame.at(middle, _BOTTOM)
    long, across = sizes
    return rectangle(
        centre_x - long / 2 + inset, base + inset, centre_x + long / 2 - inset, base + across - inset
    )


def _case(frame: Frame, middle: float, sizes: tuple[float, float], stock: float) -> list[Shape]:
    """Return the four boards: the sides run through, the ends stand between them."""
    (left, low), _, (right, high), _ = _outline(frame, middle, sizes)
    if 2 * stock >= min(sizes):
        return [
            Hatch(rectangle(left, low, right, high), "fault"),
            Line(rectangle(left, low, right, high), "outline", True),
        ]
    inner_left, inner_right, inner_low, inner_high = left + stock, right - stock, low + stock, high - stock
    return [
        Line(rectangle(inner_left, inner_low, inner_right, inner_high), "", True, "void"),
        Wood(rectangle(left, inner_high, right, high), "side", "long", 0.0, line="edge"),
        Wood(rectangle(left, low, right, inner_low), "side", "long", 0.0, line="edge"),
        Wood(rectangle(left, inner_low, inner_left, inner_high), "end", "long", 90.0, line="edge"),
        Wood(rectangle(inner_right, inner_low, right, inner_high), "end", "long", 90.0, line="edge"),
        Line(rectangle(left, low, right, high), "outline", True),
    ]


def _photograph(
    frame: Frame, middle: float, sizes: tuple[float, float], stock: float, scale: float
) -> list[Shape]:
    """Return the inside as a photograph would enlarge it, boards and all: where it would be, and is not."""
    if 2 * stock >= min(sizes):
        return []
    after = (scaled(sizes[0], scale), scaled(sizes[1], scale))
    return [Line(_outline(frame, middle, after, inset=scaled(stock, scale)), "accent", True)]


def _dimensions(
    rule: Rule, frame: Frame, middle: float, sizes: tuple[float, float], stock: float
) -> list[Shape]:
    (left, low), _, (right, high), _ = _outline(frame, middle, sizes)
    shapes: list[Shape] = [Dimension((left, low), (right, low), rule.mark(right - left), -50.0)]
    if 2 * stock < min(sizes):
        inside = rule.mark(inside_after(right - left, stock, 1.0))
        shapes.append(Dimension((left + stock, high), (right - stock, high), inside, 18.0))
    return shapes


def _faults(sizes: tuple[float, float], stock: float, scale: float) -> tuple[str, ...]:
    try:
        for outside in sizes:
            inside_ratio(outside, stock, scale)
    except ImpossibleShape as trouble:
        return (str(trouble),)
    return ()


def _told(rule: Rule, sizes: tuple[float, float], stock: float, scale: float) -> tuple[str, str]:
    grows = inside_ratio(sizes[0], stock, scale)
    inside = inside_after(sizes[0], stock, scale)
    if grows == 1:
        return (f"At its own size nothing has changed: the inside is {rule.mark(inside, unit=True)}.", "")
    return (
        f"The outside is {_times(scale)} times as long, the inside {_times(grows)} times: "
        f"{rule.mark(inside, unit=True)}.",
        f"The red line is where a photograph would put the inside, its boards {_times(scale)} times as thick. "
        f"Across, the inside is {_times(inside_ratio(sizes[1], stock, scale))} times as wide. A board with its "
        f"thickness kept is {_times(mass_ratio(scale))} times as heavy, "
        f"not {_times(mass_ratio(scale, ('length', 'width', 'thickness')))} times.",
    )


def _times(ratio: float) -> str:
    return number_shown(ratio, 2 if ratio >= 0.1 else 4)


def _start(piece: Piece) -> Settings:
    rule, stock = piece.rule, piece.side.thickness if piece.side else piece.post.square / 2
    length = piece.side.length if piece.side else 10 * piece.post.square
    width = piece.end.bottom if piece.end else 6 * piece.post.square
    return {"length": rule.nearest(length), "width": rule.nearest(width), "stock": stock, "scale": 1.67}


two_sizes = View(
    name="two_sizes",
    draw=_draw,
    controls=(
        LengthControl("length", "outside, long", ("6", "36"), ("150", "900")),
        LengthControl("width", "outside, across", ("6", "24"), ("150", "600")),
        LengthControl("stock", "board, thick", ("1/4", "2"), ("6", "50")),
        StepControl("scale", "scale", "times", Fraction(1, 10), Fraction(3), Fraction(1, 100)),
    ),
    start=_start,
)
