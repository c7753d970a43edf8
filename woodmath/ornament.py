"""Motifs of compass and rule to incise and to paint on a panel, and the few primitives that they are made of.

One radius draws a whole rosette, because a compass that keeps its setting makes triangles with two equal sides. A
length is divided evenly by settling the count first and letting the unit give way.

Combine the primitives into designs of your own: a motif can be moved, turned, mirrored, and put together with others.
"""

from __future__ import annotations

from woodmath.ornament_bands import border, circles_along, even_division, rows, running_circles
from woodmath.ornament_derivations import chord_derivation, derivation, six_petals, six_steps
from woodmath.ornament_fan import fan, rib_length
from woodmath.ornament_field import Field, LargestCircle
from woodmath.ornament_fitted import DESIGNS, Fitted, fitted, radius_for
from woodmath.ornament_fitting_derivations import (
    arc_derivation,
    between_edges,
    corner_run,
    fan_derivation,
    half_corner_derivation,
    in_the_corners,
    level_margin,
    running_derivation,
    unit_derivation,
)
from woodmath.ornament_rosette import chord, petal, petal_length, points_to_divide, reach, rosette
from woodmath.ornament_strokes import (
    CompassArc,
    Motif,
    Region,
    RuledLine,
    Step,
    circle,
    divide,
    gaps,
    mirrored,
    moved,
    together,
    turned,
)

__all__ = [
    "DESIGNS",
    "CompassArc",
    "Field",
    "Fitted",
    "LargestCircle",
    "Motif",
    "Region",
    "RuledLine",
    "Step",
    "arc_derivation",
    "between_edges",
    "border",
    "chord",
    "chord_derivation",
    "circle",
    "circles_along",
    "corner_run",
    "derivation",
    "divide",
    "even_division",
    "fan",
    "fan_derivation",
    "fitted",
    "gaps",
    "half_corner_derivation",
    "in_the_corners",
    "level_margin",
    "mirrored",
    "moved",
    "petal",
    "petal_length",
    "points_to_divide",
    "radius_for",
    "reach",
    "rib_length",
    "rosette",
    "rows",
    "running_circles",
    "running_derivation",
    "six_petals",
    "six_steps",
    "together",
    "turned",
    "unit_derivation",
]
