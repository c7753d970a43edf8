"""The whole case worked out from its piece: where every part lies, in three directions.

x runs along the sides to the right, y along the ends to the back and z upward, from the middle of the case at the
height of the posts' shoulders. The posts lean in y alone. Along a post all is measured on its inside face, from
the shoulder; in its section u counts from the outer side face inward, v from the outer end face inward.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from woodmath import foot_joint
from woodmath.bead import tenon_may_begin
from woodmath.errors import ImpossibleShape
from woodmath.outlines import Point, Points
from woodmath.rebate import panel_set_back
from woodmath.setting_out import TongueStops, stretches_of_a_post
from woodmath.solids import Axes

if TYPE_CHECKING:
    from woodmath.piece import Piece
    from woodmath.post_joint import PostJoint

_ROUNDING = 1e-9
"""Stretches shorter than this part of the whole are the computer's rounding, not wood."""

Range = tuple[float, float]
"""From and to, along the post."""


@dataclass(frozen=True)
class Case:
    """The sizes and places from which every part of a piece follows; lengths in the piece's unit.

    Parameters
    ----------
    splay : float
        Lean of the posts in degrees from upright, outward more than 0.
    square, half_length, half_foot : float
        The post's section; the middle to a post's inside faces, along x, and along y at the shoulder.
    height, slope_length : float
        Of the panels, upright and along the post.
    panel, top : (float, float) and float
        Where the panels begin and end along the post, and where the post ends.
    square_top : float
        Where the square ends along the post: at its top, or where the turning begins.
    end_face, side_face : float
        How far the panels' outer faces lie behind the post's; less than 0 where they stand proud.
    end_thickness, side_thickness : float
        Of the boards.
    joint : PostJoint
        How the tenons meet.
    tenons, tongues, grooves : tuples of (float, float)
        Where they begin and end along the post; tongues and grooves between the tenons.
    tongue_length, groove_depth : float
        0 where the panels have no tongue.
    end_clearance : float
        What the grooves leave beyond the tongues at both ends of a panel.

    >>> from woodmath.piece import Piece
    >>> case = Case.of(Piece.demo("cat-bed"))
    >>> round(case.slope_length, 3), case.end_face
    (8.097, 0.125)
    """

    splay: float
    square: float
    half_length: float
    half_foot: float
    height: float
    slope_length: float
    panel: Range
    top: float
    square_top: float
    end_face: float
    side_face: float
    end_thickness: float
    side_thickness: float
    joint: PostJoint
    tenons: tuple[Range, ...]
    tongues: tuple[Range, ...]
    grooves: tuple[Range, ...]
    tongue_length: float
    groove_depth: float
    end_clearance: float

    @property
    def glued_tenon(self) -> int:
        """Which tenon of each edge is glued, counted from the foot: the one nearest the panels' middle; 0 for none."""
        middle = sum(self.panel) / 2
        numbers = range(1, len(self.tenons) + 1)
        return min(numbers, key=lambda number: abs(sum(self.tenons[number - 1]) / 2 - middle), default=0)

    @classmethod
    def of(cls, piece: Piece) -> Case:
        """Work out the case of a piece.

        Parameters
        ----------
        piece : Piece
            With both pairs of panels.

        Returns
        -------
        Case
            In the piece's unit.

        Raises
        ------
        ImpossibleShape
            If the piece has no panels, or its sizes make no case; the message says which.

        Source: the rules of the modules that it calls.

        >>> from woodmath.piece import Piece
        >>> Case.of(Piece.demo("log-box")).splay
        0.0
        """
        if piece.end is None or piece.side is None:
            raise ImpossibleShape(
                f"{piece.name} is no whole case: it has {'no sides' if piece.end else 'no ends'}. "
                "Add [end] and [side] to its file, or open another piece."
            )
        end, side, joint, tongue = piece.end, piece.side, piece.joint, piece.joint.tongue
        splay, slope = end.splay, end.slope_length
        begins = tenon_may_begin(piece.bead, splay) if piece.bead else 0.0
        # A groove that nothing hides must not run out beyond the panel's edge.
        clearance = min(tongue.clearance, begins) if tongue else 0.0
        places = tuple((tenon.place, tenon.width) for tenon in joint.tenons)
        stretches = stretches_of_a_post(
            piece.post.foot, slope, piece.post.top, places, TongueStops(begins, clearance)
        )
        named = {each.kind: (each.start, each.end) for each in stretches}
        tenons = tuple((each.start, each.end) for each in stretches if each.kind == "mortise")
        groove = named["groove"]
        rebated_from = tongue.rebated_from if tongue else "outer face"
        lower, upper = named["panel"]
        top = named["top"][1]
        turned = piece.post.turned
        return cls(
            splay=splay,
            square=piece.post.square,
            half_length=side.length / 2,
            half_foot=end.bottom / 2 - lower * math.sin(math.radians(splay)),
            height=end.height,
            slope_length=slope,
            panel=named["panel"],
            top=top,
            square_top=min(top, upper + turned.profile().start) if turned else top,
            end_face=panel_set_back(
                joint.set_back, end.thickness, min(joint.tenon_thickness, end.thickness), rebated_from
            ),
            side_face=panel_set_back(
                joint.side_set_back, side.thickness, min(joint.side_thickness, side.thickness), rebated_from
            ),
            end_thickness=end.thickness,
            side_thickness=side.thickness,
            joint=piece.post_joint(),
            tenons=tenons,
            tongues=between((groove[0] + clearance, groove[1] - clearance), tenons) if tongue else (),
            grooves=between(groove, tenons) if tongue else (),
            tongue_length=tongue.length if tongue else 0.0,
            groove_depth=tongue.groove_depth if tongue else 0.0,
            end_clearance=clearance,
        )

    @property
    def half_over_posts(self) -> float:
        """From the middle to the posts' outer end faces, along x."""
        return self.half_length + self.square

    @property
    def level_width(self) -> float:
        """Width of a post in a level cut, along y."""
        return foot_joint.level_width(self.square, self.splay)

    @property
    def post_outline(self) -> Points:
        """The right-hand post's square as the end shows it, inside at the foot first: foot level, top square to it."""
        return (
            (self.half_foot, 0.0),
            (self.half_foot + self.level_width, 0.0),
            self.at(self.square_top, self.square),
            self.at(self.square_top),
        )

    @property
    def outward(self) -> Point:
        """The way (y, z) of length 1 that points outward, square to a post at the right-hand end."""
        lean = math.radians(self.splay)
        return (math.cos(lean), -math.sin(lean))

    @property
    def upward(self) -> Point:
        """The way (y, z) of length 1 that points up along that post."""
        lean = math.radians(self.splay)
        return (math.sin(lean), math.cos(lean))

    def at(self, along: float, from_inside: float = 0.0) -> Point:
        """Return (y, z) so far along the post, and so far outward from its inside face, square to it.

        Parameters
        ----------
        along : float
            From the shoulder, on the post's inside face.
        from_inside : float
            More than 0 into the post, less than 0 toward the middle of the case.

        Returns
        -------
        (float, float)
            In the piece's unit.
        """
        (out_y, out_z), (up_y, up_z) = self.outward, self.upward
        return (
            self.half_foot + along * up_y + from_inside * out_y,
            along * up_z + from_inside * out_z,
        )

    def along_a_level(self, height: float, depth: float = 0.0) -> float:
        """Return y at a height, so far outward from the post's inside face, measured square to the post.

        Parameters
        ----------
        height : float
            Over the shoulders, upright.
        depth : float
            From the post's inside face outward, square to it; less than 0 toward the middle.

        Returns
        -------
        float
            In the piece's unit.
        """
        (out_y, out_z), (up_y, up_z) = self.outward, self.upward
        along = (height - depth * out_z) / up_z
        return self.half_foot + along * up_y + depth * out_y

    @property
    def inside_of_side(self) -> float:
        """From the post's inside face outward to the side's inner face, square to the post."""
        return self.square - self.side_face - self.side_thickness

    @property
    def inside_of_end(self) -> float:
        """Where the end's inner face lies, along x."""
        return self.half_over_posts - self.end_face - self.end_thickness

    @property
    def post_axes(self) -> Axes:
        """Of the back right post: u across, v up, and along the post."""
        y, z = self.at(0.0, self.square)
        (out_y, out_z), (up_y, up_z) = self.outward, self.upward
        return Axes((self.half_over_posts, y, z), (0.0, -out_y, -out_z), (-1.0, 0.0, 0.0), (0.0, up_y, up_z))


def between(whole: Range, taken: tuple[Range, ...]) -> tuple[Range, ...]:
    """Return what is left of a length when others are taken out of it.

    Parameters
    ----------
    whole : (float, float)
        From and to.
    taken : tuple of (float, float)
        In order, none overlapping another.

    Returns
    -------
    tuple of (float, float)
        In order, none empty.

    >>> between((1.0, 9.0), ((2.0, 4.0), (6.0, 10.0)))
    ((1.0, 2.0), (4.0, 6.0))
    """
    left: list[Range] = []
    start, end = whole
    for low, high in taken:
        if start < low:
            left.append((start, min(low, end)))
        start = max(start, high)
    if start < end:
        left.append((start, end))
    thin = _ROUNDING * (end - whole[0])
    return tuple(each for each in left if each[1] - each[0] > thin)
