"""An ornament fitted to a panel: margins first, then border or fans, and the largest rosette in what is left."""

from __future__ import annotations

import functools
import math
from dataclasses import dataclass

from woodmath.errors import ImpossibleShape
from woodmath.ornament_bands import border, even_division, running_circles
from woodmath.ornament_derivations import derivation
from woodmath.ornament_fan import fan
from woodmath.ornament_field import Field
from woodmath.ornament_fitting_derivations import level_margin, running_derivation
from woodmath.ornament_rosette import petal_length, rosette
from woodmath.ornament_strokes import CompassArc, Motif, Region, RuledLine, Step, moved, together, turned

DESIGNS = ("rosette", "rosette between fans", "rosette in a border", "running circles")
"""What can be fitted, by name."""
RIBS = 5
"""Of a fan in a corner."""
OVERLAP = 0.5
"""Of running circles: each goes through the next one's centre."""

_HEIGHT_OF_A_BORDER = 1 / 3
_LOWER = 0.8
_TRIES = 12
_CLEAR = 0.06
"""What a fan keeps free of the rosette, as a part of the way from the corner to the rosette's middle."""
_NARROWER = 0.7
_SLACK = 1 + 1e-9


@dataclass(frozen=True)
class Band:
    """One stretch of a border, or a row of circles: how it was divided.

    Parameters
    ----------
    length : float
        From end to end.
    count : int
        Units in it.
    unit : float
        How long each is; of circles, the diameter.

    >>> Band(10.0, 4, 2.5).unit
    2.5
    """

    length: float
    count: int
    unit: float


@dataclass(frozen=True)
class Fitted:
    """An ornament that fits its panel.

    Parameters
    ----------
    design : str
        One of `DESIGNS`.
    panel, field, inner : Field
        The panel, what its margins leave, and what the border leaves of that.
    motif : Motif
        With every stroke.
    radius : float
        To which the compass is set for the rosette or the circles.
    limited_by : str
        What keeps the radius from being larger.
    bands : tuple of Band
        Of the border, in the order bottom, right, top, left; or the one row of circles.

    >>> panel = Field(bottom=10.0, top=12.0, height=8.0)
    >>> fitted(panel, margin=1.0, design="rosette").radius
    3.0
    """

    design: str
    panel: Field
    field: Field
    inner: Field
    motif: Motif
    radius: float
    limited_by: str
    bands: tuple[Band, ...] = ()

    @functools.cached_property
    def outside(self) -> float:
        """How far any stroke that stays goes beyond the field; 0 where all stay within."""
        return max(0.0, -self.field.least_clear(self.motif.kept))


def radius_for(reach: float, petals: int) -> float:
    """Return the radius of a rosette that reaches so far and no further.

    Parameters
    ----------
    reach : float
        What it may take from its middle outward, > 0.
    petals : int
        How many, 3 to 12.

    Returns
    -------
    float
        The reach itself, or less where the petals are longer than the radius (five of them or fewer).

    Raises
    ------
    ImpossibleShape
        If the reach is not positive, or no rosette has so many petals.

    Source: `woodmath.ornament_derivations.derivation`.

    >>> radius_for(3.0, 8), round(radius_for(3.0, 5), 3)
    (3.0, 2.552)
    """
    if petal_length(reach, petals) <= reach or petals >= 6:
        return reach
    return derivation().function("radius")(petal=reach, petals=petals)


@functools.lru_cache(maxsize=32)
def fitted(panel: Field, margin: float, design: str, petals: int = 6, unit: float | None = None) -> Fitted:
    """Fit one of the designs to a panel.

    Parameters
    ----------
    panel : Field
        Shoulder to shoulder, without its beads.
    margin : float
        Kept free all round, measured square to each edge, 0 or more.
    design : str
        One of `DESIGNS`.
    petals : int
        Of the rosette, 3 to 12.
    unit : float, optional
        That would be welcome: of the border, or from one running circle's centre to the next, > 0; a sixth of the
        field's height where none is given.

    Returns
    -------
    Fitted
        With every stroke inside the field.

    Raises
    ------
    ImpossibleShape
        If there is no such design, or no room for it.

    Source: `woodmath.ornament_fitting_derivations`.

    >>> whole = fitted(Field(10.0, 12.0, 8.0), margin=1.0, design="rosette in a border", unit=1.0)
    >>> [band.count for band in whole.bands], round(whole.outside, 9)
    ([8, 5, 9, 5], 0.0)
    """
    if design not in DESIGNS:
        raise ImpossibleShape(f"There is no design {design!r}. Choose one of: {', '.join(DESIGNS)}.")
    field = panel.inside_margin(margin)
    welcome = field.height / 6 if unit is None else unit
    if design == "running circles":
        return _running(panel, field, welcome)
    if design == "rosette in a border":
        return _bordered(panel, field, petals, welcome)
    return _with_rosette(design, panel, field, petals)


def _with_rosette(design: str, panel: Field, field: Field, petals: int) -> Fitted:
    room = field.largest_circle
    radius = radius_for(room.radius, petals)
    middle = moved(rosette(petals, radius), room.centre)
    motifs = [middle]
    if design == "rosette between fans":
        motifs += _fans(field, room.centre, room.radius)
    whole = together(design, *motifs)
    return Fitted(design, panel, field, field, whole, radius, room.limited_by)


def _fans(field: Field, centre: tuple[float, float], radius: float) -> list[Motif]:
    """Return a fan in every corner, as large as the rosette and the neighbours leave it."""
    corners = field.corners
    lean = math.cos(math.radians(field.splay))
    fans = []
    for number, (corner, half_corner) in enumerate(zip(corners, field.half_corners, strict=True)):
        before, after = corners[number - 1], corners[(number + 1) % 4]
        away = math.dist(corner, centre)
        reach = min(
            away * (1 - _CLEAR) - radius,
            field.height / 2,
            lean * math.dist(corner, before) / 2,
            lean * math.dist(corner, after) / 2,
        )
        if reach <= _CLEAR * radius:
            continue
        first = math.degrees(math.atan2(after[1] - corner[1], after[0] - corner[0]))
        fans.append(moved(fan(RIBS, reach, 2 * half_corner, first), corner))
    return fans


def _bordered(panel: Field, field: Field, petals: int, wanted: float) -> Fitted:
    """Lower the border until every stretch of it has a unit at least as long as it is high, and a rosette has room."""
    height = min(wanted * _HEIGHT_OF_A_BORDER, field.height / 6)
    for _ in range(_TRIES):
        try:
            return _with_border(panel, field, petals, wanted, height)
        except ImpossibleShape:
            height *= _LOWER
    return _with_border(panel, field, petals, wanted, height)


def _with_border(panel: Field, field: Field, petals: int, wanted: float, height: float) -> Fitted:
    inner = field.inside_margin(height)
    corners, inside, runs = field.corners, inner.corners, field.corner_runs(height)
    motifs, bands, kites = [], [], []
    for number, corner in enumerate(corners):
        other = (number + 1) % 4
        way = math.atan2(corners[other][1] - corner[1], corners[other][0] - corner[0])
        length = math.dist(corner, corners[other]) - runs[number] - runs[other]
        count, unit = even_division(length, wanted)
        start = (corner[0] + runs[number] * math.cos(way), corner[1] + runs[number] * math.sin(way))
        motifs.append(moved(turned(border(length, wanted, height), math.degrees(way)), start))
        bands.append(Band(length, count, unit))
        kites.append(_corner_leaf(corner, inside[number], field.half_corners[number]))
    edges = tuple(
        RuledLine(one, other) for one, other in zip(corners, (*corners[1:], corners[0]), strict=True)
    )
    ruled = Motif(
        "edges of the border", (Step("Rule the field's edges: the border keeps inside them.", edges),)
    )
    room = inner.largest_circle
    radius = radius_for(room.radius, petals)
    middle = moved(rosette(petals, radius), room.centre)
    whole = together("rosette in a border", ruled, *motifs, *kites, middle)
    return Fitted("rosette in a border", panel, field, inner, whole, radius, room.limited_by, tuple(bands))


def _corner_leaf(corner: tuple[float, float], inside: tuple[float, float], half_corner: float) -> Motif:
    """Return a leaf from a corner along its mitre, narrow enough for the corner and for what is left of it inside."""
    opening = min(30.0, _NARROWER * half_corner, _NARROWER * (90.0 - half_corner))
    way = math.degrees(math.atan2(inside[1] - corner[1], inside[0] - corner[0]))
    length = math.dist(corner, inside)
    # Half a leaf opens by half of what an arc turns: this is the petal of a rosette of 180 over that many degrees.
    radius = derivation().function("radius")(petal=length, petals=180.0 / opening)
    halfway = ((corner[0] + inside[0]) / 2, (corner[1] + inside[1]) / 2)
    strokes = []
    for side in (-1.0, 1.0):
        aside = math.radians(way + 90.0 * side)
        back = math.sqrt(radius**2 - (length / 2) ** 2)
        centre = (halfway[0] + back * math.cos(aside), halfway[1] + back * math.sin(aside))
        towards = way - 90.0 * side
        strokes.append(CompassArc(centre, radius, towards - opening, towards + opening))
    return Motif(
        "leaf in a corner",
        (Step("A leaf along the mitre of the corner: two arcs of one radius.", tuple(strokes)),),
        (Region("corner", tuple(strokes)),),
    )


def _running(panel: Field, field: Field, wanted: float) -> Fitted:
    """Fill the middle of the field with a row of circles that ends where the outermost touch the leaning edges."""
    level = field.low + field.height / 2
    width = field.width_at(level)
    # A circle that touches a leaning edge keeps its middle a radius from it, square; level that is so much more.
    slant = level_margin().function("level")(margin=1.0, splay=field.splay) - 1
    radius_of_one = running_derivation().function("radius")

    def diameter(count: int) -> float:
        """Return how large so many are: the row is shorter than the width by a part of the diameter itself."""
        for_each = 2 * radius_of_one(length=1.0, count=count, overlap=OVERLAP)
        return for_each * width / (1 + for_each * slant)

    most = min(wanted / (1 - OVERLAP), field.height)
    count = 1
    while diameter(count) > most * _SLACK:
        count += 1
    if (
        count > 1
        and diameter(count - 1) <= field.height
        and diameter(count - 1) - most < most - diameter(count)
    ):
        count -= 1
    across = diameter(count)
    length = width - across * slant
    row = running_circles(length, across, OVERLAP)
    radius = across / 2
    ends_at_the_sides = moved(row, (-length / 2, level - radius))
    limit = "lower and upper edge" if most == field.height else "the unit"
    return Fitted(
        "running circles",
        panel,
        field,
        field,
        ends_at_the_sides,
        radius,
        limit,
        (Band(length, count, across),),
    )
