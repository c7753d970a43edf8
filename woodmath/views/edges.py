"""A panel's edge in its post, cut level: the rebate, the tongue in its groove, and the tenon that goes on from it."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from woodmath.drawing import (
    Dimension,
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
    rectangle,
    spread,
)
from woodmath.errors import ImpossibleShape
from woodmath.groove import Groove
from woodmath.rebate import FACES, OUTER_FACE, Rebate, panel_set_back
from woodmath.rule import Rule
from woodmath.tongue_in_groove import BOTTOMS, TongueInGroove
from woodmath.views.view import ChoiceControl, LengthControl, Settings, View, number

if TYPE_CHECKING:
    from woodmath.piece import Piece

_SIZE = (640.0, 520.0)
_MARGINS = (104.0, 124.0, 128.0, 104.0)
_STUB = 0.5
_COLUMN = 396.0


@dataclass(frozen=True)
class _Edge:
    """What the picture shows, in the post's own coordinates: outer corner at the origin, y into the post."""

    post: float
    set_back: float
    reach: float
    rebate: Rebate
    groove: Groove
    fit: TongueInGroove
    rebated_from: str

    @property
    def panel_face(self) -> float:
        return panel_set_back(self.set_back, self.rebate.board, self.rebate.tongue, self.rebated_from)

    @property
    def panel_back(self) -> float:
        return self.panel_face + self.rebate.board

    @property
    def inner_cheek(self) -> float:
        return self.set_back + self.rebate.tongue

    @property
    def shoulder(self) -> float:
        return self.post + self.fit.shoulder_gap

    @property
    def tongue_end(self) -> float:
        return self.shoulder - self.rebate.width

    @property
    def floor(self) -> float:
        return self.post - self.groove.depth

    @property
    def tenon_end(self) -> float:
        return min(self.post - self.reach, self.tongue_end)

    @property
    def far(self) -> float:
        return self.shoulder + _STUB * self.post

    @property
    def shoulder_from(self) -> tuple[float, float]:
        """Between which depths the shoulder stands: on the side from which the rebate was taken."""
        if self.rebated_from == OUTER_FACE:
            return self.panel_face, self.set_back
        return self.inner_cheek, self.panel_back


def _draw(rule: Rule, settings: Settings) -> Drawing:
    board, tongue = number(settings, "board"), number(settings, "tongue")
    try:
        rebate = Rebate(board, tongue, number(settings, "rebate_width"))
    except ImpossibleShape as trouble:
        return _impossible(rule, settings, str(trouble))
    groove = Groove(width=tongue, depth=number(settings, "groove_depth"))
    edge = _Edge(
        post=number(settings, "post"),
        set_back=number(settings, "set_back"),
        reach=number(settings, "reach"),
        rebate=rebate,
        groove=groove,
        fit=TongueInGroove(rebate.width, groove.depth, tongue, groove.width),
        rebated_from=str(settings["rebated_from"]),
    )
    frame = Frame.around(
        (
            (min(0.0, edge.floor, edge.tenon_end), max(0.0, -edge.panel_face)),
            (edge.far, -max(edge.post, edge.panel_back, edge.inner_cheek)),
        ),
        _SIZE,
        _MARGINS,
    )
    faults = tuple(_faults(edge, rule))
    return Drawing(
        title="The edge of a panel in its post, cut level, with the tongue in the groove",
        frame=frame,
        shapes=(
            *_wood(edge),
            *_dimensions(edge, rule, frame),
            *_labels(edge, rule, frame),
        ),
        headline=f"Set the depth stop to {rule.mark(rebate.stop)}; saw the tongue back to {rule.mark(rebate.width)}. "
        + ("" if edge.fit.verdict == BOTTOMS else edge.fit.told(rule)).strip(),
        told=_told(edge, rule),
        faults=faults,
    )


def _turned(points: Points) -> Points:
    """Turn the section over, so that the post's outer corner stands at the top left."""
    return tuple((x, -y) for x, y in points)


def _wood(edge: _Edge) -> list[Shape]:
    post, low, high = edge.post, edge.set_back, edge.inner_cheek
    face, back, far = edge.panel_face, edge.panel_back, edge.far
    end = break_line((far, face), (far, back))
    if edge.rebated_from == OUTER_FACE:
        outline = (
            (edge.shoulder, face), (edge.shoulder, low), (edge.tongue_end, low), (edge.tongue_end, high),
        )  # fmt: skip
    else:
        outline = (
            (edge.tongue_end, low), (edge.tongue_end, high), (edge.shoulder, high), (edge.shoulder, back),
        )  # fmt: skip
    shapes: list[Shape] = [
        Wood(_turned(rectangle(0.0, 0.0, post, post)), "post", "end", line=""),
        Line(_turned(rectangle(edge.floor, low, post, high)), "edge", True, "void"),
        Line(_turned(rectangle(0.0, 0.0, post, post)), "outline", True),
        Wood(_turned((*outline, *reversed(end))), "end", "long", 0.0, line="edge"),
        Line(_turned(((edge.tongue_end, low), (edge.tenon_end, low), (edge.tenon_end, high),
                      (edge.tongue_end, high))), "hidden"),
    ]  # fmt: skip
    if edge.fit.shoulder_gap > 0:
        shapes.append(Hatch(_turned(rectangle(post, face, edge.shoulder, back)), "fault"))
        shapes.append(Wood(_turned(rectangle(post, low, edge.shoulder, high)), "end", "long", line="edge"))
    if high > post:
        shapes.append(Hatch(_turned(rectangle(edge.floor, max(low, post), post, high)), "fault"))
    top, bottom = edge.shoulder_from
    shapes.append(Line(_turned(((edge.shoulder, top), (edge.shoulder, bottom))), "accent"))
    return shapes


def _dimensions(edge: _Edge, rule: Rule, frame: Frame) -> list[Shape]:
    face, back = edge.panel_face, edge.panel_back
    parts = (*((0.0,) if face > 0 else ()), face, edge.set_back, edge.inner_cheek, back)
    above = 34.0 + frame.scale * max(0.0, -face)
    below = -36.0 - frame.scale * max(0.0, back - edge.post, edge.inner_cheek - edge.post)
    return [
        *_column(rule, frame, _post_parts(edge), 0.0, -38.0),
        *_column(rule, frame, parts, edge.far, 38.0),
        Dimension((edge.far, -face), (edge.far, -back), f"b = {rule.mark(edge.rebate.board)}", 82.0),
        Dimension((edge.tongue_end, 0.0), (edge.shoulder, 0.0), rule.mark(edge.rebate.width), above),
        Dimension((edge.floor, -edge.post), (edge.post, -edge.post), rule.mark(edge.groove.depth), below),
    ]


def _post_parts(edge: _Edge) -> tuple[float, ...]:
    """Return the depths between which the post is dimensioned: set-back, groove, and what is left inside it."""
    inside = (edge.post,) if edge.inner_cheek < edge.post else ()
    return (0.0, edge.set_back, edge.inner_cheek, *inside)


def _column(rule: Rule, frame: Frame, places: tuple[float, ...], x: float, offset: float) -> list[Dimension]:
    """Return a chain of dimensions in one column, their texts pushed apart where they must be."""
    parts = [(low, high) for low, high in pairwise(places) if high - low > 1e-9]
    middles = [frame.scale * (low + high) / 2 for low, high in parts]
    moved = spread(middles, 23.0, -1e6, 1e6)
    side = 1.0 if offset > 0 else -1.0
    return [
        Dimension((x, -low), (x, -high), rule.mark(high - low), side * abs(offset), place - middle)
        for (low, high), place, middle in zip(parts, moved, middles, strict=True)
    ]


def _labels(edge: _Edge, rule: Rule, frame: Frame) -> list[Label]:
    width = edge.rebate.tongue
    top, bottom = edge.shoulder_from
    clearance = edge.fit.floor_clearance
    labels = [
        Label(
            "the shoulder closes here" if not edge.fit.shoulder_gap else "the shoulder stands off",
            frame.at(_COLUMN, 26.0),
            (edge.shoulder, -(top + 0.4 * (bottom - top))),
            f"rebated from the {edge.rebated_from}",
            role="accent",
            bold=True,
        ),
        Label(
            "tenon, out of the same tongue",
            frame.at(100.0, 462.0),
            ((edge.tenon_end + max(edge.tenon_end, edge.floor)) / 2, -(edge.set_back + 0.7 * width)),
            "it goes on to full reach in the mortise",
        ),
    ]
    if clearance > 0:
        point: Point = (edge.floor + clearance / 2, -(edge.set_back + 0.5 * width))
        labels.append(
            Label(f"clearance {rule.mark(clearance)}", frame.at(_COLUMN, 462.0), point, "tongue to floor")
        )
    return labels


def _told(edge: _Edge, rule: Rule) -> str:
    face = edge.panel_face
    if face < 0:
        lies = f"The panel stands proud of the post by {rule.mark(-face, unit=True)}."
    elif rule.mark(face) == rule.mark(0.0):
        lies = "The panel's face lies level with the post's."
    else:
        lies = f"The panel's face lies {rule.mark(face, unit=True)} behind the post's."
    return f"{lies} The rebate takes {100 * edge.rebate.share:.0f} % of the board."


def _faults(edge: _Edge, rule: Rule) -> list[str]:
    faults = [edge.fit.told(rule)] if edge.fit.verdict == BOTTOMS else []
    try:
        edge.groove.left_beside(edge.post, edge.set_back)
        edge.groove.left_under(edge.post)
    except ImpossibleShape as trouble:
        faults.append(str(trouble))
    return faults


def _impossible(rule: Rule, settings: Settings, trouble: str) -> Drawing:
    """Show a tongue that no rebate can leave: the board, and beside it in hatching what it has no wood for."""
    board, tongue, width = (number(settings, name) for name in ("board", "tongue", "rebate_width"))
    long = 2.4 * max(board, width)
    frame = Frame.around(((0.0, 0.0), (long, -max(board, tongue))), _SIZE, _MARGINS)
    end = break_line((long, 0.0), (long, board))
    shapes: list[Shape] = [
        Wood(_turned((*rectangle(0.0, 0.0, 0.0, board)[::3], *reversed(end))), "end", "long", 0.0),
        Dimension((long, 0.0), (long, -board), f"b = {rule.mark(board)}", 40.0),
        Dimension((0.0, 0.0), (0.0, -tongue), f"t = {rule.mark(tongue)}", -40.0),
        Label("no rebate is left to cut", frame.at(_COLUMN, 26.0), None, role="accent", bold=True),
    ]
    if tongue > board:
        shapes.append(Hatch(_turned(rectangle(0.0, board, width, tongue)), "fault"))
    return Drawing(
        title="A board, and a tongue that is not thinner than it",
        frame=frame,
        shapes=tuple(shapes),
        headline="This edge cannot be rebated.",
        faults=(trouble,),
    )


def _start(piece: Piece) -> Settings:
    tongue, end = piece.joint.tongue, piece.end
    if tongue is None or end is None:
        raise ImpossibleShape(
            f"{piece.name} has no tongue on its panels' edges. Add [joint.tongue] and [end] to its file, or open a "
            "piece that has both."
        )
    return {
        "board": end.thickness,
        "tongue": piece.joint.tenon_thickness,
        "rebate_width": tongue.length,
        "groove_depth": tongue.groove_depth,
        "set_back": piece.joint.set_back,
        "rebated_from": tongue.rebated_from,
        "post": piece.post.square,
        "reach": piece.post_joint().tenon.reach,
    }


edge_in_section = View(
    name="edge_in_section",
    draw=_draw,
    controls=(
        LengthControl("board", "board, thick", ("1/2", "1 1/2"), ("12", "38")),
        LengthControl("tongue", "tongue, thick", ("1/8", "1"), ("3", "25")),
        LengthControl("rebate_width", "tongue, long", ("1/8", "1"), ("3", "25")),
        LengthControl("groove_depth", "groove, deep", ("1/8", "1"), ("3", "25")),
        LengthControl("set_back", "set-back of the groove", ("1/8", "1"), ("3", "25")),
        ChoiceControl("rebated_from", "rebated from", tuple((f"the {face}", face) for face in FACES)),
    ),
    start=_start,
)
