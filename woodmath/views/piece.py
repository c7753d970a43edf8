"""The whole piece in two elevations: the end and the side, with posts, panels, tenons and rockers."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from woodmath.bevel import bevel_angle
from woodmath.drawing import Dimension, Drawing, Frame, Label, Line, Point, Points, Shape, Wood, rectangle
from woodmath.ellipse import Ellipse
from woodmath.errors import ImpossibleShape
from woodmath.rule import Rule
from woodmath.views.view import LengthControl, Settings, View, number

if TYPE_CHECKING:
    from woodmath.piece import Piece

_SIZE = (640.0, 420.0)
_MARGINS = (84.0, 66.0, 58.0, 62.0)


def _draw(rule: Rule, settings: Settings) -> Drawing:
    ellipse, trouble = _ellipse(settings)
    end = _end(settings, ellipse)
    side = _side(settings, ellipse)
    reach = max(x for shape in end for x, _ in _points(shape))
    low = min(y for shape in (*end, *side) for _, y in _points(shape))
    high = max(y for shape in (*end, *side) for _, y in _points(shape))
    half_side = number(settings, "side_length") / 2 + number(settings, "square")
    gap = 0.16 * (reach + half_side)
    middle = reach + gap + half_side
    side = tuple(_moved(shape, middle) for shape in side)
    frame = Frame.around(((-reach, low), (middle + half_side, high)), _SIZE, _MARGINS)
    headline, told = _told(rule, settings)
    return Drawing(
        title="The piece in two elevations, the end on the left and the side on the right",
        frame=frame,
        shapes=(*end, *side, *_dimensions(rule, settings, middle, low, reach, frame)),
        headline=headline,
        told=told,
        faults=(trouble,) if trouble else (),
    )


def _ellipse(settings: Settings) -> tuple[Ellipse | None, str]:
    length = number(settings, "rocker_length")
    if not length:
        return None, ""
    try:
        return (
            Ellipse.from_rocker(length, number(settings, "rocker_rise"), number(settings, "bottom_radius")),
            "",
        )
    except ImpossibleShape as impossible:
        return None, str(impossible)


def _lean(settings: Settings) -> float:
    """Return how far the end leans out for each unit of height."""
    return (number(settings, "end_top") - number(settings, "end_bottom")) / 2 / number(settings, "end_height")


def _end(settings: Settings, ellipse: Ellipse | None) -> tuple[Wood | Line, ...]:
    """Return the end in elevation about its middle line; the floor of the posts is at height 0."""
    foot, height, top = (number(settings, name) for name in ("foot", "end_height", "top"))
    lean, square = _lean(settings), number(settings, "square")
    wide = square * math.hypot(1.0, lean)
    half_low, half_high = number(settings, "end_bottom") / 2, number(settings, "end_top") / 2
    panel = ((-half_low, foot), (half_low, foot), (half_high, foot + height), (-half_high, foot + height))

    def inside(level: float) -> float:
        return half_low + lean * (level - foot)

    total = foot + height + top
    angle = math.degrees(math.atan2(1.0, lean))
    posts = tuple(
        Wood(
            (
                (sign * inside(0.0), 0.0),
                (sign * (inside(0.0) + wide), 0.0),
                (sign * (inside(total) + wide), total),
                (sign * inside(total), total),
            ),
            "post",
            "long",
            angle if sign > 0 else 180.0 - angle,
            line="edge",
        )
        for sign in (-1.0, 1.0)
    )
    tenons = tuple(
        Line(_tenon(sign, place, settings, inside), "hidden", True)
        for sign in (-1.0, 1.0)
        for place in _tenon_places(settings)
    )
    rocker = _rocker(settings, ellipse)
    return (*rocker, Wood(panel, "end", "long", 0.0, line="edge"), *posts, *tenons)


def _tenon(sign: float, place: tuple[float, float], settings: Settings, inside: object) -> Points:
    assert callable(inside)
    foot, reach = number(settings, "foot"), number(settings, "reach")
    low, high = (foot + level for level in place)
    return (
        (sign * inside(low), low),
        (sign * (inside(low) + reach), low),
        (sign * (inside(high) + reach), high),
        (sign * inside(high), high),
    )


def _tenon_places(settings: Settings) -> tuple[tuple[float, float], ...]:
    """Return the tenons' lower and upper edges that lie on the panel as it is now."""
    height = number(settings, "end_height")
    places = settings["tenons"]
    assert isinstance(places, tuple)
    spans = ((float(place), float(place) + float(width)) for place, width in places)
    return tuple(span for span in spans if span[1] <= height)


def _rocker(settings: Settings, ellipse: Ellipse | None) -> tuple[Wood, ...]:
    if ellipse is None:
        return ()
    half, depth = number(settings, "rocker_length") / 2, number(settings, "rocker_depth")
    places = [half * math.sin(math.pi / 2 * step / 24) for step in range(-24, 25)]
    under = tuple((x, ellipse.height_at(x) - depth) for x in places)
    return (Wood(((half, 0.0), (-half, 0.0), *under), "board", "long", 0.0, line="edge"),)


def _side(settings: Settings, ellipse: Ellipse | None) -> tuple[Wood | Line, ...]:
    foot, height, top = (number(settings, name) for name in ("foot", "end_height", "top"))
    half, square = number(settings, "side_length") / 2, number(settings, "square")
    total = foot + height + top
    panel = Wood(rectangle(-half, foot, half, foot + height), "side", "long", 0.0, line="edge")
    posts = tuple(
        Wood(
            rectangle(min(x, x + sign * square), 0.0, max(x, x + sign * square), total),
            "post",
            "long",
            90.0,
            line="edge",
        )
        for sign, x in ((-1.0, -half), (1.0, half))
    )
    rockers: tuple[Wood, ...] = ()
    if ellipse is not None:
        thick, depth = number(settings, "rocker_thickness") / 2, number(settings, "rocker_depth")
        rockers = tuple(
            Wood(rectangle(x - thick, -depth, x + thick, 0.0), "board", "end", line="edge")
            for x in (-half - square / 2, half + square / 2)
        )
    reach = number(settings, "other_reach")
    tenons = tuple(
        Line(
            rectangle(min(x, x + sign * reach), foot + low, max(x, x + sign * reach), foot + high),
            "hidden",
            True,
        )
        for sign, x in ((-1.0, -half), (1.0, half))
        for low, high in _tenon_places(settings)
    )
    return (*rockers, panel, *posts, *tenons)


def _points(shape: Wood | Line) -> Points:
    return shape.outline if isinstance(shape, Wood) else shape.points


def _moved(shape: Wood | Line, along: float) -> Wood | Line:
    points = tuple((x + along, y) for x, y in _points(shape))
    if isinstance(shape, Wood):
        return Wood(points, shape.tint, shape.grain, shape.angle, line=shape.line)
    return Line(points, shape.role, shape.closed, shape.fill)


def _dimensions(
    rule: Rule, settings: Settings, middle: float, low: float, reach: float, frame: Frame
) -> tuple[Shape, ...]:
    foot, height, top = (number(settings, name) for name in ("foot", "end_height", "top"))
    bottom_half, top_half = number(settings, "end_bottom") / 2, number(settings, "end_top") / 2
    half, square = number(settings, "side_length") / 2, number(settings, "square")
    over = top * frame.scale + 22.0
    top_left: Point = (-top_half, foot + height)
    shapes: list[Shape] = [
        Line(((0.0, low), (0.0, foot + height + top)), "centre"),
        Dimension(top_left, (top_half, foot + height), rule.mark(2 * top_half), over),
        Dimension(
            (bottom_half, foot),
            (-bottom_half, foot),
            rule.mark(2 * bottom_half),
            (foot - low) * frame.scale + 20.0,
        ),
        Dimension(
            (-bottom_half, foot),
            (-bottom_half, foot + height),
            rule.mark(height),
            (reach - bottom_half) * frame.scale + 26.0,
        ),
        Dimension((middle - half, foot + height), (middle + half, foot + height), rule.mark(2 * half), over),
        Dimension(
            (middle + half + square, foot + height + top),
            (middle + half + square, 0.0),
            rule.mark(foot + height + top),
            28.0,
        ),
        Label("the end", frame.at(frame.place((0.0, 0.0))[0], 24.0), side="middle", bold=True),
        Label("the side", frame.at(frame.place((middle, 0.0))[0], 24.0), side="middle", bold=True),
    ]
    return tuple(shapes)


def _told(rule: Rule, settings: Settings) -> tuple[str, str]:
    wide = number(settings, "end_top") - number(settings, "end_bottom")
    height = number(settings, "end_height")
    if abs(wide) < 1e-9:
        lean = "It stands upright: the end is as wide at the top as at the bottom."
    else:
        splay = bevel_angle(abs(wide) / 2, height)
        way = "outward" if wide > 0 else "inward"
        lean = f"Each post leans {splay:.1f}° {way} from upright."
    told = (
        f"The end is {rule.mark(number(settings, 'end_bottom'))} wide at the bottom, "
        f"{rule.mark(number(settings, 'end_top'))} at the top and {rule.mark(height)} high; "
        f"the side is {rule.mark(number(settings, 'side_length'), unit=True)} long, shoulder to shoulder."
    )
    return lean, told


def _start(piece: Piece) -> Settings:
    if piece.end is None or piece.side is None:
        raise ImpossibleShape(
            f"{piece.name} has no panels to draw. Add [end] and [side] to its file, or open another piece."
        )
    rocker, joint = piece.rocker, piece.post_joint()
    return {
        "end_top": piece.end.top,
        "end_bottom": piece.end.bottom,
        "end_height": piece.end.height,
        "side_length": piece.side.length,
        "square": piece.post.square,
        "foot": piece.post.foot,
        "top": piece.post.top,
        "reach": joint.tenon.reach,
        "other_reach": joint.other_tenon.reach,
        "tenons": tuple((str(tenon.place), str(tenon.width)) for tenon in piece.joint.tenons),
        "rocker_length": rocker.length if rocker else 0.0,
        "rocker_rise": rocker.rise if rocker else 0.0,
        "bottom_radius": rocker.bottom_radius if rocker else 0.0,
        "rocker_thickness": rocker.thickness if rocker else 0.0,
        "rocker_depth": rocker.depth if rocker else 0.0,
    }


whole_piece = View(
    name="whole_piece",
    draw=_draw,
    controls=(
        LengthControl("end_top", "end, width at the top", ("8", "24"), ("200", "600")),
        LengthControl("end_bottom", "end, width below", ("8", "20"), ("200", "500")),
        LengthControl("end_height", "end, height", ("5", "16"), ("120", "400")),
        LengthControl("side_length", "side, length", ("10", "30"), ("250", "800")),
    ),
    start=_start,
)
