"""A case as it stands, seen from one corner and from above, without perspective: parallel edges stay parallel."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from woodmath.case import Case
from woodmath.case_solids import bodies_of
from woodmath.drawing import Line, Point
from woodmath.solids import Prism, Vector, dot
from woodmath.views.turned_seen import turned_from_a_corner

if TYPE_CHECKING:
    from woodmath.piece import Piece

_TINTS = {
    "post": "post",
    "end panel": "end",
    "side panel": "side",
    "rocker": "board",
    "bottom board": "board",
}
_WATCHER: Vector = (0.54, 0.68, 0.5)
"""The way from the case to whoever looks at it: an end to the left, a side to the right, the inside from above."""


_EDGE_ON = 1e-9
"""A face that shows less than this is seen edge on."""


def standing(piece: Piece, case: Case | None = None) -> tuple[Line, ...]:
    """Return the piece as it stands.

    Parameters
    ----------
    piece : Piece
        With both pairs of panels.
    case : Case, optional
        Of that piece, where it is worked out already.

    Returns
    -------
    tuple of Line
        Filled faces from the farthest to the nearest, in the piece's unit, foreshortened as they are seen.

    Raises
    ------
    ImpossibleShape
        If the sizes make no case.

    >>> from woodmath.piece import Piece
    >>> {face.fill for face in standing(Piece.demo("log-box"))} == {"post", "end", "side", "board"}
    True
    """
    case = case or Case.of(piece)
    length = math.sqrt(dot(_WATCHER, _WATCHER))
    toward = (_WATCHER[0] / length, _WATCHER[1] / length, _WATCHER[2] / length)
    level = math.hypot(toward[0], toward[1])
    right = (-toward[1] / level, toward[0] / level, 0.0)
    up = (-toward[0] * toward[2] / level, -toward[1] * toward[2] / level, level)
    # Boards come before what is fixed to them: what joins them is hidden in the posts.
    bodies = [_Body.of(prism, _TINTS[name]) for name, prism in bodies_of(piece, case)]
    bodies.sort(key=lambda body: (body.tint != "board", dot(body.middle, toward)))
    faces: list[Line] = []
    for body in bodies:
        for corners in body.faces:
            if body.shows(corners, toward):
                seen: list[Point] = [(dot(corner, right), dot(corner, up)) for corner in corners]
                faces.append(Line(tuple(seen), "edge", True, body.tint))
    # What is turned stands over everything that could hide it.
    return (*faces, *turned_from_a_corner(piece, case, toward, right, up))


@dataclass(frozen=True)
class _Body:
    """A straight-sided solid with its corners worked out once."""

    tint: str
    middle: Vector
    faces: tuple[tuple[Vector, ...], ...]

    @classmethod
    def of(cls, prism: Prism, tint: str) -> _Body:
        corners = prism.corners
        count = len(prism.outline)
        low, high = corners[:count], corners[count:]
        around = (
            (low[each], low[(each + 1) % count], high[(each + 1) % count], high[each])
            for each in range(count)
        )
        x, y, z = (math.fsum(corner[axis] for corner in corners) / len(corners) for axis in range(3))
        return cls(tint, (x, y, z), (low, high, *around))

    def shows(self, corners: tuple[Vector, ...], toward: Vector) -> bool:
        """Tell whether a face is turned toward whoever looks."""
        start, one, other = corners[0], corners[1], corners[2]
        a, b = _minus(one, start), _minus(other, start)
        normal = (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])
        inward = dot(normal, _minus(self.middle, start)) > 0
        return dot(normal, toward) < -_EDGE_ON if inward else dot(normal, toward) > _EDGE_ON


def _minus(one: Vector, other: Vector) -> Vector:
    return (one[0] - other[0], one[1] - other[1], one[2] - other[2])
