"""The patterns of the panels: the end with its tongues and tenons, and one end of a side."""

from __future__ import annotations

from typing import TYPE_CHECKING

from woodmath.case import Case
from woodmath.drawing import Angle, Dimension, Drawing, Label, Line, Shape, Wood, break_line
from woodmath.outlines import Point, Points
from woodmath.pattern import KnownLength, Pattern
from woodmath.true_frame import true_frame
from woodmath.views.case_views import edge_in_the_post, edge_profile, flipped

if TYPE_CHECKING:
    from woodmath.piece import Piece

_ROW = 26.0
_SHOWN = "100 mm"
"""How much of a side is shown beside its end: enough to lay the pattern against."""


def end_pattern(piece: Piece, case: Case) -> Pattern:
    """Draw an end panel in its true shape: shoulders, tongues, tenons, beads, and where the mitres begin.

    Parameters
    ----------
    piece : Piece
        Whose end it is.
    case : Case
        Of that piece.

    Returns
    -------
    Pattern
        In the piece's unit, the middle of its lower edge at 0.

    >>> from woodmath.piece import Piece
    >>> piece = Piece.demo("log-box")
    >>> [known.name for known in end_pattern(piece, Case.of(piece)).known_lengths][:2]
    ['height', 'shoulder to long point']
    """
    lift = case.at(case.panel[0])[1]
    edge = tuple((x, y - lift) for x, y in edge_in_the_post(case))
    (low, _), (high, height) = edge[0], edge[-1]
    right = (*edge,)
    outline: Points = (*right, *reversed(flipped(right)))
    frame = true_frame(outline, piece.rule, (70.0, 110.0, 90.0, 110.0))
    mark = piece.rule.mark
    shapes: list[Shape] = [Wood(outline, "pattern", "long", 0.0, line="edge")]
    shoulder = ((low, 0.0), (high, height))
    shapes += [Line(shoulder, "edge"), Line(flipped(shoulder), "edge")]
    shapes += [Line(((0.0, -frame.length(30)), (0.0, height + frame.length(30))), "centre")]
    levels = _bead_levels(piece, height)
    for level in levels:
        half = low + (high - low) * level / height
        shapes.append(Line(((-half, level), (half, level)), "thin"))
    shapes += _short_points(case, lift, frame.length(36))
    shapes += [
        Dimension((-high, height), (high, height), mark(2 * high), _ROW),
        Dimension((low, 0.0), (-low, 0.0), mark(2 * low), _ROW),
        Dimension((-low / 3, 0.0), (-low / 3, height), mark(height), 0.0),
        Label("face side up", (low / 4, height * 0.62), bold=True, size=16.0),
        Label("grain level", (low / 4, height * 0.5), role="quiet"),
    ]
    if case.splay:
        shapes.append(
            Angle((low, 0.0), 90.0 - case.splay, 90.0, f"{abs(case.splay):.1f}°", 60.0)
            if case.splay > 0
            else Angle((low, 0.0), 90.0, 90.0 - case.splay, f"{abs(case.splay):.1f}°", 60.0)
        )
    drawing = Drawing(
        "An end panel in its true shape",
        frame,
        tuple(shapes),
        f"The end, {mark(2 * low)} below, {mark(2 * high)} above and {mark(height, unit=True)} high.",
        told=f"Along the slope the edge is {mark(case.slope_length, unit=True)} long; dashed lines are the tenons' "
        "short points.",
    )
    return Pattern("End panel", drawing, tuple(_end_lengths(case, lift, low, height, levels)))


def side_pattern(piece: Piece, case: Case) -> Pattern:
    """Draw one end of a side panel with its tongue and tenons, seen square on its face.

    Parameters
    ----------
    piece : Piece
        Whose side it is.
    case : Case
        Of that piece.

    Returns
    -------
    Pattern
        In the piece's unit, the lower end of its shoulder at 0; the other end is its mirror image.

    >>> from woodmath.piece import Piece
    >>> piece = Piece.demo("log-box")
    >>> side_pattern(piece, Case.of(piece)).name
    'End of a side panel'
    """
    reach, wide = case.joint.other_tenon.reach, case.slope_length
    shown = min(piece.rule.read(_SHOWN), case.half_length)
    profile = tuple((depth, along - case.panel[0]) for along, depth in edge_profile(case, reach))
    broken = break_line((-shown, wide), (-shown, 0.0))
    outline: Points = (*profile, *broken)
    frame = true_frame(outline, piece.rule, (60.0, 100.0, 70.0, 100.0))
    mark = piece.rule.mark
    shapes: list[Shape] = [
        Wood(outline, "pattern", "long", 0.0, line="edge"),
        Line(((0.0, 0.0), (0.0, wide)), "edge"),
    ]
    levels = _bead_levels(piece, wide)
    shapes += [Line(((-shown * 0.9, level), (0.0, level)), "thin") for level in levels]
    short = min(case.joint.other_tenon.outer_cheek, case.joint.other_tenon.inner_cheek)
    if reach - short > frame.length(2.0):
        shapes += [
            Line(((short, low - case.panel[0]), (short, high - case.panel[0])), "hidden")
            for low, high in case.tenons
        ]
        if case.tenons:
            low, high = case.tenons[0]
            beside = (low + high) / 2 - case.panel[0]
            shapes.append(_short_point((-frame.length(36), beside), (short, beside)))
    shapes += [
        Dimension((-shown * 0.55, 0.0), (-shown * 0.55, wide), mark(wide), 0.0),
        Dimension((0.0, wide), (reach, wide), mark(reach), _ROW),
        Label("shoulder", (0.0, -frame.length(24)), side="middle", bold=True),
        Label("the board goes on", (-shown * 0.95, -frame.length(24)), role="quiet"),
    ]
    drawing = Drawing(
        "One end of a side panel",
        frame,
        tuple(shapes),
        f"The side's end: {mark(wide)} wide, tenons {mark(reach, unit=True)} to the long point.",
        told="The other end is its mirror image. Dashed lines are the short points.",
    )
    known: list[KnownLength] = []
    for number, (low, high) in enumerate(case.tenons, 1):
        start, end = low - case.panel[0], high - case.panel[0]
        known += [
            KnownLength(
                f"tenon {number}, shoulder to long point",
                (0.0, start + (end - start) / 3),
                (reach, start + (end - start) / 3),
            ),
            KnownLength(f"tenon {number}, width", (reach * 0.7, start), (reach * 0.7, end)),
        ]
    known.append(KnownLength("width of the side", (-shown / 3, 0.0), (-shown / 3, wide)))
    return Pattern("End of a side panel", drawing, tuple(known))


def _bead_levels(piece: Piece, height: float) -> tuple[float, ...]:
    if piece.bead is None:
        return ()
    inner = piece.bead.width + piece.bead.quirk
    return (piece.bead.width, inner, height - inner, height - piece.bead.width)


def _short_point(where: Point, on_the_line: Point) -> Label:
    """Name the dashed line, so that nobody takes it for one to cut along."""
    return Label("short point", where, on_the_line, side="left", role="quiet")


def _short_points(case: Case, lift: float, aside: float) -> list[Shape]:
    tenon = case.joint.tenon
    short = min(tenon.outer_cheek, tenon.inner_cheek)
    if short == tenon.reach:
        return []
    lines: list[Shape] = []
    for low, high in case.tenons:
        points = tuple((x, y - lift) for x, y in (case.at(low, short), case.at(high, short)))
        lines += [Line(points, "hidden"), Line(flipped(points), "hidden")]
    if case.tenons:
        middle = sum(case.tenons[0]) / 2
        (x, y), (across, up) = (case.at(middle, depth) for depth in (0.0, short))
        lines.append(_short_point((x - aside, y - lift), (across, up - lift)))
    return lines


def _end_lengths(
    case: Case, lift: float, low: float, height: float, levels: tuple[float, ...]
) -> list[KnownLength]:
    def at(along: float, depth: float) -> Point:
        x, y = case.at(along, depth)
        return (x, y - lift)

    (start, end), reach = case.tenons[0] if case.tenons else case.panel, case.joint.tenon.reach
    inside = start + (end - start) / 3
    known = [KnownLength("height", (low / 2, 0.0), (low / 2, height))]
    if case.tenons:
        known += [
            KnownLength("shoulder to long point", at(inside, 0.0), at(inside, reach)),
            KnownLength("tenon's width", at(start, reach * 0.7), at(end, reach * 0.7)),
        ]
    if levels:
        known.append(KnownLength("between the beads", (low / 2, levels[1]), (low / 2, levels[2])))
    return known
