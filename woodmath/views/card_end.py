"""A splayed end to cut from card, with two trial tenons: one along the ruled grain, one across it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from woodmath.drawing import Dimension, Drawing, Frame, Label, Points, Shape, Wood
from woodmath.finding import more
from woodmath.rule import Rule
from woodmath.splay import SplayedPanel
from woodmath.views.case_views import flipped
from woodmath.views.splayed_panel import SlopingEdge
from woodmath.views.view import LengthControl, Settings, View, number

if TYPE_CHECKING:
    from woodmath.piece import Piece

_SIZE = (640.0, 400.0)
_MARGINS = (44.0, 24.0, 56.0, 64.0)
_START, _TENON, _LONG, _GAP = 0.4, 1.0, 2.25, 0.5
"""Where the tenon begins along the edge as a share of what is left beside it; its width, the trial tenons' length and
the gap beside the end in tenon widths."""


def _draw(rule: Rule, settings: Settings) -> Drawing:
    panel = SplayedPanel(
        number(settings, "end_top"), number(settings, "end_bottom"), number(settings, "end_height")
    )
    wide, reach = number(settings, "tenon"), number(settings, "reach")
    edge = SlopingEdge(panel)
    begin = _START * (panel.slope_length - wide)
    tenon: Points = (
        edge.at(begin),
        edge.at(begin, reach),
        edge.at(begin + wide, reach),
        edge.at(begin + wide),
    )
    low, high = edge.at(0.0), edge.at(panel.slope_length)
    outline = (*flipped((low, *tenon, high)), *reversed((low, *tenon, high)))
    left = max(x for x, _ in (*tenon, low, high)) + _GAP * wide
    along = _strip(left, panel.height - wide, _LONG * wide, wide)
    low_across = panel.height - (_TENON + _LONG + _GAP / 2) * wide
    across = _strip(left + (_LONG - _TENON) / 2 * wide, low_across, wide, _LONG * wide)
    frame = Frame.around((*outline, *along, *across), _SIZE, _MARGINS)
    middle = left + _LONG * wide / 2
    shapes: list[Shape] = [
        Wood(outline, "end", "long", 0.0, line="outline"),
        Wood(along, "end", "long", 0.0, line="outline"),
        Wood(across, "end", "long", 0.0, line="outline"),
        Dimension((-high[0], high[1]), high, rule.mark(panel.top), 30.0),
        Dimension(low, (-low[0], low[1]), rule.mark(panel.bottom), 30.0),
        Label("along the grain", (middle, panel.height + frame.length(16.0)), side="middle"),
        Label("across the grain", (middle, low_across - frame.length(18.0)), side="middle"),
        Label(
            f"{panel.grain_angle:.1f}° to the grain",
            (0.0, panel.height * 0.5),
            side="middle",
            role="accent",
            bold=True,
        ),
    ]
    return Drawing(
        title="An end to cut from card, with two trial tenons",
        frame=frame,
        shapes=tuple(shapes),
        headline=_headline(panel),
        told=f"The end is {rule.mark(panel.top)} wide above, {rule.mark(panel.bottom)} below and "
        f"{rule.mark(panel.height, unit=True)} high; its grain is level, and so is the grain of the two trial tenons.",
    )


def _headline(panel: SplayedPanel) -> str:
    if not more(abs(panel.outward), 0.0):
        return "It stands upright: its tenons follow the grain, as the first trial tenon does."
    return (
        f"Its tenons stand at {panel.grain_angle:.1f}° to the grain, one trial tenon along the grain and the other "
        "square across it."
    )


def _strip(left: float, low: float, wide: float, high: float) -> Points:
    return ((left, low), (left + wide, low), (left + wide, low + high), (left, low + high))


def _start(piece: Piece) -> Settings:
    # Card needs no stock: the sizes are those that fit on a sheet, whatever the piece.
    inches = piece.rule.unit == "inch"
    sizes = {
        "end_top": ("4 in", "100 mm"),
        "end_bottom": ("2 1/2 in", "64 mm"),
        "end_height": ("3 1/2 in", "90 mm"),
        "tenon": ("1 in", "25 mm"),
        "reach": ("3/4 in", "20 mm"),
    }
    return {name: piece.rule.read(size if inches else metric) for name, (size, metric) in sizes.items()}


card_end = View(
    name="card_end",
    draw=_draw,
    controls=(
        LengthControl("end_top", "width at the top", ("3", "4 1/2"), ("75", "110")),
        LengthControl("end_bottom", "width below", ("2", "4"), ("50", "100")),
        LengthControl("end_height", "height, upright", ("3", "4"), ("75", "100")),
    ),
    start=_start,
)
