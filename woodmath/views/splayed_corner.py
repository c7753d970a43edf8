"""The corner of a planter whose sides and ends both lean: a level cut, a cut square to the hip, the side's own face."""

from __future__ import annotations

import math
from fractions import Fraction
from typing import TYPE_CHECKING

from woodmath.drawing import Angle, Drawing, Frame, Label, Line, Point, Shape, Wood
from woodmath.rule import Rule
from woodmath.splayed_corner import SplayedCorner
from woodmath.views.view import ChoiceControl, LengthControl, Settings, StepControl, View, number

if TYPE_CHECKING:
    from woodmath.piece import Piece

_SIZE = (640.0, 460.0)
_THICK = 46.0
"""Picture units of the thicker board in its own section."""
_LONG = 150.0
_MITRED, _BUTTED = "mitred", "butted"


def _draw(rule: Rule, settings: Settings) -> Drawing:
    corner = SplayedCorner(
        number(settings, "side_splay"),
        number(settings, "end_splay"),
        number(settings, "side_thickness"),
        number(settings, "end_thickness"),
    )
    mitred = settings["joint"] == _MITRED
    thickest = max(corner.side_thickness, corner.end_thickness or corner.side_thickness)
    frame = Frame(*_SIZE, 0.0, 0.0, _THICK / thickest)
    shapes = [
        *_level_cut(corner, mitred, frame),
        *_square_cut(corner, mitred, frame),
        *_side_face(corner, frame),
    ]
    return Drawing(
        title="The corner of two leaning boards in three views: cut level, cut square to its hip, and the side's face",
        frame=frame,
        shapes=tuple(shapes),
        headline=_headline(corner, mitred),
        told=_told(rule, corner, mitred),
    )


def _told(rule: Rule, corner: SplayedCorner, mitred: bool) -> str:
    wide = f"{corner.dihedral:.2f}"
    square = "" if float(wide) == 90 else ", and not 90"
    side, end = corner.level_thicknesses
    mitre_line = f", so the mitre line there stands at {corner.level_mitre:.2f}°" if mitred else ""
    return (
        f"The corner measures {wide}° square to the hip{square}. The hip leans {corner.hip_lean:.1f}° from upright. In "
        f"the level cut the side measures {rule.mark(side)} and the end {rule.mark(end, unit=True)}{mitre_line}."
    )


def _headline(corner: SplayedCorner, mitred: bool) -> str:
    across = f"Cut across the side's face at {corner.side_face_angle:.2f}° off square"
    if not mitred:
        return f"{across}; where it butts, tilt the saw {corner.butt_tilt:.2f}°."
    if abs(corner.mitre_tilt - corner.end_mitre_tilt) < 0.005:
        return f"{across}, the saw tilted {corner.mitre_tilt:.2f}°."
    side, end = corner.mitre_tilt, corner.end_mitre_tilt
    told = f"{across}, the saw tilted {side:.2f}° for the side and {end:.2f}° for the end."
    # Of two very unequal boards the thicker one is cut past square, the other way.
    return told.replace("-", "−")


def _level_cut(corner: SplayedCorner, mitred: bool, frame: Frame) -> list[Shape]:
    """Draw the corner in plan, its outer corner at the lower left: the side to the right, the end upward."""
    left, low = frame.at(64.0, 236.0)
    side, end = corner.level_thicknesses
    reach = frame.length(_LONG)
    along: list[Point] = [
        (left, low),
        (left + reach, low),
        (left + reach, low + side),
        (left + end, low + side),
    ]
    up: list[Point] = [(left, low), (left + end, low + side), (left + end, low + reach), (left, low + reach)]
    if not mitred:
        along = [(left + end, low), (left + reach, low), (left + reach, low + side), (left + end, low + side)]
        up = [(left, low), (left + end, low), (left + end, low + reach), (left, low + reach)]
    shapes: list[Shape] = [
        Wood(tuple(along), "side", "long", 0.0, line="edge"),
        Wood(tuple(up), "end", "long", 90.0, line="edge"),
        Label("cut level", frame.at(64.0, 30.0), bold=True),
    ]
    foot = left if mitred else left + end
    shapes.append(Line(((foot, low), (left + end, low + side)), "accent"))
    return shapes


def _square_cut(corner: SplayedCorner, mitred: bool, frame: Frame) -> list[Shape]:
    """Draw the corner cut square to the hip: the two boards at their true thickness and their true angle."""
    left, low = frame.at(350.0, 236.0)
    own, other = corner.side_thickness, corner.end_thickness or corner.side_thickness
    turn = math.radians(corner.dihedral)
    reach = frame.length(_LONG)
    inner = own * math.tan(math.radians(corner.mitre_tilt))
    way, inward = (math.cos(turn), math.sin(turn)), (math.sin(turn), -math.cos(turn))
    hip: Point = (left, low)
    inside: Point = (left + inner, low + own)
    far: Point = (left + reach * way[0], low + reach * way[1])
    far_inside: Point = (far[0] + other * inward[0], far[1] + other * inward[1])
    side = [hip, (left + reach, low), (left + reach, low + own), inside]
    end = [hip, inside, far_inside, far]
    if not mitred:
        # The end runs through, and the side butts against its inner face.
        foot: Point = (left + other / math.sin(turn), low)
        side = [foot, (left + reach, low), (left + reach, low + own), inside]
        end = [hip, foot, far_inside, far]
    shapes: list[Shape] = [
        Wood(tuple(side), "side", "end", pith=(left + reach, low - 2 * reach), line="edge"),
        Wood(tuple(end), "end", "end", pith=(left - 2 * reach, low + reach), line="edge"),
        Line((inside, hip if mitred else (left + other / math.sin(turn), low)), "accent"),
        Angle(inside, 0.0, corner.dihedral, f"{corner.dihedral:.1f}°", 44.0),
        Label("cut square to the hip", frame.at(350.0, 30.0), bold=True),
    ]
    return shapes


def _side_face(corner: SplayedCorner, frame: Frame) -> list[Shape]:
    """Draw the end of the side board as it lies on the bench, its outer face up."""
    left, low = frame.at(64.0, 426.0)
    high, long = frame.length(112.0), frame.length(300.0)
    out = high * math.tan(math.radians(corner.side_face_angle))
    board: tuple[Point, ...] = (
        (left + frame.length(60.0), low),
        (left + long, low),
        (left + long, low + high),
        (left + frame.length(60.0) - out, low + high),
    )
    corner_point = board[0]
    between = sorted((90.0, 90.0 + corner.side_face_angle))
    shapes: list[Shape] = [
        Wood(board, "side", "long", 0.0, line="edge"),
        Line((corner_point, (corner_point[0], low + high + frame.length(12.0))), "quiet"),
        Line((corner_point, board[3]), "accent"),
        Label("the side's face, on the bench", frame.at(64.0, 284.0), bold=True),
        Label(
            f"{corner.side_face_angle:.1f}° off square",
            frame.at(420.0, 340.0),
            (corner_point[0] - out * 0.6, low + high * 0.72),
            note="across the face",
            role="accent",
            bold=True,
        ),
    ]
    if abs(corner.side_face_angle) > 0.5:
        shapes.append(Angle(corner_point, between[0], between[1], "", 60.0))
    return shapes


def _start(piece: Piece) -> Settings:
    # The demo pieces lean one way at most: the planter of the page has sizes of its own.
    thickness = piece.rule.read("3/4 in" if piece.rule.unit == "inch" else "18 mm")
    return {
        "side_splay": 12,
        "end_splay": 8,
        "side_thickness": thickness,
        "end_thickness": thickness,
        "joint": _MITRED,
    }


planter_corner = View(
    name="planter_corner",
    draw=_draw,
    controls=(
        StepControl("side_splay", "splay of the sides", "°", Fraction(0), Fraction(45), Fraction(1, 2)),
        StepControl("end_splay", "splay of the ends", "°", Fraction(0), Fraction(45), Fraction(1, 2)),
        LengthControl("side_thickness", "side, thick", ("1/2", "1 1/4"), ("12", "32")),
        LengthControl("end_thickness", "end, thick", ("1/2", "1 1/4"), ("12", "32")),
        ChoiceControl("joint", "joint", (("mitred", _MITRED), ("butted", _BUTTED))),
    ),
    start=_start,
)
