"""Two tenons that meet inside one square post: how long each may be, how their ends meet, what wood is left.

Mitred ends lie on the diagonal of the rectangle in which the two mortises cross, so each cheek runs to the
other mortise's cheek of the same name. The bevel then follows from the two thicknesses alone: equal
thicknesses, not equal set-backs, meet at 45 degrees.

The post's section is a square with its outer faces at x = 0 and y = 0. The first tenon enters through the
inside face x = post and fills y from its set-back on; the other one enters through y = post and fills x from
its set-back on.
"""

from __future__ import annotations

import functools
import math
from dataclasses import dataclass

from woodmath.errors import UnknownName
from woodmath.outlines import rectangle
from woodmath.post_joint_derivation import (
    derivation,
    equal_thicknesses,
    inner_cheek_derivation,
    meeting_face_derivation,
    outer_cheek_derivation,
)
from woodmath.post_joint_geometry import Cut, Outline, Section, Tenon, Walls, mirrored, settled
from woodmath.post_joint_limits import (
    check_across,
    check_clearance,
    check_more_than_nothing,
    check_something_left,
    checked_reserve,
    usual_thickness,
)

__all__ = [
    "ENDS",
    "PostJoint",
    "Section",
    "Tenon",
    "Walls",
    "derivation",
    "equal_thicknesses",
    "inner_cheek_derivation",
    "meeting_face_derivation",
    "outer_cheek_derivation",
    "usual_thickness",
]

ENDS = ("mitred", "square", "one_long", "halved")
"""How the ends may be made."""


@dataclass(frozen=True)
class PostJoint:
    """Two tenons in one post, seen in the post's section.

    Parameters
    ----------
    post : float
        Side of the square post, > 0, in any length unit; all lengths in the same.
    tenon_thickness, set_back : float
        Thickness of the first tenon, > 0, and its set-back, 0 or more: outer face of the post to outer cheek.
    other_thickness, other_set_back : float, optional
        The same of the other tenon; as the first where nothing is said.
    ends : {"mitred", "square", "one_long", "halved"}
        "mitred": both meet on the diagonal of the crossing. "square": each stops at the other's inner cheek.
        "one_long": the first goes on to `post - reserve`, the other stops on its inner cheek. "halved": each
        goes full width to the other's inner cheek and half its width on to the other's outer cheek, one over
        the other.
    reserve : float, optional
        For "one_long" only, and needed there: wood to leave between the long mortise and the far outer face,
        0 or more and less than the post. Other ends take no notice of it.
    end_clearance : float
        How much every tenon is shortened so that the shoulders close first, 0 or more. The mortises keep
        their depth.

    Raises
    ------
    ImpossibleShape
        If the sizes cannot stand in one post together.
    UnknownName
        If `ends` is none of the four.

    Source: plane geometry (see the derivations).

    >>> joint = PostJoint(post=1.75, tenon_thickness=0.375, set_back=0.375)
    >>> joint.tenon.outer_cheek, joint.tenon.inner_cheek, joint.tenon.bevel
    (1.375, 1.0, 45.0)
    """

    post: float
    tenon_thickness: float
    set_back: float
    other_thickness: float | None = None
    other_set_back: float | None = None
    ends: str = "mitred"
    reserve: float | None = None
    end_clearance: float = 0.0

    def __post_init__(self) -> None:
        if self.ends not in ENDS:
            raise UnknownName(f"The ends are {self.ends!r}. Choose one of: {', '.join(ENDS)}.")
        check_more_than_nothing("post", self.post)
        check_across("first", self.post, *self._first)
        check_across("other", self.post, *self._second)
        check_clearance(self.end_clearance)
        for _, first, other in self._cuts:
            check_something_left("first", first, self.end_clearance)
            check_something_left("other", other, self.end_clearance)

    @functools.cached_property
    def tenon(self) -> Tenon:
        """The first tenon, which enters through x = post."""
        (_, long, _), (_, short, _) = self._cuts[0], self._cuts[-1]
        bevel = self._bevel(self._first[0], self._second[0])
        return Tenon(
            long.thickness,
            long.set_back,
            long.outer,
            long.inner,
            bevel,
            outline=long.tenon,
            short_outline=short.tenon,
        )

    @functools.cached_property
    def other_tenon(self) -> Tenon:
        """The other tenon, which enters through y = post."""
        (_, _, short), (_, _, long) = self._cuts[0], self._cuts[-1]
        bevel = self._bevel(self._second[0], self._first[0])
        outline, short_outline = mirrored(long.tenon), mirrored(short.tenon)
        return Tenon(long.thickness, long.set_back, long.outer, long.inner, bevel, outline, short_outline)

    @functools.cached_property
    def sections(self) -> tuple[Section, ...]:
        """Level cuts through the joint: one; two for halved tenons, the first tenon's long half before."""
        return tuple(
            Section(share, first.tenon, mirrored(other.tenon), first.mortise, mirrored(other.mortise))
            for share, first, other in self._cuts
        )

    @property
    def mortise(self) -> Outline:
        """Outline of the first tenon's mortise, at its full depth."""
        return self.sections[0].mortise

    @property
    def other_mortise(self) -> Outline:
        """Outline of the other tenon's mortise, at its full depth."""
        return self.sections[-1].other_mortise

    @property
    def meeting_face(self) -> float:
        """Length, in the section, of the face on which the two ends lie on one another.

        Only mitred ends do, and only without clearance; 0 otherwise.
        """
        if self.ends != "mitred" or self.end_clearance > 0:
            return 0.0
        return meeting_face_derivation().function("meeting_face")(
            tenon_thickness=self._first[0], other_thickness=self._second[0]
        )

    @property
    def walls(self) -> Walls:
        """Wood of the post left about the mortises, each 0 or more."""
        (thickness, set_back), (other_thickness, other_set_back) = self._first, self._second
        return Walls(
            outside_tenon=set_back,
            outside_other=other_set_back,
            inside_tenon=settled(self.post - set_back - thickness, self.post),
            inside_other=settled(self.post - other_set_back - other_thickness, self.post),
            behind_tenon=min(first.wood_behind(other) for _, first, other in self._cuts),
            behind_other=min(other.wood_behind(first) for _, first, other in self._cuts),
        )

    @property
    def corner_block(self) -> Outline:
        """The inside corner of the post where the two mortises cut it free over their height, or nothing.

        It then hangs on the wood above and below the mortises.
        """
        _, first, other = self._cuts[0]
        walls = self.walls
        free = first.meets_mouth_of(other) and other.meets_mouth_of(first)
        if not free or min(walls.inside_tenon, walls.inside_other) == 0:
            return ()
        return rectangle(other.inner_side, first.inner_side, self.post, self.post)

    def glue_area(self, tenon_width: float) -> float:
        """Glue area of both tenons together: cheeks with wood of the post behind them, and no others.

        Parameters
        ----------
        tenon_width : float
            Width of the tenons, up the post, > 0, in the joint's unit.

        Returns
        -------
        float
            Area in square units. Where a cheek crosses the other mortise's mouth no wood is behind it.

        Raises
        ------
        ImpossibleShape
            If the width is not more than 0.

        Source: plane geometry.

        >>> PostJoint(post=4, tenon_thickness=1, set_back=1).glue_area(tenon_width=2)
        20.0
        """
        check_more_than_nothing("tenons' width", tenon_width)
        return tenon_width * math.fsum(
            share * (first.backed_by_wood(other) + other.backed_by_wood(first))
            for share, first, other in self._cuts
        )

    @property
    def _first(self) -> tuple[float, float]:
        return self.tenon_thickness, self.set_back

    @property
    def _second(self) -> tuple[float, float]:
        return (
            self.tenon_thickness if self.other_thickness is None else self.other_thickness,
            self.set_back if self.other_set_back is None else self.other_set_back,
        )

    @functools.cached_property
    def _cuts(self) -> tuple[tuple[float, Cut, Cut], ...]:
        """Share of the width, first and other tenon, for each height at which the joint differs."""
        far, near = self._to_cheeks(*self._second)
        other_far, other_near = self._to_cheeks(*self._first)
        if self.ends == "mitred":
            lengths = [(1.0, (far, near), (other_far, other_near))]
        elif self.ends == "square":
            lengths = [(1.0, (near, near), (other_near, other_near))]
        elif self.ends == "one_long":
            long = self.post - checked_reserve(self.reserve, self.post, usual=self._second[1])
            lengths = [(1.0, (long, long), (other_near, other_near))]
        else:
            lengths = [
                (0.5, (far, far), (other_near, other_near)),
                (0.5, (near, near), (other_far, other_far)),
            ]
        return tuple(
            (share, self._cut(self._first, first), self._cut(self._second, other))
            for share, first, other in lengths
        )

    def _to_cheeks(self, thickness: float, set_back: float) -> tuple[float, float]:
        """Lengths from the inside face to the outer and to the inner cheek of the mortise so placed."""
        far = outer_cheek_derivation().function("outer_cheek")
        near = inner_cheek_derivation().function("inner_cheek")
        return (
            far(post=self.post, other_set_back=set_back),
            settled(near(post=self.post, other_set_back=set_back, other_thickness=thickness), self.post),
        )

    def _cut(self, layout: tuple[float, float], lengths: tuple[float, float]) -> Cut:
        (thickness, set_back), (outer, inner) = layout, lengths
        shorter = self.end_clearance
        return Cut(self.post, set_back, thickness, outer - shorter, inner - shorter, depth=outer)

    def _bevel(self, own: float, others: float) -> float:
        if self.ends != "mitred":
            return 0.0
        return derivation().function("angle")(tenon_thickness=own, other_thickness=others)
