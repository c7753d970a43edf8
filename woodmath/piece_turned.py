"""The table of a post's turned top: its stations, counted from the square.

A place is measured along the post from the panels' upper edge, so that the square goes on up to the first station.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from woodmath.piece_reading import Rows, Table
from woodmath.piece_values import Choice, Length
from woodmath.turned_profile import Station, TurnedProfile
from woodmath.turned_volumes import RUNS


@dataclass(frozen=True)
class TurnedStation(Table):
    """One station of a turned top.

    Parameters
    ----------
    place : float
        Along the post, from the panels' upper edge, 0 or more, in the piece's unit.
    diameter : float
        There, > 0.
    to_next : str
        One of `woodmath.turned_volumes.RUNS`: how the turning goes on to the next station.

    >>> TurnedStation(place=0.75, diameter=1.25).to_next
    'straight'
    """

    place: Annotated[
        float,
        Length("from the panels' upper edge to the station, measured along the post", from_zero=True),
    ]
    diameter: Annotated[float, Length("diameter at the station", stock=True)]
    to_next: Annotated[
        str, Choice("how it goes on to the next station: a straight run, half a bead, half a cove", RUNS)
    ] = RUNS[0]


@dataclass(frozen=True)
class TurnedTop(Table):
    """The turned top of every post.

    Parameters
    ----------
    stations : tuple of TurnedStation
        From the square up; the square ends at the first, the post at the last.

    >>> TurnedTop((TurnedStation(0.5, 1.25), TurnedStation(2, 1.25))).profile().length
    1.5
    """

    stations: Annotated[tuple[TurnedStation, ...], Rows("the stations, from the square up", TurnedStation)]

    def profile(self) -> TurnedProfile:
        """Return the turning, its places measured from the panels' upper edge.

        Returns
        -------
        TurnedProfile
            In the piece's unit.

        Raises
        ------
        ImpossibleShape
            If the stations make no turning; the message says why.
        """
        return TurnedProfile(
            tuple(Station(each.place, each.diameter, each.to_next) for each in self.stations)
        )
