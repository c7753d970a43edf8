"""The whole piece in two elevations: the end and the side, with posts, panels, tenons and rockers."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from woodmath.drawing import Dimension, Drawing, Frame, Label, Line, Point, Points, Shape, Wood, rectangle
from woodmath.ellipse import Ellipse
from woodmath.errors import ImpossibleShape
from woodmath.finding import more
from woodmath.leaning import lean, outward, slope_length
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


@dataclass(frozen=True)
class _Slope:
    """The inside face of the right-hand post in the end's elevation, and where on it the panel's edge begins."""

    start: Point
    outward: float
    height: float
    length: float

    @classmethod
    def of(cls, settings: Settings) -> _Slope:
        top, bottom, height = (number(settings, name) for name in ("end_top", "end_bottom", "end_height"))
        length = slope_length(top, bottom, height)
        # The foot is measured along the post too, and stands less high than it is long.
        return cls(
            (bottom / 2, number(settings, "foot") * height / length), outward(top, bottom), height, length
        )

    def at(self, along: float, across: float = 0.0) -> Point:
        """Return the point so far up the post from the panel's lower edge, and so far square to it, outward."""
        x, y = self.start
        out, up = self.outward / self.length, self.height / self.length
        return (x + along * out + across * up, y + along * up - across * out)

    def level(self, across: float) -> float:
        """Return how wide a thickness square to the post is in a level cut."""
        return across * self.length / self.height


def _end(settings: Settings, ellipse: Ellipse | None) -> tuple[Wood | Line, ...]:
    """Return the end in elevation about its middle line; the posts' feet stand at height 0."""
    slope, square = _Slope.of(settings), number(settings, "square")
    foot, top = slope.at(-number(settings, "foot")), slope.at(slope.length + number(settings, "top"))
    wide = slope.level(square)
    post = (foot, (foot[0] + wide, foot[1]), (top[0] + wide, top[1]), top)
    panel = (
        _mirrored(slope.at(0.0)),
        slope.at(0.0),
        slope.at(slope.length),
        _mirrored(slope.at(slope.length)),
    )
    leaning = lean(number(settings, "end_top"), number(settings, "end_bottom"), slope.height)
    reach = number(settings, "reach")
    tenons = tuple(
        (slope.at(low), slope.at(low, reach), slope.at(high, reach), slope.at(high))
        for low, high in _tenon_places(settings, slope.length)
    )
    return (
        *_rocker(settings, ellipse),
        Wood(panel, "end", "long", 0.0, line="edge"),
        Wood(tuple(map(_mirrored, post)), "post", "long", 90.0 + leaning, line="edge"),
        Wood(post, "post", "long", 90.0 - leaning, line="edge"),
        *(Line(tuple(map(_mirrored, tenon)), "hidden", True) for tenon in tenons),
        *(Line(tenon, "hidden", True) for tenon in tenons),
    )


def _mirrored(point: Point) -> Point:
    return (-point[0], point[1])


def _tenon_places(settings: Settings, edge: float) -> tuple[tuple[float, float], ...]:
    """Return where the tenons begin and end along the post, those that lie on the panel's edge as it is now."""
    count = int(number(settings, "tenons"))
    lows = [number(settings, f"tenon_{each}_place") for each in range(count)]
    highs = [low + number(settings, f"tenon_{each}_width") for each, low in enumerate(lows)]
    return tuple((low, high) for low, high in zip(lows, highs, strict=True) if not more(high, edge))


def _rocker(settings: Settings, ellipse: Ellipse | None) -> tuple[Wood, ...]:
    if ellipse is None:
        return ()
    length, depth = number(settings, "rocker_length"), number(settings, "rocker_depth")
    under = tuple((x, height - depth) for x, height in ellipse.lower_arc(length))
    return (Wood(((length / 2, 0.0), (-length / 2, 0.0), *under), "board", "long", 0.0, line="edge"),)


def _side(settings: Settings, ellipse: Ellipse | None) -> tuple[Wood | Line, ...]:
    """Return the side in elevation, where a leaning post is seen less high than it is long."""
    slope = _Slope.of(settings)
    (_, foot), (_, head) = slope.at(0.0), slope.at(slope.length + number(settings, "top"))
    half, square = number(settings, "side_length") / 2, number(settings, "square")
    panel = Wood(rectangle(-half, foot, half, foot + slope.height), "side", "long", 0.0, line="edge")
    posts = tuple(
        Wood(
            rectangle(min(x, x + sign * square), 0.0, max(x, x + sign * square), head),
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
            rectangle(
                min(x, x + sign * reach), slope.at(low)[1], max(x, x + sign * reach), slope.at(high)[1]
            ),
            "hidden",
            True,
        )
        for sign, x in ((-1.0, -half), (1.0, half))
        for low, high in _tenon_places(settings, slope.length)
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
    slope = _Slope.of(settings)
    (_, foot), (_, head), height = slope.start, slope.at(slope.length + number(settings, "top")), slope.height
    bottom_half, top_half = number(settings, "end_bottom") / 2, number(settings, "end_top") / 2
    half, square = number(settings, "side_length") / 2, number(settings, "square")
    over = (head - foot - height) * frame.scale + 22.0
    top_left: Point = (-top_half, foot + height)
    shapes: list[Shape] = [
        Line(((0.0, low), (0.0, head)), "centre"),
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
            (middle + half + square, head),
            (middle + half + square, 0.0),
            rule.mark(head),
            28.0,
        ),
        Label("the end", frame.at(frame.place((0.0, 0.0))[0], 24.0), side="middle", bold=True),
        Label("the side", frame.at(frame.place((middle, 0.0))[0], 24.0), side="middle", bold=True),
    ]
    return tuple(shapes)


def _told(rule: Rule, settings: Settings) -> tuple[str, str]:
    top, bottom, height = (number(settings, name) for name in ("end_top", "end_bottom", "end_height"))
    splay = lean(top, bottom, height)
    headline = f"Each post leans {abs(splay):.1f}° {'outward' if splay > 0 else 'inward'} from upright."
    if not more(top, bottom) and not more(bottom, top):
        headline = "It stands upright: the end is as wide at the top as at the bottom."
    told = (
        f"The end is {rule.mark(bottom)} wide at the bottom, {rule.mark(top)} at the top and "
        f"{rule.mark(height)} high; "
        f"the side is {rule.mark(number(settings, 'side_length'), unit=True)} long, shoulder to shoulder."
    )
    return headline, told


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
        "tenons": len(piece.joint.tenons),
        **{f"tenon_{each}_place": tenon.place for each, tenon in enumerate(piece.joint.tenons)},
        **{f"tenon_{each}_width": tenon.width for each, tenon in enumerate(piece.joint.tenons)},
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
