"""The pattern of the rocker: its board, its curve, the mortises for the posts, the pins and the string."""

from __future__ import annotations

from typing import TYPE_CHECKING

from woodmath.case import Case
from woodmath.case_solids import foot_tenon_solid
from woodmath.drawing import Circle, Dimension, Drawing, Label, Line, Shape, Wood
from woodmath.ellipse import Ellipse
from woodmath.errors import ImpossibleShape
from woodmath.outlines import Points
from woodmath.pattern import KnownLength, Pattern
from woodmath.true_frame import true_frame
from woodmath.views.case_views import flipped

if TYPE_CHECKING:
    from woodmath.piece import Piece

_PIN = 5.0
_CROSS = "6 mm"
_FARTHEST = 1.3
"""Pins that lie farther out than this many half rockers are told by their numbers, not drawn."""


def rocker_pattern(piece: Piece, case: Case, ellipse: Ellipse) -> Pattern:
    """Draw a rocker in its true shape, its top edge level, with pins and string where the sheet has room.

    Parameters
    ----------
    piece : Piece
        Whose rocker it is.
    case : Case
        Of that piece.
    ellipse : Ellipse
        Of its lower edge.

    Returns
    -------
    Pattern
        In the piece's unit, the middle of its top edge at 0.

    Raises
    ------
    ImpossibleShape
        If the piece has no rocker.

    >>> from woodmath.piece import Piece
    >>> piece = Piece.demo("cat-bed")
    >>> rocker_pattern(piece, Case.of(piece), piece.ellipse()).name
    'Rocker'
    """
    rocker = piece.rocker
    if rocker is None:
        raise ImpossibleShape(
            f"{piece.name} has no rockers. Add [rocker] to its file, or open another piece."
        )
    half, depth = rocker.length / 2, rocker.depth
    under = tuple((x, height - depth) for x, height in ellipse.lower_arc(rocker.length))
    outline: Points = ((half, 0.0), (-half, 0.0), *under)
    centre = ellipse.half_height - depth
    pins = tuple((x, y + centre) for x, y in ellipse.pins)
    drawn = max(abs(x) for x, _ in pins) <= _FARTHEST * half and max(y for _, y in pins) <= half
    seen = (*outline, *pins) if drawn else outline
    frame = true_frame(seen, piece.rule, (70.0, 70.0, 60.0, 70.0))
    mark = piece.rule.mark
    cross = piece.rule.read(_CROSS)
    shapes: list[Shape] = [
        Wood(outline, "pattern", "long", 0.0, line="edge"),
        Line(((0.0, -depth - frame.length(26)), (0.0, max(0.0, centre) + frame.length(26))), "centre"),
    ]
    mortises: list[Points] = []
    if rocker.tenon:
        mortise = foot_tenon_solid(case, rocker.tenon, piece.joint.end_clearance).outline
        mortises = [mortise, flipped(mortise)]
        shapes += [Line(points, "edge", True, "void") for points in mortises]
    if drawn:
        # The string is shown when the pencil is at the lowest point: from pin to pencil to pin, and back.
        shapes.append(Line((pins[0], (0.0, -depth), pins[1]), "string", True))
        for x, y in pins:
            shapes += [
                Line(((x - cross, y), (x + cross, y)), "edge"),
                Line(((x, y - cross), (x, y + cross)), "edge"),
                Circle((x, y), 0.0, "edge", "steel", dot=_PIN),
            ]
    shapes += [
        Dimension((0.0, -depth), (0.0, 0.0), mark(depth), frame.scale * half / 5),
        Dimension((half, -depth + rocker.rise), (half, 0.0), mark(depth - rocker.rise), -30.0),
        Label(
            "top edge, level; the posts' shoulders close here",
            (-half * 0.42, -frame.length(16)),
            role="quiet",
            size=13.0,
        ),
    ]
    drawing = Drawing(
        "A rocker in its true shape",
        frame,
        tuple(shapes),
        f"The rocker: {mark(rocker.length)} from heel to heel, {mark(rocker.depth, unit=True)} deep in the middle.",
        told=f"Pins {mark(ellipse.pin_spacing)} apart, {_level(piece, centre)}; the loop of string round both pins and "
        f"the pencil is {mark(ellipse.loop, unit=True)} long.",
    )
    known = [
        KnownLength(
            "depth in the middle", (half / 12, 0.0), (half / 12, -depth + ellipse.height_at(half / 12))
        )
    ]
    if rocker.tenon and rocker.tenon.line == "upright":
        for number, points in enumerate(mortises, 1):
            (inner, top), (outer, _), *_, (_, floor) = points
            level, across = floor / 2, (inner + outer) / 2
            known += [
                KnownLength(f"mortise {number}, length", (inner, level), (outer, level)),
                KnownLength(f"mortise {number}, depth", (across, top), (across, floor)),
            ]
        (one, _), (other, _) = mortises[0][0], mortises[1][0]
        level = mortises[0][2][1] / 2
        known.append(KnownLength("between the mortises", (one, level), (other, level)))
    if drawn:
        (one, y), (other, _) = pins
        known.append(KnownLength("between the pins", (one, y + cross * 0.8), (other, y + cross * 0.8)))
    return Pattern("Rocker", drawing, tuple(known))


def _level(piece: Piece, centre: float) -> str:
    mark = piece.rule.mark(abs(centre))
    if mark == "0":
        return "on the line of the top edge"
    return f"on a line {mark} {'above' if centre > 0 else 'below'} the top edge"
