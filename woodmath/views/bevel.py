"""The bevel struck from two distances: the end of a tenon seen on its edge, with the waste still on."""

from __future__ import annotations

from typing import TYPE_CHECKING

from woodmath.bevel import angle_error, bevel_angle
from woodmath.drawing import Angle, Dimension, Drawing, Frame, Hatch, Label, Line, Shape, Wood, break_line
from woodmath.numbers_as_written import number_shown
from woodmath.rule import Rule
from woodmath.views.view import LengthControl, Settings, View, number

if TYPE_CHECKING:
    from woodmath.piece import Piece


def _draw(rule: Rule, settings: Settings) -> Drawing:
    offset, thickness = number(settings, "offset"), number(settings, "thickness")
    angle = bevel_angle(offset, thickness)
    length = offset + max(1.4 * thickness, 0.6 * offset)
    frame = Frame.around(
        ((0.0, 0.0), (length, thickness)), size=(640.0, 400.0), margins=(96.0, 60.0, 92.0, 110.0)
    )
    long_point, struck = (0.0, thickness), (offset, 0.0)
    far_end = break_line((length, thickness), (length, 0.0))
    middle = (offset / 2, thickness / 2)
    mark = rule.one_mark
    known = mark < offset
    swing = angle_error(offset, thickness, offset_error=mark) if known else 0.0
    beside: list[Shape] = (
        [Line((long_point, (offset + shift, 0.0)), "hidden") for shift in (-mark, mark)] if known else []
    )
    shapes = (
        Wood((struck, *reversed(far_end), long_point), "end", "long", 0.0, line=""),
        Hatch(((0.0, 0.0), struck, long_point), "waste", 135.0, 9.0),
        Line((far_end[0], long_point, (0.0, 0.0), far_end[-1]), "outline"),
        Line(far_end, "edge"),
        *beside,
        Line((long_point, struck), "accent"),
        Angle(long_point, -90.0, angle - 90.0, "", min(70.0, 0.6 * thickness * frame.scale)),
        Dimension((0.0, 0.0), struck, f"o = {rule.mark(offset)}", -44.0),
        Dimension(long_point, (0.0, 0.0), f"t = {rule.mark(thickness)}", -52.0),
        Label("the square end", frame.at(140.0, 40.0), (0.0, 0.82 * thickness), side="left"),
        Label(
            f"{number_shown(angle)}° off square",
            frame.at(350.0, 44.0),
            middle,
            role="accent",
            bold=True,
            size=17.0,
        ),
    )
    return Drawing(
        title="The end of a tenon seen on its edge, with a bevel struck across it",
        frame=frame,
        shapes=shapes,
        headline=f"{rule.mark(offset, unit=True)} along and {rule.mark(thickness, unit=True)} across "
        f"strike {number_shown(angle)}° off square.",
        told=(
            f"With the gauge one mark out ({rule.mark(mark, unit=True)}) the bevel is wrong by up to "
            f"{number_shown(swing)}°: the broken lines show both."
            if known
            else "The distance along is no more than one mark of the rule: too short to gauge."
        ),
    )


def _start(piece: Piece) -> Settings:
    thickness = piece.joint.tenon_thickness
    return {"offset": thickness, "thickness": thickness}


struck_bevel = View(
    name="struck_bevel",
    draw=_draw,
    controls=(
        LengthControl("thickness", "thickness, across", ("1/4", "2"), ("6", "50")),
        LengthControl("offset", "offset, along", ("1/16", "3"), ("1", "75")),
    ),
    start=_start,
)
