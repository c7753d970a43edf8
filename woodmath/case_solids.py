"""The parts of a case as solids, each where it lies in the finished piece.

Every length comes from the piece or from `Case`; what is done here is to put outlines in their places. Beads
are not taken off: they weigh next to nothing. A turned top is a stack of thin many-sided slices that hold as much
wood as it does.
"""

from __future__ import annotations

import functools
import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import TYPE_CHECKING

from woodmath import foot_joint
from woodmath.case import Case, Range
from woodmath.errors import ImpossibleShape
from woodmath.groove import depth_for
from woodmath.outlines import Points, arc, rectangle
from woodmath.post_joint_geometry import Section
from woodmath.solids import Axes, Prism, Solid, apart, area

if TYPE_CHECKING:
    from woodmath.piece import Piece
    from woodmath.piece_details import Bottom, FootTenon
    from woodmath.piece_tables import Rocker

ALONG_X = Axes((0.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0), (1.0, 0.0, 0.0))
"""An outline in (y, z), as the end is seen, pushed along x."""
ALONG_Y = Axes((0.0, 0.0, 0.0), (1.0, 0.0, 0.0), (0.0, 0.0, 1.0), (0.0, 1.0, 0.0))
"""An outline in (x, z), as the side is seen, pushed along y."""

_CORNERS: Mapping[str, tuple[int, ...]] = MappingProxyType(
    {"back right": (), "back left": (0,), "front right": (1,), "front left": (0, 1)}
)
_RIGHT_AND_LEFT: Mapping[str, tuple[int, ...]] = MappingProxyType({"right": (), "left": (0,)})
_BACK_AND_FRONT: Mapping[str, tuple[int, ...]] = MappingProxyType({"back": (), "front": (1,)})

_ROUND_SIDES = 12
_SLICES = 3
"""A slice of a turning has so many sides, and a bead's half so many slices: the centre is true to a thousandth."""


@dataclass(frozen=True)
class Placed:
    """One part where it lies.

    Parameters
    ----------
    name : str
        Of the part; parts of one kind share it.
    where : str
        Which of its kind: "back right", say; "" where there is only one.
    solid : Solid
        In the case's own directions.
    mirrors : tuple of int
        In which mirrors, square to x (0) or y (1), it is the image of the first of its kind; none for that one.

    >>> from woodmath.piece import Piece
    >>> len(solids_of(Piece.demo("log-box")))
    13
    """

    name: str
    where: str
    solid: Solid
    mirrors: tuple[int, ...] = ()


def solids_of(piece: Piece) -> tuple[Placed, ...]:
    """Return every part of a piece as a solid in its place.

    Parameters
    ----------
    piece : Piece
        With both pairs of panels.

    Returns
    -------
    tuple of Placed
        Posts, ends, sides, rockers, bottom and cleats, as far as the piece has them.

    Raises
    ------
    ImpossibleShape
        If the sizes make no case.

    Source: the conventions of `woodmath.case`.

    >>> from woodmath.piece import Piece
    >>> [part.name for part in solids_of(Piece.demo("cat-bed"))][:5]
    ['post', 'post', 'post', 'post', 'end panel']
    """
    case = Case.of(piece)
    post, end, side = post_solid(piece, case), end_solid(case), side_solid(case)
    placed = [
        *_alike("post", post, _CORNERS),
        *_alike("end panel", end, _RIGHT_AND_LEFT),
        *_alike("side panel", side, _BACK_AND_FRONT),
    ]
    if piece.rocker:
        placed += _alike("rocker", rocker_solid(piece, case), _RIGHT_AND_LEFT)
    if piece.bottom:
        placed.append(Placed("bottom board", "", bottom_solid(piece, case)))
        if piece.bottom.cleat:
            placed += _cleats(piece.bottom, case)
    return tuple(placed)


def _alike(name: str, first: Solid, places: Mapping[str, tuple[int, ...]]) -> Iterator[Placed]:
    """Yield parts of one kind: the first where it is drawn, the others as mirrors show it."""
    for where, mirrors in places.items():
        solid = first
        for axis in mirrors:
            solid = solid.mirrored(axis)
        yield Placed(name, where, solid, mirrors)


def bodies_of(piece: Piece, case: Case | None = None) -> tuple[tuple[str, Prism], ...]:
    """Return the body of every part that is seen when the piece stands, without its joints and its turned tops.

    Parameters
    ----------
    piece : Piece
        With both pairs of panels.
    case : Case, optional
        Of that piece, where it is worked out already.

    Returns
    -------
    tuple of (str, Prism)
        The part's name and its body: what tenons and mortises add and take is hidden in the posts.

    Raises
    ------
    ImpossibleShape
        If the sizes make no case.

    >>> from woodmath.piece import Piece
    >>> [name for name, _ in bodies_of(Piece.demo("log-box"))][::4]
    ['post', 'end panel', 'bottom board']
    """
    case = case or Case.of(piece)
    post, end, side = _post_body(case), _end_body(case), _side_body(case)
    bodies = [
        ("post", each) for each in (post, post.mirrored(0), post.mirrored(1), post.mirrored(0).mirrored(1))
    ]
    bodies += [("end panel", end), ("end panel", end.mirrored(0))]
    bodies += [("side panel", side), ("side panel", side.mirrored(1))]
    if piece.rocker:
        rocker = _rocker_body(piece, piece.rocker, case)
        bodies += [("rocker", rocker), ("rocker", rocker.mirrored(0))]
    if piece.bottom:
        bodies += [("bottom board", each) for each in bottom_solid(piece, case).added]
    return tuple(bodies)


def post_solid(piece: Piece, case: Case) -> Solid:
    """Return the back right post, with its mortises, its grooves, its turned top and the tenon of its foot.

    Parameters
    ----------
    piece : Piece
        The rocker's tenon and the turning come from it.
    case : Case
        Of that piece.

    Returns
    -------
    Solid
        In the piece's unit.

    >>> from woodmath.piece import Piece
    >>> piece = Piece.demo("log-box")
    >>> post_solid(piece, Case.of(piece)).volume < 45 * 45 * 380
    True
    """
    added = [_post_body(case), *turned_slices(piece, case)]
    if piece.rocker and piece.rocker.tenon:
        added.append(foot_tenon_solid(case, piece.rocker.tenon))
    removed: list[Prism] = []
    for low, high in case.tenons:
        for start, end, section in _shares(case, low, high):
            holes = (section.mortise, *apart(section.other_mortise, section.mortise))
            removed += [Prism(case.post_axes, hole, start, end) for hole in holes]
    for start, end in case.grooves:
        removed += [
            Prism(case.post_axes, groove, start, end) for groove in _tongue_sections(case, case.groove_depth)
        ]
    return Solid(tuple(added), tuple(removed))


def turned_slices(piece: Piece, case: Case) -> tuple[Prism, ...]:
    """Return the turned top of the back right post as a stack of slices about the middle of its square.

    Parameters
    ----------
    piece : Piece
        The turning comes from it.
    case : Case
        Of that piece.

    Returns
    -------
    tuple of Prism
        None where the post is square up to its end. Together they hold exactly the wood of the turning.

    Raises
    ------
    ImpossibleShape
        If the stations make no turning.

    Source: `woodmath.turned_profile.TurnedProfile.slices`.

    >>> from woodmath.piece import Piece
    >>> bed = Piece.demo("cat-bed")
    >>> held = math.fsum(each.volume for each in turned_slices(bed, Case.of(bed)))
    >>> round(held / bed.post.turned.profile().volume, 9)
    1.0
    """
    if piece.post.turned is None:
        return ()
    middle = case.square / 2
    profile = piece.post.turned.profile().moved(case.panel[1])
    return tuple(
        Prism(
            case.post_axes,
            tuple((middle + radius * x, middle + radius * y) for x, y in _round_of_area_pi()),
            low,
            high,
        )
        for low, high, radius in profile.slices(_SLICES)
    )


@functools.cache
def _round_of_area_pi() -> Points:
    """Return a many-sided section that holds as much as a round of radius 1."""
    inscribed = arc((0.0, 0.0), 1.0, 0.0, 360.0, _ROUND_SIDES)[:-1]
    grown = math.sqrt(math.pi / area(inscribed))
    return tuple((grown * x, grown * y) for x, y in inscribed)


def end_solid(case: Case) -> Solid:
    """Return the right-hand end panel with tongues and tenons.

    Parameters
    ----------
    case : Case
        Of a piece.

    Returns
    -------
    Solid
        In the piece's unit.

    >>> from woodmath.piece import Piece
    >>> len(end_solid(Case.of(Piece.demo("log-box"))).added)
    15
    """
    board = _end_body(case)
    edge = [
        Prism(case.post_axes, section.tenon, start, end)
        for low, high in case.tenons
        for start, end, section in _shares(case, low, high)
    ]
    tongue, _ = _tongue_sections(case, case.tongue_length)
    edge += [Prism(case.post_axes, tongue, start, end) for start, end in case.tongues]
    return Solid((board, *edge, *(each.mirrored(1) for each in edge)))


def side_solid(case: Case) -> Solid:
    """Return the back side panel with tongues and tenons; it leans with the posts.

    Parameters
    ----------
    case : Case
        Of a piece.

    Returns
    -------
    Solid
        In the piece's unit.

    >>> from woodmath.piece import Piece
    >>> side_solid(Case.of(Piece.demo("log-box"))).volume > 520 * 320 * 26
    True
    """
    board = _side_body(case)
    edge = [
        Prism(case.post_axes, section.other_tenon, start, end)
        for low, high in case.tenons
        for start, end, section in _shares(case, low, high)
    ]
    _, tongue = _tongue_sections(case, case.tongue_length)
    edge += [Prism(case.post_axes, tongue, start, end) for start, end in case.tongues]
    return Solid((board, *edge, *(each.mirrored(0) for each in edge)))


def rocker_solid(piece: Piece, case: Case) -> Solid:
    """Return the right-hand rocker with the mortises for its two posts.

    Parameters
    ----------
    piece : Piece
        With rockers.
    case : Case
        Of that piece.

    Returns
    -------
    Solid
        In the piece's unit; its curve in many short straight pieces.

    Raises
    ------
    ImpossibleShape
        If the piece has no rockers, or no ellipse has their length, rise and roundness.

    >>> from woodmath.piece import Piece
    >>> piece = Piece.demo("cat-bed")
    >>> len(rocker_solid(piece, Case.of(piece)).removed)
    2
    """
    rocker = piece.rocker
    if rocker is None:
        raise ImpossibleShape(
            f"{piece.name} has no rockers. Add [rocker] to its file, or open another piece."
        )
    board = _rocker_body(piece, rocker, case)
    if rocker.tenon is None:
        return Solid((board,))
    mortise = foot_tenon_solid(case, rocker.tenon, piece.joint.end_clearance)
    return Solid((board,), (mortise, mortise.mirrored(1)))


def foot_tenon_cheeks(case: Case, tenon: FootTenon) -> Range:
    """Return where the tenon of the right-hand post's foot begins and ends along y, at its shoulder.

    Parameters
    ----------
    case : Case
        Of a piece.
    tenon : FootTenon
        Its tenon.

    Returns
    -------
    (float, float)
        From the middle of the case; the tenon stands in the middle of its room.

    >>> from woodmath.piece import Piece
    >>> piece = Piece.demo("cat-bed")
    >>> low, high = foot_tenon_cheeks(Case.of(piece), piece.rocker.tenon)
    >>> round(high - low, 9)
    1.25
    """
    room = case.level_width
    start = case.half_foot
    if tenon.line == "upright":
        room = foot_joint.room(case.square, case.splay, tenon.length)
        # A post that leans inward runs away from under its own inside face.
        start += case.level_width - room if case.splay < 0 else 0.0
    inner = start + (room - tenon.width) / 2
    return inner, inner + tenon.width


def foot_tenon_solid(case: Case, tenon: FootTenon, clearance: float = 0.0) -> Prism:
    """Return the tenon of the back right post's foot, or with a clearance the mortise for it.

    Parameters
    ----------
    case : Case
        Of a piece.
    tenon : FootTenon
        Its tenon.
    clearance : float
        How much deeper the mortise is, 0 or more.

    Returns
    -------
    Prism
        Its outline as the end shows it, from the inner cheek at the shoulder round to the outer.

    >>> from woodmath.piece import Piece
    >>> piece = Piece.demo("cat-bed")
    >>> foot_tenon_solid(Case.of(piece), piece.rocker.tenon).outline[2][1]
    -0.75
    """
    inner, outer = foot_tenon_cheeks(case, tenon)
    middle = case.half_length + case.square / 2
    down = depth_for(tenon.length, clearance)
    sideways = 0.0
    if tenon.line != "upright":
        (up_y, up_z), length = case.upward, down
        down, sideways = length * up_z, -length * up_y
    outline = ((inner, 0.0), (outer, 0.0), (outer + sideways, -down), (inner + sideways, -down))
    return Prism(ALONG_X, outline, middle - tenon.thickness / 2, middle + tenon.thickness / 2)


def wood_under_mortise(piece: Piece, case: Case, tenon: FootTenon) -> float:
    """Return the least wood between the floor of a rocker's mortise and its curve.

    Parameters
    ----------
    piece : Piece
        With rockers.
    case : Case
        Of that piece.
    tenon : FootTenon
        Of its posts' feet.

    Returns
    -------
    float
        Measured upright, in the piece's unit; less than 0 where the mortise comes through below.

    Raises
    ------
    ImpossibleShape
        If the piece has no rockers, no ellipse is theirs, or it does not reach so far.

    >>> from woodmath.piece import Piece
    >>> bed = Piece.demo("cat-bed")
    >>> round(wood_under_mortise(bed, Case.of(bed), bed.rocker.tenon), 2)
    2.48
    """
    ellipse = piece.ellipse()
    _, _, *floor = foot_tenon_solid(case, tenon, piece.joint.end_clearance).outline
    depth = piece.rocker.depth if piece.rocker else 0.0
    return min(z + depth - ellipse.height_at(y) for y, z in floor)


def bottom_solid(piece: Piece, case: Case) -> Solid:
    """Return the bottom board, its long edges bevelled as the sides lean, its corners cut out for the posts.

    Parameters
    ----------
    piece : Piece
        With a bottom.
    case : Case
        Of that piece.

    Returns
    -------
    Solid
        In the piece's unit.

    Raises
    ------
    ImpossibleShape
        If the piece has no bottom.

    >>> from woodmath.piece import Piece
    >>> piece = Piece.demo("log-box")
    >>> low, high = bottom_solid(piece, Case.of(piece)).extent((0, 1, 0))
    >>> high - low
    332.0
    """
    bottom = piece.bottom
    if bottom is None:
        raise ImpossibleShape(f"{piece.name} has no bottom. Add [bottom] to its file, or open another piece.")
    low = case.at(case.panel[0])[1] + bottom.rest
    levels = (low, low + bottom.thickness)

    def outline(depth: float) -> Points:
        lower, upper = (case.along_a_level(level, depth) - bottom.clearance for level in levels)
        return ((-lower, levels[0]), (lower, levels[0]), (upper, levels[1]), (-upper, levels[1]))

    middle = case.half_length - bottom.clearance
    reach = case.inside_of_end - bottom.clearance
    added = [Prism(ALONG_X, outline(case.inside_of_side), -min(middle, reach), min(middle, reach))]
    if reach > middle:
        ear = Prism(ALONG_X, outline(min(0.0, case.inside_of_side)), middle, reach)
        added += [ear, ear.mirrored(0)]
    return Solid(tuple(added))


def _cleats(bottom: Bottom, case: Case) -> Iterator[Placed]:
    side, clear = bottom.cleat, bottom.clearance
    top = case.at(case.panel[0])[1] + bottom.rest
    low = top - side
    below, above = (case.along_a_level(level, case.inside_of_side) for level in (low, top))
    outline = ((below - side, low), (below, low), (above, top), (above - side, top))
    half = min(case.half_length, case.inside_of_end - side) - clear
    along = Solid((Prism(ALONG_X, outline, -half, half),))
    yield from _alike("side cleat", along, _BACK_AND_FRONT)
    reach = min(case.along_a_level(low), case.along_a_level(low, case.inside_of_side)) - clear
    section = rectangle(case.inside_of_end - side, low, case.inside_of_end, top)
    across = Solid((Prism(ALONG_Y, section, -reach, reach),))
    yield from _alike("end cleat", across, _RIGHT_AND_LEFT)


def _post_body(case: Case) -> Prism:
    return Prism(ALONG_X, case.post_outline, case.half_length, case.half_over_posts)


def _end_body(case: Case) -> Prism:
    outer = case.half_over_posts - case.end_face
    (low_y, low_z), (high_y, high_z) = case.at(case.panel[0]), case.at(case.panel[1])
    outline = ((-low_y, low_z), (low_y, low_z), (high_y, high_z), (-high_y, high_z))
    return Prism(ALONG_X, outline, outer - case.end_thickness, outer)


def _side_body(case: Case) -> Prism:
    outline = rectangle(
        case.side_face,
        case.square,
        case.side_face + case.side_thickness,
        case.square + 2 * case.half_length,
    )
    return Prism(case.post_axes, outline, *case.panel)


def _rocker_body(piece: Piece, rocker: Rocker, case: Case) -> Prism:
    half = rocker.length / 2
    under = tuple((y, height - rocker.depth) for y, height in piece.ellipse().lower_arc(rocker.length))
    middle = case.half_length + case.square / 2
    return Prism(
        ALONG_X,
        ((half, 0.0), (-half, 0.0), *under),
        middle - rocker.thickness / 2,
        middle + rocker.thickness / 2,
    )


def _tongue_sections(case: Case, length: float) -> tuple[Points, Points]:
    """Return the sections of the end's and of the side's tongue, or of their grooves, in the post's section."""
    square, end, side = case.square, case.joint.tenon, case.joint.other_tenon
    return (
        rectangle(square - length, end.set_back, square, end.set_back + end.thickness),
        rectangle(side.set_back, square - length, side.set_back + side.thickness, square),
    )


def _shares(case: Case, low: float, high: float) -> Iterator[tuple[float, float, Section]]:
    """Yield the joint's sections along one tenon: one, or two where the tenons are halved."""
    start = low
    for section in case.joint.sections:
        end = start + section.share * (high - low)
        yield start, end, section
        start = end
