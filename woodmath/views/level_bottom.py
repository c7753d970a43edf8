"""A loose bottom between leaning sides, cut across: its two widths, its bevel, and what carries it."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from woodmath.case import Case
from woodmath.drawing import Angle, Dimension, Drawing, Frame, Label, Line, Points, Shape, Wood
from woodmath.errors import ImpossibleShape
from woodmath.finding import more
from woodmath.level_bottom import LevelBottom
from woodmath.rule import Rule
from woodmath.splay_derivations import level_derivation
from woodmath.views.case_views import flipped
from woodmath.views.view import LengthControl, Settings, StepControl, View, number

if TYPE_CHECKING:
    from woodmath.piece import Piece

_SIZE = (640.0, 440.0)
_MARGINS = (64.0, 96.0, 74.0, 96.0)
_WALLS = 0.5
"""Height of the walls that is drawn, in widths over them."""


def _draw(rule: Rule, settings: Settings) -> Drawing:
    splay, wide = number(settings, "splay"), number(settings, "outside")
    wall, thick, height = (number(settings, name) for name in ("wall", "thickness", "height"))
    bottom = LevelBottom(wide, wide, splay, 0.0, wall, wall, thickness=thick, height=height)
    top = max(_WALLS * wide, 1.4 * (height + thick))
    level = level_derivation().function("level")(across=wall, splay=splay)
    inner_low, inner_high = _inside(bottom, wide, splay, wall, (0.0, top))
    side = ((inner_low, 0.0), (inner_low + level, 0.0), (inner_high + level, top), (inner_high, top))
    under, over = bottom.lower.width / 2, bottom.upper.width / 2
    board = ((-under, height), (under, height), (over, height + thick), (-over, height + thick))
    frame = Frame.around((*side, *flipped(side)), _SIZE, _MARGINS)
    shapes: list[Shape] = [
        Wood(side, "side", "end", pith=(3.0 * wide, 0.5 * top), line="edge"),
        Wood(flipped(side), "side", "end", pith=(-3.0 * wide, 0.5 * top), line="edge"),
        Wood(board, "board", "end", pith=(0.0, -3.0 * wide), line="outline"),
        Line(((0.0, -frame.length(12)), (0.0, top)), "centre"),
        *_sizes(rule, bottom, (wide, height, thick, top), frame),
        *_bevel(bottom, board, frame),
    ]
    return Drawing(
        title="A loose bottom lying level between two leaning sides, cut across",
        frame=frame,
        shapes=tuple(shapes),
        headline=_headline(rule, bottom),
        told=f"Its underside rests {rule.mark(height)} above the sides' lower edges, where there is room for "
        f"{rule.mark(bottom.lower.width)}; {rule.mark(thick)} higher there is room for "
        f"{rule.mark(bottom.upper.width, unit=True)}. Take the clearance off both.",
    )


def _inside(
    bottom: LevelBottom, wide: float, splay: float, wall: float, heights: tuple[float, float]
) -> tuple[float, float]:
    """Return how far from the middle the wall's inner face stands at two heights."""
    at = [
        LevelBottom(wide, wide, splay, 0.0, wall, wall, thickness=bottom.thickness, height=height).lower.width
        / 2
        for height in heights
    ]
    return at[0], at[1]


def _headline(rule: Rule, bottom: LevelBottom) -> str:
    if not more(abs(bottom.upper.width - bottom.lower.width), 0.0):
        return f"Upright sides leave one width, {rule.mark(bottom.upper.width, unit=True)}, and square edges."
    return (
        f"Rip it {rule.mark(bottom.upper.width)} wide and bevel both long edges by {bottom.side_bevel:.1f}°: below "
        f"it is {rule.mark(bottom.lower.width, unit=True)}."
    )


def _sizes(
    rule: Rule, bottom: LevelBottom, sizes: tuple[float, float, float, float], frame: Frame
) -> list[Shape]:
    wide, height, thick, top = sizes
    under, over = bottom.lower.width / 2, bottom.upper.width / 2
    above = (top - height - thick) * frame.scale + 24.0
    edge = frame.at(62.0, 0.0)[0]
    return [
        Dimension((-over, height + thick), (over, height + thick), rule.mark(2 * over), above),
        Dimension((under, height), (-under, height), rule.mark(2 * under), height * frame.scale + 24.0),
        Dimension((wide / 2, 0.0), (-wide / 2, 0.0), rule.mark(wide), 54.0),
        *(
            [Dimension((-under, 0.0), (-under, height), rule.mark(height), (-under - edge) * frame.scale)]
            if height * frame.scale > 18.0
            else []
        ),
    ]


def _bevel(bottom: LevelBottom, board: Points, frame: Frame) -> list[Shape]:
    if not more(abs(bottom.upper.width - bottom.lower.width), 0.0):
        return []
    corner = board[1]
    radius = 62.0
    between = sorted((90.0, 90.0 - bottom.side_bevel))
    return [
        Line((corner, (corner[0], corner[1] + radius / frame.scale)), "quiet"),
        Angle(corner, between[0], between[1], "", radius, "accent"),
        Label(
            f"{bottom.side_bevel:.1f}° off square",
            frame.at(452.0, 22.0),
            (corner[0], corner[1] + frame.length(radius * 0.8)),
            role="accent",
            bold=True,
        ),
    ]


def _start(piece: Piece) -> Settings:
    if piece.bottom is None:
        raise ImpossibleShape(f"{piece.name} has no bottom. Add [bottom] to its file, or open another piece.")
    case = Case.of(piece)
    low = case.at(case.panel[0])[1]
    return {
        "splay": case.splay,
        "outside": 2 * case.along_a_level(low, case.square - case.side_face),
        "wall": case.side_thickness,
        "thickness": piece.bottom.thickness,
        "height": piece.bottom.rest,
    }


bottom_between_sides = View(
    name="bottom_between_sides",
    draw=_draw,
    controls=(
        StepControl("splay", "splay of the sides", "°", Fraction(0), Fraction(30), Fraction(1, 2)),
        LengthControl("outside", "over the sides, below", ("8", "24"), ("200", "600")),
        LengthControl("wall", "side, thick", ("1/2", "1 1/4"), ("12", "32")),
        LengthControl("thickness", "bottom, thick", ("1/4", "1"), ("6", "25")),
        LengthControl("height", "rests at", ("0", "3"), ("0", "75")),
    ),
    start=_start,
)
