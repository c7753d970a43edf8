"""The corner of a case whose sides and ends both lean: it is not square, and no cut there is the splay itself.

A corner has two boards and several angles; which is which: the *dihedral* is the corner between the boards, the
*face angle* is the line across a board's face, the *tilt* is how far the saw leans off square to that face.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from woodmath.bevel import bevel_angle
from woodmath.corner_derivations import (
    butt_tilt_derivation,
    dihedral_derivation,
    face_angle_derivation,
    hip_lean_derivation,
    mitre_tilt_derivation,
)
from woodmath.errors import ImpossibleShape
from woodmath.level_bottom import inside_derivation
from woodmath.splay_derivations import level_derivation

__all__ = [
    "SplayedCorner",
    "butt_tilt_derivation",
    "dihedral_derivation",
    "face_angle_derivation",
    "hip_lean_derivation",
    "inside_derivation",
    "mitre_tilt_derivation",
]


@dataclass(frozen=True)
class SplayedCorner:
    """Where a leaning side meets a leaning end.

    Parameters
    ----------
    side_splay, end_splay : float
        Lean of each from upright, in degrees, more than -90 and less than 90; outward more than 0.
    side_thickness : float
        Of the side board, square to its face, > 0, in any length unit; only the ratio of the two counts.
    end_thickness : float or None
        Of the end board, in the same unit; None where it is as thick as the side.

    Raises
    ------
    ImpossibleShape
        If a splay is not between upright and lying flat, or a thickness is not a positive number.

    Source: the derivations of `woodmath.corner_derivations`.

    >>> corner = SplayedCorner(side_splay=45, end_splay=45)
    >>> [round(angle, 2) for angle in (corner.dihedral, corner.side_face_angle, corner.mitre_tilt)]
    [120.0, 35.26, 30.0]
    """

    side_splay: float
    end_splay: float
    side_thickness: float = 1.0
    end_thickness: float | None = None

    def __post_init__(self) -> None:
        for board, splay in (("side", self.side_splay), ("end", self.end_splay)):
            if not -90 < splay < 90:
                raise ImpossibleShape(
                    f"The {board} leans {splay:g} degrees from upright, and a wall of a case leans less than 90 "
                    "either way. Count the splay from upright: 0 stands, 90 would lie on the bench."
                )
        for board, thickness in (("side", self.side_thickness), ("end", self._end_thickness)):
            if not (math.isfinite(thickness) and thickness > 0):
                raise ImpossibleShape(
                    f"The {board} is {thickness:g} thick. Give the thickness of the planed board, more than 0."
                )

    @property
    def dihedral(self) -> float:
        """Corner between the two boards, inside and square to the hip, in degrees."""
        return dihedral_derivation().function("dihedral")(
            side_splay=self.side_splay, end_splay=self.end_splay
        )

    @property
    def side_face_angle(self) -> float:
        """Cut across the side's face, in degrees off square to its level edge."""
        return face_angle_derivation().function("face_angle")(
            own_splay=self.side_splay, other_splay=self.end_splay
        )

    @property
    def end_face_angle(self) -> float:
        """Cut across the end's face, in degrees off square to its level edge."""
        return face_angle_derivation().function("face_angle")(
            own_splay=self.end_splay, other_splay=self.side_splay
        )

    @property
    def butt_tilt(self) -> float:
        """Tilt of the saw, off square, for a board that butts against the other's face, in degrees."""
        return butt_tilt_derivation().function("butt_tilt")(
            side_splay=self.side_splay, end_splay=self.end_splay
        )

    @property
    def mitre_tilt(self) -> float:
        """Tilt of the saw, off square, for the side's half of the mitre, in degrees.

        The mitre is the plane through the outer and the inner hip; with boards of one thickness the end's half has
        the same tilt.
        """
        return self._mitre_tilt(self.side_thickness, self._end_thickness)

    @property
    def end_mitre_tilt(self) -> float:
        """Tilt of the saw, off square, for the end's half of the mitre, in degrees."""
        return self._mitre_tilt(self._end_thickness, self.side_thickness)

    @property
    def hip_lean(self) -> float:
        """Lean of the edge where the two outer faces meet, in degrees from upright."""
        return hip_lean_derivation().function("hip_lean")(
            side_splay=self.side_splay, end_splay=self.end_splay
        )

    @property
    def level_thicknesses(self) -> tuple[float, float]:
        """What the side and the end measure in a level cut, in the unit of the thicknesses."""
        level = level_derivation().function("level")
        return (
            level(across=self.side_thickness, splay=self.side_splay),
            level(across=self._end_thickness, splay=self.end_splay),
        )

    @property
    def level_mitre(self) -> float:
        """Mitre line of a level cut, in degrees off square to the side: 45 only where both measure alike there."""
        side, end = self.level_thicknesses
        return bevel_angle(offset=end, thickness=side)

    @property
    def _end_thickness(self) -> float:
        return self.side_thickness if self.end_thickness is None else self.end_thickness

    def _mitre_tilt(self, own: float, other: float) -> float:
        return mitre_tilt_derivation().function("mitre_tilt")(
            dihedral=self.dihedral, own_thickness=own, other_thickness=other
        )
