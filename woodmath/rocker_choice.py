"""Choose the rocker: from a wished period, a wished rolling limit and a wished rise to its ellipse.

The period gives the roundness at the bottom, the rolling limit the slope at the heel; with the rise the length
follows. Rockers weigh, and stand under everything else, so the piece is weighed again on each rocker that is
tried, until nothing changes any more. What lies in it is taken to lie in the middle.
"""

from __future__ import annotations

import functools
import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import TYPE_CHECKING, Literal

import mpmath

from woodmath import board_measure, mass
from woodmath.ellipse import Ellipse
from woodmath.ellipse_rocker import rocker_ranges
from woodmath.errors import ImpossibleShape
from woodmath.piece_rocking import body_in_metres, rocking_body_of
from woodmath.rocker_choice_derivations import (
    half_chord_derivation,
    least_heel_angle_derivation,
    shallow_heel_angle_derivation,
)
from woodmath.rocking import GRAVITY, RockingBody, lever_over_heel_derivation, period_derivation
from woodmath.whole_marks import mark_at_least, mark_at_most

if TYPE_CHECKING:
    from woodmath.piece import Piece
    from woodmath.piece_tables import Rocker

__all__ = [
    "ChosenRocker",
    "WayOut",
    "Wish",
    "choose_rocker",
    "half_chord_derivation",
    "least_heel_angle_derivation",
    "shallow_heel_angle_derivation",
    "ways_out",
]

WishName = Literal["period", "rolling_limit", "rise"]

_STEEPEST = 89.0
"""Degrees: a rolling limit beyond it is no wish of anybody's."""
_SETTLED = 1e-12
_WEIGHINGS = 100
_A_HAIR = 1e-7
"""As a part: so much on the right side of a bound that it can be had."""
_NEAR_ENOUGH = 1e-6
"""As a part: so near to the shallowest of all arcs a rocker is weighed where a wish asks for a shallower one."""
_STEPS = 16
"""Into how many steps a way is divided on which a wish is looked for that can be had."""
_SHALLOWEST = 1.95
"""No shallower arc is looked for: its ellipse is twenty times as high as the rise, and hardly to be drawn."""
_SMALLER = 0.8
_LONGEST = 3
"""Times the length of the piece's own rockers: longer ones outweigh the case, and no workshop has the board."""
_MOST = 4
"""Times the wished period or rise: no greater one is looked for."""


@dataclass(frozen=True)
class Wish:
    """What is wished of a piece on rockers.

    Parameters
    ----------
    period : float
        Of a small swing, there and back, > 0, in seconds.
    rolling_limit : float
        How far it may be let go and rolls back, > 0 and less than 89, in degrees.
    rise : float
        How far the heels stand over the floor at rest, > 0, in the piece's unit.

    Raises
    ------
    ImpossibleShape
        If one of them is no wish at all.

    >>> Wish(period=0.9, rolling_limit=25, rise=2).rise
    2
    """

    period: float
    rolling_limit: float
    rise: float

    def __post_init__(self) -> None:
        for value, what, most in (
            (self.period, "period", math.inf),
            (self.rolling_limit, "rolling limit", _STEEPEST),
            (self.rise, "rise", math.inf),
        ):
            if not 0 < value < most:
                raise ImpossibleShape(
                    f"A {what} of {value:g} was wished for. Wish for more than 0"
                    + (f" and less than {most:g}." if math.isfinite(most) else ", and for a plain number.")
                )


@dataclass(frozen=True)
class ChosenRocker:
    """A rocker that fulfils a wish.

    Parameters
    ----------
    rocker : Rocker
        Its length, rise and roundness; as thick as the piece's own, and with as much wood over its heels.
    ellipse : Ellipse
        Of its lower edge, in the piece's unit: pins and string are its `pin_spacing` and its `loop`.
    body : RockingBody
        The piece on it, in metres.

    >>> from woodmath.piece import Piece
    >>> found = choose_rocker(Piece.demo("cat-bed"), Wish(period=0.8, rolling_limit=25, rise=2))
    >>> round(found.body.period(), 9), round(found.body.rolling_limit, 9), found.rocker.rise
    (0.8, 25.0, 2)
    """

    rocker: Rocker
    ellipse: Ellipse
    body: RockingBody


@dataclass(frozen=True)
class WayOut:
    """The nearest that one wish can come to what was given while the others stay.

    Parameters
    ----------
    wish : "period", "rolling_limit" or "rise"
        Which one gives way.
    given, nearest : float
        In its unit.

    >>> WayOut("period", given=1.2, nearest=0.9).is_at_most
    True
    """

    wish: WishName
    given: float
    nearest: float

    @property
    def is_at_most(self) -> bool:
        """Whether the wish must be smaller."""
        return self.nearest < self.given

    @property
    def by_how_much(self) -> float:
        """How far what was given is from it."""
        return abs(self.given - self.nearest)


@dataclass(frozen=True)
class _Weighed:
    """What the choice needs to know of a body: neither changes much from one rocker to another."""

    gyration_radius: float
    over_the_heels: float
    """How high the weight lies over the heels, in metres: a rise lifts both alike."""

    @classmethod
    def of(cls, body: RockingBody) -> _Weighed:
        return cls(body.gyration_radius, body.centre_height - body.rise)

    def radius(self, wish: Wish, metre: float) -> float:
        """Return how round the bottom must be for the wished period, in metres."""
        return period_derivation().function("radius")(
            period=wish.period,
            gyration_radius=self.gyration_radius,
            centre_height=self.over_the_heels + wish.rise / metre,
            gravity=GRAVITY,
        )


@dataclass(frozen=True)
class _Shape:
    """A rocker that was tried, and by how much it can be had: both more than nothing if it can."""

    half_chord: float
    curve_to_spare: float
    """Degrees by which the wished tilt is more than the least that such a heel allows."""
    lever_to_spare: float
    """Metres by which the weight then still lies within the heel."""
    length_to_spare: float
    """Metres by which half its length is less than the most that is looked for."""

    @classmethod
    def of(cls, wish: Wish, radius: float, over_the_heels: float, own: Rocker, metre: float) -> _Shape:
        rise = wish.rise / metre
        least = shallow_heel_angle_derivation().function("heel_angle")(
            rise=rise, radius=radius, shallowness=_SHALLOWEST
        )
        half_chord = half_chord_derivation().function("half_chord")(
            rise=rise, radius=radius, heel_angle=max(wish.rolling_limit, least * (1 + _NEAR_ENOUGH))
        )
        lever = lever_over_heel_derivation().function("lever_arm")(
            out=half_chord, above=over_the_heels, tilt=wish.rolling_limit
        )
        longest = _LONGEST * own.length / 2 / metre
        return cls(half_chord, wish.rolling_limit - least, lever, longest - half_chord)

    @property
    def to_spare(self) -> float:
        return min(self.curve_to_spare, self.lever_to_spare, self.length_to_spare)


def choose_rocker(piece: Piece, wish: Wish, load: bool = False) -> ChosenRocker:
    """Find the rocker that fulfils a wish.

    Parameters
    ----------
    piece : Piece
        With rockers (for their thickness and their wood over the heels), both pairs of panels and its timber.
    wish : Wish
        What is wished for.
    load : bool
        Whether it is wished of the piece with what its file lists under [[load]].

    Returns
    -------
    ChosenRocker
        The only one.

    Raises
    ------
    ImpossibleShape
        If there is none; the message says what each wish would have to become while the others stay.

    Source: `woodmath.rocking.period_derivation`, `half_chord_derivation`, `shallow_heel_angle_derivation`.

    >>> from woodmath.piece import Piece
    >>> choose_rocker(Piece.demo("cat-bed"), Wish(period=3, rolling_limit=25, rise=2))  # doctest: +ELLIPSIS
    Traceback (most recent call last):
    woodmath.errors.ImpossibleShape: No rocker can do all three: ...
    """
    chosen, shape = _settled(piece, wish, load)
    if shape.to_spare > 0:
        return chosen
    raise ImpossibleShape(_why_not(piece, wish, shape, _ways(piece, wish, load, chosen.body, shape)))


def ways_out(piece: Piece, wish: Wish, load: bool = False) -> tuple[WayOut, ...]:
    """Return what each wish would have to become, while the others stay, for a rocker to be found.

    Parameters
    ----------
    piece : Piece
        As for `choose_rocker`.
    wish : Wish
        What is wished for.
    load : bool
        As for `choose_rocker`.

    Returns
    -------
    tuple of WayOut
        One for each wish that alone can put it right; none where the wish can be fulfilled.

    Raises
    ------
    ImpossibleShape
        If the piece has no rockers, names no timber, or makes no case.

    Source: the bounds of `choose_rocker`, searched for.

    >>> from woodmath.piece import Piece
    >>> [way.wish for way in ways_out(Piece.demo("cat-bed"), Wish(period=3, rolling_limit=25, rise=2))]
    ['period', 'rolling_limit', 'rise']
    """
    chosen, shape = _settled(piece, wish, load)
    return () if shape.to_spare > 0 else _ways(piece, wish, load, chosen.body, shape)


def _ways(piece: Piece, wish: Wish, load: bool, body: RockingBody, shape: _Shape) -> tuple[WayOut, ...]:
    """Look for each wish that alone would do, in the direction in which the fault of the shape says it lies."""
    too_level, too_long = shape.curve_to_spare <= 0, shape.length_to_spare <= 0
    longer, steeper, higher = (
        _up(wish.period, _MOST * wish.period),
        _up(wish.rolling_limit, _STEEPEST),
        _up(wish.rise, _MOST * wish.rise),
    )
    ways: tuple[tuple[WishName, list[float]], ...] = (
        ("period", longer if too_long and not too_level else _down(wish.period)),
        ("rolling_limit", steeper if too_level or too_long else _down(wish.rolling_limit)),
        ("rise", _down(wish.rise) if too_level or too_long else higher),
    )
    found = []
    for name, places in ways:
        nearest = _nearest(piece, wish, load, body, name, places)
        if nearest is not None:
            found.append(WayOut(name, getattr(wish, name), nearest))
    return tuple(found)


def _down(given: float) -> list[float]:
    return [given * _SMALLER**step for step in range(1, _STEPS)]


def _up(given: float, most: float) -> list[float]:
    return [given + (most - given) * step / _STEPS for step in range(1, _STEPS)]


def _nearest(
    piece: Piece, wish: Wish, load: bool, body: RockingBody, name: WishName, places: Sequence[float]
) -> float | None:
    """Return where on a way a rocker can first be had, a hair inside: on rockers with the weight they then have."""
    metre, own = board_measure.metre_in(piece.rule.unit), _own_rocker(piece)
    nearest: float = getattr(wish, name)
    for _ in range(_WEIGHINGS):
        weighed = _Weighed.of(body)
        spare = functools.partial(_to_spare, wish, name, weighed, own, metre)
        before, nearest = nearest, _first_change(spare, (getattr(wish, name), *places))
        if math.isnan(nearest):
            return None
        if abs(nearest - before) <= _A_HAIR * nearest / 10:
            return nearest * (1 - _A_HAIR if nearest < getattr(wish, name) else 1 + _A_HAIR)
        other = replace(wish, **{name: nearest})
        body = _tried(piece, other, load, weighed.radius(other, metre) * metre).body
    return None


def _to_spare(
    wish: Wish, name: WishName, weighed: _Weighed, own: Rocker, metre: float, value: float
) -> float:
    other = replace(wish, **{name: float(value)})
    return _Shape.of(other, weighed.radius(other, metre), weighed.over_the_heels, own, metre).to_spare


def _first_change(spare: Callable[[float], float], places: Sequence[float]) -> float:
    """Return where what is to spare first becomes more than nothing on a way; not a number if it never does."""
    for before, place in pairwise(places):
        if spare(place) > 0:
            # A context of its own: all threads of a kernel share the precision of mpmath's.
            own = mpmath.MPContext()
            return float(own.findroot(spare, (before, place), solver="anderson", tol=1e-20, verify=False))
    return math.nan


def _settled(piece: Piece, wish: Wish, load: bool) -> tuple[ChosenRocker, _Shape]:
    """Weigh the piece on the rocker of a wish, again and again until the rocker is the one it was weighed on."""
    metre, own = board_measure.metre_in(piece.rule.unit), _own_rocker(piece)
    radius = metre * _Weighed.of(rocking_body_of(piece, load)).radius(wish, metre)
    before: tuple[float, float] | None = None
    for _ in range(_WEIGHINGS):
        chosen = _tried(piece, wish, load, radius)
        weighed = _Weighed.of(chosen.body)
        wanted = metre * weighed.radius(wish, metre)
        missed = wanted - radius
        if abs(missed) <= _SETTLED * radius:
            return chosen, _Shape.of(wish, radius / metre, weighed.over_the_heels, own, metre)
        # What the last two tries missed by tells where nothing would be missed.
        following = wanted
        if before is not None and before[1] != missed:
            following = radius - missed * (radius - before[0]) / (missed - before[1])
        before, radius = (radius, missed), following if following > 0 else wanted
    raise ImpossibleShape(
        "Rockers for that wish weigh so much that the case on them never comes to the wished period. Wish for at "
        "least a longer period."
    )


def _tried(piece: Piece, wish: Wish, load: bool, radius: float) -> ChosenRocker:
    """Weigh the piece on the rocker of a roundness, in the piece's unit, or the nearest to it that there is."""
    metre, own = board_measure.metre_in(piece.rule.unit), _own_rocker(piece)
    shape = _Shape.of(wish, radius / metre, 0.0, own, metre)
    length, roundness = 2 * metre * shape.half_chord, radius
    if shape.length_to_spare < 0:
        # Only to weigh it: what would be longer than any that is looked for is no rocker to be had.
        length = _LONGEST * own.length
        least, most = rocker_ranges(length, wish.rise, radius).radii
        roundness = min(max(radius, least * (1 + _NEAR_ENOUGH)), most)
    rocker = replace(
        own,
        length=length,
        rise=wish.rise,
        bottom_radius=roundness,
        depth=own.depth - own.rise + wish.rise,
    )
    ellipse = Ellipse.from_rocker(rocker.length, rocker.rise, rocker.bottom_radius)
    whole = mass.whole(piece, load, rocker)
    return ChosenRocker(rocker, ellipse, body_in_metres(whole, ellipse, rocker.length, piece.rule.unit))


def _own_rocker(piece: Piece) -> Rocker:
    if piece.rocker is None:
        raise ImpossibleShape(
            f"{piece.name} has no rockers. Add [rocker] to its file, or open a piece that rocks."
        )
    return piece.rocker


def _why_not(piece: Piece, wish: Wish, shape: _Shape, ways: tuple[WayOut, ...]) -> str:
    asked = (
        f"No rocker can do all three: rock in {wish.period:g} s, roll to {wish.rolling_limit:g} degrees and stand "
        f"{piece.rule.mark(wish.rise, unit=True)} over the floor at its heels"
    )
    if shape.curve_to_spare <= 0:
        why = "a bottom of that roundness has climbed so high only at a greater tilt, unless its ellipse is huge"
    elif shape.length_to_spare <= 0:
        why = f"it would be more than {_LONGEST} times as long as the piece's own"
    else:
        why = "before it has tilted so far, the weight lies beyond the heels and takes it over"
    told = "; or ".join(words for way in ways if (words := _told(piece, way)))
    if not told:
        return f"{asked}: {why}. No wish alone puts that right: change two of them."
    return f"{asked}: {why}. Wish for {told}."


def _told(piece: Piece, way: WayOut) -> str:
    """Say what a wish would have to become, rounded to the side on which it can be had; "" where no mark is left."""
    bound, differs = ("at most", "less") if way.is_at_most else ("at least", "more")
    if way.wish == "rise":
        nearest = (mark_at_most if way.is_at_most else mark_at_least)(piece.rule, way.nearest)
        off = piece.rule.mark(abs(nearest - way.given), unit=True)
        return f"a rise of {bound} {piece.rule.mark(nearest, unit=True)}, {off} {differs}" if nearest else ""
    places, unit = (3, "s") if way.wish == "period" else (1, "degrees")
    one = 10.0**-places
    nearest = (math.floor if way.is_at_most else math.ceil)(way.nearest / one) * one
    name = way.wish.replace("_", " ")
    return f"a {name} of {bound} {nearest:.{places}f} {unit}, {abs(nearest - way.given):.{places}f} {differs}"
