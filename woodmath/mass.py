"""What a piece weighs, where it balances and how hard it is to turn: its parts, its rockers, what lies in it.

The centre is told as `woodmath.case` tells every place: x along the sides, y along the rockers, z upward from the
posts' shoulders, from the middle of the case, in the piece's unit. Beads are not taken off, and glue and finish
are not counted.
"""

from __future__ import annotations

import functools
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import TYPE_CHECKING, Literal

from woodmath import board_measure
from woodmath.case import Case
from woodmath.case_solids import Placed, rocker_solid, solids_of
from woodmath.errors import ImpossibleShape
from woodmath.moment_derivations import gyration_derivation
from woodmath.second_moments import Body, Spread, solid_body, together
from woodmath.solids import Vector

if TYPE_CHECKING:
    from woodmath.piece import Piece
    from woodmath.piece_load import Load
    from woodmath.piece_tables import Rocker

Line = Literal["x", "y", "z"]
"""A line through the centre: x along the sides (the one to rock about), y along the rockers, z upright."""

_WAYS: Mapping[Line, int] = MappingProxyType({"x": 0, "y": 1, "z": 2})
_ROCKER = "rocker"
_PIECES_REMEMBERED = 64


@dataclass(frozen=True)
class MassOf:
    """One thing that has weight, where it is in the standing piece.

    Parameters
    ----------
    name : str
        A part's name, an occupant's, or what several are together.
    body : Body
        Its mass in kilograms, its centre in the piece's unit, its second moments about that centre.
    floor : float
        Where the floor is, along z.
    where : str
        Which of its kind: "back right", say; "" where there is only one.

    >>> from woodmath.piece import Piece
    >>> cat = loads(Piece.demo("cat-bed"))[-1]
    >>> cat.name, cat.centre_height
    ('the cat', 12.0)
    """

    name: str
    body: Body
    floor: float
    where: str = ""

    @property
    def kilograms(self) -> float:
        """Its mass."""
        return self.body.amount

    @property
    def centre(self) -> Vector:
        """Its centre of gravity, in the directions of the case, in the piece's unit."""
        return self.body.centre

    @property
    def centre_height(self) -> float:
        """Height of its centre over the floor while the piece stands at rest, in the piece's unit."""
        return self.body.centre[2] - self.floor

    def moment(self, line: Line = "x") -> float:
        """Return its moment of inertia about a line through its centre, in kg times the unit squared."""
        return self.body.moment(_WAYS[line])

    def gyration_radius(self, line: Line = "x") -> float:
        """Return its gyration radius about a line through its centre, in the piece's unit."""
        return self.body.gyration_radius(_WAYS[line])


def mass_of_parts(piece: Piece) -> tuple[MassOf, ...]:
    """Return what every part of a piece weighs, each in its place.

    Parameters
    ----------
    piece : Piece
        With both pairs of panels and its timber.

    Returns
    -------
    tuple of MassOf
        In the order of `woodmath.case_solids.solids_of`.

    Raises
    ------
    ImpossibleShape
        If it names no timber, or makes no case.

    Source: `woodmath.board_measure.mass_derivation`, `woodmath.second_moments`.

    >>> from woodmath.piece import Piece
    >>> post = mass_of_parts(Piece.demo("cat-bed"))[0]
    >>> post.where, round(post.kilograms, 2)
    ('back right', 0.29)
    """
    firsts: dict[str, MassOf] = {}
    found = []
    for part in solids_of(piece):
        if not part.mirrors:
            firsts[part.name] = _weighed(piece, part)
        first = firsts[part.name]
        # Weighed once for each kind: what a mirror shows weighs the same.
        body = functools.reduce(Body.mirrored, part.mirrors, first.body)
        found.append(replace(first, body=body, where=part.where))
    return tuple(found)


def rockers(piece: Piece, rocker: Rocker | None = None) -> MassOf:
    """Return both rockers together: the piece's own, or others under the same posts.

    Parameters
    ----------
    piece : Piece
        With both pairs of panels and its timber.
    rocker : Rocker, optional
        Other rockers, of the same timber; the piece's own where none is given.

    Returns
    -------
    MassOf
        With the floor as these rockers rest on it.

    Raises
    ------
    ImpossibleShape
        If the piece names no timber or makes no case, if there are no rockers, or if no ellipse is theirs.

    Source: as `mass_of_parts`.

    >>> from dataclasses import replace
    >>> from woodmath.piece import Piece
    >>> bed = Piece.demo("cat-bed")
    >>> thin = rockers(bed, replace(bed.rocker, thickness=0.75))
    >>> thin.kilograms < rockers(bed).kilograms
    True
    """
    under = piece if rocker is None else replace(piece, rocker=rocker)
    right = _weighed(under, Placed(_ROCKER, "right", rocker_solid(under, _case(piece)))).body
    return MassOf("both rockers", together((right, right.mirrored(0))), floor_level(under))


@functools.lru_cache(maxsize=_PIECES_REMEMBERED)
def without_rockers(piece: Piece) -> MassOf:
    """Return everything but the rockers, empty: what stays while other rockers are tried under it.

    Parameters
    ----------
    piece : Piece
        With both pairs of panels and its timber.

    Returns
    -------
    MassOf
        Worked out once for a piece.

    Raises
    ------
    ImpossibleShape
        If it names no timber, or makes no case.

    Source: as `mass_of_parts`.

    >>> from woodmath.piece import Piece
    >>> bed = Piece.demo("cat-bed")
    >>> without_rockers(bed).kilograms + rockers(bed).kilograms == whole(bed).kilograms
    True
    """
    kept = (part.body for part in mass_of_parts(piece) if part.name != _ROCKER)
    return MassOf("all but the rockers", together(kept), floor_level(piece))


def loads(piece: Piece) -> tuple[MassOf, ...]:
    """Return what lies or sits in a piece, each in its place.

    Parameters
    ----------
    piece : Piece
        With [[load]] in its file; any piece will do.

    Returns
    -------
    tuple of MassOf
        In the order of the file; none where it says nothing.

    >>> from woodmath.piece import Piece
    >>> [load.name for load in loads(Piece.demo("cat-bed"))]
    ['the cushion', 'the cat']
    """
    floor = floor_level(piece)
    return tuple(MassOf(load.name, _resting(load, floor), floor) for load in piece.load)


def heaped(name: str, things: Iterable[MassOf]) -> MassOf:
    """Return several things as one, parts and occupants and cushions alike.

    Parameters
    ----------
    name : str
        What they are together.
    things : iterable of MassOf
        At least one, all of one piece.

    Returns
    -------
    MassOf
        On the floor of the first.

    Raises
    ------
    ImpossibleShape
        If there is nothing.

    Source: `woodmath.second_moments.together`.

    >>> from woodmath.piece import Piece
    >>> round(heaped("cat and cushion", loads(Piece.demo("cat-bed"))).centre_height, 2)
    11.75
    """
    each = tuple(things)
    return MassOf(name, together(thing.body for thing in each), each[0].floor if each else 0.0)


def whole(piece: Piece, load: bool = False, rocker: Rocker | None = None) -> MassOf:
    """Return the whole piece, empty or with all that lies in it.

    Parameters
    ----------
    piece : Piece
        With both pairs of panels and its timber.
    load : bool
        Whether what its file lists under [[load]] is in it.
    rocker : Rocker, optional
        Other rockers than its own, under the same posts; the load rests as high over the shoulders as before.

    Returns
    -------
    MassOf
        Its mass, its centre, and how hard it is to turn.

    Raises
    ------
    ImpossibleShape
        If it names no timber, or makes no case.

    Source: as `mass_of_parts`.

    >>> from woodmath.piece import Piece
    >>> bed = Piece.demo("cat-bed")
    >>> round(whole(bed).kilograms, 1), round(whole(bed, load=True).kilograms, 1)
    (7.4, 12.4)
    """
    things = [without_rockers(piece)]
    if piece.rocker or rocker:
        # First, because the floor is where the rockers rest on it.
        things.insert(0, rockers(piece, rocker))
    if load:
        things += loads(piece)
    return heaped(f"{piece.name}, {'with its load' if load else 'empty'}", things)


def floor_level(piece: Piece) -> float:
    """Return where the floor is while a piece stands at rest, along z.

    Parameters
    ----------
    piece : Piece
        Upright, or on rockers that rest on their middle.

    Returns
    -------
    float
        From the posts' shoulders, 0 or less, in the piece's unit.

    >>> from woodmath.piece import Piece
    >>> floor_level(Piece.demo("cat-bed")), floor_level(Piece.demo("log-box"))
    (-4.0, 0.0)
    """
    return -piece.rocker.depth if piece.rocker else 0.0


@functools.lru_cache(maxsize=_PIECES_REMEMBERED)
def _case(piece: Piece) -> Case:
    return Case.of(piece)


def _weighed(piece: Piece, part: Placed) -> MassOf:
    if piece.timber is None:
        raise ImpossibleShape(
            f"{piece.name} does not say what it is made of. Add [timber] with its species to the file."
        )
    body = solid_body(part.solid)
    kilograms = board_measure.mass(body.amount, piece.timber.kilograms_per_cubic_metre, unit=piece.rule.unit)
    return MassOf(part.name, body.times(kilograms / body.amount), floor_level(piece), part.where)


def _resting(load: Load, floor: float) -> Body:
    # Spread alike in all directions, so that each line through its centre finds the same radius.
    each = 0.0
    if load.gyration_radius:
        moment = gyration_derivation().function("moment")
        # About a line turns what spreads along the two others.
        each = moment(gyration_radius=load.gyration_radius, mass=load.mass) / 2
    spread: Spread = ((each, 0.0, 0.0), (0.0, each, 0.0), (0.0, 0.0, each))
    return Body(load.mass, (0.0, load.offset, floor + load.height), spread)
