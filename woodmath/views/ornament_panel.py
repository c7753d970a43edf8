"""The finished panel: an ornament fitted to a trapezium inside its margins, with the numbers that set it out."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from woodmath.drawing import Dimension, Drawing, Frame, Hatch, Label, Line, Point, Shape, Wood
from woodmath.errors import ImpossibleShape
from woodmath.numbers_as_written import number_shown
from woodmath.ornament_field import Field
from woodmath.ornament_fitted import DESIGNS, Band, Fitted, fitted
from woodmath.ornament_rosette import petal_length
from woodmath.piece_ornamented import ground_of, ornament_of
from woodmath.rule import Rule
from woodmath.views.ornament_drawn import FINELY, drawn, painted
from woodmath.views.view import ChoiceControl, LengthControl, Settings, StepControl, View, number

if TYPE_CHECKING:
    from woodmath.piece import Piece

_SIZE = (640.0, 500.0)
_MARGINS = (64.0, 96.0, 84.0, 40.0)
_ROUNDING = 1e-9
_EDGES = ("below", "right", "above", "left")


def _draw(rule: Rule, settings: Settings) -> Drawing:
    panel = Field(*(number(settings, name) for name in ("bottom", "top", "height")))
    margin, petals = number(settings, "margin"), round(number(settings, "petals"))
    unit, design = number(settings, "unit"), str(settings["design"])
    frame = Frame.around(panel.corners, _SIZE, _MARGINS)
    wood = Wood(panel.corners, "board", "long", 0.0, line="outline")
    sizes = _sizes(rule, panel)
    try:
        found = fitted(panel, margin, design, petals, unit)
    except ImpossibleShape as trouble:
        return Drawing(
            title="A panel whose margins leave no room for an ornament",
            frame=frame,
            shapes=(wood, Hatch(panel.corners, "fault"), *sizes),
            headline="The margins leave no room on this panel.",
            faults=(str(trouble),),
        )
    painted_only = settings["finish"] == "painted"
    shapes: list[Shape] = [wood, Line(found.field.corners, "quiet", True)]
    if painted_only:
        shapes += painted(found.motif.regions, frame.length(FINELY))
    shapes += drawn(found.motif.kept, "pencil", frame.length(FINELY))
    shapes += sizes
    if design != "running circles":
        (x, y), reach = found.inner.largest_circle.centre, found.radius
        shapes.append(Line(((x, y), (x + reach, y)), "accent"))
    shapes.append(
        Label(
            f"compass at {rule.mark(found.radius)}",
            frame.at(24.0, 484.0),
            role="accent",
            bold=True,
            size=15.0,
        )
    )
    return Drawing(
        title=f"A panel with a {design}, fitted inside its margins",
        frame=frame,
        shapes=tuple(shapes),
        headline=_headline(rule, found, petals),
        told=_told(rule, found, margin),
        faults=_faults(rule, found),
    )


def _sizes(rule: Rule, panel: Field) -> tuple[Shape, ...]:
    """Dimension the panel: above, below, and its height in a column of its own on the right."""
    half_top, half_bottom = panel.top / 2, panel.bottom / 2
    widest: Point = (max(half_top, half_bottom), 0.0)
    return (
        Dimension((-half_top, panel.high), (half_top, panel.high), rule.mark(panel.top), 30.0),
        Dimension((half_bottom, 0.0), (-half_bottom, 0.0), rule.mark(panel.bottom), 30.0),
        Dimension((widest[0], panel.high), widest, rule.mark(panel.height), 36.0),
    )


def _headline(rule: Rule, found: Fitted, petals: int) -> str:
    opened = rule.mark(found.radius, unit=True)
    if found.design == "running circles":
        (row,) = found.bands
        return f"{row.count} circles run from edge to edge with the compass at {opened}, and nothing is left over."
    length = rule.mark(petal_length(found.radius, petals), unit=True)
    return f"Compass at {opened}: {petals} petals, each {length} long."


def _told(rule: Rule, found: Fitted, margin: float) -> str:
    field = found.field
    parts = [
        f"Margins of {rule.mark(margin, unit=True)}, square to every edge, leave a field {rule.mark(field.bottom)} "
        f"wide below, {rule.mark(field.top)} above and {rule.mark(field.height, unit=True)} high."
    ]
    if found.design == "running circles":
        (row,) = found.bands
        parts.append(
            f"The row is {rule.mark(row.length, unit=True)} long; each circle goes through the next one's centre, and "
            f"the centres stand {rule.mark(row.unit / 2, unit=True)} apart."
        )
    else:
        parts.append(f"What limits the circle: {found.limited_by}.")
    if len(found.bands) == len(_EDGES):
        told = "; ".join(
            f"{name} {_divided(rule, band)}"
            for name, band in zip(_EDGES, found.bands, strict=True)
            if name != "left"
        )
        parts.append(f"The border, with nothing over: {told}; left as right.")
    splay = field.splay
    if abs(splay) > _ROUNDING:
        parts.append(f"The edges lean {number_shown(abs(splay))}° from upright.")
    return " ".join(parts)


def _divided(rule: Rule, band: Band) -> str:
    return f"{rule.mark(band.length)} in {band.count} of {rule.mark(band.unit)}"


def _faults(rule: Rule, found: Fitted) -> tuple[str, ...]:
    if found.outside <= _ROUNDING * found.panel.height:
        return ()
    return (
        f"The ornament goes {rule.mark(max(found.outside, rule.one_mark), unit=True)} beyond its field. Make the unit "
        "smaller, or choose another design.",
    )


def _start(piece: Piece) -> Settings:
    told = ornament_of(piece)
    ground = ground_of(piece, told.on)
    rule = piece.rule
    return {
        "design": told.design if told.design != DESIGNS[0] else "rosette in a border",
        "petals": told.petals,
        "bottom": rule.nearest(ground.bottom),
        "top": rule.nearest(ground.top),
        "height": rule.nearest(ground.height),
        "margin": told.margin,
        "unit": told.unit,
        "finish": "painted",
    }


ornamented_panel = View(
    name="ornamented_panel",
    draw=_draw,
    controls=(
        ChoiceControl("design", "design", tuple((design, design) for design in DESIGNS)),
        StepControl("petals", "petals", "petals", Fraction(5), Fraction(12)),
        LengthControl("bottom", "panel, width below", ("4", "24"), ("100", "600")),
        LengthControl("top", "panel, width above", ("4", "24"), ("100", "600")),
        LengthControl("height", "panel, height", ("4", "20"), ("100", "500")),
        LengthControl("margin", "margin", ("0", "3"), ("0", "75")),
        LengthControl("unit", "unit of the border", ("1/2", "3"), ("12", "75")),
        ChoiceControl("finish", "finish", (("incised and painted", "painted"), ("incised only", "incised"))),
    ),
    start=_start,
)
