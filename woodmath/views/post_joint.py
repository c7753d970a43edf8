"""The corner post in section: two tenons that meet inside it, and the wood that is left round them."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from typing import TYPE_CHECKING

from woodmath.drawing import (
    Dimension,
    Drawing,
    Frame,
    Hatch,
    Label,
    Line,
    Point,
    Points,
    Shape,
    Wood,
    break_line,
    rectangle,
    spread,
)
from woodmath.errors import ImpossibleShape
from woodmath.lettering import text_width
from woodmath.numbers_as_written import number_shown
from woodmath.post_joint import PostJoint
from woodmath.rule import Rule
from woodmath.views.view import ChoiceControl, LengthControl, Settings, View, number
from woodmath.wall_findings import ThinWall, thin_walls

if TYPE_CHECKING:
    from woodmath.piece import Piece

_SIZE = (640.0, 500.0)
_MARGINS = (98.0, 196.0, 92.0, 122.0)
_STUB = 0.27
_ENDS = (
    ("mitred", "mitred"),
    ("square, meeting at a corner", "square"),
    ("one long, one stopped", "one_long"),
    ("halved, one over the other", "halved"),
)


def _draw(rule: Rule, settings: Settings) -> Drawing:
    post = number(settings, "post")
    try:
        joint = PostJoint(
            post=post,
            tenon_thickness=number(settings, "tenon_thickness"),
            set_back=number(settings, "set_back"),
            other_thickness=number(settings, "other_thickness"),
            other_set_back=number(settings, "other_set_back"),
            ends=str(settings["ends"]),
            reserve=number(settings, "reserve") if settings["ends"] == "one_long" else None,
            end_clearance=number(settings, "end_clearance"),
        )
    except ImpossibleShape as trouble:
        return _impossible(rule, settings, str(trouble))
    frame = Frame.around(_square(post, _STUB * post), _SIZE, _MARGINS)
    headline, told = _told(joint, rule)
    thin = tuple(thin_walls(rule, joint))
    return Drawing(
        title="A corner post in section, with the tenons of the end and of the side inside it",
        frame=frame,
        shapes=(
            *_wood(joint),
            *_thin_walls(joint, thin),
            *_dimensions(rule, settings, frame, post * (1 + _STUB)),
            *_reaches(joint, rule),
            *_labels(joint, frame),
        ),
        headline=headline,
        told=told,
        faults=tuple(f"{wall.finding.reason} {wall.finding.remedy}" for wall in thin),
    )


def _turned(points: Points) -> Points:
    """Turn the section over, so that the outer corner stands at the top left as the post does on the bench."""
    return tuple((x, -y) for x, y in points)


def _square(post: float, beyond: float) -> tuple[Point, Point]:
    return (0.0, 0.0), (post + beyond, -(post + beyond))


def _stubs(post: float, outline: Points, other: Points) -> tuple[Points, Points]:
    """Return the two tenons with the length by which they stand out of the post added to each."""
    far = post * (1 + _STUB)
    return (
        tuple((far if abs(x - post) < 1e-9 * post else x, y) for x, y in outline),
        tuple((x, far if abs(y - post) < 1e-9 * post else y) for x, y in other),
    )


def _wood(joint: PostJoint) -> tuple[Shape, ...]:
    post = joint.post
    far = post * (1 + _STUB)
    first, other = joint.tenon, joint.other_tenon
    section = joint.sections[0]
    outline, other_outline = _stubs(post, section.tenon, section.other_tenon)
    ends = (
        ((far, first.set_back), (far, first.set_back + first.thickness)),
        ((other.set_back, far), (other.set_back + other.thickness, far)),
    )
    shapes: list[Shape] = [
        Wood(_turned(rectangle(0.0, 0.0, post, post)), "post", "end", line=""),
        Line(_turned(section.mortise), "edge", True, "void"),
        Line(_turned(section.other_mortise), "edge", True, "void"),
        Wood(_turned(other_outline), "side", "long", 90.0, line="edge"),
        Wood(_turned(outline), "end", "long", 0.0, line="edge"),
        Line(_turned(rectangle(0.0, 0.0, post, post)), "outline", True),
        *(Line(_turned(break_line(*end)), "edge") for end in ends),
    ]
    if joint.ends == "halved":
        shapes.append(Line(_turned(other.outline), "hidden", True))
    if joint.meeting_face:
        shapes.append(Line(_turned(_diagonal(joint)), "accent"))
    return tuple(shapes)


def _thin_walls(joint: PostJoint, thin: tuple[ThinWall, ...]) -> tuple[Shape, ...]:
    """Strike the walls that the remarks are about, each along the mortise that it stands beside."""
    post = joint.post
    deep, other_deep = min(x for x, _ in joint.mortise), min(y for _, y in joint.other_mortise)
    low, other_low = joint.tenon.set_back, joint.other_tenon.set_back
    high, other_high = low + joint.tenon.thickness, other_low + joint.other_tenon.thickness
    beside = {
        "outside_tenon": rectangle(deep, 0.0, post, low),
        "outside_other": rectangle(0.0, other_deep, other_low, post),
        "inside_tenon": rectangle(deep, high, post, post),
        "inside_other": rectangle(other_high, other_deep, post, post),
        "behind_tenon": rectangle(0.0, low, deep, high),
        "behind_other": rectangle(other_low, 0.0, other_high, other_deep),
    }
    return tuple(
        Hatch(_turned(beside[name]), "fault")
        for remark in thin
        for name in remark.walls
        if getattr(joint.walls, name) > 0
    )


def _diagonal(joint: PostJoint) -> tuple[Point, Point]:
    """Return the line on which mitred ends lie: the diagonal of the rectangle where the mortises cross."""
    first, other = joint.tenon, joint.other_tenon
    return (
        (other.set_back, first.set_back),
        (other.set_back + other.thickness, first.set_back + first.thickness),
    )


def _dimensions(rule: Rule, settings: Settings, frame: Frame, far: float) -> tuple[Shape, ...]:
    """Dimension the post, and both mortises from the outer faces, each chain of two in a line of its own."""
    post = number(settings, "post")
    return (
        Dimension((0.0, 0.0), (post, 0.0), f"s = {rule.mark(post)}", 66.0),
        *_chain(rule, frame, number(settings, "set_back"), number(settings, "tenon_thickness"), None),
        *_chain(rule, frame, number(settings, "other_set_back"), number(settings, "other_thickness"), far),
    )


def _chain(rule: Rule, frame: Frame, set_back: float, thickness: float, far: float | None) -> list[Dimension]:
    """Return set-back and thickness as two dimensions in one line, their texts pushed apart where they must be."""
    places = (0.0, set_back, set_back + thickness)
    texts = [rule.mark(set_back), rule.mark(thickness)]
    lettered = [
        f"{letter}{'₁' if far is None else '₂'} = {text}" for letter, text in zip("gw", texts, strict=True)
    ]
    room = [frame.scale * (high - low) for low, high in pairwise(places)]
    if far is None or all(
        wide > text_width(text, 15.0, bold=True) + 28.0 for wide, text in zip(room, lettered, strict=True)
    ):
        texts = lettered
    middles = [frame.scale * (low + high) / 2 for low, high in pairwise(places)]
    beside = sum(text_width(text, 15.0, bold=True) for text in texts) / 2 + 8.0
    gap = 21.0 if far is None else beside
    moved = spread(middles, gap, -30.0, 1e6)
    chain = []
    for index, (low, high) in enumerate(pairwise(places)):
        along = moved[index] - middles[index]
        if high - low < 1e-9:
            continue
        if far is None:
            chain.append(Dimension((0.0, -low), (0.0, -high), texts[index], -36.0, along))
        else:
            chain.append(Dimension((low, -far), (high, -far), texts[index], -34.0, along))
    return chain


def _reaches(joint: PostJoint, rule: Rule) -> tuple[Shape, ...]:
    post = joint.post
    first, second = post - joint.tenon.reach, post - joint.other_tenon.reach
    return (
        Dimension((first, 0.0), (post, 0.0), rule.mark(joint.tenon.reach), 32.0),
        Dimension((0.0, -second), (0.0, -post), rule.mark(joint.other_tenon.reach), -88.0),
    )


def _labels(joint: PostJoint, frame: Frame) -> tuple[Label, ...]:
    post = joint.post
    out = post * (1 + 0.6 * _STUB)
    column = 462.0
    middle = joint.tenon.set_back + joint.tenon.thickness / 2
    other_middle = joint.other_tenon.set_back + joint.other_tenon.thickness / 2
    labels = [
        Label("tenon of the end", frame.at(column, 126.0), (out, -middle), "grain runs into the post"),
        Label("tenon of the side", frame.at(column, 404.0), (other_middle, -out), "at the same height"),
    ]
    if joint.corner_block:
        block = (post - joint.walls.inside_other / 2, -(post - joint.walls.inside_tenon / 2))
        labels.append(
            Label("inside corner block", frame.at(column, 312.0), block, "held above and below only")
        )
    if joint.ends == "mitred":
        bevels = _bevels(joint)
        (x1, y1), (x2, y2) = _diagonal(joint)
        labels.append(
            Label(
                bevels,
                frame.at(column, 218.0),
                ((x1 + x2) / 2, -(y1 + y2) / 2),
                "off square",
                role="accent",
                bold=True,
            )
        )
    return tuple(labels)


def _bevels(joint: PostJoint) -> str:
    first, second = (f"{number_shown(tenon.bevel, 1)}°" for tenon in (joint.tenon, joint.other_tenon))
    return f"mitred at {first}" if first == second else f"{first} and {second}"


def _told(joint: PostJoint, rule: Rule) -> tuple[str, str]:
    reach, other = rule.mark(joint.tenon.reach), rule.mark(joint.other_tenon.reach)
    if joint.ends == "mitred":
        headline = (
            f"Both reach {reach} at the long point."
            if reach == other
            else f"The end's tenon reaches {reach}, the side's {other}, at the long point."
        )
        return headline, _beside_square(joint, rule)
    if joint.ends == "square":
        return f"Square ends stop at {reach} and {other}, corner to corner.", _beside_mitred(joint)
    if joint.ends == "one_long":
        return (
            f"The end's tenon runs on to {reach}; the side's stops on its cheek at {other}.",
            f"Behind the long one {rule.mark(joint.walls.behind_tenon, unit=True)} of wall is left. "
            + _beside_mitred(joint),
        )
    return (
        f"Half of each tenon's width passes the other: {reach} and {other} deep.",
        f"The broken line is the side's other half, which passes below. {_beside_mitred(joint)}",
    )


def _with_ends(joint: PostJoint, ends: str) -> PostJoint | None:
    """Return the same sizes with other ends, or None where nothing would be left of a tenon."""
    try:
        return replace(joint, ends=ends)
    except ImpossibleShape:
        return None


def _beside_square(joint: PostJoint, rule: Rule) -> str:
    square = _with_ends(joint, "square")
    if square is None or not square.glue_area(1.0):
        return "Square ends would hold nothing here: they would stop before they are in."
    stops = rule.mark(square.tenon.reach), rule.mark(square.other_tenon.reach)
    stop = stops[0] if stops[0] == stops[1] else " and ".join(stops)
    more = 100 * (joint.glue_area(1.0) / square.glue_area(1.0) - 1)
    return f"Square ends would stop at {stop}: the mitre adds {more:.0f} % to the glue."


def _beside_mitred(joint: PostJoint) -> str:
    mitred = _with_ends(joint, "mitred")
    if mitred is None or not mitred.glue_area(1.0):
        return "Mitred ends would hold nothing here."
    return f"They hold {100 * joint.glue_area(1.0) / mitred.glue_area(1.0):.0f} % of the glue that mitred ends would."


def _impossible(rule: Rule, settings: Settings, trouble: str) -> Drawing:
    """Show what cannot be: the post, the two mortises as asked for, and in hatching what has no wood round it."""
    post = number(settings, "post")
    bands = [
        (number(settings, back), number(settings, back) + number(settings, thick))
        for back, thick in (("set_back", "tenon_thickness"), ("other_set_back", "other_thickness"))
    ]
    widest = max(post, bands[0][1], bands[1][1])
    far = widest * (1 + _STUB)
    frame = Frame.around(_square(widest, _STUB * widest), _SIZE, _MARGINS)
    (low, high), (other_low, other_high) = bands
    shapes: list[Shape] = [
        Wood(_turned(rectangle(0.0, 0.0, post, post)), "post", "end"),
        Line(_turned(rectangle(0.0, low, post, high)), "hidden", True),
        Line(_turned(rectangle(other_low, 0.0, other_high, post)), "hidden", True),
        *_dimensions(rule, settings, frame, far),
    ]
    if high > post:
        shapes.append(Hatch(_turned(rectangle(0.0, max(low, post), post, high)), "fault"))
    if other_high > post:
        shapes.append(Hatch(_turned(rectangle(max(other_low, post), 0.0, other_high, post)), "fault"))
    shapes.append(Label("this cannot be cut", frame.at(462.0, 126.0), None, role="accent", bold=True))
    return Drawing(
        title="A corner post in section, with mortises that it has no wood for",
        frame=frame,
        shapes=tuple(shapes),
        headline="This joint cannot be cut.",
        faults=(trouble,),
    )


def _start(piece: Piece) -> Settings:
    joint = piece.post_joint()
    return {
        "post": joint.post,
        "tenon_thickness": joint.tenon_thickness,
        "set_back": joint.set_back,
        "other_thickness": joint.other_tenon.thickness,
        "other_set_back": joint.other_tenon.set_back,
        "ends": joint.ends,
        "reserve": joint.reserve if joint.reserve is not None else joint.set_back,
        "end_clearance": joint.end_clearance,
    }


post_section = View(
    name="post_section",
    draw=_draw,
    controls=(
        LengthControl("post", "post, square", ("1", "3"), ("25", "75")),
        LengthControl("tenon_thickness", "end's tenon, thick", ("1/8", "1"), ("3", "25")),
        LengthControl("set_back", "end's set-back", ("0", "2"), ("0", "50")),
        LengthControl("other_thickness", "side's tenon, thick", ("1/8", "1"), ("3", "25")),
        LengthControl("other_set_back", "side's set-back", ("0", "2"), ("0", "50")),
        ChoiceControl("ends", "ends", _ENDS),
        LengthControl("reserve", "reserve behind a long one", ("0", "1"), ("0", "25")),
        LengthControl("end_clearance", "clearance at the ends", ("0", "1/4"), ("0", "6")),
    ),
    start=_start,
)
