"""The tables of what the shop has: the timber, the boards on hand, the tools in the rack.

A length is in the piece's own unit.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Annotated

from woodmath import timber, wood_movement
from woodmath.errors import UnknownName
from woodmath.piece_reading import Rows, Table
from woodmath.piece_values import Choice, Count, Length, Lengths, Number, Words


@dataclass(frozen=True)
class Timber(Table):
    """What the piece is made of.

    Parameters
    ----------
    species : str
        One of `woodmath.timber.SPECIES`; any other name together with its density.
    moisture_now : float
        In percent of the dry mass, 0 to 30.
    density : float, optional
        Kilograms in a cubic metre, of a timber that is in no table or of the very boards, weighed.
    cut : str
        One of `woodmath.wood_movement.CUTS`: how the boards of the panels were sawn.
    moisture_low, moisture_high : float, optional
        What the wood comes to at the driest and at the dampest time of the year where the piece will stand.
    shrinkage : float, optional
        From green to oven-dry across the face of the boards, in percent, where your own table or trial gives it.

    >>> round(Timber(species="cherry, black").kilograms_per_cubic_metre)
    560
    """

    species: Annotated[str, Words("the timber's common name")]
    moisture_now: Annotated[float, Number("moisture of the wood, in percent", 0, 30, "12")] = (
        timber.USUAL_MOISTURE
    )
    density: Annotated[
        float | None, Number("kilograms in a cubic metre of the wood as it is", 100, 1500, "620")
    ] = None
    cut: Annotated[str, Choice("how the boards of the panels were sawn", wood_movement.CUTS)] = (
        wood_movement.CUTS[0]
    )
    moisture_low: Annotated[
        float | None, Number("moisture of the wood at the driest time of the year, in percent", 0, 30, "6")
    ] = None
    moisture_high: Annotated[
        float | None, Number("moisture of the wood at the dampest time of the year, in percent", 0, 30, "11")
    ] = None
    shrinkage: Annotated[
        float | None,
        Number("shrinkage of the boards' width from green to oven-dry, in percent", 0.5, 20, "7.1"),
    ] = None

    @property
    def kilograms_per_cubic_metre(self) -> float:
        """What a cubic metre weighs: as given, or by the species and its moisture."""
        if self.density is not None:
            return self.density
        return timber.density(self.species, self.moisture_now)

    @property
    def year(self) -> tuple[float, float] | None:
        """The least and the greatest moisture of the year; None where the file does not give both."""
        if self.moisture_low is None or self.moisture_high is None:
            return None
        return (self.moisture_low, self.moisture_high)

    def movement(self, width: float, to_moisture: float) -> float:
        """How much wider a part becomes between now and another moisture.

        Parameters
        ----------
        width : float
            As it is now, across the grain, > 0, in any length unit.
        to_moisture : float
            In percent, 0 to 30.

        Returns
        -------
        float
            In the same unit; less than 0 when it shrinks.

        Raises
        ------
        UnknownName
            If nothing is known of how this timber moves.
        ImpossibleShape
            If there is no such width or moisture.

        Source: `woodmath.wood_movement`: by the shrinkage where one is given, else by the printed coefficient.

        >>> round(Timber(species="cherry, black", moisture_now=9).movement(8, 11), 3)
        0.04
        """
        if self.shrinkage is not None:
            return wood_movement.shrinkage_movement(width, self.shrinkage, self.moisture_now, to_moisture)
        return wood_movement.movement(width, self.species.strip(), self.cut, self.moisture_now, to_moisture)

    @staticmethod
    def together(given: Mapping[str, object]) -> Iterator[tuple[str, str]]:
        """Yield the faults of a timber: one in no table without its density, a year without both of its ends."""
        name = given.get("species")
        if isinstance(name, str) and "density" not in given:
            try:
                timber.species(name.strip())
            except UnknownName as unknown:
                yield "species", f"is not in the table. {unknown}"
        low, high = given.get("moisture_low"), given.get("moisture_high")
        for key, value, other in (("moisture_low", low, high), ("moisture_high", high, low)):
            if value is None and other is not None:
                yield key, "is missing: a year has two ends. Give both, or neither."
        # TOML gives a whole number where one is written so.
        if isinstance(low, int | float) and isinstance(high, int | float) and 0 <= high < low <= 30:
            yield "moisture_high", f"is {high:g}, less than moisture_low, {low:g}. Change the two about."

    @staticmethod
    def instead_of(name: str) -> tuple[str, ...]:
        """Return the density and the shrinkage, which were another timber's."""
        return ("density", "shrinkage") if name == "species" else ()


@dataclass(frozen=True)
class Board(Table):
    """Boards on hand, all of one size.

    Parameters
    ----------
    thickness, width, length : float
        As they lie there, > 0, in the piece's unit.
    count : int
        How many, 1 to 200.

    >>> Board(thickness=1, width=8, length=96).count
    1
    """

    thickness: Annotated[float, Length("thickness of the board", stock=True)]
    width: Annotated[float, Length("width of the board, across the grain", stock=True)]
    length: Annotated[float, Length("length of the board, along the grain", stock=True)]
    count: Annotated[int, Count("boards of this size", most=200)] = 1


@dataclass(frozen=True)
class Boards(Table):
    """The boards from which the parts are to come.

    Parameters
    ----------
    on_hand : tuple of Board
        Empty where the file says nothing about them.

    >>> Boards().on_hand
    ()
    """

    on_hand: Annotated[tuple[Board, ...], Rows("the boards on hand", Board)] = ()


NO_BOARDS = Boards()
"""The boards of a file that says nothing about them."""


@dataclass(frozen=True)
class Tools(Table):
    """What hangs in the rack, by width; an empty list says nothing about the rack.

    Parameters
    ----------
    chisels, bits : tuple of float
        Widths of the chisels and diameters of the auger bits, each > 0, in the piece's unit.

    >>> Tools(chisels=(0.25, 0.5)).bits
    ()
    """

    chisels: Annotated[tuple[float, ...], Lengths("width of a chisel")] = ()
    bits: Annotated[tuple[float, ...], Lengths("diameter of an auger bit")] = ()


UNLISTED = Tools()
"""The rack of a file that says nothing about it."""
