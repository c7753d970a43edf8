"""Whether and in which order the parts go together: every joint slides in its own direction, and only in that.

Parts that are joined in two different directions lock one another: once one joint is closed, the other cannot
be. What can be pulled apart along one direction can be put together along it; so the order is found backward,
by taking the finished piece apart.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

from woodmath.case import Case
from woodmath.solids import Vector, dot

if TYPE_CHECKING:
    from woodmath.piece import Piece

PARALLEL = math.radians(0.25)
"""Two ways in that differ by less than this are one: a joint has that much play (common practice)."""


@dataclass(frozen=True)
class Slide:
    """A joint between two parts, and the one direction in which it slides together.

    Parameters
    ----------
    one, other : str
        The parts.
    direction : Vector
        Of length 1; which end of it is forward makes no difference.

    >>> Slide("post", "end", (0, 1, 0)).along((0, -1, 0))
    True
    """

    one: str
    other: str
    direction: Vector

    def along(self, direction: Vector) -> bool:
        """Tell whether it slides in a direction."""
        return abs(dot(self.direction, direction)) > math.cos(PARALLEL)


@dataclass(frozen=True)
class Together:
    """One step of putting together: groups that slide into one another along one direction.

    Parameters
    ----------
    groups : tuple of tuple of str
        What is joined: each group is one part, or parts that are already together.
    direction : Vector
        In which they slide.

    >>> Together((("post",), ("end",)), (0, 1, 0)).parts
    ('end', 'post')
    """

    groups: tuple[tuple[str, ...], ...]
    direction: Vector

    @property
    def parts(self) -> tuple[str, ...]:
        """Everything that is together after the step."""
        return tuple(sorted(part for group in self.groups for part in group))


@dataclass(frozen=True)
class Order:
    """The order of putting together, and what cannot be.

    Parameters
    ----------
    steps : tuple of Together
        From the first to the last.
    locked : tuple of tuple of str
        Groups of parts that no order can put together; empty when all is well.

    >>> order_of([Slide("a", "b", (1, 0, 0))]).locked
    ()
    """

    steps: tuple[Together, ...]
    locked: tuple[tuple[str, ...], ...]


def order_of(slides: Iterable[Slide]) -> Order:
    """Find an order in which parts go together, each joint along its own direction.

    Parameters
    ----------
    slides : iterable of Slide
        Every joint.

    Returns
    -------
    Order
        Its steps, and the groups that cannot be put together at all.

    Source: what comes apart along one direction goes together along it.

    >>> triangle = [Slide("a", "b", (1, 0, 0)), Slide("b", "c", (0, 1, 0)), Slide("c", "a", (0, 0, 1))]
    >>> order_of(triangle).locked
    (('a', 'b', 'c'),)
    """
    joints = tuple(slides)
    steps: list[Together] = []
    locked: list[tuple[str, ...]] = []
    waiting = [tuple(sorted({part for joint in joints for part in (joint.one, joint.other)}))]
    while waiting:
        group = waiting.pop()
        within = [joint for joint in joints if joint.one in group and joint.other in group]
        if len(group) == 1 or not within:
            continue
        ways = [(joint.direction, _held(group, within, joint.direction)) for joint in within]
        direction, parted = max(ways, key=lambda way: len(way[1]))
        if len(parted) == 1:
            locked.append(group)
            continue
        steps.append(Together(parted, direction))
        waiting += parted
    return Order(tuple(reversed(steps)), tuple(locked))


def slides_of(piece: Piece, case: Case) -> tuple[Slide, ...]:
    """Return every joint of a piece with the direction in which it slides.

    Parameters
    ----------
    piece : Piece
        With both pairs of panels.
    case : Case
        Of that piece.

    Returns
    -------
    tuple of Slide
        Posts on ends, posts on sides, and posts in rockers.

    Source: a tenon is cut square to its shoulder and goes straight in; the foot's tenon goes in its own line.

    >>> from woodmath.piece import Piece
    >>> piece = Piece.demo("log-box")
    >>> len(slides_of(piece, Case.of(piece)))
    8
    """
    (out_y, out_z), (up_y, up_z) = case.outward, case.upward
    slides: list[Slide] = []
    for where, mirror in (("back", 1.0), ("front", -1.0)):
        for end in ("right", "left"):
            post = f"{where} {end} post"
            slides.append(Slide(post, f"{where} side", (1.0, 0.0, 0.0)))
            slides.append(Slide(post, f"{end} end", (0.0, mirror * out_y, out_z)))
            if piece.rocker and piece.rocker.tenon:
                upright = piece.rocker.tenon.line == "upright"
                way = (0.0, 0.0, 1.0) if upright else (0.0, mirror * up_y, up_z)
                slides.append(Slide(post, f"{end} rocker", way))
    return tuple(slides)


def assembly_of(piece: Piece) -> Order:
    """Find the order in which a piece goes together.

    Parameters
    ----------
    piece : Piece
        With both pairs of panels.

    Returns
    -------
    Order
        Its steps by the names of the parts, and what is locked.

    Raises
    ------
    ImpossibleShape
        If the sizes make no case.

    Source: `order_of`.

    >>> from woodmath.piece import Piece
    >>> assembly_of(Piece.demo("cat-bed")).locked
    ()
    """
    return order_of(slides_of(piece, Case.of(piece)))


def assembly_steps(piece: Piece) -> tuple[str, ...]:
    """Say in words how a piece goes together.

    Parameters
    ----------
    piece : Piece
        With both pairs of panels.

    Returns
    -------
    tuple of str
        One sentence a step; a last one for what cannot be put together.

    Raises
    ------
    ImpossibleShape
        If the sizes make no case.

    Source: `order_of`.

    >>> from woodmath.piece import Piece
    >>> print(assembly_steps(Piece.demo("log-box"))[-1])
    Bring together left end with its posts, right end with its posts, back side and front side.
    """
    order = assembly_of(piece)
    steps = [f"Bring together {_listed([_called(group) for group in step.groups])}." for step in order.steps]
    steps += [
        f"No order brings together {_listed(list(group))}: their joints point different ways."
        for group in order.locked
    ]
    return tuple(steps)


def _held(group: tuple[str, ...], joints: Iterable[Slide], direction: Vector) -> tuple[tuple[str, ...], ...]:
    """Return the groups that stay together when all is pulled apart along one direction."""
    together: dict[str, str] = {part: part for part in group}

    def root(part: str) -> str:
        while together[part] != part:
            part = together[part]
        return part

    for joint in joints:
        if not joint.along(direction):
            together[root(joint.one)] = root(joint.other)
    return _gathered({part: root(part) for part in group})


def _gathered(roots: Mapping[str, str]) -> tuple[tuple[str, ...], ...]:
    groups: dict[str, list[str]] = {}
    for part, root in sorted(roots.items()):
        groups.setdefault(root, []).append(part)
    return tuple(tuple(group) for group in groups.values())


def _called(group: tuple[str, ...]) -> str:
    panels = [part for part in group if part.endswith(("end", "side"))]
    posts = sum(part.endswith("post") for part in group)
    rockers = sum(part.endswith("rocker") for part in group)
    if len(group) == 1 or len(panels) != 1:
        return _listed(list(group))
    own = [f"post{'s' if posts > 1 else ''}"] * bool(posts) + ["rocker"] * bool(rockers)
    return f"{panels[0]} with its {_listed(own)}"


def _listed(words: list[str]) -> str:
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}"
