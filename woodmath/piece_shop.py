"""The tables of what the shop has: the timber, the boards on hand, the tools in the rack.

A length is in the piece's own unit.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Annotated

from woodmath import timber
from woodmath.errors import UnknownName
from woodmath.piece_reading import Rows, Table
from woodmath.piece_values import Count, Length, Lengths, Number, Words


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

    @property
    def kilograms_per_cubic_metre(self) -> float:
        """What a cubic metre weighs: as given, or by the species and its moisture."""
        if self.density is not None:
            return self.density
        return timber.density(self.species, self.moisture_now)

    @staticmethod
    def together(given: Mapping[str, object]) -> Iterator[tuple[str, str]]:
        """Yield the fault of a timber that no table has and whose density is not given either."""
        name = given.get("species")
        if isinstance(name, str) and "density" not in given:
            try:
                timber.species(name.strip())
            except UnknownName as unknown:
                yield "species", f"is not in the table. {unknown}"

    @staticmethod
    def instead_of(name: str) -> tuple[str, ...]:
        """Return the density, which was another timber's."""
        return ("density",) if name == "species" else ()


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
