"""Bore to depth by counting the turns of the brace, and lay out the holes of a mortise.

Each turn pulls the bit in by the lead of its screw; counted from the screw's first bite, the full-width hole
is shallower than turns times lead by the length of the screw's point, which arrives first. Holes in a row
have one space fewer than there are holes, so a wanted overlap rounds their number up, and a wanted web rounds
it down.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from woodmath.auger_numbers import auger_bit_diameter, auger_bit_number
from woodmath.boring_derivations import derivation, lead_derivation, tip_derivation
from woodmath.derivation import spoken
from woodmath.errors import ImpossibleShape, UnknownName
from woodmath.hole_rows import BoringOrder, boring_order, holes_along, row_derivation
from woodmath.lead_screw import lead_of, threads_per_inch
from woodmath.trial_holes import LeadFit, fit_lead

__all__ = [
    "AugerBit",
    "BoringOrder",
    "LeadFit",
    "auger_bit_diameter",
    "auger_bit_number",
    "boring_order",
    "derivation",
    "fit_lead",
    "holes_along",
    "lead_derivation",
    "lead_of",
    "row_derivation",
    "threads_per_inch",
    "tip_derivation",
]

CountedFrom = Literal["lips", "screw"]
"""Where counting starts: when the lips touch the face, or when the screw's point first bites."""


@dataclass(frozen=True)
class AugerBit:
    """An auger bit with a lead screw, as a brace turns it.

    Parameters
    ----------
    diameter : float
        Of the hole, > 0, in any length unit.
    lead : float
        Advance at each turn, > 0, in the same unit.
    point_length : float
        How far the screw's point stands ahead of the lips that cut at full width, 0 or more, in the same
        unit.

    Raises
    ------
    ImpossibleShape
        If a length cannot be.

    Source: `derivation`; depth by counted turns, Noyes, *Handwork in Wood*, 1910, ch. IV.

    >>> bit = AugerBit(diameter=3 / 8, lead=1 / 8, point_length=1 / 4)
    >>> bit.depth(18, counted_from="screw"), bit.depth(18, counted_from="lips")
    (2.0, 2.25)
    """

    diameter: float
    lead: float
    point_length: float

    def __post_init__(self) -> None:
        for name, least in (
            ("diameter", "more than 0"),
            ("lead", "more than 0"),
            ("point_length", "0 or more"),
        ):
            length = getattr(self, name)
            if not math.isfinite(length) or length < 0 or (length == 0 and name != "point_length"):
                raise ImpossibleShape(
                    f"The {spoken(name)} of the bit is {length:g}, and it must be {least}. Measure it on "
                    "the bit and give it in the unit of the piece."
                )

    @classmethod
    def from_threads(
        cls,
        diameter: float,
        threads_per_inch: float,
        point_length: float,
        starts: int = 1,
        *,
        unit: Literal["inch", "millimetre"] = "inch",
    ) -> AugerBit:
        """Bit whose lead follows from the threads of its screw.

        Parameters
        ----------
        diameter, point_length : float
            As for the class, in `unit`.
        threads_per_inch : float
            Ridges counted along an inch of the screw, > 0; always to the inch, whatever the unit.
        starts : int
            Threads that wind side by side: 1 for a single thread, 2 for a double one.
        unit : "inch" or "millimetre"
            The piece's unit: that of the diameter, the point's length and the lead.

        Returns
        -------
        AugerBit
            With its lead in `unit`.

        Raises
        ------
        ImpossibleShape
            If a size cannot be, or `starts` is not a whole number from 1.
        UnknownName
            If the unit is neither of the two.

        Source: `lead_derivation`; 1 in = 25.4 mm exactly (1959; from memory).

        >>> AugerBit.from_threads(diameter=3 / 8, threads_per_inch=16, point_length=1 / 4, starts=2).lead
        0.125
        >>> AugerBit.from_threads(10, threads_per_inch=16, point_length=6, unit="millimetre").lead
        1.5875
        """
        return cls(diameter, lead_of(threads_per_inch, starts, unit=unit), point_length)

    def depth(self, turns: float, counted_from: CountedFrom) -> float:
        """Depth of the hole at its full width after so many turns.

        Parameters
        ----------
        turns : float
            Turns of the brace, 0 or more.
        counted_from : "lips" or "screw"
            Whether counting began when the lips touched the face, or when the screw's point first bit.

        Returns
        -------
        float
            In the bit's unit; 0 as long as the lips have not reached the face.

        Raises
        ------
        ImpossibleShape
            If the turns are less than 0.
        UnknownName
            If counting began neither at the lips nor at the screw.

        Source: `derivation`, solved for the depth.

        >>> AugerBit(diameter=3 / 8, lead=1 / 8, point_length=1 / 4).depth(1, counted_from="screw")
        0.0
        """
        ahead = self._ahead(counted_from)
        deep = derivation().function("depth")(turns=turns, lead=self.lead, point_length=ahead)
        return max(0.0, deep)

    def turns(self, depth: float, counted_from: CountedFrom) -> float:
        """Turns of the brace that bring the hole to a depth at its full width.

        Parameters
        ----------
        depth : float
            0 or more, in the bit's unit.
        counted_from : "lips" or "screw"
            Where counting begins: as the lips touch the face, or at the first bite of the screw's point.

        Returns
        -------
        float
            Number of turns, with its fraction.

        Raises
        ------
        ImpossibleShape
            If the depth is less than 0.
        UnknownName
            If counting begins neither at the lips nor at the screw.

        Source: `derivation`.

        >>> AugerBit(diameter=3 / 8, lead=1 / 8, point_length=1 / 4).turns(2, counted_from="screw")
        18.0
        """
        ahead = self._ahead(counted_from)
        return derivation().function("turns")(depth=_hole(depth), lead=self.lead, point_length=ahead)

    def tip_depth(self, turns: float, counted_from: CountedFrom) -> float:
        """Depth of the screw's tip below the face after so many turns.

        Parameters
        ----------
        turns : float
            Turns of the brace, 0 or more.
        counted_from : "lips" or "screw"
            Whether counting began when the lips touched the face, or when the screw's point first bit.

        Returns
        -------
        float
            In the bit's unit, 0 or more; where it is more than the stock, the point has come through.

        Raises
        ------
        ImpossibleShape
            If the turns are less than 0.
        UnknownName
            If counting began neither at the lips nor at the screw.

        Source: `derivation`, `tip_derivation`.

        >>> bit = AugerBit(diameter=3 / 8, lead=1 / 8, point_length=1 / 4)
        >>> bit.tip_depth(14, counted_from="screw"), bit.tip_depth(14, counted_from="lips")
        (1.75, 2.0)
        """
        ahead = self._ahead(counted_from)
        went_in = derivation().function("depth")(turns=turns, lead=self.lead, point_length=0.0)
        return tip_derivation().function("tip_depth")(depth=went_in, point_length=self.point_length - ahead)

    def point_depth(self, depth: float) -> float:
        """Depth of the screw's tip when the hole has a depth at its full width.

        Parameters
        ----------
        depth : float
            0 or more, in the bit's unit.

        Returns
        -------
        float
            In the same unit; where it is more than the stock, the point has come through.

        Raises
        ------
        ImpossibleShape
            If the depth is less than 0.

        Source: `tip_derivation`.

        >>> AugerBit(diameter=3 / 8, lead=1 / 8, point_length=1 / 4).point_depth(1.5)
        1.75
        """
        return tip_derivation().function("tip_depth")(depth=_hole(depth), point_length=self.point_length)

    def turns_until_through(self, thickness: float) -> float:
        """Turns after which the screw's point pricks through, counted from its first bite.

        How long the point is does not matter: from its first bite to the far face it goes the thickness of
        the wood.

        Parameters
        ----------
        thickness : float
            Of the wood, in the direction of boring, > 0, in the bit's unit.

        Returns
        -------
        float
            Number of turns, with its fraction.

        Raises
        ------
        ImpossibleShape
            If the thickness is not more than 0.

        Source: `derivation`, its first step; bore until the point pricks through and finish from the other
        face, Noyes, *Handwork in Wood*, 1910, ch. IV.

        >>> AugerBit(diameter=3 / 8, lead=1 / 8, point_length=1 / 4).turns_until_through(1.75)
        14.0
        """
        if not thickness > 0:
            raise ImpossibleShape(
                f"The wood is said to be {thickness:g} thick; give a thickness of more than 0."
            )
        return derivation().function("turns")(depth=thickness, lead=self.lead, point_length=0.0)

    def threads_per_inch(self, starts: int = 1, *, unit: Literal["inch", "millimetre"] = "inch") -> float:
        """Ridges to an inch of the screw that has this bit's lead.

        Parameters
        ----------
        starts : int
            Threads that wind side by side: 1 for a single thread, 2 for a double one.
        unit : "inch" or "millimetre"
            The bit's unit.

        Returns
        -------
        float
            Always to the inch, whatever the unit.

        Raises
        ------
        ImpossibleShape
            If `starts` is not a whole number from 1.
        UnknownName
            If the unit is neither of the two.

        Source: `lead_derivation`.

        >>> AugerBit(diameter=3 / 8, lead=1 / 8, point_length=1 / 4).threads_per_inch()
        8.0
        """
        return threads_per_inch(self.lead, starts, unit=unit)

    def _ahead(self, counted_from: str) -> float:
        if counted_from not in ("lips", "screw"):
            raise UnknownName(
                f"Turns cannot be counted from {counted_from!r}. Say 'screw' if you count from the first "
                "bite of the screw's point, or 'lips' if you begin when the lips touch the face."
            )
        return self.point_length if counted_from == "screw" else 0.0


def _hole(depth: float) -> float:
    if not (math.isfinite(depth) and depth >= 0):
        raise ImpossibleShape(f"The hole is said to be {depth:g} deep; give a depth of 0 or more.")
    return depth
