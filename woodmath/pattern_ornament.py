"""The pattern of an ornament at true size, to be pricked through: its strokes, its compass points, and its settings.

Beside the panel stand the settings as pairs of ticks, so that compass and dividers are set on the sheet itself.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import TYPE_CHECKING

from woodmath.bead import reach_derivation
from woodmath.drawing import Circle, Drawing, Label, Line, Shape, Wood
from woodmath.errors import ImpossibleShape
from woodmath.ornament_fitted import OVERLAP, Fitted
from woodmath.ornament_rosette import chord, compass_points, petal_length, points_to_divide
from woodmath.ornament_strokes import CompassArc, Stroke
from woodmath.outlines import Point
from woodmath.pattern import KnownLength, Pattern
from woodmath.piece_ornament import PANELS, Ornament
from woodmath.piece_ornamented import fitted_to, ornament_of, panel_of
from woodmath.true_frame import true_frame
from woodmath.views.ornament_drawn import cross

if TYPE_CHECKING:
    from woodmath.piece import Piece

_CROSS, _TICK, _ROW, _FROM_THE_PANEL = "3 mm", "5 mm", "16 mm", "14 mm"
_DEGREES_A_PIECE = 1.5
_WHOLE = 359.0
_NUMBER_OUT = 1.045


def ornament_pattern(piece: Piece, ornament: Ornament | None = None) -> Pattern:
    """Draw the ornament of a piece on its panel, in its true shape.

    Parameters
    ----------
    piece : Piece
        Whose panel it is.
    ornament : Ornament, optional
        Another one than the piece's own.

    Returns
    -------
    Pattern
        In the piece's unit, the middle of the panel's lower edge at 0.

    Raises
    ------
    ImpossibleShape
        If there is no such panel, or the margins leave no room on it.

    >>> from woodmath.piece import Piece
    >>> pattern = ornament_pattern(Piece.demo("log-box"))
    >>> pattern.name, [(known.name, round(known.length, 6)) for known in pattern.known_lengths][:2]
    ('Ornament of the end panel', [("the panel's height", 320.0), ('compass', 125.0)])
    """
    told = ornament or ornament_of(piece)
    if told.on not in PANELS:
        raise ImpossibleShape(f"There is no panel called {told.on!r}. Choose {' or '.join(PANELS)}.")
    found, panel, rule = fitted_to(piece, told), panel_of(piece, told.on), piece.rule
    settings = _settings(found, told)
    tick, row, down = rule.read(_TICK), rule.read(_ROW), rule.read(_FROM_THE_PANEL)
    lowest = -down - row * len(settings)
    frame = true_frame((*panel.corners, (0.0, lowest)), rule, (40.0, 40.0, 30.0, 40.0))
    shapes: list[Shape] = [Wood(panel.corners, "pattern", "long", 0.0, line="edge")]
    for up in _bead_levels(piece, panel.height):
        half = panel.width_at(up) / 2
        shapes.append(Line(((-half, up), (half, up)), "thin"))
    shapes.append(Line(found.field.corners, "quiet", True))
    shapes += (_finely(stroke, "quiet") for stroke in found.motif.scaffold)
    shapes += (_finely(stroke, "pencil") for stroke in found.motif.kept)
    for centre in found.motif.centres:
        if panel.inside(centre):
            shapes += cross(centre, rule.read(_CROSS), "quiet")
    shapes += _numbers(found, told)
    known = [
        KnownLength(
            "the panel's height",
            (-0.46 * min(panel.bottom, panel.top), 0.0),
            (-0.46 * min(panel.bottom, panel.top), panel.height),
        )
    ]
    for place, (name, length) in enumerate(settings):
        up = -down - row * place
        # As far to the left as the panel goes, so that most pairs of ticks come to stand on one sheet.
        left = -max(panel.bottom, panel.top) / 2
        start, end = (left, up), (left + length, up)
        shapes += (
            Line((start, end), "thin"),
            *(Line(((x, up - tick), (x, up + tick)), "edge") for x, _ in (start, end)),
            Label(f"{name} {rule.mark(length, unit=True)}", (end[0] + tick, up), size=13.0),
        )
        known.append(KnownLength(name, start, end))
    opened = rule.mark(found.radius, unit=True)
    drawing = Drawing(
        f"The ornament of the {told.on} panel in its true shape",
        frame,
        tuple(shapes),
        f"{found.design.capitalize()}: the compass at {opened}.",
        told="Crosses are compass points; faint lines are the scaffold and the field inside the margins. Set compass "
        "and dividers between the ticks.",
    )
    return Pattern(f"Ornament of the {told.on} panel", drawing, tuple(known))


def _settings(found: Fitted, told: Ornament) -> list[tuple[str, float]]:
    """Return what compass and dividers are set to, by name."""
    settings = [("compass", found.radius)]
    if found.design == "running circles":
        (row,) = found.bands
        if row.count > 1:
            settings.append(("from centre to centre", row.unit * (1 - OVERLAP)))
    else:
        settings.append(("petal", petal_length(found.radius, told.petals)))
        parts = points_to_divide(told.petals)
        if parts not in (6, 8):
            # Six are stepped with the compass itself, and eight with the length of the petal.
            settings.append(("dividers", chord(found.radius, parts)))
    if len(found.bands) > 1:
        names = ("unit of the border below", "unit at the sides", "unit above")
        settings += ((name, band.unit) for name, band in zip(names, found.bands, strict=False))
    return settings


def _bead_levels(piece: Piece, height: float) -> tuple[float, ...]:
    """Return where beads and quirks end, from the lower edge up."""
    if piece.bead is None:
        return ()
    inner = reach_derivation().function("reach")(width=piece.bead.width, quirk=piece.bead.quirk)
    return (piece.bead.width, inner, height - inner, height - piece.bead.width)


def _finely(stroke: Stroke, role: str) -> Line | Circle:
    """Return a stroke drawn so finely that nobody measures its straight pieces."""
    if not isinstance(stroke, CompassArc):
        return Line(stroke.points, role)
    turn = abs(stroke.end - stroke.start)
    if turn > _WHOLE:
        return Circle(stroke.centre, stroke.radius, role)
    return Line(stroke.along(max(2, math.ceil(turn / _DEGREES_A_PIECE))), role)


def _numbers(found: Fitted, told: Ornament) -> Iterator[Shape]:
    """Yield the number of each compass point of the rosette, just outside the circle; or of each running circle."""
    if found.design == "running circles":
        places = [(centre, centre) for centre in found.motif.centres]
    else:
        x, y = found.inner.largest_circle.centre
        marks = compass_points(found.radius, told.petals)
        places = [
            ((x + right, y + up), (x + right * _NUMBER_OUT, y + up * _NUMBER_OUT)) for right, up in marks
        ]
    for number, (point, where) in enumerate(places, 1):
        yield Circle(point, 0.0, "edge", "ink", dot=1.2)
        yield _number(number, where)


def _number(number: int, where: Point) -> Label:
    return Label(str(number), where, side="middle", role="quiet", size=12.0)
