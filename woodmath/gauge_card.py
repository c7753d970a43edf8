"""The gauge card: every setting of every gauge, fence, stop and bevel, in order of use, with the rule behind it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from woodmath import (
    bead,
    edge_derivations,
    ellipse_curve,
    ellipse_derivations,
    ellipse_rocker,
    ellipse_strings,
    foot_joint,
    level_bottom,
    post_joint_derivation,
    splay_derivations,
)
from woodmath.card import Card
from woodmath.case import Case
from woodmath.case_solids import bottom_solid, foot_tenon_cheeks
from woodmath.errors import ImpossibleShape
from woodmath.finding import more
from woodmath.gauge_settings import gauge_settings
from woodmath.groove import Groove, depth_for
from woodmath.post_joint_geometry import Tenon
from woodmath.rebate import Rebate

if TYPE_CHECKING:
    from woodmath.piece import Piece

MEASURED = "measured on the piece"
"""What stands for a rule where a size is chosen by the maker and written in the file."""


@dataclass(frozen=True)
class Setting:
    """One setting of one tool.

    Parameters
    ----------
    tool : str
        What is set.
    setting : str
        To what, as it is read on the rule, or in degrees.
    what : str
        For which cut, and from where.
    rule : str
        Title of the derivation that it comes from, or `MEASURED`.

    >>> Setting("mortise gauge", "1/2 and 1", "the ends' mortises", "The two pins of the mortise gauge").tool
    'mortise gauge'
    """

    tool: str
    setting: str
    what: str
    rule: str


def gauge_card(piece: Piece) -> Card:
    """Print every setting in order of use.

    Parameters
    ----------
    piece : Piece
        With both pairs of panels.

    Returns
    -------
    Card
        Tool, setting, what it is for, and the rule that it comes from.

    Raises
    ------
    ImpossibleShape
        If the sizes make no case.

    Source: in the last column, row by row.

    >>> from woodmath.piece import Piece
    >>> gauge_card(Piece.demo("log-box")).rows[0][0]
    'bench rule'
    """
    return Card(
        "Gauge card",
        "Grouped by the joint. Set a gauge once, try it on waste, and leave it set until its last cut is made.",
        ("tool", "set to", "for", "rule"),
        tuple((row.tool, row.setting, row.what, row.rule) for row in settings_of(piece)),
        notes=(
            "Mark all alike parts with one setting before you change it. A gauge that was knocked is set anew from the "
            "story stick, never from memory.",
        ),
    )


def settings_of(piece: Piece) -> tuple[Setting, ...]:
    """Return every setting of a piece, in order of use.

    Parameters
    ----------
    piece : Piece
        With both pairs of panels.

    Returns
    -------
    tuple of Setting
        In words; every length read on the piece's rule.

    Raises
    ------
    ImpossibleShape
        If the sizes make no case.

    >>> from woodmath.piece import Piece
    >>> [row.setting for row in settings_of(Piece.demo("cat-bed")) if row.tool == "mortise gauge"][0]
    '1/2 and 1'
    """
    case = Case.of(piece)
    return (
        Setting(
            "bench rule",
            piece.rule.mark(case.square),
            "square of the posts, planed before anything is marked",
            MEASURED,
        ),
        *_mortises(piece),
        *_feet(piece, case),
        *_panels(piece, case),
        *_edges(piece, case),
        *_tenons(piece, case),
        *_rocker(piece, case),
        *_bottom(piece, case),
    )


def _panels(piece: Piece, case: Case) -> Iterator[Setting]:
    mark = piece.rule.mark
    if not piece.end or not more(abs(piece.end.outward), 0.0):
        yield Setting("bench rule", mark(case.height), "height of the ends and width of the sides", MEASURED)
        return
    slope = splay_derivations.slope_derivation().title
    yield Setting("bench rule", mark(case.height), "height of the ends, between their level edges", MEASURED)
    yield Setting("bench rule", mark(case.slope_length), "width of the sides, along the slope", slope)
    way = "outward" if case.splay > 0 else "inward"
    yield Setting(
        "sliding bevel",
        f"{abs(case.splay):.1f}° off square: {mark(abs(piece.end.outward))} {way} on {mark(case.height)} up",
        "the ends' sloping edges, the feet of the posts, the wedges for cramping",
        splay_derivations.splay_derivation().title,
    )


def _edges(piece: Piece, case: Case) -> Iterator[Setting]:
    mark, joint, tongue = piece.rule.mark, piece.joint, piece.joint.tongue
    alike = not more(
        abs(case.end_thickness - case.side_thickness) + abs(joint.side_thickness - joint.tenon_thickness), 0.0
    )
    ends = ("the ends", case.end_thickness, joint.tenon_thickness, case.joint.tenon)
    sides = ("the sides", case.side_thickness, joint.side_thickness, case.joint.other_tenon)
    if alike and not more(abs(sides[3].reach - ends[3].reach), 0.0):
        panels = [("the ends and sides", *ends[1:])]
    else:
        panels = [ends, sides]
    face = tongue.rebated_from if tongue else "outer face"
    for name, board, left, tenon in panels:
        rebate = Rebate(board, left, tenon.reach)
        yield Setting(
            "fillister's fence",
            mark(rebate.fence),
            f"rebate on {name}, from the {face}: as wide as the tenons reach",
            post_joint_derivation.outer_cheek_derivation().title,
        )
        yield Setting(
            "fillister's depth stop",
            mark(rebate.stop),
            f"the same rebate: it leaves a tongue of {mark(rebate.left)}",
            edge_derivations.rebate_derivation().title,
        )
    if tongue:
        yield Setting(
            "marking gauge",
            mark(tongue.length),
            "between the tenons, from the shoulder: saw the tongue back to here",
            MEASURED,
        )
    if piece.bead:
        yield Setting(
            "beading plane", mark(piece.bead.width), "bead on both level edges of every panel", MEASURED
        )
        yield Setting(
            "marking gauge",
            mark(bead.reach_derivation().function("reach")(width=piece.bead.width, quirk=piece.bead.quirk)),
            "bead and quirk together, from the level edge",
            bead.reach_derivation().title,
        )
        yield Setting(
            "bench rule",
            mark(bead.tenon_may_begin(piece.bead, case.splay)),
            "along the shoulder, from each level edge: here the tongue stops",
            bead.begin_derivation().title,
        )


def _mortises(piece: Piece) -> Iterator[Setting]:
    mark, joint = piece.rule.mark, piece.joint
    for whose, face, set_back, thickness in (
        ("the ends' mortises and grooves", "face side", joint.set_back, joint.tenon_thickness),
        ("the sides' mortises and grooves", "face edge", joint.side_set_back, joint.side_thickness),
    ):
        outer, inner = gauge_settings(set_back, thickness)
        yield Setting(
            "mortise gauge",
            f"{mark(outer.distance)} and {mark(inner.distance)}",
            f"{whose}, the stock on the {face} of the post",
            inner.rule,
        )
    if joint.tongue:
        yield Setting(
            "router plane",
            mark(Groove(joint.tenon_thickness, joint.tongue.groove_depth).router_setting),
            "depth of the grooves, below its sole: the tongue and its clearance",
            edge_derivations.floor_derivation().title,
        )


def _tenons(piece: Piece, case: Case) -> Iterator[Setting]:
    mark, clearance = piece.rule.mark, piece.joint.end_clearance
    long_point = post_joint_derivation.outer_cheek_derivation().title
    short_point = post_joint_derivation.inner_cheek_derivation().title
    depth = edge_derivations.floor_derivation().title
    end, side = case.joint.tenon, case.joint.other_tenon
    differ = (
        abs(end.reach - side.reach) + abs(_short(end) - _short(side)) + abs(end.thickness - side.thickness)
    )
    pairs = (
        [("the ends'", end), ("the sides'", side)] if more(differ, 0.0) else [("the ends' and sides'", end)]
    )
    for whose, tenon in pairs:
        yield Setting(
            "bench rule", mark(depth_for(tenon.reach, clearance)), f"depth of {whose} mortises", depth
        )
        yield Setting(
            "marking gauge",
            mark(tenon.reach),
            f"{whose} tenons, shoulder to {'long point' if more(tenon.bevel, 0.0) else 'end'}",
            long_point,
        )
        short_half = _short_half(case, tenon)
        if more(tenon.reach, short_half):
            yield Setting(
                "marking gauge", mark(short_half), f"{whose} tenons, the half that stops short", short_point
            )
            yield Setting(
                "bench rule", "half its width", "where each tenon and its mortise are parted", MEASURED
            )
        if more(tenon.reach, _short(tenon)):
            yield Setting(
                "marking gauge", mark(_short(tenon)), f"{whose} tenons, shoulder to short point", short_point
            )
        if more(tenon.bevel, 0.0):
            yield Setting(
                "sliding bevel",
                f"{tenon.bevel:.1f}° off square: {mark(tenon.reach - _short(tenon))} on {mark(tenon.thickness)}",
                f"the mitred ends of {whose} tenons",
                post_joint_derivation.derivation().title,
            )


def _short_half(case: Case, tenon: Tenon) -> float:
    """Return how far the short half of a halved tenon reaches; for all others the reach itself."""
    # The end's tenon comes in along the first axis of the post's section, the side's along the second.
    way = 0 if tenon == case.joint.tenon else 1
    return case.square - min(point[way] for point in tenon.short_outline)


def _short(tenon: Tenon) -> float:
    return min(tenon.outer_cheek, tenon.inner_cheek)


def _feet(piece: Piece, case: Case) -> Iterator[Setting]:
    rocker, mark = piece.rocker, piece.rule.mark
    if rocker is None or rocker.tenon is None:
        return
    tenon = rocker.tenon
    outer, inner = gauge_settings((case.square - tenon.thickness) / 2, tenon.thickness)
    yield Setting(
        "mortise gauge",
        f"{mark(outer.distance)} and {mark(inner.distance)}",
        "cheeks of the foot's tenon, the stock on the face side",
        inner.rule,
    )
    yield Setting(
        "marking gauge", mark(tenon.length), "length of the foot's tenon, from its level shoulder", MEASURED
    )
    inside, _ = foot_tenon_cheeks(case, tenon)
    rule = foot_joint.room_derivation if tenon.line == "upright" else splay_derivations.level_derivation
    yield Setting(
        "bench rule",
        mark(inside - case.half_foot),
        "along the level shoulder, from the post's inside face to the foot's tenon",
        rule().title,
    )
    outer, inner = gauge_settings((rocker.thickness - tenon.thickness) / 2, tenon.thickness)
    yield Setting(
        "mortise gauge",
        f"{mark(outer.distance)} and {mark(inner.distance)}",
        "mortises in the rocker's top edge, the stock on its face side",
        inner.rule,
    )


def _rocker(piece: Piece, case: Case) -> Iterator[Setting]:
    rocker, mark = piece.rocker, piece.rule.mark
    if rocker is None:
        return
    if rocker.tenon:
        inside, outside = foot_tenon_cheeks(case, rocker.tenon)
        yield Setting(
            "bench rule",
            f"{mark(inside)} and {mark(outside)}",
            "mortises in the rocker, from its middle to both sides",
            splay_derivations.width_derivation().title,
        )
        yield Setting(
            "bench rule",
            mark(depth_for(rocker.tenon.length, piece.joint.end_clearance)),
            "depth of the mortises in the rocker",
            edge_derivations.floor_derivation().title,
        )
    try:
        ellipse = piece.ellipse()
    except ImpossibleShape:
        # The findings say why there is no such curve.
        return
    tall = more(ellipse.half_height, ellipse.half_length)
    pins = "one pin stands above the other" if tall else "the pins stand so high above the lowest point"
    yield Setting(
        "trammel",
        mark(ellipse.half_height),
        f"half-height of the rocker's ellipse; {pins}",
        ellipse_rocker.rocker_derivation().title,
    )
    yield Setting(
        "trammel",
        mark(ellipse.half_length),
        "half-length of the rocker's ellipse",
        ellipse_curve.bottom_radius_derivation().title,
    )
    yield Setting(
        "pins", mark(ellipse.pin_spacing), "from pin to pin", ellipse_derivations.focus_derivation().title
    )
    yield Setting(
        "string",
        mark(ellipse.loop),
        "loop round both pins and the pencil",
        ellipse_strings.string_derivation().title,
    )


def _bottom(piece: Piece, case: Case) -> Iterator[Setting]:
    bottom, mark = piece.bottom, piece.rule.mark
    if bottom is None:
        return
    inside = level_bottom.inside_derivation().title
    (_, _), (under, _), (over, _), (_, _) = bottom_solid(piece, case).added[0].outline
    low, high = bottom_solid(piece, case).extent((1.0, 0.0, 0.0))
    yield Setting("bench rule", mark(high - low), "length of the bottom, between the ends", inside)
    leans = more(abs(over - under), 0.0)
    faces = " on its upper face" if leans else ""
    yield Setting("bench rule", mark(2 * over), f"width of the bottom{faces}", inside)
    if leans:
        yield Setting("bench rule", mark(2 * under), "width of the bottom on its lower face", inside)
        yield Setting(
            "sliding bevel",
            f"{abs(case.splay):.1f}° off square",
            "the bottom's long edges, and the backs of the side cleats",
            splay_derivations.splay_derivation().title,
        )
    if bottom.cleat:
        yield Setting("marking gauge", mark(bottom.cleat), "cleats, square", MEASURED)
    if bottom.cleat and not leans:
        yield Setting(
            "marking gauge",
            mark(bottom.rest),
            "inside all four panels, from their lower edge: upper edge of the cleats",
            MEASURED,
        )
    if bottom.cleat and leans:
        leaning = level_bottom.cleat_derivation()
        along = leaning.function("along")(up=bottom.rest, depth=case.inside_of_side, splay=case.splay)
        yield Setting(
            "marking gauge",
            mark(along),
            "inside the sides, from their lower edge up the slope: upper edge of the cleats",
            leaning.title,
        )
        yield Setting(
            "marking gauge",
            mark(bottom.rest),
            "inside the ends, from their lower edge: upper edge of the cleats",
            MEASURED,
        )
