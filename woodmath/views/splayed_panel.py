"""An end that is wider above: its sloping edges, tenons square to them, level grain, and the widths at any height."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from woodmath.drawing import Angle, Dimension, Drawing, Frame, Label, Line, Point, Points, Shape, Wood
from woodmath.errors import ImpossibleShape
from woodmath.finding import more
from woodmath.rule import Rule
from woodmath.splay import SplayedPanel, WidthsAtHeight
from woodmath.views.case_views import flipped, mirrored
from woodmath.views.view import LengthControl, Settings, StepControl, View, number

if TYPE_CHECKING:
    from woodmath.piece import Piece

_SIZE = (640.0, 520.0)
_MARGINS = (76.0, 190.0, 118.0, 70.0)
_COLUMN = 474.0
_BEYOND = 0.18
"""How far the posts are drawn beyond the panel's edges, in slope lengths."""


def _draw(rule: Rule, settings: Settings) -> Drawing:
    panel = SplayedPanel(
        number(settings, "end_top"), number(settings, "end_bottom"), number(settings, "end_height")
    )
    square, reach = number(settings, "square"), number(settings, "reach")
    edge = SlopingEdge(panel)
    low, high = -_BEYOND * panel.slope_length, (1 + _BEYOND) * panel.slope_length
    post = (edge.at(low), edge.at(low, square), edge.at(high, square), edge.at(high))
    frame = Frame.around((*post, *flipped(post)), _SIZE, _MARGINS)
    place = panel.height * number(settings, "cut") / 100
    chain = panel.widths_at(place, square, reach)
    corners = (edge.at(0.0), edge.at(panel.slope_length))
    outline = (mirrored(corners[0]), corners[0], corners[1], mirrored(corners[1]))
    tenons: list[Points] = [
        (edge.at(start), edge.at(start, reach), edge.at(end, reach), edge.at(end))
        for start, end in _tenons(settings, panel)
    ]
    shapes: list[Shape] = [
        Wood(flipped(post), "post", "long", 90.0 + panel.splay, line="edge"),
        Wood(post, "post", "long", 90.0 - panel.splay, line="edge"),
        Wood(outline, "end", "long", 0.0, line="edge"),
        *(Wood(tenon, "end", "long", 0.0, line="edge") for tenon in tenons),
        *(Wood(flipped(tenon), "end", "long", 0.0, line="edge") for tenon in tenons),
        *_cut(rule, chain, place, frame),
        *_labels(rule, panel, edge, tenons, frame),
    ]
    return Drawing(
        title="An end with sloping edges between its posts, its tenons square to the edges and its grain level",
        frame=frame,
        shapes=tuple(shapes),
        headline=_headline(rule, panel),
        told=f"At {rule.mark(place)} up it is {rule.mark(chain.between_shoulders)} between the shoulders, "
        f"{rule.mark(chain.over_tenon_ends)} over the tenon ends and {rule.mark(chain.over_posts, unit=True)} over the "
        f"posts, all measured level. {_side_board(rule, panel)}",
    )


class SlopingEdge:
    """The right-hand sloping edge: places along it, and square to it outward."""

    def __init__(self, panel: SplayedPanel) -> None:
        self._foot = (panel.bottom / 2, 0.0)
        self._up = (panel.outward / panel.slope_length, panel.height / panel.slope_length)

    def at(self, along: float, across: float = 0.0) -> Point:
        (x, y), (out, up) = self._foot, self._up
        return (x + along * out + across * up, y + along * up - across * out)


def _tenons(settings: Settings, panel: SplayedPanel) -> list[tuple[float, float]]:
    """Return the tenons that the sloping edge has room for."""
    found = []
    for each in range(int(number(settings, "tenons"))):
        start = number(settings, f"tenon_{each}_place")
        end = start + number(settings, f"tenon_{each}_width")
        if not more(end, panel.slope_length):
            found.append((start, end))
    return found


def _headline(rule: Rule, panel: SplayedPanel) -> str:
    if not more(abs(panel.outward), 0.0):
        return "It stands upright: edge and height are one length, and the tenons follow the grain."
    way = "outward" if panel.outward > 0 else "inward"
    return (
        f"{rule.mark(abs(panel.outward))} {way} on {rule.mark(panel.height)} up: the edges lean "
        f"{abs(panel.splay):.1f}°, and so much does the grain run out of the tenons."
    )


def _side_board(rule: Rule, panel: SplayedPanel) -> str:
    wide = rule.mark(panel.slope_length, unit=True)
    if wide == rule.mark(panel.height, unit=True):
        return f"The side board is {wide} wide, as the end is high."
    return f"The side board is {wide} wide, and not {rule.mark(panel.height)}."


def _cut(rule: Rule, chain: WidthsAtHeight, place: float, frame: Frame) -> list[Shape]:
    """Draw the level cut and its three widths, each on a row of its own below the posts."""
    low = frame.at(0.0, _SIZE[1] - _MARGINS[2])[1]
    down = (place - low) * frame.scale
    half = chain.over_posts / 2
    shapes: list[Shape] = [
        Line(((-half - frame.length(10), place), (half + frame.length(10), place)), "accent")
    ]
    for row, width in enumerate((chain.between_shoulders, chain.over_tenon_ends, chain.over_posts)):
        shapes.append(
            Dimension((width / 2, place), (-width / 2, place), rule.mark(width), down + 26.0 + 32.0 * row)
        )
    return shapes


def _labels(
    rule: Rule, panel: SplayedPanel, edge: SlopingEdge, tenons: list[Points], frame: Frame
) -> list[Shape]:
    shapes: list[Shape] = [
        Dimension(
            mirrored(edge.at(panel.slope_length)),
            edge.at(panel.slope_length),
            rule.mark(panel.top),
            40.0 + _BEYOND * panel.height * frame.scale,
        ),
        Label(
            f"slope {rule.mark(panel.slope_length)}",
            frame.at(_COLUMN, 150.0),
            edge.at(panel.slope_length * 0.86),
            note="as wide is the side board",
        ),
    ]
    if tenons:
        start, end, *_ = tenons[-1]
        middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
        shapes.append(
            Label(
                f"grain at {panel.grain_angle:.1f}°",
                frame.at(_COLUMN, 216.0),
                middle,
                note="short at the tenon's side" if more(abs(panel.outward), 0.0) else "along the tenon",
                role="accent",
                bold=True,
            )
        )
    if more(abs(panel.outward), 0.0):
        corner = edge.at(0.0)
        between = sorted((90.0, 90.0 - panel.splay))
        radius = 0.5 * panel.slope_length * frame.scale
        shapes += [
            Line((corner, (corner[0], corner[1] + radius / frame.scale)), "quiet"),
            Angle(corner, between[0], between[1], "", radius),
            Label(
                f"splay {abs(panel.splay):.1f}°",
                frame.at(_COLUMN, 282.0),
                (
                    corner[0] + panel.outward * 0.5 * 0.5,
                    corner[1] + panel.height * 0.49,
                ),
                note="from upright",
            ),
        ]
    return shapes


def _start(piece: Piece) -> Settings:
    if piece.end is None:
        raise ImpossibleShape(
            f"{piece.name} has no ends to draw. Add [end] to its file, or open another piece."
        )
    return {
        "end_top": piece.end.top,
        "end_bottom": piece.end.bottom,
        "end_height": piece.end.height,
        "cut": 50,
        "square": piece.post.square,
        "reach": piece.post_joint().tenon.reach,
        "tenons": len(piece.joint.tenons),
        **{f"tenon_{each}_place": tenon.place for each, tenon in enumerate(piece.joint.tenons)},
        **{f"tenon_{each}_width": tenon.width for each, tenon in enumerate(piece.joint.tenons)},
    }


splayed_end = View(
    name="splayed_end",
    draw=_draw,
    controls=(
        LengthControl("end_top", "width at the top", ("8", "24"), ("200", "600")),
        LengthControl("end_bottom", "width below", ("8", "20"), ("200", "500")),
        LengthControl("end_height", "height, upright", ("5", "16"), ("120", "400")),
        StepControl("cut", "level cut at", "% of the height", Fraction(0), Fraction(100), Fraction(5)),
    ),
    start=_start,
)
