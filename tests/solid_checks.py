"""An independent look at the solids of a piece: every prism as half-spaces from its corners, hulls by scipy.

Nothing of `woodmath.solids` is used but the corners of the prisms, all of which are convex: what lies inside,
what is shared and how much it holds is worked out by half-spaces and hulls.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterable

import numpy as np
from scipy.optimize import linprog
from scipy.spatial import ConvexHull, HalfspaceIntersection, QhullError

from woodmath.case_solids import Placed
from woodmath.solids import Prism, Solid

Planes = np.ndarray
TOUCHING = 1e-7
"""Bodies that share less than a ball of this radius only touch."""


def planes_of(prism: Prism) -> Planes:
    """Return its faces as rows (normal, offset) with normal · point + offset <= 0 inside, from its corners."""
    corners = np.array(prism.corners)
    count = len(corners) // 2
    low, high = corners[:count], corners[count:]
    middle = corners.mean(0)
    faces = [(low[0], low[1] - low[0], low[2] - low[0]), (high[0], high[1] - high[0], high[2] - high[0])]
    faces += [(low[k], low[(k + 1) % count] - low[k], high[k] - low[k]) for k in range(count)]
    rows = []
    for point, one, other in faces:
        normal = np.cross(one, other)
        normal /= np.linalg.norm(normal)
        normal *= -np.sign(normal @ (middle - point))
        rows.append([*normal, -normal @ point])
    return np.array(rows)


def shared_volume(*bodies: Planes) -> float:
    """Return the volume that all of them share."""
    planes = np.vstack(bodies)
    # The greatest ball that fits between all the faces: its middle is inside, if there is any inside.
    found = linprog(
        [0, 0, 0, -1],
        A_ub=np.c_[planes[:, :3], np.linalg.norm(planes[:, :3], axis=1)],
        b_ub=-planes[:, 3],
        bounds=[(None, None)] * 3 + [(0, None)],
    )
    if not found.success or found.x[3] < TOUCHING:
        return 0.0
    try:
        corners = HalfspaceIntersection(planes, found.x[:3]).intersections
        return float(ConvexHull(corners).volume)
    except QhullError:
        return 0.0


def boxes_meet(one: Prism, other: Prism) -> bool:
    """Tell whether their upright boxes meet, which is quick to see."""
    a, b = np.array(one.corners), np.array(other.corners)
    return bool(np.all(a.min(0) < b.max(0) - 1e-9) and np.all(b.min(0) < a.max(0) - 1e-9))


def overlap(one: Solid, other: Solid) -> float:
    """Return the volume in which two parts would both have wood."""
    total = 0.0
    for a, b in itertools.product(one.added, other.added):
        if not boxes_meet(a, b):
            continue
        both = (planes_of(a), planes_of(b))
        if not (whole := shared_volume(*both)):
            continue
        cut_one = [planes_of(cut) for cut in one.removed if boxes_meet(cut, b)]
        cut_other = [planes_of(cut) for cut in other.removed if boxes_meet(cut, a)]
        total += whole
        total -= sum(shared_volume(*both, cut) for cut in (*cut_one, *cut_other))
        total += sum(shared_volume(*both, c, d) for c, d in itertools.product(cut_one, cut_other))
    return total


class Membership:
    """Tells for many points at once whether there is wood of a part."""

    def __init__(self, solid: Solid) -> None:
        self.added = [planes_of(each) for each in solid.added]
        self.removed = [planes_of(each) for each in solid.removed]

    def __call__(self, points: np.ndarray) -> np.ndarray:
        return _in_any(self.added, points) & ~_in_any(self.removed, points)


def _in_any(bodies: Iterable[Planes], points: np.ndarray) -> np.ndarray:
    inside = np.zeros(len(points), dtype=bool)
    for planes in bodies:
        inside |= np.all(points @ planes[:, :3].T + planes[:, 3] <= 1e-9, axis=1)
    return inside


def points_in(prism: Prism, count: int, seed: int) -> np.ndarray:
    """Return so many random points within a prism."""
    corners = np.array(prism.corners)
    low, high = corners.min(0), corners.max(0)
    random = np.random.default_rng(seed)
    planes = planes_of(prism)
    kept: list[np.ndarray] = []
    while sum(map(len, kept)) < count:
        points = random.uniform(low, high, (count * 2, 3))
        kept.append(points[np.all(points @ planes[:, :3].T + planes[:, 3] < 0, axis=1)])
    return np.vstack(kept)[:count]


def named(placed: Iterable[Placed], name: str) -> list[Solid]:
    """Return the solids of one kind of part."""
    return [each.solid for each in placed if each.name == name]
