"""The whole piece in three views, as a drawing lays them out: the end, the side beside it, the plan below."""

from __future__ import annotations

from dataclasses import replace

from woodmath.case import Case
from woodmath.drawing import Dimension, Drawing, Frame, Label, Line, Shape
from woodmath.ellipse import Ellipse
from woodmath.errors import ImpossibleShape, UnknownName
from woodmath.finding import more
from woodmath.piece import Piece
from woodmath.rule import Rule
from woodmath.views.case_views import from_above, from_the_end, from_the_side, moved, points_of
from woodmath.views.standing import standing
from woodmath.views.view import LengthControl, Settings, View, number

_SIZE = (640.0, 600.0)
_MARGINS = (66.0, 62.0, 44.0, 70.0)
_BETWEEN = 0.15
"""Of what is drawn, left free between two views."""


_SHORTEST = 20.0
"""A dimension shorter than this, in picture units, has no room for its text."""


def _draw(rule: Rule, settings: Settings) -> Drawing:
    piece, case = _changed(settings)
    ellipse, trouble = _ellipse(piece)
    end, side, plan = (view(piece, case, ellipse) for view in (from_the_end, from_the_side, from_above))
    reach = max(x for shape in end for x, _ in points_of(shape))
    low = min(y for shape in (*end, *side) for _, y in points_of(shape))
    high = max(y for shape in (*end, *side) for _, y in points_of(shape))
    deep = max(y for shape in plan for _, y in points_of(shape))
    over = case.half_over_posts
    gap = _BETWEEN * (2 * reach + 2 * over)
    middle, below = reach + gap + over, low - gap - deep
    frame = Frame.around(((-reach, below - deep), (middle + over, high)), _SIZE, _MARGINS)
    headline, told = _told(rule, case)
    return Drawing(
        title="The piece in three views: the end, the side beside it, and below that the plan",
        frame=frame,
        shapes=(
            *end,
            *(moved(shape, middle, 0.0) for shape in side),
            *(moved(shape, middle, below) for shape in plan),
            Line(((0.0, low - frame.length(8)), (0.0, high + frame.length(8))), "centre"),
            *_standing(replace(piece, rocker=None) if trouble else piece, case, (reach, below, deep)),
            *_sizes(rule, case, frame, (reach, middle, low, high)),
            *_lower_sizes(piece, case, frame, (reach, low)),
            *_plan_sizes(rule, case, frame, (middle, below, deep)),
        ),
        headline=headline,
        told=told,
        faults=(trouble,) if trouble else (),
    )


def _standing(piece: Piece, case: Case, places: tuple[float, float, float]) -> tuple[Shape, ...]:
    """Return the piece as it stands, fitted into the corner that the three views leave free."""
    reach, below, deep = places
    faces = standing(piece, case)
    points = [point for face in faces for point in face.points]
    low_x, high_x = min(x for x, _ in points), max(x for x, _ in points)
    low_y, high_y = min(y for _, y in points), max(y for _, y in points)
    size = min(2 * reach / (high_x - low_x), 2 * deep / (high_y - low_y))
    middle_x, middle_y = (low_x + high_x) / 2, (low_y + high_y) / 2
    return tuple(
        Line(
            tuple(((x - middle_x) * size, below + (y - middle_y) * size) for x, y in face.points),
            face.role,
            face.closed,
            face.fill,
        )
        for face in faces
    )


def _changed(settings: Settings) -> tuple[Piece, Case]:
    piece = settings["piece"]
    if not isinstance(piece, Piece) or piece.end is None or piece.side is None:
        raise UnknownName("whole_piece draws a piece with ends and sides. Open one with Piece.read.")
    top, bottom, height = (number(settings, name) for name in ("end_top", "end_bottom", "end_height"))
    changed = replace(
        piece,
        end=replace(piece.end, top=top, bottom=bottom, height=height),
        side=replace(piece.side, length=number(settings, "side_length")),
    )
    # Tenons that the panel no longer holds are left out: the remarks on the piece say so.
    slope = changed.end.slope_length if changed.end else height
    kept = tuple(tenon for tenon in piece.joint.tenons if not more(tenon.place + tenon.width, slope))
    changed = replace(changed, joint=replace(changed.joint, tenons=kept))
    return changed, Case.of(changed)


def _ellipse(piece: Piece) -> tuple[Ellipse | None, str]:
    if piece.rocker is None:
        return None, ""
    try:
        return piece.ellipse(), ""
    except ImpossibleShape as impossible:
        return None, str(impossible)


def _sizes(
    rule: Rule, case: Case, frame: Frame, places: tuple[float, float, float, float]
) -> tuple[Shape, ...]:
    reach, middle, low, high = places
    (bottom, foot), (top, head) = case.at(case.panel[0]), case.at(case.panel[1])
    half, over = case.half_length, case.half_over_posts
    # A turning ends on its axis, a square at one of its corners.
    depths = (case.square / 2,) if case.square_top < case.top else (0.0, case.square)
    post_top = max(case.at(case.top, depth)[1] for depth in depths)
    above = (high - head) * frame.scale + 24.0
    return (
        Dimension((-top, head), (top, head), rule.mark(2 * top), above),
        Dimension((bottom, foot), (-bottom, foot), rule.mark(2 * bottom), (foot - low) * frame.scale + 22.0),
        Dimension(
            (-bottom, foot), (-bottom, head), rule.mark(head - foot), (reach - bottom) * frame.scale + 26.0
        ),
        Dimension((middle - half, head), (middle + half, head), rule.mark(2 * half), above),
        Dimension((middle + over, post_top), (middle + over, 0.0), rule.mark(post_top), 26.0),
        Label("the end", frame.at(frame.place((0.0, 0.0))[0], 24.0), side="middle", bold=True),
        Label("the side", frame.at(frame.place((middle, 0.0))[0], 24.0), side="middle", bold=True),
    )


def _lower_sizes(piece: Piece, case: Case, frame: Frame, places: tuple[float, float]) -> tuple[Shape, ...]:
    """Measure what is below the panels, in the column of the end's height and in a row below its width."""
    reach, low = places
    rule, (bottom, foot) = piece.rule, case.at(case.panel[0])
    column = (reach - bottom) * frame.scale + 26.0
    shapes: list[Shape] = []
    if foot * frame.scale > _SHORTEST:
        shapes.append(Dimension((-bottom, 0.0), (-bottom, foot), rule.mark(foot), column))
    if piece.rocker:
        half, depth = piece.rocker.length / 2, piece.rocker.depth
        if depth * frame.scale > _SHORTEST:
            shapes.append(Dimension((-bottom, -depth), (-bottom, 0.0), rule.mark(depth), column))
        shapes.append(Dimension((half, 0.0), (-half, 0.0), rule.mark(2 * half), -low * frame.scale + 46.0))
    return tuple(shapes)


def _plan_sizes(
    rule: Rule, case: Case, frame: Frame, places: tuple[float, float, float]
) -> tuple[Shape, ...]:
    middle, below, deep = places
    over, wide = (
        case.half_over_posts,
        max(case.at(case.square_top, case.square)[0], case.half_foot + case.level_width),
    )
    return (
        Dimension(
            (middle + over, below - wide),
            (middle - over, below - wide),
            rule.mark(2 * over),
            (deep - wide) * frame.scale + 22.0,
        ),
        Dimension((middle + over, below + wide), (middle + over, below - wide), rule.mark(2 * wide), 26.0),
        Label("from above", (middle, below + deep + frame.length(14)), side="middle", bold=True),
    )


def _told(rule: Rule, case: Case) -> tuple[str, str]:
    (bottom, foot), (top, head) = case.at(case.panel[0]), case.at(case.panel[1])
    upright = not more(top, bottom) and not more(bottom, top)
    headline = (
        "It stands upright: the end is as wide at the top as at the bottom."
        if upright
        else f"Each post leans {abs(case.splay):.1f}° {'outward' if case.splay > 0 else 'inward'} from upright."
    )
    told = (
        f"The end is {rule.mark(2 * bottom)} wide at the bottom, {rule.mark(2 * top)} at the top and "
        f"{rule.mark(head - foot)} high; the side is {rule.mark(2 * case.half_length)} long and "
        f"{rule.mark(case.slope_length, unit=True)} wide, shoulder to shoulder"
        f"{'.' if upright else ' and along its slope.'}"
    )
    return headline, told


def _start(piece: Piece) -> Settings:
    if piece.end is None or piece.side is None:
        raise ImpossibleShape(
            f"{piece.name} has no panels to draw. Add [end] and [side] to its file, or open another piece."
        )
    return {
        "piece": piece,
        "end_top": piece.end.top,
        "end_bottom": piece.end.bottom,
        "end_height": piece.end.height,
        "side_length": piece.side.length,
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
