"""A hole bored to depth by counting turns: post, bit and screw point, seen where the hole is cut open."""

from __future__ import annotations

import math
from fractions import Fraction
from typing import TYPE_CHECKING, Literal

from woodmath.boring import AugerBit
from woodmath.drawing import (
    Dimension,
    Drawing,
    Frame,
    Hatch,
    Label,
    Line,
    Points,
    Shape,
    Wood,
    rectangle,
)
from woodmath.rule import Rule
from woodmath.views.view import ChoiceControl, LengthControl, Settings, StepControl, View, number

if TYPE_CHECKING:
    from woodmath.piece import Piece

_SIZE = (640.0, 500.0)
_MARGINS = (16.0, 168.0, 16.0, 176.0)
_OVER, _UNDER = 0.5, 0.34


def _draw(rule: Rule, settings: Settings) -> Drawing:
    post, turns = number(settings, "post"), number(settings, "turns")
    counted_from: Literal["lips", "screw"] = "screw" if settings["counted_from"] == "screw" else "lips"
    bit = AugerBit.from_threads(
        number(settings, "diameter"),
        number(settings, "threads_per_inch"),
        number(settings, "point_length"),
        unit=rule.unit,
    )
    depth = bit.depth(turns, counted_from=counted_from)
    tip = bit.tip_depth(turns, counted_from)
    wide = 1.24 * post
    frame = Frame.around(((-wide / 2, _OVER * post), (wide / 2, -(1 + _UNDER) * post)), _SIZE, _MARGINS)
    shapes = (
        Wood(rectangle(-wide / 2, -post, wide / 2, 0.0), "post", "long", 0.0, line=""),
        *_hole(bit, depth, post),
        *_faults(bit, depth, tip, post),
        *_bit(bit, tip, post, frame),
        *_ladder(bit, turns, post, frame),
        Line(((-wide / 2, 0.0), (wide / 2, 0.0)), "outline"),
        Line(((-wide / 2, -post), (wide / 2, -post)), "outline"),
        *_measures(rule, bit, depth, tip, post, wide, frame),
    )
    headline, told, faults = _told(rule, bit, turns, depth, post, counted_from)
    return Drawing(
        title="A post cut open along a bored hole, with the auger bit still in it",
        frame=frame,
        shapes=shapes,
        headline=headline,
        told=told,
        faults=faults,
    )


def _hole(bit: AugerBit, depth: float, post: float) -> tuple[Shape, ...]:
    """Return the full-width hole as far as it is bored, and no deeper than the post."""
    if depth <= 0.0:
        return ()
    half, floor = bit.diameter / 2, min(depth, post)
    return (Line(rectangle(-half, -floor, half, 0.0), "edge", True, "void"),)


def _bit(bit: AugerBit, tip: float, post: float, frame: Frame) -> tuple[Shape, ...]:
    """Return the bit with its screw's tip so deep; what is beyond the picture is left off."""
    lowest = (1 + _UNDER) * post
    tip = min(tip, lowest)
    lips = min(tip - bit.point_length, lowest - 0.02 * post)
    top = _OVER * post
    if -lips > top - 0.05 * post:
        lips = -(top - 0.05 * post)
    half = 0.46 * bit.diameter
    neck = 0.17 * bit.diameter
    shapes: list[Shape] = [
        Line(rectangle(-half, -lips, half, top), "edge", True, "steel"),
        Line(((-neck, -lips), (0.0, -max(tip, lips)), (neck, -lips)), "edge", True, "steel"),
    ]
    pitch = 1.05 * bit.diameter
    level = -lips + 0.12 * bit.diameter
    while level + pitch < top:
        shapes.append(Line(_flute(half, level, pitch), "quiet"))
        level += 0.5 * pitch
    if bit.lead * frame.scale > 3.0 and tip > lips:
        depth, steps = lips + bit.lead / 2, 0
        while depth < tip - bit.lead / 4 and steps < 60:
            across = neck * (tip - depth) / (tip - lips) * 1.5
            shapes.append(Line(((-across, -depth), (across, -depth + bit.lead / 3)), "quiet"))
            depth, steps = depth + bit.lead, steps + 1
    return tuple(shapes)


def _flute(half: float, level: float, pitch: float) -> Points:
    """Return one edge of the twist as it is seen from the side: half a wave across the bit."""
    return tuple(
        (half * math.sin(math.pi * (step / 10 - 0.5)), level + 0.5 * pitch * step / 10) for step in range(11)
    )


def _ladder(bit: AugerBit, turns: float, post: float, frame: Frame) -> tuple[Line, ...]:
    """Return a tick for every whole turn counted, beside the hole, the fifth ones longer."""
    every = 1 if bit.lead * frame.scale >= 4.0 else 5
    x = -bit.diameter / 2 - frame.length(5.0)
    ticks = []
    for turn in range(every, math.floor(turns) + 1, every):
        level = bit.depth(turn, "lips")
        if level > post:
            break
        long = frame.length(12.0 if turn % 5 == 0 else 6.0)
        ticks.append(Line(((x, -level), (x - long, -level)), "pencil" if turn % 5 == 0 else "quiet"))
    return tuple(ticks)


def _faults(bit: AugerBit, depth: float, tip: float, post: float) -> tuple[Shape, ...]:
    if tip <= post:
        return ()
    half = bit.diameter / 2 if depth > post else 0.17 * bit.diameter
    return (Hatch(rectangle(-1.5 * half, -1.05 * post, 1.5 * half, -0.93 * post), "fault"),)


def _measures(
    rule: Rule, bit: AugerBit, depth: float, tip: float, post: float, wide: float, frame: Frame
) -> tuple[Shape, ...]:
    right = wide / 2
    lowest = (1 + _UNDER) * post
    shapes: list[Shape] = [Dimension((right, 0.0), (right, -post), rule.mark(post), 136.0)]
    if 0.0 < depth <= lowest:
        shapes.append(Dimension((right, 0.0), (right, -depth), rule.mark(depth), 36.0))
    if 0.0 < tip <= lowest and bit.point_length > 0:
        shapes.append(Dimension((right, 0.0), (right, -tip), rule.mark(tip), 86.0))
    lips = min(max(depth, -0.4 * post), lowest - 0.02 * post)
    shapes.append(
        Label(
            "lips", frame.at(128.0, 196.0), (-0.46 * bit.diameter, -lips), "full width to here", side="left"
        )
    )
    shapes.append(
        Label(
            "screw's point",
            frame.at(128.0, 372.0),
            (0.0, -min(tip, lowest)),
            "arrives first",
            side="left",
        )
    )
    shapes.append(Label("turns", frame.at(128.0, 118.0), None, "a tick for each", side="left"))
    return tuple(shapes)


def _told(
    rule: Rule, bit: AugerBit, turns: float, depth: float, post: float, counted_from: str
) -> tuple[str, str, tuple[str, ...]]:
    count = f"{turns:g} turn" + ("" if turns == 1 else "s")
    since = "the screw's first bite" if counted_from == "screw" else "the moment the lips touch"
    if depth == 0.0:
        return f"{count} from {since}: the lips have not reached the face yet.", "", ()
    tip = bit.point_depth(depth)
    headline = f"{count} from {since} bore {rule.mark(depth, unit=True)} deep at full width."
    if tip <= post:
        return (
            headline,
            f"The screw's point stands {rule.mark(tip, unit=True)} deep, with "
            f"{rule.mark(post - tip, unit=True)} of wood before it.",
            (),
        )
    through = bit.turns_until_through(post)
    # A whole turn before it comes through, as a maker stops who does not want to feel the point outside.
    before = math.floor(through - (0.0 if counted_from == "screw" else bit.turns(0.0, "screw")) - 1)
    remedy = (
        f"Stop at {before} turn{'' if before == 1 else 's'} and finish the bottom with a chisel."
        if before >= 1
        else "Take a bit with a shorter screw, or chop this mortise with a chisel."
    )
    what = "The bit" if depth > post else "The screw's point"
    return (
        headline,
        "",
        (
            f"{what} comes through: {rule.mark(depth)} deep plus {rule.mark(bit.point_length)} of screw need "
            f"{rule.mark(tip)}, and the post is {rule.mark(post)}. {remedy}",
        ),
    )


def _start(piece: Piece) -> Settings:
    bit = piece.auger_bit()
    depth = piece.post.square - piece.post_joint().walls.behind_tenon
    turns = Fraction(round(4 * bit.turns(depth, "lips")), 4)
    return {
        "turns": float(turns),
        "counted_from": "lips",
        "diameter": bit.diameter,
        "threads_per_inch": bit.threads_per_inch(unit=piece.rule.unit),
        "point_length": bit.point_length,
        "post": piece.post.square,
    }


bored_hole = View(
    name="bored_hole",
    draw=_draw,
    controls=(
        StepControl("turns", "turns of the brace", "", Fraction(1, 4), Fraction(40), Fraction(1, 4)),
        ChoiceControl(
            "counted_from",
            "count from",
            (("the lips touching", "lips"), ("the screw's first bite", "screw")),
        ),
        LengthControl("diameter", "bit, across", ("1/4", "1"), ("6", "25")),
        StepControl("threads_per_inch", "threads per inch", "", Fraction(4), Fraction(24), Fraction(1, 2)),
        LengthControl("point_length", "screw's point, long", ("0", "3/4"), ("0", "19")),
        LengthControl("post", "post, square", ("1", "3"), ("25", "75")),
    ),
    start=_start,
)
