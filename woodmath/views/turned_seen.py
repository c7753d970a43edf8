"""The turned tops of a case as each of its views shows them: from the end, from the side, from above, standing."""

from __future__ import annotations

import functools
import math
from collections.abc import Callable, Iterator
from typing import TYPE_CHECKING

from woodmath.case import Case
from woodmath.drawing import Line, Point, Points, arc
from woodmath.solids import Vector, dot

if TYPE_CHECKING:
    from woodmath.piece import Piece
    from woodmath.piece_turned import TurnedTop

_PIECES, _FEW, _ROUND = 3, 2, 12
_TOPS_REMEMBERED = 16


def turned_from_the_end(piece: Piece, case: Case) -> Iterator[Line]:
    """Yield the two tops that the end shows, each in its true profile.

    Parameters
    ----------
    piece : Piece
        What is seen; one without turned posts yields nothing.
    case : Case
        Of that piece.

    Yields
    ------
    Line
        In the piece's unit, y to the right.

    >>> from woodmath.piece import Piece
    >>> bed, box = Piece.demo("cat-bed"), Piece.demo("log-box")
    >>> len([*turned_from_the_end(bed, Case.of(bed))]) > len([*turned_from_the_end(box, Case.of(box))]) == 0
    True
    """
    if piece.post.turned is None:
        return

    (x, y), (out_x, out_y) = case.at(case.panel[1], case.square / 2), case.outward
    up_x, up_y = case.upward

    def place(along: float, radius: float) -> Point:
        return (x + along * up_x + radius * out_x, y + along * up_y + radius * out_y)

    for shape in _seen(piece.post.turned, place):
        yield shape
        yield Line(tuple((-x, y) for x, y in shape.points), shape.role, shape.closed, shape.fill)


def turned_from_the_side(piece: Piece, case: Case) -> Iterator[Line]:
    """Yield the two tops that the side shows; leaning, they are seen a little less high than they are long.

    Parameters
    ----------
    piece, case
        As for `turned_from_the_end`.

    Yields
    ------
    Line
        In the piece's unit, x to the right.

    >>> from woodmath.piece import Piece
    >>> bed = Piece.demo("cat-bed")
    >>> sum(shape.closed for shape in turned_from_the_side(bed, Case.of(bed)))
    2
    """
    if piece.post.turned is None:
        return

    (_, foot), (_, up) = case.at(case.panel[1], case.square / 2), case.upward
    middle = case.half_length + case.square / 2

    def place(along: float, radius: float) -> Point:
        return (middle + radius, foot + along * up)

    for shape in _seen(piece.post.turned, place):
        yield shape
        yield Line(tuple((-x, y) for x, y in shape.points), shape.role, shape.closed, shape.fill)


def turned_from_above(piece: Piece, case: Case) -> Iterator[Line]:
    """Yield the four tops from above, each as the round of its thickest place.

    Parameters
    ----------
    piece, case
        As for `turned_from_the_end`.

    Yields
    ------
    Line
        In the piece's unit, x to the right.

    >>> from woodmath.piece import Piece
    >>> bed = Piece.demo("cat-bed")
    >>> sum(shape.role == "edge" for shape in turned_from_above(bed, Case.of(bed)))
    4
    """
    if piece.post.turned is None:
        return
    along, radius = _thickest(piece.post.turned)
    x, y = case.half_length + case.square / 2, case.at(case.panel[1] + along, case.square / 2)[0]
    ring = arc((x, y), radius, 0.0, 360.0, _ROUND)[:-1]
    for x_sign in (-1.0, 1.0):
        for y_sign in (-1.0, 1.0):
            yield Line(tuple((x_sign * p, y_sign * q) for p, q in ring), "edge", True, "post")


def turned_from_a_corner(
    piece: Piece, case: Case, toward: Vector, right: Vector, up: Vector
) -> Iterator[Line]:
    """Yield the four tops as somebody sees them from one corner and from above, the farthest first.

    Parameters
    ----------
    piece : Piece
        What is seen; one without turned posts yields nothing.
    case : Case
        Of that piece.
    toward, right, up : Vector
        Of length 1: to whoever looks, and what is right and up to him.

    Yields
    ------
    Line
        A filled outline each. A round is as wide across its axis as it is, from wherever it is seen.

    >>> from woodmath.piece import Piece
    >>> bed = Piece.demo("cat-bed")
    >>> len([*turned_from_a_corner(bed, Case.of(bed), (0.0, -1.0, 0.0), (1.0, 0.0, 0.0), (0.0, 0.0, 1.0))])
    4
    """
    if piece.post.turned is None:
        return
    axes, middle = case.post_axes, case.square / 2
    posts = [axes, axes.mirrored(0), axes.mirrored(1), axes.mirrored(0).mirrored(1)]
    posts.sort(key=lambda post: dot(post.point(middle, middle, case.top), toward))
    edge = _edge(piece.post.turned, _FEW)
    for post in posts:
        along = (dot(post.along, right), dot(post.along, up))
        length = math.hypot(*along)
        way = (along[0] / length, along[1] / length)
        # What a round shows of its breadth along its own axis.
        flat = abs(dot(post.along, toward))
        start = post.point(middle, middle, case.panel[1])
        x, y = dot(start, right), dot(start, up)

        def place(
            run: float, aside: float, x: float = x, y: float = y, along: Point = along, way: Point = way
        ) -> Point:
            return (x + run * along[0] - aside * way[1], y + run * along[1] + aside * way[0])

        first, radius = edge[0]
        front = [
            place(first - flat * radius * math.sin(turn) / length, radius * math.cos(turn))
            for turn in (math.pi * step / 6 for step in range(5, 0, -1))
        ]
        left = [place(run, r) for run, r in edge]
        other = [place(run, -r) for run, r in reversed(edge)]
        yield Line((*left, *other, *front), "edge", True, "post")


@functools.lru_cache(maxsize=_TOPS_REMEMBERED)
def _edge(turned: TurnedTop, pieces: int) -> Points:
    # A slider of the whole piece moves the turned tops and never changes them.
    return turned.profile().outline(pieces)


@functools.lru_cache(maxsize=_TOPS_REMEMBERED)
def _thickest(turned: TurnedTop) -> Point:
    """Return where the top is thickest, and half of that."""
    station = max(turned.stations, key=lambda each: each.diameter)
    return (station.place, station.diameter / 2)


@functools.lru_cache(maxsize=_TOPS_REMEMBERED)
def _rings(turned: TurnedTop) -> Points:
    """Return where a corner runs round the turning: where it neither begins, nor ends, nor bulges nor is hollow."""
    return tuple(
        (here.place, here.diameter / 2)
        for before, here, after in zip(
            turned.stations, turned.stations[1:], turned.stations[2:], strict=False
        )
        if not before.diameter <= here.diameter > after.diameter
    )


def _seen(turned: TurnedTop, place: Callable[[float, float], Point]) -> Iterator[Line]:
    """Yield the profile on both sides of its axis, and a fine line round it where a bead or a cove begins or ends."""
    edge = _edge(turned, _PIECES)
    outline = (
        *(place(along, radius) for along, radius in edge),
        *(place(along, -radius) for along, radius in reversed(edge)),
    )
    yield Line(outline, "edge", True, "post")
    for along, radius in _rings(turned):
        yield Line((place(along, -radius), place(along, radius)), "quiet")
