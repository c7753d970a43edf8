"""What each part of a piece must measure, number by number, and on which part a size of the file is measured.

So two states of one piece can be compared part by part: as it was planned when a part was cut, and as it is now.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import TYPE_CHECKING, Literal

from woodmath.case import Case
from woodmath.case_solids import foot_tenon_cheeks
from woodmath.edge_derivations import rebate_derivation
from woodmath.errors import ImpossibleShape
from woodmath.groove import depth_for
from woodmath.parts import parts_of

if TYPE_CHECKING:
    from woodmath.piece import Piece

_HOLDERS: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "post": ("posts",),
        "end": ("end panels",),
        "side": ("side panels",),
        "joint.tenon_thickness": ("end panels", "posts"),
        "joint.other_thickness": ("side panels", "posts"),
        "joint.set_back": ("posts", "end panels"),
        "joint.other_set_back": ("posts", "side panels"),
        "joint.tenons": ("end panels", "side panels", "posts"),
        "joint.tongue.length": ("end panels", "side panels"),
        "joint.tongue": ("posts",),
        "joint": ("posts",),
        "bead": ("end panels", "side panels"),
        "rocker.tenon": ("posts", "rockers"),
        "rocker": ("rockers",),
        "bottom": ("bottom",),
    }
)
"""On which parts a size of the file can be measured, that on which it is taken first."""


@dataclass(frozen=True)
class Need:
    """One number that a part must have.

    Parameters
    ----------
    what : str
        In the trade's words.
    value : float
        In the piece's unit, or in degrees.
    keys : tuple of str
        The sizes of the file that are this very number; none where it follows from other parts.
    unit : "length" or "degrees"
        Of the value.
    once_cut : tuple of str
        Sizes of the part itself from which the number follows: once it is cut, it is as it is.
    cut_on : bool
        Whether more of it can be cut on a part that is there already, and less of it does no harm.
    """

    what: str
    value: float
    keys: tuple[str, ...] = ()
    unit: Literal["length", "degrees"] = "length"
    once_cut: tuple[str, ...] = ()
    cut_on: bool = False


def holder(path: str, cut: Collection[str]) -> str:
    """Return the part on which a size of the file was measured.

    Parameters
    ----------
    path : str
        As in the file, alike for every row of a list: "side.thickness".
    cut : collection of str
        The parts that there are already.

    Returns
    -------
    str
        The first of those that have it and are cut, or the first of all; "" for what no part has.

    >>> holder("joint.tenon_thickness", ["posts"]), holder("side.thickness", [])
    ('posts', 'side panels')
    """
    key = path
    while key and key not in _HOLDERS:
        key = key.rpartition(".")[0]
    parts = _HOLDERS.get(key, ())
    return next((part for part in parts if part in cut), parts[0] if parts else "")


def needs_of(piece: Piece) -> dict[str, tuple[Need, ...]]:
    """Return what each part of a piece must measure.

    Parameters
    ----------
    piece : Piece
        With both pairs of panels.

    Returns
    -------
    dict of str to tuple of Need
        By the names that a file gives to what is cut.

    Raises
    ------
    ImpossibleShape
        If its sizes make no case.

    Source: `woodmath.case` and `woodmath.parts`.

    >>> from woodmath.piece import Piece
    >>> list(needs_of(Piece.demo("cat-bed")))
    ['posts', 'end panels', 'side panels', 'rockers', 'bottom']
    """
    case = Case.of(piece)
    found = {
        "posts": tuple(_posts(piece, case)),
        "end panels": tuple(_end(piece, case)),
        "side panels": tuple(_side(piece, case)),
    }
    if piece.rocker:
        found["rockers"] = tuple(_rockers(piece, case))
    if piece.bottom:
        found["bottom"] = tuple(_bottom(piece))
    return found


def _posts(piece: Piece, case: Case) -> Iterator[Need]:
    joint, tongue = piece.joint, piece.joint.tongue
    yield Need("square section", piece.post.square, ("post.square",))
    yield Need("length to cut", piece.post.length, ("post.length",))
    ends, sides = "the end's mortises", "the side's mortises"
    # A tenon enters through the far face: what the mortise's outline leaves of the section is its depth.
    end_depth = case.square - min(x for x, _ in case.joint.mortise)
    side_depth = case.square - min(y for _, y in case.joint.other_mortise)
    yield Need(f"set-back of {ends}", joint.set_back, ("joint.set_back",))
    yield Need(f"width of {ends}", joint.tenon_thickness, ("joint.tenon_thickness",))
    yield Need(f"depth of {ends}", end_depth)
    yield Need(f"set-back of {sides}", joint.side_set_back, ("joint.other_set_back", "joint.set_back"))
    yield Need(f"width of {sides}", joint.side_thickness, ("joint.other_thickness", "joint.tenon_thickness"))
    yield Need(f"depth of {sides}", side_depth)
    for number, (low, high) in enumerate(case.tenons, 1):
        yield Need(f"mortise {number}, lower end over the shoulder", low, ("joint.tenons.place", "post.foot"))
        yield Need(
            f"mortise {number}, upper end over the shoulder", high, ("joint.tenons.width", "post.foot")
        )
    if tongue:
        yield Need("depth of the grooves", case.groove_depth, ("joint.tongue.clearance",))
        yield from _stop("groove", case.grooves, 0.0, "over the shoulder")
        if case.grooves:
            yield Need("upper end of the groove, over the shoulder", case.grooves[-1][1], cut_on=True)
    if piece.rocker and piece.rocker.tenon:
        foot = piece.rocker.tenon
        yield Need("thickness of the foot's tenon", foot.thickness, ("rocker.tenon.thickness",))
        yield Need("width of the foot's tenon", foot.width, ("rocker.tenon.width",))
        yield Need("length of the foot's tenon", foot.length, ("rocker.tenon.length",))
        yield Need("angle of the foot's shoulders, off square", case.splay, unit="degrees")


def _end(piece: Piece, case: Case) -> Iterator[Need]:
    if piece.end is None:
        raise ImpossibleShape(f"{piece.name} has no ends. Add [end] to its file.")
    end = piece.end
    yield Need("width at the upper edge, shoulder to shoulder", end.top, ("end.top",))
    yield Need("width at the lower edge, shoulder to shoulder", end.bottom, ("end.bottom",))
    yield Need("height", end.height, ("end.height",))
    yield Need("thickness", end.thickness, ("end.thickness",))
    tenon = case.joint.tenon
    yield Need("thickness of the tenons", tenon.thickness, ("joint.tenon_thickness",))
    own = ("end.thickness", "joint.tenon_thickness")
    yield Need("depth of the rebate", _rebate(end.thickness, tenon.thickness), once_cut=own)
    yield from _tenons(case, tenon.outer_cheek, tenon.inner_cheek, tenon.bevel)


def _side(piece: Piece, case: Case) -> Iterator[Need]:
    if piece.side is None:
        raise ImpossibleShape(f"{piece.name} has no sides. Add [side] to its file.")
    yield Need("length, shoulder to shoulder", piece.side.length, ("side.length",))
    yield Need("width, along the post", case.slope_length)
    yield Need("thickness", piece.side.thickness, ("side.thickness",))
    tenon = case.joint.other_tenon
    keys = ("joint.other_thickness", "joint.tenon_thickness")
    yield Need("thickness of the tenons", tenon.thickness, keys)
    own = ("side.thickness", *keys)
    yield Need("depth of the rebate", _rebate(piece.side.thickness, tenon.thickness), once_cut=own)
    yield from _tenons(case, tenon.outer_cheek, tenon.inner_cheek, tenon.bevel)


def _tenons(case: Case, outer: float, inner: float, bevel: float) -> Iterator[Need]:
    yield Need("length of the tenons along the outer cheek", outer)
    yield Need("length of the tenons along the inner cheek", inner)
    yield Need("bevel of the tenons' ends", bevel, unit="degrees")
    below = case.panel[0]
    for number, (low, high) in enumerate(case.tenons, 1):
        yield Need(f"tenon {number}, from the panel's lower edge", low - below, ("joint.tenons.place",))
        yield Need(f"tenon {number}, width", high - low, ("joint.tenons.width",))
    yield Need("length of the tongue", case.tongue_length, ("joint.tongue.length",))
    yield from _stop("tongue", case.tongues, below, "from the panel's lower edge")


def _stop(what: str, ranges: tuple[tuple[float, float], ...], datum: float, counted: str) -> Iterator[Need]:
    """Yield where the lowest of some stretches begins: there the bead stops it."""
    if ranges:
        yield Need(f"lower end of the {what}, {counted}", ranges[0][0] - datum)


def _rockers(piece: Piece, case: Case) -> Iterator[Need]:
    rocker = piece.rocker
    if rocker is None:
        return
    yield Need("length, heel to heel", rocker.length, ("rocker.length",))
    yield Need("rise", rocker.rise, ("rocker.rise",))
    yield Need("radius at the bottom", rocker.bottom_radius, ("rocker.bottom_radius",))
    yield Need("thickness", rocker.thickness, ("rocker.thickness",))
    yield Need("depth at the middle", rocker.depth, ("rocker.depth",))
    if rocker.tenon:
        inner, outer = foot_tenon_cheeks(case, rocker.tenon)
        yield Need("mortises, from the middle to the inner end", inner)
        yield Need("mortises, from the middle to the outer end", outer)
        yield Need("width of the mortises", rocker.tenon.thickness, ("rocker.tenon.thickness",))
        # A tenon that came out longer is the post's own; the mortise has to follow it.
        yield Need("depth of the mortises", depth_for(rocker.tenon.length, piece.joint.end_clearance))


def _bottom(piece: Piece) -> Iterator[Need]:
    for part in parts_of(piece):
        if part.name == "bottom board":
            yield Need("length", part.length)
            yield Need("width", part.width)
            yield Need("thickness", part.thickness, ("bottom.thickness",))


def _rebate(board: float, tongue: float) -> float:
    return rebate_derivation().function("depth")(board=board, tongue=tongue)
