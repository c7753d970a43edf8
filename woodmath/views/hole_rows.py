"""A row of holes along a mortise, on the face of the post, each with its number in the order of boring."""

from __future__ import annotations

from typing import TYPE_CHECKING

from woodmath.boring import boring_order, holes_along
from woodmath.drawing import Circle, Dimension, Drawing, Frame, Hatch, Label, Line, Shape, Wood, rectangle
from woodmath.errors import ImpossibleShape
from woodmath.rule import Rule
from woodmath.views.view import ChoiceControl, LengthControl, Settings, View, number

if TYPE_CHECKING:
    from woodmath.piece import Piece

_SIZE = (640.0, 300.0)
_MARGINS = (66.0, 64.0, 60.0, 96.0)
_ROOM_FOR_A_NUMBER = 24.0
_MOST_SHOWN = 120
_MOST_TOLD = 10


def _draw(rule: Rule, settings: Settings) -> Drawing:
    length, diameter, amount = (number(settings, name) for name in ("length", "diameter", "amount"))
    overlap, web = (amount, None) if settings["between"] == "overlap" else (None, amount)
    try:
        centres = holes_along(length, diameter, overlap=overlap, web=web)
    except ImpossibleShape as trouble:
        return _impossible(rule, length, diameter, str(trouble))
    frame = _frame(length, diameter)
    order = boring_order(centres, diameter)
    headline, told = _told(rule, centres, diameter)
    faults = order.remarks[:2]
    if len(centres) > _MOST_SHOWN:
        faults = (
            f"That makes {len(centres)} holes, more than anybody bores; the first {_MOST_SHOWN} are drawn. "
            "Ask for less overlap, or take a larger bit.",
        )
    return Drawing(
        title="A row of holes along a mortise, seen on the face of the post",
        frame=frame,
        shapes=(
            *_face(length, diameter),
            *_holes(centres[:_MOST_SHOWN], diameter, order.numbers, frame),
            Dimension((0.0, diameter), (length, diameter), rule.mark(length), 28.0),
            Dimension(
                (-0.06 * length, -diameter / 2), (-0.06 * length, diameter / 2), rule.mark(diameter), 26.0
            ),
            *_spacing(rule, centres, diameter),
        ),
        headline=headline,
        told=told,
        faults=faults,
    )


def _frame(length: float, diameter: float) -> Frame:
    return Frame.around(((0.0, -1.1 * diameter), (length, 1.1 * diameter)), _SIZE, _MARGINS)


def _face(length: float, diameter: float) -> tuple[Shape, ...]:
    """Return the face of the post about the mortise, and the mortise to be cut."""
    return (
        Wood(rectangle(-0.06 * length, -diameter, 1.06 * length, diameter), "post", "long", 0.0, line=""),
        Line(((-0.06 * length, diameter), (1.06 * length, diameter)), "edge"),
        Line(((-0.06 * length, -diameter), (1.06 * length, -diameter)), "edge"),
        Line(rectangle(0.0, -diameter / 2, length, diameter / 2), "accent", True),
        Line(((-0.06 * length, 0.0), (1.06 * length, 0.0)), "centre"),
    )


def _holes(
    centres: tuple[float, ...], diameter: float, numbers: tuple[int, ...], frame: Frame
) -> tuple[Shape, ...]:
    shapes: list[Shape] = [Circle((centre, 0.0), diameter / 2, "", "void") for centre in centres]
    shapes += [Circle((centre, 0.0), diameter / 2, "edge") for centre in centres]
    apart = (centres[1] - centres[0]) * frame.scale if len(centres) > 1 else diameter * frame.scale
    if apart >= _ROOM_FOR_A_NUMBER:
        turn_of = {hole: turn for turn, hole in enumerate(numbers, start=1)}
        shapes += [
            Label(str(turn_of[hole]), (centre, 0.0), side="middle", bold=True)
            for hole, centre in enumerate(centres, start=1)
        ]
    return tuple(shapes)


def _spacing(rule: Rule, centres: tuple[float, ...], diameter: float) -> tuple[Dimension, ...]:
    if len(centres) < 2:
        return ()
    return (
        Dimension((centres[1], -diameter), (centres[0], -diameter), rule.mark(centres[1] - centres[0]), 28.0),
    )


def _told(rule: Rule, centres: tuple[float, ...], diameter: float) -> tuple[str, str]:
    if len(centres) == 1:
        return "One hole just fits.", f"Its centre is {rule.mark(centres[0], unit=True)} from either end."
    apart = centres[1] - centres[0]
    between = (
        f"neighbours overlap by {rule.mark(diameter - apart, unit=True)}"
        if diameter > apart
        else f"{rule.mark(apart - diameter, unit=True)} of wood is left between neighbours"
    )
    marks = [rule.mark(centre) for centre in centres[1:-1]]
    if len(marks) > _MOST_TOLD:
        marks = [*marks[:4], "and so on"]
    others = f" The others from one end: {', '.join(marks)}." if marks else ""
    return (
        f"{len(centres)} holes and {len(centres) - 1} spaces; {between}.",
        f"The two end holes touch the lines: half the bit from either.{others} "
        "The numbers are the order of boring: ends first.",
    )


def _impossible(rule: Rule, length: float, diameter: float, trouble: str) -> Drawing:
    widest = max(length, diameter)
    frame = _frame(widest, diameter)
    shapes: list[Shape] = [*_face(length, diameter)]
    if diameter > length:
        shapes += [
            Circle((length / 2, 0.0), diameter / 2, "fault", "fault"),
        ]
        frame = Frame.around(
            (((length - widest) / 2, -1.1 * diameter), ((length + widest) / 2, 1.1 * diameter)),
            _SIZE,
            _MARGINS,
        )
    else:
        shapes.append(Hatch(rectangle(0.0, -diameter / 2, length, diameter / 2), "fault"))
    return Drawing(
        title="A mortise with no row of holes that fits it",
        frame=frame,
        shapes=(
            *shapes,
            Dimension((0.0, diameter), (length, diameter), rule.mark(length), 28.0),
        ),
        headline="No row of holes does that.",
        faults=(trouble,),
    )


def _start(piece: Piece) -> Settings:
    tenons = piece.joint.tenons
    length = tenons[0].width if tenons else 4 * piece.bit.diameter
    return {
        "length": length,
        "diameter": piece.bit.diameter,
        "between": "overlap",
        "amount": piece.rule.nearest(piece.bit.diameter / 6),
    }


row_of_holes = View(
    name="row_of_holes",
    draw=_draw,
    controls=(
        LengthControl("length", "mortise, long", ("1/2", "6"), ("12", "150")),
        LengthControl("diameter", "bit, across", ("1/4", "1"), ("6", "25")),
        ChoiceControl("between", "neighbours", (("overlap", "overlap"), ("leave a web", "web"))),
        LengthControl("amount", "overlap or web, at least", ("0", "1/2"), ("0", "12")),
    ),
    start=_start,
)
