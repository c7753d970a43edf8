"""A turning as a list of stations: where the calipers measure, how thick it is there, and how it runs on.

Every fillet, every crest of a bead and every bottom of a cove is a station with a diameter of its own: that is where
the parting tool goes in, down to the calipers, and everything else is cut from one of these places to the next.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from woodmath.errors import ImpossibleShape
from woodmath.outlines import Point, Points
from woodmath.turned_volumes import HOLLOW, ROUND, RUNS, STRAIGHT, stretch_radius, stretch_volume

__all__ = ["HOLLOW", "ROUND", "RUNS", "STRAIGHT", "CaliperSetting", "Station", "TurnedProfile"]

FEWEST_STATIONS = 2


@dataclass(frozen=True)
class Station:
    """One place of a turning.

    Parameters
    ----------
    place : float
        Along the axis, from wherever the turning is measured from, in any length unit.
    diameter : float
        There, > 0, in the same unit.
    to_next : {"straight", "round", "hollow"}
        How it runs on: a cylinder or a taper (at one and the same place a step); half a bead, level with the axis
        at the larger diameter; half a cove, level with the axis at the smaller. Of the last it says nothing.

    >>> Station(0.5, 1.25).to_next
    'straight'
    """

    place: float
    diameter: float
    to_next: str = STRAIGHT


@dataclass(frozen=True)
class CaliperSetting:
    """What the calipers are set to at a station.

    Parameters
    ----------
    number : int
        Of the station, counted from 1 at the square.
    place, diameter : float
        As the finished station has them.
    setting : float
        The diameter and what is left on for the finishing cut.

    >>> CaliperSetting(1, 0.0, 1.25, 1.28125).setting
    1.28125
    """

    number: int
    place: float
    diameter: float
    setting: float


@dataclass(frozen=True)
class TurnedProfile:
    """A turning from its first station to its last.

    Parameters
    ----------
    stations : tuple of Station
        Two at least, their places never falling.

    Raises
    ------
    ImpossibleShape
        If there are too few stations, one has no diameter or an unknown run, or their places fall.

    >>> ball = TurnedProfile((Station(0, 1e-6, "round"), Station(1, 2, "round"), Station(2, 1e-6)))
    >>> round(ball.volume, 4), round(ball.diameter_at(0.5), 4)
    (4.1888, 1.7321)
    """

    stations: tuple[Station, ...]

    def __post_init__(self) -> None:
        """Refuse what is no turning."""
        if len(self.stations) < FEWEST_STATIONS:
            raise ImpossibleShape(
                f"{len(self.stations)} of the stations that a turning needs are given. Give at least "
                f"{FEWEST_STATIONS}: where it begins and where it ends."
            )
        for number, station in enumerate(self.stations, 1):
            if not (math.isfinite(station.place) and math.isfinite(station.diameter)):
                raise ImpossibleShape(
                    f"Station {number} has no plain number for its place or its diameter. "
                    "Give both as numbers, such as 0.5 and 1.25."
                )
            if station.diameter <= 0:
                raise ImpossibleShape(
                    f"Station {number} is {station.diameter:g} thick, and nothing can be turned away to nothing: give "
                    "a diameter of more than 0."
                )
            if station.to_next not in RUNS:
                raise ImpossibleShape(
                    f"Station {number} runs on {station.to_next!r}. Possible: {', '.join(RUNS)}."
                )
        for number, (one, other) in enumerate(pairwise(self.stations), 1):
            if other.place < one.place:
                raise ImpossibleShape(
                    f"Station {number + 1} lies at {other.place:g}, before station {number} at {one.place:g}. List the "
                    "stations in order, from the square up."
                )
        if self.end == self.start:
            raise ImpossibleShape(
                f"All stations lie at {self.start:g}, so the turning has no length. Place the last one further up."
            )

    @property
    def start(self) -> float:
        """Place of the first station."""
        return self.stations[0].place

    @property
    def end(self) -> float:
        """Place of the last station."""
        return self.stations[-1].place

    @property
    def length(self) -> float:
        """From the first station to the last."""
        return self.end - self.start

    @property
    def largest(self) -> float:
        """The greatest diameter: every other lies between the diameters of two stations."""
        return max(station.diameter for station in self.stations)

    @property
    def volume(self) -> float:
        """The wood in it, in the cubed unit."""
        return math.fsum(
            stretch_volume(one.to_next, one.diameter, other.diameter, other.place - one.place)
            for one, other in pairwise(self.stations)
        )

    @property
    def necks(self) -> tuple[Station, ...]:
        """The stations where it is thinner than before and after, without its two ends."""
        thick = [station.diameter for station in self.stations]
        return tuple(
            station
            for place, station in enumerate(self.stations)
            if _is_lower(thick[place], thick[:place][::-1]) and _is_lower(thick[place], thick[place + 1 :])
        )

    def diameter_at(self, place: float) -> float:
        """Return the diameter at a place; where there is a step, that of its far side.

        Parameters
        ----------
        place : float
            From the first station to the last, in the unit of the stations.

        Returns
        -------
        float
            In the same unit.

        Raises
        ------
        ImpossibleShape
            If the place lies beyond either end.

        >>> TurnedProfile((Station(0, 2, "hollow"), Station(1, 1))).diameter_at(1)
        1.0
        """
        if not self.start <= place <= self.end:
            raise ImpossibleShape(
                f"The turning goes from {self.start:g} to {self.end:g}, and {place:g} lies beyond it. Ask for a place "
                "between."
            )
        here = max(number for number, station in enumerate(self.stations[:-1]) if station.place <= place)
        one, other = self.stations[here], self.stations[here + 1]
        if other.place == one.place:
            return float(other.diameter)
        return 2 * _radius(one, other, (place - one.place) / (other.place - one.place))

    def outline(self, pieces: int = 12) -> Points:
        """Return one edge of the profile, as (place, half the diameter), from the first station to the last.

        Parameters
        ----------
        pieces : int
            Straight pieces that each half bead and each half cove is made of, 1 or more.

        Returns
        -------
        tuple of (float, float)
            Every station among them.

        >>> TurnedProfile((Station(0, 2), Station(1, 2), Station(1, 1), Station(3, 1))).outline()
        ((0, 1.0), (1, 1.0), (1, 0.5), (3, 0.5))
        """
        points: list[Point] = [(self.start, self.stations[0].diameter / 2)]
        for one, other in pairwise(self.stations):
            points += _stretch(one, other, pieces)
        return tuple(points)

    def slices(self, pieces: int = 6) -> tuple[tuple[float, float, float], ...]:
        """Cut it into thin cylinders that hold as much wood as it does.

        Parameters
        ----------
        pieces : int
            Into how many each taper, half bead and half cove is cut, 1 or more; a cylinder stays whole.

        Returns
        -------
        tuple of (float, float, float)
            Where each begins and ends, and its radius.

        >>> [(low, high) for low, high, _ in TurnedProfile((Station(0, 2), Station(1, 2), Station(3, 1))).slices(2)]
        [(0.0, 1.0), (1.0, 2.0), (2.0, 3.0)]
        """
        found: list[tuple[float, float, float]] = []
        for one, other in pairwise(self.stations):
            length = other.place - one.place
            if length <= 0:
                continue
            count = 1 if one.diameter == other.diameter else pieces
            shares = [_mean_square(one, other, step / count, (step + 1) / count) for step in range(count)]
            # The wood of a stretch is known exactly, and its slices share it out as their thicknesses stand.
            whole = stretch_volume(one.to_next, one.diameter, other.diameter, length) / math.pi
            fit = whole * count / (length * math.fsum(shares))
            for step, share in enumerate(shares):
                low, high = (one.place + length * each / count for each in (step, step + 1))
                found.append((low, high, math.sqrt(share * fit)))
        return tuple(found)

    def caliper_settings(self, allowance: float = 0.0) -> tuple[CaliperSetting, ...]:
        """Return what the calipers are set to at every station, counted from the square.

        They are sized the other way, from the top back: the square is at the headstock, which drives it, and the wood
        between it and the parting tool is then still thick, so that nothing whips.

        Parameters
        ----------
        allowance : float
            Left on the diameter for the finishing cut, 0 or more, in the unit of the stations.

        Returns
        -------
        tuple of CaliperSetting
            One for every station.

        Raises
        ------
        ImpossibleShape
            If the allowance is less than 0.

        Source: about 1 mm, or 1/32 in, is left on (common practice).

        >>> profile = TurnedProfile((Station(0, 1.25), Station(0.5, 1.25)))
        >>> [each.setting for each in profile.caliper_settings(1 / 32)]
        [1.28125, 1.28125]
        """
        if not (math.isfinite(allowance) and allowance >= 0):
            raise ImpossibleShape(
                f"The allowance is {allowance:g}. Give what is left on for the finishing cut, 0 or more, such as 1/32 "
                "in or 1 mm."
            )
        return tuple(
            CaliperSetting(number, station.place, station.diameter, station.diameter + allowance)
            for number, station in enumerate(self.stations, 1)
        )

    def moved(self, by: float) -> TurnedProfile:
        """Return the same turning measured from another place.

        Parameters
        ----------
        by : float
            What is added to every place.

        Returns
        -------
        TurnedProfile
            With the same diameters.

        >>> TurnedProfile((Station(0, 1), Station(1, 1))).moved(3).end
        4
        """
        return TurnedProfile(
            tuple(Station(each.place + by, each.diameter, each.to_next) for each in self.stations)
        )


def _is_lower(here: float, others: list[float]) -> bool:
    """Tell whether the first that differs is thicker."""
    return next((other > here for other in others if other != here), False)


def _radius(one: Station, other: Station, share: float) -> float:
    return stretch_radius(one.to_next, one.diameter, other.diameter, share)


def _mean_square(one: Station, other: Station, low: float, high: float) -> float:
    """Return about how large the radius squared is over a part of a stretch (Simpson's rule)."""
    first, middle, last = (_radius(one, other, share) ** 2 for share in (low, (low + high) / 2, high))
    return (first + 4 * middle + last) / 6


def _stretch(one: Station, other: Station, pieces: int) -> Iterator[Point]:
    """Yield the points of a stretch but its first, closer together where the curve is steep."""
    length = other.place - one.place
    if one.to_next == STRAIGHT or one.diameter == other.diameter or length <= 0:
        yield (other.place, other.diameter / 2)
        return
    grows = other.diameter > one.diameter
    steep_last = (one.to_next == ROUND) != grows
    for step in range(1, pieces + 1):
        turn = math.pi / 2 * step / pieces
        share = math.sin(turn) if steep_last else 1 - math.cos(turn)
        if step == pieces:
            yield (other.place, other.diameter / 2)
        else:
            yield (one.place + length * share, _radius(one, other, share))
